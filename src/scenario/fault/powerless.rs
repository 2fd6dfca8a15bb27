//! The computer does not see the recorder, or loses it.

use super::entry::{AtWork, Fault, Impression, Symptom, step};
use crate::bench::look::Spot;
use crate::bench::wiring::{End, Socket, Switch};
use crate::deed::{Kind, Tell};

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "recorder_off",
        impression: Impression::NoRecorder,
        severity: (1.00, 1.00),
        confused_with: &["power_cord_out", "power_strip_off", "data_cable_out"],
        tests: &[Tell::Look(Spot::Recorder), Tell::Switch(Switch::Recorder)],
        remedy: &[r#"{"do": "switch", "id": "recorder", "on": true}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| !s.chain.bench().wiring.recorder_on),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.switch(Switch::Recorder, false),
    },
    Fault {
        id: "power_cord_out",
        impression: Impression::NoRecorder,
        severity: (1.00, 1.00),
        confused_with: &["recorder_off", "power_strip_off"],
        tests: &[Tell::Look(Spot::Recorder), Tell::Look(Spot::PowerStrip), Tell::Switch(Switch::Recorder)],
        remedy: &[r#"{"do": "plug", "end": "power_wall", "socket": "outlet2"}"#],
        vain: &[r#"{"do": "switch", "id": "recorder", "on": true}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            let w = &s.chain.bench().wiring;
            w.socket_of(End::PowerWall).is_none() || w.socket_of(End::PowerRecorder).is_none()
        }),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.unplug(End::PowerWall),
    },
    Fault {
        id: "power_strip_off",
        impression: Impression::NoRecorder,
        severity: (1.00, 1.00),
        confused_with: &["recorder_off", "power_cord_out"],
        tests: &[
            Tell::Look(Spot::PowerStrip),
            Tell::Switch(Switch::PowerStrip),
            Tell::Switch(Switch::Recorder),
        ],
        remedy: &[r#"{"do": "switch", "id": "power_strip", "on": true}"#],
        vain: &[r#"{"do": "switch", "id": "recorder", "on": true}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            let w = &s.chain.bench().wiring;
            !w.power_strip_on && w.socket_of(End::PowerWall).is_some_and(|at| at != Socket::Wall)
        }),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.switch(Switch::PowerStrip, false),
    },
    Fault {
        id: "data_cable_out",
        impression: Impression::NoRecorder,
        severity: (1.00, 1.00),
        confused_with: &["charge_port", "not_rescanned", "recorder_off"],
        tests: &[
            Tell::Look(Spot::Recorder),
            Tell::Look(Spot::Computer),
            Tell::Wiggle(End::DataRecorder),
            Tell::Wiggle(End::DataComputer),
        ],
        remedy: &[r#"{"do": "plug", "end": "data_recorder", "socket": "recorder_data"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            let w = &s.chain.bench().wiring;
            w.socket_of(End::DataRecorder).is_none() || w.socket_of(End::DataComputer).is_none()
        }),
        symptom: Symptom::Unseen,
        apply: |s, _| s.config.bench.wiring.unplug(End::DataRecorder),
    },
    Fault {
        id: "charge_port",
        impression: Impression::NoRecorder,
        severity: (1.00, 1.00),
        confused_with: &["data_cable_out", "not_rescanned"],
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
        impression: Impression::NoRecorder,
        severity: (0.60, 1.00),
        confused_with: &["data_cable_out", "not_rescanned"],
        tests: &[
            Tell::Wiggle(End::DataComputer),
            Tell::Wiggle(End::DataRecorder),
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
        impression: Impression::NoRecorder,
        severity: (1.00, 1.00),
        confused_with: &["data_cable_out", "charge_port", "recorder_off"],
        tests: &[Tell::Does(Kind::Rescan)],
        remedy: &[r#"{"do": "rescan"}"#],
        vain: &[r#"{"do": "switch", "id": "recorder", "on": true}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.link_path() && !s.chain.found()),
        symptom: Symptom::Unseen,
        apply: |s, _| {
            s.config.finds_recorder = false;
            s.config.bench.wiring.switch(Switch::Recorder, false);
            s.before.push(step(r#"{"do":"switch","id":"recorder","on":true}"#));
        },
    },
];
