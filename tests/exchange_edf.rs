//! Mirrors `src/exchange/edf`: the header's fields, files by others, and what is refused.

use dicrotic::exchange::error::{Expected, Place, Unsupported};
use dicrotic::exchange::{self, FileError, Format, Imported, Options, Outgoing, Samples};
use dicrotic::recording::Recording;
use dicrotic::session::note::Note;

fn recording(codes: &[i16], rate_hz: f64) -> Recording {
    let mut made = Recording::new(rate_hz);
    made.mark_span(0.1 / 32768.0, 0.0, 16);
    made.push(codes);
    made
}

fn written(recording: &Recording, notes: &[Note]) -> Vec<u8> {
    let out = Outgoing { name: "take", samples: Samples::Recording(recording), volts: true, notes };
    exchange::export(Format::Edf, &out).unwrap().remove(0).1
}

fn read(bytes: &[u8]) -> Result<Imported, FileError> {
    exchange::import(&[("x.edf".to_string(), bytes.to_vec())], &Options::default())
}

fn field(bytes: &[u8], at: usize, len: usize) -> &str {
    std::str::from_utf8(&bytes[at..at + len]).unwrap().trim_end()
}

#[test]
fn the_header_is_as_the_standard_has_it() {
    // Places of the fields, identification and dates: Kemp et al. 1992 and Kemp & Olivan 2003, edfplus.info
    // (from memory).
    let bytes = written(&recording(&(0..2500).collect::<Vec<i16>>(), 1000.0), &[Note::new(0.5, "beat")]);
    for (at, len, expected) in [
        (0, 8, "0"),
        (8, 80, "X X X X"),
        (88, 80, "Startdate X X X Dicrotic"),
        (168, 8, "01.01.85"),
        (176, 8, "00.00.00"),
        (184, 8, "768"),
        (192, 44, "EDF+C"),
        (236, 8, "3"),
        (244, 8, "1"),
        (252, 4, "2"),
        (256, 16, "Pulse"),
        (272, 16, "EDF Annotations"),
        (448, 8, "V"),
        (464, 8, "-0.1"),
        (496, 8, "-32768"),
        (512, 8, "32767"),
    ] {
        assert_eq!(field(&bytes, at, len), expected, "byte {at}");
    }
    assert!(bytes[..768].iter().all(|b| (32..127).contains(b)), "not all of the header is printable ASCII");
    // Each record begins its list with its own time.
    let record = 2 * 1000 + 2 * field(&bytes, 696, 8).parse::<usize>().unwrap();
    assert_eq!(bytes.len(), 768 + 3 * record);
    for (k, keeper) in ["+0\x14\x14\0", "+1\x14\x14\0", "+2\x14\x14\0"].iter().enumerate() {
        assert!(bytes[768 + k * record + 2000..].starts_with(keeper.as_bytes()), "record {k}");
    }
}

#[test]
fn records_stay_within_the_size_that_the_standard_recommends() {
    // 61,440 bytes: Kemp et al. 1992 (from memory).
    let many: Vec<Note> = (0..2000).map(|k| Note::new(f64::from(k) / 1000.0, "beat")).collect();
    for rate_hz in [20.0, 4000.0, 99.97] {
        let made = recording(&vec![1; 12_000], rate_hz);
        let bytes = written(&made, &many);
        let samples = field(&bytes, 688, 8).parse::<usize>().unwrap();
        let room = field(&bytes, 696, 8).parse::<usize>().unwrap();
        assert!(2 * (samples + room) <= 61_440, "{rate_hz} Hz: {samples} samples, {room} for annotations");
        assert_eq!(read(&bytes).unwrap().notes.len(), 2000);
    }
}

/// A plain EDF file of two signals as another writer might make it: 100 Hz and 10 Hz, 3 records of a second.
fn by_another() -> Vec<u8> {
    let mut text = String::new();
    let mut put = |s: &str, width: usize| text.push_str(&format!("{s:<width$}"));
    for (s, width) in [
        ("0", 8),
        ("MCH-0234567 F 02-MAY-1951 Haagse_Harry", 80),
        ("Startdate 02-MAR-2002", 80),
        ("02.03.02", 8),
        ("10.20.30", 8),
        ("768", 8),
        ("", 44),
        ("3", 8),
        ("1", 8),
        ("2", 4),
    ] {
        put(s, width);
    }
    for (width, pair) in [
        (16, ["Pleth", "Temp"]),
        (80, ["clip", ""]),
        (8, ["mV", "degC"]),
        // Turned over: the physical ends fall.
        (8, ["100", "30"]),
        (8, ["-100", "40"]),
        (8, ["-2048", "0"]),
        (8, ["2047", "1000"]),
        (80, ["", ""]),
        (8, ["100", "10"]),
        (32, ["", ""]),
    ] {
        put(pair[0], width);
        put(pair[1], width);
    }
    let mut bytes = text.into_bytes();
    for k in 0..3_i16 {
        bytes.extend((0..100).flat_map(|i| (i * 10 + k).to_le_bytes()));
        bytes.extend((0..10).flat_map(|i| (i * 100_i16).to_le_bytes()));
    }
    bytes
}

