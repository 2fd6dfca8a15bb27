//! Randomness as an argument: a named portable generator, one sub-stream a stage.
//!
//! The generator is PCG-XSH-RR 64/32 (O'Neill 2014, HMC-CS-2014-0905), whose output is fixed by its definition and
//! not by a library's version. Each stage draws from a stream of its own, keyed by the seed and the stage's name, so
//! that a new stage never shifts the draws of another.

use crate::math;
use rand::Rng;
use rand_pcg::Pcg32;
use serde::{Deserialize, Serialize};

/// One stage's stream of random numbers; serialisable, so that a saved chain goes on with the same draws.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stream(Pcg32);

impl Stream {
    /// The stream of the stage called `stage` under `seed`.
    pub fn new(seed: u64, stage: &str) -> Self {
        Self(Pcg32::new(mix(seed), mix(fnv1a(stage.as_bytes()))))
    }

    /// Uniform on [0, 1), with 32 random bits.
    pub fn uniform(&mut self) -> f64 {
        f64::from(self.0.next_u32()) * (1.0 / 4_294_967_296.0)
    }

    /// Uniform on [low, high).
    pub fn range(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.uniform()
    }

    /// Standard normal by the polar method (Marsaglia & Bray 1964); for draws made once a beat or an event.
    pub fn normal(&mut self) -> f64 {
        loop {
            let u = 2.0 * self.uniform() - 1.0;
            let v = 2.0 * self.uniform() - 1.0;
            let s = u * u + v * v;
            if s > 0.0 && s < 1.0 {
                return u * (-2.0 * math::ln(s) / s).sqrt();
            }
        }
    }

    /// Nearly normal, zero mean and unit variance: four 16-bit uniforms added (Irwin-Hall). No logarithm, so it is
    /// cheap enough for every sample; its tails end at 3.46.
    pub fn noise(&mut self) -> f64 {
        let (a, b) = (self.0.next_u32(), self.0.next_u32());
        let sum = (a & 0xffff) + (a >> 16) + (b & 0xffff) + (b >> 16);
        // Sum of four uniforms on 0..=65535: mean 131070, variance 4 (65536^2 - 1) / 12.
        (f64::from(sum) - 131_070.0) * (1.732_050_807_568_877_2 / 65_536.0)
    }

    /// Waiting time of a Poisson process with `rate` events a second; when the rate is zero or less, so long that it never
    /// ends (the largest finite number, which a saved chain can hold and from which taking a step away changes nothing).
    pub fn waiting_s(&mut self, rate: f64) -> f64 {
        if rate <= 0.0 {
            return f64::MAX;
        }
        -math::ln(1.0 - self.uniform()) / rate
    }
}

/// FNV-1a over bytes, 64 bit: turns a name into a number. Stable by definition, unlike std's hasher.
pub fn fnv1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |h, b| (h ^ u64::from(*b)).wrapping_mul(0x0000_0100_0000_01b3))
}

/// The finaliser of SplitMix64 (Steele, Lea & Flood 2014): spreads neighbouring seeds apart.
pub fn mix(x: u64) -> u64 {
    let z = x.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}
