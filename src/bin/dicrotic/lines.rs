//! `grade --lines`: one result or one code a line in, one line of JSON out, in the same order and at once, so that whatever
//! divides a text into lines and puts lines together again can do a course. A line depends on nothing but itself. The one result of
//! a course has an answer for each result in it, with its place.

use std::io::{self, BufRead, ErrorKind};

use dicrotic::exchange::handin::{Graded, Handed, Set, bundle, result, table};
use serde_json::Value;

use crate::failure::{Failure, While};
use crate::handed_in::{Known, codes, quietly, replayed};
use crate::{output, set, terminal, text_file, told};

/// Grades the standard input. What is wrong with a line is said in its answer.
pub fn run(given: &[String]) -> Result<(), Failure> {
    let (set, known) = (set::read(given)?.set, Known::new());
    // The lines that are answered are for a program; this is for whoever started it.
    told::one_name(&set).iter().for_each(|note| terminal::say(note));
    let mut input = io::stdin().lock();
    quietly(|| {
        for number in 1_u64.. {
            let Some(line) = next(&mut input).while_doing(|| "reading the standard input".into())? else {
                break;
            };
            let answers = match line.and_then(text_file::text_of) {
                Ok(text) => answers(text.trim(), &set, &known),
                Err(why) => vec![(None, Err(why))],
            };
            for (place, graded) in answers {
                // Where nobody reads any more, there is no use in going on.
                if !output::line(&told(number, place, graded))? {
                    return Ok(());
                }
            }
        }
        Ok(())
    })
}

/// The next line without its end; nothing after the last one. A line that is longer than any result is passed over.
fn next(input: &mut impl BufRead) -> io::Result<Option<Result<Vec<u8>, String>>> {
    let (mut line, mut length, mut ended) = (Vec::new(), 0_usize, false);
    while !ended {
        let piece = match input.fill_buf() {
            Ok(piece) => piece,
            Err(error) if error.kind() == ErrorKind::Interrupted => continue,
            Err(error) => return Err(error),
        };
        if piece.is_empty() {
            if length == 0 {
                return Ok(None);
            }
            break;
        }
        let end = piece.iter().position(|byte| *byte == b'\n');
        let taken = end.map_or(piece.len(), |at| at + 1);
        ended = end.is_some();
        length += taken;
        if length <= bundle::MOST_BYTES + 1 {
            line.extend(&piece[..taken]);
        }
        input.consume(taken);
    }
    if length > bundle::MOST_BYTES + 1 {
        return Ok(Some(Err(format!(
            "{length} bytes; a course's result has at most {}",
            bundle::MOST_BYTES
        ))));
    }
    while line.last().is_some_and(|byte| matches!(byte, b'\n' | b'\r')) {
        line.pop();
    }
    Ok(Some(Ok(line)))
}

/// The place of a result in a course's, from 1, where it came in one; and what came of it.
type Answer = (Option<usize>, Result<Graded, String>);

/// What comes of a line: one result or code, or each result of a course, also where it has only one.
fn answers(text: &str, set: &Set, known: &Known) -> Vec<Answer> {
    match bundle::of(text) {
        None => {
            let (length, most) = (text.len(), result::MOST_BYTES);
            let one = match length > most {
                true => Err(format!("{length} bytes; a result has at most {most}")),
                false => grade(text, set, known),
            };
            vec![(None, one)]
        }
        Some(Ok(bundle)) => {
            bundle.results.iter().zip(1..).map(|(one, k)| (Some(k), grade(one, set, known))).collect()
        }
        Some(Err(why)) => vec![(None, Err(why.to_string()))],
    }
}

fn grade(text: &str, set: &Set, known: &Known) -> Result<Graded, String> {
    if text.is_empty() {
        return Err("an empty line".into());
    }
    let handed = if text.starts_with('{') {
        result::read(text)
    } else {
        Handed::of_code(&codes::only(text)?, set, |code| known.of(code))
    };
    replayed(&handed.map_err(|error| error.to_string())?, set)
}

/// The answer to a line, of a course with the place of the result in it. The fields stand in the table's order.
fn told(number: u64, place: Option<usize>, graded: Result<Graded, String>) -> String {
    let fields: Vec<(&str, Value)> = match graded {
        Ok(graded) => table::fields(&graded).into(),
        Err(why) => vec![("error", Value::from(why))],
    };
    let fields: Vec<String> =
        fields.iter().map(|(name, value)| format!("{}:{value}", Value::from(*name))).collect();
    let place = place.map_or_else(String::new, |k| format!("\"result\":{k},"));
    format!("{{\"line\":{number},{place}{}}}", fields.join(","))
}
