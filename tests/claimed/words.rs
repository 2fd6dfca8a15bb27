//! The English texts of the catalogue.

use fluent_syntax::ast::{Entry, PatternElement};
use std::collections::BTreeMap;

/// `message.attribute` to text.
pub fn english() -> BTreeMap<String, String> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/www/texts/en/later/faults.ftl");
    let text = std::fs::read_to_string(path).unwrap();
    let resource = fluent_syntax::parser::parse(text.as_str()).map_err(|(_, errors)| errors).unwrap();
    let mut words = BTreeMap::new();
    for entry in &resource.body {
        let Entry::Message(message) = entry else { continue };
        for attribute in &message.attributes {
            let text: String = attribute
                .value
                .elements
                .iter()
                .map(|element| match element {
                    PatternElement::TextElement { value } => *value,
                    PatternElement::Placeable { .. } => panic!("{path}: these words have no places"),
                })
                .collect();
            words.insert(format!("{}.{}", message.id.name, attribute.id.name), text);
        }
    }
    words
}
