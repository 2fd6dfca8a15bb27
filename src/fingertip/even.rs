//! Frames at uneven times as samples at an even rate.

use super::series::Frame;
use crate::dsp::resample::spline;

/// Rate of the samples, in Hz: above every camera's usual one, and fine enough to draw an upstroke.
pub const RATE_HZ: f64 = 50.0;
/// Frames that lie closer than this are averaged first, in seconds, so that a camera of 120 or 240 frames a second does
/// not fold its noise into the samples.
const CLOSE_S: f64 = 0.012;

/// Colors at [`RATE_HZ`].
#[derive(Clone, Debug)]
pub(super) struct Even {
    /// Time of the first sample, in seconds.
    pub from_s: f64,
    /// Samples of red, green and blue; all of one length.
    pub colors: [Vec<f64>; 3],
}

/// Resamples frames (two at least, times rising) by the cubic spline through them at their own times. Jitter and single
/// missing frames so change nothing but where the curve is known best.
pub(super) fn even(frames: &[Frame]) -> Even {
    let (t, colors) = thinned(frames);
    let (from_s, to_s) = (t[0], t[t.len() - 1]);
    let count = ((to_s - from_s) * RATE_HZ) as usize + 1;
    let at: Vec<f64> = (0..count).map(|i| from_s + i as f64 / RATE_HZ).collect();
    // Between frames of very uneven distance a spline may swing beyond what it goes through.
    let colors = colors.map(|y| {
        let (low, high) =
            y.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(*v), h.max(*v)));
        let slack = 0.1 * (high - low);
        spline(&t, &y, &at).into_iter().map(|v| v.clamp(low - slack, high + slack)).collect()
    });
    Even { from_s, colors }
}

/// Runs of close frames as one each.
fn thinned(frames: &[Frame]) -> (Vec<f64>, [Vec<f64>; 3]) {
    let (mut t, mut colors) = (Vec::with_capacity(frames.len()), [const { Vec::new() }; 3]);
    let mut start = 0;
    while start < frames.len() {
        let mut end = start + 1;
        while end < frames.len() && frames[end].t_s - frames[start].t_s < CLOSE_S {
            end += 1;
        }
        let run = &frames[start..end];
        let mean = |of: &dyn Fn(&Frame) -> f64| run.iter().map(of).sum::<f64>() / run.len() as f64;
        t.push(mean(&|f| f.t_s));
        for (k, channel) in colors.iter_mut().enumerate() {
            channel.push(mean(&|f| f.colors[k]));
        }
        start = end;
    }
    (t, colors)
}
