//! Writes what fuzzing begins with: `cargo run --example fuzz_seeds -- FOLDER` makes a folder for each target.

use dicrotic::exchange::class::{Care, Class, Source, roster, saved};
use dicrotic::exchange::handin::{HandinError, bundle, result};
use dicrotic::exchange::{Format, Outgoing, Samples, export};
use dicrotic::scenario::Scenario;
use dicrotic::scenario::assignment::minimised;
use dicrotic::scenario::plan::Plan;
use dicrotic::session::compact::{About, base64};
use dicrotic::session::note::Note;
use dicrotic::session::{Session, script, seeds};
use flate2::Compression;
use flate2::write::DeflateEncoder;
use serde_json::json;
use std::fs;
use std::io::{Error, Write};
use std::path::Path;

const BLANKS: &[&str] = &[
    "72",
    "60/15",
    "\u{2248} 4,0 s",
    "72 beats/min",
    "x4",
    "\u{b1}100 mV",
    ".5",
    "1,234.5",
    "-3",
    "1e9",
    "15:0",
];

const LISTS: &[&str] = &[
    "code,name,email,group\nA17,Ada Novak,a@example.org,Tue\nB-4,\"Zhang, \"\"Wei\"\"\",,\n",
    "sep=;\nMatrícula;Nombre;Apellidos;Correo;Grupo\n001;Ana;Ruiz;ana@example.org;A\n",
    "A17\tAda\ta@example.org\nB4\tBo\tb@example.org\n",
    "1001\n1002\n\n1003\n",
    "a@example.org\nb@example.org\n",
];
const FORMULAS: &[&str] = &[
    "n * 60 / t",
    "60 * (n - 1) / t\n(n-1)*60/t",
    "n_true + 1",
    "-(rate_true) / 2",
    ".5*rate - multiplier*(t_true/3.0)",
];
/// A small assignment.
const ASSIGNED: &str = "id = \"a\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n[assignment]\nkey = \"k\"\n\
    attempts = 2\nword = \"chalk and slate\"\n[subject]\nrest_rate_bpm = 60.0\n";

