//! Students for the tests of what is handed in: one who takes ten minutes over a bench, and a class of thirty who do
//! well or badly in known ways.

#![allow(dead_code)]

pub mod three_hundred;

use dicrotic::session::compact::About;
use dicrotic::session::{Action, Session, script, seeds};
use serde_json::{Value, json};

/// A bench in pieces.
pub const FIRST: &str = include_str!("../../scenarios/01-first-wiring.toml");

/// Key of the class's assignment.
pub const KEY: &str = "bio-101, week 3";

/// The instructor's word of it.
pub const WORD: &str = "chalk and slate";

/// An assignment with two faults: the power strip is off, and the charger hums.
pub const ASSIGNMENT: &str = r#"
id = "before-the-lab"
level = 2
title = "Before the lab"
aim = "Find both faults, put them right, and take a rate."
brief = "Somebody else set this bench up. Name what is wrong, put it right, then record, mark, count."
name_faults = true

[assignment]
key = "bio-101, week 3"
attempts = 3
password = "chalk and slate"
opening = "Please do this before Tuesday."
closing = "Hand in the file."

[subject]
rest_rate_bpm = 66.0
restlessness = 0.0
premature_per_min = 0.0
pulse_mv = 40.0

[recorder]
range_v = 0.1

[[fault]]
name = "power_strip_off"

[[fault]]
name = "charger_near"
severity = 0.8
"#;

/// Lets time pass, s.
pub fn wait(session: &mut Session, seconds: f64) {
    let rate = session.chain().map_or(1000.0, |c| f64::from(c.settings().rate_hz));
    session.run_long((seconds * rate).round() as u64);
}

