//! Where the work stands, for orientation: each step of the lab with a tick when the bench, the recording or the worksheet
//! *is* so, whatever was done for it, and what comes next in the first step that is not.
//!
//! Nothing here looks at a cause: only at what can be seen at the bench (plugs, indicator lights, what the strap feels like)
//! and at the trace, by the rules of the check. Where the student is to find out what is wrong, what comes next is
//! said in general.

use super::attempt::Session;
use crate::assess::task::Reads;
use crate::assess::trace::{self, Trace};
use crate::assess::{asked, range};
use crate::bench::strap::{Feel, Place, Side, Strap};
use crate::bench::wiring::{End, Socket, Wiring};
use crate::plain::json;
use serde_json::Value;

/// How much of the live trace is looked at, s.
const LOOK_S: f64 = 6.0;
/// Share of the screen below which a trace has no pulse in it.
const FLAT: f64 = 0.002;
/// Share of the range that the trace's middle may be off zero before it is brought back rather than a larger range chosen
/// (design default).
const OFF_MIDDLE: f64 = 0.25;

/// The parts of the work, in their order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Power and wires: the computer sees the recorder, and the sensor is in an input.
    Power,
    /// The sensor is on the fingertip, snug, with its sensing side to the skin.
    Sensor,
    /// The pulse fills a good part of the screen, clean and not cut.
    Adjust,
    /// A recording of the asked length lies there.
    Record,
    /// The cursors are set and the blanks are filled.
    Measure,
    /// Something is named.
    Name,
    /// The reading is right, or the attempt is over.
    Check,
}

impl Step {
    /// Its name for the page.
    pub fn name(self) -> &'static str {
        match self {
            Self::Power => "power",
            Self::Sensor => "sensor",
            Self::Adjust => "adjust",
            Self::Record => "record",
            Self::Measure => "measure",
            Self::Name => "name",
            Self::Check => "check",
        }
    }
}

/// How a step stands: `None` where it is done, else the code of what comes next in it.
type Open = Option<&'static str>;

/// What the next step says of what hinders a measurement: while the trace runs, and of a recording, which is to be made again.
fn advice(found: &str) -> (&'static str, &'static str) {
    match found {
        "trace_clipped" => ("adjust_clipped", "kept_clipped"),
        "trace_small" => ("adjust_small", "kept_small"),
        "trace_tall" => ("adjust_tall", "kept_tall"),
        "trace_hum" => ("adjust_noise", "kept_noise"),
        _ => ("adjust_restless", "kept_restless"),
    }
}

impl Session {
    /// The steps of this attempt and how each stands.
    pub fn steps(&self) -> Vec<(Step, Open)> {
        let naming = self.scenario().is_some_and(|s| s.name_faults);
        let mut steps = Vec::new();
        if let Some(chain) = self.chain() {
            let bench = chain.bench();
            let in_general = |code: &'static str, open: Open| open.map(|one| if naming { code } else { one });
            steps.push((Step::Power, in_general("power_any", power(&bench.wiring, chain.seen()))));
            let strap = &bench.strap;
            // How the sensor sits is for the student to find out where something is to be named.
            let sits = if naming { (!strap.on).then_some("sensor_on") } else { sensor(strap) };
            // It is asked for in the points, so the way to them leads past it.
            let asked = self.asked().iter().any(|row| row.points.contains(&"caution"));
            let caution = (asked && !self.help.agreed).then_some("sensor_caution");
            steps.push((Step::Sensor, caution.or(sits)));
            if self.sheet.task.reads() != Reads::Nothing {
                steps.push((Step::Adjust, in_general("adjust_any", self.open_adjust())));
                steps.push((Step::Record, self.open_record()));
            }
        }
        if self.sheet.task.reads() != Reads::Nothing {
            steps.push((Step::Measure, self.open_measure()));
        }
        if naming {
            steps.push((Step::Name, self.sheet.named.is_empty().then_some("name")));
        }
        steps.push((Step::Check, self.open_check()));
        steps
    }

    /// The same for the page: the steps in order, and what comes next.
    pub fn told_steps(&self) -> Value {
        let steps = self.steps();
        let next = steps.iter().find_map(|(step, open)| open.map(|code| (step.name(), code)));
        json!({
            "steps": steps.iter().map(|(step, open)| json!({"step": step.name(), "done": open.is_none()})).collect::<Vec<_>>(),
            "at": next.map(|(step, _)| step),
            "next": next.map(|(_, code)| code),
        })
    }

    /// The screen, or the open recording, by the rules that the check goes by.
    fn open_adjust(&self) -> Open {
        if self.shows_recording() { self.open_kept() } else { self.open_live() }
    }

    /// What hinders a measurement on a trace, by the rules of the check. How long it is is another step's matter.
    fn hindrance(&self, seen: &Trace) -> Open {
        let criteria = self.criteria();
        asked::fault_of_trace(&self.sheet.task, &criteria, seen, criteria.record_s)
    }

