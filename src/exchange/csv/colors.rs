//! A camera's colors as a table of text: `t_s,red,green,blue`, a line a frame.
//!
//! Read: columns in any order, known by their titles (`red`, `R`, `mean_red`; `t_s`, `time (ms)`), other columns left
//! aside; without a header the first four. Separators, quotes, decimal commas, line ends, blank lines and comments as of
//! recordings. The unit of time is told by the title, else by the median step: up to 1 it is seconds, up to 1000
//! milliseconds, above that microseconds. Frames whose time does not rise are left out and counted; where they are more
//! than one in ten the clock is no clock.

use super::cells::{self, Cell};
use super::clock::{self, TimeUnit};
use super::error::CsvError;
use crate::fingertip::series::{BRIGHTEST, LATEST_S, MOST_FRAMES, Series};

/// One frame in so many may have a time that does not rise.
const REPEATED_LIMIT: usize = 10;
/// What a line holds.
const COLUMNS: [&str; 4] = ["t_s", "red", "green", "blue"];

/// Reads a table. `name` is the file's, for errors; those name line and column.
pub fn read(name: &str, text: &str) -> Result<Series, CsvError> {
    let file = || name.to_string();
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let separator = cells::separator(text);
    let comma = separator != cells::Separator::Char(',');
    let mut row: Vec<Cell> = Vec::new();
    let mut lines = cells::lines(text).filter(|(_, line)| !line.starts_with("sep=")).peekable();
    let Some((_, first)) = lines.peek() else { return Err(CsvError::CsvEmpty { file: file() }) };
    cells::split(first, separator, &mut row);
    let titles: Vec<String> = row.iter().map(|cell| cell.text.to_string()).collect();
    let is_header = row.iter().all(|cell| cells::number(&cell.text, comma || cell.quoted).is_none());
    let (columns, unit) = match is_header {
        true => {
            lines.next();
            of_titles(name, &titles)?
        }
        false => ([0, 1, 2, 3], None),
    };
    let title = |c: usize| if is_header { titles.get(c).cloned().unwrap_or_default() } else { String::new() };
    let needed = columns.iter().max().map_or(4, |c| c + 1);
    let mut frames: Vec<(usize, [f64; 4])> = Vec::new();
    for (line, text) in lines {
        cells::split(text, separator, &mut row);
        if row.len() < needed {
            return Err(CsvError::CsvColumns { file: file(), line, expected: needed, found: row.len() });
        }
        if frames.len() == MOST_FRAMES {
            return Err(CsvError::CsvLength {
                file: file(),
                low: 2,
                high: MOST_FRAMES,
                found: MOST_FRAMES + 1,
            });
        }
        let mut frame = [0.0; 4];
        for (k, c) in columns.into_iter().enumerate() {
            let cell = &row[c];
            let (fits, expected): (fn(f64) -> bool, _) = match k {
                0 => (|_| true, "a time (a number)"),
                _ => (|v| (0.0..=BRIGHTEST).contains(&v), "a number from 0 to 255"),
            };
            let found = || cell.text.chars().take(40).collect();
            frame[k] =
                cells::number(&cell.text, comma || cell.quoted).filter(|v| fits(*v)).ok_or_else(|| {
                    CsvError::CsvCell {
                        file: file(),
                        line,
                        column: c + 1,
                        title: title(c),
                        expected,
                        found: found(),
                    }
                })?;
        }
        frames.push((line, frame));
    }
    if frames.is_empty() {
        return Err(CsvError::CsvEmpty { file: file() });
    }
    let unit = unit.unwrap_or_else(|| unit_of_steps(&frames));
    let mut series = Series::default();
    let mut wrong: Option<CsvError> = None;
    for (line, [time, red, green, blue]) in &frames {
        let found_s = unit.seconds(*time);
        let previous_s = series.frames().last().map_or(f64::NAN, |f| f.t_s);
        if !series.push(found_s, [*red, *green, *blue]) && wrong.is_none() {
            let (line, column) = (*line, columns[0] + 1);
            wrong = Some(if found_s.abs() > LATEST_S {
                let (expected, found) = ("a time within three thousand years", time.to_string());
                CsvError::CsvCell { file: file(), line, column, title: title(columns[0]), expected, found }
            } else {
                CsvError::CsvTimeOrder { file: file(), line, column, previous_s, found_s }
            });
        }
    }
    match wrong {
        Some(wrong) if series.ignored() * REPEATED_LIMIT > frames.len() => Err(wrong),
        _ => Ok(series),
    }
}

/// Which columns hold time, red, green and blue, and the unit of time if the title tells it.
fn of_titles(name: &str, titles: &[String]) -> Result<([usize; 4], Option<TimeUnit>), CsvError> {
    let keys: Vec<String> = titles.iter().map(|title| title.to_lowercase()).collect();
    let words = |key: &str| -> Vec<String> {
        key.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).map(String::from).collect()
    };
    let color = |long: &str| {
        let of = |key: &&String| words(key).iter().any(|w| *w == long || *w == long[..1]);
        keys.iter().position(|key| of(&key))
    };
    let found =
        [keys.iter().position(|key| clock::is_time_title(key)), color("red"), color("green"), color("blue")];
    let mut columns = [0; 4];
    for (k, place) in found.into_iter().enumerate() {
        columns[k] = place.ok_or_else(|| CsvError::CsvColumnUnknown {
            file: name.to_string(),
            found: COLUMNS[k].to_string(),
            known: titles.to_vec(),
        })?;
    }
    Ok((columns, TimeUnit::from_title(&keys[columns[0]])))
}

fn unit_of_steps(frames: &[(usize, [f64; 4])]) -> TimeUnit {
    let mut steps: Vec<f64> =
        frames.windows(2).map(|w| w[1].1[0] - w[0].1[0]).filter(|step| *step > 0.0).collect();
    let middle = steps.len() / 2;
    let usual = match steps.is_empty() {
        true => 0.0,
        false => *steps.select_nth_unstable_by(middle, f64::total_cmp).1,
    };
    match usual {
        step if step <= 1.0 => TimeUnit::Seconds,
        step if step <= 1e3 => TimeUnit::Milliseconds,
        _ => TimeUnit::Microseconds,
    }
}
