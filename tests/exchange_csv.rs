//! Mirrors `src/exchange/csv`.

use dicrotic::exchange::csv::{CsvError, Options, read, read_with, read_with_rate, write};
use std::path::PathBuf;

/// Recordings by others, kept outside of the project.
fn data() -> Option<PathBuf> {
    let at = std::env::var_os("DICROTIC_DATA")
        .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../shared/data"), PathBuf::from);
    if at.is_dir() {
        return Some(at);
    }
    println!("outside recordings are not at {}: only made-up tables were checked", at.display());
    None
}

/// A table of 50 lines at 100 Hz, its values 0, 1, 2, ...
fn table(line: impl Fn(usize) -> String) -> String {
    (0..50).map(|i| line(i) + "\n").collect()
}

fn counts() -> Vec<f64> {
    (0..50).map(f64::from).collect()
}

#[test]
fn reads_the_usual_shapes_of_tables_alike() {
    let shapes = [
        ("plain", table(|i| format!("{},{i}", i as f64 / 100.0))),
        ("header", "t_s,value\n".to_string() + &table(|i| format!("{},{i}", i as f64 / 100.0))),
        (
            "names and units",
            "time,pulse\ns,mV\n".to_string() + &table(|i| format!("{},{i}", i as f64 / 100.0)),
        ),
        ("milliseconds by name", "t_ms,value\n".to_string() + &table(|i| format!("{},{i}", 10 * i))),
        ("milliseconds by step", table(|i| format!("{},{i}", 10 * i))),
        ("microseconds by step", table(|i| format!("{},{i}", 10_000 * i))),
        ("semicolons, decimal comma", table(|i| format!("0,{:02};{i},0", i))),
        ("tabs, decimal comma", table(|i| format!("0,{:02}\t{i},0", i))),
        ("quoted decimal comma", table(|i| format!("\"0,{:02}\",\"{i},0\"", i))),
        ("blanks", table(|i| format!("0.{:02}   {i}", i))),
        ("mark, CR LF, comments, blank lines", {
            let body = table(|i| format!("0.{:02},{i}\r\n\r", i));
            format!("\u{feff}# a comment\r\ntime,v\r\n{body}# the end\r\n")
        }),
        ("CR alone", table(|i| format!("0.{:02},{i}", i)).replace('\n', "\r")),
        ("declared separator", "sep=;\nt;v\n".to_string() + &table(|i| format!("0.{:02};{i}", i))),
        ("clock", table(|i| format!("13:59:59.{:02},{i}", i))),
        (
            "clock over midnight",
            table(|i| {
                if i < 25 {
                    format!("23:59:59.{:02},{i}", 75 + i)
                } else {
                    format!("00:00:00.{:02},{i}", i - 25)
                }
            }),
        ),
        ("date and clock", table(|i| format!("2016-11-24 13:58:58.{:02}0000,{i}", i))),
        (
            "date over a month's end",
            table(|i| {
                if i < 25 {
                    format!("2024-02-29T23:59:59.{:02}Z,{i}", 75 + i)
                } else {
                    format!("2024-03-01T00:00:00.{:02}Z,{i}", i - 25)
                }
            }),
        ),
        (
            "running number first",
            "sample,time,value\n".to_string() + &table(|i| format!("{i},0.{:02},{i}", i)),
        ),
    ];
    for (shape, text) in shapes {
        let got = read("a.csv", &text).unwrap_or_else(|e| panic!("{shape}: {e}"));
        assert_eq!(got.rate_hz, 100.0, "{shape}");
        assert_eq!(got.values, counts(), "{shape}");
        assert!(!got.uneven, "{shape}");
    }
}

#[test]
fn one_column_needs_a_rate_from_elsewhere() {
    let text = table(|i| i.to_string());
    assert_eq!(read("a.csv", &text), Err(CsvError::CsvRateMissing { file: "a.csv".into() }));
    let got = read_with_rate("a.csv", &text, 250.0).unwrap();
    assert_eq!((got.rate_hz, got.values, got.start_s), (250.0, counts(), 0.0));
    let told = read("a.txt", &format!("# Sampling Rate (Hz):= 1000.00\n# Labels:= PPG\n{text}")).unwrap();
    assert_eq!((told.rate_hz, told.values), (1000.0, counts()));
    let comma = read_with_rate("a.csv", &table(|i| format!("0,{}", 10 + i)), 100.0).unwrap();
    assert_eq!(comma.values[3], 0.13);
    let two =
        read_with_rate("a.csv", &("red,infra\n".to_string() + &table(|i| format!("{i},7"))), 50.0).unwrap();
    assert_eq!((two.channel.as_str(), two.values), ("red", counts()));
}

