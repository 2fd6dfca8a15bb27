//! A class: each student in the right line, what was decided for them, what changes when it is graded anew, saved and opened.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use dicrotic::exchange::class::saved::SavedError;
use dicrotic::exchange::class::talk::Change;
use dicrotic::exchange::class::{Care, Class, Failed, Line, Pick, Source, State, course, roster, saved};
use dicrotic::exchange::handin::{Graded, Handed, HandinError, result};
use dicrotic::plain;
use dicrotic::session::action::{Action, Page};
use dicrotic::session::compact::About;
use students::three_hundred::{Deed, LISTED, came, code, deed, roster as list, state};
use students::{ASSIGNMENT, Way, careful};

mod students;

/// Grades something as whoever takes in a class does.
fn take(class: &mut Class, source: Source) {
    let handed = if source.code.is_empty() {
        result::read(&source.text)
    } else {
        Handed::of_code(&source.code, &class.set, |_| None)
    };
    match handed.and_then(|handed| handed.grade_by(&class.set)) {
        Ok(graded) => {
            // It goes from one thread to another as JSON.
            let text = plain::given(&graded).to_string();
            class.take(source, plain::from_json(&text).unwrap());
        }
        Err(error) => class.fail(source, &error),
    }
}

fn assigned(text: &str) -> Class {
    let mut class = Class::default();
    class.set.put("assignment.toml", text).unwrap();
    class
}

fn sources(k: u32) -> Vec<Source> {
    came(k)
        .into_iter()
        .map(|came| match came.text.split_once("D3.") {
            Some((_, code)) if came.file.ends_with(".txt") => {
                Source { file: came.file, code: format!("D3.{}", code.trim()), ..Source::default() }
            }
            _ => Source { file: came.file, text: came.text, ..Source::default() },
        })
        .collect()
}

/// The class of three hundred, graded once for all tests.
fn three_hundred() -> &'static Class {
    static CLASS: OnceLock<Class> = OnceLock::new();
    CLASS.get_or_init(|| {
        let mut class = assigned(ASSIGNMENT);
        class.roster = roster::read(&list()).unwrap();
        (0..LISTED).flat_map(sources).for_each(|source| take(&mut class, source));
        // One who stands on no list, and one file of which nobody knows whose it is.
        let (session, about) = careful(ASSIGNMENT, "guest", 1, Way::Right);
        let text = result::write(&session, &about).unwrap();
        take(&mut class, Source { file: "guest.json".into(), text, ..Source::default() });
        take(
            &mut class,
            Source { file: "cake.json".into(), text: "{\"format\": \"a cake\"}".into(), ..Source::default() },
        );
        class
    })
}

fn line(lines: &[Line], code: &str) -> Line {
    lines.iter().find(|line| line.code == code).unwrap_or_else(|| panic!("no line of {code}")).clone()
}

#[test]
fn each_of_three_hundred_is_in_the_right_line() {
    let class = three_hundred();
    let lines = class.lines();
    assert_eq!(lines.len() as u32, LISTED + 1);
    for k in 0..LISTED {
        let line = &lines[k as usize];
        assert_eq!((line.code.as_str(), line.listed), (code(k).as_str(), true));
        assert_eq!(line.state, state(k), "{}: {:?}: {line:?}", line.code, deed(k));
        assert_eq!(line.group, ["Group A", "Group B", "Group C"][k as usize % 3]);
        assert_eq!(line.points.is_some(), line.chosen.is_some());
        match deed(k) {
            Deed::Twice => assert_eq!((line.results.len(), line.passes), (2, 1)),
            Deed::Again => assert_eq!(line.results.len(), 1, "handed in again, counted once"),
            Deed::Easier | Deed::OtherBench => assert_eq!(line.against, ["other_bench"]),
            Deed::Copied => assert!(line.copied.len() == 1 && line.against == ["other_seed"], "{line:?}"),
            Deed::Edited => assert_eq!(line.doubts, ["differs"]),
            Deed::Damaged | Deed::EasierCode => assert_eq!((line.results.len(), line.failed.len()), (0, 1)),
            _ => {}
        }
    }
    let guest = &lines[LISTED as usize];
    assert_eq!((guest.code.as_str(), guest.listed, guest.state), ("guest", false, State::Ready));
    // Of a file that says nothing of itself nobody is blamed.
    assert!(class.failed.iter().any(|failed| failed.source.file == "cake.json" && failed.student.is_empty()));
}

