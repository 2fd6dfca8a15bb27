//! From the places of things on the table to the strength of the hum.
//!
//! Electric: a conductor at power line voltage drives a current `I = 2 pi f C V` through its stray capacitance `C` into
//! the cable and into the subject's body; the sensor's impedance turns it into a voltage. Magnetic: a cord with current
//! induces `2 pi f B A` in the loop of the cable (long-wire field `mu0 I / (2 pi r)`, of which a pair of wires leaves
//! the part `spacing / r`); it is small against a sensor of tens of millivolts and is kept because it is real.
//!
//! The stray capacitances are design defaults of plausible size: no published table exists for a student's bench.

use super::sensor::{Kind, Sensor};
use crate::bench::Bench;
use crate::bench::cable::loop_area_m2;
use crate::bench::strap::OtherHand;
use crate::bench::table::{Part, Point};
use crate::math;
use serde::{Deserialize, Serialize};

/// The power line of a region.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct PowerLine {
    /// Voltage against ground, V rms.
    pub volts: f64,
    /// Frequency, Hz.
    pub hz: f64,
}

impl Default for PowerLine {
    fn default() -> Self {
        Self { volts: 230.0, hz: 50.0 }
    }
}

/// Strength of the hum at the recorder's input: peak volts of the fundamental.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Hum {
    /// Through the field of the power strip and other plain power line wiring.
    pub wiring_v: f64,
    /// Through the field of the charger, whose switching makes it rich in harmonics.
    pub charger_v: f64,
    /// Through the subject's body.
    pub body_v: f64,
    /// Induced in the loop of the cable.
    pub loop_v: f64,
}

impl Hum {
    /// All of it, peak volts: the capacitive parts are in phase, the induced one at a right angle to them.
    pub fn total_v(&self) -> f64 {
        math::hypot(self.wiring_v + self.charger_v + self.body_v, self.loop_v)
    }
}

/// Capacitance to half a metre of cable right at the source, pF (design defaults).
const STRIP_PF: f64 = 1.0;
const CHARGER_PF: f64 = 1.5;
const LAMP_PF: f64 = 0.1;
/// Distance over which the coupling falls to half, cm (design default).
const HALF_CM: f64 = 10.0;
/// Wiring in the walls, pF per half metre of cable anywhere in the room (design default).
const ROOM_PF: f64 = 0.004;
/// Capacitance of the subject's body to earth, pF, and from the finger to the sensor, pF (design defaults within the
/// published "hundreds of pF").
const BODY_EARTH_PF: f64 = 300.0;
const FINGER_PAD_PF: f64 = 20.0;
/// From a floating laptop to the hand that lies on it, pF (design default).
const LAPTOP_PF: f64 = 40.0;
/// Load current in the charger's cord, A, and the spacing of its two wires, m.
const CORD_A: f64 = 0.3;
const CORD_SPACING_M: f64 = 0.003;
/// Magnetic constant, H/m.
const MU0: f64 = 4.0e-7 * math::PI;
/// What lies across an input without a plug, ohm: the socket's own switch contact lays a plain input's resistance there,
/// buffered or not. And the stray capacitance of the socket, pF for each pF per half metre.
const OPEN_OHM: f64 = 1e6;
const SOCKET_SHARE: f64 = 0.25;

/// Current through a stray capacitance, A rms: `2 pi f C V`.
pub fn capacitive_current_a(hz: f64, farad: f64, volts: f64) -> f64 {
    math::TAU * hz * farad * volts
}

/// Field of a long straight wire, tesla: `mu0 I / (2 pi r)`.
pub fn wire_field_t(ampere: f64, metre: f64) -> f64 {
    MU0 * ampere / (math::TAU * metre)
}

/// Field of two wires `spacing` apart that carry the current there and back, tesla, at a distance well over the
/// spacing.
pub fn pair_field_t(ampere: f64, metre: f64, spacing: f64) -> f64 {
    wire_field_t(ampere, metre) * spacing / metre
}

/// Voltage induced in a loop, V (same measure as the field): `2 pi f B A`.
pub fn induced_v(hz: f64, tesla: f64, area_m2: f64) -> f64 {
    math::TAU * hz * tesla * area_m2
}

/// Falling-off of the coupling with distance, 1 at the source.
fn reach(gap_cm: f64) -> f64 {
    let u = gap_cm / HALF_CM;
    1.0 / (1.0 + u * u.sqrt())
}

/// Stray capacitances at a place: (plain wiring, charger), pF per half metre of cable.
fn capacitance_at(bench: &Bench, at: Point) -> (f64, f64) {
    let gap = |part| bench.table.gap_to(part, at);
    // A switched-off power strip keeps the field of its feed up to the switch.
    let power_strip = if bench.wiring.power_strip_on { STRIP_PF } else { 0.3 * STRIP_PF };
    let live = if bench.wiring.power_strip_on { 1.0 } else { 0.0 };
    let lamp = if bench.wiring.lamp_on { LAMP_PF } else { 0.5 * LAMP_PF };
    let wiring = ROOM_PF + power_strip * reach(gap(Part::PowerStrip)) + lamp * reach(gap(Part::Lamp));
    let charger =
        if bench.wiring.charger_plugged { live * CHARGER_PF * reach(gap(Part::Charger)) } else { 0.0 };
    (wiring, charger)
}

