//! Scenario files: the ones that ship, and what is said of bad ones.

mod shipped;

use dicrotic::bench::wiring::{ENDS, End, SOCKETS, Socket};
use dicrotic::bench::{Change, Refusal as BenchRefusal};
use dicrotic::measure::quality;
use dicrotic::scenario::Scenario;
use dicrotic::scenario::fault::{self, Symptom};
use dicrotic::session::symptom::measure;
use dicrotic::session::{Action, Refusal, Session, script};
use std::collections::{BTreeMap, BTreeSet};

fn shipped() -> Vec<(String, String)> {
    let files = shipped::scenarios();
    assert!(files.len() >= 28);
    files
}

#[test]
fn every_scripted_attempt_ends_as_its_file_says() {
    for (name, text) in shipped() {
        let scenario = Scenario::read(&text).unwrap_or_else(|e| panic!("{name}: {e}"));
        let (good, bad) = (
            scenario.attempt.iter().filter(|a| a.expect.passed).count(),
            scenario.attempt.iter().filter(|a| !a.expect.passed).count(),
        );
        assert!(good >= 1 && bad >= 1, "{name}: a good attempt and a bad one");
        assert_eq!(script::replay_all(&scenario, &text), Vec::<String>::new(), "{name}");
    }
}

#[test]
fn a_script_with_another_expectation_is_reported() {
    let (_, text) = &shipped()[0];
    let wrong = text.replacen("expect = { passed = true", "expect = { passed = false", 1);
    let scenario = Scenario::read(&wrong).unwrap();
    let told = script::replay_all(&scenario, &wrong);
    assert_eq!(told.len(), 1);
    assert!(told[0].contains("expected false"), "{}", told[0]);
}

const LEAST: &str = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n";

#[test]
fn five_lines_make_a_scenario() {
    Scenario::read(LEAST).unwrap();
}

#[test]
fn a_bad_file_is_told_where_and_what() {
    for (extra, field, expected) in [
        ("[power_line]\nhz = 55.0\n", "power_line.hz", "50 or 60"),
        ("[power_line]\nvolts = \"much\"\n", "power_line.volts", "f64"),
        ("[recorder]\nrange_v = 0.3\n", "recorder.range_v", "0.1"),
        ("[recorder]\nspeed = 1\n", "recorder.speed", "one of"),
        ("[trouble]\nunrest = 2.0\n", "trouble.unrest", "from 0 to 1"),
        ("[bench.strap]\ntightness = -1.0\n", "bench.strap.tightness", "from 0 to 1"),
        (
            "[bench]\nplace = [{ part = \"recorder\", x = 500.0, y = 1.0 }]\n",
            "bench.place[0]",
            "on the table",
        ),
        ("[bench]\nplace = [{ part = \"sofa\", x = 5.0, y = 1.0 }]\n", "bench.place[0].part", "one of"),
        ("[bench]\nplug = [{ end = \"sensor\", socket = \"outlet1\" }]\n", "bench.plug[0]", "can be done"),
        ("[pass]\nwindow_s = 0.0\n", "pass.window_s", "seconds"),
        ("[subject]\nrest_rate_bpm = 9.0\n", "subject.rest_rate_bpm", ""),
        ("time_base_s = 3.0\n", "time_base_s", "one of"),
        ("wobble = 3.0\n", "wobble", "one of"),
        ("[broken\n", "file", "TOML"),
    ] {
        let error = Scenario::read(&format!("{LEAST}{extra}")).unwrap_err();
        assert_eq!(error.field, field, "{error}");
        assert!(error.expected.contains(expected), "{error}");
        assert!(!error.found.is_empty(), "{error}");
    }
    let error = Scenario::read(&format!("{LEAST}[bench]\nplace = [{{ part = \"recorder\", x = 3.0 }}]\n"))
        .unwrap_err();
    assert_eq!((error.field.as_str(), error.line), ("bench.place[0].y", Some(7)), "{error}");
    let error = Scenario::read("level = 1\n").unwrap_err();
    assert_eq!(error.field, "id", "{error}");
    let error = Scenario::read(&LEAST.replace("level = 1", "level = \"one\"")).unwrap_err();
    assert_eq!((error.field.as_str(), error.line), ("level", Some(2)), "{error}");
    assert!(Scenario::read(&"#".repeat(70_000)).is_err());
}

