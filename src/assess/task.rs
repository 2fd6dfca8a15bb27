//! What is asked of a student: the kind of question, as a scenario lays it down and as a seed settles it, and the
//! fields of the worksheet that go with it.

pub use crate::deed::{FIELDS, Field};
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// A kind of question.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "TaskKind"))]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Count in a window of one's own choice.
    #[default]
    OwnWindow,
    /// Count in a window of a given length.
    GivenWindow,
    /// Time a given number of intervals.
    Intervals,
    /// Count an irregular pulse, in a longer window.
    Irregular,
    /// Count soon after exercise, in a short window.
    AfterExercise,
    /// Find a stretch that can be measured.
    CleanStretch,
    /// Read the full-scale range and the height of a beat.
    ReadRange,
    /// Say what is wrong with the strip.
    NameFault,
    /// Compare two windows of a take.
    Compare,
}

/// The question as it stands in a scenario file.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct TaskSpec {
    /// The kind of question.
    pub kind: Kind,
    /// Lengths of the given window to draw from, s. In windows of 10, 15 and 25 s no two of the common misreadings give the same
    /// rate (computed; 12, 20 and 30 s make some coincide).
    pub seconds: Option<Vec<f64>>,
    /// Lowest and highest number of intervals to draw from.
    pub n: Option<[u32; 2]>,
    /// Longest window, after exercise or one's own, s.
    pub longest_s: Option<f64>,
    /// Latest middle of a window after the end of exercise, s.
    pub within_s: Option<f64>,
    /// Shortest window on an irregular pulse, s.
    pub at_least_s: Option<f64>,
    /// Faults of the catalogue of which a seed puts one into the bench, to be named.
    pub one_of: Vec<String>,
}

/// The question as a seed settles it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Task {
    /// The kind of question.
    pub kind: Kind,
    /// Length of the given window, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seconds: Option<f64>,
    /// Number of intervals to time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub n: Option<u32>,
    /// Longest window, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub longest_s: Option<f64>,
    /// Latest middle of the window after the end of exercise, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub within_s: Option<f64>,
    /// Shortest window, s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_least_s: Option<f64>,
}

/// Windows to draw from when a scenario names none, s.
const GIVEN_S: [f64; 3] = [10.0, 15.0, 25.0];
/// Numbers of intervals to draw from when a scenario names none.
const INTERVALS: [u32; 2] = [9, 17];

impl TaskSpec {
    /// Names the first value that makes no sense: the field, what stands there, what was expected.
    pub fn check(&self) -> Result<(), (&'static str, String, &'static str)> {
        let misplaced = [
            ("seconds", self.seconds.is_some(), Kind::GivenWindow),
            ("n", self.n.is_some(), Kind::Intervals),
            ("longest_s", self.longest_s.is_some() && self.kind != Kind::OwnWindow, Kind::AfterExercise),
            ("within_s", self.within_s.is_some(), Kind::AfterExercise),
            ("at_least_s", self.at_least_s.is_some(), Kind::Irregular),
            ("one_of", !self.one_of.is_empty(), Kind::NameFault),
        ];
        for (field, given, kind) in misplaced {
            if given && kind != self.kind {
                return Err((field, "a value".into(), "nothing: it belongs to another kind of question"));
            }
        }
        let length = |v: f64| v.is_finite() && (5.0..=120.0).contains(&v);
        if let Some(list) = &self.seconds
            && (list.is_empty() || list.len() > 12 || !list.iter().all(|v| length(*v)))
        {
            return Err(("seconds", format!("{list:?}"), "1 to 12 numbers of seconds from 5 to 120"));
        }
        if let Some([low, high]) = self.n
            && !(2 <= low && low <= high && high <= 100)
        {
            return Err(("n", format!("[{low}, {high}]"), "two whole numbers from 2 to 100, ascending"));
        }
        for (field, value) in
            [("longest_s", self.longest_s), ("within_s", self.within_s), ("at_least_s", self.at_least_s)]
        {
            if let Some(v) = value.filter(|v| !(v.is_finite() && (5.0..=600.0).contains(v))) {
                return Err((field, v.to_string(), "a number of seconds from 5 to 600"));
            }
        }
        Ok(())
    }

    /// The fault that a seed puts into the bench, where there are some to draw from.
    pub fn fault(&self, seed: u64) -> Option<&str> {
        let at = (Stream::new(seed, "task fault").uniform() * self.one_of.len() as f64) as usize;
        self.one_of.get(at).map(String::as_str)
    }

    /// The question that a seed makes of it.
    pub fn settle(&self, seed: u64) -> Task {
        let mut stream = Stream::new(seed, "task");
        let mut pick = |n: usize| ((stream.uniform() * n as f64) as usize).min(n.saturating_sub(1));
        let mut task = Task { kind: self.kind, ..Task::default() };
        match self.kind {
            Kind::GivenWindow => {
                let list = self.seconds.as_deref().unwrap_or(&GIVEN_S);
                task.seconds = list.get(pick(list.len())).copied();
            }
            Kind::Intervals => {
                let [low, high] = self.n.unwrap_or(INTERVALS);
                task.n = Some(low + pick((high - low + 1) as usize) as u32);
            }
            Kind::AfterExercise => {
                task.longest_s = Some(self.longest_s.unwrap_or(15.0));
                task.within_s = Some(self.within_s.unwrap_or(60.0));
            }
            Kind::OwnWindow => task.longest_s = self.longest_s,
            Kind::Irregular => task.at_least_s = Some(self.at_least_s.unwrap_or(30.0)),
            _ => {}
        }
        task
    }
}

impl Task {
    /// The fields of the worksheet, in order.
    pub fn fields(&self) -> &'static [Field] {
        use Field::*;
        match self.kind {
            Kind::OwnWindow | Kind::GivenWindow | Kind::Irregular => {
                &[Count, Seconds, Multiplier, Rate, Uncertainty]
            }
            Kind::Intervals => &[Count, Seconds, Rate, Uncertainty],
            Kind::AfterExercise => &[Count, Seconds, Multiplier, Rate, Middle, Uncertainty],
            Kind::CleanStretch | Kind::NameFault => &[],
            Kind::ReadRange => &[Range, Amplitude],
            Kind::Compare => &[Count1, Seconds1, Rate1, Count, Seconds, Rate, Uncertainty],
        }
    }

    /// The fields that may stay empty.
    pub fn optional(&self) -> &'static [Field] {
        if self.counts() && self.kind != Kind::Compare { &[Field::Uncertainty] } else { &[] }
    }

    /// Whether a rate is worked out, from beats or from intervals.
    pub fn counts(&self) -> bool {
        !matches!(self.kind, Kind::CleanStretch | Kind::NameFault | Kind::ReadRange)
    }

    /// Whether beats are counted in a window; a run of intervals is timed from beat to beat, so that none at its ends is in doubt.
    pub fn counts_beats(&self) -> bool {
        self.counts() && self.kind != Kind::Intervals
    }

    /// Whether a field belongs to it.
    pub fn asks(&self, field: Field) -> bool {
        self.fields().contains(&field)
    }
}
