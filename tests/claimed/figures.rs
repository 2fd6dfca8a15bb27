//! The figures that claims speak of. Each is worked out from the trace or from what the page shows.

use super::claim::{Figure, NOT_HERE};
use super::shot::{Shot, part, rms};
use dicrotic::math::{TAU, cos, sin};

// What the page shows: 1 for yes, 0 for no.
pub const SHIELD_TORN: Figure = Figure("shield looks torn", |s| s.shown.is("/bench/cable/shield", "damaged"));
pub const LIGHT: Figure = Figure("recorder's light is on", |s| s.shown.is("/bench/lamps/recorder", true));
pub const LIGHT_THEN: Figure =
    Figure("recorder's light is on then", |s| s.then.is("/bench/lamps/recorder", true));
pub const FOUND: Figure = Figure("computer sees the recorder", |s| s.shown.is("/link/seen", true));
pub const FOUND_THEN: Figure = Figure("computer sees the recorder then", |s| s.then.is("/link/seen", true));
pub const STRIP_LIGHT: Figure =
    Figure("power strip's light is on", |s| s.shown.is("/bench/lamps/power_strip", true));
pub const SAMPLES: Figure = Figure("samples of trace", |s| s.shown.samples as f64);
pub const PLUGS_OUT: Figure = Figure("plugs on the table", |s| {
    let ends = s.shown.view["bench"]["ends"].as_array().unwrap();
    ends.iter().filter(|end| end["socket"].is_null()).count() as f64
});
pub const LOSSES: Figure = Figure("times the link is lost", |s| f64::from(s.shown.losses));
pub const RECORDS_THEN: Figure = Figure("still records", |s| s.then.is("/recording/on", true));
pub const DRAWN: Figure = Figure("trace is drawn", |s| s.shown.is("/recorder/shown", true));
pub const DRAWN_THEN: Figure = Figure("trace is drawn then", |s| s.then.is("/recorder/shown", true));
pub const RUNS: Figure =
    Figure("seconds of samples that come", |s| (s.then.samples - s.shown.samples) as f64 / s.shown.rate_hz);
pub const LIVE: Figure = Figure("screen is live", |s| s.shown.is("/trace/mode", "live"));
pub const LIVE_THEN: Figure = Figure("screen is live then", |s| s.then.is("/trace/mode", "live"));
pub const NOTCH_ON: Figure =
    Figure("notch filter is on", |s| 1.0 - s.shown.is("/recorder/notch_hz", serde_json::Value::Null));
pub const DUSKY: Figure = Figure("fingertip is dark", |s| s.shown.is("/bench/hand/looks", "dusky"));
pub const HAND_MOVES: Figure = Figure("hand moves to the eye", |s| s.shown.is("/bench/hand/looks", "moving"));
pub const TALKS: Figure = Figure("subject is heard to talk", |s| s.shown.is("/bench/voice", "talking"));
pub const SIGHS: Figure = Figure("subject is heard to sigh", |s| s.shown.is("/bench/voice", "sighing"));
pub const STRAP_LOOSE: Figure = Figure("strap looks loose", |s| s.shown.is("/bench/strap/feel", "loose"));
pub const STRAP_TIGHT: Figure = Figure("strap looks tight", |s| s.shown.is("/bench/strap/feel", "tight"));
pub const STRAP_SNUG: Figure = Figure("strap looks well fitted", |s| s.shown.is("/bench/strap/feel", "snug"));
pub const FACE_AWAY: Figure = Figure("sensing side looks away", |s| s.shown.is("/bench/strap/side", "away"));
pub const AT_TIP: Figure = Figure("sensor looks on the tip", |s| s.shown.is("/bench/strap/place", "pulp"));
pub const ON_FINGER: Figure = Figure("sensor looks on the finger", |s| s.shown.is("/bench/strap/on", true));
pub const SAYS_COLD: Figure = Figure("says: cold", |s| s.then.is("/bench/said", "finger_cold"));
pub const SAYS_WARM: Figure = Figure("says: warm", |s| s.then.is("/bench/said", "finger_warm"));
pub const SAYS_FULL: Figure = Figure("says: the hand feels full", |s| s.then.is("/bench/said", "hand_full"));
pub const SLEEVE: Figure = Figure("sleeve looks tight", |s| s.shown.is("/bench/sleeve_tight", true));
pub const THUMB: Figure = Figure("thumb is seen on the sensor", |s| s.shown.is("/bench/thumb_holds", true));
pub const SMEAR: Figure = Figure("smear is seen", |s| s.shown.is("/bench/smeared", true));
pub const DAMP: Figure = Figure("plug looks damp", |s| s.shown.is("/bench/plug_damp", true));
pub const OTHER_PROGRAM: Figure =
    Figure("another program is open", |s| s.shown.is("/bench/other_program", true));
