//! What instructors write of their own: formulas, misreadings and hints, from the file to the debrief, the class and back.

mod common_records;
mod students;

use common_records::{record, sheet as empty};
use dicrotic::assess::Criteria;
use dicrotic::assess::asked::judge;
use dicrotic::assess::expression::{MOST_CHARS, NAMES, value};
use dicrotic::assess::hint::TOPICS;
use dicrotic::assess::misreading::{Evidence, own};
use dicrotic::assess::own::OwnMisreading;
use dicrotic::assess::task::Kind;
use dicrotic::assess::verdict::Typed;
use dicrotic::assess::window::allowed;
use dicrotic::deed::Field;
use dicrotic::exchange::class::Class;
use dicrotic::exchange::handin::{Compared, Set, result};
use dicrotic::rng::Stream;
use dicrotic::scenario::digest::{bench_digest, digest, handed_out};
use dicrotic::scenario::{Scenario, compose, text::value_of};
use dicrotic::session::Session;
use proptest::prelude::*;
use serde_json::json;
use students::{ASSIGNMENT, Way, act, attempt_at};

const NUMBERS: [f64; 7] = [20.0, 15.0, 4.0, 80.0, 19.0, 15.2, 75.0];

/// Two signatures and two hints, with words that would be something else if they were not text.
const OWN: &str = r#"
[[misreading]]
name = "twice"
field = "count"
formula = "2 * n_true"
words = "You counted <b>both</b> bumps of a beat."

[[misreading]]
name = "ten_seconds"
field = "multiplier"
formula = "6"
tolerance = 0.01
words = "Six belongs to ten seconds."

[[hint]]
about = "count"
rung = "look"
words = "Have another look at slide 12."

[[hint]]
about = "bumps"
rung = "look"
words = "Slide 13 shows the second bump."
"#;

fn owned() -> String {
    format!("{ASSIGNMENT}{OWN}")
}

#[test]
fn formulas_come_to_the_numbers_that_arithmetic_gives() {
    for (text, expected) in [
        ("2*n+1", 41.0),
        ("1 + 2 * 3", 7.0),
        ("(1 + 2) * 3", 9.0),
        ("10 - 3 - 2", 5.0),
        ("24 / 4 / 2", 3.0),
        ("-2 * -n", 40.0),
        ("--3", 3.0),
        ("60*N/T", 80.0),
        ("rate_true - rate", -5.0),
        ("n_true*60/t_true", 75.0),
        (".5 + 2.", 2.5),
        ("  multiplier\t", 4.0),
    ] {
        assert_eq!(value(text, &NUMBERS).unwrap(), expected, "{text}");
    }
    assert!(!value("n / (t - t)", &NUMBERS).unwrap().is_finite());
    assert!(value("n_true", &[f64::NAN; 7]).unwrap().is_nan());
}

#[test]
fn what_is_no_formula_is_refused_at_its_character() {
    let deep = format!("{}1{}", "(".repeat(13), ")".repeat(13));
    let long = "1+".repeat(MOST_CHARS);
    for (text, at, expected) in [
        ("", 1, "a number, a name or ("),
        ("2**n", 3, "a number, a name or ("),
        ("2 n", 3, "+, -, *, / or the end"),
        ("(n + 1", 7, ")"),
        ("n)", 2, "+, -, *, / or the end"),
        ("n + count", 5, "one of n, t, multiplier, rate, n_true, t_true, rate_true"),
        ("1.2.3", 1, "a number, a name or ("),
        ("n ÷ 2", 3, "+, -, *, / or the end"),
        ("2 + é", 5, "a number, a name or ("),
        ("n^2", 2, "+, -, *, / or the end"),
        ("1e3", 2, "+, -, *, / or the end"),
        (&deep, 13, "at most 12 signs and brackets within one another"),
        (&long, MOST_CHARS + 1, "at most 120 characters"),
    ] {
        let error = value(text, &NUMBERS).unwrap_err();
        assert_eq!((error.at, error.expected.to_string().as_str()), (at, expected), "{text}");
    }
    // As deep as may be.
    assert_eq!(value(&format!("{}1{}", "(".repeat(12), ")".repeat(12)), &NUMBERS), Ok(1.0));
}

