//! Mirrors `src/physiology/body.rs`: blocks, saving, truth against the wave.

use dicrotic::physiology::{Body, Manoeuvre, Subject, SubjectSpec};

fn body(spec: &SubjectSpec, seed: u64, rate_hz: f64) -> Body {
    Body::new(Subject::draw(spec, seed), seed, rate_hz)
}

fn run(body: &mut Body, n: usize) -> (Vec<f64>, Vec<f64>) {
    let (mut pulse, mut breath) = (vec![0.0; n], vec![0.0; n]);
    body.fill(&mut pulse, &mut breath);
    (pulse, breath)
}

fn bits(v: &[f64]) -> Vec<u64> {
    v.iter().map(|x| x.to_bits()).collect()
}

#[test]
fn blocks_of_any_size_give_the_same_bits() {
    let mut whole = body(&SubjectSpec::default(), 5, 1000.0);
    let mut parts = whole.clone();
    let (p, b) = run(&mut whole, 20_000);
    let (mut q, mut c) = (Vec::new(), Vec::new());
    let mut size = 1;
    while q.len() < p.len() {
        let n = size.min(p.len() - q.len());
        let (x, y) = run(&mut parts, n);
        q.extend(x);
        c.extend(y);
        size = size % 137 + 7;
    }
    assert_eq!(bits(&p), bits(&q));
    assert_eq!(bits(&b), bits(&c));
    assert_eq!(whole, parts);
}

#[test]
fn a_saved_body_goes_on_with_the_same_bits() {
    let mut first = body(&SubjectSpec { premature_per_min: Some(6.0), ..Default::default() }, 9, 1000.0);
    first.start(Manoeuvre::StandUp);
    run(&mut first, 12_345);
    let text = serde_json::to_string(&first).expect("saves");
    let mut second: Body = serde_json::from_str(&text).expect("restores");
    assert_eq!(first, second);
    first.start(Manoeuvre::Exercise { seconds: 20.0, effort: 0.6 });
    second.start(Manoeuvre::Exercise { seconds: 20.0, effort: 0.6 });
    let (p, b) = run(&mut first, 60_000);
    let (q, c) = run(&mut second, 60_000);
    assert_eq!(bits(&p), bits(&q));
    assert_eq!(bits(&b), bits(&c));
    assert_eq!(first.beats(), second.beats());
}

#[test]
fn every_true_peak_is_the_maximum_of_the_produced_wave_within_2_ms() {
    for seed in 0..30 {
        let mut b = body(&SubjectSpec::default(), seed, 1000.0);
        let (p, _) = run(&mut b, 60_000);
        let beats = b.beats();
        assert!(beats.len() > 35, "seed {seed}: {} beats in a minute", beats.len());
        for beat in beats.iter().filter(|b| b.peak_s > 0.2 && b.peak_s < 59.8) {
            let k = (beat.peak_s * 1000.0).round() as usize;
            let best = (k - 150..k + 150).max_by(|&i, &j| p[i].total_cmp(&p[j])).expect("a stretch");
            let off_ms = best as f64 - beat.peak_s * 1000.0;
            // The house's own tolerance for the truth: 2 ms.
            assert!(off_ms.abs() <= 2.0, "seed {seed}: peak at {} s is {off_ms} ms off", beat.peak_s);
            assert!(beat.detectable);
        }
    }
}
