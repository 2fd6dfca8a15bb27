//! The experiment: what is asked, the table, and what is to be said of it. What the body did itself is told once the attempt is
//! over.

use super::super::attempt::Session;
use super::super::experiment::{Judged, Row};
use crate::experiment::{Condition, Reading, Spec};
use crate::plain::json;
use serde_json::Value;

/// What a scenario tells of its experiment before it is begun.
pub fn asked(spec: &Spec) -> Value {
    let condition = |c: &Condition| {
        json!({
            "id": c.id, "label": c.label, "begins": c.begins.first(), "at_start": c.at_start, "from_s": c.from_s, "to_s": c.to_s,
        })
    };
    json!({
        "question": spec.question, "measures": spec.measures, "repeats": spec.repeats, "window_s": spec.window_s,
        "reasons": spec.reasons, "recovery": spec.recovery,
        "conditions": spec.condition.iter().map(condition).collect::<Vec<_>>(),
    })
}

/// The experiment as it stands; null where the scenario has none.
pub fn experiment(session: &Session) -> Value {
    let Some(spec) = session.experiment() else { return Value::Null };
    let measures = spec.measures.iter();
    let predicted: Vec<Value> = measures
        .clone()
        .filter_map(|m| {
            let p = session.predicted(*m)?;
            Some(json!({"measure": m, "direction": p.direction, "reason": p.reason}))
        })
        .collect();
    let concluded: Vec<Value> = measures
        .clone()
        .filter_map(|m| Some(json!({"measure": m, "direction": session.concluded(*m)?})))
        .collect();
    let contrasts: Vec<Value> = measures
        .filter_map(|m| {
            let c = session.contrast(*m)?;
            Some(json!({
                "measure": m, "first": reading(Some(c.first)), "last": reading(Some(c.last)),
                "difference": reading(Some(c.difference)),
            }))
        })
        .collect();
    let over = session.sheet.over;
    let (judged, remarks) = session.judged_experiment();
    let told: Vec<Value> = judged.iter().map(|j| told(j, over)).collect();
    let remarks: Vec<Value> = remarks.iter().map(|r| json!({"code": r.code, "args": r.args})).collect();
    let fit = session.recovery().map(|f| {
        json!({
            "tau_s": f.tau_s, "low_s": f.low_s, "high_s": f.high_s, "rest": f.rest, "above": f.above, "n": f.n,
        })
    });
    json!({
        "asked": asked(spec),
        "predicted": predicted,
        "may_predict": session.recordings().len() == session.trace.recordings_before,
        "rows": session.rows().iter().map(|r| row(spec, r)).collect::<Vec<_>>(),
        "now": session.condition_now().map(|(k, from_s)| json!({"condition": spec.condition[k].id, "from_s": from_s})),
        "contrasts": contrasts,
        "fit": fit,
        "concluded": concluded,
        "closed": session.is_concluded(),
        "judged": told,
        "remarks": remarks,
        "off": if over { session.rows_off().to_vec() } else { Vec::new() },
    })
}

/// A value with its uncertainty; null where there is none.
fn reading(found: Option<Reading>) -> Value {
    found.map_or(Value::Null, |r| json!({"value": r.value, "u": r.u}))
}

fn row(spec: &Spec, row: &Row) -> Value {
    let (a, b) = row.window;
    json!({
        "condition": spec.condition[row.condition].id, "label": spec.condition[row.condition].label,
        "recording": row.recording, "a": a, "b": b, "since_s": row.since_s,
        "count": Some(row.measured.count).filter(|n| *n > 0.0), "seconds": row.measured.seconds,
        "rate": reading(row.measured.rate), "amplitude": reading(row.measured.amplitude),
        "swing": reading(row.measured.swing), "note": row.note,
    })
}

fn told(judged: &Judged, over: bool) -> Value {
    json!({
        "measure": judged.measure, "said": judged.said, "outcome": judged.outcome.name(),
        "right": judged.outcome.is_right(), "difference": judged.contrast.difference.value,
        "u": judged.contrast.difference.u, "truth": over.then_some(judged.truth),
    })
}
