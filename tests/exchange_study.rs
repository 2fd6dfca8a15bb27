//! A study of a class: who is dealt where, how hard the forms are, what the figures are worth, what is told of whom.

use std::collections::{BTreeMap, BTreeSet};

use dicrotic::exchange::class::items::{self, Seen};
use dicrotic::exchange::handin::{Graded, Set, result};
use dicrotic::exchange::study::came::{Consent, Flow, sort};
use dicrotic::exchange::study::deal::{ARMS, Arm, BLOCK, Placed, deal};
use dicrotic::exchange::study::distribution::{noncentral_t_below, t_below, t_quantile};
use dicrotic::exchange::study::effect::{Effect, Sample, adjusted, difference, hedges, unbiased};
use dicrotic::exchange::study::forms::{FormError, forms, look_alikes};
use dicrotic::exchange::study::plan::{OCCASIONS, Study, StudyError, Wanted, file_name};
use dicrotic::exchange::study::rows::{self, Row, RowError};
use dicrotic::rng::Stream;
use dicrotic::scenario::plan::Plan;
use dicrotic::scenario::{Scenario, fault};
use dicrotic::session::compact::About;
use dicrotic::session::{Session, script, seeds};
use serde_json::json;

#[path = "shipped/mod.rs"]
mod shipped;
#[path = "pools/tester.rs"]
mod tester;

const WORD: &str = "oak and ash 7";

fn codes(n: usize) -> Vec<String> {
    (1..=n).map(|k| format!("S{k:03}")).collect()
}

/// The pools that the README names for a test.
fn pools() -> Vec<(String, String)> {
    let all = shipped::scenarios();
    let named = |number: &str| all.iter().find(|(name, _)| name.starts_with(number)).unwrap().clone();
    ["64-", "65-", "69-", "74-"].map(named).into()
}

fn close(a: f64, b: f64, by: f64) {
    assert!((a - b).abs() <= by, "{a} and {b} differ by more than {by}");
}

#[test]
fn arms_and_orders_are_balanced_in_each_block() {
    let all = deal(WORD, &codes(5 * BLOCK + 7), &[]);
    assert_eq!(all.len(), 5 * BLOCK + 7);
    for block in all.chunks(BLOCK) {
        for n in 1..=block.len() {
            let with = block[..n].iter().filter(|one| one.arm == Arm::With).count();
            assert!(with.abs_diff(n - with) <= 1, "{with} of {n}");
        }
        if block.len() < BLOCK {
            continue;
        }
        // Every form comes first, second and third equally often in each arm, and right before each other equally often.
        let mut places: BTreeMap<(Arm, usize, usize), usize> = BTreeMap::new();
        let mut before: BTreeMap<(usize, usize), usize> = BTreeMap::new();
        for one in block {
            (0..3).for_each(|nth| *places.entry((one.arm, nth, one.form(nth))).or_default() += 1);
            (0..2).for_each(|nth| *before.entry((one.form(nth), one.form(nth + 1))).or_default() += 1);
        }
        assert_eq!((places.len(), before.len()), (18, 6));
        assert!(
            places.values().all(|n| *n == 2) && before.values().all(|n| *n == 4),
            "{places:?} {before:?}"
        );
    }
}

#[test]
fn the_same_word_and_students_give_the_same_places_whatever_the_order_of_the_list() {
    let list = codes(40);
    let all = deal(WORD, &list, &[]);
    let turned: Vec<String> = list.iter().rev().map(|code| format!(" {} ", code.to_lowercase())).collect();
    let place = |all: &[Placed]| -> BTreeMap<String, (Arm, usize)> {
        all.iter().map(|one| (one.code.trim().to_uppercase(), (one.arm, one.order))).collect()
    };
    assert_eq!(place(&all), place(&deal(WORD, &turned, &[])));
    // Another word deals anew: about half of the class is elsewhere.
    let other = place(&deal("elm and yew 3", &list, &[]));
    let moved = place(&all).iter().filter(|(code, (arm, _))| other[*code].0 != *arm).count();
    assert!((8..=32).contains(&moved), "{moved} of 40");
    // Neither the list's order nor the code tells the arm: neighbours are as often apart as together.
    let arms = place(&all);
    let apart = list.windows(2).filter(|two| arms[&two[0]].0 != arms[&two[1]].0).count();
    assert!((10..=30).contains(&apart), "{apart} of 39");
    // Who comes late changes nobody's place, and is in no place twice.
    let late = deal(WORD, &codes(45), &all);
    assert_eq!(late[..40], all[..]);
    assert_eq!(place(&late).len(), 45);
}

