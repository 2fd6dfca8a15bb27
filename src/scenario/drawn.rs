//! From a scenario and a seed to what stands on the table: bench, chain and the faults put in.

use super::error::ScenarioError;
use super::fault::{self, Situation};
use super::schema::{FaultSpec, Scenario, Start};
use crate::bench::table::{Part, Point};
use crate::bench::wiring::Socket;
use crate::bench::{Bench, Change};
use crate::chain::Config;
use crate::plain;
use crate::rng::Stream;

impl Scenario {
    /// The bench as the student finds it.
    pub(super) fn build_bench(&self) -> Result<Bench, ScenarioError> {
        let spec = &self.bench;
        let mut bench = match spec.start {
            Start::Apart => Bench::tidy(),
            Start::Wired => Bench::wired(),
        };
        let refused = |field: String, r: crate::bench::Refusal| {
            let told = plain::given(&r);
            ScenarioError::at(
                field,
                format!("a change that the bench refuses ({told})"),
                "a change that can be done",
            )
        };
        bench.wiring.power_strip_on = spec.power_strip_on;
        bench.wiring.lamp_on = spec.lamp_on;
        for (k, plug) in spec.plug.iter().enumerate() {
            let change = match plug.socket {
                Some(socket) => Change::Plug { end: plug.end, socket },
                None => Change::Unplug { end: plug.end },
            };
            bench.change(&change).map_err(|r| refused(format!("bench.plug[{k}]"), r))?;
        }
        bench.wiring.charger_plugged = spec.charger;
        if spec.charger && bench.wiring.end_in(Socket::Outlet4).is_some() {
            return Err(ScenarioError::at("bench.charger", "true", "outlet4 left free for the charger"));
        }
        // All places at once: only the finished arrangement has to suit the cable.
        for (k, place) in spec.place.iter().enumerate() {
            let inside = |v: f64, most: f64| v.is_finite() && (0.0..=most).contains(&v);
            let (w, d) = (crate::bench::table::WIDTH_CM, crate::bench::table::DEPTH_CM);
            if !inside(place.x, w) || !inside(place.y, d) {
                let found = format!("x = {}, y = {}", place.x, place.y);
                let expected = format!("a place on the table of {w} by {d} cm");
                return Err(ScenarioError::at(format!("bench.place[{k}]"), found, expected));
            }
            let to = Point { x: place.x, y: place.y };
            match place.part {
                Part::Cable1 => bench.cable.handles[0] = to,
                Part::Cable2 => bench.cable.handles[1] = to,
                part => bench.table.put(part, to),
            }
        }
        let strap = &spec.strap;
        bench.strap.on = strap.on.unwrap_or(bench.strap.on);
        bench.strap.place = strap.place.unwrap_or(bench.strap.place);
        bench.strap.side = strap.side.unwrap_or(bench.strap.side);
        if let Some(u) = strap.tightness {
            if !(u.is_finite() && (0.0..=1.0).contains(&u)) {
                return Err(ScenarioError::at("bench.strap.tightness", u, "a number from 0 to 1"));
            }
            bench.strap.tightness = u;
        }
        if let Some(cm) = strap.height_cm {
            if !(cm.is_finite() && (-50.0..=50.0).contains(&cm)) {
                return Err(ScenarioError::at("bench.strap.height_cm", cm, "a number from -50 to 50"));
            }
            bench.strap.height_cm = cm;
        }
        if bench.slack_cm() < 0.0 {
            let found = format!("a cable {:.0} cm too short", -bench.slack_cm());
            return Err(ScenarioError::at("bench.place", found, "places that the sensor's cable reaches"));
        }
        Ok(bench)
    }

    /// From what is drawn for a seed, given the file's text: see [`super::digest::heart`].
    pub fn heart(&self, text: &str, seed: u64) -> u64 {
        self.assignment.as_ref().map_or(seed, |_| super::digest::heart(text, seed, false))
    }

    /// The scenario as a seed has it: with what it draws, where there is something to draw from.
    pub fn drawn(self, seed: u64) -> Self {
        self.drawn_with(seed, None)
    }

    /// The same with `chosen` faults in the place of those that the seed draws from the pool.
    pub fn drawn_with(mut self, seed: u64, chosen: Option<&[FaultSpec]>) -> Self {
        if let Some(name) = self.task.fault(seed).map(str::to_string) {
            self.fault.push(FaultSpec { name, severity: None });
        }
        self.out_of_pool(seed, chosen);
        self
    }

    /// The faults with the severity that a seed draws for each.
    pub fn severities(&self, seed: u64) -> Vec<(&'static fault::Fault, f64)> {
        let mut stream = Stream::new(seed, "faults");
        let known = self.fault.iter().filter_map(|spec| Some((spec, fault::named(&spec.name)?)));
        known
            .map(|(spec, fault)| {
                let [low, high] = spec.bounds(fault);
                (fault, stream.range(low, high))
            })
            .collect()
    }

    /// The situation that a seed makes: bench, recorder and trace with the faults put in.
    pub fn situation(&self, seed: u64) -> Result<Situation, ScenarioError> {
        let mut situation = Situation {
            config: self.config()?,
            time_base_s: self.time_base_s,
            before: self.before.clone(),
            foreign_recording: false,
        };
        for (fault, severity) in self.severities(seed) {
            (fault.apply)(&mut situation, severity);
        }
        Ok(situation)
    }

    /// The chain's description, without the faults.
    pub fn config(&self) -> Result<Config, ScenarioError> {
        Ok(Config {
            subject: self.subject.clone(),
            power_line: self.power_line,
            sensor: self.sensor,
            trouble: self.trouble,
            finds_recorder: self.bench.finds_recorder,
            bench: self.build_bench()?,
            recorder: self.recorder.clone(),
        })
    }
}