proptest! {
    /// Every text gives a number or an error with a place in it.
    #[test]
    fn every_text_gives_a_number_or_an_error(text in "[-+*/() .0-9a-zA-Z_é\\t]{0,130}") {
        if let Err(error) = value(&text, &NUMBERS) {
            prop_assert!((1..=text.chars().count() + 1).contains(&error.at), "{} of {text:?}", error.at);
        }
    }

    /// Sums of products come out as Rust's own arithmetic has them.
    #[test]
    fn sums_of_products_are_those_of_arithmetic(terms in prop::collection::vec((0u8..9, 1u8..9, any::<bool>()), 1..8)) {
        let mut text = String::from("0");
        let mut expected = 0.0;
        for (a, b, plus) in terms {
            text += &format!("{} {a} * n / {b}", if plus { "+" } else { "-" });
            let term = f64::from(a) * NUMBERS[0] / f64::from(b);
            expected = if plus { expected + term } else { expected - term };
        }
        prop_assert_eq!(value(&text, &NUMBERS).unwrap(), expected);
    }
}

#[test]
fn what_cannot_be_looked_for_is_refused_with_its_field() {
    let one = |field: &str, formula: &str, more: &str| {
        let words = if more.contains("words") { "" } else { "words = \"w\"\n" };
        let name = if more.contains("name") { "" } else { "name = \"x\"\n" };
        format!("[[misreading]]\n{name}field = \"{field}\"\nformula = \"{formula}\"\n{words}{more}")
    };
    let hint = |about: &str, rung: &str| {
        format!("[[hint]]\nabout = \"{about}\"\nrung = \"{rung}\"\nwords = \"w\"\n")
    };
    let many = (0..13).map(|k| one("count", "2*n_true", &format!("name = \"x{k}\"\n"))).collect::<String>();
    let long = format!("words = \"{}\"", "w".repeat(601));
    for (extra, field, found) in [
        (one("count", "2**n", ""), "misreading[0].formula", "\"2**n\" at character 3"),
        (one("count", "n_true", ""), "misreading[0].formula", "which a right answer meets in"),
        (one("count", "n", ""), "misreading[0].formula", "which a right answer meets in"),
        (
            one("count", "n_true + 1", "tolerance = 1"),
            "misreading[0].formula",
            "which a right answer meets in",
        ),
        (one("rate", "60 * n / t", ""), "misreading[0].formula", "which a right answer meets in"),
        (one("rate", "n * multiplier", ""), "misreading[0].formula", "which a right answer meets in"),
        (one("seconds", "t_true", ""), "misreading[0].formula", "which a right answer meets in"),
        (
            one("multiplier", "rate_true / n_true", ""),
            "misreading[0].formula",
            "which a right answer meets in",
        ),
        (one("count", "n_true / 0", ""), "misreading[0].formula", "\"n_true / 0\""),
        (one("count", "2*n_true", "tolerance = -1"), "misreading[0].tolerance", "-1"),
        (one("uncertainty", "2*n_true", ""), "misreading[0].field", "\"uncertainty\""),
        (one("count", "2*n_true", "name = \"Two Words\""), "misreading[0].name", "\"Two Words\""),
        (one("count", "2*n_true", "words = \" \""), "misreading[0].words", "0 characters"),
        (one("count", "2*n_true", &long), "misreading[0].words", "601 characters"),
        (one("count", "2*n_true", "") + &one("rate", "n", ""), "misreading[1].name", "\"x\""),
        (one("count", "2*n_true", "colour = 1"), "misreading[0].colour", ""),
        (many, "misreading", "13 of them"),
        (hint("bumpz", "look"), "hint[0].about", "\"bumpz\""),
        (hint("bumps", "answer"), "hint[0].rung", "\"answer\""),
        (
            hint("bumps", "look") + &hint("bumps", "look"),
            "hint[1].about",
            "\"bumps\" once more on the rung look",
        ),
    ] {
        let error = Scenario::read(&format!("{ASSIGNMENT}{extra}")).expect_err(&extra);
        assert_eq!(error.field, field, "{extra}: {error}");
        assert!(error.found.contains(found), "{extra}: {error}");
    }
    // One formula in other words is the same misreading twice; both are named.
    let named = |name: &str, field: &str, formula: &str| one(field, formula, &format!("name = \"{name}\"\n"));
    for (a, b) in [
        ("60 * (n - 1) / t", "60 * (n - 1) / t"),
        ("60 * (n - 1) / t", "(n-1)*60/T"),
        ("60 * (n - 1) / t", "(60.0 * n - 60) / t"),
        ("2 * n_true", "n_true + n_true"),
        ("n_true + 1 - 4", "-(3 - n_true)"),
    ] {
        let field = if a.contains("true") { "count" } else { "rate" };
        let text = format!("{ASSIGNMENT}{}{}", named("fence", field, a), named("posts", field, b));
        let error = Scenario::read(&text).expect_err(b);
        assert_eq!(error.field, "misreading[1].formula", "{error}");
        for told in ["\"fence\"", "\"posts\"", a, b] {
            assert!(error.found.contains(told), "{error}");
        }
    }
    for (a, b) in [("2 * n_true", "2 * n"), ("n_true + 2", "n_true - 2"), ("2 * n_true", "2.01 * n_true")] {
        let text = format!("{ASSIGNMENT}{}{}", named("a", "count", a), named("b", "count", b));
        assert!(Scenario::read(&text).is_ok(), "{a}, {b}");
    }
    let other = named("a", "count", "2*n_true") + &named("b", "rate", "2*n_true");
    assert!(Scenario::read(&format!("{ASSIGNMENT}{other}")).is_ok(), "another answer");
    // The wrong way that is right in one window alone is still a wrong way; where that window is asked for it is none.
    let twice = one("rate", "2 * n", "");
    assert!(Scenario::read(&format!("{ASSIGNMENT}{twice}")).is_ok());
    let task = "[task]\nkind = \"given_window\"\nseconds = [30]\n\n[pass]\nrecord_s = 40\n\n";
    let asked = ASSIGNMENT.replace("[subject]", &format!("{task}[subject]"));
    let error = Scenario::read(&format!("{asked}{twice}")).unwrap_err();
    assert!(error.found.contains("a right answer meets in 15 of 15 windows"), "{error}");
    let error = Scenario::read(&format!(
        "{}{}",
        ASSIGNMENT.replace("[subject]", "[task]\nkind = \"read_range\"\n\n[subject]"),
        one("count", "2*n_true", "")
    ));
    assert!(error.unwrap_err().expected.contains("asks for no count"));
}

