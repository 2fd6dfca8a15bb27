//! Mirrors `src/physiology/rhythm.rs` and `breath.rs`: mean rate, bands of variability, breathing, premature beats.

mod physiology_common;

use dicrotic::math;
use dicrotic::physiology::breath::arrhythmia_gain;
use dicrotic::physiology::{Manoeuvre, SubjectSpec};
use physiology_common::*;

#[test]
fn probe() {
    for lf_hf in [0.5, 1.0, 2.0] {
        let spec =
            SubjectSpec { lf_hf: Some(lf_hf), sdnn_ms: Some(50.0), breaths_per_min: Some(15.0), ..still() };
        let mut b = body(&spec, 3, 50.0);
        run(&mut b, 50 * 7200);
        let rr = intervals(&b, 0.0, 7200.0);
        let x: Vec<f64> = rr.iter().map(|r| r.1).collect();
        let s = spectrum(&rr);
        let (lf, hf) = (band(&s, 0.04, 0.15), band(&s, 0.15, 0.4));
        println!(
            "{lf_hf}: sd {:.1} rmssd {:.1} lf {:.0} hf {:.0} ratio {:.2} vlf {:.0} tops {:.3} {:.3} n {}",
            sd(&x) * 1e3,
            rmssd(&x) * 1e3,
            lf * 1e6,
            hf * 1e6,
            lf / hf,
            band(&s, 0.0, 0.04) * 1e6,
            top(&s, 0.05, 0.15),
            top(&s, 0.15, 0.4),
            x.len()
        );
    }
    for per_min in [4.0, 5.0, 6.0, 8.0, 12.0, 24.0] {
        let mut all = vec![];
        for seed in 0..20 {
            let spec = SubjectSpec { age_years: Some(25.0), ..Default::default() };
            let mut b = body(&spec, seed, 50.0);
            b.start(Manoeuvre::PacedBreathing { per_min });
            run(&mut b, 50 * 120);
            let rr = intervals(&b, 30.0, 120.0);
            let period = 60.0 / per_min;
            let mut k = 30.0;
            let mut d = vec![];
            while k + period <= 120.0 {
                let h: Vec<f64> =
                    rr.iter().filter(|r| r.0 >= k && r.0 < k + period).map(|r| 60.0 / r.1).collect();
                d.push(
                    h.iter().copied().fold(f64::MIN, f64::max) - h.iter().copied().fold(f64::MAX, f64::min),
                );
                k += period;
            }
            all.push(mean(&d));
        }
        println!("{per_min}: p-t {:.1} sd {:.1} gain {:.3}", mean(&all), sd(&all), arrhythmia_gain(per_min));
    }
    let mut sds = vec![];
    let mut rms = vec![];
    for seed in 0..60 {
        let mut b = body(&SubjectSpec::default(), seed, 50.0);
        run(&mut b, 50 * 300);
        let x: Vec<f64> = intervals(&b, 0.0, 300.0).iter().map(|r| r.1).collect();
        sds.push(sd(&x) * 1e3);
        rms.push(rmssd(&x) * 1e3);
    }
    println!(
        "pop sdnn {:.1} {:.1} rmssd {:.1} {:.1} {:.3}",
        mean(&sds),
        sd(&sds),
        mean(&rms),
        sd(&rms),
        math::PI
    );
}
#[test]
fn probe2() {
    let mut o = vec![];
    for seed in 0..60 {
        let mut b = body(&SubjectSpec { regular: true, ..Default::default() }, seed, 50.0);
        run(&mut b, 50 * 300);
        let x: Vec<f64> = intervals(&b, 0.0, 300.0).iter().map(|r| r.1).collect();
        o.push((sd(&x) * 1e4).round() / 10.0);
    }
    o.sort_by(f64::total_cmp);
    println!("{o:?}");
}
#[test]
fn probe3() {
    for (sdnn, br, seed) in [
        (50.0, 15.0, 3),
        (50.0, 15.0, 4),
        (50.0, 15.0, 5),
        (10.0, 15.0, 3),
        (10.0, 15.0, 4),
        (50.0, 10.0, 3),
        (50.0, 20.0, 3),
    ] {
        let spec =
            SubjectSpec { lf_hf: Some(0.5), sdnn_ms: Some(sdnn), breaths_per_min: Some(br), ..still() };
        let mut b = body(&spec, seed, 50.0);
        run(&mut b, 50 * 7200);
        let rr = intervals(&b, 0.0, 7200.0);
        let x: Vec<f64> = rr.iter().map(|r| r.1).collect();
        let s = spectrum(&rr);
        let (lf, hf) = (band(&s, 0.04, 0.15), band(&s, 0.15, 0.4));
        let q = 1e6 / sdnn / sdnn * 2500.0;
        println!(
            "{sdnn} {br} {seed} sd {:.1} vlf {:.0} lf {:.0} hf {:.0} ratio {:.2} irr {:.3}",
            sd(&x) * 1e3,
            band(&s, 0.0, 0.04) * q,
            lf * q,
            hf * q,
            lf / hf,
            b.subject().breath_irregularity
        );
    }
}
#[test]
fn probe4() {
    for seed in 0..60 {
        let mut b = body(&SubjectSpec { regular: true, ..Default::default() }, seed, 50.0);
        run(&mut b, 50 * 300);
        let x: Vec<f64> = intervals(&b, 0.0, 300.0).iter().map(|r| r.1).collect();
        if sd(&x) > 0.006 {
            println!(
                "{seed} T {:.3} {:?}\n  {:?}",
                60.0 / b.subject().rest_rate_bpm,
                b.subject().shape,
                x.iter().take(40).map(|v| ((v - mean(&x)) * 1e3).round()).collect::<Vec<_>>()
            );
            let y = b.subject().shape.steady_period(60.0 / b.subject().rest_rate_bpm, 64);
            let top = y.iter().copied().fold(0.0, f64::max);
            println!("  {:?}", y.iter().map(|v| (v / top * 100.0).round()).collect::<Vec<_>>());
        }
    }
}
