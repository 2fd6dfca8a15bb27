//! How each item did: what the seed had put wrong, in which pool. For an instructor who wants to know which faults are too easy, too
//! hard, or found by the wrong people.

use crate::exchange::formula::disarmed;
use crate::exchange::handin::Graded;
use crate::exchange::handin::class::on_this_bench;
use crate::exchange::handin::together::{beside, whose};
use serde::Serialize;
use std::collections::BTreeMap;

/// One answer to one item.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// What the item is called before its faults: its scenario, or its place in a test.
    pub named: String,
    /// What was wrong, in the words of the catalogue; empty where nothing was.
    pub faults: Vec<String>,
    /// Whose test it belongs to: what one person did at one time.
    pub test: String,
    /// Whether the first check was passed.
    pub right: bool,
    /// The misreading that explains the first check, by its name.
    pub misreading: Option<String>,
    /// Time at the bench, min.
    pub minutes: f64,
}

impl Seen {
    /// What a result says of its item. `named` is what the item is called before its faults; `test` whose test it belongs to.
    pub fn of(graded: &Graded, named: &str, test: String) -> Option<Self> {
        graded.score?;
        let first = graded.first.as_ref().unwrap_or(&graded.outcome);
        Some(Self {
            named: named.into(),
            faults: graded.faults.iter().map(|fault| fault.id.into()).collect(),
            test,
            right: first.passed,
            misreading: first.explained().filter(|_| !first.passed),
            minutes: graded.minutes,
        })
    }
}

/// What an item is called where nothing was wrong.
pub const NOTHING: &str = "nothing";

/// An item.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Item {
    /// What it is called before its faults, see [`Seen::named`].
    pub named: String,
    /// What was wrong.
    pub faults: Vec<String>,
    /// Answers; none where there are too few to tell of.
    pub n: Option<usize>,
    /// Share that were right at the first check.
    pub right: Option<f64>,
    /// Discrimination: the correlation of being right here with the share right in the rest of the same test (point-biserial, the item
    /// itself left out: Henrysson 1963, Psychometrika 28, 211-218). None where either does not vary.
    pub discrimination: Option<f64>,
    /// The misreading that came up most, and how often; of two as frequent the first by name.
    pub misreading: Option<(String, usize)>,
    /// Time at the bench of the person in the middle, min.
    pub minutes: Option<f64>,
}

impl Item {
    /// What it is in one line.
    pub fn label(&self) -> String {
        let faults = if self.faults.is_empty() { NOTHING.into() } else { self.faults.join(" + ") };
        format!("{}: {faults}", self.named)
    }
}

/// All items by name. Of an item with fewer than `least` answers nothing is told but that there is one.
pub fn of(seen: &[Seen], least: usize) -> Vec<Item> {
    let mut tests: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    for one in seen {
        let (right, all) = tests.entry(&one.test).or_default();
        *right += usize::from(one.right);
        *all += 1;
    }
    let mut items: BTreeMap<(&str, &[String]), Vec<&Seen>> = BTreeMap::new();
    seen.iter().for_each(|one| items.entry((&one.named, &one.faults)).or_default().push(one));
    let item = |((named, faults), all): ((&str, &[String]), Vec<&Seen>)| {
        let (named, faults) = (named.to_string(), faults.to_vec());
        let n = all.len();
        if n < least.max(1) {
            let (n, right, discrimination, misreading, minutes) = (None, None, None, None, None);
            return Item { named, faults, n, right, discrimination, misreading, minutes };
        }
        let rest = |one: &&Seen| {
            let (right, of) = tests[one.test.as_str()];
            let own = usize::from(one.right);
            (of > 1).then(|| (own as f64, (right - own) as f64 / (of - 1) as f64))
        };
        let pairs: Vec<(f64, f64)> = all.iter().filter_map(rest).collect();
        Item {
            named,
            faults,
            n: Some(n),
            right: Some(all.iter().filter(|one| one.right).count() as f64 / n as f64),
            discrimination: correlation(&pairs),
            misreading: most(all.iter().filter_map(|one| one.misreading.as_deref())),
            minutes: middle(all.iter().map(|one| one.minutes).collect()),
        }
    };
    items.into_iter().map(item).collect()
}

/// The items of a class: its results that are verified and of what was set, each once; a student's results are one test.
pub fn of_class(results: &[Graded], least: usize) -> Vec<Item> {
    let found = beside(results);
    let each =
        results.iter().zip(&found).filter(|(graded, beside)| beside.again.is_none() && on_this_bench(graded));
    let seen: Vec<Seen> =
        each.filter_map(|(graded, _)| Seen::of(graded, &graded.scenario, whose(graded))).collect();
    of(&seen, least)
}

/// Pearson's correlation; none where one of both does not vary.
fn correlation(pairs: &[(f64, f64)]) -> Option<f64> {
    let n = pairs.len() as f64;
    let (x0, y0) = (pairs.iter().map(|p| p.0).sum::<f64>() / n, pairs.iter().map(|p| p.1).sum::<f64>() / n);
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for (x, y) in pairs {
        xx += (x - x0) * (x - x0);
        xy += (x - x0) * (y - y0);
        yy += (y - y0) * (y - y0);
    }
    // What is left of equal values is rounding.
    (xx > 1e-12 && yy > 1e-12).then(|| xy / (xx * yy).sqrt())
}

fn most<'a>(names: impl Iterator<Item = &'a str>) -> Option<(String, usize)> {
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    names.for_each(|name| *counts.entry(name).or_default() += 1);
    let best = counts.into_iter().min_by_key(|(_, n)| core::cmp::Reverse(*n))?;
    Some((best.0.into(), best.1))
}

/// The median.
fn middle(mut values: Vec<f64>) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let n = values.len();
    if n == 0 {
        return None;
    }
    Some(if n % 2 == 1 { values[n / 2] } else { 0.5 * (values[n / 2 - 1] + values[n / 2]) })
}

/// The head of the table.
pub const HEAD: &str = "item,answers,share_right,discrimination,misreading,times,median_minutes";

/// The items as a table of text. `called` gives the words for a misreading.
pub fn table(items: &[Item], least: usize, called: &dyn Fn(&str) -> String) -> String {
    let number =
        |value: Option<f64>, digits: usize| value.map_or_else(String::new, |v| format!("{v:.digits$}"));
    let quoted = |text: &str| format!("\"{}\"", disarmed(text).replace('"', "\"\""));
    let mut text = format!("{HEAD}\n");
    for item in items {
        let n = item.n.map_or_else(|| format!("fewer than {least}"), |n| n.to_string());
        let (misreading, times) = match &item.misreading {
            Some((name, times)) => (quoted(&called(name)), times.to_string()),
            None => (String::new(), String::new()),
        };
        let (right, discrimination) = (number(item.right, 2), number(item.discrimination, 2));
        text += &format!(
            "{},{n},{right},{discrimination},{misreading},{times},{}\n",
            quoted(&item.label()),
            number(item.minutes, 1)
        );
    }
    text
}
