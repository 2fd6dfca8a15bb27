//! Recording, window and worksheet.

use super::entry::{AtWork, Fault, Impression, Symptom, read, step};
use crate::deed::{Kind, Tell};

/// The entries.
pub(super) const FAULTS: &[Fault] = &[
    Fault {
        id: "not_recording",
        impression: Impression::Paper,
        severity: (1.00, 1.00),
        confused_with: &["paused", "stopped_early"],
        tests: &[Tell::Does(Kind::Show)],
        remedy: &[r#"{"do": "record"}"#, r#"{"wait": 20}"#, r#"{"do": "stop"}"#],
        vain: &[r#"{"do": "time_base", "s": 5}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Is(|s| s.own_recordings == 0),
        symptom: Symptom::NothingSaved,
        apply: |s, _| s.before.push(step(r#"{"wait":8}"#)),
    },
    Fault {
        id: "stopped_early",
        impression: Impression::Paper,
        severity: (1.00, 1.00),
        confused_with: &["not_recording"],
        tests: &[Tell::Does(Kind::OpenRecording), Tell::Does(Kind::Scroll), Tell::Stretch],
        remedy: &[r#"{"do": "record"}"#, r#"{"wait": 20}"#, r#"{"do": "stop"}"#],
        vain: &[r#"{"do": "time_base", "s": 5}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Found("trace_short"),
        symptom: Symptom::Finding("trace_short"),
        apply: |s, _| {
            s.before.extend([
                step(r#"{"wait": 3}"#),
                step(r#"{"do": "record"}"#),
                step(r#"{"wait": 6}"#),
                step(r#"{"do": "stop"}"#),
            ])
        },
    },
    Fault {
        id: "noisy_window",
        impression: Impression::Paper,
        severity: (1.00, 1.00),
        confused_with: &["moving"],
        tests: &[Tell::Does(Kind::Scroll), Tell::Stretch],
        remedy: &[
            r#"{"do": "cursor", "which": "a", "t": 16.5}"#,
            r#"{"do": "cursor", "which": "b", "t": 32.5}"#,
        ],
        vain: &[r#"{"do": "low_pass", "hz": 10}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Found("trace_restless"),
        symptom: Symptom::Finding("trace_restless"),
        apply: |s, _| {
            s.config.trouble.unrest = 1.0;
            s.before.extend([
                step(r#"{"wait": 3}"#),
                step(r#"{"do": "record"}"#),
                step(r#"{"wait": 12}"#),
                step(r#"{"do": "ask_still"}"#),
                step(r#"{"wait": 24}"#),
                step(r#"{"do": "stop"}"#),
                step(r#"{"do": "cursor", "which": "a", "t": 1.0}"#),
                step(r#"{"do": "cursor", "which": "b", "t": 16.5}"#),
            ]);
        },
    },
    Fault {
        id: "window_misread",
        impression: Impression::Paper,
        severity: (1.00, 1.00),
        confused_with: &["wrong_multiplier"],
        tests: &[Tell::Does(Kind::Cursor), Tell::Stretch],
        remedy: &[r#"{"do": "answer", "field": "seconds", "text": "15.0"}"#],
        vain: &[r#"{"do": "answer", "field": "rate", "text": "75"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Found("seconds_wrong"),
        symptom: Symptom::Finding("seconds_wrong"),
        apply: |s, _| s.before.extend(read(&[("count", "@count"), ("seconds", "12"), ("multiplier", "5")])),
    },
    Fault {
        id: "wrong_multiplier",
        impression: Impression::Paper,
        severity: (1.00, 1.00),
        confused_with: &["window_misread"],
        tests: &[Tell::Does(Kind::Answer)],
        remedy: &[r#"{"do": "answer", "field": "multiplier", "text": "60/15"}"#],
        vain: &[r#"{"do": "answer", "field": "rate", "text": "75"}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Found("multiplier_wrong"),
        symptom: Symptom::Finding("multiplier_wrong"),
        apply: |s, _| {
            s.before.extend(read(&[
                ("count", "@count"),
                ("seconds", "15.0"),
                ("multiplier", "6"),
                ("rate", "@count*6"),
            ]))
        },
    },
    Fault {
        id: "others_file",
        impression: Impression::Paper,
        severity: (1.00, 1.00),
        confused_with: &["stopped_early"],
        tests: &[Tell::Does(Kind::OpenRecording)],
        remedy: &[r#"{"do": "record"}"#, r#"{"wait": 20}"#, r#"{"do": "stop"}"#],
        vain: &[r#"{"do": "time_base", "s": 5}"#],
        curable: true,
        brings: &[],
        at_work: AtWork::Found("trace_foreign"),
        symptom: Symptom::Finding("trace_foreign"),
        apply: |s, _| s.foreign_recording = true,
    },
];