pub const HIGH_PASS_OFF: Figure =
    Figure("high-pass filter is off", |s| s.shown.is("/recorder/high_pass_hz", serde_json::Value::Null));
pub const SAYS_THROBS: Figure = Figure("says: it throbs", |s| s.then.is("/bench/said", "finger_throbs"));
pub const SLACK: Figure = Figure("spare sensor cable, cm", |s| s.shown.number("/bench/cable/slack_cm"));
pub const HAND_HEIGHT: Figure = Figure("height of the hand, cm", |s| s.shown.number("/bench/hand/height_cm"));
pub const RECORDINGS: Figure =
    Figure("recordings", |s| s.shown.view["recordings"].as_array().unwrap().len() as f64);
pub const RECORDED: Figure = Figure("length of the recording, s", |s| {
    let all = s.shown.view["recordings"].as_array().unwrap();
    all.last().map_or(f64::NAN, |r| r["duration_s"].as_f64().unwrap())
});
pub const INTERVAL_A_TO_B: Figure = Figure("seconds on the sheet less A to B", |s| {
    (s.shown.number("/worksheet/seconds/value") - s.shown.number("/cursors/interval_s")).abs()
});
pub const MULTIPLIER: Figure =
    Figure("multiplier on the sheet", |s| s.shown.number("/worksheet/multiplier/value"));
pub const A_TO_B: Figure = Figure("A to B, s", |s| s.shown.number("/cursors/interval_s"));

/// How far the shown recording goes from one second to another of it.
fn goes(shot: &Shot, from_s: f64, to_s: f64) -> f64 {
    let at = |t: f64| ((t * shot.rate_hz).max(0.0) as usize).min(shot.recorded.len());
    let run = &shot.recorded[at(from_s).min(at(to_s))..at(to_s)];
    part(run, 1.0) - part(run, 0.0)
}
pub const IN_WINDOW: Figure = Figure("A to B over the usual trace", |s| {
    goes(s.shown, s.shown.number("/cursors/a"), s.shown.number("/cursors/b")) / s.usual.spread()
});
pub const ELSEWHERE: Figure = Figure("17 to 35 s of the recording over A to B", |s| {
    goes(s.shown, 17.0, 35.0) / goes(s.shown, s.shown.number("/cursors/a"), s.shown.number("/cursors/b"))
});

// Sizes.
fn share(shot: &Shot, usual: &Shot) -> f64 {
    shot.height() / usual.height()
}
fn spread(shot: &Shot, usual: &Shot) -> f64 {
    shot.spread() / usual.height()
}
pub const HEIGHT: Figure = Figure("pulse over the usual", |s| share(s.shown, s.usual));
pub const HEIGHT_PAD: Figure =
    Figure(
        "pulse of a pad over the usual",
        |s| if s.shown.light { NOT_HERE } else { share(s.shown, s.usual) },
    );
pub const SIZE_LIGHT: Figure = Figure("pulse of a light sensor over the usual", |s| {
    if s.shown.light { rise(s.shown) / rise(s.usual) } else { NOT_HERE }
});
pub const HEIGHT_THEN: Figure = Figure("pulse then over the usual", |s| share(s.then, s.usual_then()));
/// By the steepest rises: in a very small pulse the beats are not to be found.
pub const GROWTH: Figure = Figure("rises then over before", |s| rise(s.then) / rise(s.shown));
fn rise(shot: &Shot) -> f64 {
    part(&shot.steps(40.0), 0.985)
}
pub const VOLTS_KEPT: Figure =
    Figure("pulse then over the usual, in volts", |s| s.then.height() / s.usual_then().height());
pub const SPREAD: Figure = Figure("whole trace over the usual pulse", |s| spread(s.shown, s.usual));
pub const SPREAD_THEN: Figure = Figure("whole trace then over the usual pulse", |s| spread(s.then, s.usual));
pub const FILL: Figure =
    Figure("pulse over the screen", |s| s.shown.height() / (2.0 * s.shown.range_v * s.shown.scale));
