//! A cascade of second-order sections run forward, then backward: the phases cancel and the magnitude is squared.

use super::section::Section;

/// Filters `x` in place. Before its start and after its end the record is taken to go on for up to `pad` samples as
/// its own point reflection about the end sample, and each pass starts in the steady state for its first sample
/// (Gustafsson 1996 gives the reasons; this is the plain variant), so that no step is felt at the ends.
pub fn filter<const N: usize>(sections: &[Section; N], x: &mut [f64], pad: usize) {
    let n = x.len();
    if n < 2 {
        return;
    }
    let pad = pad.min(n - 1);
    let (first, last) = (x[0], x[n - 1]);
    let mut tail: Vec<f64> = (1..=pad).map(|i| 2.0 * last - x[n - 1 - i]).collect();
    let mut head: Vec<f64> = (1..=pad).rev().map(|i| 2.0 * first - x[i]).collect();
    let mut state = steady(sections, head.first().copied().unwrap_or(first));
    // One loop each: a chain of the three would be asked at every sample which of them it is in.
    for part in [&mut head[..], &mut *x, &mut tail[..]] {
        for v in part {
            *v = step(sections, &mut state, *v);
        }
    }
    let mut state = steady(sections, tail.last().copied().unwrap_or(x[n - 1]));
    for v in tail.iter_mut().rev() {
        *v = step(sections, &mut state, *v);
    }
    for v in x.iter_mut().rev() {
        *v = step(sections, &mut state, *v);
    }
}

/// State of the cascade after a long constant input.
fn steady<const N: usize>(sections: &[Section; N], input: f64) -> [[f64; 2]; N] {
    let mut state = [[0.0; 2]; N];
    let mut u = input;
    for (s, z) in sections.iter().zip(&mut state) {
        let y = u * s.dc_gain();
        z[1] = s.b[2] * u - s.a[1] * y;
        z[0] = s.b[1] * u - s.a[0] * y + z[1];
        u = y;
    }
    state
}

/// One sample through the cascade (transposed direct form II).
#[inline(always)]
fn step<const N: usize>(sections: &[Section; N], state: &mut [[f64; 2]; N], input: f64) -> f64 {
    let mut u = input;
    for i in 0..N {
        let (s, z) = (&sections[i], &mut state[i]);
        let y = s.b[0] * u + z[0];
        z[0] = s.b[1] * u - s.a[0] * y + z[1];
        z[1] = s.b[2] * u - s.a[1] * y;
        u = y;
    }
    u
}