fn all_shipped() -> Vec<(String, String, Scenario)> {
    shipped().into_iter().map(|(name, text)| (name, text.clone(), Scenario::read(&text).unwrap())).collect()
}

#[test]
fn shipped_scenarios_have_names_of_their_own_and_follow_their_levels() {
    let all = all_shipped();
    let ids: BTreeSet<&str> = all.iter().map(|(_, _, s)| s.id.as_str()).collect();
    let titles: BTreeSet<&str> = all.iter().map(|(_, _, s)| s.title.as_str()).collect();
    assert_eq!((ids.len(), titles.len()), (all.len(), all.len()));
    for (name, _, scenario) in &all {
        assert!(name.ends_with(&format!("-{}.toml", scenario.id)), "{name}: {}", scenario.id);
    }
    // The first three are the ones that show the page; from there on the files climb, once over the faults, once, from the 54th on,
    // over the kinds of question, once over the experiments (62a and on: what is drawn comes last on the path), and once over what
    // is drawn.
    let levels: Vec<u8> = all.iter().skip(3).take(50).map(|(_, _, s)| s.level).collect();
    assert!(levels.is_sorted(), "{levels:?}");
    let (drawn, asked): (Vec<_>, Vec<_>) = all.iter().skip(53).partition(|(_, _, s)| s.pool.is_some());
    let (experiments, questions): (Vec<_>, Vec<_>) =
        asked.into_iter().partition(|(_, _, s)| s.experiment.is_some());
    for (what, least) in [(questions, 8), (experiments, 6), (drawn, 20)] {
        let levels: Vec<u8> = what.iter().map(|(_, _, s)| s.level).collect();
        assert!(levels.is_sorted() && levels.len() >= least, "{levels:?}");
    }
    assert_eq!((levels[0], levels[levels.len() - 1]), (1, 9));
}

/// A student's path: whoever is to name a fault there draws it, and a level begins with what is measured at it.
#[test]
fn the_path_draws_its_faults_and_teaches_a_measurement_before_it_hides_a_fault() {
    let path: Vec<_> =
        all_shipped().into_iter().filter(|(_, _, s)| s.fault.is_empty() || !s.name_faults).collect();
    for level in 1..=9 {
        let here: Vec<bool> =
            path.iter().filter(|(_, _, s)| s.level == level).map(|(_, _, s)| s.pool.is_some()).collect();
        assert!(here.is_sorted() && !here.is_empty(), "level {level}: {here:?}");
    }
    let first_drawn = path.iter().find(|(_, _, s)| s.pool.is_some()).unwrap().2.level;
    assert!(first_drawn >= 2);
    assert!(path.iter().filter(|(_, _, s)| s.pool.is_some()).count() >= 20);
}

#[test]
fn shipped_scenarios_meet_every_impression_and_several_regions() {
    let all = all_shipped();
    let met: BTreeSet<_> = all
        .iter()
        .flat_map(|(_, _, s)| s.fault.iter())
        .map(|spec| fault::named(&spec.name).unwrap().impression)
        .collect();
    let known: BTreeSet<_> = fault::all().map(|f| f.impression).collect();
    assert_eq!(met, known);
    let regions: BTreeSet<(u32, u32)> =
        all.iter().map(|(_, _, s)| (s.power_line.volts as u32, s.power_line.hz as u32)).collect();
    for region in [(230, 50), (120, 60), (220, 60), (100, 50)] {
        assert!(regions.contains(&region), "{region:?}");
    }
}

