//! Which stretch of time and which volts the trace shows, and where that lies in pixels.

use serde::Serialize;

/// Time bases, s a screen: 1-2-5 steps.
pub const TIME_BASES_S: [f64; 10] = [0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 30.0, 60.0];

/// Room for the labels at the left and at the bottom, and free at the top and right, CSS pixels.
const LEFT: f64 = 58.0;
const BOTTOM: f64 = 30.0;
const TOP: f64 = 8.0;
const RIGHT: f64 = 10.0;

/// The plot inside the canvas, and what it shows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Frame {
    /// Left edge of the plot, device pixels from the canvas's left.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Width of the plot.
    pub width: f64,
    /// Height of the plot.
    pub height: f64,
    /// Device pixels in a CSS pixel.
    pub dpr: f64,
    /// Time at the left edge, s.
    pub t0: f64,
    /// Time at the right edge, s.
    pub t1: f64,
    /// Volts at the bottom.
    pub v0: f64,
    /// Volts at the top.
    pub v1: f64,
}

impl Frame {
    /// The frame of a canvas of `width` by `height` device pixels. The sides of the plot are whole device pixels.
    pub fn new(width: f64, height: f64, dpr: f64) -> Self {
        let px = |css: f64| (css * dpr).round();
        Self {
            left: px(LEFT),
            top: px(TOP),
            width: (width - px(LEFT) - px(RIGHT)).floor().max(1.0),
            height: (height - px(TOP) - px(BOTTOM)).floor().max(1.0),
            dpr,
            t0: 0.0,
            t1: 1.0,
            v0: -1.0,
            v1: 1.0,
        }
    }

    /// The same frame showing other times and volts. Empty or backward stretches are left as they were.
    pub fn showing(mut self, t0: f64, t1: f64, v0: f64, v1: f64) -> Self {
        if t1 > t0 {
            (self.t0, self.t1) = (t0, t1);
        }
        if v1 > v0 {
            (self.v0, self.v1) = (v0, v1);
        }
        self
    }

    /// Height in device pixels of a value, from the canvas's top; values beyond the plot go half a plot beyond it at
    /// the most, so that no coordinate is absurd.
    pub fn y(&self, volts: f64) -> f64 {
        let up = ((volts - self.v0) / (self.v1 - self.v0)).clamp(-0.5, 1.5);
        self.top + self.height * (1.0 - up)
    }

    /// Place in device pixels of a time, from the canvas's left.
    pub fn x(&self, time_s: f64) -> f64 {
        self.left + self.width * (time_s - self.t0) / (self.t1 - self.t0)
    }

    /// Number of columns of the plot.
    pub fn columns(&self) -> usize {
        self.width as usize
    }
}
