//! The compact code of an attempt: what it carries comes back exactly, damage is found, and it is short enough.

use dicrotic::deed::Kind;
use dicrotic::session::Session;
use dicrotic::session::compact::table::WORDS;
use dicrotic::session::compact::{About, Code, CodeError, PREFIX, base64, value};
use serde_json::json;
use students::{Draws, FIRST, act, diligent};

mod students;

const HUM: &str = include_str!("../scenarios/02-hum-on-the-trace.toml");

fn about() -> About {
    About { student: "Müller 17".into(), tries: 2, begun_s: 1_790_000_000, ended_s: 1_790_000_600 }
}

#[test]
fn a_diligent_ten_minutes_fits_well_under_4096_printable_characters_and_replays_exactly() {
    for seed in [1, 2, u64::MAX] {
        let session = diligent(seed);
        assert_eq!(session.samples(), 600_000);
        assert!(session.log().len() > 230, "{} actions", session.log().len());
        let code = session.code(&about()).unwrap();
        let text = code.write();
        println!("{} actions in {} characters", session.log().len(), text.len());
        assert!(text.len() <= 4096, "{} characters", text.len());
        assert!(text.chars().all(|c| c.is_ascii_graphic()), "{text}");
        let read = Code::read(&text).unwrap();
        assert_eq!(read, code);
        assert!(read.is_of(FIRST) && !read.is_of(HUM));
        let again = read.replay(FIRST).unwrap();
        assert_eq!(again.save(), session.save());
        assert_eq!(again.recordings(), session.recordings());
        assert_eq!(again.check(), session.check());
        assert_eq!(read.outcome, again.outcome());
    }
}

#[test]
fn every_scripted_attempt_of_every_scenario_comes_back_and_is_short() {
    let mut longest = 0;
    let mut seen = 0;
    for file in std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios")).unwrap() {
        let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
        let scenario = dicrotic::scenario::Scenario::read(&text).unwrap();
        for attempt in scenario.attempt.iter().take(1) {
            let session = dicrotic::session::script::replay(&text, attempt).unwrap();
            let code = session.code(&About::default()).unwrap().write();
            assert_eq!(Code::read(&code).unwrap().log, session.log(), "{}", scenario.id);
            longest = longest.max(code.len());
            seen += 1;
        }
    }
    println!("{seen} scripted attempts, the longest {longest} characters");
    assert!(seen > 20 && longest < 1000, "{seen}, {longest}");
}

#[test]
fn any_change_of_any_character_is_found() {
    let mut session = Session::new(HUM, 5).unwrap();
    act(&mut session, json!({"do": "range", "v": 0.1}));
    session.run_long(1234);
    act(&mut session, json!({"do": "strap", "tightness": 0.123_456_789_012_3}));
    let code = session.code(&about()).unwrap().write();
    for k in PREFIX.len()..code.len() {
        for other in ["A", "z", "-"] {
            let mut changed = code.clone();
            changed.replace_range(k..=k, other);
            if changed != code {
                assert!(Code::read(&changed).is_err(), "character {k} as {other}");
            }
        }
        assert!(Code::read(&code[..k]).is_err(), "cut at {k}");
    }
    assert!(Code::read(&format!("{code}A")).is_err());
    // Mail programs fold lines.
    let folded: String = code
        .chars()
        .enumerate()
        .flat_map(|(k, c)| if k % 20 == 19 { vec![c, '\r', '\n'] } else { vec![c] })
        .collect();
    assert_eq!(Code::read(&folded), Code::read(&code));
    assert_eq!(Code::read("hello"), Err(CodeError::Foreign));
    assert_eq!(Code::read("D3.ab!d"), Err(CodeError::Character { at: 6, found: '!' }));
    assert_eq!(Code::read("D3."), Err(CodeError::Damaged));
}

/// A code with a right checksum over any body.
fn sealed(body: &[u8]) -> String {
    use sha2::Digest;
    let sum = sha2::Sha256::digest(body);
    format!("{PREFIX}{}", base64::write(&[body, &sum[..4]].concat()))
}

#[test]
fn hostile_bodies_are_refused_without_a_panic() {
    let head =
        |rest: &[u8]| [&[3_u8, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0][..], rest].concat();
    for (body, part) in [
        (vec![9], "form 9"),
        (head(&[0, 0, 0xff, 0xff, 0xff, 0xff, 0x0f]), "entries"),
        (head(&[0, 0, 1, 250, 1, 0]), "action number 250"),
        (vec![1], "form 1"),
        (vec![2], "form 2"),
        (head(&[0, 0, 1, 8, 0, 15]), "kind 15"),
        // A field is left out that there is no action without.
        (head(&[0, 0, 1, 8, 0, 7]), "missing field `tightness`"),
        (head(&[0, 0, 1, 8, 0, 4, 200, 1]), "word"),
        (head(&[0, 0, 1, 8, 0, 5, 0, 0, 0, 0, 0, 0, 0xf0, 0x7f]), "number that is none"),
        (head(&[0, 0, 1, 0, 0, 2, b'{', b'}']), "do"),
        (head(&[2, 0xff, 0xff, 0, 0]), "UTF-8"),
        (head(&[0, 0, 0, 1]), "more bytes"),
        (head(&[0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff]), "64 bits"),
        (head(&[0xff, 0xff, 0xff, 0xff, 0x7f]), "damaged"),
    ] {
        let error = Code::read(&sealed(&body)).unwrap_err().to_string();
        assert!(error.contains(part), "{body:?}: {error}, not {part}");
    }
    // Random bodies with right checksums.
    let mut draws = Draws(3);
    for _ in 0..20_000 {
        let length = (60.0 * draws.next()) as usize;
        let mut body: Vec<u8> = (0..length).map(|_| (256.0 * draws.next()) as u8).collect();
        if let Some(first) = body.first_mut() {
            *first = 3;
        }
        let _ = Code::read(&sealed(&body));
    }
}