#[test]
fn what_came_first_is_what_is_talked_about() {
    let class = three_hundred();
    let [wrong, misreadings, trace] = class.talk();
    let counts: BTreeMap<&str, (usize, usize)> =
        misreadings.iter().map(|one| (one.id.as_str(), (one.first, one.last))).collect();
    let rows = LISTED as usize / 20;
    // Six at once, at first of those who learn, and in the first of two tries; who forged does not count.
    assert_eq!(counts["other_multiplier"], (4 * rows, 2 * rows));
    assert_eq!(counts["bumps_counted"], (2 * rows, 2 * rows));
    assert_eq!(misreadings[0].id, "other_multiplier", "most frequent first: {misreadings:?}");
    assert!(wrong.iter().any(|one| one.id == "multiplier" && one.first == 4 * rows && one.last == 2 * rows));
    // The charger that nobody unplugged; a hand that slipped may be there beside it.
    assert_eq!((trace[0].id.as_str(), trace[0].last), ("hum", rows));
    let told = class.told();
    assert_eq!(told["states"]["absent"], rows);
    // The guest is ready and stands on no list: the numbers are of those who stand there.
    assert_eq!(told["states"]["ready"], 9 * rows);
    assert_eq!(told["counted"], LISTED);
    let mut without = class.clone();
    without.roster.clear();
    let told_without = without.told();
    assert_eq!(told_without["counted"].as_u64(), Some(without.lines().len() as u64));
    assert_eq!(told_without["states"]["ready"], 9 * rows + 1);
    let groups = told["groups"].as_array().unwrap();
    assert_eq!(
        groups.iter().map(|g| g["group"].as_str().unwrap()).collect::<Vec<_>>(),
        ["Group A", "Group B", "Group C", ""]
    );
    assert_eq!(groups.iter().map(|g| g["n"].as_u64().unwrap()).collect::<Vec<_>>(), [100, 100, 100, 1]);
    assert_eq!(groups[0]["misreading"], "other_multiplier");
}

#[test]
fn whoever_is_counted_in_what_to_talk_about_is_found_by_it() {
    let class = three_hundred();
    let lines = class.lines();
    let [wrong, misreadings, trace] = class.talk();
    for (kind, often) in [("wrong", wrong), ("misreadings", misreadings), ("trace", trace)] {
        for one in often {
            let name = format!("{kind}:{}", one.id);
            let theirs: usize =
                lines.iter().filter(|line| line.met.contains(&name)).map(|line| line.results.len()).sum();
            let n = lines.iter().filter(|line| line.met.contains(&name)).count();
            assert!(
                n > 0 && n <= one.first + one.last && one.first.max(one.last) <= theirs,
                "{name}: {n} of {one:?}"
            );
        }
    }
    // The same once more, student by student.
    let six = (0..LISTED).filter(|k| matches!(deed(*k), Deed::Once(Way::Six))).count();
    assert!(six > 0);
    for k in (0..LISTED).filter(|k| matches!(deed(*k), Deed::Once(Way::Six))) {
        assert!(lines[k as usize].met.contains(&"misreadings:other_multiplier".to_string()), "{}", code(k));
    }
    // The partner of a copy is told on both sides.
    for line in lines.iter().filter(|line| !line.copied.is_empty()) {
        for other in &line.copied {
            let partner =
                lines.iter().find(|l| l.code == *other).unwrap_or_else(|| panic!("no line of {other}"));
            assert!(partner.copied.contains(&line.code), "{} and {other}", line.code);
        }
    }
}

#[test]
fn an_easier_bench_under_the_same_heading_is_told_before_it_is_set_and_can_be_taken_back() {
    let easier = students::faultless();
    let mut class = assigned(ASSIGNMENT);
    assert!(class.set.rivals(ASSIGNMENT).unwrap().is_empty(), "the same once more is no rival");
    let rivals: Vec<String> = class.set.rivals(&easier).unwrap().iter().map(|one| one.from.clone()).collect();
    assert_eq!(rivals, ["assignment.toml"]);
    class.give("easier.toml", &easier).unwrap();
    let told = class.set_told();
    assert_eq!(told.as_array().unwrap().len(), 2);
    assert!(told[0]["rival"] == true && told[1]["rival"] == true, "{told}");
    assert!(
        !told[0]["faults"].as_array().unwrap().is_empty() && told[1]["faults"].as_array().unwrap().is_empty()
    );
    class.take_back(told[1]["bench"].as_str().unwrap());
    assert_eq!(class.set.all().len(), 1);
    assert_eq!(class.set_told()[0]["rival"], false);
}

