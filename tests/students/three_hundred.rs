//! A class of three hundred as it comes in on the morning before the lab, and where each of them stands.

use super::{ASSIGNMENT, KEY, Way, careful, faultless};
use dicrotic::exchange::class::State;
use dicrotic::exchange::handin::result;
use dicrotic::session::compact::About;
use dicrotic::session::seeds;
use serde_json::{Value, json};

/// How many stand on the list.
pub const LISTED: u32 = 300;

/// What somebody did.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Deed {
    /// Handed in one attempt.
    Once(Way),
    /// Handed in two tries, the second of them right.
    Twice,
    /// Handed in the same file twice.
    Again,
    /// Handed in a bench without its faults, under the same heading.
    Easier,
    /// Handed in another assignment.
    OtherBench,
    /// Handed in the attempt of the student before, with their own name on it.
    Copied,
    /// Changed what the file says of the verdict, and sealed it anew.
    Edited,
    /// Handed in half a file.
    Damaged,
    /// Handed in nothing.
    Nothing,
    /// Did the assignment and sent its code.
    Code,
    /// Sent the code of an easier bench.
    EasierCode,
}

/// Deeds of a row of twenty students.
const ROW: [Deed; 20] = [
    Deed::Once(Way::Right),
    Deed::Once(Way::Six),
    Deed::Once(Way::Learns),
    Deed::Once(Way::Right),
    Deed::Once(Way::Bumps),
    Deed::Once(Way::Hum),
    Deed::Twice,
    Deed::Once(Way::Bumps),
    Deed::Once(Way::Right),
    Deed::Copied,
    Deed::Code,
    Deed::Easier,
    Deed::Once(Way::Right),
    Deed::Edited,
    Deed::Nothing,
    Deed::Damaged,
    Deed::OtherBench,
    Deed::Again,
    Deed::EasierCode,
    Deed::Once(Way::Learns),
];

/// What the `k`-th does.
pub fn deed(k: u32) -> Deed {
    ROW[k as usize % ROW.len()]
}

/// Where the `k`-th must stand.
pub fn state(k: u32) -> State {
    match deed(k) {
        Deed::Once(Way::Right | Way::Learns) | Deed::Twice | Deed::Again | Deed::Code => State::Ready,
        Deed::Once(_) => State::Tried,
        Deed::Easier | Deed::OtherBench | Deed::Copied | Deed::EasierCode => State::WrongBench,
        Deed::Edited | Deed::Damaged => State::Unusable,
        Deed::Nothing => State::Absent,
    }
}

/// The code of the `k`-th.
pub fn code(k: u32) -> String {
    format!("S-{:03}", k + 1)
}

/// The list as a course site gives it.
pub fn roster() -> String {
    let row = |k: u32| {
        let group = char::from(b'A' + (k % 3) as u8);
        format!("\"Student {0}, the {0}th\";{1};s{0}@example.org;Group {group}\n", k + 1, code(k))
    };
    format!("\u{feff}Full name;Student ID;E-mail;Section\n{}", (0..LISTED).map(row).collect::<String>())
}

/// Something that came in.
pub struct Came {
    /// The file's name.
    pub file: String,
    /// Its text.
    pub text: String,
}

fn file(k: u32, made: &(dicrotic::session::Session, About)) -> Came {
    let text = result::write(&made.0, &made.1).unwrap();
    // Half of them keep the page's own name, half carry the code that the course site puts before it.
    let name = if k.is_multiple_of(2) {
        format!("attempt-{}", 7 * k + 11)
    } else {
        format!("{}_submission", code(k))
    };
    Came { file: format!("{name}{}", result::EXTENSION), text }
}

/// The same with a new checksum, as whoever forges it works it out.
fn sealed(mut value: Value) -> String {
    use sha2::{Digest, Sha256};
    value.as_object_mut().unwrap().remove("checksum");
    let sum = Sha256::digest(value.to_string().as_bytes());
    value["checksum"] = json!(dicrotic::scenario::digest::hex(&sum));
    value.to_string()
}

/// What comes in from the `k`-th.
pub fn came(k: u32) -> Vec<Came> {
    let of = |way| careful(ASSIGNMENT, &code(k), 1, way);
    let list = |text: String| vec![Came { file: format!("mail-{k}.txt"), text }];
    match deed(k) {
        Deed::Once(way) => {
            let made = of(way);
            let mut all = vec![file(k, &made)];
            // Who knows how and had bad luck, a hand that moved, takes the next try.
            if way == Way::Right && !made.0.check().is_some_and(|check| check.report.passed) {
                let second = file(k, &careful(ASSIGNMENT, &code(k), 2, way));
                all.push(Came { file: format!("second-{}", second.file), ..second });
            }
            all
        }
        Deed::Twice => vec![file(k, &of(Way::Six)), {
            let second = file(k, &careful(ASSIGNMENT, &code(k), 2, Way::Right));
            Came { file: format!("second-{}", second.file), ..second }
        }],
        Deed::Again => {
            let first = file(k, &of(Way::Right));
            vec![Came { file: format!("again-{}", first.file), text: first.text.clone() }, first]
        }
        Deed::Easier => vec![file(k, &careful(&faultless(), &code(k), 1, Way::Right))],
        Deed::OtherBench => {
            let other = ASSIGNMENT.replace("rest_rate_bpm = 66.0", "rest_rate_bpm = 71.0");
            vec![file(k, &careful(&other, &code(k), 1, Way::Right))]
        }
        Deed::Copied => {
            let (session, about) = careful(ASSIGNMENT, &code(k - 1), 1, Way::Right);
            vec![file(k, &(session, About { student: code(k), ..about }))]
        }
        Deed::Edited => {
            let came = file(k, &of(Way::Six));
            let mut value: Value = serde_json::from_str(&came.text).unwrap();
            value["verdict"]["passed"] = json!(true);
            vec![Came { text: sealed(value), ..came }]
        }
        Deed::Damaged => {
            let came = file(k, &of(Way::Right));
            let half = came.text[..came.text.len() * 2 / 3].to_string();
            vec![Came { text: half, ..came }]
        }
        Deed::Nothing => Vec::new(),
        Deed::Code => {
            let (session, about) = of(Way::Right);
            list(format!("From: somebody\n> my code: {}\n", session.code(&about).unwrap().write()))
        }
        Deed::EasierCode => {
            let (session, about) = careful(&faultless(), &code(k), 1, Way::Right);
            list(format!("{}\n", session.code(&about).unwrap().write()))
        }
    }
}

/// The seed of a try, as the assignment gives it.
pub fn seed(k: u32, tries: u32) -> u64 {
    seeds::seed(KEY, &code(k), tries)
}
