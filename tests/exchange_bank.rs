//! A question bank: what is offered as a misreading is named so by the judge, what is right passes, answers lie apart, the same seed
//! gives the same bytes, and nobody's title gets out of its place.

use dicrotic::assess::misreading::Misreading;
use dicrotic::exchange::bank::{APART_BPM, Bank, BankError, Form, MOST_WRONG, Question, Words, table};
use dicrotic::exchange::{NamedFile, zip};
use dicrotic::session::seeds::seed;
use dicrotic::session::still::{CLEAR_S, Reading, Still, StillError, WINDOWS_S, still};
use dicrotic::session::{Action, Session};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::thread;

const REST: &str = include_str!("../scenarios/04-rest-pulse.toml");
/// Very different ones: at rest, with nothing wired, with a cold finger, uneven, after exercise, with a broken sensor.
const SCENARIOS: [&str; 6] = [
    REST,
    include_str!("../scenarios/01-first-wiring.toml"),
    include_str!("../scenarios/16-small-pulse-a.toml"),
    include_str!("../scenarios/51-uneven-intervals.toml"),
    include_str!("../scenarios/50-after-exercise.toml"),
    include_str!("../scenarios/53-whole-bench.toml"),
];

/// So many questions of all scenarios in turn, on all processors.
fn questions(count: u32, seed: u64) -> Vec<Question> {
    let numbers: Vec<u32> = (1..=count).collect();
    let of = |n: &u32| Question::new(SCENARIOS[*n as usize % SCENARIOS.len()], seed, *n).expect("a question");
    thread::scope(|all| {
        let parts: Vec<_> = numbers
            .chunks(count.div_ceil(4) as usize)
            .map(|part| all.spawn(move || part.iter().map(of).collect::<Vec<_>>()))
            .collect();
        parts.into_iter().flat_map(|part| part.join().expect("questions")).collect()
    })
}

fn words(question: &Question, title: &str) -> Words {
    Words {
        title: title.into(),
        question: format!("How many, of {title}?"),
        alt: format!("A trace of {title}"),
        answers: question.answers.iter().map(|a| format!("{} beats/min", a.reading.rate)).collect(),
        feedback: question.answers.iter().map(|a| format!("{:?} of {title}", a.slip)).collect(),
    }
}

fn bank(form: Form, all: &[Question], title: &str) -> Vec<NamedFile> {
    let mut bank = Bank::new(form, "en", '.');
    for question in all {
        bank.add(question, words(question, title)).expect("a question with its words");
    }
    bank.files()
}

fn text<'a>(files: &'a [NamedFile], name: &str) -> &'a str {
    let file = files.iter().find(|(one, _)| one == name).unwrap_or_else(|| panic!("{name} is not there"));
    std::str::from_utf8(&file.1).expect("text")
}

/// Types a reading as a student would, checks the worksheet, and tells whether it passed, and which misreading is named.
fn checked(still: &Still, reading: &Reading) -> (bool, Option<Misreading>) {
    let mut session: Session = still.session().clone();
    let mut act = |action: Value| {
        session
            .act(&Action::from_value(action.clone()).expect("an action"))
            .unwrap_or_else(|r| panic!("{action}: {r:?}"));
    };
    let Reading { count, seconds, multiplier, rate } = *reading;
    for (field, value) in [("count", count), ("seconds", seconds), ("multiplier", multiplier), ("rate", rate)]
    {
        act(json!({"do": "answer", "field": field, "text": format!("{value}")}));
    }
    act(json!({"do": "check"}));
    let check = session.check().expect("a check");
    (check.report.passed, check.misreading.as_ref().map(|h| h.id))
}

