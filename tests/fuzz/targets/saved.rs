//! A saved attempt: its log of actions, done again. A text that is none is taken as lines of a log instead.
#![no_main]
use dicrotic::session::save::{Replay, Saved, seed};
use dicrotic::session::{Action, Session};
use libfuzzer_sys::fuzz_target;

const SCENARIO: &str = include_str!("../../../scenarios/03-loose-and-restless.toml");

fuzz_target!(|text: &str| {
    match serde_json::from_str::<Saved>(text) {
        Ok(saved) => {
            let Ok(seed) = seed(&saved.seed) else { return };
            let Ok(mut replay) = Replay::new(&saved.scenario, seed, saved.samples, &saved.log) else { return };
            // Some thousand samples: a whole attempt would make runs rare.
            for _ in 0..6 {
                match replay.step(&saved.log, 2048) {
                    Ok(false) => {}
                    Ok(true) => return told(&replay.into_session()),
                    Err(_) => return,
                }
            }
        }
        Err(_) => {
            let _ = Session::restore(text);
            let Ok(mut session) = Session::new(SCENARIO, 5) else { unreachable!("a scenario of ours") };
            session.run_long(1500);
            for line in text.lines().take(60) {
                let Ok(value) = serde_json::from_str(line) else { continue };
                let Ok(action) = Action::from_value(value) else { continue };
                assert_eq!(Action::from_value(action.to_value()).as_ref(), Ok(&action));
                let _ = session.act(&action);
                session.run_long(300);
            }
            told(&session);
        }
    }
});

fn told(session: &Session) {
    let _ = session.view().to_string();
    let saved = session.save().expect("an attempt can be saved");
    let again = Session::restore(&saved).expect("what was saved is restored");
    assert_eq!(again.log(), session.log());
    assert_eq!(again.samples(), session.samples());
}
