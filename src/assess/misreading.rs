//! Which well-known misreading explains what was typed. Count, window, multiplier and rate are asked for separately, so
//! each misreading leaves its signature in one field; marks and cursors add evidence. Where two explain it about equally
//! well nothing is named: the student is asked to show how they got there.
//!
//! A candidate's distance is 0 for an exact match and 1 at the edge of its tolerance. It is named only if it lies
//! within 1 and the next one is at least half as far again (design default: the match rule of the taxonomy).

use super::window::{Allowed, Peak};
use crate::plain::{json, names};
use serde::Serialize;
use serde_json::Value;

/// A well-known way of getting it wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Misreading {
    /// The second bumps were counted as beats.
    BumpsCounted,
    /// Beats were left out: every other one, or small ones.
    BeatsMissed,
    /// One beat too many: both ends of the fence were counted.
    OneTooMany,
    /// One beat too few: intervals were counted.
    OneTooFew,
    /// Marks on spikes that are no beats.
    SpikesCounted,
    /// Breaths were counted, not beats.
    BreathsCounted,
    /// Periods of the mains were counted.
    HumCounted,
    /// The multiplier of another window.
    OtherMultiplier,
    /// The count was given as the rate.
    NotScaled,
    /// Beats a second.
    PerSecond,
    /// Seconds a beat.
    SecondsPerBeat,
    /// Milliseconds taken for seconds, or the reverse.
    Milliseconds,
    /// The window is another than the one between the cursors.
    OtherWindow,
    /// The quotient was turned over.
    TurnedOver,
    /// Rounded before the end.
    RoundedEarly,
    /// Fewer than ten seconds.
    WindowTooShort,
    /// More decimals than a count can carry.
    TooManyDigits,
    /// One interval taken for the mean.
    SingleInterval,
    /// From one feature of the wave to another.
    MixedFeatures,
    /// None of them stands out: the way to the answer should be shown.
    ShowWork,
}

names! {
    Misreading {
        BumpsCounted => "bumps_counted",
        BeatsMissed => "beats_missed",
        OneTooMany => "one_too_many",
        OneTooFew => "one_too_few",
        SpikesCounted => "spikes_counted",
        BreathsCounted => "breaths_counted",
        HumCounted => "hum_counted",
        OtherMultiplier => "other_multiplier",
        NotScaled => "not_scaled",
        PerSecond => "per_second",
        SecondsPerBeat => "seconds_per_beat",
        Milliseconds => "milliseconds",
        OtherWindow => "other_window",
        TurnedOver => "turned_over",
        RoundedEarly => "rounded_early",
        WindowTooShort => "window_too_short",
        TooManyDigits => "too_many_digits",
        SingleInterval => "single_interval",
        MixedFeatures => "mixed_features",
        ShowWork => "show_work",
    }
}

/// A candidate.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Hypothesis {
    /// What it is.
    pub id: Misreading,
    /// 0 for an exact match, 1 at the edge of the tolerance.
    pub distance: f64,
    /// Numbers for the words: the student's own, never the true ones.
    pub args: Value,
}

/// What the student left behind.
#[derive(Clone, Debug, PartialEq)]
pub struct Evidence<'a> {
    /// The beats of the recording.
    pub peaks: &'a [Peak],
    /// Times of the second bumps that can be seen, s.
    pub bumps: &'a [f64],
    /// Beat marks, s, ascending.
    pub marks: &'a [f64],
    /// The window between the cursors, s.
    pub window: (f64, f64),
    /// Counts that the window allows.
    pub allowed: Allowed,
    /// Beats counted.
    pub count: Option<f64>,
    /// Length of the window as typed, s.
    pub seconds: Option<f64>,
    /// Multiplier as typed, 1/min.
    pub multiplier: Option<f64>,
    /// Rate as typed, beats/min.
    pub rate: Option<f64>,
    /// Decimals of the rate as typed.
    pub rate_decimals: usize,
    /// Breaths of the subject, 1/min.
    pub breaths_per_min: f64,
    /// Mains frequency as it shows at this sampling rate, Hz.
    pub mains_shows_hz: f64,
    /// Where intervals are timed: how far the second cursor lies from the feature that the first one is on, s.
    pub features_off_s: Option<f64>,
}

impl Evidence<'_> {
    /// Whether it matters where the second bumps are: only where a count is wrong and a mark lies off all peaks. To find
    /// them takes as long as much else of a check.
    pub fn asks_for_bumps(&self) -> bool {
        self.wrong_count().is_some() && self.marks_inside().any(|m| !self.on_peak(m))
    }

    fn wrong_count(&self) -> Option<f64> {
        self.count.filter(|n| *n < self.allowed.least as f64 || *n > self.allowed.most as f64)
    }

    fn marks_inside(&self) -> impl Iterator<Item = f64> {
        let (a, b) = self.window;
        self.marks.iter().copied().filter(move |m| *m >= a && *m <= b)
    }

    fn on_peak(&self, t: f64) -> bool {
        self.peaks.iter().any(|p| (p.at_s - t).abs() <= NEAR_S)
    }

    fn on_bump(&self, t: f64) -> bool {
        !self.on_peak(t) && self.bumps.iter().any(|x| (x - t).abs() <= NEAR_S)
    }
}

