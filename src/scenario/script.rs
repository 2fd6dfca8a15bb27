//! Scripted attempts as they stand in a scenario file.

use serde::{Deserialize, Serialize};

/// Most steps in a script.
pub const MOST_STEPS: usize = 400;
/// Longest wait in a script, s.
pub const LONGEST_WAIT_S: f64 = 600.0;

/// One scripted attempt with its expected result.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Attempt {
    /// What the attempt shows.
    pub name: String,
    /// Seed of the run.
    pub seed: u64,
    /// The result that it must have.
    pub expect: Expect,
    /// What is done: `{ wait = 2.5 }`, or an action as in an attempt's log. In the text of an answer `@` and the name of a
    /// field (`@count`, `@rate`, `@middle`) stand for its right value, `@count+1` and `@count*2` for wrong ones.
    /// `@beat+0.4` in a time stands for that much after the first beat of the recording, `@peak` for where the recorder shows
    /// that beat, `@last` for the beat as many beat intervals later as are asked for, `@end` for the end of a counting window
    /// of the asked length, `@foot` and `@top` for foot and peak of a beat. Where a pool draws what is wrong,
    /// `{ do = "@test" }` makes a test of each fault that is there (where nothing is wrong, some looks), `{ do = "@mend" }`
    /// mends each, `{ do = "name", fault = "@faults" }` names them, `"@other"` names one that is not there; `{ do = "@fit" }`
    /// chooses the smallest range that holds the live trace.
    pub steps: Vec<serde_json::Value>,
}

/// What a scripted attempt must end with.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Expect {
    /// Whether the last check is passed.
    pub passed: bool,
    /// Codes that the last check must contain.
    #[serde(default)]
    pub codes: Vec<String>,
}
