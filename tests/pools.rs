//! Pools: what a seed draws, what is told of it and when, and whether it can be found by testing and not by guessing.

use std::collections::{BTreeMap, BTreeSet};

use dicrotic::assess::task::Reads;
use dicrotic::scenario::fault;
use dicrotic::scenario::pool::Draw;
use dicrotic::scenario::schema::FaultSpec;
use dicrotic::scenario::{Scenario, digest};
use dicrotic::session::{Action, Session, pools, script, seeds};
use serde_json::{Value, json};

#[path = "shipped/mod.rs"]
mod shipped;
#[path = "pools/tester.rs"]
mod tester;

/// The shipped scenarios that draw from a pool: name, text, scenario.
fn shipped_pools() -> Vec<(String, String, Scenario)> {
    let read = |(name, text): (String, String)| {
        let scenario = Scenario::read(&text).unwrap_or_else(|e| panic!("{name}: {e}"));
        (name, text, scenario)
    };
    shipped::scenarios().into_iter().map(read).filter(|(_, _, s)| s.pool.is_some()).collect()
}

fn named(name: &str) -> String {
    shipped_pools().into_iter().find(|(file, ..)| file.contains(name)).unwrap().1
}

fn specs(draw: &Draw) -> Vec<FaultSpec> {
    draw.iter().map(|f| FaultSpec { name: f.id.into(), severity: None }).collect()
}

fn faults(session: &Session) -> Vec<String> {
    session.scenario().unwrap().fault.iter().map(|f| f.name.clone()).collect()
}

fn act(session: &mut Session, action: Value) {
    session.act(&Action::from_value(action.clone()).unwrap()).unwrap_or_else(|r| panic!("{action}: {r:?}"));
}

/// A bench for a class.
fn assigned(text: &str) -> String {
    let head = "[assignment]\nkey = \"bio-101, week 3\"\npassword = \"chalk and slate\"\n\n[pool]";
    digest::handed_out(&text.replace("[pool]", head))
}

const LEAST: &str = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\nname_faults = true\n";

#[test]
fn every_fault_of_the_catalogue_is_in_a_pool_and_so_is_nothing() {
    let all = shipped_pools();
    assert!(all.len() >= 20, "{}", all.len());
    let met: BTreeSet<&str> =
        all.iter().flat_map(|(_, _, s)| s.pool.as_ref().unwrap().members()).map(|f| f.id).collect();
    let missing: Vec<&str> = fault::all().map(|f| f.id).filter(|id| !met.contains(id)).collect();
    assert!(missing.is_empty(), "{missing:?}");
    for (name, _, scenario) in &all {
        assert!(scenario.draws().iter().any(Vec::is_empty), "{name}: nothing is wrong with no seed");
        assert!(scenario.pool.as_ref().unwrap().members().len() >= 6, "{name}");
        // What is to be found has more than one look, but where all of it is on paper.
        let looks: BTreeSet<_> =
            scenario.pool.as_ref().unwrap().members().iter().map(|f| f.impression).collect();
        let paper = looks == BTreeSet::from([fault::Impression::Paper]);
        assert!(looks.len() >= 2 || paper, "{name}: {looks:?}");
    }
}

/// Neither heading nor aim nor brief differs between benches of one kind but for a number, so that none of them tells a fault.
#[test]
fn the_words_of_a_pool_tell_nothing_of_it() {
    let mut by_brief: BTreeMap<String, BTreeSet<Vec<&str>>> = BTreeMap::new();
    let mut titles = BTreeSet::new();
    for (name, _, scenario) in shipped_pools() {
        titles.insert(scenario.title.trim_end_matches(|c: char| c.is_ascii_digit()).to_string());
        let told = format!("{} {} {}", scenario.title, scenario.aim, scenario.brief).to_lowercase();
        for word in
            ["hum", "noise", "thick", "flat", "small pulse", "spike", "strap", "recorder", "range", "filter"]
        {
            assert!(!told.contains(word), "{name}: {word}");
        }
        let members = scenario.pool.as_ref().unwrap().members().iter().map(|f| f.id).collect();
        by_brief.entry(format!("{}{}", scenario.aim, scenario.brief)).or_default().insert(members);
    }
    assert_eq!(titles.len(), 1, "{titles:?}");
    assert!(by_brief.len() <= 5, "{}", by_brief.len());
}