#[test]
fn every_topic_has_words_and_every_words_a_topic() {
    let text = include_str!("../www/texts/en/later/hints.ftl");
    let mut there: Vec<&str> =
        text.lines().filter_map(|line| line.strip_prefix("hint-")?.strip_suffix(" =")).collect();
    there.retain(|name| *name != "any");
    there.sort_unstable();
    let mut topics = TOPICS.to_vec();
    topics.sort_unstable();
    assert_eq!(topics, there);
}

#[test]
fn an_own_misreading_is_named_in_the_instructors_words_and_goes_before_the_built_in_one() {
    let (session, _) = attempt_at(ASSIGNMENT, "A 1", 1, Way::Bumps);
    assert_eq!(session.view()["check"]["misreading"]["id"], "bumps_counted");
    let (session, _) = attempt_at(&owned(), "A 1", 1, Way::Bumps);
    let told = session.view()["check"]["misreading"].clone();
    assert_eq!(
        told,
        json!({"id": "own-twice", "step": "count", "distance": 0.0, "args": {}, "name": "twice",
            "words": "You counted <b>both</b> bumps of a beat."})
    );
    assert_eq!(session.evidence().unwrap().told()["misreading"], "own-twice");
    let (session, _) = attempt_at(&owned(), "A 1", 1, Way::Six);
    assert_eq!(session.view()["check"]["misreading"]["id"], "own-ten_seconds");
    // Who is right is told of none, whatever is looked for; and what no own signature meets is named as ever.
    let (session, _) = attempt_at(&owned(), "A 1", 1, Way::Right);
    assert!(session.check().unwrap().report.passed);
    assert_eq!(session.view()["check"]["misreading"], json!(null));
    let (session, _) = attempt_at(&owned(), "A 1", 1, Way::Fence);
    assert_eq!(session.view()["check"]["misreading"]["id"], "fence");
}

