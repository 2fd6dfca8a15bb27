//! The beats of a line: one shape for all, put at each beat's place and height.
//!
//! Beats add up: each rises on the end of the one before, which would have gone on to fall. So a beat is its rise above
//! that end, and a line whose intervals vary is the sum of such rises.

use super::Sure;
use super::line::{Line, median};
use crate::math;

/// Longest time from a foot to its peak, s: the slowest tenth of fingers is above 0.257 s (measured on the recordings of
/// Neshitov et al. 2021, Sensors 21:6798); and as a share of an interval.
const LEAD_S: f64 = 0.3;
const LEAD_SHARE: f64 = 0.42;
/// Time in which blood runs off, s: how the end of a beat goes on where no other follows (design default).
const RUN_OFF_S: f64 = 0.45;
/// How far a beat's place may be off, in half points; three times as far where its peak is cut off or out of sight.
const REACH: i32 = 8;
/// Spread of the heights of neighbouring beats, as a share (design default).
const HEIGHT_SD: f64 = 0.25;
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
}

/// All beats of a line.
pub(super) struct Beats {
    /// From `lead` points before the peak on; foot at 0, peak at 1.
    shape: Vec<f64>,
    lead: f64,
    /// Usual interval, points.
    interval: f64,
    /// How far the shape's end goes on to fall, and in how many points.
    end_fall: f64,
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
        if at[0] > lead {
            at.insert(0, at[0] - interval);
        }
        let last = at[at.len() - 1];
        if last + interval - lead < line.all.len() as f64 {
            at.push(last + interval);
        }
        // The length of a beat goes with the root of the intervals about it (Bazett 1920 for the length of systole).
        let mut running = interval;
        let mut before = at[0] - interval;
        let beat = |at: &f64| {
            running += 0.4 * ((at - before).clamp(0.6 * interval, 1.6 * interval) - running);
            before = *at;
            Beat { at: *at, height: 1.0, stretch: (running / interval).sqrt(), under: (0.0, 0.0), off: 0.0 }
        };
        let beats = at.iter().map(beat).collect();
        let run_off = RUN_OFF_S * hz;
        let mut made = Self { shape: Vec::new(), lead, interval, end_fall: 0.0, run_off, height: 1.0, beats };
        made.find_shape(&line.sure)?;
        made.measure(&line.all);
        made.fit(&line.sure, 2);
        made.fit(&line.sure, 1);
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
        self.shape = shape.iter().map(|v| (v - foot) / self.height).collect();
        let (n, part) = (self.shape.len(), ((0.15 * self.interval) as usize).max(1));
        let slope = (self.shape[n - 1] - self.shape[(n - 1).saturating_sub(part)]) / part as f64;
        self.end_fall = (-slope * self.run_off).clamp(0.0, 0.5);
        Some(())
    }

    /// The shape `x` points after its peak, above where it would end.
    fn shape_at(&self, x: f64) -> f64 {
        let x = x + self.lead;
        let last = (self.shape.len() - 1) as f64;
        let shape = if x >= last {
            let end = self.shape[self.shape.len() - 1];
            end - self.end_fall * (1.0 - math::exp((last - x) / self.run_off))
        } else {
            between(&self.shape, x.max(0.0))
        };
        shape + self.end_fall
    }

    /// What a beat adds to the end of the one before, `x` points after its peak.
    fn rise(&self, x: f64, stretch: f64) -> f64 {
        self.shape_at(x / stretch) - self.shape_at(x / stretch + self.interval)
    }

    /// The end of the beat before one at a point.
    fn tail(&self, k: usize, x: f64) -> f64 {
        let before = match k.checked_sub(1) {
            Some(j) => self.beats[j],
            None => Beat { at: self.beats[0].at - self.interval, ..self.beats[0] },
        };
        before.height * self.shape_at((x - before.at) / before.stretch)
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
        let n = self.beats.len();
        self.beats[0].height = self.beats[1].height;
        self.beats[n - 1].height = self.beats[n - 2].height;
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
            let hidden = k == 0 || k + 1 == self.beats.len() || run.iter().any(|v| v.is_nan());
            let reach = if hidden { 3 * REACH } else { REACH } * step / 2;
            let Beat { at, stretch, .. } = self.beats[k];
            let mut best = (f64::INFINITY, self.beats[k]);
            for d in (-reach / step..=reach / step).map(|d| d * step) {
                let at = at + 0.5 * f64::from(d);
                let rise: Vec<f64> = span.clone().map(|i| self.rise(i as f64 - at, stretch)).collect();
                let (under, height, off) = fitted(&run, &rise, usual);
                let cost = off * (1.0 + 0.0005 * f64::from(d * d));
                if cost < best.0 {
                    best = (cost, Beat { at, height, stretch, under, off });
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
            } else if k == 0 || k + 1 == n {
                sure[span].fill(Sure::Irregular);
            }
        }
        sure
    }
}

