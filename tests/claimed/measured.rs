//! Runs the claims: every subject, both ends of the severity, the fault's bench and the opposite one.

use super::claim::{Bound, Claim, Course, Does, NOT_HERE, Opposite};
use super::shot::{Seen, Shot};
use dicrotic::scenario::fault::{self, AtWork, Fault};
use dicrotic::session::Session;
use dicrotic::session::script::play;
use rayon::prelude::*;
use serde_json::{Value, json};
use std::collections::{BTreeMap, HashMap};
use std::sync::{Mutex, OnceLock};

/// Subjects of a claim: half of them students, half adults of every age.
pub const SUBJECTS: u64 = 24;
/// Measurements that a claim needs where not every subject can show the thing.
const LEAST: usize = 8;
/// Sensors, as a scenario names them, and a range that takes any pulse of theirs, V.
const SENSORS: [(&str, f64); 3] = [("ceramic", 1.0), ("film", 1.0), ("optical", 10.0)];
/// Full-scale ranges, V, and the part of the screen that a pulse may fill: 30 to 80 % (common practice).
const RANGES_V: [f64; 11] = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0];
const FILLS: f64 = 0.45;
/// A claim is missed on the opposite bench where at most this share of its measurements meets the bound.
const BY_CHANCE: f64 = 0.1;

/// What came of one claim on one opposite bench.
pub struct Against {
    pub opposite: Opposite,
    /// Its figures.
    pub all: Vec<f64>,
    /// How many meet the bound.
    pub met: usize,
    /// The one that is nearest to meeting it.
    pub nearest: f64,
}

impl Against {
    /// Whether the opposite bench misses the bound.
    pub fn tells(&self) -> bool {
        !self.all.is_empty() && self.met as f64 <= BY_CHANCE * self.all.len() as f64
    }
}

/// What came of one claim.
pub struct Row {
    pub claim: Claim,
    /// The worst figure of all subjects at the mild and at the worst end.
    pub worst: [f64; 2],
    /// All figures, the mild end first.
    pub all: Vec<f64>,
    /// How many meet the bound.
    pub met: usize,
    pub against: Vec<Against>,
}

impl Row {
    pub fn holds(&self) -> bool {
        self.all.len() >= LEAST && self.met as f64 >= self.claim.least_share * self.all.len() as f64
    }

    pub fn tells(&self) -> bool {
        self.against.iter().all(Against::tells)
    }

    /// Every figure.
    pub fn figures(&self) -> String {
        let list = |values: &[f64]| values.iter().map(|v| format!("{v:.3}")).collect::<Vec<_>>().join(" ");
        let opposite = self.against.iter().map(|a| format!("\n     {}: {}", named(a.opposite), list(&a.all)));
        format!("     here: {}{}", list(&self.all), opposite.collect::<String>())
    }

    pub fn line(&self) -> String {
        let bound = match self.claim.bound {
            Bound::Under(v) => format!("<= {v}"),
            Bound::Over(v) => format!(">= {v}"),
            Bound::Within(a, b) => format!("{a} to {b}"),
        };
        let bound = if self.claim.missed { format!("not {bound}") } else { bound };
        let against = self.against.iter().map(|a| {
            let not = if a.tells() { "" } else { " NOT TOLD APART" };
            format!("; {}: {} of {}, nearest {:.3}{not}", named(a.opposite), a.met, a.all.len(), a.nearest)
        });
        format!(
            "{} {:<26} {:<50} {:<44} {:<12} worst {:.3} mild, {:.3} worst, {} of {}{}",
            if self.holds() && self.tells() { "pass" } else { "FAIL" },
            format!("{}.{}", self.claim.fault, self.claim.field),
            format!("\"{}\"", self.claim.phrase),
            self.claim.figure.0,
            bound,
            self.worst[0],
            self.worst[1],
            self.met,
            self.all.len(),
            against.collect::<String>(),
        )
    }
}

fn named(opposite: Opposite) -> &'static str {
    match opposite {
        Opposite::None => "no fault",
        Opposite::Fault(id) => id,
        Opposite::Undone => "nothing done",
    }
}

