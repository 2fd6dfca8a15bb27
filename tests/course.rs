//! Courses: several assignments as one link or file, one result for all, and one line a student.

mod command;
mod students;

use command::{dicrotic, error_of, scratch, told};
use dicrotic::exchange::class::within::Within;
use dicrotic::exchange::class::{Care, Class, Source, State, answers, roster, saved};
use dicrotic::exchange::handin::{HandinError, bundle, result};
use dicrotic::scenario::digest::{digest, hashed};
use dicrotic::scenario::moment::seconds;
use dicrotic::scenario::plan::{MOST_PARTS, Plan, is_plan};
use dicrotic::session::compact::About;
use serde_json::Value;
use std::fs;
use students::{ASSIGNMENT, KEY, WORD, Way, attempt_at, careful, faultless};

/// The second part: the same table without its faults.
fn second() -> String {
    faultless().replace("id = \"before-the-lab\"", "id = \"rest\"").replace("Before the lab", "At rest")
}

/// The third: one fault of the two.
fn third() -> String {
    let one =
        ASSIGNMENT.replace("[[fault]]\nname = \"power_strip_off\"\n", "").replace("name_faults = true", "");
    one.replace("id = \"before-the-lab\"", "id = \"hum\"").replace("Before the lab", "Hum")
}

fn part(scenario: &str, more: &str) -> String {
    format!("\n[[part]]\n{more}scenario = '''\n{scenario}'''\n")
}

/// Begins of the attempts of [`attempt_at`] lie round 1790000000, which is 2026-09-21T14:13:20Z.
const COURSE: &str = "[course]\nid = \"bio-101\"\ntitle = \"Three weeks\"\nwords = \"One a week.\"\n";

fn course() -> String {
    let weeks = [
        part(ASSIGNMENT, "opens = \"2026-09-01\"\ndue = \"2026-10-01\"\nwords = \"Week one.\"\n"),
        part(&second(), "due = \"2026-09-20\"\n"),
        part(&third(), "opens = \"2026-12-01T08:00+01:00\"\n"),
    ];
    format!("{COURSE}{}", weeks.concat())
}

/// The one file as the page writes it (`www/js/hand/courselist.js`).
fn bundled(course: &str, results: &[String]) -> String {
    let (format, version, name) = (bundle::FORMAT, bundle::VERSION, Value::from(course));
    let all = results.join(",\n");
    format!("{{\"format\":\"{format}\",\"version\":{version},\"course\":{name},\"results\":[\n{all}\n]}}\n")
}

fn handed(scenario: &str, code: &str, tries: u32, way: Way) -> String {
    let (session, about) = attempt_at(scenario, code, tries, way);
    result::write(&session, &about).unwrap()
}

#[test]
fn days_and_moments_are_seconds_since_1970() {
    // `date -u -d ... +%s` (GNU coreutils 9.1) gives these.
    for (text, end, expected) in [
        ("1970-01-01", false, Some(0)),
        ("2026-09-08", false, Some(1_788_825_600)),
        ("2026-09-08", true, Some(1_788_912_000)),
        ("2026-09-08T18:00", true, Some(1_788_890_400)),
        ("2026-09-08T18:00:30Z", false, Some(1_788_890_430)),
        ("2026-09-08 18:00+02:00", false, Some(1_788_883_200)),
        ("2026-09-08T18:00-05:30", false, Some(1_788_910_200)),
        ("2024-02-29", false, Some(1_709_164_800)),
        ("2026-02-29", false, None),
        ("2026-13-01", false, None),
        ("2026-9-1", false, None),
        ("1969-12-31", false, None),
        ("2026-09-08T24:00", false, None),
        ("2026-09-08T18", false, None),
        ("9999-12-31", false, Some(253_402_214_400)),
        ("9999-12-31", true, None),
        ("8.9.2026", false, None),
        ("", false, None),
        ("é", true, None),
        ("2026-09-08T18:00+é0:00", true, None),
    ] {
        assert_eq!(seconds(text, end), expected, "{text}");
    }
}

