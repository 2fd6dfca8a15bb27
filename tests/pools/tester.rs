//! A tester who knows the catalogue and nothing of the bench: what a fault looks like on the trace, which tests tell it, and
//! what each test shows where it is there. All that it reads is what the page shows: the view, the live trace, the answers of
//! the subject, the lengths and values of a recording that lies there.

use dicrotic::bench::look::Spot;
use dicrotic::deed::{Kind, Tell};
use dicrotic::measure::detect::detect;
use dicrotic::scenario::fault::{self, Fault, Symptom};
use dicrotic::session::symptom::measure;
use dicrotic::session::{Session, script};
use serde_json::{Value, json};

/// What came of a search.
pub struct Found {
    /// What the tester would name.
    pub named: Option<&'static str>,
    /// Tests made.
    pub tests: usize,
}

/// Watched before the first test, s.
const WATCHED_S: u32 = 30;

fn play(session: &mut Session, steps: &[Value]) -> bool {
    script::play(session, steps).is_ok()
}

fn wait(session: &mut Session, seconds: f64) {
    play(session, &[json!({"wait": seconds})]);
}

/// The last seconds of the live trace, V.
fn live(session: &Session, seconds: f64) -> (Vec<f64>, f64) {
    session.live().map_or((Vec::new(), 1000.0), |l| (l.last(seconds), l.rate_hz()))
}

fn spread(values: &[f64]) -> f64 {
    let (low, high) = values.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
    (high - low).max(0.0)
}

fn middle(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values.get(values.len() / 2).copied().unwrap_or(0.0)
}

/// Distances of the beats that the eye finds, s.
fn intervals(session: &Session, seconds: f64) -> Vec<f64> {
    let (values, hz) = live(session, seconds);
    if (values.len() as f64) < 5.0 * hz {
        return Vec::new();
    }
    detect(&values, hz).windows(2).map(|w| w[1] - w[0]).collect()
}

/// Beats a minute, by eye.
fn rate(session: &Session) -> f64 {
    60.0 / middle(intervals(session, 15.0)).max(0.2)
}

/// Short intervals that a long one follows.
fn early_beats(session: &Session) -> usize {
    let all = intervals(session, 29.0);
    let usual = middle(all.clone());
    all.windows(2).filter(|w| w[0] < 0.8 * usual && w[1] > 1.08 * usual).count()
}

/// How tall the line is from second to second.
fn heights(session: &Session) -> Vec<f64> {
    let (values, hz) = live(session, 29.0);
    values.chunks_exact(hz as usize).map(spread).collect()
}

/// How much that differs, over its mean: a rhythm is as tall in each second, bursts are not.
fn unsteadiness(session: &Session) -> f64 {
    let all = heights(session);
    let mean = all.iter().sum::<f64>() / all.len().max(1) as f64;
    let square = all.iter().map(|x| (x - mean) * (x - mean)).sum::<f64>() / all.len().max(1) as f64;
    square.sqrt() / mean.max(1e-12)
}

/// Jumps from one sample to the next within a stretch, as tall as a good part of the pulse.
fn jumps(session: &Session, seconds: f64) -> usize {
    let (values, hz) = live(session, seconds);
    let n = ((0.008 * hz) as usize).max(1);
    let tall =
        0.01 * if session.view()["recorder"]["range_v"].as_f64().unwrap_or(0.1) > 0.3 { 10.0 } else { 1.0 };
    let mut count = 0;
    let mut k = 0;
    while k + n < values.len() {
        if (values[k + n] - values[k]).abs() > tall {
            count += 1;
            k += (0.05 * hz) as usize;
        }
        k += 1;
    }
    count
}

/// Below this unsteadiness knocks are a rhythm.
const STEADY: f64 = 0.22;
/// More jumps than this in half a minute are hum and no bad contact.
const CONTACTS: usize = 150;

/// A search under way.
struct Search {
    /// The bench as it was found.
    first: Value,
    session: Session,
    /// What the trace showed at first.
    rate: f64,
    unsteady: f64,
    lost: bool,
    done: Vec<Tell>,
}

impl Search {
    fn view(&self) -> Value {
        self.session.view()
    }

