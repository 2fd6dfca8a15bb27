//! Samples of the formats that are read. Signals of one file lie sample beside sample.

use super::MISSING;

/// Formats that are read.
pub(super) const FORMATS: [u16; 6] = [8, 16, 61, 80, 160, 212];

/// Number of samples in so many bytes of a format.
pub(super) fn held(format: u16, bytes: u64) -> u64 {
    match format {
        8 | 80 => bytes,
        212 => bytes / 3 * 2 + u64::from(bytes % 3 == 2),
        _ => bytes / 2,
    }
}

/// Bytes that so many samples of a format take.
pub(super) fn needed(format: u16, samples: u64) -> u64 {
    match format {
        8 | 80 => samples,
        212 => samples / 2 * 3 + 2 * (samples % 2),
        _ => 2 * samples,
    }
}

/// Sample `at` of a file of a format, counted over all its signals; the code that stands for a missing sample is told as
/// none. The sample must be there: see [`held`]. Differences (format 8) are given as they are.
pub(super) fn sample(format: u16, bytes: &[u8], at: usize) -> Option<i32> {
    let byte = |k: usize| bytes.get(k).copied().unwrap_or(0);
    let (code, missing) = match format {
        8 => return Some(i32::from(byte(at) as i8)),
        80 => (i32::from(byte(at)) - 128, -128),
        16 => (i32::from(i16::from_le_bytes([byte(2 * at), byte(2 * at + 1)])), i32::from(MISSING)),
        61 => (i32::from(i16::from_be_bytes([byte(2 * at), byte(2 * at + 1)])), i32::from(MISSING)),
        160 => (i32::from(u16::from_le_bytes([byte(2 * at), byte(2 * at + 1)])) - 32768, i32::from(MISSING)),
        _ => {
            // Two samples of 12 bits in three bytes: low byte, both high nibbles, low byte.
            let base = at / 2 * 3;
            let high = byte(base + 1);
            let raw = match at % 2 {
                0 => u16::from(byte(base)) | u16::from(high & 0x0f) << 8,
                _ => u16::from(byte(base + 2)) | u16::from(high >> 4) << 8,
            };
            (i32::from((raw << 4) as i16 >> 4), -2048)
        }
    };
    (code != missing).then_some(code)
}
