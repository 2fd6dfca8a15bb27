//! Results beside one another: what was handed in twice, whose log somebody else handed in too, whose window is another's.

use super::grade::Graded;
use crate::session::seeds;
use std::cmp::Ordering;
use std::collections::BTreeMap;

/// How near two times must be to be the same: a frame of the page, s.
pub const FRAME_S: f64 = 1.0 / 60.0;
/// So many times must be alike where two have the same heart, and with it the same beats to mark.
const LEAST_SAME_HEART: usize = 6;

/// What one result has to do with others; places in the list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Beside {
    /// The same student handed in the same attempt otherwise as well, and that one counts in the place of this.
    pub again: Option<usize>,
    /// Those in whose place this one counts, and which tell another begin or end of the same log.
    pub redated: Vec<usize>,
    /// Others who handed in the same log.
    pub copies: Vec<usize>,
    /// Others whose cursors and marks stand where these do, to within a frame.
    pub alike: Vec<usize>,
}

/// Who a result is of. Who gave no code is a student of their own for each attempt.
pub fn whose(graded: &Graded) -> String {
    let code = seeds::code(&graded.about.student);
    if code.is_empty() { format!("\u{10ffff}{}", crate::scenario::digest::hex(&graded.mark)) } else { code }
}

/// Which of two results of one log counts goes by what they tell, never by the names of their files: one that counts at all, then
/// the one that ended first (each copy that the page makes tells its own moment, and the first is nearest to the end), then
/// whatever else they tell.
fn before(a: &Graded, b: &Graded) -> Ordering {
    // A moment of zero is one that is not known.
    let times = |g: &Graded| [g.about.ended_s, g.about.begun_s].map(|s| if s == 0 { u64::MAX } else { s });
    let rank = |g: &Graded| (!g.counts(), times(g), g.about.tries, g.doubts.len());
    let words = |g: &Graded| (g.about.student.clone(), g.program.clone());
    rank(a).cmp(&rank(b)).then_with(|| words(a).cmp(&words(b)))
}

/// Looks at all results beside one another. What counts of them does not depend on their order.
pub fn beside(results: &[Graded]) -> Vec<Beside> {
    let mut by_mark: BTreeMap<_, Vec<usize>> = BTreeMap::new();
    for (k, graded) in results.iter().enumerate().filter(|(_, g)| g.actions > 0) {
        by_mark.entry(graded.mark).or_default().push(k);
    }
    let names: Vec<String> = results.iter().map(whose).collect();
    let mut found = vec![Beside::default(); results.len()];
    for same in by_mark.values() {
        for &k in same {
            let same_bench = |other: usize| results[other].digest == results[k].digest;
            let own = same.iter().copied().filter(|&other| names[other] == names[k] && same_bench(other));
            let first = own.min_by(|a, b| before(&results[*a], &results[*b])).filter(|&first| first != k);
            if let Some(first) = first {
                found[k].again = Some(first);
                let times = |k: usize| (results[k].about.begun_s, results[k].about.ended_s);
                if times(first) != times(k) {
                    found[first].redated.push(k);
                }
            }
            found[k].copies = same.iter().copied().filter(|&other| names[other] != names[k]).collect();
        }
    }
    // Sorted by the first time, so that only neighbours have to be looked at.
    let mut order: Vec<usize> = (0..results.len()).filter(|k| results[*k].touched.len() >= 2).collect();
    order.sort_by(|a, b| results[*a].touched[0].total_cmp(&results[*b].touched[0]));
    for (i, &k) in order.iter().enumerate() {
        let near = |other: &usize| results[*other].touched[0] - results[k].touched[0] <= FRAME_S;
        for &other in order[i + 1..].iter().take_while(|other| near(other)) {
            let apart = names[k] != names[other] && results[k].mark != results[other].mark;
            if apart && alike(&results[k], &results[other]) {
                found[k].alike.push(other);
                found[other].alike.push(k);
            }
        }
    }
    found
}

fn alike(a: &Graded, b: &Graded) -> bool {
    let least = if a.seed == b.seed { LEAST_SAME_HEART } else { 2 };
    a.touched.len() == b.touched.len()
        && a.touched.len() >= least
        && a.touched.iter().zip(&b.touched).all(|(x, y)| (x - y).abs() <= FRAME_S)
}

/// Benches with one name, of which nobody said which was set: the name, and how many.
pub fn benches_of_one_name(results: &[Graded]) -> Vec<(String, usize)> {
    let mut benches: BTreeMap<&str, std::collections::BTreeSet<_>> = BTreeMap::new();
    for graded in results.iter().filter(|g| g.compared == super::set::Compared::Nothing) {
        benches.entry(&graded.scenario).or_default().insert(graded.digest);
    }
    let several = benches.into_iter().filter(|(_, digests)| digests.len() > 1);
    several.map(|(name, digests)| (name.to_string(), digests.len())).collect()
}
