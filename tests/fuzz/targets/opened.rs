//! What the page does with an opened recording.

use dicrotic::exchange::{Format, Imported, Outgoing, Samples, export};
use dicrotic::session::Session;

/// Opens it, looks at it, writes it in every form.
pub fn look(read: &Imported) {
    let values = &read.recorded.values;
    assert!(values.iter().all(|v| v.is_finite()), "a value that is no number");
    assert!(read.notes.iter().all(|n| n.at_s.is_finite()), "a note at no time");
    assert!(read.recorded.rate_hz > 0.0 && read.recorded.rate_hz.is_finite());
    // Detector and writers take twenty times as long as reading: one recording in eight, chosen by its own values, goes on.
    let chosen = values.iter().fold(values.len() as u64, |sum, v| sum.rotate_left(7) ^ v.to_bits());
    if values.len() > 20_000 || dicrotic::rng::mix(chosen) % 8 != 0 {
        return;
    }
    let session = Session::of_annotated(&read.recorded.name, read.recorded.rate_hz, values, &read.notes);
    let _ = session.view().to_string();
    let (low, high) = session.value_range();
    assert!(low < high, "an empty range {low} to {high}");
    let kept = &session.recordings()[0];
    for format in [Format::Csv, Format::Edf, Format::Wfdb] {
        let samples = Samples::Recording(&kept.recording);
        let notes = session.notes(kept);
        let _ = export(format, &Outgoing { name: "again", samples, volts: read.volts, notes: &notes });
    }
}
