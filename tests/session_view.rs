//! The view is a list of what may be seen: nothing that a page can call tells the truth before the attempt is over, and a new
//! call has to be added here. What the samples themselves show (the detector's peaks, the table of values) is no secret.
//!
//! Known limits, since all of it runs on the student's machine: the page holds the scenario's text, which names the faults; and
//! whoever does an attempt again under the same seed and checks that twice has the truth of the first. README and
//! `exchange::handin` say what a result proves.

use common::{Leaf, leaves, play_without_measuring, scenario, words};
use dicrotic::assess::task::Kind;
use dicrotic::assess::window::{allowed, interval_rate};
use dicrotic::exchange::handin::result;
use dicrotic::exchange::{Samples, csv};
use dicrotic::scenario::{Scenario, fault};
use dicrotic::session::compact::About;
use dicrotic::session::{Action, Session};
use dicrotic::trace::listen::Listener;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

#[path = "session_view/common.rs"]
mod common;

const COUNT: &str = "the count";

/// What a page may not be told before the attempt is over.
#[derive(Clone, Debug, Default)]
struct Truth {
    /// Beats, s: on the bench's clock, from the recording's start, and as the recorder shows them.
    times: Vec<f64>,
    /// Beats in each of the student's windows.
    counts: Vec<f64>,
    /// Rates of the windows and of the record, beats/min.
    rates: Vec<f64>,
    /// The faults of the bench.
    faults: Vec<String>,
}

impl Truth {
    fn of(s: &Session) -> Self {
        let mut truth = Self {
            faults: s.scenario().unwrap().fault.iter().map(|f| f.name.clone()).collect(),
            ..Self::default()
        };
        truth.times.extend(s.chain().unwrap().truth().iter().map(|b| b.peak_s));
        let Some(kept) = s.recording() else { return truth };
        let (peaks, delay) = (s.reference_peaks(), kept.delay_s);
        truth.times.extend(peaks.iter().flat_map(|p| [p.at_s, p.at_s + delay]));
        truth.rates.extend(interval_rate(&peaks, 0.0, kept.recording.duration_s()));
        let cursors = &s.view()["cursors"];
        for ends in [cursors, &cursors["kept"]] {
            let Some((a, b)) = ends["a"].as_f64().zip(ends["b"].as_f64()) else { continue };
            let found = allowed(&peaks, a, b, s.criteria().edge_s, delay);
            truth.counts.push(found.exact as f64);
            truth.rates.push(60.0 * found.exact as f64 / (b - a));
            truth.rates.extend(interval_rate(&peaks, a - delay, b - delay));
        }
        truth
    }

    /// Which of it a number is.
    fn told_by(&self, x: f64) -> Option<&'static str> {
        let near = |all: &[f64], by: f64| all.iter().any(|t| (t - x).abs() < by);
        if near(&self.times, 0.0005) {
            Some("a beat to a millisecond")
        } else if near(&self.rates, 0.005) {
            Some("a rate to two decimals")
        } else {
            near(&self.counts, 1e-9).then_some(COUNT)
        }
    }
}

/// Everything that a page can have from a lab, see [`CALLS`].
fn told(s: &Session) -> Value {
    let about = About { student: "group 7".into(), tries: 1, begun_s: 1_790_000_000, ended_s: 1_790_000_100 };
    let parsed = |text: &str| {
        let mut value: Value = serde_json::from_str(text).unwrap();
        // The page holds the scenario's text already.
        value.as_object_mut().unwrap().remove("scenario");
        value
    };
    let code = s.code(&about).unwrap();
    // Nothing but what stands in these fields is written.
    assert_eq!(dicrotic::session::compact::Code::read(&code.write()).as_ref(), Ok(&code));
    let notes: Vec<Value> = s.recordings().iter().map(|t| json!(s.notes(t))).collect();
    let mut mine = s.clone();
    let snapped = (0..8).map(|k| mine.snap_to(1.7 * f64::from(k)).is_some()).collect::<Vec<_>>();
    let mut deaf = Session::clone(s);
    let heard = deaf.live_mut().map(|live| Listener::new(live).hear(live, 1.0));
    json!({
        "view": s.view(),
        "log": s.log(),
        "summary": s.overview(),
        "steps": s.told_steps(),
        "evidence": s.evidence().map(|e| e.told()),
        "debrief_hash": s.debrief_hash(),
        "save": parsed(&s.save().unwrap()),
        "result": parsed(&result::write(s, &about).unwrap()),
        "code": {
            "seed": code.seed, "samples": code.samples, "outcome": code.outcome, "program": code.program,
            "log": code.log,
        },
        // What is snapped to is the detector's; that none of it is a true beat is not to be asked.
        "snap": snapped,
        "clicks": heard.map(|h| h.clicks.iter().map(|c| [c.ago_s, c.height]).collect::<Vec<_>>()),
        "notes": notes,
        "geometry": [s.start_s(), s.time_base_s(), s.value_range().0, s.value_range().1],
        "is_worked": s.is_worked(),
        "clock": s.chain().unwrap().time_s(),
        "recorded": s.recorded_s(),
        "revision": s.revision(),
    })
}

