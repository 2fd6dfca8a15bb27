//! Both policies as lines of JSON: `simulate.py` makes learners, this tells what each is offered and what is thought of them. It
//! tells the benches first, one line, each with the steps that its worked example is judged by, of a pool one list for each of
//! its draws; then it answers each line with one.
//!
//! A line: `{"policy": "rule" | "mixed" | "learner", "id": 7, "now": ms, "seed": 12, "record": {...} | null}`; `mixed` has the model choose the
//! bench and the rule tell what is mastered. The answer: `{"next": {"bench": 3, "drawn": 0, "aid": "alone"} | null, "mastered": [..],
//! "sets": [..], "foreseen": [..]}`: which skills are mastered in their order, the names of the sets that are, and how likely
//! each judged step of that bench comes out right, skills first, then faults.

mod rule;

use dicrotic::assess::learner::choose::Bench;
use dicrotic::assess::learner::credit::About;
use dicrotic::assess::learner::{Learner, SETS};
use dicrotic::assess::skill::{Aid, Record, SKILLS};
use dicrotic::scenario::Scenario;
use dicrotic::scenario::pool::Draw;
use dicrotic::scenario::schema::FaultSpec;
use dicrotic::scenario::script::Attempt;
use dicrotic::session::attempt::Session;
use dicrotic::session::script;
use dicrotic::session::view;
use serde_json::{Value, json};
use std::collections::{BTreeMap, HashMap};
use std::io::{BufRead, Write};

#[derive(Default)]
struct ByRule {
    records: Vec<Record>,
    tried: BTreeMap<String, u32>,
}

struct Benches {
    told: Vec<Value>,
    offered: Vec<Bench>,
    kinds: Vec<(String, String)>,
}

fn benches() -> Benches {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    let mut files: Vec<_> =
        std::fs::read_dir(folder).expect("scenarios").map(|e| e.expect("a file").path()).collect();
    files.sort();
    let mut all = Benches { told: Vec::new(), offered: Vec::new(), kinds: Vec::new() };
    for path in files.into_iter().filter(|p| p.extension().is_some_and(|e| e == "toml")) {
        let text = std::fs::read_to_string(&path).expect("a text");
        let scenario = Scenario::read(&text).expect("a scenario");
        let brief = view::brief(&scenario);
        let Some(attempt) = scenario.attempt.iter().find(|a| a.expect.passed) else { continue };
        let replayed = script::replay(&text, attempt).expect("an attempt");
        all.offered.push(serde_json::from_value(brief.clone()).expect("a bench"));
        let kind = brief["task"]["kind"].as_str().unwrap_or_default().to_string();
        all.kinds.push((scenario.id.clone(), kind));
        // Of a pool each draw, as its worked example goes through it.
        let drawn: Vec<Value> =
            scenario.draws().iter().map(|draw| evidence_of(&text, attempt, draw)).collect();
        all.told.push(json!({
            "id": scenario.id, "level": brief["level"], "skills": brief["skills"], "worked": brief["worked"],
            "drawn": if drawn.is_empty() { vec![evidence(&replayed)] } else { drawn },
        }));
    }
    all
}

fn evidence_of(text: &str, attempt: &Attempt, draw: &Draw) -> Value {
    let specs: Vec<FaultSpec> =
        draw.iter().map(|f| FaultSpec { name: f.id.into(), severity: None }).collect();
    evidence(&script::replay_with(text, attempt, &specs).expect("an attempt"))
}

fn evidence(session: &Session) -> Value {
    let told = session.evidence().expect("a check").told();
    json!({"judged": told["judged"], "faults": told["faults"]})
}

