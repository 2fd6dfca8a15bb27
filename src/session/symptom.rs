//! The figure in which each fault shows: above 1 the symptom is there. Worked out from what the student could see too:
//! the last seconds of the live signal, the settings, the recordings.

use super::action::Mode;
use super::attempt::Session;
use crate::chain::Chain;
use crate::math;
use crate::measure::{detect, quality};
use crate::recorder::converter;
use crate::scenario::fault::{Fault, Symptom};

/// Stretch of the live signal that is looked at, s.
const LOOK_S: f64 = 12.0;

/// Whether the cause of a fault is still there, whatever filters leave of it.
pub fn cause_remains(session: &Session, fault: &Fault) -> bool {
    session.is_at_work(fault)
}

/// The figure of a symptom.
pub fn measure(session: &Session, symptom: Symptom) -> f64 {
    let Some(chain) = session.chain() else { return 0.0 };
    let settings = chain.settings();
    let sure = |there: bool| if there { 2.0 } else { 0.0 };
    match symptom {
        Symptom::Unseen => sure(!chain.seen()),
        Symptom::Losses => 2.0 * f64::from(session.losses_lately()),
        Symptom::Hidden => sure(!settings.shown),
        Symptom::Paused => sure(session.mode() == Mode::Paused),
        Symptom::Mislabelled => sure(settings.scale != 1.0),
        Symptom::NothingSaved => sure(session.recordings().is_empty()),
        Symptom::Finding(code) => {
            let found = session.preview().is_some_and(|(r, _)| r.steps.iter().any(|f| f.code == code));
            sure(found)
        }
        Symptom::Raised => chain.rate_over_rest() / 1.17,
        Symptom::HumBehindFilters => 2.0 * chain.hum_v() / chain.best_pulse_v() / 0.1,
        // Sighs come a few times a minute, slow breaths hardly more often.
        Symptom::Shrinking | Symptom::Swinging => {
            Look::at(session, chain, 2.5 * LOOK_S).map_or(0.0, |look| look.figure(symptom, session))
        }
        _ => Look::at(session, chain, LOOK_S).map_or(0.0, |look| look.figure(symptom, session)),
    }
}

/// The last seconds of the live signal.
struct Look {
    values: Vec<f64>,
    rate_hz: f64,
    power_line_hz: f64,
    range_v: f64,
    best_v: f64,
    pulse_v: f64,
    beats: Vec<f64>,
    bits: u8,
}

impl Look {
    fn at(session: &Session, chain: &Chain, seconds: f64) -> Option<Self> {
        let live = session.live()?;
        let settings = chain.settings();
        let values: Vec<f64> = live.last(seconds).iter().map(|v| v / settings.scale).collect();
        if (values.len() as f64) < 4.0 * live.rate_hz() {
            return None;
        }
        let rate_hz = live.rate_hz();
        Some(Self {
            pulse_v: quality::pulse_pp(&values, rate_hz).unwrap_or(0.0),
            beats: detect::detect(&values, rate_hz),
            values,
            rate_hz,
            power_line_hz: chain.config().power_line.hz,
            range_v: settings.range_v,
            best_v: chain.best_pulse_v(),
            bits: settings.bits,
        })
    }

