//! An experiment at the bench: what comes first, what goes into the table, what is said of it, and that a replay has it again.

use dicrotic::deed::Direction;
use dicrotic::experiment::Contrast;
use dicrotic::experiment::contrast::Reading;
use dicrotic::experiment::fit::{Point, recovery};
use dicrotic::experiment::judge::{Outcome, REMARKS, Seen, conclusion, remarks};
use dicrotic::experiment::row::swing;
use dicrotic::math;
use dicrotic::scenario::Scenario;
use dicrotic::session::action::Refusal;
use dicrotic::session::script::{play, replay};
use dicrotic::session::{Action, Session, save};
use dicrotic::trace::charts::file::{self, Drawn};
use dicrotic::trace::charts::table::{Dot, Table, Words};
use dicrotic::trace::charts::{ChartError, Look};
use plotters::coord::Shift;
use plotters::prelude::{DrawingArea, DrawingBackend};
use serde_json::{Value, json};
use std::collections::BTreeSet;

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

/// The texts of all scenarios that hold an experiment.
fn protocols() -> Vec<(String, Scenario)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    let files = std::fs::read_dir(folder).unwrap().map(|e| e.unwrap().path());
    let mut texts: Vec<String> = files.map(|p| std::fs::read_to_string(p).unwrap()).collect();
    texts.sort();
    let read = texts.into_iter().map(|text| (text.clone(), Scenario::read(&text).unwrap()));
    read.filter(|(_, scenario)| scenario.experiment.is_some()).collect()
}

fn protocol(id: &str) -> String {
    protocols().into_iter().find(|(_, s)| s.id == id).unwrap().0
}

/// Records so many seconds and puts the cursors around most of it.
fn record(s: &mut Session, seconds: f64) {
    let steps = [
        json!({"do": "record"}),
        json!({"wait": seconds}),
        json!({"do": "stop"}),
        json!({"do": "cursor", "which": "a", "t": "@beat+0.3"}),
        json!({"do": "cursor", "which": "b", "t": seconds - 0.7}),
    ];
    play(s, &steps).unwrap();
}

fn count(s: &mut Session) {
    play(s, &[json!({"do": "answer", "field": "count", "text": "@count"})]).unwrap();
}

fn predict(s: &mut Session) {
    act(s, json!({"do": "predict", "measure": "rate", "direction": "up", "reason": "blood sinks"})).unwrap();
}

