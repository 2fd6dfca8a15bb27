//! Mirrors `src/exchange/csv/colors.rs`, and `dicrotic camera` as a person meets it.

mod fingertips;

use dicrotic::exchange::csv::{self, colors};
use dicrotic::fingertip::{Camera, Series, windows};
use fingertips::lit;
use std::path::PathBuf;
use std::process::{Command, Output};

fn read(text: &str) -> Series {
    colors::read("file.csv", text).unwrap_or_else(|e| panic!("{e}\n{text}"))
}

fn error(text: &str) -> String {
    colors::read("file.csv", text).unwrap_err().to_string()
}

#[test]
fn the_same_table_in_many_forms() {
    let plain = read("t_s,red,green,blue\n0.0,200.5,40,20\n0.033,201,41,21\n0.066,202,42,22\n");
    assert_eq!(plain.frames().len(), 3);
    assert_eq!(plain.frames()[1].colors, [201.0, 41.0, 21.0]);
    for text in [
        "0.0,200.5,40,20\n0.033,201,41,21\n0.066,202,42,22",
        "\u{feff}t_s,red,green,blue\r\n0.0,200.5,40,20\r\n\r\n0.033,201,41,21\r\n# a note\r\n0.066,202,42,22\r\n",
        "time,R,G,B\n0,200.5,40,20\n33,201,41,21\n66,202,42,22\n",
        "Time (ms);Mean Red;Mean Green;Mean Blue\n0;200,5;40;20\n33;201;41;21\n66;202;42;22\n",
        "frame\tblue\tgreen\tred\ttimestamp_us\n1\t20\t40\t200.5\t0\n2\t21\t41\t201\t33000\n3\t22\t42\t202\t66000\n",
        "\"t_s\",\"red\",\"green\",\"blue\",\"note\"\n0.0,200.5,40,20,\n0.033,201,41,21,x\n0.066,202,42,22,y\n",
    ] {
        let other = read(text);
        assert_eq!(other.frames().len(), 3, "{text}");
        for (a, b) in other.frames().iter().zip(plain.frames()) {
            assert!((a.t_s - b.t_s).abs() < 1e-12 && a.colors == b.colors, "{a:?} for {b:?} in {text}");
        }
    }
}

#[test]
fn a_time_that_stands_still_is_left_out_and_a_clock_that_runs_back_is_named() {
    let lines: String = (0..40).map(|k| format!("{},1,2,3\n", 0.03 * f64::from(k - k % 20 / 19))).collect();
    let series = read(&lines);
    assert_eq!((series.frames().len(), series.ignored()), (38, 2));
    let back: String = (0..40).map(|k| format!("{},1,2,3\n", 0.03 * f64::from(k % 20))).collect();
    let text = error(&back);
    assert!(text.contains("line 21, column 1") && text.contains("time must grow"), "{text}");
}

#[test]
fn errors_name_line_and_column() {
    for (text, parts) in [
        ("", &["no line"][..]),
        ("t_s,red,green,blue\n", &["no line"]),
        ("t_s,red,green,blue\n0,1,2\n", &["line 2", "4 columns", "found 3"]),
        ("t_s,red,green,blue\n\n0,1,x,3\n", &["line 3", "column 3", "green", "0 to 255", "\"x\""]),
        ("t_s,red,green,blue\n0,1,2,300\n", &["line 2", "column 4", "blue", "0 to 255", "300"]),
        ("t_s,red,green,blue\n0,-1,2,3\n", &["line 2", "column 2", "red", "-1"]),
        ("t_s,red,green,blue\n0,1,2,\n", &["line 2", "column 4", "\"\""]),
        ("t_s,red,green,blue\nnan,1,2,3\n", &["line 2", "column 1", "t_s", "nan"]),
        ("t_s,red,green,blue\n0,inf,2,3\n", &["line 2", "column 2", "inf"]),
        ("t_s,red,green\n0,1,2\n", &["\"blue\"", "red"]),
        ("0,1,2\n", &["line 1", "4 columns"]),
    ] {
        let found = error(text);
        assert!(
            found.contains("file.csv") && parts.iter().all(|part| found.contains(part)),
            "{text:?}: {found}"
        );
    }
}

#[test]
fn nothing_that_stands_in_a_file_is_fatal() {
    for text in [
        "\0\0\0",
        ",,,\n,,,",
        "\"",
        "t_s,red,green,blue\n1e400,1,2,3",
        "sep=;\n",
        "😀,1,2,3\n1,2,3,4",
        "1,2,3,4",
    ] {
        let read = colors::read("file.csv", text);
        if let Ok(series) = read {
            assert!(windows(&series, 10.0).len() < 2, "{text:?}");
        }
    }
}

