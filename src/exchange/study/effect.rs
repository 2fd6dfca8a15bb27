//! What rehearsal did: differences between two arms with 95 % intervals.
//!
//! Intervals assume that scores spread alike and about normally within both arms, and that one student's score does not depend on
//! another's.

use super::distribution::{noncentrality, t_quantile};
use crate::math;
use serde::Serialize;

/// Share of studies whose interval holds the truth.
pub const LEVEL: f64 = 0.95;

/// Number, mean and spread of some values.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Sample {
    /// People.
    pub n: usize,
    /// Mean.
    pub mean: f64,
    /// Standard deviation, with n - 1.
    pub sd: f64,
}

impl Sample {
    /// Of values; with fewer than two the spread is zero.
    pub fn of(values: &[f64]) -> Self {
        let n = values.len();
        let mean = if n == 0 { 0.0 } else { values.iter().sum::<f64>() / n as f64 };
        let squares: f64 = values.iter().map(|v| (v - mean) * (v - mean)).sum();
        Self { n, mean, sd: if n < 2 { 0.0 } else { (squares / (n - 1) as f64).sqrt() } }
    }
}

/// An estimate with its interval.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Estimate {
    /// The value.
    pub value: f64,
    /// The interval's ends.
    pub low: f64,
    /// See [`Estimate::low`].
    pub high: f64,
}

impl Estimate {
    /// Whether a value lies within.
    pub fn holds(&self, truth: f64) -> bool {
        (self.low..=self.high).contains(&truth)
    }

    fn around(value: f64, half: f64) -> Self {
        Self { value, low: value - half, high: value + half }
    }
}

/// Spread of both arms together and its degrees of freedom; none where there is none.
fn pooled(with: &Sample, without: &Sample) -> Option<(f64, f64)> {
    if with.n < 2 || without.n < 2 {
        return None;
    }
    let df = (with.n + without.n - 2) as f64;
    let square = |arm: &Sample| (arm.n - 1) as f64 * arm.sd * arm.sd;
    let sd = ((square(with) + square(without)) / df).sqrt();
    (sd > 0.0).then_some((sd, df))
}

/// How much the means of two samples differ by chance, in units of the spread.
fn share(with: &Sample, without: &Sample) -> f64 {
    (1.0 / with.n as f64 + 1.0 / without.n as f64).sqrt()
}

/// Difference of the means with Student's t interval for equal spreads (Student 1908; any textbook).
pub fn difference(with: &Sample, without: &Sample) -> Option<Estimate> {
    let (sd, df) = pooled(with, without)?;
    let half = t_quantile(0.5 + 0.5 * LEVEL, df) * sd * share(with, without);
    Some(Estimate::around(with.mean - without.mean, half))
}

/// The factor that takes the bias of a standardised difference away: `Γ(df/2) / (√(df/2) Γ((df-1)/2))` (Hedges 1981, Journal of
/// Educational Statistics 6, 107-128).
pub fn unbiased(df: f64) -> f64 {
    math::exp(math::ln_gamma(0.5 * df) - math::ln_gamma(0.5 * (df - 1.0))) / (0.5 * df).sqrt()
}

/// Hedges' g, the difference of the means in units of the spread of both arms together. Its interval is that of the population's
/// effect, from the noncentral t distribution (Steiger & Fouladi 1997, in Harlow et al., What if there were no significance tests?):
/// exact where scores are normal.
pub fn hedges(with: &Sample, without: &Sample) -> Option<Estimate> {
    let (sd, df) = pooled(with, without)?;
    let d = (with.mean - without.mean) / sd;
    let t = d / share(with, without);
    let end = |p: f64| noncentrality(t, df, p).map(|delta| delta * share(with, without));
    let (low, high) = (end(0.5 + 0.5 * LEVEL)?, end(0.5 - 0.5 * LEVEL)?);
    Some(Estimate { value: unbiased(df) * d, low, high })
}

/// Before and after of one person.
pub type Pair = (f64, f64);

/// The difference between the arms after, at the same score before: analysis of covariance with one slope for both arms (Cochran
/// 1957, Biometrics 13, 261-281). In a study by lot it is as unbiased as the difference of gains and, with scores before that tell of
/// those after, narrower (Vickers & Altman 2001, BMJ 323, 1123-1124). Interval: Student's t with n - 3 degrees of freedom.
pub fn adjusted(with: &[Pair], without: &[Pair]) -> Option<Estimate> {
    let n = with.len() + without.len();
    if with.len() < 2 || without.len() < 2 || n < 4 {
        return None;
    }
    let mean = |arm: &[Pair]| {
        let sum = arm.iter().fold((0.0, 0.0), |(x, y), pair| (x + pair.0, y + pair.1));
        (sum.0 / arm.len() as f64, sum.1 / arm.len() as f64)
    };
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for arm in [with, without] {
        let (x0, y0) = mean(arm);
        for (x, y) in arm {
            xx += (x - x0) * (x - x0);
            xy += (x - x0) * (y - y0);
            yy += (y - y0) * (y - y0);
        }
    }
    // Without any spread before there is nothing to adjust for.
    if xx <= 0.0 {
        return None;
    }
    let slope = xy / xx;
    let df = (n - 3) as f64;
    let rest = ((yy - slope * xy) / df).max(0.0);
    let ((x1, y1), (x0, y0)) = (mean(with), mean(without));
    let apart = (x1 - x0) * (x1 - x0) / xx;
    let error = (rest * (1.0 / with.len() as f64 + 1.0 / without.len() as f64 + apart)).sqrt();
    let value = (y1 - y0) - slope * (x1 - x0);
    Some(Estimate::around(value, t_quantile(0.5 + 0.5 * LEVEL, df) * error))
}

/// All that is told of one test after against the test before.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Effect {
    /// Scores before in both arms: with rehearsal, without.
    pub before: [Sample; 2],
    /// Scores after.
    pub after: [Sample; 2],
    /// What each gained.
    pub gain: [Sample; 2],
    /// Hedges' g of the gains.
    pub g: Option<Estimate>,
    /// Difference of the gains, in points.
    pub difference: Option<Estimate>,
    /// Difference after at the same score before, in points.
    pub adjusted: Option<Estimate>,
}

impl Effect {
    /// Of the people with rehearsal and those without, each with before and after.
    pub fn of(with: &[Pair], without: &[Pair]) -> Self {
        let arms = [with, without];
        let each =
            |value: fn(&Pair) -> f64| arms.map(|arm| Sample::of(&arm.iter().map(value).collect::<Vec<_>>()));
        let gain = each(|(before, after)| after - before);
        Self {
            before: each(|pair| pair.0),
            after: each(|pair| pair.1),
            g: hedges(&gain[0], &gain[1]),
            difference: difference(&gain[0], &gain[1]),
            adjusted: adjusted(with, without),
            gain,
        }
    }
}
