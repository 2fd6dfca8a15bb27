//! The experiment of an attempt: what was expected, the table of counting windows, what was concluded. Everything follows from
//! the log, so that a replay has the same table.

use super::action::{Page, Refusal};
use super::attempt::{MOST_TEXT, Session, peaks_of};
use super::kept_recording::KeptRecording;
use super::worksheet::Field;
use crate::assess::window::allowed;
use crate::deed::{Action, Direction, Measure};
use crate::experiment::contrast::{Contrast, Reading, by_itself};
use crate::experiment::fit::{self, Fit, Point};
use crate::experiment::judge::{self, Outcome, Remark, Seen};
use crate::experiment::spec::MOST_ROWS;
use crate::experiment::{Measured, Spec};
use crate::measure::detect;
use crate::physiology::Manoeuvre;
use crate::trace::charts::table::{Dot, Table};
use std::collections::BTreeMap;

/// Shortest counting window that is written down, s.
pub const SHORTEST_S: f64 = 5.0;
/// Longest reason and longest note, characters.
pub const LONGEST_NOTE: usize = 160;
/// So much of a recording is looked at before and behind a window, s: the detector settles and beats at the ends are whole.
const ABOUT_S: f64 = 6.0;
/// By how much a condition may begin later than a window, s: a hand that clicks.
const SLACK_S: f64 = 0.2;

/// What was expected of a measure.
#[derive(Clone, Debug, PartialEq)]
pub struct Predicted {
    /// What becomes of it.
    pub direction: Direction,
    /// Why.
    pub reason: String,
}

/// A row of the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The condition's number.
    pub condition: usize,
    /// The recording's number.
    pub recording: usize,
    /// The window on it, s.
    pub window: (f64, f64),
    /// When it began, s on the world's clock.
    pub at_s: f64,
    /// Middle of the window, s after the condition began (after the end of exercise, where it is one); `None` where the bench
    /// was found in the condition.
    pub since_s: Option<f64>,
    /// What was worked out.
    pub measured: Measured,
    /// The student's note.
    pub note: String,
}

/// What is to be said of a measure.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// Of what.
    pub measure: Measure,
    /// What was concluded.
    pub said: Direction,
    /// How it went.
    pub outcome: Outcome,
    /// The difference in the table.
    pub contrast: Contrast,
    /// The difference in the body itself, in the same windows.
    pub truth: f64,
}

/// The state of an experiment.
#[derive(Clone, Debug, Default)]
pub(super) struct Lab {
    predicted: BTreeMap<Measure, Predicted>,
    rows: Vec<Row>,
    concluded: BTreeMap<Measure, Direction>,
    /// Conditions that were begun, with the time from which they count, s.
    begun: Vec<(usize, f64)>,
    judged: Vec<Judged>,
    remarks: Vec<Remark>,
    /// Rows whose count is not that of the beats.
    off: Vec<usize>,
}

impl Session {
    /// The experiment of the scenario.
    pub fn experiment(&self) -> Option<&Spec> {
        self.scenario().and_then(|s| s.experiment.as_ref())
    }

    /// What was expected of a measure.
    pub fn predicted(&self, measure: Measure) -> Option<&Predicted> {
        self.lab.predicted.get(&measure)
    }

    /// The table.
    pub fn rows(&self) -> &[Row] {
        &self.lab.rows
    }

    /// What was concluded of a measure.
    pub fn concluded(&self, measure: Measure) -> Option<Direction> {
        self.lab.concluded.get(&measure).copied()
    }

    /// What is to be said of the conclusions, once all are there.
    pub fn judged_experiment(&self) -> (&[Judged], &[Remark]) {
        (&self.lab.judged, &self.lab.remarks)
    }

    /// Rows whose count is not that of the beats, once the table is closed.
    pub fn rows_off(&self) -> &[usize] {
        &self.lab.off
    }

    /// Whether everything that is asked has been concluded.
    pub fn is_concluded(&self) -> bool {
        self.experiment().is_some_and(|spec| spec.measures.iter().all(|m| self.lab.concluded.contains_key(m)))
    }

    /// Whether everything that is asked has been predicted; true where nothing is.
    pub fn is_predicted(&self) -> bool {
        self.experiment().is_none_or(|spec| spec.measures.iter().all(|m| self.lab.predicted.contains_key(m)))
    }

