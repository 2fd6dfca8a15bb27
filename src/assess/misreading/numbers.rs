//! Signatures in T, in the multiplier and in the rate.

use super::{Evidence, Found, Misreading, Reading};
use crate::assess::arithmetic::minutes_off;
use crate::assess::verdict::{Step, Verdict};
use crate::plain::json;

/// Multipliers that belong to windows of 60, 30, 20, 15, 10 and 6 s.
const USUAL: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 10.0];
/// Windows that are asked for so often that a T of theirs may just be meant to be one, s.
const USUAL_S: [f64; 6] = [60.0, 30.0, 20.0, 15.0, 10.0, 6.0];
/// A time read off to a tenth lies within this of what was read, s.
const READ_S: f64 = 0.06;

/// Signatures in T.
pub(super) fn timing(e: &Evidence, r: &Reading, found: &mut Found) {
    let step = r.step(Step::Seconds);
    let Some(seconds) = r.typed.seconds else { return };
    let args = || json!({"typed": seconds});
    // A time that was read off exactly, or to the whole second.
    let read = |t: f64| match (seconds - t).abs() {
        off if off <= READ_S => 0.0,
        off if off <= 0.5 && seconds == seconds.round() => 0.55,
        _ => f64::INFINITY,
    };
    let whole = read(e.sheet.reference.duration_s);
    let (Some((_, b)), Some(length)) = (r.window, r.length()) else {
        // Without cursors there is one length that can be told: that of all there is.
        if e.report.steps.iter().any(|f| f.step == step && f.verdict == Verdict::Missing) {
            found.add(Misreading::WholeRecording, step, whole, args());
        }
        return;
    };
    if !e.is_wrong(r, Step::Seconds) {
        return;
    }
    let from = found.0.len();
    for factor in [1000.0, 0.001] {
        let distance = (seconds / (length * factor) - 1.0).abs() / 0.01;
        found.add(Misreading::Milliseconds, step, distance, args());
    }
    let minutes = (60.0 * seconds - length).abs() / minutes_off(length);
    found.add(Misreading::Minutes, step, minutes, args());
    found.add(Misreading::TimeAtB, step, read(b), args());
    found.add(Misreading::WholeRecording, step, whole, args());
    let screen = e.screens_s.iter().map(|s| read(*s)).fold(f64::INFINITY, f64::min);
    found.add(Misreading::ScreenLength, step, screen, args());
    // Squares are counted to the nearest half.
    let halves = (2.0 * seconds).fract() == 0.0;
    let off = |s: &f64| (seconds - length / s).abs();
    let wide = e.squares_s.iter().filter(|s| halves && (**s - 1.0).abs() > 1e-6 && off(s) <= 0.26);
    let squares = wide.map(|s| off(s) / 0.52).fold(f64::INFINITY, f64::min);
    found.add(Misreading::GridSquares, step, squares, args());
    let told =
        |found: &Found, but: Misreading| found.0[from..].iter().any(|h| h.distance <= 1.0 && h.id != but);
    // A round number of squares may as well be a round number of seconds.
    let round = USUAL_S.contains(&seconds);
    if told(found, Misreading::GridSquares) || (!round && squares <= 1.0) {
        return;
    }
    if (1.0..=200.0).contains(&seconds) {
        let distance = if squares <= 1.0 { squares } else { 0.4 };
        found.add(Misreading::OtherWindow, step, distance, args());
    }
}

/// Signatures in multiplier and rate.
pub(super) fn scaling(e: &Evidence, r: &Reading, found: &mut Found) {
    let own = r.typed.seconds.filter(|t| (1.0..=200.0).contains(t));
    let Some(length) = own.or(r.length()) else { return };
    let right = 60.0 / length;
    if let Some(k) = r.typed.multiplier {
        let mut add = |id, distance, args| found.add(id, Step::Multiplier, distance, args);
        if e.is_wrong(r, Step::Multiplier) && k > 0.0 {
            let args = json!({"typed": k, "seconds": length});
            let usual = USUAL.iter().map(|u| (k - u).abs()).fold(f64::INFINITY, f64::min);
            add(Misreading::OtherMultiplier, usual / 0.05, args.clone());
            add(Misreading::TurnedOver, (k / (length / 60.0) - 1.0).abs() / 0.02, args.clone());
            // 60/14 = 4.29 written as 4: close to the right one, and whole.
            let rounded = if k == (right).round() && (k - right).abs() < 0.5 { 0.0 } else { 2.0 };
            add(Misreading::RoundedEarly, rounded, args);
        }
    }
    let (Some(rate), Some(count)) = (r.typed.rate, r.typed.count) else { return };
    let step = r.step(Step::Rate);
    if !e.is_wrong(r, Step::Rate) || count <= 0.0 {
        // A remark on a rate that holds; one that does not has other troubles, and 1.27 is beats a second.
        let holds = e.report.steps.iter().any(|f| f.step == step && f.verdict == Verdict::Right);
        if r.rate_decimals > 1 && holds {
            found.add(Misreading::TooManyDigits, step, 0.9, json!({"decimals": r.rate_decimals}));
        }
        return;
    }
    let own = 60.0 * count / length;
    let mut add = |id, distance, args| found.add(id, step, distance, args);
    // Half a beat is rounding; as much again, or half a per cent of larger numbers, is the tolerance.
    let far = |v: f64| ((rate - v).abs() - 0.5).max(0.0) / (0.5_f64).max(0.005 * v);
    let fine = |v: f64| (rate / v - 1.0).abs() / 0.03;
    let args = json!({"typed": rate});
    add(Misreading::NotScaled, far(count), args.clone());
    add(Misreading::PerSecond, fine(count / length), args.clone());
    add(Misreading::SecondsPerBeat, fine(length / count), args.clone());
    add(Misreading::TurnedOver, fine(length * count / 60.0), args.clone());
    add(Misreading::Milliseconds, far(1000.0 * own).min(fine(own / 1000.0)), args.clone());
    // Where the right multiplier stands on the sheet, only a rate that is just another one's tells that another was used.
    let holds = e.is(r, Step::Multiplier, "multiplier_right");
    let near = |v: f64| if holds && (rate - v).abs() > 0.5 { f64::INFINITY } else { far(v) };
    for k in USUAL {
        if (k / right - 1.0).abs() > 0.015 && k != 1.0 {
            add(Misreading::OtherMultiplier, near(k * count), args.clone());
        }
    }
    let interval = (10.0 * length / count).round() / 10.0;
    if interval > 0.0 {
        add(Misreading::RoundedEarly, near(60.0 / interval), args);
    }
}
