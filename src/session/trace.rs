//! What the trace shows and what was recorded: recordings with their cursors and marks, time base, zoom.

use super::action::{Mode, Page, Refusal, Which};
use super::attempt::{MOST_TEXT, Session};
use super::kept_recording::{KeptRecording, LONGEST_LABEL};
use super::note::Start;
use super::run::World;
use super::save::{MOST_SAMPLES, samples_left};
use crate::assess::task::Reads;
use crate::measure;
use crate::trace::frame::TIME_BASES_S;

/// Longest recording, s: two hours.
pub const LONGEST_RECORDING_S: f64 = 7200.0;
/// Shortest recording that is kept, s.
const SHORTEST_RECORDING_S: f64 = 1.0;
/// How far a cursor jumps to a peak, s.
pub const SNAP_S: f64 = 0.35;
/// Shortest stretch that the trace is zoomed to, s.
const NARROWEST_S: f64 = 0.2;

/// How much longer than the window a screen is that shows it with room to either side.
const ROOM_ABOUT_WINDOW: f64 = 1.2;
/// Shortest time base that is made longer for a window, s.
const SHORTEST_FITTED_S: f64 = 5.0;

/// The trace's state.
#[derive(Clone, Debug)]
pub(super) struct Trace {
    pub(super) recordings: Vec<KeptRecording>,
    /// Takes that lay there before the student came.
    pub(super) recordings_before: usize,
    /// Whether the last recording is still being made.
    pub(super) recording: bool,
    pub(super) mode: Mode,
    pub(super) shown_recording: Option<usize>,
    /// Left edge of a shown recording, s.
    pub(super) start_s: f64,
    /// Time base, s a screen.
    pub(super) time_base_s: f64,
    /// What was shown before the zoom: left edge and time base, s.
    pub(super) before_zoom: Option<(f64, f64)>,
    /// Whether clicks jump to the nearest peak.
    pub(super) snap: bool,
    /// Peaks that the detector found in a recording: its number, its length in samples, the times.
    pub(super) found: Option<(usize, usize, Vec<f64>)>,
}

impl Trace {
    /// A trace with these recordings.
    pub(super) fn new(recordings: Vec<KeptRecording>, mode: Mode, time_base_s: f64) -> Self {
        Self {
            recordings,
            recordings_before: 0,
            recording: false,
            mode,
            shown_recording: None,
            start_s: 0.0,
            time_base_s,
            before_zoom: None,
            snap: false,
            found: None,
        }
    }

    /// Time base without the zoom, s a screen.
    pub(super) fn unzoomed_s(&self) -> f64 {
        self.before_zoom.map_or(self.time_base_s, |z| z.1)
    }
}

/// Room above and below the whole height of an opened recording, of its height; design default.
pub(super) const ROOM: f64 = 0.06;

impl Session {
    /// Does what is done on the trace.
    pub(super) fn on_power_strip(&mut self, page: &Page) -> Result<(), Refusal> {
        match *page {
            Page::TimeBase { s } => {
                if !TIME_BASES_S.contains(&s) {
                    let expected = TIME_BASES_S.map(|t| t.to_string()).join(", ");
                    return Err(Refusal::BadValue { field: "time_base", expected });
                }
                self.trace.before_zoom = None;
                // Zooming a recording keeps its middle.
                let middle = self.trace.start_s + self.trace.time_base_s / 2.0;
                self.trace.time_base_s = s;
                if self.trace.mode == Mode::Recording {
                    self.scroll_to(middle - s / 2.0);
                }
            }
            Page::Show { mode } => {
                if self.chain().is_none() {
                    return Err(Refusal::NoBench {});
                }
                if mode == Mode::Recording && self.recording().is_none() {
                    return Err(Refusal::NoRecording {});
                }
                if mode != Mode::Recording {
                    self.leave_zoom();
                }
                self.trace.mode = mode;
            }
            Page::Record {} => self.record()?,
            Page::Stop {} => self.stop()?,
            Page::OpenRecording { recording } => {
                // The recording that is being made is shown live, not opened.
                let finished = self.trace.recordings.len() - usize::from(self.trace.recording);
                if recording >= finished {
                    return Err(Refusal::NoRecording {});
                }
                self.show_recording(recording);
            }
            Page::Scroll { start_s } => {
                if self.trace.mode != Mode::Recording {
                    return Err(Refusal::NoRecording {});
                }
                self.scroll_to(start_s);
            }
            Page::Cursor { which, t } => {
                let kept = self.measured()?;
                if let Some(t) = t {
                    in_recording("t", t, kept)?;
                }
                match which {
                    Which::A => kept.a = t,
                    Which::B => kept.b = t,
                }
            }
            Page::Mark { t } => {
                let kept = self.measured()?;
                in_recording("t", t, kept)?;
                if !kept.mark(t) {
                    let max = super::kept_recording::MOST_MARKS as f64;
                    return Err(Refusal::OutOfRange { field: "marks", min: 0.0, max });
                }
            }
            Page::Unmark { t } => self.measured()?.unmark(t),
            Page::MarksClear {} => self.measured()?.marks.clear(),
            Page::Zoom { from_s, to_s } => self.zoom(from_s, to_s)?,
            Page::ZoomOut {} => {
                if self.trace.before_zoom.is_none() {
                    return Err(Refusal::NotZoomed {});
                }
                self.leave_zoom();
            }
            Page::Snap { on } => self.trace.snap = on,
            Page::Label { recording, ref text } => {
                let finished = self.trace.recordings.len() - usize::from(self.trace.recording);
                let kept =
                    self.trace.recordings[..finished].get_mut(recording).ok_or(Refusal::NoRecording {})?;
                if text.chars().count() > MOST_TEXT {
                    return Err(Refusal::TextTooLong { max: MOST_TEXT });
                }
                kept.label = text.chars().take(LONGEST_LABEL).collect();
            }
            _ => {}
        }
        Ok(())
    }

