//! Every action once. From this table come [`Kind`], the names in logs and scripts, the numbers and fields in codes of
//! attempts, the nature by which the way of working is judged, the lane in the debrief, the stage of the narration and the
//! pane of the page. The page reads it as JSON ([`rows`]).

use super::action::Action;
use super::page::Page;
use crate::bench::Change as BenchChange;
use crate::chain::Poke;
use crate::plain::json;
use crate::recorder::settings::Change as RecorderChange;
use serde::Serialize;
use serde_json::Value;

/// What an action is in the work at the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Nature {
    /// It changes the bench, the subject's comfort or what the recorder does to the signal.
    Change,
    /// It asks the bench or the subject something.
    Test,
    /// It only changes what one sees.
    Look,
    /// It sets the recorder for a signal of this size, which every measurement needs.
    Tune,
    /// It records or measures.
    Measure,
    /// Help, notes and consent.
    Paper,
}

/// The lane of the debrief in which an action is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names say it; the page has the words")]
pub enum Lane {
    Wiring,
    Strap,
    Table,
    Poke,
    Subject,
    Settings,
    Record,
    Measure,
    Answer,
    Check,
    Hint,
    Help,
}

/// The stage of the work that an action belongs to, for narration. The page has the words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names say it; the page has the words")]
pub enum Stage {
    Power,
    Wire,
    Sensor,
    Link,
    Strap,
    Table,
    Test,
    Subject,
    Range,
    Filter,
    Settings,
    Look,
    Record,
    Stop,
    Cursor,
    Mark,
    Name,
    Count,
    Seconds,
    Multiplier,
    Rate,
    Uncertainty,
    Middle,
    RangeMv,
    Amplitude,
    Paper,
    Check,
    Expect,
    Row,
    Conclude,
}

/// The part of the page where the control of an action is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Pane {
    /// The table and its lists.
    Bench,
    /// The settings that stand at the trace's axes.
    Axes,
    /// The recorder's other settings.
    Drawer,
    /// The trace itself.
    Trace,
    /// The worksheet.
    Sheet,
    /// The page about them.
    Page,
}

/// Where an action is declared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Group {
    Bench,
    Recorder,
    Poke,
    Page,
}

/// What the table says of an action.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// Number in codes of attempts, from 1. Never given to another action.
    pub number: u8,
    /// Name in logs and scripts.
    pub name: &'static str,
    /// Fields in the order of codes.
    pub fields: &'static [&'static str],
    /// What it is in the work.
    pub nature: Nature,
    /// Lane of the debrief.
    pub lane: Lane,
    /// Stage of the narration, where the fields do not say otherwise.
    pub stage: Stage,
    /// Where its control is.
    pub pane: Pane,
}

macro_rules! table {
    ($($group:ident of $declared:ident {
        $($kind:ident $number:literal $name:literal [$($field:literal)*] $nature:ident $lane:ident $stage:ident $pane:ident)*
    })*) => {
        /// Which action, whatever its fields.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[expect(missing_docs, reason = "each is described where it is declared")]
        pub enum Kind { $($($kind,)*)* }

        impl Kind {
            /// All of them.
            pub const ALL: &'static [Kind] = &[$($(Kind::$kind,)*)*];

            /// The kind of an action.
            pub fn of(action: &Action) -> Self {
                match action {
                    $($(Action::$group($declared::$kind { .. }) => Kind::$kind,)*)*
                }
            }

            /// What the table says of it.
            pub fn row(self) -> &'static Row {
                match self {
                    $($(Kind::$kind => &Row {
                        number: $number,
                        name: $name,
                        fields: &[$($field),*],
                        nature: Nature::$nature,
                        lane: Lane::$lane,
                        stage: Stage::$stage,
                        pane: Pane::$pane,
                    },)*)*
                }
            }

            /// Where it is declared.
            pub(super) fn group(self) -> Group {
                match self {
                    $($(Kind::$kind => Group::$group,)*)*
                }
            }
        }
    };
}

