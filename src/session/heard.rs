//! What the recorder gives while somebody listens: the samples of the running attempt as they are made, and the stretches of which
//! none reached the computer. The command line renders it, and machines are compared by its hash.

use super::attempt::{Session, World};
use super::kept_recording::KeptRecording;
use super::note::{MISSING, Note, Start};
use super::script;
use crate::chain::Chain;
use crate::recorder::Settings;
use crate::recording::Recording;
use crate::scenario::digest::hex;
use crate::scenario::{Scenario, ScenarioError};
use core::ops::Range;
use sha2::{Digest, Sha256};

/// Samples that are hashed at once.
const PIECE: u64 = 1 << 16;

/// What was heard at one sampling rate: another rate begins another piece, as it begins another live trace.
#[derive(Clone, Debug)]
pub struct Piece {
    kept: KeptRecording,
    /// The first sample that reached the computer, and the settings then.
    first: Option<Start>,
    unseen: Vec<Range<usize>>,
}

impl Piece {
    /// A piece that begins now.
    fn begin(chain: &Chain) -> Self {
        let mut kept = KeptRecording::new(f64::from(chain.settings().rate_hz), chain.time_s());
        kept.start = Some(Start { sample: chain.samples(), settings: chain.settings().clone() });
        Self { kept, first: None, unseen: Vec::new() }
    }

    /// All that the recorder's converter made, whether or not it reached the computer.
    pub fn made(&self) -> &KeptRecording {
        &self.kept
    }

    /// The samples of it.
    pub fn recording(&self) -> &Recording {
        &self.kept.recording
    }

    /// How many those are.
    pub fn samples(&self) -> usize {
        self.kept.recording.len()
    }

    /// Number of the first sample, counted from the bench's start.
    pub fn first_sample(&self) -> u64 {
        self.kept.start.as_ref().map_or(0, |start| start.sample)
    }

    /// The samples that did not reach the computer, because it did not see the recorder.
    pub fn unseen(&self) -> &[Range<usize>] {
        &self.unseen
    }

    fn push(&mut self, codes: &[i16], settings: &Settings, seen: bool) {
        let from = self.kept.recording.len();
        if seen && self.first.is_none() {
            self.first =
                Some(Start { sample: self.first_sample() + from as u64, settings: settings.clone() });
        }
        self.kept.recording.mark_span(settings.shown_code_v(), 0.0, settings.bits);
        self.kept.recording.push(codes);
        let now = from..self.kept.recording.len();
        match self.unseen.last_mut() {
            _ if seen => {}
            Some(last) if last.end == from => last.end = now.end,
            _ => self.unseen.push(now),
        }
    }

    /// What reached the computer, from the first such sample to the last one. Between them the last value stands for what is
    /// missing, and a note tells of it. `None` where nothing reached it.
    pub fn reached(&self) -> Option<KeptRecording> {
        let all = &self.kept.recording;
        let starts = [0].into_iter().chain(self.unseen.iter().map(|gap| gap.end));
        let ends = self.unseen.iter().map(|gap| gap.start).chain([all.len()]);
        let seen: Vec<Range<usize>> =
            starts.zip(ends).map(|(from, to)| from..to).filter(|s| !s.is_empty()).collect();
        let (first, rate) = (seen.first()?.start, all.rate_hz());
        let mut kept = KeptRecording::new(rate, self.kept.start_s + first as f64 / rate);
        kept.start = self.first.clone();
        for stretch in seen {
            let at = kept.recording.len();
            let missing = (stretch.start - first).saturating_sub(at);
            if missing > 0 {
                let last = kept.recording.codes().last().copied().unwrap_or(0);
                kept.recording.push(&vec![last; missing]);
                kept.notes.push(Note::lasting(at as f64 / rate, missing as f64 / rate, MISSING));
            }
            for k in all.spans().partition_point(|span| span.start <= stretch.start).saturating_sub(1)
                ..all.spans().len()
            {
                let span = &all.spans()[k];
                let end = all.spans().get(k + 1).map_or(stretch.end, |next| next.start.min(stretch.end));
                let from = span.start.max(stretch.start);
                if from < end {
                    kept.recording.mark_span(span.code_v, span.offset_v, span.bits);
                    kept.recording.push(&all.codes()[from..end]);
                }
            }
        }
        Some(kept)
    }

