//! What shows after the peak: the four classes of the pulse's contour.
//!
//! Dawber, Thomas and McNamara 1973 (Angiology 24:244) sorted finger pulses by the notch: I a notch, II no notch but a
//! level stretch, III a fall that only bends, IV nothing; from I to IV with age. What counts as level or as a bend they
//! judged by eye; the figures here are design defaults.

use serde::{Deserialize, Serialize};

/// Class of a contour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Contour {
    /// I: the wave rises again after the notch.
    Notch,
    /// II: it does not rise, but goes on level.
    Level,
    /// III: it falls all the time, less steeply for a while.
    Bend,
    /// IV: nothing interrupts the fall.
    Plain,
}

/// Steepest fall that is still level, and least change of the slope that is a bend: heights of the beat a second.
const LEVEL_PER_S: f64 = 0.35;
const BEND_PER_S: f64 = 0.25;
/// Least rise that is a notch, heights of the beat.
const NOTCH: f64 = 0.005;

/// Class of one period of a steady wave, samples `step_s` apart. Looks from the peak to `until_s` after it.
pub fn of(y: &[f64], step_s: f64, until_s: f64) -> Contour {
    let n = y.len();
    let top = (0..n).max_by(|a, b| y[*a].total_cmp(&y[*b])).unwrap_or(0);
    let low = y.iter().copied().fold(f64::MAX, f64::min);
    let height = (y[top] - low).max(f64::MIN_POSITIVE);
    let at = |k: usize| (y[(top + k) % n] - low) / height;
    let end = ((until_s / step_s) as usize).min(n - 1);
    let (mut lowest, mut rise) = (at(0), 0.0_f64);
    // Steepest fall so far, least fall since then, and the largest gain of slope that was lost again.
    let (mut steepest, mut mildest, mut bend, mut level) = (0.0_f64, f64::MIN, 0.0_f64, f64::MIN);
    for k in 0..end {
        lowest = lowest.min(at(k));
        rise = rise.max(at(k) - lowest);
        let slope = (at(k + 1) - at(k)) / step_s;
        if slope < steepest {
            (steepest, mildest) = (slope, slope);
        }
        mildest = mildest.max(slope);
        let (gained, lost) = (mildest - steepest, mildest - slope);
        if gained.min(lost) > bend {
            bend = gained.min(lost);
            level = mildest;
        }
    }
    if rise > NOTCH {
        Contour::Notch
    } else if bend > BEND_PER_S && level > -LEVEL_PER_S {
        Contour::Level
    } else if bend > BEND_PER_S {
        Contour::Bend
    } else {
        Contour::Plain
    }
}
