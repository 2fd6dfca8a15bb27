//! The table top seen from above, in centimetres from its far left corner; the subject sits at the near edge.

use super::wiring::End;
use crate::math;
use serde::{Deserialize, Serialize};

/// Width of the table, cm.
pub const WIDTH_CM: f64 = 160.0;
/// Depth of the table, cm.
pub const DEPTH_CM: f64 = 90.0;

/// A place on the table, cm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Point {
    /// From the left edge.
    pub x: f64,
    /// From the far edge.
    pub y: f64,
}

impl Point {
    /// Distance to another place, cm.
    pub fn distance(self, other: Point) -> f64 {
        math::hypot(self.x - other.x, self.y - other.y)
    }
}

/// What stands on the table and can be moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// The recorder.
    Recorder,
    /// The computer.
    Computer,
    /// The power strip.
    PowerStrip,
    /// The laptop charger, its brick.
    Charger,
    /// A phone.
    Phone,
    /// A desk lamp.
    Lamp,
    /// The subject's hand; the forearm follows it.
    Hand,
    /// First handle of the sensor's cable, counted from the plug; the slack lies coiled here.
    Cable1,
    /// Second handle of the sensor's cable.
    Cable2,
}

/// The parts with a place of their own in [`Table`].
pub const PARTS: [Part; 7] =
    [Part::Recorder, Part::Computer, Part::PowerStrip, Part::Charger, Part::Phone, Part::Lamp, Part::Hand];

impl Part {
    /// Footprint: width and depth, cm. The handles of the cable have none.
    pub fn footprint(self) -> (f64, f64) {
        match self {
            Part::Recorder => (34.0, 20.0),
            Part::Computer => (36.0, 25.0),
            Part::PowerStrip => (42.0, 6.0),
            Part::Charger => (11.0, 5.5),
            Part::Phone => (7.5, 15.0),
            Part::Lamp => (14.0, 14.0),
            Part::Hand => (9.0, 18.0),
            Part::Cable1 | Part::Cable2 => (0.0, 0.0),
        }
    }
}

/// Where the parts are.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Table {
    places: [Point; 7],
}

impl Table {
    /// Everything in a place of its own and far from what disturbs it.
    pub fn tidy() -> Self {
        let mut table = Self { places: [Point { x: 0.0, y: 0.0 }; 7] };
        for (part, x, y) in [
            (Part::Recorder, 30.0, 40.0),
            (Part::Computer, 120.0, 34.0),
            (Part::PowerStrip, 58.0, 7.0),
            (Part::Charger, 140.0, 7.0),
            (Part::Phone, 148.0, 74.0),
            (Part::Lamp, 13.0, 12.0),
            (Part::Hand, 88.0, 76.0),
        ] {
            table.put(part, Point { x, y });
        }
        table
    }

    /// Centre of a part, cm. The cable's handles are kept by the cable and are at the origin here.
    pub fn at(&self, part: Part) -> Point {
        PARTS.iter().position(|p| *p == part).map_or(Point { x: 0.0, y: 0.0 }, |i| self.places[i])
    }

    /// Puts the centre of a part at a place, kept far enough from the edge that the part does not fall.
    pub fn put(&mut self, part: Part, to: Point) {
        if let Some(i) = PARTS.iter().position(|p| *p == part) {
            let (w, d) = part.footprint();
            self.places[i] = Point {
                x: to.x.clamp(w / 2.0, WIDTH_CM - w / 2.0),
                y: to.y.clamp(d / 2.0, DEPTH_CM - d / 2.0),
            };
        }
    }

    /// The tip of the finger that takes the sensor, cm.
    pub fn fingertip(&self) -> Point {
        let hand = self.at(Part::Hand);
        Point { x: hand.x - 3.0, y: hand.y - 13.0 }
    }

    /// Where a plug lies when it is in no socket.
    pub fn resting_place(&self, end: End) -> Point {
        let near = |part: Part, dx: f64, dy: f64| {
            let at = self.at(part);
            Point { x: (at.x + dx).clamp(2.0, WIDTH_CM - 2.0), y: (at.y + dy).clamp(2.0, DEPTH_CM - 2.0) }
        };
        match end {
            End::PowerRecorder => near(Part::Recorder, -4.0, -16.0),
            End::PowerWall => near(Part::Recorder, 14.0, -23.0),
            End::DataRecorder => near(Part::Recorder, 22.0, -14.0),
            End::DataComputer => near(Part::Computer, -27.0, 12.0),
            End::Sensor => near(Part::Recorder, 26.0, 10.0),
        }
    }

    /// Distance from a place to the nearest point of a part's footprint, cm; zero above the part.
    pub fn gap_to(&self, part: Part, from: Point) -> f64 {
        let (w, d) = part.footprint();
        let at = self.at(part);
        let dx = ((from.x - at.x).abs() - w / 2.0).max(0.0);
        let dy = ((from.y - at.y).abs() - d / 2.0).max(0.0);
        math::hypot(dx, dy)
    }
}
