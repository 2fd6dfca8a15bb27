//! What the recorder gives while somebody listens: the bench as a student of that seed meets it, with its faults and with what
//! happened before; in a scripted attempt the same samples as its recordings have.

use std::path::Path;

use dicrotic::measure::detect::detect;
use dicrotic::scenario::fault::{self, Fault};
use dicrotic::scenario::{Scenario, compose, text::value_of};
use dicrotic::session::heard::{fingerprint, fingerprint_of_attempt};
use dicrotic::session::{Session, script};
use serde_json::json;

fn shipped() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    let name = |path: &Path| path.file_stem().unwrap().to_string_lossy().into_owned();
    files.iter().map(|path| (name(path), std::fs::read_to_string(path).unwrap())).collect()
}

fn of(name: &str) -> String {
    shipped().into_iter().find(|(file, _)| file.ends_with(name)).unwrap().1
}

/// The bench of one fault, which the browser's comparison reads as well.
fn with(fault: &Fault, severity: f64) -> String {
    let bench = include_str!("faults/bench.toml");
    format!("{bench}\n[[fault]]\nname = \"{}\"\nseverity = {severity}\n", fault.id)
}

/// The bench of a scenario, heard for so long.
fn heard(text: &str, seed: u64, seconds: f64) -> Session {
    let mut session = Session::new(text, seed).unwrap();
    session.listen();
    let rate = f64::from(session.chain().unwrap().settings().rate_hz);
    session.run_long((seconds * rate) as u64);
    session
}

/// A scenario without what is wrong in it.
fn without_faults(text: &str) -> String {
    let mut value = value_of(text).unwrap();
    let faults = value.as_object_mut().unwrap().remove("fault").unwrap_or_default().to_string();
    // A file may have the range of its fault among the settings as well.
    if faults.contains("range_large") || faults.contains("range_small") {
        value["recorder"]["range_v"] = json!(0.05);
    }
    value.as_object_mut().unwrap().remove("name_faults");
    value.as_object_mut().unwrap().remove("pool");
    if let Some(task) = value.get_mut("task").and_then(|task| task.as_object_mut()) {
        // A task that asks for the fault, or that draws one, has none to ask for.
        task.remove("one_of");
        if task.get("kind") == Some(&json!("name_fault")) {
            task.remove("kind");
        }
    }
    compose::of_json(&value.to_string()).unwrap()
}

#[test]
fn after_exercise_the_heart_is_fast() {
    for seed in [1, 2, 196] {
        let session = heard(&of("50-after-exercise"), seed, 12.0);
        let kept = session.heard().last().unwrap().reached().unwrap();
        let values = kept.recording.values(0, kept.recording.len());
        let beats = detect(&values, kept.recording.rate_hz());
        let span = beats.last().unwrap() - beats[0];
        let rate = 60.0 * (beats.len() - 1) as f64 / span;
        // A subject of 68 beats/min who has just run for two minutes; 90 is a third above rest (design default).
        assert!(rate > 90.0, "seed {seed}: {rate}");
        // The clock of what is heard begins when the student comes.
        let truth: Vec<f64> = session.heard().last().unwrap().beats(&session);
        assert!(truth.iter().all(|t| (0.0..=12.0).contains(t)), "{truth:?}");
        assert!(truth.len().abs_diff(beats.len()) <= 2, "{} {}", truth.len(), beats.len());
    }
}

/// Faults of the screen or of the paper: what the recorder gives is as it should be.
const NOT_IN_THE_SAMPLES: [&str; 4] = ["trace_hidden", "time_base_fast", "time_base_slow", "others_file"];

#[test]
fn a_scenario_with_a_fault_gives_other_samples_than_without() {
    let mut with_faults = 0;
    for (name, text) in shipped() {
        let scenario = Scenario::read(&text).unwrap().drawn(7);
        if scenario.fault.is_empty() {
            continue;
        }
        with_faults += 1;
        let shows = scenario.fault.iter().any(|spec| !NOT_IN_THE_SAMPLES.contains(&spec.name.as_str()));
        let of = |text: &str| fingerprint(text, 7, 20_000).unwrap();
        assert_eq!(of(&text) != of(&without_faults(&text)), shows, "{name}");
    }
    assert!(with_faults >= 50, "{with_faults}");
}

#[test]
fn every_fault_is_at_work_where_the_samples_are_compared() {
    // As in the browser's comparison.
    const SAMPLES: u64 = 20_000;
    let bare = fingerprint(include_str!("faults/bench.toml"), 3, SAMPLES).unwrap();
    let (mut same, mut alike) = (Vec::new(), Vec::new());
    for fault in fault::all() {
        let of = |severity: f64| {
            let text = with(fault, severity);
            assert!(heard(&text, 3, SAMPLES as f64 / 1000.0).is_at_work(fault), "{} {severity}", fault.id);
            fingerprint(&text, 3, SAMPLES).unwrap()
        };
        let [mild, worst] = [fault.severity.0, fault.severity.1].map(of);
        if mild == bare || worst == bare {
            same.push(fault.id);
        } else if mild == worst && fault.severity.0 < fault.severity.1 {
            alike.push(fault.id);
        }
    }
    assert_eq!(same, NOT_IN_THE_SAMPLES);
    // Off zero the trace lies beyond the end of this range at either severity.
    assert_eq!(alike, ["off_zero"], "mild as worst");
}