/// Look-alikes come with the same words, so that only a test tells them apart.
#[test]
fn look_alikes_share_their_words_and_differ_in_their_fault() {
    let all = all_shipped();
    let mut sets: BTreeMap<&str, Vec<&Scenario>> = BTreeMap::new();
    for (_, _, scenario) in &all {
        if let Some((stem, letter)) = scenario.id.rsplit_once('-')
            && letter.len() == 1
        {
            sets.entry(stem).or_default().push(scenario);
        }
    }
    assert!(sets.len() >= 5, "{sets:?}");
    for (stem, set) in sets {
        assert!(set.len() >= 2, "{stem}");
        let words: BTreeSet<_> = set
            .iter()
            .map(|s| (&s.aim, &s.brief, s.title.trim_end_matches(|c: char| c.is_ascii_digit())))
            .collect();
        assert_eq!(words.len(), 1, "{stem}");
        let faults: BTreeSet<Vec<&str>> =
            set.iter().map(|s| s.fault.iter().map(|f| f.name.as_str()).collect()).collect();
        assert_eq!(faults.len(), set.len(), "{stem}");
    }
}

/// A right way of working is right with other subjects too: what it names, counts and works out is right with every
/// seed. Only the size of the pulse, which the script cannot look at, may ask for another range or another stretch.
#[test]
fn a_right_way_of_working_holds_for_other_seeds() {
    let of_size = [
        "trace_small",
        "trace_tall",
        "trace_clipped",
        "trace_restless",
        "trace_spike",
        "trace_step",
        "trace_unlike",
    ];
    let (mut runs, mut passed) = (0, 0);
    for (name, text, scenario) in all_shipped() {
        for attempt in scenario.attempt.iter().filter(|a| a.expect.passed && !scenario.fault.is_empty()) {
            for k in 1..=2 {
                let mut other = attempt.clone();
                other.seed = attempt.seed + 1000 * k;
                let session = script::replay(&text, &other).unwrap_or_else(|e| panic!("{name}: {e}"));
                let report = &session.check().unwrap().report;
                runs += 1;
                passed += u32::from(report.passed);
                for finding in &report.steps {
                    use dicrotic::assess::verdict::Verdict;
                    let bad = matches!(finding.verdict, Verdict::Wrong | Verdict::Missing);
                    assert!(
                        !bad || of_size.contains(&finding.code),
                        "{name}, seed {}: {}",
                        other.seed,
                        finding.code
                    );
                }
            }
        }
    }
    assert!(passed * 4 >= runs * 3, "{passed} of {runs}");
}

/// A calm subject at a bench whose parts lie apart.
const APART: &str = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
    [subject]\npulse_mv = 40\nrestlessness = 0\nfinger_temp_c = 33\n\
    [recorder]\nrange_v = 0.05\n[bench]\nstart = \"apart\"\n";

const EIGHT: [&str; 8] = [
    r#"{"do": "plug", "end": "power_recorder", "socket": "recorder_inlet"}"#,
    r#"{"do": "plug", "end": "power_wall", "socket": "outlet2"}"#,
    r#"{"do": "plug", "end": "data_recorder", "socket": "recorder_data"}"#,
    r#"{"do": "plug", "end": "data_computer", "socket": "port1"}"#,
    r#"{"do": "plug", "end": "sensor", "socket": "in1"}"#,
    r#"{"do": "switch", "id": "recorder", "on": true}"#,
    r#"{"do": "strap_on"}"#,
    r#"{"do": "strap", "tightness": 0.72}"#,
];

fn act(session: &mut Session, step: &str) -> Result<(), Refusal> {
    session.act(&Action::from_value(serde_json::from_str(step).unwrap()).unwrap())
}

fn wait(session: &mut Session, seconds: u64) {
    session.run_long(seconds * 1000);
}

/// The bench wired right, after `wait` seconds.
fn wired(text: &str) -> Session {
    let mut session = Session::new(text, 5).unwrap();
    for step in EIGHT {
        act(&mut session, step).unwrap_or_else(|e| panic!("{step}: {e:?}"));
    }
    wait(&mut session, 14);
    session
}

fn seen(session: &Session) -> bool {
    session.chain().unwrap().seen()
}

fn pulse(session: &Session) -> bool {
    measure(session, Symptom::NoPulse) < 1.0
}