table! {
    // Kind        code  name              fields              nature  lane     stage    pane
    Bench of BenchChange {
        Plug          1  "plug"            ["end" "socket"]    Change  Wiring   Power    Bench
        Unplug        2  "unplug"          ["end"]             Change  Wiring   Power    Bench
        Switch        3  "switch"          ["id" "on"]         Change  Wiring   Power    Bench
        Move          4  "move"            ["part" "x" "y"]    Change  Table    Table    Bench
        Charger       5  "charger"         ["plugged"]         Change  Wiring   Power    Bench
        StrapOn       6  "strap_on"        []                  Change  Strap    Strap    Bench
        StrapOff      7  "strap_off"       []                  Change  Strap    Strap    Bench
        Strap         8  "strap"           ["tightness"]       Change  Strap    Strap    Bench
        SensorPlace      9  "sensor_place"       ["place"]           Change  Strap    Strap    Bench
        SensorSide      10  "sensor_side"        ["side"]            Change  Strap    Strap    Bench
        Shade        11  "shade"           ["on"]              Change  Strap    Strap    Bench
        OtherHand    12  "other_hand"      ["on"]              Change  Subject  Subject  Bench
        HandHeight   13  "hand_height"     ["cm"]              Change  Subject  Subject  Bench
    }
    Recorder of RecorderChange {
        Input        20  "input"           ["n"]               Change  Settings Settings Drawer
        Range        21  "range"           ["v"]               Tune    Settings Range    Axes
        Rate         22  "rate"            ["hz"]              Change  Settings Settings Drawer
        Bits         23  "bits"            ["n"]               Change  Settings Settings Drawer
        Zero         24  "zero"            []                  Tune    Settings Range    Axes
        ZeroClear    25  "zero_clear"      []                  Tune    Settings Range    Axes
        Invert       26  "invert"          ["on"]              Change  Settings Settings Axes
        HighPass     27  "high_pass"       ["hz" "order"]      Change  Settings Filter   Drawer
        LowPass      28  "low_pass"        ["hz" "order"]      Change  Settings Filter   Drawer
        Notch        29  "notch"           ["hz"]              Change  Settings Filter   Drawer
        Average      30  "average"         ["ms"]              Change  Settings Filter   Drawer
        Shown        31  "shown"           ["on"]              Change  Settings Look     Axes
        Scale        32  "scale"           ["by"]              Change  Settings Settings Drawer
        AntiAlias    33  "anti_alias"      ["on"]              Change  Settings Filter   Drawer
        Buffered     34  "buffered"        ["on"]              Change  Settings Settings Drawer
        Calibrator   35  "calibrator"      ["on"]              Test    Poke     Test     Drawer
        Integral     36  "integral"        ["on"]              Change  Settings Filter   Drawer
    }
    Poke of Poke {
        TapSensor       40  "tap_sensor"         []                  Test    Poke     Test     Bench
        AskStill     41  "ask_still"       []                  Test    Subject  Subject  Bench
        Wiggle       42  "wiggle"          ["end"]             Test    Poke     Test     Bench
        Rescan       43  "rescan"          []                  Test    Poke     Link     Bench
        AskQuiet     44  "ask_quiet"       []                  Test    Subject  Subject  Bench
        AskFinger    45  "ask_finger"      []                  Test    Subject  Test     Bench
        SwapCable     46  "swap_cable"       []                  Change  Wiring   Table    Bench
        PressFinger  47  "press_finger"    []                  Test    Poke     Test     Bench
        Look         48  "look"            ["at"]              Look    Poke     Look     Bench
        RestArm      49  "rest_arm"        []                  Change  Subject  Subject  Bench
        TellInstructor 50 "tell_instructor" []                 Paper   Subject  Subject  Bench
    }
    Page of Page {
        TimeBase     60  "time_base"       ["s"]               Look    Settings Look     Axes
        Show         61  "show"            ["mode"]            Look    Settings Look     Trace
        Record       62  "record"          []                  Measure Record   Record   Trace
        Stop         63  "stop"            []                  Measure Record   Stop     Trace
        OpenRecording     64  "open_recording"       ["recording"]            Look    Measure  Look     Trace
        Scroll       65  "scroll"          ["start_s"]         Look    Measure  Look     Trace
        Cursor       66  "cursor"          ["which" "t"]       Measure Measure  Cursor   Trace
        Mark         67  "mark"            ["t"]               Measure Measure  Mark     Trace
        Unmark       68  "unmark"          ["t"]               Measure Measure  Mark     Trace
        MarksClear   69  "marks_clear"     []                  Measure Measure  Mark     Trace
        Answer       70  "answer"          ["field" "text"]    Measure Answer   Count    Sheet
        Name         71  "name"            ["fault"]           Paper   Answer   Name     Sheet
        Unname       72  "unname"          ["fault"]           Paper   Answer   Name     Sheet
        Check        73  "check"           []                  Measure Check    Check    Sheet
        Reveal       74  "reveal"          []                  Measure Check    Check    Sheet
        Manoeuvre    75  "manoeuvre"       ["what"]            Measure Subject  Subject  Bench
        KeepWindow   76  "keep_window"     []                  Measure Measure  Cursor   Sheet
        KeepClear    77  "keep_clear"      []                  Measure Measure  Cursor   Sheet
        Zoom         78  "zoom"            ["from_s" "to_s"]   Look    Measure  Look     Trace
        ZoomOut      79  "zoom_out"        []                  Look    Measure  Look     Trace
        Snap         80  "snap"            ["on"]              Paper   Measure  Cursor   Trace
        Label        81  "label"           ["recording" "text"]     Paper   Record   Paper    Trace
        Agree        82  "agree"           []                  Paper   Help     Paper    Page
        Help         83  "help"            ["mode"]            Paper   Help     Paper    Page
        Hint         84  "hint"            []                  Paper   Hint     Paper    Sheet
        AnotherWindow 85 "another_window"  []                  Measure Measure  Cursor   Sheet
        LetPass      86  "let_pass"        ["s"]               Measure Subject  Subject  Bench
        Explain      87  "explain"         ["text"]            Paper   Answer   Paper    Sheet
    }
    // Rows that came later stand here: the order of the rows above is pinned.
    Poke of Poke {
        PushUpSleeve   51 "push_up_sleeve"  []                 Change  Subject  Subject  Bench
        DryPlug        52 "dry_plug"        []                 Change  Wiring   Table    Bench
        WipeSensor     53 "wipe_sensor"     []                 Change  Strap    Strap    Bench
        ClosePrograms  54 "close_programs"  []                 Change  Wiring   Link     Bench
    }
    Page of Page {
        Consent      88  "consent"         ["given"]           Paper   Help     Paper    Page
        Predict        89 "predict"         ["measure" "direction" "reason"] Paper Answer Expect Sheet
        AddRow         90 "add_row"         ["condition"]      Measure Answer   Row      Sheet
        RowNote        91 "row_note"        ["row" "text"]     Paper   Answer   Row      Sheet
        RemoveRow      92 "remove_row"      ["row"]            Measure Answer   Row      Sheet
        Conclude       93 "conclude"        ["measure" "direction"] Paper Answer Conclude Sheet
    }
}

