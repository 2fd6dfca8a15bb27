//! What can be typed, and which module does it.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};
use dicrotic::exchange::Options;
use dicrotic::scenario::fields::File;

use crate::bank::{self, BankArguments};
use crate::camera;
use crate::chart::{self, Order, Size, Theme};
use crate::class_arguments::{self, ClassArguments};
use crate::detect::{self, Polarity};
use crate::failure::Failure;
use crate::filter_response::{self, Kind};
use crate::study_arguments::{self, StudyCommand};
use crate::{
    check, convert, course, fingerprint, grade, lines, link, output, pack, plot, project, render, replay,
    schema, serve, site, terminal,
};

/// The exit code of everything that went wrong, as for wrong arguments.
const FAILED: u8 = 2;

/// A practice bench for the finger-pulse lab, in the browser. Without a command it serves the page on this machine.
#[derive(Parser)]
#[command(name = "dicrotic", version)]
struct Arguments {
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Subcommand)]
enum Command {
    /// Build the page where needed and serve it on 127.0.0.1
    Serve {
        /// The port; 0 for any free one. Without it the first free one from 7260 on is taken
        #[arg(long)]
        port: Option<u16>,
    },
    /// Write the page as static files, for any web server
    Build {
        /// The folder to write to: new, empty, or holding an earlier build
        #[arg(long, value_name = "DIR")]
        out: PathBuf,
    },
    /// Check scenario files: they must be valid, their scripted attempts must end as the files say, and brief, task, rubric and
    /// worked example must agree
    Check {
        /// Print for each scenario the points of its worked example
        #[arg(long)]
        readiness: bool,
        /// The instructor's password, for the scripted attempts of an assigned scenario whose file has it as a hash
        #[arg(long, value_name = "PASSWORD")]
        password: Option<String>,
        /// Scenario files (*.toml)
        #[arg(required = true, value_name = "FILE")]
        files: Vec<PathBuf>,
    },
    /// Write what the recorder gives: of the bench that a student of that seed meets, with its faults and after what happened
    /// before, if nobody changes anything; or of a scripted attempt
    #[command(allow_negative_numbers = true)]
    Render {
        /// The scenario file (*.toml)
        scenario: PathBuf,
        /// The seed: a whole number from 0 to 18446744073709551615. If left out it is 1, or the attempt's own
        #[arg(long)]
        seed: Option<u64>,
        /// How long, in seconds
        #[arg(long, required_unless_present = "attempt", conflicts_with = "attempt")]
        seconds: Option<f64>,
        /// Play the scripted attempt of this name and write what the recorder gave in it, from when the computer saw the
        /// recorder or, if the attempt changes the sampling rate, from then on
        #[arg(long, value_name = "NAME")]
        attempt: Option<String>,
        /// Play so many seconds of the attempt; all of it if left out
        #[arg(long, value_name = "SECONDS", requires = "attempt")]
        until: Option<f64>,
        /// The sampling rate in Hz, one that the recorder has, chosen at the start; the one that is found there if left out
        #[arg(long, value_name = "HZ", conflicts_with = "attempt")]
        rate: Option<u32>,
        /// The file to write: *.csv (t_s and value, in volts), *.edf, or *.hea for a WFDB record; with --plot *.svg or
        /// *.png
        #[arg(long, value_name = "FILE")]
        out: PathBuf,
        /// Draw a chart instead of a table
        #[arg(long, value_enum, value_name = "CHART")]
        plot: Option<chart::Kind>,
        /// The colors of the chart
        #[arg(long, value_parser = chart::theme_parser(), default_value = "dark", requires = "plot")]
        theme: Theme,
        /// The chart's width and height in pixels
        #[arg(long, value_name = "WxH", requires = "plot")]
        size: Option<Size>,
        /// A file to write the times of the true beats to, in seconds, one in each line
        #[arg(long, value_name = "FILE")]
        truth: Option<PathBuf>,
        /// The instructor's password: an assigned scenario needs it
        #[arg(long, value_name = "PASSWORD")]
        password: Option<String>,
    },
    /// Draw a chart of a recording
    #[command(allow_negative_numbers = true)]
    Plot {
        /// Which chart
        #[arg(value_enum)]
        chart: chart::Kind,
        /// The recording: EDF or EDF+, the header of a WFDB record, or a table of text with a time column (or of
        /// values alone with --rate)
        file: PathBuf,
        /// The sampling rate in Hz, if the file has no time column
        #[arg(long, value_name = "HZ")]
        rate: Option<f64>,
        /// The column or channel to read: its title, or its number from 1
        #[arg(long)]
        column: Option<String>,
        /// The pulse points down in the file
        #[arg(long)]
        inverted: bool,
        /// Start of the part to draw, in seconds from the first sample
        #[arg(long, value_name = "SECONDS", default_value_t = 0.0)]
        from: f64,
        /// End of the part to draw; the end of the recording if left out
        #[arg(long, value_name = "SECONDS")]
        to: Option<f64>,
        /// The frequency of the power line, 50 or 60 Hz, to mark it in the spectrum
        #[arg(long, value_name = "HZ")]
        power_line: Option<f64>,
        /// The colors of the chart
        #[arg(long, value_parser = chart::theme_parser(), default_value = "dark")]
        theme: Theme,
        /// The chart's width and height in pixels
        #[arg(long, value_name = "WxH")]
        size: Option<Size>,
        /// The file to write: *.svg or *.png
        #[arg(long, value_name = "FILE")]
        out: PathBuf,
    },
    /// Write a recording as another type of file, with its notes
    Convert {
        /// The recording: EDF or EDF+, the header of a WFDB record, or a table of text
        from: PathBuf,
        /// The file to write: *.csv, *.edf, or *.hea for a WFDB record
        to: PathBuf,
        /// The sampling rate in Hz, if the file has no time column
        #[arg(long, value_name = "HZ")]
        rate: Option<f64>,
        /// The column or channel to read: its title, or its number from 1
        #[arg(long)]
        column: Option<String>,
    },
    /// Pack an assignment with its page: for a course site, or as one file that opens with a double click
    Pack {
        /// The assignment: a scenario file (*.toml)
        assignment: PathBuf,
        /// The file to write: *.zip for a course site, *.html for a page in one file
        #[arg(long, value_name = "FILE")]
        to: PathBuf,
        /// The course site's standard, for a *.zip; SCORM 1.2 if left out
        #[arg(long, value_enum)]
        standard: Option<pack::Standard>,
        /// The page to pack: a folder that `dicrotic build --out` wrote. If left out, the page is built from the sources
        #[arg(long, value_name = "FOLDER")]
        page: Option<PathBuf>,
    },
    /// Make a question bank: clean traces, each with one correct heart rate and with wrong ones that come from known
    /// misreadings, with feedback; as QTI 3 for a course site, or as a table with pictures
    #[command(allow_negative_numbers = true)]
    Bank(BankArguments),
    /// Print the times of the beats of a recording, in seconds from its first sample, one in each line
    Detect {
        /// The recording: EDF or EDF+, the header of a WFDB record, or a table of text with a time column (or of
        /// values alone with --rate)
        file: PathBuf,
        /// The sampling rate in Hz, if the file has no time column
        #[arg(long, value_name = "HZ")]
        rate: Option<f64>,
        /// The column or channel to read: its title, or its number from 1
        #[arg(long)]
        column: Option<String>,
        /// Which way the pulse points
        #[arg(long, value_enum, default_value_t = Polarity::Auto)]
        polarity: Polarity,
    },
    /// Print the heart rate in the colors of a fingertip on a camera: a line for each window, `from_s,to_s,bpm` where beats and
    /// spectrum tell the same rate, else `from_s,to_s,refused,reason`. For teaching and trying, not for diagnosis. Reasons:
    /// gap (frames are missing), too_dark, too_bright, no_finger, moving (the light changes by more than a pulse, or all
    /// colors alike), weak (too little repeats), unsteady (the intervals do not hold), disagree (beats and spectrum, or two
    /// colors, tell different rates)
    #[command(allow_negative_numbers = true)]
    Camera {
        /// A table of text, a line for each frame: time and mean red, green and blue of a region, 0 to 255. Columns are known by
        /// their titles (t_s,red,green,blue); without titles they are the first four. Frames may come at any times from 8 a
        /// second on; at most 1000000
        file: PathBuf,
        /// The length of a window, 5 to 600 s. Windows follow each other from the first frame on; a last one that lacks
        /// more than .25 s is left out. Up to 3 s of frames on both sides help to read one, beats there do not count. One of more
        /// than 15 s is read in parts, of which three quarters must have a rate
        #[arg(long, value_name = "SECONDS", default_value_t = 10.0)]
        window: f64,
        /// Print the times of the beats instead, in seconds as in the file, one in each line: those in any window
        /// (one begins every quarter of its length) that has a rate
        #[arg(long)]
        beats: bool,
    },
    /// Replay what students submitted, compare it with the assignment, and write a table of grades. What cannot be used or
    /// must not count is named with the reason: a file that cannot be read or verified, another scenario than the assigned
    /// one, the scenario of another student, or copied actions. The rest is graded; the exit code is then 2
    Grade {
        /// Result files (*.dicrotic-result.json), lists of result codes (*.txt), or folders of them
        #[arg(required_unless_present = "lines", value_name = "RESULT")]
        results: Vec<PathBuf>,
        /// The table to write
        #[arg(long, required_unless_present = "lines", value_name = "FILE.csv")]
        out: Option<PathBuf>,
        /// Read the standard input: in each line one result (JSON on one line) or one result code. Write one line of JSON for
        /// each, in the same order: the table's fields, or the reason in "error"
        #[arg(long, conflicts_with_all = ["results", "out"])]
        lines: bool,
        /// The assignment: its scenario file, a folder of them, or its link; may be given several times. Results are compared
        /// with it and judged by its criteria
        #[arg(long, value_name = "FILE|LINK")]
        set: Vec<String>,
        #[arg(long, hide = true)]
        scenario: Vec<PathBuf>,
    },
    /// Sum up what a class submitted: who is ready, which faults are not fixed, which misreadings came up
    Class(ClassArguments),
    /// Study with a class whether rehearsal teaches: plan three tests and two arms by lot; make an anonymous table of what came in;
    /// work out the effect with its interval
    #[command(subcommand)]
    Study(StudyCommand),
    /// Check a course of several assignments; print its link, or write it as one file
    Course {
        /// The course file (*.toml): [course] with id, title and words, and a [[part]] for each assignment, with scenario (its
        /// text) or file (its path), opens, due and words
        file: PathBuf,
        /// Print a link with the whole course in it, for the page at --at
        #[arg(long, requires = "at")]
        link: bool,
        /// Check the course and print what is in it; this is also done if no other option is given
        #[arg(long, conflicts_with_all = ["link", "out"])]
        check: bool,
        /// The address of the page
        #[arg(long, value_name = "ADDRESS", requires = "link")]
        at: Option<String>,
        /// Write the course with the texts of all its parts in it, as students get them: no scripted attempts, the password as
        /// a hash
        #[arg(long, value_name = "FILE.toml")]
        out: Option<PathBuf>,
    },
    /// Print a JSON schema of scenario files, for editors; or a table of all fields
    Schema {
        /// Of course files instead of scenario files
        #[arg(long)]
        course: bool,
        /// Print the table of all fields, in Markdown
        #[arg(long)]
        table: bool,
        /// The file to write; printed if left out
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
    },
    /// Print a link with a whole scenario in it, for the page at an address
    Link {
        /// The scenario file (*.toml)
        scenario: PathBuf,
        /// The address of the page
        #[arg(long, value_name = "ADDRESS")]
        at: String,
        /// A file to write a picture of the link to, for a phone's camera
        #[arg(long, value_name = "FILE.svg")]
        qr: Option<PathBuf>,
    },
    /// Print the seed of a student's attempt at an assignment
    #[command(allow_hyphen_values = true)]
    Seed {
        /// The key of the assignment
        key: String,
        /// The student ID; "" for a seed that all share
        #[arg(value_name = "STUDENT_ID")]
        student: String,
        /// Which attempt, from 1
        #[arg(long = "attempt", alias = "try", value_name = "N", default_value_t = 1)]
        tries: u32,
    },
    /// Print a hash of what the recorder gives, in a line for each scenario
    #[command(hide = true)]
    Fingerprint {
        #[arg(required = true)]
        scenarios: Vec<PathBuf>,
        #[arg(long, default_value_t = 1)]
        seed: u64,
        #[arg(long, required_unless_present = "attempts")]
        samples: Option<u64>,
        /// Of each scripted attempt, on its own seed
        #[arg(long, conflicts_with = "samples")]
        attempts: bool,
    },
    /// Do a saved attempt again and print a hash of its result
    #[command(hide = true)]
    Replay { file: PathBuf },
    /// Print gain and phase of one of the recorder's filters
    #[command(hide = true)]
    FilterResponse {
        #[arg(long, value_enum)]
        kind: Kind,
        #[arg(long)]
        hz: f64,
        #[arg(long, default_value_t = 1)]
        order: u8,
        #[arg(long)]
        rate: f64,
    },
}

