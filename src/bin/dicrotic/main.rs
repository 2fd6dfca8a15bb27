//! The command line of Dicrotic. Without arguments it builds and serves the page.
//!
//! | module | what lives there |
//! |---|---|
//! | `arguments`, `class_arguments` | what can be typed |
//! | `failure` | why a command could not do its work |
//! | `output`, `terminal` | where results go; text that may do nothing at a terminal |
//! | `text_file` | files that commands read and write |
//! | `safe_output`, `same_file` | files are written whole or not at all; never over what is read |
//! | `recording_file`, `convert` | recordings in files of any form; from one form to another |
//! | `project` | where the sources are |
//! | `stamp` | whether a build is older than its sources |
//! | `wasm` | builds the core for the browser |
//! | `site` | puts the page together |
//! | `http`, `request`, `serve` | the protocol; what is let in; the page's server |
//! | `pack` | an assignment with the page: for a course site, or as one file |
//! | `bank` | a question bank |
//! | `check`, `schema` | scenario files; what may stand in them |
//! | `link`, `course` | a scenario as a link; several assignments as one |
//! | `handed_in`, `grade`, `class` | what students handed in, as a table of grades and summed up |
//! | `students`, `page_words` | how the students of a class are called; the page's words for codes |
//! | `study`, `study_arguments`, `study_words` | a study of a class: planning it, its table, its figures |
//! | `lines` | the same line by line, in and out |
//! | `set`, `told` | what was set, to compare with; what is said of results beside their grades |
//! | `bench_run`, `render`, `fingerprint` | a scenario's bench, as a student meets it or in a scripted attempt |
//! | `chart`, `chart_words`, `plot` | charts as files; their words; charts of recordings |
//! | `replay` | a saved attempt, done again |
//! | `detect`, `filter_response` | the detector; the recorder's filters |
//! | `camera` | the pulse in the colors of a fingertip on a camera |

#[cfg(target_family = "wasm")]
fn main() {}

#[cfg(not(target_family = "wasm"))]
mod arguments;
#[cfg(not(target_family = "wasm"))]
mod bank;
#[cfg(not(target_family = "wasm"))]
mod bench_run;
#[cfg(not(target_family = "wasm"))]
mod camera;
#[cfg(not(target_family = "wasm"))]
mod chart;
#[cfg(not(target_family = "wasm"))]
mod chart_words;
#[cfg(not(target_family = "wasm"))]
mod check;
#[cfg(not(target_family = "wasm"))]
mod class;
#[cfg(not(target_family = "wasm"))]
mod class_arguments;
#[cfg(not(target_family = "wasm"))]
mod convert;
#[cfg(not(target_family = "wasm"))]
mod course;
#[cfg(not(target_family = "wasm"))]
mod detect;
#[cfg(not(target_family = "wasm"))]
mod failure;
#[cfg(not(target_family = "wasm"))]
mod filter_response;
#[cfg(not(target_family = "wasm"))]
mod fingerprint;
#[cfg(not(target_family = "wasm"))]
mod grade;
#[cfg(not(target_family = "wasm"))]
mod handed_in;
#[cfg(not(target_family = "wasm"))]
mod http;
#[cfg(not(target_family = "wasm"))]
mod lines;
#[cfg(not(target_family = "wasm"))]
mod link;
#[cfg(not(target_family = "wasm"))]
mod output;
#[cfg(not(target_family = "wasm"))]
mod pack;
#[cfg(not(target_family = "wasm"))]
mod page_words;
#[cfg(not(target_family = "wasm"))]
mod plot;
#[cfg(not(target_family = "wasm"))]
mod project;
#[cfg(not(target_family = "wasm"))]
mod recording_file;
#[cfg(not(target_family = "wasm"))]
mod render;
#[cfg(not(target_family = "wasm"))]
mod replay;
#[cfg(not(target_family = "wasm"))]
mod request;
#[cfg(not(target_family = "wasm"))]
mod safe_output;
#[cfg(not(target_family = "wasm"))]
mod same_file;
#[cfg(not(target_family = "wasm"))]
mod schema;
#[cfg(all(test, not(target_family = "wasm")))]
mod scratch;
#[cfg(not(target_family = "wasm"))]
mod serve;
#[cfg(not(target_family = "wasm"))]
mod set;
#[cfg(not(target_family = "wasm"))]
mod site;
#[cfg(not(target_family = "wasm"))]
mod stamp;
#[cfg(not(target_family = "wasm"))]
mod students;
#[cfg(not(target_family = "wasm"))]
mod study;
#[cfg(not(target_family = "wasm"))]
mod study_arguments;
#[cfg(not(target_family = "wasm"))]
mod study_words;
#[cfg(not(target_family = "wasm"))]
mod terminal;
#[cfg(not(target_family = "wasm"))]
mod text_file;
#[cfg(not(target_family = "wasm"))]
mod texts;
#[cfg(not(target_family = "wasm"))]
mod told;
#[cfg(not(target_family = "wasm"))]
mod wasm;

#[cfg(not(target_family = "wasm"))]
fn main() -> std::process::ExitCode {
    arguments::run()
}