fn class_of(attempts: &[(&str, u32, Way)]) -> Class {
    let mut class = assigned(ASSIGNMENT);
    for (k, (student, tries, way)) in attempts.iter().enumerate() {
        let (session, mut about) = careful(ASSIGNMENT, student, *tries, *way);
        about.ended_s = 1_790_100_000 + 1000 * k as u64;
        let text = result::write(&session, &about).unwrap();
        take(&mut class, Source { file: format!("{k}.json"), text, ..Source::default() });
    }
    class
}

#[test]
fn the_best_attempt_or_the_last_one_stands_for_a_student() {
    let mut class = class_of(&[("Ada", 1, Way::Six), ("Ada", 2, Way::Right), ("ada", 3, Way::Bumps)]);
    let ada = line(&class.lines(), "Ada");
    assert_eq!((ada.chosen, ada.state), (Some(1), State::Ready));
    assert!(ada.first_wrong.is_none() && ada.points.is_some());
    class.terms.pick = Pick::Last;
    let ada = line(&class.lines(), "Ada");
    assert_eq!((ada.chosen, ada.state), (Some(2), State::Tried));
    assert_eq!(ada.misreadings, ["bumps_counted"]);
    class.terms.pick = Pick::Best;
    class.terms.benches = 2;
    assert_eq!(line(&class.lines(), "Ada").state, State::Tried);
}

#[test]
fn of_equal_attempts_the_earlier_stands() {
    let mut class = class_of(&[("Ada", 1, Way::Right), ("Ada", 2, Way::Right)]);
    assert_eq!(class.graded[0].score, class.graded[1].score, "equal attempts");
    assert_eq!(line(&class.lines(), "Ada").chosen, Some(0));
    class.terms.pick = Pick::Last;
    assert_eq!(line(&class.lines(), "Ada").chosen, Some(1));
    // Who is late by the class's own day does not count at all.
    class.terms.pick = Pick::Best;
    class.terms.due_s = 1_790_100_500;
    assert_eq!(line(&class.lines(), "Ada").chosen, Some(0));
}

#[test]
fn of_one_log_with_two_times_the_first_end_counts_whatever_the_files_are_called() {
    let (session, about) = careful(ASSIGNMENT, "Ada", 1, Way::Right);
    let ended = |ended_s: u64| {
        let about = About { ended_s, ..about.clone() };
        let code = session.code(&about).unwrap().write();
        let file = result::write(&session, &about).unwrap();
        (code, file)
    };
    let due = 1_790_200_000;
    let ((early, early_file), (late, _)) = (ended(due - 500), ended(due + 500));
    let of = |came: [(&str, &str); 2]| {
        let mut class = assigned(ASSIGNMENT);
        class.terms.due_s = due;
        for (file, text) in came {
            let (code, text) = if text.starts_with('{') { ("", text) } else { (text, "") };
            let source =
                Source { file: file.into(), code: code.into(), text: text.into(), ..Source::default() };
            take(&mut class, source);
        }
        let line = line(&class.lines(), "Ada");
        let about = &class.graded[line.chosen.unwrap()].about;
        (about.ended_s, line.state, line.results.len(), line.remarks)
    };
    let none: &[&str] = &[];
    for came in
        [[("a", &early[..]), ("b", &late)], [("a", &late), ("b", &early)], [("a", &late), ("b", &early_file)]]
    {
        let (end, state, results, remarks) = of(came);
        assert_eq!((end, state, results), (due - 500, State::Ready, 1));
        assert_eq!(remarks, ["two_times"]);
    }
    // The same once more, or as a file, is no second time.
    for came in [[("a", &early[..]), ("b", &early)], [("a", &early), ("b", &early_file)]] {
        assert_eq!(of(came).3, none);
    }
}

