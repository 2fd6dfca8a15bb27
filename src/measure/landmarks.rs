//! Foot, peak, notch and second wave of a beat: of single beats and of their mean.
//!
//! Definitions: the foot is the lowest point before the upstroke, the peak the highest point after it (the first
//! maximum of at least 80 % of the highest, as the second wave may be the higher one). The second, diastolic wave
//! begins where the falling limb bends up most, 60 to 350 ms after the peak; its maximum is the highest within 250 ms of
//! there, and the notch is the lowest point between both maxima. Where the second wave stands out by less than 2 % of
//! the height there is only a shoulder, and the notch is the sharpest bend itself. Heights are above the straight line
//! from foot to foot.

use crate::dsp::{resample, section, section::Section, zero_phase};
use serde::{Deserialize, Serialize};

/// The landmarks of one beat. Times in seconds from the first sample of the recording (of a mean beat: from its foot);
/// durations in milliseconds; heights in the unit of the samples or, where they say so, as part of the peak's.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Landmarks {
    /// Time of the foot.
    pub foot_s: f64,
    /// Time of the systolic peak.
    pub peak_s: f64,
    /// Time of the notch; absent where the beat ends before one can be.
    pub notch_s: Option<f64>,
    /// Time of the second wave's maximum; absent where the falling limb only has a shoulder.
    pub second_s: Option<f64>,
    /// Height of the peak above the foot.
    pub height: f64,
    /// Height of the notch as part of the peak's.
    pub notch_part: Option<f64>,
    /// Height of the second wave as part of the peak's (the reflection index).
    pub second_part: Option<f64>,
    /// Crest time: foot to peak.
    pub crest_ms: f64,
    /// Rise from 10 to 90 % of the height.
    pub rise_ms: f64,
    /// Foot to notch.
    pub notch_after_foot_ms: Option<f64>,
    /// Time above half of the height.
    pub width50_ms: f64,
}

impl Landmarks {
    /// Counts times from `by_s` seconds earlier on.
    pub fn shift(&mut self, by_s: f64) {
        self.foot_s += by_s;
        self.peak_s += by_s;
        self.notch_s = self.notch_s.map(|t| t + by_s);
        self.second_s = self.second_s.map(|t| t + by_s);
    }
}

/// The mean beat: the median, point by point, of all beats of nearly the same length.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeanBeat {
    /// Points a second: 1000.
    pub rate_hz: f64,
    /// From foot to foot, above the line between them, in the unit of the samples.
    pub values: Vec<f64>,
    /// Number of beats that went into it.
    pub beats: usize,
    /// Its landmarks.
    pub landmarks: Landmarks,
}

/// Points a second on which landmarks are looked for.
const FINE_HZ: f64 = 1000.0;

/// The landmarks of each beat that has a beat after it, given the times of the peaks (as from
/// [`super::detect::detect`]). Beats of which a part is missing are left out.
pub fn of_beats(values: &[f64], rate_hz: f64, beats_s: &[f64]) -> Vec<Landmarks> {
    let smooth = smooth(values, rate_hz);
    let edges = edges(&smooth, rate_hz, beats_s);
    let landmarks = |from: f64, to: f64| {
        let wing = ((to - from) * WING * FINE_HZ) as usize;
        let cut = cut(&smooth, rate_hz, (from, to), wing, 0)?;
        let (foot, next) = (lowest(&cut[..=wing])?, cut.len() - 1 - wing);
        let next = next + lowest(&cut[next..])?;
        let mut found = find(&levelled(cut[foot..=next].to_vec()))?;
        let start_s = from + (foot as f64 - wing as f64) / FINE_HZ;
        found.shift(start_s);
        Some(found)
    };
    edges.windows(2).filter_map(|pair| landmarks(pair[0]?, pair[1]?)).collect()
}

