//! The beats of a line: one shape for all, put at each beat's place and height.
//!
//! Beats add up: each rises on the end of the one before, which would have gone on to fall. So a beat is its rise above
//! that end, and a line whose intervals vary is the sum of such rises.

use super::Sure;
use super::fit::{between, fitted};
use super::line::{Line, median, without_drift};
use crate::math;

/// Longest time from a foot to its peak, s: the slowest tenth of fingers is above 0.257 s (measured on the recordings of
/// Neshitov et al. 2021, Sensors 21:6798); and as a share of an interval.
const LEAD_S: f64 = 0.3;
const LEAD_SHARE: f64 = 0.42;
/// Time in which blood runs off, s: how the end of a beat goes on where no other follows (design default).
const RUN_OFF_S: f64 = 0.45;
/// How far a beat's place may be off, in half points; three times as far where its peak is cut off or out of sight.
const REACH: i32 = 8;
/// So many beats before one are still seen to fall one by one.
const BEFORE: usize = 3;
/// From where to where it fades out, in usual intervals.
const FADES: f64 = 1.8;
const ENDS: f64 = 2.4;
/// Drift when the shape is put right, in usual intervals; and how much of the difference is put right at once.
const DRIFT: f64 = 3.0;
const PART: f64 = 0.6;
/// How far beyond the end of the range a line must be thought to be before the difference is believed, in heights.
const BEYOND: f64 = 0.5;

/// A beat as it is thought to be.
#[derive(Clone, Copy, Debug)]
struct Beat {
    /// Its peak, in points.
    at: f64,
    /// Its height against the shape's.
    height: f64,
    /// Its length against the shape's.
    stretch: f64,
    /// Level of the line under it at its first point, and how much that rises in a point.
    under: (f64, f64),
    /// Mean distance of the line from it.
    off: f64,
    /// Its peak is on the line; otherwise it is thought to be outside.
    seen: bool,
}

/// All beats of a line.
pub(super) struct Beats {
    /// What a beat adds to those before, from `lead` points before its peak on; in heights of the pulse.
    rise: Vec<f64>,
    lead: f64,
    /// Usual interval, points.
    interval: f64,
    /// Points in which the end of a beat falls.
    run_off: f64,
    /// Height of the shape in the line's unit.
    height: f64,
    /// In order; the first and the last may lie outside of the line.
    beats: Vec<Beat>,
}

impl Beats {
    /// Of a line with beats at these times, s. `None` with fewer than four.
    pub fn new(line: &Line, times: &[f64]) -> Option<Self> {
        if times.len() < 4 {
            return None;
        }
        let hz = line.hz;
        let mut at: Vec<f64> = times.iter().map(|t| t * hz).collect();
        let interval = median(&mut at.windows(2).map(|w| w[1] - w[0]).collect::<Vec<f64>>())?;
        let lead = (LEAD_S * hz).min(LEAD_SHARE * interval).floor();
        // Beats outside of the line reach into it.
        let (first, last) = (at[0], at[at.len() - 1]);
        at.splice(0..0, (1..=BEFORE).rev().map(|k| first - k as f64 * interval));
        if last + interval - lead < line.all.len() as f64 {
            at.push(last + interval);
        }
        let seen = first..=last;
        // The length of a beat goes with the root of the intervals about it (Bazett 1920 for the length of systole).
        let mut running = interval;
        let mut before = at[0] - interval;
        let beat = |at: &f64| {
            running += 0.4 * ((at - before).clamp(0.6 * interval, 1.6 * interval) - running);
            before = *at;
            Beat {
                at: *at,
                height: 1.0,
                stretch: (running / interval).sqrt(),
                under: (0.0, 0.0),
                off: 0.0,
                seen: seen.contains(at),
            }
        };
        let beats = at.iter().map(beat).collect();
        let run_off = RUN_OFF_S * hz;
        let mut made = Self { rise: Vec::new(), lead, interval, run_off, height: 1.0, beats };
        made.find_shape(&line.sure)?;
        made.measure(&line.all);
        made.fit(&line.sure, 2);
        made.refine(line);
        made.fit(&line.sure, 1);
        made.refine(line);
        Some(made)
    }