#[test]
fn forms_have_other_faults_of_the_same_pools_and_are_as_hard_as_each_other() {
    let all = forms(&pools()).unwrap();
    let of = |text: &str| Scenario::read(text).unwrap();
    let members = |form: usize| -> Vec<Vec<&'static str>> {
        all[form].iter().map(|text| of(text).pool.unwrap().members().iter().map(|f| f.id).collect()).collect()
    };
    let mut met = BTreeSet::new();
    for (form, texts) in all.iter().enumerate() {
        assert_eq!(texts.len(), 4);
        for (bench, text) in texts.iter().enumerate() {
            let (scenario, source) = (of(text), of(&pools()[bench].1));
            assert!(scenario.attempt.is_empty() && scenario.pool.as_ref().unwrap().with_nothing);
            assert_eq!((scenario.brief, scenario.task), (source.brief, source.task));
            for id in &members(form)[bench] {
                assert!(source.pool.as_ref().unwrap().members().iter().any(|f| f.id == *id));
                assert!(met.insert(*id), "{id} is met twice");
            }
        }
    }
    assert_eq!(met.len(), 24);
    let hard =
        |form: usize| members(form).concat().iter().map(|id| look_alikes(fault::named(id).unwrap())).sum();
    let sums: [usize; 3] = [0, 1, 2].map(hard);
    assert!(sums.iter().max().unwrap() - sums.iter().min().unwrap() <= 1, "{sums:?}");
}

/// Whoever knows the catalogue's tests and nothing of the bench needs about as many of them in each form, and finds about as much.
#[test]
fn a_tester_finds_the_three_forms_as_hard_as_each_other() {
    const SEEDS: u64 = 6;
    let all = forms(&pools()).unwrap();
    let of_form = |texts: &Vec<String>| {
        let mut found: Vec<(usize, bool)> = Vec::new();
        for (text, seed) in texts.iter().flat_map(|text| (0..SEEDS).map(move |seed| (text, seed))) {
            let session = Session::new(text, seed).unwrap();
            let there = session.scenario().unwrap().fault.first().map(|f| f.name.clone());
            let search = tester::search(session);
            found.push((search.tests, search.named.map(String::from) == there));
        }
        let tests = found.iter().map(|(tests, _)| *tests as f64).sum::<f64>() / found.len() as f64;
        (tests, found.iter().filter(|(_, right)| *right).count())
    };
    let figures: Vec<(f64, usize)> = std::thread::scope(|scope| {
        let runs: Vec<_> = all.iter().map(|texts| scope.spawn(move || of_form(texts))).collect();
        runs.into_iter().map(|run| run.join().unwrap()).collect()
    });
    let tests = figures.iter().map(|figure| figure.0);
    let apart = tests.clone().fold(0.0, f64::max) - tests.fold(f64::MAX, f64::min);
    // Twenty-four searches a form; with about two tests spread in one search, means of equal forms differ by 1.4 in one of twenty.
    assert!(apart <= 1.5, "{figures:?}");
    assert!(figures.iter().all(|(_, right)| *right >= 22), "of 24: {figures:?}");
}

#[test]
fn what_makes_no_test_is_named_with_its_reason() {
    let all = shipped::scenarios();
    let named = |number: &str| all.iter().find(|(name, _)| name.starts_with(number)).unwrap().clone();
    assert_eq!(forms(&[]), Err(FormError::Number { found: 0 }));
    let error = forms(&[named("63-"), named("65-")]).unwrap_err().to_string();
    assert!(error.contains("65-") && error.contains("power_strip_off is also in 63-"), "{error}");
    let error = forms(&[named("04-")]).unwrap_err().to_string();
    assert!(error.contains("no [pool]"), "{error}");
    // Two at once of six: three for each form would need nine.
    let error = forms(&[named("82-")]).unwrap_err().to_string();
    assert!(error.contains("6 faults; 9 are needed, 3 for each"), "{error}");
    let (from, text) = named("64-");
    let broken = text.replace("level = 2", "level = 77");
    let error = forms(&[(from, broken)]).unwrap_err().to_string();
    assert!(error.contains("64-") && error.contains("level"), "{error}");
}

