//! The check of the worksheet: it gathers what was done, has it judged, and keeps back what may not be shown yet.

use super::action::Refusal;
use super::attempt::Session;
use super::course::{self, Entry};
use super::kept_recording::KeptRecording;
use super::own::OwnReading;
use super::truth::Truth;
use super::worksheet::Field;
use crate::assess::Criteria;
use crate::assess::asked;
use crate::assess::misreading::{self, Evidence, Hypothesis, Misreading};
use crate::assess::process::{self, Done, Remark};
use crate::assess::rubric::{self, Facts, Rubric};
use crate::assess::sheet::{Sheet, Written};
use crate::assess::skill::Aid;
use crate::assess::spread::{self, Spread};
use crate::assess::task::Reads;
use crate::assess::trace::{self, Trace};
use crate::assess::verdict::{self, Finding, Reference, Report, Step, Verdict};
use crate::assess::window::{Peak, allowed};
use crate::bench::strap::Feel;
use crate::chain::Chain;
use crate::measure::landmarks::{self, Landmarks};
use crate::plain::json;
use crate::scenario::fault;
use crate::trace::axes;

/// The outcome of a check. It holds what may not be shown yet: what the page sees of it is listed in [`super::view`].
#[derive(Clone, Debug, PartialEq)]
pub struct Checked {
    /// Number of this check, from 1.
    pub tries: u32,
    /// The judged steps.
    pub report: Report,
    /// The well-known misreading that explains what was typed, where one stands out.
    pub misreading: Option<Hypothesis>,
    /// The same, where it is one of the instructor's own: then no other is named.
    pub own: Option<OwnReading>,
    /// Where each step can be seen on the recording, s.
    pub places: Vec<Option<[f64; 2]>>,
    /// How the faults were found and mended.
    pub process: Vec<Remark>,
    /// Faults whose cause was still there.
    pub left: Vec<&'static str>,
    /// Figures of the measured stretch.
    pub trace: Option<Trace>,
    /// What was done, in order.
    pub course: Vec<Entry>,
    /// How sure the count is.
    pub spread: Option<Spread>,
    /// Twenty points.
    pub rubric: Rubric,
    /// Hints asked for so far.
    pub hints: u32,
    /// The true figures, once they may be shown.
    pub truth: Option<Truth>,
}

/// Checks of an attempt; the last closes it.
pub const MOST_CHECKS: u32 = 2;

/// So much of a recording is looked at before and behind what is of interest, s: more than the longest beat.
const ABOUT_S: f64 = 4.0;
/// Most squares of the grid on a screen: on a phone, beside a table, and over a wide page. How wide the trace is drawn is the page's
/// affair; these three give the squares of every usual width (see [`axes::draw`]).
const SQUARES_A_SCREEN: [f64; 3] = [5.0, 10.0, 14.0];

impl Session {
    /// What must be reached.
    pub fn criteria(&self) -> Criteria {
        self.scenario().map_or_else(Criteria::default, |s| s.pass.clone())
    }

    /// The landmarks of the shown recording's beats.
    pub(super) fn landmarks(&self, peaks: &[Peak]) -> Vec<Landmarks> {
        let Some(kept) = self.recording() else { return Vec::new() };
        let recording = &kept.recording;
        let Some((first, last)) = peaks.first().zip(peaks.last()) else { return Vec::new() };
        // A beat's landmarks lie less than this from its own peak or the next one; the filter forgets within a tenth of it.
        let from = recording.sample_at(first.at_s + kept.delay_s - ABOUT_S);
        let to = recording.sample_at(last.at_s + kept.delay_s + ABOUT_S);
        let from_s = from as f64 / recording.rate_hz();
        let times: Vec<f64> = peaks.iter().map(|p| p.at_s + kept.delay_s - from_s).collect();
        let mut found = landmarks::of_beats(&recording.values(from, to), recording.rate_hz(), &times);
        found.iter_mut().for_each(|beat| beat.shift(from_s));
        found
    }

    /// Times of the second bumps that can be seen in and about a window, s. No more of a recording is looked at, since a bump
    /// matters only where a mark may lie on it.
    pub(super) fn bumps(&self, peaks: &[Peak], window: (f64, f64)) -> Vec<f64> {
        self.landmarks(&about(peaks, window)).iter().filter_map(|beat| beat.second_s).collect()
    }

    /// The first of two windows, if it lies on the shown recording.
    pub(super) fn first_window(&self) -> Option<(f64, f64)> {
        self.sheet
            .kept
            .filter(|(_, _, kept)| self.trace.shown_recording == Some(*kept))
            .map(|(a, b, _)| (a, b))
    }

