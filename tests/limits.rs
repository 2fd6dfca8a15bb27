//! The limits of what comes in from outside: each is told with its name, and none is found by running out of time or memory.

use dicrotic::exchange::error::FileError;
use dicrotic::exchange::{MOST_VALUE, Options, import, zip};
use dicrotic::scenario::Scenario;
use dicrotic::session::attempt::MOST_TEXT;
use dicrotic::session::save::{MOST_BENCH_S, MOST_BYTES, MOST_SAMPLES, RestoreError};
use dicrotic::session::{Action, Refusal, Session};
use serde_json::json;

const SCENARIO: &str = include_str!("../scenarios/04-rest-pulse.toml");

/// The scenario with steps that somebody did before. Bare keys come before the tables of the file.
fn with_before(steps: &str) -> String {
    let bare: String =
        SCENARIO.lines().filter(|line| !line.starts_with("before")).map(|l| format!("{l}\n")).collect();
    format!("before = [{steps}]\n{bare}")
}

fn act(session: &mut Session, action: serde_json::Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).expect("an action that there is"))
}

#[test]
fn no_wait_hides_the_others() {
    assert!(Scenario::read(&with_before("{ wait = 3 }")).is_ok());
    // Many long waits, and one that would make their sum small, or no number at all.
    let long = "{ wait = 600 }, ".repeat(300);
    for last in ["{ wait = -1e9 }", "{ wait = nan }", "{ wait = -inf }"] {
        let error = Scenario::read(&with_before(&format!("{long}{last}"))).expect_err("hours of waiting");
        assert!(error.field.starts_with("before"), "{error}");
    }
    let error = Scenario::read(&with_before("{ wait = 1 }, { wait = nan }")).expect_err("no number");
    assert_eq!(error.field, "before[1].wait");
    let error = Scenario::read(&with_before("{ wait = 600 }, { wait = 600 }, { wait = 600 }, { wait = 1 }"))
        .expect_err("1801 s");
    assert!(error.to_string().contains("1801"), "{error}");
}

#[test]
fn a_world_stands_still_where_an_attempt_could_not_be_taken_up_again() {
    let mut session = Session::new(SCENARIO, 1).unwrap();
    assert!(session.samples() < 1_000_000);
    // Not all six hours: what is left of them is what the limit is about.
    session.run_long(2_000);
    let before = session.samples();
    session.advance(0.25);
    assert!(session.samples() > before, "a world that has time left runs");
    let saved = session
        .save()
        .unwrap()
        .replace(&format!("\"samples\":{}", session.samples()), &format!("\"samples\":{}", MOST_SAMPLES + 1));
    assert!(matches!(Session::restore(&saved), Err(RestoreError::TooLong { what: "samples", .. })));
}

/// The scenario at the recorder's lowest rate.
fn slow() -> String {
    SCENARIO.replace("[recorder]", "[recorder]\nrate_hz = 20")
}

