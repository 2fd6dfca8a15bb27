//! Windows on recordings of subjects who move, and how much they move by a plain outside measure.

use dicrotic::physiology::{Body, Manoeuvre, Subject, SubjectSpec};
use dicrotic::recorder::converter::at_limit;
use dicrotic::recorder::settings::RANGES_V;
use dicrotic::rng::Stream;
use dicrotic::scenario::Scenario;
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};

/// So much movement within a second, as a share of the pulse's height, disturbs counting and reading: a bump of half a beat
/// may be taken for a beat, or hide one. Fixed before anything was tuned.
pub const DISTURBS: f64 = 0.5;
/// A second: about a beat. What takes longer is drift, on which beats still stand out.
const WITHIN_S: f64 = 1.0;
/// Length of a recording, s.
const RECORD_S: f64 = 32.0;
/// What passes before it, s.
const BEFORE_S: f64 = 3.0;

/// What disturbs a recording.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Nothing but what people who sit still do.
    Still,
    /// A restless hand all the time.
    Unrest,
    /// A restless hand until the subject is asked to keep still.
    UnrestThenStill,
    /// A foot or a finger taps.
    Tapping,
    /// Someone taps the sensor a few times.
    Taps,
    /// The hand trembles.
    Tremor,
    /// The subject talks.
    Talking,
    /// The plug is loose.
    Plug,
    /// A wire in the cable is broken.
    Cable,
}

/// In the shares in which they are drawn.
const KINDS: [Kind; 21] = [
    Kind::Still,
    Kind::Still,
    Kind::Still,
    Kind::Unrest,
    Kind::Unrest,
    Kind::Unrest,
    Kind::Unrest,
    Kind::Unrest,
    Kind::UnrestThenStill,
    Kind::UnrestThenStill,
    Kind::UnrestThenStill,
    Kind::UnrestThenStill,
    Kind::Tapping,
    Kind::Tapping,
    Kind::Taps,
    Kind::Taps,
    Kind::Tremor,
    Kind::Tremor,
    Kind::Talking,
    Kind::Plug,
    Kind::Cable,
];

/// A drawn window.
pub struct Drawn {
    /// Its seed.
    pub seed: u64,
    /// What disturbs it.
    pub kind: Kind,
    /// How much, 0 to 1.
    pub severity: f64,
    /// The attempt, with the recording made and the cursors put.
    pub session: Session,
    /// Most movement within a second of the window, in pulse heights.
    pub moved: f64,
    /// Where that second begins, s.
    pub at_s: f64,
    /// Who sits there.
    pub subject: String,
    /// Rate at rest, beats/min.
    pub bpm: f64,
}