    /// What a check would find now; it counts as no try.
    pub fn preview(&self) -> Option<(Report, Option<Trace>)> {
        if self.sheet.task.reads() == Reads::Nothing {
            return Some((Report::of(self.judge_names().into_iter().collect(), None), None));
        }
        let kept = self.recording()?;
        let power_line_hz = self.chain().map_or(50.0, |c| c.config().power_line.hz);
        // A real recording has its own unit, range and power line: its trace is not judged. Of two windows the worse one is.
        let look = |(a, b)| self.chain().and_then(|_| trace::look(&kept.recording, a, b, power_line_hz));
        let trace = [Some(self.looked_at(kept, kept.window())), self.first_window()]
            .into_iter()
            .flatten()
            .filter_map(look)
            .max_by(|x, y| x.badness().total_cmp(&y.badness()));
        let mut report = self.with_sheet(trace.as_ref(), asked::judge)?;
        if kept.foreign.is_some() {
            report.prepend(verdict::foreign());
        }
        if let Some(named) = self.judge_names() {
            report.prepend(named);
        }
        Some((report, trace))
    }

    /// Everything that was put down about the shown recording, for as long as it is looked at.
    pub(super) fn with_sheet<T>(&self, trace: Option<&Trace>, look: impl FnOnce(&Sheet) -> T) -> Option<T> {
        let kept = self.recording()?;
        let peaks = self.reference_peaks();
        let criteria = self.criteria();
        let ends = kept.a.zip(kept.b);
        let mut sheet = Sheet {
            task: self.sheet.task,
            criteria: &criteria,
            trace,
            cursors: ends,
            first: self.first_window(),
            typed: self.sheet.worksheet.typed(),
            typed_first: self.sheet.worksheet.typed_first(),
            written: Written::of(|field| self.sheet.worksheet.value(field)),
            reference: Reference {
                peaks: &peaks,
                delay_s: kept.delay_s,
                duration_s: kept.recording.duration_s(),
            },
            landmarks: &[],
            values: ends.and_then(|(a, b)| kept.value_at(a).zip(kept.value_at(b))),
            range_v: kept.range_v(),
            exercise_ended_s: kept.exercise_ended_s,
        };
        // To find landmarks takes as long as much else of a check; they are looked for where they matter.
        let mut landmarks: Vec<Landmarks> = match self.sheet.task.reads() {
            Reads::Heights => self.landmarks(&peaks),
            _ => {
                let windows = sheet.asks_for_feet();
                windows.into_iter().flat_map(|window| self.landmarks(&about(&peaks, window))).collect()
            }
        };
        landmarks.sort_by(|x, y| x.peak_s.total_cmp(&y.peak_s));
        sheet.landmarks = &landmarks;
        Some(look(&sheet))
    }

    /// The stretch whose trace is judged: between the cursors; for the height of a beat some beats about it.
    pub(super) fn looked_at(&self, kept: &KeptRecording, window: Option<(f64, f64)>) -> (f64, f64) {
        let duration_s = kept.recording.duration_s();
        match window {
            Some((a, b)) if self.sheet.task.reads() == Reads::Heights => {
                ((a - 4.0).max(0.0), (b + 4.0).min(duration_s))
            }
            Some(window) => window,
            None => (0.0, duration_s),
        }
    }

    /// Whether the faults that were named are those of the scenario, where it asks for names.
    fn judge_names(&self) -> Option<Finding> {
        let scenario = self.scenario().filter(|s| s.name_faults)?;
        let there: Vec<&str> = scenario.fault.iter().map(|f| f.name.as_str()).collect();
        Some(verdict::names(&there, &self.beside(), &self.sheet.named))
    }

    pub(super) fn judge(&mut self) -> Result<(), Refusal> {
        if self.sheet.over {
            return Err(Refusal::AttemptOver {});
        }
        self.judge_again();
        let check = self.checked().ok_or(Refusal::NoRecording {})?;
        self.sheet.over = check.truth.is_some();
        self.sheet.check = Some(check);
        Ok(())
    }