#[test]
fn the_time_of_a_bench_counts_and_not_its_samples() {
    let session = Session::new(&slow(), 1).unwrap();
    assert_eq!(session.chain().unwrap().settings().rate_hz, 20);
    let saved = session.save().unwrap();
    let ending = |samples: u64| {
        let at = format!("\"samples\":{}", session.samples());
        assert!(saved.contains(&at));
        Session::restore(&saved.replace(&at, &format!("\"samples\":{samples}")))
    };
    let most = 20 * MOST_BENCH_S as u64;
    let too_long =
        |result| matches!(result, Err(RestoreError::TooLong { what: "simulated seconds", most: 21_600, .. }));
    assert!(too_long(ending(most + 40)) && too_long(ending(MOST_SAMPLES)));
    // Up to there it is replayed; then the world stands still and nothing more is recorded.
    let mut last = ending(most - 30).unwrap();
    for _ in 0..40 {
        last.advance(0.25);
    }
    assert_eq!(last.samples(), most);
    assert!(matches!(act(&mut last, json!({"do": "record"})), Err(Refusal::WorldOver { .. })));
    // A log that goes to a higher rate takes less time for the same samples.
    let (rate, samples) = (r#"{"do":"rate","hz":1000}"#, most + 40);
    let faster =
        saved.replace("\"log\":[]", &format!("\"log\":[{{\"at\":{},\"action\":{rate}}}]", session.samples()));
    assert_ne!(faster, saved);
    let at = format!("\"samples\":{}", session.samples());
    let restored = Session::restore(&faster.replace(&at, &format!("\"samples\":{samples}"))).unwrap();
    assert_eq!(restored.samples(), samples);
}

#[test]
fn all_scripted_attempts_together_have_a_limit() {
    let plain: String = SCENARIO.split("[[attempt]]").next().unwrap().into();
    let attempt = |waits: usize| {
        let steps = "{ wait = 600 }, ".repeat(waits);
        format!("\n[[attempt]]\nname = \"a\"\nseed = 1\nexpect = {{ passed = false }}\nsteps = [{steps}]\n")
    };
    assert!(Scenario::read(&(plain.clone() + &attempt(6) + &attempt(5))).is_ok());
    let error = Scenario::read(&(plain.clone() + &attempt(6) + &attempt(7))).expect_err("7,800 s");
    assert_eq!(error.field, "attempt[1].steps");
    let wrong = attempt(1).replace("600", "-600");
    assert_eq!(Scenario::read(&(plain + &wrong)).expect_err("below zero").field, "attempt[0].steps[0].wait");
}

#[test]
fn a_text_that_nobody_types_is_refused() {
    let mut session = Session::new(SCENARIO, 1).unwrap();
    let answer = |text: String| json!({"do": "answer", "field": "count", "text": text});
    assert_eq!(act(&mut session, answer("7".repeat(MOST_TEXT))), Ok(()));
    assert_eq!(
        act(&mut session, answer("7".repeat(MOST_TEXT + 1))),
        Err(Refusal::TextTooLong { max: MOST_TEXT })
    );
    assert_eq!(session.log().len(), 1);
}

#[test]
fn a_saved_attempt_has_a_size() {
    let long = format!("\"{}\"", "x".repeat(MOST_BYTES));
    assert!(matches!(Session::restore(&long), Err(RestoreError::TooLong { what: "bytes", .. })));
}

#[test]
fn a_value_that_is_no_size_of_anything_is_told_with_its_sample() {
    let read = |text: &str| {
        import(&[("a.csv".into(), text.into())], &Options { rate_hz: Some(100.0), channel: None })
    };
    let lines = |value: &str| format!("t_s,value\n0,1\n0.01,{value}\n0.02,3\n0.03,1\n");
    assert!(read(&lines(&MOST_VALUE.to_string())).is_ok());
    for value in ["1.1e30", "-1e300"] {
        match read(&lines(value)) {
            Err(FileError::FileValue { file, sample, .. }) => {
                assert_eq!((file.as_str(), sample), ("a.csv", 2))
            }
            other => panic!("{value}: {other:?}"),
        }
    }
}

#[test]
fn an_archive_holds_a_record_and_not_a_crowd() {
    let files = |n: usize| (0..n).map(|k| (format!("{k}.dat"), vec![0])).collect::<Vec<_>>();
    let packed = |n: usize| zip::store(&files(n)).expect("an archive");
    assert_eq!(zip::unstore(&packed(zip::MOST_FILES)).map(|f| f.len()), Some(zip::MOST_FILES));
    assert_eq!(zip::unstore(&packed(zip::MOST_FILES + 1)), None);
}

/// Every core refuses these, also the page's first one, which is built without the rest of the checks of what instructors write of
/// their own: `cargo test --no-default-features --test limits` is that core's reading.
#[test]
fn more_of_an_instructors_own_than_there_may_be_is_refused_with_its_field() {
    let misreading = |k: u32| {
        let formula = format!("{k} + 2 * n_true");
        format!(
            "[[misreading]]\nname = \"m{k}\"\nfield = \"count\"\nformula = \"{formula}\"\nwords = \"w\"\n"
        )
    };
    let steps = [
        "count",
        "seconds",
        "multiplier",
        "rate",
        "trace",
        "window",
        "marks",
        "cursors",
        "record",
        "faults",
        "unit",
    ];
    let hint = |k: usize| {
        let (about, rung) = (steps[k / 4], ["look", "locate", "rule", "worked"][k % 4]);
        format!("[[hint]]\nabout = \"{about}\"\nrung = \"{rung}\"\nwords = \"w\"\n")
    };
    let read = |extra: String| Scenario::read(&format!("{}\n{extra}", with_before(""))).map(|_| ());
    assert_eq!(read((0..12).map(misreading).collect()), Ok(()));
    let refused = read((0..13).map(misreading).collect()).unwrap_err();
    assert_eq!((refused.field.as_str(), refused.found.as_str()), ("misreading", "13 of them"));
    assert_eq!(refused.expected, "at most 12");
    let refused = read((0..41).map(hint).collect()).unwrap_err();
    assert_eq!((refused.field.as_str(), refused.expected.as_str()), ("hint", "at most 40"));
}