#[test]
fn a_seed_draws_the_same_bench_each_time_and_every_draw_comes_up() {
    for (name, text, scenario) in shipped_pools() {
        let draws = scenario.draws();
        let mut met: BTreeMap<Vec<String>, usize> = BTreeMap::new();
        let many = 60 * draws.len() as u64;
        for seed in 0..many {
            let drawn = scenario.clone().drawn(seed);
            assert_eq!(drawn, scenario.clone().drawn(seed), "{name}");
            *met.entry(drawn.fault.iter().map(|f| f.name.clone()).collect()).or_default() += 1;
        }
        assert_eq!(met.len(), draws.len(), "{name}");
        // Each as often as any other: 60 on the average, and a deviation of five standard deviations is no chance.
        assert!(met.values().all(|n| (60_usize).abs_diff(*n) < 40), "{name}: {met:?}");
        let (a, b) = (Session::new(&text, 11).unwrap(), Session::new(&text, 11).unwrap());
        assert_eq!(faults(&a), faults(&b));
        assert_eq!(a.live().unwrap().last(3.0), b.live().unwrap().last(3.0));
    }
}

/// In a pool of six: at least four of five pairs of students have different faults.
#[test]
fn two_students_of_an_assignment_mostly_have_different_faults() {
    for (name, text, scenario) in shipped_pools() {
        let text = assigned(&text);
        let members = scenario.pool.as_ref().unwrap().members().len();
        let of = |k: u32| {
            let seed = seeds::seed("bio-101, week 3", &format!("student {k}"), 1);
            let read = Scenario::read(&text).unwrap();
            let heart = read.heart(&text, seed);
            read.drawn(heart).fault.iter().map(|f| f.name.clone()).collect::<Vec<_>>()
        };
        let all: Vec<Vec<String>> = (0..120).map(of).collect();
        let pairs = || (0..all.len()).flat_map(|k| (0..k).map(move |l| (k, l)));
        let different = pairs().filter(|(k, l)| all[*k] != all[*l]).count() as f64 / pairs().count() as f64;
        assert!(different >= 0.8, "{name}: {different:.3} with {members} faults");
    }
}

#[test]
fn the_instructors_key_tells_each_students_own_bench() {
    use dicrotic::exchange::class::answers::Key;
    use dicrotic::exchange::class::roster::Entry;
    let text = assigned(&named("find-the-fault-04"));
    let key = Key::open(&text, Some("chalk and slate")).unwrap();
    let mut met = BTreeSet::new();
    for student in ["m-17", "m-18", "m-19", "m-20", "m-21", "m-22"] {
        let entry = Entry { code: student.into(), ..Entry::default() };
        let told = &key.of(&entry, 0).unwrap()[0];
        let seed = seeds::seed("bio-101, week 3", student, 1);
        assert_eq!(told.seed, seed.to_string());
        let session = Session::new(&text, seed).unwrap();
        let ids: Vec<String> = told.faults.iter().map(|(id, _)| id.to_string()).collect();
        assert_eq!(ids, faults(&session), "{student}");
        // What was saved comes back as the same bench.
        let again = Session::restore(&session.save().unwrap()).unwrap();
        assert_eq!(faults(&again), ids);
        met.insert(ids);
    }
    assert!(met.len() >= 3, "{met:?}");
}

/// Before the attempt is over nothing that the page is told depends on what was drawn, but what can be seen at the bench.
#[test]
fn what_is_asked_and_told_is_the_same_whatever_was_drawn() {
    for (name, text, scenario) in shipped_pools() {
        let mut told: BTreeMap<String, String> = BTreeMap::new();
        let every_task = scenario.pool.as_ref().unwrap().tasks.len() < 2;
        for draw in scenario.draws() {
            let session = Session::example_with(&text, 5, &specs(&draw)).unwrap();
            let view = session.view();
            for part in ["asked", "task", "scenario", "help", "hint", "hint_next", "checks", "named", "check"]
            {
                let now = view[part].to_string();
                let before = told.entry(part.into()).or_insert_with(|| now.clone());
                assert!(*before == now || !every_task, "{name}, {part}: {before}\n{now}");
            }
        }
    }
}