/// A bench that is run.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Bench {
    fault: Option<&'static str>,
    sensors: Vec<usize>,
    course: Course,
    /// Whose remedy is done.
    does_of: &'static str,
    /// Nothing is done.
    undone: bool,
}

/// A moment of a bench without a fault.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
struct Moment {
    subject: u64,
    sensor: usize,
    end_ms: u64,
    look_ms: u64,
}

/// What benches without a fault show: worked out when first asked for, and kept.
#[derive(Default)]
struct Usuals(Mutex<HashMap<Moment, &'static OnceLock<Shot>>>);

impl Usuals {
    fn at(&self, moment: Moment) -> &'static Shot {
        // The table lives as long as the process: what was looked at once is asked for again by many claims.
        let cell = *self.0.lock().unwrap().entry(moment).or_insert_with(|| Box::leak(Box::default()));
        cell.get_or_init(|| {
            let Moment { subject, sensor, end_ms, look_ms } = moment;
            let mut session = session(&scenario(subject, sensor, SENSORS[sensor].1, None), subject);
            wait(&mut session, end_ms as f64 / 1000.0);
            Shot::take(&session, look_ms as f64 / 1000.0, 0)
        })
    }

    /// A range that suits the usual pulse.
    fn range_v(&self, subject: u64, sensor: usize) -> f64 {
        let height = self.at(Moment { subject, sensor, end_ms: 20_000, look_ms: 12_000 }).height();
        RANGES_V.iter().find(|v| 2.0 * **v * FILLS >= height).copied().unwrap_or(10.0)
    }
}

