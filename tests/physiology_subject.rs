//! Mirrors `src/physiology/subject.rs`: what may be said, and who is drawn.

mod physiology_common;

use dicrotic::physiology::{Fitness, Subject, SubjectSpec};
use physiology_common::*;

#[test]
fn every_field_is_checked_just_inside_and_just_outside() {
    type Set = fn(&mut SubjectSpec, f64);
    let fields: [(&str, Set, f64, f64); 13] = [
        ("age_years", |s, x| s.age_years = Some(x), 6.0, 90.0),
        ("rest_rate_bpm", |s, x| s.rest_rate_bpm = Some(x), 30.0, 150.0),
        ("breaths_per_min", |s, x| s.breaths_per_min = Some(x), 4.0, 40.0),
        ("sdnn_ms", |s, x| s.sdnn_ms = Some(x), 0.0, 200.0),
        ("lf_hf", |s, x| s.lf_hf = Some(x), 0.05, 20.0),
        ("premature_per_min", |s, x| s.premature_per_min = Some(x), 0.0, 20.0),
        ("systolic_mmhg", |s, x| s.systolic_mmhg = Some(x), 70.0, 220.0),
        ("diastolic_mmhg", |s, x| s.diastolic_mmhg = Some(x), 40.0, 130.0),
        ("finger_temp_c", |s, x| s.finger_temp_c = Some(x), 10.0, 38.0),
        ("pulse_mv", |s, x| s.pulse_mv = Some(x), 1.0, 200.0),
        ("restlessness", |s, x| s.restlessness = Some(x), 0.0, 5.0),
        ("smoothing_ms", |s, x| s.smoothing_ms = Some(x), 0.0, 60.0),
        ("coupling_hz", |s, x| s.coupling_hz = Some(x), 0.0, 2.0),
    ];
    for (name, set, low, high) in fields {
        let with = |x: f64| {
            let mut s = SubjectSpec::default();
            set(&mut s, x);
            s
        };
        for good in [low, high] {
            assert_eq!(with(good).check(), Ok(()), "{name} = {good}");
            // What may be said can also be lived.
            let mut b = body(&with(good), 1, 50.0);
            let (pulse, breath) = run(&mut b, 3000);
            assert!(pulse.iter().chain(&breath).all(|x| x.is_finite()), "{name} = {good}");
        }
        for bad in [low - 0.01, high + 0.01, f64::NAN, f64::INFINITY] {
            let error = with(bad).check().expect_err(name);
            assert_eq!(error.field, name);
            assert!(error.to_string().starts_with(name), "{error}");
        }
    }
    let close = SubjectSpec { systolic_mmhg: Some(100.0), diastolic_mmhg: Some(86.0), ..Default::default() };
    assert_eq!(close.check().unwrap_err().field, "diastolic_mmhg");
}

#[test]
fn unknown_fields_are_refused_and_known_ones_read() {
    let text = "rest_rate_bpm = 62\nfitness = \"high\"\n";
    let spec: SubjectSpec = toml::from_str(text).expect("reads");
    assert_eq!((spec.rest_rate_bpm, spec.fitness), (Some(62.0), Some(Fitness::High)));
    let error = toml::from_str::<SubjectSpec>("resting_rate = 62\n").expect_err("unknown");
    assert!(error.to_string().contains("resting_rate"), "{error}");
}

#[test]
fn a_given_field_does_not_shift_the_others() {
    let free = Subject::draw(&SubjectSpec::default(), 77);
    let spec = SubjectSpec { breaths_per_min: Some(11.0), pulse_mv: Some(40.0), ..Default::default() };
    let fixed = Subject::draw(&spec, 77);
    assert_eq!(fixed, Subject { breaths_per_min: 11.0, pulse_mv: 40.0, ..free });
}

#[test]
fn a_class_spreads_as_people_do() {
    let class: Vec<Subject> = (0..400).map(|seed| Subject::draw(&SubjectSpec::default(), seed)).collect();
    for s in &class {
        // Adults 60-100, trained 40-60 beats/min (MedlinePlus).
        assert!((40.0..=100.0).contains(&s.rest_rate_bpm), "{s:?}");
        assert!(s.diastolic_mmhg <= s.systolic_mmhg - 15.0, "{s:?}");
        assert!((10.0..=100.0).contains(&s.pulse_mv), "{s:?}");
    }
    let column = |f: fn(&Subject) -> f64| class.iter().map(f).collect::<Vec<_>>();
    assert!((60.0..75.0).contains(&mean(&column(|s| s.rest_rate_bpm))));
    assert!((6.0..14.0).contains(&sd(&column(|s| s.rest_rate_bpm))));
    // Quiet breathing 12-18/min (common practice).
    assert!((12.0..18.0).contains(&mean(&column(|s| s.breaths_per_min))));
    // Resting rates by fitness: Sci Rep 2021, s41598-021-83071-w, Table 2.
    for (fitness, rest) in [(Fitness::Low, 78.0), (Fitness::Moderate, 69.0), (Fitness::High, 55.0)] {
        let rates: Vec<f64> =
            class.iter().filter(|s| s.fitness == fitness).map(|s| s.rest_rate_bpm).collect();
        assert!((mean(&rates) - rest).abs() < 2.5, "{fitness:?}: {}", mean(&rates));
    }
}

#[test]
fn children_beat_faster_and_the_old_vary_less() {
    let class = |age: f64| -> Vec<Subject> {
        (0..60)
            .map(|seed| Subject::draw(&SubjectSpec { age_years: Some(age), ..Default::default() }, seed))
            .collect()
    };
    let rate = |c: &[Subject]| mean(&c.iter().map(|s| s.rest_rate_bpm).collect::<Vec<_>>());
    let child = rate(&class(8.0));
    // 7-9 years: 70-110 beats/min (MedlinePlus).
    assert!((78.0..102.0).contains(&child), "{child}");
    let sdnn = |c: &[Subject]| mean(&c.iter().map(|s| s.sdnn_ms).collect::<Vec<_>>());
    assert!(sdnn(&class(65.0)) < 0.75 * sdnn(&class(25.0)));
    // Tanaka 2001: 208 - 0.7 age.
    assert!((class(40.0)[0].max_rate_bpm - 180.0).abs() < 1e-9);
}