pub const FILL_THEN: Figure =
    Figure("pulse then over the screen", |s| s.then.height() / (2.0 * s.then.range_v * s.then.scale));
pub const AT_ENDS: Figure = Figure("share of the trace at an end", |s| s.shown.at_ends());
pub const AT_ENDS_THEN: Figure = Figure("share of the trace at an end then", |s| s.then.at_ends());
/// Beats of which a part stands at an end of the range.
pub const CUT_BEATS_THEN: Figure = Figure("share of the beats that are cut off then", |s| {
    let at = |t: f64| ((t * s.then.rate_hz) as usize).min(s.then.values.len());
    let end = 0.9995 * s.then.range_v;
    // By the usual beats of the time: cut-off ones are hard to find.
    let cut: Vec<bool> = s
        .usual_then()
        .beats()
        .windows(2)
        .map(|w| s.then.values[at(w[0])..at(w[1])].iter().any(|v| v.abs() >= end))
        .collect();
    cut.iter().filter(|c| **c).count() as f64 / cut.len() as f64
});
pub const OFF_MIDDLE: Figure =
    Figure("middle of the trace off zero, of full scale", |s| s.shown.part(0.5).abs() / s.shown.range_v);
pub const OFF_MIDDLE_THEN: Figure =
    Figure("middle then off zero, of full scale", |s| s.then.part(0.5).abs() / s.then.range_v);
pub const NUMBERS: Figure = Figure("numbers on the axis over full scale", |s| {
    s.shown.view["recorder"]["scale"].as_f64().unwrap() * s.shown.height() / s.shown.scale / s.usual.height()
});
/// A tap is over in 40 ms: how far the trace goes within 15 ms, less what it did before.
pub const TAP: Figure = Figure("spike of a tap over the usual pulse", |s| {
    let far = |shot: &Shot| shot.steps(15.0).iter().fold(0.0, |m: f64, v| m.max(v.abs()));
    (far(s.then) - far(s.shown)).max(0.0) / s.usual.height()
});
pub const TAP_ON_SCREEN: Figure = Figure("spike of a tap over the screen", |s| {
    let far = |shot: &Shot| shot.steps(15.0).iter().fold(0.0, |m: f64, v| m.max(v.abs()));
    (far(s.then) - far(s.shown)).max(0.0) / (2.0 * s.then.range_v)
});

// Time.
pub const BEATS_SHOWN: Figure =
    Figure("beats on a screen", |s| s.shown.number("/time_base/s") / s.usual.interval());
pub const BEATS_SHOWN_THEN: Figure =
    Figure("beats on a screen then", |s| s.then.number("/time_base/s") / s.usual.interval());
pub const RATE_THEN: Figure =
    Figure("heart rate then over before", |s| s.shown.interval() / s.then.interval());
pub const SAMPLES_A_BEAT: Figure = Figure("samples a beat", |s| s.shown.rate_hz * s.usual.interval());
pub const RATE: Figure = Figure("heart rate over the usual", |s| s.usual.interval() / s.shown.interval());
pub const INTERVALS_EVEN: Figure =
    Figure("interval over the usual", |s| s.shown.interval() / s.usual.interval());

// Shape.
pub const FALL_OVER_RISE: Figure = Figure("steepest fall over steepest rise", |s| s.shown.steepness());
pub const FALL_OVER_RISE_THEN: Figure =
    Figure("steepest fall over steepest rise then", |s| s.then.steepness());
pub const SECOND: Figure = Figure("second bump's rise, of the whole wave", |s| rise_of_second(s.shown));
pub const SECOND_GAIN: Figure =
    Figure("second bump's rise over the usual one's", |s| rise_of_second(s.shown) / rise_of_second(s.usual));
pub const SECOND_THEN: Figure = Figure("second bump's rise then, of the peak", |s| rise_of_second(s.then));
pub const NOTCH_DEPTH: Figure = Figure("second bump's rise, of the wave, where there usually is one", |s| {
    if rise_of_second(s.usual) < 0.03 { NOT_HERE } else { rise_of_second(s.shown) }
});
/// From the notch up to the second bump.
fn rise_of_second(shot: &Shot) -> f64 {
    let parts = shot.mean().and_then(|m| m.landmarks.second_part.zip(m.landmarks.notch_part));
    parts.map_or(0.0, |(bump, notch)| bump - notch)
}
pub const CREST: Figure = Figure("foot to peak over the usual", |s| crest(s.shown) / crest(s.usual));
fn crest(shot: &Shot) -> f64 {
    shot.mean().map_or(f64::NAN, |m| m.landmarks.crest_ms)
}
/// How far the trace lies under its level between the beats: the level is where it stands just before the next upstroke.
pub const BELOW: Figure =
    Figure("dip after the peak beyond the usual one, of the peak", |s| dip(s.shown) - dip(s.usual));
