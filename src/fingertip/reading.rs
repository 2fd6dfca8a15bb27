//! A stretch of frames read: a rate, or why there is none.

use super::channels::{MIXTURES, Mixture, Signals};
use super::even;
use super::evidence::{self, Evidence};
use super::light::Light;
use super::refusal::Refusal;
use super::series::{Frame, Series, between, usual_step};
use super::verdict::{self, Shares};
use serde::{Deserialize, Serialize};

/// Seconds of frames on each side of a window that are looked at, so that filter and detector have settled at its ends.
/// No beat outside counts.
pub const AROUND_S: f64 = 3.0;
/// Longest time without a frame: half of the interval of a usual heart, so that no beat hides in it.
pub const LONGEST_GAP_S: f64 = 0.5;
/// Slowest camera, in frames a second: a pulse has three harmonics below its half at 75 beats a minute.
pub const SLOWEST_FPS: f64 = 8.0;
/// Shortest window that is read, in seconds: a heart of 50 beats a minute has four beats in it.
pub const SHORTEST_S: f64 = 5.0;
/// Longest window that is read, in seconds.
pub const LONGEST_S: f64 = 600.0;
/// A longer window is read in parts of no more than this, in seconds: over longer a heart does not repeat itself.
const PART_S: f64 = 15.0;
/// Rates of two mixtures that differ by more than this part are two rates.
const SAME_RATE: f64 = 0.08;
/// A color that shows the same rate, stronger by so much than what was accepted, has to look like blood as well: else
/// what was accepted is a remainder of a movement.
const CLEARLY_STRONGER: f64 = 0.05;
/// A second rate counts where it is stronger than the first less so much.
const NEARLY_AS_STRONG: f64 = 0.2;

/// A window and what it says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// Where it begins, on the frames' clock, in seconds.
    pub from_s: f64,
    /// Where it ends, in seconds.
    pub to_s: f64,
    /// Beats a minute, or why none are told.
    pub rate: Result<f64, Refusal>,
    /// The beats, in seconds on the frames' clock; none where no rate is told.
    pub beats: Vec<f64>,
    /// How much speaks for the rate, up to 1; 0 where none is told.
    pub strength: f64,
    /// The mixture of colors that was read.
    #[serde(skip)]
    pub(super) mixture: Option<Mixture>,
}

/// Reads the frames from `from_s` to `to_s`, with [`AROUND_S`] on both sides where there are frames. A window longer
/// than some seconds is read in equal parts: it has a rate where three quarters of them have, the mean of theirs. One that
/// is none (no length, longer than [`LONGEST_S`]) is all gap.
pub fn read(series: &Series, from_s: f64, to_s: f64) -> Reading {
    if !(from_s.is_finite() && to_s > from_s && to_s - from_s <= LONGEST_S) {
        return refused(from_s, to_s, Refusal::Gap);
    }
    let parts = ((to_s - from_s) / PART_S).ceil().max(1.0);
    if parts == 1.0 {
        return read_part(series.frames(), from_s, to_s);
    }
    let step = (to_s - from_s) / parts;
    let read: Vec<Reading> = (0..parts as usize)
        .map(|k| from_s + step * k as f64)
        .map(|from| read_part(series.frames(), from, from + step))
        .collect();
    joined(&read, from_s, to_s)
}

/// Consecutive windows from the first frame on, each `window_s` long; a last one that is not complete is left out. It
/// is complete where the next frame would lie beyond its end.
pub fn windows(series: &Series, window_s: f64) -> Vec<Reading> {
    let frames = series.frames();
    let (Some(first), Some(last), Some(step)) = (frames.first(), frames.last(), usual_step(frames)) else {
        return Vec::new();
    };
    let window_s = window_s.clamp(SHORTEST_S, LONGEST_S);
    let end = last.t_s + 1.5 * step.min(LONGEST_GAP_S);
    (0..)
        .map(|k| first.t_s + window_s * f64::from(k))
        .take_while(|from| from + window_s <= end)
        .map(|from| read(series, from, from + window_s))
        .collect()
}

fn joined(parts: &[Reading], from_s: f64, to_s: f64) -> Reading {
    let good: Vec<&Reading> = parts.iter().filter(|p| p.rate.is_ok()).collect();
    let refused = parts.iter().filter_map(|p| p.rate.err());
    let rate = match 4 * good.len() >= 3 * parts.len() {
        true => Ok(good.iter().filter_map(|p| p.rate.ok()).sum::<f64>() / good.len() as f64),
        // The one that is told most often, of equals the one that is told first.
        false => {
            let mut most = (0, Refusal::Weak);
            for why in super::refusal::REFUSALS {
                let count = refused.clone().filter(|r| *r == why).count();
                most = if count > most.0 { (count, why) } else { most };
            }
            Err(most.1)
        }
    };
    let told = rate.is_ok();
    Reading {
        from_s,
        to_s,
        rate,
        beats: if told { good.iter().flat_map(|p| p.beats.clone()).collect() } else { Vec::new() },
        strength: if told { good.iter().map(|p| p.strength).sum::<f64>() / good.len() as f64 } else { 0.0 },
        mixture: good.last().and_then(|p| p.mixture),
    }
}

