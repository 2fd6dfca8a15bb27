//! `schema`: what may stand in a scenario file and in a course file, as a JSON schema for editors, as a table, and as a page.

use std::path::Path;

use dicrotic::scenario::fields::{self, File, Row};

use crate::failure::Failure;
use crate::{output, text_file};

/// The path of the page with the table, in the page's folder.
pub const PAGE: &str = "fields.html";

/// Writes or prints the schema, or the table of all fields in Markdown.
pub fn run(file: File, table: bool, out: Option<&Path>) -> Result<(), Failure> {
    let text = if table { markdown(file) } else { format!("{:#}\n", fields::schema(file)) };
    match out {
        Some(path) => text_file::write(path, &text),
        None => output::print(&text),
    }
}

const HEADS: [&str; 5] = ["field", "what may be there", "needed", "if left out", "what it is"];

fn cells(row: &Row) -> [String; 5] {
    let needed = if row.needed { "yes" } else { "" };
    [row.path.clone(), row.kind.clone(), needed.into(), row.usual.clone(), row.about.clone()]
}

fn markdown(file: File) -> String {
    let mut text = format!("| {} |\n|{}\n", HEADS.join(" | "), " --- |".repeat(HEADS.len()));
    for row in fields::table(file) {
        let cells = cells(&row).map(|cell| cell.replace('|', "\\|"));
        text += &format!("| {} |\n", cells.join(" | "));
    }
    text
}

/// The page: the tables of both files. Its words are the program's own docs, which are in English.
pub fn page() -> String {
    let escaped = |text: &str| {
        text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
    };
    // What stands between two backticks is code.
    let about = |text: &str| -> String {
        let part = |(k, part): (usize, &str)| match k % 2 {
            0 => escaped(part),
            _ => format!("<code>{}</code>", escaped(part)),
        };
        text.split('`').enumerate().map(part).collect()
    };
    let table = |file: File| {
        let head: String = HEADS.iter().map(|head| format!("<th scope=\"col\">{head}</th>")).collect();
        let row = |row: Row| {
            let [path, rest @ ..] = cells(&row);
            let rest: String = rest.iter().map(|cell| format!("<td>{}</td>", about(cell))).collect();
            format!("<tr id=\"{0}\"><th scope=\"row\"><code>{0}</code></th>{rest}</tr>\n", escaped(&path))
        };
        let rows: String = fields::table(file).into_iter().map(row).collect();
        format!(
            "<div class=\"wide\"><table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}</tbody>\n</table></div>\n"
        )
    };
    include_str!("schema.html")
        .replace("{scenario}", &table(File::Scenario))
        .replace("{course}", &table(File::Course))
}
