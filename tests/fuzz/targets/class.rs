//! A saved class: read, what came in graded for a while, looked at, saved and read again.
#![no_main]
use dicrotic::exchange::class::{Class, Source, gradebook, saved};
use dicrotic::exchange::handin::{Graded, Handed, HandinError, result};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    let Ok((mut class, waiting)) = saved::read(text) else { return };
    for source in waiting.into_iter().take(3) {
        match graded(&source, &class) {
            Ok(graded) => class.take(source, graded),
            Err(why) => class.fail(source, &why),
        }
    }
    let _ = class.told().to_string();
    let lines = class.lines();
    let table = gradebook::write(&lines, &[], &gradebook::Order::default()).expect("the usual columns");
    assert_eq!(table.matches("\r\n").count(), table.matches('\n').count(), "one student, one line");
    let again = saved::write(&class);
    let (opened, waiting) = saved::read(&again).expect("what was saved is read");
    assert_eq!(opened.roster, class.roster);
    assert_eq!(opened.cares, class.cares);
    assert_eq!(opened.terms, class.terms);
    assert_eq!(opened.plan.is_some(), class.plan.is_some());
    let benches = |class: &Class| class.set.all().iter().map(|one| one.whole).collect::<Vec<_>>();
    assert_eq!(benches(&opened), benches(&class));
    let kept = class.failed.iter().filter(|failed| failed.source.is_kept()).count();
    assert_eq!(waiting.len(), class.sources.len() + kept);
});

/// As far as some thousand samples go.
fn graded(source: &Source, class: &Class) -> Result<Graded, HandinError> {
    let handed = match source.code.is_empty() {
        true => result::read(&source.text)?,
        false => {
            let own = source.scenario.clone();
            Handed::of_code(&source.code, &class.set, |code| Some(own).filter(|text| code.is_of(text)))?
        }
    };
    let replay = |found: String| HandinError::Replay { found };
    let mut run = handed.begin(&class.set)?;
    for _ in 0..4 {
        if run.step(&handed.log, 2048).map_err(|e| replay(e.to_string()))? {
            return Ok(Graded::of(&handed, &mut run, &class.set));
        }
    }
    Err(replay("longer than is tried here".into()))
}
