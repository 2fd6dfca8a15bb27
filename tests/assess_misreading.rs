//! Misreadings on one steady rhythm: every one is named from its signature, a right answer gets no name, an ambiguous one none.
//! `assess_vectors.rs` and `assess_fair.rs` do the same on simulated hearts.

use dicrotic::assess::Criteria;
use dicrotic::assess::asked::judge;
use dicrotic::assess::misreading::{Evidence, Misreading, hypotheses, named};
use dicrotic::assess::sheet::{Sheet, Written};
use dicrotic::assess::task::Task;
use dicrotic::assess::verdict::{Reference, Typed};
use dicrotic::assess::window::Peak;

/// Beats every .8 s from .5 s on: 19 in the window of 0.1 to 15.1 s, none near a cursor.
struct Case {
    peaks: Vec<Peak>,
    bumps: Vec<f64>,
    marks: Vec<f64>,
    window: Option<(f64, f64)>,
    typed: [Option<f64>; 4],
    decimals: usize,
}

fn case(count: f64, seconds: f64, multiplier: f64, rate: f64) -> Case {
    let peaks: Vec<Peak> = (0..50).map(|k| Peak { at_s: 0.5 + 0.8 * f64::from(k), sure: true }).collect();
    let bumps = peaks.iter().map(|p| p.at_s + 0.28).collect();
    Case {
        peaks,
        bumps,
        marks: Vec::new(),
        window: Some((0.1, 15.1)),
        typed: [Some(count), Some(seconds), Some(multiplier), Some(rate)],
        decimals: 0,
    }
}

impl Case {
    fn name(&self) -> Option<Misreading> {
        let [count, seconds, multiplier, rate] = self.typed;
        let criteria = Criteria { window_s: 10.0, ..Criteria::default() };
        let sheet = Sheet {
            task: Task::default(),
            criteria: &criteria,
            trace: None,
            cursors: self.window,
            first: None,
            typed: Typed { count, seconds, multiplier, rate },
            typed_first: Typed::default(),
            written: Written::default(),
            reference: Reference { peaks: &self.peaks, delay_s: 0.0, duration_s: 40.55 },
            landmarks: &[],
            values: None,
            range_v: 0.1,
            exercise_ended_s: None,
        };
        let report = judge(&sheet);
        let evidence = Evidence {
            sheet: &sheet,
            report: &report,
            bumps: &self.bumps,
            marks: &self.marks,
            rate_decimals: self.decimals,
            breaths_per_min: 15.0,
            power_line_shows_hz: 50.0,
            screens_s: &[5.0],
            squares_s: &[0.5, 1.0],
        };
        named(&hypotheses(&evidence), &report).map(|h| h.id)
    }

    fn marked(mut self, marks: Vec<f64>) -> Self {
        self.marks = marks;
        self.marks.sort_by(f64::total_cmp);
        self
    }
}

fn in_window(list: &[f64]) -> Vec<f64> {
    list.iter().copied().filter(|t| (0.1..15.1).contains(t)).collect()
}

