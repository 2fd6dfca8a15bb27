//! What is printed of a study.

use dicrotic::exchange::study::came::{Came, Flow};
use dicrotic::exchange::study::effect::{Effect, Estimate, Sample};
use dicrotic::exchange::study::forms::NAMES;
use dicrotic::exchange::study::plan::Study;
use dicrotic::exchange::study::rows::Effects;
use serde_json::json;

/// What was planned.
pub fn planned(study: &Study, new: usize, folder: &str) -> String {
    let (tests, length, all) = (study.tests.len(), study.length(), study.placed.len());
    let rehearsal = if study.rehearsal.is_some() { " and the course for rehearsal" } else { "" };
    format!(
        "{folder}: {tests} courses of {length} benches{rehearsal}; {new} students placed, {all} in all.\n\
         arms.csv tells who gets which course and who rehearses. Keep it, and the file of the study, to yourself.\n\
         The rules of your institution come first: ask whether this study needs approval before you begin.\n"
    )
}

/// A number of people; between one and `least` only that they are few.
fn told(n: usize, least: usize) -> String {
    if (1..least).contains(&n) { format!("fewer than {least}") } else { n.to_string() }
}

/// How many are where, and how the forms did.
pub fn flow(study: &Study, came: &Came, few: [usize; 2], least: usize) -> String {
    let both = came.flow();
    let line = |what: &str, cells: [String; 2]| format!("{what:<36}{:>16}{:>16}\n", cells[0], cells[1]);
    let mut text = format!("{}: {} students\n\n", study.id, study.placed.len());
    text += &line("people", ["with rehearsal".into(), "without".into()]);
    text += &line("have a place", both.map(|arm| arm.placed.to_string()));
    let causes = |arm: &Flow| [arm.absent, arm.refused, arm.silent, arm.incomplete];
    text += &line("left out of the table", both.map(|arm| causes(&arm).iter().sum::<usize>().to_string()));
    // One small number beside the sum and the others would be told by them.
    let small = both.map(|arm| causes(&arm).iter().any(|n| (1..least).contains(n)));
    for (k, what) in
        ["nothing came in", "said no", "did not answer", "test 1 or 2 not complete"].into_iter().enumerate()
    {
        let cell =
            |arm: usize| if small[arm] { "not told".into() } else { causes(&both[arm])[k].to_string() };
        text += &line(&format!("  {what}"), [cell(0), cell(1)]);
    }
    let used = |arm: usize| if few[arm] > 0 { "not told".into() } else { both[arm].used.to_string() };
    text += &line("in the table", [used(0), used(1)]);
    text += &line("  with the later test", both.map(|arm| told(arm.later, least)));
    text += &line("handed in rehearsal", both.map(|arm| told(arm.rehearsed, least)));
    if few.iter().any(|n| *n > 0) {
        text += &format!("\nAn arm with fewer than {least} people is not in the table.\n");
    }
    text += "\nThe three forms over all tests, mean percent of the points (as hard as each other, if these are alike)\n";
    for (name, form) in NAMES.iter().zip(came.forms()) {
        text += &match form.n < least {
            true => format!("  {name}: fewer than {least} people\n"),
            false => format!("  {name}: {:.1} (n {}, SD {:.1})\n", form.mean, form.n, form.sd),
        };
    }
    text + "\n"
}

/// What rehearsal did.
pub fn effects(effects: &Effects, least: usize) -> String {
    let tests = [("Second test", effects.second), ("Later test", effects.later)];
    tests
        .into_iter()
        .map(|(what, effect)| match effect {
            Some(effect) => one(what, &effect),
            None => format!("{what}: fewer than {least} people in an arm; no effect is told.\n\n"),
        })
        .collect()
}

fn one(what: &str, effect: &Effect) -> String {
    let line = |what: &str, arms: &[Sample; 2]| {
        let cell = |arm: &Sample| format!("{:.1} ({:.1})", arm.mean, arm.sd);
        format!("{what:<36}{:>16}{:>16}\n", cell(&arms[0]), cell(&arms[1]))
    };
    let [with, without] = effect.gain.map(|arm| arm.n);
    let mut text =
        format!("{:<36}{:>16}{:>16}\n", format!("{what}, percent, mean (SD)"), "with rehearsal", "without");
    text += &format!("{:<36}{with:>16}{without:>16}\n", "people");
    text += &line("first test", &effect.before);
    text += &line("this test", &effect.after);
    text += &line("gain", &effect.gain);
    text += &estimate("Difference at the same first score, points", effect.adjusted, 1);
    text += &estimate("Difference of the gains, points", effect.difference, 1);
    text += &estimate("Hedges' g of the gains", effect.g, 2);
    text + "\n"
}

fn estimate(what: &str, of: Option<Estimate>, digits: usize) -> String {
    match of {
        Some(Estimate { value, low, high }) => {
            format!("{what}: {value:.digits$}, 95 % interval {low:.digits$} to {high:.digits$}\n")
        }
        None => format!("{what}: cannot be worked out, because scores do not vary\n"),
    }
}

/// All figures.
pub fn json(effects: &Effects) -> String {
    format!("{}\n", json!(effects))
}
