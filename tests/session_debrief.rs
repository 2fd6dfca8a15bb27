//! The debrief as the page gets it: the course of what was done, hints that give nothing away too early, three truths kept apart, and
//! the helps of the trace.

use dicrotic::assess::window::allowed;
use dicrotic::scenario::Scenario;
use dicrotic::session::action::Refusal;
use dicrotic::session::script::play;
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};
use std::collections::BTreeSet;

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

fn all(session: &mut Session, actions: &[Value]) {
    for action in actions {
        act(session, action.clone()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
    }
}

/// Text of the scenario file whose name contains `part`.
fn scenario(part: &str) -> String {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    let path = std::fs::read_dir(folder)
        .unwrap()
        .map(|e| e.unwrap().path())
        .find(|p| p.file_name().unwrap().to_string_lossy().contains(part))
        .unwrap();
    std::fs::read_to_string(path).unwrap()
}

/// An attempt at the rest pulse with a recording of 25 s open and the cursors about sixteen seconds apart.
fn taken(seed: u64) -> Session {
    let mut s = Session::new(&scenario("04-rest-pulse"), seed).unwrap();
    s.run_long(5000);
    all(&mut s, &[json!({"do": "range", "v": 0.05})]);
    s.run_long(4000);
    all(&mut s, &[json!({"do": "record"})]);
    s.run_long(25_000);
    all(
        &mut s,
        &[
            json!({"do": "stop"}),
            json!({"do": "cursor", "which": "a", "t": 1.2}),
            json!({"do": "cursor", "which": "b", "t": 9.0}),
            json!({"do": "cursor", "which": "b", "t": 17.2}),
        ],
    );
    s
}

fn answered(mut s: Session, count: f64, rate: f64) -> Session {
    for (field, value) in [("count", count), ("seconds", 16.0), ("multiplier", 3.75), ("rate", rate)] {
        all(&mut s, &[json!({"do": "answer", "field": field, "text": value.to_string()})]);
    }
    all(&mut s, &[json!({"do": "check"})]);
    s
}

fn beats(s: &Session) -> f64 {
    let kept = s.recording().unwrap();
    let (a, b) = kept.window().unwrap();
    allowed(&s.reference_peaks(), a, b, 0.06, kept.delay_s).exact as f64
}

#[test]
fn the_ladder_of_hints_works_for_every_step_that_goes_wrong_and_gives_no_number_away() {
    let words = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/www/texts/en/later/hints.ftl"))
        .unwrap();
    let has = |code: &str, rung: &str| {
        let start =
            words.find(&format!("\nhint-{code} =\n")).unwrap_or_else(|| panic!("no words for hint {code}"));
        words[start + 1..]
            .lines()
            .skip(1)
            .take_while(|l| l.starts_with("    ."))
            .any(|l| l.starts_with(&format!("    .{rung} = ")))
    };
    let (mut codes, mut topics) = (BTreeSet::new(), BTreeSet::new());
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let Ok(text) = std::fs::read_to_string(&path) else { continue };
        for attempt in &Scenario::read(&text).unwrap().attempt {
            let mut s = Session::new(&text, attempt.seed).unwrap();
            let first = attempt.steps.iter().position(|step| step["do"] == "check").unwrap();
            play(&mut s, &attempt.steps[..=first]).unwrap();
            let here = format!("{}, \"{}\"", path.display(), attempt.name);
            let check = s.check().unwrap().clone();
            let Some(finding) = check.report.first_finding() else {
                assert_eq!(act(&mut s, json!({"do": "hint"})), Err(Refusal::NoHint {}), "{here}");
                continue;
            };
            codes.insert(finding.code);
            for rung in ["look", "locate", "rule", "worked"] {
                assert_eq!(s.view()["hint_next"], rung, "{here}");
                all(&mut s, &[json!({"do": "hint"})]);
                let hint = s.view()["hint"].clone();
                assert_eq!(hint["rung"], rung, "{here}");
                assert_eq!(hint["step"], json!(finding.step), "{here}");
                let code = hint["code"].as_str().unwrap().to_string();
                assert!(has(&code, rung), "{here}: no words for hint {code}.{rung}");
                assert!(
                    hint["args"].get("value").is_none() && hint["args"].get("list").is_none(),
                    "{here}: {hint}"
                );
                if rung == "locate" {
                    let place = &hint["locate"];
                    let all_tests_done = code == "name" && place.is_null();
                    assert!(place.is_object() || all_tests_done || s.recording().is_none(), "{here}: {hint}");
                    if let (Some(from), Some(to)) = (place["from_s"].as_f64(), place["to_s"].as_f64()) {
                        let end = s.recording().unwrap().recording.duration_s();
                        assert!(0.0 <= from && from < to && to <= end + 1.0, "{here}: {hint}");
                    }
                }
                topics.insert(code);
            }
            let view = s.view();
            assert_eq!(view["hint_next"], json!(null), "{here}");
            assert_eq!(act(&mut s, json!({"do": "hint"})), Err(Refusal::NoHint {}), "{here}");
            assert_eq!(view["check"]["truth"], json!(null), "{here}");
            assert_eq!(view["check"].get("allowed"), None, "{here}");
            assert!(view["check"]["spread"]["others"].is_null(), "{here}");
            // The answer belongs to the second check, or to giving up.
            let second = s.clone();
            for (mut s, ending) in [(second, "check"), (s, "reveal")] {
                all(&mut s, &[json!({"do": ending})]);
                assert_eq!(s.view()["hint_next"], "answer", "{here}");
                all(&mut s, &[json!({"do": "hint"})]);
                let hint = s.view()["hint"].clone();
                assert!(has(hint["code"].as_str().unwrap(), "answer"), "{here}: {hint}");
                let args = hint["args"].as_object().unwrap();
                assert!(args.contains_key("value") || args.contains_key("list"), "{here}: {hint}");
                assert_eq!(act(&mut s, json!({"do": "hint"})), Err(Refusal::NoHint {}), "{here}");
            }
        }
    }
    println!("first wrong codes: {codes:?}\ntopics: {topics:?}");
    assert!(codes.len() >= 15 && topics.len() >= 15, "{codes:?} {topics:?}");
}