#[test]
fn own_hints_stand_in_the_place_of_the_built_in_words_on_their_rung_alone() {
    let (mut session, _) = attempt_at(&owned(), "A 1", 1, Way::Bumps);
    act(&mut session, json!({"do": "hint"}));
    let hint = session.view()["hint"].clone();
    assert_eq!((&hint["rung"], &hint["words"]), (&json!("look"), &json!("Slide 13 shows the second bump.")));
    act(&mut session, json!({"do": "hint"}));
    let hint = session.view()["hint"].clone();
    assert_eq!((&hint["rung"], hint.get("words")), (&json!("locate"), None));
    assert_eq!(session.view()["hints_taken"][0]["words"], "Slide 13 shows the second bump.");
    // A topic that has none of its own has those of its step.
    let (mut session, _) = attempt_at(&owned(), "A 1", 1, Way::Fence);
    act(&mut session, json!({"do": "hint"}));
    assert_eq!(session.view()["hint"]["words"], "Have another look at slide 12.");
    let (mut session, _) = attempt_at(ASSIGNMENT, "A 1", 1, Way::Fence);
    act(&mut session, json!({"do": "hint"}));
    assert_eq!(session.view()["hint"].get("words"), None);
}

#[test]
fn they_are_handed_out_and_are_no_part_of_the_bench() {
    let owned = owned();
    let out = handed_out(&owned);
    assert!(out.contains("Slide 13") && out.contains("2 * n_true"));
    assert_eq!((digest(&out), bench_digest(&out)), (digest(&owned), bench_digest(ASSIGNMENT)));
    assert_ne!(digest(&owned), digest(ASSIGNMENT));
    let written = compose::of_json(&value_of(&owned).unwrap().to_string()).unwrap();
    assert_eq!(Scenario::read(&written).unwrap(), Scenario::read(&owned).unwrap());
    assert_eq!(written.matches("\n[[misreading]]\n").count(), 2, "{written}");
}

#[test]
fn results_carry_the_name_and_a_class_counts_it_also_where_it_is_written_afterwards() {
    let handed = |scenario: &str, code: &str, way| {
        let (session, about) = attempt_at(scenario, code, 1, way);
        result::write(&session, &about).unwrap()
    };
    let graded = result::read(&handed(&owned(), "A 1", Way::Bumps)).unwrap().grade().unwrap();
    assert!(graded.verified(), "{:?}", graded.doubts);
    assert_eq!((graded.outcome.own.as_deref(), graded.outcome.misreading), (Some("twice"), None));
    // A file that claims another name is doubted.
    let made = handed(&owned(), "A 1", Way::Bumps).replace("own-twice", "own-thrice");
    assert!(!result::read(&made).unwrap().grade().unwrap().verified());
    // The class was handed out without it; the instructor writes it afterwards, and results are judged by what is set now.
    let mut class = Class::default();
    class.set.add("own", &owned()).unwrap();
    for (code, way) in [("A 1", Way::Bumps), ("A 2", Way::Bumps), ("A 3", Way::Right), ("A 4", Way::Fence)] {
        let text = handed(ASSIGNMENT, code, way);
        let graded = result::read(&text).unwrap().grade_by(&class.set).unwrap();
        assert_eq!((graded.compared, graded.verified()), (Compared::Changed, true), "{:?}", graded.doubts);
        class.take(Default::default(), graded);
    }
    let told = class.told();
    assert_eq!(told["misreadings"][0], json!({"id": "own-twice", "first": 2, "last": 2}));
    let line = &class.lines()[0];
    assert_eq!(line.misreadings, ["own-twice"]);
    // A code is replayed by what is set.
    let (session, about) = attempt_at(ASSIGNMENT, "A 1", 1, Way::Bumps);
    let code = session.code(&about).unwrap().write();
    let mut set = Set::default();
    set.add("own", &owned()).unwrap();
    let handed = dicrotic::exchange::handin::Handed::of_code(&code, &set, |_| None).unwrap();
    assert_eq!(handed.grade_by(&set).unwrap().outcome.own.as_deref(), Some("twice"));
}

fn of(field: Field, formula: &str) -> OwnMisreading {
    OwnMisreading { name: formula.into(), field, formula: formula.into(), tolerance: None, words: "w".into() }
}