#[test]
fn chooses_a_column_by_name_or_number() {
    let text = "time,R,G,B\n".to_string() + &table(|i| format!("{},{},{i},9", 10 * i, 200 + i));
    assert_eq!(read("a.csv", &text).unwrap().channel, "R");
    for channel in ["g", "3"] {
        let got = read_with("a.csv", &text, &Options { rate_hz: None, channel: Some(channel) }).unwrap();
        assert_eq!((got.channel.as_str(), got.values), ("G", counts()));
        assert_eq!(got.channels, ["R", "G", "B"]);
    }
    let error = read_with("a.csv", &text, &Options { rate_hz: None, channel: Some("ecg") }).unwrap_err();
    assert!(matches!(error, CsvError::CsvColumnUnknown { ref found, .. } if found == "ecg"), "{error}");
}

#[test]
fn uneven_stamps_are_interpolated_and_said_to_be() {
    // A ramp is its own linear interpolation, wherever the stamps fall.
    let jitter = [0.0, 9.0, -7.0, 4.0, -3.0];
    let stamp = |i: usize| 33.0 * i as f64 + jitter[i % 5];
    let got = read("a.csv", &table(|i| format!("{},{}", stamp(i), 2.0 * stamp(i)))).unwrap();
    assert!(got.uneven);
    assert!(got.rate_hz > 30.0 && got.rate_hz < 130.0, "{}", got.rate_hz);
    for (i, v) in got.values.iter().enumerate() {
        assert!((v - 2000.0 * i as f64 / got.rate_hz).abs() < 1e-9, "sample {i}");
    }
    // A frame that was dropped leaves a hole, whose length is told.
    let text = table(|i| format!("{},{i}", if i < 20 { 0.01 * i as f64 } else { 0.01 * i as f64 + 3.0 }));
    let hole = read("a.csv", &text).unwrap();
    assert!(hole.uneven && (hole.longest_step_s - 3.01).abs() < 1e-9);
}

#[test]
fn missing_values_and_repeated_stamps_are_counted() {
    let text = table(|i| match i {
        0 => "0.0,nan".into(),
        7 | 8 => format!("0.{i:02},"),
        _ => format!("0.{i:02},{i}"),
    });
    let got = read("a.csv", &text).unwrap();
    assert_eq!((got.missing, got.values[0]), (3, 1.0));
    assert!((got.values[7] - 7.0).abs() < 1e-12);
    assert!((got.values[8] - 8.0).abs() < 1e-12);
    let holes = table(|i| if i % 5 == 0 { format!("0.{i:02},NaN") } else { format!("0.{i:02},{i}") });
    assert!(matches!(read("a.csv", &holes), Err(CsvError::CsvMissing { found: 10, of: 50, .. })));
    let twice = table(|i| format!("{},{i}", if i == 10 { 90 } else { 10 * i }));
    assert_eq!(read("a.csv", &twice).unwrap().repeated, 1);
}