#[test]
fn two_hundred_questions_have_one_right_answer_and_wrong_ones_that_the_judge_explains() {
    let mut seen: BTreeMap<&str, u32> = BTreeMap::new();
    let all = questions(200, 7);
    for question in &all {
        let here = format!("question {}", question.number);
        let still = &question.still;
        let right: Vec<_> = question.answers.iter().filter(|a| a.slip.is_none()).collect();
        assert_eq!(right.len(), 1, "{here}");
        assert!((4..=MOST_WRONG + 1).contains(&question.answers.len()), "{here}");
        assert_eq!(checked(still, &right[0].reading), (true, None), "{here}");
        for answer in question.answers.iter().filter(|a| a.slip.is_some()) {
            let slip = answer.slip.expect("a slip");
            assert_eq!(checked(still, &answer.reading), (false, Some(slip)), "{here}: {answer:?}");
            assert!((answer.reading.rate - right[0].reading.rate).abs() > still.tolerance_bpm, "{here}");
            *seen.entry(slip.name()).or_default() += 1;
        }
        for (k, one) in question.answers.iter().enumerate() {
            assert_eq!(one.reading.rate, one.reading.rate.round(), "{here}");
            for other in &question.answers[..k] {
                assert!(
                    (one.reading.rate - other.reading.rate).abs() >= APART_BPM,
                    "{here}: {one:?} {other:?}"
                );
            }
        }
    }
    // Every kind of misreading is there, and the right answer in every place.
    let names = [
        "beats_missed",
        "bumps_counted",
        "not_scaled",
        "one_too_few",
        "one_too_many",
        "other_multiplier",
        "time_at_b",
        "whole_recording",
    ];
    assert_eq!(seen.keys().copied().collect::<Vec<_>>(), names, "{seen:?}");
    let places: Vec<usize> = (0..MOST_WRONG).map(|k| all.iter().filter(|q| q.right() == k).count()).collect();
    assert!(places.iter().all(|n| *n >= 20), "{places:?}");
    let mut ids: Vec<&str> = all.iter().map(|q| q.id.as_str()).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), 200);
}

#[test]
fn the_window_has_clear_ends_lies_on_marks_of_the_axis_and_holds_the_true_beats() {
    for question in questions(30, 3) {
        let still = &question.still;
        let (a, b) = (still.a_s, still.b_s);
        assert!(a >= 2.0 && b < still.duration_s && WINDOWS_S.contains(&(b - a)), "{a} {b}");
        // The axis has a mark every half second.
        assert_eq!((2.0 * a, 2.0 * b), ((2.0 * a).round(), (2.0 * b).round()));
        let peaks = still.session().reference_peaks();
        assert!(peaks.iter().all(|p| p.sure));
        for t in [a, b] {
            let nearest = peaks.iter().map(|p| (p.at_s - t).abs()).fold(f64::INFINITY, f64::min);
            assert!(nearest >= CLEAR_S, "a beat {nearest} s from {t} s");
        }
        let inside = peaks.iter().filter(|p| p.at_s > a && p.at_s < b).count() as f64;
        assert_eq!(still.right.count, inside);
        // 60 n / T: the definition of a rate.
        assert!(
            (still.right.rate - 60.0 * inside / (b - a)).abs() < 1e-9,
            "a whole number by the choice of windows"
        );
    }
}

#[test]
fn the_same_seed_gives_the_same_bytes_and_another_seed_other_strips() {
    for form in [Form::Qti, Form::Csv] {
        let made = |seed| zip::store(&bank(form, &questions(3, seed), "A title")).expect("an archive");
        assert_eq!(made(5), made(5));
        assert_ne!(made(5), made(6));
    }
}

#[test]
fn what_a_picture_and_its_alternative_are_told_gives_no_count_away() {
    for question in questions(6, 11) {
        let told = question.told();
        let seen = told["seen"].as_object().expect("what is seen");
        assert_eq!(seen.keys().collect::<Vec<_>>(), ["a", "b", "division", "seconds"]);
        assert_eq!(seen["division"], json!(2.0));
        let drawn = question.picture("A title", '.');
        // Nothing is marked but A and B; the trace is one path.
        assert_eq!(drawn.matches("font-weight=\"bold\"").count(), 2, "{drawn}");
        assert_eq!(drawn.matches("clip-path=").count(), 1);
        assert!(drawn.contains(">A</text>") && drawn.contains(">B</text>") && drawn.contains(" s</text>"));
        // A line of the grid at each division: 0, 2, 4 ...
        let lines = (question.still.duration_s / 2.0).floor() as u32;
        assert!(drawn.contains(&format!(">{}", 2 * lines)), "{drawn}");
    }
}

