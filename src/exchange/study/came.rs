//! What came in for a study: whose it is, whether it may be used, and what each test came to.

use super::deal::{ARMS, Arm, Placed};
use super::effect::Sample;
use super::forms::NAMES;
use super::plan::{OCCASIONS, Place, Study, StudyError, file_name};
use crate::assess::rubric::OF;
use crate::exchange::class::items::Seen;
use crate::exchange::handin::Graded;
use crate::exchange::handin::together::beside;
use crate::session::seeds;
use serde::Serialize;
use std::collections::BTreeMap;

/// What a student answered.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Consent {
    /// Nothing.
    #[default]
    Silent,
    /// Yes, and never no.
    Yes,
    /// No, in one result at least: who takes a yes back is left out.
    No,
}

/// A student of the study.
#[derive(Clone, Debug, PartialEq)]
pub struct Person {
    /// Their code: it stays here.
    pub code: String,
    /// Their arm.
    pub arm: Arm,
    /// What they answered.
    pub consent: Consent,
    /// Which form they have in each test.
    pub forms: [usize; 3],
    /// Whether anything of theirs came in for a test.
    pub came: bool,
    /// What each test came to, percent of the points of its benches; none where a bench of it is missing.
    pub score: [Option<f64>; 3],
    /// Results of rehearsal that came in.
    pub rehearsed: usize,
    /// Their answers, for the table of items.
    pub seen: Vec<Seen>,
}

impl Person {
    /// Whether their results may be used.
    pub fn agreed(&self) -> bool {
        self.consent == Consent::Yes
    }
}

/// How many of an arm are where: what a report of a trial by lot tells (CONSORT 2010, its flow diagram).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Flow {
    /// Placed in the arm.
    pub placed: usize,
    /// Of these, nothing came in.
    pub absent: usize,
    /// Said no.
    pub refused: usize,
    /// Were asked nothing, or did not answer.
    pub silent: usize,
    /// Said yes, and did not do the first and the second test to their end.
    pub incomplete: usize,
    /// Are in the table.
    pub used: usize,
    /// Of these, did the later test too.
    pub later: usize,
    /// Of all placed, handed in something that was for rehearsal.
    pub rehearsed: usize,
}

/// All of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Came {
    /// Everybody who has a place.
    pub people: Vec<Person>,
    /// What could not be used: where it came from, and why.
    pub wrong: Vec<(String, String)>,
}

