//! The colors of a region of the picture, frame by frame, each with the time at which it was taken.

/// Most frames that a series holds: four hours at 60 a second.
pub const MOST_FRAMES: usize = 1_000_000;
/// Latest time of a frame, in seconds: of a clock that counts from 1970, some thousand years; finer than a microsecond.
pub const LATEST_S: f64 = 1e11;
/// Most that a color may be: cameras tell 0 to 255.
pub const BRIGHTEST: f64 = 255.0;

/// One frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// When it was taken, in seconds, from any moment.
    pub t_s: f64,
    /// Mean red, green and blue of a region, 0 to 255.
    pub colors: [f64; 3],
}

/// Frames in the order of their times.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Series {
    frames: Vec<Frame>,
    ignored: usize,
}

impl Series {
    /// Adds a frame. It is ignored, and counted as such, where its time is no number, lies beyond [`LATEST_S`] or does
    /// not rise, where a color is no number from 0 to 255, or where the series is full; `false` then.
    pub fn push(&mut self, t_s: f64, colors: [f64; 3]) -> bool {
        let after = self.frames.last().is_none_or(|last| t_s > last.t_s);
        let fits = t_s.abs() <= LATEST_S && colors.iter().all(|c| (0.0..=BRIGHTEST).contains(c));
        let taken = after && fits && self.frames.len() < MOST_FRAMES;
        if taken {
            self.frames.push(Frame { t_s, colors });
        } else {
            self.ignored += 1;
        }
        taken
    }

    /// All frames, times rising.
    pub fn frames(&self) -> &[Frame] {
        &self.frames
    }

    /// How many frames were ignored.
    pub fn ignored(&self) -> usize {
        self.ignored
    }

    /// Frames from `from_s` on and before `to_s`.
    pub fn between(&self, from_s: f64, to_s: f64) -> &[Frame] {
        between(&self.frames, from_s, to_s)
    }
}

/// Of frames in order those from `from_s` on and before `to_s`.
pub(super) fn between(frames: &[Frame], from_s: f64, to_s: f64) -> &[Frame] {
    let first = frames.partition_point(|f| f.t_s < from_s);
    let end = frames.partition_point(|f| f.t_s < to_s);
    &frames[first..end.max(first)]
}

/// Median time between frames, in seconds; `None` for fewer than two.
pub(super) fn usual_step(frames: &[Frame]) -> Option<f64> {
    let mut steps: Vec<f64> = frames.windows(2).map(|w| w[1].t_s - w[0].t_s).collect();
    let middle = steps.len() / 2;
    (!steps.is_empty()).then(|| *steps.select_nth_unstable_by(middle, f64::total_cmp).1)
}
