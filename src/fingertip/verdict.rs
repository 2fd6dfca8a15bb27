//! Whether what was found is shown as a rate.
//!
//! A rate is shown where four things come together, none of which knows of the others' numbers: the beats repeat in
//! shape, the stretch repeats as a whole, both tell the same rate, and the intervals are those of a heart. Two more
//! tell a heart from what else goes to and fro: its pulse rises faster than it falls, and blood takes more of one color
//! than of another, while a changing light changes all alike.
//!
//! Each bound lies between what fingers give and what noise gives (see DEVELOPERS, "One's own pulse").

use super::evidence::Evidence;
use super::light::Light;
use super::refusal::Refusal;

/// Least correlation of the stretch with itself a beat later.
const REPEAT: f64 = 0.3;
/// Where cycles are as alike as this, the whole may repeat less: the heart then slows and hastens with the breath.
const ALIKE: f64 = 0.88;
/// Least correlation of cycles with each other.
const LIKENESS: f64 = 0.6;
/// Largest standard deviation of the intervals over their mean.
const VARIATION: f64 = 0.18;
/// A stretch that repeats as much as this half an interval later has beats between those that were found. With a second
/// wave halfway a pulse reaches about 0.
const HALFWAY: f64 = 0.2;
/// Evidence weaker than this is noise, of which intervals and rates say nothing.
const NOISE: f64 = 0.4;
/// How far the period may lie from the middle half of the intervals.
const AGREEMENT: f64 = 0.07;
/// Least steepness of the mean cycle: a sine has none.
const STEEPNESS: f64 = 0.2;
/// Least difference of the colors' shares in the pulse, of the largest.
const UNEQUAL: f64 = 0.07;
/// Smallest pulse in green of a finger where the light is like that on a face, as a share of the light.
const FACE: f64 = 0.004;
/// A swing of the light beyond this is more than blood does.
const MOVED: f64 = 0.06;
/// A swing beyond this is more than a finger that stays does.
const LIFTED: f64 = 0.5;

/// How strongly each measurable color shows what a mixture shows: shares of its light.
pub(super) struct Shares {
    /// Of red, green and blue.
    pub colors: [Option<f64>; 3],
}

impl Shares {
    /// Whether green, of which blood takes most, brightens in what should be blood coming in.
    fn reversed(&self) -> bool {
        self.colors[1].is_some_and(|green| green <= 0.0)
    }

    /// Whether all colors change alike, as they do when light or distance changes; with one color it cannot be told.
    fn equal(&self) -> bool {
        let known: Vec<f64> = self.colors.iter().flatten().copied().collect();
        let (low, high) =
            known.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)));
        known.len() >= 2 && high - low < UNEQUAL * high.abs().max(low.abs())
    }
}

/// What speaks against showing the rate of one mixture; `None` where nothing does.
pub(super) fn against(found: &Evidence, shares: &Shares, light: &Light) -> Option<Refusal> {
    let part = |p: f64| 60.0 / found.intervals[(p * (found.intervals.len() - 1) as f64).round() as usize];
    let told = 60.0 / found.period_s;
    let agree = told >= part(0.75) * (1.0 - AGREEMENT) && told <= part(0.25) * (1.0 + AGREEMENT);
    let repeats = found.repeat >= REPEAT || (found.repeat > 0.0 && found.cycles.likeness >= ALIKE);
    let green = shares.colors[1].map(|s| s.abs() * found.cycles.size);
    if found.cycles.likeness < LIKENESS || found.strength() < NOISE {
        Some(Refusal::Weak)
    } else if found.variation > VARIATION {
        Some(Refusal::Unsteady)
    } else if !agree || found.halfway > HALFWAY {
        Some(Refusal::Disagree)
    } else if !repeats {
        Some(Refusal::Weak)
    } else if found.cycles.steepness < STEEPNESS || shares.equal() || shares.reversed() {
        Some(Refusal::Moving)
    } else if light.is_like_a_face() && green.is_some_and(|g| g < FACE) {
        Some(Refusal::NoFinger)
    } else {
        None
    }
}

/// What the light alone forbids.
pub(super) fn hopeless(light: &Light) -> Option<Refusal> {
    match () {
        () if light.is_dark() => Some(Refusal::TooDark),
        () if light.is_full() => Some(Refusal::TooBright),
        () => None,
    }
}

/// Why nothing was found, as far as the light can explain it: what can be mended is told before what was seen of it.
pub(super) fn explained(why: Refusal, light: &Light) -> Refusal {
    if light.swing() > LIFTED {
        Refusal::NoFinger
    } else if light.swing() > MOVED {
        Refusal::Moving
    } else if light.is_dim() {
        Refusal::TooDark
    } else if light.is_near_full() {
        Refusal::TooBright
    } else if why == Refusal::Weak && light.is_open() {
        Refusal::NoFinger
    } else {
        why
    }
}