#[test]
fn a_plain_file_of_several_signals_is_read_by_name_and_number() {
    let bytes = by_another();
    let first = read(&bytes).unwrap();
    assert_eq!((first.recorded.channel.as_str(), first.recorded.rate_hz), ("Pleth", 100.0));
    assert_eq!(first.recorded.channels, ["Pleth", "Temp"]);
    assert!(first.volts && first.notes.is_empty());
    // Code 0 of -2048..2047 on +100..-100 mV, in V.
    let expected = (0.1 - 0.2 * 2048.0 / 4095.0) * 1.0;
    assert!((first.recorded.values[0] - expected).abs() < 1e-12, "{}", first.recorded.values[0]);
    assert_eq!(first.recorded.values.len(), 300);
    let ask = |channel| {
        exchange::import(&[("x".into(), bytes.clone())], &Options { rate_hz: None, channel: Some(channel) })
    };
    for name in ["temp", "2"] {
        let second = ask(name).unwrap();
        assert_eq!((second.recorded.rate_hz, second.volts), (10.0, false));
        assert!((second.recorded.values[1] - 31.0).abs() < 1e-9);
    }
    assert!(matches!(ask("ECG"), Err(FileError::FileChannel { .. })));
    // A number of records that was not known while writing is told by the file's length.
    let mut open = bytes.clone();
    open[236..244].copy_from_slice(b"-1      ");
    assert_eq!(read(&open).unwrap().recorded.values.len(), 300);
}

#[test]
fn what_is_wrong_is_named_with_its_place() {
    let good = by_another();
    let with = |at: usize, text: &str| {
        let mut bytes = good.clone();
        bytes[at..at + text.len()].copy_from_slice(text.as_bytes());
        read(&bytes)
    };
    let wrong = |at, field, expected, low, high, found: &str| {
        let (file, found) = ("x.edf".to_string(), found.to_string());
        Err(FileError::FileField { file, place: Place::Byte, at, field, expected, low, high, found })
    };
    assert_eq!(with(252, "-2  "), wrong(252, "number of signals", Expected::WholeNumber, 1.0, 4096.0, "-2"));
    assert_eq!(
        with(184, "512     "),
        wrong(184, "number of bytes in the header", Expected::WholeNumber, 768.0, 768.0, "512")
    );
    assert_eq!(
        with(244, "0       "),
        wrong(244, "duration of a data record", Expected::AboveZero, 0.0, 0.0, "0")
    );
    assert_eq!(with(464, "ten     "), wrong(464, "physical minimum", Expected::Number, 0.0, 0.0, "ten"));
    assert_eq!(
        with(480, "100     "),
        wrong(480, "physical maximum", Expected::OtherThanLow, 0.0, 0.0, "100")
    );
    assert_eq!(
        with(512, "-2048   "),
        wrong(512, "digital maximum", Expected::OtherThanLow, 0.0, 0.0, "-2048")
    );
    let refused = |what, found: &str| {
        Err(FileError::FileUnsupported { file: "x.edf".into(), what, found: found.into() })
    };
    assert_eq!(with(192, "EDF+D"), refused(Unsupported::Discontinuous, "EDF+D"));
    let mut bdf = good.clone();
    bdf[..8].copy_from_slice(b"\xffBIOSEMI");
    assert_eq!(read(&bdf), refused(Unsupported::Bdf, "BDF"));
    // A header that tells of far more than there is claims no memory.
    for (at, claim) in [(236, "99999999"), (688, "9999999 "), (244, "0.0001  ")] {
        assert!(with(at, claim).is_err(), "byte {at}");
    }
    for cut in [0, 8, 200, 256, 700, 768, good.len() - 1] {
        assert!(read(&good[..cut]).is_err(), "cut at {cut}");
    }
}

#[test]
fn gaps_are_told_by_the_name_in_any_letters_and_by_the_times_of_the_records() {
    let bytes = written(&recording(&(0..400).collect::<Vec<i16>>(), 100.0), &[]);
    let refused = |bytes: &[u8]| match read(bytes) {
        Err(FileError::FileUnsupported { what: Unsupported::Discontinuous, found, .. }) => found,
        other => panic!("{other:?}"),
    };
    for name in ["EDF+D", "edf+d", "Edf+D"] {
        let mut other = bytes.clone();
        other[192..197].copy_from_slice(name.as_bytes());
        assert_eq!(refused(&other), "EDF+D");
    }
    // Records of a second that begin every two, under either name.
    for name in ["EDF+C", "edf+c"] {
        let mut other = bytes.clone();
        other[192..197].copy_from_slice(name.as_bytes());
        assert_eq!(read(&other).unwrap().recorded.values.len(), 400);
        for k in (1..4).rev() {
            let keeper = format!("+{k}\x14\x14\0");
            let at = other.windows(keeper.len()).position(|part| part == keeper.as_bytes()).unwrap();
            other[at + 1] = b'0' + 2 * k;
        }
        assert_eq!(refused(&other), "record 2 at 2 s, expected 1 s");
    }
}