/// Capacitances summed along the cable with its coil of slack at the first handle: (wiring, charger), pF.
fn capacitance_along_cable(bench: &Bench) -> (f64, f64) {
    let mut sum = (0.0, 0.0);
    let mut add = |at: Point, cm: f64| {
        let (w, c) = capacitance_at(bench, at);
        sum.0 += w * cm / 50.0;
        sum.1 += c * cm / 50.0;
    };
    for leg in bench.cable_path().windows(2) {
        let cm = leg[0].distance(leg[1]);
        // Pieces of 3 cm or less, so that dragging changes the sum smoothly.
        let pieces = (cm / 3.0).ceil().max(1.0);
        let mut k = 0.5;
        while k < pieces {
            let u = k / pieces;
            let at =
                Point { x: leg[0].x + u * (leg[1].x - leg[0].x), y: leg[0].y + u * (leg[1].y - leg[0].y) };
            add(at, cm / pieces);
            k += 1.0;
        }
    }
    add(bench.cable.handles[0], bench.slack_cm().max(0.0));
    sum
}

/// Hum that reaches an input of `input_ohm` through the sensor: its cable, the body, the loop.
pub fn hum_at_sensor(bench: &Bench, sensor: &Sensor, input_ohm: f64, power_line: &PowerLine) -> Hum {
    let peak = core::f64::consts::SQRT_2;
    // The body couples to what feels the pulse, in front of an amplifier where there is one. What feels light is no antenna.
    let felt_ohm = match sensor.kind {
        Kind::Optical => sensor.cable_ohm(power_line.hz, input_ohm),
        Kind::Ceramic | Kind::Film => sensor.impedance_ohm(power_line.hz, input_ohm),
    };
    let cable_ohm = sensor.cable_ohm(power_line.hz, input_ohm);
    let volts_per_pf = peak * cable_ohm * capacitive_current_a(power_line.hz, 1e-12, power_line.volts);
    let (wiring, charger) = capacitance_along_cable(bench);
    let leak = sensor.shield_leak();

    let body_v = if bench.strap.on {
        // The forearm lies along a quarter of a metre; the body itself couples to the room.
        let hand = bench.table.at(Part::Hand);
        let (w, c) = capacitance_at(bench, hand);
        // A laptop on its charger floats at half the power line, behind a few picofarad as far as the fingers are concerned.
        let floating = bench.wiring.charger_plugged && bench.wiring.power_strip_on;
        let laptop_pf = if floating { 0.5 * LAPTOP_PF } else { 0.02 * LAPTOP_PF };
        let body_volts = match bench.strap.other_hand {
            OtherHand::Lap => power_line.volts * (0.3 + w + c) / BODY_EARTH_PF,
            OtherHand::Laptop => power_line.volts * (0.3 + w + c + laptop_pf) / BODY_EARTH_PF,
            // Earthed through the case, by way of skin of some kiloohm: a few hundredths are left.
            OtherHand::Case => 0.03 * power_line.volts * (0.3 + w + c) / BODY_EARTH_PF,
        };
        // The shield ends at the sensor; a damaged or missing one leaves its back open as well.
        let back = 0.1 + 0.9 * leak;
        peak * felt_ohm * capacitive_current_a(power_line.hz, FINGER_PAD_PF * back * 1e-12, body_volts)
    } else {
        0.0
    };

    let loop_v = if bench.wiring.charger_plugged && bench.wiring.power_strip_on {
        let path = bench.cable_path();
        let nearest =
            path.iter().map(|p| bench.table.gap_to(Part::Charger, *p)).fold(f64::INFINITY, f64::min).max(2.0);
        let tesla = pair_field_t(CORD_A, nearest / 100.0, CORD_SPACING_M);
        peak * induced_v(power_line.hz, tesla, loop_area_m2(&path))
    } else {
        0.0
    };
    Hum { wiring_v: volts_per_pf * wiring * leak, charger_v: volts_per_pf * charger * leak, body_v, loop_v }
}

/// Spikes that a busy phone puts on the cable, V at the input: up to 60 mV on an unshielded cable right beside it
/// (design default), falling off with distance, less behind a shield.
pub fn phone_spikes_v(bench: &Bench, sensor: &Sensor) -> f64 {
    let path = bench.cable_path();
    let near = path.windows(2).flat_map(|leg| {
        (0..=8).map(|k| {
            let u = f64::from(k) / 8.0;
            Point { x: leg[0].x + u * (leg[1].x - leg[0].x), y: leg[0].y + u * (leg[1].y - leg[0].y) }
        })
    });
    let gap = near.map(|p| bench.table.gap_to(Part::Phone, p)).fold(f64::INFINITY, f64::min);
    let leak = sensor.shield_leak().sqrt();
    let sensor_share = if sensor.kind == Kind::Optical { 0.05 } else { 1.0 };
    let u = gap / 6.0;
    0.06 * leak * sensor_share / (1.0 + u * u)
}

/// Hum of an input with nothing in it: a short antenna on a high resistance.
pub fn hum_at_open_input(bench: &Bench, power_line: &PowerLine) -> Hum {
    let (wiring, charger) = capacitance_at(bench, bench.table.at(Part::Recorder));
    let volts_per_pf = core::f64::consts::SQRT_2
        * OPEN_OHM
        * capacitive_current_a(power_line.hz, 1e-12, power_line.volts)
        * SOCKET_SHARE;
    Hum { wiring_v: volts_per_pf * wiring, charger_v: volts_per_pf * charger, body_v: 0.0, loop_v: 0.0 }
}