#[test]
fn errors_name_the_line_the_column_and_what_stands_there() {
    let bad = "t_s,value\n0,1\n0.01,2\n\n0.02,1o3\n";
    let error = read("pulse.csv", bad).unwrap_err();
    assert_eq!(error.to_string(), "pulse.csv, line 5, column 2 (value): expected a number, found \"1o3\"");
    let json = serde_json::to_value(&error).unwrap();
    assert_eq!((&json["code"], &json["args"]["line"]), (&"csv_cell".into(), &5.into()));
    let cases: [(&str, &str, &str); 9] = [
        ("short line", "0,1\n0.01\n", "line 2: expected at least 2 columns, found 1"),
        ("bad time", "0,1\n1:99:00,2\n", "line 2, column 1 (): expected a time"),
        ("infinite", "0,1\n0.01,inf\n", "line 2, column 2 (): expected a number, found \"inf\""),
        ("backwards", "0,1\n0.02,2\n0.01,3\n", "line 3, column 1: time must grow, but 0.01 s follows 0.02 s"),
        ("standing still", "5,1\n5,2\n5,3\n", "line 2, column 1: time must grow"),
        ("no numbers", "a,b\n\n# c\n", "no line with numbers"),
        ("words only", "a,b\nc,d\ne,f\n", "line 3, column 2 (b): expected a number, found \"f\""),
        ("slow", "t_s,v\n0,1\n1,2\n2,3\n", "expected a sampling rate of 10 to 10000 Hz, found 1 Hz"),
        ("one sample", "0,1\n", "expected 2 to 20000000 samples, found 1"),
    ];
    for (case, text, says) in cases {
        let error = read("a.csv", text).expect_err(case).to_string();
        assert!(error.starts_with("a.csv") && error.contains(says), "{case}: {error}");
    }
    for rate in [0.0, 9.9, 10_001.0, f64::NAN, f64::INFINITY, -5.0] {
        assert!(matches!(read_with_rate("a", "1\n2\n", rate), Err(CsvError::CsvRateRange { .. })), "{rate}");
    }
}

#[test]
fn whatever_comes_in_no_panic_comes_out() {
    // Pieces that mean something to the reader, in every order of four.
    let pieces =
        ["\"", ",", ";", "\t", "\n", "\r", "1", "-", "t_s", "#", "sep=", "00:00:00", "\u{feff}", "é", " "];
    let mut read_well = 0;
    for a in pieces {
        for b in pieces {
            for c in pieces {
                for d in pieces {
                    let text = format!("{a}{b}{c}{d}1,2\n2,3\n{d}{c}{b}{a}");
                    read_well += usize::from(read_with_rate("a", &text, 100.0).is_ok());
                }
            }
        }
    }
    assert!(read_well > 100, "the pieces should not spoil all files: {read_well} were read");
}

#[test]
fn what_is_written_reads_back_the_same() {
    for rate in [20.0, 48.0, 59.0, 117.0, 250.0, 1000.0, 4000.0, 99.97] {
        let values: Vec<f64> = (0..3000).map(|i| f64::from(i * 7919 % 1000) / 3.0 - 150.0).collect();
        let got = read("a.csv", &write(rate, &values)).unwrap();
        assert_eq!(got.values, values, "{rate}");
        assert!((got.rate_hz / rate - 1.0).abs() < 1e-12, "{rate}: {}", got.rate_hz);
        assert!(!got.uneven);
    }
}

#[test]
fn reads_recordings_of_real_devices() {
    let Some(data) = data() else { return assert!(read("a.csv", "0,1\n0.01,2\n").is_ok()) };
    let text = |name: &str| std::fs::read_to_string(data.join(name)).unwrap();
    let timer = read("data2", &text("heartpy_examples/data2.csv")).unwrap();
    // The rate that the documentation of that file gives: about 117 Hz (../shared/data/README.md).
    assert!((timer.rate_hz - 117.0).abs() < 0.1 && !timer.uneven, "{}", timer.rate_hz);
    let plain = read_with_rate("data", &text("heartpy_examples/data.csv"), 100.0).unwrap();
    assert_eq!((plain.values.len(), plain.values[0]), (2483, 530.0));
    let told = read("ppg", &text("biosppy_ppg/ppg.txt")).unwrap();
    assert_eq!((told.rate_hz, told.values.len()), (1000.0, 20_000));
    let rest = read("rest", &text("neurokit_rest5min/rest5min_100hz.csv")).unwrap();
    assert_eq!((rest.rate_hz, rest.channel.as_str(), rest.values.len()), (100.0, "PPG", 30_000));
    for i in 1..=21 {
        let name = format!("welltory/subject_{i:02}_ppg.csv");
        let camera = read(&name, &text(&name)).unwrap_or_else(|e| panic!("{e}"));
        assert!(camera.uneven && (40.0..130.0).contains(&camera.rate_hz), "{name}: {} Hz", camera.rate_hz);
        assert!(camera.values.len() as f64 / camera.rate_hz > 60.0, "{name}");
    }
}

