//! What is compared, and what a log looks like: the two digests, the heart of an assigned bench, what is handed out, scripts that
//! are told nothing, and remarks that honest logs never get.

use dicrotic::exchange::class::course::Source;
use dicrotic::exchange::class::{Class, State};
use dicrotic::exchange::handin::remark::Remark;
use dicrotic::exchange::handin::together::beside;
use dicrotic::exchange::handin::{Compared, Graded, Handed, Set, result};
use dicrotic::scenario::Scenario;
use dicrotic::scenario::digest::{bench_digest, digest, handed_out, hashed};
use dicrotic::session::compact::About;
use dicrotic::session::{Action, Session, script, seeds};
use serde_json::json;
use students::{ASSIGNMENT, KEY, WORD, Way, attempt, attempt_at, diligent, student, wait};

mod students;

fn grade((session, about): &(Session, About)) -> Graded {
    result::read(&result::write(session, about).unwrap()).unwrap().grade().unwrap()
}

/// Every kind of field that a scenario has, and a value of it that is another.
const BENCH: &[(&str, &str)] = &[
    ("id = \"before-the-lab\"", "id = \"after-the-lab\""),
    ("name_faults = true", "name_faults = false"),
    ("name_faults = true", "name_faults = true\nhelp = \"alone\""),
    ("name_faults = true", "name_faults = true\ntime_base_s = 5.0"),
    ("name_faults = true", "name_faults = true\nbefore = [{ wait = 2.0 }]"),
    ("key = \"bio-101, week 3\"", "key = \"bio-101, week 4\""),
    ("attempts = 3", "attempts = 3\nseeds = \"same\""),
    ("attempts = 3", "attempts = 3\nworked = true"),
    ("password = \"chalk and slate\"", "password = \"another word\""),
    ("rest_rate_bpm = 66.0", "rest_rate_bpm = 67.0"),
    ("premature_per_min = 0.0", "premature_per_min = 2.0"),
    ("range_v = 0.1", "range_v = 0.2"),
    ("name = \"power_strip_off\"", "name = \"recorder_off\""),
    ("severity = 0.8", "severity = [0.7, 0.8]"),
    ("[[fault]]\nname = \"power_strip_off\"\n", ""),
    ("[subject]", "[power_line]\nhz = 60.0\nvolts = 120.0\n\n[subject]"),
    ("[subject]", "[sensor]\nkind = \"film\"\n\n[subject]"),
    ("[subject]", "[bench]\nlamp_on = true\n\n[subject]"),
    ("[subject]", "[trouble]\nphone = 0.5\n\n[subject]"),
    ("[subject]", "[task]\nkind = \"given_window\"\n\n[subject]"),
    (
        "[subject]",
        "[experiment]\nquestion = \"q\"\nmeasures = [\"rate\"]\n[[experiment.condition]]\nid = \"a\"\nlabel = \"A\"\nat_start = true\n\
         [[experiment.condition]]\nid = \"b\"\nlabel = \"B\"\nbegins = [{ do = \"manoeuvre\", what = \"stand_up\" }]\n\n[subject]",
    ),
    (
        "[[fault]]\nname = \"power_strip_off\"\n\n[[fault]]\nname = \"charger_near\"\nseverity = 0.8\n",
        "[pool]\nfaults = [\"power_strip_off\", \"charger_near\"]\n",
    ),
];
const TOLD: &[(&str, &str)] = &[
    ("level = 2", "level = 3"),
    ("title = \"Before the lab\"", "title = \"Before Tuesday\""),
    ("Find both faults", "Find all faults"),
    ("Somebody else", "Someone"),
    ("attempts = 3", "attempts = 4"),
    ("opening = \"Please", "opening = \"Do please"),
    ("closing = \"Hand in", "closing = \"Now hand in"),
    ("[subject]", "[pass]\nfill_min = 0.2\n\n[subject]"),
    ("[subject]", "[pass]\nfill_max = 0.9\n\n[subject]"),
    ("[subject]", "[pass]\nhum_ratio = 0.2\n\n[subject]"),
    ("[subject]", "[pass]\nquality_min = 0.2\n\n[subject]"),
    ("[subject]", "[pass]\nclip_share = 0.1\n\n[subject]"),
    ("[subject]", "[pass]\nrecord_s = 20.0\n\n[subject]"),
    ("[subject]", "[pass]\nwindow_s = 20.0\nrecord_s = 20.0\n\n[subject]"),
    ("[subject]", "[pass]\nedge_s = 0.1\n\n[subject]"),
    // The instructor's own misreadings and hints: no sample and no right answer depends on them, and a word of theirs may be put
    // right, or a signature written, after the class has handed in, without another heart for anyone. Who edits one with a true
    // value into a link learns what is right; such a result is not counted.
    (
        "[subject]",
        "[[misreading]]\nname = \"x\"\nfield = \"count\"\nformula = \"2*n_true\"\nwords = \"w\"\n\n[subject]",
    ),
    ("[subject]", "[[hint]]\nabout = \"count\"\nrung = \"look\"\nwords = \"w\"\n\n[subject]"),
];

