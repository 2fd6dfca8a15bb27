//! Writes what fuzzing begins with: `cargo run --example fuzz_seeds -- FOLDER` makes a folder for each target.

use dicrotic::exchange::handin::result;
use dicrotic::exchange::{Format, Outgoing, Samples, export};
use dicrotic::scenario::Scenario;
use dicrotic::scenario::assignment::minimised;
use dicrotic::session::compact::{About, base64};
use dicrotic::session::note::Note;
use dicrotic::session::script;
use flate2::Compression;
use flate2::write::DeflateEncoder;
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
    for (k, blank) in BLANKS.iter().enumerate() {
        put("sheet", &k.to_string(), blank.as_bytes())?;
    }
    Ok(())
}
