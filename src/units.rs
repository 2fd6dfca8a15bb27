//! Quantities at the crate's edges, checked once when they come in. Inside the loops they are bare `f64` with the
//! unit in the name.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A number that is not a possible value of its quantity.
#[derive(Clone, Debug, Error, PartialEq)]
#[error("{quantity} must be {expected}, found {found}")]
pub struct OutOfRange {
    /// Name of the quantity.
    pub quantity: &'static str,
    /// What would have been accepted.
    pub expected: &'static str,
    /// What came.
    pub found: f64,
}

/// A frequency or rate in hertz: finite and above zero.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Hertz(f64);

impl Hertz {
    /// Checks that `hz` is finite and above zero.
    pub fn new(hz: f64) -> Result<Self, OutOfRange> {
        if hz.is_finite() && hz > 0.0 {
            Ok(Self(hz))
        } else {
            Err(OutOfRange { quantity: "frequency", expected: "a finite number of hertz above 0", found: hz })
        }
    }

    /// The number of hertz.
    pub fn get(self) -> f64 {
        self.0
    }
}

impl TryFrom<f64> for Hertz {
    type Error = OutOfRange;
    fn try_from(hz: f64) -> Result<Self, OutOfRange> {
        Self::new(hz)
    }
}

impl From<Hertz> for f64 {
    fn from(hz: Hertz) -> f64 {
        hz.0
    }
}
