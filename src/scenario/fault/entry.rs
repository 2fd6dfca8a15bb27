//! The form of an entry of the catalogue.

use crate::bench::Bench;
use crate::bench::strap::OtherHand;
use crate::bench::table::Point;
use crate::chain::{Chain, Config, Trouble};
use crate::deed::Tell;
use crate::physiology::SubjectSpec;
use crate::pickup::field::PowerLine;
use crate::pickup::sensor::{Kind as SensorKind, Sensor};
use crate::recorder::Settings;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// What a fault looks like at first sight. Faults with the same impression can only be told apart by a test.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Impression {
    /// The computer does not see the recorder, or loses it.
    NoRecorder,
    /// No pulse: a flat line, or none.
    Flat,
    /// A pulse, but too small.
    Small,
    /// Too tall, cut off or out of sight.
    Cut,
    /// Thick or fuzzy.
    Fuzzy,
    /// The wave has another shape than it should.
    Misshapen,
    /// Spikes, steps, drop-outs.
    Jumpy,
    /// Slow waves, or a changing size.
    Wandering,
    /// Too few or too many waves on the screen, or a screen that stands.
    Crowded,
    /// The trace is all right, the paper work is not.
    Paper,
}

/// The figure in which a fault shows; above 1 the symptom is there. Worked out by [`crate::session::symptom`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Symptom {
    /// The computer does not see the recorder.
    Unseen,
    /// The link is lost now and then.
    Losses,
    /// No beats that resemble each other.
    NoPulse,
    /// The power strip is switched off.
    Hidden,
    /// The screen stands still.
    Paused,
    /// Jumps from one sample to the next.
    Jumps,
    /// Samples at the ends of the range.
    Clip,
    /// The pulse fills little of the screen.
    Tiny,
    /// The pulse is small in volts.
    Weak,
    /// The same, but not from the start: it gets so by and by.
    Fading,
    /// Few samples a beat.
    Jagged,
    /// Steeper falls than rises.
    UpsideDown,
    /// No fine shape left.
    Smooth,
    /// The second bump as tall as the first, or the line far under its level after each beat.
    Overshoot,
    /// Hum of the power line.
    Hum,
    /// Hum at the input, whatever the filters leave of it.
    HumBehindFilters,
    /// Light at twice the power line frequency.
    Flicker,
    /// A ripple of 8 to 12 Hz.
    Ripple,
    /// Combs of fast spikes.
    Spikes,
    /// Movement larger than the pulse.
    Movement,
    /// A slow wave under the pulse.
    Slow,
    /// The pulse shrinks for a few beats.
    Shrinking,
    /// An interval that does not fit the others.
    Uneven,
    /// Beats that do not resemble each other: two rhythms in one trace.
    TwoPulses,
    /// Steps of the converter as tall as a part of the pulse.
    Stairs,
    /// Intervals that lengthen and shorten in turn.
    Swinging,
    /// A wave of 22 to 38 Hz.
    Buzz,
    /// A rate well over the resting one.
    Raised,
    /// Fewer than two beats on the screen.
    FewBeats,
    /// More beats on the screen than can be told apart.
    ManyBeats,
    /// Labels with a factor.
    Mislabelled,
    /// Nothing has been recorded.
    NothingSaved,
    /// A check would find this.
    Finding(&'static str),
}

/// A bench and a recorder that a fault is put into.
#[derive(Clone, Debug)]
pub struct Situation {
    /// The chain's description.
    pub config: Config,
    /// Time base at the start, s a screen.
    pub time_base_s: f64,
    /// What somebody did before the student came: steps as in a scripted attempt.
    pub before: Vec<Value>,
    /// A recording of somebody else's lies there already.
    pub foreign_recording: bool,
}

/// The bench and what is shown of it, as far as causes lie there.
#[derive(Clone, Copy, Debug)]
pub struct Scene<'a> {
    /// The running chain.
    pub chain: &'a Chain,
    /// Time base, s a screen.
    pub time_base_s: f64,
    /// The live trace is paused.
    pub held: bool,
    /// Recordings that the student made.
    pub own_recordings: usize,
}

/// Hum over the pulse, peak to peak, above which its cause is at work: the mild level of a bench (common practice).
pub(super) const HUM: f64 = 0.1;
/// A cause is one of the hum where without it less than this share would be left (design default).
const WITHOUT: f64 = 0.75;

/// A way by which hum comes to the sensor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum HumBy {
    /// The sensor's cable at the power strip.
    Cable,
    /// The charger in its outlet.
    Charger,
    /// The other hand at something live.
    Hand,
}

impl HumBy {
    const ALL: [Self; 3] = [Self::Cable, Self::Charger, Self::Hand];

    fn take_away(self, bench: &mut Bench) {
        match self {
            Self::Cable => bench.cable.handles = [Point { x: 44.0, y: 66.0 }, Point { x: 66.0, y: 70.0 }],
            Self::Charger => bench.wiring.charger_plugged = false,
            Self::Hand => bench.strap.other_hand = OtherHand::Lap,
        }
    }
}

impl Scene<'_> {
    /// Whether there is hum at the sensor that comes this way: on the bench as it is, or once the other ways are gone. A weaker
    /// one is there beside a stronger one, and who finds the weaker one first is not wrong.
    pub(super) fn hum_is_of(&self, way: HumBy) -> bool {
        let counts = |bench: &Bench| {
            let share = self.chain.hum_share_at(bench);
            let mut without = bench.clone();
            way.take_away(&mut without);
            share > HUM && self.chain.hum_share_at(&without) < WITHOUT * share
        };
        let mut alone = self.chain.bench().clone();
        HumBy::ALL.iter().filter(|other| **other != way).for_each(|other| other.take_away(&mut alone));
        counts(self.chain.bench()) || counts(&alone)
    }
}

