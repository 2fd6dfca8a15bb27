//! What comes of the things around: table, computer, plug, settings against hum.

use super::entry::{AtWork, Fault, HUM, Impression, Symptom, read};
use super::noise::lay_on_power_strip;
use crate::bench::look::Spot;
use crate::bench::table::Point;
use crate::bench::wiring::End;
use crate::deed::{Kind, Tell};
use crate::pickup::sensor::{Kind as SensorKind, Shield};
use crate::recorder::settings::RANGES_V;

/// The fan's wave over the pulse above which it is seen (design default).
const BUZZ: f64 = 0.12;
/// Step of the converter over the pulse above which the trace is a staircase (design default).
const STEP: f64 = 0.0155;
/// How near the sampling rate must be to the power line's frequency for hum to come as a slow wave, Hz (design default).
const NEAR_HZ: f64 = 3.0;

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "table_shaken",
        impression: Impression::Jumpy,
        severity: (0.60, 1.00),
        confused_with: &["moving", "tapping", "cable_taut"],
        tests: &[Tell::Does(Kind::AskStill), Tell::Look(Spot::Around), Tell::Does(Kind::RestArm)],
        remedy: &[r#"{"do": "rest_arm"}"#],
        vain: &[r#"{"do": "ask_still"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.shaking_felt()),
        symptom: Symptom::Movement,
        apply: |s, severity| s.config.trouble.shaken = severity,
    },
    Fault {
        id: "cable_on_computer",
        impression: Impression::Fuzzy,
        severity: (0.10, 1.00),
        confused_with: &["cable_on_power_strip", "trembling"],
        tests: &[Tell::Cable, Tell::Look(Spot::Cable), Tell::Stretch],
        remedy: &[r#"{"do": "move", "part": "cable2", "x": 66, "y": 70}"#],
        vain: &[r#"{"do": "notch", "hz": 50}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.fan_share() > BUZZ),
        symptom: Symptom::Buzz,
        apply: |s, severity| {
            s.config.trouble.fan = severity;
            s.config.bench.cable.handles[1] = Point { x: 102.0, y: 42.0 };
        },
    },
    Fault {
        id: "hum_folded",
        impression: Impression::Wandering,
        severity: (0.00, 1.00),
        confused_with: &["breath_drift", "cable_on_power_strip", "sampling_slow"],
        tests: &[Tell::Does(Kind::Rate)],
        remedy: &[
            r#"{"do": "rate", "hz": 1000}"#,
            r#"{"do": "move", "part": "cable1", "x": 44, "y": 66}"#,
            r#"{"do": "move", "part": "cable2", "x": 66, "y": 70}"#,
            // Without a shield there is hum everywhere on the table.
            r#"{"do": "swap_cable"}"#,
        ],
        vain: &[r#"{"do": "high_pass", "hz": 0.1}"#],
        curable: true,
        brings: &["cable_on_power_strip"],
        at_work: AtWork::Is(|s| {
            let set = s.chain.settings();
            let off = f64::from(set.rate_hz) - s.chain.config().power_line.hz;
            off.abs() < NEAR_HZ && !set.anti_alias && s.chain.hum_share() > HUM
        }),
        symptom: Symptom::TwoPulses,
        apply: |s, severity| {
            lay_on_power_strip(s, severity);
            // A film takes more hum than a ceramic disc: so much that it would be all that is seen.
            if s.config.sensor.kind == SensorKind::Ceramic {
                s.config.sensor.shield = Shield::None;
            }
            s.config.recorder.rate_hz = if s.config.power_line.hz < 55.0 { 49 } else { 59 };
            s.config.recorder.anti_alias = false;
        },
    },
    Fault {
        id: "bits_few",
        impression: Impression::Misshapen,
        severity: (1.00, 1.00),
        confused_with: &["range_large", "sampling_slow"],
        tests: &[Tell::Does(Kind::Bits), Tell::Does(Kind::Range)],
        remedy: &[r#"{"do": "bits", "n": 16}"#],
        vain: &[r#"{"do": "rate", "hz": 2000}"#],
        curable: true,
        brings: &[],
        // On a range that is far too large any number of bits is too few: that is the range's fault.
        at_work: AtWork::Is(|s| {
            let (step_v, pulse_v) = (s.chain.step_v(), s.chain.best_pulse_v());
            step_v > STEP * pulse_v && 0.08 * 2.0 * s.chain.settings().range_v <= pulse_v
        }),
        symptom: Symptom::Stairs,
        apply: |s, _| {
            s.config.recorder.bits = 8;
            // The next larger range, as somebody leaves it who has a taller pulse.
            let at = RANGES_V.iter().position(|v| *v == s.config.recorder.range_v).unwrap_or(0);
            s.config.recorder.range_v = RANGES_V[at.saturating_sub(1)];
        },
    },
    Fault {
        id: "bumps_counted",
        impression: Impression::Paper,
        severity: (1.00, 1.00),
        confused_with: &["window_misread", "wrong_multiplier"],
        tests: &[Tell::Does(Kind::Answer), Tell::Stretch],
        remedy: &[r#"{"do": "answer", "field": "count", "text": "@count"}"#],
        vain: &[r#"{"do": "answer", "field": "rate", "text": "75"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Found("count_double"),
        symptom: Symptom::Finding("count_double"),
        apply: |s, _| {
            s.before.extend(read(&[("count", "@count*2"), ("seconds", "15.0"), ("multiplier", "4")]))
        },
    },
    Fault {
        id: "recorder_in_use",
        impression: Impression::NoRecorder,
        severity: (1.00, 1.00),
        confused_with: &["not_rescanned", "charge_port", "data_cable_out", "recorder_off"],
        tests: &[Tell::Look(Spot::Computer), Tell::Does(Kind::Rescan), Tell::Plug(End::DataComputer)],
        remedy: &[r#"{"do": "close_programs"}"#],
        vain: &[r#"{"do": "rescan"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.port_busy()),
        symptom: Symptom::Unseen,
        apply: |s, severity| s.config.trouble.busy = severity,
    },
    Fault {
        id: "plug_damp",
        impression: Impression::Misshapen,
        severity: (0.20, 1.00),
        confused_with: &["high_pass_high", "plug_half_in", "plain_input"],
        tests: &[Tell::Wiggle(End::Sensor), Tell::Look(Spot::Cable), Tell::Does(Kind::HighPass)],
        remedy: &[r#"{"do": "dry_plug"}"#],
        vain: &[r#"{"do": "plug", "end": "sensor", "socket": "in1"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.leaks()),
        symptom: Symptom::Overshoot,
        apply: |s, severity| s.config.trouble.damp = severity,
    },
    Fault {
        id: "light_sensor_dirty",
        impression: Impression::Small,
        severity: (0.10, 1.00),
        confused_with: &["strap_loose", "finger_cold", "range_large"],
        tests: &[Tell::Look(Spot::Sensor), Tell::Does(Kind::PressFinger), Tell::Does(Kind::AskFinger)],
        remedy: &[r#"{"do": "wipe_sensor"}"#],
        vain: &[r#"{"do": "strap", "tightness": 0.76}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.chain.smeared()),
        symptom: Symptom::Weak,
        apply: |s, severity| {
            s.config.sensor.kind = SensorKind::Optical;
            s.config.recorder.range_v = 0.5;
            s.config.trouble.smear = severity;
        },
    },
];