#[test]
fn numbers_come_back_to_the_last_bit_and_short_ones_are_short() {
    let mut draws = Draws(7);
    let mut cases = vec![
        0.0,
        -0.0,
        0.1 + 0.2,
        1.0 / 3.0,
        -17.25,
        239.0,
        240.0,
        1e15,
        1e300,
        -1e-300,
        4000.0,
        0.72,
        59.999_999,
    ];
    for _ in 0..20_000 {
        cases.push(f64::from_bits((draws.next() * 9_007_199_254_740_992.0) as u64 * 1021));
        cases.push((draws.next() * 1e6).round() / 1000.0);
        cases.push(draws.next() * 100.0 - 50.0);
    }
    for v in cases.into_iter().filter(|v| v.is_finite()) {
        let mut bytes = Vec::new();
        value::put(&mut bytes, &json!(v));
        let back = value::Reader::new(&bytes).value().unwrap().as_f64().unwrap();
        assert_eq!(back.to_bits(), v.to_bits(), "{v}: {bytes:?}");
    }
    for (v, most) in [(0.72, 3), (12.345, 4), (100.0, 1), (4000.0, 3), (-12.5, 3), (0.1 + 0.2, 9)] {
        let mut bytes = Vec::new();
        value::put(&mut bytes, &json!(v));
        assert!(bytes.len() <= most, "{v}: {} bytes", bytes.len());
    }
}

#[test]
fn what_is_in_no_table_goes_through_as_text() {
    let mut session = Session::new(HUM, 1).unwrap();
    act(&mut session, json!({"do": "manoeuvre", "what": {"paced_breathing": {"per_min": 6.5}}}));
    act(&mut session, json!({"do": "name", "fault": "charger_near"}));
    let code = session.code(&About::default()).unwrap();
    assert_eq!(Code::read(&code.write()).unwrap().log, session.log());
}

/// The numbering is part of the form: a code that was handed in last year must still say the same.
#[test]
fn the_numbering_of_actions_and_words_is_pinned() {
    use sha2::Digest;
    let hash = |text: String| -> String {
        sha2::Sha256::digest(text.as_bytes()).iter().take(6).map(|b| format!("{b:02x}")).collect()
    };
    // These keep their numbers. What is counted here are also their names.
    // What was added since, by number.
    const LATER: [u8; 6] = [34, 35, 36, 86, 87, 88];
    let actions: String = Kind::ALL
        .iter()
        .map(|k| k.row())
        .filter(|r| !LATER.contains(&r.number))
        .take(63)
        .map(|r| format!("{}{}({})", r.number, r.name, r.fields.join(",")))
        .collect();
    let words = WORDS[..59].join(",");
    assert_eq!((hash(actions).as_str(), hash(words).as_str()), ("95586b9c9b53", "9cf27b59ecc7"));
    for (k, word) in WORDS.iter().enumerate() {
        // The places to look at had these names before the parts had them: what was written then is still read.
        let again = ["recorder", "power_strip", "sensor"].contains(word);
        assert!(!WORDS[..k].contains(word) || again, "{word} is there twice");
    }
}

/// A socket that the recorder had and has no more keeps its number; a code that plugs something in there is of another
/// version. As a note the same word is only a word.
#[test]
fn a_code_with_a_socket_of_before_is_of_another_version() {
    use dicrotic::session::compact::table::RETIRED;
    let head = [&[3_u8][..], &[0; 18][..]].concat();
    assert!(!RETIRED.is_empty());
    for socket in RETIRED {
        let place = WORDS.iter().position(|word| word == socket).unwrap() as u8;
        let sensor = WORDS.iter().position(|word| *word == "sensor").unwrap() as u8;
        let plugged = [&head[..], &[0, 0, 1, 1, 0, 4, sensor, 4, place][..]].concat();
        assert_eq!(Code::read(&sealed(&plugged)), Err(CodeError::Form(3)), "{socket}");
        // An action of number 81 is a note on a recording: number of the recording, text.
        let noted = [&head[..], &[0, 0, 1, 81, 0, 16, 4, place][..]].concat();
        assert_eq!(Code::read(&sealed(&noted)).unwrap().log.len(), 1, "{socket}");
    }
}

#[test]
fn base64url_is_that_of_the_standard() {
    // RFC 4648, section 10, without the padding.
    for (bytes, text) in [
        ("", ""),
        ("f", "Zg"),
        ("fo", "Zm8"),
        ("foo", "Zm9v"),
        ("foob", "Zm9vYg"),
        ("fooba", "Zm9vYmE"),
        ("foobar", "Zm9vYmFy"),
    ] {
        assert_eq!(base64::write(bytes.as_bytes()), text);
        assert_eq!(base64::read(text).unwrap(), bytes.as_bytes());
    }
    assert_eq!(base64::write(&[0xfb, 0xff]), "-_8");
    for bad in ["Z", "Zh", "Zm9", "Zm9vY"] {
        assert_eq!(base64::read(bad), Err(base64::Bad::Length), "{bad}");
    }
}