/// Every code that the judgement can end in has a topic with words on every rung.
#[test]
fn every_code_that_can_be_wrong_has_hints() {
    use dicrotic::assess::hint::topic;
    use dicrotic::assess::verdict::{Finding, Step, Verdict};
    let words = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/www/texts/en/later/hints.ftl"))
        .unwrap();
    let source = [
        include_str!("../src/assess/verdict.rs"),
        include_str!("../src/assess/asked.rs"),
        include_str!("../src/assess/counting.rs"),
        include_str!("../src/assess/arithmetic.rs"),
    ]
    .concat();
    let steps = [
        ("name_", Step::Name),
        ("trace_", Step::Trace),
        ("window_", Step::Window),
        ("count_", Step::Count),
        ("seconds_", Step::Seconds),
        ("multiplier_", Step::Multiplier),
        ("rate_", Step::Rate),
        ("middle_", Step::Middle),
        ("range_", Step::Range),
        ("amplitude_", Step::Amplitude),
        ("uncertainty_", Step::Uncertainty),
    ];
    let quoted: BTreeSet<&'static str> = source
        .split('"')
        .skip(1)
        .step_by(2)
        .map(|s| &*s.to_string().leak())
        .filter(|s: &&str| s.chars().all(|c| c.is_ascii_lowercase() || c == '_'))
        .collect();
    let mut looked_at = 0;
    for code in quoted {
        let Some((_, step)) = steps.iter().find(|(prefix, _)| code.starts_with(prefix)) else { continue };
        // Not a code but the name of a field.
        if ["_s", "_v", "_mv", "_1"].iter().any(|end| code.ends_with(end)) {
            continue;
        }
        let of = topic(&Finding { step: *step, verdict: Verdict::Wrong, code, args: json!({}) });
        let start =
            words.find(&format!("\nhint-{of} =\n")).unwrap_or_else(|| panic!("{code}: no words for {of}"));
        let entry: Vec<&str> =
            words[start + 1..].lines().skip(1).take_while(|l| l.starts_with("    .")).collect();
        for rung in ["look", "locate", "rule", "worked", "answer"] {
            assert!(entry.iter().any(|l| l.starts_with(&format!("    .{rung} = "))), "{code}: {of}.{rung}");
        }
        looked_at += 1;
    }
    assert!(looked_at >= 50, "{looked_at}");
}

