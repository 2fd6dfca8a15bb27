//! What the debrief tells, from benches where it is so: every sentence about counts, times and rates has its attempt and its words in
//! every language; nothing of the truth is told before the last check; and what is kept of a window loses nothing.

use dicrotic::session::action::Refusal;
use dicrotic::session::script::play;
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
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

/// A bench that is wired and tuned, with a recording open.
fn half(part: &str, seed: u64) -> Session {
    let mut s = Session::new(&scenario(part), seed).unwrap();
    act(&mut s, json!({"do": "help", "mode": "half"})).unwrap();
    s
}

/// Plays steps; terms such as `@count` stand for right values.
fn with(session: &Session, steps: &[Value]) -> Session {
    let mut s = session.clone();
    play(&mut s, steps).unwrap_or_else(|e| panic!("{e}"));
    s
}

fn cursor(which: &str, t: impl Into<Value>) -> Value {
    json!({"do": "cursor", "which": which, "t": t.into()})
}

fn answer(field: &str, text: impl Into<Value>) -> Value {
    let text = match text.into() {
        Value::Number(n) => n.to_string().into(),
        text => text,
    };
    json!({"do": "answer", "field": field, "text": text})
}

/// A kind of question: its scenario, where the cursors go, and the right values of its fields.
struct Asked {
    part: &'static str,
    cursors: [&'static str; 2],
    right: &'static [(&'static str, &'static str)],
}

const WINDOW: &[(&str, &str)] =
    &[("count", "@count"), ("seconds", "@seconds"), ("multiplier", "@multiplier"), ("rate", "@rate")];

const KINDS: [Asked; 7] = [
    Asked { part: "04-rest", cursors: ["@beat+0.3", "@beat+16.2"], right: WINDOW },
    Asked { part: "54-", cursors: ["@beat+0.3", "@end"], right: WINDOW },
    Asked { part: "59-", cursors: ["@beat+0.3", "@beat+31.2"], right: WINDOW },
    Asked {
        part: "61-",
        cursors: ["@beat+0.3", "@beat+10.7"],
        right: &[
            ("count", "@count"),
            ("seconds", "@seconds"),
            ("multiplier", "@multiplier"),
            ("rate", "@rate"),
            ("middle", "@middle"),
        ],
    },
    Asked {
        part: "57-",
        cursors: ["@peak", "@last"],
        right: &[("count", "@count"), ("seconds", "@seconds"), ("rate", "@rate")],
    },
    Asked {
        part: "60-",
        cursors: ["@beat+20.3", "@beat+35.9"],
        right: &[
            ("count", "@count"),
            ("seconds", "@seconds"),
            ("rate", "@rate"),
            ("uncertainty", "@uncertainty"),
        ],
    },
    Asked {
        part: "56-",
        cursors: ["@foot", "@top"],
        right: &[("range", "@range"), ("amplitude", "@amplitude")],
    },
];

impl Asked {
    fn of(part: &str) -> &'static Asked {
        KINDS.iter().find(|k| k.part.starts_with(part)).unwrap()
    }

    /// The cursors where they belong; of two windows the first one read and kept.
    fn placed(&self, seed: u64) -> Session {
        let mut s = half(self.part, seed);
        if self.part == "60-" {
            let first = [cursor("a", "@beat+0.3"), cursor("b", "@beat+15.7")];
            let read = [answer("count", "@count"), answer("seconds", "@seconds"), answer("rate", "@rate")];
            s = with(&with(&s, &first), &read);
            act(&mut s, json!({"do": "keep_window"})).unwrap();
        }
        with(&s, &[cursor("a", self.cursors[0]), cursor("b", self.cursors[1])])
    }

    /// Everything right but what stands in `but`, checked.
    fn checked(&self, placed: &Session, but: &[(&str, &str)]) -> Session {
        let all = self.right.iter().filter(|(field, _)| !but.iter().any(|(f, _)| f == field));
        let mut steps: Vec<Value> = all.chain(but).map(|(field, text)| answer(field, *text)).collect();
        steps.push(json!({"do": "check"}));
        with(placed, &steps)
    }
}

