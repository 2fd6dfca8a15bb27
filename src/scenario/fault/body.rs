//! What comes of people's bodies: a pressed forearm, a helper's pulse, a heart that follows the breath or has just worked.

use super::entry::{AtWork, Fault, Impression, Symptom, step};
use crate::bench::look::Spot;
use crate::deed::{Kind, Tell};
use crate::plain::json;

/// Rate over the resting one above which a subject is not rested (design default).
const RAISED: f64 = 1.17;

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "sleeve_tight",
        impression: Impression::Small,
        severity: (0.20, 1.00),
        confused_with: &["strap_tight", "finger_cold", "hand_low"],
        tests: &[Tell::Look(Spot::Subject), Tell::Does(Kind::AskFinger), Tell::Does(Kind::Strap)],
        remedy: &[r#"{"do": "push_up_sleeve"}"#, r#"{"wait": 20}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.66}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.sleeve_tight()),
        symptom: Symptom::Weak,
        apply: |s, severity| s.config.trouble.sleeve = severity,
    },
    Fault {
        id: "thumb_on_sensor",
        impression: Impression::Misshapen,
        severity: (0.30, 1.00),
        confused_with: &["premature", "tapping", "moving"],
        tests: &[Tell::Look(Spot::Sensor), Tell::Does(Kind::AskStill)],
        remedy: &[r#"{"do": "strap", "tightness": 0.72}"#],
        vain: &[r#"{"do": "low_pass", "hz": 10}"#],
        curable: true,
        brings: &["strap_loose"],
        at_work: AtWork::Is(|s| s.chain.thumb_felt()),
        symptom: Symptom::TwoPulses,
        apply: |s, severity| {
            s.config.trouble.thumb = severity;
            s.config.bench.strap.tightness = 0.3;
        },
    },
    Fault {
        id: "breath_rhythm",
        impression: Impression::Misshapen,
        severity: (0.00, 1.00),
        confused_with: &["premature"],
        tests: &[Tell::Look(Spot::Subject), Tell::Stretch],
        remedy: &[r#"{"do": "record"}"#, r#"{"wait": 60}"#, r#"{"do": "stop"}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: false,
        brings: &[],
        at_work: AtWork::Is(|s| {
            let who = &s.chain.config().subject;
            who.sdnn_ms.is_some_and(|ms| ms >= 100.0) && who.lf_hf.is_some_and(|share| share < 0.3)
        }),
        symptom: Symptom::Swinging,
        apply: |s, severity| {
            // Young people who breathe slowly and deeply: the rate swings by 15 to 25 beats/min (Ewing 1985, from memory).
            s.config.subject.sdnn_ms = Some(124.0 + 26.0 * severity);
            s.config.subject.lf_hf = Some(0.08);
            s.config.subject.breaths_per_min = Some(8.0);
        },
    },
    Fault {
        id: "not_rested",
        impression: Impression::Crowded,
        severity: (0.40, 1.00),
        confused_with: &["talking"],
        tests: &[Tell::Does(Kind::Manoeuvre), Tell::Does(Kind::Record)],
        remedy: &[r#"{"do": "manoeuvre", "what": "rest"}"#, r#"{"wait": 300}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: true,
        brings: &[],
        // Where the exercise is what the scenario asks about, it is no fault.
        at_work: AtWork::Is(|s| s.chain.config().trouble.hurried > 0.0 && s.chain.rate_over_rest() > RAISED),
        symptom: Symptom::Raised,
        apply: |s, severity| {
            s.config.trouble.hurried = severity;
            let run = json!({"exercise": {"seconds": 60.0, "effort": 0.36 + 0.09 * severity}});
            s.before.extend([json!({"do": "manoeuvre", "what": run}), step(r#"{"wait": 64}"#)]);
        },
    },
];