impl Kind {
    /// The kind with a name.
    pub fn named(name: &str) -> Option<Self> {
        Kind::ALL.iter().copied().find(|kind| kind.name() == name)
    }

    /// The kind with a number in codes of attempts.
    pub fn numbered(number: u64) -> Option<Self> {
        Kind::ALL.iter().copied().find(|kind| u64::from(kind.row().number) == number)
    }

    /// Name in logs and scripts.
    pub fn name(self) -> &'static str {
        self.row().name
    }

    /// What it is in the work.
    pub fn nature(self) -> Nature {
        self.row().nature
    }

    /// Whether it only changes what one sees of a recording: that may be done with somebody else's attempt too.
    pub fn only_looks(self) -> bool {
        self.nature() == Nature::Look && self.row().pane != Pane::Bench && self != Kind::Show
    }

    /// Lane of the debrief.
    pub fn lane(self) -> Lane {
        self.row().lane
    }
}

impl Action {
    /// The stage of the work that it belongs to.
    pub fn stage(&self) -> Stage {
        use super::Field;
        use crate::bench::wiring::End;
        match self {
            Action::Bench(BenchChange::Plug { end, .. } | BenchChange::Unplug { end }) => match end {
                End::Sensor => Stage::Sensor,
                End::DataRecorder | End::DataComputer => Stage::Wire,
                End::PowerRecorder | End::PowerWall => Stage::Power,
            },
            Action::Page(Page::Answer { field, .. }) => match field {
                Field::Count | Field::Count1 => Stage::Count,
                Field::Seconds | Field::Seconds1 => Stage::Seconds,
                Field::Rate | Field::Rate1 => Stage::Rate,
                Field::Multiplier => Stage::Multiplier,
                Field::Uncertainty => Stage::Uncertainty,
                Field::Middle => Stage::Middle,
                Field::Range => Stage::RangeMv,
                Field::Amplitude => Stage::Amplitude,
            },
            _ => self.kind().row().stage,
        }
    }
}

/// The table as the page reads it: for each action its name, nature, lane and pane, and whether it only looks.
pub fn rows() -> Value {
    let told = |kind: &Kind| {
        let row = kind.row();
        json!({
            "do": row.name, "nature": row.nature, "lane": row.lane, "pane": row.pane, "looks": kind.only_looks(),
        })
    };
    Kind::ALL.iter().map(told).collect()
}