    /// The condition that runs, and from when it counts, s on the world's clock (later than now while the subject exercises); no time
    /// where the bench was found in it. `None` before the first of an experiment whose bench is found in none.
    pub fn condition_now(&self) -> Option<(usize, Option<f64>)> {
        let found = || self.experiment()?.condition.iter().position(|c| c.at_start);
        let begun = self.lab.begun.last().map(|(k, from_s)| (*k, Some(*from_s)));
        begun.or_else(|| Some((found()?, None)))
    }

    /// What an experiment asks for before an action: an expectation before the first recording, a conclusion before the check.
    pub(super) fn experiment_allows(&self, page: &Page) -> Result<(), Refusal> {
        match page {
            Page::Record {} if !self.is_predicted() => Err(Refusal::PredictFirst {}),
            Page::Check {} if self.experiment().is_some() && !self.is_concluded() => {
                Err(Refusal::ConcludeFirst {})
            }
            _ => Ok(()),
        }
    }

    /// Notes that an action has begun a condition.
    pub(super) fn notice(&mut self, action: &Action, now_s: f64) {
        let Some(condition) = self.experiment().and_then(|spec| spec.begun_by(action)) else { return };
        let lasts_s = match action {
            Action::Page(Page::Manoeuvre { what: Manoeuvre::Exercise { seconds, .. } }) => *seconds,
            _ => 0.0,
        };
        self.lab.begun.push((condition, now_s + lasts_s));
    }

    /// Does what is done in an experiment.
    pub(super) fn on_experiment(&mut self, page: &Page) -> Result<(), Refusal> {
        let spec = self.experiment().cloned().ok_or(Refusal::NotAsked {})?;
        let asked = |measure: &Measure| -> Result<Measure, Refusal> {
            let names: Vec<&str> = spec.measures.iter().map(|m| m.name()).collect();
            let refused = Refusal::BadValue { field: "measure", expected: names.join(", ") };
            spec.measures.contains(measure).then_some(*measure).ok_or(refused)
        };
        if let Page::RowNote { row, text } = page {
            let text = short(text)?;
            self.lab.rows.get_mut(*row).ok_or(Refusal::NoRow {})?.note = text;
            return Ok(());
        }
        if self.sheet.over || self.is_concluded() {
            return Err(Refusal::AttemptOver {});
        }
        match page {
            Page::Predict { measure, direction, reason } => {
                let measure = asked(measure)?;
                if self.recordings().len() > self.trace.recordings_before {
                    return Err(Refusal::TooLate {});
                }
                let predicted = Predicted { direction: *direction, reason: short(reason)? };
                self.lab.predicted.insert(measure, predicted);
            }
            Page::AddRow { condition } => {
                let row = self.row(&spec, condition)?;
                self.lab.rows.push(row);
            }
            Page::RemoveRow { row } => {
                if *row >= self.lab.rows.len() {
                    return Err(Refusal::NoRow {});
                }
                self.lab.rows.remove(*row);
            }
            Page::Conclude { measure, direction } => {
                let measure = asked(measure)?;
                for end in [0, spec.condition.len() - 1] {
                    if self.readings(end, measure).is_empty() {
                        return Err(Refusal::RowsMissing { condition: spec.condition[end].label.clone() });
                    }
                }
                self.lab.concluded.insert(measure, *direction);
                if self.is_concluded() {
                    self.judge_experiment(&spec);
                }
            }
            _ => {}
        }
        Ok(())
    }

    /// A row out of the window between the cursors.
    fn row(&self, spec: &Spec, id: &str) -> Result<Row, Refusal> {
        let condition = spec.number(id).ok_or_else(|| {
            let known: Vec<&str> = spec.condition.iter().map(|c| c.id.as_str()).collect();
            Refusal::BadValue { field: "condition", expected: known.join(", ") }
        })?;
        if self.lab.rows.len() >= MOST_ROWS {
            return Err(Refusal::OutOfRange { field: "rows", min: 0.0, max: MOST_ROWS as f64 });
        }
        let recording = self.trace.shown_recording.ok_or(Refusal::NoRecording {})?;
        let kept = self.recording().ok_or(Refusal::NoRecording {})?;
        let (a, b) = kept.window().ok_or(Refusal::NoWindow {})?;
        if b - a < SHORTEST_S {
            return Err(Refusal::TooNarrow { least: SHORTEST_S });
        }
        let (at_s, since_s) = self.in_condition(spec, condition, kept.start_s + a, kept.start_s + b)?;
        let shared = |(c, d): (f64, f64)| (b.min(d) - a.max(c)).max(0.0);
        let mostly = |r: &Row| {
            r.recording == recording && shared(r.window) > 0.5 * (b - a).min(r.window.1 - r.window.0)
        };
        if let Some(row) = self.lab.rows.iter().position(mostly) {
            return Err(Refusal::RowThere { row: row + 1 });
        }
        let typed = self.sheet.worksheet.value(Field::Count).filter(|n| *n > 0.0 && *n < 1000.0);
        let marked = (kept.marks_in_window() > 0).then(|| kept.marks_in_window() as f64);
        let count = typed.or(marked);
        if count.is_none() && spec.measures.contains(&Measure::Rate) {
            return Err(Refusal::NoCount {});
        }
        let count = count.unwrap_or(0.0);
        let measured = stretch(kept, (a, b), count, None);
        Ok(Row { condition, recording, window: (a, b), at_s, since_s, measured, note: String::new() })
    }