#[test]
fn a_waiver_another_try_and_more_time_are_for_one_student_alone() {
    let mut class = class_of(&[("Ada", 4, Way::Right), ("Ben", 4, Way::Right), ("Cy", 1, Way::Right)]);
    class.roster = roster::read("Ada\nBen\nCy\nDee\n").unwrap();
    let state = |class: &Class, code: &str| line(&class.lines(), code).state;
    assert_eq!(line(&class.lines(), "Ada").against, ["too_many_tries"]);
    assert_eq!(
        ["Ada", "Ben", "Cy", "Dee"].map(|code| state(&class, code)),
        [State::Tried, State::Tried, State::Ready, State::Absent]
    );
    class.cares.put(" ADA ", Care { tries: 1, ..Care::default() });
    class.cares.put("Dee", Care { waived: true, note: "ill".into(), ..Care::default() });
    assert_eq!(
        ["Ada", "Ben", "Dee"].map(|code| state(&class, code)),
        [State::Ready, State::Tried, State::Waived]
    );
    // Handed in too late, but for the one who has more time.
    class.terms.due_s = 1_790_000_000;
    assert_eq!(line(&class.lines(), "Cy").against, ["late"]);
    class.cares.put("Cy", Care { until_s: 1_790_200_000, ..Care::default() });
    assert_eq!(["Ada", "Cy"].map(|code| state(&class, code)), [State::Tried, State::Ready]);
    class.cares.put("Cy", Care::default());
    assert_eq!(
        class.cares.codes().collect::<Vec<_>>(),
        ["ada", "dee"],
        "of whom nothing is decided nothing is kept"
    );
}

/// Opens a class from its file and grades all that came in anew.
fn opened(text: &str, set: Option<&str>) -> Class {
    let (mut class, waiting) = saved::read(text).unwrap();
    if let Some(set) = set {
        class.set.put("changed.toml", set).unwrap();
    }
    waiting.into_iter().for_each(|source| take(&mut class, source));
    class
}

#[test]
fn a_class_is_saved_and_opened_again_as_it_was() {
    let mut class = class_of(&[("Ada", 1, Way::Six), ("Ben", 1, Way::Right)]);
    let (session, about) = careful(ASSIGNMENT, "Cy", 1, Way::Right);
    let code = session.code(&about).unwrap().write();
    take(&mut class, Source { file: "list".into(), code, scenario: ASSIGNMENT.into(), ..Source::default() });
    take(
        &mut class,
        Source {
            file: "half.json".into(),
            text: "{\"about\": {\"student\": \"Dee".into(),
            ..Source::default()
        },
    );
    class.roster = roster::read("code;name;group\nAda;Ada Moss;1\nBen;Ben;2\nEve;Eve;2\n").unwrap();
    class.cares.put("Eve", Care { waived: true, note: "another lab".into(), ..Care::default() });
    class.terms.due_s = 1_800_000_000;
    let text = saved::write(&class);
    let back = opened(&text, None);
    assert_eq!(back.lines(), class.lines());
    assert_eq!((&back.roster, &back.cares, &back.terms), (&class.roster, &class.cares, &class.terms));
    assert_eq!(back.changes(&back.lines()), []);
    // Written once more it is the same file.
    assert_eq!(saved::write(&back), text);
    // No grade is in it that could be believed.
    assert!(!text.contains("\"graded\"") && !text.contains("rubric_ready"));
}

#[test]
fn other_tolerances_grade_anew_and_what_changed_is_told() {
    let mut class = class_of(&[("Ada", 1, Way::Right), ("Ben", 1, Way::Six)]);
    let strict = format!("{ASSIGNMENT}\n[pass]\nwindow_s = 30.0\nrecord_s = 30.0\n");
    // At the desk.
    let again = class.again();
    class.set.put("strict.toml", &strict).unwrap();
    again.into_iter().for_each(|source| take(&mut class, source));
    let changes = class.changes(&class.lines());
    let ada = changes.iter().find(|change| change.code == "Ada").expect("Ada stands otherwise");
    assert_eq!((ada.before, ada.now), (Some(State::Ready), State::Tried));
    assert!(ada.points[0] > ada.points[1], "{ada:?}");
    // A week later, out of the file.
    let kind = opened(&saved::write(&class), Some(ASSIGNMENT));
    let found: Vec<Change> = kind.changes(&kind.lines());
    let ada = found.iter().find(|change| change.code == "Ada").expect("Ada stands otherwise");
    assert_eq!((ada.before, ada.now), (Some(State::Tried), State::Ready));
    assert_eq!(kind.set.all().len(), 1, "one of the two judges");
}