    fn figure(&self, symptom: Symptom) -> f64 {
        measure(&self.session, symptom)
    }

    fn socket(&self, end: &str) -> Option<String> {
        let view = self.view();
        let ends = view["bench"]["ends"].as_array().unwrap();
        ends.iter().find(|e| e["id"] == end).and_then(|e| e["socket"].as_str().map(str::to_string))
    }

    fn is(&self, path: &str, what: impl Into<Value>) -> bool {
        self.view().pointer(path) == Some(&what.into())
    }

    fn was(&self, path: &str) -> Value {
        self.first.pointer(path).cloned().unwrap_or_default()
    }

    fn set(&self, key: &str) -> Option<f64> {
        self.was(&format!("/recorder/{key}")).as_f64()
    }

    /// Does something on a copy and tells what becomes of a figure: before and after.
    fn change(&self, steps: &[Value], symptom: Symptom) -> (f64, f64) {
        let before = self.figure(symptom);
        let mut copy = self.session.clone();
        play(&mut copy, steps);
        wait(&mut copy, 14.0);
        (before, measure(&copy, symptom))
    }

    fn goes(&self, steps: &[Value], symptom: Symptom) -> bool {
        let (before, after) = self.change(steps, symptom);
        before > 1.0 && after < 0.6 * before
    }

    /// Whether the line runs without jumps and swings, so that single beats can be judged.
    fn clean(&self) -> bool {
        [Symptom::Jumps, Symptom::Movement, Symptom::TwoPulses, Symptom::Spikes]
            .iter()
            .all(|s| self.figure(*s) < 1.0)
    }
}

fn cable_away() -> Vec<Value> {
    vec![
        json!({"do": "move", "part": "cable1", "x": 44, "y": 66}),
        json!({"do": "move", "part": "cable2", "x": 66, "y": 70}),
    ]
}

/// The test by which the tester knows a fault: one of those that the catalogue names for it.
pub fn decides(f: &Fault) -> Tell {
    match f.id {
        "charge_port" => Tell::Look(Spot::Computer),
        "port_drops" | "wrong_input" | "sensor_out" => Tell::Look(Spot::Recorder),
        "sensor_off_finger" | "strap_loose" | "strap_tight" | "sensor_off_pulp" => Tell::Look(Spot::Sensor),
        "moving" | "tapping" | "hand_low" => Tell::Look(Spot::Subject),
        "cable_taut" | "plug_damp" => Tell::Look(Spot::Cable),
        "table_shaken" => Tell::Look(Spot::Around),
        "trace_hidden" => Tell::Does(Kind::Shown),
        "paused" => Tell::Does(Kind::Show),
        "breath_drift" => Tell::Does(Kind::HighPass),
        "trembling" => Tell::Does(Kind::RestArm),
        "premature" | "breath_rhythm" | "bumps_counted" => Tell::Stretch,
        _ => f.tests[0],
    }
}

/// How easily a test is made.
fn ease(test: Tell) -> usize {
    match test {
        Tell::Look(_) => 2,
        Tell::Stretch => 1,
        Tell::Does(
            Kind::Shown
            | Kind::Show
            | Kind::Range
            | Kind::Rate
            | Kind::Bits
            | Kind::Invert
            | Kind::Buffered
            | Kind::Scale
            | Kind::LowPass
            | Kind::Notch
            | Kind::OpenRecording
            | Kind::Scroll
            | Kind::Cursor
            | Kind::Answer
            | Kind::Rescan,
        ) => 1,
        _ => 0,
    }
}