fn codes(s: &Session) -> Vec<(String, String)> {
    let view = s.view();
    let text = |v: &Value| v.as_str().unwrap().to_string();
    view["check"]["steps"]
        .as_array()
        .unwrap()
        .iter()
        .map(|f| (text(&f["code"]), text(&f["verdict"])))
        .collect()
}

fn verdict(s: &Session, code: &str) -> String {
    codes(s).into_iter().find(|(c, _)| c == code).map_or_else(|| format!("none of {:?}", codes(s)), |f| f.1)
}

fn named(s: &Session) -> String {
    s.view()["check"]["misreading"]["id"].as_str().unwrap_or("").to_string()
}

/// Messages and attributes that there are words for in a language.
fn words(language: &str) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    for folder in ["", "/later"] {
        let path = format!("{}/www/texts/{language}{folder}", env!("CARGO_MANIFEST_DIR"));
        for entry in std::fs::read_dir(path).unwrap() {
            let path = entry.unwrap().path();
            let Ok(text) = std::fs::read_to_string(&path) else { continue };
            let mut message = String::new();
            for line in text.lines() {
                let Some((key, words)) = line.split_once(" =") else { continue };
                if let Some(attribute) = key.strip_prefix("    .") {
                    found.insert(format!("{message}.{attribute}"), words.trim().to_string());
                } else if !key.starts_with(' ') {
                    message = key.to_string();
                    found.insert(message.clone(), words.trim().to_string());
                }
            }
        }
    }
    found
}