#[test]
fn what_makes_the_bench_changes_its_digest_and_what_may_be_put_right_later_does_not() {
    for (from, to) in BENCH.iter().chain(TOLD) {
        assert!(ASSIGNMENT.contains(from), "{from}");
        let changed = ASSIGNMENT.replacen(from, to, 1);
        Scenario::read(&changed).unwrap_or_else(|e| panic!("{to}: {e}"));
        assert_ne!(digest(&changed), digest(ASSIGNMENT), "{to}: the whole digest");
        let told = TOLD.contains(&(from, to));
        assert_eq!(bench_digest(&changed) == bench_digest(ASSIGNMENT), told, "{to}: the bench digest");
    }
    // No table of a scenario is forgotten above: what is no table of the lists is one of the names and words.
    let fields = serde_json::to_value(Scenario::read(ASSIGNMENT).unwrap()).unwrap();
    for field in fields.as_object().unwrap().keys().filter(|f| *f != "attempt") {
        let (table, key) = (format!("[{field}]"), format!("{field} = ")); // a list of tables has it within its brackets
        let among = |list: &[(&str, &str)]| {
            list.iter().any(|(from, to)| to.contains(&table) || to.contains(&key) || from.contains(&key))
        };
        let words = ["aim", "brief", "subject", "recorder", "fault", "assignment"].contains(&field.as_str());
        assert!(words || among(BENCH) || among(TOLD), "{field} is tried by no line");
    }
    // How it is written says nothing: comments, blank lines, order, points, what is empty, the word or its hash.
    let other = ASSIGNMENT
        .replace("level = 2\n", "")
        .replace("\nid =", "# A remark.\n\nlevel = 2\nid =")
        .replace("66.0", "66")
        .replace("password = \"chalk and slate\"", &format!("password = \"{}\"", hashed(KEY, WORD)));
    assert_eq!((digest(&other), bench_digest(&other)), (digest(ASSIGNMENT), bench_digest(ASSIGNMENT)));
}

#[test]
fn what_is_handed_out_is_the_same_bench_without_scripts_and_without_the_word() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios");
    let mut seen = 0;
    for file in std::fs::read_dir(folder).unwrap().map(|f| f.unwrap().path()) {
        let text = std::fs::read_to_string(&file).unwrap();
        let here = file.display();
        let out = handed_out(&text);
        assert_eq!(handed_out(&out), out, "{here}");
        assert_eq!((digest(&out), bench_digest(&out)), (digest(&text), bench_digest(&text)), "{here}");
        let (mut a, b) = (Scenario::read(&text).unwrap(), Scenario::read(&out).unwrap());
        a.attempt = a.attempt.into_iter().find(|one| one.expect.passed).into_iter().collect();
        assert_eq!(a, b, "{here}");
        let assigned = format!("{text}\n[assignment]\nkey = \"k\"\npassword = \"chalk and slate\"\n");
        let out = handed_out(&assigned);
        // What somebody wrote before the student came is no script of the student's.
        let written_before = b.pool.is_some_and(|pool| !pool.if_nothing.is_empty());
        assert!(Scenario::read(&out).unwrap().attempt.is_empty(), "{here}");
        assert!(written_before || !out.contains("@count"), "{here}");
        assert!(!out.contains("chalk") && out.contains("password = \"sha256:"), "{here}");
        seen += 1;
    }
    assert!(seen > 40);
}