/// What is asked of the core and refused is answered too.
fn refusals(s: &Session) -> Value {
    [
        json!({"do": "reveal"}),
        json!({"do": "hint"}),
        json!({"do": "cursor", "which": "a", "t": 1e6}),
        json!({"do": "mark", "t": -1.0}),
        json!({"do": "zoom", "from_s": 3.0, "to_s": 3.0}),
        json!({"do": "answer", "field": "range", "text": "1"}),
        json!({"do": "name", "fault": "no_such_fault"}),
        json!({"do": "open_recording", "recording": 77}),
        json!({"do": "time_base", "s": 3.3}),
        json!({"do": "keep_window"}),
    ]
    .into_iter()
    .filter_map(|action| s.clone().act(&Action::from_value(action).unwrap()).err())
    .map(|refusal| json!(refusal))
    .collect()
}

/// How the worksheet is filled in wrongly: the beats in a window to what is typed.
type Typed = fn(f64) -> Option<f64>;
const WAYS: [(&str, Typed); 5] = [
    ("nothing typed", |_| None),
    ("far off", |n| Some(2.0 * n + 211.0)),
    ("one too many", |n| Some(n + 1.0)),
    ("every bump", |n| Some(2.0 * n)),
    ("every other beat", |n| Some((0.5 * n).floor())),
];

fn act(s: &mut Session, action: Value) {
    s.act(&Action::from_value(action.clone()).unwrap()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
}

/// Puts cursors where nobody asked the truth for, and some marks; the `k`-th is no twin of the others.
fn lay_windows(s: &mut Session, k: u32) {
    let Some(duration_s) = s.recording().map(|t| t.recording.duration_s()) else { return };
    let task = s.view()["task"].clone();
    let kind = |kind| task["kind"] == json!(kind);
    let asked = task["seconds"].as_f64().or(task["longest_s"].as_f64()).unwrap_or(18.377);
    let twin = if kind(Kind::GivenWindow) { 0.0 } else { 1.31 * f64::from(k) };
    let length = asked.min(duration_s * if kind(Kind::Compare) { 0.4 } else { 0.7 }) - twin;
    let mut lay = |a: f64| {
        act(s, json!({"do": "cursor", "which": "a", "t": a}));
        act(s, json!({"do": "cursor", "which": "b", "t": (a + length).min(duration_s)}));
    };
    lay(1.2371);
    if kind(Kind::Compare) {
        act(s, json!({"do": "keep_window"}));
        let a = 1.2371 + length + 0.7713;
        act(s, json!({"do": "cursor", "which": "a", "t": a}));
        act(s, json!({"do": "cursor", "which": "b", "t": (a + 0.9 * length).min(duration_s)}));
    }
    for t in (0..9).map(|k| 1.5137 + 0.7177 * f64::from(k)).filter(|t| *t < duration_s) {
        act(s, json!({"do": "mark", "t": t}));
    }
}

/// Fields that the question asks for.
fn fields(s: &Session) -> Vec<String> {
    s.typed().map(|(field, _)| field.name().to_string()).collect()
}

fn fill_in(s: &mut Session, truth: &Truth, typed: Typed) {
    let window = s.recording().and_then(|t| t.window());
    for field in fields(s) {
        let n = truth.counts.get(usize::from(field.ends_with("_1"))).copied();
        let Some((count, (a, b))) = n.and_then(typed).zip(window) else { continue };
        let seconds = b - a;
        let text = match field.trim_end_matches("_1") {
            "count" => format!("{count}"),
            "seconds" => format!("{seconds:.2}"),
            "multiplier" => format!("{:.3}", 60.0 / seconds),
            "rate" => format!("{:.0}", 60.0 * count / seconds + 3.0),
            _ => format!("{}", 3.0 * count + 0.77),
        };
        act(s, json!({"do": "answer", "field": field, "text": text}));
    }
}

/// What was told at a stage of an attempt, and the truth then.
struct Stage {
    told: BTreeMap<String, Vec<Leaf>>,
    truth: Truth,
}

fn stage(s: &Session) -> Stage {
    let mut value = told(s);
    value["refusals"] = refusals(s);
    Stage { told: leaves(&value), truth: Truth::of(s) }
}

/// Before any check, after a wrong one, after each of the hints that may be had then; and at the end, where the truth is shown.
fn stages(ready: &Session, typed: Typed) -> BTreeMap<&'static str, Stage> {
    let mut s = ready.clone();
    let truth = Truth::of(&s);
    fill_in(&mut s, &truth, typed);
    if s.scenario().unwrap().name_faults {
        let wrong = fault::all().map(|f| f.id).find(|id| !truth.faults.iter().any(|f| f == id));
        act(&mut s, json!({"do": "name", "fault": wrong.unwrap()}));
    }
    let mut all = BTreeMap::from([("before a check", stage(&s))]);
    act(&mut s, json!({"do": "check"}));
    if s.check().unwrap().report.passed {
        return all;
    }
    all.insert("after a wrong check", stage(&s));
    for hint in ["look", "locate", "rule", "worked"] {
        act(&mut s, json!({"do": "hint"}));
        all.insert(hint, stage(&s));
    }
    act(&mut s, json!({"do": "check"}));
    assert!(s.check().unwrap().truth.is_some());
    all.insert(END, stage(&s));
    all
}

