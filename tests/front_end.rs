//! The input: what a plain one makes of the pulse, what the integral makes of that, the calibrator, and by how much all of it
//! moves a beat.

use dicrotic::chain::{Chain, Config, Trouble};
use dicrotic::physiology::SubjectSpec;
use dicrotic::pickup::field::PowerLine;
use dicrotic::pickup::sensor::{Kind, Sensor};
use dicrotic::recorder::Settings;
use dicrotic::recorder::filters::Section;
use dicrotic::recorder::settings::{CALIBRATOR_V, Change};
use dicrotic::session::action::Refusal;
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};

const RATE: usize = 1000;

fn config(kind: Kind, recorder: Settings) -> Config {
    Config {
        subject: SubjectSpec { restlessness: Some(0.0), ..SubjectSpec::default() },
        power_line: PowerLine::default(),
        sensor: Sensor { kind, ..Sensor::default() },
        trouble: Trouble::default(),
        finds_recorder: true,
        bench: dicrotic::bench::Bench::wired(),
        recorder,
    }
}

/// `seconds` of the trace after ten, V.
fn trace(chain: &mut Chain, seconds: usize) -> Vec<f64> {
    let mut codes = Vec::new();
    chain.fill(10 * RATE, &mut codes);
    codes.clear();
    chain.fill(seconds * RATE, &mut codes);
    let code_v = dicrotic::recorder::converter::code_v(chain.settings().range_v);
    codes.iter().map(|c| f64::from(*c) * code_v).collect()
}

fn shown(kind: Kind, seed: u64, buffered: bool, integral: bool) -> Vec<f64> {
    let range_v = if kind == Kind::Film && !buffered { 0.02 } else { 0.5 };
    let settings = Settings { buffered, integral, range_v, ..Settings::default() };
    trace(&mut Chain::new(config(kind, settings), seed).unwrap(), 20)
}

/// The mean over a period of the power line: hum aside, the same signal.
fn without_hum(values: &[f64]) -> Vec<f64> {
    values.windows(20).map(|w| w.iter().sum::<f64>() / 20.0).collect()
}

fn slope(values: &[f64]) -> Vec<f64> {
    values.windows(2).map(|w| w[1] - w[0]).collect()
}

/// Highest correlation of two signals over shifts of at most 40 ms.
fn alike(a: &[f64], b: &[f64]) -> f64 {
    let n = a.len().min(b.len()) - 80;
    let r = |x: &[f64], y: &[f64]| {
        let (mx, my) = (x.iter().sum::<f64>() / n as f64, y.iter().sum::<f64>() / n as f64);
        let (mut xy, mut xx, mut yy) = (0.0, 0.0, 0.0);
        for (x, y) in x.iter().zip(y) {
            xy += (x - mx) * (y - my);
            xx += (x - mx) * (x - mx);
            yy += (y - my) * (y - my);
        }
        xy / (xx * yy).sqrt()
    };
    (0..80).map(|k| r(&a[40..40 + n], &b[k..k + n])).fold(-1.0, f64::max)
}

#[test]
fn a_plain_input_shows_the_slope_of_the_pulse_and_the_integral_gives_the_pulse_back() {
    for kind in [Kind::Ceramic, Kind::Film] {
        for seed in 1..=12 {
            let volume = without_hum(&shown(kind, seed, true, false));
            let plain = without_hum(&shown(kind, seed, false, false));
            let (as_slope, as_volume) = (alike(&plain, &slope(&volume)), alike(&plain, &volume));
            assert!(as_slope > 0.95 && as_volume < 0.85, "{kind:?}, seed {seed}: {as_slope}, {as_volume}");
            let back = alike(&without_hum(&shown(kind, seed, false, true)), &volume);
            assert!(back > 0.9, "{kind:?}, seed {seed}: integral and pulse alike by {back}");
        }
    }
    // Light through the skin comes with an amplifier of its own: the input is the same to it.
    assert_eq!(shown(Kind::Optical, 1, true, false), shown(Kind::Optical, 1, false, false));
}

#[test]
fn the_integral_keeps_a_wave_of_one_hertz_and_lets_a_constant_go() {
    // H = 2 pi U s / (s + 2 pi L)^2 with U 1 Hz and L .05 Hz: 1 / (1 + (L / U)^2) at 1 Hz, U / f at f far above L.
    for rate_hz in [100.0, 1000.0, 4000.0] {
        let section = Section::integral(1.0, 0.05, rate_hz);
        let size = |hz: f64| {
            let (re, im) = section.response(hz, rate_hz);
            dicrotic::math::hypot(re, im)
        };
        assert!((size(1.0) - 1.0 / 1.0025).abs() < 2e-3, "{rate_hz} Hz: {}", size(1.0));
        assert!((size(4.0) - 0.25).abs() < 5e-3, "{rate_hz} Hz: {}", size(4.0));
        assert!(size(0.0) < 1e-9);
        let (re, im) = section.response(1.0, rate_hz);
        assert!(
            (dicrotic::math::atan2(im, re).to_degrees() + 84.3).abs() < 1.0,
            "a quarter of a period late but for the leak"
        );
    }
}