fn refused(from_s: f64, to_s: f64, why: Refusal) -> Reading {
    Reading { from_s, to_s, rate: Err(why), beats: Vec::new(), strength: 0.0, mixture: None }
}

fn read_part(frames: &[Frame], from_s: f64, to_s: f64) -> Reading {
    let none = |why| refused(from_s, to_s, why);
    let inside = between(frames, from_s, to_s);
    if !is_dense(inside, from_s, to_s) {
        return none(Refusal::Gap);
    }
    let light = Light::of(inside);
    if let Some(why) = verdict::hopeless(&light) {
        return none(why);
    }
    let around = without_gaps(frames, inside, from_s, to_s);
    let signals = Signals::of(&even::even(around));
    let mut accepted: Vec<(Mixture, Evidence)> = Vec::new();
    let mut movements: Vec<Evidence> = Vec::new();
    let mut best: Option<(f64, Refusal)> = None;
    for mixture in MIXTURES {
        let Some(pulse) = signals.pulse(mixture) else { continue };
        let Some(found) = evidence::evidence(&pulse, signals.from_s, from_s, to_s) else { continue };
        let Some(why) = verdict::against(&found, &shares(&signals, &pulse), &light) else {
            accepted.push((mixture, found));
            continue;
        };
        if best.is_none_or(|(strength, _)| found.strength() > strength) {
            best = Some((found.strength(), why));
        }
        if why == Refusal::Moving && matches!(mixture, Mixture::Color(_)) {
            movements.push(found);
        }
    }
    accepted.sort_by(|a, b| b.1.strength().total_cmp(&a.1.strength()));
    let Some((mixture, found)) = accepted.first() else {
        return none(verdict::explained(best.map_or(Refusal::Weak, |(_, why)| why), &light));
    };
    let same = |e: &Evidence| (e.bpm / found.bpm - 1.0).abs() < SAME_RATE;
    if movements.iter().any(|e| same(e) && e.strength() > found.strength() + CLEARLY_STRONGER) {
        return none(Refusal::Moving);
    }
    if accepted.iter().any(|(_, e)| !same(e) && e.strength() > found.strength() - NEARLY_AS_STRONG) {
        return none(Refusal::Disagree);
    }
    Reading {
        from_s,
        to_s,
        rate: Ok(found.bpm),
        beats: found.beats.clone(),
        strength: found.strength(),
        mixture: Some(*mixture),
    }
}

/// Whether frames cover a stretch densely enough.
fn is_dense(inside: &[Frame], from_s: f64, to_s: f64) -> bool {
    let (Some(first), Some(last)) = (inside.first(), inside.last()) else { return false };
    let enough = inside.len() as f64 >= SLOWEST_FPS * (to_s - from_s);
    let steps = inside.windows(2).map(|w| w[1].t_s - w[0].t_s);
    enough && steps.chain([first.t_s - from_s, to_s - last.t_s]).all(|step| step <= LONGEST_GAP_S)
}

/// The frames of a stretch with those around it, up to the first gap on each side.
fn without_gaps<'a>(frames: &'a [Frame], inside: &[Frame], from_s: f64, to_s: f64) -> &'a [Frame] {
    let mut first = frames.partition_point(|f| f.t_s < from_s);
    let mut end = first + inside.len();
    let reaches = |a: usize, b: usize| frames[b].t_s - frames[a].t_s <= LONGEST_GAP_S;
    while first > 0 && frames[first - 1].t_s >= from_s - AROUND_S && reaches(first - 1, first) {
        first -= 1;
    }
    while end < frames.len() && frames[end].t_s < to_s + AROUND_S && reaches(end - 1, end) {
        end += 1;
    }
    &frames[first..end]
}

/// How strongly each measurable color shows a mixture's pulse.
fn shares(signals: &Signals, pulse: &[f64]) -> Shares {
    let power: f64 = pulse.iter().map(|v| v * v).sum();
    let share = |k: usize| {
        let both: f64 = signals.colors[k].iter().zip(pulse).map(|(c, p)| c * p).sum();
        (signals.measurable[k] && power > 0.0).then(|| both / power)
    };
    Shares { colors: [share(0), share(1), share(2)] }
}
