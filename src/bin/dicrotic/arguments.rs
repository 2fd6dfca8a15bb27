//! What can be typed, and which module does it.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

use crate::failure::Failure;
use crate::{output, project, serve, site};

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
    eprintln!("dicrotic: {why}");
    ExitCode::from(FAILED)
}

fn carry_out(command: Command) -> Result<(), Failure> {
    match command {
        Command::Serve { port } => serve::run(&project::root()?, port),
        Command::Build { out } => {
            let root = project::root()?;
            let out = site::checked_out(&root, &out)?;
            site::write(&site::build(&root)?, &out)?;
            output::print(&format!("The page is in {}\n", out.display()))
        }
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
