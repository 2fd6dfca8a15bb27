//! Between sensor and skin.

use super::entry::{AtWork, Fault, Impression, Symptom};
use crate::bench::look::Spot;
use crate::bench::strap::{Feel, Place, Side};
use crate::chain::COLD_C;
use crate::deed::{Kind, Tell};

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "strap_loose",
        impression: Impression::Small,
        severity: (0.00, 1.00),
        confused_with: &["finger_cold", "sensor_upside_down", "range_large"],
        tests: &[Tell::Does(Kind::PressFinger), Tell::Look(Spot::Sensor)],
        remedy: &[r#"{"do": "strap", "tightness": 0.72}"#],
        vain: &[r#"{"do": "low_pass", "hz": 10}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.bench().strap.feel() == Feel::Loose),
        symptom: Symptom::Weak,
        apply: |s, severity| s.config.bench.strap.tightness = 0.42 - 0.27 * severity,
    },
    Fault {
        id: "strap_tight",
        impression: Impression::Small,
        severity: (0.30, 1.00),
        confused_with: &["strap_loose", "finger_cold", "low_pass_low"],
        tests: &[Tell::Does(Kind::AskFinger), Tell::Look(Spot::Sensor), Tell::Look(Spot::Subject)],
        remedy: &[r#"{"do": "strap", "tightness": 0.72}"#, r#"{"wait": 40}"#],
        vain: &[r#"{"do": "range", "v": 0.02}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.bench().strap.feel() == Feel::Tight),
        symptom: Symptom::Fading,
        apply: |s, severity| {
            // 97 to 110 mmHg: above the diastolic pressure, where the artery still opens in each beat of most people.
            s.config.bench.strap.tightness = 0.857 + 0.043 * severity;
            // Strapped on for a while when the student comes.
            s.before.push(super::entry::step(r#"{"wait":30}"#));
        },
    },
    Fault {
        id: "sensor_upside_down",
        impression: Impression::Small,
        severity: (1.00, 1.00),
        confused_with: &["strap_loose", "finger_cold", "sensor_off_pulp"],
        tests: &[Tell::Look(Spot::Sensor), Tell::Does(Kind::TapSensor), Tell::Does(Kind::PressFinger)],
        remedy: &[r#"{"do": "sensor_side", "side": "to_skin"}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.78}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.bench().strap.side == Side::Away),
        symptom: Symptom::Weak,
        apply: |s, _| s.config.bench.strap.side = Side::Away,
    },
    Fault {
        id: "sensor_off_pulp",
        impression: Impression::Small,
        severity: (0.00, 1.00),
        confused_with: &["strap_loose", "sensor_upside_down", "finger_cold"],
        tests: &[Tell::Does(Kind::SensorPlace), Tell::Look(Spot::Sensor)],
        remedy: &[r#"{"do": "sensor_place", "place": "pulp"}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.78}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.bench().strap.place != Place::Pulp),
        symptom: Symptom::Weak,
        apply: |s, severity| {
            s.config.bench.strap.place = if severity < 0.5 { Place::Middle } else { Place::Joint };
        },
    },
    Fault {
        id: "finger_cold",
        impression: Impression::Small,
        severity: (0.00, 1.00),
        confused_with: &["strap_loose", "sensor_upside_down", "hand_low"],
        tests: &[Tell::Does(Kind::AskFinger), Tell::Does(Kind::PressFinger)],
        remedy: &[r#"{"do": "manoeuvre", "what": "warm_hand"}"#, r#"{"wait": 420}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.finger_temp_c() < COLD_C),
        symptom: Symptom::Weak,
        apply: |s, severity| s.config.subject.finger_temp_c = Some(25.4 - 3.0 * severity),
    },
    Fault {
        id: "hand_low",
        impression: Impression::Small,
        severity: (0.75, 1.00),
        confused_with: &["finger_cold", "strap_loose"],
        tests: &[Tell::Does(Kind::HandHeight), Tell::Look(Spot::Subject)],
        remedy: &[r#"{"do": "hand_height", "cm": 0}"#],
        vain: &[r#"{"do": "low_pass", "hz": 10}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.bench().strap.height_cm < -20.0),
        symptom: Symptom::Weak,
        apply: |s, severity| s.config.bench.strap.height_cm = -50.0 * severity,
    },
    Fault {
        id: "strap_slips",
        impression: Impression::Small,
        severity: (0.50, 1.00),
        confused_with: &["strap_loose", "hand_low"],
        tests: &[Tell::Does(Kind::PressFinger), Tell::Look(Spot::Sensor)],
        remedy: &[r#"{"do": "strap_off"}"#, r#"{"do": "strap_on"}"#, r#"{"do": "strap", "tightness": 0.72}"#],
        vain: &[r#"{"do": "range", "v": 0.02}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.slips()),
        symptom: Symptom::Fading,
        apply: |s, severity| s.config.trouble.slip = severity,
    },
];