/// A line between two of its points.
fn between(line: &[f64], x: f64) -> f64 {
    let (i, part) = (x as usize, x - (x as usize) as f64);
    let next = line[(i + 1).min(line.len() - 1)];
    line[i] + part * (next - line[i])
}

/// A run as a straight line under a beat: level at the first point and rise in a point, the beat's height, and the mean
/// distance that is left. Weighted least squares with the usual height as one more measurement; points far off count less.
fn fitted(run: &[f64], rise: &[f64], usual: f64) -> ((f64, f64), f64, f64) {
    let middle = 0.5 * (run.len() - 1) as f64;
    let points: Vec<[f64; 3]> = run
        .iter()
        .zip(rise)
        .enumerate()
        .filter(|(_, (v, _))| !v.is_nan())
        .map(|(i, (v, r))| [i as f64 / middle - 1.0, *r, *v])
        .collect();
    let count = (points.len() as f64).max(1.0);
    let mut found = [0.0, 0.0, usual];
    let mut off = 0.0;
    for round in 0..3 {
        let spread = if round == 0 { 0.05f64 } else { f64::max(off, 0.02) };
        let (mut m, mut v) = ([[0.0; 3]; 3], [0.0; 3]);
        for [x, r, y] in &points {
            let far = (y - found[0] - found[1] * x - found[2] * r) / (2.0 * spread);
            let weight = if round == 0 { 1.0 } else { 1.0 / (1.0 + far * far) };
            let (wx, wr) = (weight * x, weight * r);
            m[0][0] += weight;
            m[0][1] += wx;
            m[0][2] += wr;
            m[1][1] += wx * x;
            m[1][2] += wx * r;
            m[2][2] += wr * r;
            v[0] += weight * y;
            v[1] += wx * y;
            v[2] += wr * y;
        }
        // Ten points in a row tell little more than one.
        let prior = 10.0 * (1.5 * spread / HEIGHT_SD) * (1.5 * spread / HEIGHT_SD);
        m[2][2] += prior;
        v[2] += prior * usual;
        let Some(x) = solved(m, v) else { break };
        found = x;
        off = points.iter().map(|[x, r, y]| (y - found[0] - found[1] * x - found[2] * r).abs()).sum::<f64>()
            / count;
    }
    ((found[0] - found[1], found[1] / middle), found[2], off)
}

/// Three unknowns of a symmetric system of which the upper half is given.
fn solved(m: [[f64; 3]; 3], v: [f64; 3]) -> Option<[f64; 3]> {
    let [[a, b, c], [_, d, e], [_, _, f]] = m;
    let (i, j, k) = (d * f - e * e, c * e - b * f, b * e - c * d);
    let det = a * i + b * j + c * k;
    if det.abs() < 1e-12 {
        return None;
    }
    let (l, n, o) = (a * f - c * c, b * c - a * e, a * d - b * b);
    Some([
        (i * v[0] + j * v[1] + k * v[2]) / det,
        (j * v[0] + l * v[1] + n * v[2]) / det,
        (k * v[0] + n * v[1] + o * v[2]) / det,
    ])
}