    /// The points that belong to a beat.
    fn span(&self, k: usize, length: usize) -> std::ops::Range<usize> {
        let start = |k: usize| {
            let beat = self.beats[k];
            ((beat.at - self.lead * beat.stretch).round().max(0.0) as usize).min(length)
        };
        let end = if k + 1 < self.beats.len() { start(k + 1) } else { length };
        let start = if k == 0 { 0 } else { start(k) };
        start..end.max(start)
    }

    /// The middle one of all beats, point by point.
    fn find_shape(&mut self, line: &[f64]) -> Option<()> {
        let common = (0.7 * self.interval) as usize;
        let longest = (2.0 * self.interval) as usize;
        let mut cuts: Vec<Vec<f64>> = Vec::new();
        for k in 0..self.beats.len() {
            let beat = self.beats[k];
            let from = (beat.at - self.lead * beat.stretch).round();
            let n = ((self.span(k, line.len()).end as f64 - from - 1.0) / beat.stretch).floor();
            if from < 0.0 || n < common as f64 {
                continue;
            }
            let mut run: Vec<f64> =
                (0..longest.min(n as usize)).map(|j| between(line, from + j as f64 * beat.stretch)).collect();
            let known = run[..common].iter().filter(|v| !v.is_nan());
            let level = known.clone().sum::<f64>() / known.count() as f64;
            run.iter_mut().for_each(|v| *v -= level);
            cuts.push(run);
        }
        let mut shape: Vec<f64> = Vec::with_capacity(longest);
        for k in 0..longest {
            // Few beats are that long, and those are not of the same level: behind what all have, steps are put together.
            let mut at: Vec<f64> = if k < common {
                cuts.iter().map(|c| c[k]).filter(|v| !v.is_nan()).collect()
            } else {
                let steps = cuts.iter().filter_map(|c| Some(c.get(k)? - c[k - 1])).filter(|v| !v.is_nan());
                // Behind a usual interval a beat only falls; what rises is another that was missed.
                let top = if k as f64 > self.interval { 0.0 } else { f64::INFINITY };
                steps.map(|step| shape[k - 1] + step.min(top)).collect()
            };
            if k < common && at.len() < 2 {
                shape.push(*shape.last()?);
            } else {
                let Some(v) = median(&mut at) else { break };
                shape.push(v);
            }
        }
        let lead = self.lead as usize;
        let rising = shape.get(..lead + lead / 2)?;
        let foot = rising[..lead].iter().copied().fold(f64::INFINITY, f64::min);
        self.height = rising.iter().copied().fold(f64::NEG_INFINITY, f64::max) - foot;
        if !(self.height.is_finite() && self.height > 0.0) {
            return None;
        }
        let n = shape.len();
        shape.iter_mut().for_each(|v| *v = (*v - foot) / self.height);
        // Behind the longest beat it goes on to fall as it fell.
        let part = ((0.15 * self.interval) as usize).clamp(1, n - 1);
        let slope = (shape[n - 1] - shape[n - 1 - part]) / part as f64;
        let fall = (-slope * self.run_off).clamp(0.0, 0.5);
        let at = |x: f64| {
            let last = (n - 1) as f64;
            let beyond = ((x - last) / self.run_off).max(0.0);
            between(&shape, x.min(last)) - fall * (1.0 - math::exp(-beyond))
        };
        let (fades, ends) = (FADES * self.interval, ENDS * self.interval);
        self.rise = (0..ends as usize)
            .map(|k| {
                let x = k as f64;
                (at(x) - at(x + self.interval)) * ((ends - x) / (ends - fades)).min(1.0)
            })
            .collect();
        Some(())
    }