    /// The recording that is shown.
    pub fn recording(&self) -> Option<&KeptRecording> {
        self.trace.shown_recording.and_then(|k| self.trace.recordings.get(k))
    }

    /// All recordings.
    pub fn recordings(&self) -> &[KeptRecording] {
        &self.trace.recordings
    }

    /// What the trace shows.
    pub fn mode(&self) -> Mode {
        self.trace.mode
    }

    /// Number of the recording that is shown.
    pub fn shown_recording_number(&self) -> Option<usize> {
        self.trace.shown_recording
    }

    /// Whether the live signal is held still.
    pub fn is_held(&self) -> bool {
        self.trace.mode == Mode::Paused
    }

    /// Volts at the bottom and the top of the trace: the full-scale range, or for an opened recording the range that was
    /// chosen, else its own lowest and highest value with a little room.
    pub fn value_range(&self) -> (f64, f64) {
        if let Some(chain) = self.chain() {
            let range = chain.settings().range_v * chain.settings().scale;
            return (-range, range);
        }
        if let Some(range) = self.opened_range() {
            return (-range, range);
        }
        let extent = self.recording().and_then(|t| t.recording.extent(0, t.recording.len()));
        extent.map_or((-1.0, 1.0), |e| {
            let (low, high) = (f64::from(e.min), f64::from(e.max));
            // A flat line far from zero wants room that its own size does not swallow.
            let room = ROOM * (high - low).max(1e-9).max(1e-6 * low.abs().max(high.abs()));
            (low - room, high + room)
        })
    }

    /// Time base, s a screen.
    pub fn time_base_s(&self) -> f64 {
        self.trace.time_base_s
    }

    /// Time at the left edge of a shown recording, s.
    pub fn start_s(&self) -> f64 {
        self.trace.start_s
    }

    /// Whether a recording is being made.
    pub fn is_recording(&self) -> bool {
        self.trace.recording
    }

    /// Length of the recording that is being made, s.
    pub fn recorded_s(&self) -> f64 {
        if self.trace.recording {
            self.trace.recordings.last().map_or(0.0, |t| t.recording.duration_s())
        } else {
            0.0
        }
    }

    /// The peak nearest to `t` s of the shown recording, as the detector finds it (never the true one); `None` where none is within
    /// [`SNAP_S`].
    pub fn snap_to(&mut self, t: f64) -> Option<f64> {
        let shown = self.trace.shown_recording?;
        let kept = self.trace.recordings.get(shown)?;
        let length = kept.recording.len();
        if self.trace.found.as_ref().is_none_or(|(k, n, _)| (*k, *n) != (shown, length)) {
            let (values, rate) = (kept.recording.values(0, length), kept.recording.rate_hz());
            let beats = measure::detect::detect(&values, rate);
            // The detector's beats bring one near; the highest point of the wave is where one would put the cursor.
            let mut peaks: Vec<f64> =
                measure::landmarks::of_beats(&values, rate, &beats).iter().map(|l| l.peak_s).collect();
            // A beat without one after it has no landmarks.
            peaks.extend(
                beats
                    .iter()
                    .filter(|b| !peaks.iter().any(|p| (p - **b).abs() < 0.2))
                    .copied()
                    .collect::<Vec<_>>(),
            );
            self.trace.found = Some((shown, length, peaks));
        }
        let (_, _, peaks) = self.trace.found.as_ref()?;
        let nearest = peaks.iter().copied().min_by(|x, y| (x - t).abs().total_cmp(&(y - t).abs()))?;
        ((nearest - t).abs() <= SNAP_S).then_some(nearest)
    }