fn planned(tests: &[(String, String)]) -> Study {
    let wanted = Wanted { id: "pulse-1", title: "Pulse", word: WORD, password: "", tests, rehearsal: &[] };
    Study::plan(&wanted).unwrap()
}

#[test]
fn a_study_comes_back_from_its_file_and_tells_no_word() {
    let mut study = planned(&pools()[..1]);
    study.deal(WORD, &codes(5)).unwrap();
    let text = study.written();
    assert!(!text.contains(WORD) && !text.contains("oak"), "{text}");
    assert_eq!(Study::read(&text).unwrap(), study);
    assert_eq!(study.deal("elm and yew 3", &codes(9)), Err(StudyError::OtherWord));
    assert_eq!(study.tests.len(), 9);
    assert_eq!(study.benches().unwrap().len(), 9, "each bench is known by its digest");
    for (wrong, told) in [
        ("[]".to_string(), "not the file of a study"),
        (text.replace("dicrotic-study", "a-cake"), "format \"a-cake\""),
        (text.replace("\"version\":1", "\"version\":9"), "form 9"),
        (text.replace("\"order\":", "\"order\":7"), "order 7"),
        (text.replace("\"arm\":\"with\"", "\"arm\":\"both\""), "both"),
        (text[..text.len() / 2].to_string(), "not the file of a study"),
    ] {
        let error = Study::read(&wrong).unwrap_err().to_string();
        assert!(error.contains(told), "{told}: {error}");
    }
    let short = Wanted { id: "p", title: "t", word: "short", tests: &pools()[..1], ..Wanted::default() };
    let error = Study::plan(&short).unwrap_err().to_string();
    assert!(error.contains("word") && error.contains("8 to 60"), "{error}");
}

#[test]
fn the_t_distribution_is_that_of_the_tables() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.2: upper critical values for .025.
    for (df, t) in [(1.0, 12.706), (3.0, 3.182), (10.0, 2.228), (30.0, 2.042), (100.0, 1.984)] {
        close(t_quantile(0.975, df), t, 5e-4);
        close(t_below(t, df), 0.975, 5e-5);
        close(t_below(-t, df), 0.025, 5e-5);
    }
    close(t_quantile(0.5, 7.0), 0.0, 1e-12);
    for (t, df) in [(-3.0, 4.0), (0.0, 9.0), (1.5, 40.0)] {
        close(noncentral_t_below(t, df, 0.0), t_below(t, df), 1e-12);
    }
}

#[test]
fn hedges_g_is_that_of_a_published_example() {
    // Borenstein et al. 2009, Introduction to Meta-Analysis, chapter 4: means 103 and 100, spreads 5.5 and 4.5, fifty people each.
    let [a, b] = [(103.0, 5.5), (100.0, 4.5)].map(|(mean, sd)| Sample { n: 50, mean, sd });
    close(unbiased(98.0), 0.9923, 5e-5);
    let g = hedges(&a, &b).unwrap();
    close(g.value, 0.5924, 5e-5);
    // Their interval is by the normal approximation, .5924 +- 1.96 * .2028; the exact one of the effect lies near it.
    close(g.low, 0.5924 - 1.96 * 0.2028, 0.01);
    close(g.high, 0.5924 + 1.96 * 0.2028, 0.01);
    // The difference of 3 with its pooled spread of 5.0249 and the table's t of 98 degrees of freedom, 1.984.
    let points = difference(&a, &b).unwrap();
    close(points.value, 3.0, 1e-12);
    close(points.high - 3.0, 1.984 * 5.0249 * (2.0_f64 / 50.0).sqrt(), 1e-3);
    assert_eq!(hedges(&a, &Sample { n: 1, mean: 3.0, sd: 0.0 }), None);
    assert_eq!(hedges(&Sample { sd: 0.0, ..a }, &Sample { sd: 0.0, ..b }), None);
}