#[test]
fn the_answer_of_a_step_is_the_right_one() {
    let s = taken(3);
    let n = beats(&s);
    let mut s = answered(s, 2.0 * n, 2.0 * n * 3.75);
    all(&mut s, &[json!({"do": "reveal"})]);
    (0..5).for_each(|_| all(&mut s, &[json!({"do": "hint"})]));
    let hint = s.view()["hint"].clone();
    assert_eq!((&hint["code"], &hint["args"]["value"]), (&json!("bumps"), &json!(n)));
    assert_eq!(s.view()["hints"], 5);
}

#[test]
fn no_hint_before_a_check() {
    assert_eq!(act(&mut taken(3), json!({"do": "hint"})), Err(Refusal::NotChecked {}));
}

#[test]
fn the_course_tells_what_was_done_and_where_it_first_went_wrong() {
    let s = taken(3);
    let n = beats(&s);
    let s = answered(s, 2.0 * n, 2.0 * n * 3.75);
    let view = s.view();
    let course = view["check"]["course"].as_array().unwrap();
    let told: Vec<(&str, &str, u64)> = course
        .iter()
        .map(|e| (e["do"].as_str().unwrap(), e["what"].as_str().unwrap(), e["times"].as_u64().unwrap()))
        .collect();
    assert_eq!(
        told,
        [
            ("range", "settings", 1),
            ("record", "record", 1),
            ("stop", "record", 1),
            ("cursor", "measure", 1),
            ("cursor", "measure", 1),
            ("answer", "answer", 1),
            ("answer", "answer", 1),
            ("answer", "answer", 1),
            ("answer", "answer", 1),
        ]
    );
    assert_eq!(
        (&course[0]["t_s"], &course[1]["t_s"], &course[2]["t_s"]),
        (&json!(5.0), &json!(9.0), &json!(34.0))
    );
    assert_eq!((&course[4]["at_recording_s"], &course[4]["recording"]), (&json!(17.2), &json!(0)));
    let wrong: Vec<&Value> = course.iter().filter(|e| !e["wrong"].is_null()).collect();
    assert_eq!(wrong.len(), 1);
    assert_eq!((&wrong[0]["wrong"], &wrong[0]["args"]["field"]), (&json!("count"), &json!("count")));
    // The log entry that it points at is that action.
    let log = wrong[0]["log"].as_u64().unwrap() as usize;
    assert_eq!(s.log()[log].action.to_value()["field"], "count");
}

#[test]
fn marks_in_a_row_are_one_entry() {
    let mut s = taken(3);
    for k in 0..7 {
        all(&mut s, &[json!({"do": "mark", "t": 2.0 + f64::from(k)})]);
    }
    let s = answered(s, 1.0, 1.0);
    let course = s.view()["check"]["course"].clone();
    let mark = course.as_array().unwrap().iter().find(|e| e["do"] == "mark").unwrap().clone();
    assert_eq!((&mark["times"], &mark["at_recording_s"]), (&json!(7), &json!(8.0)));
}