#[test]
fn a_change_of_range_makes_no_step_in_the_integral() {
    let settings = Settings { buffered: false, integral: true, range_v: 0.5, ..Settings::default() };
    let mut chain = Chain::new(config(Kind::Ceramic, settings), 4).unwrap();
    trace(&mut chain, 10);
    let mut still = chain.clone();
    chain.change_recorder(&Change::Range { v: 0.2 }).unwrap();
    let (after, before) = (trace(&mut chain, 1), trace(&mut still, 1));
    for (x, y) in after.iter().zip(&before) {
        assert!((x - y).abs() < 1e-4, "{x} V and {y} V");
    }
}

#[test]
fn the_calibrator_shows_its_height_its_period_and_what_a_filter_does_to_a_step() {
    let recorder = Settings { calibrator: true, range_v: 0.02, ..Settings::default() };
    let mut chain = Chain::new(config(Kind::Ceramic, recorder), 1).unwrap();
    let wave = trace(&mut chain, 10);
    let middle = CALIBRATOR_V / 2.0;
    let rises: Vec<usize> = (1..wave.len()).filter(|k| wave[k - 1] < middle && wave[*k] >= middle).collect();
    assert!((9..=10).contains(&rises.len()), "{} rises in ten seconds", rises.len());
    assert!(rises.windows(2).all(|w| w[1].abs_diff(w[0] + RATE) <= 1), "once in a second: {rises:?}");
    let at = |k: usize| wave[k..k + 50].iter().sum::<f64>() / 50.0;
    assert!((at(rises[2] + 200) - CALIBRATOR_V).abs() < 1e-4 && at(rises[2] + 700).abs() < 1e-4);
    // Behind a first-order high-pass a step falls to 1/e in 1 / (2 pi f): at 1 Hz in .159 s.
    chain.change_recorder(&Change::HighPass { hz: Some(1.0), order: Some(1) }).unwrap();
    let wave = trace(&mut chain, 3);
    let rise = (500..1600).find(|k| wave[*k] - wave[k - 1] > middle).unwrap();
    let fall = wave[rise + 159] / wave[rise];
    assert!((fall - dicrotic::math::exp(-1.0)).abs() < 0.02, "{fall}");
}

fn bench(kind: &str, seed: u64) -> Session {
    let text = format!(
        "id = \"front\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\nsensor = {{kind = \"{kind}\"}}\n\
         subject = {{restlessness = 0.0, premature_per_min = 0.0, pulse_mv = 40.0}}\nbench = {{start = \"wired\"}}\n\
         recorder = {{range_v = 0.1}}\n"
    );
    Session::new(&text, seed).unwrap()
}

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

#[test]
fn a_recording_is_of_the_sensor_from_start_to_end() {
    let mut session = bench("ceramic", 5);
    session.run(2 * RATE);
    act(&mut session, json!({"do": "calibrator", "on": true})).unwrap();
    assert_eq!(act(&mut session, json!({"do": "record"})), Err(Refusal::CalibratorOn {}));
    act(&mut session, json!({"do": "calibrator", "on": false})).unwrap();
    act(&mut session, json!({"do": "record"})).unwrap();
    let refused = act(&mut session, json!({"do": "calibrator", "on": true}));
    assert_eq!(refused, Err(Refusal::Recording { what: "calibrator" }));
}

#[test]
fn a_beat_is_awaited_where_the_trace_shows_its_peak() {
    // The integral of a whole pulse is left out: its slow waves stand over its beats, and it has no peaks to speak of.
    let settings: [(&str, &[Value]); 6] = [
        ("nothing", &[]),
        ("high-pass of 2 Hz", &[json!({"do": "high_pass", "hz": 2.0})]),
        ("high-pass of 7 Hz", &[json!({"do": "high_pass", "hz": 7.0})]),
        ("low-pass of 2 Hz", &[json!({"do": "low_pass", "hz": 2.0})]),
        ("a plain input", &[json!({"do": "buffered", "on": false})]),
        (
            "a plain input's integral",
            &[json!({"do": "buffered", "on": false}), json!({"do": "integral", "on": true})],
        ),
    ];
    for (what, steps) in settings {
        for seed in 1..=6 {
            let mut session = bench("ceramic", seed);
            for step in steps {
                act(&mut session, step.clone()).unwrap();
            }
            session.run(12 * RATE);
            act(&mut session, json!({"do": "record"})).unwrap();
            session.run(20 * RATE);
            act(&mut session, json!({"do": "stop"})).unwrap();
            let kept = session.recording().unwrap();
            let values = without_hum(&kept.recording.values(0, kept.recording.len()));
            let mut off: Vec<f64> = session
                .reference_peaks()
                .iter()
                .map(|p| p.at_s + kept.delay_s)
                .filter(|t| (0.5..19.5).contains(t))
                .map(|t| {
                    let at = (t * RATE as f64) as usize;
                    let near = at - 150..at + 150;
                    // The mean over 20 ms lies 10 ms before what it is the mean of.
                    let top = near.max_by(|i, k| values[*i].total_cmp(&values[*k])).unwrap() + 10;
                    top as f64 / RATE as f64 - t
                })
                .collect();
            off.sort_by(|x, y| x.abs().total_cmp(&y.abs()));
            let most = off[off.len() * 9 / 10].abs();
            assert!(most < 0.04, "{what}, seed {seed}: nine of ten peaks within {most} s");
        }
    }
}