    /// What a check comes to now.
    pub(super) fn checked(&mut self) -> Option<Checked> {
        let (report, trace) = self.preview()?;
        let deeds = self.done();
        let (process, left) = (self.process(&deeds), self.left());
        let own = self.own_reading(&report);
        let misreading = if report.passed || own.is_some() { None } else { self.misreading(&report) };
        let tries = self.sheet.check.as_ref().map_or(0, |c| c.tries) + 1;
        let show = report.passed || tries >= MOST_CHECKS;
        let places = self.places(&report, show);
        self.sheet.wrong.extend(report.steps.iter().filter(|f| f.is_wrong()).map(|f| (f.step, f.code)));
        self.help.hint = None;
        let rubric = self.rubric(&deeds, &report, &process);
        let course = course::of(self, &deeds, report.first_wrong);
        let truth = show.then(|| self.truth());
        let spread = self.spread(Some(&report), show);
        let hints = self.help.hints;
        Some(Checked {
            tries,
            report,
            misreading,
            own,
            places,
            process,
            left,
            trace,
            course,
            spread,
            rubric,
            hints,
            truth,
        })
    }

    /// The misreading that explains what was typed; where none stands out, that the way to it should be shown.
    fn misreading(&self, report: &Report) -> Option<Hypothesis> {
        let found = self.candidates(report)?;
        // These say that a number is wrong, and nothing of how; the others say it themselves.
        let plain = ["count_other", "seconds_wrong", "multiplier_wrong", "rate_arithmetic"];
        let unexplained = || {
            let mut wrong = report.steps.iter().filter(|f| f.verdict == Verdict::Wrong);
            let step = wrong.find(|f| plain.contains(&f.code))?.step;
            Some(Hypothesis { id: Misreading::ShowWork, step, distance: 1.0, args: json!({}) })
        };
        misreading::named(&found, report).cloned().or_else(unexplained)
    }

    /// All misreadings that might explain what was typed and judged so.
    pub fn candidates(&self, report: &Report) -> Option<Vec<Hypothesis>> {
        let kept = self.recording()?;
        let rate_text = self.sheet.worksheet.entry(Field::Rate).text;
        let decimals =
            rate_text.split(['.', ',']).nth(1).map_or(0, |d| d.chars().filter(char::is_ascii_digit).count());
        let power_line_hz = self.chain().map_or(50.0, |c| c.config().power_line.hz);
        let rate_hz = kept.recording.rate_hz();
        let screens_s = [kept.view_s, self.trace.unzoomed_s(), self.trace.time_base_s];
        // A screen that was made to fit the whole recording is read as that, and is no slip of its own.
        let duration_s = kept.recording.duration_s();
        let shows_all = |screen_s: f64| (screen_s - duration_s).abs() < 1.0;
        let squares_s: Vec<f64> =
            screens_s.iter().flat_map(|s| SQUARES_A_SCREEN.map(|most| axes::step(*s, most))).collect();
        self.with_sheet(None, |sheet| {
            let mut evidence = Evidence {
                sheet,
                report,
                bumps: &[],
                marks: &kept.marks,
                rate_decimals: decimals,
                breaths_per_min: self.chain().map_or(15.0, Chain::breaths_per_min),
                power_line_shows_hz: (power_line_hz - (power_line_hz / rate_hz).round() * rate_hz).abs(),
                screens_s: &screens_s.iter().copied().filter(|s| !shows_all(*s)).collect::<Vec<_>>(),
                squares_s: &squares_s,
            };
            let bumps: Vec<f64> = if evidence.asks_for_bumps() {
                let windows = [sheet.window(), sheet.first_window()].into_iter().flatten();
                windows.flat_map(|w| self.bumps(sheet.reference.peaks, w)).collect()
            } else {
                Vec::new()
            };
            evidence.bumps = &bumps;
            misreading::hypotheses(&evidence)
        })
    }

    /// What a check would say of the way of working now.
    pub fn way_of_working(&self) -> Vec<Remark> {
        self.process(&self.done())
    }

    /// How the faults of the scenario were found and mended, from the log.
    fn process(&self, done: &[Done]) -> Vec<Remark> {
        if self.is_pooled() && self.log.cases.is_empty() {
            return process::remarks_on_nothing(done);
        }
        let end_s = self.chain().map_or(0.0, Chain::time_s);
        process::remarks(done, &self.cases_judged(), end_s)
    }

