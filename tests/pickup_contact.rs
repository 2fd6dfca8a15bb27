//! The sensor on the skin: pressure, height, lift-offs.

use dicrotic::bench::strap::Strap;
use dicrotic::pickup::contact::{Contact, Finger, gain, pressure_gain};

const FINGER: Finger = Finger { systolic_mmhg: 120.0, diastolic_mmhg: 80.0 };

#[test]
fn the_pressure_curve_is_the_design_table() {
    // The design default's own table for 120/80, worked from its formula.
    for (mmhg, gain) in [
        (5.0, 0.01),
        (10.0, 0.08),
        (15.0, 0.22),
        (20.0, 0.40),
        (30.0, 0.72),
        (40.0, 0.91),
        (55.0, 1.0),
        (80.0, 0.87),
        (100.0, 0.63),
        (110.0, 0.43),
        (120.0, 0.20),
        (130.0, 0.07),
    ] {
        let found = pressure_gain(mmhg, 120.0, 80.0);
        assert!((found - gain).abs() < 0.02, "{mmhg} mmHg: {found}, table {gain}");
    }
}

/// The pulse of a hand at a height, over that of the same strap at the heart's level.
fn lifted_by(cm: f64, tightness: f64) -> f64 {
    let at = |height_cm| gain(&Strap { tightness, height_cm, ..Strap::snug() }, &FINGER);
    at(cm) / at(0.0)
}

#[test]
fn a_raised_hand_gains_and_a_hanging_one_loses() {
    // Hickey 2016, J Clin Monit Comput 30:727: about +70 % at +50 cm, -68 % at -50 cm. It is the whole of what height does
    // to the pulse under a usual strap, whatever the pressures in the artery do meanwhile.
    for tightness in [0.5, 0.6, 0.7] {
        assert!((lifted_by(50.0, tightness) - 1.70).abs() < 0.05, "{}", lifted_by(50.0, tightness));
        assert!((lifted_by(-50.0, tightness) - 0.32).abs() < 0.05, "{}", lifted_by(-50.0, tightness));
    }
}

#[test]
fn under_a_tight_strap_a_raised_hand_loses_its_pulse() {
    // At 40 cm the pressure in the finger is 31 mmHg less: what cuts off half at the heart's level cuts off nearly all there
    // (from the tube law at 100 mmHg of contact).
    let tight = 0.877; // 100 mmHg
    assert!(lifted_by(40.0, tight) < 0.3, "{}", lifted_by(40.0, tight));
    // The way from a usual strap to a tight one has no step.
    let mut before = lifted_by(40.0, 0.7);
    for step in 1..=40 {
        let now = lifted_by(40.0, 0.7 + 0.005 * f64::from(step));
        assert!((now - before).abs() < 0.12, "{before} to {now}");
        before = now;
    }
}

#[test]
fn the_slider_reaches_loose_best_and_tight() {
    let at = |tightness| Strap { tightness, ..Strap::snug() }.pressure_mmhg();
    assert!((at(0.0) - 3.0).abs() < 1e-12);
    assert!((at(0.73) - 55.6).abs() < 0.2, "design default: optimum at .73");
    assert!(at(1.0) > 160.0);
}

/// Share of samples that are exactly zero under a steady pulse: the sensor has lifted off.
fn lifted(tightness: f64) -> usize {
    let mut contact = Contact::new(1000.0, 0.0, 5);
    contact.set(&Strap { tightness, ..Strap::snug() }, &FINGER);
    contact.settle();
    let mut block = vec![1.0; 120_000];
    contact.apply(&mut block);
    block.iter().filter(|x| **x == 0.0).count()
}

#[test]
fn the_looser_the_strap_the_more_it_lifts_off() {
    let counts = [0.05, 0.15, 0.25, 0.6].map(lifted);
    assert!(counts[0] > counts[1] && counts[1] > counts[2], "{counts:?}");
    assert_eq!(counts[3], 0);
}

#[test]
fn a_strap_that_closes_the_artery_fades_the_pulse_and_easing_it_brings_it_back() {
    let mut contact = Contact::new(1000.0, 0.0, 1);
    let tight = Strap { tightness: 0.92, ..Strap::snug() };
    contact.set(&tight, &FINGER);
    contact.settle();
    let last_of = |contact: &mut Contact, seconds: usize| {
        let mut block = vec![1.0; seconds * 1000];
        contact.apply(&mut block);
        block[block.len() - 1]
    };
    let early = last_of(&mut contact, 2);
    let late = last_of(&mut contact, 90);
    assert!(late < 0.5 * early, "{early} -> {late}");
    assert!(contact.dusky());
    contact.set(&Strap::snug(), &FINGER);
    assert!(last_of(&mut contact, 90) > 0.95);
    assert!(!contact.dusky());
}