#[test]
fn what_the_camera_writes_is_read_again() {
    let film = lit(1).filmed();
    let mut camera = Camera::default();
    film.frames.iter().for_each(|(t, c)| assert!(camera.push(*t, *c)));
    let again = read(&camera.csv());
    assert_eq!(again.frames().len(), film.frames.len());
    let (ours, theirs) = (windows(&again, 10.0), windows(&film.series(), 10.0));
    for (a, b) in ours.iter().zip(&theirs) {
        assert!((a.rate.unwrap() - b.rate.unwrap()).abs() < 0.2, "{a:?} for {b:?}");
    }
    // The pulse opens as a recording, in which the house's detector finds the same beats.
    let text = camera.recording();
    let recorded = csv::read("pulse.csv", &text).unwrap();
    assert!((recorded.rate_hz - 50.0).abs() < 0.1 && recorded.channel == "finger_pulse", "{recorded:?}");
    let found = dicrotic::measure::detect::detect(&recorded.values, recorded.rate_hz);
    let beats = camera.beats();
    let near = beats.iter().filter(|t| found.iter().any(|f| (f - **t).abs() < 0.1)).count();
    assert!(near as f64 > 0.95 * beats.len() as f64 && beats.len() > 30, "{near} of {}", beats.len());
}

fn scratch(name: &str, text: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("fingertip");
    std::fs::create_dir_all(&folder).unwrap();
    let path = folder.join(name);
    std::fs::write(&path, text).unwrap();
    path
}

fn camera(file: &PathBuf, more: &[&str]) -> (Option<i32>, String, String) {
    let Output { status, stdout, stderr } =
        Command::new(env!("CARGO_BIN_EXE_dicrotic")).arg("camera").arg(file).args(more).output().unwrap();
    (status.code(), String::from_utf8(stdout).unwrap(), String::from_utf8(stderr).unwrap())
}

fn table(film: &fingertips::Filmed) -> String {
    let lines = film.frames.iter().map(|(t, [r, g, b])| format!("{t:.4},{r:.3},{g:.3},{b:.3}\n"));
    format!("t_s,red,green,blue\n{}", lines.collect::<String>())
}

#[test]
fn the_command_tells_rates_reasons_and_beats() {
    let film = lit(5).filmed().changed(|t, c| {
        if t >= 30.0 {
            *c = [0.2, 0.1, 0.1];
        }
    });
    let file = scratch("finger.csv", &table(&film));
    let (code, out, err) = camera(&file, &[]);
    assert_eq!((code, err.as_str()), (Some(0), ""), "{out}");
    let lines: Vec<Vec<&str>> = out.lines().map(|l| l.split(',').collect()).collect();
    assert_eq!(lines.len(), 4, "{out}");
    for line in &lines[..2] {
        let [from, to, bpm] = line[..] else { panic!("{out}") };
        let [from, to, bpm] = [from, to, bpm].map(|v| v.parse::<f64>().unwrap());
        assert!((bpm - film.bpm(from, to)).abs() < 2.0, "{out}");
    }
    assert_eq!(lines[3], ["30.000", "40.000", "refused", "too_dark"]);
    let (code, out, _) = camera(&file, &["--window", "15"]);
    assert!(code == Some(0) && out.lines().count() == 2, "{out}");
    let (code, out, _) = camera(&file, &["--beats"]);
    let beats: Vec<f64> = out.lines().map(|l| l.parse().unwrap()).collect();
    assert!(code == Some(0) && beats.windows(2).all(|w| w[1] > w[0]) && beats.len() > 15, "{out}");
}

#[test]
fn the_command_says_what_is_wrong() {
    let good = scratch("good.csv", &table(&lit(5).filmed()));
    for (file, more, part) in [
        (&scratch("short.csv", "0,1,2,3\n0.03,1,2,3\n"), &[][..], "too short"),
        (&scratch("bad.csv", "t_s,red,green,blue\n0,1,2,3\n0.03,1,2,abc\n"), &[], "line 3, column 4"),
        (&good, &["--window", "2"], "--window"),
        (&good, &["--window", "nan"], "--window"),
        (&good, &["--window", "-5"], "--window"),
        (&PathBuf::from("no such file"), &[], "no such file"),
    ] {
        let (code, out, err) = camera(file, more);
        assert!(code == Some(2) && out.is_empty() && err.contains(part), "{file:?} {more:?}: {out}{err}");
    }
}
