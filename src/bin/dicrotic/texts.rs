//! The page's words: the Fluent files of `www/texts/<language>/` as the JSON that the page loads.
//!
//! Every `*.ftl` of a language's folder goes into `texts/<language>.json`; each one of its folder `later/` becomes a
//! file of its own, `texts/<language>.<name>.json`, for a screen that not every visit opens. A message or attribute
//! without places is a string, any other one an array of strings and places: `{"v": "seconds"}` for a variable,
//! `{"s": "n", "k": {"one": [...], "other": [...]}, "d": "other"}` for a choice by a variable, `{"m": "key"}` for
//! another message. What the page cannot show (functions, terms, nested choices of anything but a variable) is refused
//! here, with file and message.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey};
use fluent_syntax::parser;
use serde_json::{Map, Value, json};

use crate::failure::{Failure, While};
use crate::site::Files;

/// The language that the others are held against.
const FIRST: &str = "en";
/// The folder of words that are brought when they are needed.
const LATER: &str = "later";

/// The bundle of the scenarios' titles, aims and briefs. The files themselves are written in [`FIRST`].
const SCENARIOS: &str = "scenarios";

/// The messages of one language: bundle name (empty for the first) to key to shown form.
type Bundles = BTreeMap<String, Map<String, Value>>;

/// Reads all languages below `folder` and puts their JSON into `files`.
///
/// `scenarios` are the ids of the scenarios: every other language tells title, aim and brief of each; `more` are the keys of what
/// else some of them say.
pub fn add(files: &mut Files, folder: &Path, scenarios: &[&str], more: &[String]) -> Result<(), Failure> {
    let mut languages: BTreeMap<String, Bundles> = BTreeMap::new();
    let listing = fs::read_dir(folder).while_doing(|| format!("reading {}", folder.display()))?;
    for entry in listing {
        let path = entry.while_doing(|| format!("reading {}", folder.display()))?.path();
        if path.is_dir() {
            let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            languages.insert(name, language(&path)?);
        }
    }
    let Some(first) = languages.get(FIRST) else {
        return Err(Failure::new(format!("{} has no folder {FIRST}", folder.display())));
    };
    for (name, other) in languages.iter().filter(|(name, _)| *name != FIRST) {
        let mut gaps = differences(first, other);
        gaps.extend(scenario_gaps(other, scenarios, more));
        if !gaps.is_empty() {
            let told = gaps.join("\n  ");
            return Err(Failure::new(format!("texts/{name} does not match texts/{FIRST}:\n  {told}")));
        }
    }
    for (name, bundles) in &languages {
        for (bundle, messages) in bundles {
            let file = if bundle.is_empty() {
                format!("texts/{name}.json")
            } else {
                format!("texts/{name}.{bundle}.json")
            };
            let bytes = serde_json::to_vec(messages).while_doing(|| format!("writing {file}"))?;
            files.insert(file, bytes);
        }
    }
    Ok(())
}

/// One language's folder.
fn language(folder: &Path) -> Result<Bundles, Failure> {
    let mut bundles = Bundles::new();
    bundles.insert(String::new(), Map::new());
    let mut paths =
        crate::stamp::files_below(folder).while_doing(|| format!("reading {}", folder.display()))?;
    paths.sort();
    for path in paths {
        let Some(name) = path.file_name().and_then(|n| n.to_str()).and_then(|n| n.strip_suffix(".ftl"))
        else {
            continue;
        };
        if name.starts_with('.') {
            continue;
        }
        let later = path.parent().and_then(Path::file_name).is_some_and(|parent| parent == LATER);
        let text = fs::read_to_string(&path).while_doing(|| format!("reading {}", path.display()))?;
        let bundle = bundles.entry(if later { name.to_string() } else { String::new() }).or_default();
        for (key, value) in
            messages(&text).map_err(|what| Failure::new(format!("{}: {what}", path.display())))?
        {
            if bundle.insert(key.clone(), value).is_some() {
                return Err(Failure::new(format!("{}: {key} stands twice", path.display())));
            }
        }
    }
    Ok(bundles)
}