/// What a first check says of the way of working says nothing of how many causes there are, nor which skill they call for.
#[test]
fn a_first_check_does_not_tell_whether_anything_is_wrong() {
    let text = named("find-the-fault-08");
    let scenario = Scenario::read(&text).unwrap();
    let mut codes = BTreeSet::new();
    for draw in scenario.draws() {
        let mut session = Session::example_with(&text, 5, &specs(&draw)).unwrap();
        // Something that is not there.
        act(&mut session, json!({"do": "name", "fault": "paused"}));
        script::play(&mut session, &[json!({"wait": 3}), json!({"do": "record"}), json!({"wait": 20})])
            .unwrap();
        script::play(&mut session, &[json!({"do": "stop"}), json!({"do": "check"})]).unwrap();
        let view = session.view();
        assert_eq!(view["over"], false);
        let tested: Vec<&str> = view["check"]["process"]
            .as_array()
            .unwrap()
            .iter()
            .filter_map(|r| r["code"].as_str())
            .filter(|c| c.ends_with("tested"))
            .collect();
        assert_eq!(tested, ["process_untested"], "{draw:?}");
        let name = &view["check"]["steps"][0];
        codes.insert((name["code"].to_string(), name["args"].to_string()));
        let link = session.evidence().unwrap().told()["skills"].to_string();
        assert!(!link.contains("process_cause_remains") && !link.contains("name_wrong"), "{link}");
    }
    assert_eq!(codes.len(), 1, "{codes:?}");
}

#[test]
fn where_nothing_is_wrong_to_name_nothing_is_right_and_a_name_is_not() {
    let text = named("find-the-fault-10");
    let judged = |names: &[&str], looks: &[&str]| {
        let mut session = Session::example_with(&text, 9, &[]).unwrap();
        act(&mut session, json!({"do": "agree"}));
        looks.iter().for_each(|at| act(&mut session, json!({"do": "look", "at": at})));
        names.iter().for_each(|id| act(&mut session, json!({"do": "name", "fault": id})));
        act(&mut session, json!({"do": "check"}));
        let check = session.check().unwrap().clone();
        (check.report.steps[0].code, check.report.passed, check.rubric.ready())
    };
    let three = ["sensor", "cable", "subject"];
    assert_eq!(judged(&[], &three), ("name_right", true, true));
    // Who says so without having looked has guessed.
    assert_eq!(judged(&[], &[]), ("name_right", true, false));
    assert_eq!(judged(&[], &["sensor", "sensor", "sensor"]), ("name_right", true, false));
    assert_eq!(judged(&["paused"], &three), ("name_wrong", false, false));
}

/// A hint where nothing is wrong shows that what was named is not it.
#[test]
fn a_hint_where_nothing_is_wrong_is_a_test_of_what_was_named() {
    let text = named("find-the-fault-10");
    for chosen in [vec![], vec![FaultSpec { name: "strap_tight".into(), severity: None }]] {
        let mut session = Session::example_with(&text, 9, &chosen).unwrap();
        act(&mut session, json!({"do": "name", "fault": "paused"}));
        act(&mut session, json!({"do": "check"}));
        act(&mut session, json!({"do": "hint"}));
        act(&mut session, json!({"do": "hint"}));
        assert!(session.view()["hint"]["locate"]["action"]["do"].is_string(), "{}", session.view()["hint"]);
    }
}

#[test]
fn a_script_finds_names_and_mends_whatever_was_drawn() {
    let text = named("find-the-fault-01");
    let scenario = Scenario::read(&text).unwrap();
    for draw in scenario.draws() {
        let played = script::replay_with(&text, &scenario.attempt[0], &specs(&draw)).unwrap();
        assert_eq!(played.named(), draw.iter().map(|f| f.id).collect::<Vec<_>>());
        assert!(played.check().unwrap().report.passed, "{draw:?}");
    }
    // On a student's own assigned bench the terms tell nothing.
    let assigned = assigned(&text);
    for term in ["@test", "@mend", "@fit"] {
        let mut session = Session::new(&assigned, 3).unwrap();
        assert!(script::play(&mut session, &[json!({"do": term})]).is_err(), "{term}");
    }
    let mut session = Session::new(&assigned, 3).unwrap();
    assert!(script::play(&mut session, &[json!({"do": "name", "fault": "@faults"})]).is_err());
    assert!(script::play(&mut Session::new(&text, 3).unwrap(), &[json!({"do": "@sing"})]).is_err());
}

#[test]
fn the_worked_example_shows_the_fault_that_was_drawn() {
    for (name, text, scenario) in shipped_pools() {
        let mut session = Session::worked(&text).unwrap().unwrap_or_else(|| panic!("{name}: no example"));
        let mut shown = 0;
        let mut last = f64::INFINITY;
        while let Some(step) = session.worked_next() {
            shown += 1;
            last = step["remaining"].as_f64().unwrap();
        }
        assert!(shown > 5 && last == 0.0, "{name}: {shown} shown, {last} left");
        let check = session.check().unwrap_or_else(|| panic!("{name}: the example does not check"));
        assert!(check.report.passed, "{name}");
        let drawn = scenario.drawn(scenario_seed(&text)).fault;
        assert_eq!(session.named().len(), drawn.len(), "{name}");
    }
}

