//! A recording that was opened from a file: what is shown of it is what is counted on, judged and saved; its own samples are kept.

use dicrotic::exchange::{self, Options, glance};
use dicrotic::math;
use dicrotic::session::{Action, Refusal, Session};
use serde_json::{Value, json};

const RATE: f64 = 200.0;

/// A pulse of so many beats a minute about a level, 40 s.
fn pulse(bpm: f64, level: f64) -> Vec<f64> {
    let bump = |u: f64, at: f64, width: f64| math::exp(-0.5 * ((u - at) / width) * ((u - at) / width));
    (0..(40.0 * RATE) as usize)
        .map(|k| {
            let u = (k as f64 / RATE * bpm / 60.0) % 1.0;
            level + bump(u, 0.25, 0.07) + 0.35 * bump(u, 0.58, 0.09)
        })
        .collect()
}

fn hummed(size: f64) -> Vec<f64> {
    let hum = |k: usize| size * math::sin(math::TAU * 50.0 * k as f64 / RATE);
    pulse(75.0, 0.0).iter().enumerate().map(|(k, v)| v + hum(k)).collect()
}

fn act(session: &mut Session, action: Value) -> Result<(), Refusal> {
    session.act(&Action::from_value(action).unwrap())
}

fn done(session: &mut Session, actions: &[Value]) {
    for action in actions {
        act(session, action.clone()).unwrap_or_else(|e| panic!("{action}: {e:?}"));
    }
}

fn shown(session: &Session) -> Vec<f64> {
    let recording = &session.recording().unwrap().recording;
    recording.values(0, recording.len())
}

/// Both cursors, 16 s apart, so that their ends lie between beats of 75 beats/min, and the right blanks for what is between them.
fn read(session: &mut Session, count: &str) -> Value {
    done(
        session,
        &[json!({"do": "cursor", "which": "a", "t": 4.0}), json!({"do": "cursor", "which": "b", "t": 20.0})],
    );
    for (field, text) in [("count", count), ("seconds", "16"), ("multiplier", "3.75"), ("rate", "75")] {
        act(session, json!({"do": "answer", "field": field, "text": text})).unwrap();
    }
    act(session, json!({"do": "check"})).unwrap();
    session.view()["check"].clone()
}

fn beats(session: &Session) -> usize {
    session.reference_peaks().iter().filter(|p| (4.0..20.0).contains(&p.at_s)).count()
}

#[test]
fn a_recording_that_stands_upside_down_is_counted_right_when_it_is_inverted() {
    let down: Vec<f64> = pulse(75.0, 3.0).iter().map(|v| -v).collect();
    let mut session = Session::of_recording("r.csv", RATE, &down);
    let before = session.reference_peaks();
    act(&mut session, json!({"do": "invert", "on": true})).unwrap();
    let upright = Session::of_recording("r.csv", RATE, &pulse(75.0, 3.0));
    let (found, expected) = (session.reference_peaks(), upright.reference_peaks());
    assert_eq!(found.len(), expected.len());
    for (x, y) in found.iter().zip(&expected) {
        assert!((x.at_s - y.at_s).abs() < 1.5 / RATE, "{} {}", x.at_s, y.at_s);
    }
    assert_eq!((beats(&session), read(&mut session, "20")["passed"].clone()), (20, json!(true)));
    // Back again: the file's own samples and beats, to the last bit.
    let file = Session::of_recording("r.csv", RATE, &down);
    act(&mut session, json!({"do": "invert", "on": false})).unwrap();
    assert_eq!((shown(&session), session.reference_peaks()), (shown(&file), before));
    assert_eq!(session.view()["display"]["as_in_file"], true);
}

#[test]
fn hum_of_fifty_hertz_vanishes_by_the_notch_and_by_it_alone() {
    let clean = pulse(75.0, 0.0);
    let mut session = Session::of_recording("r.csv", RATE, &hummed(0.6));
    let rest = |session: &Session, from_s: f64, to_s: f64| {
        let (a, b) = ((from_s * RATE) as usize, (to_s * RATE) as usize);
        let values = shown(session);
        (a..b).map(|k| (values[k] - clean[k]).abs()).fold(0.0, f64::max)
    };
    assert!(rest(&session, 0.0, 40.0) > 0.59);
    act(&mut session, json!({"do": "notch", "hz": 60})).unwrap();
    assert!(rest(&session, 2.0, 40.0) > 0.5, "the notch of another power line takes it");
    act(&mut session, json!({"do": "notch", "hz": 50})).unwrap();
    // Hum of .6 is under a hundredth of the pulse; nor does it show at the beginning.
    assert!(rest(&session, 2.0, 40.0) < 0.01, "{}", rest(&session, 2.0, 40.0));
    assert!(rest(&session, 0.0, 2.0) < 0.03, "{}", rest(&session, 0.0, 2.0));
    assert_eq!(read(&mut session, "20")["passed"], true);
}

