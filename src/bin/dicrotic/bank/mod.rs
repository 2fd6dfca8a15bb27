//! `bank`: questions for a course site or a table, from traces whose wrong answers are known misreadings.
//!
//! | module | what lives there |
//! |---|---|
//! | `words` | what is asked and said, in the page's own words |

mod words;

use std::io::Write;
use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};
use dicrotic::exchange::bank::{self, Bank, MOST_QUESTIONS, Question};
use dicrotic::exchange::{NamedFile, zip};
use flate2::Compression;
use flate2::write::DeflateEncoder;
use rayon::prelude::*;

use crate::failure::{Failure, While};
use crate::{output, same_file, terminal, text_file};
use words::{Language, Texts};

/// Questions that are made at a time.
const AT_ONCE: usize = 16;

/// The arguments of `bank`.
#[derive(Args)]
pub struct BankArguments {
    /// Scenario files (*.toml): their subjects and power lines; the questions take them in turn
    #[arg(required = true, value_name = "SCENARIO")]
    scenarios: Vec<PathBuf>,
    /// How many questions: 1 to 500
    #[arg(long, value_name = "N", default_value_t = 20)]
    count: u32,
    /// The seed: a whole number from 0 to 18446744073709551615. The same seed gives the same file
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// The type of file
    #[arg(long, value_enum, default_value_t = Form::Qti)]
    form: Form,
    /// The language of the questions
    #[arg(long, value_enum, default_value_t = Language::En)]
    language: Language,
    /// The archive to write
    #[arg(long, value_name = "FILE.zip")]
    out: PathBuf,
}

/// The form of a bank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Form {
    /// A package of QTI 3 items
    Qti,
    /// A table of text, with the pictures
    Csv,
}

/// Does what they say.
pub fn run(typed: &BankArguments) -> Result<(), Failure> {
    let BankArguments { scenarios, count, seed, form, language, out } = typed;
    if !(1..=MOST_QUESTIONS).contains(count) {
        return Err(Failure::new(format!("--count must be from 1 to {MOST_QUESTIONS}, found {count}")));
    }
    let ending = out.extension().map(|e| e.to_string_lossy().to_lowercase()).unwrap_or_default();
    if ending != "zip" {
        let name = terminal::name(out);
        return Err(Failure::new(format!("--out {name}: expected a name that ends in .zip")));
    }
    same_file::refuse_overlap(scenarios.iter().map(PathBuf::as_path), &[out])?;
    let texts: Vec<(&Path, String)> = scenarios
        .iter()
        .map(|path| Ok((path.as_path(), text_file::read(path, text_file::SCENARIO)?)))
        .collect::<Result<_, Failure>>()?;
    let of = |number: u32| {
        let (path, text) = &texts[(number - 1) as usize % texts.len()];
        Question::new(text, *seed, number).while_doing(|| terminal::name(path))
    };
    let words = Texts::of(*language)?;
    let (known, told) = match form {
        Form::Qti => (bank::Form::Qti, "QTI 3"),
        Form::Csv => (bank::Form::Csv, "a table with pictures"),
    };
    let mut made = Bank::new(known, language.tag(), language.decimal());
    let numbers: Vec<u32> = (1..=*count).collect();
    // Some at a time: each holds a whole attempt until it is drawn.
    for part in numbers.chunks(AT_ONCE) {
        let questions: Vec<Question> = part.par_iter().map(|n| of(*n)).collect::<Result<_, Failure>>()?;
        for question in &questions {
            made.add(question, words.words(question)?).while_doing(|| "making the bank".into())?;
        }
    }
    let files = made.files();
    let bytes = archive(&files)?;
    text_file::write_bytes(out, &bytes)?;
    let (few, kb) = (if *count == 1 { "question" } else { "questions" }, bytes.len().div_ceil(1000));
    let name = terminal::name(out);
    output::print(&format!("{name}: {count} {few}, {told}, {} files in {kb} kB\n", files.len()))
}

/// The files as one, packed.
fn archive(files: &[NamedFile]) -> Result<Vec<u8>, Failure> {
    let deflated = |(_, bytes): &NamedFile| {
        let mut packer = DeflateEncoder::new(Vec::new(), Compression::best());
        packer.write_all(bytes).and_then(|()| packer.finish())
    };
    let packed: Vec<Vec<u8>> =
        files.par_iter().map(deflated).collect::<Result<_, _>>().while_doing(|| "packing".into())?;
    let items: Vec<zip::Item> = files
        .iter()
        .zip(&packed)
        .map(|((name, bytes), packed)| zip::Item { name, bytes, packed: Some(packed) })
        .collect();
    zip::write(&items)
        .ok_or_else(|| Failure::new("the bank is too large for one archive: ask for fewer questions"))
}