#[test]
fn three_truths_are_kept_apart_and_the_band_waits_for_a_count_that_holds() {
    let s = taken(3);
    let n = beats(&s);
    // One too many: wrong, so that the truth waits for the second check.
    let mut s = answered(s, n + 3.0, ((n + 3.0) * 3.75).round());
    assert_eq!(s.view()["check"]["spread"], json!(null));
    all(&mut s, &[json!({"do": "check"})]);
    let spread = s.view()["check"]["spread"].clone();
    assert_eq!(spread["count"], json!(n));
    let band = |key: &str| spread["band"][key].as_f64().unwrap();
    assert!((band("high") - band("low") - 2.0 * 60.0 / 16.0).abs() < 0.15);
    assert!((spread["sd"].as_f64().unwrap() - 0.41 * 60.0 / 16.0).abs() < 0.02);
    let check = s.view()["check"].clone();
    let truth = &check["truth"];
    assert_eq!(truth["own_window"]["beats"], json!(n as u64));
    assert!((truth["own_window"]["rate"].as_f64().unwrap() - 60.0 * n / 16.0).abs() < 1e-6);
    assert_eq!(truth["own_span"]["intervals"], json!(n as u64 - 1));
    assert!(truth["own_span"]["seconds"].as_f64().unwrap() < 16.0);
    let record = &truth["record"];
    assert!(record["intervals"].as_u64().unwrap() > n as u64);
    let (all, seconds) = (record["intervals"].as_f64().unwrap(), record["seconds"].as_f64().unwrap());
    assert!((record["rate"].as_f64().unwrap() - 60.0 * all / seconds).abs() < 1e-9, "{record}");
    assert!(
        (truth["record"]["rate"].as_f64().unwrap() - truth["record_rate"].as_f64().unwrap()).abs() < 1e-6
    );
    assert_eq!(truth["own_span"]["rate"], truth["window_rate"]);
    let others = &check["spread"]["others"];
    assert_eq!(others["values"].as_array().unwrap().len(), 60);
    assert_eq!(others["starts"].as_array().unwrap().len(), 60);
    // 25 s of record hold windows of 16 s at 91 places a tenth of a second apart.
    assert_eq!(others["n"], 91);
    let q = ["q05", "q25", "q50", "q75", "q95"].map(|k| others[k].as_f64().unwrap());
    assert!(q.windows(2).all(|w| w[0] <= w[1]), "{q:?}");
    assert!((q[2] - 60.0 * n / 16.0).abs() <= 2.0 * 60.0 / 16.0);
}

#[test]
fn help_is_asked_for_first_or_not_at_all() {
    let mut s = taken(1);
    assert_eq!(act(&mut s, json!({"do": "help", "mode": "half"})), Err(Refusal::TooLate {}));
    let mut s = Session::new(&scenario("04-rest-pulse"), 1).unwrap();
    assert_eq!((&s.view()["help"], &s.view()["helped"]), (&json!("alone"), &json!(false)));
    all(&mut s, &[json!({"do": "help", "mode": "half"})]);
    let view = s.view();
    assert_eq!(
        (&view["help"], &view["helped"], &view["trace"]["mode"]),
        (&json!("half"), &json!(true), &json!("recording"))
    );
    assert!(view["cursors"]["a"].is_null() && view["worksheet"]["count"]["text"] == "");
    assert_eq!(view["check"], json!(null));
}

