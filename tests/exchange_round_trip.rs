//! What is written in each form comes back: samples to within half of the written step, notes all of them; and no
//! damage to a file does more than give an error.

use dicrotic::exchange::{self, FileError, Format, NamedFile, Options, Outgoing, Samples};
use dicrotic::recording::Recording;
use dicrotic::session::note::Note;
use proptest::prelude::*;

const FORMATS: [Format; 3] = [Format::Csv, Format::Edf, Format::Wfdb];
const RANGES_V: [f64; 4] = [10.0, 0.2, 0.1, 0.005];

/// A recording whose range changes, as codes and ranges.
fn recording(rate_hz: f64, stretches: &[(usize, Vec<i16>)]) -> Recording {
    let mut made = Recording::new(rate_hz);
    for (range, codes) in stretches {
        made.mark_span(RANGES_V[*range] / 32768.0, 0.0, 16);
        made.push(codes);
    }
    made
}

fn written(format: Format, recording: &Recording, notes: &[Note]) -> Vec<NamedFile> {
    exchange::export(
        format,
        &Outgoing { name: "take", samples: Samples::Recording(recording), volts: true, notes },
    )
    .unwrap()
}

/// The written step, V, read from the file's own header.
fn step_v(format: Format, files: &[NamedFile]) -> f64 {
    let bytes = &files[0].1;
    match format {
        Format::Csv => 0.0,
        Format::Edf => {
            // The header of two signals: physical ends after label, transducer and unit.
            let number =
                |at: usize| std::str::from_utf8(&bytes[at..at + 8]).unwrap().trim().parse::<f64>().unwrap();
            let unit = std::str::from_utf8(&bytes[448..456]).unwrap().trim();
            let factor = match unit {
                "uV" => 1e-6,
                "mV" => 1e-3,
                _ => 1.0,
            };
            (number(480) - number(464)) / 65535.0 * factor
        }
        Format::Wfdb => {
            let text = std::str::from_utf8(bytes).unwrap();
            let gain = text.lines().nth(1).unwrap().split_whitespace().nth(2).unwrap();
            1.0 / gain.split('(').next().unwrap().parse::<f64>().unwrap()
        }
    }
}

fn assert_comes_back(format: Format, recording: &Recording, notes: &[Note]) -> Result<(), TestCaseError> {
    let files = written(format, recording, notes);
    let read = exchange::import(&files, &Options::default()).unwrap();
    prop_assert_eq!(read.format, format);
    let (ours, theirs) = (recording.rate_hz(), read.recorded.rate_hz);
    // A table tells times, not a rate. Its reader takes the roundest rate that puts every sample within .6 ms of its
    // time; of a few samples that may be one by some tenths of a per cent.
    let near = if format == Format::Csv { 6e-4 * ours / recording.len() as f64 * 2.0 + 1e-6 } else { 1e-6 };
    prop_assert!((theirs / ours - 1.0).abs() < near, "{format:?}: {ours} Hz became {theirs}");
    prop_assert_eq!(read.recorded.values.len(), recording.len());
    let half = step_v(format, &files) / 2.0 * (1.0 + 1e-6) + 1e-15;
    for (k, (a, b)) in recording.values(0, recording.len()).iter().zip(&read.recorded.values).enumerate() {
        prop_assert!((a - b).abs() <= half, "{format:?}, sample {k}: {a} became {b}, half a step is {half}");
    }
    // WFDB puts a note on a sample, and on a free one beside it where many lie on one; the others keep the time.
    let step_s = 1.0 / recording.rate_hz();
    let near_s = if format == Format::Wfdb { (notes.len() + 1) as f64 * step_s } else { 2e-6 };
    let ordered = |notes: &[Note]| {
        let mut all = notes.to_vec();
        let length = |n: &Note| n.length_s.map(|s| (s * 1e6).round() as i64);
        all.sort_by(|a, b| (&a.text, length(a)).cmp(&(&b.text, length(b))).then(a.at_s.total_cmp(&b.at_s)));
        all
    };
    let (ours, there) = (ordered(notes), ordered(&read.notes));
    prop_assert_eq!(ours.len(), there.len(), "{:?}: {:?} became {:?}", format, ours, there);
    for (a, b) in ours.iter().zip(&there) {
        prop_assert_eq!(&a.text, &b.text);
        prop_assert!((a.at_s - b.at_s).abs() <= near_s, "{format:?}: {a:?} became {b:?}");
        prop_assert_eq!(a.length_s.is_some(), b.length_s.is_some());
        prop_assert!(a.length_s.zip(b.length_s).is_none_or(|(a, b)| (a - b).abs() < 2e-6));
    }
    Ok(())
}

