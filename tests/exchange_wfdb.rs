//! Mirrors `src/exchange/wfdb`: records by others, in each format that is read, and what is refused.

use dicrotic::exchange::error::{Expected, Place, Unsupported};
use dicrotic::exchange::{self, FileError, Imported, NamedFile, Options};
use dicrotic::session::note;

fn file(name: &str, bytes: impl Into<Vec<u8>>) -> NamedFile {
    (name.to_string(), bytes.into())
}

fn read(files: &[NamedFile]) -> Result<Imported, FileError> {
    exchange::import(files, &Options::default())
}

/// Samples of one signal; beside it lies a second one, the first turned over.
const CODES: [i32; 7] = [0, 100, -100, 127, -127, 5, 6];

fn pairs() -> impl Iterator<Item = i32> {
    CODES.into_iter().flat_map(|c| [c, -c])
}

/// The bytes of the pairs in a format.
fn packed(format: u16) -> Vec<u8> {
    let all: Vec<i32> = pairs().collect();
    match format {
        16 => all.iter().flat_map(|c| (*c as i16).to_le_bytes()).collect(),
        61 => all.iter().flat_map(|c| (*c as i16).to_be_bytes()).collect(),
        80 => all.iter().map(|c| (c + 128) as u8).collect(),
        160 => all.iter().flat_map(|c| ((c + 32768) as u16).to_le_bytes()).collect(),
        212 => all
            .chunks(2)
            .flat_map(|p| {
                let (a, b) = (p[0] as u16 & 0xfff, p[1] as u16 & 0xfff);
                [a as u8, (a >> 8 | b >> 8 << 4) as u8, b as u8]
            })
            .collect(),
        other => panic!("no test data in format {other}"),
    }
}

#[test]
fn each_format_is_read_by_name_and_number() {
    for format in [16, 61, 80, 160, 212] {
        let header = format!(
            "rec 2 50 7 10:00:00\nrec.dat {format} 100(5)/mV 12 0 0 {} 0 PLETH\nrec.dat {format} 200/mV 12 0 0 {} 0 turned over\n# end\n",
            CODES.iter().sum::<i32>(),
            -CODES.iter().sum::<i32>(),
        );
        let files = [file("rec.hea", header), file("rec.dat", packed(format))];
        let first = read(&files).unwrap();
        assert_eq!(first.recorded.channels, ["PLETH", "turned over"], "format {format}");
        assert_eq!((first.recorded.rate_hz, first.volts), (50.0, true));
        let second =
            exchange::import(&files, &Options { rate_hz: None, channel: Some("turned over") }).unwrap();
        for (k, code) in CODES.iter().enumerate() {
            let (a, b) = (f64::from(code - 5) / 100.0 * 1e-3, f64::from(-code) / 200.0 * 1e-3);
            assert!((first.recorded.values[k] - a).abs() < 1e-15, "format {format}, sample {k}");
            assert!((second.recorded.values[k] - b).abs() < 1e-15, "format {format}, sample {k}");
        }
    }
}

#[test]
fn differences_are_added_up_from_the_initial_value() {
    let header = "rec 1 50 6\nrec.dat 8 1/NU 8 0 100\n";
    let bytes: Vec<u8> = [0_i8, 5, -10, 127, -128, 1].iter().map(|d| *d as u8).collect();
    let read = read(&[file("rec.hea", header), file("rec.dat", bytes)]).unwrap();
    assert_eq!(read.recorded.values, [100.0, 105.0, 95.0, 222.0, 94.0, 95.0]);
    assert!(!read.volts);
}

#[test]
fn missing_samples_are_filled_in_and_noted() {
    let mut codes: Vec<i16> = (0..60).map(|k| k * 10).collect();
    codes[20..23].fill(i16::MIN);
    codes[59] = i16::MIN;
    let bytes: Vec<u8> = codes.iter().flat_map(|c| c.to_le_bytes()).collect();
    let sum = codes.iter().fold(0_i16, |s, c| s.wrapping_add(*c));
    let header = format!("rec 1 10 60\nrec.dat 16 1/NU 16 0 0 {sum} 0 x\n");
    let read = |header: &str| read(&[file("rec.hea", header), file("rec.dat", bytes.clone())]);
    let got = read(&header).unwrap();
    assert_eq!(got.recorded.missing, 4);
    assert_eq!(&got.recorded.values[19..24], [190.0, 200.0, 210.0, 220.0, 230.0]);
    assert_eq!(got.recorded.values[59], 580.0);
    let told: Vec<_> = got.notes.iter().map(|n| (n.at_s, n.length_s, n.text.as_str())).collect();
    assert_eq!(told, [(2.0, Some(0.3), note::MISSING), (5.9, Some(0.1), note::MISSING)]);
    // Where most is missing there is no recording.
    codes.fill(i16::MIN);
    let bytes: Vec<u8> = codes.iter().flat_map(|c| c.to_le_bytes()).collect();
    let lost = exchange::import(
        &[file("rec.hea", "rec 1 10 60\nrec.dat 16\n"), file("rec.dat", bytes)],
        &Options::default(),
    );
    assert!(matches!(lost, Err(FileError::FileMissing { found: 60, of: 60, .. })), "{lost:?}");
}

