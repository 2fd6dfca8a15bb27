//! `render`: what the recorder gives of a scenario's bench as a student meets it, or in a scripted attempt, as a table or as a
//! chart.

use std::path::{Path, PathBuf};

use dicrotic::exchange::{self, Format, Outgoing, csv};
use dicrotic::session::heard::{self, Piece};
use dicrotic::session::kept_recording::KeptRecording;
use dicrotic::session::note::{self, Note};
use dicrotic::session::{Session, script};

use crate::bench_run;
use crate::chart::{self, Order, Samples};
use crate::failure::{Failure, While};
use crate::{recording_file, safe_output, same_file, terminal};

/// Longest trace, s.
const LONGEST_S: f64 = 24.0 * 3600.0;
/// Longest trace, samples: it is held in memory, and a longer one could not be read back.
const MOST_SAMPLES: usize = csv::MAX_SAMPLES;

/// Which bench, and what is done at it.
pub struct Run<'a> {
    /// The scenario file.
    pub scenario: &'a Path,
    /// The seed; without one that of the attempt, or 1.
    pub seed: Option<u64>,
    /// What is done.
    pub what: What<'a>,
    /// The instructor's password, without which nothing of an assigned bench is rendered.
    pub password: Option<&'a str>,
}

/// What is done at the bench.
pub enum What<'a> {
    /// Nothing, but for choosing a sampling rate.
    Untouched {
        /// Length, s.
        seconds: f64,
        /// Sampling rate, Hz, in the place of the one that is found.
        rate_hz: Option<u32>,
    },
    /// What a script says.
    Attempt {
        /// The name of the scripted attempt.
        name: &'a str,
        /// How much of it is played, s; all of it if left out.
        until_s: Option<f64>,
    },
}

/// Writes the samples to `out`, or the chart ordered, and the true beats to `truth`.
pub fn run(run: &Run, out: &Path, order: Option<&Order>, truth: Option<&Path>) -> Result<(), Failure> {
    let scenario = run.scenario;
    let (option, length_s) = match run.what {
        What::Untouched { seconds, .. } => ("--seconds", Some(seconds)),
        What::Attempt { until_s, .. } => ("--until", until_s),
    };
    if let Some(length_s) = length_s.filter(|s| !(s.is_finite() && *s > 0.0 && *s <= LONGEST_S)) {
        return Err(Failure::new(format!(
            "{option} must be above 0 and at most {LONGEST_S}, found {length_s}"
        )));
    }
    match order {
        Some(order) => order.check()?,
        None if chart::is_chart(out) => {
            let name = terminal::name(out);
            return Err(Failure::new(format!(
                "--out {name}: say which chart with --plot; a recording's file ends in .csv, .edf or .hea"
            )));
        }
        None => {
            recording_file::format_of(out)?;
        }
    }
    let written = if order.is_some() { vec![out.to_path_buf()] } else { recording_file::written_to(out)? };
    let outputs: Vec<&Path> = written.iter().map(PathBuf::as_path).chain(truth).collect();
    same_file::refuse_overlap([scenario], &outputs)?;
    let read = bench_run::read(scenario)?;
    bench_run::opened(scenario, &read.scenario, run.password, "the trace and the true beats")?;
    let session = heard(run, &read)?;
    let kept = reached(run, &read, &session)?;
    let (recording, rate) = (&kept.recording, kept.recording.rate_hz());
    let mut files = match order {
        Some(order) => {
            let drawn = order.drawn(&Samples {
                title: &format!("{}, seed {}", read.scenario.title, session.seed()),
                values: &recording.values(0, recording.len()),
                rate_hz: rate,
                start_s: 0.0,
                power_line_hz: Some(read.scenario.power_line.hz),
                plain: false,
            })?;
            vec![(out.to_path_buf(), drawn)]
        }
        None => {
            let notes = notes(run, &session, &kept);
            // A table of a rendered trace is just that, for other programs to read.
            let notes = if recording_file::format_of(out)? == Format::Csv { &notes[..0] } else { &notes[..] };
            let samples = exchange::Samples::Recording(recording);
            recording_file::made(out, &Outgoing { name: "", samples, volts: true, notes })?
        }
    };
    if let Some(truth) = truth {
        let text: String = heard::true_beats(&session, &kept).iter().map(|t| format!("{t:.6}\n")).collect();
        files.insert(0, (truth.to_path_buf(), text.into_bytes()));
    }
    safe_output::write(&files)?;
    recording_file::forget_notes(&files);
    Ok(())
}