fn scenario_seed(text: &str) -> u64 {
    Scenario::read(text).unwrap().attempt[0].seed
}

#[test]
fn what_a_pool_cannot_be_is_refused_with_its_field() {
    for (pool, field, found) in [
        ("faults = [\"moving\", \"gremlins\"]", "pool.faults", "gremlins"),
        ("faults = [\"moving\"]", "pool.faults", "1 in all"),
        ("faults = [\"moving\", \"talking\"]\ndraw = 2", "pool.faults", "2 in all"),
        ("faults = [\"moving\", \"talking\"]\ndraw = 3", "pool.draw", "3"),
        ("look_alike = \"gremlins\"", "pool.look_alike", "gremlins"),
        ("impression = \"odd\"", "pool.impression", "odd"),
        // A light sensor on the table would tell that it is one of the faults of light.
        ("faults = [\"moving\", \"room_light\"]", "pool.faults", "room_light"),
        (
            "faults = [\"moving\", \"talking\"]\ntasks = [{ kind = \"given_window\", n = [3, 4] }]",
            "pool.tasks[0].n",
            "",
        ),
        (
            "faults = [\"moving\", \"talking\"]\nif_nothing = [{ wait = -1.0 }]",
            "pool.if_nothing[0].wait",
            "-1",
        ),
        ("faults = [\"moving\", \"talking\"]\n[[fault]]\nname = \"paused\"", "fault", ""),
        ("faults = [\"moving\", \"talking\"]\nwobble = 1", "pool.wobble", ""),
    ] {
        let error = Scenario::read(&format!("{LEAST}[pool]\n{pool}\n")).unwrap_err();
        assert!(error.field == field && error.found.contains(found), "{pool}: {error}");
    }
    let light = "[sensor]\nkind = \"optical\"\n[recorder]\nrange_v = 0.5\n[pool]\nfaults = [\"moving\", \"room_light\"]\n";
    assert!(Scenario::read(&format!("{LEAST}{light}")).is_ok());
}

#[test]
fn a_pool_draws_sensor_people_and_task_as_well() {
    let text = format!(
        "{LEAST}[pool]\nimpression = \"wandering\"\nlook_alike = \"moving\"\nfaults = [\"polarity_over\"]\n\
         sensors = [{{ kind = \"ceramic\" }}, {{ kind = \"film\" }}]\npeople = [\"students\", \"everyone\"]\n\
         tasks = [{{ kind = \"own_window\" }}, {{ kind = \"intervals\", n = [8, 12] }}, {{ kind = \"name_fault\" }}]\n"
    );
    let scenario = Scenario::read(&text).unwrap();
    let members: BTreeSet<&str> = scenario.pool.as_ref().unwrap().members().iter().map(|f| f.id).collect();
    for id in [
        "talking",
        "sighing",
        "breath_drift",
        "moving",
        "plug_half_in",
        "cable_taut",
        "tapping",
        "polarity_over",
    ] {
        assert!(members.contains(id), "{id}: {members:?}");
    }
    let mut met: BTreeSet<String> = BTreeSet::new();
    for seed in 0..400 {
        let drawn = scenario.clone().drawn(seed);
        met.insert(format!("{:?} {:?} {:?}", drawn.sensor.kind, drawn.subject.people, drawn.task.kind));
        // The question is the drawn one.
        let reads = Session::new(&text, seed).map(|s| s.view()["task"]["reads"].clone());
        if seed < 6 {
            assert_eq!(
                reads.unwrap() == json!(Reads::Nothing),
                drawn.task.kind.question().reads == Reads::Nothing
            );
        }
    }
    assert_eq!(met.len(), 12, "{met:?}");
    // Another list does not change which fault a seed draws.
    let plain = text.lines().filter(|l| !l.starts_with("sensors")).collect::<Vec<_>>().join("\n");
    let plain = Scenario::read(&plain).unwrap();
    for seed in 0..40 {
        assert_eq!(plain.clone().drawn(seed).fault, scenario.clone().drawn(seed).fault);
    }
}

