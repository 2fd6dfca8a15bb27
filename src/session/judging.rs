//! The check of the worksheet: it gathers what was done, has it judged, and keeps back what may not be shown yet.

use super::action::Refusal;
use super::attempt::{Session, World, peaks_of};
use super::course::{self, Entry};
use super::take::Take;
use super::worksheet::Field;
use crate::assess::Criteria;
use crate::assess::asked::{self, Sheet};
use crate::assess::misreading::{self, Evidence, Hypothesis, Misreading};
use crate::assess::process::{self, Done, Remark};
use crate::assess::rubric::{self, Facts, Rubric};
use crate::assess::skill::Aid;
use crate::assess::spread::{self, Spread};
use crate::assess::task::Kind;
use crate::assess::trace::{self, Trace};
use crate::assess::verdict::{self, Finding, Reference, Report, Step, Verdict};
use crate::assess::window::{Peak, allowed, interval_rate};
use crate::bench::strap::Feel;
use crate::chain::Chain;
use crate::measure::landmarks::{self, Landmarks};
use crate::plain::json;
use crate::scenario::fault;
use crate::strip::axes;
use serde::Serialize;

/// The outcome of a check. It holds what may not be shown yet: what the page sees of it is listed in [`super::view`].
#[derive(Clone, Debug, PartialEq)]
pub struct Checked {
    /// Number of this check, from 1.
    pub tries: u32,
    /// The judged steps.
    pub report: Report,
    /// The well-known misreading that explains what was typed, where one stands out.
    pub misreading: Option<Hypothesis>,
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

/// The true figures of what was asked for. Three are kept apart: the beats in the student's own window, the intervals from the first to the last of
/// them, and the whole record.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Truth {
    /// Where the figures come from.
    pub source: Source,
    /// The faults that the scenario put into the bench.
    pub faults: Vec<String>,
    /// Faults whose cause was at work beside those when the attempt began.
    pub also: Vec<&'static str>,
    /// Rate in the student's window, by its intervals, beats/min.
    pub window_rate: Option<f64>,
    /// Rate over the whole record, beats/min.
    pub record_rate: Option<f64>,
    /// Beats in the student's window.
    pub beats_in_window: Option<usize>,
    /// Beats in the student's window beside those, too small or too early to be demanded: they may be counted or left out.
    pub unsure: usize,
    /// Beats of the record, s from its start, as the recorder shows them.
    pub beat_times: Vec<f64>,
    /// Beats in the student's window: 60 n / T.
    pub own_window: Option<Beats>,
    /// Intervals between the first and the last of them: 60 (n - 1) / span.
    pub own_span: Option<Intervals>,
    /// Beats of the whole record.
    pub record: Option<Beats>,
    /// Full-scale range to one side of zero, mV, where it was asked for.
    pub range_mv: Option<f64>,
    /// Height from cursor A to cursor B, mV, where it was asked for.
    pub amplitude_mv: Option<f64>,
}

/// Beats counted in a time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Beats {
    /// Beats.
    pub beats: usize,
    /// Time, s.
    pub seconds: f64,
    /// Rate, beats/min.
    pub rate: f64,
}

/// Intervals in a time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Intervals {
    /// Intervals.
    pub intervals: usize,
    /// Time, s.
    pub seconds: f64,
    /// Rate, beats/min.
    pub rate: f64,
}

/// Where true figures come from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// The simulated heart.
    #[default]
    Heart,
    /// The project's own detector, for recordings whose heart nobody knows.
    Detector,
}

/// So much of a recording is looked at before and behind what is of interest, s: more than the longest beat.
const ABOUT_S: f64 = 4.0;
/// Most squares of the grid on a screen: on a phone, beside a table, and over a wide page. How wide the strip is drawn is the page's
/// affair; these three give the squares of every usual width (see [`axes::draw`]).
const SQUARES_A_SCREEN: [f64; 3] = [5.0, 10.0, 14.0];