/// The mean beat; `None` with fewer than three beats of nearly the same length.
pub fn mean_beat(values: &[f64], rate_hz: f64, beats_s: &[f64]) -> Option<MeanBeat> {
    let smooth = smooth(values, rate_hz);
    let edges = edges(&smooth, rate_hz, beats_s);
    let pairs: Vec<(f64, f64)> = edges.windows(2).filter_map(|w| Some((w[0]?, w[1]?))).collect();
    let usual = median(&mut pairs.iter().map(|p| p.1 - p.0).collect::<Vec<f64>>())?;
    let (wing, length) = ((WING * usual * FINE_HZ) as usize, (usual * FINE_HZ) as usize);
    let cuts: Vec<Vec<f64>> = pairs
        .iter()
        .filter(|p| (0.8..=1.2).contains(&((p.1 - p.0) / usual)))
        // All of one length: a longer beat is cut off in its diastole, a shorter one runs into the next upstroke.
        .filter_map(|p| {
            let mut cut = cut(&smooth, rate_hz, *p, wing, length)?;
            cut.truncate(wing + length);
            Some(cut)
        })
        .collect();
    if cuts.len() < 3 {
        return None;
    }
    let column = |i: usize| median(&mut cuts.iter().map(|c| c[i]).collect::<Vec<f64>>());
    let middle: Vec<f64> = (0..wing + length).map_while(column).collect();
    let from = lowest(&middle[..=wing])?;
    let to = length + lowest(&middle[length..])?;
    let values = levelled(middle[from..=to].to_vec());
    let landmarks = find(&values)?;
    Some(MeanBeat { rate_hz: FINE_HZ, values, beats: cuts.len(), landmarks })
}

/// Part of a beat before its steepest point in which its foot is looked for.
const WING: f64 = 0.4;

/// A beat on the fine grid, from `before` points ahead of its steepest point to `after` points past that of the next
/// beat, less the straight line through both points: what drifts on, drifts off. `None` where the record ends first.
fn cut(
    smooth: &[f64],
    rate_hz: f64,
    (from, to): (f64, f64),
    before: usize,
    after: usize,
) -> Option<Vec<f64>> {
    let at = |t: f64| resample::cubic(smooth, t * rate_hz);
    let count = before + ((to - from) * FINE_HZ) as usize + after;
    let start_s = from - before as f64 / FINE_HZ;
    // What lies past the next foot is never used, so the record may end there.
    if start_s < 0.0 || to * rate_hz > (smooth.len() - 1) as f64 {
        return None;
    }
    let (level, slope) = (at(from), (at(to) - at(from)) / (to - from));
    let value = |t: f64| at(t) - level - slope * (t - from);
    Some((0..=count).map(|i| value(start_s + i as f64 / FINE_HZ)).collect())
}

/// Upper median; `None` of nothing.
fn median(x: &mut [f64]) -> Option<f64> {
    let middle = x.len() / 2;
    (!x.is_empty()).then(|| *x.select_nth_unstable_by(middle, f64::total_cmp).1)
}

/// The recording without hum and noise above the pulse: low-pass at 20 Hz, where rates allow.
fn smooth(values: &[f64], rate_hz: f64) -> Vec<f64> {
    let mut x = resample::held(values).into_owned();
    if rate_hz > 50.0 {
        let low = Section::low_pass(20.0, rate_hz, section::BUTTERWORTH_2);
        zero_phase::filter(&[low], &mut x, rate_hz as usize);
    }
    x
}

/// Times of the steepest point before each peak.
fn edges(smooth: &[f64], rate_hz: f64, beats_s: &[f64]) -> Vec<Option<f64>> {
    let mut before = f64::NEG_INFINITY;
    beats_s
        .iter()
        .map(|t| {
            // No further back than a third of the way to the peak before, nor than the slowest upstroke.
            let reach_s = (0.67 * (t - before)).min(0.4);
            before = *t;
            steepest(smooth, rate_hz, *t, reach_s)
        })
        .collect()
}

/// Time of the steepest rise in the `reach_s` before a peak.
fn steepest(smooth: &[f64], rate_hz: f64, peak_s: f64, reach_s: f64) -> Option<f64> {
    let (from, to) = (((peak_s - reach_s) * rate_hz).max(0.0) as usize, (peak_s * rate_hz).max(0.0) as usize);
    let run = smooth.get(from..=to)?;
    let steps: Vec<f64> = run.windows(2).map(|w| w[1] - w[0]).collect();
    let best = (0..steps.len()).max_by(|a, b| steps[*a].total_cmp(&steps[*b]))?;
    let shift = match (best.checked_sub(1).map(|i| steps[i]), steps.get(best + 1)) {
        (Some(a), Some(c)) => {
            let bend = a - 2.0 * steps[best] + c;
            if bend < 0.0 { 0.5 * (a - c) / bend } else { 0.0 }
        }
        _ => 0.0,
    };
    Some((from as f64 + best as f64 + 0.5 + shift) / rate_hz)
}