pub const WIDTH: Figure = Figure("width at half height over the usual", |s| width(s.shown) / width(s.usual));
pub const WIDTH_THEN: Figure =
    Figure("width at half height then over the usual", |s| width(s.then) / width(s.usual));
fn width(shot: &Shot) -> f64 {
    shot.mean().map_or(f64::NAN, |m| m.landmarks.width50_ms)
}
pub const BELOW_THEN: Figure = Figure("the same then", |s| dip(s.then));
/// Median over the beats: the lowest point of the first half from a peak to the next, under where the trace stands before the
/// next upstroke.
fn dip(shot: &Shot) -> f64 {
    let at = |t: f64| ((t * shot.rate_hz) as usize).min(shot.values.len());
    let dips: Vec<f64> = shot
        .beats()
        .windows(2)
        .map(|w| {
            let long = w[1] - w[0];
            let (first, last) = (
                &shot.values[at(w[0])..at(w[0] + 0.5 * long)],
                &shot.values[at(w[0] + 0.6 * long)..at(w[1] - 0.2 * long)],
            );
            let level = part(last, 0.5);
            (level - part(first, 0.0)) / (shot.values[at(w[0])] - level).max(1e-12)
        })
        .collect();
    part(&dips, 0.5)
}
pub const FINE: Figure = Figure("share of the pulse's power above 4 Hz", |s| fine(s.shown));
pub const FINE_THEN: Figure = Figure("share of the pulse's power above 4 Hz then", |s| fine(s.then));
pub const FINE_LEFT: Figure =
    Figure("share of power above 4 Hz over the usual", |s| fine(s.shown) / fine(s.usual));
pub const FINE_OF_USUAL: Figure =
    Figure("steepest rise of a pulse over the usual's", |s| steep(s.shown) / steep(s.usual));
fn fine(shot: &Shot) -> f64 {
    let (all, fine) = (shot.rms(0.5, 12.0), shot.rms(4.0, 12.0));
    let share = fine / all.max(1e-12);
    share * share
}
/// Steepest rise over 20 ms of the mean beat, of its own height.
fn steep(shot: &Shot) -> f64 {
    let Some(mean) = shot.mean() else { return 0.0 };
    let rises: Vec<f64> = mean.values.windows(21).map(|w| w[20] - w[0]).collect();
    part(&rises, 1.0) / (part(&mean.values, 1.0) - part(&mean.values, 0.0))
}
/// How late the trace is against the usual one of the same time, ms: the shift at which the two are most alike.
pub const LATE: Figure = Figure("lag behind the usual trace, ms", |s| {
    let n = s.shown.values.len().min(s.usual.values.len());
    let (a, b) = (s.shown.steps(40.0), s.usual.steps(40.0));
    let alike = |lag: usize| (400..n - 100).step_by(5).map(|k| a[k] * b[k - lag]).sum::<f64>();
    (0..400).step_by(5).max_by(|x, y| alike(*x).total_cmp(&alike(*y))).unwrap_or(0) as f64
});
pub const LIKENESS_THEN: Figure = Figure("likeness of the beats then", |s| s.then.likeness());
pub const LIKENESS: Figure = Figure("likeness of the beats", |s| s.shown.likeness());

// Disturbances, in heights of the usual pulse.
pub const HUM: Figure = Figure("hum over the usual pulse", |s| s.shown.hum() / s.usual.height());
pub const HUM_THEN: Figure = Figure("hum then over the usual pulse", |s| s.then.hum() / s.usual.height());
pub const HUM_CHANGE: Figure = Figure("hum then over before", |s| s.then.hum() / s.shown.hum().max(1e-9));
/// Harmonics against the fundamental: what makes small waves sharp.
pub const HARMONICS: Figure = Figure("harmonics 2 to 5 over the fundamental of the hum", |s| {
    let hz = s.shown.power_line_hz;
    rms(&[2.0, 3.0, 4.0, 5.0].map(|k| 2.0 * s.shown.line(k * hz))) / s.shown.line(hz).max(1e-12)
});
pub const TWICE: Figure = Figure("waves at twice the power line over those at it", |s| {
    let hz = s.shown.power_line_hz;
    s.shown.line(2.0 * hz) / s.shown.line(hz).max(1e-12)
});
pub const FLICKER: Figure = Figure("waves at twice the power line over the pulse", |s| {
    2.0 * s.shown.line(2.0 * s.shown.power_line_hz) / s.usual.height()
});
pub const FLICKER_THEN: Figure =
    Figure("the same then", |s| 2.0 * s.then.line(2.0 * s.then.power_line_hz) / s.usual.height());
