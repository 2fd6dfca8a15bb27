//! Results beside one another: what was handed in twice, whose log somebody else handed in too, whose window is another's.

use super::grade::Graded;
use crate::session::seeds;
use std::cmp::Ordering;
use std::collections::BTreeMap;

/// How near two times must be to be the same: a frame of the page, s.
pub const FRAME_S: f64 = 1.0 / 60.0;
/// So many times must be alike where two have the same heart, and with it the same beats to mark.
const LEAST_SAME_HEART: usize = 6;
/// So many deeds with the same pauses are a copy.
const LEAST_MOVED: usize = 8;

/// What one result has to do with others; places in the list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Beside {
    /// The same student handed in the same attempt otherwise as well, and that one counts in the place of this.
    pub again: Option<usize>,
    /// Those in whose place this one counts, and which tell another begin or end of the same log.
    pub redated: Vec<usize>,
    /// Others who handed in the same log, or the same deeds with the same pauses.
    pub copies: Vec<usize>,
    /// Others whose cursors and marks stand where these do, to within a frame.
    pub alike: Vec<usize>,
    /// Results of the same try of the same student that were begun anew: neither log can be the other gone on with.
    pub begun: Vec<usize>,
    /// As which beginning of its try this counts, from 1, in the order in which they ended; 0 where tries are not counted.
    pub nth: u32,
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
    // Logs with the same deeds under the same seed, whenever those came.
    let mut by_deeds: BTreeMap<_, Vec<usize>> = BTreeMap::new();
    for (k, graded) in results.iter().enumerate().filter(|(_, g)| g.actions > 0) {
        by_deeds.entry((graded.seed, graded.trail.deeds(), graded.trail.mark())).or_default().push(k);
    }
    let names: Vec<String> = results.iter().map(whose).collect();
    let mut found = vec![Beside::default(); results.len()];
    for same in by_deeds.values() {
        for &k in same {
            let is = |other: usize| results[other].mark == results[k].mark;
            let same_bench = |other: usize| results[other].digest == results[k].digest;
            let moved = |other: usize| same_bench(other) && results[other].trail.is_moved(&results[k].trail);
            let of_own = |other: usize| names[other] == names[k];
            // Where cursors and marks stand elsewhere as well, it is another attempt.
            let one_log = |other: usize| is(other) || (moved(other) && near(&results[k], &results[other]));
            let own = same.iter().copied().filter(|&o| of_own(o) && same_bench(o) && one_log(o));
            let first = own.min_by(|a, b| before(&results[*a], &results[*b])).filter(|&first| first != k);
            if let Some(first) = first {
                found[k].again = Some(first);
                let times = |k: usize| (results[k].about.begun_s, results[k].about.ended_s);
                if times(first) != times(k) || !is(first) {
                    found[first].redated.push(k);
                }
            }
            let enough = results[k].trail.deeds() >= LEAST_MOVED;
            let copy = |o: usize| !of_own(o) && (is(o) || (enough && moved(o)));
            found[k].copies = same.iter().copied().filter(|&other| copy(other)).collect();
        }
    }
    begun_twice(results, &names, &mut found);
    // Sorted by the first time, so that only neighbours have to be looked at.
    let mut order: Vec<usize> = (0..results.len()).filter(|k| results[*k].touched.len() >= 2).collect();
    order.sort_by(|a, b| results[*a].touched[0].total_cmp(&results[*b].touched[0]));
    for (i, &k) in order.iter().enumerate() {
        let near = |other: &usize| results[*other].touched[0] - results[k].touched[0] <= FRAME_S;
        for &other in order[i + 1..].iter().take_while(|other| near(other)) {
            let apart = names[k] != names[other] && results[k].mark != results[other].mark;
            let apart = apart && !found[k].copies.contains(&other);
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
    a.touched.len() >= least && near(a, b)
}

/// Whether cursors and marks of both stand at the same places, to within a frame.
fn near(a: &Graded, b: &Graded) -> bool {
    a.touched.len() == b.touched.len()
        && a.touched.iter().zip(&b.touched).all(|(x, y)| (x - y).abs() <= FRAME_S)
}

/// Finds tries that were begun anew, where tries are counted: what one seed was begun with, each beginning with all that it went on
/// to. Only what is verified counts, so that nothing made up takes a try away.
fn begun_twice(results: &[Graded], names: &[String], found: &mut [Beside]) {
    let mut tries: BTreeMap<_, Vec<usize>> = BTreeMap::new();
    let counted =
        |g: &Graded| g.attempts.is_some() && g.own_seed == Some(true) && g.verified() && g.trail.deeds() > 0;
    for (k, graded) in results.iter().enumerate().filter(|(_, g)| counted(g)) {
        tries.entry((&names[k], graded.digest, graded.seed)).or_default().push(k);
    }
    for mut all in tries.into_values() {
        all.retain(|k| found[*k].again.is_none());
        all.sort_by(|a, b| before(&results[*a], &results[*b]));
        // Longer logs stand for those that they went on from.
        let mut longest: Vec<usize> = all.clone();
        longest.sort_by_key(|k| std::cmp::Reverse(results[*k].trail.deeds()));
        let mut begun: Vec<Vec<usize>> = Vec::new();
        for k in longest {
            let goes_on = |one: &&mut Vec<usize>| results[one[0]].trail.is_continued(&results[k].trail);
            match begun.iter_mut().find(goes_on) {
                Some(one) => one.push(k),
                None => begun.push(vec![k]),
            }
        }
        let end = |one: &Vec<usize>| one.iter().filter_map(|k| all.iter().position(|other| other == k)).min();
        begun.sort_by_key(end);
        for (nth, one) in begun.iter().enumerate() {
            for &k in one {
                found[k].nth = nth as u32 + 1;
                found[k].begun = all.iter().copied().filter(|other| !one.contains(other)).collect();
            }
        }
    }
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
