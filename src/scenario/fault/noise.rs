//! What gets in from outside: power line, phone, light.

use super::entry::{AtWork, Fault, HUM, HumBy, Impression, Situation, Symptom};
use crate::bench::look::Spot;
use crate::bench::strap::OtherHand;
use crate::bench::table::{Part, Point};
use crate::bench::wiring::Switch;
use crate::deed::{Kind, Tell};
use crate::pickup::sensor::{Kind as SensorKind, Shield};

/// A cable with a torn shield, laid along the power strip: right at it, or a hand's width from it where the severity is least.
pub(super) fn lay_on_power_strip(s: &mut Situation, severity: f64) {
    s.config.sensor.shield = Shield::Damaged;
    let off = 7.0 * (1.0 - severity);
    s.config.bench.cable.handles = [Point { x: 50.0, y: 11.0 + off }, Point { x: 72.0, y: 12.0 + off }];
}

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "cable_on_power_strip",
        impression: Impression::Fuzzy,
        severity: (0.00, 1.00),
        confused_with: &["charger_near", "hand_on_laptop", "wrong_notch", "phone_near"],
        tests: &[Tell::Cable, Tell::Moved(Part::PowerStrip)],
        remedy: &[
            r#"{"do": "move", "part": "cable1", "x": 44, "y": 66}"#,
            r#"{"do": "move", "part": "cable2", "x": 66, "y": 70}"#,
        ],
        vain: &[r#"{"do": "high_pass", "hz": 0.5}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.hum_is_of(HumBy::Cable)),
        symptom: Symptom::Hum,
        apply: lay_on_power_strip,
    },
    Fault {
        id: "charger_near",
        impression: Impression::Fuzzy,
        severity: (0.00, 1.00),
        confused_with: &["cable_on_power_strip", "hand_on_laptop", "phone_near"],
        tests: &[Tell::Does(Kind::Charger), Tell::Moved(Part::Charger)],
        remedy: &[r#"{"do": "charger", "plugged": false}"#],
        vain: &[r#"{"do": "move", "part": "phone", "x": 150, "y": 60}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.hum_is_of(HumBy::Charger)),
        symptom: Symptom::Hum,
        apply: |s, severity| {
            s.config.sensor.shield = Shield::Damaged;
            s.config.bench.wiring.charger_plugged = true;
            s.config.bench.cable.length_cm = 150.0;
            s.config.bench.table.put(Part::Charger, Point { x: 56.0, y: 60.0 + 5.0 * severity });
        },
    },
    Fault {
        id: "hand_on_laptop",
        impression: Impression::Fuzzy,
        severity: (0.00, 1.00),
        confused_with: &["cable_on_power_strip", "charger_near"],
        tests: &[Tell::Does(Kind::OtherHand), Tell::Does(Kind::Charger)],
        remedy: &[r#"{"do": "other_hand", "on": "lap"}"#],
        vain: &[r#"{"do": "move", "part": "cable1", "x": 46, "y": 68}"#],
        curable: true,
        // The case has its voltage from the charger: who unplugs that ends it as well.
        brings: &["charger_near"],
        at_work: AtWork::Is(|s| s.hum_is_of(HumBy::Hand)),
        symptom: Symptom::Hum,
        apply: |s, severity| {
            s.config.sensor.shield = Shield::Damaged;
            s.config.trouble.light_touch = 1.0 - severity;
            s.config.bench.wiring.charger_plugged = true;
            s.config.bench.strap.other_hand = OtherHand::Laptop;
        },
    },
    Fault {
        id: "wrong_notch",
        impression: Impression::Fuzzy,
        severity: (1.00, 1.00),
        confused_with: &["cable_on_power_strip", "charger_near"],
        tests: &[Tell::Does(Kind::Notch), Tell::Stretch],
        remedy: &[
            r#"{"do": "move", "part": "cable1", "x": 44, "y": 66}"#,
            r#"{"do": "move", "part": "cable2", "x": 66, "y": 70}"#,
            r#"{"do": "notch", "hz": null}"#,
        ],
        vain: &[r#"{"do": "average", "ms": 10}"#],
        curable: true,
        brings: &["cable_on_power_strip"],
        at_work: AtWork::Is(|s| {
            s.chain.settings().notch_hz.is_some_and(|hz| hz != s.chain.config().power_line.hz)
        }),
        symptom: Symptom::Hum,
        apply: |s, _| {
            lay_on_power_strip(s, 1.0);
            s.config.recorder.notch_hz = Some(110.0 - s.config.power_line.hz);
        },
    },
    Fault {
        id: "filtered_away",
        impression: Impression::Fuzzy,
        severity: (1.00, 1.00),
        confused_with: &["cable_on_power_strip", "low_pass_low"],
        tests: &[Tell::Does(Kind::Notch), Tell::Does(Kind::LowPass)],
        remedy: &[
            r#"{"do": "move", "part": "cable1", "x": 44, "y": 66}"#,
            r#"{"do": "move", "part": "cable2", "x": 66, "y": 70}"#,
        ],
        vain: &[r#"{"do": "average", "ms": 20}"#],
        curable: true,
        brings: &["cable_on_power_strip"],
        at_work: AtWork::Is(|s| {
            let set = s.chain.settings();
            s.chain.hum_share() > HUM
                && (set.notch_hz == Some(s.chain.config().power_line.hz)
                    || set.low_pass_hz.is_some_and(|hz| hz <= 15.0))
        }),
        symptom: Symptom::HumBehindFilters,
        apply: |s, _| {
            lay_on_power_strip(s, 1.0);
            s.config.recorder.notch_hz = Some(s.config.power_line.hz);
            s.config.recorder.low_pass_hz = Some(10.0);
        },
    },
    Fault {
        id: "phone_near",
        impression: Impression::Fuzzy,
        severity: (0.60, 1.00),
        confused_with: &["cable_on_power_strip", "charger_near", "plug_half_in"],
        tests: &[Tell::Moved(Part::Phone), Tell::Stretch],
        remedy: &[r#"{"do": "move", "part": "phone", "x": 150, "y": 70}"#],
        vain: &[r#"{"do": "notch", "hz": 50}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.phone_share() > 0.12),
        symptom: Symptom::Spikes,
        apply: |s, severity| {
            s.config.sensor.shield = Shield::Damaged;
            s.config.trouble.phone = severity;
            s.config.bench.table.put(Part::Phone, Point { x: 58.0, y: 66.0 });
        },
    },
    Fault {
        id: "room_light",
        impression: Impression::Fuzzy,
        severity: (0.00, 1.00),
        confused_with: &["cable_on_power_strip", "charger_near"],
        tests: &[Tell::Does(Kind::Shade), Tell::Switch(Switch::Lamp), Tell::Stretch],
        remedy: &[r#"{"do": "shade", "on": true}"#],
        vain: &[r#"{"do": "charger", "plugged": false}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.flicker() > 0.025),
        symptom: Symptom::Flicker,
        apply: |s, severity| {
            s.config.sensor.kind = SensorKind::Optical;
            s.config.recorder.range_v = 0.5;
            s.config.bench.wiring.lamp_on = true;
            s.config.bench.table.put(Part::Lamp, Point { x: 112.0 - 14.0 * severity, y: 62.0 });
        },
    },
    Fault {
        id: "cable_taut",
        impression: Impression::Jumpy,
        severity: (1.00, 1.00),
        confused_with: &["moving", "plug_half_in"],
        tests: &[Tell::Cable, Tell::Look(Spot::Cable), Tell::Does(Kind::AskStill)],
        remedy: &[
            r#"{"do": "move", "part": "cable1", "x": 44, "y": 62}"#,
            r#"{"do": "move", "part": "cable2", "x": 62, "y": 64}"#,
        ],
        vain: &[r#"{"do": "notch", "hz": 50}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.cable_taut()),
        symptom: Symptom::Movement,
        apply: |s, _| {
            s.config.bench.cable.handles = [Point { x: 26.0, y: 86.0 }, Point { x: 66.0, y: 86.0 }];
            let slack = s.config.bench.slack_cm();
            s.config.bench.cable.length_cm -= slack - 2.0;
        },
    },
];
