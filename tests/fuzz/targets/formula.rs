//! The formula of a misreading of an instructor's own: worked out, and looked at as a whole bench is checked. The first line is the
//! formula; a second one is another misreading's.
#![no_main]
use dicrotic::assess::expression::value;
use dicrotic::assess::own::{OwnMisreading, check};
use dicrotic::assess::task::TaskSpec;
use dicrotic::deed::Field;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    let numbers = [18.0, 15.0, 4.0, 72.0, 18.0, 15.0, 72.0];
    let formulas: Vec<&str> = text.lines().take(2).collect();
    for formula in &formulas {
        match value(formula, &numbers) {
            // Brackets around all of it change nothing, where there is room for them.
            Ok(told) => {
                if let Ok(again) = value(&format!("({formula})"), &numbers) {
                    assert!(again == told || (again.is_nan() && told.is_nan()), "{formula}: {told}, {again}");
                }
            }
            Err(wrong) => assert!(wrong.at >= 1 && wrong.at <= formula.chars().count() + 1, "{formula}: {wrong:?}"),
        }
    }
    let own = |(k, formula): (usize, &&str)| OwnMisreading {
        name: format!("m{k}"),
        field: Field::Rate,
        formula: formula.to_string(),
        tolerance: None,
        words: "Words.".into(),
    };
    let all: Vec<OwnMisreading> = formulas.iter().enumerate().map(own).collect();
    let _ = check(&all, &[], &TaskSpec::default(), 12.0);
});