/// The check has teeth: faults that no test tells apart, and what shows where nothing is wrong.
#[test]
fn the_check_finds_what_cannot_be_told_apart() {
    let text = named("find-the-fault-14").replace("\"talking\"", "\"moving\"");
    let scenario = Scenario::read(&text).unwrap();
    let draw = |id: &str| scenario.draws().into_iter().find(|d| d.iter().any(|f| f.id == id)).unwrap();
    let found = pools::flaws(&scenario, &text, &draw("moving"), pools::SEEDS[0]).join("; ");
    assert!(found.contains("no test of the two tells it from tapping"), "{found}");
    let cold = named("find-the-fault-05").replace("finger_temp_c = 33.0", "finger_temp_c = 24.0");
    let scenario = Scenario::read(&cold).unwrap();
    let found = pools::flaws(&scenario, &cold, &Vec::new(), pools::SEEDS[0]).join("; ");
    assert!(found.contains("finger_cold is at work as well"), "{found}");
}

/// Seeds on which tester and guessers search.
const TRIED: u64 = 8;

#[test]
fn a_tester_finds_the_fault_with_few_tests() {
    let (mut runs, mut wrong, mut slow, mut benches) = (0, Vec::new(), Vec::new(), 0);
    let single = |s: &Scenario| s.pool.as_ref().unwrap().draw == 1;
    for (name, text, _) in shipped_pools().into_iter().filter(|(_, _, s)| single(s)) {
        let mut tests = Vec::new();
        let mut here = 0;
        let searched: Vec<(u64, Vec<String>, tester::Found)> = std::thread::scope(|scope| {
            let text = &text;
            let one = |seed: u64| {
                scope.spawn(move || {
                    let session = Session::new(text, seed).unwrap();
                    (seed, faults(&session), tester::search(session))
                })
            };
            let all: Vec<_> = (0..TRIED).map(|k| one(9000 + 17 * k)).collect();
            all.into_iter().map(|one| one.join().unwrap()).collect()
        });
        for (seed, there, found) in searched {
            tests.push(found.tests);
            let right = found.named.map(String::from).into_iter().collect::<Vec<_>>() == there;
            if !right {
                let told = format!("{name}, seed {seed}: {there:?} taken for {:?}", found.named);
                println!("{told}");
                wrong.push(told);
                here += 1;
            }
        }
        runs += TRIED as usize;
        benches += 1;
        tests.sort_unstable();
        println!("{name}: {here} of {TRIED} wrong; tests {tests:?}");
        if tests[tests.len() / 2] > 5 {
            slow.push(format!("{name}: {tests:?}"));
        }
    }
    println!("{} of {runs} wrong", wrong.len());
    assert!(slow.is_empty(), "{slow:?}");
    assert!(benches >= 20, "{benches}");
    assert!(wrong.len() * 20 <= runs, "{} of {runs}:\n{}", wrong.len(), wrong.join("\n"));
}

/// The tester knows each fault by a test that the catalogue names for it.
#[test]
fn the_tester_uses_the_catalogues_tests() {
    for f in fault::all() {
        assert!(f.tests.contains(&tester::decides(f)), "{}", f.id);
    }
}

/// Who names without a test is not ready: by chance a name is right, and then the tests are wanting. Who names all that can be
/// named is never right.
#[test]
fn a_guesser_does_not_pass() {
    let (mut right, mut runs) = (0, 0);
    for (name, text, scenario) in shipped_pools() {
        let members = scenario.pool.as_ref().unwrap().members();
        for seed in 0..8_u64 {
            let mut session = Session::new(&text, seed).unwrap();
            let everything = seed % 2 == 1;
            let guess = (dicrotic::rng::mix(seed) % members.len() as u64) as usize;
            act(&mut session, json!({"do": "agree"}));
            // So many can be named.
            let guessed = members.iter().enumerate().filter(|(k, _)| *k == guess || (everything && *k < 3));
            for (_, f) in guessed {
                act(&mut session, json!({"do": "name", "fault": f.id}));
            }
            // All else is done as well as can be.
            let rest = scenario.attempt[0].steps.iter();
            let rest: Vec<Value> = rest
                .filter(|s| !matches!(s["do"].as_str(), Some("@test" | "name" | "@mend")))
                .cloned()
                .collect();
            let _ = script::play(&mut session, &rest);
            let Some(check) = session.check() else { continue };
            runs += 1;
            right += usize::from(check.report.passed);
            assert!(!check.rubric.ready(), "{name}, seed {seed}: {:?}", faults(&session));
            assert!(!(check.report.passed && everything), "{name}, seed {seed}");
        }
    }
    println!("{right} of {runs} guesses passed the check, none was ready");
    assert!(runs > 60 && right * 10 <= runs, "{right} of {runs}");
}