#[test]
fn first_comes_what_one_expects_then_the_table_then_what_it_shows_then_the_check() {
    let text = protocol("standing-up");
    let mut s = Session::new(&text, 3).unwrap();
    s.run(4000);
    assert_eq!(act(&mut s, json!({"do": "record"})), Err(Refusal::PredictFirst {}));
    let other = json!({"do": "predict", "measure": "swing", "direction": "up", "reason": ""});
    assert!(matches!(act(&mut s, other), Err(Refusal::BadValue { field: "measure", .. })));
    predict(&mut s);
    record(&mut s, 18.0);
    // What was expected is not changed once something is recorded.
    let late = json!({"do": "predict", "measure": "rate", "direction": "same", "reason": ""});
    assert_eq!(act(&mut s, late), Err(Refusal::TooLate {}));
    assert_eq!(act(&mut s, json!({"do": "add_row", "condition": "sitting"})), Err(Refusal::NoCount {}));
    count(&mut s);
    let standing = act(&mut s, json!({"do": "add_row", "condition": "standing"}));
    assert!(matches!(standing, Err(Refusal::OtherCondition { from_s: 40.0, .. })), "{standing:?}");
    assert!(matches!(
        act(&mut s, json!({"do": "add_row", "condition": "lying"})),
        Err(Refusal::BadValue { field: "condition", .. })
    ));
    act(&mut s, json!({"do": "add_row", "condition": "sitting"})).unwrap();
    let conclude = json!({"do": "conclude", "measure": "rate", "direction": "up"});
    assert!(matches!(act(&mut s, conclude.clone()), Err(Refusal::RowsMissing { .. })));
    assert_eq!(act(&mut s, json!({"do": "check"})), Err(Refusal::ConcludeFirst {}));
    act(&mut s, json!({"do": "manoeuvre", "what": "stand_up"})).unwrap();
    s.run(10_000);
    // Ten seconds after standing up the rate still swings.
    record(&mut s, 18.0);
    count(&mut s);
    let early = act(&mut s, json!({"do": "add_row", "condition": "standing"}));
    assert!(matches!(early, Err(Refusal::OtherCondition { .. })), "{early:?}");
    s.run(20_000);
    record(&mut s, 18.0);
    count(&mut s);
    act(&mut s, json!({"do": "add_row", "condition": "standing"})).unwrap();
    act(&mut s, json!({"do": "row_note", "row": 1, "text": "swayed a little"})).unwrap();
    assert_eq!(act(&mut s, json!({"do": "remove_row", "row": 2})), Err(Refusal::NoRow {}));
    // The same window is no repeat, whatever it is called.
    let last = s.rows().len();
    let again = act(&mut s, json!({"do": "add_row", "condition": "standing"}));
    assert_eq!(again, Err(Refusal::RowThere { row: last }));
    act(&mut s, conclude).unwrap();
    assert!(s.is_concluded());
    assert_eq!(act(&mut s, json!({"do": "remove_row", "row": 0})), Err(Refusal::AttemptOver {}));
    // Notes are words, and may be put right.
    act(&mut s, json!({"do": "row_note", "row": 1, "text": "swayed"})).unwrap();
    let (judged, remarks) = s.judged_experiment();
    assert_eq!(judged[0].outcome, Outcome::Shown, "{judged:?}");
    let codes: Vec<&str> = remarks.iter().map(|r| r.code).collect();
    assert_eq!(codes, ["once", "one_subject"]);
    assert_eq!(s.rows()[1].note, "swayed");

    // The page is told of the body itself only once the attempt is over.
    assert_eq!(s.view()["experiment"]["judged"][0]["truth"], Value::Null);
    play(
        &mut s,
        &["seconds", "multiplier", "rate"]
            .map(|f| json!({"do": "answer", "field": f, "text": format!("@{f}")})),
    )
    .unwrap();
    act(&mut s, json!({"do": "check"})).unwrap();
    assert_eq!(s.view()["over"], true);
    assert!(s.view()["experiment"]["judged"][0]["truth"].as_f64().unwrap() > 3.0);
}

#[test]
fn what_was_said_and_tabled_comes_again_from_the_log_and_from_a_code() {
    for (text, scenario) in protocols() {
        let done = replay(&text, &scenario.attempt[0]).unwrap();
        let seed = scenario.attempt[0].seed;
        let again = save::replay(&text, seed, done.samples(), done.log()).unwrap();
        assert_eq!(again.rows(), done.rows(), "{}", scenario.id);
        assert_eq!(again.view()["experiment"], done.view()["experiment"], "{}", scenario.id);
        assert!(done.rows().len() >= 4 && done.is_concluded(), "{}", scenario.id);
        let about =
            dicrotic::session::compact::About { student: "x".into(), tries: 1, begun_s: 1, ended_s: 2 };
        let code = done.code(&about).unwrap();
        assert_eq!(
            dicrotic::session::compact::Code::read(&code.write()).as_ref(),
            Ok(&code),
            "{}",
            scenario.id
        );
        assert_eq!(code.log, done.log(), "{}", scenario.id);
    }
    assert!(protocols().len() >= 6);
}

#[test]
fn each_protocol_done_as_its_example_is_judged_right_on_other_subjects() {
    for (text, scenario) in protocols() {
        let steps = &scenario.attempt[0].steps;
        let end = steps.iter().position(|step| step["do"] == "check").unwrap();
        for seed in [7, 8] {
            let mut s = Session::example(&text, seed).unwrap();
            play(&mut s, &steps[..end]).unwrap();
            assert!(s.rows_off().is_empty(), "{} {seed}: {:?}", scenario.id, s.rows_off());
            for judged in s.judged_experiment().0 {
                assert!(judged.outcome.is_right(), "{} {seed}: {judged:?}", scenario.id);
            }
        }
    }
}