#[test]
fn no_title_gets_out_of_its_place() {
    let title = "</p><script>alert(1)</script> & \"quoted\" 'too' ]]> =cmd|' /C calc'!A0\u{0}\u{ffff}";
    let all = questions(2, 1);
    let qti = bank(Form::Qti, &all, title);
    for (name, bytes) in &qti {
        let text = std::str::from_utf8(bytes).expect("text");
        assert!(!text.contains("<script") && !text.contains('\u{0}') && !text.contains('\u{ffff}'), "{name}");
        assert!(
            name == "imsmanifest.xml"
                || text.contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;quoted&quot;"),
            "{name}: {text}"
        );
    }
    // A cell that begins as a formula has an apostrophe before it, in quotes those that stand in it are doubled.
    let csv = bank(Form::Csv, &all, "=1+1,\"x\"\ny");
    let table = text(&csv, table::NAME);
    assert_eq!(table.lines().count(), 3, "{table}");
    assert!(table.contains("\"'=1+1,\"\"x\"\" y\""), "{table}");
}

#[test]
fn a_package_lists_its_items_with_their_pictures_and_each_answer_has_its_word() {
    let all = questions(4, 2);
    let files = bank(Form::Qti, &all, "Trace");
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    // Common practice: the manifest first.
    assert_eq!(names[0], "imsmanifest.xml");
    let manifest = text(&files, "imsmanifest.xml");
    for name in &names[1..] {
        assert_eq!(manifest.matches(&format!("<file href=\"{name}\"/>")).count(), 1, "{name}");
    }
    for question in &all {
        let item = text(&files, &format!("items/{}.xml", question.id));
        let right = question.right() + 1;
        assert!(
            item.contains(&format!("<qti-correct-response>\n      <qti-value>ANSWER-{right}</qti-value>")),
            "{item}"
        );
        for (k, answer) in question.answers.iter().enumerate() {
            let choice = format!(
                "<qti-simple-choice identifier=\"ANSWER-{}\">{} beats/min<",
                k + 1,
                answer.reading.rate
            );
            assert_eq!(item.matches(&choice).count(), 1, "{item}");
            let feedback =
                format!("outcome-identifier=\"FEEDBACK\" identifier=\"ANSWER-{}\" show-hide=\"show\"", k + 1);
            assert_eq!(item.matches(&feedback).count(), 1, "{item}");
        }
        assert!(names.contains(&format!("pictures/{}.svg", question.id).as_str()));
    }
}

#[test]
fn a_table_has_a_line_for_each_question_and_as_many_cells_as_its_head() {
    let all = questions(5, 9);
    let files = bank(Form::Csv, &all, "Trace");
    let mut lines = text(&files, table::NAME).lines();
    let head: Vec<String> = cells(lines.next().expect("a head"));
    assert_eq!(head.join(","), table::head());
    for question in &all {
        let line = cells(lines.next().expect("a line"));
        assert_eq!(line.len(), head.len());
        let at = |name: &str| line[head.iter().position(|h| h == name).expect("a column")].as_str();
        assert_eq!(at("id"), question.id);
        assert_eq!(at("right"), (question.right() + 1).to_string());
        assert!(files.iter().any(|(name, _)| name == at("picture")));
        for k in 0..=MOST_WRONG {
            let answer = question.answers.get(k);
            let wanted = answer.map(|a| format!("{} beats/min", a.reading.rate)).unwrap_or_default();
            assert_eq!(at(&format!("answer_{}", k + 1)), wanted);
            let slip = answer.and_then(|a| a.slip).map(|m| m.name()).unwrap_or_default();
            assert_eq!(at(&format!("misreading_{}", k + 1)), slip);
        }
    }
    assert_eq!(lines.next(), None);
}