#[test]
fn what_is_no_saved_class_is_refused_with_the_reason() {
    let good = saved::write(&class_of(&[("Ada", 1, Way::Right)]));
    let told = |text: &str| saved::read(text).unwrap_err();
    assert!(matches!(told("{"), SavedError::NoClass { .. }));
    assert!(told("{\"format\": \"a cake\"}").to_string().contains("a cake"));
    assert_eq!(told(&good.replace("\"version\":1", "\"version\":9")), SavedError::Version { found: 9 });
    assert!(told(&good.replace("\"cares\"", "\"pears\"")).to_string().contains("pears"));
    assert!(told(&good[..good.len() / 2]).to_string().contains("not a saved class"));
}

#[test]
fn whose_a_damaged_file_is_can_still_be_read_from_it() {
    for (text, student) in [
        ("{\"about\": {\"student\": \"Ada \\\"A\\\" M\", \"try\": 1", "Ada \"A\" M"),
        ("{\"about\": {\"student\"  :  \"é\\u00e9\", ", "éé"),
        ("{\"about\": {\"student\": \"Ada", ""),
        ("\"student\": 5}", ""),
        ("\"student\"", ""),
        ("", ""),
    ] {
        assert_eq!(course::student_said(text), student, "{text}");
    }
    let mut class = Class { roster: roster::read("a12\na1\n").unwrap(), ..Class::default() };
    let damaged = |file: &str| Failed {
        source: Source { file: file.into(), ..Source::default() },
        ..Failed::default()
    };
    class.failed = ["Week 3 - a12 late.json", "a123.json", "b.json"].map(damaged).into();
    let lines = class.lines();
    assert_eq!(lines.iter().map(|line| line.failed.clone()).collect::<Vec<_>>(), [vec![0], vec![]]);
}

#[test]
fn a_graded_result_goes_through_json_unchanged() {
    for k in 0..20 {
        for source in sources(k).into_iter().filter(|source| source.code.is_empty()) {
            let Ok(handed) = result::read(&source.text) else { continue };
            let graded = handed.grade_by(&assigned(ASSIGNMENT).set).unwrap();
            let back: Graded = plain::from_json(&plain::given(&graded).to_string()).unwrap();
            assert_eq!(back, graded);
        }
    }
    let error = HandinError::Differs { field: "try", claimed: "1".into(), replayed: "2".into() };
    assert_eq!(plain::from_value::<HandinError>(plain::given(&error)).unwrap(), error);
}

/// For the tests in the browser and for figures: the class as files.
#[test]
fn three_hundred_results_are_written() {
    let Ok(folder) = std::env::var("DICROTIC_CLASS_300") else { return };
    for k in 0..LISTED {
        for came in came(k) {
            std::fs::write(format!("{folder}/{}", came.file), came.text).unwrap();
        }
    }
    std::fs::write(format!("{folder}/../roster.csv"), list()).unwrap();
    std::fs::write(format!("{folder}/../assignment.toml"), ASSIGNMENT).unwrap();
    let states: Vec<String> = (0..LISTED).map(|k| format!("{},{}\n", code(k), state(k).name())).collect();
    std::fs::write(format!("{folder}/../states.csv"), states.concat()).unwrap();
}

/// An attempt of Ada's first try, ended so many seconds after noon, with what is done to its log and samples.
fn of_ada(way: Way, text: &str, ended: u64, mut change: impl FnMut(&mut Handed)) -> Graded {
    let (session, mut about) = careful(text, "Ada", 1, way);
    about.ended_s = 1_790_100_000 + ended;
    let mut handed = result::read(&result::write(&session, &about).unwrap()).unwrap();
    change(&mut handed);
    (handed.claims, handed.said) = (None, None);
    let mut set = dicrotic::exchange::handin::Set::default();
    set.add("set", text).unwrap();
    handed.grade_by(&set).unwrap()
}

