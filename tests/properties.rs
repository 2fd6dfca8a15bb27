//! What holds for any subject, any settings, anything that is done: numbers within bounds, blocks that do not matter, scaling and
//! shifting where the physics promise it. Cases are drawn anew in each run; a failure prints the smallest one.

use dicrotic::assess::Criteria;
use dicrotic::assess::asked::judge;
use dicrotic::assess::parse::{millivolts, number};
use dicrotic::assess::sheet::{Sheet, Written};
use dicrotic::assess::task::Task;
use dicrotic::assess::trace::Trace;
use dicrotic::assess::verdict::{Reference, Typed};
use dicrotic::assess::window::{Peak, allowed, interval_rate};
use dicrotic::bench::{Bench, Change};
use dicrotic::chain::{Chain, Config, Trouble};
use dicrotic::math;
use dicrotic::measure::detect::detect;
use dicrotic::physiology::SubjectSpec;
use dicrotic::pickup::field::PowerLine;
use dicrotic::pickup::sensor::{Kind, Sensor, Shield};
use dicrotic::recorder::Settings;
use dicrotic::recorder::settings::{
    AVERAGE_MS, BITS, HIGH_PASS_HZ, LOW_PASS_HZ, NOTCH_HZ, RANGES_V, RATES_HZ,
};
use dicrotic::session::{Action, Session};
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Value, json};

const SCENARIO: &str = include_str!("../scenarios/03-loose-and-restless.toml");

fn cases(n: u32) -> ProptestConfig {
    ProptestConfig { cases: n, failure_persistence: None, ..ProptestConfig::default() }
}

fn choice(list: &'static [f64]) -> impl Strategy<Value = Option<f64>> {
    prop::option::of(select(list))
}

prop_compose! {
    fn settings()(
        range_v in select(&RANGES_V[..]), bits in select(&BITS[..]), rate_hz in select(&RATES_HZ[..]),
        zero_v in -10.0..10.0, inverted: bool, high_pass_hz in choice(&HIGH_PASS_HZ), high_pass_order in 1_u8..3,
        low_pass_hz in choice(&LOW_PASS_HZ), low_pass_order in 1_u8..3, notch_hz in choice(&NOTCH_HZ),
        average_ms in choice(&AVERAGE_MS), anti_alias: bool, buffered: bool, integral: bool,
    ) -> Settings {
        let free = Settings {
            range_v, bits, rate_hz, zero_v, inverted, high_pass_hz, high_pass_order, low_pass_hz, low_pass_order, notch_hz,
            average_ms, anti_alias, buffered, integral, ..Settings::default()
        };
        // Some filters do not go with a low rate: the unit refuses them, and so does the test.
        let plain = Settings { high_pass_hz: None, low_pass_hz: None, notch_hz: None, average_ms: None, ..free.clone() };
        if free.check().is_ok() { free } else { plain }
    }
}

prop_compose! {
    fn config()(
        recorder in settings(), age in 6.0..90.0, rate in 30.0..150.0, breaths in 4.0..40.0, premature in 0.0..20.0,
        finger in 10.0..38.0, pulse in 1.0..200.0, restless in 0.0..5.0, troubles in prop::array::uniform7(0.0..=1.0),
        optical: bool, damaged: bool, power_line in select(&[50.0, 60.0][..]), volts in 90.0..260.0,
    ) -> Config {
        let [unrest, tremor, tapping, slip, plug_loose, phone, offset] = troubles;
        Config {
            subject: SubjectSpec {
                age_years: Some(age), rest_rate_bpm: Some(rate), breaths_per_min: Some(breaths),
                premature_per_min: Some(premature), finger_temp_c: Some(finger), pulse_mv: Some(pulse),
                restlessness: Some(restless), ..SubjectSpec::default()
            },
            power_line: PowerLine { hz: power_line, volts },
            sensor: Sensor {
                kind: if optical { Kind::Optical } else { Kind::Ceramic },
                shield: if damaged { Shield::Damaged } else { Shield::Good },
                buffer: false,
            },
            trouble: Trouble { unrest, tremor, tapping, slip, plug_loose, phone, offset, ..Trouble::default() },
            finds_recorder: true,
            bench: Bench::wired(),
            recorder,
        }
    }
}

/// Half of the codes that a resolution has.
fn half(bits: u8) -> i32 {
    1 << (bits - 1)
}

/// Without the filters behind the converter, which work on its numbers and fill their low bits.
fn bare(mut config: Config) -> Config {
    config.recorder.notch_hz = None;
    config.recorder.average_ms = None;
    config.recorder.integral = false;
    config
}

