//! What of a scenario fits by itself and not beside the rest: a window longer than the recording, a question after faults
//! that are not there, two faults of which one undoes the other.

use super::error::ScenarioError;
use super::fault::{self, AtWork, Fault, Scene, Situation};
use super::schema::Scenario;
use crate::assess::own;
use crate::assess::task::Reads;
use crate::chain::Chain;

/// Any seed: whose heart it is does not decide what is at work on the table.
const SEED: u64 = 1;

/// Refuses what does not fit together.
pub(super) fn check(scenario: &Scenario) -> Result<(), ScenarioError> {
    let (window, record) = (scenario.pass.window_s, scenario.pass.record_s);
    if window > record {
        let expected = format!("at most pass.record_s, {record}: a window lies on the recording");
        return Err(ScenarioError::at("pass.window_s", window, expected));
    }
    if scenario.task.kind.question().reads == Reads::Nothing
        && scenario.fault.is_empty()
        && scenario.task.one_of.is_empty()
        && scenario.pool.is_none()
    {
        let expected = "at least one fault, where the question is to name it";
        return Err(ScenarioError::at("fault", "no fault", expected));
    }
    let wrong = |(field, found, expected): own::Wrong| ScenarioError::at(field, found, expected);
    own::counted(&scenario.misreading, &scenario.hint).map_err(wrong)?;
    #[cfg(feature = "desk")]
    own::check(&scenario.misreading, &scenario.hint, &scenario.task, window).map_err(wrong)?;
    given_away(scenario)?;
    undone(scenario, &listed(scenario))
}

/// The faults of a scenario, each at its worst.
fn listed(scenario: &Scenario) -> Vec<(&'static Fault, f64)> {
    let worst = |fault: &'static Fault, bounds: [f64; 2]| (fault, bounds[1]);
    let specs = scenario.fault.iter();
    specs.filter_map(|spec| fault::named(&spec.name).map(|f| worst(f, spec.bounds(f)))).collect()
}

/// Whether faults can be there together.
pub(super) fn fit(scenario: &Scenario, faults: &[&'static Fault]) -> bool {
    let faults: Vec<_> = faults.iter().map(|f| (*f, f.severity.1)).collect();
    let brought = |f: &Fault| faults.iter().any(|(other, _)| other.brings.contains(&f.id));
    !faults.iter().any(|(f, _)| brought(f)) && undone(scenario, &faults).is_ok()
}

/// Refuses a pool of which one member comes with a sensor of its own: the sensor on the table would tell which it is.
fn given_away(scenario: &Scenario) -> Result<(), ScenarioError> {
    let Some(pool) = &scenario.pool else { return Ok(()) };
    let own = [scenario.sensor];
    let sensors = if pool.sensors.is_empty() { &own[..] } else { &pool.sensors };
    for fault in pool.members() {
        for sensor in sensors {
            let mut bench = Scenario { sensor: *sensor, pool: None, ..scenario.clone() };
            bench.before.clear();
            let kind = situation(&bench, &[(fault, fault.severity.1)])?.config.sensor.kind;
            if kind != sensor.kind {
                let expected = "faults that come with no other sensor than the rest of the pool";
                return Err(ScenarioError::at("pool.faults", format!("\"{}\"", fault.id), expected));
            }
        }
    }
    Ok(())
}

/// Refuses two faults that set the same thing otherwise, so that the cause of the one that is put in first is gone. What only
/// hides behind another fault, as a charger's hum while the power strip is off, is there once that one is mended.
fn undone(scenario: &Scenario, faults: &[(&'static Fault, f64)]) -> Result<(), ScenarioError> {
    for (k, first) in faults.iter().enumerate() {
        for (l, second) in faults.iter().enumerate().skip(k + 1) {
            if situation(scenario, &[*first, *second])?.config
                == situation(scenario, &[*second, *first])?.config
            {
                continue;
            }
            let there = [at_work(scenario, &[*first], first.0)?, at_work(scenario, &[*second], second.0)?];
            let both = [*first, *second];
            let beside = [at_work(scenario, &both, first.0)?, at_work(scenario, &both, second.0)?];
            if let Some(gone) = (0..2).find(|i| there[*i] && !beside[*i]) {
                let (lost, other) = if gone == 0 { (k, l) } else { (l, k) };
                let (id, by) = (faults[lost].0.id, faults[other].0.id);
                let expected = format!("faults that can be there together: {by} undoes it");
                return Err(ScenarioError::at(format!("fault[{lost}].name"), format!("\"{id}\""), expected));
            }
        }
    }
    Ok(())
}

/// Whether the cause of `whose` is there on the bench with these faults, as far as that is seen before anything is done.
fn at_work(scenario: &Scenario, faults: &[(&Fault, f64)], whose: &Fault) -> Result<bool, ScenarioError> {
    let AtWork::Is(is) = whose.at_work else { return Ok(false) };
    let Situation { config, time_base_s, .. } = situation(scenario, faults)?;
    // What no chain can be made of is refused elsewhere.
    let Ok(chain) = Chain::new(config, SEED) else { return Ok(false) };
    Ok(is(&Scene { chain: &chain, time_base_s, held: false, own_recordings: 0 }))
}

/// The bench with these faults put in, one after the other.
fn situation(scenario: &Scenario, faults: &[(&Fault, f64)]) -> Result<Situation, ScenarioError> {
    let mut situation = Situation {
        config: scenario.config()?,
        time_base_s: scenario.time_base_s,
        before: Vec::new(),
        foreign_recording: false,
    };
    for (fault, severity) in faults {
        (fault.apply)(&mut situation, *severity);
    }
    Ok(situation)
}