    /// What a beat adds to those before, `x` points after its peak.
    fn rise(&self, x: f64, stretch: f64) -> f64 {
        let x = x / stretch + self.lead;
        if x < 0.0 || x >= (self.rise.len() - 1) as f64 { 0.0 } else { between(&self.rise, x) }
    }

    /// What the beats before one add up to at a point.
    fn tail(&self, k: usize, x: f64) -> f64 {
        let before = &self.beats[k.saturating_sub(BEFORE)..k];
        before.iter().map(|b| b.height * self.rise(x - b.at, b.stretch)).sum()
    }

    /// Puts right what is left behind most beats alike: intervals that vary tell how a beat goes on under the next.
    fn refine(&mut self, line: &Line) {
        let left = without_drift(&self.left(line), (DRIFT * self.interval) as usize);
        let last = (left.len() - 1) as f64;
        let off: Vec<f64> = (0..(FADES * self.interval) as usize)
            .map(|k| {
                let places = self.beats.iter().filter(|b| b.seen).filter_map(|b| {
                    let x = b.at + (k as f64 - self.lead) * b.stretch;
                    let v = (x >= 0.0 && x < last).then(|| between(&left, x))?;
                    (!v.is_nan()).then_some(v / b.height.max(0.3))
                });
                median(&mut places.collect::<Vec<f64>>()).unwrap_or(0.0)
            })
            .collect();
        // The further behind a beat, the more of it may be another's.
        let n = off.len() as f64;
        for (k, (v, off)) in self.rise.iter_mut().zip(off).enumerate() {
            *v += PART * (1.0 - k as f64 / n) * off;
        }
        // Behind a usual interval it only falls.
        for k in (self.interval as usize).max(1)..self.rise.len() {
            self.rise[k] = self.rise[k].min(self.rise[k - 1].max(0.1));
        }
    }

    /// First heights: each peak over the lowest point before it.
    fn measure(&mut self, line: &[f64]) {
        let reach = 0.5 * self.lead;
        for beat in &mut self.beats {
            let from = beat.at - self.lead * beat.stretch;
            if from >= 0.0 && beat.at + reach + 1.0 < line.len() as f64 {
                let foot =
                    line[from as usize..=beat.at as usize].iter().copied().fold(f64::INFINITY, f64::min);
                let about = &line[(beat.at - reach) as usize..=(beat.at + reach) as usize];
                beat.height = (about.iter().copied().fold(f64::NEG_INFINITY, f64::max) - foot) / self.height;
            }
        }
        let seen = |b: &&Beat| b.seen;
        let first = self.beats.iter().find(seen).map_or(1.0, |b| b.height);
        let last = self.beats.iter().rev().find(seen).map_or(1.0, |b| b.height);
        let middle = 0.5 * line.len() as f64;
        for beat in self.beats.iter_mut().filter(|b| !b.seen) {
            beat.height = if beat.at < middle { first } else { last };
        }
    }

    /// Puts each beat in its place, in steps of so many half points, and at its height.
    fn fit(&mut self, line: &[f64], step: i32) {
        for k in 0..self.beats.len() {
            let span = self.span(k, line.len());
            if span.len() < 8 {
                continue;
            }
            let run: Vec<f64> =
                span.clone().map(|i| line[i] / self.height - self.tail(k, i as f64)).collect();
            let usual = self.usual_height(k);
            let hidden = !self.beats[k].seen || run.iter().any(|v| v.is_nan());
            let reach = if hidden { 3 * REACH } else { REACH } * step / 2;
            let Beat { at, stretch, .. } = self.beats[k];
            let tried = |d: i32| {
                let at = at + 0.5 * f64::from(d);
                let rise: Vec<f64> = span.clone().map(|i| self.rise(i as f64 - at, stretch)).collect();
                let (under, height, off) = fitted(&run, &rise, usual);
                (off * (1.0 + 0.0005 * f64::from(d * d)), Beat { at, height, under, off, ..self.beats[k] })
            };
            let mut best = tried(0);
            if hidden {
                for d in (-reach / step..=reach / step).map(|d| d * step) {
                    let other = tried(d);
                    if other.0 < best.0 {
                        best = other;
                    }
                }
            } else {
                // Downhill from where the beat was found, to the side that is better.
                for side in [-step, step] {
                    let mut d = side;
                    while d.abs() <= reach {
                        let other = tried(d);
                        if other.0 >= best.0 {
                            break;
                        }
                        (best, d) = (other, d + side);
                    }
                }
            }
            self.beats[k] = best.1;
        }
    }

