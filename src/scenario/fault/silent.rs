//! A link, but no pulse on the line.

use super::entry::{AtWork, Fault, Impression, Symptom, step};
use crate::bench::look::Spot;
use crate::bench::table::Point;
use crate::bench::wiring::{End, Socket};
use crate::deed::{Kind, Tell};

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "wrong_input",
        impression: Impression::Flat,
        severity: (1.00, 1.00),
        confused_with: &["sensor_out", "range_large", "trace_hidden"],
        tests: &[Tell::Does(Kind::TapSensor), Tell::Does(Kind::Input), Tell::Look(Spot::Recorder)],
        remedy: &[r#"{"do": "plug", "end": "sensor", "socket": "in1"}"#],
        vain: &[r#"{"do": "range", "v": 0.005}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            s.chain.bench().wiring.sensor_input().is_some_and(|n| n != s.chain.settings().input)
        }),
        symptom: Symptom::NoPulse,
        apply: |s, _| {
            let _ = s.config.bench.wiring.plug(End::Sensor, Socket::In3);
        },
    },
    Fault {
        id: "sensor_out",
        impression: Impression::Flat,
        severity: (1.00, 1.00),
        confused_with: &["wrong_input", "range_large"],
        tests: &[
            Tell::Does(Kind::TapSensor),
            Tell::Wiggle(End::Sensor),
            Tell::Look(Spot::Recorder),
            Tell::Look(Spot::Cable),
        ],
        remedy: &[r#"{"do": "plug", "end": "sensor", "socket": "in1"}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.8}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.bench().wiring.socket_of(End::Sensor).is_none()),
        symptom: Symptom::NoPulse,
        apply: |s, _| s.config.bench.wiring.unplug(End::Sensor),
    },
    Fault {
        id: "sensor_off_finger",
        impression: Impression::Flat,
        severity: (1.00, 1.00),
        confused_with: &["wrong_input", "sensor_out"],
        tests: &[Tell::Does(Kind::TapSensor), Tell::Look(Spot::Sensor)],
        remedy: &[r#"{"do": "strap_on"}"#, r#"{"do": "strap", "tightness": 0.72}"#],
        vain: &[r#"{"do": "range", "v": 0.01}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| !s.chain.bench().strap.on),
        symptom: Symptom::NoPulse,
        apply: |s, _| s.config.bench.strap.on = false,
    },
    Fault {
        id: "trace_hidden",
        impression: Impression::Flat,
        severity: (1.00, 1.00),
        confused_with: &["wrong_input", "paused"],
        tests: &[Tell::Does(Kind::TapSensor), Tell::Does(Kind::Shown)],
        remedy: &[r#"{"do": "shown", "on": true}"#],
        vain: &[r#"{"do": "range", "v": 0.02}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| !s.chain.settings().shown),
        symptom: Symptom::Hidden,
        apply: |s, _| s.config.recorder.shown = false,
    },
    Fault {
        id: "paused",
        impression: Impression::Crowded,
        severity: (1.00, 1.00),
        confused_with: &["trace_hidden"],
        tests: &[Tell::Does(Kind::TapSensor), Tell::Does(Kind::Show)],
        remedy: &[r#"{"do": "show", "mode": "live"}"#],
        vain: &[r#"{"do": "time_base", "s": 5}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.held),
        symptom: Symptom::Paused,
        apply: |s, _| s.before.extend([step(r#"{"wait":3}"#), step(r#"{"do":"show","mode":"paused"}"#)]),
    },
    Fault {
        id: "plug_half_in",
        impression: Impression::Jumpy,
        severity: (0.60, 1.00),
        confused_with: &["cable_broken", "moving", "port_drops"],
        tests: &[Tell::Wiggle(End::Sensor)],
        remedy: &[r#"{"do": "plug", "end": "sensor", "socket": "in1"}"#],
        vain: &[r#"{"do": "notch", "hz": 50}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.plug_loose()),
        symptom: Symptom::Jumps,
        apply: |s, severity| s.config.trouble.plug_loose = severity,
    },
    Fault {
        id: "cable_broken",
        impression: Impression::Jumpy,
        severity: (0.70, 1.00),
        confused_with: &["plug_half_in", "moving"],
        tests: &[Tell::Cable, Tell::Wiggle(End::Sensor)],
        remedy: &[r#"{"do": "swap_cable"}"#],
        vain: &[r#"{"do": "plug", "end": "sensor", "socket": "in1"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.cable_broken()),
        symptom: Symptom::Jumps,
        apply: |s, severity| {
            s.config.trouble.cable_break = severity;
            // Bent sharply just before the sensor.
            s.config.bench.cable.handles[1] = Point { x: 84.0, y: 84.0 };
        },
    },
];
