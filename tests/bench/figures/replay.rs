//! Attempts done again: saved, restored, graded; and what of it is the chain alone.

#[path = "../../students/mod.rs"]
mod students;

use std::hint::black_box;

use dicrotic::chain::Chain;
use dicrotic::exchange::handin::result;
use dicrotic::session::Session;
use dicrotic::session::compact::About;

use crate::{HUM, config, median, told};

pub fn run() {
    let mut session = Session::new(HUM, 1).expect("a scenario of the project");
    session.run_long(600_000);
    let saved = session.save().expect("a bench can be saved");
    let took = median(9, || assert!(Session::restore(&saved).is_ok()));
    line("ten minutes with nothing done, restored", took);

    let session = students::diligent(1);
    let saved = session.save().expect("a bench can be saved");
    let took = median(99, || assert!(session.save().is_some()));
    told("ten minutes of a diligent student, saved", &format!("{:.2} ms", 1000.0 * took));
    let took = median(9, || assert!(Session::restore(&saved).is_ok()));
    line("ten minutes of a diligent student, restored", took);
    let text =
        result::write(&session, &About { student: "one".into(), ..About::default() }).expect("a result");
    let took = median(99, || assert!(result::read(&text).is_ok()));
    told("reading a result file", &format!("{:.2} ms", 1000.0 * took));
    let handed = result::read(&text).expect("a result");
    let took = median(9, || assert!(handed.grade().is_ok_and(|g| g.verified())));
    line("ten minutes of a diligent student, graded", took);
    // The floor of all these: the same stretch without anything around the chain.
    let mut codes = Vec::new();
    let took = median(9, || {
        let mut chain = Chain::new(config(students::FIRST), 1).expect("its settings");
        codes.clear();
        chain.fill(600_000, &mut codes);
        black_box(&codes);
    });
    line("the chain alone over ten minutes", took);
}

fn line(name: &str, took: f64) {
    told(name, &format!("{:.1} ms, {:.0} a minute a core", 1000.0 * took, 60.0 / took));
}
