//! `render`: what the recorder would write of a scenario's bench that nobody touches, as a table or as a chart.

use std::path::{Path, PathBuf};

use dicrotic::exchange::{self, Format, Outgoing, csv};
use dicrotic::recorder::converter::code_v;
use dicrotic::recording::Recording;
use dicrotic::scenario::Scenario;
use dicrotic::session::note;

use crate::bench_run;
use crate::chart::{self, Order, Samples};
use crate::failure::{Failure, While};
use crate::{recording_file, safe_output, same_file, terminal, text_file};

/// Longest trace, s.
const LONGEST_S: f64 = 24.0 * 3600.0;
/// Longest trace, samples: it is held in memory, and a longer one could not be read back.
const MOST_SAMPLES: usize = csv::MAX_SAMPLES;

/// Which bench, and how long.
pub struct Run<'a> {
    /// The scenario file.
    pub scenario: &'a Path,
    /// The seed.
    pub seed: u64,
    /// Length, s.
    pub seconds: f64,
    /// Sampling rate, Hz, in the place of the scenario's own.
    pub rate_hz: Option<u32>,
    /// The instructor's password, without which nothing of an assigned bench is rendered.
    pub password: Option<&'a str>,
}

/// Writes the samples to `out`, or the chart ordered, and the true beats to `truth`.
pub fn run(run: &Run, out: &Path, order: Option<&Order>, truth: Option<&Path>) -> Result<(), Failure> {
    let &Run { scenario, seed, seconds, rate_hz, password } = run;
    if !(seconds.is_finite() && seconds > 0.0 && seconds <= LONGEST_S) {
        return Err(Failure::new(format!(
            "--seconds must be above 0 and at most {LONGEST_S}, found {seconds}"
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
    let read = Scenario::read(&text_file::read(scenario, text_file::SCENARIO)?)
        .while_doing(|| terminal::name(scenario))?;
    bench_run::opened(scenario, &read, password, "the trace and the true beats")?;
    let mut chain = bench_run::start(scenario, seed, rate_hz)?;
    let rate = f64::from(chain.settings().rate_hz);
    let samples = (seconds * rate).round();
    if samples > MOST_SAMPLES as f64 {
        return Err(Failure::new(format!(
            "--seconds {seconds} at {rate} Hz are {samples} samples; at most {MOST_SAMPLES} are written: \
             at this rate {} s",
            (MOST_SAMPLES as f64 / rate).floor()
        )));
    }
    let mut codes = Vec::new();
    chain.fill(samples as usize, &mut codes);
    let step_v = code_v(chain.settings().range_v);
    let volts: Vec<f64> = codes.iter().map(|code| f64::from(*code) * step_v).collect();
    let mut files = match order {
        Some(order) => {
            let file = || terminal::name(scenario);
            let told = Scenario::read(&text_file::read(scenario, text_file::SCENARIO)?).while_doing(file)?;
            let drawn = order.drawn(&Samples {
                title: &format!("{}, seed {seed}", told.title),
                values: &volts,
                rate_hz: rate,
                start_s: 0.0,
                power_line_hz: Some(chain.config().power_line.hz),
                plain: false,
            })?;
            vec![(out.to_path_buf(), drawn)]
        }
        None => {
            let mut recording = Recording::new(rate);
            recording.mark_span(step_v, 0.0, chain.settings().bits);
            recording.push(&codes);
            let notes = [note::settings(chain.settings())];
            // A table of a rendered trace is just that, for other programs to read.
            let notes = if recording_file::format_of(out)? == Format::Csv { &notes[..0] } else { &notes[..] };
            let samples = exchange::Samples::Recording(&recording);
            recording_file::made(out, &Outgoing { name: "", samples, volts: true, notes })?
        }
    };
    if let Some(truth) = truth {
        let inside = |t: &f64| (0.0..=seconds).contains(t);
        let beats = chain.truth().iter().map(|beat| beat.peak_s).filter(inside);
        let text: String = beats.map(|t| format!("{t:.6}\n")).collect();
        files.insert(0, (truth.to_path_buf(), text.into_bytes()));
    }
    safe_output::write(&files)?;
    recording_file::forget_notes(&files);
    Ok(())
}