/// The messages of one Fluent text, or what is wrong with it and where.
pub fn messages(text: &str) -> Result<Vec<(String, Value)>, String> {
    let resource = parser::parse(text).map_err(|(_, errors)| {
        let Some(error) = errors.first() else { return "not a Fluent text".to_string() };
        let line = text.get(..error.pos.start).unwrap_or_default().matches('\n').count() + 1;
        format!("line {line}: {error}")
    })?;
    let mut found = Vec::new();
    for entry in &resource.body {
        let message = match entry {
            Entry::Message(message) => message,
            Entry::Comment(_) | Entry::GroupComment(_) | Entry::ResourceComment(_) => continue,
            Entry::Term(term) => return Err(format!("-{}: terms are not used here", term.id.name)),
            Entry::Junk { content } => return Err(format!("cannot be read: {}", content.trim())),
        };
        let id = message.id.name;
        if let Some(value) = &message.value {
            found.push((id.to_string(), shown(value).map_err(|e| format!("{id}: {e}"))?));
        }
        for attribute in &message.attributes {
            let key = format!("{id}.{}", attribute.id.name);
            let value = shown(&attribute.value).map_err(|e| format!("{key}: {e}"))?;
            found.push((key, value));
        }
    }
    Ok(found)
}

/// A pattern as the page shows it.
fn shown(pattern: &Pattern<&str>) -> Result<Value, String> {
    let mut parts: Vec<Value> = Vec::new();
    for element in &pattern.elements {
        let part = match element {
            PatternElement::TextElement { value } => json!(value),
            PatternElement::Placeable { expression } => place(expression)?,
        };
        match (parts.last_mut(), &part) {
            (Some(Value::String(before)), Value::String(more)) => before.push_str(more),
            _ => parts.push(part),
        }
    }
    Ok(match parts.as_slice() {
        [] => json!(""),
        [Value::String(text)] => json!(text),
        _ => Value::Array(parts),
    })
}

fn place(expression: &Expression<&str>) -> Result<Value, String> {
    match expression {
        Expression::Inline(inline) => match inline {
            InlineExpression::StringLiteral { value } | InlineExpression::NumberLiteral { value } => {
                Ok(json!(value))
            }
            InlineExpression::VariableReference { id } => Ok(json!({"v": id.name})),
            InlineExpression::MessageReference { id, attribute: None } => Ok(json!({"m": id.name})),
            _ => Err("only variables, literals and other messages can stand in braces".into()),
        },
        Expression::Select { selector: InlineExpression::VariableReference { id }, variants } => {
            let mut choices = Map::new();
            let mut default = "";
            for variant in variants {
                let (VariantKey::Identifier { name: key } | VariantKey::NumberLiteral { value: key }) =
                    &variant.key;
                choices.insert((*key).to_string(), shown(&variant.value)?);
                if variant.default {
                    default = key;
                }
            }
            Ok(json!({"s": id.name, "k": choices, "d": default}))
        }
        Expression::Select { .. } => Err("only a variable can decide between forms".into()),
    }
}

/// The variables that a shown form fills in.
fn variables(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Array(parts) => parts.iter().for_each(|part| variables(part, found)),
        Value::Object(place) => {
            for name in ["v", "s"] {
                found.extend(place.get(name).and_then(Value::as_str).map(str::to_string));
            }
            if let Some(Value::Object(choices)) = place.get("k") {
                choices.values().for_each(|choice| variables(choice, found));
            }
        }
        _ => {}
    }
}

/// What one language has and the other lacks, message by message.
fn differences(first: &Bundles, other: &Bundles) -> Vec<String> {
    let mut told = Vec::new();
    let empty = Map::new();
    let names: BTreeSet<&String> = first.keys().chain(other.keys()).filter(|n| *n != SCENARIOS).collect();
    for name in names {
        let (a, b) = (first.get(name).unwrap_or(&empty), other.get(name).unwrap_or(&empty));
        told.extend(a.keys().filter(|key| !b.contains_key(*key)).map(|key| format!("{key} is missing")));
        told.extend(
            b.keys().filter(|key| !a.contains_key(*key)).map(|key| format!("{key} is not in {FIRST}")),
        );
        for (key, value) in a {
            let Some(theirs) = b.get(key) else { continue };
            let (mut wanted, mut there) = (BTreeSet::new(), BTreeSet::new());
            variables(value, &mut wanted);
            variables(theirs, &mut there);
            if let Some(stray) = there.difference(&wanted).next() {
                told.push(format!("{key}: ${stray} is not known there"));
            }
        }
    }
    told
}