/// The cells of a line (RFC 4180, section 2).
fn cells(line: &str) -> Vec<String> {
    let (mut all, mut cell, mut quoted) = (Vec::new(), String::new(), false);
    let mut signs = line.chars().peekable();
    while let Some(c) = signs.next() {
        match c {
            '"' if quoted && signs.peek() == Some(&'"') => cell.extend(signs.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => all.push(std::mem::take(&mut cell)),
            c => cell.push(c),
        }
    }
    all.push(cell);
    all
}

#[test]
fn an_assigned_bench_gives_traces_of_hearts_that_no_student_has() {
    let assigned =
        format!("{REST}\n[assignment]\nkey = \"week-3\"\npassword = \"open sesame\"\nseeds = \"same\"\n");
    let made: Vec<Question> = (1..=3).map(|n| Question::new(&assigned, 4, n).expect("a question")).collect();
    let gaps = |beats: Vec<f64>| beats.windows(2).map(|w| w[1] - w[0]).collect::<Vec<f64>>();
    let beating = |text: &str, heart: u64| {
        let mut session = Session::new(text, heart).expect("a bench");
        session.run_long(40_000);
        gaps(session.chain().expect("a bench").truth().iter().map(|beat| beat.peak_s).collect())
    };
    // What all students of this assignment have, and whoever opens it with one of these numbers.
    let hearts = [seed("week-3", "", 1)].into_iter().chain(0..10);
    let students: Vec<Vec<f64>> = hearts.map(|heart| beating(&assigned, heart)).collect();
    for question in &made {
        let session = question.still.session();
        let own = gaps(session.reference_peaks().iter().map(|p| p.at_s).collect());
        let same = |there: &Vec<f64>| {
            there.windows(3).any(|w| w.iter().zip(&own[1..4]).all(|(x, y)| (x - y).abs() < 1e-6))
        };
        assert!(!students.iter().any(same));
        // A heart that is the same would be known.
        assert!(same(&beating(REST, session.seed())));
    }
    let files = bank(Form::Csv, &made, "Trace");
    for (name, bytes) in &files {
        let text = std::str::from_utf8(bytes).expect("text");
        assert!(!text.contains("sesame") && !text.contains("week-3"), "{name}");
    }
}

#[test]
fn what_cannot_be_asked_is_told_with_its_reason() {
    let wrong = Question::new("id = 3", 1, 1).expect_err("no scenario");
    assert!(wrong.to_string().contains("id"), "{wrong}");
    // A pulse of a millivolt that the strap keeps out of the finger.
    let faint =
        REST.replace("pulse_mv = 40.0", "pulse_mv = 1.0\nsystolic_mmhg = 70.0\ndiastolic_mmhg = 40.0");
    assert_ne!(faint, REST);
    let told = still(&faint, 1).expect_err("nothing to be seen");
    assert!(
        matches!(told, StillError::Unclear { .. }) && told.to_string().starts_with("subject: none of"),
        "{told}"
    );

    let question = Question::new(REST, 1, 1).expect("a question");
    let mut bank = Bank::new(Form::Csv, "en", '.');
    let of = |change: fn(&mut Words)| {
        let mut all = words(&question, "Trace");
        change(&mut all);
        all
    };
    for (field, bad) in [
        ("answers", of(|w| drop(w.answers.pop()))),
        ("feedback", of(|w| w.feedback.push("one more".into()))),
        ("alt", of(|w| w.alt = " ".into())),
        ("title", of(|w| w.title = "x".repeat(2001))),
    ] {
        let told = bank.add(&question, bad).expect_err("words that do not fit");
        assert!(
            matches!(&told, BankError::Words { number: 1, field: found, .. } if *found == field),
            "{told}"
        );
    }
    for _ in 0..500 {
        bank.add(&question, words(&question, "Trace")).expect("one of five hundred");
    }
    assert_eq!(bank.add(&question, words(&question, "Trace")), Err(BankError::Full));
}