fn lowest(x: &[f64]) -> Option<usize> {
    (0..x.len()).min_by(|a, b| x[*a].total_cmp(&x[*b]))
}

/// Takes off the straight line from the first to the last point.
fn levelled(mut x: Vec<f64>) -> Vec<f64> {
    let (first, last) = (x[0], x[x.len() - 1]);
    let slope = (last - first) / (x.len() - 1).max(1) as f64;
    x.iter_mut().enumerate().for_each(|(i, v)| *v -= first + slope * i as f64);
    x
}

/// Landmarks of a beat of [`FINE_HZ`] points a second from foot to foot.
fn find(x: &[f64]) -> Option<Landmarks> {
    let ms = |points: f64| points * 1000.0 / FINE_HZ;
    let points = |ms: f64| (ms * FINE_HZ / 1000.0) as usize;
    // The second wave may be the higher one: the peak is the first maximum of at least 80 % of the highest point.
    let top = x.iter().copied().fold(f64::MIN, f64::max);
    let peak = (1..x.len().saturating_sub(1))
        .find(|i| x[*i] >= 0.8 * top && x[*i] > x[i - 1] && x[*i] >= x[i + 1])?;
    let height = x[peak];
    if height.is_nan() || height <= 0.0 {
        return None;
    }
    let crossing = |part: f64| {
        let i = (1..=peak).rev().find(|i| x[i - 1] < part * height)?;
        Some(i as f64 - (x[i] - part * height) / (x[i] - x[i - 1]))
    };
    let (low, high) = (crossing(0.1)?, crossing(0.9)?);
    let width = x.iter().filter(|v| **v >= 0.5 * height).count();
    let (from, to) = (peak + points(60.0), (peak + points(350.0)).min(x.len().saturating_sub(points(50.0))));
    let bends = bends(x, points(20.0), from..to);
    let bend = (from..to)
        .max_by(|a, b| bends[a - from].total_cmp(&bends[b - from]))
        .filter(|i| bends[i - from] > 0.0);
    let second = bend.and_then(|n| {
        let end = (n + points(250.0)).min(x.len() - 1);
        // The highest maximum and not the first: the mean of beats of different length has ripples in its valley.
        let maxima = (n + 1..end).filter(|i| x[*i] > x[i - 1] && x[*i] >= x[i + 1]);
        maxima.max_by(|a, b| x[*a].total_cmp(&x[*b]))
    });
    // A maximum that stands out by less than 2 % of the height is a shoulder with a ripple on it.
    let valley = second.and_then(|s| lowest(&x[peak..s]).map(|i| (peak + i, s)));
    let valley = valley.filter(|(n, s)| x[*s] - x[*n] > 0.02 * height);
    let (notch, second) = (valley.map(|v| v.0).or(bend), valley.map(|v| v.1));
    let seconds = |i: usize| i as f64 / FINE_HZ;
    Some(Landmarks {
        foot_s: 0.0,
        peak_s: seconds(peak),
        notch_s: notch.map(seconds),
        second_s: second.map(seconds),
        height,
        notch_part: notch.map(|i| x[i] / height),
        second_part: second.map(|i| x[i] / height),
        crest_ms: ms(peak as f64),
        rise_ms: ms(high - low),
        notch_after_foot_ms: notch.map(|i| ms(i as f64)),
        width50_ms: ms(width as f64),
    })
}

/// How much the curve bends up at each point of a stretch: second differences over `wing` points on both sides, of means
/// over as many, so that a ripple of noise is no notch. Zero near the ends.
fn bends(x: &[f64], wing: usize, stretch: core::ops::Range<usize>) -> Vec<f64> {
    let mut sums = vec![0.0];
    let mut sum = 0.0;
    for v in x {
        sum += v;
        sums.push(sum);
    }
    let half = wing / 2;
    let mean = |i: usize| (sums[i + half + 1] - sums[i - half]) / (2 * half + 1) as f64;
    let inside = wing + half..x.len().saturating_sub(wing + half + 1);
    let (from, to) = (stretch.start.max(inside.start), stretch.end.min(inside.end));
    let mut bends = vec![0.0; stretch.len()];
    if from < to {
        let means: Vec<f64> = (from - wing..to + wing).map(mean).collect();
        for (i, bend) in bends[from - stretch.start..to - stretch.start].iter_mut().enumerate() {
            *bend = means[i] - 2.0 * means[i + wing] + means[i + 2 * wing];
        }
    }
    bends
}
