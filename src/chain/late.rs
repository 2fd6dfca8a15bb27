//! By how much the way from the finger to the trace moves the peak of a beat.

use super::Chain;
use crate::recorder::device;
use crate::recorder::filters::Memory;

/// Periods after which the input's high-pass has settled on a wave without its mean.
const SETTLING: usize = 4;
/// How far a peak is looked for before and behind its own place, s: the second-order low-pass of 1 Hz moves it by .22 s.
const EARLY_S: f64 = 0.25;
/// See [`EARLY_S`].
const LATE_S: f64 = 0.4;

impl Chain {
    /// How late sensor, input and filters show the peak of a beat, s: by how much the peak of the subject's own beat at rest
    /// moves on the way to the trace. Negative where it is shown early, as the slope of a pulse is steepest before the peak.
    pub fn late_s(&self) -> f64 {
        let settings = self.recorder.settings();
        let rate_hz = settings.analogue_rate_hz();
        let subject = self.body.subject();
        let interval_s = 60.0 / subject.rest_rate_bpm;
        let n = (interval_s * rate_hz) as usize;
        let mut felt = subject.shape.steady_period_through(&subject.touch, interval_s, n);
        let mean = felt.iter().sum::<f64>() / n as f64;
        felt.iter_mut().for_each(|x| *x -= mean);

        let mut input = Memory::default();
        let mut at_input = felt.clone();
        for _ in 0..SETTLING {
            at_input = felt.iter().map(|x| input.step(&self.sensor_section, *x)).collect();
        }
        let shown = device::steady(settings, &at_input);

        let peak = highest(&felt, n..2 * n).unwrap_or(n);
        let within = |s: f64| ((s * rate_hz) as usize).min(n / 2);
        let moved = highest(&shown, peak - within(EARLY_S)..peak + within(LATE_S)).unwrap_or(peak);
        (moved as f64 - peak as f64) / rate_hz
    }
}

/// The highest sample of a wave that repeats, among those numbered by `range`.
fn highest(period: &[f64], mut range: std::ops::Range<usize>) -> Option<usize> {
    let at = |k: usize| period[k % period.len()];
    let first = range.next()?;
    Some(range.fold(first, |best, k| if at(k) > at(best) { k } else { best }))
}