    /// The true beats while it was heard, s from its first sample.
    pub fn beats(&self, session: &Session) -> Vec<f64> {
        true_beats(session, &self.kept)
    }

    fn hash(&self, hash: &mut Sha256) {
        hash.update(self.kept.recording.rate_hz().to_bits().to_le_bytes());
        for code in self.kept.recording.codes() {
            hash.update(code.to_le_bytes());
        }
        // What the codes mean, and what of them arrived.
        for span in self.kept.recording.spans() {
            hash.update((span.start as u64).to_le_bytes());
            hash.update(span.code_v.to_bits().to_le_bytes());
        }
        for gap in &self.unseen {
            hash.update((gap.start as u64).to_le_bytes());
            hash.update((gap.end as u64).to_le_bytes());
        }
    }
}

/// The true beats within a recording that was made at the bench, s from its first sample. For whoever has the scenario's file.
pub fn true_beats(session: &Session, kept: &KeptRecording) -> Vec<f64> {
    let beats = session.chain().map_or(&[][..], Chain::truth);
    let inside = |t: &f64| (0.0..=kept.recording.duration_s()).contains(t);
    beats.iter().map(|beat| beat.peak_s - kept.start_s).filter(inside).collect()
}

impl Session {
    /// Begins to listen, and forgets what was heard before.
    pub fn listen(&mut self) {
        self.run.heard = self.chain().map(|chain| vec![Piece::begin(chain)]);
    }

    /// What was heard, in order; nothing where nobody listens.
    pub fn heard(&self) -> &[Piece] {
        self.run.heard.as_deref().unwrap_or_default()
    }

    /// Hears samples that were just made.
    pub(super) fn hear(&mut self, seen: bool) {
        let World::Bench { chain, .. } = &self.run.world else { return };
        if let Some(piece) = self.run.heard.as_mut().and_then(|pieces| pieces.last_mut()) {
            piece.push(&self.run.codes, chain.settings(), seen);
        }
    }

    /// Begins another piece where the rate has changed.
    pub(super) fn hear_anew(&mut self) {
        let Some(next) = self.chain().map(Piece::begin) else { return };
        if let Some(pieces) = &mut self.run.heard {
            // Nothing was heard at a rate that was left at once.
            pieces.retain(|piece| piece.samples() > 0);
            pieces.push(next);
        }
    }
}

/// SHA-256 of what the recorder gives in `samples` samples of a scenario's bench as a student of that seed meets it, untouched, as
/// hexadecimal digits: the check that two machines make the same signal. Codes are hashed as little-endian 16-bit numbers.
pub fn fingerprint(scenario_text: &str, seed: u64, samples: u64) -> Result<String, ScenarioError> {
    let mut session = Session::new(scenario_text, seed)?;
    let mut hash = Sha256::new();
    let mut left = samples;
    while left > 0 {
        let piece = left.min(PIECE);
        session.listen();
        session.run_long(piece);
        session.heard().iter().for_each(|piece| piece.hash(&mut hash));
        left -= piece;
    }
    Ok(hex(&hash.finalize()))
}

/// The same of all that the recorder gives in the scripted attempt of that number, from 0, on the attempt's own seed.
pub fn fingerprint_of_attempt(scenario_text: &str, number: usize) -> Result<String, ScenarioError> {
    let scenario = Scenario::read(scenario_text)?;
    let field = || format!("attempt[{number}]");
    let attempt = scenario.attempt.get(number);
    let attempt = attempt.ok_or_else(|| ScenarioError::at(field(), "nothing", "a scripted attempt"))?;
    let session = script::listened(scenario_text, attempt, attempt.seed, f64::INFINITY)
        .map_err(|found| ScenarioError::at(field(), found, "steps that can be done"))?;
    let mut hash = Sha256::new();
    session.heard().iter().for_each(|piece| piece.hash(&mut hash));
    Ok(hex(&hash.finalize()))
}