/// The attempt with all that the recorder gave in it.
fn heard(run: &Run, read: &bench_run::Read) -> Result<Session, Failure> {
    let file = run.scenario;
    match run.what {
        What::Attempt { name, until_s } => {
            let attempt = bench_run::attempt(file, read, name)?;
            let seed = run.seed.unwrap_or(attempt.seed);
            script::listened(&read.text, attempt, seed, until_s.unwrap_or(f64::INFINITY))
                .while_doing(|| terminal::name(file))
        }
        What::Untouched { seconds, rate_hz } => {
            let mut session = bench_run::start(file, read, run.seed.unwrap_or(1), rate_hz)?;
            session.listen();
            let rate = session.heard().last().map_or(0.0, |piece| piece.recording().rate_hz());
            let samples = (seconds * rate).round();
            if samples > MOST_SAMPLES as f64 {
                return Err(Failure::new(format!(
                    "--seconds {seconds} at {rate} Hz are {samples} samples; at most {MOST_SAMPLES} are written: \
                     at this rate {} s",
                    (MOST_SAMPLES as f64 / rate).floor()
                )));
            }
            session.run_long(samples as u64);
            Ok(session)
        }
    }
}

/// What is known of it: the settings at its start, what was done in an attempt, what is missing. Choosing a rate is no deed.
fn notes(run: &Run, session: &Session, kept: &KeptRecording) -> Vec<Note> {
    match run.what {
        What::Attempt { .. } => session.notes(kept),
        What::Untouched { .. } => {
            let settings = kept.start.iter().map(|start| note::settings(&start.settings));
            settings.chain(kept.notes.iter().cloned()).collect()
        }
    }
}

/// What reached the computer since the sampling rate was last changed; of an untouched bench where nothing did, what the recorder's
/// converter made. Says on the error output what is missing.
fn reached(run: &Run, read: &bench_run::Read, session: &Session) -> Result<KeptRecording, Failure> {
    let name = terminal::name(run.scenario);
    let pieces = session.heard();
    let piece = pieces.last();
    let kept = match (piece.and_then(Piece::reached), piece, &run.what) {
        (Some(kept), ..) => kept,
        (None, Some(piece), What::Untouched { .. }) => {
            terminal::say(&format!(
                "{name}: the computer does not see the recorder, so none of these samples reaches it until somebody works at \
                 the bench; --attempt NAME plays a scripted attempt: {}",
                bench_run::names(&read.scenario)
            ));
            piece.made().clone()
        }
        _ => {
            let why = "nothing reached the computer in this attempt, or not before the end (--until)";
            return Err(Failure::new(format!("{name}: {why}")));
        }
    };
    if pieces.len() > 1 {
        terminal::say(&format!(
            "{name}: the sampling rate was changed; what is written begins there, at {} Hz",
            kept.recording.rate_hz()
        ));
    }
    let missing: Vec<&Note> = kept.notes.iter().filter(|n| n.text == note::MISSING).collect();
    if let Some(first) = missing.first() {
        terminal::say(&format!(
            "{name}: the computer lost the recorder {} times, first at {:.3} s from the first sample; the last value before \
             stands in the place of what is missing",
            missing.len(),
            first.at_s
        ));
    }
    Ok(kept)
}