/// Over hearts, windows and rates: who answers by the signature is named, who answers right never is.
#[test]
fn signatures_are_named_over_windows_and_hearts_and_right_answers_never() {
    let own = [
        of(Field::Count, "2*n_true + 1"),
        of(Field::Count, "n_true / 2 - 1"),
        of(Field::Multiplier, "t_true / 10"),
        of(Field::Rate, "n * 10"),
        of(Field::Seconds, "t_true + 5"),
    ];
    let mut draws = Stream::new(11, "own");
    let (mut named, mut made, mut right) = ([0; 5], [0; 5], 0);
    for seed in 0..12 {
        let record = record(45.0 + 8.0 * seed as f64, 40.0, 1.0, seed, false);
        for _ in 0..20 {
            let a = draws.range(2.0, 60.0);
            let b = a + draws.range(11.0, 40.0);
            let count = allowed(&record.peaks, a, b, 0.06, 0.0).exact as f64;
            let seconds = ((b - a) * 10.0).round() / 10.0;
            let typed = |k: usize| {
                let count = [2.0 * count + 1.0, (count / 2.0 - 1.0).round(), count, count, count][k.min(4)];
                let seconds = if k == 4 { seconds + 5.0 } else { seconds };
                let multiplier = if k == 2 { seconds / 10.0 } else { (6000.0 / seconds).round() / 100.0 };
                let rate = if k == 3 { 10.0 * count } else { (60.0 * count / seconds).round() };
                Typed {
                    count: Some(count),
                    seconds: Some(seconds),
                    multiplier: Some(multiplier),
                    rate: Some(rate),
                }
            };
            let criteria = Criteria { window_s: 10.0, record_s: 1.0, ..Criteria::default() };
            for k in 0..6 {
                let mut put = empty(Kind::OwnWindow, &criteria, &record, 130.0);
                put.cursors = Some((a, b));
                put.typed = if k == 5 { Typed { count: Some(count), ..typed(2) } } else { typed(k) };
                if k == 5 {
                    put.typed.multiplier = Some((6000.0 / seconds).round() / 100.0);
                }
                let report = judge(&put);
                let evidence = Evidence {
                    breaths_per_min: record.breaths_per_min,
                    ..Evidence::of_numbers(&put, &report)
                };
                let found = own::named(&evidence, &own).map(|(one, _)| one.name.as_str());
                if k == 5 {
                    assert_eq!(found, None, "{:?} in {a}..{b}", put.typed);
                    right += 1;
                    continue;
                }
                // What its signature makes may be right all the same: then there is nothing to name.
                let step = own[k].step().unwrap();
                if report.steps.iter().any(|f| f.step == step && f.is_wrong()) {
                    made[k] += 1;
                    named[k] += usize::from(found == Some(own[k].name.as_str()));
                }
            }
        }
    }
    println!("named {named:?} of {made:?}; {right} right answers, none named");
    assert_eq!(right, 240);
    for k in 0..own.len() {
        assert!(made[k] > 150 && named[k] == made[k], "{}: {} of {}", own[k].name, named[k], made[k]);
    }
}

#[test]
fn before_the_last_check_the_page_is_told_the_instructors_words_and_no_number_of_the_truth() {
    // Two signatures whose distance would tell the count: both are near what was typed.
    let near = "[[misreading]]\nname = \"near\"\nfield = \"count\"\nformula = \"n_true + 3\"\ntolerance = 2.4\nwords = \"w\"\n";
    let (session, _) = attempt_at(&format!("{ASSIGNMENT}{near}"), "A 1", 1, Way::Fence);
    let check = session.view()["check"].clone();
    assert_eq!((&check["over"], &check["truth"]), (&json!(false), &json!(null)));
    assert_eq!(
        check["misreading"],
        json!({"id": "own-near", "step": "count", "distance": 0.0, "args": {}, "name": "near", "words": "w"})
    );
    let told = session.view().to_string();
    for word in NAMES.iter().filter(|name| name.ends_with("_true")) {
        assert!(!told.contains(word), "a formula reached the page");
    }
    let restored: Session = Session::restore(&session.save().unwrap()).unwrap();
    assert_eq!(restored.view()["check"]["misreading"], check["misreading"]);
}
