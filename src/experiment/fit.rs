//! A recovery as one exponential, `rest + a exp(-t / tau)`, by weighted least squares. For each time constant of a fine grid the
//! best `rest` and `a` follow directly; the interval holds the time constants whose fit is not worse than the best one's by more
//! than chance allows (profile of the sum of squares, F with 1 and n - 3 degrees of freedom, 95 %; Bates & Watts, Nonlinear
//! Regression Analysis, 1988, section 6.1).

use crate::math;

/// Shortest and longest time constant that is looked for, s.
pub const RANGE_S: [f64; 2] = [5.0, 1500.0];
/// Steps of the grid; each is .7 % longer than the one before.
const STEPS: usize = 800;
/// Squares of Student's t at 97.5 % with 1, 2, ... degrees of freedom (any table).
const T2: [f64; 12] = [161.4, 18.51, 10.13, 7.709, 6.608, 5.987, 5.591, 5.318, 5.117, 4.965, 4.844, 4.747];

/// A point: time since the end of exercise (`None` at rest before), rate and its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Time, s.
    pub t_s: Option<f64>,
    /// Rate, beats/min.
    pub rate: f64,
    /// Uncertainty, beats/min.
    pub u: f64,
}

/// A fitted recovery.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Time constant, s.
    pub tau_s: f64,
    /// Lower end of its interval, s.
    pub low_s: f64,
    /// Upper end, s; `None` where the points set none.
    pub high_s: Option<f64>,
    /// Where it goes to, beats/min.
    pub rest: f64,
    /// Height above that at time 0, beats/min.
    pub above: f64,
    /// Points.
    pub n: usize,
}

impl Fit {
    /// The fitted rate, beats/min.
    pub fn rate(&self, t_s: f64) -> f64 {
        self.rest + self.above * math::exp(-t_s / self.tau_s)
    }
}

/// `rest`, `above` and the weighted sum of squares at a time constant.
fn at(points: &[Point], tau_s: f64) -> Option<(f64, f64, f64)> {
    let shape = |p: &Point| p.t_s.map_or(0.0, |t| math::exp(-t / tau_s));
    let (mut w, mut x, mut y, mut xx, mut xy) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for p in points {
        let (weight, e) = (1.0 / (p.u * p.u), shape(p));
        w += weight;
        x += weight * e;
        y += weight * p.rate;
        xx += weight * e * e;
        xy += weight * e * p.rate;
    }
    let over = w * xx - x * x;
    if over <= 1e-12 * w * xx {
        return None;
    }
    let above = (w * xy - x * y) / over;
    let rest = (y - above * x) / w;
    let off = |p: &Point| (p.rate - rest - above * shape(p)) / p.u;
    Some((rest, above, points.iter().map(|p| off(p) * off(p)).sum()))
}

/// The fit. `None` with fewer than five points, fewer than three of them in the recovery, or no fall in them.
pub fn recovery(points: &[Point]) -> Option<Fit> {
    let good = points.iter().all(|p| p.rate.is_finite() && p.u > 0.0 && p.t_s.is_none_or(f64::is_finite));
    let falling = points.iter().filter(|p| p.t_s.is_some()).count();
    if points.len() < 5 || falling < 3 || !good {
        return None;
    }
    let ratio = math::ln(RANGE_S[1] / RANGE_S[0]) / (STEPS as f64 - 1.0);
    let tau = |k: usize| RANGE_S[0] * math::exp(ratio * k as f64);
    let fits: Vec<_> = (0..STEPS).map(|k| at(points, tau(k))).collect();
    let square = |k: usize| fits[k].map_or(f64::INFINITY, |f| f.2);
    let best = (0..STEPS).min_by(|a, b| square(*a).total_cmp(&square(*b)))?;
    let (rest, above, least) = fits[best]?;
    if above <= 0.0 {
        return None;
    }
    let free = points.len() - 3;
    // Residuals smaller than the counts allow are luck.
    let variance = (least / free as f64).max(1.0);
    let bound = least + variance * T2.get(free - 1).copied().unwrap_or(T2[T2.len() - 1]);
    let low = (0..=best).find(|k| square(*k) <= bound).unwrap_or(best);
    let high = (best..STEPS).rev().find(|k| square(*k) <= bound).unwrap_or(best);
    Some(Fit {
        tau_s: tau(best),
        low_s: tau(low),
        high_s: (high + 1 < STEPS).then(|| tau(high)),
        rest,
        above,
        n: points.len(),
    })
}