#[test]
fn a_raised_hand_has_a_taller_pulse_and_one_that_hangs_a_smaller_one() {
    let text = protocol("hand-height");
    let scenario = Scenario::read(&text).unwrap();
    let s = replay(&text, &scenario.attempt[0]).unwrap();
    let mean = |id: &str| {
        let number = s.experiment().unwrap().number(id).unwrap();
        let rows: Vec<f64> = s
            .rows()
            .iter()
            .filter(|r| r.condition == number)
            .map(|r| r.measured.amplitude.unwrap().value)
            .collect();
        rows.iter().sum::<f64>() / rows.len() as f64
    };
    // With a hand over the heart the vessels are less stretched, give more with each beat, and the pulse is taller (from memory).
    let (low, level, high) = (mean("low"), mean("level"), mean("high"));
    assert!(low < level && level < high, "{low} {level} {high}");
}

#[test]
fn a_count_that_is_off_is_told_when_all_is_over_and_a_slip_of_one_is_not() {
    let text = protocol("standing-up");
    for (slip, expected) in [("@count+1", vec![]), ("@count*2", vec![0_usize])] {
        let mut s = Session::example(&text, 5).unwrap();
        s.run(4000);
        predict(&mut s);
        record(&mut s, 18.0);
        play(&mut s, &[json!({"do": "answer", "field": "count", "text": slip})]).unwrap();
        act(&mut s, json!({"do": "add_row", "condition": "sitting"})).unwrap();
        act(&mut s, json!({"do": "manoeuvre", "what": "stand_up"})).unwrap();
        s.run(45_000);
        record(&mut s, 18.0);
        count(&mut s);
        act(&mut s, json!({"do": "add_row", "condition": "standing"})).unwrap();
        act(&mut s, json!({"do": "conclude", "measure": "rate", "direction": "up"})).unwrap();
        assert_eq!(s.rows_off(), expected, "{slip}");
        assert_eq!(s.view()["experiment"]["off"], json!([]), "not before the attempt is over");
    }
}

#[test]
fn no_difference_is_right_where_the_windows_show_none_and_a_claim_is_right_where_they_do() {
    use Direction::{Down, Same, Up};
    for (said, truth, expected) in [
        (Up, 12.0, Outcome::Shown),
        (Down, 12.0, Outcome::Opposite),
        (Same, 12.0, Outcome::Missed),
        (Same, 1.0, Outcome::NoneShown),
        (Up, 1.0, Outcome::Overclaimed),
        (Down, -1.0, Outcome::Overclaimed),
        // Between the two both may be said, and never the other way round.
        (Up, 6.0, Outcome::Shown),
        (Same, 6.0, Outcome::NoneShown),
        (Down, 6.0, Outcome::Opposite),
        (Down, -12.0, Outcome::Shown),
    ] {
        assert_eq!(conclusion(said, truth, 3.0, 3.0), expected, "{said:?} {truth}");
    }
    // A table that happens to be spread makes nobody wrong who sees no difference, nor one who sees what is there.
    assert_eq!(conclusion(Same, 12.0, 6.0, 3.0), Outcome::NoneShown);
    assert_eq!(conclusion(Up, 12.0, 9.0, 3.0), Outcome::Shown);
}

