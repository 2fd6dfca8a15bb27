//! What is asked of a student: the kind of question, as a scenario lays it down and as a seed settles it, and the
//! fields of the worksheet that go with it.

pub use super::kind::{Kind, Reads};
pub use crate::deed::{FIELDS, Field};
use crate::rng::Stream;
use serde::{Deserialize, Serialize};

/// The question as it stands in a scenario file.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct TaskSpec {
    /// The kind of question.
    pub kind: Kind,
    /// Lengths of the given counting window to draw from, s. In those of 10, 15 and 25 s no two of the common misreadings give
    /// the same heart rate (computed; 12, 20 and 30 s make some coincide).
    pub seconds: Option<Vec<f64>>,
    /// Lowest and highest number of beat intervals to draw from.
    pub n: Option<[u32; 2]>,
    /// Longest counting window, after exercise or the student's own, s.
    pub longest_s: Option<f64>,
    /// Latest middle of a counting window after the end of exercise, s.
    pub within_s: Option<f64>,
    /// Shortest counting window on an irregular pulse, s.
    pub at_least_s: Option<f64>,
    /// Faults of the catalogue: the seed puts one of them into the equipment, to be named.
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

impl TaskSpec {
    /// Names the first value that makes no sense: the field, what stands there, what was expected.
    pub fn check(&self) -> Result<(), (&'static str, String, &'static str)> {
        let given = [
            ("seconds", self.seconds.is_some()),
            ("n", self.n.is_some()),
            ("longest_s", self.longest_s.is_some()),
            ("within_s", self.within_s.is_some()),
            ("at_least_s", self.at_least_s.is_some()),
            ("one_of", !self.one_of.is_empty()),
        ];
        let owns = self.kind.question().owns;
        if let Some((field, _)) = given.into_iter().find(|(field, given)| *given && !owns.contains(field)) {
            return Err((field, "a value".into(), "nothing: it belongs to another kind of question"));
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
        self.kind.settle(self, seed)
    }
}

impl Task {
    /// The fields of the worksheet, in order.
    pub fn fields(&self) -> &'static [Field] {
        self.kind.question().fields
    }

    /// The fields that may stay empty.
    pub fn optional(&self) -> &'static [Field] {
        self.kind.question().optional
    }

    /// What is read off the trace.
    pub fn reads(&self) -> Reads {
        self.kind.question().reads
    }

    /// In how many windows something is read.
    pub fn windows(&self) -> usize {
        self.kind.question().windows
    }

    /// Whether a rate is worked out, from beats or from intervals.
    pub fn counts(&self) -> bool {
        self.kind.question().counts()
    }

    /// Whether beats are counted in a window; a run of intervals is timed from beat to beat, so that none at its ends is in doubt.
    pub fn counts_beats(&self) -> bool {
        self.reads() == Reads::Beats
    }

    /// Whether a field belongs to it.
    pub fn asks(&self, field: Field) -> bool {
        self.fields().contains(&field)
    }
}
