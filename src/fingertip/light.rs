//! What the light itself says of a stretch: how bright, how steady, of which color.

use super::channels::MEASURABLE;
use super::series::Frame;

/// The light of a stretch.
#[derive(Clone, Copy, Debug)]
pub(super) struct Light {
    /// Mean of each color.
    pub mean: [f64; 3],
    /// Of the brightest color the lowest mean of a short run of frames.
    pub lowest: f64,
    /// And the highest.
    pub highest: f64,
}

/// Below this, of 255, a brightest color is dark: a pulse of a percent is less than a step of eight bits even in the
/// mean of many pixels. Design default.
const DARK: f64 = 3.0;
/// A brightest color below this is dim, which explains why no pulse shows. Design default.
const DIM: f64 = 20.0;
/// From this on a color stands at the top of its range.
const FULL: f64 = 252.0;

/// Frames in a short run, over which noise is averaged before the light is said to move.
const RUN: usize = 8;

impl Light {
    /// Of frames, one at least.
    pub fn of(frames: &[Frame]) -> Self {
        let mut mean = [0.0; 3];
        frames.iter().for_each(|f| mean.iter_mut().zip(f.colors).for_each(|(m, c)| *m += c));
        mean.iter_mut().for_each(|m| *m /= frames.len().max(1) as f64);
        let brightest = (0..3).fold(0, |best, k| if mean[k] > mean[best] { k } else { best });
        let (lowest, highest) = frames
            .chunks(RUN)
            .map(|run| run.iter().map(|f| f.colors[brightest]).sum::<f64>() / run.len() as f64)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
        Self { mean, lowest, highest }
    }

    /// The mean of the brightest color.
    fn brightest(&self) -> f64 {
        self.mean.iter().copied().fold(0.0, f64::max)
    }

    /// Too dark for any pulse.
    pub fn is_dark(&self) -> bool {
        self.brightest() < DARK
    }

    /// So dark that a pulse may be missed.
    pub fn is_dim(&self) -> bool {
        self.brightest() < DIM
    }

    /// Every color that is there at all stands at the top of its range.
    pub fn is_full(&self) -> bool {
        self.brightest() >= FULL && self.mean.iter().all(|m| *m >= FULL || *m < MEASURABLE)
    }

    /// A color at the top of its range may hide the pulse.
    pub fn is_near_full(&self) -> bool {
        self.brightest() >= FULL
    }

    /// How far the brightest color goes within the stretch, as a share of its mean.
    pub fn swing(&self) -> f64 {
        (self.highest - self.lowest) / self.brightest().max(MEASURABLE)
    }

    /// No color is much weaker than the others, as in open light; tissue over the lens takes most of green and blue.
    pub fn is_open(&self) -> bool {
        self.mean.iter().copied().fold(f64::INFINITY, f64::min) >= 0.4 * self.brightest()
    }

    /// Skin in open light: red before green before blue, none of them dim.
    pub fn is_like_a_face(&self) -> bool {
        let [red, green, blue] = self.mean;
        self.is_open() && red > green && green > blue && blue >= 3.0 * DIM
    }
}