#[test]
fn what_is_no_course_is_refused_with_its_field() {
    let first = part(ASSIGNMENT, "");
    let many: String =
        (0..=MOST_PARTS).map(|k| part(&ASSIGNMENT.replace("week 3", &format!("week {k}")), "")).collect();
    let bare = ASSIGNMENT.split("[assignment]").next().unwrap();
    for (text, field, found) in [
        (COURSE.to_string(), "part", ""),
        (format!("part = []\n{COURSE}"), "part", "0 parts"),
        (format!("{COURSE}{many}"), "part", "21 parts"),
        (format!("{COURSE}colour = 1\n{first}"), "course.colour", ""),
        (format!("{}{first}", COURSE.replace("bio-101", "Bio 101")), "course.id", "\"Bio 101\""),
        (format!("{}{first}", COURSE.replace("Three weeks", "")), "course.title", "0 characters"),
        (format!("{COURSE}{}", part(ASSIGNMENT, "due = \"soon\"\n")), "part[0].due", "\"soon\""),
        (format!("{COURSE}{}", part(ASSIGNMENT, "due = 3\n")), "part[0].due", "3"),
        (format!("{COURSE}{}", part(ASSIGNMENT, "opens = \"\"\n")), "part[0].opens", "\"\""),
        (format!("{COURSE}{}", part(ASSIGNMENT, "due = \" \"\n")), "part[0].due", "\" \""),
        (
            format!("{COURSE}{}", part(ASSIGNMENT, "opens = \"2026-09-02\"\ndue = \"2026-09-01\"\n")),
            "part[0].due",
            "0 s before it opens",
        ),
        (format!("{COURSE}\n[[part]]\nfile = \"a.toml\"\n"), "part[0].file", "\"a.toml\""),
        (format!("{COURSE}{first}{first}"), "part[1].scenario", "the same bench as part[0]"),
        (format!("{COURSE}{}", part(bare, "")), "part[0].scenario", "none"),
        (
            format!("{COURSE}{}", part(&ASSIGNMENT.replace("level = 2", "level = 20"), "")),
            "part[0].scenario: level",
            "20",
        ),
    ] {
        let error = Plan::read(&text).expect_err(field);
        assert_eq!(error.field, field, "{error}");
        assert!(error.found.contains(found), "{error}");
    }
    // The command line puts the texts of parts in, and refuses the same fields for the same reasons.
    let folder = scratch("empty");
    for (wrong, field) in
        [("opens = \"\"\n", "opens"), ("due = \"\"\n", "due"), ("opens = \"  \"\n", "opens")]
    {
        fs::write(folder.join("one.toml"), ASSIGNMENT).unwrap();
        let text = format!("{COURSE}\n[[part]]\nfile = \"one.toml\"\n{wrong}");
        fs::write(folder.join("course.toml"), &text).unwrap();
        assert!(Plan::outline(&text).is_ok_and(|plan| Plan::outline(&plan.written()) == Ok(plan)), "{text}");
        let error = error_of(&mut dicrotic(&["course".as_ref(), folder.join("course.toml").as_os_str()]));
        assert!(
            error.contains(&format!("part[0].{field}: \"")) && error.contains("expected a day"),
            "{error}"
        );
    }
    assert!(is_plan(&course()) && !is_plan(ASSIGNMENT) && !is_plan("{}") && !is_plan("no"));
}