/// Whether a fault is there, by what its test shows.
fn sign(f: &Fault, s: &Search) -> bool {
    let set = |key: &str| s.set(key);
    let filtered = set("notch_hz").is_some() || set("low_pass_hz").is_some();
    let line_hz = s.was("/scenario/power_line/hz").as_f64();
    match f.id {
        "recorder_off" => s.is("/bench/switches/recorder", false),
        "power_strip_off" => s.is("/bench/switches/power_strip", false),
        "power_cord_out" => s.socket("power_wall").is_none() || s.socket("power_recorder").is_none(),
        "data_cable_out" => s.socket("data_recorder").is_none(),
        "charge_port" => s.socket("data_computer").as_deref() == Some("port_charge"),
        "recorder_in_use" => s.is("/bench/other_program", true),
        "not_rescanned" => {
            let mut copy = s.session.clone();
            play(&mut copy, &[json!({"do": "rescan"})]);
            !s.is("/link/seen", true) && copy.view()["link"]["seen"] == true
        }
        "port_drops" => s.lost,
        "wrong_input" => {
            let shown = format!("in{}", set("input").unwrap_or(1.0));
            s.socket("sensor").is_some_and(|at| at != shown)
        }
        "sensor_out" => s.socket("sensor").is_none(),
        "sensor_off_finger" => s.is("/bench/strap/on", false),
        "trace_hidden" => s.was("/recorder/shown") == false,
        "paused" => s.was("/trace/mode") == "paused",
        "plug_half_in" => {
            // Three wiggles, and a jump each time.
            let mut copy = s.session.clone();
            let mut with = 0;
            for _ in 0..4 {
                wait(&mut copy, 1.0);
                play(&mut copy, &[json!({"do": "wiggle", "end": "sensor"})]);
                wait(&mut copy, 0.3);
                with += usize::from(jumps(&copy, 0.35) > 0);
            }
            with >= 3
        }
        // Not the plug, and the bend makes the difference.
        "cable_broken" => {
            let mut straight = s.session.clone();
            play(&mut straight, &cable_away());
            wait(&mut straight, 30.0);
            let found = jumps(&s.session, 29.0);
            s.unsteady >= STEADY && found <= CONTACTS && jumps(&straight, 29.0) * 2 <= found
        }
        "moving" => s.was("/bench/hand/looks") == "moving" && s.unsteady >= STEADY,
        "tapping" => s.was("/bench/hand/looks") == "moving" && s.unsteady < STEADY,
        "cable_taut" => s.view()["bench"]["cable"]["slack_cm"].as_f64().is_some_and(|cm| cm < 4.0),
        "table_shaken" => s.is("/bench/shaken", true),
        "talking" => s.is("/bench/voice", "talking"),
        "sighing" => s.is("/bench/voice", "sighing"),
        "breath_drift" => {
            s.is("/bench/voice", "quiet")
                && s.figure(Symptom::Jumps) < 1.0
                && s.goes(&[json!({"do": "high_pass", "hz": 0.5})], Symptom::Slow)
        }
        "trembling" => s.goes(&[json!({"do": "rest_arm"})], Symptom::Ripple),
        "premature" => {
            s.figure(Symptom::Jumps) < 1.0
                && s.figure(Symptom::Movement) < 1.0
                && early_beats(&s.session) >= 1
        }
        "breath_rhythm" => s.clean() && early_beats(&s.session) == 0,
        "sleeve_tight" => s.is("/bench/sleeve_tight", true),
        "thumb_on_sensor" => s.is("/bench/thumb_holds", true),
        "not_rested" => {
            let mut copy = s.session.clone();
            play(&mut copy, &[json!({"do": "manoeuvre", "what": "rest"}), json!({"wait": 200})]);
            s.clean() && s.figure(Symptom::Ripple) < 1.0 && rate(&copy) < 0.92 * s.rate
        }
        "range_small" | "off_zero" => {
            let mut wide = s.session.clone();
            play(&mut wide, &[json!({"do": "range", "v": 1.0}), json!({"wait": 10})]);
            let (values, hz) = live(&wide, 8.0);
            let off = values.iter().sum::<f64>().abs() / values.len().max(1) as f64 > spread(&values);
            let tall = middle(values.chunks_exact(hz as usize).map(spread).collect());
            if f.id == "off_zero" { off } else { !off && set("range_v").is_some_and(|v| tall > 1.9 * v) }
        }
        "range_large" => set("range_v").is_some_and(|v| v >= 1.0),
        "time_base_fast" => s.was("/time_base/s").as_f64().is_some_and(|t| t < 1.5),
        "time_base_slow" => s.was("/time_base/s").as_f64().is_some_and(|t| t > 30.0),
        "sampling_slow" => set("rate_hz").is_some_and(|hz| hz <= 45.0),
        "hum_folded" => set("rate_hz").is_some_and(|hz| (46.0..=70.0).contains(&hz)),
        "bits_few" => set("bits").is_some_and(|n| n <= 8.0),
        "polarity_over" => s.was("/recorder/inverted") == true,
        "low_pass_low" => set("low_pass_hz").is_some_and(|hz| hz < 5.0),
        "high_pass_high" => set("high_pass_hz").is_some_and(|hz| hz >= 1.0),
        "plain_input" => s.was("/recorder/buffered") == false,
        "plug_damp" => s.is("/bench/plug_damp", true),
        "wrong_scale" => set("scale").is_some_and(|by| by != 1.0),
        "wrong_notch" => set("notch_hz").is_some_and(|hz| Some(hz) != line_hz),
        "filtered_away" => {
            let off = [json!({"do": "notch", "hz": null}), json!({"do": "low_pass", "hz": null})];
            let mut copy = s.session.clone();
            play(&mut copy, &off);
            wait(&mut copy, 14.0);
            filtered && set("low_pass_hz").is_none_or(|hz| hz >= 5.0) && measure(&copy, Symptom::Hum) > 1.0
        }
        // Filters are looked at before the cable is.
        "cable_on_power_strip" | "charger_near" | "hand_on_laptop" if filtered => false,
        "cable_on_power_strip" => {
            s.goes(&cable_away(), Symptom::Hum) && set("rate_hz").is_some_and(|hz| hz > 70.0)
        }
        "charger_near" => {
            // With a hand on the laptop the charger is only where the hum comes from.
            s.is("/bench/strap/other_hand", "lap")
                && s.goes(&[json!({"do": "charger", "plugged": false})], Symptom::Hum)
        }
        "hand_on_laptop" => {
            s.is("/bench/strap/other_hand", "laptop")
                && s.goes(&[json!({"do": "other_hand", "on": "lap"})], Symptom::Hum)
        }
        "phone_near" => s.goes(&[json!({"do": "move", "part": "phone", "x": 150, "y": 70})], Symptom::Spikes),
        "room_light" => s.goes(&[json!({"do": "shade", "on": true})], Symptom::Flicker),
        "cable_on_computer" => s.goes(&cable_away(), Symptom::Buzz),
        "strap_loose" => s.is("/bench/strap/feel", "loose") && !s.is("/bench/thumb_holds", true),
        "strap_tight" => s.is("/bench/strap/feel", "tight"),
        "sensor_upside_down" => s.is("/bench/strap/side", "away"),
        "sensor_off_pulp" => !s.is("/bench/strap/place", "pulp"),
        "finger_cold" => {
            let mut copy = s.session.clone();
            play(&mut copy, &[json!({"do": "ask_finger"})]);
            copy.view()["bench"]["said"] == "finger_cold"
        }
        "hand_low" => s.view()["bench"]["hand"]["height_cm"].as_f64().is_some_and(|cm| cm < -20.0),
        "light_sensor_dirty" => s.is("/bench/smeared", true),
        "strap_slips" => {
            // The strap looks right, and a press brings the pulse back.
            let mut copy = s.session.clone();
            let (before, _) = live(&copy, 2.5);
            play(&mut copy, &[json!({"do": "press_finger"}), json!({"wait": 2.8})]);
            let (pressed, _) = live(&copy, 2.4);
            s.is("/bench/strap/feel", "snug") && spread(&pressed) > 1.4 * spread(&before)
        }
        _ => paper(f, s).unwrap_or(false),
    }
}

