//! `grade --lines`: lines in, lines out, in the same order and at once.

use std::io::{BufRead, BufReader, Write};
use std::process::{Child, Stdio};

use command::{dicrotic, error_of, scratch, told, written};
use dicrotic::exchange::handin::{result, table};
use serde_json::Value;
use students::{ASSIGNMENT, attempt};

mod command;
mod students;

fn started(arguments: &[&str]) -> Child {
    let mut command = dicrotic(&[&["grade", "--lines"], arguments].concat());
    command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap()
}

/// What comes out of lines, each as JSON.
fn graded(lines: &[String], arguments: &[&str]) -> Vec<Value> {
    let mut run = started(arguments);
    let mut input = run.stdin.take().unwrap();
    let text = lines.join("\n");
    let writer = std::thread::spawn(move || input.write_all(text.as_bytes()).unwrap());
    let output = run.wait_with_output().unwrap();
    writer.join().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = String::from_utf8(output.stdout).unwrap();
    text.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

/// Results, codes and what is neither.
fn course() -> Vec<String> {
    let mut lines = Vec::new();
    for k in 0..6 {
        let (session, about) = attempt(k);
        let pretty = result::write(&session, &about).unwrap();
        let value: Value = serde_json::from_str(&pretty).unwrap();
        lines.push(value.to_string());
        lines.push(format!("by mail: \"{}\"", session.code(&about).unwrap().write()));
    }
    lines.extend(["", "nothing here", "{\"format\": \"a cake\"}", "D3.AAAA", "{"].map(String::from));
    lines
}

#[test]
fn each_line_is_answered_by_one_with_the_tables_fields_or_the_reason() {
    let folder = scratch("lines");
    let scenario = written(&folder, "assignment.toml", ASSIGNMENT);
    let lines = course();
    let answers = graded(&lines, &["--set", &scenario]);
    assert_eq!(answers.len(), lines.len());
    for (k, answer) in answers.iter().enumerate() {
        assert_eq!(answer["line"], k + 1);
        assert_eq!(answer.get("error").is_none(), k < 12, "{answer}");
    }
    assert_eq!(answers[0]["student"], "Group A-01");
    assert_eq!(answers[0]["verified"], "yes");
    let fields = answers[0].as_object().unwrap();
    // What a result has to do with others no line can tell.
    let named: Vec<&str> = table::HEAD.split(',').skip(1).filter(|name| *name != "beside").collect();
    assert!(
        named.iter().all(|name| fields.contains_key(*name)) && fields.len() == named.len() + 1,
        "{fields:?}"
    );
    // A result and its code come to the same.
    for pair in answers[..12].chunks(2) {
        for name in named.iter().filter(|name| **name != "verified") {
            assert_eq!(pair[0][*name], pair[1][*name], "{name}");
        }
    }
    // The same values as in the table.
    let file = written(&folder, "0.dicrotic-result.json", &lines[0]);
    let out = folder.join("grades.csv");
    told(&mut dicrotic(&["grade", &file, "--out", out.to_str().unwrap()]));
    let text = std::fs::read_to_string(&out).unwrap();
    let row = text.lines().nth(1).unwrap();
    for name in ["seed", "score", "minutes", "actions", "first_wrong"] {
        let at = table::HEAD.split(',').position(|head| head == name).unwrap();
        let cell = row.rsplit(',').nth(table::HEAD.split(',').count() - 1 - at).unwrap();
        let told = match &answers[0][name] {
            Value::String(text) => text.clone(),
            Value::Null => String::new(),
            Value::Number(n) if name == "minutes" => format!("{:.1}", n.as_f64().unwrap()),
            other => other.to_string(),
        };
        assert_eq!(cell, told, "{name}: {row}");
    }
    let missing = graded(&lines[1..2], &[]);
    assert!(missing[0]["error"].as_str().unwrap().contains("not at hand"), "{missing:?}");
}

#[test]
fn a_course_in_two_shuffled_halves_comes_to_the_same_lines() {
    let folder = scratch("halves");
    let scenario = written(&folder, "assignment.toml", ASSIGNMENT);
    let (arguments, lines) = (["--set", scenario.as_str()], course());
    let whole = graded(&lines, &arguments);
    // An order without a pattern: 7 and 17 have no common divisor.
    let order: Vec<usize> = (0..lines.len()).map(|k| (k * 7 + 3) % lines.len()).collect();
    let mut together = vec![Value::Null; lines.len()];
    for half in order.chunks(order.len().div_ceil(2)) {
        let part: Vec<String> = half.iter().map(|k| lines[*k].clone()).collect();
        for (mut answer, k) in graded(&part, &arguments).into_iter().zip(half) {
            answer["line"] = Value::from(k + 1);
            together[*k] = answer;
        }
    }
    assert_eq!(together, whole);
}

#[test]
fn an_answer_comes_before_the_next_line_is_there() {
    let mut run = started(&[]);
    let mut input = run.stdin.take().unwrap();
    let mut output = BufReader::new(run.stdout.take().unwrap());
    for k in 1..=3 {
        writeln!(input, "nothing\r").unwrap();
        input.flush().unwrap();
        let mut answer = String::new();
        output.read_line(&mut answer).unwrap();
        assert!(answer.starts_with(&format!("{{\"line\":{k},\"error\":")), "{answer}");
    }
    drop(input);
    assert!(run.wait().unwrap().success());
    assert!(error_of(&mut dicrotic(&["grade", "--lines", "--out", "x.csv"])).contains("--out"));
    assert!(error_of(&mut dicrotic(&["grade", "x.json"])).contains("--out"));
}

#[test]
fn a_line_beyond_reason_is_passed_over_and_bytes_that_are_no_text_are_told() {
    let mut run = started(&[]);
    let mut input = run.stdin.take().unwrap();
    let writer = std::thread::spawn(move || {
        input.write_all(&b"x".repeat(6 << 20)).unwrap();
        input.write_all(b"\n\xff\xfe\x00\nlast\n").unwrap();
        input.write_all(&b"x".repeat(17 << 20)).unwrap();
    });
    let output = run.wait_with_output().unwrap();
    writer.join().unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 4, "{text}");
    assert!(lines[3].contains("17825792 bytes; a course's result has at most"), "{text}");
    assert!(lines[0].contains("6291456 bytes; a result has at most") && lines[1].contains("UTF-8"), "{text}");
}