#[test]
fn a_course_is_handed_out_without_words_and_scripts_and_comes_back_as_the_same_benches() {
    let plan = Plan::read(&course()).unwrap();
    assert_eq!(Plan::read(&plan.written()).unwrap(), plan);
    let out = plan.handed_out();
    assert!(!out.contains("chalk") && out.contains("sha256:"), "the instructor's word goes out");
    let back = Plan::read(&out).unwrap();
    assert_eq!(back.part[0].due.as_deref(), Some("2026-10-02T00:00:00Z"));
    for (a, b) in plan.part.iter().zip(&back.part) {
        assert_eq!((a.opens_s(), a.due_s(), &a.words), (b.opens_s(), b.due_s(), &b.words));
        assert_eq!(
            dicrotic::scenario::digest::bench_digest(&a.scenario),
            dicrotic::scenario::digest::bench_digest(&b.scenario)
        );
    }
}

#[test]
fn awkward_words_come_back_from_the_file_and_from_the_link() {
    for words in [
        "\"\"\" and \\ and '''",
        "line\n\nline\n",
        "\ttab \u{7f}",
        "</script>",
        "# no comment",
        "\n[course]\n",
    ] {
        let mut plan = Plan::read(&course()).unwrap();
        plan.course.words = words.into();
        plan.part[1].words = words.into();
        plan.part[1].scenario = plan.part[1].scenario.replace("Somebody else", r#"Somebody \"\"\" else"#);
        assert_eq!(Plan::read(&plan.written()).unwrap(), plan, "{words}");
        let back = Plan::read(&plan.handed_out()).unwrap();
        assert_eq!((&back.course, &back.part[1].words), (&plan.course, &plan.part[1].words));
    }
}

#[test]
fn one_file_holds_ordinary_results_and_nothing_of_it_is_believed() {
    let results = [handed(ASSIGNMENT, "A 1", 1, Way::Right), handed(&second(), "A 1", 1, Way::Six)];
    let text = bundled("bio-101", &results);
    assert!(bundle::of(&text).is_some() && bundle::of(&results[0]).is_none());
    let back = bundle::read(&text).unwrap();
    assert_eq!(back.course, "bio-101");
    for (one, other) in back.results.iter().zip(&results) {
        assert_eq!(result::read(one).unwrap(), result::read(other).unwrap());
        assert!(result::read(one).unwrap().grade().unwrap().verified());
    }
    // A word changed in one of them is found in that one alone.
    let changed = text.replacen("\"passed\": false", "\"passed\": true", 1);
    assert_ne!(changed, text);
    let sure: Vec<bool> = bundle::read(&changed)
        .unwrap()
        .results
        .iter()
        .map(|one| result::read(one).unwrap().grade().unwrap().verified())
        .collect();
    assert_eq!(sure, [true, false]);
    let is = |text: &str, code| assert_eq!(bundle::read(text).unwrap_err().code(), code, "{text:.80}");
    is("{", "no_result");
    is(&results[0], "no_result");
    is(&text.replace("\"version\":1,\"course\"", "\"version\":9,\"course\""), "course_version");
    is(&text.replace("\"version\":1,\"course\"", "\"version\":\"2\",\"course\""), "no_result");
    // What it is, and which forms are known, is said as it is.
    let newer = text.replace("\"version\":1,\"course\"", "\"version\":2,\"course\"");
    let folder = scratch("newer");
    fs::write(folder.join("a.dicrotic-course-result.json"), newer).unwrap();
    fs::write(
        folder.join("b.dicrotic-result.json"),
        results[0].replacen("\"version\": 4", "\"version\": 5", 1),
    )
    .unwrap();
    let told = error_of(&mut dicrotic(&[
        "grade",
        folder.to_str().unwrap(),
        "--out",
        folder.join("g.csv").to_str().unwrap(),
    ]));
    assert!(told.contains("a.dicrotic-course-result.json: skipped: a course result of form 2; this version of the program reads form 1"), "{told}");
    assert!(told.contains("b.dicrotic-result.json: skipped: a result file of form 5; this version of the program reads form 4"), "{told}");
    is(&bundled("x", &[]), "no_result");
    is(&bundled("x", &vec!["{}".into(); 201]), "no_result");
    assert!(matches!(bundle::read(&" ".repeat(bundle::MOST_BYTES + 1)), Err(HandinError::TooLong { .. })));
}

fn class_of(handed: &[String]) -> Class {
    let mut class = Class::default();
    class.give("course.toml", &course()).unwrap();
    for text in handed {
        let graded = result::read(text).unwrap().grade_by(&class.set).unwrap();
        class.take(Source { file: "f".into(), text: text.clone(), ..Source::default() }, graded);
    }
    class
}

#[test]
fn one_line_a_student_tells_each_part_and_the_whole() {
    let (one, two, three) = (ASSIGNMENT.to_string(), second(), third());
    let hum = |way| {
        // The third part opens long after this is handed in.
        let (session, about) = attempt_at(&three.replace("name_faults = true", ""), "Ada", 1, way);
        result::write(&session, &About { ended_s: about.ended_s, ..about }).unwrap()
    };
    let class = class_of(&[
        handed(&one, "Ada", 1, Way::Right),
        handed(&two, "Ada", 1, Way::Right),
        handed(&one, "Bob", 1, Way::Six),
        handed(&one, "Bob", 2, Way::Right),
        handed(&ASSIGNMENT.replace("week 3", "week 4"), "Cy", 1, Way::Right),
    ]);
    let lines = class.lines();
    let ada = &lines[0];
    assert_eq!((ada.code.as_str(), ada.state, ada.of, ada.passes), ("Ada", State::Tried, 60, 2));
    let states: Vec<State> = ada.parts.iter().map(|part| part.state).collect();
    assert_eq!(states, [State::Ready, State::Ready, State::Absent]);
    let points: u32 = ada.parts.iter().filter_map(|part| part.points).sum();
    assert_eq!(ada.points, Some(points));
    assert!(points > 30 && points <= 40, "{points}");
    // Dates remark and fail nothing.
    assert_eq!(ada.parts[0].remarks, Vec::<&str>::new());
    assert_eq!(ada.parts[1].remarks, ["after_due"]);
    let bob = &lines[1];
    assert_eq!((bob.state, bob.parts[0].state, bob.parts[0].results), (State::Tried, State::Ready, 2));
    assert_eq!((bob.parts[1].state, bob.points), (State::Absent, bob.parts[0].points));
    assert_eq!((lines[2].code.as_str(), lines[2].state), ("Cy", State::WrongBench));
    // Whoever is ready in every part is ready.
    let class =
        class_of(&[handed(&one, "Ada", 1, Way::Right), handed(&two, "Ada", 1, Way::Right), hum(Way::Right)]);
    let ada = &class.lines()[0];
    assert_eq!((ada.state, ada.passes), (State::Ready, 3), "{:?}", ada.parts);
    assert_eq!(ada.parts[2].remarks, ["before_open"]);
    // The class is saved with its course.
    let (mut again, waiting) = saved::read(&saved::write(&class)).unwrap();
    let parts = |class: &Class| class.plan.clone().unwrap().part;
    for (one, other) in parts(&again).iter().zip(parts(&class)) {
        assert_eq!((&one.due, &one.opens, &one.words), (&other.due, &other.opens, &other.words));
        assert_eq!(digest(&one.scenario), digest(&other.scenario));
    }
    assert_eq!(again.plan.as_ref().unwrap().course, class.plan.as_ref().unwrap().course);
    for source in waiting {
        let graded = result::read(&source.text).unwrap().grade_by(&again.set).unwrap();
        again.take(source, graded);
    }
    assert_eq!(again.lines(), class.lines());
    let told = again.told();
    assert_eq!(told["course"]["parts"][1]["title"], "At rest");
    assert_eq!(told["course"]["parts"][1]["due_s"], 1_789_948_800_u64);
    assert_eq!(told["lines"][0]["parts"][2]["state"], "ready");
}

/// Takes results into a class as those of one course result, which says that it is of a course.
fn class_of_one_file(course_set: bool, says: &str, handed: &[String]) -> Class {
    let mut class = Class::default();
    if course_set {
        class.give("course.toml", &course()).unwrap();
    }
    let bundle = bundle::read(&bundled(says, handed)).unwrap();
    let within = Some(Within { file: "one.json".into(), course: bundle.course });
    for (k, text) in bundle.results.into_iter().enumerate() {
        let graded = result::read(&text).unwrap().grade_by(&class.set).unwrap();
        let file = format!("one.json, result {}", k + 1);
        class.take(Source { file, text, within: within.clone(), ..Source::default() }, graded);
    }
    class
}

#[test]
fn a_course_result_of_several_students_or_of_another_course_is_remarked() {
    let (one, two) = (ASSIGNMENT.to_string(), second());
    let remarks = |class: &Class| -> Vec<Vec<&'static str>> {
        class.lines().iter().map(|line| line.remarks.clone()).collect()
    };
    let ada = [handed(&one, "Ada", 1, Way::Right), handed(&two, " ada", 1, Way::Right)];
    let both = [ada[0].clone(), handed(&two, "Bob", 1, Way::Right)];
    let none: &[&str] = &[];
    assert_eq!(remarks(&class_of_one_file(true, "bio-101", &ada)), [none]);
    let class = class_of_one_file(true, "bio-101", &both);
    assert_eq!(remarks(&class), [["several_students"], ["several_students"]]);
    // It is a remark: each result counts for whom it is of.
    assert!(class.lines().iter().all(|line| line.passes == 1));
    assert_eq!(remarks(&class_of_one_file(true, "bio-102", &ada)), [["other_course"]]);
    assert_eq!(remarks(&class_of_one_file(true, "", &ada)), [["other_course"]]);
    assert_eq!(remarks(&class_of_one_file(false, "bio-102", &ada)), [none], "nothing to compare with");
    // The class keeps it when it is saved.
    let (mut again, waiting) = saved::read(&saved::write(&class)).unwrap();
    for source in waiting {
        let graded = result::read(&source.text).unwrap().grade_by(&again.set).unwrap();
        again.take(source, graded);
    }
    assert_eq!(remarks(&again), remarks(&class));
    // The command line names file, students and courses.
    let folder = scratch("several");
    let path = |name: &str| folder.join(name).to_str().unwrap().to_string();
    fs::create_dir(folder.join("in")).unwrap();
    fs::write(path("course.toml"), course()).unwrap();
    fs::write(path("in/one.dicrotic-course-result.json"), bundled("bio-102", &both)).unwrap();
    for command in [
        vec!["grade", &path("in"), "--set", &path("course.toml"), "--out", &path("g.csv")],
        vec!["class", &path("in"), "--set", &path("course.toml"), "--names"],
    ] {
        let told = told(&mut dicrotic(&command));
        assert!(told.contains("one course result with the results of several students: Ada, Bob"), "{told}");
        assert!(
            told.contains(
                "it says it is the result of the course \"bio-102\"; the course that was assigned is \"bio-101\""
            ),
            "{told}"
        );
    }
}

