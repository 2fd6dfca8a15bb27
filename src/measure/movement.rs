//! Movement on a stretch of pulse: what is left of it when the beats are taken away.
//!
//! Each beat is held against the middle one of the stretch, put at its place and at its height (`beats`). What is left is
//! the slow wander of the line and what disturbs it; the figure is how far that goes within a second, about a beat, in
//! heights of the pulse. Drift over several beats, breathing, beats that grow and shrink and beats out of turn are the
//! heart's own and count little or nothing. The weights are design defaults, set so that the figure comes out as the
//! movement that was put into simulated recordings (`tests/assess_clean.rs`).

mod beats;
mod fit;
mod line;

use beats::Beats;
use line::Line;
use serde::{Deserialize, Serialize};

/// What kind of movement it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Over within a quarter of a second.
    Spike,
    /// The line goes elsewhere, and stays.
    Step,
    /// Anything else, and whatever goes on in more than one place.
    Unrest,
}

/// The worst place of a stretch.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Movement {
    /// How far the line goes within a second beside the beats, in heights of the pulse.
    pub height: f64,
    /// Where that begins, s from the first value.
    pub from_s: f64,
    /// Where it ends.
    pub to_s: f64,
    /// What it looks like.
    pub kind: Kind,
}

/// How far something goes within this time, s, is looked at: about a beat.
const WITHIN_S: f64 = 1.0;
/// What goes on for longer than this is drift, s.
const DRIFT_S: f64 = 2.0;
/// What is over sooner than this is no part of a beat, even of one out of turn, s.
const SHARP_S: f64 = 0.3;
/// Share at which unsure places count: at beats out of turn, in long pauses, where beats are cut off.
const UNSURE: f64 = 0.5;
/// Share of what the line does all the time, up to a limit, that is taken off the worst place: beats are never quite alike.
const USUAL: f64 = 0.5;
const USUAL_MOST: f64 = 0.3;
/// With the usual taken off, the rest comes out this much too small.
const SCALE: f64 = 0.5 / 0.38;
/// A line that moves by less than this share of a beat for so long, s, shows no pulse at all.
const FLAT: f64 = 0.003;
const FLAT_S: f64 = 0.2;
/// So much movement in one place and none elsewhere may be a spike or a step.
const APART: f64 = 0.5;

/// How sure one is of a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Sure {
    /// An ordinary beat.
    Yes,
    /// A beat out of turn, or a pause.
    Irregular,
    /// Beats that go on beyond the end of the range.
    CutOff,
}

/// The movement from `from_s` to `to_s` of a stretch, whose beats are at `beats`, s. What lies about that time helps to know
/// its first and last beat. `cut_off` tells which values stand at an end of the range. `None` where there are fewer than
/// four beats to hold against each other, or nothing of them is known.
pub fn movement(
    values: &[f64],
    cut_off: &[bool],
    rate_hz: f64,
    power_line_hz: f64,
    beats: &[f64],
    (from_s, to_s): (f64, f64),
) -> Option<Movement> {
    let line = Line::new(values, cut_off, rate_hz, power_line_hz);
    let hz = line.hz;
    let model = Beats::new(&line, beats)?;
    let left = model.left(&line);
    let sure = model.sure(&left);
    // What disturbs a small beat does not disturb one three times as tall.
    let tall = model.tall(left.len());
    let less = |seconds: f64| -> Vec<f64> {
        let line = line::without_drift(&left, (seconds * hz) as usize);
        line.iter().zip(&tall).map(|(v, tall)| v / tall).collect()
    };
    let (sharp, slow) = (less(SHARP_S), less(DRIFT_S));
    let (from, to) = ((from_s * hz) as usize, ((to_s * hz) as usize).min(left.len()));
    if from >= to {
        return None;
    }
    let within = ((WITHIN_S * hz) as usize).clamp(1, to - from);
    let mut usual = Vec::new();
    let mut found: Vec<Place> = Vec::new();
    for k in (from..=to - within).step_by((0.04 * hz) as usize + 1) {
        let end = k + within;
        let whole = Place::of(&slow, k, end);
        if sure[k..end].iter().all(|s| *s == Sure::Yes) {
            usual.extend(whole.map(|p| p.height));
            found.extend(whole);
            continue;
        }
        found.extend(whole.map(|p| Place { height: UNSURE * p.height, ..p }));
        if !sure[k..end].contains(&Sure::CutOff) {
            found.extend(Place::of(&sharp, k, end));
        }
        // Each sure run by itself.
        let mut at = k;
        for run in sure[k..end].chunk_by(|a, b| a == b) {
            if run[0] == Sure::Yes {
                found.extend(Place::of(&slow, at, at + run.len()));
            }
            at += run.len();
        }
    }
    // No pulse stands still: the signal is gone, and what it did is not known.
    found.extend(still(&line, FLAT * model.height()).filter(|p| p.from >= from && p.to <= to));
    let worst = found.iter().copied().max_by(|x, y| x.height.total_cmp(&y.height))?;
    let usual = line::median(&mut usual).unwrap_or(0.0).min(USUAL_MOST);
    let height = |p: &Place| SCALE * (p.height - USUAL * usual).max(0.0);
    let near = |p: &&Place| p.from < worst.to + within && p.to + within > worst.from;
    let elsewhere = found.iter().filter(|p| !near(p)).any(|p| height(p) > APART);
    let kind = if elsewhere { Kind::Unrest } else { kind(&left, worst, hz) };
    // Room to see it in.
    let (a, b) = (worst.from as f64 / hz, worst.to as f64 / hz);
    let room = 0.3f64.max(0.5 * (WITHIN_S - (b - a)));
    Some(Movement {
        height: height(&worst),
        from_s: (a - room).max(from_s),
        to_s: (b + room).min(to_s),
        kind,
    })
}