#[test]
fn every_sentence_about_a_reading_has_a_bench_where_it_is_so_and_its_words() {
    let mut told: BTreeSet<(String, &str)> = BTreeSet::new();
    let mut see = |s: &Session, code: &str, expected: &str| {
        assert_eq!(verdict(s, code), expected, "{code}: {:#}", s.view()["check"]["steps"]);
        told.insert((
            format!("step-{code}"),
            if expected == "right" || expected == "note" { "see" } else { "see ask do" },
        ));
    };
    let own = Asked::of("04");
    let bench = own.placed(3);
    let window = bench.recording().unwrap().window().unwrap();
    let (n, shown): (f64, Vec<f64>) = {
        let kept = bench.recording().unwrap();
        let shown: Vec<f64> = bench.reference_peaks().iter().map(|p| p.at_s + kept.delay_s).collect();
        (shown.iter().filter(|t| **t >= window.0 && **t < window.1).count() as f64, shown)
    };
    let right = own.checked(&bench, &[]);
    see(&right, "count_right", "right");
    see(&right, "seconds_right", "right");
    see(&right, "rate_right", "right");
    see(&right, "plausible_yes", "note");
    // T in whole seconds: the window is 15.9 s long.
    let rounded = own.checked(&bench, &[("seconds", "16")]);
    see(&rounded, "seconds_rounded", "right");
    assert_eq!(rounded.view()["check"]["passed"], true);
    let costs = |s: &Session| {
        let steps = s.view()["check"]["steps"].clone();
        let args = steps.as_array().unwrap().iter().find(|f| f["code"] == "seconds_rounded").unwrap()["args"]
            .clone();
        (args["costs"].as_f64().unwrap(), args["beat"].as_f64().unwrap())
    };
    let (cost, beat) = costs(&rounded);
    let expected = 60.0 * n * (1.0 / 15.9 - 1.0 / 16.0);
    assert!((cost - expected).abs() <= 0.051 && (beat - 60.0 / 16.0).abs() <= 0.051, "{cost}, {beat}");
    // B between the foot and the peak of a beat: who counts feet has one more.
    let k = shown.iter().position(|t| *t > 16.9).unwrap();
    let feet = with(&bench, &[cursor("b", shown[k] - 0.08)]);
    let count = |s: &Session| {
        let (a, b) = s.recording().unwrap().window().unwrap();
        shown.iter().filter(|t| **t >= a && **t < b).count() as f64
    };
    let by = |s: &Session, n: f64| {
        own.checked(s, &[("count", &n.to_string()), ("rate", &(60.0 * n / length(s)).round().to_string())])
    };
    let one_more = by(&feet, count(&feet) + 1.0);
    see(&one_more, "count_feet", "right");
    assert_eq!(one_more.view()["check"]["passed"], true);
    // A on a beat, and that beat counted as zero.
    let zero = with(&bench, &[cursor("a", shown[1])]);
    let after = shown[2..].iter().filter(|t| **t < window.1).count() as f64;
    let from_zero = by(&with(&zero, &[cursor("a", shown[1] - 0.02)]), after);
    see(&from_zero, "count_from_zero", "right");
    assert_eq!(from_zero.view()["check"]["passed"], true);
    // The unit, and what waits for it.
    let minutes = own.checked(&bench, &[("seconds", "0.27")]);
    see(&minutes, "seconds_unit", "wrong");
    see(&minutes, "multiplier_waits", "note");
    see(&own.checked(&bench, &[("seconds", ""), ("multiplier", "")]), "rate_unplaced", "missing");
    see(&own.checked(&bench, &[("rate", "55")]), "rate_arithmetic", "wrong");
    see(&own.checked(&bench, &[("count", "@count*2"), ("rate", "@rate*2")]), "count_double", "wrong");
    let intervals = Asked::of("57");
    let run = intervals.placed(4);
    see(
        &intervals.checked(&run, &[("count", "@count-1"), ("rate", "@rate*0.9")]),
        "count_gaps_short",
        "wrong",
    );
    see(&intervals.checked(&run, &[("count", "@count+1"), ("rate", "@rate*1.1")]), "count_posts", "wrong");
    let milliseconds = (1000.0 * length(&run)).round().to_string();
    see(&intervals.checked(&run, &[("seconds", &milliseconds)]), "rate_waits", "note");
    // B one beat short of what was asked.
    let kept = run.recording().unwrap();
    let beats: Vec<f64> = run.reference_peaks().iter().map(|p| p.at_s + kept.delay_s).collect();
    let (_, b) = kept.window().unwrap();
    let before = beats.iter().copied().filter(|t| *t < b - 0.2).fold(0.0, f64::max);
    let short = with(&run, &[cursor("b", before)]);
    let short = intervals.checked(&short, &[("rate", "@rate")]);
    see(&short, "window_other_n", "wrong");
    see(&short, "count_waits", "note");
    // A range in which the pulse does not fit.
    let mut cut = Session::new(&scenario("04-rest"), 3).unwrap();
    play(
        &mut cut,
        &[
            json!({"wait": 5}),
            json!({"do": "range", "v": 0.01}),
            json!({"wait": 4}),
            json!({"do": "record"}),
            json!({"wait": 20}),
            json!({"do": "stop"}),
            json!({"do": "check"}),
        ],
    )
    .unwrap();
    see(&cut, "trace_clipped", "wrong");
    for language in ["en", "es"] {
        let words = words(language);
        for (stem, parts) in &told {
            for part in parts.split(' ') {
                // What is missing needs no question.
                let may = part == "ask" && stem.contains("unplaced");
                assert!(may || words.contains_key(&format!("{stem}.{part}")), "{language}: {stem}.{part}");
            }
        }
    }
    assert!(told.len() >= 18, "{told:?}");
}

fn length(s: &Session) -> f64 {
    let (a, b) = s.recording().unwrap().window().unwrap();
    b - a
}

