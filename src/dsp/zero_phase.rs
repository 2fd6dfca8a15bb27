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
    let mut run = Run::new(sections, x, pad);
    run.all(x.iter_mut());
    run.turn(x[n - 1]);
    run.all(x.iter_mut().rev());
}

/// Filters two records of one length, each as [`filter`] would. A sample waits for the one before it; those of two records
/// do not wait for each other.
///
/// # Panics
///
/// If the lengths differ.
pub fn filter_both<const N: usize, const M: usize>(
    (first, x, x_pad): (&[Section; N], &mut [f64], usize),
    (second, y, y_pad): (&[Section; M], &mut [f64], usize),
) {
    let n = x.len();
    assert_eq!(n, y.len(), "two records of one length");
    if n < 2 {
        return;
    }
    let (mut a, mut b) = (Run::new(first, x, x_pad), Run::new(second, y, y_pad));
    for (v, w) in x.iter_mut().zip(y.iter_mut()) {
        *v = step(first, &mut a.state, *v);
        *w = step(second, &mut b.state, *w);
    }
    a.turn(x[n - 1]);
    b.turn(y[n - 1]);
    for (v, w) in x.iter_mut().rev().zip(y.iter_mut().rev()) {
        *v = step(first, &mut a.state, *v);
        *w = step(second, &mut b.state, *w);
    }
}

/// A cascade on its way over a record: its state, and the reflection that is put on the record's end.
struct Run<'a, const N: usize> {
    sections: &'a [Section; N],
    state: [[f64; 2]; N],
    tail: Vec<f64>,
}

impl<'a, const N: usize> Run<'a, N> {
    /// At the start of a record of two samples at least.
    fn new(sections: &'a [Section; N], x: &[f64], pad: usize) -> Self {
        let n = x.len();
        let pad = pad.min(n - 1);
        let (first, last) = (x[0], x[n - 1]);
        let tail = (1..=pad).map(|i| 2.0 * last - x[n - 1 - i]).collect();
        let mut head: Vec<f64> = (1..=pad).rev().map(|i| 2.0 * first - x[i]).collect();
        let state = steady(sections, head.first().copied().unwrap_or(first));
        let mut run = Self { sections, state, tail };
        run.all(head.iter_mut());
        run
    }

    fn all<'v>(&mut self, values: impl Iterator<Item = &'v mut f64>) {
        for v in values {
            *v = step(self.sections, &mut self.state, *v);
        }
    }

    /// From the record's end, whose last value has come out as `last`, to the end of what is put on it, and back again.
    fn turn(&mut self, last: f64) {
        let mut tail = core::mem::take(&mut self.tail);
        self.all(tail.iter_mut());
        self.state = steady(self.sections, tail.last().copied().unwrap_or(last));
        self.all(tail.iter_mut().rev());
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