#[test]
fn of_equal_attempts_in_a_part_the_one_in_time_stands() {
    let due = 1_790_500_000;
    let of = |ends: [u64; 2], until_s: u64| {
        let mut class = Class::default();
        class
            .give("course.toml", &course().replace("due = \"2026-10-01\"", "due = \"2026-09-27T09:06:40Z\""))
            .unwrap();
        class.cares.put("Ada", Care { until_s, ..Care::default() });
        for (k, ended_s) in ends.into_iter().enumerate() {
            let (session, about) = careful(ASSIGNMENT, "Ada", k as u32 + 1, Way::Right);
            let text = result::write(&session, &About { ended_s, ..about }).unwrap();
            let graded = result::read(&text).unwrap().grade_by(&class.set).unwrap();
            class.take(Source { file: format!("{k}.json"), text, ..Source::default() }, graded);
        }
        assert_eq!(class.graded[0].score, class.graded[1].score, "equal attempts");
        class.lines()[0].parts[0].remarks.clone()
    };
    let none: &[&str] = &[];
    assert_eq!(of([due - 1000, due + 1000], 0), none, "the second try came late, and hides nothing");
    assert_eq!(of([due + 1000, due - 1000], 0), none);
    assert_eq!(of([due + 1000, due + 2000], 0), ["after_due"]);
    assert_eq!(of([due + 1000, due + 2000], due + 1500), none, "more time for this student");
}

