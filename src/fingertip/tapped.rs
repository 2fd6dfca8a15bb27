//! Taps as a trace: a table of text that opens like any other recording.

use super::taps::Taps;
use crate::math;

/// Samples a second.
const RATE_HZ: f64 = 100.0;
/// From the beginning of a tap's wave to its peak, which stands at the tap, in seconds. Design default: as steep as a pulse.
const RISE_S: f64 = 0.1;
/// What is drawn before the first tap, in seconds.
const BEFORE_S: f64 = 0.5;
/// What is drawn after the last tap, in seconds.
const AFTER_S: f64 = 1.0;
/// After so many rises nothing of a wave is left.
const LASTS: f64 = 12.0;
/// Longest trace, in seconds.
const LONGEST_S: f64 = 600.0;

/// The wave of a tap so many seconds after its beginning: a steep rise to 1 and a slow fall, without the second bump of a
/// pulse, because a hand that taps tells nothing of it.
fn wave(s: f64) -> f64 {
    let u = s / RISE_S;
    if u <= 0.0 || u > LASTS { 0.0 } else { u * math::exp(1.0 - u) }
}

impl Taps {
    /// The taps as a table of text, `t_s,taps`; `None` for fewer than two, or for more than ten minutes.
    pub fn recording(&self) -> Option<String> {
        let at = self.at_s();
        let (first, last) = (*at.first()?, *at.last()?);
        if at.len() < 2 || last - first > LONGEST_S {
            return None;
        }
        let count = ((last - first + BEFORE_S + AFTER_S) * RATE_HZ).ceil() as usize;
        let mut text = String::from("t_s,taps\n");
        let mut from = 0;
        for k in 0..count {
            let s = k as f64 / RATE_HZ;
            let t = first - BEFORE_S + s;
            // Taps whose wave is over are not looked at again.
            while from < at.len() && t - at[from] + RISE_S > LASTS * RISE_S {
                from += 1;
            }
            let value: f64 =
                at[from..].iter().take_while(|a| **a - RISE_S < t).map(|a| wave(t - a + RISE_S)).sum();
            text.push_str(&format!("{s:.2},{value:.4}\n"));
        }
        Some(text)
    }
}
