//! The truth of an attempt, and the one place that reads it. It leaves the core only when the attempt is over.

use super::attempt::{Session, World, peaks_of};
use crate::assess::task::Reads;
use crate::assess::window::{Peak, allowed, interval_rate, spanned};
use serde::Serialize;

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
    /// Intervals between the first and the last beat of the whole record.
    pub record: Option<Intervals>,
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

impl Session {
    /// The beats of the shown recording that its measurement is judged against. The one reader of the truth.
    pub fn reference_peaks(&self) -> Vec<Peak> {
        let Some(kept) = self.recording() else { return Vec::new() };
        match &self.run.world {
            World::Bench { chain, .. } => kept
                .foreign
                .clone()
                .unwrap_or_else(|| peaks_of(chain, kept.start_s, kept.recording.duration_s())),
            World::File(opened) => opened.detected.iter().map(|t| Peak { at_s: *t, sure: true }).collect(),
        }
    }

    pub(super) fn truth(&self) -> Truth {
        let mut truth = Truth {
            source: if self.chain().is_some() { Source::Heart } else { Source::Detector },
            faults: self
                .scenario()
                .map_or_else(Vec::new, |s| s.fault.iter().map(|f| f.name.clone()).collect()),
            also: self.beside(),
            ..Truth::default()
        };
        let Some(kept) = self.recording() else { return truth };
        if self.sheet.task.reads() == Reads::Heights {
            let ends = kept.a.zip(kept.b).and_then(|(a, b)| kept.value_at(a).zip(kept.value_at(b)));
            truth.range_mv = Some((1000.0 * kept.range_v() * 10.0).round() / 10.0);
            truth.amplitude_mv = ends.map(|(a, b)| (10_000.0 * (b - a).abs()).round() / 10.0);
        }
        // Who was asked for no rate is told none.
        if !self.sheet.task.counts() {
            return truth;
        }
        let peaks = self.reference_peaks();
        let (delay_s, duration_s) = (kept.delay_s, kept.recording.duration_s());
        let inside = |a: f64, b: f64| {
            peaks.iter().filter(move |p| p.within(a, b)).map(|p| p.at_s).collect::<Vec<f64>>()
        };
        let intervals = |intervals: usize, seconds: f64| {
            (intervals > 0).then(|| Intervals { intervals, seconds, rate: 60.0 * intervals as f64 / seconds })
        };
        let all = inside(0.0, duration_s);
        truth.record = all.first().zip(all.last()).and_then(|(x, y)| intervals(all.len() - 1, y - x));
        truth.record_rate = interval_rate(&peaks, 0.0, duration_s);
        truth.beat_times = peaks.iter().map(|p| p.at_s + delay_s).collect();
        let Some((a, b)) = kept.window().filter(|(a, b)| b > a) else { return truth };
        if self.sheet.task.reads() == Reads::Intervals {
            // A and B are the ends of the run that was timed; how many beats lie between them was not asked.
            // Where they stand on two features, the beats nearest to them do.
            let at = |t: f64| {
                let sure = peaks.iter().filter(|p| p.sure).map(|p| p.at_s + delay_s);
                sure.min_by(|x, y| (x - t).abs().total_cmp(&(y - t).abs()))
            };
            let edge_s = self.criteria().edge_s;
            truth.own_span = spanned(&peaks, delay_s, a, b).and_then(|(n, off)| {
                let seconds = if off <= edge_s { b - a } else { at(b)? - at(a)? };
                intervals(n as usize, seconds)
            });
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
}
