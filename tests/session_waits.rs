//! Time that is let pass: the same as sitting there, told in the log, and the same again when the attempt is replayed.

use dicrotic::session::action::Refusal;
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};

const COLD: &str = include_str!("../scenarios/50-after-exercise.toml");

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

/// The newest second of the trace's codes, by way of a recording.
fn next(session: &mut Session) -> Vec<f64> {
    act(session, json!({"do": "record"})).unwrap();
    session.run(2000);
    act(session, json!({"do": "stop"})).unwrap();
    let recording = &session.recording().unwrap().recording;
    recording.values(0, recording.len())
}

#[test]
fn waiting_at_once_is_the_same_as_sitting_there_and_comes_again() {
    let mut waited = Session::new(COLD, 3).unwrap();
    let mut sat = waited.clone();
    let start = waited.samples();
    act(&mut waited, json!({"do": "let_pass", "s": 300})).unwrap();
    assert_eq!(waited.samples() - start, 300_000);
    for _ in 0..3000 {
        sat.run(100);
    }
    let trace = next(&mut waited);
    assert_eq!(trace, next(&mut sat));
    let again = Session::restore(&waited.save().unwrap()).unwrap();
    assert_eq!((again.samples(), again.log()), (waited.samples(), waited.log()));
    assert_eq!(again.view(), waited.view());
}

#[test]
fn nobody_waits_in_a_recording_or_for_as_long_as_they_like() {
    let mut session = Session::new(COLD, 3).unwrap();
    assert!(matches!(
        act(&mut session, json!({"do": "let_pass", "s": 59})),
        Err(Refusal::BadValue { field: "s", .. })
    ));
    act(&mut session, json!({"do": "record"})).unwrap();
    let refused = act(&mut session, json!({"do": "let_pass", "s": 60}));
    assert_eq!(refused, Err(Refusal::Recording { what: "let_pass" }));
    act(&mut session, json!({"do": "stop"})).unwrap_err();
    // Six hours are all there is; who waits them out is told.
    let ends = (0..80).map(|_| act(&mut session, json!({"do": "let_pass", "s": 300}))).find(Result::is_err);
    assert!(matches!(ends, Some(Err(Refusal::WorldOver { .. }))), "{ends:?}");
    let mut file = Session::of_recording("r.csv", 100.0, &[0.0; 3000]);
    assert_eq!(act(&mut file, json!({"do": "let_pass", "s": 60})), Err(Refusal::NoBench {}));
}