/// Sorts results, each with where it came from, into a study.
pub fn sort(study: &Study, results: &[(String, Graded)]) -> Result<Came, StudyError> {
    let benches = study.benches()?;
    let graded: Vec<Graded> = results.iter().map(|(_, graded)| graded.clone()).collect();
    let found = beside(&graded);
    let places: BTreeMap<String, &Placed> =
        study.placed.iter().map(|one| (seeds::code(&one.code), one)).collect();
    let mut wrong = Vec::new();
    // Of each student and bench the result that ended first.
    let mut kept: BTreeMap<(String, usize, usize), usize> = BTreeMap::new();
    let mut rehearsed: BTreeMap<String, usize> = BTreeMap::new();
    let mut refused: BTreeMap<String, Consent> = BTreeMap::new();
    let mut order: Vec<usize> = (0..graded.len()).filter(|k| found[*k].again.is_none()).collect();
    order.sort_by_key(|k| if graded[*k].about.ended_s == 0 { u64::MAX } else { graded[*k].about.ended_s });
    for k in order {
        let (one, file) = (&graded[k], &results[k].0);
        let mut say = |why: String| wrong.push((file.clone(), why));
        let Some(place) = benches.get(&one.digest) else {
            say(format!("not a test of the study \"{}\"", study.id));
            continue;
        };
        let student = seeds::code(&one.about.student);
        let Some(placed) = places.get(&student) else {
            say(format!("the student ID \"{}\" has no place in the study", one.about.student));
            continue;
        };
        // Whoever says no has said it, whatever becomes of the result.
        if one.consent == Some(false) {
            refused.insert(student.clone(), Consent::No);
        }
        if !one.verified() {
            let why: Vec<String> = one.doubts.iter().map(ToString::to_string).collect();
            say(format!("not verified: {}", why.join("; ")));
            continue;
        }
        if !one.counts() {
            let why: Vec<String> = one.against.iter().map(ToString::to_string).collect();
            say(why.join("; "));
            continue;
        }
        let Place::Test { occasion, form, bench } = *place else {
            *rehearsed.entry(student).or_default() += 1;
            continue;
        };
        let nth = OCCASIONS.iter().position(|other| *other == occasion).unwrap_or(0);
        let own = placed.form(nth);
        if form != own {
            let [theirs, this] = [own, form].map(|form| file_name(occasion, form));
            say(format!("it is of {this}; this student has {theirs}"));
            continue;
        }
        if one.score.is_none() {
            say("it was never checked".into());
            continue;
        }
        if found[k].nth > 1 || kept.contains_key(&(student.clone(), nth, bench)) {
            say("a second attempt at the same test bench: the one that ended first counts".into());
            continue;
        }
        if one.consent == Some(true) {
            refused.entry(student.clone()).or_insert(Consent::Yes);
        }
        kept.insert((student, nth, bench), k);
    }
    let length = study.length();
    let person = |placed: &Placed| {
        let student = seeds::code(&placed.code);
        let mut seen = Vec::new();
        let mut score = [None; 3];
        let mut came = false;
        for (nth, score) in score.iter_mut().enumerate() {
            let own: Vec<(usize, &Graded)> = (0..length)
                .filter_map(|bench| kept.get(&(student.clone(), nth, bench)).map(|k| (bench, &graded[*k])))
                .collect();
            came |= !own.is_empty();
            for (bench, one) in &own {
                let letter = NAMES[placed.form(nth)].to_uppercase();
                let (named, test) = (format!("{letter}{}", bench + 1), format!("{student} {nth}"));
                seen.extend(Seen::of(one, &named, test));
            }
            if length > 0 && own.len() == length {
                let points: u32 = own.iter().filter_map(|(_, one)| one.score).sum();
                *score = Some(100.0 * f64::from(points) / f64::from(OF * length as u32));
            }
        }
        let consent = refused.get(&student).copied().unwrap_or_default();
        let rehearsed = rehearsed.get(&student).copied().unwrap_or(0);
        let forms = [0, 1, 2].map(|nth| placed.form(nth));
        Person { code: placed.code.clone(), arm: placed.arm, forms, consent, came, score, rehearsed, seen }
    };
    Ok(Came { people: study.placed.iter().map(person).collect(), wrong })
}

impl Came {
    /// Takes back what somebody said, as they told the instructor later; whether they have a place.
    pub fn withdraw(&mut self, code: &str) -> bool {
        let own = |person: &&mut Person| seeds::code(&person.code) == seeds::code(code);
        let found = self.people.iter_mut().find(own);
        found.map(|person| person.consent = Consent::No).is_some()
    }

    /// How many of each arm are where.
    pub fn flow(&self) -> [Flow; 2] {
        ARMS.map(|arm| {
            let mut flow = Flow::default();
            for person in self.people.iter().filter(|person| person.arm == arm) {
                flow.placed += 1;
                flow.rehearsed += usize::from(person.rehearsed > 0);
                match person.consent {
                    Consent::No => flow.refused += 1,
                    _ if !person.came => flow.absent += 1,
                    Consent::Silent => flow.silent += 1,
                    Consent::Yes if person.score[0].is_none() || person.score[1].is_none() => {
                        flow.incomplete += 1;
                    }
                    Consent::Yes => {
                        flow.used += 1;
                        flow.later += usize::from(person.score[2].is_some());
                    }
                }
            }
            flow
        })
    }

    /// What each form came to over all tests of those who said yes: whether the forms were as hard as each other.
    pub fn forms(&self) -> [Sample; 3] {
        [0, 1, 2].map(|form| {
            let of = |person: &Person| {
                (0..3).filter(|nth| person.forms[*nth] == form).find_map(|nth| person.score[nth])
            };
            Sample::of(&self.people.iter().filter(|p| p.agreed()).filter_map(of).collect::<Vec<_>>())
        })
    }

    /// The answers of all who said yes, for the table of items.
    pub fn seen(&self) -> Vec<Seen> {
        self.people.iter().filter(|person| person.agreed()).flat_map(|person| person.seen.clone()).collect()
    }
}