#[test]
fn the_adjusted_difference_is_that_of_an_example_worked_by_hand() {
    // Within the arms: squares before 2 + 2, products 5 + 4, squares after 14 + 8. Slope 9 / 4; difference (6 - 5) - 9/4 (2 - 3);
    // rest (22 - 81/4) / 3; error^2 = rest (1/3 + 1/3 + 1/4); t of 3 degrees of freedom 3.182 (table above).
    let with = [(1.0, 4.0), (2.0, 5.0), (3.0, 9.0)];
    let without = [(2.0, 3.0), (3.0, 5.0), (4.0, 7.0)];
    let found = adjusted(&with, &without).unwrap();
    close(found.value, 3.25, 1e-12);
    let error = ((22.0 - 20.25) / 3.0 * (2.0 / 3.0 + 0.25_f64)).sqrt();
    close(found.high - found.value, 3.182 * error, 1e-3);
    close(found.value - found.low, 3.182 * error, 1e-3);
    assert_eq!(adjusted(&[(1.0, 4.0), (1.0, 5.0)], &[(2.0, 3.0), (2.0, 5.0)]), None, "no spread before");
}

/// A class of so many in each arm: abilities, two tests that tell them with error, and what rehearsal adds.
fn simulated(stream: &mut Stream, people: usize, added: f64) -> Effect {
    let mut arm = |added: f64| -> Vec<(f64, f64)> {
        let mut one = || {
            let able = 50.0 + 12.0 * stream.normal();
            (able + 8.0 * stream.normal(), able + 5.0 + added + 8.0 * stream.normal())
        };
        (0..people).map(|_| one()).collect()
    };
    let with = arm(added);
    let without = arm(0.0);
    Effect::of(&with, &without)
}

/// Of 2,000 studies of each kind the share whose interval holds the truth lies within what chance allows around 95 %: 3.3 times
/// the binomial's spread of .49 % (one of a thousand such tests would fail by chance).
#[test]
fn intervals_hold_the_truth_in_ninety_five_of_a_hundred_simulated_classes() {
    const STUDIES: usize = 2000;
    let within = 3.3 * (0.95 * 0.05 / STUDIES as f64).sqrt();
    // The spread of a gain is that of two errors.
    let spread = (2.0_f64 * 8.0 * 8.0).sqrt();
    for (people, added) in [(12, 0.0), (15, 6.0), (30, 12.0)] {
        let mut stream = Stream::new(7, &format!("study {people} {added}"));
        let mut held = [0; 3];
        let (mut mean, mut widths) = (0.0, [0.0; 2]);
        for _ in 0..STUDIES {
            let effect = simulated(&mut stream, people, added);
            let all = [effect.g, effect.difference, effect.adjusted].map(Option::unwrap);
            for (held, (estimate, truth)) in
                held.iter_mut().zip(all.iter().zip([added / spread, added, added]))
            {
                *held += usize::from(estimate.holds(truth));
            }
            mean += all[0].value / STUDIES as f64;
            widths[0] += all[1].high - all[1].low;
            widths[1] += all[2].high - all[2].low;
        }
        for held in held {
            let share = held as f64 / STUDIES as f64;
            assert!((share - 0.95).abs() <= within, "{people} people, {added}: {share}");
        }
        // g is without bias: four times the spread of its mean, of about sqrt(2 / n) a study.
        close(mean, added / spread, 4.0 * (2.0 / people as f64 / STUDIES as f64).sqrt() * 1.2);
        assert!(widths[1] < widths[0], "the adjusted difference is the narrower one: {widths:?}");
    }
}

fn row(person: usize, arm: Arm, first: f64, second: f64, later: Option<f64>) -> Row {
    Row { person: person.to_string(), arm, first, second, later }
}

#[test]
fn a_table_comes_back_as_it_was_written_and_what_is_wrong_in_one_is_named() {
    let all: Vec<Row> = (0..12)
        .map(|k| row(k + 1, ARMS[k % 2], 40.0 + k as f64, 50.25 + k as f64, (k % 3 > 0).then_some(33.5)))
        .collect();
    let text = rows::written(&all);
    assert_eq!(rows::read(&text).unwrap(), all);
    // Spreadsheets of some countries write semicolons.
    assert_eq!(rows::read(&text.replace(',', ";")).unwrap(), all);
    for (wrong, told) in [
        (text.replace("second", "zweiter"), "line 1: found \"person,arm,first,zweiter,later\""),
        (
            text.replace("3,with,42.00", "3,both,42.00"),
            "line 4, arm: found \"both\"; expected with or without",
        ),
        (text.replace("42.00", "4 2"), "line 4, first: found \"4 2\""),
        (text.replace("42.00", "NaN"), "line 4, first: found \"NaN\""),
        (text.replace("52.25", "152.25"), "line 4, second: found \"152.25\""),
        (text.replace("3,with,42.00,52.25,33.50", "3,with,42.00,52.25,33.50,1"), "after the last column"),
        (text.replace("3,with", "\"3,with"), "a quote opens"),
    ] {
        let error = rows::read(&wrong).map(|rows| rows.len()).unwrap_err().to_string();
        assert!(error.contains(told), "{told}: {error}");
    }
    assert!(matches!(rows::read(""), Err(RowError::Head { .. })));
}