#[test]
fn the_strip_is_zoomed_to_a_stretch_and_back() {
    let mut s = taken(1);
    all(&mut s, &[json!({"do": "time_base", "s": 5}), json!({"do": "scroll", "start_s": 3})]);
    let before = s.view()["trace"].clone();
    assert_eq!(act(&mut s, json!({"do": "zoom_out"})), Err(Refusal::NotZoomed {}));
    assert_eq!(
        act(&mut s, json!({"do": "zoom", "from_s": 4.0, "to_s": 4.1})),
        Err(Refusal::TooNarrow { least: 0.2 })
    );
    assert_eq!(
        act(&mut s, json!({"do": "zoom", "from_s": 9.0, "to_s": 4.0})),
        Err(Refusal::TooNarrow { least: 0.2 })
    );
    assert!(act(&mut s, json!({"do": "zoom", "from_s": 20.0, "to_s": 99.0})).is_err());
    assert_eq!(s.view()["trace"], before);
    all(
        &mut s,
        &[
            json!({"do": "zoom", "from_s": 4.0, "to_s": 6.3}),
            json!({"do": "zoom", "from_s": 4.5, "to_s": 5.5}),
        ],
    );
    let zoomed = s.view()["trace"].clone();
    assert_eq!(
        (&zoomed["zoomed"], &zoomed["start_s"], &zoomed["time_base_s"]),
        (&json!(true), &json!(4.5), &json!(1.0))
    );
    let mut other = s.clone();
    all(&mut s, &[json!({"do": "zoom_out"})]);
    assert_eq!(s.view()["trace"], before);
    // Going live leaves the zoom: no chart recorder runs at 1.37 s a screen.
    all(&mut other, &[json!({"do": "show", "mode": "live"})]);
    assert_eq!(
        (&other.view()["trace"]["zoomed"], &other.view()["time_base"]["s"]),
        (&json!(false), &json!(5.0))
    );
}

#[test]
fn a_cursor_is_helped_to_the_peak_that_the_detector_finds() {
    let mut s = taken(1);
    let kept = s.recording().unwrap();
    let shown: Vec<f64> = s
        .reference_peaks()
        .iter()
        .map(|p| p.at_s + kept.delay_s)
        .filter(|t| (2.0..22.0).contains(t))
        .collect();
    assert!(shown.len() > 15);
    for t in shown {
        let snapped = s.snap_to(t + 0.12).unwrap();
        assert!((snapped - t).abs() < 0.03, "{t}: {snapped}");
    }
    assert_eq!(Session::new(&scenario("04-rest-pulse"), 1).unwrap().snap_to(1.0), None);
}

#[test]
fn cursors_tell_values_and_their_difference() {
    let s = taken(1);
    let cursors = s.view()["cursors"].clone();
    let value = |key: &str| cursors[key].as_f64().unwrap();
    let recording = &s.recording().unwrap().recording;
    assert_eq!(value("value_a"), recording.volts(recording.sample_at(1.2)).unwrap());
    assert_eq!(value("amplitude"), value("value_b") - value("value_a"));
    assert_eq!(cursors["kept"], json!(null));
}

#[test]
fn a_window_is_kept_with_what_was_typed_for_it() {
    let mut s = Session::new(&scenario("60-two-windows"), 4).unwrap();
    all(&mut s, &[json!({"do": "help", "mode": "half"})]);
    assert_eq!(act(&mut s, json!({"do": "keep_window"})), Err(Refusal::NoWindow {}));
    all(
        &mut s,
        &[
            json!({"do": "cursor", "which": "a", "t": 1.0}),
            json!({"do": "cursor", "which": "b", "t": 17.0}),
            json!({"do": "answer", "field": "count", "text": "18"}),
            json!({"do": "keep_window"}),
        ],
    );
    let view = s.view();
    assert_eq!(view["cursors"]["kept"], json!({"a": 1.0, "b": 17.0, "interval_s": 16.0, "recording": 0}));
    assert_eq!(
        (&view["worksheet"]["count_1"]["text"], &view["worksheet"]["count"]["text"]),
        (&json!("18"), &json!(""))
    );
    all(&mut s, &[json!({"do": "keep_clear"})]);
    assert_eq!(s.view()["cursors"]["kept"], json!(null));
    // Other questions have no first window, and no field for one.
    let mut other = taken(1);
    assert_eq!(act(&mut other, json!({"do": "keep_window"})), Err(Refusal::NotAsked {}));
    assert!(matches!(
        act(&mut other, json!({"do": "answer", "field": "count_1", "text": "1"})),
        Err(Refusal::BadValue { field: "field", .. })
    ));
}

