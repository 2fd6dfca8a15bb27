//! The limits of what comes in from outside: each is told with its name, and none is found by running out of time or memory.

use dicrotic::exchange::error::FileError;
use dicrotic::exchange::{MOST_VALUE, Options, import, zip};
use dicrotic::scenario::Scenario;
use dicrotic::session::attempt::MOST_TEXT;
use dicrotic::session::save::{MOST_BYTES, MOST_SAMPLES, RestoreError};
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
