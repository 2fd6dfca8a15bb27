//! Runs the claims: every subject, both ends of the severity, the fault's bench and the opposite one.

use super::claim::{Bound, Claim, Course, Does};
use super::shot::{Seen, Shot};
use dicrotic::scenario::fault::{self, AtWork, Fault};
use dicrotic::session::Session;
use dicrotic::session::script::play;
use rayon::prelude::*;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Subjects of a claim: half of them students, half adults of every age.
pub const SUBJECTS: u64 = 24;
/// Before anything is looked at, s.
const SETTLE_S: f64 = 8.0;
/// Sensors, as a scenario names them, and a range that takes any pulse of theirs, V.
const SENSORS: [(&str, f64); 3] = [("ceramic", 1.0), ("film", 1.0), ("optical", 10.0)];
/// Full-scale ranges, V, and the part of the screen that a pulse may fill: 30 to 80 % (common practice).
const RANGES_V: [f64; 11] = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0];
const FILLS: f64 = 0.6;
/// A claim is missed on the opposite bench where at most this share of its measurements meets the bound.
const BY_CHANCE: f64 = 0.1;

/// What came of one claim.
pub struct Row {
    pub claim: Claim,
    /// The worst figure of all subjects at the mild and at the worst end.
    pub worst: [f64; 2],
    /// Measurements that meet the bound, and all.
    pub met: (usize, usize),
    /// The same on the opposite bench.
    pub opposite: (usize, usize),
    /// The opposite bench's figure that is nearest to meeting the bound.
    pub nearest: f64,
}

impl Row {
    pub fn holds(&self) -> bool {
        self.met.0 == self.met.1 && self.met.1 >= SUBJECTS as usize
    }

    /// Whether the opposite bench misses the bound.
    pub fn tells(&self) -> bool {
        self.opposite.1 > 0 && self.opposite.0 as f64 <= BY_CHANCE * self.opposite.1 as f64
    }

    pub fn line(&self) -> String {
        let bound = match self.claim.bound {
            Bound::Under(v) => format!("<= {v}"),
            Bound::Over(v) => format!(">= {v}"),
            Bound::Within(a, b) => format!("{a} to {b}"),
        };
        format!(
            "{} {:<28} {:<46} {:<34} {:<11} worst {:>8.3} mild {:>8.3} worst; {:>2} of {:>2}; against {}: {} of {}, nearest {:.3}{}",
            if self.holds() { "pass" } else { "FAIL" },
            format!("{}.{}", self.claim.fault, self.claim.field),
            format!("\"{}\"", self.claim.phrase),
            self.claim.figure.0,
            bound,
            self.worst[0],
            self.worst[1],
            self.met.0,
            self.met.1,
            self.claim.opposite.unwrap_or("no fault"),
            self.opposite.0,
            self.opposite.1,
            self.nearest,
            if self.tells() { "" } else { " NOT TOLD APART" },
        )
    }
}

/// A bench that is run.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Bench {
    fault: Option<&'static str>,
    sensors: Vec<usize>,
    course: Course,
    /// Whose remedy is done.
    remedy_of: &'static str,
}

/// A subject's bench of a sensor, without a fault: range that suits it, and the trace as it usually is.
struct Usual {
    range_v: f64,
    shot: Shot,
}

fn scenario(subject: u64, sensor: usize, range_v: f64, fault: Option<(&Fault, f64)>) -> String {
    let people = if subject % 2 == 0 { "students" } else { "everyone" };
    let hz = if subject % 4 < 2 { 50 } else { 60 };
    let fault = fault.map_or_else(String::new, |(fault, severity)| {
        format!("[[fault]]\nname = \"{}\"\nseverity = {severity}\n", fault.id)
    });
    format!(
        "id = \"claims\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
         [subject]\npeople = \"{people}\"\n[sensor]\nkind = \"{}\"\n[power_line]\nhz = {hz}\nvolts = {}\n\
         [recorder]\nrange_v = {range_v}\n{fault}",
        SENSORS[sensor].0,
        if hz == 50 { 230 } else { 120 },
    )
}

fn session(text: &str, subject: u64) -> Session {
    Session::new(text, 7000 + subject).unwrap_or_else(|e| panic!("{e}\n{text}"))
}

fn wait(session: &mut Session, seconds: f64) {
    play(session, &[json!({"wait": seconds})]).unwrap();
}

/// The sensors at which a fault's cause is at work at both ends of its severity; all where only a check would find it.
fn offered(fault: &Fault) -> Vec<usize> {
    (0..SENSORS.len())
        .filter(|sensor| {
            [fault.severity.0, fault.severity.1].into_iter().all(|severity| {
                let text = scenario(0, *sensor, SENSORS[*sensor].1 / 20.0, Some((fault, severity)));
                let session = session(&text, 0);
                matches!(fault.at_work, AtWork::Found(_)) || session.is_at_work(fault)
            })
        })
        // What brings a sensor of its own is the same with all.
        .filter(|sensor| fault.id != "room_light" || *sensor == 2)
        .collect()
}