/// The beats of a bench's first seconds.
fn beats(session: &mut Session) -> Vec<u64> {
    session.run_long(20_000);
    session.chain().unwrap().truth().iter().map(|beat| beat.peak_s.to_bits()).collect()
}

#[test]
fn an_assigned_bench_has_a_heart_of_its_own() {
    let seed = seeds::seed(KEY, &student(0), 1);
    let heart = |text: &str| beats(&mut Session::new(text, seed).unwrap());
    let own = heart(ASSIGNMENT);
    assert_eq!(heart(&handed_out(ASSIGNMENT)), own);
    assert_eq!(heart(&ASSIGNMENT.replace("[subject]", "[pass]\nhum_ratio = 0.5\n\n[subject]")), own);
    let (before, after) = ASSIGNMENT.split_once("[assignment]").unwrap();
    let bare = format!("{before}[subject]{}", after.split_once("[subject]").unwrap().1);
    for other in [&bare, &students::faultless(), &ASSIGNMENT.replace("password = \"chalk and slate\"", "")] {
        assert_ne!(heart(other), own, "{other}");
    }
    // Without an assignment the seed alone decides, as ever.
    assert_eq!(heart(&bare), heart(&bare.replace("[[fault]]\nname = \"power_strip_off\"\n", "")));
}

#[test]
fn scripts_are_told_nothing_of_a_students_bench() {
    let full = include_str!("../scenarios/02-hum-on-the-trace.toml");
    let assignment = "\n[assignment]\nkey = \"k\"\npassword = \"chalk and slate\"\n";
    let shipped = handed_out(&format!("{full}{assignment}"));
    assert!(Session::worked(&shipped).unwrap().is_none());
    assert_eq!(Session::new(&shipped, 5).unwrap().view()["scenario"]["worked"], json!(false));
    // A script that somebody puts back does not change the bench; it is not shown, and learns nothing.
    let attempt = Scenario::read(full).unwrap().attempt[0].clone();
    let block = &full[full.find("[[attempt]]").unwrap()..];
    let back = format!("{shipped}\n{block}");
    assert_eq!(bench_digest(&back), bench_digest(&shipped));
    assert!(Session::worked(&back).unwrap().is_none());
    let mut session = Session::new(&back, attempt.seed).unwrap();
    let told = script::play(&mut session, &attempt.steps).unwrap_err();
    assert!(told.contains("an assigned bench tells no right value"), "{told}");
    let mut half = Session::new(&back, attempt.seed).unwrap();
    half.act(&Action::from_value(json!({"do": "help", "mode": "half"})).unwrap()).unwrap();
    assert!(half.recordings().is_empty(), "the set-up was done by a script of somebody's");
    // Where the assignment says so there is an example, on a heart that no student has whatever seed stands in it.
    let worked = handed_out(&format!("{full}{assignment}worked = true\n"));
    let mut example = Session::worked(&worked).unwrap().unwrap();
    assert_eq!(example.view()["scenario"]["worked"], json!(true));
    let mut student = Session::new(&worked, attempt.seed).unwrap();
    assert_ne!(beats(&mut student), beats(&mut example.clone()));
    while example.worked_next().is_some() {}
    assert!(example.check().is_some_and(|c| c.report.passed), "{:?}", example.check().map(|c| &c.report));
    // The word opens it; the word's hash is no word.
    let assignment = Scenario::read(&shipped).unwrap().assignment.unwrap();
    assert!(assignment.is_opened_by(Some("chalk and slate")));
    for other in [None, Some("chalk"), Some(assignment.password.as_str()), Some("")] {
        assert!(!assignment.is_opened_by(other), "{other:?}");
    }
}

