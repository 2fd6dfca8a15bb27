//! T, multiplier and rate, each judged by what it does to the rate. The measure is one beat in the window, 60/T beats/min: what
//! changes the rate by no more than a quarter of that is right (design default), and so are the usual roundings. What follows from a
//! number that is wrong already is judged on the student's own number, and where it follows from the right one instead, it waits.

use super::verdict::{Finding, Step, Typed, Verdict, finding, short};
use crate::plain::json;

/// Largest effect on the rate that is let pass, as a share of one beat in the window.
const SHARE: f64 = 0.25;
/// Rounding to whole seconds, or to whole beats a minute.
const HALF: f64 = 0.5;
/// Reading a time to a tenth of a second, s.
const TENTH_S: f64 = 0.05;
/// An interval is read to a hundredth of a second, s.
const HUNDREDTH_S: f64 = 0.006;
/// Room for what binary fractions cannot hold.
const TINY: f64 = 1e-9;

/// What the numbers of one window are judged against.
#[derive(Clone, Copy, Debug)]
pub(super) struct Span {
    /// Its length, s, if there is a window.
    pub length: Option<f64>,
    /// Beats or intervals in it; where they cannot be counted, as many as were typed.
    pub beats: f64,
}

impl Span {
    /// The window's own length, where it has one that can be divided by.
    fn length(&self) -> Option<f64> {
        self.length.filter(|t| *t > 0.0)
    }

    /// What a time in the place of `right` does to the rate, in beats of the window.
    fn effect(&self, typed: f64, right: f64) -> f64 {
        if typed > 0.0 { self.beats.max(1.0) * (right / typed - 1.0).abs() } else { f64::INFINITY }
    }
}

/// A number with two significant figures, as 60/14.7 = 4.08 is written 4.1. Zero and less stay as they are.
pub(super) fn two_figures(x: f64) -> f64 {
    let unit = unit_of_two(x);
    if unit > 0.0 { (x / unit).round() * unit } else { x }
}

/// The place of the second significant figure.
fn unit_of_two(x: f64) -> f64 {
    if !(x.is_finite() && x > 0.0) {
        return 0.0;
    }
    let (mut unit, mut of) = (0.1, x);
    while of >= 10.0 {
        (unit, of) = (unit * 10.0, of / 10.0);
    }
    while of < 1.0 {
        (unit, of) = (unit / 10.0, of * 10.0);
    }
    unit
}

/// The length of the window as typed.
pub(super) fn judge_seconds(typed: &Typed, span: Span) -> Finding {
    let (Some(seconds), Some(length)) = (typed.seconds, span.length()) else {
        let code = if typed.seconds.is_none() { "seconds_missing" } else { "seconds_unplaced" };
        return finding(Step::Seconds, Verdict::Missing, code, json!({}));
    };
    let off = (seconds - length).abs();
    let right = |code, args| finding(Step::Seconds, Verdict::Right, code, args);
    if off <= TENTH_S + TINY {
        return right("seconds_right", json!({}));
    }
    // Whole seconds are what many labs ask for: never wrong, but it is told what they cost.
    if seconds > 0.0 && seconds == seconds.round() && off <= HALF + TINY {
        return match typed.count.filter(|n| *n > 0.0) {
            Some(count) => {
                let costs = (60.0 * count * (1.0 / seconds - 1.0 / length)).abs();
                right(
                    "seconds_rounded",
                    json!({"typed": seconds, "window": short(length), "costs": tenth(costs), "beat": tenth(60.0 / seconds)}),
                )
            }
            None => right("seconds_right", json!({})),
        };
    }
    if span.effect(seconds, length) <= SHARE + TINY {
        return right("seconds_right", json!({}));
    }
    let args = json!({"typed": seconds, "window": short(length)});
    let minutes = (60.0 * seconds - length).abs() <= minutes_off(length);
    let milliseconds = (seconds / 1000.0 - length).abs() <= (0.01 * length).max(TENTH_S);
    let code = if minutes || milliseconds { "seconds_unit" } else { "seconds_wrong" };
    finding(Step::Seconds, Verdict::Wrong, code, args)
}