fn usual(subject: u64, sensor: usize) -> Usual {
    let look = |range_v: f64| {
        let mut session = session(&scenario(subject, sensor, range_v, None), subject);
        wait(&mut session, SETTLE_S + 12.0);
        Shot::take(&session, 12.0)
    };
    let height = look(SENSORS[sensor].1).height();
    let fits = |v: &&f64| 2.0 * **v * FILLS >= height;
    let range_v = RANGES_V.iter().find(fits).copied().unwrap_or(10.0);
    Usual { range_v, shot: look(range_v) }
}

fn steps(list: &[&str]) -> Vec<Value> {
    list.iter().map(|s| serde_json::from_str(s).unwrap()).collect()
}

impl Bench {
    /// One subject at one end of the severity.
    fn run<T>(&self, subject: u64, severity: f64, usuals: &[Usual], with: impl FnOnce(&Seen) -> T) -> T {
        let sensor = self.sensors[(subject / 2) as usize % self.sensors.len()];
        let usual = &usuals[subject as usize * SENSORS.len() + sensor];
        let fault = self.fault.and_then(fault::named);
        let mut session =
            session(&scenario(subject, sensor, usual.range_v, fault.map(|f| (f, severity))), subject);
        let look_s = self.course.look_ms as f64 / 1000.0;
        wait(&mut session, SETTLE_S + look_s);
        let shown = Shot::take(&session, look_s);
        let list = match self.course.does {
            Does::Steps(list) => list,
            Does::Remedy => fault::named(self.remedy_of).map_or(&[][..], |f| f.remedy),
        };
        // What a bench refuses, such as recording without a link, is not done there.
        for step in steps(list) {
            if let Err(e) = play(&mut session, &[step]) {
                assert!(e.contains("refused"), "{self:?}: {e}");
            }
        }
        let then_s = self.course.then_ms as f64 / 1000.0;
        wait(&mut session, then_s);
        let then = Shot::take(&session, then_s.min(12.0));
        with(&Seen { usual: &usual.shot, shown: &shown, then: &then })
    }
}

/// Measures all claims.
pub fn rows(claims: &[Claim]) -> Vec<Row> {
    let mut sensors: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for id in claims.iter().flat_map(|c| [Some(c.fault), c.opposite]).flatten() {
        let fault = fault::named(id).unwrap_or_else(|| panic!("there is no fault {id}"));
        sensors.entry(id).or_insert_with(|| offered(fault));
    }
    let usuals: Vec<Usual> = (0..SUBJECTS as usize * SENSORS.len())
        .into_par_iter()
        .map(|k| usual((k / SENSORS.len()) as u64, k % SENSORS.len()))
        .collect();
    let bench = |claim: &Claim, fault: Option<&'static str>| Bench {
        fault,
        sensors: sensors[fault.unwrap_or(claim.fault)].clone(),
        course: claim.course,
        remedy_of: if claim.course.does == Does::Remedy { claim.fault } else { "" },
    };
    // Claims about one bench share its runs.
    let mut benches: BTreeMap<Bench, Vec<(usize, bool)>> = BTreeMap::new();
    for (k, claim) in claims.iter().enumerate() {
        benches.entry(bench(claim, Some(claim.fault))).or_default().push((k, false));
        benches.entry(bench(claim, claim.opposite)).or_default().push((k, true));
    }
    let runs: Vec<(&Bench, &Vec<(usize, bool)>, usize, u64, f64)> = benches
        .iter()
        .flat_map(|(bench, of)| {
            let (mild, worst) = bench.fault.and_then(fault::named).map_or((0.0, 0.0), |f| f.severity);
            let ends = if mild == worst { vec![worst] } else { vec![mild, worst] };
            let ends: Vec<(usize, f64)> = ends.into_iter().enumerate().collect();
            ends.into_iter().flat_map(move |(end, severity)| {
                (0..SUBJECTS).map(move |subject| (bench, of, end, subject, severity))
            })
        })
        .collect();
    let found: Vec<(usize, bool, usize, f64)> = runs
        .into_par_iter()
        .flat_map_iter(|(bench, of, end, subject, severity)| {
            bench.run(subject, severity, &usuals, |seen| {
                of.iter()
                    .map(|(k, opposite)| (*k, *opposite, end, (claims[*k].figure.1)(seen)))
                    .collect::<Vec<_>>()
            })
        })
        .collect();
    claims.iter().enumerate().map(|(k, claim)| row(k, *claim, &found)).collect()
}

fn row(k: usize, claim: Claim, found: &[(usize, bool, usize, f64)]) -> Row {
    let of = |opposite: bool, end: Option<usize>| -> Vec<f64> {
        let mine = found.iter().filter(|f| f.0 == k && f.1 == opposite && end.is_none_or(|e| e == f.2));
        mine.map(|f| f.3).collect()
    };
    let beyond = |a: &f64, b: &f64| claim.bound.beyond(*a).total_cmp(&claim.bound.beyond(*b));
    let worst = |values: Vec<f64>| values.into_iter().max_by(beyond);
    let count = |values: &[f64]| (values.iter().filter(|v| claim.bound.meets(**v)).count(), values.len());
    let mild = worst(of(false, Some(0))).unwrap_or(f64::NAN);
    let opposite = of(true, None);
    Row {
        claim,
        worst: [mild, worst(of(false, Some(1))).unwrap_or(mild)],
        met: count(&of(false, None)),
        opposite: count(&opposite),
        nearest: opposite.iter().copied().min_by(beyond).unwrap_or(f64::NAN),
    }
}