impl Session {
    /// The beats of the shown take that its measurement is judged against. The one reader of the truth.
    pub fn reference_peaks(&self) -> Vec<Peak> {
        let Some(take) = self.take() else { return Vec::new() };
        match &self.world {
            World::Bench { chain, .. } => take
                .foreign
                .clone()
                .unwrap_or_else(|| peaks_of(chain, take.start_s, take.recording.duration_s())),
            World::File { detected, .. } => detected.iter().map(|t| Peak { at_s: *t, sure: true }).collect(),
        }
    }

    /// What must be reached.
    pub fn criteria(&self) -> Criteria {
        self.scenario().map_or_else(Criteria::default, |s| s.pass.clone())
    }

    /// The landmarks of the shown take's beats.
    pub(super) fn landmarks(&self, peaks: &[Peak]) -> Vec<Landmarks> {
        let Some(take) = self.take() else { return Vec::new() };
        let recording = &take.recording;
        let Some((first, last)) = peaks.first().zip(peaks.last()) else { return Vec::new() };
        // A beat's landmarks lie less than this from its own peak or the next one; the filter forgets within a tenth of it.
        let from = recording.sample_at(first.at_s + take.delay_s - ABOUT_S);
        let to = recording.sample_at(last.at_s + take.delay_s + ABOUT_S);
        let from_s = from as f64 / recording.rate_hz();
        let times: Vec<f64> = peaks.iter().map(|p| p.at_s + take.delay_s - from_s).collect();
        let mut found = landmarks::of_beats(&recording.values(from, to), recording.rate_hz(), &times);
        found.iter_mut().for_each(|beat| beat.shift(from_s));
        found
    }

    /// Times of the second bumps that can be seen in and about a window, s. No more of a take is looked at, since a bump
    /// matters only where a mark may lie on it.
    fn bumps(&self, peaks: &[Peak], window: (f64, f64)) -> Vec<f64> {
        self.landmarks(&about(peaks, window)).iter().filter_map(|beat| beat.second_s).collect()
    }

    /// The first of two windows, if it lies on the shown take.
    pub(super) fn first_window(&self) -> Option<(f64, f64)> {
        self.kept.filter(|(_, _, take)| self.shown_take == Some(*take)).map(|(a, b, _)| (a, b))
    }

    /// What a check would find now; it counts as no try.
    pub fn preview(&self) -> Option<(Report, Option<Trace>)> {
        if self.task.kind == Kind::NameFault {
            return Some((Report::of(self.judge_names().into_iter().collect(), None), None));
        }
        let take = self.take()?;
        let mains_hz = self.chain().map_or(50.0, |c| c.config().mains.hz);
        // A real recording has its own unit, range and mains: its trace is not judged. Of two windows the worse one is.
        let look = |(a, b)| self.chain().and_then(|_| trace::look(&take.recording, a, b, mains_hz));
        let trace = [Some(self.looked_at(take, take.window())), self.first_window()]
            .into_iter()
            .flatten()
            .filter_map(look)
            .min_by(|x, y| x.quality.total_cmp(&y.quality));
        let mut report = self.with_sheet(trace.as_ref(), asked::judge)?;
        if take.foreign.is_some() {
            report.prepend(verdict::foreign());
        }
        if let Some(named) = self.judge_names() {
            report.prepend(named);
        }
        Some((report, trace))
    }

