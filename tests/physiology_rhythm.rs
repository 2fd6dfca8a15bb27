//! Mirrors `src/physiology/rhythm.rs`, `breath.rs` and `oscillator.rs`: mean rate, bands of variability, breathing,
//! premature beats.

mod physiology_common;

use dicrotic::math;
use dicrotic::physiology::breath::arrhythmia_gain;
use dicrotic::physiology::{Manoeuvre, SubjectSpec};
use physiology_common::*;

#[test]
fn the_mean_rate_is_exact_over_the_long_run() {
    for (seed, rate) in [(1, 48.0), (2, 72.0), (3, 97.0)] {
        for premature in [0.0, 4.0] {
            let spec = SubjectSpec {
                rest_rate_bpm: Some(rate),
                premature_per_min: Some(premature),
                sdnn_ms: Some(70.0),
                ..still()
            };
            let mut b = body(&spec, seed, 25.0);
            run(&mut b, 25 * 7200);
            // By construction: the modulation has zero mean. What is left is the end effect and the random walk of
            // the white part, a few beats in some thousands.
            let off = b.beats().len() as f64 / 120.0 / rate - 1.0;
            assert!(off.abs() < 1.5e-3, "seed {seed}, {premature} premature: {off} off");
        }
    }
}

#[test]
fn a_regular_rhythm_is_regular() {
    let spec = SubjectSpec { regular: true, sdnn_ms: Some(100.0), ..still() };
    let mut b = body(&spec, 4, 100.0);
    run(&mut b, 100 * 120);
    let x: Vec<f64> = intervals(&b, 0.0, 120.0).iter().map(|r| r.1).collect();
    assert!((mean(&x) - 1.0).abs() < 1e-3, "{}", mean(&x));
    // Electrically exact; the maximum of the wave moves by a millisecond or two with the height of the beat before.
    assert!(x.iter().all(|v| (v - 1.0).abs() < 0.01), "{x:?}");
}

#[test]
fn the_spectrum_has_the_two_peaks_and_the_ratio_that_was_asked_for() {
    for (lf_hf, breaths) in [(0.5, 15.0), (1.5, 15.0), (2.0, 18.0)] {
        let mut ratios = Vec::new();
        for seed in 0..4 {
            let spec = SubjectSpec {
                lf_hf: Some(lf_hf),
                sdnn_ms: Some(50.0),
                breaths_per_min: Some(breaths),
                ..still()
            };
            let mut b = body(&spec, seed, 25.0);
            run(&mut b, 25 * 7200);
            let s = spectrum(&intervals(&b, 0.0, 7200.0));
            // McSharry 2003, IEEE TBME 50:289: peaks at 0.1 Hz and at the breathing rate (0.25 Hz there); bands of the
            // Task Force 1996: 0.04-0.15 and 0.15-0.40 Hz.
            let (low, high) = (top(&s, 0.05, 0.15), top(&s, 0.16, 0.4));
            assert!((low - 0.1).abs() < 0.012, "low peak at {low} Hz");
            assert!((high - breaths / 60.0).abs() < 0.02, "high peak at {high} Hz");
            ratios.push(band(&s, 0.04, 0.15) / band(&s, 0.15, 0.4));
        }
        let ratio = mean(&ratios);
        // McSharry's LF/HF is 0.5; the Task Force's norms 1.5-2.0.
        assert!((ratio / lf_hf - 1.0).abs() < 0.25, "asked for {lf_hf}, measured {ratio}");
    }
}

