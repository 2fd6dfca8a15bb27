//! The proportions of one subject's pulse wave, and how heart rate changes them.
//!
//! Times are given for an interval of one second and scale with the square root of the interval: systole lasts about
//! `0.3 sqrt(RR)` (Bazett 1920 for the electrical, common practice for the mechanical systole), while diastole takes
//! what is left.

use super::contour::{self, Contour};
use super::touch::Touch;
use super::wave::Bump;
use serde::{Deserialize, Serialize};

/// Proportions of a subject's wave. Heights are relative to the ejection bump, times for RR = 1 s.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Shape {
    /// From the electrical beat to the centre of the ejection bump, s.
    pub arrival_s: f64,
    /// Width of the ejection bump, s.
    pub ejection_width_s: f64,
    /// Steep beginning of the ejection, which sharpens the foot: height, delay (negative: before), width.
    pub fore: [f64; 3],
    /// Late systolic reflection: height, delay after the ejection centre, width.
    pub late: [f64; 3],
    /// Dicrotic wave: height, delay, width.
    pub dicrotic: [f64; 3],
    /// Last, flat diastolic wave: height, delay, width.
    pub last: [f64; 3],
    /// What the reservoir takes of the ejection, per second.
    pub filling: f64,
    /// Time constant of the reservoir, s; it does not scale with the interval.
    pub run_off_s: f64,
}

/// What one beat changes about the proportions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Variation {
    /// Square root of the interval that governs systole, s^0.5.
    pub stretch: f64,
    /// Height of the whole beat.
    pub amplitude: f64,
    /// Factor on all reflected waves (vascular tone).
    pub reflection: f64,
}

impl Shape {
    /// The bumps of a beat whose electrical time is `onset_s`, as `touch` hands them on.
    pub fn bumps_through(&self, touch: &Touch, onset_s: f64, v: Variation) -> [Bump; 5] {
        self.bumps(onset_s, v).map(|b| {
            let (width_s, share) = touch.smoothed(b.width_s);
            Bump { height: b.height * share, width_s, ..b }
        })
    }

    /// The bumps of a beat whose electrical time is `onset_s`.
    pub fn bumps(&self, onset_s: f64, v: Variation) -> [Bump; 5] {
        let centre = onset_s + self.arrival_s;
        let part = |p: [f64; 3], height: f64, filling: f64| Bump {
            height: height * p[0],
            centre_s: centre + v.stretch * p[1],
            width_s: v.stretch * p[2],
            filling,
        };
        let reflected = |p: [f64; 3]| part(p, v.amplitude * v.reflection, 0.0);
        let ejection = Bump {
            height: v.amplitude,
            centre_s: centre,
            width_s: v.stretch * self.ejection_width_s,
            filling: self.filling,
        };
        let fore = part(self.fore, v.amplitude, self.filling);
        [ejection, reflected(self.late), fore, reflected(self.dicrotic), reflected(self.last)]
    }

    /// The steady wave at a constant interval of `interval_s`, one period in `n` samples from the electrical beat on,
    /// height 1 for the ejection.
    pub fn steady_period(&self, interval_s: f64, n: usize) -> Vec<f64> {
        self.steady_period_through(&Touch::default(), interval_s, n)
    }

    /// The same as `touch` hands it on.
    pub fn steady_period_through(&self, touch: &Touch, interval_s: f64, n: usize) -> Vec<f64> {
        let step = interval_s / n as f64;
        let mut wave = super::wave::Wave::new(self.run_off_s, step);
        let rest = Variation { stretch: interval_s.sqrt(), amplitude: 1.0, reflection: 1.0 };
        let mut y = vec![0.0; n];
        // Ten time constants of the reservoir are forgotten, and every bump of the first beats has passed.
        let periods = (8.0 * self.run_off_s / interval_s + 4.0).ceil() as usize;
        for k in 0..periods {
            let now = k as f64 * interval_s;
            for bump in self.bumps_through(touch, now, rest) {
                wave.launch(bump, now);
            }
            for part in y.chunks_mut(super::wave::CHUNK) {
                wave.fill(part);
            }
        }
        touch.couple_period(&mut y, step);
        y
    }

    /// The same with the reflections weakened until one systolic summit is clearly the highest at this interval, as
    /// `touch` hands it on: every other lies `margin` of the height below it, and the top is no flatter than `flat` widths of the ejection.
    ///
    /// With two summits of the same height, or a plateau, the peak would jump from beat to beat by a tenth of a
    /// second; then there would be no sensible answer to when the beat was.
    pub fn with_one_summit(mut self, touch: &Touch, interval_s: f64, margin: f64, flat: f64) -> Self {
        const N: usize = 256;
        let (width_s, _) = touch.smoothed(self.ejection_width_s);
        for _ in 0..40 {
            let y = self.steady_period_through(touch, interval_s, N);
            let (top, low) = extremes(&y);
            let near_top = |k: usize, margin: f64| y[k % N] > top - margin * (top - low);
            let summits: Vec<usize> = (0..N)
                .filter(|k| near_top(*k, margin) && y[(k + N - 1) % N] < y[*k] && y[*k] >= y[(k + 1) % N])
                .collect();
            // A flat top is as bad: an ejection bump by itself is within 4 % of its top for 0.6 of its width.
            let flat_s = (0..N).filter(|k| near_top(*k, 0.04)).count() as f64 * interval_s / N as f64;
            // Two summits far apart are the systolic and the dicrotic one, two close together those of systole.
            let far = summits.len() == 2 && {
                let apart = (summits[1] - summits[0]).min(N + summits[0] - summits[1]);
                apart as f64 * interval_s / N as f64 > 0.18 * interval_s.sqrt()
            };
            if far {
                self.dicrotic[0] *= 0.96;
                self.last[0] *= 0.97;
            } else if summits.len() != 1 || flat_s >= flat * width_s * interval_s.sqrt() {
                self.late[0] *= 0.96;
            } else {
                break;
            }
        }
        self
    }

    /// What shows after the peak in the steady wave at a constant interval.
    pub fn contour(&self, touch: &Touch, interval_s: f64) -> Contour {
        const N: usize = 512;
        let y = self.steady_period_through(touch, interval_s, N);
        contour::of(&y, interval_s / N as f64, SECOND_WITHIN_S * interval_s.sqrt())
    }

    /// Peak-to-peak height and mean of the steady wave at a constant interval, as `touch` hands it on.
    pub fn steady_height_and_mean(&self, touch: &Touch, interval_s: f64) -> (f64, f64) {
        let y = self.steady_period_through(touch, interval_s, 512);
        let (top, low) = extremes(&y);
        (top - low, y.iter().sum::<f64>() / y.len() as f64)
    }
}

/// How long after the peak a beat's second bump may be highest, s at an interval of one second.
pub(crate) const SECOND_WITHIN_S: f64 = 0.42;

/// Highest and lowest value.
fn extremes(y: &[f64]) -> (f64, f64) {
    y.iter().fold((f64::MIN, f64::MAX), |(top, low), v| (top.max(*v), low.min(*v)))
}