    fn figure(&self, symptom: Symptom, session: &Session) -> f64 {
        let pulse = self.pulse_v.max(1e-9);
        match symptom {
            Symptom::NoPulse => {
                let index = quality::quality(&self.values, self.rate_hz).map_or(0.0, |q| q.likeness);
                if self.pulse_v < 0.03 * self.best_v { 2.0 } else { (0.5 / index.max(1e-3)).min(2.0) }
            }
            Symptom::Jumps => self.jumps() / 0.6,
            Symptom::Clip => self.clip() / 0.002,
            Symptom::Tiny => (0.08 * 2.0 * self.range_v / pulse).min(9.0),
            Symptom::Weak | Symptom::Fading => (0.5 * self.best_v / pulse).min(9.0),
            Symptom::Jagged => 45.0 / (self.interval_s() * self.rate_hz),
            Symptom::UpsideDown => self.steepness(),
            Symptom::Smooth => 0.15 / self.fine_share().max(1e-6),
            Symptom::Overshoot => 0.45 / self.resting_share().max(1e-3),
            Symptom::Hum => {
                quality::hum(&self.values, self.rate_hz, self.power_line_hz).map_or(0.0, |h| h.pp)
                    / pulse
                    / 0.1
            }
            Symptom::Flicker => 2.0 * self.line(2.0 * self.power_line_hz) / pulse / 0.05,
            Symptom::Ripple => self.band_rms(8.0, 12.0) / (0.5 * pulse) / 0.12,
            Symptom::Spikes => self.spikes() / pulse / 0.06,
            Symptom::Movement => self.spread() / self.best_v / 1.9,
            Symptom::Slow => {
                let drift = quality::quality(&self.values, self.rate_hz).map_or(0.0, |q| q.drift_pp);
                drift / pulse / 0.5
            }
            Symptom::Shrinking => 0.45 / self.smallest_beat().max(1e-3),
            Symptom::Uneven => self.unevenness() / 0.25,
            Symptom::TwoPulses => {
                let likeness = quality::quality(&self.values, self.rate_hz).map_or(0.0, |q| q.likeness);
                (1.0 - likeness) / 0.1
            }
            Symptom::Stairs => session.chain().map_or(0.0, Chain::step_v) / pulse / 0.0155,
            Symptom::Swinging => self.swing() / 0.25,
            Symptom::Buzz => 2.83 * self.band_rms(22.0, 38.0) / pulse / 0.12,
            Symptom::FewBeats => 2.0 * self.interval_s() / session.time_base_s(),
            Symptom::ManyBeats => session.time_base_s() / self.interval_s() / 40.0,
            _ => 0.0,
        }
    }

    /// Median interval between beats, s; .8 s when none are found.
    fn interval_s(&self) -> f64 {
        let mut intervals: Vec<f64> = self.beats.windows(2).map(|w| w[1] - w[0]).collect();
        intervals.sort_by(f64::total_cmp);
        intervals.get(intervals.len() / 2).copied().unwrap_or(0.8)
    }

    fn clip(&self) -> f64 {
        let code_v = converter::code_v(self.range_v);
        let clipped = self
            .values
            .iter()
            .filter(|v| converter::at_limit((*v / code_v).round().clamp(-32768.0, 32767.0) as i16, self.bits))
            .count();
        clipped as f64 / self.values.len() as f64
    }

    /// Steps within 8 ms of more than a quarter of the best pulse.
    fn jumps(&self) -> f64 {
        let n = ((0.008 * self.rate_hz) as usize).max(1);
        let mut count = 0;
        let mut k = 0;
        while k + n < self.values.len() {
            if (self.values[k + n] - self.values[k]).abs() > 0.25 * self.best_v.max(self.pulse_v) {
                count += 1;
                k += (0.05 * self.rate_hz) as usize;
            }
            k += 1;
        }
        f64::from(count)
    }

    /// Steepest falls over steepest rises, over 40 ms: below 1 for a pulse that points up.
    fn steepness(&self) -> f64 {
        let n = ((0.04 * self.rate_hz) as usize).max(1);
        let mut slopes: Vec<f64> = self.values.windows(n + 1).map(|w| w[n] - w[0]).collect();
        slopes.sort_by(f64::total_cmp);
        let at = slopes.len() / 50;
        let (fall, rise) = (-slopes[at], slopes[slopes.len() - 1 - at]);
        fall / rise.max(1e-12) / 1.15
    }

    /// RMS of the band over RMS of the whole.
    fn share(&self, low_hz: f64, high_hz: f64) -> f64 {
        let mean = self.values.iter().sum::<f64>() / self.values.len() as f64;
        let all = (self.values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>()
            / self.values.len() as f64)
            .sqrt();
        self.band_rms(low_hz, high_hz) / all.max(1e-12)
    }

    fn fine_share(&self) -> f64 {
        self.share(2.6 / self.interval_s().max(0.3), 12.0)
    }