/// A table of 100 lines at 100 Hz under a head.
fn under(head: &str, line: impl Fn(usize) -> String) -> String {
    format!("{head}\n{}", (0..100).map(|i| line(i) + "\n").collect::<String>())
}

#[test]
fn a_decimal_comma_under_one_title_is_no_second_column() {
    let text = under("value", |i| format!("0,{:04}", 1499 + i));
    assert!(
        matches!(read("a.csv", &text), Err(CsvError::CsvRateMissing { .. })),
        "{:?}",
        read("a.csv", &text)
    );
    let got = read_with_rate("a.csv", &text, 100.0).unwrap();
    assert_eq!((got.channel.as_str(), got.values.len(), got.values[0]), ("value", 100, 0.1499));
    // Whole numbers between the others have no comma.
    let text = under("value", |i| if i == 40 { "1".into() } else { format!("0,{:04}", 1499 + i) });
    assert_eq!(read_with_rate("a.csv", &text, 100.0).unwrap().values[40], 1.0);
}

#[test]
fn more_numbers_than_titles_are_refused_with_the_line() {
    let refused = |text: &str, line: usize, expected: usize, found: usize| {
        let error = read("a.csv", text).unwrap_err();
        let file = "a.csv".to_string();
        assert_eq!(error, CsvError::CsvCells { file, line, expected, found });
    };
    refused(&under("t_s,value", |i| format!("0,{:02},1,{i}", i)), 2, 2, 4);
    refused(&under("t_s;value", |i| format!("0,{:02};1;2", i)), 2, 2, 3);
    // Or than in the lines above.
    let text = under("t_s,value", |i| if i < 7 { format!("{}.5,1", i) } else { format!("{i},5,1") });
    refused(&text, 9, 2, 3);
    refused(&table(|i| if i < 7 { format!("0.0{i},1") } else { format!("0.0{i},1,5") }), 8, 2, 3);
    // Words and empty cells behind the numbers are remarks.
    let text = under("t_s,value", |i| format!("0.{i:02},{i},{}", if i == 50 { "here" } else { "" }));
    assert_eq!(read("a.csv", &text).unwrap().values.len(), 100);
}

#[test]
fn numbers_that_may_be_thousands_are_refused_and_decimals_are_read() {
    let value = |i: usize| 500 + 20 * i;
    let grouped =
        |n: usize| if n < 1000 { n.to_string() } else { format!("\"{},{:03}\"", n / 1000, n % 1000) };
    for text in [
        under("t_s,value", |i| format!("0.{i:02},{}", grouped(value(i)))),
        under("t_s;value", |i| format!("0.{i:02};{}", grouped(value(i)).replace('"', ""))),
    ] {
        match read("a.csv", &text) {
            Err(CsvError::CsvThousands { line: 27, found, other, .. }) => {
                assert_eq!((found.as_str(), other.as_str()), ("1,000", "500"));
            }
            other => panic!("{other:?}"),
        }
    }
    // A time column says by its order which of both it is; values with other decimals, too.
    let german = |i: usize| {
        format!("{:.3}", 1.5 + 0.1 * i as f64).trim_end_matches('0').trim_end_matches('.').replace('.', ",")
    };
    let text = under("t_s;value", |i| {
        format!("{};{}", format!("{}.{:03}", 1 + i / 100, 10 * (i % 100)).replace('.', ","), german(i))
    });
    let got = read("a.csv", &text).unwrap();
    assert_eq!((got.rate_hz, got.values[0], got.values[5]), (100.0, 1.5, 2.0));
}

#[test]
fn minutes_and_hours_are_what_the_title_says() {
    for (head, per_s) in [("time (min),value", 60.0), ("t_h,value", 3600.0), ("time,value\nminutes,mV", 60.0)]
    {
        let text = under(head, |i| format!("{:.9},{i}", i as f64 / 100.0 / per_s));
        let got = read("a.csv", &text).unwrap();
        assert!((got.rate_hz - 100.0).abs() < 0.01, "{head}: {} Hz", got.rate_hz);
    }
    // A minimum is no minute.
    let got = read_with_rate("a.csv", &under("min,max", |i| format!("{i},7")), 50.0).unwrap();
    assert_eq!((got.channel.as_str(), got.rate_hz), ("min", 50.0));
}