    /// Whether a window lies in a condition: its begin, and its middle since the condition began.
    fn in_condition(
        &self,
        spec: &Spec,
        number: usize,
        a_s: f64,
        b_s: f64,
    ) -> Result<(f64, Option<f64>), Refusal> {
        let condition = &spec.condition[number];
        let outside = || Refusal::OtherCondition {
            condition: condition.label.clone(),
            from_s: condition.from_s,
            to_s: condition.to_s,
        };
        let last = self.lab.begun.iter().rev().find(|(_, from_s)| *from_s <= a_s + SLACK_S);
        // Whoever has begun something that has not come to its start yet (exercise) is in no condition any more.
        let under_way = self
            .lab
            .begun
            .iter()
            .any(|(k, from_s)| *from_s > a_s + SLACK_S && self.asked_before(*k, *from_s, a_s));
        // What begins while the window runs ends it.
        let cut = self.lab.begun.iter().any(|(_, from_s)| *from_s > a_s + SLACK_S && *from_s < b_s - SLACK_S);
        if under_way || cut {
            return Err(outside());
        }
        match last {
            None if condition.at_start => Ok((a_s, None)),
            Some((k, from_s)) if *k == number => {
                if a_s + SLACK_S < from_s + condition.from_s || b_s - SLACK_S > from_s + condition.to_s {
                    return Err(outside());
                }
                Ok((a_s, Some(0.5 * (a_s + b_s) - from_s)))
            }
            _ => Err(outside()),
        }
    }

    /// Whether what counts from `from_s` on was asked of the subject before `now_s`.
    fn asked_before(&self, condition: usize, from_s: f64, now_s: f64) -> bool {
        let Some(spec) = self.experiment() else { return false };
        let lasts = spec.condition[condition].deeds().find_map(|deed| match deed {
            Action::Page(Page::Manoeuvre { what: Manoeuvre::Exercise { seconds, .. } }) => Some(seconds),
            _ => None,
        });
        lasts.is_some_and(|s| from_s - s <= now_s + SLACK_S)
    }

    /// The readings of a condition with the lengths of their windows.
    fn readings(&self, condition: usize, measure: Measure) -> Vec<(Reading, f64)> {
        let rows = self.lab.rows.iter().filter(|r| r.condition == condition);
        rows.filter_map(|r| Some((r.measured.get(measure)?, r.measured.seconds))).collect()
    }

    /// The last condition beside the first, as the table has them.
    pub fn contrast(&self, measure: Measure) -> Option<Contrast> {
        let last = self.experiment()?.condition.len() - 1;
        Contrast::of(measure, &self.readings(0, measure), &self.readings(last, measure))
    }

    /// The recovery that the table shows, where one is asked for.
    pub fn recovery(&self) -> Option<Fit> {
        let spec = self.experiment().filter(|s| s.recovery)?;
        let last = spec.condition.len() - 1;
        let point = |row: &Row| {
            let reading = row.measured.rate?;
            let own = by_itself(Measure::Rate, reading.value, row.measured.seconds);
            let t_s = if row.condition == last { Some(row.since_s?) } else { None };
            Some(Point { t_s, rate: reading.value, u: (reading.u * reading.u + own * own).sqrt() })
        };
        let rows = self.lab.rows.iter().filter(|r| r.condition == 0 || r.condition == last);
        fit::recovery(&rows.filter_map(point).collect::<Vec<_>>())
    }