    /// Usual height of the beats about one.
    fn usual_height(&self, k: usize) -> f64 {
        let near = self.beats[k.saturating_sub(3)..(k + 4).min(self.beats.len())].iter().map(|b| b.height);
        median(&mut near.collect::<Vec<f64>>()).unwrap_or(1.0).clamp(0.4, 2.5)
    }

    /// The line without its beats, in heights of the pulse; not a number where a beat goes on beyond the end of the range,
    /// which is no movement.
    pub fn left(&self, line: &Line) -> Vec<f64> {
        let mut left = vec![f64::NAN; line.all.len()];
        let middle = median(&mut line.all.clone()).unwrap_or(0.0);
        for k in 0..self.beats.len() {
            let (span, beat) = (self.span(k, left.len()), self.beats[k]);
            for i in span.clone() {
                let beats =
                    self.tail(k, i as f64) + beat.height * self.rise(i as f64 - beat.at, beat.stretch);
                let rest = line.all[i] / self.height - beats;
                let beyond = rest - beat.under.0 - beat.under.1 * (i - span.start) as f64;
                let cut_off = line.sure[i].is_nan();
                if !cut_off || (beyond.abs() > BEYOND && (line.all[i] > middle) == (beyond > 0.0)) {
                    left[i] = rest;
                }
            }
        }
        left
    }

    /// Height of the pulse in the line's unit.
    pub fn height(&self) -> f64 {
        self.height
    }

    /// For each point, how much taller than usual the beats about it are; 1 where they are lower.
    pub fn tall(&self, length: usize) -> Vec<f64> {
        let mut tall = vec![1.0; length];
        for k in 0..self.beats.len() {
            tall[self.span(k, length)].fill(self.usual_height(k).max(1.0));
        }
        tall
    }

    /// How sure one is of each point of [`Self::left`].
    pub fn sure(&self, left: &[f64]) -> Vec<Sure> {
        let n = self.beats.len();
        let mut sure = vec![Sure::Yes; left.len()];
        let at = |j: usize| self.beats[j].at;
        let intervals: Vec<f64> = (1..n).map(|k| at(k) - at(k - 1)).collect();
        for k in 1..n {
            let near = &intervals[k.saturating_sub(4)..(k + 4).min(n - 1)];
            let usual = median(&mut near.to_vec()).unwrap_or(self.interval);
            let before = intervals[k - 1];
            let after = intervals.get(k).copied().unwrap_or(usual);
            let (beat, span) = (self.beats[k], self.span(k, left.len()));
            let end = self.span((k + 1).min(n - 1), left.len()).end;
            let low = beat.height < 0.9 * self.usual_height(k) && beat.off < 0.15;
            if before < 0.85 * usual && after > 1.1 * before && low {
                sure[span.start.min(end)..end].fill(Sure::Irregular);
            } else if before > 1.3 * usual {
                let from = (at(k - 1) + 0.4 * usual).clamp(0.0, end as f64) as usize;
                sure[from..end].fill(Sure::Irregular);
            }
        }
        for k in 0..n {
            let span = self.span(k, left.len());
            if left[span.clone()].iter().filter(|v| v.is_nan()).count() > 2 {
                sure[span].fill(Sure::CutOff);
            } else if !self.beats[k].seen {
                sure[span].fill(Sure::Irregular);
            }
        }
        sure
    }
}