/// A bench as scenarios have it: everything of the subject is drawn but what they all lay down, a hand about as still as
/// theirs, a warm finger and an even heart.
fn scenario(subject: u64, sensor: usize, range_v: f64, fault: Option<(&Fault, f64)>) -> String {
    let people = if subject.is_multiple_of(2) { "students" } else { "everyone" };
    let hz = if subject % 4 < 2 { 50 } else { 60 };
    let fault = fault.map_or_else(String::new, |(fault, severity)| {
        format!("[[fault]]\nname = \"{}\"\nseverity = {severity}\n", fault.id)
    });
    format!(
        "id = \"claims\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
         [subject]\npeople = \"{people}\"\nrestlessness = 0.1\npremature_per_min = 0\nfinger_temp_c = 33\n[sensor]\nkind = \"{}\"\n[power_line]\nhz = {hz}\nvolts = {}\n\
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

/// The sensors at which the cause of a fault, and of what comes with it, is at work on a middle subject at both ends of its
/// severity; all where only a check would find it.
fn offered(fault: &Fault) -> Vec<usize> {
    let works = |sensor: usize, severity: f64| {
        let text = scenario(0, sensor, SENSORS[sensor].1 / 20.0, Some((fault, severity)))
            .replace("[subject]", "[subject]\npulse_mv = 40");
        let session = session(&text, 0);
        let is = |f: &Fault| matches!(f.at_work, AtWork::Found(_)) || session.is_at_work(f);
        is(fault) && fault.brings.iter().all(|id| is(fault::named(id).unwrap()))
    };
    (0..SENSORS.len())
        .filter(|sensor| works(*sensor, fault.severity.0) && works(*sensor, fault.severity.1))
        // What brings a sensor of its own is the same with all.
        .filter(|sensor| !["room_light", "light_sensor_dirty"].contains(&fault.id) || *sensor == 2)
        .collect()
}

fn steps(list: &[&str], range_v: f64) -> Vec<Value> {
    let range = range_v.to_string();
    list.iter().map(|s| serde_json::from_str(&s.replace("\"@range\"", &range)).unwrap()).collect()
}

/// Waits and counts how often the link is lost.
fn watch(session: &mut Session, seconds: f64) -> u32 {
    let (mut losses, mut before) = (0, session.chain().unwrap().seen());
    let slices = (seconds / 0.1).round() as u32;
    for _ in 0..slices {
        wait(session, 0.1);
        let seen = session.chain().unwrap().seen();
        losses += u32::from(before && !seen);
        before = seen;
    }
    losses
}

/// What courses have in common up to the first look.
type Base = (Option<&'static str>, Vec<usize>, u64, u64, bool);

impl Bench {
    fn base(&self) -> Base {
        let Course { settle_ms, look_ms, wide, .. } = self.course;
        (self.fault, self.sensors.clone(), settle_ms, look_ms, wide)
    }

    /// Goes on after the first look.
    fn go_on(&self, at: &First, usuals: &Usuals, with: impl FnOnce(&Seen) -> Vec<Found>) -> Vec<Found> {
        let First { session, subject, sensor, range_v, shown, usual } = at;
        let mut session = session.clone();
        let done_ms = ms(&session);
        let remedy = || fault::named(self.does_of).map_or(&[][..], |f| f.remedy);
        let list = match self.course.does {
            Does::Steps(list) => list.to_vec(),
            Does::Remedy => remedy().to_vec(),
            Does::RemedyAnd(more) => [remedy(), more].concat(),
        };
        for mut step in steps(&list, *range_v) {
            // The catalogue's remedy has a middle finger; each subject has a range of its own.
            if self.course.does == Does::Remedy && step["do"] == "range" {
                step["v"] = json!(range_v);
            }
            if self.undone && step.get("wait").is_none() {
                continue;
            }
            // What a bench refuses, such as recording without a link, is not done there.
            if let Err(e) = play(&mut session, &[step]) {
                assert!(e.contains("refused"), "{self:?}: {e}");
            }
        }
        let losses = watch(&mut session, self.course.then_ms as f64 / 1000.0);
        let end_ms = ms(&session);
        let then_ms = if self.course.throughout { end_ms - done_ms } else { self.course.then_ms.min(20_000) };
        let then = Shot::take(&session, then_ms as f64 / 1000.0, losses);
        let moment = Moment { subject: *subject, sensor: *sensor, end_ms, look_ms: then_ms };
        let usual_then = || usuals.at(moment);
        with(&Seen { usual, usual_then: &usual_then, shown, then: &then })
    }
}

/// A bench at the end of the first look.
struct First {
    session: Session,
    subject: u64,
    sensor: usize,
    range_v: f64,
    shown: Shot,
    usual: &'static Shot,
}

fn ms(session: &Session) -> u64 {
    (1000.0 * session.chain().unwrap().time_s()).round() as u64
}

impl First {
    fn look(base: &Base, subject: u64, severity: f64, usuals: &Usuals) -> Self {
        let (fault, sensors, settle_ms, look_ms, wide) = base;
        let sensor = sensors[(subject / 2) as usize % sensors.len()];
        let fault = fault.and_then(fault::named);
        let range_v = usuals.range_v(subject, sensor);
        let screen_v = if *wide { (10.0 * range_v).min(10.0) } else { range_v };
        let mut session =
            session(&scenario(subject, sensor, screen_v, fault.map(|f| (f, severity))), subject);
        wait(&mut session, *settle_ms as f64 / 1000.0);
        let look_s = *look_ms as f64 / 1000.0;
        let losses = watch(&mut session, look_s);
        let shown = Shot::take(&session, look_s, losses);
        let usual = usuals.at(Moment { subject, sensor, end_ms: ms(&session), look_ms: *look_ms });
        Self { session, subject, sensor, range_v, shown, usual }
    }
}

/// Measures all claims.
pub fn rows(claims: &[Claim]) -> Vec<Row> {
    let mut sensors: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    let others = claims.iter().flat_map(|c| c.opposites.iter()).filter_map(|o| match o {
        Opposite::Fault(id) => Some(*id),
        _ => None,
    });
    for id in claims.iter().map(|c| c.fault).chain(others) {
        let fault = fault::named(id).unwrap_or_else(|| panic!("there is no fault {id}"));
        sensors.entry(id).or_insert_with(|| offered(fault));
    }
    let usuals = Usuals::default();
    let bench = |claim: &Claim, fault: Option<&'static str>, undone: bool| Bench {
        fault,
        sensors: sensors[fault.unwrap_or(claim.fault)].clone(),
        course: claim.course,
        does_of: if matches!(claim.course.does, Does::Steps(_)) { "" } else { claim.fault },
        undone,
    };
    // Claims about one bench share its runs. What is asked for: of which claim, and on which of its benches.
    let mut benches: BTreeMap<Bench, Vec<Asked>> = BTreeMap::new();
    for (k, claim) in claims.iter().enumerate() {
        benches.entry(bench(claim, Some(claim.fault), false)).or_default().push((k, None));
        for opposite in claim.opposite() {
            let opposed = match opposite {
                Opposite::None => bench(claim, None, false),
                Opposite::Fault(id) => bench(claim, Some(id), false),
                Opposite::Undone => bench(claim, Some(claim.fault), true),
            };
            benches.entry(opposed).or_default().push((k, Some(opposite)));
        }
    }
    // Benches that differ in what is done alone share what comes before it. One that is only an opposite is looked at with half
    // of the subjects at each end.
    let mut bases: BTreeMap<Base, Vec<(&Bench, &Vec<Asked>)>> = BTreeMap::new();
    benches.iter().for_each(|(bench, asked)| bases.entry(bench.base()).or_default().push((bench, asked)));
    let mut runs = Vec::new();
    for (base, courses) in &bases {
        let (mild, worst) = base.0.and_then(fault::named).map_or((0.0, 0.0), |f| f.severity);
        let own = courses.iter().any(|(_, asked)| asked.iter().any(|(_, on)| on.is_none()));
        for subject in 0..SUBJECTS {
            let first = usize::from(mild != worst && subject / 4 % 2 == 1);
            let ends = if own && mild != worst { 0..=1 } else { first..=first };
            runs.extend(
                ends.map(|end| {
                    (base, courses, end, end == first, subject, if end == 0 { mild } else { worst })
                }),
            );
        }
    }
    let found: Vec<Found> = runs
        .into_par_iter()
        .flat_map_iter(|(base, courses, end, turn, subject, severity)| {
            let first = First::look(base, subject, severity, &usuals);
            let mut found = Vec::new();
            for (bench, asked) in courses {
                let asked: Vec<&Asked> = asked.iter().filter(|(_, on)| turn || on.is_none()).collect();
                if asked.is_empty() {
                    continue;
                }
                found.extend(bench.go_on(&first, &usuals, |seen| {
                    let of = |(claim, on): &&Asked| {
                        let Claim { figure, after, .. } = &claims[*claim];
                        let figure = if *after { (figure.1)(&seen.afterwards()) } else { (figure.1)(seen) };
                        Found { claim: *claim, on: *on, end, figure }
                    };
                    asked.iter().map(of).filter(|f| f.figure != NOT_HERE).collect()
                }));
            }
            found
        })
        .collect();
    claims.iter().enumerate().map(|(k, claim)| row(k, claim, &found)).collect()
}

/// A claim by its number, and the opposite bench that it is asked of; none for its own.
type Asked = (usize, Option<Opposite>);

/// One measurement.
struct Found {
    claim: usize,
    /// The opposite bench; none for the fault's own.
    on: Option<Opposite>,
    end: usize,
    figure: f64,
}

fn row(k: usize, claim: &Claim, found: &[Found]) -> Row {
    let of = |on: Option<Opposite>, end: Option<usize>| -> Vec<f64> {
        let mine = found.iter().filter(|f| f.claim == k && f.on == on && end.is_none_or(|e| e == f.end));
        mine.map(|f| f.figure).collect()
    };
    let beyond = |a: &f64, b: &f64| claim.beyond(*a).total_cmp(&claim.beyond(*b));
    let worst = |end: usize| of(None, Some(end)).into_iter().max_by(beyond);
    let count = |values: &[f64]| values.iter().filter(|v| claim.meets(**v)).count();
    let mild = worst(0).unwrap_or(f64::NAN);
    let all = of(None, None);
    let against = claim.opposite().into_iter().map(|opposite| {
        let all = of(Some(opposite), None);
        let nearest = all.iter().copied().min_by(beyond).unwrap_or(f64::NAN);
        Against { opposite, met: count(&all), nearest, all }
    });
    let against = against.collect();
    Row { claim: claim.clone(), worst: [mild, worst(1).unwrap_or(mild)], met: count(&all), all, against }
}