/// What the subject answers when asked, and how the hand looks: some faults are called after it.
const SEEN_OR_HEARD: [&str; 2] = ["view.bench.said", "view.bench.hand.looks"];
const END: &str = "at the end";
/// Seeds that are no number of beats.
const SEEDS: [u64; 3] = [5011, 5012, 5013];

/// Where the truth stands in what was told under several seeds. A number that is the truth by chance is it at one place under one
/// seed; one that is there under every seed (a size, a number in a list) has nothing to do with the beats.
fn leaks(seeds: &[&Stage]) -> BTreeSet<(String, &'static str)> {
    let mut found = BTreeSet::new();
    let mut hits: BTreeMap<(&str, &'static str), usize> = BTreeMap::new();
    for (k, stage) in seeds.iter().enumerate() {
        for (path, values) in &stage.told {
            let mut kinds = BTreeSet::new();
            for leaf in values {
                match leaf {
                    Leaf::Number(x) => {
                        let everywhere = seeds.iter().enumerate().all(|(j, other)| {
                            let there = other.told.get(path);
                            j == k || there.is_some_and(|v| v.contains(&Leaf::Number(*x)))
                        });
                        kinds.extend(stage.truth.told_by(*x).filter(|_| !everywhere));
                    }
                    Leaf::Text(_) if SEEN_OR_HEARD.contains(&path.as_str()) => {}
                    Leaf::Text(text) => {
                        if words(text).any(|w| stage.truth.faults.iter().any(|f| f == w)) {
                            found.insert((path.clone(), "a fault's name"));
                        }
                    }
                }
            }
            for kind in kinds {
                *hits.entry((path, kind)).or_default() += 1;
            }
            if words(path).any(|w| w == "allowed") {
                found.insert((path.clone(), "the allowed counts"));
            }
        }
    }
    // Small whole numbers meet by chance more often than others.
    let told = hits.into_iter().filter(|((_, kind), n)| *n >= if *kind == COUNT { seeds.len() } else { 2 });
    found.extend(told.map(|((path, kind), _)| (path.to_string(), kind)));
    found
}

/// Looks for the truth in all that can be had of a scenario; where it is found at the end.
fn search(part: &str) -> BTreeSet<&'static str> {
    let text = scenario(part);
    let attempts = Scenario::read(&text).unwrap().attempt;
    let mut at_the_end = BTreeSet::new();
    let faults = !Scenario::read(&text).unwrap().fault.is_empty();
    // One that mends all there is to mend, and the last one, which leaves something out; without faults they differ in what
    // is measured only, and that is done otherwise here.
    let chosen = if faults { vec![0, attempts.len() - 1] } else { vec![0] };
    // Which fault it is has nothing to do with what is typed.
    let most_ways = if faults { 2 } else { WAYS.len() };
    for attempt in chosen.into_iter().map(|k| &attempts[k]) {
        let ready: Vec<Session> = SEEDS
            .iter()
            .zip(0..)
            .map(|(seed, k)| {
                let mut s = Session::new(&text, *seed).unwrap();
                play_without_measuring(&mut s, attempt);
                lay_windows(&mut s, k);
                s
            })
            .filter(|s| s.recording().is_some() || s.view()["task"]["kind"] == json!(Kind::NameFault))
            .collect();
        if ready.is_empty() {
            continue;
        }
        for s in &ready {
            csv_holds_samples_and_notes(s);
        }
        let counts: BTreeSet<String> = ready.iter().map(|s| format!("{:?}", Truth::of(s).counts)).collect();
        let counted = ready.iter().any(|s| s.recording().is_some());
        assert!(counts.len() > 1 || !counted, "{part}: the same count under all seeds, choose others");
        let asked = !fields(&ready[0]).is_empty();
        for (way, typed) in WAYS.into_iter().take(if asked { most_ways } else { 1 }) {
            let seeds: Vec<_> = ready.iter().map(|s| stages(s, typed)).collect();
            for stage in seeds.iter().flat_map(|s| s.keys()).collect::<BTreeSet<_>>() {
                let told: Vec<&Stage> = seeds.iter().filter_map(|s| s.get(stage)).collect();
                let mut found = leaks(&told);
                if *stage == END {
                    at_the_end.extend(found.iter().map(|(_, kind)| *kind));
                    continue;
                }
                if way == "one too many" {
                    // One count less than the student's own, whatever that is.
                    found.retain(|(path, _)| !path.starts_with("view.check.spread.band."));
                }
                assert!(found.is_empty(), "{part}, {}, {way}, {stage}: {found:#?}", attempt.name);
            }
        }
    }
    at_the_end
}