    /// The screen.
    fn open_live(&self) -> Open {
        let chain = self.chain()?;
        let Some(recording) = self.on_screen(LOOK_S) else { return Some("adjust_no_data") };
        let seen = trace::look(&recording, 0.0, recording.duration_s(), chain.config().power_line.hz);
        let Some(seen) = seen else { return Some("adjust_wait") };
        if seen.fill < FLAT {
            let bench = chain.bench();
            let connected =
                bench.wiring.sensor_input() == Some(chain.settings().input) && chain.settings().shown;
            return Some(if connected && sensor(&bench.strap).is_none() {
                "adjust_small"
            } else {
                "adjust_flat"
            });
        }
        let values = recording.values(0, recording.len());
        let range_v = chain.settings().shown_code_v() * 32768.0;
        if !range::holds(values.iter().map(|v| v.abs()).fold(0.0, f64::max), range_v) {
            let middle = values.iter().sum::<f64>() / values.len() as f64;
            return Some(if middle.abs() > OFF_MIDDLE * range_v { "adjust_zero" } else { "adjust_clipped" });
        }
        self.hindrance(&seen).map(|found| advice(found).0)
    }

    /// The open recording: nothing that is set now changes it any more, so that it has to be made once more.
    fn open_kept(&self) -> Open {
        let power_line_hz = self.chain()?.config().power_line.hz;
        let kept = self.recording()?;
        let (a, b) = self.looked_at(kept, kept.window());
        let Some(seen) = trace::look(&kept.recording, a, b, power_line_hz) else { return Some("kept_short") };
        // What is cut off looks like movement too, and only a larger range helps.
        if seen.clip_share > self.criteria().clip_share {
            return Some("kept_clipped");
        }
        self.hindrance(&seen).map(|found| advice(found).1)
    }

    fn open_record(&self) -> Open {
        let need = self.criteria().record_s;
        let finished = self.recordings().len() - usize::from(self.is_recording());
        if self.recordings()[..finished].iter().any(|kept| kept.recording.duration_s() >= need) {
            return None;
        }
        if !self.is_predicted() {
            return Some("record_expect");
        }
        Some(if self.is_recording() { "record_on" } else { "record" })
    }

    fn open_measure(&self) -> Open {
        if self.is_recording() {
            return Some("record_on");
        }
        let reads = self.sheet.task.reads();
        let Some(kept) = self.recording().filter(|_| self.shows_recording()) else {
            return Some("measure_open");
        };
        if kept.a.is_none() || kept.b.is_none() {
            return Some(match reads {
                Reads::Heights => "measure_foot_and_peak",
                Reads::Intervals => "measure_beat_to_beat",
                _ => "measure_cursors",
            });
        }
        if self.experiment().is_some() && !self.is_concluded() {
            return Some("measure_rows");
        }
        let task = &self.sheet.task;
        let blank = |field| self.sheet.worksheet.entry(field).problem.is_some();
        let asked = |field| !task.optional().contains(&field);
        task.fields().iter().any(|field| asked(*field) && blank(*field)).then_some(match reads {
            Reads::Heights => "measure_height",
            Reads::Intervals => "measure_intervals",
            _ => "measure_blanks",
        })
    }

    fn open_check(&self) -> Open {
        if self.sheet.over || self.check().is_some_and(|check| check.report.passed) {
            return None;
        }
        Some(if self.check().is_some() { "check_again" } else { "check" })
    }
}

/// Power and wires, in the order of the hand.
fn power(wiring: &Wiring, seen: bool) -> Open {
    let is_in = |end, socket| wiring.socket_of(end) == Some(socket);
    if !is_in(End::PowerRecorder, Socket::RecorderInlet) {
        Some("power_recorder_end")
    } else if wiring.socket_of(End::PowerWall).is_none() {
        Some("power_outlet_end")
    } else if !wiring.recorder_on {
        Some("power_recorder_switch")
    } else if !wiring.recorder_powered() {
        Some("power_no_light")
    } else if wiring.socket_of(End::DataRecorder).is_none() {
        Some("power_data_recorder")
    } else if wiring.socket_of(End::DataComputer).is_none() {
        Some("power_data_computer")
    } else if wiring.sensor_input().is_none() {
        Some("power_sensor_cable")
    } else if !seen {
        Some("power_not_seen")
    } else {
        None
    }
}

/// The sensor on the finger.
fn sensor(strap: &Strap) -> Open {
    match (strap.on, strap.feel()) {
        (false, _) | (_, Feel::Off) => Some("sensor_on"),
        (_, Feel::Loose) => Some("sensor_loose"),
        (_, Feel::Tight) => Some("sensor_tight"),
        _ if strap.place != Place::Pulp => Some("sensor_place"),
        _ if strap.side != Side::ToSkin => Some("sensor_side"),
        _ => None,
    }
}