#[test]
fn no_filter_changes_how_many_beats_a_reading_is_compared_with() {
    // A pulse with tall side waves, as devices give it that have filtered it already: 60 beats/min, 40 s.
    let bump = |u: f64, at: f64, width: f64| math::exp(-0.5 * ((u - at) / width) * ((u - at) / width));
    let ringing = |u: f64| {
        bump(u, 0.2, 0.035) - 0.2 * bump(u, 0.4, 0.05) + 0.2 * bump(u, 0.55, 0.045)
            - 0.08 * bump(u, 0.69, 0.05)
            + 0.05 * bump(u, 0.88, 0.07)
    };
    // Hearts are uneven: by a tenth to either side within some breaths.
    let phase = |t: f64| t + 0.1 * math::sin(math::TAU * t / 5.3) * 5.3 / math::TAU;
    let rung: Vec<f64> = (0..(40.0 * RATE) as usize).map(|k| ringing(phase(k as f64 / RATE) % 1.0)).collect();
    let mut differing = Vec::new();
    for (wave, beats) in [(rung, 40), (pulse(75.0, 0.0), 50)] {
        let plain = Session::of_recording("r.csv", RATE, &wave).reference_peaks().len();
        assert!((beats - 1..=beats).contains(&plain), "{plain} of {beats} without a filter");
        let passes = [0.05, 0.1, 0.5, 1.0, 2.0, 7.0].map(|hz| ("high_pass", hz)).into_iter();
        let passes = passes.chain([1.0, 2.0, 3.0, 5.0, 10.0, 15.0, 30.0, 50.0].map(|hz| ("low_pass", hz)));
        for (name, hz) in passes {
            for (order, inverted) in [(1, false), (2, false), (2, true)] {
                let values: Vec<f64> = wave.iter().map(|v| if inverted { -v } else { *v }).collect();
                let mut session = Session::of_recording("r.csv", RATE, &values);
                act(&mut session, json!({"do": "invert", "on": inverted})).unwrap();
                act(&mut session, json!({"do": name, "hz": hz, "order": order})).unwrap();
                let found = session.reference_peaks().len();
                if !(beats - 2..=beats + 2).contains(&found) {
                    differing.push(format!("{name} {hz} Hz, order {order}: {found} of {beats}"));
                }
            }
        }
    }
    assert!(differing.is_empty(), "{differing:#?}");
}

#[test]
fn a_filter_starts_without_a_step_of_its_own() {
    // Far from zero: what is not settled shows a step of a thousand.
    let level = pulse(75.0, 1000.0);
    for (action, between) in [
        (json!({"do": "high_pass", "hz": 0.5, "order": 2}), (-1.0, 1.0)),
        (json!({"do": "high_pass", "hz": 0.05, "order": 1}), (-1.0, 1.0)),
        (json!({"do": "low_pass", "hz": 5, "order": 2}), (999.9, 1001.1)),
        (json!({"do": "notch", "hz": 50}), (999.9, 1001.1)),
    ] {
        let mut session = Session::of_recording("r.csv", RATE, &level);
        act(&mut session, action.clone()).unwrap();
        let out: Vec<f64> =
            shown(&session).into_iter().filter(|v| !(between.0..=between.1).contains(v)).collect();
        assert!(out.is_empty(), "{action}: {out:?}");
    }
}

