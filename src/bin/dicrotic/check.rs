//! `check`: whether scenario files are valid and their scripted attempts end as the files say.

use std::path::PathBuf;

use dicrotic::scenario::Scenario;
use dicrotic::session::script::replay_all;

use crate::failure::Failure;
use crate::{output, text_file};

/// Checks all files, then fails if one was wrong.
pub fn run(files: &[PathBuf]) -> Result<(), Failure> {
    let mut wrong = Vec::new();
    for file in files {
        let complaints = match text_file::read(file) {
            Err(failure) => vec![failure.to_string()],
            Ok(text) => match Scenario::read(&text) {
                Err(error) => vec![format!("{}: {error}", file.display())],
                Ok(scenario) => {
                    let complaints: Vec<String> = replay_all(&scenario, &text)
                        .into_iter()
                        .map(|why| format!("{}: {why}", file.display()))
                        .collect();
                    if complaints.is_empty() {
                        let attempts = scenario.attempt.len();
                        output::print(&format!("{}: valid, {attempts} scripted attempts\n", file.display()))?;
                    }
                    complaints
                }
            },
        };
        wrong.extend(complaints);
    }
    if wrong.is_empty() { Ok(()) } else { Err(Failure::new(wrong.join("\ndicrotic: "))) }
}