#[test]
fn honest_logs_get_no_remark() {
    let class: Vec<Graded> = (0..30).map(|k| grade(&attempt(k))).collect();
    for (k, graded) in class.iter().enumerate() {
        assert_eq!((&graded.remarks, &graded.against), (&vec![], &vec![]), "student {k}");
    }
    assert!(beside(&class).iter().all(|b| b.alike.is_empty() && b.copies.is_empty() && b.again.is_none()));
    let about = About { begun_s: 1_790_000_000, ended_s: 1_790_000_600, ..About::default() };
    assert_eq!(grade(&(diligent(1), about)).remarks, []);
    // Time that the bench spends by itself before the student comes is not the student's.
    let before = ASSIGNMENT.replace("name_faults = true", "name_faults = true\nbefore = [{ wait = 120.0 }]");
    let (session, about) = attempt_at(&before, "B7", 1, Way::Right);
    assert_eq!(grade(&(session, About { ended_s: about.begun_s + 90, ..about })).remarks, []);
}

#[test]
fn what_a_made_log_looks_like_is_remarked_and_fails_nothing() {
    // Cursors, answers and check at one sample, as a program does them; the clock says less than the bench.
    let seed = seeds::seed(KEY, "Mallory", 1);
    let mut session = Session::new(ASSIGNMENT, seed).unwrap();
    let steps = [
        json!({"do": "look", "at": "subject"}),
        json!({"do": "name", "fault": "power_strip_off"}),
        json!({"do": "switch", "id": "power_strip", "on": true}),
        json!({"wait": 5.0}),
        json!({"do": "time_base", "s": 1.0}),
        json!({"do": "charger", "plugged": false}),
        json!({"do": "name", "fault": "charger_near"}),
        json!({"do": "range", "v": 0.05}),
        json!({"do": "record"}),
        json!({"wait": 20.0}),
        json!({"do": "stop"}),
        json!({"do": "cursor", "which": "a", "t": 1.5}),
        json!({"do": "cursor", "which": "b", "t": 17.5}),
        json!({"do": "answer", "field": "count", "text": "@count"}),
        json!({"do": "answer", "field": "seconds", "text": "@seconds"}),
        json!({"do": "answer", "field": "multiplier", "text": "@multiplier"}),
        json!({"do": "answer", "field": "rate", "text": "@rate"}),
        json!({"do": "check"}),
    ];
    script::play(&mut session, &steps).unwrap();
    let about = About { student: "Mallory".into(), tries: 1, begun_s: 1_790_000_000, ended_s: 1_790_000_005 };
    let graded = grade(&(session, about));
    assert!(graded.verified() && graded.against.is_empty());
    let codes: Vec<&str> = graded.remarks.iter().map(Remark::code).collect();
    assert_eq!(codes, ["all_at_once", "clock", "no_pause"]);
    // Another's log on one's own bench: cursors and marks stand where the other's stand.
    let (other, about) = attempt(0);
    let copied = result::write(&other, &about).unwrap();
    let mut handed: Handed = result::read(&copied).unwrap();
    handed.about.student = "Mallory".into();
    handed.seed = seed;
    handed.claims = None;
    handed.said = None;
    let theirs = handed.grade().unwrap();
    assert_eq!(theirs.own_seed, Some(true));
    let found = beside(&[grade(&attempt(0)), grade(&attempt(1)), theirs.clone()]);
    assert_eq!((&found[0].alike, &found[1].alike, &found[2].alike), (&vec![2], &vec![], &vec![0]));
    let mut class = Class::default();
    for graded in [grade(&attempt(0)), theirs] {
        class.take(Source::default(), graded);
    }
    let lines = class.lines();
    assert!(lines.iter().all(|line| !line.alike.is_empty() && line.copied.is_empty()), "{lines:?}");
    assert!(lines.iter().any(|line| line.state == State::Ready), "a remark fails nothing");
}

