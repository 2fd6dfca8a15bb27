//! What the subject does.

use super::entry::{AtWork, Fault, Impression, Symptom, step};
use crate::bench::look::Spot;
use crate::chain::Voice;
use crate::deed::{Kind, Tell};

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "moving",
        impression: Impression::Jumpy,
        severity: (0.50, 1.00),
        confused_with: &["plug_half_in", "cable_taut", "talking"],
        tests: &[Tell::Does(Kind::AskStill), Tell::Look(Spot::Subject)],
        remedy: &[r#"{"do": "ask_still"}"#, r#"{"wait": 10}"#],
        vain: &[r#"{"do": "low_pass", "hz": 10}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.moves()),
        symptom: Symptom::Movement,
        apply: |s, severity| s.config.trouble.unrest = severity,
    },
    Fault {
        id: "tapping",
        impression: Impression::Jumpy,
        severity: (0.70, 1.00),
        confused_with: &["premature", "moving"],
        tests: &[Tell::Does(Kind::AskStill), Tell::Look(Spot::Subject)],
        remedy: &[r#"{"do": "ask_still"}"#, r#"{"wait": 5}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.78}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.taps()),
        symptom: Symptom::Movement,
        apply: |s, severity| s.config.trouble.tapping = severity,
    },
    Fault {
        id: "talking",
        impression: Impression::Wandering,
        severity: (1.00, 1.00),
        confused_with: &["moving", "breath_drift"],
        tests: &[Tell::Look(Spot::Subject), Tell::Does(Kind::AskQuiet)],
        remedy: &[r#"{"do": "ask_quiet"}"#, r#"{"wait": 30}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.voice() == Voice::Talking),
        symptom: Symptom::Slow,
        apply: |s, _| s.before.push(step(r#"{"do":"manoeuvre","what":"talk"}"#)),
    },
    Fault {
        id: "sighing",
        impression: Impression::Wandering,
        severity: (0.86, 1.00),
        confused_with: &["strap_slips", "finger_cold"],
        tests: &[Tell::Look(Spot::Subject), Tell::Does(Kind::AskQuiet)],
        remedy: &[r#"{"do": "ask_quiet"}"#, r#"{"wait": 40}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.voice() == Voice::Sighing),
        symptom: Symptom::Shrinking,
        apply: |s, severity| {
            s.config.trouble.sighs = severity;
            s.before.push(step(r#"{"wait":20}"#));
        },
    },
    Fault {
        id: "breath_drift",
        impression: Impression::Wandering,
        severity: (0.60, 0.80),
        confused_with: &["talking", "moving"],
        tests: &[Tell::Stretch, Tell::Does(Kind::HighPass), Tell::Look(Spot::Subject)],
        remedy: &[r#"{"do": "high_pass", "hz": 0.5}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| {
            s.chain.config().trouble.breath_drift > 0.3
                && s.chain.settings().high_pass_hz.is_none_or(|hz| hz < 0.5)
        }),
        symptom: Symptom::Slow,
        apply: |s, severity| s.config.trouble.breath_drift = severity,
    },
    Fault {
        id: "trembling",
        impression: Impression::Fuzzy,
        severity: (0.72, 1.00),
        confused_with: &["cable_on_power_strip", "phone_near"],
        tests: &[Tell::Stretch, Tell::Does(Kind::RestArm)],
        remedy: &[r#"{"do": "rest_arm"}"#],
        vain: &[r#"{"do": "notch", "hz": 50}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.tremor() > 0.2),
        symptom: Symptom::Ripple,
        apply: |s, severity| s.config.trouble.tremor = severity,
    },
    Fault {
        id: "premature",
        impression: Impression::Misshapen,
        severity: (0.50, 1.00),
        confused_with: &["tapping", "sighing"],
        tests: &[Tell::Does(Kind::TapSensor), Tell::Stretch],
        remedy: &[r#"{"do": "tell_instructor"}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: false,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.config().subject.premature_per_min.is_some_and(|n| n > 2.0)),
        symptom: Symptom::Uneven,
        apply: |s, severity| {
            s.config.subject.premature_per_min = Some(6.0 + 10.0 * severity);
            s.config.subject.sdnn_ms = Some(30.0);
        },
    },
];