/// The table of a recording is its samples, and the notes under it are those of `told`.
fn csv_holds_samples_and_notes(s: &Session) {
    for kept in s.recordings() {
        let samples = Samples::Recording(&kept.recording);
        let written = csv::write_with_notes(samples.rate_hz(), &samples.values(), &s.notes(kept));
        let bare = csv::write_with_notes(samples.rate_hz(), &samples.values(), &[]);
        assert!(written.starts_with(bare.trim_end()), "the notes stand under the table");
        let rows = bare.lines().filter(|l| l.starts_with(|c: char| c.is_ascii_digit())).count();
        assert_eq!(rows, kept.recording.len(), "a row a sample");
    }
}

const NUMBERS: [&str; 3] = ["a beat to a millisecond", "a rate to two decimals", COUNT];

/// The end of the attempt shows all of it, so that the search is known to find what is there.
fn found_at_the_end(part: &str, kinds: &[&'static str]) {
    let at_the_end = search(part);
    for kind in kinds {
        assert!(at_the_end.contains(kind), "{part}: {kind} is not even found at the end: {at_the_end:?}");
    }
}

#[test]
fn no_call_tells_the_truth_where_beats_are_counted() {
    for part in ["04-rest-pulse", "54-given-window", "59-a-longer-window"] {
        found_at_the_end(part, &NUMBERS);
    }
}

#[test]
fn no_call_tells_the_truth_of_intervals_and_after_exercise() {
    for part in ["57-between", "61-soon-after"] {
        found_at_the_end(part, &NUMBERS);
    }
}

#[test]
fn no_call_tells_the_truth_of_two_windows() {
    found_at_the_end("60-two-windows", &NUMBERS);
}

#[test]
fn no_call_tells_the_truth_where_nothing_is_counted() {
    // Who is asked for no count is told none at the end either.
    for part in ["55-the-clean", "56-read-the"] {
        assert_eq!(search(part), BTreeSet::new(), "{part}");
    }
}

#[test]
fn no_call_names_a_fault() {
    for part in ["20-thick-trace-a", "39-left-to-you-a", "44-two-at-once-a", "58-what-is-it"] {
        found_at_the_end(part, &["a fault's name"]);
    }
}

/// A term of a script stands for the truth; it is worked out for scripts only.
#[test]
fn terms_of_scripts_mean_nothing_to_an_attempt() {
    let mut s = Session::new(&scenario("04-rest-pulse"), 11).unwrap();
    play_without_measuring(&mut s, &Scenario::read(&scenario("04-rest-pulse")).unwrap().attempt[0]);
    lay_windows(&mut s, 0);
    for (field, term) in
        [("count", "@count"), ("seconds", "@seconds"), ("multiplier", "@multiplier"), ("rate", "@rate")]
    {
        act(&mut s, json!({"do": "answer", "field": field, "text": term}));
        let shown = s.view()["worksheet"][field].clone();
        assert_eq!((&shown["text"], &shown["value"]), (&json!(term), &json!(null)));
        assert!(!shown["problem"].is_null(), "{shown}");
    }
    for action in [
        json!({"do": "cursor", "which": "a", "t": "@beat"}),
        json!({"do": "mark", "t": "@peak"}),
        json!({"do": "zoom", "from_s": "@foot", "to_s": "@top"}),
    ] {
        let told = Action::from_value(action.clone()).unwrap_err().to_string();
        assert!(told.contains("invalid type: string"), "{action}: {told}");
    }
    act(&mut s, json!({"do": "check"}));
    assert!(!s.check().unwrap().report.passed);
}

/// Which group of actions a name belongs to is not told by the words of an error: `switch` is an action and no part of one.
#[test]
fn an_unknown_word_in_an_action_is_not_taken_for_an_unknown_action() {
    for (action, field) in [
        (json!({"do": "switch", "id": "switch", "on": true}), "id"),
        (json!({"do": "manoeuvre", "what": "manoeuvre"}), "what"),
        (json!({"do": "show", "mode": "show"}), "mode"),
    ] {
        let told = Action::from_value(action.clone()).unwrap_err().to_string();
        let name = action["do"].as_str().unwrap();
        let begins = format!("action \"{name}\": {field}: unknown variant `{name}`, expected ");
        assert!(told.starts_with(&begins), "{action}: {told}");
    }
    let told = Action::from_value(json!({"do": "format_disk"})).unwrap_err().to_string();
    assert_eq!(told, "there is no action \"format_disk\"");
}

/// All that the page can call, and why it cannot tell more than is looked at above. A new call has to be added, here and there.
const CALLS: &[(&str, &str)] = &[
    // Without an attempt: they know a scenario's text or a history, which the page gives them.
    ("scenario_brief", "text"),
    ("fault_catalogue", "the same for all scenarios"),
    ("deed_table", "the same for all scenarios"),
    ("task_kinds", "the same for all scenarios"),
    ("has_worked", "text"),
    ("skill_map", "history"),
    ("learner_state", "history"),
    ("next_bench", "history, and briefs that the page gives"),
    ("fingerprint", "a hash of samples"),
    ("fingerprint_of_attempt", "a hash of samples, of a script that the text holds"),
    ("scenario_json", "text"),
    // One's own pulse: what a camera sees or a finger taps, and no bench.
    ("push", "the reader's own pulse"),
    ("state", "the reader's own pulse"),
    ("trace", "the reader's own pulse"),
    ("rate_hz", "the reader's own pulse"),
    ("windows", "the reader's own pulse"),
    ("whole", "the reader's own pulse"),
    ("beats", "the reader's own pulse"),
    ("recording", "the reader's own pulse"),
    ("tap", "the reader's own pulse"),
    ("undo", "the reader's own pulse"),
    ("sum", "the reader's own pulse"),
    ("count", "the reader's own pulse"),
    ("compare_rates", "the reader's own pulse"),
    ("compose_scenario", "text"),
    ("fairness_of", "seeds of its own"),
    ("contradictions_of", "text that the page gave"),
    ("qr_svg", "text"),
    ("read_code", "told: code"),
    ("scenario_digest", "text"),
    ("scenario_minimised", "text"),
    ("seed_for", "key"),
    ("hashed_password", "key and word"),
    ("course_handed", "text"),
    ("course_file", "text"),
    ("is_course", "text"),
    ("results_in", "text"),
    // Begin an attempt.
    ("new", "begins"),
    ("worked", "begins, on the seed of its script"),
    ("restore", "begins"),
    ("from_code", "begins"),
    ("from_files", "begins, without a heart"),
    ("into_lab", "begins"),
    // Of an attempt.
    ("channel", "of an opened file"),
    ("channels", "names in a file"),
    ("worked_next", "tells the script's own seed"),
    ("is_worked", "told"),
    ("snap", "told: the detector's"),
    ("evidence", "told"),
    ("debrief_hash", "told"),
    ("save", "told"),
    ("kind", "told: view"),
    ("seed", "told: view"),
    ("advance", "tells nothing"),
    ("clock", "told"),
    ("recorded_seconds", "told: recorded"),
    ("act", "told: refusals"),
    ("revision", "told"),
    ("view", "told"),
    ("log", "told"),
    ("hear", "samples"),
    ("clicks", "told"),
    ("sound_rate", "a rate of samples"),
    ("deafen", "tells nothing"),
    ("steps_seen", "how often steps have changed"),
    ("steps", "told"),
    ("summary", "told"),
    ("recording_csv", "samples, told: notes"),
    ("set_theme", "tells nothing"),
    ("set_size", "tells nothing"),
    ("geometry", "told"),
    ("stylus", "the last sample"),
    ("draw_base", "draws the frame"),
    ("draw_trace", "draws samples"),
    ("draw_table", "draws rows of the view"),
    ("code", "told"),
    ("result", "told"),
    ("begun_seconds", "told: code"),
    ("channel_glances", "samples of a file"),
    ("export_recording", "samples, told: notes"),
    ("trace_svg", "samples, and the view's cursors and marks"),
    // Of what was handed in.
    ("put", "tells nothing"),
    ("step", "tells nothing"),
    ("graded", "told: result"),
    ("scenario", "text"),
    // Of a class.
    ("open", "text"),
    ("waiting", "text"),
    ("give", "text"),
    ("given", "text"),
    ("take", "told: result"),
    ("refuse", "text"),
    ("source", "text"),
    ("roster", "text"),
    ("forget_roster", "tells nothing"),
    ("rivals", "marks of benches that the page gave"),
    ("take_back", "tells nothing"),
    ("set_told", "text that the page gave"),
    ("terms", "text"),
    ("care", "text"),
    ("settle", "tells nothing"),
    ("told", "told: result"),
    ("items", "told: result"),
    ("csv", "told: result"),
    ("gradebook", "told: result"),
    ("everybody", "text"),
    // Of an answer key.
    ("head", "text"),
    ("rows", "opens with the instructor's word alone: tests/cli_handin.rs"),
    // Of a question bank: it makes benches of its own, with hearts that no attempt has.
    ("most", "a limit"),
    ("ask", "of a bench of its own"),
    ("picture", "of a bench of its own"),
    ("add", "tells nothing"),
    ("finish", "tells nothing"),
    // Of a package.
    ("names", "text"),
    ("file", "text"),
    ("pack", "tells nothing"),
    ("archive", "text"),
];

#[test]
fn every_call_of_the_page_is_accounted_for() {
    let known: BTreeSet<&str> = CALLS.iter().map(|(name, _)| *name).collect();
    let mut there = BTreeSet::new();
    let src = concat!(env!("CARGO_MANIFEST_DIR"), "/src");
    let folder = std::fs::read_dir(format!("{src}/web")).unwrap().map(|entry| entry.unwrap().path());
    for path in folder.chain([format!("{src}/web.rs").into()]) {
        let source = std::fs::read_to_string(path).unwrap();
        for line in source.lines().filter_map(|l| l.trim_start().strip_prefix("pub fn ")) {
            there.insert(line.split(['(', '<']).next().unwrap().to_string());
        }
    }
    let there: BTreeSet<&str> = there.iter().map(String::as_str).collect();
    assert!(there.len() > 40);
    assert_eq!(there, known);
}

/// The fields of a check as the page knows them. One more is no accident: it was listed in `session::view`.
#[test]
fn a_check_shows_the_listed_fields_and_no_others() {
    let mut s = Session::new(&scenario("44-two-at-once-a"), 11).unwrap();
    play_without_measuring(&mut s, &Scenario::read(&scenario("44-two-at-once-a")).unwrap().attempt[0]);
    lay_windows(&mut s, 0);
    let truth = Truth::of(&s);
    fill_in(&mut s, &truth, |n| Some(n + 1.0));
    let keys = |v: &Value| v.as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    act(&mut s, json!({"do": "check"}));
    let check = s.view()["check"].clone();
    let shown = [
        "course",
        "first_wrong",
        "hints",
        "misreading",
        "over",
        "passed",
        "process",
        "rubric",
        "spread",
        "steps",
        "trace",
        "truth",
        "try",
    ];
    assert_eq!(keys(&check), shown);
    assert_eq!((&check["truth"], &check["spread"]["others"]), (&json!(null), &json!(null)));
    let process = check["process"].as_array().unwrap();
    assert!(!process.is_empty() && process.iter().all(|r| r["args"].get("fault").is_none()), "{process:?}");
    act(&mut s, json!({"do": "check"}));
    let check = s.view()["check"].clone();
    assert_eq!(keys(&check), shown);
    assert!(check["truth"].is_object() && check["spread"]["others"].is_object());
    let process = check["process"].as_array().unwrap();
    assert!(process.iter().any(|r| r["args"]["fault"].is_string()), "{process:?}");
}
