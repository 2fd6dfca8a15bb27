//! A scenario file: read, drawn under a seed, begun; a course file: read, written, handed out.
#![no_main]
use dicrotic::scenario::Scenario;
use dicrotic::scenario::digest::{bench_digest, digest, handed_out, minimised};
use dicrotic::scenario::plan::Plan;
use dicrotic::scenario::text::value_of;
use dicrotic::session::{Session, view};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    let read = Scenario::read(text);
    let _ = value_of(text);
    if let Ok(plan) = Plan::read(text) {
        assert_eq!(Plan::read(&plan.written()).as_ref(), Ok(&plan));
        Plan::read(&plan.handed_out()).expect("a course is handed out and read again");
    }
    if let Ok(scenario) = read {
        let _ = view::brief(&scenario).to_string();
        // A link carries the text without comments: it must stay the same scenario.
        let short = minimised(text);
        assert_eq!(digest(&short), digest(text));
        let out = handed_out(text);
        assert_eq!((digest(&out), bench_digest(&out)), (digest(text), bench_digest(text)));
        Scenario::read(&out).expect("what was read is handed out and read again");
        Scenario::read(&short).expect("what was read is read again");
        if let Ok(mut session) = Session::new(text, 1) {
            session.run_long(2000);
            let _ = session.view().to_string();
        }
    }
});
