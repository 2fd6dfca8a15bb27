//! What can be typed after `class`.

use std::path::PathBuf;

use clap::Args;
use dicrotic::exchange::class::{Pick, Terms, gradebook};

use crate::arguments::not_scenario;
use crate::class::{self, Order};
use crate::failure::Failure;

/// The arguments of `class`.
#[derive(Args)]
pub struct ClassArguments {
    /// Result files, lists of result codes, or folders of them, as for grade
    #[arg(required_unless_present_any = ["open", "roster"], value_name = "RESULT")]
    results: Vec<PathBuf>,
    /// The list of students, as CSV: one in each line with student ID, name, e-mail and group
    #[arg(long, value_name = "FILE")]
    roster: Option<PathBuf>,
    /// A saved class, from here or from the page: it is graded again, and students whose result changes are named
    #[arg(long, value_name = "FILE")]
    open: Option<PathBuf>,
    /// Save the class with everything that was submitted; the file that it was opened from may be written over
    #[arg(long, value_name = "FILE")]
    save: Option<PathBuf>,
    /// Which attempt counts for a student
    #[arg(long, value_enum, default_value_t = Which::Best)]
    pick: Which,
    /// Write a table for the gradebook of a course site, one row for each student
    #[arg(long, value_name = "FILE.csv")]
    gradebook: Option<PathBuf>,
    /// Its columns: TITLE=FIELD, one for each. The fields are code (the student ID), name, email, group, state, ready, points, maximum,
    /// percent, tries, minutes, feedback and empty, and of a course part_1, part_2 and so on for the points of each part
    #[arg(long, value_name = "TITLE=FIELD", requires = "gradebook")]
    column: Vec<String>,
    /// The most points in it
    #[arg(long, value_name = "POINTS", default_value_t = 20.0, requires = "gradebook")]
    maximum: f64,
    /// Write a table of the items, which are the scenarios with what was wrong in each: share right at the first check, discrimination,
    /// the misreading that came up most, minutes
    #[arg(long, value_name = "FILE.csv")]
    items: Option<PathBuf>,
    /// Start it with a byte order mark, for spreadsheets
    #[arg(long, requires = "gradebook")]
    bom: bool,
    /// Write the answer key of the assignment, for the list of students: seeds, faults with their strength, true heart rates
    #[arg(long, value_name = "FILE.csv")]
    answers: Option<PathBuf>,
    /// The instructor's password, for the answer key
    #[arg(long, value_name = "PASSWORD", requires = "answers")]
    password: Option<String>,
    /// An HTML file to write; without it a table is printed
    #[arg(long, value_name = "FILE.html")]
    out: Option<PathBuf>,
    /// How many different scenarios a student must pass
    #[arg(long, value_name = "N", default_value_t = 1)]
    passes: usize,
    /// Count a scenario only if the student is ready by the rubric: 16 of 20 points, and no row at zero
    #[arg(long)]
    rubric: bool,
    /// Show the student IDs
    #[arg(long)]
    names: bool,
    /// The assignment, as for grade
    #[arg(long, value_name = "FILE|LINK")]
    set: Vec<String>,
    #[arg(long, hide = true)]
    scenario: Vec<PathBuf>,
}

/// Which attempt counts for a student.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
enum Which {
    /// The best one
    Best,
    /// The last one
    Last,
}

/// Columns of a gradebook as they are typed; the usual ones where none are.
fn columns(typed: &[String]) -> Result<Vec<gradebook::Column>, Failure> {
    if typed.is_empty() {
        return Ok(gradebook::Order::default().columns);
    }
    let column = |text: &String| {
        let (title, field) = text.rsplit_once('=').ok_or_else(|| {
            let fields = gradebook::FIELDS.join(", ");
            Failure::new(format!("--column {text}: TITLE=FIELD, where FIELD is one of {fields}"))
        })?;
        Ok(gradebook::Column { title: title.into(), field: field.into() })
    };
    typed.iter().map(column).collect()
}

/// Does what they say.
pub fn run(typed: &ClassArguments) -> Result<(), Failure> {
    not_scenario(&typed.scenario)?;
    let pick = if typed.pick == Which::Last { Pick::Last } else { Pick::Best };
    let (columns, maximum, bom) = (columns(&typed.column)?, typed.maximum, typed.bom);
    let table = |path| (path, gradebook::Order { columns, maximum, bom, ..gradebook::Order::default() });
    class::run(
        &typed.results,
        &Order {
            set: &typed.set,
            terms: Terms { benches: typed.passes, rubric: typed.rubric, pick, due_s: 0 },
            names: typed.names,
            out: typed.out.as_deref(),
            roster: typed.roster.as_deref(),
            open: typed.open.as_deref(),
            save: typed.save.as_deref(),
            gradebook: typed.gradebook.as_deref().map(table),
            items: typed.items.as_deref(),
            answers: typed.answers.as_deref().map(|path| (path, typed.password.as_deref())),
        },
    )
}
