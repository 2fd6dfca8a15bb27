//! The bench: what the student's hands change.
//!
//! - [`table`]: the table top, the parts that stand on it, where they are
//! - [`wiring`]: the plugs, the sockets they fit, which parts have power and whether recorder and computer can talk
//! - [`look`]: where one can look
//! - [`cable`]: the sensor's cable as a path on the table with its slack
//! - [`strap`]: the sensor on the finger: pressure, place, side, hand height
//!
//! [`Bench`] holds all of it and [`Bench::change`] is the only way to alter it: a change is either carried out whole
//! or refused with a reason, never half done.

pub mod cable;
pub mod look;
pub mod strap;
pub mod table;
pub mod wiring;

use cable::Cable;
use serde::{Deserialize, Serialize};
use strap::{Place, Side, Strap};
use table::{Part, Point, Table};
use wiring::{End, Socket, Wiring};

/// One thing that a hand does at the bench.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Change {
    /// Push a plug into a socket.
    Plug {
        /// The plug.
        end: End,
        /// The socket.
        socket: Socket,
    },
    /// Pull a plug out.
    Unplug {
        /// The plug.
        end: End,
    },
    /// Turn a switch.
    Switch {
        /// Which switch.
        id: wiring::Switch,
        /// On or off.
        on: bool,
    },
    /// Put a part, or a handle of the sensor's cable, elsewhere on the table.
    Move {
        /// What is moved.
        part: Part,
        /// Centre, cm from the left edge.
        x: f64,
        /// Centre, cm from the far edge.
        y: f64,
    },
    /// Put the laptop charger into the power strip or take it out.
    Charger {
        /// In or out.
        plugged: bool,
    },
    /// Strap the sensor on the finger.
    StrapOn {},
    /// Take the sensor off.
    StrapOff {},
    /// Pull the strap tighter or ease it.
    Strap {
        /// Slider from 0 (barely touching) to 1 (as tight as it goes).
        tightness: f64,
    },
    /// Shift the sensor along the finger.
    SensorPlace {
        /// Where the sensor sits.
        place: Place,
    },
    /// Turn the sensor over.
    SensorSide {
        /// Which way its sensing face looks.
        side: Side,
    },
    /// Cover the finger with a cloth, or take it off.
    Shade {
        /// Covered.
        on: bool,
    },
    /// Put the subject's other hand elsewhere.
    OtherHand {
        /// Where.
        on: strap::OtherHand,
    },
    /// Raise or lower the hand.
    HandHeight {
        /// Height over the heart, cm, -50 to 50.
        cm: f64,
    },
}

/// Why the bench does not do what was asked. Nothing has changed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
pub enum Refusal {
    /// The plug's shape does not go into that socket.
    DoesNotFit {
        /// The plug.
        end: End,
        /// The socket.
        socket: Socket,
    },
    /// Another plug is in there.
    SocketTaken {
        /// The socket.
        socket: Socket,
    },
    /// The sensor's cable does not reach.
    CableTooShort {},
    /// There is no sensor on the finger.
    NoStrap {},
    /// A number outside its range.
    OutOfRange {
        /// Name of the number.
        field: &'static str,
        /// Lowest value.
        min: f64,
        /// Highest value.
        max: f64,
    },
}

/// The whole bench.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bench {
    /// Parts and their places.
    pub table: Table,
    /// Plugs and switches.
    pub wiring: Wiring,
    /// The sensor's cable.
    pub cable: Cable,
    /// The sensor on the finger.
    pub strap: Strap,
}

impl Bench {
    /// A tidy bench with nothing plugged in: every part apart from the others, the sensor beside the hand.
    pub fn tidy() -> Self {
        Self { table: Table::tidy(), wiring: Wiring::apart(), cable: Cable::tidy(), strap: Strap::off() }
    }

    /// A tidy bench that is wired, powered and strapped right.
    pub fn wired() -> Self {
        Self { wiring: Wiring::complete(), strap: Strap::snug(), ..Self::tidy() }
    }

    /// Carries out one change, or says why it cannot be done.
    pub fn change(&mut self, change: &Change) -> Result<(), Refusal> {
        let mut next = self.clone();
        match *change {
            Change::Plug { end, socket } => {
                next.wiring.plug(end, socket)?;
            }
            Change::Unplug { end } => next.wiring.unplug(end),
            Change::Switch { id, on } => next.wiring.switch(id, on),
            Change::Move { part, x, y } => {
                in_range("x", x, 0.0, table::WIDTH_CM)?;
                in_range("y", y, 0.0, table::DEPTH_CM)?;
                let to = Point { x, y };
                match part {
                    Part::Cable1 => next.cable.handles[0] = to,
                    Part::Cable2 => next.cable.handles[1] = to,
                    _ => next.table.put(part, to),
                }
            }
            Change::Charger { plugged } => {
                if plugged && next.wiring.end_in(Socket::Outlet4).is_some() {
                    return Err(Refusal::SocketTaken { socket: Socket::Outlet4 });
                }
                next.wiring.charger_plugged = plugged;
            }
            Change::StrapOn {} => next.strap.on = true,
            Change::StrapOff {} => next.strap.on = false,
            Change::Strap { tightness } => {
                in_range("tightness", tightness, 0.0, 1.0)?;
                if !next.strap.on {
                    return Err(Refusal::NoStrap {});
                }
                next.strap.tightness = tightness;
            }
            Change::SensorPlace { place } => next.strap.place = place,
            Change::SensorSide { side } => next.strap.side = side,
            Change::Shade { on } => next.strap.shaded = on,
            Change::OtherHand { on } => next.strap.other_hand = on,
            Change::HandHeight { cm } => {
                in_range("cm", cm, -50.0, 50.0)?;
                next.strap.height_cm = cm;
            }
        }
        if next.slack_cm() < 0.0 {
            return Err(Refusal::CableTooShort {});
        }
        *self = next;
        Ok(())
    }

    /// The sensor cable's path over the table: plug, two handles, sensor.
    pub fn cable_path(&self) -> [Point; 4] {
        let plug = self.end_point(End::Sensor);
        [plug, self.cable.handles[0], self.cable.handles[1], self.sensor_point()]
    }

    /// Length of cable that is not stretched out, cm; below zero when the cable does not reach.
    pub fn slack_cm(&self) -> f64 {
        let path = self.cable_path();
        self.cable.length_cm - path.windows(2).map(|w| w[0].distance(w[1])).sum::<f64>()
    }

    /// Where the sensor is: on the fingertip, or lying beside the hand.
    pub fn sensor_point(&self) -> Point {
        let tip = self.table.fingertip();
        if self.strap.on { tip } else { Point { x: tip.x - 9.0, y: tip.y + 3.0 } }
    }

    /// Where a plug is: in its socket, or lying on the table near its cable's part.
    pub fn end_point(&self, end: End) -> Point {
        match self.wiring.socket_of(end) {
            Some(socket) => self.socket_point(socket),
            None => self.table.resting_place(end),
        }
    }

    /// Where a socket is, cm.
    pub fn socket_point(&self, socket: Socket) -> Point {
        let (part, dx, dy) = socket.place();
        match part {
            Some(part) => {
                let at = self.table.at(part);
                Point { x: at.x + dx, y: at.y + dy }
            }
            None => Point { x: dx, y: dy },
        }
    }
}

fn in_range(field: &'static str, value: f64, min: f64, max: f64) -> Result<(), Refusal> {
    if value.is_finite() && (min..=max).contains(&value) {
        Ok(())
    } else {
        Err(Refusal::OutOfRange { field, min, max })
    }
}