    fn band_rms(&self, low_hz: f64, high_hz: f64) -> f64 {
        use crate::recorder::filters::{Memory, Section};
        let high = Section::high_pass(2, low_hz, self.rate_hz);
        let low = Section::low_pass(2, high_hz, self.rate_hz);
        let mut memories = [Memory::default(); 4];
        let skip = (1.5 * self.rate_hz) as usize;
        let mut sum = 0.0;
        for (k, v) in self.values.iter().enumerate() {
            let y = memories[0].step(&high, *v);
            let y = memories[1].step(&high, y);
            let y = memories[2].step(&low, y);
            let y = memories[3].step(&low, y);
            if k >= skip {
                sum += y * y;
            }
        }
        (sum / (self.values.len() - skip) as f64).sqrt()
    }

    /// Height of the middle value over the lowest, against the highest over the middle: a high-pass makes the peaks
    /// stand out alone and the rest of the line lie low.
    fn resting_share(&self) -> f64 {
        let mut sorted = self.values.clone();
        sorted.sort_by(f64::total_cmp);
        let n = sorted.len();
        let (low, middle, high) = (sorted[n / 100], sorted[n / 2], sorted[n - 1 - n / 100]);
        (middle - low) / (high - middle).max(1e-12)
    }

    fn line(&self, hz: f64) -> f64 {
        let n = ((0.4 * self.rate_hz) as usize).max(8);
        let mut levels: Vec<f64> = self
            .values
            .chunks_exact(n)
            .map(|chunk| {
                let (c, s) = chunk.iter().enumerate().fold((0.0, 0.0), |(c, s), (k, v)| {
                    let angle = math::TAU * hz * k as f64 / self.rate_hz;
                    let v = v * (1.0 - math::cos(math::TAU * k as f64 / n as f64));
                    (c + v * math::cos(angle), s + v * math::sin(angle))
                });
                2.0 * math::hypot(c, s) / n as f64
            })
            .collect();
        levels.sort_by(f64::total_cmp);
        levels.get(levels.len() / 2).copied().unwrap_or(0.0)
    }

    /// Largest of the fast deviations: the sample against the middle of its neighbours, 99th percentile.
    fn spikes(&self) -> f64 {
        let mut sharp: Vec<f64> =
            self.values.windows(3).map(|w| (w[1] - 0.5 * (w[0] + w[2])).abs()).collect();
        sharp.sort_by(f64::total_cmp);
        sharp[sharp.len() - 1 - sharp.len() / 100]
    }

    fn spread(&self) -> f64 {
        let (low, high) = self.values.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
        high - low
    }

    /// Size of the smallest beat against the median one.
    fn smallest_beat(&self) -> f64 {
        let mut sizes: Vec<f64> = self
            .beats
            .windows(2)
            .map(|w| {
                let (a, b) = ((w[0] * self.rate_hz) as usize, (w[1] * self.rate_hz) as usize);
                let stretch = &self.values[a.min(self.values.len())..b.min(self.values.len())];
                let (low, high) =
                    stretch.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
                (high - low).max(0.0)
            })
            .collect();
        sizes.sort_by(f64::total_cmp);
        match sizes.get(sizes.len() / 2) {
            Some(middle) if *middle > 0.0 => {
                sizes[0].min(sizes[sizes.len() / 8]) / self.best_v.min(2.0 * middle)
            }
            _ => 1.0,
        }
    }

    /// From the short intervals to the long ones, a tenth of them left out at each end, of the middle one.
    fn swing(&self) -> f64 {
        let mut intervals: Vec<f64> = self.beats.windows(2).map(|w| w[1] - w[0]).collect();
        intervals.sort_by(f64::total_cmp);
        let tenth = intervals.len() / 10;
        match (intervals.get(tenth), intervals.iter().nth_back(tenth)) {
            (Some(short), Some(long)) => (long - short) / self.interval_s(),
            _ => 0.0,
        }
    }

    /// Largest change from one interval to the next, as a share of the median interval.
    fn unevenness(&self) -> f64 {
        let middle = self.interval_s();
        self.beats.windows(3).map(|w| ((w[2] - w[1]) - (w[1] - w[0])).abs() / middle).fold(0.0, f64::max)
    }
}