#[test]
fn the_range_changes_no_answer_and_fits_the_recordings_own_height() {
    let mut session = Session::of_recording("r.csv", RATE, &pulse(75.0, 512.0));
    let display = session.view()["display"].clone();
    assert_eq!(
        display["choices"]["range_v"],
        json!([1000.0, 0.0]),
        "smaller ones show nothing of it, and this one is taller than all of it"
    );
    assert_eq!((&display["range_v"], &display["as_in_file"]), (&json!(0.0), &json!(true)));
    let (peaks, before) = (session.reference_peaks(), shown(&session));
    act(&mut session, json!({"do": "zero"})).unwrap();
    // Between .01 of the height and all of it; 1-2-5 steps (design default).
    assert_eq!(session.view()["display"]["choices"]["range_v"], json!([1.0, 0.0, 0.5, 0.2, 0.1, 0.05, 0.02]));
    // Each shows less than the one before it.
    let mut tallest = f64::INFINITY;
    for v in [1.0, 0.0, 0.5, 0.2, 0.1, 0.05, 0.02] {
        act(&mut session, json!({"do": "range", "v": v})).unwrap();
        let (low, high) = session.value_range();
        assert!(high - low < tallest, "{v}: {low} to {high}");
        tallest = high - low;
    }
    for v in [1.0, 0.02, 0.0] {
        act(&mut session, json!({"do": "range", "v": v})).unwrap();
        let (low, high) = session.value_range();
        assert!(if v > 0.0 { (low, high) == (-v, v) } else { high - low > 0.9 && high - low < 1.2 });
        assert_eq!(session.reference_peaks(), peaks);
    }
    assert!(matches!(
        act(&mut session, json!({"do": "range", "v": 3.0})),
        Err(Refusal::BadValue { field: "range_v", .. })
    ));
    let mean = shown(&session).iter().sum::<f64>() / before.len() as f64;
    assert!(mean.abs() < 0.02, "{mean}");
    // A zero that was taken stays in the middle when the trace is inverted.
    act(&mut session, json!({"do": "invert", "on": true})).unwrap();
    let mean = shown(&session).iter().sum::<f64>() / before.len() as f64;
    assert!(mean.abs() < 0.02, "{mean}");
    done(&mut session, &[json!({"do": "invert", "on": false}), json!({"do": "zero_clear"})]);
    assert_eq!(shown(&session), before);
    let check = |range: f64| {
        let mut session = Session::of_recording("r.csv", RATE, &pulse(75.0, 512.0));
        done(&mut session, &[json!({"do": "zero"}), json!({"do": "range", "v": range})]);
        let mut check = read(&mut session, "19");
        check.as_object_mut().unwrap().remove("course");
        check
    };
    assert_eq!(check(1.0), check(0.02));
}

#[test]
fn cursors_and_marks_go_with_the_wave_that_a_filter_shows_late() {
    let mut session = Session::of_recording("r.csv", RATE, &pulse(75.0, 0.0));
    let marks: Vec<f64> = session.reference_peaks().iter().map(|p| p.at_s).skip(3).take(12).collect();
    for t in &marks {
        act(&mut session, json!({"do": "mark", "t": t})).unwrap();
    }
    let (a, b) = (marks[1] - 0.3, marks[9] + 0.3);
    done(
        &mut session,
        &[json!({"do": "cursor", "which": "a", "t": a}), json!({"do": "cursor", "which": "b", "t": b})],
    );
    let before = session.recording().unwrap().clone();
    act(&mut session, json!({"do": "low_pass", "hz": 3, "order": 2})).unwrap();
    let kept = session.recording().unwrap().clone();
    let by = kept.a.unwrap() - a;
    // Delay of a second-order Butterworth low-pass at frequencies well under its corner: sqrt 2 / (2 pi 3 Hz) = 75 ms (Oppenheim &
    // Schafer, ch. 5 and 7; worked out here).
    assert!((0.055..0.1).contains(&by), "{by}");
    assert!((kept.b.unwrap() - b - by).abs() < 1e-9);
    assert_eq!(kept.marks_in_window(), before.marks_in_window());
    for (mark, was) in kept.marks.iter().zip(&before.marks) {
        assert!((mark - was - by).abs() < 1e-9);
        let nearest = session.reference_peaks().iter().map(|p| (p.at_s - mark).abs()).fold(1.0, f64::min);
        assert!(nearest < 0.05, "{nearest} s from the beat that it was put on");
    }
    // A high-pass shows slow waves early, and the peak hardly: marks stay on what they were put on.
    done(
        &mut session,
        &[json!({"do": "low_pass", "hz": null}), json!({"do": "high_pass", "hz": 1, "order": 2})],
    );
    for mark in &session.recording().unwrap().marks {
        let nearest = session.reference_peaks().iter().map(|p| (p.at_s - mark).abs()).fold(1.0, f64::min);
        assert!(nearest < 0.05, "{nearest} s from the beat that it was put on");
    }
    act(&mut session, json!({"do": "high_pass", "hz": null})).unwrap();
    act(&mut session, json!({"do": "low_pass", "hz": null})).unwrap();
    for (mark, was) in session.recording().unwrap().marks.iter().zip(&before.marks) {
        assert!((mark - was).abs() < 1e-9);
    }
    // At the very end there is no room to go: A to B stays as long as it was.
    done(
        &mut session,
        &[
            json!({"do": "cursor", "which": "a", "t": 39.9}),
            json!({"do": "cursor", "which": "b", "t": 24.0}),
            json!({"do": "low_pass", "hz": 1}),
        ],
    );
    let (low, high) = session.recording().unwrap().window().unwrap();
    assert!((high - low - 15.9).abs() < 1e-9 && high <= 40.0, "{low} {high}");
}