#[test]
fn what_is_a_course_result_is_told_by_its_field_wherever_it_stands() {
    let (session, about) = attempt(0);
    let one: Value = serde_json::from_str(&result::write(&session, &about).unwrap()).unwrap();
    // A field of another's making before it pushes the format far down.
    let far = format!(
        "{{\"course\":\"c\",\"a_note\":\"{}\",\"results\":[{one}],\"version\":1,\"format\":\"dicrotic-course-result\"}}",
        "x".repeat(900)
    );
    // A student may be called anything, and an ordinary result stays one.
    let named = students::attempt_at(ASSIGNMENT, "dicrotic-course-result", 1, students::way(0));
    let named: Value = serde_json::from_str(&result::write(&named.0, &named.1).unwrap()).unwrap();
    let folder = scratch("lines-course");
    let scenario = written(&folder, "assignment.toml", ASSIGNMENT);
    let cut = &far[..far.len() - 3];
    let answers = graded(&[far.clone(), named.to_string(), cut.to_string()], &["--set", &scenario]);
    assert_eq!(answers.len(), 3, "{answers:?}");
    assert_eq!((&answers[0]["result"], &answers[0]["verified"]), (&Value::from(1), &Value::from("yes")));
    assert_eq!((answers[1].get("result"), &answers[1]["verified"]), (None, &Value::from("yes")));
    assert_eq!(answers[1]["student"], "dicrotic-course-result");
    assert!(answers[2]["error"].as_str().unwrap().contains("is cut short"), "{answers:?}");
    // As files too.
    for (name, text) in [("far.json", far), ("named.json", named.to_string())] {
        let file = written(&folder, name, text);
        let out = folder.join("grades.csv");
        told(&mut dicrotic(&["grade", &file, "--set", &scenario, "--out", out.to_str().unwrap()]));
        assert_eq!(std::fs::read_to_string(&out).unwrap().lines().count(), 2, "{name}");
    }
}