fn stretches() -> impl Strategy<Value = Vec<(usize, Vec<i16>)>> {
    let codes = prop_oneof![
        prop::collection::vec(any::<i16>(), 1..300),
        prop::collection::vec(prop_oneof![Just(i16::MIN), Just(i16::MAX), Just(0)], 1..300),
    ];
    prop::collection::vec((0..RANGES_V.len(), codes), 1..4)
}

fn notes(longest_s: f64) -> impl Strategy<Value = Vec<Note>> {
    let texts =
        ["beat", "cursor a", "range v=0.1", "tap_sensor", "settings bits=16 rate_hz=1000", "Ärger, größer"];
    let one = (0.0..longest_s, prop::option::of(0.0..5.0), 0..texts.len());
    prop::collection::vec(one, 0..40).prop_map(move |all| {
        all.into_iter()
            .map(|(at_s, length_s, text)| {
                // Whole samples and microseconds, as marks and log entries are.
                let at_s = (at_s * 1000.0_f64).floor() / 1000.0;
                let length_s = length_s.map(|s: f64| (s * 1000.0).floor() / 1000.0).filter(|_| text > 0);
                Note { at_s, length_s, text: texts[text].to_string() }
            })
            .collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn samples_and_notes_come_back(parts in stretches(), rate in 0..6_usize, notes in notes(1.0)) {
        // Rates of the recorder, and of devices whose samples do not fill a second.
        let rate_hz = [20.0, 49.0, 1000.0, 4000.0, 99.97, 10.0 / 3.0 * 31.0][rate];
        let made = recording(rate_hz, &parts);
        prop_assume!(made.len() >= 3);
        let notes: Vec<Note> = notes.into_iter().filter(|n| n.at_s < made.duration_s() - 1.0 / rate_hz).collect();
        // WFDB has a place for one annotation a sample.
        prop_assume!(notes.len() < made.len());
        for format in FORMATS {
            assert_comes_back(format, &made, &notes)?;
        }
    }

    #[test]
    fn damage_gives_an_error_or_a_recording_but_never_a_panic(
        which in 0..3_usize,
        hits in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 0..8),
        file in any::<prop::sample::Index>(),
        cut in any::<prop::sample::Index>(),
        cuts in any::<bool>(),
    ) {
        let made = recording(100.0, &[(1, (0..400).map(|k| k * 50).collect()), (2, vec![7; 300])]);
        let notes = [Note::new(0.5, "beat"), Note::lasting(1.0, 2.0, "window"), Note::new(6.0, "tap_sensor")];
        let mut files = written(FORMATS[which], &made, &notes);
        let k = file.index(files.len());
        let bytes = &mut files[k].1;
        for (at, byte) in hits {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        if cuts {
            let len = cut.index(bytes.len());
            bytes.truncate(len);
        }
        match exchange::import(&files, &Options::default()) {
            Ok(read) => prop_assert!(read.recorded.values.iter().all(|v| v.is_finite())),
            Err(error) => prop_assert!(!error.to_string().is_empty()),
        }
    }

    #[test]
    fn any_bytes_under_any_name_are_no_panic(
        bytes in prop::collection::vec(any::<u8>(), 0..2000),
        head in 0..5_usize,
        name in 0..5_usize,
    ) {
        let heads: [&[u8]; 5] = [b"", b"0       ", b"\xffBIOSEMI", b"x 2 100 1000\nx.dat 212", b"t_s,value\n0,1\n"];
        let name = ["a.csv", "a.edf", "a.hea", "a.dat", "a"][name];
        let all = [heads[head], &bytes].concat();
        if let Ok(read) = exchange::import(&[(name.to_string(), all)], &Options::default()) {
            prop_assert!(read.recorded.values.iter().all(|v| v.is_finite()));
        }
    }
}

#[test]
fn one_range_is_written_code_by_code() {
    let codes: Vec<i16> = (0..3000_i32).map(|k| ((k * 37) % 65536 - 32768) as i16).collect();
    for (range, range_v) in RANGES_V.into_iter().enumerate() {
        let made = recording(1000.0, &[(range, codes.clone())]);
        for format in FORMATS {
            let read = exchange::import(&written(format, &made, &[]), &Options::default()).unwrap();
            let step = range_v / 32768.0;
            // EDF's ends have eight characters, too few for the exact scale of the smallest ranges.
            let near = if format == Format::Edf && range_v < 0.1 { 0.51 } else { 0.02 } * step;
            for (code, value) in codes.iter().zip(&read.recorded.values) {
                assert!((f64::from(*code) * step - value).abs() < near, "{format:?} {code} {value}");
            }
        }
    }
}

#[test]
fn a_flat_recording_and_one_far_from_zero_are_written() {
    for values in [vec![0.0; 50], vec![0.25; 50], (0..50).map(|k| 1234.5 + f64::from(k) * 1e-3).collect()] {
        let made = Recording::of_values(50.0, &values);
        let both = [Samples::Recording(&made), Samples::Values { rate_hz: 50.0, values: &values }];
        for (format, samples) in FORMATS.into_iter().flat_map(|f| both.map(|s| (f, s))) {
            for volts in [true, false] {
                let out = Outgoing { name: "x", samples, volts, notes: &[] };
                let files = exchange::export(format, &out).unwrap();
                let read = exchange::import(&files, &Options::default()).unwrap();
                for (a, b) in values.iter().zip(&read.recorded.values) {
                    assert!((a - b).abs() < 1e-4, "{format:?}: {a} became {b}");
                }
            }
        }
    }
}

#[test]
fn files_that_belong_together_are_asked_for_and_strangers_refused() {
    let made = recording(100.0, &[(0, vec![5; 300])]);
    let record = written(Format::Wfdb, &made, &[Note::new(1.0, "beat")]);
    let [header, data, marks] = &record[..] else { panic!("{} files", record.len()) };
    let read = |files: &[&NamedFile]| {
        exchange::import(&files.iter().map(|f| (*f).clone()).collect::<Vec<_>>(), &Options::default())
    };
    assert_eq!(
        read(&[header]),
        Err(FileError::FileAlone { file: "take.hea".into(), needs: "take.dat".into() })
    );
    assert_eq!(read(&[data]), Err(FileError::FileHeadless { file: "take.dat".into() }));
    assert_eq!(read(&[marks, data]), Err(FileError::FileHeadless { file: "take.atr".into() }));
    // In any order; without annotations it is a recording all the same.
    assert_eq!(read(&[marks, data, header]).unwrap().notes.len(), 1);
    assert_eq!(read(&[data, header]).unwrap().notes.len(), 0);
    let edf = &written(Format::Edf, &made, &[])[0];
    let csv = &written(Format::Csv, &made, &[])[0];
    for pair in [[edf, csv], [csv, edf], [header, edf]] {
        assert!(matches!(read(&pair), Err(FileError::FileSeveral { .. })), "{:?}", read(&pair));
    }
    assert!(matches!(read(&[]), Err(FileError::FileUnsupported { .. })));
    // The name does not matter, only what stands in it.
    let renamed = ("pulse.txt".to_string(), edf.1.clone());
    assert_eq!(read(&[&renamed]).unwrap().format, Format::Edf);
}
