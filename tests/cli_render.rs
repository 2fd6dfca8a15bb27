//! `render`: a bench as a student of that seed meets it, or what the recorder gave in a scripted attempt.

mod command;

use command::{SCENARIO, dicrotic, error_of, scratch, told, written};
use dicrotic::scenario::Scenario;
use dicrotic::session::script;

fn scenario(name: &str) -> String {
    format!("{}/scenarios/{name}.toml", env!("CARGO_MANIFEST_DIR"))
}

fn values(table: &str) -> Vec<f64> {
    let table = std::fs::read_to_string(table).unwrap();
    table.lines().skip(1).map(|line| line.split(',').nth(1).unwrap().parse().unwrap()).collect()
}

#[test]
fn after_exercise_it_renders_a_fast_heart() {
    let folder = scratch("exercise");
    let at = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let (out, truth) = (at("a.csv"), at("truth.txt"));
    let file = scenario("50-after-exercise");
    told(&mut dicrotic(&["render", &file, "--seconds", "10", "--out", &out, "--truth", &truth]));
    let beats: Vec<f64> =
        std::fs::read_to_string(&truth).unwrap().lines().map(|line| line.parse().unwrap()).collect();
    let rate = 60.0 * (beats.len() - 1) as f64 / (beats[beats.len() - 1] - beats[0]);
    // At rest it is 68 beats/min; 90 is a third above (design default).
    assert!(rate > 90.0, "{rate}: {beats:?}");
    assert!(beats.iter().all(|t| (0.0..=10.0).contains(t)), "{beats:?}");
    let found = told(&mut dicrotic(&["detect", &out]));
    assert!(found.lines().count().abs_diff(beats.len()) <= 2, "{found}");
}

#[test]
fn faults_are_rendered() {
    let folder = scratch("faulty");
    let at = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let rendered = |severity: &str| {
        let text = format!("{SCENARIO}[[fault]]\nname = \"finger_cold\"\nseverity = {severity}\n");
        let (file, out) = (written(&folder, "ill.toml", &text), at("ill.csv"));
        told(&mut dicrotic(&["render", &file, "--seconds", "10", "--out", &out]));
        values(&out)
    };
    let (well, out) = (written(&folder, "well.toml", SCENARIO), at("well.csv"));
    told(&mut dicrotic(&["render", &well, "--seconds", "10", "--out", &out]));
    let (well, mild, severe) = (values(&out), rendered("0.0"), rendered("0.5"));
    let height = |of: &[f64]| {
        let of = &of[of.len() / 2..];
        of.iter().fold(f64::MIN, |h, v| h.max(*v)) - of.iter().fold(f64::MAX, |l, v| l.min(*v))
    };
    let heights = [&well, &mild, &severe].map(|of| height(of));
    assert!(heights[0] > 1.2 * heights[1] && heights[1] > heights[2], "{heights:?}");
}

#[test]
fn an_attempt_is_played_and_gives_what_its_recording_has() {
    let folder = scratch("attempt");
    let at = |name: &str| folder.join(name).to_str().unwrap().to_string();
    let file = scenario("01-first-wiring");
    let text = std::fs::read_to_string(&file).unwrap();
    let read = Scenario::read(&text).unwrap();
    let attempt = &read.attempt[0];
    let (out, truth, edf) = (at("a.csv"), at("truth.txt"), at("a.edf"));
    let play = ["render", &file, "--attempt", &attempt.name, "--out"];
    told(&mut dicrotic(&[&play[..], &[&out, "--truth", &truth]].concat()));
    let session = script::replay(&text, attempt).unwrap();
    let kept = session.recordings().last().unwrap();
    let expected = kept.recording.values(0, kept.recording.len());
    let found = values(&out);
    // A table has as many digits as tell two codes apart.
    let same = |a: &[f64]| a.iter().zip(&expected).all(|(a, b)| (a - b).abs() < 1e-6);
    let from = found.windows(expected.len()).position(same);
    assert!(from.is_some(), "{} values, {} recorded", found.len(), expected.len());
    // Its beats are in the file.
    let beats = told(&mut dicrotic(&["detect", &out])).lines().count();
    let true_beats = std::fs::read_to_string(&truth).unwrap().lines().count();
    assert!(beats > 10 && beats <= true_beats, "{beats} {true_beats}");
    // Other forms have notes of what was done meanwhile.
    told(&mut dicrotic(&[&play[..], &[&edf]].concat()));
    let bytes = std::fs::read(&edf).unwrap();
    assert!(bytes.windows(8).any(|w| w == b"settings"));
    // Less of it.
    told(&mut dicrotic(&[&play[..], &[&at("b.csv"), "--until", "20"]].concat()));
    let early = values(&at("b.csv"));
    assert!(early.len() < found.len() && early[..] == found[..early.len()], "{}", early.len());
}

#[test]
fn what_cannot_be_played_is_named() {
    let folder = scratch("unplayed");
    let out = folder.join("a.csv").to_str().unwrap().to_string();
    let file = scenario("01-first-wiring");
    let read = Scenario::read(&std::fs::read_to_string(&file).unwrap()).unwrap();
    let error = error_of(&mut dicrotic(&["render", &file, "--attempt", "nobody", "--out", &out]));
    assert!(error.contains("nobody"), "{error}");
    for attempt in &read.attempt {
        assert!(error.contains(&attempt.name), "{error}");
    }
    // Unwired nothing reaches the computer: what the recorder makes is written, and the way on is told.
    let unwired = folder.join("unwired.csv").to_str().unwrap().to_string();
    let output = dicrotic(&["render", &file, "--seconds", "5", "--out", &unwired]).output().unwrap();
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(output.status.success() && values(&unwired).len() == 5000, "{said}");
    assert!(said.contains("does not see") && said.contains(&read.attempt[0].name), "{said}");
    let bare = written(&folder, "bare.toml", SCENARIO);
    let error = error_of(&mut dicrotic(&["render", &bare, "--attempt", "x", "--out", &out]));
    assert!(error.contains("no scripted attempts"), "{error}");
    let attempt = read.attempt[0].name.as_str();
    let all = ["render", &file, "--attempt", attempt, "--out", &out];
    for (more, named) in [
        (&["--until", "0"][..], "--until"),
        (&["--until", "nan"], "--until"),
        (&["--seconds", "5"], "--seconds"),
        (&["--rate", "100"], "--rate"),
    ] {
        let error = error_of(&mut dicrotic(&[&all[..], more].concat()));
        assert!(error.contains(named), "{more:?}: {error}");
    }
    let error = error_of(&mut dicrotic(&["render", &file, "--out", &out]));
    assert!(error.contains("--seconds"), "{error}");
    let idle = "[bench]\nstart = \"apart\"\n[[attempt]]\nname = \"idle\"\nseed = 1\nexpect = { passed = false }\n\
        steps = [{ wait = 5 }]\n";
    let idle = written(&folder, "idle.toml", format!("{SCENARIO}{idle}"));
    let error = error_of(&mut dicrotic(&["render", &idle, "--attempt", "idle", "--out", &out]));
    assert!(error.contains("nothing reached the computer"), "{error}");
    assert!(!std::path::Path::new(&out).exists());
}