    /// Everything that was put down about the shown take, for as long as it is looked at.
    fn with_sheet<T>(&self, trace: Option<&Trace>, look: impl FnOnce(&Sheet) -> T) -> Option<T> {
        let take = self.take()?;
        let peaks = self.reference_peaks();
        let criteria = self.criteria();
        let ends = take.a.zip(take.b);
        let mut sheet = Sheet {
            task: self.task,
            criteria: &criteria,
            trace,
            cursors: ends,
            first: self.first_window(),
            typed: self.worksheet.typed(),
            typed_first: self.worksheet.typed_first(),
            uncertainty: self.worksheet.value(Field::Uncertainty),
            middle: self.worksheet.value(Field::Middle),
            range_mv: self.worksheet.value(Field::Range),
            amplitude_mv: self.worksheet.value(Field::Amplitude),
            reference: Reference {
                peaks: &peaks,
                delay_s: take.delay_s,
                duration_s: take.recording.duration_s(),
            },
            landmarks: &[],
            values: ends.and_then(|(a, b)| take.value_at(a).zip(take.value_at(b))),
            range_v: take_range_v(take),
            exercise_ended_s: take.exercise_ended_s,
        };
        // To find landmarks takes as long as much else of a check; they are looked for where they matter.
        let mut landmarks: Vec<Landmarks> = match self.task.kind {
            Kind::ReadRange => self.landmarks(&peaks),
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
    fn looked_at(&self, take: &Take, window: Option<(f64, f64)>) -> (f64, f64) {
        let duration_s = take.recording.duration_s();
        match window {
            Some((a, b)) if self.task.kind == Kind::ReadRange => {
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
        Some(verdict::names(&there, &self.beside(), &self.named))
    }

    pub(super) fn judge(&mut self) -> Result<(), Refusal> {
        if self.over {
            return Err(Refusal::AttemptOver {});
        }
        let (report, trace) = self.preview().ok_or(Refusal::NoTake {})?;
        let deeds = self.done();
        let (process, left) = (self.process(&deeds), self.left());
        let misreading = if report.passed { None } else { self.misreading(&report) };
        let tries = self.check.as_ref().map_or(0, |c| c.tries) + 1;
        let show = report.passed || tries >= 2;
        self.wrong.extend(report.steps.iter().filter(|f| f.is_wrong()).map(|f| (f.step, f.code)));
        self.hint = None;
        let rubric = self.rubric(&deeds, &report, &process);
        let course = course::of(self, &deeds, report.first_wrong);
        let truth = show.then(|| self.truth());
        let spread = self.spread(Some(&report), show);
        self.over = show;
        let hints = self.hints;
        self.check = Some(Checked {
            tries,
            report,
            misreading,
            process,
            left,
            trace,
            course,
            spread,
            rubric,
            hints,
            truth,
        });
        Ok(())
    }

    /// The misreading that explains what was typed; where none stands out, that the way to it should be shown.
    fn misreading(&self, report: &Report) -> Option<Hypothesis> {
        let found = self.candidates(report)?;
        let measured = [
            Step::Count,
            Step::Seconds,
            Step::Multiplier,
            Step::Rate,
            Step::Count1,
            Step::Seconds1,
            Step::Rate1,
        ];
        let unexplained = || {
            let mut wrong = report.steps.iter().filter(|f| f.verdict == Verdict::Wrong);
            let step = wrong.find(|f| measured.contains(&f.step))?.step;
            Some(Hypothesis { id: Misreading::ShowWork, step, distance: 1.0, args: json!({}) })
        };
        misreading::named(&found, report).cloned().or_else(unexplained)
    }

    /// All misreadings that might explain what was typed and judged so.
    pub fn candidates(&self, report: &Report) -> Option<Vec<Hypothesis>> {
        let take = self.take()?;
        let rate_text = self.worksheet.entry(Field::Rate).text;
        let decimals =
            rate_text.split(['.', ',']).nth(1).map_or(0, |d| d.chars().filter(char::is_ascii_digit).count());
        let mains_hz = self.chain().map_or(50.0, |c| c.config().mains.hz);
        let rate_hz = take.recording.rate_hz();
        let screens_s = [take.view_s, self.before_zoom.map_or(self.time_base_s, |z| z.1), self.time_base_s];
        let squares_s: Vec<f64> =
            screens_s.iter().flat_map(|s| SQUARES_A_SCREEN.map(|most| axes::step(*s, most))).collect();
        self.with_sheet(None, |sheet| {
            let mut evidence = Evidence {
                sheet,
                report,
                bumps: &[],
                marks: &take.marks,
                rate_decimals: decimals,
                breaths_per_min: self.chain().map_or(15.0, Chain::breaths_per_min),
                mains_shows_hz: (mains_hz - (mains_hz / rate_hz).round() * rate_hz).abs(),
                screens_s: &screens_s,
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
        let end_s = self.chain().map_or(0.0, Chain::time_s);
        process::remarks(done, &self.cases_judged(), end_s)
    }

    /// The faults of the scenario whose cause is still there, where they were to be mended: who only names them leaves them.
    fn left(&self) -> Vec<&'static str> {
        self.cases_judged().iter().filter(|c| c.present && c.to_mend).map(|c| c.id).collect()
    }

    pub(super) fn reveal(&mut self) -> Result<(), Refusal> {
        // The true rate is an answer to a check, never a way round it.
        if self.check.is_none() {
            return Err(Refusal::NotChecked {});
        }
        self.revealed = true;
        self.over = true;
        // What was typed since the check has not been judged: the window's own beats speak.
        let (truth, spread, deeds) = (self.truth(), self.spread(None, true), self.done());
        if let Some(check) = self.check.as_mut() {
            check.truth = Some(truth);
            check.spread = spread;
            check.rubric.ready = false;
            check.hints = self.hints;
        }
        let first_wrong = self.check.as_ref().and_then(|c| c.report.first_wrong);
        let course = course::of(self, &deeds, first_wrong);
        if let Some(check) = self.check.as_mut() {
            check.course = course;
        }
        Ok(())
    }

    fn truth(&self) -> Truth {
        let mut truth = Truth {
            source: if self.chain().is_some() { Source::Heart } else { Source::Detector },
            faults: self
                .scenario()
                .map_or_else(Vec::new, |s| s.fault.iter().map(|f| f.name.clone()).collect()),
            also: self.beside(),
            ..Truth::default()
        };
        let Some(take) = self.take() else { return truth };
        if self.task.kind == Kind::ReadRange {
            let ends = take.a.zip(take.b).and_then(|(a, b)| take.value_at(a).zip(take.value_at(b)));
            truth.range_mv = Some((1000.0 * take_range_v(take) * 10.0).round() / 10.0);
            truth.amplitude_mv = ends.map(|(a, b)| (10_000.0 * (b - a).abs()).round() / 10.0);
        }
        // Who was asked for no rate is told none.
        if !self.task.counts() {
            return truth;
        }
        let peaks = self.reference_peaks();
        let (delay_s, duration_s) = (take.delay_s, take.recording.duration_s());
        let inside = |a: f64, b: f64| {
            peaks.iter().filter(move |p| p.within(a, b)).map(|p| p.at_s).collect::<Vec<f64>>()
        };
        truth.record_rate = interval_rate(&peaks, 0.0, duration_s);
        let beats = inside(0.0, duration_s).len();
        truth.record = truth.record_rate.map(|rate| Beats { beats, seconds: duration_s, rate });
        truth.beat_times = peaks.iter().map(|p| p.at_s + delay_s).collect();
        let Some((a, b)) = take.window().filter(|(a, b)| b > a) else { return truth };
        let intervals = |intervals: usize, seconds: f64| {
            (intervals > 0).then(|| Intervals { intervals, seconds, rate: 60.0 * intervals as f64 / seconds })
        };
        if self.task.kind == Kind::Intervals {
            // A and B are the ends of the run that was timed; how many beats lie between them was not asked.
            let spanned = asked::spanned(&peaks, delay_s, a, b).map(|(n, _)| n as usize);
            truth.own_span = spanned.and_then(|n| intervals(n, b - a));
            return truth;
        }
        let own = inside(a - delay_s, b - delay_s);
        truth.own_span = own.first().zip(own.last()).and_then(|(x, y)| intervals(own.len() - 1, y - x));
        truth.window_rate = interval_rate(&peaks, a - delay_s, b - delay_s);
        let unsure = |p: &&Peak| !p.sure && p.within(a - delay_s, b - delay_s);
        truth.unsure = peaks.iter().filter(unsure).count();
        let beats = allowed(&peaks, a, b, self.criteria().edge_s, delay_s).exact;
        truth.beats_in_window = Some(beats);
        truth.own_window = Some(Beats { beats, seconds: b - a, rate: 60.0 * beats as f64 / (b - a) });
        truth
    }

    /// How sure the count is: once count, time and rate hold, or the attempt is over. Before that a band about a wrong count looks
    /// like approval of it. Over a count that does not hold it is worked out from the window's own beats.
    fn spread(&self, report: Option<&Report>, over: bool) -> Option<Spread> {
        if !self.task.counts() || !(over || report.is_some_and(spread::may_be_told)) {
            return None;
        }
        let take = self.take()?;
        let (a, b) = take.window()?;
        let typed = self.worksheet.value(Field::Count);
        let own = typed.filter(|_| report.is_some_and(|r| spread::holds(r, Step::Count)));
        let peaks = self.reference_peaks();
        let right = || match self.task.kind {
            Kind::Intervals => asked::spanned(&peaks, take.delay_s, a, b).map(|(n, _)| f64::from(n)),
            _ => Some(allowed(&peaks, a, b, self.criteria().edge_s, take.delay_s).exact as f64),
        };
        let mut found = spread::band(own.or_else(right)?, b - a)?;
        if over {
            found.others = spread::others(&peaks, take.delay_s, take.recording.duration_s(), b - a);
        } else if let Some(rate) = self.worksheet.value(Field::Rate) {
            found.band.rate = rate;
        }
        Some(found)
    }

    /// What the attempt is about, as far as it decides which points there are.
    fn terms(&self) -> rubric::Terms {
        let asks_anew = |f: &&fault::Fault| matches!(f.id, "stopped_early" | "others_file");
        rubric::Terms {
            task: self.task,
            aid: self.aid.unwrap_or_default(),
            bench: self.chain().is_some(),
            records: self.task.kind != Kind::NameFault
                && (self.takes_before == 0 || self.cases.iter().any(asks_anew)),
            faults: !self.cases.is_empty(),
            names: self.scenario().is_some_and(|s| s.name_faults),
            mends: self.task.kind != Kind::NameFault,
        }
    }

    /// What the attempt asks: the rows of the rubric with their points.
    pub fn asked(&self) -> Vec<rubric::AskedRow> {
        rubric::asked(&self.terms())
    }

    fn rubric(&self, done: &[Done], report: &Report, process: &[Remark]) -> Rubric {
        let take = self.take();
        rubric::fill_in(&Facts {
            terms: self.terms(),
            criteria: &self.criteria(),
            done,
            report,
            process,
            routed: self.chain().is_some_and(Chain::routed),
            strapped: self.chain().is_some_and(|c| c.bench().strap.feel() == Feel::Snug),
            rate_hz: take.map_or(0.0, |t| t.recording.rate_hz()),
            views_s: [take.map_or(0.0, |t| t.view_s), self.before_zoom.map_or(self.time_base_s, |z| z.1)],
            take_s: take.map_or(0.0, |t| t.recording.duration_s()),
            revealed: self.revealed,
        })
    }

    /// Whether marks between the cursors may be counted for the student.
    pub fn counts_for_you(&self) -> bool {
        let guided = self.scenario().is_none_or(|s| s.help == crate::scenario::schema::Help::Guided);
        self.over || guided || self.aid.unwrap_or_default() != Aid::Alone
    }
}

/// The beats in and about a window.
fn about(peaks: &[Peak], (a, b): (f64, f64)) -> Vec<Peak> {
    peaks.iter().filter(|p| (a - ABOUT_S..=b + ABOUT_S).contains(&p.at_s)).copied().collect()
}

/// The full-scale range under which a take was recorded, to one side, V.
fn take_range_v(take: &Take) -> f64 {
    take.recording.span_at(0).map_or(1.0, |span| span.code_v * 32768.0)
}