/// Does an action, which must not be refused.
pub fn act(session: &mut Session, action: Value) {
    session.act(&Action::from_value(action.clone()).unwrap()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
}

/// Numbers: where a student is slow, where a hand goes: any generator will do.
pub struct Draws(pub u64);

impl Draws {
    /// From 0 to 1.
    pub fn next(&mut self) -> f64 {
        self.0 = dicrotic::rng::mix(self.0);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// Ten minutes of a student who does everything, some of it thrice: wires, moves the cable about, tries ranges and
/// strap, records, puts and nudges cursors, marks every beat of two recordings, types and corrects, checks twice.
pub fn diligent(seed: u64) -> Session {
    let mut session = Session::new(FIRST, seed).unwrap();
    let mut draws = Draws(seed);
    let mut wait = |session: &mut Session, seconds: f64| {
        // The page does things on frames, some 60 a second, so that times are no round numbers of samples.
        session.run_long((seconds * (500.0 + 1000.0 * draws.next())) as u64 + 1);
    };
    for action in [
        json!({"do": "plug", "end": "power_recorder", "socket": "recorder_inlet"}),
        json!({"do": "plug", "end": "power_wall", "socket": "outlet2"}),
        json!({"do": "plug", "end": "data_recorder", "socket": "recorder_data"}),
        json!({"do": "plug", "end": "data_computer", "socket": "port1"}),
        json!({"do": "plug", "end": "sensor", "socket": "in1"}),
        json!({"do": "switch", "id": "recorder", "on": true}),
        json!({"do": "tap_sensor"}),
        json!({"do": "strap_on"}),
    ] {
        wait(&mut session, 5.0);
        act(&mut session, action);
    }
    for k in 0..24 {
        wait(&mut session, 0.3);
        act(&mut session, json!({"do": "strap", "tightness": f64::from(49 + k) / 100.0}));
    }
    for v in [1.0, 0.5, 0.2, 0.1, 0.05, 0.1] {
        wait(&mut session, 3.0);
        act(&mut session, json!({"do": "range", "v": v}));
    }
    for k in 0..20 {
        wait(&mut session, 0.4);
        let (x, y) = (50.0 + 0.5 * f64::from(k), 20.0 + 0.5 * f64::from(k % 5));
        act(
            &mut session,
            json!({"do": "move", "part": if k % 2 == 0 { "cable1" } else { "cable2" }, "x": x, "y": y}),
        );
    }
    let mut t = Draws(!seed);
    let mut ms = |low: f64, high: f64| ((low + (high - low) * t.next()) * 1000.0).round() / 1000.0;
    for s in [5.0, 2.0, 1.0, 10.0] {
        act(&mut session, json!({"do": "time_base", "s": s}));
        wait(&mut session, 4.0);
    }
    for take in 0..2 {
        wait(&mut session, 6.0);
        act(&mut session, json!({"do": "record"}));
        session.run_long(62_000);
        act(&mut session, json!({"do": "stop"}));
        for _ in 0..8 {
            wait(&mut session, 1.0);
            act(&mut session, json!({"do": "scroll", "start_s": ms(0.0, 50.0)}));
            act(&mut session, json!({"do": "cursor", "which": "a", "t": ms(0.0, 10.0)}));
            wait(&mut session, 1.0);
            act(&mut session, json!({"do": "cursor", "which": "b", "t": ms(40.0, 60.0)}));
        }
        for k in 0..60 {
            wait(&mut session, 0.8);
            act(&mut session, json!({"do": "mark", "t": ms(f64::from(k), f64::from(k) + 0.9)}));
        }
        for _ in 0..2 {
            for (field, text) in
                [("count", "31"), ("seconds", "27.35"), ("multiplier", "60/27.35"), ("rate", "68")]
            {
                wait(&mut session, 4.0);
                act(&mut session, json!({"do": "answer", "field": field, "text": text}));
            }
        }
        wait(&mut session, 10.0);
        act(&mut session, json!({"do": "check"}));
        if take == 0 {
            act(&mut session, json!({"do": "show", "mode": "live"}));
        }
    }
    session.run_long(600_000_u64.saturating_sub(session.samples()));
    session
}

/// How a student of the class fares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// All right.
    Right,
    /// Multiplies by six.
    Six,
    /// Counts every bump.
    Bumps,
    /// Leaves the charger humming.
    Hum,
    /// One beat too many.
    Fence,
    /// Multiplies by six at first, and puts it right before the second check.
    Learns,
}

/// The way of the `k`-th student.
pub fn way(k: u32) -> Way {
    [
        Way::Right,
        Way::Right,
        Way::Six,
        Way::Right,
        Way::Bumps,
        Way::Hum,
        Way::Right,
        Way::Fence,
        Way::Right,
        Way::Right,
    ][k as usize % 10]
}

/// The code that the `k`-th student types.
pub fn student(k: u32) -> String {
    format!("Group {}-{:02}", char::from(b'A' + (k / 10 % 26) as u8), k % 10 + 1)
}

/// The attempt of the `k`-th student of a class, as it is handed in.
pub fn attempt(k: u32) -> (Session, About) {
    attempt_at(ASSIGNMENT, &student(k), 1, way(k))
}

/// The same bench without its faults: the heading and the key stay.
pub fn faultless() -> String {
    ASSIGNMENT.split("[[fault]]").next().unwrap().replace("name_faults = true", "")
}

/// An attempt at a bench by whoever types this code, as it is handed in.
pub fn attempt_at(scenario: &str, code: &str, tries: u32, way: Way) -> (Session, About) {
    attempt_ranged(scenario, code, tries, way, 0.05)
}

/// The same by somebody who looks at the trace first: where the pulse is cut off, the range is wider.
pub fn careful(scenario: &str, code: &str, tries: u32, way: Way) -> (Session, About) {
    let cut = |made: &(Session, About)| {
        made.0.check().is_some_and(|check| check.report.steps.iter().any(|s| s.code == "trace_clipped"))
    };
    let mut made = attempt_at(scenario, code, tries, way);
    for range_v in [0.1, 0.2] {
        if cut(&made) {
            made = attempt_ranged(scenario, code, tries, way, range_v);
        }
    }
    made
}

fn attempt_ranged(scenario: &str, code: &str, tries: u32, way: Way, range_v: f64) -> (Session, About) {
    let seed = seeds::seed(KEY, code, tries);
    let k = seed % 7;
    let wrong = scenario.contains("[[fault]]");
    let mut steps = vec![
        json!({"wait": 3.0}),
        json!({"do": "look", "at": "subject"}),
        json!({"wait": 4.5}),
        json!({"do": "name", "fault": "power_strip_off"}),
        json!({"do": "switch", "id": "power_strip", "on": true}),
        json!({"wait": 5.0}),
        json!({"do": "time_base", "s": 1.0}),
        json!({"wait": 5.0}),
        json!({"do": "time_base", "s": 10.0}),
    ];
    if way != Way::Hum {
        steps.push(json!({"do": "charger", "plugged": false}));
        steps.push(json!({"wait": 3.0}));
        steps.push(json!({"do": "name", "fault": "charger_near"}));
    }
    let (count, multiplier, rate) = match way {
        Way::Right | Way::Hum => ("@count", "@multiplier", "@rate"),
        Way::Six | Way::Learns => ("@count", "6", "@count*6"),
        Way::Bumps => ("@count*2", "@multiplier", "@rate*2"),
        Way::Fence => ("@count+1", "@multiplier", "@rate+4"),
    };
    // A hand lays its window where it likes, and takes its time over each deed.
    let mut draws = Draws(seed);
    let from = 0.3 + 3.0 * draws.next();
    let to = from + 15.3 + 1.2 * draws.next();
    let mut read = || ((1.0 + 2.0 * draws.next()) * 1000.0).round() / 1000.0;
    steps.extend([
        json!({"do": "range", "v": range_v}),
        json!({"wait": 4.0}),
        json!({"do": "record"}),
        json!({"wait": 21.5 + k as f64}),
        json!({"do": "stop"}),
        json!({"wait": read()}),
        json!({"do": "cursor", "which": "a", "t": format!("@beat+{from:.3}")}),
        json!({"wait": read()}),
        json!({"do": "cursor", "which": "b", "t": format!("@beat+{to:.3}")}),
        json!({"wait": read()}),
        json!({"do": "answer", "field": "count", "text": count}),
        json!({"wait": read()}),
        json!({"do": "answer", "field": "seconds", "text": "@seconds"}),
        json!({"wait": read()}),
        json!({"do": "answer", "field": "multiplier", "text": multiplier}),
        json!({"wait": read()}),
        json!({"do": "answer", "field": "rate", "text": rate}),
        json!({"wait": read()}),
        json!({"do": "check"}),
    ]);
    if way == Way::Learns {
        steps.extend([
            json!({"wait": 9.0}),
            json!({"do": "answer", "field": "multiplier", "text": "@multiplier"}),
            json!({"wait": 4.0}),
            json!({"do": "answer", "field": "rate", "text": "@rate"}),
            json!({"wait": 2.0}),
            json!({"do": "check"}),
        ]);
    }
    if !wrong {
        steps.retain(|s| !["name", "switch", "charger"].iter().any(|name| s["do"] == *name));
    }
    let mut session = Session::new(scenario, seed).unwrap();
    script::play(&mut session, &steps).unwrap_or_else(|e| panic!("student {code}: {e}"));
    let begun_s = 1_790_000_000 + 700 * k;
    (session, About { student: code.into(), tries, begun_s, ended_s: begun_s + 600 })
}