fn act(session: &mut Session, action: &Value) {
    session.act(&Action::from_value(action.clone()).unwrap()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
}

/// A recording in which things are done at their times, s from its start.
fn recorded(text: &str, seed: u64, deeds: &[(f64, Value)], rate_hz: f64) -> Session {
    let mut session = Session::new(text, seed).unwrap_or_else(|e| panic!("{e}\n{text}"));
    session.run_long((BEFORE_S * rate_hz) as u64);
    act(&mut session, &json!({"do": "record"}));
    let mut now = 0;
    for (at, deed) in deeds {
        let at = (at * rate_hz) as u64;
        session.run_long(at - now);
        act(&mut session, deed);
        now = at;
    }
    session.run_long((RECORD_S * rate_hz) as u64 - now);
    act(&mut session, &json!({"do": "stop"}));
    session
}

/// The values of a window, V.
fn values(session: &Session, (a, b): (f64, f64)) -> Vec<f64> {
    let recording = &session.recording().unwrap().recording;
    recording.values(recording.sample_at(a), recording.sample_at(b))
}

fn extent(values: &[f64]) -> f64 {
    let (low, high) = values.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
    high - low
}

/// Most that something changes within a second, and where that second begins, s.
fn most_within(values: &[f64], rate_hz: f64) -> (f64, f64) {
    let (wide, step) = ((WITHIN_S * rate_hz) as usize, ((0.02 * rate_hz) as usize).max(1));
    (0..=values.len().saturating_sub(wide))
        .step_by(step)
        .map(|k| (extent(&values[k..(k + wide).min(values.len())]), k as f64 / rate_hz))
        .max_by(|x, y| x.0.total_cmp(&y.0))
        .unwrap()
}

/// Median height of the beats in a window of an undisturbed recording: the true peaks against the lowest point up to 0.4 s
/// before each, V.
fn pulse_height(session: &Session, (a, b): (f64, f64), rate_hz: f64) -> f64 {
    let kept = session.recording().unwrap();
    let recording = &kept.recording;
    let mut heights: Vec<f64> = session
        .reference_peaks()
        .iter()
        .filter(|p| p.sure && p.within(a.max(0.5), b - 0.1))
        .map(|p| {
            let at = p.at_s + kept.delay_s;
            let from = recording.sample_at(at - 0.4);
            let beat = recording.values(from, recording.sample_at(at + 1.0 / rate_hz) + 1);
            beat.last().unwrap() - beat.iter().copied().fold(f64::MAX, f64::min)
        })
        .collect();
    heights.sort_by(f64::total_cmp);
    heights[heights.len() / 2]
}

/// Who sits there, and with what.
struct Bench {
    seed: u64,
    kind: Kind,
    severity: f64,
    subject: String,
    bpm: f64,
    sensor: &'static str,
    power_line_hz: f64,
    rate_hz: u32,
    range_v: f64,
}

impl Bench {
    fn drawn(s: &mut Stream, seed: u64, kind: Kind, severity: f64) -> Self {
        let (age, bpm) = (s.range(18.0, 70.0), s.range(45.0, 140.0));
        let early = if s.uniform() < 0.3 { s.range(0.5, 6.0) } else { 0.0 };
        let warm = s.range(31.0, 35.0);
        let pulse_mv = 15.0 * dicrotic::math::pow(4.0, s.uniform());
        let sensors = [("ceramic", 1.0), ("film", 0.7), ("optical", 10.0)];
        let (sensor, sensitivity) = sensors[(3.0 * s.uniform()) as usize];
        let power_line_hz = if s.uniform() < 0.5 { 50.0 } else { 60.0 };
        let rates = [1000, 1000, 1000, 1000, 1000, 1000, 500, 200, 100, 100];
        let rate_hz = rates[(10.0 * s.uniform()) as usize];
        // The ranges in which such a pulse takes up a tenth to three quarters of the screen.
        let fits = |v: &&f64| (0.1..0.75).contains(&(pulse_mv * 1e-3 * sensitivity / (2.0 * **v)));
        let ranges: Vec<&f64> = RANGES_V.iter().filter(fits).collect();
        let range_v = *ranges[(ranges.len() as f64 * s.uniform()) as usize];
        let subject = format!(
            "age_years = {age:?}\nrest_rate_bpm = {bpm:?}\npremature_per_min = {early:?}\n\
             finger_temp_c = {warm:?}\npulse_mv = {pulse_mv:?}\n"
        );
        Self { seed, kind, severity, subject, bpm, sensor, power_line_hz, rate_hz, range_v }
    }

    /// The scenario with its trouble or without. Involuntary shifts of the finger are movement as well: without trouble it
    /// is quite still.
    fn text(&self, moves: bool) -> String {
        let (restlessness, share) = if moves { (0.1, self.severity) } else { (0.0, 0.0) };
        let trouble = match self.kind {
            Kind::Unrest | Kind::UnrestThenStill => format!("unrest = {share:?}\n"),
            Kind::Tapping => format!("tapping = {share:?}\n"),
            Kind::Tremor => format!("tremor = {share:?}\n"),
            Kind::Plug => format!("plug_loose = {share:?}\n"),
            Kind::Cable => format!("cable_break = {share:?}\n"),
            Kind::Still | Kind::Taps | Kind::Talking => String::new(),
        };
        let Self { seed, subject, sensor, power_line_hz, rate_hz, range_v, .. } = self;
        format!(
            "id = \"drawn\"\nlevel = 1\ntitle = \"t\"\naim = \"{seed}\"\nbrief = \"b\"\n\
             [power_line]\nvolts = 230.0\nhz = {power_line_hz:?}\n[sensor]\nkind = \"{sensor}\"\n\
             [subject]\n{subject}restlessness = {restlessness:?}\n[trouble]\n{trouble}\
             [recorder]\nrange_v = {range_v:?}\nrate_hz = {rate_hz}\n\
             [task]\nkind = \"clean_part\"\n[pass]\nrecord_s = 15.0\nwindow_s = 15.0\n"
        )
    }
}

/// The movement of the finger's volume that talking adds, in units of the resting beat: the baseline of a body that talks
/// less that of one that does not. (Talking changes the breath, and with it the rhythm: the recordings cannot be
/// compared sample by sample.)
fn talk(text: &str, seed: u64, rate_hz: f64, starts_s: f64, window: (f64, f64)) -> Vec<f64> {
    let spec = Scenario::read(text).unwrap().subject;
    let analogue_hz = rate_hz.max(1000.0);
    let baseline = |talks: bool, spec| {
        let mut body = Body::new(Subject::draw(spec, seed), seed, analogue_hz);
        let run = |body: &mut Body, seconds: f64| {
            let n = (seconds * analogue_hz).round() as usize;
            let (mut pulse, mut breath) = (vec![0.0; n], vec![0.0; n]);
            body.fill(&mut pulse, &mut breath);
            breath
        };
        let mut all = run(&mut body, BEFORE_S + starts_s);
        if talks {
            body.start(Manoeuvre::Talk);
        }
        all.extend(run(&mut body, RECORD_S - starts_s));
        all
    };
    let still = SubjectSpec { restlessness: Some(0.0), ..spec.clone() };
    let (with, without) = (baseline(true, &spec), baseline(false, &still));
    let at = |t: f64| ((BEFORE_S + t) * analogue_hz) as usize;
    (at(window.0)..at(window.1)).map(|k| with[k] - without[k]).collect()
}

/// Draws a window and what is in it.
pub fn drawn(seed: u64) -> Drawn {
    let mut s = Stream::new(seed, "moved");
    let kind = KINDS[(KINDS.len() as f64 * s.uniform()) as usize];
    of_kind(seed, kind, &mut s)
}

/// The same with the kind given. Where the range would cut off the pulse even without trouble, which is another fault and
/// judged as such, the next larger one is taken.
pub fn of_kind(seed: u64, kind: Kind, s: &mut Stream) -> Drawn {
    let severity = s.uniform();
    let mut bench = Bench::drawn(s, seed, kind, severity);
    let rate_hz = f64::from(bench.rate_hz);
    let starts_s = s.range(2.0, 26.0);
    let length = s.range(15.0, 20.0);
    let a = s.range(0.2, RECORD_S - 0.2 - length);
    let window = (a, a + length);
    let deeds: Vec<(f64, Value)> = match kind {
        Kind::UnrestThenStill => vec![(starts_s, json!({"do": "ask_still"}))],
        Kind::Talking => vec![(starts_s, json!({"do": "manoeuvre", "what": "talk"}))],
        Kind::Taps => {
            let mut times: Vec<f64> =
                (0..1 + (3.0 * s.uniform()) as usize).map(|_| s.range(0.1, RECORD_S - 0.1)).collect();
            times.sort_by(f64::total_cmp);
            times.into_iter().map(|t| (t, json!({"do": "tap_sensor"}))).collect()
        }
        _ => Vec::new(),
    };
    let clean = loop {
        let clean = recorded(&bench.text(false), seed, &[], rate_hz);
        if !clean.recording().unwrap().recording.codes().iter().any(|c| at_limit(*c, 16)) {
            break clean;
        }
        bench.range_v =
            RANGES_V.iter().copied().filter(|v| *v > 1.01 * bench.range_v).fold(f64::MAX, f64::min);
    };
    let mut session = recorded(&bench.text(true), seed, &deeds, rate_hz);
    let (moved, at) = if kind == Kind::Talking {
        let text = bench.text(true);
        let (most, at) = most_within(&talk(&text, seed, rate_hz, starts_s, window), rate_hz.max(1000.0));
        // In a finger at this temperature a beat is a little lower than that.
        (most / Subject::draw(&Scenario::read(&text).unwrap().subject, seed).warmth(), at)
    } else {
        let (with, without) = (values(&session, window), values(&clean, window));
        let added: Vec<f64> = with.iter().zip(&without).map(|(x, y)| x - y).collect();
        let (most, at) = most_within(&added, rate_hz);
        (most / pulse_height(&clean, window, rate_hz), at)
    };
    act(&mut session, &json!({"do": "cursor", "which": "a", "t": window.0}));
    act(&mut session, &json!({"do": "cursor", "which": "b", "t": window.1}));
    act(&mut session, &json!({"do": "check"}));
    Drawn {
        seed,
        kind,
        severity,
        session,
        moved,
        at_s: window.0 + at,
        subject: bench.subject,
        bpm: bench.bpm,
    }
}