fn run(chain: &mut Chain, samples: usize) -> Vec<i16> {
    let mut codes = Vec::new();
    chain.fill(samples, &mut codes);
    codes
}

/// An action with numbers of its own, some of them out of reach: those are to be refused, not to do harm.
fn action() -> impl Strategy<Value = Value> {
    let x = -0.5..1.5_f64;
    let plain = select(vec![
        json!({"do": "strap_on"}),
        json!({"do": "strap_off"}),
        json!({"do": "tap_sensor"}),
        json!({"do": "ask_still"}),
        json!({"do": "press_finger"}),
        json!({"do": "swap_cable"}),
        json!({"do": "rest_arm"}),
        json!({"do": "zero"}),
        json!({"do": "zero_clear"}),
        json!({"do": "record"}),
        json!({"do": "stop"}),
        json!({"do": "check"}),
        json!({"do": "rescan"}),
        json!({"do": "marks_clear"}),
        json!({"do": "hint"}),
        json!({"do": "zoom_out"}),
        json!({"do": "unplug", "end": "sensor"}),
        json!({"do": "plug", "end": "sensor", "socket": "in2"}),
        json!({"do": "plug", "end": "sensor", "socket": "in1"}),
        json!({"do": "charger", "plugged": true}),
        json!({"do": "show", "mode": "live"}),
        json!({"do": "show", "mode": "recording"}),
    ]);
    prop_oneof![
        3 => plain,
        1 => x.clone().prop_map(|v| json!({"do": "strap", "tightness": v})),
        1 => x.clone().prop_map(|v| json!({"do": "move", "part": "charger", "x": 160.0 * v, "y": 90.0 * v})),
        1 => x.clone().prop_map(|v| json!({"do": "cursor", "which": "a", "t": v})),
        1 => x.clone().prop_map(|v| json!({"do": "mark", "t": 3.0 * v})),
        1 => select(&RANGES_V[..]).prop_map(|v| json!({"do": "range", "v": v})),
        1 => select(&RATES_HZ[..]).prop_map(|v| json!({"do": "rate", "hz": v})),
        1 => select(&BITS[..]).prop_map(|v| json!({"do": "bits", "n": v})),
        1 => choice(&LOW_PASS_HZ).prop_map(|v| json!({"do": "low_pass", "hz": v})),
        1 => choice(&NOTCH_HZ).prop_map(|v| json!({"do": "notch", "hz": v})),
        1 => "\\PC{0,50}".prop_map(|text| json!({"do": "answer", "field": "count", "text": text})),
    ]
}

proptest! {
    #![proptest_config(cases(12))]

    #[test]
    fn the_chain_gives_codes_of_its_resolution_whatever_its_blocks(config in config(), seed: u64, blocks in prop::collection::vec(1_usize..300, 1..6)) {
        let total = 400;
        let mut chain = Chain::new(config.clone(), seed).expect("settings that go together");
        let whole = run(&mut chain, total);
        let most = half(16);
        prop_assert!(whole.iter().all(|code| (-most..most).contains(&i32::from(*code))));
        prop_assert!(chain.truth().iter().all(|beat| beat.peak_s.is_finite()));
        for tells in [chain.hum_v(), chain.best_pulse_v(), chain.time_s(), chain.late_s()] {
            prop_assert!(tells.is_finite());
        }

        let mut pieces = Vec::new();
        let mut again = Chain::new(config, seed).expect("the same settings");
        for size in blocks.into_iter().cycle() {
            let left = total - pieces.len();
            if left == 0 { break }
            again.fill(size.min(left), &mut pieces);
        }
        prop_assert_eq!(whole, pieces);
    }

    #[test]
    fn a_coarse_converter_leaves_the_low_bits_empty(config in config(), seed: u64) {
        let mut chain = Chain::new(bare(config), seed).expect("settings that go together");
        let step = 1_i32 << (16 - chain.settings().bits);
        prop_assert!(run(&mut chain, 300).iter().all(|code| i32::from(*code) % step == 0));
    }

    #[test]
    fn twice_the_range_is_half_the_code(mut config in config(), seed: u64, range_v in select(&[5.0, 1.0, 0.5, 0.1, 0.05][..])) {
        config = bare(config);
        config.recorder = Settings { range_v, bits: 16, zero_v: 0.0, ..config.recorder };
        let mut wide = config.clone();
        wide.recorder.range_v *= 2.0;
        let fine = run(&mut Chain::new(config, seed).unwrap(), 300);
        let coarse = run(&mut Chain::new(wide, seed).unwrap(), 300);
        for (f, c) in fine.iter().zip(&coarse) {
            let clipped = i32::from(*f).abs() >= half(16) - 1;
            prop_assert!(clipped || (f64::from(*f) / 2.0 - f64::from(*c)).abs() <= 1.0, "{} and {}", f, c);
        }
    }

    #[test]
    fn turning_the_polarity_over_turns_the_codes_over(mut config in config(), seed: u64) {
        config = bare(config);
        config.recorder.zero_v = 0.0;
        config.trouble.offset = 0.0;
        // A converter of N bits has one step more below zero than above.
        let step = 1_i32 << (16 - config.recorder.bits);
        let mut turned = config.clone();
        turned.recorder.inverted = !config.recorder.inverted;
        let up = run(&mut Chain::new(config, seed).unwrap(), 300);
        let down = run(&mut Chain::new(turned, seed).unwrap(), 300);
        for (u, d) in up.iter().zip(&down) {
            prop_assert!((i32::from(*u) + i32::from(*d)).abs() <= step, "{} and {}", u, d);
        }
    }

    #[test]
    fn a_bench_further_from_the_power_line_hums_no_more(seed: u64, near in 0.0..0.5_f64) {
        // The charger on its way to the far corner: hum grows as it comes near, and never the other way round.
        let hum = |share: f64| {
            let config = Config { trouble: Trouble::default(), finds_recorder: true, bench: Bench::wired(), subject: SubjectSpec::default(), power_line: PowerLine::default(), sensor: Sensor { kind: Kind::Ceramic, shield: Shield::Damaged, ..Sensor::default() }, recorder: Settings::default() };
            let mut chain = Chain::new(config, seed).unwrap();
            chain.change_bench(&Change::Charger { plugged: true }).unwrap();
            let part = dicrotic::bench::table::Part::Charger;
            let moved = chain.change_bench(&Change::Move { part, x: 55.0 + 90.0 * share, y: 62.0 });
            moved.ok().map(|()| { run(&mut chain, 50); chain.hum_v() })
        };
        if let (Some(close), Some(far)) = (hum(near), hum(near + 0.4)) {
            prop_assert!(far <= close, "{} V at {}, {} V further off", close, near, far);
        }
    }
}