#[test]
fn each_misreading_is_named_from_a_real_attempt_with_its_words() {
    let own = Asked::of("04");
    let bench = own.placed(3);
    // Later in the recording, so that B's place and the interval are two numbers.
    let bench = with(&bench, &[cursor("a", "@beat+2.3"), cursor("b", "@beat+17.9")]);
    let duration = bench.recording().unwrap().recording.duration_s();
    let (_, b) = bench.recording().unwrap().window().unwrap();
    let timed = |seconds: f64| {
        let multiplier = format!("{:.2}", 60.0 / seconds);
        let count: f64 = {
            let kept = bench.recording().unwrap();
            let (a, b) = kept.window().unwrap();
            let shown = bench.reference_peaks().into_iter().map(|p| p.at_s + kept.delay_s);
            shown.filter(|t| *t >= a && *t < b).count() as f64
        };
        let rate = format!("{:.0}", 60.0 * count / seconds);
        own.checked(
            &bench,
            &[("seconds", &format!("{seconds:.2}")), ("multiplier", &multiplier), ("rate", &rate)],
        )
    };
    let intervals = Asked::of("57");
    let run = intervals.placed(4);
    let range = Asked::of("56");
    let tall = range.placed(310);
    let mut nowhere = half("04-rest", 3);
    play(
        &mut nowhere,
        &[
            answer("count", "21"),
            answer("seconds", format!("{duration:.2}")),
            answer("multiplier", "3"),
            answer("rate", "63"),
            json!({"do": "check"}),
        ],
    )
    .unwrap();
    let vectors = [
        ("time_at_b", "seconds", timed(b)),
        ("whole_recording", "seconds", timed(duration)),
        ("whole_recording", "seconds", nowhere),
        // The screen that was live while it was recorded, 10 s; the one that the recording opened on shows all of it.
        ("screen_length", "seconds", timed(10.0)),
        ("minutes", "seconds", timed(length(&bench) / 60.0)),
        // Two squares a second at 5 s a screen.
        ("grid_squares", "seconds", {
            let zoomed = with(&bench, &[json!({"do": "time_base", "s": 5})]);
            let squares = (4.0 * length(&bench)).round() / 2.0;
            own.checked(
                &zoomed,
                &[
                    ("seconds", &squares.to_string()),
                    ("multiplier", &format!("{:.2}", 60.0 / squares)),
                    ("rate", "35"),
                ],
            )
        }),
        ("both_sides", "range", range.checked(&tall, &[("range", "@range*2")])),
        ("posts_counted", "count", intervals.checked(&run, &[("count", "@count+1"), ("rate", "@rate*1.1")])),
        ("gap_missed", "count", intervals.checked(&run, &[("count", "@count-1"), ("rate", "@rate*0.9")])),
        ("bumps_counted", "count", own.checked(&bench, &[("count", "@count*2"), ("rate", "@rate*2")])),
        ("other_multiplier", "multiplier", own.checked(&bench, &[("multiplier", "6"), ("rate", "@count*6")])),
        ("not_scaled", "rate", own.checked(&bench, &[("rate", "@count")])),
    ];
    let (en, es) = (words("en"), words("es"));
    for (id, step, s) in &vectors {
        let check = s.view()["check"].clone();
        assert_eq!(
            (named(s).as_str(), &check["misreading"]["step"]),
            (*id, &json!(step)),
            "{:#}",
            check["steps"]
        );
        for part in ["see", "ask", "do"] {
            let key = format!("misreading-{id}.{part}");
            assert!(en.contains_key(&key) && es.contains_key(&key), "{key}");
        }
        let class = format!("class-misreading-{id}");
        assert!(en.contains_key(&class) && es.contains_key(&class), "{class}");
    }
    // The cure of intervals leaves the cursors where the question wants them.
    for id in [
        "misreading-posts_counted.do",
        "misreading-gap_missed.do",
        "step-count_gaps_short.do",
        "step-count_posts.do",
    ] {
        assert!(en[id].contains("Leave A and B on their beats"), "{id}: {}", en[id]);
        assert!(es[id].contains("Deja A y B en sus latidos"), "{id}: {}", es[id]);
    }
}

/// Ways of getting it wrong, a field and what is written there, for fields that a question has.
const WRONG: [&[(&str, &str)]; 22] = [
    &[("count", "@count*2"), ("rate", "@rate*2")],
    &[("count", "@count+2"), ("rate", "@rate*1.1")],
    &[("count", "@count-2"), ("rate", "@rate*0.9")],
    &[("count", "@count*0.5")],
    &[("count", "")],
    &[("count", "@count*2")],
    &[("count", "@count+1")],
    &[("seconds", "7")],
    &[("seconds", "0.25")],
    &[("seconds", "14000")],
    &[("seconds", "")],
    &[("multiplier", "7.7"), ("rate", "@count*7.7")],
    &[("multiplier", "7.7")],
    &[("multiplier", "")],
    &[("rate", "@count")],
    &[("rate", "31")],
    &[("rate", "")],
    &[("middle", "3")],
    &[("uncertainty", "0.1")],
    &[("uncertainty", "")],
    &[("range", "@range*2")],
    &[("amplitude", "1")],
];

