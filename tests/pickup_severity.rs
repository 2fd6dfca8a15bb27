//! Every trouble has a symptom that can be measured, and more of the trouble is more of the symptom.

use dicrotic::bench::table::{Part, Point};
use dicrotic::bench::{Bench, Change};
use dicrotic::chain::{Chain, Config, Trouble};
use dicrotic::math;
use dicrotic::physiology::SubjectSpec;
use dicrotic::pickup::field::PowerLine;
use dicrotic::pickup::sensor::{Kind, Sensor, Shield};
use dicrotic::recorder::Settings;
use dicrotic::recorder::converter::code_v;

fn clean() -> Config {
    Config {
        subject: SubjectSpec {
            pulse_mv: Some(40.0),
            restlessness: Some(0.0),
            premature_per_min: Some(0.0),
            finger_temp_c: Some(33.0),
            ..SubjectSpec::default()
        },
        power_line: PowerLine::default(),
        sensor: Sensor::default(),
        trouble: Trouble::default(),
        finds_recorder: true,
        bench: Bench::wired(),
        recorder: Settings { range_v: 1.0, ..Settings::default() },
    }
}

fn with(change: impl FnOnce(&mut Config)) -> Config {
    let mut config = clean();
    change(&mut config);
    config
}

/// Half a minute of the chain, V, after five seconds of settling.
fn volts(config: Config) -> Vec<f64> {
    let scale = code_v(config.recorder.range_v);
    let mut chain = Chain::new(config, 8).unwrap();
    let rate = chain.settings().rate_hz as usize;
    let mut codes = Vec::new();
    chain.fill(5 * rate, &mut codes);
    codes.clear();
    chain.fill(30 * rate, &mut codes);
    codes.iter().map(|c| f64::from(*c) * scale).collect()
}

/// Amplitude of the wave of `hz`, V: mean over stretches of half a second under a Hann window, which keeps the pulse out.
fn line(values: &[f64], hz: f64) -> f64 {
    let stretches: Vec<f64> = values
        .chunks_exact(500)
        .map(|chunk| {
            let (c, s) = chunk.iter().enumerate().fold((0.0, 0.0), |(c, s), (k, v)| {
                let angle = math::TAU * hz * k as f64 / 1000.0;
                let v = v * (1.0 - math::cos(math::TAU * k as f64 / chunk.len() as f64));
                (c + v * math::cos(angle), s + v * math::sin(angle))
            });
            2.0 * math::hypot(c, s) / chunk.len() as f64
        })
        .collect();
    stretches.iter().sum::<f64>() / stretches.len() as f64
}

fn rms_of_differences(values: &[f64]) -> f64 {
    (values.windows(2).map(|w| (w[1] - w[0]) * (w[1] - w[0])).sum::<f64>() / values.len() as f64).sqrt()
}

fn spread(values: &[f64]) -> f64 {
    let (low, high) = values.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
    high - low
}

/// Asserts that each figure is larger than the one before by a tenth at least.
#[track_caller]
fn rises(what: &str, figures: &[f64]) {
    for pair in figures.windows(2) {
        assert!(pair[1] > 1.1 * pair[0], "{what}: {figures:?}");
    }
}

#[test]
fn hum_rises_as_the_cable_nears_the_power_strip() {
    let figures: Vec<f64> = [60.0, 45.0, 30.0, 18.0, 12.0]
        .into_iter()
        .map(|y| {
            line(
                &volts(with(|c| {
                    c.sensor = Sensor { kind: Kind::Ceramic, shield: Shield::Damaged, ..Sensor::default() };
                    c.bench.cable.handles = [Point { x: 50.0, y }, Point { x: 70.0, y }];
                })),
                50.0,
            )
        })
        .collect();
    rises("hum, V", &figures);
}

