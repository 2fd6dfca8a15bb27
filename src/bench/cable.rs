//! The sensor's cable: a fixed length, laid over two handles; what is not stretched out lies coiled at the first.

use super::table::Point;
use serde::{Deserialize, Serialize};

/// The sensor's cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cable {
    /// Whole length, cm.
    pub length_cm: f64,
    /// The two handles between plug and sensor.
    pub handles: [Point; 2],
}

impl Cable {
    /// A cable of 180 cm laid clear of everything that disturbs it.
    pub fn tidy() -> Self {
        Self { length_cm: 180.0, handles: [Point { x: 44.0, y: 64.0 }, Point { x: 66.0, y: 68.0 }] }
    }
}

/// Area enclosed by the path and the straight line between its ends, m^2; the loop in which a changing magnetic
/// field induces a voltage (shoelace formula).
pub fn loop_area_m2(path: &[Point]) -> f64 {
    let mut twice = 0.0;
    for (i, a) in path.iter().enumerate() {
        let b = path[(i + 1) % path.len()];
        twice += a.x * b.y - b.x * a.y;
    }
    (twice / 2.0).abs() * 1e-4
}