pub const TREMOR: Figure =
    Figure("waves of 8 to 12 Hz over the usual pulse", |s| 2.83 * s.shown.rms(8.0, 12.0) / s.usual.height());
pub const TREMOR_GAIN: Figure =
    Figure("waves of 8 to 12 Hz over the usual ones", |s| s.shown.rms(8.0, 12.0) / s.usual.rms(8.0, 12.0));
pub const TREMOR_CHANGE: Figure =
    Figure("waves of 8 to 12 Hz then over before", |s| s.then.rms(8.0, 12.0) / s.shown.rms(8.0, 12.0));
pub const JUMPS: Figure = Figure("jumps of a quarter of a pulse", |s| s.shown.jumps(0.25 * s.usual.height()));
/// Eight wiggles a second apart, and the three quarters of a second after each: in how many it goes a tenth of a pulse within
/// 3 ms, faster than any pulse.
pub const ANSWERED: Figure = Figure("wiggles of eight that are answered by a jump", |s| {
    let steps = s.then.steps(3.0);
    let at = |t: f64| ((t * s.then.rate_hz) as usize).min(steps.len());
    let jump = |k: u32| {
        let from = f64::from(k);
        steps[at(from)..at(from + 0.75)].iter().any(|v| v.abs() > 0.1 * s.usual.height())
    };
    (0..8).filter(|k| jump(*k)).count() as f64
});
pub const JUMPS_THEN: Figure = Figure("jumps then", |s| s.then.jumps(0.25 * s.usual.height()));
/// Thin spikes: a sample against the middle of its neighbours, 5 ms apart.
fn spikes(shot: &Shot) -> Vec<f64> {
    shot.values.windows(3).map(|w| (w[1] - 0.5 * (w[0] + w[2])).abs()).collect()
}
pub const SPIKES: Figure =
    Figure("thin spikes over the usual pulse", |s| part(&spikes(s.shown), 0.99) / s.usual.height());
pub const SPIKES_THEN: Figure =
    Figure("thin spikes then over the usual pulse", |s| part(&spikes(s.then), 0.99) / s.usual.height());
pub const SPIKE_GAPS: Figure = Figure("share of quarter seconds without spikes", |s| {
    let all = spikes(s.shown);
    let tall = 0.5 * part(&all, 0.998);
    let runs: Vec<bool> =
        all.chunks((0.25 * s.shown.rate_hz) as usize).map(|run| run.iter().all(|v| *v < tall)).collect();
    runs.iter().filter(|quiet| **quiet).count() as f64 / runs.len() as f64
});
/// The fan of a computer turns 1,500 to 2,100 times a minute.
fn fan(shot: &Shot) -> f64 {
    2.83 * shot.rms(22.0, 38.0)
}
pub const BUZZ: Figure =
    Figure("waves of 22 to 38 Hz over the usual pulse", |s| fan(s.shown) / s.usual.height());
pub const BUZZ_OVER_HUM: Figure =
    Figure("waves of 22 to 38 Hz over the hum", |s| fan(s.shown) / s.shown.hum().max(1e-9));
pub const BUZZ_OVER_TREMOR: Figure = Figure("waves of 22 to 38 Hz over those of 8 to 12 Hz", |s| {
    s.shown.rms(22.0, 38.0) / s.shown.rms(8.0, 12.0)
});
pub const BUZZ_CHANGE: Figure =
    Figure("waves of 22 to 38 Hz then over before", |s| fan(s.then) / fan(s.shown));
/// Level to level of the converter: the smallest step that the trace makes.
fn level(shot: &Shot) -> f64 {
    let steps = shot.values.windows(2).map(|w| (w[1] - w[0]).abs()).filter(|v| *v > 1e-9);
    steps.fold(f64::MAX, f64::min)
}
pub const LEVEL: Figure = Figure("smallest step over the usual pulse", |s| level(s.shown) / s.usual.height());
pub const LEVEL_THEN: Figure =
    Figure("smallest step then over the usual pulse", |s| level(s.then) / s.usual.height());