#[test]
fn each_remark_has_its_table() {
    let rows = |list: &[(usize, f64, f64, f64)]| -> Vec<Seen> {
        let seen = |&(condition, at_s, seconds, value): &(usize, f64, f64, f64)| Seen {
            condition,
            seconds,
            at_s,
            reading: Some(Reading { value, u: 1.0 }),
        };
        list.iter().map(seen).collect()
    };
    let codes = |list: &[(usize, f64, f64, f64)], difference: f64| -> Vec<&str> {
        let zero = Reading { value: 0.0, u: 1.0 };
        let last = Reading { value: difference, u: 1.0 };
        let contrast = Contrast { first: zero, last, difference: last, expected_u: 1.0 };
        remarks(&rows(list), 1, 15.0, 2, Some(&contrast)).iter().map(|r| r.code).collect()
    };
    let by_turns =
        [(0, 0.0, 15.0, 70.0), (1, 60.0, 15.0, 80.0), (0, 120.0, 15.0, 71.0), (1, 180.0, 15.0, 81.0)];
    assert_eq!(codes(&by_turns, 10.0), ["one_subject"]);
    assert_eq!(codes(&by_turns[..2], 10.0), ["once", "one_subject"]);
    let short = by_turns.map(|(c, at, _, v)| (c, at, 6.0, v));
    assert_eq!(codes(&short, 10.0), ["short", "one_subject"]);
    let apart = [by_turns[0], (0, 20.0, 15.0, 71.0), by_turns[1], by_turns[3]];
    assert_eq!(codes(&apart, 10.0), ["order", "one_subject"]);
    let wide = [by_turns[0], by_turns[1], (0, 120.0, 15.0, 76.0), by_turns[3]];
    assert_eq!(codes(&wide, 3.0), ["spread", "one_subject"]);
    let falls = [(0, 0.0, 15.0, 80.0), by_turns[1], by_turns[2], by_turns[3], (0, 240.0, 15.0, 70.0)];
    assert_eq!(codes(&falls, 20.0), ["regression", "one_subject"]);
    let all: BTreeSet<&str> = REMARKS.into_iter().collect();
    assert_eq!(all, ["once", "one_subject", "order", "regression", "short", "spread"].into_iter().collect());
}

#[test]
fn the_swing_is_that_of_the_intervals_in_each_ten_seconds() {
    // Intervals of .8 and 1.0 s by turns: 200 ms in each piece.
    let mut peaks = vec![0.1];
    while peaks[peaks.len() - 1] < 29.0 {
        peaks.push(peaks[peaks.len() - 1] + if peaks.len() % 2 == 0 { 0.8 } else { 1.0 });
    }
    let found = swing(&peaks, 0.0, 30.0).unwrap();
    assert!((found.value - 200.0).abs() < 1e-6 && found.u < 1e-6, "{found:?}");
    assert_eq!(swing(&peaks[..3], 0.0, 30.0), None);
}

#[test]
fn a_fit_finds_the_curve_that_was_put_in_and_says_where_it_cannot() {
    let curve = |t: f64| 70.0 + 60.0 * math::exp(-t / 80.0);
    let mut points: Vec<Point> =
        (0..8).map(|k| f64::from(k) * 45.0).map(|t| Point { t_s: Some(t), rate: curve(t), u: 2.0 }).collect();
    points.push(Point { t_s: None, rate: 70.0, u: 2.0 });
    let fit = recovery(&points).unwrap();
    // The grid is .7 % wide.
    assert!((fit.tau_s - 80.0).abs() < 0.6 && (fit.rest - 70.0).abs() < 0.3, "{fit:?}");
    assert!(fit.low_s < 80.0 && fit.high_s.unwrap() > 80.0 && (fit.rate(0.0) - 130.0).abs() < 0.5);
    // Two points of a fall make no curve; a rise is no recovery; without a value there is none.
    assert_eq!(recovery(&points[..2]), None);
    let rising: Vec<Point> = points.iter().map(|p| Point { rate: 200.0 - p.rate, ..*p }).collect();
    assert_eq!(recovery(&rising), None);
    points[0].rate = f64::NAN;
    assert_eq!(recovery(&points), None);
}

/// A table with words unlike any that the crate could have by itself.
struct Drawing(Table);

impl Drawn for Drawing {
    fn draw<B: DrawingBackend>(&self, area: &DrawingArea<B, Shift>, look: &Look) -> Result<(), ChartError> {
        self.0.draw(area, look, &Words { unit: "Schläge", conditions: &["sitzend", "stehend"] })
    }
}