#[test]
fn a_try_begun_twice_is_remarked_and_each_beginning_is_a_try() {
    let once = ASSIGNMENT.replace("attempts = 3", "attempts = 1");
    let class = |graded: &[Graded], text: &str| {
        let mut class = assigned(text);
        for (k, graded) in graded.iter().enumerate() {
            class.take(Source { file: format!("{k}.json"), ..Source::default() }, graded.clone());
        }
        class
    };
    let six = of_ada(Way::Six, &once, 0, |_| ());
    let right = of_ada(Way::Right, &once, 900, |handed| {
        // The same bench once more, with what was seen in the first.
        let half = handed.log.len() / 2;
        handed.log[half..].iter_mut().for_each(|logged| logged.at += 500);
        handed.samples += 500;
    });
    assert!(right.verified() && right.outcome.passed, "{:?}", right.doubts);
    for both in [[six.clone(), right.clone()], [right.clone(), six.clone()]] {
        let mut class = class(&both, &once);
        let ada = line(&class.lines(), "Ada");
        assert_eq!(
            (ada.state, ada.against, ada.remarks),
            (State::Tried, vec!["too_many_tries"], vec!["begun_twice"])
        );
        // Another try that is given covers it.
        class.cares.put("Ada", Care { tries: 1, ..Care::default() });
        let ada = line(&class.lines(), "Ada");
        assert_eq!((ada.state, ada.against.len(), ada.remarks), (State::Ready, 0, vec!["begun_twice"]));
    }
    // Where there are more tries than beginnings it is remarked alone.
    let often: Vec<Graded> = [Way::Six, Way::Right]
        .map(|way| {
            of_ada(way, ASSIGNMENT, 0, |handed| {
                let far = if way == Way::Six { 900 } else { 0 };
                handed.log[6..].iter_mut().for_each(|logged| logged.at += far);
                handed.samples += far;
            })
        })
        .into();
    let ada = line(&class(&often, ASSIGNMENT).lines(), "Ada");
    assert_eq!((ada.state, ada.against.len(), ada.remarks), (State::Ready, 0, vec!["begun_twice"]));
    // A try that went on, also where its last answer was typed anew, was begun once.
    let full = of_ada(Way::Right, &once, 900, |_| ());
    let mut retyped = 0;
    for cut in 1..6 {
        let part = of_ada(Way::Right, &once, 100, |handed| {
            handed.log.truncate(handed.log.len() - cut);
            // A log keeps the last of what was typed into a field.
            if let Some(Action::Page(Page::Answer { text, .. })) =
                handed.log.last_mut().map(|last| &mut last.action)
            {
                *text = "9".into();
                retyped += 1;
            }
        });
        let ada = line(&class(&[part, full.clone()], &once).lines(), "Ada");
        assert_eq!((ada.state, ada.against.len(), ada.remarks.len()), (State::Ready, 0, 0), "{cut}");
    }
    assert!(retyped >= 3, "{retyped}");
    // Two tries of two seeds were each begun once.
    let two = class_of(&[("Ada", 1, Way::Six), ("Ada", 2, Way::Right)]);
    assert!(line(&two.lines(), "Ada").remarks.is_empty());
}

#[test]
fn one_log_with_its_deeds_moved_by_a_sample_is_one_log() {
    let early = of_ada(Way::Right, ASSIGNMENT, 0, |_| ());
    let late = of_ada(Way::Right, ASSIGNMENT, 900, |handed| {
        handed.log.iter_mut().for_each(|logged| logged.at += 1);
        handed.samples += 1;
    });
    assert_ne!(early.mark, late.mark);
    for both in [[early.clone(), late.clone()], [late, early]] {
        let mut class = assigned(ASSIGNMENT);
        class.terms.due_s = 1_790_100_500;
        both.into_iter().for_each(|graded| class.take(Source::default(), graded));
        let ada = line(&class.lines(), "Ada");
        assert_eq!((ada.state, ada.results.len(), ada.remarks), (State::Ready, 1, vec!["two_times"]));
        assert_eq!(class.graded[ada.chosen.unwrap()].about.ended_s, 1_790_100_000);
    }
}

#[test]
fn a_result_without_its_times_is_remarked_where_they_matter() {
    let remarks = |begun_s: u64, ended_s: u64, due_s: u64| {
        let mut class = assigned(ASSIGNMENT);
        class.terms.due_s = due_s;
        let graded = of_ada(Way::Right, ASSIGNMENT, 0, |handed| {
            (handed.about.begun_s, handed.about.ended_s) = (begun_s, ended_s);
        });
        class.take(Source::default(), graded);
        line(&class.lines(), "Ada").remarks
    };
    let (day, none) = (1_790_100_000, Vec::<&str>::new());
    assert_eq!(remarks(day, 0, day + 1000), ["no_time"]);
    assert_eq!(remarks(0, day, 0), ["no_time"]);
    assert_eq!(remarks(0, 0, 0), none);
    assert_eq!(remarks(day, day + 900, day + 1000), none);
}