#[test]
fn the_page_is_told_what_is_asked_and_gets_just_those_fields() {
    for (part, kind, fields) in [
        ("04-rest", "own_window", vec!["count", "seconds", "multiplier", "rate", "uncertainty"]),
        ("54-", "given_window", vec!["count", "seconds", "multiplier", "rate", "uncertainty"]),
        ("57-", "intervals", vec!["count", "seconds", "rate", "uncertainty"]),
        ("59-", "irregular", vec!["count", "seconds", "multiplier", "rate", "uncertainty"]),
        ("61-", "after_exercise", vec!["count", "seconds", "multiplier", "rate", "middle", "uncertainty"]),
        ("55-", "clean_part", vec![]),
        ("56-", "read_range", vec!["range", "amplitude"]),
        ("58-", "name_fault", vec![]),
        ("60-", "compare", vec!["count_1", "seconds_1", "rate_1", "count", "seconds", "rate", "uncertainty"]),
    ] {
        let view = Session::new(&scenario(part), 2).unwrap().view();
        assert_eq!(
            (&view["task"]["kind"], &view["task"]["fields"]),
            (&json!(kind), &json!(fields)),
            "{part}"
        );
        assert_eq!(view["scenario"]["task"]["kind"], kind);
        let there: BTreeSet<&str> =
            view["worksheet"].as_object().unwrap().keys().map(String::as_str).collect();
        assert_eq!(there, fields.into_iter().collect(), "{part}");
    }
}

#[test]
fn the_end_of_exercise_is_told_with_each_take() {
    let mut s = Session::new(&scenario("61-"), 2).unwrap();
    all(&mut s, &[json!({"do": "help", "mode": "half"})]);
    let view = s.view();
    let (after, ended) =
        (view["recordings"][0]["after_s"].as_f64().unwrap(), view["exercise_ended_s"].as_f64().unwrap());
    assert!((s.recordings()[0].start_s - ended - after).abs() < 1e-9);
    assert!((0.0..40.0).contains(&after), "{after}");
}

#[test]
fn labels_are_cut_and_stand_with_their_take() {
    let mut s = taken(1);
    assert_eq!(
        act(&mut s, json!({"do": "label", "recording": 4, "text": "x"})),
        Err(Refusal::NoRecording {})
    );
    all(&mut s, &[json!({"do": "label", "recording": 0, "text": "y".repeat(300)}), json!({"do": "agree"})]);
    assert_eq!(s.view()["recordings"][0]["label"].as_str().unwrap().len(), 80);
    assert_eq!(s.view()["agreed"], true);
}

#[test]
fn a_wrong_answer_that_nothing_explains_asks_for_the_way() {
    let s = taken(3);
    let n = beats(&s);
    let s = answered(s, (1.4 * n).round(), (1.4 * n * 3.75).round());
    assert_eq!(s.view()["check"]["misreading"]["id"], "show_work");
    let right = taken(3);
    let s = answered(right, n, (n * 3.75).round());
    assert_eq!(
        (&s.view()["check"]["passed"], &s.view()["check"]["misreading"]),
        (&json!(true), &json!(null))
    );
}

#[test]
fn evidence_is_kept_of_a_check() {
    let s = taken(3);
    assert_eq!(s.evidence(), None);
    let n = beats(&s);
    let e = answered(s, n, (n * 3.75).round()).evidence().unwrap().told();
    assert_eq!(
        (&e["passed"], &e["seed"], &e["mode"], &e["kind"]),
        (&json!(true), &json!("3"), &json!("alone"), &json!("own_window"))
    );
    assert_eq!(e["skills"]["counting"], json!({"got": "pass", "code": "count_right"}));
    assert_eq!(e["skills"]["range"]["got"], "pass");
    assert_eq!(e["skills"].as_object().unwrap().len(), 12);
}

#[test]
fn a_running_count_is_shown_only_where_help_allows() {
    let mut alone = Session::new(&scenario("50-after-exercise"), 1).unwrap();
    assert_eq!(alone.view()["count_shown"], false);
    all(&mut alone, &[json!({"do": "help", "mode": "alone"})]);
    assert_eq!(alone.view()["count_shown"], false);
    let mut half = Session::new(&scenario("50-after-exercise"), 1).unwrap();
    all(&mut half, &[json!({"do": "help", "mode": "half"})]);
    assert_eq!(half.view()["count_shown"], true);
    assert_eq!(taken(1).view()["count_shown"], true, "a guided scenario");
}

