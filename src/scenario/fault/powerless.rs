//! The computer does not see the unit, or loses it.

use super::entry::{Fault, Impression, Symptom, step};
use crate::bench::wiring::{End, Socket, Switch};

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "unit_off",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["mains_lead_out", "strip_off", "data_lead_out"],
        tests: &["look_around", "switch"],
        remedy: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.switch(Switch::Unit, false),
    },
    Fault {
        id: "mains_lead_out",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["unit_off", "strip_off"],
        tests: &["look_around", "switch"],
        remedy: &[r#"{"do": "plug", "end": "mains_wall", "socket": "outlet2"}"#],
        vain: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        curable: true,
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.unplug(End::MainsWall),
    },
    Fault {
        id: "strip_off",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["unit_off", "mains_lead_out"],
        tests: &["look_around", "switch"],
        remedy: &[r#"{"do": "switch", "id": "strip", "on": true}"#],
        vain: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        curable: true,
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.switch(Switch::Strip, false),
    },
    Fault {
        id: "data_lead_out",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["charge_port", "not_rescanned", "unit_off"],
        tests: &["look_around", "wiggle"],
        remedy: &[r#"{"do": "plug", "end": "data_unit", "socket": "unit_data"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.unplug(End::DataUnit),
    },
    Fault {
        id: "charge_port",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["data_lead_out", "not_rescanned"],
        tests: &["rescan", "plug"],
        remedy: &[r#"{"do": "plug", "end": "data_computer", "socket": "port1"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        symptom: Symptom::Unseen,
        apply: |s, _| {
            // The port that gives power only has the same shape.
            let _ = s.config.bench.wiring.plug(End::DataComputer, Socket::PortCharge);
        },
    },
    Fault {
        id: "port_drops",
        impression: Impression::NoUnit,
        severity: (0.60, 1.00),
        confused_with: &["data_lead_out", "not_rescanned"],
        tests: &["wiggle", "plug"],
        remedy: &[r#"{"do": "plug", "end": "data_computer", "socket": "port2"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        symptom: Symptom::Losses,
        apply: |s, severity| s.config.trouble.port_gaps = severity,
    },
    Fault {
        id: "not_rescanned",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["data_lead_out", "charge_port", "unit_off"],
        tests: &["rescan"],
        remedy: &[r#"{"do": "rescan"}"#],
        vain: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        curable: true,
        symptom: Symptom::Unseen,
        apply: |s, _| {
            s.config.finds_unit = false;
            s.config.bench.wiring.switch(Switch::Unit, false);
            s.before.push(step(r#"{"do":"switch","id":"unit","on":true}"#));
        },
    },
];
