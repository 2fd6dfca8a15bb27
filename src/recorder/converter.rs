//! The converter: full-scale range, clipping, quantising.
//!
//! Codes are always handed on as 16-bit numbers, whatever the resolution: an 8-bit converter fills the upper eight
//! bits. The value of one step of a `bits`-bit converter over +-R is `LSB = 2 R / 2^bits`.

/// Value of one step of the converter, V: `2 R / 2^bits`.
pub fn lsb_v(range_v: f64, bits: u8) -> f64 {
    2.0 * range_v / f64::from(1_u32 << bits)
}

/// Value of one recorder of a 16-bit code, V.
pub fn code_v(range_v: f64) -> f64 {
    range_v / 32768.0
}

/// Clips to the range and rounds to the nearest step; halves away from zero.
pub fn quantise(volts: f64, range_v: f64, bits: u8) -> i16 {
    let half = f64::from(1_u32 << (bits - 1));
    let steps = (volts / range_v * half).clamp(-half, half - 1.0);
    // What is behind the point of so small a number is exact; without a call of `round`, which not every processor has.
    let whole = steps as i32;
    let rest = steps - f64::from(whole);
    let rounded = whole + i32::from(rest >= 0.5) - i32::from(rest <= -0.5);
    (rounded << (16 - bits)) as i16
}

/// Whether a code lies at either end of the range, where the signal may have been cut off.
pub fn at_limit(code: i16, bits: u8) -> bool {
    let top = ((1_i32 << (bits - 1)) - 1) << (16 - bits);
    i32::from(code) >= top || code == i16::MIN
}