/// How often something stands in a text.
fn times(text: &str, part: &str) -> usize {
    text.matches(part).count()
}

#[test]
fn the_chart_has_a_dot_for_each_row_and_a_line_for_each_turn_and_a_curve_where_one_is_fitted() {
    let dot = |condition: usize, t_s: f64, value: f64| Dot { condition, t_s: Some(t_s), value, u: 2.0 };
    let dots = [dot(0, 0.0, 70.0), dot(1, 10.0, 82.0), dot(0, 0.0, 71.0), dot(1, 90.0, 80.0)];
    let svg = |table: Table, look: &Look| file::svg(&Drawing(table), look, (420, 240)).unwrap();
    let shown = svg(Table::beside(&dots, 2).unwrap(), &Look::light());
    // Each dot is a disc on a disc that sets it off.
    assert_eq!(times(&shown, "<circle"), 2 * dots.len(), "{shown}");
    for word in ["sitzend", "stehend", "Schläge"] {
        assert_eq!(times(&shown, word), 1, "{word}");
    }
    let one_turn = svg(Table::beside(&dots[..2], 2).unwrap(), &Look::light());
    let bars = 3;
    assert_eq!(
        times(&shown, "<polyline") - times(&one_turn, "<polyline"),
        2 * bars + 1,
        "two dots and their line"
    );
    assert_ne!(shown, svg(Table::beside(&dots, 2).unwrap(), &Look::dark()));

    // Over time the first condition is a level, and its rows no dots.
    let curve = |t: f64| Some(70.0 + 60.0 * math::exp(-t / 80.0));
    let over = svg(Table::over_time(&dots, curve).unwrap(), &Look::light());
    assert_eq!(times(&over, "<circle"), 4);
    assert_eq!((times(&over, "sitzend"), times(&over, "stehend")), (1, 0));
    let without = svg(Table::over_time(&dots, |_| None).unwrap(), &Look::light());
    assert_eq!(times(&without, "<circle"), 4);
    assert!(over.len() > without.len(), "the curve is drawn");

    assert_eq!(Table::beside(&[], 2), None);
    assert_eq!(Table::over_time(&dots[..1], curve), None);
    assert_eq!(Table::beside(&[Dot { value: f64::NAN, ..dots[0] }], 2), None);
}

#[test]
fn a_table_that_cannot_be_is_refused_with_its_field() {
    let text = protocol("standing-up");
    for (from, to, field) in [
        ("measures = [\"rate\"]", "measures = []", "experiment.measures"),
        ("measures = [\"rate\"]", "measures = [\"rate\", \"rate\"]", "experiment.measures"),
        ("repeats = 2", "repeats = 0", "experiment.repeats"),
        ("window_s = 15.0\nreasons", "window_s = 1.0\nreasons", "experiment.window_s"),
        ("id = \"sitting\"", "id = \"Sitting\"", "experiment.condition[0].id"),
        ("id = \"standing\"\n", "id = \"sitting\"\n", "experiment.condition[1].id"),
        ("label = \"Standing\"", "label = \"\"", "experiment.condition[1].label"),
        ("what = \"stand_up\" }]", "what = \"fly\" }]", "experiment.condition[1].begins[0]"),
        ("begins = [{ do = \"manoeuvre\", what = \"stand_up\" }]\n", "", "experiment.condition[1].begins"),
    ] {
        assert!(text.contains(from), "{from}");
        let error = Scenario::read(&text.replacen(from, to, 1)).unwrap_err();
        assert!(error.to_string().contains(field), "{to}: {error}");
    }
    // An action that belongs to no experiment is not asked for elsewhere.
    let plain = text.split("[experiment]").next().unwrap().to_string();
    let mut s = Session::new(&plain, 1).unwrap();
    let add = act(&mut s, json!({"do": "add_row", "condition": "sitting"}));
    assert_eq!(add, Err(Refusal::NotAsked {}));
}