/// Every number of a value with the way to it; what a list holds is told apart by its own name.
fn numbers(value: &Value, way: &str, found: &mut Vec<(String, f64)>) {
    match value {
        Value::Number(n) => found.push((way.to_string(), n.as_f64().unwrap())),
        Value::Array(list) => {
            for (k, item) in list.iter().enumerate() {
                let name = ["code", "row", "log"]
                    .iter()
                    .find_map(|key| item.get(*key))
                    .map_or(k.to_string(), Value::to_string);
                numbers(item, &format!("{way}/{name}"), found);
            }
        }
        Value::Object(fields) => {
            fields.iter().for_each(|(key, item)| numbers(item, &format!("{way}/{key}"), found))
        }
        _ => {}
    }
}

/// What nobody may be told: counts, rates and times of beats, and what right numbers come to.
struct Secret {
    counts: Vec<f64>,
    rates: Vec<f64>,
    /// What one beat weighs in each window, beats/min.
    beats: Vec<f64>,
    times: Vec<f64>,
}

impl Secret {
    fn of(placed: &Session) -> Self {
        let kept = placed.recording().unwrap();
        let times: Vec<f64> = placed.reference_peaks().iter().map(|p| p.at_s + kept.delay_s).collect();
        let (mut counts, mut rates, mut beats) = (Vec::new(), Vec::new(), Vec::new());
        let window = placed.view()["cursors"]["kept"].clone();
        let first = window["a"].as_f64().zip(window["b"].as_f64());
        for (a, b) in [kept.window(), first].into_iter().flatten() {
            let n = times.iter().filter(|t| **t >= a && **t < b).count() as f64;
            // The height of one beat has no count.
            if n < 4.0 {
                continue;
            }
            counts.push(n);
            rates.push(60.0 * n / (b - a));
            beats.push(60.0 / (b - a));
            let inside: Vec<f64> = times.iter().copied().filter(|t| *t >= a && *t < b).collect();
            if let (Some(x), Some(y), true) = (inside.first(), inside.last(), inside.len() > 1) {
                rates.push(60.0 * (n - 1.0) / (y - x));
            }
        }
        if let (Some(x), Some(y)) = (times.first(), times.last()) {
            rates.push(60.0 * (times.len() as f64 - 1.0) / (y - x));
        }
        counts.push(times.len() as f64);
        Self { counts, rates, beats, times }
    }

    fn holds(&self, v: f64) -> bool {
        self.counts.contains(&v)
            || self.rates.iter().any(|r| (v - r).abs() <= 0.051 || v == r.round())
            || self.beats.iter().any(|b| (v - b).abs() <= 0.006)
            || self.times.iter().any(|t| (v - t).abs() <= 0.006)
    }
}

/// The ways to numbers of the check and the hint that are secret, but for what the student has put down: what was typed, where the cursors
/// stand and how far apart.
fn leaks(s: &Session, secret: &Secret) -> BTreeSet<String> {
    let view = s.view();
    let mut own: Vec<f64> = Vec::new();
    let mut set = Vec::new();
    numbers(&view["cursors"], "", &mut set);
    own.extend(set.iter().map(|(_, v)| *v));
    own.extend(view["worksheet"].as_object().unwrap().values().filter_map(|f| f["value"].as_f64()));
    let mut found = Vec::new();
    numbers(&view["check"], "check", &mut found);
    numbers(&view["hint"], "hint", &mut found);
    let is_own = |v: f64| own.iter().any(|o| (o - v).abs() <= 0.006);
    found.into_iter().filter(|(_, v)| secret.holds(*v) && !is_own(*v)).map(|(way, _)| way).collect()
}