#[test]
fn of_too_few_people_no_effect_is_told() {
    let arm = |arm: Arm, n: usize, later: usize| -> Vec<Row> {
        (0..n)
            .map(|k| {
                row(k, arm, 40.0 + (k * k) as f64, 50.0 + k as f64, (k < later).then_some(45.0 + k as f64))
            })
            .collect()
    };
    let all = [arm(Arm::With, 6, 6), arm(Arm::Without, 5, 4)].concat();
    let effects = rows::effects(&all, 5);
    assert!(effects.second.is_some() && effects.later.is_none());
    assert!(rows::effects(&all, 6).second.is_none());
    assert_eq!(rows::effects(&all, 4).later.unwrap().gain.map(|arm| arm.n), [6, 4]);
}

/// Five students and three items; all figures worked out by hand.
#[test]
fn items_are_those_of_an_example_worked_by_hand() {
    let answers = [
        // item 1, 2, 3 of each student
        [true, true, true],
        [true, true, false],
        [true, false, false],
        [false, true, false],
        [false, false, false],
    ];
    let mut seen: Vec<Seen> = Vec::new();
    for (student, right) in answers.into_iter().enumerate() {
        for (k, right) in right.into_iter().enumerate() {
            let misreading = (!right).then(|| if student == 4 { "b" } else { "a" }.to_string());
            let minutes = [4.0, 1.0, 9.0, 2.0, 3.0][student] + k as f64;
            seen.push(Seen {
                named: format!("item {}", k + 1),
                faults: Vec::new(),
                test: student.to_string(),
                right,
                misreading,
                minutes,
            });
        }
    }
    let table = items::of(&seen, 2);
    let first = &table[0];
    assert_eq!((first.n, first.right, first.minutes), (Some(5), Some(0.6), Some(3.0)));
    // Item 1 is 1 1 1 0 0, the rest 2 1 0 1 0 of two: products about the means .4 * 1.2 + .4 * .2 - .4 * .8 - .6 * .2 + .6 * .8 =
    // .6; squares 1.2 and 2.8; r = .6 / sqrt(3.36).
    close(first.discrimination.unwrap(), 0.6 / 3.36_f64.sqrt(), 1e-12);
    // Wrong are the fourth, misreading a, and the fifth, misreading b: of two as frequent the first by name.
    assert_eq!(first.misreading, Some(("a".into(), 1)));
    assert_eq!(table[2].misreading, Some(("a".into(), 3)));
    // Of too few nothing is told but that there is such an item.
    let few = items::of(&seen, 6);
    assert_eq!(few.len(), 3);
    assert!(
        few.iter()
            .all(|i| i.n.is_none() && i.right.is_none() && i.misreading.is_none() && i.minutes.is_none())
    );
    // All right or all wrong tells nobody apart.
    let same: Vec<Seen> = seen.iter().map(|one| Seen { right: true, ..one.clone() }).collect();
    assert!(items::of(&same, 2).iter().all(|item| item.discrimination.is_none() && item.right == Some(1.0)));
    let text = items::table(&table, 2, &|name| format!("=misreading {name}"));
    assert_eq!(text.lines().count(), 4);
    assert_eq!(text.lines().nth(1), Some("\"item 1: nothing\",5,0.60,0.33,\"'=misreading a\",1,3.0"));
    assert!(items::table(&few, 6, &str::to_string).contains("\"item 1: nothing\",fewer than 6,,,,,\n"));
}

/// The benches of one form of one test, with the instructor's password in plain letters, as their own file has it.
fn benches(study: &Study, name: &str) -> Vec<String> {
    let course = study.courses().into_iter().find(|(called, _)| called == name).unwrap().1;
    let plain = |text: &str| {
        let hash = text.split('"').find(|part| part.starts_with("sha256:")).unwrap();
        text.replace(hash, PASSWORD)
    };
    Plan::read(course).unwrap().part.iter().map(|part| plain(&part.scenario)).collect()
}