#[test]
fn the_share_of_clipped_samples_rises_as_the_range_falls() {
    let figures: Vec<f64> = [0.05, 0.02, 0.01, 0.005]
        .into_iter()
        .map(|range_v| {
            let values = volts(with(|c| c.recorder.range_v = range_v));
            let top = values.iter().filter(|v| v.abs() >= 0.9999 * range_v).count();
            0.001 + top as f64 / values.len() as f64
        })
        .collect();
    rises("clip share", &figures);
}

#[test]
fn levels_across_the_pulse_fall_with_range_and_bits() {
    let levels = |range_v, bits| {
        let values = volts(with(|c| {
            c.recorder.range_v = range_v;
            c.recorder.bits = bits;
        }));
        let mut codes: Vec<i64> = values.iter().map(|v| (v / code_v(range_v)) as i64).collect();
        codes.sort_unstable();
        codes.dedup();
        codes.len() as f64
    };
    rises("levels", &[levels(10.0, 12), levels(2.0, 12), levels(0.5, 12), levels(0.1, 12)]);
    rises("levels", &[levels(0.5, 8), levels(0.5, 12), levels(0.5, 16)]);
}

#[test]
fn the_pulse_falls_as_the_strap_loosens_and_as_it_closes_the_artery() {
    let pulse = |tightness: f64| line_free_height(&volts(with(|c| c.bench.strap.tightness = tightness)));
    rises("pulse, V", &[pulse(0.3), pulse(0.4), pulse(0.5), pulse(0.65)]);
    rises("pulse from the tight side, V", &[pulse(0.98), pulse(0.92), pulse(0.85)]);
}

/// Median over two-second stretches of highest minus lowest.
fn line_free_height(values: &[f64]) -> f64 {
    let mut heights: Vec<f64> = values.chunks_exact(2000).map(spread).collect();
    heights.sort_by(f64::total_cmp);
    heights[heights.len() / 2]
}

#[test]
fn a_restless_hand_a_trembling_one_and_a_tapping_one() {
    let unrest = |unrest| spread(&volts(with(|c| c.trouble.unrest = unrest)));
    rises("spread of a restless hand, V", &[unrest(0.0), unrest(0.3), unrest(1.0)]);
    let tremor = |tremor| line(&volts(with(|c| c.trouble.tremor = tremor)), 10.0);
    rises("wave at 10 Hz, V", &[tremor(0.0), tremor(0.3), tremor(0.6), tremor(1.0)]);
    let tapping = |tapping| rms_of_differences(&volts(with(|c| c.trouble.tapping = tapping)));
    rises("steps of a tapping hand, V", &[tapping(0.0), tapping(0.4), tapping(1.0)]);
}

#[test]
fn tremor_is_of_the_size_and_band_of_the_table() {
    // Published band of physiological tremor 8 to 12 Hz; .1 to .8 of the pulse is the design default.
    let values = volts(with(|c| {
        c.trouble.tremor = 1.0;
        c.subject.pulse_mv = Some(40.0);
    }));
    let at = |hz| line(&values, hz);
    assert!(at(10.0) > 4.0 * at(30.0) && at(10.0) > 4.0 * at(20.0), "{} {} {}", at(10.0), at(20.0), at(30.0));
    let plain = volts(clean());
    let extra: Vec<f64> = values.iter().zip(&plain).map(|(a, b)| a - b).collect();
    let rms = (extra.iter().map(|v| v * v).sum::<f64>() / extra.len() as f64).sqrt();
    // A narrow band of noise is about 2 root 2 times its rms from top to bottom.
    let share = 2.83 * rms / 0.040;
    assert!((0.5..1.2).contains(&share), "{share} of the pulse");
}

#[test]
fn a_telephone_spikes_more_the_busier_and_the_nearer_it_is() {
    let spikes = |phone, x, y| {
        rms_of_differences(&volts(with(|c| {
            c.trouble.phone = phone;
            c.sensor.shield = Shield::Damaged;
            c.bench.table.put(Part::Phone, Point { x, y });
        })))
    };
    rises(
        "steps by severity, V",
        &[spikes(0.0, 60.0, 60.0), spikes(0.3, 60.0, 60.0), spikes(1.0, 60.0, 60.0)],
    );
    rises(
        "steps by distance, V",
        &[spikes(1.0, 150.0, 80.0), spikes(1.0, 66.0, 50.0), spikes(1.0, 60.0, 66.0)],
    );
}

