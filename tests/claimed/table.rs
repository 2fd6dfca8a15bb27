//! The claims. One line each: fault, phrase as it stands in the English text, figure, bound.

use super::claim::Bound::{Over, Under, Within};
use super::claim::{Claim, Does, Opposite, gone, remedy, remedy_by, seen, test};
use super::figures::*;
use dicrotic::scenario::fault;

const TAP_IT: &[&str] = &[r#"{"do":"tap_sensor"}"#];
const PRESS: &[&str] = &[r#"{"do":"press_finger"}"#, r#"{"wait":0.4}"#];
const SUITS: &[&str] = &[r#"{"do":"range","v":"@range"}"#, r#"{"wait":1}"#];
const TURN: &str = r#"{"do":"wiggle","end":"sensor"}"#;
const PAUSE_1_S: &str = r#"{"wait":1}"#;
/// Again and again, because a loose contact may be closed just now.
const WIGGLE: &[&str] = &[
    TURN, PAUSE_1_S, TURN, PAUSE_1_S, TURN, PAUSE_1_S, TURN, PAUSE_1_S, TURN, PAUSE_1_S, TURN, PAUSE_1_S,
    TURN, PAUSE_1_S, TURN,
];
const HIGH_PASS: &[&str] = &[r#"{"do":"high_pass","hz":0.5}"#, r#"{"wait":5}"#];
const ASK: &[&str] = &[r#"{"do":"ask_finger"}"#];
const STILL: &[&str] = &[r#"{"do":"ask_still"}"#, r#"{"wait":10}"#];
const RESCAN: &[&str] = &[r#"{"do":"rescan"}"#];
/// Again and again, because the link may be lost just now.
const RECORD: &[&str] =
    &[r#"{"do":"record"}"#, r#"{"wait":1.2}"#, r#"{"do":"record"}"#, r#"{"wait":1.2}"#, r#"{"do":"record"}"#];
const WARM: &[&str] = &[r#"{"do":"manoeuvre","what":"warm_hand"}"#, r#"{"wait":230}"#];
const CABLE_AWAY: &[&str] = &[
    r#"{"do":"move","part":"cable1","x":44,"y":66}"#,
    r#"{"do":"move","part":"cable2","x":66,"y":70}"#,
    r#"{"wait":5}"#,
];

/// Beside the remedy.
const OTHER_CABLE: &[&str] = &[r#"{"do":"swap_cable"}"#];

const YES: super::claim::Bound = Over(1.0);
const NO: super::claim::Bound = Under(0.0);

/// Of each fault that can be mended, what is seen of it alone and goes with its remedy: the claims that no text spells out. Where a
/// text says more of its remedy, a claim in the table is about that.
pub fn gone_by_remedy() -> Vec<Claim> {
    let all = claims();
    let told = |fault: &str| all.iter().any(|c| c.field == "remedy" && c.fault == fault);
    let by_fault_alone = |c: &Claim| c.opposite().contains(&Opposite::None);
    let seen_alone = |c: &Claim| c.least_share == 1.0 && !c.apart && c.course.does == Does::Steps(&[]);
    let mendable = |c: &Claim| fault::named(c.fault).is_some_and(|f| f.curable) && !told(c.fault);
    all.iter()
        .filter(|c| c.field == "seen" && by_fault_alone(c) && seen_alone(c) && mendable(c))
        .map(gone)
        .collect()
}

/// All claims that quote a text.
pub fn claims() -> Vec<Claim> {
    vec![
        seen("recorder_off", "indicator light is off", LIGHT, NO),
        seen("recorder_off", "computer sees no recorder", FOUND, NO),
        seen("recorder_off", "trace stays empty", SAMPLES, NO),
        test(
            "recorder_off",
            "its indicator light comes on",
            &[r#"{"do":"switch","id":"recorder","on":true}"#],
            1.0,
            LIGHT_THEN,
            YES,
        )
        .against("power_strip_off"),
        remedy("recorder_off", "Switch the recorder on", FOUND_THEN, YES).against("power_cord_out"),
        seen("power_cord_out", "indicator light is off", LIGHT, NO),
        seen("power_cord_out", "computer sees no recorder", FOUND, NO),
        test(
            "power_cord_out",
            "The recorder’s switch does nothing",
            &[r#"{"do":"switch","id":"recorder","on":true}"#],
            1.0,
            LIGHT_THEN,
            NO,
        )
        .against("recorder_off"),
        test("power_cord_out", "other things on the power strip work", &[], 0.0, STRIP_LIGHT, YES)
            .against("power_strip_off"),
        seen("power_strip_off", "indicator light is off", LIGHT, NO),
        seen("power_strip_off", "computer sees no recorder", FOUND, NO),
        seen("power_strip_off", "Everything else on the power strip is off too", STRIP_LIGHT, NO)
            .against("recorder_off"),
        seen("data_cable_out", "indicator light is on", LIGHT, YES).against("recorder_off"),
        seen("data_cable_out", "computer sees no recorder", FOUND, NO),
        test("data_cable_out", "Let the computer look again: it finds nothing", RESCAN, 1.0, FOUND_THEN, NO)
            .against("not_rescanned"),
        seen("charge_port", "indicator light is on", LIGHT, YES).against("recorder_off"),
        seen("charge_port", "Every plug is in", PLUGS_OUT, NO).against("data_cable_out"),
        seen("charge_port", "computer sees no recorder", FOUND, NO),
        test("charge_port", "Let the computer look again: it finds nothing", RESCAN, 1.0, FOUND_THEN, NO)
            .against("not_rescanned"),
        test(
            "charge_port",
            "In another port it finds the recorder at once",
            &[r#"{"do":"plug","end":"data_computer","socket":"port1"}"#],
            1.0,
            FOUND_THEN,
            YES,
        )
        .against("data_cable_out"),
        seen("port_drops", "The recorder comes and goes", LOSSES, Over(1.0))
            .watched(60.0)
            .against_none()
            .against("not_rescanned"),
        seen("port_drops", "a recording ends by itself", RECORDS_THEN, NO).doing(RECORD, 60.0),
        test(
            "port_drops",
            "In the other port it stops",
            &[r#"{"do":"plug","end":"data_computer","socket":"port2"}"#, r#"{"do":"record"}"#],
            40.0,
            RECORDS_THEN,
            YES,
        )
        .against("data_cable_out"),
        seen("not_rescanned", "indicator light is on", LIGHT, YES).against("recorder_off"),
        seen("not_rescanned", "All cables are right", PLUGS_OUT, NO).against("data_cable_out"),
        seen("not_rescanned", "computer sees no recorder", FOUND, NO),
        test("not_rescanned", "it finds the recorder", RESCAN, 1.0, FOUND_THEN, YES).against("charge_port"),
        seen("wrong_input", "No pulse, at most a weak hum", SPREAD, Under(1.0)),
        seen("wrong_input", "A tap on the sensor does nothing", TAP, Under(0.1))
            .doing(TAP_IT, 1.0)
            .against("sensor_off_finger"),
        test(
            "wrong_input",
            "Show the input that the plug is in, and you see the tap",
            &[r#"{"do":"input","n":3}"#, r#"{"wait":1}"#, r#"{"do":"tap_sensor"}"#],
            1.0,
            TAP,
            Over(0.5),
        )
        .against("sensor_out"),
        seen("sensor_out", "No pulse, at most a weak hum", SPREAD, Under(1.0)),
        seen("sensor_out", "A tap on the sensor does nothing", TAP, Under(0.1))
            .doing(TAP_IT, 1.0)
            .against("sensor_off_finger"),
        seen("sensor_off_finger", "A quiet trace without a pulse", SPREAD, Under(0.1)),
        seen("sensor_off_finger", "A tap on the sensor shows as a spike", TAP, Over(0.5))
            .doing(TAP_IT, 1.0)
            .against("sensor_out"),
        seen("trace_hidden", "The clock runs", RUNS, Over(1.0)).doing(&[], 1.0).against("recorder_off"),
        seen("trace_hidden", "there is no trace at all", DRAWN, NO)
            .against_none()
            .against("off_zero")
            .against("paused")
            .against("wrong_input"),
        seen("trace_hidden", "Even a tap shows nothing", DRAWN_THEN, NO).doing(TAP_IT, 1.0),
        seen("paused", "A good trace", LIKENESS, Over(0.8)).against("sensor_out"),
        seen("paused", "that does not move", LIVE, NO).against_none().against("not_recording"),
        seen("paused", "Taps show nothing", LIVE_THEN, NO).doing(TAP_IT, 1.0),
        seen("plug_half_in", "The pulse is lost and comes back", JUMPS, Over(2.0)).watched(40.0),
        test("plug_half_in", "the trace jumps when your fingers move", WIGGLE, 1.0, ANSWERED, Over(7.0))
            .against("cable_broken")
            .throughout()
            .against("port_drops"),
        seen("cable_broken", "The pulse is lost or jumps", JUMPS, Over(2.0)).watched(40.0),
        seen("range_small", "Flat tops or flat feet exactly at the edge", AT_ENDS, Over(0.02))
            .against_none()
            .against("strap_tight")
            .against("wrong_scale"),
        test(
            "range_small",
            "Filters do not bring the tops back",
            &[r#"{"do":"low_pass","hz":10}"#],
            10.0,
            AT_ENDS_THEN,
            Over(0.01),
        ),
        test(
            "range_small",
            "Choose a larger range: you see whole waves",
            SUITS,
            10.0,
            CUT_BEATS_THEN,
            Under(0.3),
        )
        .undone()
        .against("off_zero"),
        seen("range_large", "A trace that is nearly flat", FILL, Under(0.08)),
        test("range_large", "its millivolts stay the same", SUITS, 12.0, VOLTS_KEPT, Within(0.8, 1.25))
            .against("finger_cold")
            .against("sensor_out")
            .against("wrong_input")
            .against("sensor_upside_down")
            .against("strap_loose")
            .against("wrong_scale"),
        test("range_large", "the pulse is taller on the screen", SUITS, 12.0, FILL_THEN, Over(0.15)).undone(),
        seen("off_zero", "The trace is along one edge, or you cannot see it", OFF_MIDDLE, Over(0.5)),
        test(
            "off_zero",
            "Zero the trace: it comes back",
            &[r#"{"do":"zero"}"#],
            12.0,
            OFF_MIDDLE_THEN,
            Under(0.4),
        )
        .undone(),
        seen("time_base_fast", "never two beats side by side", BEATS_SHOWN, Under(1.5))
            .against_none()
            .against("low_pass_low")
            .against("paused"),
        test(
            "time_base_fast",
            "Choose a longer time base: you see beats",
            &[r#"{"do":"time_base","s":10}"#],
            0.0,
            BEATS_SHOWN_THEN,
            Over(5.0),
        )
        .undone(),
        seen("time_base_slow", "Many narrow waves, too close together to count", BEATS_SHOWN, Over(40.0)),
        seen("sampling_slow", "Waves with corners", SAMPLES_A_BEAT, Under(60.0))
            .against_none()
            .against("low_pass_low"),
        seen("polarity_over", "The steep side falls, and the gentle side rises", FALL_OVER_RISE, Over(1.2))
            .against_none()
            .against("high_pass_high"),
        test(
            "polarity_over",
            "the steep side of a correct pulse goes up",
            &[r#"{"do":"invert","on":false}"#],
            10.0,
            FALL_OVER_RISE_THEN,
            Under(0.9),
        )
        .undone(),
        seen("low_pass_low", "smaller than before", HEIGHT, Under(0.9)),
        seen("low_pass_low", "Round", FINE_OF_USUAL, Under(0.8)),
        seen("low_pass_low", "late waves", LATE, Over(60.0)),
        seen(
            "low_pass_low",
            "The dicrotic notch and the second bump nearly disappear",
            NOTCH_DEPTH,
            Under(0.025),
        ),
        seen("high_pass_high", "Narrow, sharp waves", WIDTH, Under(0.8)),
        seen("high_pass_high", "falls low after each peak", BELOW, Over(0.15)),
        seen("high_pass_high", "a second bump often stands out", SECOND, Over(0.12)).often(0.6),
        seen("plain_input", "Narrow, sharp waves", WIDTH, Under(0.8)),
        seen("plain_input", "dip low after each peak", BELOW, Over(0.15)),
        test(
            "plain_input",
            "Turn the high-pass filter off: nothing changes",
            &[r#"{"do":"high_pass","hz":null}"#],
            12.0,
            WIDTH_THEN,
            Under(0.8),
        )
        .against("high_pass_high"),
        test(
            "plain_input",
            "Switch the buffer on: the wave is wide again",
            &[r#"{"do":"buffered","on":true}"#],
            30.0,
            WIDTH_THEN,
            Over(0.85),
        )
        .undone()
        .against("high_pass_high")
        .against("plug_damp"),
        test(
            "high_pass_high",
            "Set the high-pass filter lower: the wave is wide again",
            &[r#"{"do":"high_pass","hz":null}"#],
            30.0,
            WIDTH_THEN,
            Over(0.85),
        )
        .undone()
        .against("plain_input"),
        seen(
            "wrong_scale",
            "the numbers on the axis are a thousand times too large",
            NUMBERS,
            Within(700.0, 1400.0),
        ),
        seen("strap_loose", "A small pulse", HEIGHT, Under(0.6)),
        test("strap_loose", "the pulse grows while you press", PRESS, 2.2, GROWTH, Over(1.3))
            .against("finger_cold"),
        seen("strap_tight", "A small", HEIGHT, Under(0.5)),
        seen("strap_tight", "small, round pulse", HEIGHT, Over(0.03)).against("sensor_out"),
        seen("strap_tight", "round", FINE_LEFT, Under(0.6)),
        seen("strap_tight", "that slowly gets smaller", LAST_OVER_FIRST, Under(0.8)).watched(55.0).apart(),
        seen("strap_tight", "The fingertip is dark", DUSKY, YES).watched(30.0),
        test("strap_tight", "Ask: the finger throbs", ASK, 0.0, SAYS_THROBS, YES)
            .against("finger_cold")
            .against("low_pass_low")
            .against("strap_loose"),
        test(
            "strap_tight",
            "the pulse comes back within a minute",
            &[r#"{"do":"strap","tightness":0.72}"#, r#"{"wait":50}"#],
            10.0,
            HEIGHT_THEN,
            Over(0.7),
        )
        .against("finger_cold"),
        seen("sensor_upside_down", "none with a light sensor", SIZE_LIGHT, Under(0.1)),
        seen("sensor_upside_down", "A tenth of the usual pulse", HEIGHT_PAD, Within(0.04, 0.2))
            .against("sensor_off_pulp"),
        seen("sensor_upside_down", "A tap on the sensor still shows well", TAP, Over(0.5))
            .doing(TAP_IT, 1.0)
            .against("sensor_out"),
        test("sensor_upside_down", "the finger is warm", ASK, 0.0, SAYS_WARM, YES).against("finger_cold"),
        test("sensor_upside_down", "to press helps little", PRESS, 2.2, GROWTH, Under(1.4))
            .against("strap_loose"),
        test("sensor_upside_down", "look at the sides of the sensor", &[], 0.0, FACE_AWAY, YES)
            .against("sensor_off_pulp"),
        seen(
            "sensor_off_pulp",
            "A pulse of a quarter to a half of the usual size",
            HEIGHT,
            Within(0.15, 0.6),
        ),
        test(
            "sensor_off_pulp",
            "the pulse grows",
            &[r#"{"do":"sensor_place","place":"pulp"}"#, r#"{"wait":5}"#],
            10.0,
            GROWTH,
            Over(1.4),
        )
        .against("finger_cold")
        .against("strap_loose"),
        seen("finger_cold", "A small pulse", HEIGHT, Under(0.5)),
        seen("finger_cold", "Nothing else disturbs the trace", QUIET, Under(1.3)).against("talking"),
        test("finger_cold", "the finger is cold", ASK, 0.0, SAYS_COLD, YES),
        test(
            "finger_cold",
            "To press, or to tighten the strap, does not help",
            PRESS,
            2.2,
            GROWTH,
            Under(1.5),
        )
        .against("strap_loose"),
        test("finger_cold", "Warmth helps within minutes", WARM, 10.0, GROWTH, Over(1.5))
            .against("strap_loose"),
        seen("hand_low", "A small pulse", HEIGHT, Under(0.6)),
        seen("hand_low", "on a quiet trace", QUIET, Under(1.3)).against("talking"),
        test(
            "hand_low",
            "the pulse grows at once",
            &[r#"{"do":"hand_height","cm":0}"#, r#"{"wait":3}"#],
            6.0,
            GROWTH,
            Over(1.4),
        )
        .against("finger_cold")
        .against("strap_slips"),
        test("hand_low", "The finger is warm", ASK, 0.0, SAYS_WARM, YES).against("finger_cold"),
        test("hand_low", "the strap fits well", &[], 0.0, STRAP_SNUG, YES).against("strap_loose"),
        remedy("hand_on_laptop", "Put the other hand in the lap", HUM_CHANGE, Under(0.9)).undone(),
        remedy_by("hand_on_laptop", "take another sensor cable", OTHER_CABLE, HUM_THEN, Under(0.1)).undone(),
        remedy("wrong_notch", "Move the sensor cable off the power strip", HUM_CHANGE, Under(0.5)).undone(),
        remedy_by("wrong_notch", "take another sensor cable", OTHER_CABLE, HUM_THEN, Under(0.1)).undone(),
        seen("strap_slips", "A pulse that was good", FIRST, Over(0.6)).fresh().against("strap_loose"),
        seen("strap_slips", "gets small within seconds and stays small", HEIGHT_THEN, Under(0.5))
            .doing(&[], 12.0),
        test("strap_slips", "The strap seems to fit well", &[], 0.0, STRAP_SNUG, YES).against("strap_loose"),
        test("strap_slips", "the pulse is back while you press", PRESS, 2.2, GROWTH, Over(1.5))
            .against("finger_cold"),
        remedy("strap_slips", "Take the strap off and put it on again", HEIGHT_THEN, Over(0.7))
            .against("finger_cold"),
        seen("cable_on_power_strip", "A thick trace", HUM, Over(0.1))
            .against_none()
            .against("sampling_slow")
            .against("time_base_slow"),
        test(
            "cable_on_power_strip",
            "Move the sensor cable: the hum changes",
            CABLE_AWAY,
            10.0,
            HUM_CHANGE,
            Under(0.5),
        )
        .against("hand_on_laptop"),
        remedy("cable_on_power_strip", "far from the power strip", HUM_CHANGE, Under(0.5)).undone(),
        remedy_by("cable_on_power_strip", "take another sensor cable", OTHER_CABLE, HUM_THEN, Under(0.1))
            .undone(),
        seen("charger_near", "A thick trace", HUM, Over(0.1)),
        remedy("charger_near", "Unplug the charger", HUM_CHANGE, Under(0.9)).undone(),
        remedy_by("charger_near", "take another sensor cable", OTHER_CABLE, HUM_THEN, Under(0.1)).undone(),
        seen("charger_near", "the sharp small waves", HARMONICS, Over(0.25)).against("cable_on_power_strip"),
        test(
            "charger_near",
            "unplug the charger from its outlet: the hum is gone at once",
            &[r#"{"do":"charger","plugged":false}"#],
            6.0,
            HUM_CHANGE,
            Under(0.3),
        )
        .against("cable_on_power_strip")
        .against("phone_near"),
        seen("hand_on_laptop", "A thick trace with power-line hum", HUM, Over(0.1)),
        seen("hand_on_laptop", "wherever the sensor cable is", HUM_CHANGE, Over(0.6))
            .doing(CABLE_AWAY, 6.0)
            .against("cable_on_power_strip"),
        test(
            "hand_on_laptop",
            "the hum gets smaller at once",
            &[r#"{"do":"other_hand","on":"lap"}"#],
            6.0,
            HUM_CHANGE,
            Under(0.5),
        )
        .against("cable_on_power_strip")
        .against("charger_near"),
        seen("wrong_notch", "A thick trace", HUM, Over(0.1)),
        seen("wrong_notch", "although the notch filter is on", NOTCH_ON, YES)
            .against("cable_on_power_strip")
            .against("charger_near"),
        seen("filtered_away", "A smooth trace", HUM, Under(0.05)).against("cable_on_power_strip"),
        seen("filtered_away", "With the filters off it is thick", HUM_THEN, Over(0.1))
            .doing(&[r#"{"do":"notch","hz":null}"#, r#"{"do":"low_pass","hz":null}"#, r#"{"wait":1}"#], 6.0)
            .against_none()
            .against("low_pass_low"),
        seen("phone_near", "Groups of thin spikes", SPIKES, Over(0.06))
            .against_none()
            .against("plug_half_in")
            .against("time_base_slow")
            .against("trembling"),
        seen("phone_near", "with quiet gaps between them", SPIKE_GAPS, Over(0.2))
            .against("cable_on_power_strip"),
        test(
            "phone_near",
            "Move the phone away: they get much smaller",
            &[r#"{"do":"move","part":"phone","x":150,"y":70}"#],
            10.0,
            SPIKES_CHANGE,
            Under(0.25),
        )
        .undone(),
        seen("room_light", "Fine small waves at twice the power-line frequency", FLICKER, Over(0.05)),
        seen("room_light", "at twice the power-line frequency", TWICE, Over(3.0))
            .against("cable_on_power_strip")
            .against("charger_near"),
        test(
            "room_light",
            "Cover the finger or turn the desk lamp off: they are gone",
            &[r#"{"do":"shade","on":true}"#],
            6.0,
            FLICKER_THEN,
            Under(0.02),
        )
        .undone(),
        test("cable_taut", "Look at the sensor cable: it is tight", &[], 0.0, SLACK, Under(4.0))
            .against("plug_half_in")
            .against("moving"),
        seen("cable_taut", "Jumps and fast swings", FAST, Over(1.5)).watched(20.0).wide(),
        test(
            "cable_taut",
            "Ask the subject to keep still: the jumps go on",
            STILL,
            20.0,
            FAST_THEN,
            Over(1.5),
        )
        .against("moving")
        .wide(),
        seen("moving", "many times as tall as the pulse", EXTRA, Over(3.0))
            .watched(30.0)
            .wide()
            .against_none()
            .against("tapping"),
        test("moving", "Look at the hand", &[], 0.0, HAND_MOVES, YES)
            .against("plug_half_in")
            .against("cable_broken")
            .against("breath_drift")
            .against("talking")
            .against("noisy_window"),
        test("moving", "keep still: the jumps stop", STILL, 20.0, EXTRA_THEN, Under(1.0))
            .against("cable_taut")
            .wide(),
        seen("tapping", "Sharp waves two or three times per second", FAST, Over(0.5))
            .against_none()
            .against("premature"),
        test("tapping", "Ask the subject to keep still: they stop", STILL, 10.0, FAST_GAIN, Under(1.6))
            .undone(),
        seen("talking", "slow waves under the beats", SLOW, Within(0.3, 2.5)).watched(20.0).wide(),
        seen("talking", "under the beats", AT_ENDS, Under(0.1)).watched(20.0).against("range_small"),
        seen("talking", "a heart rate a little higher than at rest", RATE, Within(1.03, 1.3))
            .watched(40.0)
            .wide()
            .apart(),
        test(
            "talking",
            "they stop within half a minute",
            &[r#"{"do":"ask_quiet"}"#, r#"{"wait":12}"#],
            18.0,
            WANDER_LEFT,
            Under(2.2),
        )
        .watched(20.0)
        .undone()
        .wide(),
        test("talking", "Listen and look", &[], 0.0, TALKS, YES).against("breath_drift"),
        test("sighing", "Watch the chest", &[], 0.0, SIGHS, YES).against("premature").against("strap_slips"),
        seen("sighing", "The beats get small for some seconds", SMALLEST, Under(0.8)).watched(40.0),
        seen("sighing", "recover by themselves", TALLEST, Over(0.6)).watched(40.0).against("finger_cold"),
        seen("sighing", "The rhythm goes on", INTERVALS_EVEN, Within(0.88, 1.1))
            .watched(40.0)
            .against("sensor_off_finger"),
        seen("breath_drift", "The beats go up and down on a slow wave", DRIFT, Over(0.4)),
        test("breath_drift", "the slow wave comes with each breath", &[], 0.0, WITH_BREATH, Over(0.6))
            .watched(50.0)
            .against("talking"),
        test(
            "breath_drift",
            "A high-pass filter of 0.5 Hz makes it smaller",
            HIGH_PASS,
            20.0,
            DRIFT_CHANGE,
            Under(0.8),
        )
        .undone(),
        remedy("breath_drift", "Set the high-pass filter to 0.5 Hz", DRIFT_CHANGE, Under(0.8)).undone(),
        seen("trembling", "Uneven waves on the pulse", TREMOR, Over(0.08)),
        test(
            "trembling",
            "Rest the arm: they get smaller",
            &[r#"{"do":"rest_arm"}"#, r#"{"wait":2}"#],
            10.0,
            TREMOR_CHANGE,
            Under(0.6),
        )
        .against("cable_on_power_strip"),
        seen("premature", "A short beat interval", UNEVEN, Over(0.45)).watched(40.0),
        seen("premature", "then a long one", LONGEST, Over(1.4)).watched(40.0),
        seen("not_recording", "A good trace", LIKENESS, Over(0.8)).against("sensor_out"),
        seen("not_recording", "no recording", RECORDINGS, NO).against("stopped_early"),
        seen("stopped_early", "too short for the counting window", RECORDED, Under(14.0))
            .against("others_file"),
        seen("noisy_window", "Swings and spikes between the cursors", IN_WINDOW, Over(1.5))
            .against("window_misread")
            .wide(),
        seen("noisy_window", "a clean pulse elsewhere in the same recording", ELSEWHERE, Under(0.6))
            .against("window_misread")
            .wide(),
        seen(
            "window_misread",
            "A number of seconds that does not fit the cursors",
            INTERVAL_A_TO_B,
            Over(0.5),
        )
        .against("wrong_multiplier"),
        seen("wrong_multiplier", "the counting window is not ten seconds long", A_TO_B, Over(12.0)).apart(),
        seen("wrong_multiplier", "A count is multiplied by six", MULTIPLIER, Within(6.0, 6.0))
            .against("window_misread"),
        seen("others_file", "A recording that was there before you made one", RECORDINGS, YES).apart(),
        seen("table_shaken", "Groups of short swings", FAST, Over(0.8)),
        test("table_shaken", "the swings go on", STILL, 20.0, FAST_GAIN, Over(3.0))
            .against("moving")
            .against("tapping")
            .wide(),
        test("table_shaken", "The sensor cable is loose", &[], 0.0, SLACK, Over(8.0)).against("cable_taut"),
        test(
            "table_shaken",
            "With the arm on a cushion they are much smaller",
            &[r#"{"do":"rest_arm"}"#, r#"{"wait":2}"#],
            12.0,
            FAST_GAIN,
            Under(6.0),
        )
        .undone()
        .wide(),
        seen("cable_on_computer", "A thick trace with even small waves", BUZZ, Over(0.1)),
        test("cable_on_computer", "slower than hum", &[], 0.0, BUZZ_OVER_HUM, Over(1.5))
            .against("cable_on_power_strip"),
        test("cable_on_computer", "faster than trembling", &[], 0.0, BUZZ_OVER_TREMOR, Over(1.0))
            .against("trembling"),
        test(
            "cable_on_computer",
            "Move the sensor cable away: they are gone",
            CABLE_AWAY,
            10.0,
            BUZZ_CHANGE,
            Under(0.3),
        )
        .undone(),
        seen("hum_folded", "The beats often change their shape and height", LIKENESS, Under(0.97))
            .often(0.85),
        test(
            "hum_folded",
            "the slow wave turns into a thick trace of hum",
            &[r#"{"do":"rate","hz":1000}"#, r#"{"wait":2}"#],
            10.0,
            HUM_THEN,
            Over(0.1),
        )
        .against("breath_drift")
        .against("sampling_slow"),
        seen("hum_folded", "as if there were a second, slow pulse", SAMPLES_A_BEAT, Under(90.0))
            .against("cable_on_power_strip"),
        seen("bits_few", "steps of equal height", LEVEL, Over(0.014)),
        test(
            "bits_few",
            "Choose 16 bits: the steps are gone",
            &[r#"{"do":"bits","n":16}"#, r#"{"wait":1}"#],
            10.0,
            LEVEL_THEN,
            Under(0.005),
        )
        .undone(),
        test("bits_few", "keeps its height on the screen", &[], 0.0, FILL, Over(0.085))
            .against("range_large"),
        seen("bits_few", "A pulse made of steps", SAMPLES_A_BEAT, Over(100.0)).against("sampling_slow"),
        seen("bumps_counted", "twice the number of beats", COUNTED, Over(1.6))
            .against("window_misread")
            .against("wrong_multiplier"),
        seen("recorder_in_use", "indicator light is on", LIGHT, YES).against("recorder_off"),
        seen("recorder_in_use", "Every plug is in", PLUGS_OUT, NO).against("data_cable_out"),
        seen("recorder_in_use", "computer sees no recorder", FOUND, NO),
        test("recorder_in_use", "it finds nothing", RESCAN, 1.0, FOUND_THEN, NO).against("not_rescanned"),
        test(
            "recorder_in_use",
            "In another port it finds nothing either",
            &[r#"{"do":"plug","end":"data_computer","socket":"port2"}"#],
            1.0,
            FOUND_THEN,
            NO,
        )
        .against("charge_port"),
        test("recorder_in_use", "another program is open", &[], 0.0, OTHER_PROGRAM, YES),
        remedy("recorder_in_use", "Then close it", FOUND_THEN, YES).against("charge_port"),
        seen("plug_damp", "Narrow waves", WIDTH, Under(0.85)),
        seen("plug_damp", "smaller than before", HEIGHT, Under(0.9)),
        test("plug_damp", "The high-pass filter is off", &[], 0.0, HIGH_PASS_OFF, YES)
            .against("high_pass_high"),
        test("plug_damp", "Wiggle the plug: nothing changes", WIGGLE, 1.0, ANSWERED, Under(3.0))
            .against("plug_half_in")
            .throughout(),
        test("plug_damp", "Look at the plug", &[], 0.0, DAMP, YES).against("plain_input"),
        seen("light_sensor_dirty", "A small pulse", HEIGHT, Under(0.5)).against_none().against("range_large"),
        test("light_sensor_dirty", "the pulse stays small", PRESS, 2.2, GROWTH, Under(1.4))
            .against("strap_loose"),
        test("light_sensor_dirty", "the finger is warm", ASK, 0.0, SAYS_WARM, YES).against("finger_cold"),
        test("light_sensor_dirty", "Look at the sensing side", &[], 0.0, SMEAR, YES),
        remedy("light_sensor_dirty", "Wipe its sensing side", HEIGHT_THEN, Over(0.8)).against("finger_cold"),
        seen("sleeve_tight", "A small", HEIGHT, Under(0.6)),
        seen("sleeve_tight", "round pulse", FINE_LEFT, Under(0.85)),
        seen("sleeve_tight", "a dark fingertip", DUSKY, YES).against_none().against("hand_low"),
        seen("sleeve_tight", "the strap fits well", STRAP_SNUG, YES).against("strap_tight"),
        test("sleeve_tight", "the whole hand feels full", ASK, 0.0, SAYS_FULL, YES)
            .against("strap_tight")
            .against("finger_cold"),
        test(
            "sleeve_tight",
            "Loosen the strap: nothing changes",
            &[r#"{"do":"strap","tightness":0.66}"#, r#"{"wait":40}"#],
            10.0,
            HEIGHT_THEN,
            Under(0.6),
        )
        .against("strap_tight"),
        test("sleeve_tight", "Look at the forearm", &[], 0.0, SLEEVE, YES),
        test(
            "sleeve_tight",
            "the pulse grows within half a minute",
            &[r#"{"do":"push_up_sleeve"}"#, r#"{"wait":25}"#],
            6.0,
            HEIGHT_THEN,
            Over(0.8),
        )
        .undone(),
        seen("thumb_on_sensor", "Two pulses", LIKENESS, Under(0.965)),
        test("thumb_on_sensor", "Look at the sensor", &[], 0.0, THUMB, YES)
            .against("premature")
            .against("tapping")
            .against("moving"),
        test(
            "thumb_on_sensor",
            "one pulse is left",
            &[r#"{"do":"strap","tightness":0.72}"#, r#"{"wait":3}"#],
            12.0,
            LIKENESS_THEN,
            Over(0.975),
        )
        .undone(),
        seen("breath_rhythm", "shorter and longer little by little", SWING_WITH_BREATH, Over(0.2))
            .watched(60.0),
        test(
            "breath_rhythm",
            "the rhythm often goes with each breath",
            &[],
            0.0,
            RHYTHM_WITH_BREATH,
            Over(0.35),
        )
        .watched(60.0)
        .often(0.9)
        .against("premature"),
        seen("not_rested", "a heart rate well above", RATE, Over(1.14))
            .against_none()
            .against("talking")
            .apart(),
        test("not_rested", "the heart rate is lower", &[r#"{"wait":180}"#], 20.0, RATE_THEN, Under(0.95)),
    ]
}