pub const COUNTED: Figure = Figure("count on the sheet over the beats from A to B", |s| {
    s.shown.number("/worksheet/count/value") * s.usual.interval() / s.shown.number("/cursors/interval_s")
});
/// Least of the quarter seconds: the pulse is gone where it does not even go on falling or rising.
pub const LOST: Figure = Figure("stretches without a pulse", |s| {
    let n = (0.1 * s.shown.rate_hz) as usize;
    let quiet: Vec<bool> = s
        .shown
        .values
        .chunks(n)
        .map(|run| {
            // What an open plug shows lies about zero and has hum alone.
            let middle = part(run, 0.5).abs();
            middle < 0.02 * s.usual.height() && part(run, 1.0) - part(run, 0.0) < 0.1 * s.usual.height()
        })
        .collect();
    quiet.chunk_by(|a, b| a == b).filter(|run| run[0]).count() as f64
});

/// Fast swings: 6 to 25 Hz, the tallest.
fn fast(shot: &Shot) -> f64 {
    let band = shot.band(6.0, 25.0);
    part(&band, 0.999) - part(&band, 0.001)
}
pub const FAST: Figure =
    Figure("swings of 6 to 25 Hz over the usual pulse", |s| fast(s.shown) / s.usual.height());
pub const FAST_THEN: Figure =
    Figure("swings of 6 to 25 Hz then over the usual pulse", |s| fast(s.then) / s.usual.height());
pub const FAST_GAIN: Figure =
    Figure("swings of 6 to 25 Hz then over the usual ones", |s| fast(s.then) / fast(s.usual_then()));
pub const EXTRA: Figure = Figure("trace beyond the usual one, over the usual pulse", |s| {
    (s.shown.spread() - s.usual.spread()) / s.usual.height()
});
pub const EXTRA_THEN: Figure = Figure("trace then beyond the usual one, over the usual pulse", |s| {
    (s.then.spread() - s.usual_then().spread()) / s.usual.height()
});
pub const SPIKES_CHANGE: Figure =
    Figure("thin spikes then over before", |s| part(&spikes(s.then), 0.99) / part(&spikes(s.shown), 0.99));

// Slow things.
/// Power from .05 to .6 Hz as the height of a wave, over the usual pulse.
fn slow_wave(shot: &Shot) -> f64 {
    2.83 * shot.rms(0.1, 0.8)
}
pub const SLOW: Figure = Figure("slow waves over the usual pulse", |s| slow_wave(s.shown) / s.usual.height());
pub const SLOW_THEN: Figure =
    Figure("slow waves then over the usual pulse", |s| slow_wave(s.then) / s.usual.height());
pub const SLOW_LEFT: Figure =
    Figure("slow waves then over the usual ones", |s| slow_wave(s.then) / slow_wave(s.usual_then()));
pub const DRIFT: Figure =
    Figure("wander of the feet over the usual pulse", |s| s.shown.drift() / s.usual.height());
pub const DRIFT_THEN: Figure =
    Figure("wander of the feet then over the usual pulse", |s| s.then.drift() / s.usual.height());
pub const DRIFT_CHANGE: Figure =
    Figure("wander of the feet then over before", |s| s.then.drift() / s.shown.drift());
pub const WANDER_LEFT: Figure =
    Figure("wander then over the usual one", |s| s.then.drift() / s.usual_then().drift());
pub const DRIFT_OF_PULSE: Figure =
    Figure("wander of the feet over the pulse itself", |s| s.shown.drift() / s.shown.height());
pub const QUIET: Figure =
    Figure("wander over the usual one, in volts", |s| s.shown.drift() / s.usual.drift());
