//! A port that loses the recorder now and then, for 0.2 to 1 s. Its times are times of the bench: another sampling rate does
//! not make them rarer.

use super::Config;
use crate::bench::wiring::{End, Socket};
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// Parts of a second in which times are counted: a multiple of every sampling rate of
/// [`crate::recorder::settings::RATES_HZ`], so that no time is rounded to samples.
const PARTS: u64 = 34_692_000;

/// The losses of one port.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct Gaps {
    stream: Stream,
    rate: f64,
    port: Option<Socket>,
    open: bool,
    /// Parts of a second until the link opens or closes.
    left: u64,
}

impl Gaps {
    pub(super) fn new(config: &Config, seed: u64) -> Self {
        let mut made = Self {
            stream: Stream::new(seed, "gaps"),
            rate: 0.2 * config.trouble.port_gaps,
            port: config.bench.wiring.socket_of(End::DataComputer),
            open: false,
            left: u64::MAX,
        };
        if made.rate > 0.0 {
            made.left = made.draw(false);
        }
        made
    }

    /// How long the link stays open or closed, parts of a second.
    fn draw(&mut self, open: bool) -> u64 {
        let seconds =
            if open { self.stream.range(0.2, 1.0) } else { 1.0 + self.stream.waiting_s(self.rate).min(1e6) };
        ((seconds * PARTS as f64) as u64).max(1)
    }

    /// Lets `samples` pass at `rate_hz` samples a second.
    pub(super) fn pass(&mut self, samples: u64, rate_hz: u32) {
        if self.left == u64::MAX {
            return;
        }
        let mut parts = samples * (PARTS / u64::from(rate_hz));
        while parts >= self.left {
            parts -= self.left;
            self.open = !self.open;
            self.left = self.draw(self.open);
        }
        self.left -= parts;
    }

    /// Samples at `rate_hz` after which the link opens or closes, at least one.
    pub(super) fn samples_left(&self, rate_hz: u32) -> u64 {
        if self.left == u64::MAX { u64::MAX } else { self.left.div_ceil(PARTS / u64::from(rate_hz)) }
    }

    /// Whether the link through a port is open now.
    pub(super) fn open_at(&self, port: Option<Socket>) -> bool {
        self.open && self.fails_at(port)
    }

    /// Whether a port is the one that loses the recorder.
    pub(super) fn fails_at(&self, port: Option<Socket>) -> bool {
        self.rate > 0.0 && self.port.is_some() && port == self.port
    }
}

#[cfg(test)]
mod tests {
    use super::PARTS;
    use crate::recorder::settings::RATES_HZ;

    #[test]
    fn every_sampling_rate_divides_the_parts_of_a_second() {
        assert!(RATES_HZ.iter().all(|hz| PARTS.is_multiple_of(u64::from(*hz))));
    }
}