/// What lies there in writing.
fn paper(f: &Fault, s: &Search) -> Option<bool> {
    let left = s.was("/scenario/brief").as_str().is_some_and(|b| b.contains("worked here before you"));
    let recordings = s.was("/recordings").as_array().map_or(0, Vec::len);
    let length = s.was("/recordings/0/duration_s").as_f64().unwrap_or(0.0);
    let (a, b) = (s.was("/cursors/a").as_f64(), s.was("/cursors/b").as_f64());
    let written = |field: &str| s.was(&format!("/worksheet/{field}/value")).as_f64();
    let window = a.zip(b).map(|(a, b)| b - a);
    let kept = s.session.recordings().first();
    let stretch = |from: f64, to: f64| {
        let kept = kept?;
        let (x, y) = (kept.recording.sample_at(from), kept.recording.sample_at(to));
        Some((kept.recording.values(x, y), kept.recording.rate_hz()))
    };
    Some(match f.id {
        "not_recording" => left && recordings == 0,
        "stopped_early" => recordings > 0 && length < 15.0,
        // Nobody had said that there would be one.
        "others_file" => !left && recordings > 0 && length >= 15.0,
        "noisy_window" => {
            let (Some(a), Some(b)) = (a, b) else { return Some(false) };
            let inside = stretch(a, b).map_or(0.0, |(v, _)| spread(&v));
            let after = stretch(length - 12.0, length).map_or(0.0, |(v, _)| spread(&v));
            inside > 2.0 * after
        }
        "window_misread" => written("seconds").zip(window).is_some_and(|(s, w)| (s - w).abs() > 0.5),
        "wrong_multiplier" => {
            written("multiplier").zip(written("seconds")).is_some_and(|(m, s)| (m - 60.0 / s).abs() > 0.1)
        }
        "bumps_counted" => {
            let (Some(a), Some(b), Some(n)) = (a, b, written("count")) else { return Some(false) };
            let beats = stretch(a, b).map_or(0, |(v, hz)| detect(&v, hz).len());
            n > 1.5 * beats as f64
        }
        _ => return None,
    })
}