#[test]
fn variability_is_as_asked_for_and_as_published() {
    let mut asked = Vec::new();
    for seed in 0..12 {
        let spec = SubjectSpec { sdnn_ms: Some(50.0), ..still() };
        let mut b = body(&spec, seed, 25.0);
        run(&mut b, 25 * 1800);
        let x: Vec<f64> = intervals(&b, 0.0, 1800.0).iter().map(|r| 1000.0 * r.1).collect();
        asked.push(sd(&x));
    }
    assert!((mean(&asked) / 50.0 - 1.0).abs() < 0.08, "SDNN {} ms", mean(&asked));

    let (mut sdnns, mut rmssds) = (Vec::new(), Vec::new());
    for seed in 0..80 {
        let mut b = body(&SubjectSpec { age_years: Some(35.0), ..Default::default() }, seed, 25.0);
        run(&mut b, 25 * 300);
        let x: Vec<f64> = intervals(&b, 0.0, 300.0).iter().map(|r| 1000.0 * r.1).collect();
        sdnns.push(sd(&x));
        rmssds.push(rmssd(&x));
    }
    // Nunan 2010, PACE 33:1407 (44 studies of healthy adults): short-term SDNN 50 +- 16 ms, RMSSD 42 +- 15 ms (the
    // standard deviations from memory). The mean of our class must lie within half of that spread.
    assert!((mean(&sdnns) - 50.0).abs() < 8.0, "SDNN {} ms", mean(&sdnns));
    assert!((mean(&rmssds) - 42.0).abs() < 7.5, "RMSSD {} ms", mean(&rmssds));
    assert!(sd(&sdnns) > 8.0 && sd(&sdnns) < 24.0, "spread of SDNN {} ms", sd(&sdnns));
}

#[test]
fn respiratory_arrhythmia_rolls_off_as_published() {
    // Hirsch & Bishop 1981 (Am J Physiol 241:H620): corner at 7.2 breaths/min, roll-off 21 dB/decade.
    let decibels = |per_min: f64| 20.0 * math::log10(arrhythmia_gain(per_min));
    assert!((decibels(7.2) + 3.0).abs() < 0.3, "{} dB at the corner", decibels(7.2));
    assert!(decibels(1.0) > -0.5);
    let slope = decibels(72.0) - decibels(720.0);
    assert!((slope - 21.0).abs() < 0.3, "{slope} dB/decade");
}

/// Mean difference between the highest and the lowest rate within a breath, over young subjects breathing at a pace.
fn peak_to_trough(per_min: f64) -> f64 {
    let mut all = Vec::new();
    for seed in 0..24 {
        let mut b = body(&SubjectSpec { age_years: Some(25.0), ..Default::default() }, seed, 25.0);
        b.start(Manoeuvre::PacedBreathing { per_min });
        run(&mut b, 25 * 120);
        let rr = intervals(&b, 30.0, 120.0);
        let period = 60.0 / per_min;
        let mut from = 30.0;
        while from + period <= 120.0 {
            let bpm = rr.iter().filter(|r| r.0 >= from && r.0 < from + period).map(|r| 60.0 / r.1);
            let (low, high) = bpm.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
            all.push(high - low);
            from += period;
        }
    }
    mean(&all)
}

#[test]
fn the_heart_gets_faster_while_one_breathes_in() {
    // What makes the arrhythmia a respiratory one (any textbook of physiology). The baseline falls while the chest draws blood in,
    // .4 s late.
    for seed in 1..=6 {
        let spec = SubjectSpec { age_years: Some(20.0), ..SubjectSpec::default() };
        let mut b = body(&spec, seed, 100.0);
        b.start(Manoeuvre::PacedBreathing { per_min: 8.0 });
        let (_, baseline) = run(&mut b, 24_000);
        let beats = intervals(&b, 15.0, 235.0);
        let change = |falls: bool| {
            let chosen = beats.windows(2).filter(|w| {
                let (from, to) = (w[0].0 - 0.5 * w[0].1 + 0.4, w[1].0 - 0.5 * w[1].1 + 0.4);
                (baseline[(to * 100.0) as usize] < baseline[(from * 100.0) as usize]) == falls
            });
            mean(&chosen.map(|w| w[1].1 - w[0].1).collect::<Vec<_>>())
        };
        let (inward, outward) = (change(true), change(false));
        assert!(
            inward < 0.0 && outward > 0.0,
            "seed {seed}: by {inward} s a beat breathing in, {outward} s out"
        );
    }
}