proptest! {
    #![proptest_config(cases(10))]

    #[test]
    fn whatever_is_done_is_refused_or_can_be_done_again(seed: u64, deeds in prop::collection::vec((action(), 0_usize..400), 0..20)) {
        let mut session = Session::new(SCENARIO, seed).unwrap();
        for (deed, wait) in deeds {
            let action = Action::from_value(deed).expect("an action that there is");
            prop_assert_eq!(Action::from_value(action.to_value()), Ok(action.clone()));
            let _ = session.act(&action);
            session.run(wait);
        }
        // The page gets numbers: JSON has no other.
        let view = session.view().to_string();
        prop_assert!(serde_json::from_str::<Value>(&view).is_ok());
        let (low, high) = session.value_range();
        prop_assert!(low.is_finite() && high.is_finite() && low < high);
        let again = Session::restore(&session.save().expect("a bench is kept")).expect("what was kept comes back");
        prop_assert_eq!(again.log(), session.log());
        prop_assert_eq!(again.recordings(), session.recordings());
        // The revision counts what happened to this page, with what was typed over since.
        let told = |mut view: Value| { view["revision"] = Value::Null; view };
        prop_assert_eq!(told(again.view()), told(session.view()));
    }
}

/// A pulse with a second bump, `n` beats of `interval` s, at 100 Hz.
fn pulse(interval: f64, n: usize) -> Vec<f64> {
    let length = (interval * n as f64 * 100.0) as usize;
    let bump = |u: f64, at: f64, wide: f64| math::exp(-((u - at) / wide) * ((u - at) / wide));
    (0..length)
        .map(|k| {
            let u = (k as f64 / 100.0) % interval;
            bump(u, 0.2, 0.07) + 0.3 * bump(u, 0.45, 0.08)
        })
        .collect()
}

proptest! {
    #![proptest_config(cases(24))]

    #[test]
    fn the_detector_does_not_care_for_unit_or_level(interval in 0.55..1.4_f64, n in 12_usize..24, log_gain in -12.0..9.0_f64, level in -5.0..5.0_f64) {
        let values = pulse(interval, n);
        let beats = detect(&values, 100.0);
        prop_assert!(beats.len() + 2 >= n, "{} of {} beats", beats.len(), n);
        let gain = math::exp(log_gain);
        let other: Vec<f64> = values.iter().map(|v| gain * (v + level)).collect();
        let again = detect(&other, 100.0);
        prop_assert_eq!(beats.len(), again.len());
        for (b, a) in beats.iter().zip(&again) {
            // Rounding may move a peak between two samples that are level.
            prop_assert!((b - a).abs() <= 0.011, "{} and {}", b, a);
        }
    }

    #[test]
    fn the_detector_stays_within_any_record(values in prop::collection::vec(prop_oneof![-1e30..1e30_f64, Just(0.0), -1.0..1.0_f64], 0..400), rate in 10.0..2000.0_f64) {
        let beats = detect(&values, rate);
        let end = values.len() as f64 / rate;
        prop_assert!(beats.iter().all(|t| (0.0..=end).contains(t)));
        prop_assert!(beats.windows(2).all(|w| w[0] < w[1]));
    }
}

