//! Names out of one of our own lists, as they come back from another thread.

use super::error::FIELDS;
use crate::assess::skill::{Got, SKILLS};
use crate::scenario::fault;
use serde::de::{Error, Unexpected};
use serde::{Deserialize, Deserializer};

fn one_of<'de, D: Deserializer<'de>>(
    name: &str,
    known: impl FnOnce(&str) -> Option<&'static str>,
) -> Result<&'static str, D::Error> {
    known(name).ok_or_else(|| D::Error::invalid_value(Unexpected::Str(name), &"a name of ours"))
}

/// The name of a fault of the catalogue.
pub fn fault<'de, D: Deserializer<'de>>(from: D) -> Result<&'static str, D::Error> {
    one_of::<D>(&String::deserialize(from)?, |name| fault::named(name).map(|f| f.id))
}

/// The name of a field that can differ.
pub fn field<'de, D: Deserializer<'de>>(from: D) -> Result<&'static str, D::Error> {
    one_of::<D>(&String::deserialize(from)?, |name| FIELDS.into_iter().find(|field| *field == name))
}

/// Skills with their evidence.
pub fn skills<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<(&'static str, Got)>, D::Error> {
    let named = |(name, got): (String, Got)| {
        Ok((one_of::<D>(&name, |name| SKILLS.into_iter().find(|skill| *skill == name))?, got))
    };
    Vec::<(String, Got)>::deserialize(from)?.into_iter().map(named).collect()
}
