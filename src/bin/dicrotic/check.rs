//! `check`: whether scenario files are valid, whether their scripted attempts end as the files say, whether brief, task,
//! rubric and worked example agree, and whether all that a pool draws can be found.

use std::path::{Path, PathBuf};

use dicrotic::scenario::Scenario;
use dicrotic::scenario::pool::Draw;
use dicrotic::session::pools::{self, SEEDS};
use dicrotic::session::readiness;
use dicrotic::session::script::replay_all;
use rayon::prelude::*;

use crate::failure::Failure;
use crate::{bench_run, output, terminal, text_file};

/// Checks all files, then fails if one was wrong. With `ready` each line tells what the worked example earns.
pub fn run(files: &[PathBuf], ready: bool, password: Option<&str>) -> Result<(), Failure> {
    let found: Vec<Result<String, Vec<String>>> =
        files.par_iter().map(|file| check(file, ready, password)).collect();
    let mut wrong = Vec::new();
    for one in found {
        match one {
            Ok(line) => output::print(&line)?,
            Err(complaints) => wrong.extend(complaints),
        }
    }
    if wrong.is_empty() { Ok(()) } else { Err(Failure::new(wrong.join("\ndicrotic: "))) }
}

fn check(file: &Path, ready: bool, password: Option<&str>) -> Result<String, Vec<String>> {
    let told = |why: String| format!("{}: {why}", terminal::name(file));
    let text = text_file::read(file, text_file::SCENARIO).map_err(|failure| vec![failure.to_string()])?;
    let scenario = Scenario::read(&text).map_err(|error| vec![told(error.to_string())])?;
    if !scenario.attempt.is_empty() {
        bench_run::opened(file, &scenario, password, "scripted attempts are replayed")
            .map_err(|failure| vec![failure.to_string()])?;
    }
    let mut complaints = replay_all(&scenario, &text);
    complaints.extend(readiness::contradictions(&scenario, &text).iter().map(ToString::to_string));
    let draws = scenario.draws();
    let trials: Vec<(&Draw, u64)> = draws.iter().flat_map(|draw| SEEDS.map(|seed| (draw, seed))).collect();
    complaints.par_extend(
        trials.par_iter().flat_map_iter(|(draw, seed)| pools::flaws(&scenario, &text, draw, *seed)),
    );
    let mut line = format!("{}: valid, {} scripted attempts", terminal::name(file), scenario.attempt.len());
    if ready || scenario.attempt.iter().any(|a| a.expect.passed) {
        match readiness::of_example(&scenario, &text) {
            Ok(rubric) => {
                let missing = readiness::missing(&rubric);
                let yes = if rubric.ready() { "yes" } else { "no" };
                if !rubric.ready() || !missing.is_empty() {
                    let list = missing.join(", ");
                    complaints.push(format!(
                        "the worked example alone gets {} of {} points, ready {yes}; not done: {list}",
                        rubric.total, rubric.of
                    ));
                }
                if ready {
                    let drawn =
                        if draws.is_empty() { String::new() } else { format!(", {} draws", draws.len()) };
                    line = format!("{}: {} of {}, ready {yes}{drawn}", scenario.id, rubric.total, rubric.of);
                }
            }
            Err(why) => complaints.push(why),
        }
    }
    if complaints.is_empty() { Ok(line + "\n") } else { Err(complaints.into_iter().map(told).collect()) }
}