const PASSWORD: &str = "chalk and slate";

/// A student's result of a bench: done well, or not at all; with what they answered.
fn result(text: &str, student: &str, well: bool, consent: Option<bool>, ended_s: u64) -> (String, String) {
    let scenario = Scenario::read(text).unwrap();
    let mut session = Session::new(text, seeds::seed(&scenario.assignment.unwrap().key, student, 1)).unwrap();
    if let Some(given) = consent {
        script::play(&mut session, &[json!({"do": "consent", "given": given})]).unwrap();
    }
    let steps = if well {
        json!([{"do": "agree"}, {"wait": 8}, {"do": "@test"}, {"do": "name", "fault": "@faults"}, {"do": "@mend"}, {"wait": 5},
            {"do": "@fit"}, {"do": "record"}, {"wait": 20}, {"do": "stop"}, {"do": "cursor", "which": "a", "t": "@beat+0.3"},
            {"do": "cursor", "which": "b", "t": "@beat+16.2"}, {"do": "answer", "field": "count", "text": "@count"},
            {"do": "answer", "field": "seconds", "text": "@seconds"}, {"do": "answer", "field": "multiplier", "text": "@multiplier"},
            {"do": "answer", "field": "rate", "text": "@rate"}, {"do": "check"}])
    } else {
        json!([{"do": "name", "fault": "@other"}, {"do": "@mend"}, {"wait": 5}, {"do": "@fit"}, {"do": "record"}, {"wait": 3},
            {"do": "stop"}, {"do": "answer", "field": "count", "text": "70"}, {"do": "check"}])
    };
    script::play(&mut session, steps.as_array().unwrap()).unwrap();
    let about = About { student: student.into(), tries: 1, begun_s: ended_s - 600, ended_s };
    (format!("{student} {}", scenario.id), result::write(&session, &about).unwrap())
}

fn graded(study: &Study, results: &[(String, String)]) -> Vec<(String, Graded)> {
    let mut set = Set::default();
    for (name, course) in study.courses() {
        set.add_any(&name, course).unwrap();
    }
    let one =
        |(file, text): &(String, String)| (file.clone(), result::read(text).unwrap().grade_by(&set).unwrap());
    results.iter().map(one).collect()
}