#[test]
fn a_set_compares_and_says_which_of_two_would_judge() {
    let mut set = Set::default();
    set.add("one", ASSIGNMENT).unwrap();
    set.add("the same", &handed_out(ASSIGNMENT)).unwrap();
    let stricter = ASSIGNMENT.replace("[subject]", "[pass]\nwindow_s = 19.0\nrecord_s = 19.0\n\n[subject]");
    let told = set.add("two", &stricter).unwrap_err().to_string();
    assert!(told.contains("the same scenario as one"), "{told}");
    assert!(set.add("bad", "id = 3").is_err());
    let handed = |scenario: &str| {
        let (session, about) = attempt_at(scenario, &student(0), 1, Way::Right);
        result::read(&result::write(&session, &about).unwrap()).unwrap()
    };
    let graded = handed(ASSIGNMENT).grade_by(&set).unwrap();
    assert_eq!((graded.compared, graded.passed_before, graded.turned()), (Compared::Same, None, None));
    let graded = handed(&students::faultless()).grade_by(&set).unwrap();
    assert!(graded.compared == Compared::Other && graded.outcome.passed && !graded.counts());
    // Softer criteria in one's own file: those set judge, and the file's own check is still the replay's.
    let soft = ASSIGNMENT.replace("[subject]", "[pass]\nwindow_s = 2.0\n\n[subject]");
    let graded = handed(&soft).grade_by(&set).unwrap();
    assert_eq!((graded.compared, graded.passed_before), (Compared::Changed, Some(true)));
    assert!(graded.verified() && graded.outcome.passed && graded.turned().is_none());
    let mut strict = Set::default();
    strict.add("strict", &stricter).unwrap();
    let graded = handed(&soft).grade_by(&strict).unwrap();
    assert_eq!((graded.turned(), graded.outcome.passed, graded.verified()), (Some(true), false, true));
    assert!(graded.score.is_some());
    // And the other way about: what was not passed by its own time's criteria is by softer ones, after a second check too.
    let mut softer = Set::default();
    softer.add("soft", ASSIGNMENT).unwrap();
    let graded = handed(&stricter).grade_by(&softer).unwrap();
    assert_eq!((graded.turned(), graded.outcome.passed), (Some(false), true));
}

/// A signature that tells the right count to whoever types three beats less.
const TELLS: &str = "\n[[misreading]]\nname = \"off\"\nfield = \"count\"\nformula = \"n_true - 3\"\nwords = \"right is 3 away\"\n";

#[test]
fn misreadings_of_ones_own_that_tell_the_truth_count_against_a_result_and_other_terms_are_remarked() {
    let set = |text: &str| {
        let mut set = Set::default();
        set.add("set", text).unwrap();
        set
    };
    let made = |text: &str| attempt_at(text, "A 1", 1, Way::Right);
    let of_file = |text: &str, set: &Set| {
        let (session, about) = made(text);
        result::read(&result::write(&session, &about).unwrap()).unwrap().grade_by(set).unwrap()
    };
    let codes = |graded: &Graded| {
        let against: Vec<&str> = graded.against.iter().map(|a| a.code()).collect();
        (against, graded.remarks.iter().map(Remark::code).collect::<Vec<_>>())
    };
    let plain = set(ASSIGNMENT);
    let own = format!("{ASSIGNMENT}{TELLS}");
    let graded = of_file(&own, &plain);
    assert!(graded.verified() && graded.outcome.passed && !graded.counts(), "{:?}", graded.doubts);
    assert_eq!(codes(&graded), (vec!["told_truth"], vec!["other_words"]));
    let mut class = Class::default();
    class.set.add("set", ASSIGNMENT).unwrap();
    class.take(Source::default(), graded);
    let line = &class.lines()[0];
    assert_eq!(
        (line.state, &line.against, &line.remarks),
        (State::Tried, &vec!["told_truth"], &vec!["other_words"])
    );
    // However it is written, and beside one that was set.
    let set_own = format!("{ASSIGNMENT}{}", TELLS.replace("n_true - 3", "n_true*2"));
    let other =
        format!("{set_own}{}", TELLS.replace("off", "further").replace("n_true - 3", "60 * N_TRUE / T_True"));
    assert_eq!(codes(&of_file(&other, &set(&set_own))).0, ["told_truth"]);
    // What was set and then put right, tolerances, words, criteria, tries, is remarked and holds nothing against anybody.
    let nothing: Vec<&str> = Vec::new();
    for regraded in [
        own.replace("right is 3 away", "Have you missed three?"),
        own.replace("n_true - 3\"", "n_true-3\"\ntolerance = 1.0"),
        own.replace("[subject]", "[pass]\nfill_min = 0.2\n\n[subject]"),
        own.replace("attempts = 3", "attempts = 4"),
        format!("{own}\n[[hint]]\nabout = \"count\"\nrung = \"look\"\nwords = \"w\"\n"),
    ] {
        assert_eq!(
            codes(&of_file(&own, &set(&regraded))),
            (nothing.clone(), vec!["other_words"]),
            "{regraded}"
        );
    }
    let harmless = format!("{ASSIGNMENT}{}", TELLS.replace("n_true - 3", "n - 3"));
    assert_eq!(codes(&of_file(&harmless, &plain)), (nothing.clone(), vec!["other_words"]));
    // Words alone are nobody's concern.
    for words in [
        ("title = \"Before the lab\"", "title = \"Before Tuesday\""),
        ("closing = \"Hand in", "closing = \"Now hand in"),
    ] {
        assert_eq!(
            codes(&of_file(&ASSIGNMENT.replace(words.0, words.1), &plain)),
            (nothing.clone(), nothing.clone())
        );
    }
    assert_eq!(codes(&of_file(ASSIGNMENT, &plain)), (nothing.clone(), nothing.clone()));
    // A code tells of its words no more than that they are others.
    let of_code = |text: &str| {
        let (session, about) = made(text);
        let code = session.code(&about).unwrap().write();
        codes(&Handed::of_code(&code, &plain, |_| None).unwrap().grade_by(&plain).unwrap())
    };
    assert_eq!(of_code(&own), (nothing.clone(), vec!["other_words"]));
    assert_eq!(of_code(ASSIGNMENT), (nothing.clone(), nothing));
}