    fn record(&mut self) -> Result<(), Refusal> {
        let World::Bench { chain, .. } = &self.run.world else { return Err(Refusal::NoBench {}) };
        if self.trace.recording {
            return Err(Refusal::Recording { what: "record" });
        }
        if samples_left(chain) == 0 {
            return Err(Refusal::WorldOver { most: MOST_SAMPLES });
        }
        if !chain.seen() {
            return Err(Refusal::NoLink {});
        }
        if chain.settings().calibrator {
            return Err(Refusal::CalibratorOn {});
        }
        if !chain.routed() {
            return Err(Refusal::NothingInInput { input: chain.settings().input });
        }
        let mut kept = KeptRecording::new(f64::from(chain.settings().rate_hz), chain.time_s());
        kept.delay_s = chain.late_s();
        kept.start = Some(Start { sample: chain.samples(), settings: chain.settings().clone() });
        kept.exercise_ended_s = self.run.exercise_ended_s.map(|ended| ended - kept.start_s);
        self.leave_zoom();
        kept.view_s = self.trace.time_base_s;
        self.trace.recordings.push(kept);
        self.trace.recording = true;
        self.trace.mode = Mode::Live;
        Ok(())
    }

    pub(super) fn stop(&mut self) -> Result<(), Refusal> {
        if !self.trace.recording {
            return Err(Refusal::NotRecording {});
        }
        self.trace.recording = false;
        self.revision += 1;
        let last = self.trace.recordings.len() - 1;
        if self.trace.recordings[last].recording.duration_s() < SHORTEST_RECORDING_S {
            self.trace.recordings.pop();
            return Err(Refusal::TooShort {});
        }
        self.show_recording(last);
        Ok(())
    }

    /// Shows a stretch of the recording over the whole trace.
    fn zoom(&mut self, from_s: f64, to_s: f64) -> Result<(), Refusal> {
        if self.trace.mode != Mode::Recording {
            return Err(Refusal::NoRecording {});
        }
        let kept = self.recording().ok_or(Refusal::NoRecording {})?;
        in_recording("from_s", from_s, kept)?;
        in_recording("to_s", to_s, kept)?;
        if to_s - from_s < NARROWEST_S - 1e-9 {
            return Err(Refusal::TooNarrow { least: NARROWEST_S });
        }
        self.trace.before_zoom.get_or_insert((self.trace.start_s, self.trace.time_base_s));
        self.trace.time_base_s = to_s - from_s;
        self.trace.start_s = from_s;
        Ok(())
    }

    /// Back to what was shown before the zoom.
    pub(super) fn leave_zoom(&mut self) {
        if let Some((start_s, time_base_s)) = self.trace.before_zoom.take() {
            self.trace.time_base_s = time_base_s;
            self.scroll_to(start_s);
        }
    }

    pub(super) fn show_recording(&mut self, kept: usize) {
        self.leave_zoom();
        self.trace.shown_recording = Some(kept);
        self.trace.mode = Mode::Recording;
        self.fit_time_base();
        self.scroll_to(0.0);
    }

    /// Where beats are counted in a window longer than the screen, the screen is made long enough for it.
    fn fit_time_base(&mut self) {
        // A screen that shows a beat or two is for the student to notice, and so is the way back from it.
        let reads_beats = matches!(self.sheet.task.reads(), Reads::Beats | Reads::Intervals);
        if !reads_beats || self.trace.time_base_s < SHORTEST_FITTED_S {
            return;
        }
        let duration_s = self.recording().map_or(0.0, |t| t.recording.duration_s());
        let need_s = duration_s.min(ROOM_ABOUT_WINDOW * self.criteria().window_s);
        let fits = TIME_BASES_S.iter().copied().find(|s| *s >= need_s - 1e-9);
        self.trace.time_base_s = self.trace.time_base_s.max(fits.unwrap_or(0.0));
    }

    pub(super) fn scroll_to(&mut self, start_s: f64) {
        let most =
            self.recording().map_or(0.0, |t| (t.recording.duration_s() - self.trace.time_base_s).max(0.0));
        self.trace.start_s = if start_s.is_finite() { start_s.clamp(0.0, most) } else { 0.0 };
    }

    /// The recording that is measured, for changing its cursors and marks.
    pub(super) fn measured(&mut self) -> Result<&mut KeptRecording, Refusal> {
        if self.trace.mode != Mode::Recording {
            return Err(Refusal::NoRecording {});
        }
        let shown = self.trace.shown_recording.ok_or(Refusal::NoRecording {})?;
        self.trace.recordings.get_mut(shown).ok_or(Refusal::NoRecording {})
    }
}

fn in_recording(field: &'static str, t: f64, kept: &KeptRecording) -> Result<(), Refusal> {
    let max = kept.recording.duration_s();
    if t.is_finite() && (0.0..=max).contains(&t) {
        Ok(())
    } else {
        Err(Refusal::OutOfRange { field, min: 0.0, max })
    }
}