#[test]
fn no_number_of_the_truth_is_told_before_the_last_check() {
    let (mut looked, mut found) = (0, Vec::new());
    for kind in &KINDS {
        // A number that is told is told on every heart; one that happens to be the same is so on one.
        let benches: Vec<(Session, Secret)> = (0..4)
            .map(|seed| {
                let placed = kind.placed(340 + seed);
                let secret = Secret::of(&placed);
                (placed, secret)
            })
            .collect();
        let fits = |wrong: &&&[(&str, &str)]| {
            wrong.iter().all(|(field, _)| kind.right.iter().any(|(asked, _)| asked == field))
        };
        for wrong in WRONG.iter().filter(fits) {
            let mut everywhere: Option<BTreeSet<String>> = None;
            for (placed, secret) in &benches {
                let mut s = kind.checked(placed, wrong);
                let check = s.view()["check"].clone();
                assert_eq!(
                    (&check["passed"], &check["truth"]),
                    (&json!(false), &Value::Null),
                    "{} {wrong:?}: {:#}",
                    kind.part,
                    check["steps"]
                );
                let mut ways = leaks(&s, secret);
                // Nor on the way up the ladder of hints.
                for _ in 0..4 {
                    act(&mut s, json!({"do": "hint"})).unwrap();
                    ways.extend(leaks(&s, secret));
                }
                looked += 1;
                everywhere = Some(everywhere.map_or(ways.clone(), |before| &before & &ways));
            }
            found
                .extend(everywhere.unwrap().into_iter().map(|way| format!("{} {wrong:?}: {way}", kind.part)));
        }
        // The same look finds what is told once it may be.
        if kind.part != "56-" {
            let wrong: &[(&str, &str)] = &[("rate", "31")];
            let mut after: Option<BTreeSet<String>> = None;
            for (placed, secret) in &benches {
                let mut s = kind.checked(placed, wrong);
                act(&mut s, json!({"do": "reveal"})).unwrap();
                let ways = leaks(&s, secret);
                after = Some(after.map_or(ways.clone(), |before| &before & &ways));
            }
            assert!(after.unwrap().len() >= 3, "{}: the truth itself was not found", kind.part);
        }
    }
    println!("{looked} first checks");
    assert!(looked > 200, "{looked}");
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn a_band_and_a_word_on_the_record_are_given_only_where_every_step_holds() {
    for kind in KINDS.iter().filter(|k| k.part != "56-") {
        let placed = kind.placed(351);
        let right = kind.checked(&placed, &[]);
        let check = right.view()["check"].clone();
        assert_eq!(check["passed"], true, "{}: {:#}", kind.part, check["steps"]);
        // A run of intervals is no count: nothing is in doubt at its ends.
        let intervals = kind.part == "57-";
        assert_eq!(check["spread"]["band"].is_object(), !intervals, "{}", kind.part);
        let wrong: [&[(&str, &str)]; 3] = [&[("count", "@count*2")], &[("seconds", "7")], &[("rate", "31")]];
        for but in wrong {
            let s = kind.checked(&placed, but);
            assert_eq!(s.view()["check"]["spread"], Value::Null, "{} {but:?}", kind.part);
            assert!(
                !codes(&s).iter().any(|(code, _)| code.starts_with("plausible")),
                "{} {but:?}",
                kind.part
            );
            // Over, it is worked out from the window's own beats.
            let mut s = s;
            act(&mut s, json!({"do": "reveal"})).unwrap();
            let (band, rate) = (s.view()["check"]["spread"].clone(), check["spread"]["band"]["rate"].clone());
            assert_eq!(band["band"]["rate"], rate, "{} {but:?}", kind.part);
        }
    }
    // Of two windows all may hold but how sure the rate is: the band would tell.
    let compare = Asked::of("60");
    let placed = compare.placed(351);
    let s = compare.checked(&placed, &[("uncertainty", "0.1")]);
    assert_eq!(
        (verdict(&s, "uncertainty_small").as_str(), &s.view()["check"]["spread"]),
        ("wrong", &Value::Null)
    );
}

#[test]
fn where_no_rate_was_asked_the_truth_has_none() {
    let range = Asked::of("56");
    let s = range.checked(&range.placed(310), &[]);
    let truth = s.view()["check"]["truth"].clone();
    assert_eq!(s.view()["check"]["passed"], true);
    for field in ["window_rate", "record_rate", "beats_in_window", "own_window", "own_span", "record"] {
        assert_eq!(truth[field], Value::Null, "{field}");
    }
    assert_eq!(truth["range_mv"], s.view()["worksheet"]["range"]["value"]);
    assert_eq!(truth["amplitude_mv"], s.view()["worksheet"]["amplitude"]["value"]);
    // Of intervals the run is told that was timed, not a window that was counted.
    let intervals = Asked::of("57");
    let s = intervals.checked(&intervals.placed(4), &[]);
    let truth = s.view()["check"]["truth"].clone();
    assert_eq!(truth["own_span"]["intervals"], s.view()["task"]["n"]);
    assert_eq!((&truth["own_window"], &truth["beats_in_window"]), (&Value::Null, &Value::Null));
}

fn texts(s: &Session) -> Vec<String> {
    let view = s.view();
    let of = |field: &str| view["worksheet"][field]["text"].as_str().unwrap().to_string();
    ["count_1", "seconds_1", "rate_1", "count", "seconds", "rate"].map(of).to_vec()
}

#[test]
fn keeping_a_window_loses_nothing_that_was_typed() {
    let bench = with(&half("60-", 4), &[cursor("a", 1.0), cursor("b", 17.0)]);
    let keep = json!({"do": "keep_window"});
    // Written where it says window 2, as most do: it becomes that of window 1, and can be mended there.
    let s = with(&bench, &[answer("count", "18"), answer("seconds", "16"), keep.clone()]);
    assert_eq!(texts(&s), ["18", "16", "", "", "", ""]);
    let s = with(&s, &[answer("count_1", "19")]);
    assert_eq!(texts(&s), ["19", "16", "", "", "", ""]);
    // Written where it belongs: it stays.
    let s = with(&bench, &[answer("count_1", "18"), answer("seconds_1", "16"), keep.clone()]);
    assert_eq!(texts(&s), ["18", "16", "", "", "", ""]);
    // Both windows read before the first is kept: both stay.
    let both = [answer("count_1", "18"), answer("count", "20"), answer("rate", "75"), keep.clone()];
    assert_eq!(texts(&with(&bench, &both)), ["18", "", "", "20", "", "75"]);
    // Another window kept in the place of the first: the new numbers become the first's, the old ones are not thrown away.
    let s = with(
        &bench,
        &[answer("count", "18"), keep.clone(), cursor("b", 18.0), answer("count", "19"), keep.clone()],
    );
    assert_eq!(texts(&s), ["19", "", "", "18", "", ""]);
    // Kept again with nothing new: nothing changes.
    let s = with(&bench, &[answer("count", "18"), keep.clone(), cursor("b", 18.0), keep]);
    assert_eq!(texts(&s), ["18", "", "", "", "", ""]);
}

/// What the texts say of the range is what is accepted: who reads the glossary and does it is right.
#[test]
fn every_text_means_by_full_scale_what_is_accepted() {
    let range = Asked::of("56");
    let placed = range.placed(310);
    let one_side = range.checked(&placed, &[("range", "@range")]);
    assert_eq!(verdict(&one_side, "range_right"), "right");
    let (en, es) = (words("en"), words("es"));
    // The example in the glossary: what it calls the range is the voltage of one edge.
    assert!(
        en["word-full_scale.is"].contains("to one side of zero") && en["word-full_scale.is"].contains('±')
    );
    assert!(es["word-full_scale.is"].contains("a un lado de cero") && es["word-full_scale.is"].contains('±'));
    for (language, words, both) in [
        ("en", &en, ["bottom to the top", "lowest line to the highest", "lowest to the highest"]),
        ("es", &es, ["de abajo a arriba", "de la línea más baja a la más alta", "del más bajo al más alto"]),
    ] {
        for (key, text) in words {
            let told = both.iter().any(|b| text.contains(b));
            let range = text.contains("range")
                || text.contains("rango")
                || key.contains("range")
                || key.contains("scale");
            assert!(!(told && range), "{language}: {key} measures the range from edge to edge: {text}");
        }
        assert!(words["sheet-line-range"].ends_with('±'), "{language}");
    }
}
