//! The computer does not see the unit, or loses it.

use super::entry::{AtWork, Fault, Impression, Symptom, step};
use crate::bench::look::Spot;
use crate::bench::wiring::{End, Socket, Switch};
use crate::deed::{Kind, Tell};

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "unit_off",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["mains_lead_out", "strip_off", "data_lead_out"],
        tests: &[Tell::Look(Spot::Recorder), Tell::Switch(Switch::Unit)],
        remedy: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| !s.chain.bench().wiring.unit_on),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.switch(Switch::Unit, false),
    },
    Fault {
        id: "mains_lead_out",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["unit_off", "strip_off"],
        tests: &[Tell::Look(Spot::Recorder), Tell::Look(Spot::PowerStrip), Tell::Switch(Switch::Unit)],
        remedy: &[r#"{"do": "plug", "end": "mains_wall", "socket": "outlet2"}"#],
        vain: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            let w = &s.chain.bench().wiring;
            w.socket_of(End::MainsWall).is_none() || w.socket_of(End::MainsUnit).is_none()
        }),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.unplug(End::MainsWall),
    },
    Fault {
        id: "strip_off",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["unit_off", "mains_lead_out"],
        tests: &[Tell::Look(Spot::PowerStrip), Tell::Switch(Switch::Strip), Tell::Switch(Switch::Unit)],
        remedy: &[r#"{"do": "switch", "id": "strip", "on": true}"#],
        vain: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            let w = &s.chain.bench().wiring;
            !w.strip_on && w.socket_of(End::MainsWall).is_some_and(|at| at != Socket::Wall)
        }),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.switch(Switch::Strip, false),
    },
    Fault {
        id: "data_lead_out",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["charge_port", "not_rescanned", "unit_off"],
        tests: &[
            Tell::Look(Spot::Recorder),
            Tell::Look(Spot::Computer),
            Tell::Wiggle(End::DataUnit),
            Tell::Wiggle(End::DataComputer),
        ],
        remedy: &[r#"{"do": "plug", "end": "data_unit", "socket": "unit_data"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            let w = &s.chain.bench().wiring;
            w.socket_of(End::DataUnit).is_none() || w.socket_of(End::DataComputer).is_none()
        }),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.unplug(End::DataUnit),
    },
    Fault {
        id: "charge_port",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["data_lead_out", "not_rescanned"],
        tests: &[Tell::Does(Kind::Rescan), Tell::Plug(End::DataComputer), Tell::Look(Spot::Computer)],
        remedy: &[r#"{"do": "plug", "end": "data_computer", "socket": "port1"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            s.chain.bench().wiring.socket_of(End::DataComputer) == Some(Socket::PortCharge)
        }),
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
        tests: &[
            Tell::Wiggle(End::DataComputer),
            Tell::Wiggle(End::DataUnit),
            Tell::Plug(End::DataComputer),
            Tell::Look(Spot::Recorder),
        ],
        remedy: &[r#"{"do": "plug", "end": "data_computer", "socket": "port2"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.port_fails()),
        symptom: Symptom::Losses,
        apply: |s, severity| s.config.trouble.port_gaps = severity,
    },
    Fault {
        id: "not_rescanned",
        impression: Impression::NoUnit,
        severity: (1.00, 1.00),
        confused_with: &["data_lead_out", "charge_port", "unit_off"],
        tests: &[Tell::Does(Kind::Rescan)],
        remedy: &[r#"{"do": "rescan"}"#],
        vain: &[r#"{"do": "switch", "id": "unit", "on": true}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.link_path() && !s.chain.found()),
        symptom: Symptom::Unseen,
        apply: |s, _| {
            s.config.finds_unit = false;
            s.config.bench.wiring.switch(Switch::Unit, false);
            s.before.push(step(r#"{"do":"switch","id":"unit","on":true}"#));
        },
    },
];