fn main() -> Result<(), Error> {
    let to = std::env::args().nth(1).ok_or_else(|| Error::other("a folder is missing"))?;
    let put = |target: &str, name: &str, bytes: &[u8]| {
        let folder = Path::new(&to).join(target);
        fs::create_dir_all(&folder)?;
        fs::write(folder.join(name), bytes)
    };
    for file in fs::read_dir("scenarios")? {
        let file = file?;
        let name = file.file_name().to_string_lossy().into_owned();
        let text = fs::read_to_string(file.path())?;
        put("scenario", &name, text.as_bytes())?;
        let mut packer = DeflateEncoder::new(Vec::new(), Compression::best());
        packer.write_all(minimised(&text).as_bytes())?;
        let packed = packer.finish()?;
        put("link", &name, base64::write(&packed).as_bytes())?;
        put("link", &format!("{name}.raw"), &packed)?;
        let scenario = Scenario::read(&text).map_err(Error::other)?;
        for (k, attempt) in scenario.attempt.iter().take(1).enumerate() {
            let session = script::replay(&text, attempt).map_err(Error::other)?;
            let about = About { student: "a student".into(), ..About::default() };
            let code = session.code(&about).map(|c| c.write()).unwrap_or_default();
            put("code", &format!("{name}.{k}"), code.as_bytes())?;
            // The body without its checksum, which the target puts behind it.
            let body = base64::read(&code[3..]).unwrap_or_default();
            put("code", &format!("{name}.{k}.raw"), &body[..body.len().saturating_sub(4)])?;
            put("saved", &format!("{name}.{k}"), session.save().unwrap_or_default().as_bytes())?;
            let lines: Vec<String> = session.log().iter().map(|l| l.action.to_value().to_string()).collect();
            put("saved", &format!("{name}.{k}.lines"), lines.join("\n").as_bytes())?;
            put(
                "result",
                &format!("{name}.{k}"),
                result::write(&session, &about).unwrap_or_default().as_bytes(),
            )?;
        }
    }
    let values: Vec<f64> = (0..600).map(|k| f64::from(k % 80 - 40) * 1e-3).collect();
    let note =
        |at_s: f64, text: &str| Note { at_s, length_s: (at_s > 2.0).then_some(0.5), text: text.into() };
    let notes = [note(1.0, "beat"), note(3.0, "cursor A")];
    let out = Outgoing {
        name: "a",
        samples: Samples::Values { rate_hz: 100.0, values: &values },
        volts: true,
        notes: &notes,
    };
    for (target, format) in [("csv", Format::Csv), ("edf", Format::Edf), ("wfdb", Format::Wfdb)] {
        let files = export(format, &out).map_err(Error::other)?;
        let parts: Vec<&[u8]> = files.iter().map(|(_, bytes)| &bytes[..]).collect();
        put(target, "ours", &parts.join(&b"\n====\n"[..]))?;
    }
    for (name, table) in [
        (
            "semicolons",
            "sep=;\nZeit;Wert\n00:00:00,00;1,5\n00:00:00,01;1,6\n00:00:00,02;NaN\n00:00:00,03;1,5\n",
        ),
        ("tabs", "# rate: 100 Hz\nA\tB\nmV\tmV\n1\t2\n3\t4\n5\t6\n"),
        ("dates", "time,\"a \"\"b\"\"\",index\n2024-01-01 23:59:59.5,1,0\n2024-01-02 00:00:00.5,2,1\n"),
        ("one", "51\n52\n53\n"),
    ] {
        put("csv", name, table.as_bytes())?;
    }
    for (k, header) in [
        "a 2 250 6\na.dat 212 200(0)/mV 12 0 0 0 0 one\na.dat 212 1/uV 12 0 0 0 0 two\n\n====\n\u{1}\u{2}\u{3}\u{4}\u{5}\u{6}\u{7}\u{8}\t\u{1}\u{2}\u{3}\u{4}\u{5}\u{6}\u{7}\u{8}\t",
        "a 1 100/1(0) 4\na.dat 8x1:0+0 1e3(-5)/V 8 0 3 0 0 p\n# note\n\n====\nabcd\n====\n\u{4}\u{4}\u{5}\u{4}\0\0",
        "a 1\na.dat 80 0\n\n====\nabcdefghijkl",
        "a 1 360\na.dat 61\n\n====\nabcdefghijkl",
        "a 1 360\na.dat 160\n\n====\nabcdefghijkl",
    ].iter().enumerate() {
        put("wfdb", &format!("header{k}"), header.as_bytes())?;
    }
    for (k, list) in LISTS.iter().enumerate() {
        put("roster", &k.to_string(), list.as_bytes())?;
    }
    for (k, formulas) in FORMULAS.iter().enumerate() {
        put("formula", &k.to_string(), formulas.as_bytes())?;
    }
    // A short attempt: a run of the target follows some thousand samples.
    let mut session = Session::new(ASSIGNED, seeds::seed("k", "A17", 1)).map_err(Error::other)?;
    session.run_long(500);
    let about = About { student: "A17".into(), tries: 1, begun_s: 1_790_000_000, ended_s: 1_790_000_600 };
    let code = session.code(&about).map(|code| code.write()).unwrap_or_default();
    let written = result::write(&session, &about).unwrap_or_default();
    let course = format!(
        "[course]\nid = \"c\"\ntitle = \"t\"\nwords = \"w\"\n[[part]]\nopens = \"2026-09-01\"\ndue = \"2026-09-08T18:00+02:00\"\nwords = \"w\"\n\
         scenario = \"\"\"\n{ASSIGNED}\"\"\"\n"
    );
    put("course", "course", course.as_bytes())?;
    put("course", "outline", course.replace("scenario =", "file = \"a.toml\"\n# scenario =").as_bytes())?;
    put("course", "link", Plan::read(&course).map_err(Error::other)?.handed_out().as_bytes())?;
    let bundled = json!({"format": bundle::FORMAT, "version": bundle::VERSION, "course": "c", "results": [serde_json::from_str::<serde_json::Value>(&written).map_err(Error::other)?]});
    put("course", "result", bundled.to_string().as_bytes())?;
    let mut class = Class { roster: roster::read(LISTS[0]).unwrap_or_default(), ..Class::default() };
    class.give("a.toml", &course).map_err(Error::other)?;
    class
        .cares
        .put("A17", Care { tries: 1, until_s: 1_790_000_000, note: "a note".into(), ..Care::default() });
    let file = Source { file: "a.json".into(), text: written, ..Source::default() };
    let listed =
        Source { file: "a.txt, line 1".into(), code, scenario: ASSIGNED.into(), ..Source::default() };
    for source in [file, listed] {
        class.fail(source, &HandinError::Changed {});
    }
    class.stood = class.stand();
    put("class", "course", saved::write(&class).as_bytes())?;
    put("class", "empty", saved::write(&Class::default()).as_bytes())?;
    for (k, blank) in BLANKS.iter().enumerate() {
        put("sheet", &k.to_string(), blank.as_bytes())?;
    }
    Ok(())
}