/// Reads the arguments and does what they say.
pub fn run() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) if error.use_stderr() => {
            let text = error.to_string();
            return failed(text.strip_prefix("error: ").unwrap_or(&text).trim_end());
        }
        // --help and --version
        Err(error) => {
            let _ = error.print();
            return ExitCode::SUCCESS;
        }
    };
    match carry_out(arguments.command.unwrap_or(Command::Serve { port: None })) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failed(&failure.to_string()),
    }
}

fn failed(why: &str) -> ExitCode {
    terminal::say(why);
    ExitCode::from(FAILED)
}

/// What the option was called until results were compared with it.
pub fn not_scenario(given: &[PathBuf]) -> Result<(), Failure> {
    if given.is_empty() {
        return Ok(());
    }
    Err(Failure::new("--scenario is now --set: results are compared with what is given, and judged by it"))
}

fn carry_out(command: Command) -> Result<(), Failure> {
    match command {
        Command::Serve { port } => serve::run(&project::root()?, port),
        Command::Build { out } => {
            let root = project::root()?;
            let out = site::checked_out(&root, &out)?;
            site::write(&site::build(&root)?, &out)?;
            output::print(&format!("The page is in {}\n", terminal::name(&out)))
        }
        Command::Course { file, at, out, .. } => {
            course::run(&file, &course::Order { at: at.as_deref(), out: out.as_deref() })
        }
        Command::Schema { course, table, out } => {
            let file = if course { File::Course } else { File::Scenario };
            schema::run(file, table, out.as_deref())
        }
        Command::Check { files, readiness, password } => check::run(&files, readiness, password.as_deref()),
        Command::Render {
            scenario,
            seed,
            seconds,
            attempt,
            until,
            rate,
            out,
            plot,
            theme,
            size,
            truth,
            password,
        } => {
            let order = plot.map(|kind| Order { kind, theme, size, out: &out });
            let what = match (&attempt, seconds) {
                (Some(name), _) => render::What::Attempt { name, until_s: until },
                (None, seconds) => render::What::Untouched { seconds: seconds.unwrap_or(0.0), rate_hz: rate },
            };
            let run = render::Run { scenario: &scenario, seed, what, password: password.as_deref() };
            render::run(&run, &out, order.as_ref(), truth.as_deref())
        }
        Command::Plot { chart, file, rate, column, inverted, from, to, power_line, theme, size, out } => {
            let column = column.as_deref();
            let (rate_hz, from_s, to_s, power_line_hz) = (rate, from, to, power_line);
            let source = plot::Source { file: &file, rate_hz, column, inverted, from_s, to_s, power_line_hz };
            plot::run(&source, &Order { kind: chart, theme, size, out: &out })
        }
        Command::Convert { from, to, rate, column } => {
            convert::run(&from, &to, &Options { rate_hz: rate, channel: column.as_deref() })
        }
        Command::Pack { assignment, to, standard, page } => {
            pack::run(&assignment, &to, standard, page.as_deref())
        }
        Command::Detect { file, rate, column, polarity } => {
            detect::run(&file, rate, column.as_deref(), polarity)
        }
        Command::Camera { file, window, beats } => camera::run(&file, window, beats),
        Command::Grade { results, out, set, scenario, .. } => {
            not_scenario(&scenario)?;
            match out {
                Some(out) => grade::run(&results, &set, &out),
                // Without a table to write, lines were asked for.
                None => lines::run(&set),
            }
        }
        Command::Bank(arguments) => bank::run(&arguments),
        Command::Class(arguments) => class_arguments::run(&arguments),
        Command::Study(command) => study_arguments::run(&command),
        Command::Link { scenario, at, qr } => link::run(&scenario, &at, qr.as_deref()),
        Command::Seed { key, student, tries } => {
            output::print(&format!("{}\n", dicrotic::session::seeds::seed(&key, &student, tries)))
        }
        Command::Fingerprint { scenarios, seed, samples, .. } => {
            let of =
                samples.map_or(fingerprint::Of::Attempts, |samples| fingerprint::Of::Bench { seed, samples });
            fingerprint::run(&scenarios, &of)
        }
        Command::Replay { file } => replay::run(&file),
        Command::FilterResponse { kind, hz, order, rate } => filter_response::run(kind, hz, order, rate),
    }
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;

    #[test]
    fn the_arguments_are_declared_without_contradiction() {
        Arguments::command().debug_assert();
    }

    #[test]
    fn the_help_names_the_port_that_is_tried_first() {
        let help = Arguments::command().find_subcommand_mut("serve").unwrap().render_help().to_string();
        assert!(help.contains(&serve::DEFAULT_PORT.to_string()), "{help}");
    }
}