/// How far a line goes between two points.
#[derive(Clone, Copy, Debug)]
struct Place {
    height: f64,
    from: usize,
    to: usize,
}

impl Place {
    /// The lowest and the highest of the known points from `from` to before `to`; none where none is known.
    fn of(line: &[f64], from: usize, to: usize) -> Option<Self> {
        let (mut low, mut high) = (None, None);
        for i in (from..to).filter(|i| !line[*i].is_nan()) {
            if low.is_none_or(|l: usize| line[i] < line[l]) {
                low = Some(i);
            }
            if high.is_none_or(|h: usize| line[i] > line[h]) {
                high = Some(i);
            }
        }
        let (low, high) = (low?, high?);
        Some(Self { height: line[high] - line[low], from: low.min(high), to: low.max(high) })
    }
}

/// Runs in which the line moves by less than `slack` though it is not at an end of the range: each counts as a whole beat.
fn still(line: &Line, slack: f64) -> impl Iterator<Item = Place> {
    let wide = (FLAT_S * line.hz) as usize;
    line.sure.windows(wide.max(2)).enumerate().filter_map(move |(k, run)| {
        let (low, high) = run.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
        let known = run.iter().all(|v| !v.is_nan());
        (known && high - low < slack).then_some(Place { height: 1.0, from: k, to: k + wide })
    })
}

/// What one place looks like.
fn kind(left: &[f64], worst: Place, hz: f64) -> Kind {
    let mean = |from: f64, to: f64| {
        let n = left.len() as f64;
        let run = &left[from.clamp(0.0, n) as usize..to.clamp(0.0, n) as usize];
        let known: Vec<f64> = run.iter().copied().filter(|v| !v.is_nan()).collect();
        (!known.is_empty()).then(|| known.iter().sum::<f64>() / known.len() as f64)
    };
    let (from, to) = (worst.from as f64, worst.to as f64);
    let (Some(before), Some(after)) = (mean(from - 0.5 * hz, from), mean(to, to + 0.5 * hz)) else {
        return Kind::Unrest;
    };
    if to - from < 0.3 * hz && (after - before).abs() > 0.6 * worst.height {
        return Kind::Step;
    }
    // How long it is beyond half of its height, on the side on which it stands out.
    let (i, j) = (left[worst.from], left[worst.to]);
    let rest = 0.5 * (before + after);
    let top = if (i - rest).abs() > (j - rest).abs() { i } else { j };
    let near = (from - 0.5 * hz).max(0.0) as usize..((to + 0.5 * hz) as usize).min(left.len());
    let beyond =
        left[near].iter().filter(|v| (**v - rest) * (top - rest) > 0.5 * (top - rest) * (top - rest));
    if (beyond.count() as f64) < 0.25 * hz { Kind::Spike } else { Kind::Unrest }
}
