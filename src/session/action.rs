//! What can be done in an attempt, as it stands in logs and scripts: `{"do": "strap", "tightness": 0.6}`. The enums themselves are
//! tagged from outside, which makes for far less code; [`Action`] turns the one form into the other.

use crate::assess::skill::Aid;
use crate::bench;
use crate::chain::Poke;
use crate::physiology::Manoeuvre;
use crate::plain::{self, Cause, Plain, Unread};
use crate::recorder::settings;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use serde_json::Value;

/// One action.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// At the bench.
    Bench(bench::Change),
    /// At the recorder's settings.
    Recorder(settings::Change),
    /// To the subject, the pad or a plug.
    Poke(Poke),
    /// On the strip and the worksheet.
    Page(Page),
}

/// Actions on the strip and the worksheet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Page {
    /// Choose the time base.
    TimeBase {
        /// One of [`crate::strip::frame::TIME_BASES_S`], s a screen.
        s: f64,
    },
    /// Choose what the strip shows.
    Show {
        /// Live or hold.
        mode: Mode,
    },
    /// Start recording.
    Record {},
    /// Stop recording; the new take is shown.
    Stop {},
    /// Show a take.
    OpenTake {
        /// Its number, from 0.
        take: usize,
    },
    /// Scroll within the take that is shown.
    Scroll {
        /// Time at the left edge, s.
        start_s: f64,
    },
    /// Put a cursor.
    Cursor {
        /// Which one.
        which: Which,
        /// Where, s from the take's start; none takes it away.
        t: Option<f64>,
    },
    /// Mark a beat.
    Mark {
        /// Where, s from the take's start.
        t: f64,
    },
    /// Take the mark nearest to a place away.
    Unmark {
        /// Where, s from the take's start.
        t: f64,
    },
    /// Take all marks away.
    MarksClear {},
    /// Fill in a field of the worksheet.
    Answer {
        /// Which field.
        field: super::worksheet::Field,
        /// As typed.
        text: String,
    },
    /// Keep the cursors and what was typed as the first of two windows.
    KeepWindow {},
    /// Forget the first of two windows.
    KeepClear {},
    /// Show a stretch of the take over the whole strip.
    Zoom {
        /// Its beginning, s from the take's start.
        from_s: f64,
        /// Its end.
        to_s: f64,
    },
    /// Back to what was shown before the zoom.
    ZoomOut {},
    /// Have clicks jump to the nearest peak, or not.
    Snap {
        /// Jump.
        on: bool,
    },
    /// Write something on a take.
    Label {
        /// Its number, from 0.
        take: usize,
        /// What.
        text: String,
    },
    /// The caution was read and is agreed to.
    Agree {},
    /// How much help is wanted; only as the first action.
    Help {
        /// How much.
        mode: Aid,
    },
    /// Ask for a hint after a check.
    Hint {},
    /// Name what is wrong with the bench.
    Name {
        /// A fault's name in the catalogue.
        fault: String,
    },
    /// Take a named fault back.
    Unname {
        /// A fault's name in the catalogue.
        fault: String,
    },
    /// Have the worksheet checked.
    Check {},
    /// See the true rate; that ends the attempt.
    Reveal {},
    /// Let the subject do something.
    Manoeuvre {
        /// What.
        what: Manoeuvre,
    },
}

/// What the strip shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Mode {
    /// The live signal.
    Live,
    /// The live signal, held still.
    Hold,
    /// A take.
    Take,
}

/// A cursor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Which {
    /// Cursor A.
    A,
    /// Cursor B.
    B,
}

