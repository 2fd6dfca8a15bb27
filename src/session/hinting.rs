//! Gives hints: which rung of the ladder, and where on the trace or the worksheet to look.

use super::action::Refusal;
use super::attempt::Session;
use super::right::hundredth;
use super::worksheet::Field;
use crate::assess::hint::{self, Hint, Rung};
use crate::assess::trace;
use crate::assess::verdict::{Finding, Report, Step};
use crate::assess::window::Peak;
use crate::deed::Tell;
use crate::plain::json;
use crate::recorder::settings::RANGES_V;
use crate::scenario::fault;
use serde_json::Value;

impl Session {
    /// The finding that a hint would be about, and the rung it would be given on.
    fn next_hint(&self) -> Option<(Finding, Rung)> {
        let finding = self.check()?.report.first_finding()?.clone();
        let topic = self.topic(&finding);
        let last =
            self.help.rung.filter(|(step, code, _)| (*step, *code) == (finding.step, topic)).map(|r| r.2);
        Some((finding, hint::next(last, self.sheet.over)?))
    }

    /// What a finding's hints are about: a window that is not there is another matter for each kind of question.
    fn topic(&self, finding: &Finding) -> &'static str {
        match hint::topic(finding) {
            "window" => self.sheet.task.kind.question().window_topic,
            topic => topic,
        }
    }

    /// The rung that the next hint would be on; none where there is nothing to tell, or not yet.
    pub fn hint_next(&self) -> Option<Rung> {
        self.next_hint().map(|(_, rung)| rung)
    }

    pub(super) fn give_hint(&mut self) -> Result<(), Refusal> {
        if self.check().is_none() {
            return Err(Refusal::NotChecked {});
        }
        let (finding, rung) = self.next_hint().ok_or(Refusal::NoHint {})?;
        let code = self.topic(&finding);
        let own = self.recording().and_then(|t| t.window()).map(|(a, b)| b - a);
        let args = match rung {
            Rung::Worked => hint::example(own),
            Rung::Answer => self.answer_to(&finding),
            _ => finding.args.clone(),
        };
        let locate =
            (rung == Rung::Locate || rung == Rung::Answer).then(|| self.place_of(&finding)).flatten();
        self.help.rung = Some((finding.step, code, rung));
        self.help.hints += 1;
        let words = self.own_hint(code, finding.step, rung);
        let hint = Hint { rung, step: finding.step, code, args, locate, words };
        self.help.taken.push(hint.clone());
        self.help.hint = Some(hint);
        Ok(())
    }

    /// Where each finding of a check can be seen on the recording: of the trace always, of the rest once the truth may be shown.
    pub(super) fn places(&self, report: &Report, over: bool) -> Vec<Option<[f64; 2]>> {
        let place = |f: &Finding| {
            let told = f.step == Step::Trace
                || (over && matches!(f.step, Step::Count | Step::Count1 | Step::Window));
            let place = self.place_of(f).filter(|_| told && f.is_wrong())?;
            Some([place["from_s"].as_f64()?, place["to_s"].as_f64()?])
        };
        report.steps.iter().map(place).collect()
    }

    /// Where to look: `from_s` and `to_s` on the recording, a cursor, a field, or an action that would tell.
    fn place_of(&self, finding: &Finding) -> Option<Value> {
        let span = |a: f64, b: f64| json!({"from_s": hundredth(a.max(0.0)), "to_s": hundredth(b)});
        let topic = self.topic(finding);
        if topic == "name" {
            // The first test that tells the fault from its look-alikes and has not been done.
            let scenario = self.scenario()?;
            let faults = scenario.fault.iter().filter(|f| !self.sheet.named.contains(&f.name));
            // Where nothing is wrong, a test of what was named instead: it shows that this is not it.
            let named = self.sheet.named.iter().filter(|_| scenario.fault.is_empty());
            let looked_for = faults.map(|f| &f.name).chain(named).filter_map(|name| fault::named(name));
            let mut tests = looked_for.flat_map(|f| f.tests.iter());
            let done = |test: &&Tell| {
                self.log().iter().zip(&self.log.trail).any(|(l, before)| test.is(&l.action, before.from))
            };
            return tests.find(|t| !done(t)).map(|t| json!({"action": t.told()}));
        }
        let kept = self.recording()?;
        let duration_s = kept.recording.duration_s();
        let first = matches!(finding.step, Step::Window1 | Step::Count1 | Step::Seconds1 | Step::Rate1);
        let window = if first { self.first_window() } else { kept.window() };
        let (a, b) = window.unwrap_or((0.0, duration_s));
        let peaks = self.reference_peaks();
        let with = |mut place: Value, name: &str, value: Value| {
            place[name] = value;
            place
        };
        let field = || hint::field(finding.step).map(|f| json!({"field": f}));
        match topic {
            "bumps" => {
                let beats = self.landmarks(&peaks);
                let bump = |t: f64| beats.iter().find(|l| l.second_s.is_some_and(|s| (s - t).abs() < 0.1));
                let marked = kept.marks.iter().filter(|m| **m >= a && **m < b).find_map(|m| bump(*m));
                let any = || beats.iter().find(|l| l.foot_s >= a && l.second_s.is_some_and(|s| s < b));
                // Where no second wave is to be seen, any beat shows how often the line climbs.
                let first = || beats.iter().find(|l| l.foot_s >= a && l.peak_s < b);
                let beat = marked.or_else(any).or_else(first)?;
                Some(span(beat.foot_s, beat.second_s.unwrap_or(beat.peak_s) + 0.15))
            }
            "missed" => {
                let marks: Vec<f64> = kept.marks.iter().copied().filter(|m| *m >= a && *m < b).collect();
                let gap = |w: &&[f64]| w[1] - w[0];
                let widest = marks.windows(2).max_by(|x, y| gap(x).total_cmp(&gap(y)));
                if let Some(w) = widest.filter(|_| marks.len() >= 3) {
                    return Some(span(w[0], w[1]));
                }
                let beats = self.landmarks(&peaks);
                let inside = beats.iter().filter(|l| l.peak_s >= a && l.peak_s < b);
                let smallest = inside.min_by(|x, y| x.height.total_cmp(&y.height))?;
                Some(span(smallest.foot_s - 0.3, smallest.peak_s + 0.6))
            }
            "fence" | "count" => {
                let far = |p: &Peak| {
                    let t = p.at_s + kept.delay_s;
                    (t - a).abs().min((t - b).abs())
                };
                let edge = peaks.iter().min_by(|x, y| far(x).total_cmp(&far(y)))?;
                let t = edge.at_s + kept.delay_s;
                let which = if (t - a).abs() <= (t - b).abs() { "a" } else { "b" };
                Some(with(span(t - 0.5, t + 0.5), "cursor", json!(which)))
            }
            "trace_hum" => Some(span(a, a + 0.5)),
            "trace_clipped" => {
                let from = kept.recording.sample_at(a);
                let codes = &kept.recording.codes()[from..kept.recording.sample_at(b)];
                let at = codes.iter().enumerate().position(|(k, code)| {
                    let bits = kept.recording.span_at(from + k).map_or(16, |s| s.bits);
                    crate::recorder::converter::at_limit(*code, bits)
                })?;
                let t = a + at as f64 / kept.recording.rate_hz();
                Some(span(t - 0.4, t + 0.4))
            }
            // What was not like the rest throughout is seen in its first seconds as well as anywhere.
            "trace_restless" => match (finding.args["from_s"].as_f64(), finding.args["to_s"].as_f64()) {
                (Some(from), Some(to)) => Some(span(from, to)),
                _ => Some(span(a, (a + 4.0).min(b))),
            },
            "trace_size" => {
                let middle = 0.5 * (a + b);
                Some(span(middle - 0.6, middle + 0.6))
            }
            "trace_short" | "trace_foreign" => Some(span(0.0, duration_s)),
            "window_foot_peak" => {
                let which = if finding.code == "window_not_foot" { "a" } else { "b" };
                let at = if which == "a" { kept.a } else { kept.b };
                let place = at.map_or_else(|| json!({}), |t| span(t - 0.5, t + 0.5));
                Some(with(place, "cursor", json!(which)))
            }
            "window_overlap" => {
                let (c, d) = self.first_window()?;
                Some(span(a.max(c), b.min(d)))
            }
            "window" | "window_given" | "window_early" | "window_features" => {
                let place = window.map_or_else(|| json!({}), |(a, b)| span(a, b));
                Some(with(place, "cursor", json!("b")))
            }
            "seconds" => field().map(|f| {
                let place = window.map_or_else(|| json!({}), |(a, b)| span(a, b));
                with(place, "field", f["field"].clone())
            }),
            _ => field(),
        }
    }

    /// The answer to one step. Only for when the truth may be shown.
    fn answer_to(&self, finding: &Finding) -> Value {
        let scenario = self.scenario();
        if finding.step == Step::Name {
            let list: Vec<&str> =
                scenario.map_or_else(Vec::new, |s| s.fault.iter().map(|f| f.name.as_str()).collect());
            return json!({"list": list});
        }
        let criteria = self.criteria();
        let sheet = &self.sheet.worksheet;
        let first = matches!(finding.step, Step::Rate1);
        let (n, t) = if first { (Field::Count1, Field::Seconds1) } else { (Field::Count, Field::Seconds) };
        // Multiplier and rate follow from the student's own numbers.
        let seconds =
            || sheet.value(t).filter(|t| *t > 0.0).or_else(|| self.window_of(t).map(|(a, b)| b - a));
        let value = match finding.step {
            Step::Multiplier => seconds().map(|t| hundredth(60.0 / t)),
            Step::Rate | Step::Rate1 => sheet.value(n).zip(seconds()).map(|(n, t)| (60.0 * n / t).round()),
            Step::Window | Step::Window1 => {
                self.sheet.task.seconds.or(self.sheet.task.at_least_s).or(Some(criteria.window_s))
            }
            Step::Trace if finding.code == "trace_clipped" => {
                let now = self.right(Field::Range).unwrap_or(0.0);
                let larger = RANGES_V.iter().copied().filter(|v| 1000.0 * v > 1.01 * now);
                larger.min_by(f64::total_cmp).map(|v| v * 1000.0)
            }
            Step::Trace if matches!(finding.code, "trace_small" | "trace_tall") => {
                self.fitting_range_v().map(|v| (v * 1000.0).round())
            }
            Step::Trace if finding.code == "trace_short" => Some(criteria.record_s),
            step => hint::field(step).and_then(|field| self.right(field)),
        };
        json!({"value": value})
    }

    /// The smallest range that would hold the recording once the trace is zeroed, V.
    pub(super) fn fitting_range_v(&self) -> Option<f64> {
        let kept = self.recording()?;
        let power_line_hz = self.chain().map_or(50.0, |c| c.config().power_line.hz);
        trace::look(&kept.recording, 0.0, kept.recording.duration_s(), power_line_hz)?.fitting_v
    }
}
