//! The list of a class: read, and what was read written as a list and read again.
#![no_main]
use dicrotic::exchange::class::roster::{self, MOST_CELL, MOST_STUDENTS};
use dicrotic::session::seeds::code;
use libfuzzer_sys::fuzz_target;
use std::collections::BTreeSet;

fuzz_target!(|text: &str| {
    match roster::read(text) {
        Ok(list) => {
            assert!((1..=MOST_STUDENTS).contains(&list.len()), "{} students", list.len());
            let codes: BTreeSet<String> = list.iter().map(|entry| code(&entry.code)).collect();
            assert_eq!(codes.len(), list.len(), "each code once");
            assert!(!codes.contains(""), "nobody without a code");
            let quoted = |cell: &str| format!("\"{}\"", cell.replace('"', "\"\""));
            let mut again = String::from("code,name,email,group\n");
            for entry in &list {
                let cells = [&entry.code, &entry.name, &entry.email, &entry.group];
                assert!(cells.iter().all(|cell| cell.chars().count() <= MOST_CELL), "a cell too long");
                again += &cells.map(|cell| quoted(cell)).join(",");
                again.push('\n');
            }
            assert_eq!(roster::read(&again).as_ref(), Ok(&list), "{again}");
        }
        Err(errors) => {
            assert!(!errors.is_empty(), "refused without a reason");
            for error in errors {
                let _ = (error.to_string(), error.told());
            }
        }
    }
});
