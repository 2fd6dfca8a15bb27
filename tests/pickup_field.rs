//! Hum by geometry: worked examples of physics, and what moving things about does.

use dicrotic::bench::table::{Part, Point};
use dicrotic::bench::{Bench, Change, cable::loop_area_m2};
use dicrotic::pickup::field::{
    PowerLine, capacitive_current_a, hum_at_open_input, hum_at_sensor, induced_v, pair_field_t, wire_field_t,
};
use dicrotic::pickup::sensor::{Kind, Sensor, Shield, corner_hz};

const US: PowerLine = PowerLine { volts: 120.0, hz: 60.0 };

#[test]
fn a_picofarad_carries_nanoamperes() {
    // I = 2 pi f C V: 72 nA/pF at 230 V 50 Hz, 45 nA/pF at 120 V 60 Hz (any circuits text).
    assert!((capacitive_current_a(50.0, 1e-12, 230.0) * 1e9 - 72.3).abs() < 0.1);
    assert!((capacitive_current_a(60.0, 1e-12, 120.0) * 1e9 - 45.2).abs() < 0.1);
}

#[test]
fn a_cord_induces_next_to_nothing() {
    // B = mu0 I / (2 pi r), a pair leaves spacing/r of it: .3 A, 3 mm, 10 cm give .018 uT, and .28 uV in .05 m^2 at
    // 50 Hz (any university physics text).
    assert!((wire_field_t(1.0, 0.1) - 2e-6).abs() < 1e-12);
    let tesla = pair_field_t(0.3, 0.1, 0.003);
    assert!((tesla * 1e6 - 0.018).abs() < 0.001, "{tesla}");
    assert!((induced_v(50.0, tesla, 0.05) * 1e6 - 0.28).abs() < 0.01);
}

#[test]
fn the_sensors_corner_is_that_of_its_r_and_c() {
    // f = 1 / (2 pi R C), any text on electronics: 2.4 nF with 100 megohm .66 Hz, with 10 megohm 6.6 Hz.
    assert!((corner_hz(100e6, 2.4e-9) - 0.66).abs() < 0.005);
    assert!((corner_hz(10e6, 2.4e-9) - 6.6).abs() < 0.05);
    assert!((Sensor::default().corner_hz(1e12) - 0.0796).abs() < 1e-3);
    // |Z| of 20 nF at 50 Hz is 159 kilohm (1 / (2 pi f C)).
    assert!((Sensor::default().impedance_ohm(50.0, 1e12) / 159_155.0 - 1.0).abs() < 1e-3);
}

#[test]
fn a_plain_input_raises_the_corner_of_a_sensor_that_has_no_amplifier() {
    // 20 nF on 1 megohm: 8 Hz; 2.4 nF: 66 Hz (1 / (2 pi R C)); the sensor's own 100 megohm and 1 gigohm beside it change
    // a hundredth and a thousandth of that.
    for (kind, own_hz, plain_hz) in [(Kind::Ceramic, 0.0796, 8.04), (Kind::Film, 0.0663, 66.4)] {
        let sensor = Sensor { kind, ..Sensor::default() };
        let with_own = Sensor { buffer: true, ..sensor };
        for (found, expected) in [
            (sensor.corner_hz(1e6), plain_hz),
            (sensor.corner_hz(1e12), own_hz),
            (with_own.corner_hz(1e6), own_hz),
        ] {
            assert!((found / expected - 1.0).abs() < 0.01, "{kind:?}: {found}, {expected}");
        }
        // An amplifier at the sensor drives the cable: what couples into it does next to nothing.
        let bench = Bench::wired();
        assert!(
            hum_at_sensor(&bench, &with_own, 1e6, &PowerLine::default()).wiring_v
                < 0.1 * hum_at_sensor(&bench, &sensor, 1e6, &PowerLine::default()).wiring_v
        );
    }
    let optical = Sensor { kind: Kind::Optical, ..Sensor::default() };
    assert_eq!(optical.corner_hz(1e6), optical.corner_hz(1e12));
}

fn total(bench: &Bench, sensor: Sensor, power_line: PowerLine) -> f64 {
    hum_at_sensor(bench, &sensor, 1e12, &power_line).total_v()
}

#[test]
fn hum_grows_as_the_charger_comes_near_and_goes_when_it_is_unplugged() {
    let sensor = Sensor { kind: Kind::Ceramic, shield: Shield::Damaged, ..Sensor::default() };
    let mut bench = Bench::wired();
    bench.change(&Change::Charger { plugged: true }).unwrap();
    let mut before = 0.0;
    // From the far corner along the table to the cable's middle.
    for x in [150.0, 130.0, 115.0, 100.0, 85.0, 70.0] {
        bench.change(&Change::Move { part: Part::Charger, x, y: 60.0 }).unwrap();
        let hum = total(&bench, sensor, PowerLine::default());
        assert!(hum > before, "x = {x}: {hum} after {before}");
        before = hum;
    }
    bench.change(&Change::Charger { plugged: false }).unwrap();
    assert!(total(&bench, sensor, PowerLine::default()) < 0.35 * before);
}

#[test]
fn the_shield_and_the_region_count_as_they_should() {
    let bench = Bench::wired();
    let with = |shield| {
        total(&bench, Sensor { kind: Kind::Ceramic, shield, ..Sensor::default() }, PowerLine::default())
    };
    assert!(with(Shield::Good) < with(Shield::Damaged) && with(Shield::Damaged) < with(Shield::None));
    // Through a capacitor into a capacitor the frequency cancels: the ratio is that of the voltages, 120/230.
    let sensor = Sensor { kind: Kind::Ceramic, shield: Shield::None, ..Sensor::default() };
    let ratio = total(&bench, sensor, US) / total(&bench, sensor, PowerLine::default());
    assert!((ratio - 120.0 / 230.0).abs() < 0.01, "{ratio}");
    let film = Sensor { kind: Kind::Film, shield: Shield::Damaged, ..Sensor::default() };
    assert!(total(&bench, film, US) > 4.0 * total(&bench, Sensor { kind: Kind::Ceramic, ..film }, US));
}

#[test]
fn a_clean_bench_hums_under_a_tenth_of_a_weak_pulse() {
    // The level that a good trace stays under (common practice), for a pulse of 10 mV.
    let hum = total(&Bench::wired(), Sensor::default(), PowerLine::default());
    assert!(2.0 * hum < 0.1 * 0.010, "{hum}");
}

#[test]
fn the_subject_is_an_antenna_only_with_the_sensor_on() {
    let mut bench = Bench::wired();
    let on = hum_at_sensor(&bench, &Sensor::default(), 1e12, &PowerLine::default());
    assert!(on.body_v > 0.0);
    bench.change(&Change::StrapOff {}).unwrap();
    assert_eq!(hum_at_sensor(&bench, &Sensor::default(), 1e12, &PowerLine::default()).body_v, 0.0);
}

#[test]
fn an_open_input_hums_far_more_than_a_shielded_sensor() {
    let bench = Bench::wired();
    let open = hum_at_open_input(&bench, &PowerLine::default()).total_v();
    assert!(open > 5.0 * total(&bench, Sensor::default(), PowerLine::default()), "{open}");
}

#[test]
fn the_loop_is_the_area_inside_the_path() {
    // A square of 10 by 10 cm is .01 m^2.
    let p = |x: f64, y: f64| Point { x, y };
    assert!((loop_area_m2(&[p(0.0, 0.0), p(10.0, 0.0), p(10.0, 10.0), p(0.0, 10.0)]) - 0.01).abs() < 1e-15);
}