/// Multipliers that belong to windows of 60, 30, 20, 15, 10 and 6 s.
const USUAL: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 10.0];
/// Distance within which a mark belongs to a peak or a bump, s.
const NEAR_S: f64 = 0.1;

/// Distance within which two cursors are on the same feature, s.
const FEATURE_S: f64 = 0.06;

/// All candidates in order of distance.
pub fn hypotheses(e: &Evidence) -> Vec<Hypothesis> {
    let mut found = Vec::new();
    counting(e, &mut found);
    timing(e, &mut found);
    scaling(e, &mut found);
    found.sort_by(|a, b| a.distance.total_cmp(&b.distance).then(a.id.cmp(&b.id)));
    found
}

/// The misreading to name, if one stands out.
pub fn named(candidates: &[Hypothesis]) -> Option<&Hypothesis> {
    let first = candidates.first().filter(|h| h.distance <= 1.0)?;
    match candidates.get(1) {
        Some(second) if second.distance < 1.5 * first.distance.max(0.4) => None,
        _ => Some(first),
    }
}

fn add(found: &mut Vec<Hypothesis>, id: Misreading, distance: f64, args: Value) {
    if distance.is_finite() && distance <= 1.5 {
        found.push(Hypothesis { id, distance: distance.max(0.0), args });
    }
}

/// Signatures in the count.
fn counting(e: &Evidence, found: &mut Vec<Hypothesis>) {
    let Some(count) = e.wrong_count() else { return };
    let (least, most) = (e.allowed.least as f64, e.allowed.most as f64);
    let (a, b) = e.window;
    let length = b - a;
    let args = json!({"count": count});
    let inside: Vec<f64> = e.marks_inside().collect();
    let bumps_marked = inside.iter().filter(|m| e.on_bump(**m)).count() as f64;
    let strays = inside.iter().filter(|m| !e.on_peak(**m) && !e.on_bump(**m)).count() as f64;
    let marked = inside.len() as f64 == count;

    if count == most + 1.0 {
        let distance = if marked && (bumps_marked > 0.0 || strays > 0.0) { 0.8 } else { 0.0 };
        add(found, Misreading::OneTooMany, distance, args.clone());
    }
    // A beat without a mark in the midst of marked ones was missed; at the ends it is a matter of the fence.
    let own: Vec<f64> = e.peaks.iter().filter(|p| p.sure && p.within(a, b)).map(|p| p.at_s).collect();
    let midst = own.len().checked_sub(1).map_or(&own[..], |last| &own[last.min(1)..last]);
    let gap = marked && midst.iter().any(|t| !inside.iter().any(|m| (m - t).abs() <= NEAR_S));
    if count == least - 1.0 {
        add(found, Misreading::OneTooFew, if gap { 0.8 } else { 0.0 }, args.clone());
        if gap {
            add(found, Misreading::BeatsMissed, 0.0, args.clone());
        }
    }
    // Few count every bump: from 1.8 to 2 times the beats.
    let doubled = if count < 1.8 * least {
        (1.8 * least - count) / least / 0.1
    } else {
        (count - 2.0 * most) / most / 0.1
    };
    if count > most + 1.0 {
        let by_marks = marked && bumps_marked >= 0.6 * (count - most);
        add(found, Misreading::BumpsCounted, if by_marks { 0.0 } else { doubled.max(0.0) }, args.clone());
        if marked && strays >= 0.6 * (count - most) && strays > bumps_marked {
            add(found, Misreading::SpikesCounted, 0.0, json!({"strays": strays}));
        }
    }
    if count < least - 1.0 {
        let breaths = (count - e.breaths_per_min * length / 60.0).abs() / 1.0;
        let halved = (count - 0.5 * (least + most) / 2.0).abs() / (0.06 * least + 0.5);
        // A tenth of the beats may slip a tired eye; more is every other one, or something else was counted.
        let some = (least - count) / (0.3 * least);
        let unmarked = marked && inside.iter().all(|m| e.on_peak(*m));
        let missed = if unmarked { 0.0 } else { halved.min(0.5 + some) };
        add(found, Misreading::BeatsMissed, missed, args.clone());
        if !unmarked {
            add(found, Misreading::BreathsCounted, breaths, args.clone());
        }
    }
    let hum = e.mains_shows_hz * length;
    if count >= 200.0 * length / 60.0 && e.mains_shows_hz > 3.5 {
        add(found, Misreading::HumCounted, (count - hum).abs() / (0.1 * hum), args);
    }
}

