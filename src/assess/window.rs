//! The beats inside the student's own window. A beat whose peak lies on a cursor to within a few hundredths of a
//! second may be counted or left out: the eye cannot tell, and the recorder's filters show it a little late.

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