/// A course file with the texts of its parts in the place of their paths.
fn course_as_written(file: &str) -> String {
    let mut plan = Plan::outline(&fs::read_to_string(file).unwrap()).unwrap();
    for part in &mut plan.part {
        let path = std::mem::take(&mut part.file);
        part.scenario = fs::read_to_string(std::path::Path::new(file).with_file_name(path)).unwrap();
    }
    plan.written()
}

#[test]
fn a_saved_class_holds_the_word_as_a_hash_and_opens_with_it() {
    let mut class = class_of(&[handed(ASSIGNMENT, "Ada", 1, Way::Right)]);
    class.give("own.toml", &ASSIGNMENT.replace("week 3", "week 9")).unwrap();
    let source = Source { code: "D3.x".into(), scenario: ASSIGNMENT.into(), ..Source::default() };
    class.fail(source, &HandinError::Changed {});
    let text = saved::write(&class);
    assert!(!text.contains(WORD) && text.contains("sha256:"));
    let back = saved::read(&text).unwrap().0;
    let ada = [(roster::Entry { code: "Ada".into(), ..Default::default() }, 0)];
    assert_eq!(back.set.all().len(), 4);
    for (one, own) in back.set.all().iter().zip(class.set.all()) {
        assert_eq!((one.whole, one.bench), (own.whole, own.bench), "the same to the word");
        assert_eq!(answers::answers(&one.text, None, &ada), Err(answers::AnswersError::OtherWord));
        let key = answers::answers(&one.text, Some(WORD), &ada).unwrap();
        assert_eq!(key, answers::answers(&own.text, None, &ada).unwrap());
    }
    // A file that was saved with the word in plain letters is read, and saved again without.
    let hash = hashed(KEY, WORD);
    let old = text.replace(&hash, WORD);
    assert!(old.contains(WORD));
    let old = saved::read(&old).unwrap().0;
    assert_eq!(answers::answers(&old.set.all()[0].text, None, &ada).map(|key| key.len()), Ok(3));
    // Where the file has the word none is needed, and a wrong one is told all the same.
    assert_eq!(
        answers::answers(&old.set.all()[0].text, Some("chalk and slat"), &ada),
        Err(answers::AnswersError::OtherWord)
    );
    // Tries that were given beside the others' stand in it too.
    class.cares.put("Ada", Care { tries: 2, ..Care::default() });
    let everybody = class.everybody();
    assert_eq!(
        everybody.iter().map(|(entry, more)| (entry.code.as_str(), *more)).collect::<Vec<_>>(),
        [("Ada", 2)]
    );
    assert_eq!(answers::answers(ASSIGNMENT, None, &everybody).map(|key| key.len()), Ok(5));
    assert!(!saved::write(&old).contains(WORD));
}