    /// The faults of the scenario whose cause is still there, where they were to be mended: who only names them leaves them.
    fn left(&self) -> Vec<&'static str> {
        self.cases_judged().iter().filter(|c| c.present && c.to_mend).map(|c| c.id).collect()
    }

    pub(super) fn reveal(&mut self) -> Result<(), Refusal> {
        // The true rate is an answer to a check, never a way round it.
        if self.sheet.check.is_none() {
            return Err(Refusal::NotChecked {});
        }
        self.sheet.revealed = true;
        self.sheet.over = true;
        // What was typed since the check has not been judged: the window's own beats speak.
        let (truth, spread, deeds) = (self.truth(), self.spread(None, true), self.done());
        if let Some(check) = self.sheet.check.as_mut() {
            check.truth = Some(truth);
            check.spread = spread;
            check.rubric.bar = Some(rubric::Bar::Shown);
            check.hints = self.help.hints;
        }
        let first_wrong = self.sheet.check.as_ref().and_then(|c| c.report.first_wrong);
        let course = course::of(self, &deeds, first_wrong);
        if let Some(check) = self.sheet.check.as_mut() {
            check.course = course;
        }
        Ok(())
    }

    /// How sure the count is: once count, time and rate hold, or the attempt is over. Before that a band about a wrong count looks
    /// like approval of it. Over a count that does not hold it is worked out from the window's own beats.
    fn spread(&self, report: Option<&Report>, over: bool) -> Option<Spread> {
        if !self.sheet.task.counts_beats() || !(over || report.is_some_and(spread::may_be_told)) {
            return None;
        }
        let kept = self.recording()?;
        let (a, b) = kept.window()?;
        let typed = self.sheet.worksheet.value(Field::Count);
        let own = typed.filter(|_| report.is_some_and(|r| spread::holds(r, Step::Count)));
        let peaks = self.reference_peaks();
        let found = allowed(&peaks, a, b, self.criteria().edge_s, kept.delay_s);
        // Where most beats cannot be told, nor can how sure their number is.
        if found.mostly_unsure() {
            return None;
        }
        let mut found = spread::band(own.unwrap_or(found.exact as f64), b - a)?;
        if over {
            found.others = spread::others(&peaks, kept.delay_s, kept.recording.duration_s(), b - a);
        } else if let Some(rate) = self.sheet.worksheet.value(Field::Rate) {
            found.band.rate = rate;
        }
        Some(found)
    }

    /// What the attempt is about, as far as it decides which points there are.
    fn terms(&self) -> rubric::Terms {
        let asks_anew = |f: &&fault::Fault| matches!(f.id, "stopped_early" | "others_file");
        let mends = self.sheet.task.kind.question().mends();
        let pool = self.scenario().and_then(|s| s.pool.as_ref());
        // What is asked of a bench out of a pool is asked of each of its benches: else it would tell which one this is.
        let own_recording = match pool {
            Some(pool) => !pool.members().iter().any(|f| f.leaves_recording()),
            None => self.trace.recordings_before == 0 || self.log.cases.iter().any(asks_anew),
        };
        rubric::Terms {
            task: self.sheet.task,
            aid: self.help.aid.unwrap_or_default(),
            bench: self.chain().is_some(),
            records: self.sheet.task.reads() != Reads::Nothing && own_recording,
            faults: pool.is_some() || !self.log.cases.is_empty(),
            names: self.scenario().is_some_and(|s| s.name_faults),
            mends,
            tells: pool.is_none() && mends && self.log.cases.iter().any(|c| !c.curable),
        }
    }

    /// What the attempt asks: the rows of the rubric with their points.
    pub fn asked(&self) -> Vec<rubric::AskedRow> {
        rubric::asked(&self.terms())
    }

    fn rubric(&self, done: &[Done], report: &Report, process: &[Remark]) -> Rubric {
        let kept = self.recording();
        rubric::fill_in(&Facts {
            terms: self.terms(),
            criteria: &self.criteria(),
            done,
            report,
            process,
            routed: self.chain().is_some_and(Chain::routed),
            strapped: self.chain().is_some_and(|c| c.bench().strap.feel() == Feel::Snug),
            rate_hz: kept.map_or(0.0, |t| t.recording.rate_hz()),
            views_s: [kept.map_or(0.0, |t| t.view_s), self.trace.unzoomed_s()],
            recording_s: kept.map_or(0.0, |t| t.recording.duration_s()),
            revealed: self.sheet.revealed,
        })
    }

    /// Whether marks between the cursors may be counted for the student.
    pub fn counts_for_you(&self) -> bool {
        let guided = self.scenario().is_none_or(|s| s.help == crate::scenario::schema::Help::Guided);
        self.sheet.over || guided || self.help.aid.unwrap_or_default() != Aid::Alone
    }
}

/// The beats in and about a window.
fn about(peaks: &[Peak], (a, b): (f64, f64)) -> Vec<Peak> {
    peaks.iter().filter(|p| (a - ABOUT_S..=b + ABOUT_S).contains(&p.at_s)).copied().collect()
}
