//! What the page may see of a check. Each field is listed here by its name: what is not listed is not shown, and what tells
//! the truth is shown only when the attempt is over.

use crate::assess::hint::Hint;
use crate::assess::misreading::{Hypothesis, Misreading};
use crate::assess::process::Remark;
use crate::assess::rubric::{Point, Row, Rubric};
use crate::assess::spread::Spread;
use crate::assess::trace::Trace;
use crate::assess::verdict::Finding;
use crate::plain::{json, put};
use crate::session::course::Entry;
use crate::session::judging::Checked;
use crate::session::own::OwnReading;
use crate::session::truth::Truth;
use serde_json::Value;

/// A check. Where a pool draws what is wrong, one remark of a kind says all until the end: two would tell of two causes.
pub(super) fn check(check: &Checked, over: bool, is_pooled: bool) -> Value {
    let report = &check.report;
    let mut process: Vec<Remark> = check.process.clone();
    if is_pooled && !over {
        process.sort_by_key(|r| r.code);
        process.dedup_by_key(|r| r.code);
    }
    json!({
        "try": check.tries,
        "steps": steps(check),
        "first_wrong": report.first_wrong,
        "passed": report.passed,
        "misreading": check.own.as_ref().map(own).or_else(|| check.misreading.as_ref().map(|m| misreading(m, over))),
        "process": list(&process, &|r| remark(r, over)),
        "trace": check.trace.as_ref().map(trace),
        "course": list(&check.course, &entry),
        "spread": check.spread.as_ref().map(|s| spread(s, over)),
        "rubric": rubric(&check.rubric),
        "hints": check.hints,
        "truth": check.truth.as_ref().filter(|_| over).map(truth),
        "over": over,
    })
}

/// A hint.
pub(super) fn hint(hint: &Hint) -> Value {
    let mut shown = json!({"rung": hint.rung, "step": hint.step, "code": hint.code, "args": hint.args});
    put(&mut shown, "locate", hint.locate.as_ref());
    put(&mut shown, "words", hint.words.as_ref());
    shown
}

fn list<T>(items: &[T], shown: &dyn Fn(&T) -> Value) -> Value {
    items.iter().map(shown).collect()
}

/// The judged steps, each with its place on the recording where it has one.
fn steps(check: &Checked) -> Value {
    let one = |(k, finding): (usize, &Finding)| {
        let mut shown = json!({
            "step": finding.step, "verdict": finding.verdict, "code": finding.code, "args": finding.args,
        });
        put(&mut shown, "place", check.places.get(k).copied().flatten());
        shown
    };
    check.report.steps.iter().enumerate().map(one).collect()
}

/// What explains it. Which of the two slips at the ends of a window it is would give the count away.
fn misreading(found: &Hypothesis, over: bool) -> Value {
    let fence = matches!(found.id, Misreading::OneTooMany | Misreading::OneTooFew) && !over;
    let id = if fence { json!("fence") } else { json!(found.id) };
    json!({"id": id, "step": found.step, "distance": found.distance, "args": found.args})
}

/// What of the instructor's own explains it. How far the answer is from its formula would tell what is so.
fn own(found: &OwnReading) -> Value {
    json!({
        "id": found.id(), "step": found.step, "distance": 0.0, "args": {}, "name": found.name, "words": found.words,
    })
}

/// A remark on the way of working. Which fault it is about would be an answer.
fn remark(remark: &Remark, over: bool) -> Value {
    let mut args = json!({});
    let told: &[&'static str] = if over { &["times", "actions", "fault"] } else { &["times", "actions"] };
    for key in told {
        put(&mut args, key, remark.args.get(*key));
    }
    json!({"code": remark.code, "args": args})
}

fn trace(trace: &Trace) -> Value {
    json!({
        "hum_ratio": trace.hum_ratio, "clip_share": trace.clip_share, "fill": trace.fill, "pulse_v": trace.pulse_v,
        "smaller_range_fits": trace.smaller_range_fits, "quality": trace.quality,
    })
}

/// What was done: the student knows it.
fn entry(entry: &Entry) -> Value {
    let mut shown = json!({
        "t_s": entry.t_s, "do": entry.name, "what": entry.what, "times": entry.times, "args": entry.args,
        "log": entry.log,
    });
    put(&mut shown, "recording", entry.recording);
    put(&mut shown, "at_recording_s", entry.at_recording_s);
    put(&mut shown, "wrong", entry.wrong);
    shown
}

/// How sure the student's own count is; what other windows would have given comes from the true beats.
fn spread(spread: &Spread, over: bool) -> Value {
    let band = &spread.band;
    json!({
        "window_s": spread.window_s, "count": spread.count,
        "band": {"rate": band.rate, "low": band.low, "high": band.high},
        "sd": spread.sd, "others": spread.others.as_ref().filter(|_| over),
    })
}

fn rubric(rubric: &Rubric) -> Value {
    json!({
        "total": rubric.total, "of": rubric.of, "got": rubric.got, "possible": rubric.possible,
        "scored": rubric.scored, "ready": rubric.ready(), "bar": rubric.bar, "rows": list(&rubric.rows, &row),
    })
}

fn row(row: &Row) -> Value {
    json!({
        "row": row.row, "got": row.got, "of": row.of, "applies": row.applies, "points": list(&row.points, &point),
    })
}

fn point(point: &Point) -> Value {
    let mut shown = json!({"code": point.code, "got": point.got});
    put(&mut shown, "log", point.log);
    put(&mut shown, "at_s", point.at_s);
    put(&mut shown, "evidence", point.evidence);
    shown
}

fn truth(truth: &Truth) -> Value {
    json!({
        "source": truth.source, "faults": truth.faults, "also": truth.also, "window_rate": truth.window_rate,
        "record_rate": truth.record_rate, "beats_in_window": truth.beats_in_window, "unsure": truth.unsure,
        "beat_times": truth.beat_times, "own_window": truth.own_window, "own_span": truth.own_span,
        "record": truth.record, "range_mv": truth.range_mv, "amplitude_mv": truth.amplitude_mv,
    })
}