/// What a language lacks of the scenarios' words, and what it has of scenarios that are not there.
fn scenario_gaps(other: &Bundles, scenarios: &[&str], more: &[String]) -> Vec<String> {
    let wanted: BTreeSet<String> = scenarios
        .iter()
        .flat_map(|id| ["title", "aim", "brief"].map(|part| format!("scenario-{id}.{part}")))
        .chain(more.iter().cloned())
        .collect();
    let there: BTreeSet<String> =
        other.get(SCENARIOS).map(|bundle| bundle.keys().cloned().collect()).unwrap_or_default();
    let missing = wanted.difference(&there).map(|key| format!("{key} is missing"));
    missing.chain(there.difference(&wanted).map(|key| format!("{key}: no such scenario"))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    #[test]
    fn messages_attributes_places_and_choices_take_the_form_that_the_page_shows() {
        let text = "# for translators\nplain = A line\nof = { $n } of { $all }\nstep =\n    .see = Seen { plain }.\n\
                    times = { $n ->\n    [0] never\n    [one] once\n   *[other] { $n } times\n}.\n";
        assert_eq!(
            messages(text).unwrap(),
            [
                ("plain".to_string(), json!("A line")),
                ("of".into(), json!([{"v": "n"}, " of ", {"v": "all"}])),
                ("step.see".into(), json!(["Seen ", {"m": "plain"}, "."])),
                (
                    "times".into(),
                    json!([{"s": "n", "k": {"0": "never", "one": "once", "other": [{"v": "n"}, " times"]}, "d": "other"}, "."])
                ),
            ]
        );
    }

    #[test]
    fn what_cannot_be_read_or_shown_is_refused_with_its_place() {
        for (text, expected) in [
            ("a = b\n= c\n", "line 2"),
            ("a = { $x ->\n [one] b\n}\n", "line"),
            ("a = { NUMBER($x) }\n", "a: only variables"),
            ("-brand = X\n", "-brand: terms"),
            ("a =\n    .see = { DATE($x) ->\n       *[other] b\n    }\n", "a.see: only a variable"),
        ] {
            let told = messages(text).unwrap_err();
            assert!(told.contains(expected), "{text}: {told}");
        }
    }

    #[test]
    fn a_language_with_gaps_strays_or_unknown_variables_is_named() {
        let folder = Scratch::new("texts");
        folder.write("en/page.ftl", "a = One { $n }\nb = Two\n    .see = Three\n");
        folder.write("en/later/more.ftl", "c = Later\n");
        folder.write("es/page.ftl", "a = Uno { $x }\nd = Cuatro\n");
        let told = add(&mut Files::new(), folder.path(), &[], &[]).unwrap_err().to_string();
        for part in
            ["texts/es", "b is missing", "b.see is missing", "c is missing", "d is not in en", "a: $x"]
        {
            assert!(told.contains(part), "{part}: {told}");
        }
        folder.write("es/page.ftl", "a = Uno { $n }\nb = Dos\n    .see = Tres\n");
        folder.write("es/later/more.ftl", "c = Luego\n");
        let words = "scenario-one =\n    .title = Uno\n    .aim = Dos\n    .brief = Tres\n";
        folder.write("es/later/scenarios.ftl", &format!("{words}scenario-two =\n    .title = X\n"));
        let told = add(&mut Files::new(), folder.path(), &["one"], &[]).unwrap_err().to_string();
        assert!(told.contains("scenario-two.title: no such scenario"), "{told}");
        folder.write("es/later/scenarios.ftl", words);
        let question = ["scenario-one.question".to_string()];
        let told = add(&mut Files::new(), folder.path(), &["one"], &question).unwrap_err().to_string();
        assert!(told.contains("scenario-one.question is missing"), "{told}");
        let mut files = Files::new();
        add(&mut files, folder.path(), &["one"], &[]).unwrap();
        let names: Vec<&str> = files.keys().map(String::as_str).collect();
        assert_eq!(
            names,
            [
                "texts/en.json",
                "texts/en.more.json",
                "texts/es.json",
                "texts/es.more.json",
                "texts/es.scenarios.json"
            ]
        );
        assert_eq!(String::from_utf8_lossy(&files["texts/es.more.json"]), r#"{"c":"Luego"}"#);
    }

    #[test]
    fn a_message_that_stands_twice_is_refused() {
        let folder = Scratch::new("texts-twice");
        folder.write("en/one.ftl", "a = One\n");
        folder.write("en/two.ftl", "a = Two\n");
        let told = add(&mut Files::new(), folder.path(), &[], &[]).unwrap_err().to_string();
        assert!(told.contains("two.ftl: a stands twice"), "{told}");
    }
}