#[test]
fn an_attempt_gives_the_samples_of_its_recordings() {
    let mut compared = 0;
    for name in
        ["01-first-wiring", "29-odd-wave-d", "34-spikes-and-gaps-e", "50-after-exercise", "53-whole-bench"]
    {
        let text = of(name);
        let scenario = Scenario::read(&text).unwrap();
        for attempt in &scenario.attempt {
            let replayed = script::replay(&text, attempt).unwrap();
            let session = script::listened(&text, attempt, attempt.seed, f64::INFINITY).unwrap();
            assert_eq!(session.log(), replayed.log(), "{name}, {}", attempt.name);
            assert_eq!(session.samples(), replayed.samples());
            for kept in replayed.recordings() {
                let Some(start) = &kept.start else { continue };
                let piece =
                    session.heard().iter().rfind(|piece| piece.first_sample() <= start.sample).unwrap();
                let from = (start.sample - piece.first_sample()) as usize;
                let to = from + kept.recording.len();
                assert_eq!(piece.recording().values(from, to), kept.recording.values(0, to - from), "{name}");
                compared += 1;
            }
        }
    }
    assert!(compared >= 8, "{compared}");
}

#[test]
fn what_the_computer_does_not_see_is_told() {
    // Apart: nothing reaches the computer.
    let apart = heard(&of("01-first-wiring"), 1, 5.0);
    let piece = apart.heard().last().unwrap();
    assert!(piece.reached().is_none());
    assert_eq!(piece.made().recording.len(), 5000);
    // A port that loses the recorder: the last value stands until it is there again.
    let session = heard(&with(fault::named("port_drops").unwrap(), 1.0), 9, 60.0);
    let piece = session.heard().last().unwrap();
    let unseen = piece.unseen();
    assert!(!unseen.is_empty() && unseen.iter().all(|gap| gap.start < gap.end), "{unseen:?}");
    let kept = piece.reached().unwrap();
    let first = (kept.start.as_ref().unwrap().sample - piece.first_sample()) as usize;
    let missing: Vec<_> = kept.notes.iter().filter(|note| note.text == "missing").collect();
    let inner = unseen.iter().filter(|gap| gap.start > first && gap.end < first + kept.recording.len());
    let mut gaps = 0;
    for (gap, note) in inner.zip(&missing) {
        let held = &kept.recording.codes()[gap.start - first - 1..gap.end - first];
        assert!(held.iter().all(|code| *code == held[0]), "{gap:?}");
        assert!((note.at_s - (gap.start - first) as f64 / 1000.0).abs() < 1e-9, "{note:?}");
        gaps += 1;
    }
    assert!(gaps > 0 && gaps == missing.len(), "{gaps} {}", missing.len());
}

#[test]
fn another_rate_begins_anew_and_an_end_comes_when_it_is_asked_for() {
    let text = of("29-odd-wave-d");
    let scenario = Scenario::read(&text).unwrap();
    let attempt = &scenario.attempt[0];
    let session = script::listened(&text, attempt, attempt.seed, f64::INFINITY).unwrap();
    let rates: Vec<f64> = session.heard().iter().map(|piece| piece.recording().rate_hz()).collect();
    assert_eq!(rates.last(), Some(&1000.0));
    assert!(rates.len() == 2 && rates[0] < 1000.0, "{rates:?}");
    let early = script::listened(&text, attempt, attempt.seed, 3.0).unwrap();
    assert!((early.attended_s() - 3.0).abs() < 0.06, "{}", early.attended_s());
    // The settings told are those at the first sample that arrived, also where they were turned before.
    let text = of("01-first-wiring");
    let mut session = Session::new(&text, 1).unwrap();
    session.listen();
    session.run_long(500);
    script::play(&mut session, &[json!({"do": "range", "v": 0.02})]).unwrap();
    session.run_long(500);
    assert!(session.heard()[0].reached().is_none());
    let attempt = &Scenario::read(&text).unwrap().attempt[0];
    let wiring = attempt.steps.iter().filter(|s| s["do"] == "plug" || s["do"] == "switch");
    script::play(&mut session, &wiring.cloned().collect::<Vec<_>>()).unwrap();
    session.run_long(500);
    let start = session.heard()[0].reached().unwrap().start.unwrap();
    assert_eq!((start.sample, start.settings.range_v), (1000, 0.02));
}

#[test]
fn a_fingerprint_knows_seed_length_and_attempt() {
    let text = of("52-three-at-once");
    let of = |seed, samples| fingerprint(&text, seed, samples).unwrap();
    let all = [of(1, 70_000), of(2, 70_000), of(1, 70_001)];
    assert!(all[0] != all[1] && all[0] != all[2] && all[1] != all[2], "{all:?}");
    assert_eq!(of(1, 70_000), all[0]);
    let count = Scenario::read(&text).unwrap().attempt.len();
    let mut attempts: Vec<String> = (0..count).map(|k| fingerprint_of_attempt(&text, k).unwrap()).collect();
    attempts.dedup();
    assert_eq!(attempts.len(), count);
    let none = fingerprint_of_attempt(&text, count).unwrap_err().to_string();
    assert!(none.contains(&format!("attempt[{count}]")), "{none}");
}
