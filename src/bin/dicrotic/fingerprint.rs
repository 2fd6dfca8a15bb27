//! `fingerprint`: one number for a run's samples, to compare machines by.

use std::path::Path;

use crate::bench_run;
use crate::failure::Failure;
use crate::output;

/// Samples in one piece; the page's twin of this command may use another, since the samples do not depend on it.
const PIECE: u64 = 4096;
/// Most samples: a day at 1 kHz.
const MOST_SAMPLES: u64 = 86_400_000;

/// Prints the 64-bit FNV-1a hash of the samples' 16-bit codes, low byte first, as 16 hexadecimal digits.
pub fn run(scenario: &Path, seed: u64, samples: u64) -> Result<(), Failure> {
    if samples > MOST_SAMPLES {
        return Err(Failure::new(format!("--samples must be at most {MOST_SAMPLES}, found {samples}")));
    }
    let mut chain = bench_run::start(scenario, seed, None)?;
    let mut hash = Fnv::default();
    let mut codes = Vec::new();
    let mut left = samples;
    while left > 0 {
        let piece = left.min(PIECE);
        codes.clear();
        chain.fill(piece as usize, &mut codes);
        for code in &codes {
            hash.add(&code.to_le_bytes());
        }
        left -= piece;
    }
    output::print(&format!("{:016x}\n", hash.0))
}

/// FNV-1a, 64 bits: offset basis and prime as in RFC 9923.
struct Fnv(u64);

impl Default for Fnv {
    fn default() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }
}

impl Fnv {
    fn add(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test vectors that the hash's authors publish (Fowler, Noll, Vo; from memory).
    #[test]
    fn the_hash_is_fnv_1a() {
        for (text, hash) in
            [("", 0xcbf2_9ce4_8422_2325), ("a", 0xaf63_dc4c_8601_ec8c), ("foobar", 0x8594_4171_f739_67e8)]
        {
            let mut fnv = Fnv::default();
            fnv.add(text.as_bytes());
            assert_eq!(fnv.0, hash, "{text}");
        }
    }
}