/// Why an action was not done. Nothing has changed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "code", content = "args", rename_all = "snake_case")]
pub enum Refusal {
    /// The computer does not see the unit.
    NoLink {},
    /// Nothing is plugged into the input that is shown.
    NothingInInput {
        /// The input.
        input: u8,
    },
    /// It cannot be changed while recording.
    Recording {
        /// What.
        what: &'static str,
    },
    /// Nothing is being recorded.
    NotRecording {},
    /// Under a second was recorded; nothing is kept.
    TooShort {},
    /// There is no such take, or none at all.
    NoTake {},
    /// The worksheet has not been checked yet.
    NotChecked {},
    /// The attempt has ended.
    AttemptOver {},
    /// A number outside its range.
    OutOfRange {
        /// Its name.
        field: &'static str,
        /// Lowest value.
        min: f64,
        /// Highest value.
        max: f64,
    },
    /// A value that a setting does not take.
    BadValue {
        /// The setting.
        field: &'static str,
        /// What it takes.
        expected: String,
    },
    /// The question does not ask for it.
    NotAsked {},
    /// Both cursors must be there.
    NoWindow {},
    /// There is nothing more to tell, or not yet.
    NoHint {},
    /// It can only be done first of all.
    TooLate {},
    /// The stretch is too short to be shown.
    TooNarrow {
        /// Shortest stretch, s.
        least: f64,
    },
    /// The strip is not zoomed.
    NotZoomed {},
    /// The worked example plays by itself.
    WorkedExample {},
    /// The attempt is as long as it may be.
    LogFull {
        /// Most actions.
        most: usize,
    },
    /// The bench has run as long as it may.
    WorldOver {
        /// Most samples.
        most: u64,
    },
    /// A text is longer than anybody types.
    TextTooLong {
        /// Most characters.
        max: usize,
    },
    /// There is no bench: a recording is shown.
    NoBench {},
    /// The bench refuses.
    #[serde(untagged)]
    Bench(bench::Refusal),
}

impl From<bench::Refusal> for Refusal {
    fn from(refusal: bench::Refusal) -> Self {
        Refusal::Bench(refusal)
    }
}

impl From<settings::BadValue> for Refusal {
    fn from(bad: settings::BadValue) -> Self {
        Refusal::BadValue { field: bad.field, expected: bad.expected }
    }
}

impl Serialize for Action {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.to_value().serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Action {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let value = Value::deserialize(deserializer)?;
        Action::from_value(value).map_err(serde::de::Error::custom)
    }
}

impl Action {
    /// The action as it stands in logs.
    pub fn to_value(&self) -> Value {
        // {"plug": {"end": ...}} becomes {"do": "plug", "end": ...}.
        let (name, fields) = self.named();
        let mut flat = serde_json::Map::new();
        flat.insert("do".into(), Value::from(name));
        if let Value::Object(fields) = fields {
            flat.extend(fields);
        }
        Value::Object(flat)
    }

    /// The action's name in logs.
    pub fn name(&self) -> String {
        self.named().0
    }

    /// Name and fields; an action has strings for keys and finite numbers, so that it always becomes a value.
    fn named(&self) -> (String, Value) {
        let value = match self {
            Action::Bench(a) => serde_json::to_value(a),
            Action::Recorder(a) => serde_json::to_value(a),
            Action::Poke(a) => serde_json::to_value(a),
            Action::Page(a) => serde_json::to_value(a),
        };
        match value {
            Ok(Value::Object(outer)) => outer.into_iter().next().unwrap_or_default(),
            _ => Default::default(),
        }
    }

    /// Reads an action; the message says what is wrong with it.
    pub fn from_value(value: Value) -> Result<Self, String> {
        let nameless = || "an action is an object with its name under \"do\"".to_string();
        let Value::Object(mut fields) = value else { return Err(nameless()) };
        let Some(Value::String(name)) = fields.remove("do") else { return Err(nameless()) };
        // {"do": "plug", "end": ...} becomes {"plug": {"end": ...}}, which serde reads without a detour.
        let named = Plain::from(Value::Object(plain::fields(
            &mut [(name.clone(), Value::Object(fields))].into_iter(),
        )));
        // Each group is asked in turn; the one that knows the name decides.
        type Reader = fn(&Plain) -> Result<Action, Unread>;
        let groups: [Reader; 4] = [
            |v| v.read().map(Action::Bench),
            |v| v.read().map(Action::Recorder),
            |v| v.read().map(Action::Poke),
            |v| v.read().map(Action::Page),
        ];
        for read in groups {
            match read(&named) {
                Ok(action) => return Ok(action),
                Err(e) if is_unknown(&e, &name) => {}
                Err(e) => return Err(format!("action \"{name}\": {e}")),
            }
        }
        Err(format!("there is no action \"{name}\""))
    }
}

/// Whether a group of actions does not know this one. An unknown word within an action has a path.
fn is_unknown(error: &Unread, action: &str) -> bool {
    error.path().is_empty() && matches!(error.cause(), Cause::UnknownVariant { name, .. } if name == action)
}
