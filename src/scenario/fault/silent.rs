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
        confused_with: &["pad_out", "range_large", "trace_hidden"],
        tests: &[Tell::Does(Kind::TapPad), Tell::Does(Kind::Input), Tell::Look(Spot::Recorder)],
        remedy: &[r#"{"do": "plug", "end": "pad", "socket": "in1"}"#],
        vain: &[r#"{"do": "range", "v": 0.005}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            s.chain.bench().wiring.pad_input().is_some_and(|n| n != s.chain.settings().input)
        }),
        symptom: Symptom::NoPulse,
        apply: |s, _| {
            let _ = s.config.bench.wiring.plug(End::Pad, Socket::In3);
        },
    },
    Fault {
        id: "pad_out",
        impression: Impression::Flat,
        severity: (1.00, 1.00),
        confused_with: &["wrong_input", "range_large"],
        tests: &[
            Tell::Does(Kind::TapPad),
            Tell::Wiggle(End::Pad),
            Tell::Look(Spot::Recorder),
            Tell::Look(Spot::Cable),
        ],
        remedy: &[r#"{"do": "plug", "end": "pad", "socket": "in1"}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.8}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.bench().wiring.socket_of(End::Pad).is_none()),
        symptom: Symptom::NoPulse,
        apply: |s, _| s.config.bench.wiring.unplug(End::Pad),
    },
    Fault {
        id: "pad_off_finger",
        impression: Impression::Flat,
        severity: (1.00, 1.00),
        confused_with: &["wrong_input", "pad_out"],
        tests: &[Tell::Does(Kind::TapPad), Tell::Look(Spot::Sensor)],
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
        confused_with: &["wrong_input", "held"],
        tests: &[Tell::Does(Kind::TapPad), Tell::Does(Kind::Shown)],
        remedy: &[r#"{"do": "shown", "on": true}"#],
        vain: &[r#"{"do": "range", "v": 0.02}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| !s.chain.settings().shown),
        symptom: Symptom::Hidden,
        apply: |s, _| s.config.recorder.shown = false,
    },
    Fault {
        id: "held",
        impression: Impression::Crowded,
        severity: (1.00, 1.00),
        confused_with: &["trace_hidden"],
        tests: &[Tell::Does(Kind::TapPad), Tell::Does(Kind::Show)],
        remedy: &[r#"{"do": "show", "mode": "live"}"#],
        vain: &[r#"{"do": "time_base", "s": 5}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.held),
        symptom: Symptom::Held,
        apply: |s, _| s.before.extend([step(r#"{"wait":3}"#), step(r#"{"do":"show","mode":"hold"}"#)]),
    },
    Fault {
        id: "plug_half_in",
        impression: Impression::Jumpy,
        severity: (0.60, 1.00),
        confused_with: &["lead_broken", "moving", "port_drops"],
        tests: &[Tell::Wiggle(End::Pad)],
        remedy: &[r#"{"do": "plug", "end": "pad", "socket": "in1"}"#],
        vain: &[r#"{"do": "notch", "hz": 50}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.plug_loose()),
        symptom: Symptom::Jumps,
        apply: |s, severity| s.config.trouble.plug_loose = severity,
    },
    Fault {
        id: "lead_broken",
        impression: Impression::Jumpy,
        severity: (0.70, 1.00),
        confused_with: &["plug_half_in", "moving"],
        tests: &[Tell::Cable, Tell::Wiggle(End::Pad)],
        remedy: &[r#"{"do": "swap_lead"}"#],
        vain: &[r#"{"do": "plug", "end": "pad", "socket": "in1"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.lead_broken()),
        symptom: Symptom::Jumps,
        apply: |s, severity| {
            s.config.trouble.lead_break = severity;
            // Bent sharply just before the pad.
            s.config.bench.lead.handles[1] = Point { x: 84.0, y: 84.0 };
        },
    },
];