/// What somebody hands in, with every deed so many samples later, under a name.
fn moved(made: &(Session, About), samples: u64, code: &str) -> Graded {
    let mut handed = result::read(&result::write(&made.0, &made.1).unwrap()).unwrap();
    handed.log.iter_mut().for_each(|logged| logged.at += samples);
    handed.samples += samples;
    handed.about.student = code.into();
    (handed.claims, handed.said) = (None, None);
    handed.grade().unwrap()
}

#[test]
fn a_copy_with_every_time_moved_by_a_sample_is_a_copy() {
    // Everybody has one heart.
    let same = ASSIGNMENT.replace("attempts = 3", "attempts = 3\nseeds = \"same\"");
    let shared = |code: &str, way| {
        let (mut session, about) = attempt_at(&same, "", 1, way);
        wait(&mut session, 1.0);
        (session, About { student: code.into(), ..about })
    };
    let ada = shared("Ada", Way::Right);
    for samples in [1, 16, 40] {
        let found = beside(&[grade(&ada), moved(&ada, samples, "Ben"), grade(&shared("Cy", Way::Six))]);
        assert_eq!(found[0].copies, [1], "{samples}: {found:?}");
        assert_eq!(found[1].copies, [0]);
        assert_eq!((&found[2].copies, &found[2].alike), (&vec![], &vec![]), "who did otherwise is no copy");
    }
    // With pauses of another length it is another's work.
    let mut handed = result::read(&result::write(&ada.0, &ada.1).unwrap()).unwrap();
    let half = handed.log.len() / 2;
    handed.log[half..].iter_mut().for_each(|logged| logged.at += 20);
    handed.samples += 20;
    handed.about.student = "Ben".into();
    (handed.claims, handed.said) = (None, None);
    let found = beside(&[grade(&ada), handed.grade().unwrap()]);
    assert_eq!(found[0].copies, Vec::<usize>::new());
}

#[test]
fn what_the_bench_goes_on_for_by_itself_after_the_last_deed_is_no_time_of_the_students() {
    let made = |idle_s| {
        let (mut session, about) = attempt(0);
        let before = session.chain().unwrap().time_s();
        wait(&mut session, idle_s);
        (before / 60.0, grade(&(session, about)).minutes)
    };
    let (before, minutes) = made(500.0);
    assert!((minutes - before - 500.0 / 60.0).abs() < 0.01, "{minutes} after {before}");
    let (before, minutes) = made(700.0);
    assert!(minutes <= before && minutes > before - 0.5, "{minutes} after {before}");
}
