//! How sure a count in a window is, and what other windows of the same record would have given: one reading is one of
//! a set (Deardorff 2001 found that students take it for the one true point).

use super::uncertainty::SD_COUNT;
use super::verdict::{Report, Step, Verdict};
use super::window::Peak;
use serde::Serialize;

/// Most windows that are listed one by one.
const MOST_LISTED: usize = 60;
/// Distance from one window's start to the next, s.
const STEP_S: f64 = 0.1;

/// How sure the count is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Spread {
    /// Length of the window, s.
    pub window_s: f64,
    /// The student's own count.
    pub count: f64,
    /// One count less and one more.
    pub band: Band,
    /// Standard deviation of the rate, 0.41 x 60/T, beats/min.
    pub sd: f64,
    /// What other windows of the record would have given; only where the truth may be shown.
    pub others: Option<Others>,
}

/// The student's own rate and the rates of one count less and one more, beats/min.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Band {
    /// 60 N / T.
    pub rate: f64,
    /// 60 (N - 1) / T.
    pub low: f64,
    /// 60 (N + 1) / T.
    pub high: f64,
}

/// Rates by counting in windows of the same length that begin elsewhere, beats/min.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Others {
    /// Number of windows.
    pub n: usize,
    /// 5th percentile.
    pub q05: f64,
    /// Lower quartile.
    pub q25: f64,
    /// Median.
    pub q50: f64,
    /// Upper quartile.
    pub q75: f64,
    /// 95th percentile.
    pub q95: f64,
    /// Rates of up to 60 windows, evenly spread, in order of their start.
    pub values: Vec<f64>,
    /// Where those windows begin, s.
    pub starts: Vec<f64>,
}

/// Whether a step holds.
pub fn holds(report: &Report, step: Step) -> bool {
    let mut of = report.steps.iter().filter(|f| f.step == step).peekable();
    of.peek().is_some() && of.all(|f| f.verdict.holds())
}

/// Whether the band may be told before the attempt is over: every step to the rate holds, and where the uncertainty is asked for, which
/// is what the band tells, that has been answered as well.
pub fn may_be_told(report: &Report) -> bool {
    use Step::{Count, Count1, Multiplier, Rate, Rate1, Seconds, Seconds1, Uncertainty};
    let measured = [Count, Seconds, Multiplier, Rate, Count1, Seconds1, Rate1, Uncertainty];
    let own = |f: &&super::verdict::Finding| measured.contains(&f.step);
    let stands =
        |f: &super::verdict::Finding| !f.is_wrong() && (f.step == Uncertainty || f.verdict != Verdict::Note);
    holds(report, Count) && holds(report, Rate) && report.steps.iter().filter(own).all(stands)
}

/// The band of a count of `count` in `window_s` seconds; `None` without a window.
pub fn band(count: f64, window_s: f64) -> Option<Spread> {
    if !(count.is_finite() && count >= 0.0 && window_s.is_finite() && window_s > 0.0) {
        return None;
    }
    let rate = |n: f64| tenth(60.0 * n.max(0.0) / window_s);
    Some(Spread {
        window_s: (window_s * 1000.0).round() / 1000.0,
        count,
        band: Band { rate: rate(count), low: rate(count - 1.0), high: rate(count + 1.0) },
        sd: (SD_COUNT * 60.0 / window_s * 100.0).round() / 100.0,
        others: None,
    })
}

fn tenth(x: f64) -> f64 {
    (x * 10.0).round() / 10.0
}

/// What windows of `window_s` all along the record give by counting. `None` where no second window fits.
pub fn others(peaks: &[Peak], delay_s: f64, duration_s: f64, window_s: f64) -> Option<Others> {
    let room = duration_s - window_s;
    if !(window_s > 0.0 && room > 0.0 && room.is_finite()) {
        return None;
    }
    let times: Vec<f64> = peaks.iter().filter(|p| p.sure).map(|p| p.at_s + delay_s).collect();
    let n = (room / STEP_S).floor() as usize + 1;
    let rates: Vec<f64> = (0..n)
        .map(|k| {
            let a = k as f64 * STEP_S;
            let before = |t: f64| times.partition_point(|x| *x < t);
            tenth(60.0 * (before(a + window_s) - before(a)) as f64 / window_s)
        })
        .collect();
    let mut sorted = rates.clone();
    sorted.sort_by(f64::total_cmp);
    let q = |share: f64| sorted[((n - 1) as f64 * share).round() as usize];
    let listed = n.min(MOST_LISTED);
    let at = |k: usize| if listed > 1 { k * (n - 1) / (listed - 1) } else { 0 };
    Some(Others {
        n,
        q05: q(0.05),
        q25: q(0.25),
        q50: q(0.5),
        q75: q(0.75),
        q95: q(0.95),
        values: (0..listed).map(|k| rates[at(k)]).collect(),
        starts: (0..listed).map(|k| (at(k) as f64 * STEP_S * 10.0).round() / 10.0).collect(),
    })
}