/// How one knows that a cause is there.
#[derive(Clone, Copy)]
pub enum AtWork {
    /// From the bench and what is shown of it.
    Is(fn(&Scene) -> bool),
    /// A check finds this code.
    Found(&'static str),
}

/// An entry of the catalogue.
pub struct Fault {
    /// Its name in scenario files, logs and texts.
    pub id: &'static str,
    /// First impression.
    pub impression: Impression,
    /// Range from which a severity is drawn, within 0 to 1.
    pub severity: (f64, f64),
    /// Faults that it is confused with.
    pub confused_with: &'static [&'static str],
    /// What tells it apart.
    pub tests: &'static [Tell],
    /// What mends it, as steps of a script.
    pub remedy: &'static [&'static str],
    /// What is often tried and does not mend it.
    pub vain: &'static [&'static str],
    /// Whether it can be mended at all; a premature beat can only be noted.
    pub curable: bool,
    /// Faults that come with it and are at work beside it: a filter against hum is set where there is hum.
    pub brings: &'static [&'static str],
    /// Whether its cause is there, whatever filters and settings leave of it on the trace.
    pub at_work: AtWork,
    /// The figure in which it shows.
    pub symptom: Symptom,
    /// Puts it into a situation, with a severity.
    pub apply: fn(&mut Situation, f64),
}

impl Fault {
    /// A tidy, wired bench with it at its worst.
    fn put(&self) -> Situation {
        let mut situation = Situation {
            config: Config {
                subject: SubjectSpec::default(),
                power_line: PowerLine::default(),
                sensor: Sensor::default(),
                trouble: Trouble::default(),
                finds_recorder: true,
                bench: Bench::wired(),
                recorder: Settings::default(),
            },
            time_base_s: 10.0,
            before: Vec::new(),
            foreign_recording: false,
        };
        (self.apply)(&mut situation, self.severity.1);
        situation
    }

    /// The kind of sensor that it needs, where it is one of a certain kind alone: light disturbs none but the optical one.
    pub fn sensor(&self) -> Option<SensorKind> {
        let kind = self.put().config.sensor.kind;
        (kind != Sensor::default().kind).then_some(kind)
    }

    /// The range, V, in which it is shown where the usual one hides it: a pulse that a high-pass leaves of one (design default).
    pub fn shown_range_v(&self) -> Option<f64> {
        (self.symptom == Symptom::Overshoot).then_some(0.02)
    }

    /// Seconds of trace in which it shows best on one screen, one of [`crate::trace::frame::TIME_BASES_S`]: fast waves on a short
    /// screen, single events and slow waves on a long one (design default). `None` where the time base is the fault, or where the
    /// trace does not tell it.
    pub fn shown_s(&self) -> Option<f64> {
        Some(match self.symptom {
            Symptom::Stairs | Symptom::Jagged | Symptom::Buzz | Symptom::Ripple => 2.0,
            Symptom::Hum | Symptom::HumBehindFilters | Symptom::Flicker => 2.0,
            Symptom::Smooth | Symptom::Overshoot | Symptom::UpsideDown | Symptom::Spikes => 5.0,
            Symptom::Unseen
            | Symptom::NoPulse
            | Symptom::Hidden
            | Symptom::Paused
            | Symptom::Clip
            | Symptom::Tiny
            | Symptom::Weak
            | Symptom::Movement
            | Symptom::TwoPulses
            | Symptom::Raised
            | Symptom::Mislabelled => 10.0,
            Symptom::Slow | Symptom::Fading | Symptom::Shrinking | Symptom::Uneven | Symptom::Jumps => 30.0,
            Symptom::Swinging | Symptom::Losses => 60.0,
            Symptom::FewBeats | Symptom::ManyBeats | Symptom::NothingSaved | Symptom::Finding(_) => {
                return None;
            }
        })
    }

    /// Whether it is shown from the first second on: what comes by and by is over once all is at rest.
    pub fn shown_fresh(&self) -> bool {
        self.symptom == Symptom::Fading
    }

    /// Whether it is shown without the filters as well, which hide it.
    pub fn shown_bare(&self) -> bool {
        self.symptom == Symptom::HumBehindFilters
    }

    /// Whether a recording lies there with it that is to be measured: somebody put cursors on it.
    pub fn leaves_recording(&self) -> bool {
        self.put().before.iter().any(|step| step["do"] == "cursor")
    }
}

impl core::fmt::Debug for Fault {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "Fault({})", self.id)
    }
}

/// A step written as JSON in the catalogue.
pub(super) fn step(text: &str) -> Value {
    crate::plain::value(text).unwrap_or(Value::Null)
}

/// The steps of a reading of fifteen seconds, with what is written into its blanks.
pub(super) fn read(blanks: &[(&str, &str)]) -> Vec<Value> {
    let measured = [
        r#"{"wait": 3}"#,
        r#"{"do": "record"}"#,
        r#"{"wait": 25}"#,
        r#"{"do": "stop"}"#,
        r#"{"do": "cursor", "which": "a", "t": "@beat+0.4"}"#,
        r#"{"do": "cursor", "which": "b", "t": "@beat+15.4"}"#,
    ];
    let written = blanks
        .iter()
        .map(|(field, text)| step(&format!(r#"{{"do": "answer", "field": "{field}", "text": "{text}"}}"#)));
    measured.into_iter().map(step).chain(written).collect()
}