#[test]
fn the_command_line_takes_a_course_as_what_was_set_and_one_result_as_all_its_parts() {
    let folder = scratch("course");
    let path = |name: &str| folder.join(name).display().to_string();
    fs::write(path("one.toml"), ASSIGNMENT).unwrap();
    fs::write(path("two.toml"), second()).unwrap();
    let parts = "\n[[part]]\nfile = \"one.toml\"\ndue = \"2026-10-01\"\n\n[[part]]\nfile = \"two.toml\"\n";
    fs::write(path("course.toml"), format!("{COURSE}{parts}")).unwrap();
    let said = told(&mut dicrotic(&["course", &path("course.toml"), "--check"]));
    assert!(
        said.contains("valid, 2 parts") && said.contains("1. Before the lab, due 2026-10-02T00:00:00Z"),
        "{said}"
    );
    told(&mut dicrotic(&["course", &path("course.toml"), "--out", &path("whole.toml")]));
    let whole = Plan::read(&fs::read_to_string(path("whole.toml")).unwrap()).unwrap();
    assert_eq!(digest(&whole.part[1].scenario), digest(&second()));
    // What goes out has neither the instructor's word nor scripts, and is what the page writes.
    let written = fs::read_to_string(path("whole.toml")).unwrap();
    let plan = Plan::read(&course_as_written(&path("course.toml"))).unwrap();
    assert!(!written.contains(WORD) && written.contains("sha256:"), "{written}");
    assert_eq!(written, Plan::read(&plan.handed_out()).unwrap().written());
    let link =
        told(&mut dicrotic(&["course", &path("course.toml"), "--link", "--at", "https://course.example/p/"]));
    assert!(link.starts_with("https://course.example/p/#c="), "{link}");
    // Nothing is written over what is read, and a path that leads nowhere is named.
    let own = error_of(&mut dicrotic(&["course", &path("course.toml"), "--out", &path("two.toml")]));
    assert!(own.contains("two.toml"), "{own}");
    fs::write(path("lost.toml"), format!("{COURSE}\n[[part]]\nfile = \"gone.toml\"\n")).unwrap();
    let lost = error_of(&mut dicrotic(&["course", &path("lost.toml")]));
    assert!(lost.contains("part[0].file") && lost.contains("gone.toml"), "{lost}");
    // What is wrong within a part names the course's file, the part, its own file and the field.
    fs::write(path("steep.toml"), second().replace("66.0", "6600.0")).unwrap();
    let parts = ["scenario.toml", "steep.toml"].map(|file| format!("\n[[part]]\nfile = \"{file}\"\n"));
    fs::write(path("scenario.toml"), ASSIGNMENT).unwrap();
    fs::write(path("wrong.toml"), format!("{COURSE}{}", parts.concat())).unwrap();
    fs::write(path("other.toml"), format!("{}\n[pass]\nwindow_s = 30.0\nrecord_s = 30.0\n", second()))
        .unwrap();
    let both = [
        "grade",
        "x.json",
        "--set",
        &path("other.toml"),
        "--set",
        &path("course.toml"),
        "--out",
        &path("g.csv"),
    ];
    let twice = error_of(&mut dicrotic(&both));
    assert!(
        twice.contains("course.toml: part[1]: the same scenario as") && twice.contains("other.toml"),
        "{twice}"
    );
    for command in [
        vec!["course", &path("wrong.toml")],
        vec!["grade", &path("ada.json"), "--set", &path("wrong.toml"), "--out", &path("g.csv")],
    ] {
        let wrong = error_of(&mut dicrotic(&command));
        for named in [
            "wrong.toml",
            "part[1], file \"steep.toml\"",
            "part[1].scenario: subject.rest_rate_bpm",
            "expected",
        ] {
            assert!(wrong.contains(named), "{named}: {wrong}");
        }
    }
    // One result for all.
    let all = [handed(ASSIGNMENT, "Ada", 1, Way::Right), handed(&second(), "Ada", 1, Way::Six)];
    let file = path("ada.dicrotic-course-result.json");
    fs::write(&file, bundled("bio-101", &all)).unwrap();
    let codes: Vec<String> = [(ASSIGNMENT, Way::Right), (&second(), Way::Right)]
        .map(|(scenario, way)| {
            let (session, about) = attempt_at(scenario, "Bob", 1, way);
            session.code(&about).unwrap().write()
        })
        .into();
    fs::write(path("bob.txt"), codes.join("\n")).unwrap();
    for set in [path("course.toml"), path("whole.toml"), link.trim().to_string()] {
        let table = path("grades.csv");
        told(&mut dicrotic(&["grade", &file, &path("bob.txt"), "--set", &set, "--out", &table]));
        let rows = fs::read_to_string(&table).unwrap();
        assert_eq!(rows.lines().count(), 5, "{rows}");
        assert_eq!(rows.matches(", result ").count(), 2, "{rows}");
        let said = told(&mut dicrotic(&["class", &file, &path("bob.txt"), "--set", &set, "--names"]));
        let of = |code: &str| {
            said.lines().find(|line| line.starts_with(code)).unwrap_or_else(|| panic!("{said}")).to_string()
        };
        assert!(of("Ada").contains("(1: ready 18; 2: not ready"), "{said}");
        assert!(
            of("Bob").contains("ready (1: ready 18; 2: ready 18)") && of("Bob").contains("36 of 40"),
            "{said}"
        );
    }
    // A class goes on with its course, and a gradebook scales the total.
    let (save, book) = (path("c.dicrotic-class.json"), path("book.csv"));
    told(&mut dicrotic(&["class", &file, "--set", &path("course.toml"), "--save", &save]));
    let gradebook = |more: &[&str]| {
        let order = ["class", &path("bob.txt"), "--open", &save, "--gradebook", &book];
        told(&mut dicrotic(&[&order, more].concat()));
        fs::read_to_string(&book).unwrap()
    };
    let rows = gradebook(&["--maximum", "10"]);
    assert!(rows.contains("\r\nBob,,9,10,"), "{rows}");
    // Each part has a column of its own, where it is asked for.
    let columns = ["--column", "code=code", "--column", "Week 1=part_1", "--column", "Week 2=part_2"];
    let rows = gradebook(&columns);
    assert!(rows.starts_with("code,Week 1,Week 2\r\n") && rows.contains("\r\nBob,18,18\r\n"), "{rows}");
    // Line by line a course's result has an answer for each result in it.
    let one_line = |file: &str| {
        let value: serde_json::Value = serde_json::from_str(&fs::read_to_string(file).unwrap()).unwrap();
        value.to_string()
    };
    let mut run = dicrotic(&["grade", "--lines", "--set", &path("course.toml")]);
    run.stdin(std::process::Stdio::piped()).stdout(std::process::Stdio::piped());
    let mut run = run.spawn().unwrap();
    std::io::Write::write_all(&mut run.stdin.take().unwrap(), format!("{}\n", one_line(&file)).as_bytes())
        .unwrap();
    let answers = String::from_utf8(run.wait_with_output().unwrap().stdout).unwrap();
    let answers: Vec<serde_json::Value> = answers.lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    let places: Vec<_> = answers.iter().map(|one| (one["line"].as_u64(), one["result"].as_u64())).collect();
    assert_eq!(places, [(Some(1), Some(1)), (Some(1), Some(2))], "{answers:?}");
    assert!(answers.iter().all(|one| one["student"] == "Ada"), "{answers:?}");
    // A result of another bench inside is named as ever; a second course is refused.
    let other = handed(&ASSIGNMENT.replace("week 3", "week 4"), "Eve", 1, Way::Right);
    fs::write(path("eve.dicrotic-course-result.json"), bundled("bio-101", &[other])).unwrap();
    let eve = path("eve.dicrotic-course-result.json");
    let error =
        error_of(&mut dicrotic(&["grade", &eve, "--set", &path("course.toml"), "--out", &path("e.csv")]));
    assert!(error.contains("not the scenario that was assigned") && error.contains("result 1"), "{error}");
    let twice = error_of(&mut dicrotic(&[
        "class",
        &file,
        "--set",
        &path("course.toml"),
        "--set",
        &path("whole.toml"),
    ]));
    assert!(twice.contains("a second course"), "{twice}");
    let json: Value = serde_json::from_str(&fs::read_to_string(&save).unwrap()).unwrap();
    assert!(json["course"].as_str().unwrap().contains("bio-101"));
}
