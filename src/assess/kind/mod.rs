//! The kinds of question: one file a kind, each saying all that is special about it. Everything else asks for its
//! [`Question`] and matches no kind.

mod after_exercise;
mod clean_part;
mod compare;
mod intervals;
mod name_fault;
mod read_range;
mod windows;

use super::Criteria;
use super::rubric::PointOf;
use super::sheet::Sheet;
use super::task::{Task, TaskSpec};
use super::verdict::Finding;
use crate::deed::Field;
use crate::plain::json;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};
use serde_json::Value;

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
    CleanPart,
    /// Read the full-scale range and the height of a beat.
    ReadRange,
    /// Say what is wrong with the trace.
    NameFault,
    /// Compare two windows of a recording.
    Compare,
}

/// All kinds, as an instructor chooses from them.
pub const KINDS: [Kind; 9] = [
    Kind::OwnWindow,
    Kind::GivenWindow,
    Kind::Intervals,
    Kind::Irregular,
    Kind::AfterExercise,
    Kind::CleanPart,
    Kind::ReadRange,
    Kind::NameFault,
    Kind::Compare,
];

/// What is read off the trace.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Reads {
    /// Beats are counted in a window, and a rate is worked out.
    Beats,
    /// Intervals are timed from beat to beat, and a rate is worked out.
    Intervals,
    /// Heights.
    Heights,
    /// Nothing: a stretch is found.
    Stretch,
    /// Nothing at all: no recording is needed.
    Nothing,
}

/// A line of what a reading needs: a code and its numbers, for the page to put into words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Needs {
    /// Its code.
    pub code: &'static str,
    /// Its numbers.
    pub args: Value,
}

/// Draws one of so many: the number of the one drawn.
pub type Pick<'a> = &'a mut dyn FnMut(usize) -> usize;

/// What is special about a kind of question.
pub struct Question {
    /// What is read off the trace.
    pub reads: Reads,
    /// In how many windows.
    pub windows: usize,
    /// The fields of the worksheet, in order.
    pub fields: &'static [Field],
    /// Those that may stay empty.
    pub optional: &'static [Field],
    /// Fields of `[task]` that belong to it.
    pub owns: &'static [&'static str],
    /// What a seed makes of `[task]`, beside the kind.
    pub settle: fn(&TaskSpec, Pick) -> Task,
    /// The shortest recording that holds its window, s, with the longest window that a seed may draw; `None` where none is
    /// asked for.
    pub holds_s: fn(&TaskSpec, &Criteria) -> Option<f64>,
    /// Whether the length of the window is the brief's to say.
    pub brief_says_window: bool,
    /// Faults of the catalogue that the question is itself about, so that they need stand in no `[[fault]]`.
    pub about: &'static [&'static str],
    /// Codes of the trace that are not the student's matter; `None` where the trace is not judged.
    pub spared: Option<&'static [&'static str]>,
    /// Points for the measurement.
    pub points: &'static [PointOf],
    /// What hints about a window that does not fit are about.
    pub window_topic: &'static str,
    /// What a reading needs, beside a good trace and a long recording.
    pub needs: fn(&Task, &Criteria) -> Vec<Needs>,
    /// The verdict of its own steps.
    pub judge: fn(&Sheet, &mut Vec<Finding>),
}

impl Kind {
    /// What is special about it.
    pub const fn question(self) -> &'static Question {
        match self {
            Self::OwnWindow => &windows::OWN,
            Self::GivenWindow => &windows::GIVEN,
            Self::Irregular => &windows::IRREGULAR,
            Self::Intervals => &intervals::QUESTION,
            Self::AfterExercise => &after_exercise::QUESTION,
            Self::CleanPart => &clean_part::QUESTION,
            Self::ReadRange => &read_range::QUESTION,
            Self::NameFault => &name_fault::QUESTION,
            Self::Compare => &compare::QUESTION,
        }
    }

    /// The question that a seed makes of `[task]`.
    pub fn settle(self, spec: &TaskSpec, seed: u64) -> Task {
        let mut stream = Stream::new(seed, "task");
        let mut pick = |n: usize| ((stream.uniform() * n as f64) as usize).min(n.saturating_sub(1));
        Task { kind: self, ..(self.question().settle)(spec, &mut pick) }
    }
}

/// What a kind is that asks for no window and draws nothing: the others say what is otherwise.
const PLAIN: Question = Question {
    reads: Reads::Nothing,
    windows: 0,
    fields: &[],
    optional: &[],
    owns: &[],
    settle: |_, _| Task::default(),
    holds_s: |_, _| None,
    brief_says_window: false,
    about: &[],
    spared: None,
    points: &[],
    window_topic: "window",
    needs: |_, _| Vec::new(),
    judge: |_, _| {},
};

impl Question {
    /// Whether what is wrong is to be mended: not where it is only to be named.
    pub fn mends(&self) -> bool {
        self.reads != Reads::Nothing
    }

    /// Whether a good trace and a long recording are asked for too: where all of the trace is the student's matter.
    pub fn needs_trace(&self) -> bool {
        self.spared.is_some_and(<[_]>::is_empty)
    }

    /// Whether a rate is worked out, from beats or from intervals.
    pub fn counts(&self) -> bool {
        matches!(self.reads, Reads::Beats | Reads::Intervals)
    }
}

impl Task {
    /// What a reading needs, line by line: a good trace and a long recording where they are asked for, then what the kind
    /// asks; `names` where what is wrong is to be named beside. Shares are told in hundredths.
    pub fn needs(&self, pass: &Criteria, names: bool) -> Vec<Needs> {
        let question = self.kind.question();
        let mut lines = Vec::new();
        if names && question.mends() {
            lines.push(plainly("name_all"));
        }
        if question.needs_trace() {
            let hundredths = |share: f64| (100.0 * share).round();
            let fill = json!({"low": hundredths(pass.fill_min), "high": hundredths(pass.fill_max)});
            lines.push(Needs { code: "fill", args: fill });
            lines.push(Needs { code: "hum", args: json!({"hum": hundredths(pass.hum_ratio)}) });
            lines.push(plainly("clip"));
            lines.push(Needs { code: "record", args: json!({"s": pass.record_s}) });
        }
        lines.extend((question.needs)(self, pass));
        lines
    }
}

/// A line without numbers.
fn plainly(code: &'static str) -> Needs {
    Needs { code, args: json!({}) }
}