/// Of the slow power, how much lies within a quarter of the breaths' rate.
pub const WITH_BREATH: Figure = Figure("share of the slow power at the breath", |s| {
    let slow = s.shown.band(0.08, 0.6);
    let (breath, rate) = (s.shown.breaths_per_min / 60.0, s.shown.rate_hz);
    // Every tenth sample is enough.
    let thin: Vec<f64> = slow.chunks(100).map(|c| c[0]).collect();
    let power = |hz: f64| {
        let (c, q) = thin.iter().enumerate().fold((0.0, 0.0), |(c, q), (k, v)| {
            let turn = TAU * hz * k as f64 * 100.0 / rate;
            let hann = 1.0 - cos(TAU * k as f64 / thin.len() as f64);
            (c + v * hann * cos(turn), q + v * hann * sin(turn))
        });
        c * c + q * q
    };
    let at: Vec<(f64, f64)> = (8..=60).map(|k| f64::from(k) / 100.0).map(|hz| (hz, power(hz))).collect();
    let all: f64 = at.iter().map(|p| p.1).sum();
    at.iter().filter(|p| (p.0 / breath - 1.0).abs() <= 0.25).map(|p| p.1).sum::<f64>() / all.max(1e-30)
});
pub const SMALLEST: Figure = Figure("smallest tenth of the beats over the usual one", |s| {
    part(&s.shown.heights(), 0.1) / part(&s.usual.heights(), 0.1)
});
pub const TALLEST: Figure = Figure("tallest tenth of the beats over the usual one", |s| {
    part(&s.shown.heights(), 0.9) / part(&s.usual.heights(), 0.9)
});
pub const FIRST: Figure = Figure("first beats over the usual ones", |s| {
    part(&s.shown.heights()[..4.min(s.shown.heights().len())], 0.5) / part(&s.usual.heights(), 0.5)
});
pub const LAST_OVER_FIRST: Figure = Figure("last beats over the first", |s| {
    let heights = s.shown.heights();
    let n = (heights.len() / 4).max(1).min(heights.len());
    part(&heights[heights.len() - n..], 0.5) / part(&heights[..n], 0.5)
});
pub const UNEVEN: Figure = Figure("largest change of interval, of the middle one", |s| {
    let intervals = s.shown.intervals();
    let change = intervals.windows(2).map(|w| (w[1] - w[0]).abs()).fold(0.0, f64::max);
    change / part(&intervals, 0.5)
});
/// How well a wave of the breath's period fits the intervals: share of their variance, the best of near periods.
pub const RHYTHM_WITH_BREATH: Figure = Figure("share of the intervals' variance at the breath", |s| {
    let intervals = s.shown.intervals();
    let mean = intervals.iter().sum::<f64>() / intervals.len() as f64;
    let all: f64 = intervals.iter().map(|i| (i - mean) * (i - mean)).sum();
    let wave = breath_wave_s(s.shown);
    wave * wave / 2.0 * intervals.len() as f64 / all
});
/// From the shortest to the longest interval of the wave that goes with the breath: a swing that comes again and again.
pub const SWING_WITH_BREATH: Figure =
    Figure("swing of the intervals with the breath, of the middle one", |s| {
        2.0 * breath_wave_s(s.shown) / part(&s.shown.intervals(), 0.5)
    });
/// Amplitude, in seconds, of the wave of the breath's period that fits the intervals best.
fn breath_wave_s(shown: &Shot) -> f64 {
    let (beats, intervals) = (shown.beats(), shown.intervals());
    let mean = intervals.iter().sum::<f64>() / intervals.len() as f64;
    let amplitude = |hz: f64| {
        let (c, q) = intervals.iter().zip(beats).fold((0.0, 0.0), |(c, q), (i, at)| {
            (c + (i - mean) * cos(TAU * hz * at), q + (i - mean) * sin(TAU * hz * at))
        });
        2.0 * (c * c + q * q).sqrt() / intervals.len() as f64
    };
    let breath = shown.breaths_per_min / 60.0;
    (-10..=10).map(|k| amplitude(breath * (1.0 + 0.02 * f64::from(k)))).fold(0.0, f64::max)
}
pub const IN_TIME: Figure = Figure("share of intervals near the usual one", |s| {
    let (intervals, usual) = (s.shown.intervals(), s.usual.interval());
    intervals.iter().filter(|i| (**i / usual - 1.0).abs() < 0.25).count() as f64 / intervals.len() as f64
});
pub const LONGEST: Figure = Figure("longest interval over the middle one", |s| {
    let intervals = s.shown.intervals();
    part(&intervals, 1.0) / part(&intervals, 0.5)
});
pub const UNEVEN_MIDDLE: Figure = Figure("quieter quarter of the changes of interval", |s| {
    let intervals = s.shown.intervals();
    let changes: Vec<f64> = intervals.windows(2).map(|w| (w[1] - w[0]).abs()).collect();
    part(&changes, 0.25) / part(&intervals, 0.5)
});
