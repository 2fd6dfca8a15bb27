//! The check of the worksheet: it gathers what was done, has it judged, and keeps back what may not be shown yet.

use super::action::{Action, Page, Refusal};
use super::attempt::{Session, World, peaks_of};
use super::course::{self, Entry};
use super::take::Take;
use super::worksheet::Field;
use crate::assess::Criteria;
use crate::assess::asked::{self, Sheet};
use crate::assess::misreading::{self, Evidence, Hypothesis, Misreading};
use crate::assess::process::{self, Deed, Remark};
use crate::assess::rubric::{self, Facts, Rubric};
use crate::assess::skill::{self, Aid, Attempted, Mended};
use crate::assess::spread::{self, Spread};
use crate::assess::task::Kind;
use crate::assess::trace::{self, Trace};
use crate::assess::verdict::{self, Finding, Reference, Report, Step, Verdict};
use crate::assess::window::{Allowed, Peak, allowed, interval_rate};
use crate::bench::strap::Feel;
use crate::chain::Chain;
use crate::measure::landmarks::{self, Landmarks};
use crate::plain::json;
use crate::scenario::fault::{self, Impression};
use serde::Serialize;
use serde_json::Value;

/// The outcome of a check.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Checked {
    /// Number of this check, from 1.
    #[serde(rename = "try")]
    pub tries: u32,
    /// The judged steps.
    #[serde(flatten)]
    pub report: Report,
    /// The well-known misreading that explains what was typed, where one stands out.
    pub misreading: Option<Hypothesis>,
    /// How the faults were found and mended.
    pub process: Vec<Remark>,
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

/// The true figures. Three are kept apart: the beats in the student's own window, the intervals from the first to the last of
/// them, and the whole record.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Truth {
    /// Where the figures come from.
    pub source: Source,
    /// The faults that the scenario put into the bench.
    pub faults: Vec<String>,
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// The simulated heart.
    Heart,
    /// The project's own detector, for recordings whose heart nobody knows.
    Detector,
}