#[test]
fn sample_numbers_are_no_time() {
    for head in ["sample,value", "Index;value", "frame,red"] {
        let text = under(head, |i| format!("{i}{}{}", if head.contains(';') { ';' } else { ',' }, 2 * i));
        assert_eq!(read("a.csv", &text), Err(CsvError::CsvRateMissing { file: "a.csv".into() }), "{head}");
        let got = read_with_rate("a.csv", &text, 100.0).unwrap();
        assert_eq!((got.rate_hz, got.values[3]), (100.0, 6.0));
    }
}

#[test]
fn a_gap_in_the_times_or_in_the_values_is_told_in_a_note() {
    let import = |text: &str| {
        dicrotic::exchange::import(&[("a.csv".into(), text.as_bytes().to_vec())], &Options::default())
            .unwrap()
    };
    let text =
        under("t_s,value", |i| format!("{:.2},{i}", 2.0 + if i < 50 { 0.0 } else { 5.0 } + i as f64 / 100.0));
    let read = import(&text);
    let close = |a: f64, b: f64| (a - b).abs() < 1e-9;
    let [(at_s, length_s)] = read.recorded.gaps[..] else { panic!("{:?}", read.recorded.gaps) };
    assert!(close(at_s, 0.49) && close(length_s, 5.01), "{at_s} {length_s}");
    assert_eq!(read.notes.len(), 1);
    assert_eq!((read.notes[0].text.as_str(), read.notes[0].length_s), ("missing", Some(length_s)));
    let text = under("t_s,value", |i| {
        format!(
            "{:.2},{}",
            i as f64 / 100.0,
            if (50..58).contains(&i) { "nan".into() } else { i.to_string() }
        )
    });
    assert!(
        matches!(import(&text).recorded.gaps[..], [(at, length)] if close(at, 0.49) && close(length, 0.09))
    );
    // One or two lines that are not there are usual.
    let text = under("t_s,value", |i| format!("{:.2},{i}", (i + i / 30) as f64 / 100.0));
    assert_eq!(import(&text).notes, []);
}

#[test]
fn a_note_is_no_formula_in_a_spreadsheet_and_comes_back_as_it_was() {
    use dicrotic::session::note::Note;
    let notes: Vec<Note> = ["=1+1", "a;=cmd|' /C calc'!A0", "'=1", "-5, +6", "plain", "\"=1\"", "it's"]
        .iter()
        .enumerate()
        .map(|(k, text)| Note::new(k as f64, *text))
        .collect();
    let text = dicrotic::exchange::csv::write_with_notes(100.0, &[0.0; 800], &notes);
    for line in text.lines().filter(|line| line.starts_with('#')) {
        for part in line.split([',', ';', '\t']) {
            assert!(!part.trim_start_matches(['"', ' ']).starts_with(['=', '+', '-', '@']), "{line}");
        }
    }
    assert_eq!(dicrotic::exchange::csv::read_notes(&text), notes);
}

/// A table with an electrocardiogram before the pulse is opened at the pulse; what was asked for goes before the name.
#[test]
fn the_column_that_is_a_pulse_by_its_name_is_chosen() {
    let text = |titles: &str| {
        let rows: String = (0..100).map(|k| format!("{},{},{}\n", k as f64 / 50.0, k % 7, k % 9)).collect();
        format!("{titles}\n{rows}")
    };
    for (titles, channel, second) in
        [("t_s,II,PLETH", "PLETH", 1.0), ("t_s,a,b", "a", 1.0), ("t_s,Finger pulse,II", "Finger pulse", 1.0)]
    {
        let got = read("a.csv", &text(titles)).unwrap();
        assert_eq!((got.channel.as_str(), got.values[1]), (channel, second), "{titles}");
    }
    let asked = Options { rate_hz: None, channel: Some("II") };
    assert_eq!(read_with("a.csv", &text("t_s,II,PLETH"), &asked).unwrap().channel, "II");
}
