//! Simulated records for the tests of counting: the beats of a subject at a given rate, and the second bumps that can be seen.

use dicrotic::assess::Criteria;
use dicrotic::assess::sheet::{Sheet, Written};
use dicrotic::assess::task::{Kind, Task};
use dicrotic::assess::verdict::{Reference, Typed};
use dicrotic::assess::window::Peak;
use dicrotic::measure::landmarks::{self, Landmarks};
use dicrotic::physiology::{Body, Manoeuvre, Subject, SubjectSpec};

/// A record of two minutes and a little.
pub struct Record {
    pub peaks: Vec<Peak>,
    /// Second bumps that can be seen; not every test looks at them.
    #[allow(dead_code)]
    pub bumps: Vec<f64>,
    /// Feet, peaks and what is between, where they were asked for.
    #[allow(dead_code)]
    pub landmarks: Vec<Landmarks>,
    pub breaths_per_min: f64,
}

/// An empty worksheet on a record of `duration_s`, to be filled in.
#[allow(dead_code)]
pub fn sheet<'a>(kind: Kind, criteria: &'a Criteria, record: &'a Record, duration_s: f64) -> Sheet<'a> {
    let peaks = &record.peaks[..record.peaks.partition_point(|p| p.at_s <= duration_s)];
    Sheet {
        task: Task { kind, ..Task::default() },
        criteria,
        trace: None,
        cursors: None,
        first: None,
        typed: Typed::default(),
        typed_first: Typed::default(),
        written: Written::default(),
        reference: Reference { peaks, delay_s: 0.0, duration_s },
        landmarks: &record.landmarks,
        values: None,
        range_v: 0.1,
        exercise_ended_s: None,
    }
}

pub const LENGTH_S: f64 = 130.0;
const RATE_HZ: f64 = 250.0;

/// A record at about `bpm`, with landmarks and `bumps` where they matter. Over 140 the subject exercises, at rest nobody's heart goes so fast.
pub fn record(bpm: f64, sdnn_ms: f64, premature_per_min: f64, seed: u64, bumps: bool) -> Record {
    let exercising = bpm > 140.0;
    let rest = if exercising { 100.0 } else { bpm };
    let spec = SubjectSpec {
        age_years: Some(20.0),
        rest_rate_bpm: Some(rest),
        sdnn_ms: Some(sdnn_ms),
        premature_per_min: Some(premature_per_min),
        ..SubjectSpec::default()
    };
    spec.check().unwrap();
    let subject = Subject::draw(&spec, seed);
    let (most, breaths_per_min) = (subject.max_rate_bpm, subject.breaths_per_min);
    let mut body = Body::new(subject, seed, RATE_HZ);
    let mut block = (vec![0.0; 2500], vec![0.0; 2500]);
    let mut from_s = 0.0;
    if exercising {
        body.start(Manoeuvre::Exercise {
            seconds: 600.0,
            effort: ((bpm - rest) / (most - rest)).clamp(0.1, 1.0),
        });
        // The rate takes some minutes to get there.
        while body.time_s() < 200.0 {
            body.fill(&mut block.0, &mut block.1);
        }
        from_s = body.time_s();
    }
    let mut values = Vec::new();
    while body.time_s() < from_s + LENGTH_S {
        body.fill(&mut block.0, &mut block.1);
        values.extend_from_slice(&block.0);
    }
    let peaks: Vec<Peak> = body
        .beats()
        .iter()
        .filter(|b| b.peak_s >= from_s)
        .map(|b| Peak { at_s: b.peak_s - from_s, sure: b.must_be_counted() })
        .collect();
    let times: Vec<f64> = peaks.iter().map(|p| p.at_s).collect();
    let landmarks = if bumps { landmarks::of_beats(&values, RATE_HZ, &times) } else { Vec::new() };
    let bumps = landmarks.iter().filter_map(|l| l.second_s).collect();
    Record { peaks, bumps, landmarks, breaths_per_min }
}