#[test]
fn slow_breathing_swings_the_rate_as_published() {
    // Hirsch & Bishop 1981: 20 +- 5 beats/min from peak to trough below about 6 breaths/min. (Within a breath there is
    // also the variability that does not come from breathing, so the upper edge is given 2 beats/min more.)
    for per_min in [5.0, 6.0] {
        let swing = peak_to_trough(per_min);
        assert!((15.0..=27.0).contains(&swing), "{swing} beats/min at {per_min} breaths/min");
    }
    // Ewing's limit for deep breathing at 6/min: normal at 15 beats/min or more, so on average well so.
    assert!(peak_to_trough(6.0) > 15.0);
    let (slow, quick) = (peak_to_trough(5.0), peak_to_trough(20.0));
    assert!(quick < 0.45 * slow, "{slow} slow, {quick} quick");
}

#[test]
fn a_premature_beat_is_early_small_and_followed_by_a_full_pause() {
    let spec = SubjectSpec { regular: true, premature_per_min: Some(4.0), ..still() };
    let mut seen = 0;
    let (mut weak, mut after) = (0, Vec::new());
    for seed in 0..4 {
        let mut b = body(&spec, seed, 100.0);
        run(&mut b, 100 * 600);
        let beats = b.beats();
        let plain: Vec<f64> =
            beats.windows(2).filter(|w| !w[0].premature && !w[1].premature).map(|w| w[1].amplitude).collect();
        let usual = mean(&plain);
        for w in beats.windows(3).filter(|w| w[1].premature) {
            seen += 1;
            // Coupling 0.55-0.70 of the interval (trade rule). A weak beat's maximum comes earlier in its upstroke than
            // an ordinary one's, because the beat before is falling away under it: up to 0.13 s.
            let (early, pause) = (w[1].interval_s, w[2].interval_s);
            assert!((0.42..0.77).contains(&early), "coupling {early} of the interval");
            // Fully compensatory: the two intervals make two ordinary ones (trade rule).
            assert!((early + pause - 2.0).abs() < 0.02, "{early} + {pause}");
            assert!(w[1].amplitude <= 0.5 * usual, "amplitude {}", w[1].amplitude);
            after.push(w[2].amplitude / usual);
            weak += usize::from(!w[1].detectable);
        }
    }
    // Asked for 4 a minute over 40 min.
    assert!((110..210).contains(&seen), "{seen} premature beats");
    // Some raise no maximum of their own: the pulse deficit.
    assert!(weak > 0 && weak < seen, "{weak} of {seen} unseen");
    // Pressure amplitude after the pause +9.8 +- 5.4 % in controls (PMC2290033).
    assert!((mean(&after) - 1.098).abs() < 0.054, "{} after the pause", mean(&after));
}

#[test]
fn counting_for_15_s_errs_as_much_as_it_does_in_people() {
    let mut errors = Vec::new();
    for seed in 0..60 {
        let spec = SubjectSpec { age_years: Some(25.0), sdnn_ms: Some(50.0), ..Default::default() };
        let mut b = body(&spec, seed, 25.0);
        run(&mut b, 25 * 300);
        let count = |from: f64, to: f64| {
            b.beats().iter().filter(|b| b.peak_s >= from && b.peak_s < to).count() as f64
        };
        for k in 0..20 {
            // Windows that begin anywhere, against the count over the minute around them.
            let from = 10.0 + 11.37 * f64::from(k);
            let minute = from - 9.0;
            errors.push((4.0 * count(from, from + 15.0) - count(minute, minute + 60.0)).abs());
        }
    }
    // Kobayashi 2013, Ergonomics 56:1940, n = 70: mean absolute error of the rate from 15 s 1.80-1.89 beats/min.
    assert!((mean(&errors) - 1.85).abs() < 0.35, "{}", mean(&errors));
}