/// Whether a fault may be it, by what is to be seen without a test.
fn suspected(f: &Fault, s: &Search, most: &dyn Fn(Symptom) -> f64) -> bool {
    let on_paper = s.was("/recordings").as_array().is_some_and(|all| !all.is_empty());
    match f.symptom {
        // What only a check finds, or only the heart itself tells, is looked for where there is something to look at.
        Symptom::Finding(_) => on_paper,
        Symptom::NothingSaved => {
            s.was("/scenario/brief").as_str().is_some_and(|b| b.contains("worked here before"))
        }
        Symptom::Raised => s.rate > 76.0,
        Symptom::HumBehindFilters => s.set("low_pass_hz").is_some() || s.set("notch_hz").is_some(),
        Symptom::Losses => s.lost,
        symptom => most(symptom) > 1.0,
    }
}

/// Looks, then makes the test that tells of most of what is suspected, until something is found or nothing is left.
pub fn search(mut session: Session) -> Found {
    let first = session.view();
    let mut seen: Vec<(Symptom, f64)> = Vec::new();
    let mut lost = false;
    let mut visible: Vec<Symptom> = Vec::new();
    for f in fault::all() {
        let hidden = matches!(f.symptom, Symptom::Finding(_) | Symptom::Raised | Symptom::HumBehindFilters);
        if !hidden && !visible.contains(&f.symptom) {
            visible.push(f.symptom);
        }
    }
    for k in 0..WATCHED_S * 2 {
        wait(&mut session, 0.5);
        lost |= session.view()["link"]["seen"] == false;
        // Looked at every ten seconds.
        if k % 20 == 19 {
            seen.extend(visible.iter().map(|symptom| (*symptom, measure(&session, *symptom))));
        }
    }
    let most = |s: Symptom| seen.iter().filter(|(of, _)| *of == s).map(|(_, x)| *x).fold(0.0, f64::max);
    // A link that is never there is not one that comes and goes.
    let lost = lost && session.view()["link"]["seen"] == true || session.losses_lately() > 0;
    let mut s = Search {
        rate: rate(&session),
        unsteady: unsteadiness(&session),
        first,
        session,
        lost,
        done: Vec::new(),
    };
    let mut left: Vec<&'static Fault> = fault::all().filter(|f| suspected(f, &s, &most)).collect();
    while !left.is_empty() {
        let of = |t: Tell| left.iter().filter(|f| decides(f) == t).count();
        // One looks before one tries, and reads the settings before one turns to the table.
        let tests = left.iter().map(|f| decides(f));
        let Some(test) = tests.max_by_key(|t| 100 * ease(*t) + of(*t)) else { break };
        s.done.push(test);
        for f in left.iter().filter(|f| decides(f) == test) {
            if sign(f, &s) {
                return Found { named: Some(f.id), tests: s.done.len() };
            }
        }
        left.retain(|f| decides(f) != test);
    }
    Found { named: None, tests: s.done.len() }
}