/// A class of eight with two benches a test, of whom one says no, one is not asked, one leaves after the first test, and one takes
/// a yes back in the second test.
#[test]
fn what_came_in_is_sorted_by_person_consent_and_test() {
    let tests = &pools()[..2];
    let wanted = Wanted {
        id: "pulse-1",
        title: "Pulse",
        word: WORD,
        password: PASSWORD,
        tests,
        rehearsal: &pools()[2..3],
    };
    let mut study = Study::plan(&wanted).unwrap();
    study.deal(WORD, &codes(8)).unwrap();
    let mut all = Vec::new();
    for (k, placed) in study.placed.iter().enumerate() {
        for (nth, occasion) in OCCASIONS.into_iter().enumerate() {
            let consent = match (k, nth) {
                (0, _) | (3, 1) => Some(false),
                (1, _) => None,
                _ => Some(true),
            };
            if (k == 2 && nth > 0) || (k == 4 && nth == 2) {
                continue;
            }
            let name = file_name(occasion, placed.form(nth));
            for (bench, text) in benches(&study, &name).iter().enumerate() {
                // Nobody can do it first; then who rehearsed can, and the others half of it.
                let well = nth > 0 && (placed.arm == Arm::With || bench == 0);
                all.push(result(text, &placed.code, well, consent, 1_800_000_000 + 86_400 * nth as u64));
            }
        }
    }
    // What does not belong: another student's form, nobody's ID, a bench that is none of the study, a second time at one bench.
    let [five, six] = [&study.placed[5], &study.placed[6]];
    let other = (0..3).find(|form| *form != five.form(0)).unwrap();
    all.push(result(
        &benches(&study, &file_name(OCCASIONS[0], other))[0],
        &five.code,
        false,
        None,
        1_800_000_000,
    ));
    all.push(result(&benches(&study, "first-a")[0], "S999", false, Some(true), 1_800_000_000));
    let strange = benches(&study, "first-a")[0].replace("pulse-1-first-a1", "elsewhere");
    all.push(result(&strange, &six.code, false, Some(true), 1_800_000_000));
    let own = &benches(&study, &file_name(OCCASIONS[0], six.form(0)))[0];
    all.push(result(own, &six.code, true, Some(true), 1_800_009_000));
    let found = graded(&study, &all);
    let mut came = sort(&study, &found).unwrap();
    let wrong: Vec<&str> = came.wrong.iter().map(|(_, why)| why.as_str()).collect();
    let all_wrong = wrong.join("\n");
    assert_eq!(wrong.len(), 4, "{all_wrong}");
    for told in [
        "it is of first-",
        "\"S999\" has no place",
        "not a test of the study \"pulse-1\"",
        "ended first counts",
    ] {
        assert!(all_wrong.contains(told), "{told}: {all_wrong}");
    }
    let said: Vec<Consent> = came.people.iter().map(|person| person.consent).collect();
    let (yes, no) = (Consent::Yes, Consent::No);
    assert_eq!(said, [no, Consent::Silent, yes, no, yes, yes, yes, yes]);
    let flow = came.flow();
    let sum = |of: fn(&Flow) -> usize| flow.iter().map(of).sum::<usize>();
    assert_eq!([sum(|f| f.placed), sum(|f| f.refused), sum(|f| f.silent)], [8, 2, 1]);
    assert_eq!([sum(|f| f.absent), sum(|f| f.incomplete), sum(|f| f.used), sum(|f| f.later)], [0, 1, 4, 3]);
    // Scores are the points of the rubric over both benches; who did both well has nearly all of them.
    for person in came.people.iter().filter(|person| person.agreed() && person.score[1].is_some()) {
        let points = |nth: usize| {
            let name = format!("{} pulse-1-{}", person.code, file_name(OCCASIONS[nth], person.forms[nth]));
            // The second time at a bench, which is the last that came, does not count.
            let own = found[..found.len() - 1].iter().filter(|(file, _)| file.starts_with(&name));
            let all: Vec<u32> = own.map(|(_, graded)| graded.score.unwrap()).collect();
            assert_eq!(all.len(), 2, "{name}");
            all.iter().sum::<u32>()
        };
        for nth in 0..2 {
            close(person.score[nth].unwrap(), f64::from(points(nth)) / 40.0 * 100.0, 1e-9);
        }
        let [first, second] = [person.score[0].unwrap(), person.score[1].unwrap()];
        assert!(
            first < second && (second > 90.0) == (person.arm == Arm::With),
            "{:?} {first} {second}",
            person.arm
        );
    }
    // The table: nobody but who agreed and did both tests, with numbers that do not follow the list, and no code anywhere.
    let (table, few) = rows::of(&came.people, WORD, 2);
    assert_eq!((table.len(), few), (4, [0, 0]));
    let text = rows::written(&table);
    assert!(study.placed.iter().all(|one| !text.contains(&one.code)), "{text}");
    assert_eq!(rows::of(&came.people, WORD, 2).0, table);
    // Items: those of who agreed; the same fault is one item in every test.
    let seen = came.seen();
    let answers: usize =
        came.people.iter().filter(|person| person.agreed()).map(|person| person.seen.len()).sum();
    assert_eq!((seen.len(), answers), (2 * (1 + 2 + 3 + 3 + 3), seen.len()));
    let listed = items::of(&seen, 1);
    assert_eq!(listed.iter().filter_map(|item| item.n).sum::<usize>(), seen.len());
    assert!(listed.iter().all(|item| {
        ["A1", "A2", "B1", "B2", "C1", "C2"].contains(&item.named.as_str()) && item.faults.len() <= 1
    }));
    // With a higher bound an arm of too few is not told of at all.
    let arms = ARMS.map(|arm| table.iter().filter(|row| row.arm == arm).count());
    let (fewer, few) = rows::of(&came.people, WORD, arms[0].max(arms[1]) + 1);
    assert_eq!((fewer.len(), few), (0, arms));
    // Who takes a yes back later is left out and counted.
    let back =
        came.people.iter().find(|person| person.agreed() && person.score[2].is_some()).unwrap().code.clone();
    assert!(came.withdraw(&format!(" {} ", back.to_lowercase())) && !came.withdraw("S999"));
    assert_eq!(rows::of(&came.people, WORD, 1).0.len(), 3);
    assert_eq!(came.flow().iter().map(|arm| arm.refused).sum::<usize>(), 3);
}
