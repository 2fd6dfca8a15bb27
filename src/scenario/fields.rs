//! What may stand in a scenario file and in a course file, as a JSON schema for editors and as a table of all fields. Both come from
//! the structures that the files are read into, and their docs; there is no second list.

use super::plan::Plan;
use super::schema::Scenario;
use schemars::SchemaGenerator;
use schemars::generate::SchemaSettings;
use serde_json::Value;

/// Which file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum File {
    /// A scenario.
    Scenario,
    /// A course of several assignments.
    Course,
}

/// The schema (JSON Schema, draft 2020-12) of a file. It holds for the shape of a file: its fields, their types and names. What values
/// may be, and what fits together, is told when the file is checked.
pub fn schema(file: File) -> Value {
    let generator: SchemaGenerator = SchemaSettings::draft2020_12().into_generator();
    let (schema, title) = match file {
        File::Scenario => (generator.into_root_schema_for::<Scenario>(), "Scenario"),
        File::Course => (generator.into_root_schema_for::<Plan>(), "Course"),
    };
    let mut schema: Value = schema.into();
    // Formats as uint8 are no standard's; the bounds beside them are.
    tidy(&mut schema);
    schema["title"] = Value::from(format!("{title} file of Dicrotic {}", env!("CARGO_PKG_VERSION")));
    schema
}

fn tidy(value: &mut Value) {
    match value {
        Value::Object(fields) => {
            if fields.get("format").is_some_and(Value::is_string) {
                fields.remove("format");
            }
            if let Some(Value::String(about)) = fields.get_mut("description") {
                *about = without_links(about);
            }
            fields.values_mut().for_each(tidy);
        }
        Value::Array(items) => items.iter_mut().for_each(tidy),
        _ => {}
    }
}

/// A text of the docs with the words of its links in the place of the links.
fn without_links(about: &str) -> String {
    let mut plain = String::with_capacity(about.len());
    let mut rest = about;
    while let Some((before, link)) = rest.split_once('[') {
        plain += before;
        // `[]` and what is not closed is no link.
        let Some((words, after)) = link.split_once(']').filter(|(words, _)| !words.is_empty()) else {
            plain.push('[');
            rest = link;
            continue;
        };
        plain += words;
        rest = after
            .strip_prefix('(')
            .and_then(|target| target.split_once(')'))
            .map_or(after, |(_, after)| after);
    }
    plain + rest
}

/// A field of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Its path, as `bench.strap.tightness`; `[]` behind what may come several times.
    pub path: String,
    /// What may stand there.
    pub kind: String,
    /// Whether it must be there.
    pub needed: bool,
    /// What holds where it is left out, as JSON; empty where nothing does.
    pub usual: String,
    /// What it is.
    pub about: String,
}

/// All fields of a file by their names, a table before its own fields.
pub fn table(file: File) -> Vec<Row> {
    let schema = schema(file);
    let mut rows = Vec::new();
    walk(&schema, &schema, "", &mut rows);
    rows
}

/// A schema without references, and without the null that stands for what is left out.
fn resolved<'a>(root: &'a Value, schema: &'a Value) -> &'a Value {
    if let Some(name) = schema["$ref"].as_str() {
        return root.pointer(name.trim_start_matches('#')).map_or(schema, |found| resolved(root, found));
    }
    match schema["anyOf"].as_array() {
        Some(any) if any.iter().any(|one| one["type"] == "null") => {
            any.iter().find(|one| one["type"] != "null").map_or(schema, |one| resolved(root, one))
        }
        _ => schema,
    }
}

fn walk(root: &Value, schema: &Value, before: &str, rows: &mut Vec<Row>) {
    let needed =
        |name: &str| schema["required"].as_array().is_some_and(|all| all.iter().any(|one| one == name));
    for (name, field) in schema["properties"].as_object().into_iter().flatten() {
        let inner = resolved(root, field);
        let items = resolved(root, &inner["items"]);
        let listed = items["properties"].is_object();
        let path = format!("{before}{name}{}", if listed { "[]" } else { "" });
        let below = if listed { items } else { inner };
        let about =
            [field, inner].into_iter().find_map(|one| one["description"].as_str()).unwrap_or_default();
        let usual = &field["default"];
        let told = !(usual.is_null() || usual.is_object() || usual.as_array().is_some_and(Vec::is_empty));
        rows.push(Row {
            kind: kind(root, field),
            needed: needed(name),
            usual: if told { usual.to_string() } else { String::new() },
            about: about.split_whitespace().collect::<Vec<_>>().join(" "),
            path: path.clone(),
        });
        walk(root, below, &format!("{path}."), rows);
    }
}

/// What may stand in a place, in words.
fn kind(root: &Value, schema: &Value) -> String {
    let schema = resolved(root, schema);
    let names = |list: &[Value], key: Option<&str>| {
        let name = |one: &Value| key.map_or(one, |key| &one[key]).to_string();
        list.iter().map(name).collect::<Vec<_>>().join(", ")
    };
    if let Some(list) = schema["enum"].as_array() {
        return names(list, None);
    }
    if let Some(list) = schema["oneOf"].as_array() {
        let one = |one: &Value| match &one["const"] {
            Value::Null => kind(root, one),
            fixed => fixed.to_string(),
        };
        return list.iter().map(one).collect::<Vec<_>>().join(", ");
    }
    if let Some(list) = schema["anyOf"].as_array() {
        return list.iter().map(|one| kind(root, one)).collect::<Vec<_>>().join(" or ");
    }
    let of = |one: &str| match one {
        "object" => "table".to_string(),
        "array" if schema["maxItems"].is_u64() => {
            format!("{} of {}", schema["maxItems"], kind(root, &schema["items"]))
        }
        "array" => format!("list of {}", kind(root, &schema["items"])),
        "string" => "text".into(),
        "integer" => "whole number".into(),
        "boolean" => "true, false".into(),
        other => other.into(),
    };
    match &schema["type"] {
        Value::String(one) => of(one),
        Value::Array(all) => {
            let all = all.iter().filter_map(Value::as_str).filter(|one| *one != "null");
            all.map(of).collect::<Vec<_>>().join(" or ")
        }
        // A step of a script may be anything that a log may hold.
        _ => "step".into(),
    }
}