#[test]
fn what_a_recording_cannot_be_shown_by_is_refused_in_words() {
    let slow: Vec<f64> = pulse(75.0, 0.0).into_iter().step_by(8).collect();
    let mut session = Session::of_recording("r.csv", 25.0, &slow);
    for (action, hz) in [
        (json!({"do": "notch", "hz": 50}), 50.0),
        (json!({"do": "low_pass", "hz": 15}), 15.0),
        (json!({"do": "low_pass", "hz": 100, "order": 1}), 100.0),
    ] {
        assert_eq!(act(&mut session, action), Err(Refusal::AboveHalfRate { hz, half_hz: 12.5 }));
    }
    assert!(matches!(
        act(&mut session, json!({"do": "high_pass", "hz": 0.7})),
        Err(Refusal::BadValue { .. })
    ));
    let display = session.view()["display"].clone();
    assert_eq!(display["choices"]["notch_hz"], json!([]));
    assert_eq!(display["choices"]["low_pass_hz"], json!([1.0, 2.0, 3.0, 5.0, 10.0]));
    for action in [
        json!({"do": "rate", "hz": 100}),
        json!({"do": "bits", "n": 8}),
        json!({"do": "input", "n": 2}),
        json!({"do": "average", "ms": 20}),
        json!({"do": "anti_alias", "on": false}),
        json!({"do": "buffered", "on": false}),
        json!({"do": "calibrator", "on": true}),
        json!({"do": "shown", "on": false}),
    ] {
        assert_eq!(act(&mut session, action), Err(Refusal::NoBench {}));
    }
    assert!(session.log().is_empty());
}

#[test]
fn the_ways_of_looking_are_logged_and_come_again_and_every_file_tells_them() {
    let mut session = Session::of_recording("r.csv", RATE, &hummed(0.3));
    done(
        &mut session,
        &[
            json!({"do": "mark", "t": 5.25}),
            json!({"do": "invert", "on": true}),
            json!({"do": "notch", "hz": 50}),
            json!({"do": "zero"}),
            json!({"do": "high_pass", "hz": 0.5, "order": 2}),
            json!({"do": "scale", "by": 10}),
            json!({"do": "range", "v": 0.5}),
        ],
    );
    let mut again = Session::of_recording("r.csv", RATE, &hummed(0.3));
    for logged in session.log().to_vec() {
        again.act(&logged.action).unwrap();
    }
    assert_eq!((again.view(), shown(&again)), (session.view(), shown(&session)));
    let told = |session: &Session| {
        let notes = session.notes(session.recording().unwrap());
        notes.iter().filter(|n| n.text.starts_with("shown ")).map(|n| n.text.clone()).collect::<Vec<_>>()
    };
    let [text] = &told(&session)[..] else { panic!("{:?}", told(&session)) };
    for part in
        ["inverted=true", "notch_hz=50", "high_pass_hz=0.5", "high_pass_order=2", "scale=10", "zero=-0."]
    {
        assert!(text.contains(part), "{text}");
    }
    assert!(!text.contains("low_pass") && !text.contains("range"), "{text}");
    // Nothing is told where the file's own samples are shown; the range alone shows no other ones.
    let mut plain = Session::of_recording("r.csv", RATE, &hummed(0.3));
    act(&mut plain, json!({"do": "range", "v": 0.5})).unwrap();
    assert!(told(&plain).is_empty());
}