#[test]
fn room_light_disturbs_the_optical_sensor_alone_and_a_cloth_helps() {
    let optical = |lamp_on, shaded, x: f64| {
        line(
            &volts(with(|c| {
                c.sensor.kind = Kind::Optical;
                c.bench.wiring.lamp_on = lamp_on;
                c.bench.strap.shaded = shaded;
                c.bench.table.put(Part::Lamp, Point { x, y: 50.0 });
            })),
            100.0,
        )
    };
    let near = optical(true, false, 95.0);
    rises("flicker, V", &[optical(false, false, 95.0), optical(true, false, 30.0), near]);
    assert!(optical(true, true, 95.0) < 0.05 * near, "under a cloth");
    let piezo = line(
        &volts(with(|c| {
            c.bench.wiring.lamp_on = true;
            c.bench.table.put(Part::Lamp, Point { x: 95.0, y: 50.0 });
        })),
        100.0,
    );
    assert!(piezo < 1e-4, "{piezo}");
}

#[test]
fn an_optical_sensor_takes_next_to_no_hum() {
    // Output impedance of a kilohm or less: capacitive hum is negligible (worked from I = 2 pi f C V).
    let of = |kind| {
        let values = volts(with(|c| {
            c.sensor = Sensor { kind, shield: Shield::None, ..Sensor::default() };
            c.recorder.range_v = 2.0;
        }));
        line(&values, 50.0) / line_free_height(&values)
    };
    assert!(of(Kind::Optical) < 0.01 * of(Kind::Ceramic));
}

#[test]
fn a_slipping_strap_loses_the_pulse_until_it_is_fastened() {
    let mut config = clean();
    config.trouble.slip = 1.0;
    let mut chain = Chain::new(config, 8).unwrap();
    let height = |chain: &mut Chain, seconds: usize| {
        let mut codes = Vec::new();
        chain.fill(seconds * 1000, &mut codes);
        line_free_height(&codes.iter().map(|c| f64::from(*c)).collect::<Vec<_>>())
    };
    let early = height(&mut chain, 4);
    height(&mut chain, 20);
    let late = height(&mut chain, 6);
    assert!(late < 0.5 * early, "{early} -> {late}");
    chain.change_bench(&Change::StrapOff {}).unwrap();
    chain.change_bench(&Change::StrapOn {}).unwrap();
    height(&mut chain, 3);
    assert!(height(&mut chain, 10) > 0.8 * early);
}

#[test]
fn a_loose_plug_opens_more_often_the_looser_it_is() {
    let opens = |plug_loose| {
        // With the sensor unstrapped only the open plug hums.
        let values = volts(with(|c| {
            c.trouble.plug_loose = plug_loose;
            c.bench.strap.on = false;
        }));
        values.chunks_exact(20).filter(|chunk| spread(chunk) > 5e-4).count() as f64 + 1.0
    };
    rises("stretches of open plug", &[opens(0.0), opens(0.2), opens(1.0)]);
}

#[test]
fn moving_the_cable_crackles_for_half_a_second() {
    let mut chain = Chain::new(clean(), 8).unwrap();
    chain.change_bench(&Change::StrapOff {}).unwrap();
    let mut codes = Vec::new();
    chain.fill(60_000, &mut codes);
    codes.clear();
    chain.fill(1000, &mut codes);
    let still = rms_of_differences(&codes.iter().map(|c| f64::from(*c)).collect::<Vec<_>>());
    chain.change_bench(&Change::Move { part: Part::Cable1, x: 46.0, y: 66.0 }).unwrap();
    codes.clear();
    chain.fill(500, &mut codes);
    let moving = rms_of_differences(&codes.iter().map(|c| f64::from(*c)).collect::<Vec<_>>());
    assert!(moving > 3.0 * still, "{still} -> {moving}");
}