    /// The table's chart of a measure: over time where a recovery is asked for, by condition else; `None` while there is nothing to
    /// draw.
    pub fn table_chart(&self, measure: Measure) -> Option<Table> {
        let spec = self.experiment()?;
        let dot = |row: &Row| {
            let reading = row.measured.get(measure)?;
            Some(Dot { condition: row.condition, t_s: row.since_s, value: reading.value, u: reading.u })
        };
        let dots: Vec<Dot> = self.lab.rows.iter().filter_map(dot).collect();
        if !(spec.recovery && measure == Measure::Rate) {
            return Table::beside(&dots, spec.condition.len());
        }
        let fit = self.recovery();
        Table::over_time(&dots, |t| fit.map(|f| f.rate(t)))
    }

    /// What a window holds in truth.
    fn true_of(&self, row: &Row) -> Option<Measured> {
        let (chain, kept) = (self.chain()?, self.recordings().get(row.recording)?);
        let peaks = peaks_of(chain, kept.start_s, kept.recording.duration_s());
        let beats: Vec<f64> = peaks.iter().map(|p| p.at_s + kept.delay_s).collect();
        let (a, b) = row.window;
        let mut found = stretch(kept, row.window, row.measured.count, Some(&beats));
        // Between beats a rate is not a whole number of beats in a window.
        let inside: Vec<f64> = beats.iter().copied().filter(|t| (a..b).contains(t)).collect();
        if let (Some(first), Some(last), true) = (inside.first(), inside.last(), inside.len() > 2) {
            let value = 60.0 * (inside.len() - 1) as f64 / (last - first);
            found.rate = Some(Reading { value, u: 0.0 });
        }
        let exact = allowed(&peaks, a, b, self.criteria().edge_s, kept.delay_s);
        found.count = exact.exact as f64;
        Some(found)
    }

    fn judge_experiment(&mut self, spec: &Spec) {
        let last = spec.condition.len() - 1;
        let truths: Vec<Option<Measured>> = self.lab.rows.iter().map(|row| self.true_of(row)).collect();
        let true_mean = |condition: usize, measure: Measure| {
            let of = self.lab.rows.iter().zip(&truths).filter(|(row, _)| row.condition == condition);
            let values: Vec<f64> = of.filter_map(|(_, t)| Some(t.as_ref()?.get(measure)?.value)).collect();
            (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
        };
        let judged = spec.measures.iter().filter_map(|measure| {
            let contrast = self.contrast(*measure)?;
            let truth = true_mean(last, *measure)? - true_mean(0, *measure)?;
            let said = self.concluded(*measure)?;
            let outcome = judge::conclusion(said, truth, contrast.difference.u, contrast.expected_u);
            Some(Judged { measure: *measure, said, outcome, contrast, truth })
        });
        let judged: Vec<Judged> = judged.collect();
        let seen: Vec<Seen> = self
            .lab
            .rows
            .iter()
            .map(|row| Seen {
                condition: row.condition,
                seconds: row.measured.seconds,
                at_s: row.at_s,
                reading: spec.measures.first().and_then(|m| row.measured.get(*m)),
            })
            .collect();
        let first = judged.first().map(|j| &j.contrast);
        let remarks = judge::remarks(&seen, last, spec.window_s, spec.repeats, first);
        // A beat on a cursor may be counted or not.
        let is_off = |(row, truth): (&Row, &Option<Measured>)| {
            let counted = row.measured.count > 0.0;
            counted && truth.as_ref().is_none_or(|t| (t.count - row.measured.count).abs() > 1.0)
        };
        let off = (0..truths.len()).filter(|k| is_off((&self.lab.rows[*k], &truths[*k]))).collect();
        (self.lab.judged, self.lab.remarks, self.lab.off) = (judged, remarks, off);
    }
}

/// A text that is kept.
fn short(text: &str) -> Result<String, Refusal> {
    if text.chars().count() > MOST_TEXT {
        return Err(Refusal::TextTooLong { max: MOST_TEXT });
    }
    Ok(text.trim().chars().take(LONGEST_NOTE).collect())
}

/// Works out a window of a recording; `beats` (s from its start) are those that the detector finds, unless they are known.
fn stretch(kept: &KeptRecording, (a, b): (f64, f64), count: f64, beats: Option<&[f64]>) -> Measured {
    let recording = &kept.recording;
    let (from, to) = (recording.sample_at((a - ABOUT_S).max(0.0)), recording.sample_at(b + ABOUT_S));
    let start_s = from as f64 / recording.rate_hz();
    let values = recording.values(from, to);
    let beats = match beats {
        Some(known) => known.iter().map(|t| t - start_s).collect(),
        None => detect::detect(&values, recording.rate_hz()),
    };
    Measured::of(count, b - a, &values, recording.rate_hz(), &beats, a - start_s)
}