#[test]
fn annotations_of_others_are_beats_or_notes() {
    let word = |code: u16, wait: u16| (code << 10 | wait).to_le_bytes();
    let mut bytes: Vec<u8> = Vec::new();
    // A note at 0 that tells the unit of time; a normal beat; a rhythm with its text; a premature beat after a long wait,
    // with its subtype; noise without a text.
    bytes.extend(word(22, 0));
    let unit = b"## time resolution: 500";
    bytes.extend((63 << 10 | unit.len() as u16).to_le_bytes());
    bytes.extend(unit);
    bytes.push(0);
    bytes.extend(word(1, 250));
    bytes.extend(word(28, 1));
    bytes.extend((63_u16 << 10 | 2).to_le_bytes());
    bytes.extend(b"(N");
    bytes.extend(word(59, 0));
    bytes.extend(0_u16.to_le_bytes());
    bytes.extend(2000_u16.to_le_bytes());
    bytes.extend(word(5, 0));
    bytes.extend(word(61, 3));
    bytes.extend(word(14, 249));
    bytes.extend([0, 0]);
    let data: Vec<u8> = (0..500_i16).flat_map(|c| c.to_le_bytes()).collect();
    let header = file("rec.hea", "rec 1 100 500\nrec.dat 16 1/NU\n");
    let with = |marks: Vec<u8>, name: &str| {
        read(&[header.clone(), file("rec.dat", data.clone()), file(name, marks)])
    };
    for name in ["rec.atr", "rec.qrs"] {
        let notes = with(bytes.clone(), name).unwrap().notes;
        let told: Vec<_> = notes.iter().map(|n| (n.at_s, n.text.as_str())).collect();
        assert_eq!(told, [(0.5, "beat"), (0.502, "(N"), (4.502, "beat"), (5.0, "annotation 14")], "{name}");
    }
    // Annotations of another record are not taken for those of this one.
    assert!(with(bytes.clone(), "other.atr").unwrap().notes.is_empty());
    // Cut in the text of the first, it tells where.
    bytes.truncate(15);
    let cut = with(bytes, "rec.atr");
    assert_eq!(cut, Err(FileError::FileAnnotation { file: "rec.atr".into(), at: 2 }));
    let text = [&word(22, 3)[..], &(63_u16 << 10 | 200).to_le_bytes(), b"short"].concat();
    assert_eq!(with(text, "rec.atr"), Err(FileError::FileAnnotation { file: "rec.atr".into(), at: 2 }));
}

#[test]
fn what_is_wrong_is_named_with_its_place() {
    let data = file("rec.dat", (0..60_i16).flat_map(|c| c.to_le_bytes()).collect::<Vec<u8>>());
    let with = |header: &str| read(&[file("rec.hea", header), data.clone()]);
    assert!(with("rec 1 100 60\nrec.dat 16\n").is_ok());
    let wrong = |at, field, expected, low, high, found: &str| {
        let (file, found) = ("rec.hea".to_string(), found.to_string());
        Err(FileError::FileField { file, place: Place::Line, at, field, expected, low, high, found })
    };
    assert_eq!(
        with("rec 1 1OO 60\nrec.dat 16\n"),
        wrong(1, "sampling frequency", Expected::Number, 0.0, 0.0, "1OO")
    );
    assert_eq!(
        with("# on top\nrec 2 100 60\nrec.dat 16\n"),
        wrong(4, "file name of a signal", Expected::Something, 0.0, 0.0, "")
    );
    assert_eq!(
        with("rec 1 100 60\nrec.dat 16 200/mV twelve\n"),
        wrong(2, "resolution of the converter", Expected::WholeNumber, -2147483648.0, 4294967295.0, "twelve")
    );
    let refused = |header: &str, what, found: &str| {
        let expected = FileError::FileUnsupported { file: "rec.hea".into(), what, found: found.into() };
        assert_eq!(with(header), Err(expected), "{header}");
    };
    refused("rec 1 100 60\nrec.dat 310\n", Unsupported::Format, "310");
    refused("rec 1 100 60\nrec.dat 16x4\n", Unsupported::Frames, "16x4");
    refused("rec 1 100 60\nrec.dat 16:3\n", Unsupported::Skew, "16:3");
    refused("rec/2 1 100 60\npart1 30\npart2 30\n", Unsupported::Segments, "2");
    refused("rec 2 100 60\nrec.dat 16\nrec.dat 212\n", Unsupported::Format, "16, 212");
    let short = with("rec 1 100 6000\nrec.dat 16\n");
    assert_eq!(short, Err(FileError::FileShort { file: "rec.dat".into(), expected: 12_000, found: 120 }));
    assert!(matches!(with("rec 1 100 60\nrec.dat 16 1 16 0 0 9 0 x\n"), Err(FileError::FileChecksum { .. })));
    assert!(matches!(with("rec 1 5 60\nrec.dat 16\n"), Err(FileError::FileRate { .. })));
    assert!(matches!(with("rec 1 100 999999999999\nrec.dat 16\n"), Err(FileError::FileLength { .. })));
    // Bytes before the first sample.
    let late = with("rec 1 100\nrec.dat 16+20 1/NU\n").unwrap();
    assert_eq!((late.recorded.values.len(), late.recorded.values[0]), (50, 10.0));
}
