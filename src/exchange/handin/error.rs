//! What is wrong with something handed in.

use crate::plain::json;
use crate::session::compact::CodeError;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use thiserror::Error;

/// A name out of a list of ours.
pub type Name = &'static str;

/// The fields of a result that a replay may tell otherwise.
pub const FIELDS: [&str; 10] = [
    "scenario_id",
    "answers",
    "named",
    "try",
    "outcome",
    "codes",
    "first_wrong",
    "misreading",
    "passed",
    "tries",
];

/// What is wrong with something handed in. To the page it is a code with arguments.
#[derive(Clone, Debug, Error, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HandinError {
    /// Longer than any result.
    #[error("{bytes} bytes; a result has at most {most}")]
    TooLong {
        /// How long it is.
        bytes: usize,
        /// How long it may be.
        most: usize,
    },
    /// Something else, or cut short.
    #[error("not a result file: {found}")]
    NoResult {
        /// What was found.
        found: String,
    },
    /// It ends in the middle.
    #[error("the file is cut short")]
    CutShort {},
    /// Written by another version.
    #[error(
        "a result file of form {found}; this version of the program reads form {}",
        super::result::VERSION
    )]
    Version {
        /// Which.
        found: u64,
    },
    /// A course result that was written by another version.
    #[error(
        "a course result of form {found}; this version of the program reads form {}",
        super::bundle::VERSION
    )]
    CourseVersion {
        /// Which.
        found: u64,
    },
    /// A code that cannot be read.
    #[error("{found}")]
    Code {
        /// Why.
        found: String,
    },
    /// A code whose scenario is not at hand.
    #[error("the result code belongs to a scenario that is not at hand (digest {digest})")]
    ScenarioMissing {
        /// The first eight bytes of its digest.
        digest: String,
    },
    /// A code whose bench is none of those set.
    #[error("not the scenario that was assigned (digest {digest})")]
    OtherBench {
        /// The first eight bytes of its bench digest.
        digest: String,
    },
    /// The checksum does not fit.
    #[error("the checksum does not fit: the file was changed after it was written")]
    Changed {},
    /// The scenario's digest does not fit its text.
    #[error("the scenario's text does not fit its digest")]
    OtherScenario {},
    /// It cannot be done again.
    #[error("it cannot be replayed: {found}")]
    Replay {
        /// Why.
        found: String,
    },
    /// It was made by another version of the program, which may judge otherwise.
    #[error("it was made by version {found}, this is version {ours}: grade it with that one")]
    OtherProgram {
        /// The version that made it.
        found: String,
        /// This version.
        ours: String,
    },
    /// What comes out of a replay is not what it claims.
    #[error("a replay gives another result: {field} is {replayed}, the file says {claimed}")]
    Differs {
        /// Where.
        #[serde(deserialize_with = "super::told::field")]
        field: Name,
        /// What the result says.
        claimed: String,
        /// What comes out.
        replayed: String,
    },
}

impl HandinError {
    /// The code by which the page and a class's summary know it.
    pub const fn code(&self) -> &'static str {
        match self {
            HandinError::TooLong { .. } => "too_long",
            HandinError::NoResult { .. } => "no_result",
            HandinError::CutShort {} => "cut_short",
            HandinError::Version { .. } => "version",
            HandinError::CourseVersion { .. } => "course_version",
            HandinError::Code { .. } => "code",
            HandinError::ScenarioMissing { .. } => "scenario_missing",
            HandinError::OtherBench { .. } => "other_bench",
            HandinError::Changed {} => "changed",
            HandinError::OtherScenario {} => "other_scenario",
            HandinError::Replay { .. } => "replay",
            HandinError::OtherProgram { .. } => "other_program",
            HandinError::Differs { .. } => "differs",
        }
    }

    /// The arguments that go with the code.
    pub fn args(&self) -> Value {
        match self {
            HandinError::TooLong { bytes, most } => json!({"bytes": bytes, "most": most}),
            HandinError::NoResult { found } | HandinError::Code { found } | HandinError::Replay { found } => {
                json!({"found": found})
            }
            HandinError::Version { found } => json!({"found": found, "ours": super::result::VERSION}),
            HandinError::CourseVersion { found } => json!({"found": found, "ours": super::bundle::VERSION}),
            HandinError::ScenarioMissing { digest } | HandinError::OtherBench { digest } => {
                json!({"digest": digest})
            }
            HandinError::CutShort {} | HandinError::Changed {} | HandinError::OtherScenario {} => json!({}),
            HandinError::OtherProgram { found, ours } => json!({"found": found, "ours": ours}),
            HandinError::Differs { field, claimed, replayed } => {
                json!({"field": field, "claimed": claimed, "replayed": replayed})
            }
        }
    }
}

impl From<CodeError> for HandinError {
    fn from(error: CodeError) -> Self {
        HandinError::Code { found: error.to_string() }
    }
}