#[test]
fn every_misreading_is_named_from_its_signature() {
    use Misreading::*;
    let right = case(19.0, 15.0, 4.0, 76.0);
    let peaks = in_window(&right.peaks.iter().map(|p| p.at_s).collect::<Vec<_>>());
    let bumps = in_window(&right.bumps);
    let both = [peaks.clone(), bumps.clone()].concat();
    let spiked = [peaks.clone(), vec![1.8, 4.2, 9.0]].concat();
    let thinned: Vec<f64> = peaks.iter().copied().step_by(2).collect();
    let some: Vec<f64> =
        peaks.iter().copied().enumerate().filter(|(k, _)| k % 5 != 2).map(|(_, t)| t).collect();
    let n = |list: &[f64]| list.len() as f64;
    let short = |window, count: f64, seconds: f64| Case {
        window: Some(window),
        ..case(count, seconds, 60.0 / seconds, (60.0 * count / seconds).round())
    };
    let vectors: Vec<(&str, Case, Option<Misreading>)> = vec![
        ("right", case(19.0, 15.0, 4.0, 76.0), None),
        (
            "all bumps, marked",
            case(n(&both), 15.0, 4.0, 4.0 * n(&both)).marked(both.clone()),
            Some(BumpsCounted),
        ),
        ("all bumps, no marks", case(38.0, 15.0, 4.0, 152.0), Some(BumpsCounted)),
        ("most bumps, no marks", case(35.0, 15.0, 4.0, 140.0), Some(BumpsCounted)),
        (
            "every other beat",
            case(n(&thinned), 15.0, 4.0, 4.0 * n(&thinned)).marked(thinned.clone()),
            Some(BeatsMissed),
        ),
        (
            "some beats missed",
            case(n(&some), 15.0, 4.0, 4.0 * n(&some)).marked(some.clone()),
            Some(BeatsMissed),
        ),
        ("one too many", case(20.0, 15.0, 4.0, 80.0), Some(OneTooMany)),
        ("one too few", case(18.0, 15.0, 4.0, 72.0), Some(OneTooFew)),
        ("spikes", case(n(&spiked), 15.0, 4.0, 4.0 * n(&spiked)).marked(spiked.clone()), Some(SpikesCounted)),
        ("breaths", case(4.0, 15.0, 4.0, 16.0), Some(BreathsCounted)),
        ("hum", case(750.0, 15.0, 4.0, 3000.0), Some(HumCounted)),
        ("times six for fifteen seconds", case(19.0, 15.0, 6.0, 114.0), Some(OtherMultiplier)),
        ("raw count", case(19.0, 15.0, 4.0, 19.0), Some(NotScaled)),
        ("beats a second", case(19.0, 15.0, 4.0, 1.27), Some(PerSecond)),
        ("seconds a beat", case(19.0, 15.0, 4.0, 0.79), Some(SecondsPerBeat)),
        ("milliseconds", case(19.0, 15000.0, 4.0, 76.0), Some(Milliseconds)),
        ("another window", case(19.0, 10.0, 6.0, 114.0), Some(OtherWindow)),
        ("turned over", case(19.0, 15.0, 0.25, 5.0), Some(TurnedOver)),
        ("turned over in the end", case(19.0, 15.0, 4.0, 4.75), Some(TurnedOver)),
        ("short window", short((0.1, 8.1), 10.0, 8.0), Some(WindowTooShort)),
        ("one interval", short((0.45, 1.4), 2.0, 0.95), Some(SingleInterval)),
        ("time at B", case(19.0, 15.1, 3.97, 75.0), None),
        ("time at B", Case { window: Some((4.1, 19.1)), ..case(19.0, 19.1, 3.1, 60.0) }, Some(TimeAtB)),
        (
            "time at B, whole seconds",
            Case { window: Some((4.1, 19.1)), ..case(19.0, 19.0, 3.16, 60.0) },
            Some(TimeAtB),
        ),
        ("the whole recording", case(19.0, 40.55, 1.48, 28.0), Some(WholeRecording)),
        (
            "the whole recording, no cursors",
            Case { window: None, ..case(51.0, 40.55, 1.48, 75.0) },
            Some(WholeRecording),
        ),
        ("the screen", case(19.0, 5.0, 12.0, 228.0), Some(ScreenLength)),
        ("minutes", case(19.0, 0.25, 240.0, 4560.0), Some(Minutes)),
        ("minutes, the right multiplier", case(19.0, 0.25, 4.0, 76.0), Some(Minutes)),
        ("squares", Case { window: Some((0.1, 17.2)), ..case(21.0, 34.0, 1.76, 37.0) }, Some(GridSquares)),
        // Thirty seconds, or thirty squares of half a second.
        ("a round number of squares", case(19.0, 30.0, 2.0, 38.0), None),
        ("too many digits", Case { decimals: 3, ..case(19.0, 15.0, 4.0, 76.0) }, Some(TooManyDigits)),
    ];
    println!("{:<34}named", "typed");
    let mut wrong = Vec::new();
    for (what, case, expected) in &vectors {
        let found = case.name();
        println!("{what:<34}{found:?}");
        if found != *expected {
            wrong.push(format!("{what}: {found:?}, expected {expected:?}"));
        }
    }
    // 60/13 is 4.62; written as 5 the rate comes out six too high.
    let rounded = Case { window: Some((0.1, 13.1)), ..case(16.0, 13.0, 5.0, 80.0) };
    if rounded.name() != Some(RoundedEarly) {
        wrong.push(format!("rounded early: {:?}", rounded.name()));
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn where_two_explain_it_equally_well_nothing_is_named() {
    // In 20 s the doubled count and the multiplier of 10 s give the same rate; with separate fields the count tells.
    // A lone wrong count of a tenth too few may be missed beats or breaths or anything: no marks, no name.
    let vague = case(13.0, 15.0, 4.0, 52.0);
    assert_eq!(vague.name(), None);
    let strange = case(26.0, 15.0, 4.0, 104.0);
    assert_eq!(strange.name(), None);
    // 60/14 is 4.29: a 4 may be that one rounded, or the one that belongs to 15 s.
    assert_eq!(Case { window: Some((0.1, 14.1)), ..case(17.0, 14.0, 4.0, 68.0) }.name(), None);
}
