//! The one door to transcendental functions.
//!
//! `std` takes them from the platform's C library on native targets and from a Rust port in WebAssembly, and the
//! two differ in the last bit for a few per cent of inputs. `libm` is the same code everywhere, so the same seed
//! gives the same samples everywhere. Clippy's `disallowed-methods` keeps everybody else out of `std`'s.

pub use core::f64::consts::{LN_2, PI, TAU};

/// Sine of an angle in radians.
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// Cosine of an angle in radians.
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// Tangent of an angle in radians.
pub fn tan(x: f64) -> f64 {
    libm::tan(x)
}

/// Four-quadrant arc tangent of `y / x`, in radians.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// The exponential function.
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Natural logarithm.
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// Logarithm to base ten.
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// `x` to the power of `y`.
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// Natural logarithm of the gamma function, for `x` above zero.
pub fn ln_gamma(x: f64) -> f64 {
    libm::lgamma(x)
}

/// The complementary error function.
pub fn erfc(x: f64) -> f64 {
    libm::erfc(x)
}

/// Length of the vector `(x, y)`. Square root is exact in IEEE arithmetic, so `std`'s may be used.
pub fn hypot(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}

/// The logistic function `1 / (1 + e^-x)`.
pub fn logistic(x: f64) -> f64 {
    1.0 / (1.0 + exp(-x))
}