proptest! {
    #![proptest_config(cases(200))]

    #[test]
    fn a_measurement_moved_in_time_is_judged_alike(
        intervals in prop::collection::vec(0.4..1.5_f64, 8..60), dt in 0.0..500.0_f64, at in 0.0..10.0_f64, long in 1.0..30.0_f64, delay in -0.05..0.1_f64,
        count in 0.0..60.0_f64, seconds in 1.0..40.0_f64, rate in 20.0..200.0_f64,
    ) {
        // Times on a grid of 1/1024 s, so that moving them rounds nothing.
        let grid = |x: f64| (x * 1024.0).round() / 1024.0;
        let (dt, a, b, delay) = (grid(dt), grid(at), grid(at) + grid(long), grid(delay));
        let mut now = 0.5;
        let mut peaks = Vec::new();
        for (k, interval) in intervals.iter().enumerate() {
            peaks.push(Peak { at_s: now, sure: k % 7 != 6 });
            now += grid(*interval);
        }
        let moved: Vec<Peak> = peaks.iter().map(|p| Peak { at_s: p.at_s + dt, ..*p }).collect();
        let edge = 0.0625;
        prop_assert_eq!(allowed(&peaks, a, b, edge, delay), allowed(&moved, a + dt, b + dt, edge, delay));
        let found = allowed(&peaks, a, b, edge, delay);
        prop_assert!(found.least <= found.exact && found.exact <= found.most);
        prop_assert_eq!(interval_rate(&peaks, a, b), interval_rate(&moved, a + dt, b + dt));

        let typed = Typed { count: Some(count.round()), seconds: Some(seconds), multiplier: Some(60.0 / seconds), rate: Some(rate) };
        let trace = Trace { hum_ratio: 0.02, clip_share: 0.0, fill: 0.5, pulse_v: 0.04, quality: 0.9, smaller_range_fits: false,
 fitting_v: None, movement: None };
        let criteria = Criteria { edge_s: edge, ..Criteria::default() };
        let report = |peaks: &[Peak], dt: f64| judge(&Sheet {
            task: Task::default(), criteria: &criteria, trace: Some(&trace), cursors: Some((a + dt, b + dt)), first: None,
            typed, typed_first: Typed::default(), written: Written::default(),
            reference: Reference { peaks, delay_s: delay, duration_s: 600.0 }, landmarks: &[], values: None, range_v: 0.1,
            exercise_ended_s: None,
        });
        let (here, there) = (report(&peaks, 0.0), report(&moved, dt));
        // Only whole numbers of samples stand in for times: the steps and their codes are the same.
        let codes = |r: &dicrotic::assess::verdict::Report| r.steps.iter().map(|f| (f.step, f.verdict, f.code)).collect::<Vec<_>>();
        prop_assert_eq!(codes(&here), codes(&there));
        prop_assert_eq!(here.passed, there.passed);
    }

    #[test]
    fn a_number_is_read_back_however_it_is_typed(whole in 0_u32..100_000, thousandths in 0_u32..1000, unit in select(&["", " bpm", "s", " beats/min", "x"][..]), comma: bool, blanks in " {0,3}") {
        let sign = if comma { ',' } else { '.' };
        let text = format!("{blanks}{whole}{sign}{thousandths:03}{unit}{blanks}");
        let value = f64::from(whole) + f64::from(thousandths) / 1000.0;
        let read = number(&text);
        prop_assert!(read.is_ok_and(|v| (v - value).abs() < 1e-6), "{:?} is read as {:?}", text, read);
        let read = millivolts(&format!("{whole}{sign}{thousandths:03} mV"));
        prop_assert!(read.is_ok_and(|v| (v - value).abs() < 1e-6));
    }

    #[test]
    fn no_text_breaks_the_worksheet(text in "\\PC{0,60}") {
        for read in [number(&text), millivolts(&text)] {
            prop_assert!(read.is_err() || read.is_ok_and(|v| v.is_finite() && v >= 0.0), "{:?}: {:?}", text, read);
        }
    }
}