/// Signatures in the window.
fn timing(e: &Evidence, found: &mut Vec<Hypothesis>) {
    let (a, b) = e.window;
    let length = b - a;
    if e.features_off_s.is_some_and(|off| off > FEATURE_S) {
        add(found, Misreading::MixedFeatures, 0.0, json!({}));
    }
    if length < 10.0 - 0.05 {
        let beats = e.count.unwrap_or(f64::MAX);
        // A short window does not make a wrong count; what explains the count goes before it.
        let (id, distance) = match beats {
            n if n <= 2.0 => (Misreading::SingleInterval, 0.0),
            _ => (Misreading::WindowTooShort, 0.7),
        };
        add(found, id, distance, json!({"seconds": (length * 10.0).round() / 10.0}));
    }
    let Some(seconds) = e.seconds else { return };
    if (seconds - length).abs() <= (0.005 * length).max(0.05) + 1e-9 {
        return;
    }
    for factor in [1000.0, 0.001] {
        let distance = (seconds / (length * factor) - 1.0).abs() / 0.01;
        add(found, Misreading::Milliseconds, distance, json!({"typed": seconds}));
    }
    // Half a rise off is what mixing the foot with the peak makes.
    let ends = [a, b].map(|t| e.peaks.iter().map(|p| (p.at_s - t).abs()).fold(f64::INFINITY, f64::min));
    if (seconds - length).abs() < 0.2 && (ends[0] < 0.03) != (ends[1] < 0.03) {
        add(found, Misreading::MixedFeatures, 0.5, json!({"typed": seconds}));
    } else if (1.0..=200.0).contains(&seconds) {
        add(found, Misreading::OtherWindow, 0.4, json!({"typed": seconds}));
    }
}

/// Signatures in multiplier and rate.
fn scaling(e: &Evidence, found: &mut Vec<Hypothesis>) {
    let (a, b) = e.window;
    let length = e.seconds.filter(|t| (1.0..=200.0).contains(t)).unwrap_or(b - a);
    let right = 60.0 / length;
    if let Some(k) = e.multiplier {
        let off = (k / right - 1.0).abs() > 0.015;
        if off && k > 0.0 {
            let args = json!({"typed": k, "seconds": length});
            let usual = USUAL.iter().map(|u| (k - u).abs()).fold(f64::INFINITY, f64::min);
            add(found, Misreading::OtherMultiplier, usual / 0.05, args.clone());
            add(found, Misreading::TurnedOver, (k / (length / 60.0) - 1.0).abs() / 0.02, args.clone());
            // 60/14 = 4.29 written as 4: close to the right one, and whole.
            let rounded = if k == (right).round() && (k - right).abs() < 0.5 { 0.0 } else { 2.0 };
            add(found, Misreading::RoundedEarly, rounded, args);
        }
    }
    let (Some(rate), Some(count)) = (e.rate, e.count) else { return };
    let by_hand = e.multiplier.map_or(f64::NAN, |k| count * k);
    let own = 60.0 * count / length;
    let fits = |v: f64| (v - rate).abs() <= 0.5 + 0.002 * v;
    if fits(by_hand) || fits(own) || count <= 0.0 {
        // A remark on a rate that is right; one that is wrong has other troubles, and 1.27 is beats a second.
        if e.rate_decimals > 1 && count > 0.0 {
            // Named only where nothing weightier stands beside it.
            add(found, Misreading::TooManyDigits, 0.9, json!({"decimals": e.rate_decimals}));
        }
        return;
    }
    // Half a beat, or half a per cent of larger numbers.
    let far = |v: f64| (rate - v).abs() / (0.5_f64).max(0.005 * v);
    let fine = |v: f64| (rate / v - 1.0).abs() / 0.03;
    let args = json!({"typed": rate});
    add(found, Misreading::NotScaled, far(count), args.clone());
    add(found, Misreading::PerSecond, fine(count / length), args.clone());
    add(found, Misreading::SecondsPerBeat, fine(length / count), args.clone());
    add(found, Misreading::TurnedOver, fine(length * count / 60.0), args.clone());
    add(found, Misreading::Milliseconds, far(1000.0 * own).min(fine(own / 1000.0)), args.clone());
    for k in USUAL {
        if (k / right - 1.0).abs() > 0.015 && k != 1.0 {
            add(found, Misreading::OtherMultiplier, far(k * count), args.clone());
        }
    }
    let interval = (10.0 * length / count).round() / 10.0;
    if interval > 0.0 {
        add(found, Misreading::RoundedEarly, far(60.0 / interval), args);
    }
}
