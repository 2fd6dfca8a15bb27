//! Invented fingertips: the pulse of simulated subjects, whose true beats are known, as the colors of a camera.

// Each test file uses a part of it.
#![allow(dead_code)]

use dicrotic::fingertip::Series;
use dicrotic::math::{self, TAU};
use dicrotic::physiology::{Body, People, Subject, SubjectSpec};
use dicrotic::rng::Stream;

/// Rate at which the body is stepped, in Hz.
const BODY_HZ: f64 = 500.0;

/// A finger on a lens.
pub struct Finger {
    /// Seed of the subject.
    pub seed: u64,
    /// Seconds of it.
    pub seconds: f64,
    /// Mean of red, green and blue.
    pub light: [f64; 3],
    /// Size of a resting beat as a share of the light of each color.
    pub size: [f64; 3],
    /// Standard deviation of the noise of each frame, in the unit of the colors.
    pub noise: f64,
}

/// With the light on: red bright, green and blue nearly gone; shares as measured on 21 recordings (Neshitov et al. 2021,
/// Sensors 21:6798): some tenths of a percent of red, some percent of green.
pub fn lit(seed: u64) -> Finger {
    Finger { seed, seconds: 40.0, light: [220.0, 40.0, 20.0], size: [0.012, 0.06, 0.05], noise: 0.05 }
}

/// Without: dim, the colors set to balance.
pub fn unlit(seed: u64) -> Finger {
    Finger { seed, seconds: 40.0, light: [60.0, 45.0, 38.0], size: [0.012, 0.02, 0.014], noise: 0.05 }
}

/// What came of it.
pub struct Filmed {
    /// Time of each frame, in seconds, and its colors.
    pub frames: Vec<(f64, [f64; 3])>,
    /// True beats: the systolic peaks, in seconds.
    pub beats: Vec<f64>,
}

impl Finger {
    /// Films at even 30 frames a second.
    pub fn filmed(&self) -> Filmed {
        self.filmed_at(&(0..(30.0 * self.seconds) as usize).map(|k| k as f64 / 30.0).collect::<Vec<_>>())
    }

    /// Films at any times.
    pub fn filmed_at(&self, times: &[f64]) -> Filmed {
        let spec = SubjectSpec { people: People::Everyone, ..SubjectSpec::default() };
        let mut body = Body::new(Subject::draw(&spec, self.seed), self.seed, BODY_HZ);
        let count = ((self.seconds + 1.0) * BODY_HZ) as usize;
        let (mut pulse, mut breath) = (vec![0.0; count], vec![0.0; count]);
        body.fill(&mut pulse, &mut breath);
        let mut noise = Stream::new(self.seed, "camera");
        let frames = times
            .iter()
            .map(|t| {
                let blood = dicrotic::dsp::resample::linear(&pulse, t * BODY_HZ);
                let mut color =
                    |k: usize| self.light[k] * math::exp(-self.size[k] * blood) + self.noise * noise.normal();
                (*t, [color(0), color(1), color(2)].map(|c| c.clamp(0.0, 255.0)))
            })
            .collect();
        let beats = body.beats().iter().map(|b| b.peak_s).filter(|t| *t < self.seconds).collect();
        Filmed { frames, beats }
    }
}

impl Filmed {
    /// The frames as a series.
    pub fn series(&self) -> Series {
        let mut series = Series::default();
        self.frames.iter().for_each(|(t, colors)| {
            series.push(*t, *colors);
        });
        series
    }

    /// Changes every frame.
    pub fn changed(mut self, mut change: impl FnMut(f64, &mut [f64; 3])) -> Self {
        for (t, colors) in &mut self.frames {
            change(*t, colors);
            colors.iter_mut().for_each(|c| *c = c.clamp(0.0, 255.0));
        }
        self
    }

    /// True rate between two moments: from the first beat in it to the last.
    pub fn bpm(&self, from_s: f64, to_s: f64) -> f64 {
        let inside: Vec<f64> = self.beats.iter().copied().filter(|t| (from_s..to_s).contains(t)).collect();
        60.0 * (inside.len() - 1) as f64 / (inside[inside.len() - 1] - inside[0])
    }
}

/// Slow noise of a moving finger, about 1 in size: sines of .2 to 4 Hz, the slower the larger, of seeded phases.
pub fn movement(seed: u64) -> impl Fn(f64) -> f64 {
    let mut stream = Stream::new(seed, "movement");
    let sines: Vec<(f64, f64, f64)> = (0..40)
        .map(|k| 0.2 * math::pow(20.0, k as f64 / 39.0))
        .map(|hz| (hz * (1.0 + 0.05 * stream.normal()), TAU * stream.uniform(), 0.3))
        .collect();
    move |t| sines.iter().map(|(hz, phase, size)| size * math::sin(TAU * hz * t + phase)).sum()
}
