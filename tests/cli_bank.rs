//! `dicrotic bank`: what it writes, that the seed alone decides it, and what it says when it cannot.

use std::path::Path;

use command::{SCENARIO, dicrotic, error_of, scratch, told, written};

mod command;

fn at(folder: &Path, name: &str) -> String {
    folder.join(name).to_str().unwrap().to_string()
}

#[test]
fn a_seed_gives_the_same_archive_each_time_and_another_seed_another() {
    let folder = scratch("bank-seed");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let made = |out: &str, more: &[&str]| {
        let out = at(&folder, out);
        let said = told(dicrotic(&["bank", &scenario, "--count", "3", "--out", &out]).args(more));
        (said, std::fs::read(out).unwrap())
    };
    let (said, first) = made("a.zip", &["--seed", "9"]);
    assert!(said.contains("a.zip: 3 questions, QTI 3, 7 files in "), "{said}");
    assert_eq!(made("b.zip", &["--seed", "9"]).1, first);
    assert_ne!(made("c.zip", &["--seed", "10"]).1, first);
    let (said, table) = made("d.zip", &["--seed", "9", "--form", "csv"]);
    assert!(said.contains("a table with pictures, 4 files"), "{said}");
    assert_ne!(made("e.zip", &["--seed", "9", "--form", "csv", "--language", "es"]).1, table);
}

#[test]
fn an_archive_holds_what_another_reader_of_archives_finds() {
    let folder = scratch("bank-read");
    let one = written(&folder, "steady.toml", SCENARIO);
    let other = written(&folder, "other.toml", SCENARIO.replace("\"t\"", "\"Other\""));
    let out = at(&folder, "bank.zip");
    told(&mut dicrotic(&["bank", &one, &other, "--count", "5", "--form", "csv", "--out", &out]));
    let mut archive = zip::ZipArchive::new(std::fs::File::open(&out).unwrap()).unwrap();
    let text = std::io::read_to_string(archive.by_name("questions.csv").unwrap()).unwrap();
    // The scenarios in turn: the first, the third and the fifth are of the first.
    let titles: Vec<&str> = text.lines().skip(1).map(|line| line.split(',').nth(1).unwrap()).collect();
    assert_eq!(titles, ["t: trace 1", "Other: trace 2", "t: trace 3", "Other: trace 4", "t: trace 5"]);
    for line in text.lines().skip(1) {
        let picture = line.split(',').nth(3).unwrap();
        let drawn = std::io::read_to_string(archive.by_name(picture).unwrap()).unwrap();
        assert!(drawn.starts_with("<svg ") && drawn.ends_with("</svg>\n"), "{picture}");
    }
    assert_eq!(archive.len(), 6);
}

#[test]
fn what_cannot_be_made_names_the_option_or_the_file_and_writes_nothing() {
    let folder = scratch("bank-wrong");
    let scenario = written(&folder, "steady.toml", SCENARIO);
    let broken = written(&folder, "broken.toml", "id = \"x\"\n");
    let faint = SCENARIO.replace("pulse_mv = 40", "pulse_mv = 1\nsystolic_mmhg = 70\ndiastolic_mmhg = 40");
    let faint = written(&folder, "faint.toml", faint);
    let out = at(&folder, "bank.zip");
    let table = at(&folder, "bank.csv");
    for (arguments, wanted) in [
        (vec![&scenario[..], "--count", "0", "--out", &out], vec!["--count", "1 to 500", "found 0"]),
        (vec![&scenario, "--count", "501", "--out", &out], vec!["--count", "1 to 500", "501"]),
        (vec![&scenario, "--count", "many", "--out", &out], vec!["--count", "many"]),
        (vec![&scenario, "--seed", "-1", "--out", &out], vec!["--seed", "-1"]),
        (vec![&scenario, "--count", "-1", "--out", &out], vec!["--count", "-1"]),
        (vec![&scenario, "--form", "docx", "--out", &out], vec!["--form", "docx", "qti", "csv"]),
        (vec![&scenario, "--language", "xx", "--out", &out], vec!["--language", "xx"]),
        (vec![&scenario, "--out", &table], vec!["--out", "bank.csv", ".zip"]),
        (vec![&scenario, "--out", &scenario], vec!["--out", "steady.toml"]),
        (vec![&scenario], vec!["--out"]),
        (vec!["--out", &out], vec!["SCENARIO"]),
        (vec![&scenario, &broken, "--count", "2", "--out", &out], vec!["broken.toml", "level"]),
        (vec!["nowhere.toml", "--out", &out], vec!["nowhere.toml"]),
        (vec![&faint, "--count", "1", "--out", &out], vec!["faint.toml", "subject", "clean enough"]),
    ] {
        let text = error_of(dicrotic(&["bank"]).args(&arguments));
        for word in wanted {
            assert!(text.contains(word), "{arguments:?}: {text}");
        }
        assert!(!Path::new(&out).exists() && !Path::new(&table).exists(), "{arguments:?}");
    }
    // By another name of the same file.
    let link = at(&folder, "scenario.zip");
    std::fs::hard_link(&scenario, &link).unwrap();
    let text = error_of(&mut dicrotic(&["bank", &scenario, "--count", "1", "--out", &link]));
    assert!(
        text.contains("written over") && std::fs::read_to_string(&scenario).unwrap() == SCENARIO,
        "{text}"
    );
}

#[test]
fn the_help_names_the_limits_that_hold() {
    let help = told(&mut dicrotic(&["bank", "--help"]));
    let most = dicrotic::exchange::bank::MOST_QUESTIONS;
    assert!(help.contains(&format!("1 to {most}")), "{help}");
    assert!(told(&mut dicrotic(&["--help"])).contains("question bank"));
}
