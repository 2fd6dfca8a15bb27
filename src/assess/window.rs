//! The beats inside the student's own window. A beat whose peak lies on a cursor to within a few hundredths of a
//! second may be counted or left out: the eye cannot tell, and the recorder's filters show it a little late.

use crate::measure::landmarks::Landmarks;
use serde::Serialize;

/// A beat to count.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// Time of the systolic peak in the recording, s.
    pub at_s: f64,
    /// Whether it must be counted: a premature beat may not reach the finger, or pass for a notch wave.
    pub sure: bool,
}

impl Peak {
    /// Whether it lies from `a` up to just before `b`, s.
    pub fn within(&self, a: f64, b: f64) -> bool {
        self.at_s >= a && self.at_s < b
    }
}

/// Which counts a window allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Allowed {
    /// Beats with their peak from the first cursor up to just before the second.
    pub exact: usize,
    /// Fewest that can be counted in good faith.
    pub least: usize,
    /// Most that can be counted in good faith.
    pub most: usize,
}

impl Allowed {
    /// Whether more beats are unsure than sure: then nobody can tell a right count from a wrong one.
    pub fn mostly_unsure(&self) -> bool {
        2 * self.exact < self.most
    }

    /// Whether a count is among them.
    pub fn holds(&self, count: f64) -> bool {
        count == count.floor() && count >= self.least as f64 && count <= self.most as f64
    }
}

/// The feet of the beats as the recording shows them: each beat's own landmark, and for a beat without one (the last of a recording
/// has none) its peak less the usual time from foot to peak. `landmarks` in order of time; empty without them.
pub fn feet(peaks: &[Peak], landmarks: &[Landmarks], delay_s: f64) -> Vec<Peak> {
    let mut crests: Vec<f64> = landmarks.iter().map(|l| l.peak_s - l.foot_s).collect();
    if crests.is_empty() {
        return Vec::new();
    }
    crests.sort_by(f64::total_cmp);
    let usual_s = crests[crests.len() / 2];
    peaks
        .iter()
        .map(|p| {
            let shown = p.at_s + delay_s;
            // Landmarks are in order of time.
            let next = landmarks.partition_point(|l| l.peak_s < shown);
            let near = landmarks[next.saturating_sub(1)..].iter().take(2);
            let off = |l: &&Landmarks| (l.peak_s - shown).abs();
            let own = near.min_by(|x, y| off(x).total_cmp(&off(y))).filter(|l| off(l) < 0.15);
            Peak { at_s: own.map_or(shown - usual_s, |l| l.foot_s), sure: p.sure }
        })
        .collect()
}

/// The counts that a window allows to who begins with zero on the beat that cursor A stands on: the beats after it. `None` where
/// A stands on no beat. A stands on a beat from its foot, where `feet` has it, to its peak, give or take `edge_s`.
pub fn from_zero(
    peaks: &[Peak],
    feet: &[Peak],
    (a, b): (f64, f64),
    edge_s: f64,
    delay_s: f64,
) -> Option<Allowed> {
    let on = |k: &usize| {
        let shown = peaks[*k].at_s + delay_s;
        let first = feet.get(*k).map_or(shown, |f| f.at_s).min(peaks[*k].at_s);
        a >= first - edge_s && a <= shown.max(peaks[*k].at_s) + edge_s
    };
    let zero = (0..peaks.len()).find(on)?;
    Some(allowed(&peaks[zero + 1..], f64::NEG_INFINITY, b, edge_s, delay_s))
}

/// The counts that a window from `a` to `b` s allows. `edge_s` is the distance to a cursor below which a beat is a
/// matter of taste; `delay_s` how much later (or earlier, if negative) than `at_s` the recorder shows a peak.
pub fn allowed(peaks: &[Peak], a: f64, b: f64, edge_s: f64, delay_s: f64) -> Allowed {
    let (early, late) = (delay_s.min(0.0), delay_s.max(0.0));
    let mut found = Allowed { exact: 0, least: 0, most: 0 };
    for peak in peaks {
        let shown = peak.at_s + delay_s;
        if peak.sure && shown >= a && shown < b {
            found.exact += 1;
        }
        // The peak may be read anywhere between its true place and where the filters put it.
        let (first, last) = (peak.at_s + early - edge_s, peak.at_s + late + edge_s);
        if peak.sure && first >= a && last < b {
            found.least += 1;
        }
        if last >= a && first < b {
            found.most += 1;
        }
    }
    found
}

/// Mean rate of the beats from `a` to `b`, beats/min: intervals between the first and last of them over their time.
/// `None` with fewer than two.
pub fn interval_rate(peaks: &[Peak], a: f64, b: f64) -> Option<f64> {
    let inside: Vec<f64> = peaks.iter().filter(|p| p.within(a, b)).map(|p| p.at_s).collect();
    let (first, last) = (inside.first()?, inside.last()?);
    (inside.len() > 1 && last > first).then(|| 60.0 * (inside.len() - 1) as f64 / (last - first))
}

/// How many intervals lie between two places, and how far the second is from the feature that the first is on, s.
pub fn spanned(peaks: &[Peak], delay_s: f64, a: f64, b: f64) -> Option<(u32, f64)> {
    let peaks: Vec<f64> = peaks.iter().filter(|p| p.sure).map(|p| p.at_s + delay_s).collect();
    let nearest =
        |t: f64| (0..peaks.len()).min_by(|x, y| (peaks[*x] - t).abs().total_cmp(&(peaks[*y] - t).abs()));
    // The same feature lies equally far from the peak of its own beat.
    let i = nearest(a)?;
    let from = a - peaks[i];
    let j = nearest(b - from)?;
    Some((j.saturating_sub(i) as u32, (b - from - peaks[j]).abs()))
}
