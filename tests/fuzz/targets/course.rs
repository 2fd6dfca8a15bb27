//! A course file: its outline and the whole of it; and the result of a course: the results in it.
#![no_main]
use dicrotic::exchange::handin::{Set, bundle, result};
use dicrotic::scenario::plan::{Plan, is_plan};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    if let Ok(outline) = Plan::outline(text) {
        // With paths in it, it is written for the command line and read again as it was.
        assert_eq!(Plan::outline(&outline.written()).as_ref(), Ok(&outline));
    }
    if let Ok(plan) = Plan::read(text) {
        assert!(is_plan(text), "what is read as a course is known as one");
        assert_eq!(Plan::read(&plan.written()).as_ref(), Ok(&plan));
        let out = plan.handed_out();
        let again = Plan::read(&out).expect("a course is handed out and read again");
        assert_eq!(again.handed_out(), out, "handing out twice changes nothing");
        let mut set = Set::default();
        set.put_any("the course", &out).expect("a course is set");
        assert_eq!(set.all().len(), plan.part.len());
    }
    if let Some(Ok(parts)) = bundle::of(text) {
        for part in parts.results {
            let _ = result::read(&part);
        }
    }
});
