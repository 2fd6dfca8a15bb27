//! What can be typed after `study`.

use std::path::PathBuf;

use clap::Subcommand;
use dicrotic::exchange::study::LEAST;

use crate::failure::Failure;
use crate::study;

/// What can be done with a study.
#[derive(Subcommand)]
pub enum StudyCommand {
    /// Plan a study: write three forms of three tests as courses, the course for rehearsal, and the list of who is in which arm.
    /// Keep the folder to yourself; students get the courses, each their own
    Plan {
        /// Its name in files: small letters, digits, hyphens
        #[arg(long, required_unless_present = "open", conflicts_with = "open")]
        id: Option<String>,
        /// Its heading, which students see
        #[arg(long, required_unless_present = "open", conflicts_with = "open")]
        title: Option<String>,
        /// The list of students, as CSV: one in each line with student ID, name, e-mail and group
        #[arg(long, value_name = "FILE")]
        roster: PathBuf,
        /// A word of 8 to 60 characters that no student can guess: who knows it and the list can work out the arms
        #[arg(long, value_name = "WORD")]
        word: String,
        /// A scenario file with a pool of 6 faults or more; each gives one bench to every form. Several times, at most 10
        #[arg(long = "test", value_name = "FILE", required_unless_present = "open", conflicts_with = "open")]
        tests: Vec<PathBuf>,
        /// A scenario file for rehearsal. Several times, at most 20; if left out, rehearsal is what you say it is
        #[arg(long, value_name = "FILE", conflicts_with = "open")]
        rehearsal: Vec<PathBuf>,
        /// The instructor's password for the true values of the benches, as in an assignment
        #[arg(long, value_name = "PASSWORD", conflicts_with = "open", default_value = "")]
        password: String,
        /// A study that was planned before, whose students keep their places: only new ones get one
        #[arg(long, value_name = "FILE")]
        open: Option<PathBuf>,
        /// The folder to write to
        #[arg(long, value_name = "FOLDER")]
        out: PathBuf,
        /// The address of the page: the links of all courses are written as well
        #[arg(long, value_name = "ADDRESS")]
        at: Option<String>,
    },
    /// Make the anonymous table of what came in, and print how many are where and what rehearsal did. Who did not say yes is left out
    /// and counted. What cannot be used is named with the reason; the exit code is then 2
    Table {
        /// Result files, lists of result codes, or folders of them, as for grade
        #[arg(required = true, value_name = "RESULT")]
        results: Vec<PathBuf>,
        /// The study, as plan wrote it (*.dicrotic-study.json)
        #[arg(long, value_name = "FILE")]
        plan: PathBuf,
        /// The word of the study
        #[arg(long, value_name = "WORD")]
        word: String,
        /// The anonymous table to write
        #[arg(long, value_name = "FILE.csv")]
        out: PathBuf,
        /// A table of the items to write: share right, discrimination, the misreading that came up most, minutes
        #[arg(long, value_name = "FILE.csv")]
        items: Option<PathBuf>,
        /// A student who said yes and has taken it back since. Several times
        #[arg(long, value_name = "STUDENT_ID")]
        withdrawn: Vec<String>,
        /// Tell nothing of fewer people than this
        #[arg(long, value_name = "N", default_value_t = LEAST, value_parser = least)]
        least: usize,
    },
    /// Work out the effect from anonymous tables, of one class or of several together
    Effect {
        /// Tables that study table wrote
        #[arg(required = true, value_name = "FILE.csv")]
        tables: Vec<PathBuf>,
        /// Tell nothing of fewer people than this in an arm
        #[arg(long, value_name = "N", default_value_t = LEAST, value_parser = least)]
        least: usize,
        /// Print all figures as JSON
        #[arg(long)]
        json: bool,
    },
}

/// A number of people; of one alone nothing can be told.
fn least(typed: &str) -> Result<usize, String> {
    typed.parse().ok().filter(|n| *n >= 2).ok_or_else(|| "a whole number from 2 on".into())
}

/// Does what they say.
pub fn run(command: &StudyCommand) -> Result<(), Failure> {
    match command {
        StudyCommand::Plan { id, title, roster, word, tests, rehearsal, password, open, out, at } => {
            study::plan(&study::Planned {
                id: id.as_deref().unwrap_or_default(),
                title: title.as_deref().unwrap_or_default(),
                roster,
                word,
                tests,
                rehearsal,
                password,
                open: open.as_deref(),
                out,
                at: at.as_deref(),
            })
        }
        StudyCommand::Table { results, plan, word, out, items, withdrawn, least } => {
            study::table(&study::Wanted {
                results,
                plan,
                word,
                out,
                items: items.as_deref(),
                withdrawn,
                least: *least,
            })
        }
        StudyCommand::Effect { tables, least, json } => study::effect(tables, *least, *json),
    }
}