#[test]
fn another_window_can_be_read_after_each_check_as_often_as_one_likes() {
    let mut session = Session::of_recording("r.csv", RATE, &pulse(75.0, 0.0));
    assert_eq!(act(&mut session, json!({"do": "another_window"})), Err(Refusal::NotChecked {}));
    for window in 1..6 {
        act(&mut session, json!({"do": "mark", "t": 5.0})).unwrap();
        let check = read(&mut session, if window % 2 == 0 { "20" } else { "25" });
        assert_eq!(
            (&check["try"], &check["passed"]),
            (&json!(1), &json!(window % 2 == 0)),
            "window {window}"
        );
        if window == 3 {
            act(&mut session, json!({"do": "hint"})).unwrap();
            act(&mut session, json!({"do": "check"})).unwrap();
            assert_eq!(act(&mut session, json!({"do": "check"})), Err(Refusal::AttemptOver {}));
        }
        act(&mut session, json!({"do": "another_window"})).unwrap();
        let view = session.view();
        assert_eq!(view["checks"], json!({"done": 0, "most": 2, "window": window + 1}));
        assert_eq!(
            (&view["check"], &view["over"], &view["marks"], &view["hints"]),
            (&json!(null), &json!(false), &json!([]), &json!(0))
        );
        assert_eq!((&view["cursors"]["a"], &view["cursors"]["b"]), (&json!(4.0), &json!(20.0)));
        assert_eq!(view["worksheet"]["count"]["text"], "");
    }
    // On the bench an attempt has one window at a time, and its checks are counted.
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios/04-rest-pulse.toml"))
        .unwrap();
    let mut bench = Session::new(&text, 3).unwrap();
    assert_eq!(act(&mut bench, json!({"do": "another_window"})), Err(Refusal::NotAsked {}));
}

#[test]
fn the_checks_of_an_attempt_are_one_sum_whichever_recording_is_open_and_after_it_is_taken_up_again() {
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios/04-rest-pulse.toml"))
        .unwrap();
    let mut session = Session::new(&text, 3).unwrap();
    act(&mut session, json!({"do": "help", "mode": "half"})).unwrap();
    for _ in 0..2 {
        act(&mut session, json!({"do": "record"})).unwrap();
        session.run_long(20_000);
        act(&mut session, json!({"do": "stop"})).unwrap();
    }
    act(&mut session, json!({"do": "check"})).unwrap();
    done(&mut session, &[json!({"do": "open_recording", "recording": 0})]);
    let mut again = Session::restore(&session.save().unwrap()).unwrap();
    assert_eq!(again.view()["checks"]["done"], 1);
    act(&mut again, json!({"do": "check"})).unwrap();
    assert_eq!(act(&mut again, json!({"do": "check"})), Err(Refusal::AttemptOver {}));
    let mut later = Session::restore(&again.save().unwrap()).unwrap();
    act(&mut later, json!({"do": "open_recording", "recording": 1})).unwrap();
    assert_eq!(act(&mut later, json!({"do": "check"})), Err(Refusal::AttemptOver {}));
}

#[test]
fn units_and_five_seconds_of_each_channel_are_told_before_one_is_chosen() {
    let wave = |k: usize| math::cos(math::TAU * k as f64 / 100.0);
    let lines: Vec<String> =
        (0..2000).map(|k| format!("{},{:.4},{:.4},7", k as f64 / 100.0, wave(k), -2.0 * wave(k))).collect();
    let text = format!("time (s),ECG [mV],Pulse (a.u.),flat\n{}\n", lines.join("\n"));
    let files = vec![("t.csv".to_string(), text.into_bytes())];
    let read = exchange::import(&files, &Options::default()).unwrap();
    assert_eq!((read.recorded.channel.as_str(), read.recorded.unit.as_str()), ("Pulse (a.u.)", "a.u."));
    let session = Session::of_recording("t.csv", 100.0, &read.recorded.values).with_unit(&read.recorded.unit);
    assert_eq!(session.view()["display"]["unit"], "a.u.");
    let found = glance::of_files(&files, None).unwrap();
    let told: Vec<(&str, &str)> = found.iter().map(|g| (g.channel.as_str(), g.unit.as_str())).collect();
    assert_eq!(told, [("ECG [mV]", "mV"), ("Pulse (a.u.)", "a.u."), ("flat", "")]);
    // Five seconds of twenty, from the middle: five waves, from the lowest value to the highest.
    assert_eq!((found[0].from_s, found[0].outline.len()), (7.5, 2 * glance::COLUMNS));
    let crossings = found[0].outline.chunks(2).map(|c| c[0] > 0.5).collect::<Vec<_>>();
    assert_eq!(crossings.windows(2).filter(|w| w[0] != w[1]).count(), 10);
    assert!(found[2].outline.iter().all(|v| *v == 0.5));
}