/// So much of a recording is looked at before and behind what is of interest, s: more than the longest beat.
const ABOUT_S: f64 = 4.0;

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
    fn bumps(&self, peaks: &[Peak], (a, b): (f64, f64)) -> Vec<f64> {
        let near: Vec<Peak> =
            peaks.iter().filter(|p| (a - ABOUT_S..=b + ABOUT_S).contains(&p.at_s)).copied().collect();
        self.landmarks(&near).iter().filter_map(|beat| beat.second_s).collect()
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
        let peaks = self.reference_peaks();
        let mains_hz = self.chain().map_or(50.0, |c| c.config().mains.hz);
        let window = take.window();
        let first = self.first_window();
        let duration_s = take.recording.duration_s();
        // A real recording has its own unit, range and mains: its trace is not judged. Of two windows the worse one is.
        let look = |(a, b)| self.chain().and_then(|_| trace::look(&take.recording, a, b, mains_hz));
        let trace = [Some(self.looked_at(take, window)), first]
            .into_iter()
            .flatten()
            .filter_map(look)
            .max_by(|x, y| x.badness().total_cmp(&y.badness()));
        let landmarks = match self.task.kind {
            Kind::ReadRange => self.landmarks(&peaks),
            _ => Vec::new(),
        };
        let criteria = self.criteria();
        let ends = take.a.zip(take.b);
        let mut report = asked::judge(&Sheet {
            task: self.task,
            criteria: &criteria,
            trace: trace.as_ref(),
            cursors: ends,
            first,
            typed: self.worksheet.typed(),
            typed_first: self.worksheet.typed_first(),
            uncertainty: self.worksheet.value(Field::Uncertainty),
            middle: self.worksheet.value(Field::Middle),
            range_mv: self.worksheet.value(Field::Range),
            amplitude_mv: self.worksheet.value(Field::Amplitude),
            reference: Reference { peaks: &peaks, delay_s: take.delay_s, duration_s },
            landmarks: &landmarks,
            values: ends.and_then(|(a, b)| take.value_at(a).zip(take.value_at(b))),
            range_v: take_range_v(take),
            exercise_ended_s: take.exercise_ended_s,
        });
        if take.foreign.is_some() {
            report.prepend(verdict::foreign());
        }
        if let Some(named) = self.judge_names() {
            report.prepend(named);
        }
        Some((report, trace))
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
        Some(verdict::names(&there, &self.named))
    }

    pub(super) fn judge(&mut self) -> Result<(), Refusal> {
        if self.over {
            return Err(Refusal::AttemptOver {});
        }
        let (report, trace) = self.preview().ok_or(Refusal::NoTake {})?;
        let deeds = self.deeds();
        let process = self.process(&deeds);
        let misreading = if report.passed { None } else { self.misreading(&report) };
        let tries = self.check.as_ref().map_or(0, |c| c.tries) + 1;
        let show = report.passed || tries >= 2;
        self.wrong.extend(report.steps.iter().filter(|f| f.is_wrong()).map(|f| (f.step, f.code)));
        self.hint = None;
        let rubric = self.rubric(&deeds, &report, &process);
        let course = course::of(self, &deeds, report.first_wrong);
        let truth = show.then(|| self.truth());
        let spread = self.spread(show);
        self.over = show;
        let hints = self.hints;
        self.check =
            Some(Checked { tries, report, misreading, process, trace, course, spread, rubric, hints, truth });
        Ok(())
    }

    /// The misreading that explains what was typed; where none stands out, that the way to it should be shown.
    fn misreading(&self, report: &Report) -> Option<Hypothesis> {
        if !self.task.counts() {
            return None;
        }
        let found = self.candidates()?;
        let unexplained = || {
            let measured = [Step::Count, Step::Seconds, Step::Multiplier, Step::Rate];
            let wrong =
                report.steps.iter().any(|f| f.verdict == Verdict::Wrong && measured.contains(&f.step));
            wrong.then(|| Hypothesis { id: Misreading::ShowWork, distance: 1.0, args: json!({}) })
        };
        misreading::named(&found).cloned().or_else(unexplained)
    }

    /// All misreadings that might explain what was typed.
    pub fn candidates(&self) -> Option<Vec<Hypothesis>> {
        let take = self.take()?;
        let window = take.window()?;
        let peaks = self.reference_peaks();
        let typed = self.worksheet.typed();
        let rate_text = self.worksheet.entry(Field::Rate).text;
        let decimals =
            rate_text.split(['.', ',']).nth(1).map_or(0, |d| d.chars().filter(char::is_ascii_digit).count());
        let mains_hz = self.chain().map_or(50.0, |c| c.config().mains.hz);
        let rate_hz = take.recording.rate_hz();
        let (a, b) = window;
        let mut allowed = allowed(&peaks, a, b, self.criteria().edge_s, take.delay_s);
        let mut features_off_s = None;
        if self.task.kind == Kind::Intervals
            && let Some((n, off)) = asked::spanned(&peaks, take.delay_s, a, b)
        {
            let n = n as usize;
            allowed = Allowed { exact: n, least: n, most: n };
            features_off_s = Some(off);
        }
        let mut evidence = Evidence {
            peaks: &peaks,
            bumps: &[],
            marks: &take.marks,
            window,
            allowed,
            count: typed.count,
            seconds: typed.seconds,
            multiplier: typed.multiplier,
            rate: typed.rate,
            rate_decimals: decimals,
            breaths_per_min: self.chain().map_or(15.0, Chain::breaths_per_min),
            mains_shows_hz: (mains_hz - (mains_hz / rate_hz).round() * rate_hz).abs(),
            features_off_s,
        };
        let bumps = if evidence.asks_for_bumps() { self.bumps(&peaks, window) } else { Vec::new() };
        evidence.bumps = &bumps;
        let mut found = misreading::hypotheses(&evidence);
        if self.task.kind == Kind::Intervals || self.criteria().window_s < 10.0 {
            // A window as short as the question asks for is no misreading.
            found.retain(|h| !matches!(h.id, Misreading::WindowTooShort | Misreading::SingleInterval));
        }
        Some(found)
    }

    /// What was done, with its time. A sample's length changes with the sampling rate.
    pub(super) fn deeds(&self) -> Vec<Deed> {
        use crate::recorder::settings::Change;
        let mut rate = self.chain().map_or(1000.0, |c| f64::from(c.config().recorder.rate_hz));
        let (mut at, mut at_s) = (0, 0.0);
        self.log
            .iter()
            .map(|logged| {
                at_s += (logged.at - at) as f64 / rate;
                at = logged.at;
                match logged.action {
                    Action::Recorder(Change::Rate { hz }) => rate = f64::from(hz),
                    Action::Page(Page::Help { .. }) => rate = self.rate_after_setup.map_or(rate, f64::from),
                    _ => {}
                }
                Deed { at_s, name: logged.action.name(), action: logged.action.to_value() }
            })
            .collect()
    }

    /// How the faults of the scenario were found and mended, from the log.
    fn process(&self, deeds: &[Deed]) -> Vec<Remark> {
        let Some(scenario) = self.scenario() else { return Vec::new() };
        let faults: Vec<process::Case> = scenario
            .fault
            .iter()
            .filter_map(|spec| fault::named(&spec.name))
            .map(|f| process::Case {
                id: f.id,
                tests: f.tests,
                repairs: f.remedy.iter().filter_map(|r| process::deed_name(r)).collect(),
                present: self.remains(f),
            })
            .collect();
        process::remarks(deeds, &faults)
    }

    /// Whether a fault's cause is still there, where it was to be mended: who only names it leaves it.
    fn remains(&self, f: &fault::Fault) -> bool {
        self.task.kind != Kind::NameFault && f.curable && super::symptom::cause_remains(self, f)
    }

    pub(super) fn reveal(&mut self) -> Result<(), Refusal> {
        // The true rate is an answer to a check, never a way round it.
        if self.check.is_none() {
            return Err(Refusal::NotChecked {});
        }
        self.revealed = true;
        self.over = true;
        let (truth, spread, deeds) = (self.truth(), self.spread(true), self.deeds());
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
        let peaks = self.reference_peaks();
        let window = self.take().and_then(Take::window);
        let (delay_s, duration_s) = self.take().map_or((0.0, 0.0), |t| (t.delay_s, t.recording.duration_s()));
        let exact = window.map(|(a, b)| allowed(&peaks, a, b, self.criteria().edge_s, delay_s).exact);
        let inside = |a: f64, b: f64| {
            peaks.iter().filter(move |p| p.within(a, b)).map(|p| p.at_s).collect::<Vec<f64>>()
        };
        let own_span = window.and_then(|(a, b)| {
            let own = inside(a - delay_s, b - delay_s);
            let (first, last) = (own.first()?, own.last()?);
            let (intervals, seconds) = (own.len() - 1, last - first);
            (intervals > 0).then(|| Intervals { intervals, seconds, rate: 60.0 * intervals as f64 / seconds })
        });
        let whole = inside(0.0, duration_s);
        let record_rate = interval_rate(&peaks, 0.0, duration_s);
        Truth {
            source: if self.chain().is_some() { Source::Heart } else { Source::Detector },
            faults: self
                .scenario()
                .map_or_else(Vec::new, |s| s.fault.iter().map(|f| f.name.clone()).collect()),
            window_rate: window.and_then(|(a, b)| interval_rate(&peaks, a - delay_s, b - delay_s)),
            record_rate,
            beats_in_window: exact,
            unsure: window.map_or(0, |(a, b)| {
                peaks.iter().filter(|p| !p.sure && p.within(a - delay_s, b - delay_s)).count()
            }),
            beat_times: peaks.iter().map(|p| p.at_s + delay_s).collect(),
            own_window: exact.zip(window).filter(|(_, (a, b))| b > a).map(|(beats, (a, b))| Beats {
                beats,
                seconds: b - a,
                rate: 60.0 * beats as f64 / (b - a),
            }),
            own_span,
            record: record_rate.map(|rate| Beats { beats: whole.len(), seconds: duration_s, rate }),
        }
    }

    /// How sure the count is; with other windows of the record only where the truth may be shown.
    fn spread(&self, show: bool) -> Option<Spread> {
        if !self.task.counts() {
            return None;
        }
        let take = self.take()?;
        let (a, b) = take.window()?;
        let mut found = spread::band(self.worksheet.value(Field::Count)?, b - a)?;
        if show {
            let peaks = self.reference_peaks();
            found.others = spread::others(&peaks, take.delay_s, take.recording.duration_s(), b - a);
        }
        Some(found)
    }

    fn rubric(&self, deeds: &[Deed], report: &Report, process: &[Remark]) -> Rubric {
        let take = self.take();
        rubric::fill_in(&Facts {
            deeds,
            report,
            process,
            task: self.task,
            aid: self.aid.unwrap_or_default(),
            bench: self.chain().is_some(),
            routed: self.chain().is_some_and(Chain::routed),
            strapped: self.chain().is_some_and(|c| c.bench().strap.feel() == Feel::Snug),
            rate_hz: take.map_or(0.0, |t| t.recording.rate_hz()),
            views_s: [take.map_or(0.0, |t| t.view_s), self.before_zoom.map_or(self.time_base_s, |z| z.1)],
            take_s: take.map_or(0.0, |t| t.recording.duration_s()),
            label: take.map_or("", |t| t.label.as_str()),
            faults: self.scenario().map_or(0, |s| s.fault.len()),
            names: self.scenario().is_some_and(|s| s.name_faults),
            revealed: self.revealed,
        })
    }

    /// What this attempt says of each skill, for keeping; nothing before a check.
    pub fn evidence(&self) -> Option<Value> {
        let check = self.check()?;
        let scenario = self.scenario()?;
        let did = |name: &str| self.log.iter().any(|l| l.action.name() == name);
        let faults: Vec<Mended> = scenario
            .fault
            .iter()
            .filter_map(|spec| fault::named(&spec.name))
            .filter_map(|f| {
                let named = scenario.name_faults.then(|| self.named.iter().any(|n| n == f.id));
                let gone = !check
                    .process
                    .iter()
                    .any(|r| r.code == "process_cause_remains" && r.args["fault"] == f.id);
                Some(Mended { skill: skill_for(f)?, gone, named })
            })
            .collect();
        let based = did("time_base").then(|| {
            let views = [self.take().map_or(0.0, |t| t.view_s), self.time_base_s];
            views.iter().any(|s| (5.0..=10.0).contains(s))
        });
        let said = skill::evidence(&Attempted {
            aid: self.aid.unwrap_or_default(),
            wrong: &self.wrong,
            last: &check.report,
            faults: &faults,
            recorded: did("record") && self.takes.len() > self.takes_before,
            apart: scenario.bench.start == crate::scenario::schema::Start::Apart,
            ranged: did("range"),
            readable: based,
        });
        let skills: serde_json::Map<String, Value> =
            said.into_iter().map(|(skill, s)| (skill.to_string(), json!(s))).collect();
        Some(json!({
            "v": 1, "scenario": scenario.id, "level": scenario.level, "seed": self.seed().to_string(),
            "mode": self.aid.unwrap_or_default(), "kind": self.task.kind, "passed": check.report.passed,
            "tries": check.tries, "hints": self.hints, "revealed": self.revealed, "over": self.over,
            "misreading": check.misreading.as_ref().map(|m| m.id), "skills": skills,
            "rubric": {"total": check.rubric.total, "ready": check.rubric.ready},
        }))
    }

    /// SHA-256 of the debrief (the check and the hint) as hexadecimal digits; empty before a check.
    pub fn debrief_hash(&self) -> String {
        use sha2::{Digest, Sha256};
        if self.check.is_none() {
            return String::new();
        }
        let view = self.view();
        let text = json!({"check": view["check"], "hint": view["hint"]}).to_string();
        Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// Whether marks between the cursors may be counted for the student.
    pub fn counts_for_you(&self) -> bool {
        let guided = self.scenario().is_none_or(|s| s.help == crate::scenario::schema::Help::Guided);
        self.over || guided || self.aid.unwrap_or_default() != Aid::Alone
    }
}

/// The full-scale range under which a take was recorded, to one side, V.
fn take_range_v(take: &Take) -> f64 {
    take.recording.span_at(0).map_or(1.0, |span| span.code_v * 32768.0)
}

/// The skill that a fault calls for.
fn skill_for(f: &fault::Fault) -> Option<&'static str> {
    Some(match (f.id, f.impression) {
        ("window_misread" | "wrong_multiplier", _) => "arithmetic",
        ("noisy_window", _) => "window",
        (_, Impression::NoUnit) => "link",
        (_, Impression::Flat) => "wiring",
        (_, Impression::Small) => "contact",
        (_, Impression::Cut) => "range",
        (_, Impression::Fuzzy) => "hum",
        (_, Impression::Jumpy | Impression::Wandering) => "motion",
        (_, Impression::Crowded) => "time_base",
        (_, Impression::Paper) => "recording",
        // A wave of another shape has many causes; no one skill stands for them.
        (_, Impression::Misshapen) => return None,
    })
}