#[test]
fn the_bench_is_wired_from_apart_in_eight_actions() {
    let session = wired(APART);
    assert!(session.log().len() <= 8, "{}", session.log().len());
    assert!(seen(&session) && pulse(&session));
    // Each of them is needed: without it the unit is not seen, or no pulse of use is there.
    for (left_out, step_left_out) in EIGHT.iter().enumerate() {
        let mut session = Session::new(APART, 5).unwrap();
        for (k, step) in EIGHT.iter().enumerate() {
            // The strap cannot be pulled tight where there is none.
            if k != left_out && !(left_out == 6 && k == 7) {
                act(&mut session, step).unwrap();
            }
        }
        wait(&mut session, 14);
        let small = measure(&session, Symptom::Weak) > 1.0;
        assert!(!seen(&session) || !pulse(&session) || small, "{step_left_out}");
    }
}

/// Every plug into every socket: what has another shape is refused and nothing changes; what fits goes in, and the
/// bench does what such a bench would do.
#[test]
fn every_plug_in_every_socket_is_refused_for_its_shape_or_has_its_consequence() {
    let (mut refused, mut fitting) = (0, 0);
    for end in ENDS {
        for socket in SOCKETS {
            let here = format!("{end:?} into {socket:?}");
            let mut session = wired(APART);
            let before = session.chain().unwrap().bench().clone();
            let done = session.act(&Action::Bench(Change::Plug { end, socket }));
            if end.shape() != socket.shape() {
                let expected = Err(Refusal::Bench(BenchRefusal::DoesNotFit { end, socket }));
                assert_eq!(done, expected, "{here}");
                assert_eq!(*session.chain().unwrap().bench(), before, "{here}");
                assert!(seen(&session), "{here}");
                refused += 1;
                continue;
            }
            assert_eq!(done, Ok(()), "{here}");
            fitting += 1;
            wait(&mut session, 14);
            match socket {
                // Power without data.
                Socket::PortCharge => assert!(!seen(&session), "{here}"),
                Socket::In2 | Socket::In3 => {
                    assert!(seen(&session) && !pulse(&session), "{here}");
                    // The shown input is open: hum, and a tap leaves nothing.
                    assert!(open_input_hum(&session) > 0.0, "{here}");
                    assert!(!feels_a_tap(&mut session), "{here}");
                    for n in 1..=3 {
                        act(&mut session, &format!(r#"{{"do": "input", "n": {n}}}"#)).unwrap();
                        wait(&mut session, 14);
                        let there = socket.input() == Some(n);
                        assert_eq!(pulse(&session), there, "{here}, input {n} shown");
                        assert_eq!(feels_a_tap(&mut session), there, "{here}, input {n} shown");
                    }
                }
                _ => assert!(seen(&session) && pulse(&session), "{here}"),
            }
        }
        // And in none.
        let mut session = wired(APART);
        session.act(&Action::Bench(Change::Unplug { end })).unwrap();
        wait(&mut session, 14);
        match end {
            End::Sensor => {
                assert!(seen(&session) && !pulse(&session) && open_input_hum(&session) > 0.0);
                assert!(!feels_a_tap(&mut session));
            }
            _ => assert!(!seen(&session), "{end:?} out"),
        }
    }
    // One inlet, five outlets, one data socket, three ports, three signal sockets; nothing goes into the calibrator's post.
    assert_eq!((fitting, refused), (13, 57));
}

/// Hum of the power line on the trace, V peak to peak.
fn open_input_hum(session: &Session) -> f64 {
    let live = session.live().unwrap();
    let hum = quality::hum(&live.last(5.0), live.rate_hz(), 50.0).unwrap().pp;
    // Far over what noise alone would give: 15 microvolts rms over half a kilohertz, seen through 0.4 s.
    if hum > 50e-6 { hum } else { 0.0 }
}

/// Whether a tap on the sensor shows.
fn feels_a_tap(session: &mut Session) -> bool {
    let spread = |session: &Session| {
        let values = session.live().unwrap().last(1.0);
        let (low, high) = values.iter().fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(*v), h.max(*v)));
        high - low
    };
    let before = spread(session);
    act(session, r#"{"do": "tap_sensor"}"#).unwrap();
    wait(session, 1);
    let felt = spread(session) > 1.5 * before;
    wait(session, 2);
    felt
}

#[test]
fn a_socket_that_is_taken_takes_no_second_plug() {
    let mut session = Session::new(&format!("{APART}charger = true\n"), 5).unwrap();
    let taken = Refusal::Bench(BenchRefusal::SocketTaken { socket: Socket::Outlet4 });
    let plug = r#"{"do": "plug", "end": "power_wall", "socket": "outlet4"}"#;
    assert_eq!(act(&mut session, plug), Err(taken.clone()));
    act(&mut session, r#"{"do": "charger", "plugged": false}"#).unwrap();
    act(&mut session, plug).unwrap();
    assert_eq!(act(&mut session, r#"{"do": "charger", "plugged": true}"#), Err(taken));
}

#[test]
fn a_strip_without_power_feeds_none_of_its_outlets_and_the_wall_goes_on() {
    for (socket, live) in
        [("outlet1", false), ("outlet2", false), ("outlet3", false), ("outlet4", false), ("wall", true)]
    {
        let mut session = wired(APART);
        act(&mut session, &format!(r#"{{"do": "plug", "end": "power_wall", "socket": "{socket}"}}"#))
            .unwrap();
        assert!(seen(&session), "{socket}");
        act(&mut session, r#"{"do": "switch", "id": "power_strip", "on": false}"#).unwrap();
        wait(&mut session, 1);
        assert_eq!(seen(&session), live, "{socket}");
    }
}

/// A scripted attempt that passes is a model of how to work: nothing is said against it.
#[test]
fn attempts_that_pass_are_worked_as_they_should_be() {
    let mut wrong = Vec::new();
    let mut judged = 0;
    for (name, text, scenario) in all_shipped() {
        for attempt in scenario.attempt.iter().filter(|a| a.expect.passed) {
            let session = script::replay(&text, attempt).unwrap();
            for remark in &session.check().unwrap().process {
                judged += 1;
                if remark.code != "process_tested" {
                    wrong.push(format!("{name}: {} {}", remark.code, remark.args));
                }
            }
        }
    }
    assert!(judged >= 20, "{judged}");
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn a_question_that_makes_no_sense_is_named_with_its_place() {
    let with = |task: &str| {
        let text =
            format!("id = \"q\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n[task]\n{task}\n");
        Scenario::read(&text).map_err(|e| e.to_string())
    };
    for (task, parts) in [
        ("kind = \"guess\"", ["task.kind", "own_window"]),
        ("kind = \"given_window\"\nlength = 3", ["task", "length"]),
        ("kind = \"given_window\"\nseconds = [3.0]", ["task.seconds", "from 5 to 120"]),
        ("kind = \"own_window\"\nn = [2, 3]", ["task.n", "another kind"]),
        ("kind = \"intervals\"\nn = [7, 3]", ["task.n", "ascending"]),
        ("kind = \"name_fault\"", ["name_faults", "true"]),
        ("kind = \"own_window\"\none_of = [\"moving\"]", ["task.one_of", "another kind"]),
    ] {
        let error = with(task).unwrap_err();
        assert!(parts.iter().all(|part| error.contains(part)), "{task}: {error}");
    }
    assert!(with("kind = \"intervals\"\nn = [3, 7]").is_ok());
    assert!(with("").is_ok());
    let naming = |one_of: &str| {
        let head = "id = \"q\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\nname_faults = true\n";
        Scenario::read(&format!("{head}[task]\nkind = \"name_fault\"\none_of = [{one_of}]\n"))
    };
    let error = naming("\"moving\", \"gremlins\"").unwrap_err();
    assert!(error.field == "task.one_of" && error.found.contains("gremlins"), "{error}");
    // Each seed draws one, always the same, and all of them come up.
    let drawn = |seed| naming("\"moving\", \"strap_loose\"").unwrap().drawn(seed).fault[0].name.clone();
    let all: BTreeSet<String> = (0..30).map(drawn).collect();
    assert_eq!(all, BTreeSet::from(["moving".to_string(), "strap_loose".into()]));
    assert_eq!(drawn(7), drawn(7));
}
