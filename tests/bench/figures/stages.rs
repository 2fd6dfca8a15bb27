//! The chain's stages by themselves, on blocks as the chain works them, and what is done with its codes.

use std::hint::black_box;

use dicrotic::bench::Bench;
use dicrotic::bench::strap::Strap;
use dicrotic::chain::Chain;
use dicrotic::physiology::{Body, Subject, SubjectSpec};
use dicrotic::pickup::contact::{Contact, Finger};
use dicrotic::pickup::field;
use dicrotic::pickup::motion::Motion;
use dicrotic::pickup::power_line::Oscillator;
use dicrotic::recorder::converter;
use dicrotic::recorder::{Recorder, Settings};
use dicrotic::recording::Recording;
use dicrotic::trace::live::Live;

use crate::{HUM, RESTLESS, config, median, told};

const RATE_HZ: f64 = 1000.0;
const BLOCK: usize = 256;
const BLOCKS: usize = 1000;
const SAMPLES: f64 = (BLOCK * BLOCKS) as f64;

/// A line with the nanoseconds that `block` takes a sample.
fn stage(name: &str, mut block: impl FnMut(&mut [f64])) {
    let mut signal = [0.0; BLOCK];
    let took = median(9, || {
        for _ in 0..BLOCKS {
            // A pulse-like input of the right size, new for each block.
            for (k, x) in signal.iter_mut().enumerate() {
                *x = 0.004 * k as f64 - 0.5;
            }
            block(&mut signal);
            black_box(&signal);
        }
    });
    told(&format!("stage: {name}"), &format!("{:.1} ns a sample", took / SAMPLES * 1e9));
}

/// The same for what takes codes.
fn codes_stage(name: &str, codes: &[i16], mut run: impl FnMut(&[i16])) {
    let took = median(9, || run(black_box(codes)));
    told(&format!("stage: {name}"), &format!("{:.1} ns a sample", took / codes.len() as f64 * 1e9));
}

pub fn run() {
    let subject = Subject::draw(&SubjectSpec::default(), 1);
    let finger = Finger { systolic_mmhg: subject.systolic_mmhg, diastolic_mmhg: subject.diastolic_mmhg };
    let mut breath = [0.0; BLOCK];
    let mut body = Body::new(subject, 1, RATE_HZ);
    stage("heart, breath and pulse wave", |x| body.fill(x, &mut breath));

    let mut contact = Contact::new(RATE_HZ, 0.0, 1);
    contact.set(&Strap::snug(), &finger);
    contact.settle();
    stage("contact", |x| contact.apply(x));
    let mut motion = Motion::new(RATE_HZ, 1.0, 1);
    stage("restless hand", |x| motion.apply(x, 1.0, true));

    let hum_config = config(HUM);
    let hum = field::hum_at_sensor(&Bench::wired(), &hum_config.sensor, 1e12, &hum_config.power_line);
    let mut power_line = Oscillator::new(hum_config.power_line.hz, RATE_HZ, 1);
    stage("hum at the pick-up", |x| power_line.add(x, &hum, 0.0));

    let mut out = Vec::with_capacity(BLOCK);
    let mut recorder = |name: &str, settings: Settings| {
        let mut recorder = Recorder::new(settings).expect("its settings");
        stage(name, |x| {
            out.clear();
            recorder.run(x, &mut out);
        });
    };
    recorder("amplifier and converter, no filter", Settings::default());
    let filters = Settings {
        high_pass_hz: Some(0.05),
        low_pass_hz: Some(30.0),
        notch_hz: Some(50.0),
        average_ms: Some(20.0),
        ..Settings::default()
    };
    recorder("amplifier, four filters and converter", filters);
    let mut sum = 0;
    stage("converter alone", |x| {
        for v in x.iter() {
            sum += i64::from(converter::quantise(*v, 2.0, 16));
        }
    });
    black_box(sum);

    let mut codes = Vec::new();
    let mut chain = Chain::new(config(RESTLESS), 1).expect("its settings");
    chain.fill(600_000, &mut codes);
    codes_stage("recording with its pyramid of minima and maxima", &codes, |codes| {
        let mut recording = Recording::new(RATE_HZ);
        recording.mark_span(1e-6, 0.0, 16);
        codes.chunks(BLOCK).for_each(|run| recording.push(run));
        assert_eq!(black_box(recording).len(), codes.len());
    });
    let mut live = Live::new(RATE_HZ);
    codes_stage("live strip's memory", &codes, |codes| {
        codes.chunks(BLOCK).for_each(|run| live.push(run, 1e-6))
    });
    assert!(live.total() > 0);

    let took = median(99, || {
        let text = serde_json::to_string(&chain).expect("a chain can be written");
        let again: Chain = serde_json::from_str(&text).expect("and read again");
        assert_eq!(black_box(again).samples(), 600_000);
    });
    told("stage: a chain after ten minutes saved and restored", &format!("{:.2} ms", 1000.0 * took));
}