fn main() {
    let benches = benches();
    let mut out = std::io::BufWriter::new(std::io::stdout().lock());
    writeln!(out, "{}", json!({"skills": SKILLS, "benches": benches.told})).expect("written");
    out.flush().expect("written");
    let mut by_rule: HashMap<u64, ByRule> = HashMap::new();
    let mut learners: HashMap<u64, Learner> = HashMap::new();
    for line in std::io::stdin().lock().lines() {
        let line = line.expect("a line");
        if line.is_empty() {
            out.flush().expect("written");
            continue;
        }
        let asked: Value = serde_json::from_str(&line).expect("JSON");
        let id = asked["id"].as_u64().expect("an id");
        let now_ms = asked["now"].as_f64().expect("a time");
        let seed = asked["seed"].as_u64().expect("a number");
        let record: Option<Record> = serde_json::from_value(asked["record"].clone()).expect("a record");
        let mixed = asked["policy"] == "mixed";
        let chosen = mixed.then(|| {
            let learner = learners.entry(id).or_default();
            record.iter().for_each(|r| learner.note(r));
            answer(learner, &benches, now_ms, seed)["next"].clone()
        });
        let answer = if mixed || asked["policy"] == "rule" {
            let known = by_rule.entry(id).or_default();
            if let Some(record) = record {
                *known.tried.entry(record.scenario.clone()).or_default() += 1;
                known.records.push(record);
            }
            let mut answer = answer_by_rule(known, &benches, now_ms, seed);
            if let Some(next) = chosen.filter(|next| !next.is_null()) {
                answer["next"] = next;
            }
            answer
        } else {
            let learner = learners.entry(id).or_default();
            if let Some(record) = record {
                learner.note(&record);
            }
            answer(learner, &benches, now_ms, seed)
        };
        writeln!(out, "{answer}").expect("written");
    }
}

fn answer_by_rule(known: &ByRule, benches: &Benches, now_ms: f64, seed: u64) -> Value {
    let (standings, help) = rule::map(&known.records, now_ms);
    let next = rule::next(&standings, &benches.kinds, &known.tried).map(|k| {
        let met = known.tried.contains_key(&benches.kinds[k].0);
        let aid = if benches.offered[k].worked && !met { help } else { Aid::Alone };
        let drawn = benches.told[k]["drawn"].as_array().map_or(1, Vec::len);
        json!({"bench": k, "drawn": seed as usize % drawn, "aid": aid})
    });
    let is = |s: &rule::Standing| matches!(s.state, rule::State::Ready | rule::State::Due);
    json!({"next": next, "mastered": standings.iter().map(is).collect::<Vec<_>>()})
}

fn answer(learner: &Learner, benches: &Benches, now_ms: f64, seed: u64) -> Value {
    let next = learner.next(&benches.offered, now_ms);
    let mastered: Vec<bool> = SKILLS.iter().map(|s| learner.is_mastered(About::Skill(s))).collect();
    let sets: Vec<&str> = SETS.into_iter().filter(|s| learner.is_mastered(About::Set(s))).collect();
    let Some(next) = next else { return json!({"next": null, "mastered": mastered, "sets": sets}) };
    let k = benches.offered.iter().position(|b| b.id == next.id).expect("one of them");
    let half = ["window", "counting", "arithmetic", "uncertainty"];
    let drawn = benches.told[k]["drawn"].as_array().expect("draws");
    let at = seed as usize % drawn.len();
    let mut ahead = drawn[at].clone();
    if next.aid != Aid::Alone {
        ahead["faults"] = json!([]);
        if let Some(judged) = ahead["judged"].as_array_mut() {
            judged.retain(|step| half.contains(&step["skill"].as_str().unwrap_or_default()));
        }
    }
    let ahead: Record = serde_json::from_value(json!({
        "scenario": next.id, "seed": "0", "mode": next.aid, "passed": true, "at_ms": now_ms,
        "judged": ahead["judged"], "faults": ahead["faults"],
    }))
    .expect("a record");
    // The names of what is foreseen are sent along: what a trait is about decides where its outcome is looked up.
    let foreseen: Vec<Value> = learner
        .foresees(&ahead, now_ms)
        .into_iter()
        .map(|(about, p)| json!([about.name(), (p * 1e4).round() / 1e4]))
        .collect();
    json!({"next": {"bench": k, "drawn": at, "aid": next.aid, "skill": next.skill}, "mastered": mastered, "sets": sets, "foreseen": foreseen})
}