/// How far a time in minutes, with two decimals, may be off the window's length, s.
pub(super) fn minutes_off(length_s: f64) -> f64 {
    (0.03 * length_s).max(HALF)
}

/// The multiplier as typed, against the student's own T; `seconds_hold` when that T is right.
pub(super) fn judge_multiplier(typed: &Typed, seconds_hold: bool, span: Span) -> Finding {
    let (Some(multiplier), Some(seconds)) = (typed.multiplier, typed.seconds) else {
        let code = if typed.multiplier.is_none() { "multiplier_missing" } else { "multiplier_unplaced" };
        return finding(Step::Multiplier, Verdict::Missing, code, json!({}));
    };
    let fits = |t: f64| {
        let right = 60.0 / t;
        let rounded = (multiplier - right).abs() <= HALF * unit_of_two(right) + right * HUNDREDTH_S / t;
        t > 0.0 && (rounded || span.beats.max(1.0) * (multiplier / right - 1.0).abs() <= SHARE + TINY)
    };
    let of = |verdict, code, args| finding(Step::Multiplier, verdict, code, args);
    // A T that is right, rounded or not, leaves two ways: from what was written and from what the interval reads.
    let by_length = span.length().is_some_and(fits);
    if fits(seconds) || (seconds_hold && by_length) {
        of(Verdict::Right, "multiplier_right", json!({}))
    } else if by_length {
        of(Verdict::Note, "multiplier_waits", json!({}))
    } else {
        of(Verdict::Wrong, "multiplier_wrong", json!({"typed": short(multiplier), "seconds": seconds}))
    }
}

/// How far a rate may be off, given what one beat weighs in the window, both in beats/min.
pub(super) fn rate_tolerance(beat: f64) -> f64 {
    HALF.max(SHARE * beat)
}

/// The rate as typed, on the student's own numbers and by any way of working it out; `seconds_hold` when T is right.
pub(super) fn judge_rate(typed: &Typed, seconds_hold: bool, span: Span) -> Finding {
    let of = |verdict, code, args| finding(Step::Rate, verdict, code, args);
    let Some(rate) = typed.rate else { return of(Verdict::Missing, "rate_missing", json!({})) };
    let seconds = typed.seconds.filter(|t| *t > 0.0);
    let Some(count) = typed.count.filter(|_| seconds.is_some() || typed.multiplier.is_some()) else {
        return of(Verdict::Missing, "rate_unplaced", json!({}));
    };
    // One beat weighs what it weighs in the window, whatever was written for T.
    let beat = span.length().or(seconds).map_or(0.0, |t| 60.0 / t);
    let near = |value: f64| (value - rate).abs() <= rate_tolerance(beat) + TINY;
    // A multiplier that is nowhere asked for is worked out all the same, with two figures or two decimals.
    let hundredth = |x: f64| (x * 100.0).round() / 100.0;
    let rounded = |t: f64| near(count * two_figures(60.0 / t)) || near(count * hundredth(60.0 / t));
    let over = |t: f64| near(60.0 * count / t) || rounded(t - HUNDREDTH_S) || rounded(t + HUNDREDTH_S);
    let by_length = span.length().is_some_and(over);
    let own = typed.multiplier.is_some_and(|k| near(count * k)) || seconds.is_some_and(over);
    if own || (seconds_hold && by_length) {
        return of(Verdict::Right, "rate_right", json!({}));
    }
    if rate == count {
        return of(Verdict::Wrong, "rate_raw_count", json!({"typed": rate}));
    }
    if by_length && seconds.is_some() && typed.multiplier.is_none() {
        return of(Verdict::Note, "rate_waits", json!({}));
    }
    // Who is asked what N and T give must have written both.
    if seconds.is_none() {
        return of(Verdict::Missing, "rate_unplaced", json!({}));
    }
    let args =
        json!({"typed": rate, "count": count, "multiplier": typed.multiplier, "seconds": typed.seconds});
    of(Verdict::Wrong, "rate_arithmetic", args)
}

fn tenth(x: f64) -> f64 {
    (x * 10.0).round() / 10.0
}