#[test]
fn a_short_window_that_was_asked_for_is_no_misreading() {
    // Beats counted instead of intervals, in a run that takes less than ten seconds at this rate.
    let text = scenario("57-").replace("n = [9, 17]", "n = [6, 6]");
    let mut s = Session::new(&text, 4).unwrap();
    all(&mut s, &[json!({"do": "help", "mode": "half"})]);
    play(
        &mut s,
        &[
            json!({"do": "cursor", "which": "a", "t": "@peak"}),
            json!({"do": "cursor", "which": "b", "t": "@last"}),
            json!({"do": "answer", "field": "count", "text": "@count+1"}),
            json!({"do": "answer", "field": "seconds", "text": "@seconds"}),
            json!({"do": "answer", "field": "rate", "text": "@rate*1.1667"}),
            json!({"do": "check"}),
        ],
    )
    .unwrap();
    let check = s.view()["check"].clone();
    assert!(s.recording().unwrap().window().unwrap().1 < 10.0);
    assert_eq!(
        (&check["first_wrong"], &check["misreading"]["id"]),
        (&json!("count"), &json!("posts_counted")),
        "{check}"
    );
    // And a window that is missing is another matter for each kind of question.
    for (part, code) in
        [("57-", "window_features"), ("56-", "window_foot_peak"), ("54-", "window_given"), ("04-", "window")]
    {
        let mut s = Session::new(&scenario(part), 4).unwrap();
        all(&mut s, &[json!({"do": "help", "mode": "half"}), json!({"do": "check"}), json!({"do": "hint"})]);
        assert_eq!(s.view()["hint"]["code"], code, "{part}");
    }
}

#[test]
fn early_beats_are_told_apart_from_those_that_must_be_counted() {
    let text = scenario("59-a-longer-window");
    let attempts = Scenario::read(&text).unwrap().attempt;
    let mut all = 0;
    for seed in 0..6 {
        let mut s = Session::new(&text, seed).unwrap();
        play(&mut s, &attempts[0].steps).unwrap();
        let view = s.view();
        let truth = &view["check"]["truth"];
        let kept = s.recording().unwrap();
        let (a, b) = kept.window().unwrap();
        let beats = s.chain().unwrap().truth();
        let shown = |peak_s: f64| peak_s - kept.start_s + kept.delay_s;
        let inside = beats.iter().filter(|beat| (a..b).contains(&shown(beat.peak_s)));
        let early = inside.clone().filter(|beat| beat.premature).count();
        assert_eq!(truth["unsure"].as_u64(), Some(early as u64), "seed {seed}");
        assert_eq!(truth["beats_in_window"].as_u64(), Some((inside.count() - early) as u64), "seed {seed}");
        all += early;
    }
    assert!(all > 3, "{all} early beats in six windows");
}

/// Two faults that were named are two deeds, each with its own name.
#[test]
fn unlike_deeds_of_one_kind_are_entries_of_their_own() {
    let mut s = Session::new(&scenario("71-find-the-fault-09"), 3).unwrap();
    s.run_long(3000);
    for fault in ["range_large", "cable_broken"] {
        all(&mut s, &[json!({"do": "name", "fault": fault})]);
    }
    all(&mut s, &[json!({"do": "record"})]);
    s.run_long(3000);
    all(&mut s, &[json!({"do": "stop"}), json!({"do": "check"})]);
    let view = s.view();
    let course = view["check"]["course"].as_array().unwrap();
    let named = course.iter().filter(|e| e["do"] == "name");
    let told: Vec<_> = named.map(|e| (e["args"]["fault"].clone(), e["times"].clone())).collect();
    assert_eq!(told, [(json!("range_large"), json!(1)), (json!("cable_broken"), json!(1))]);
}
