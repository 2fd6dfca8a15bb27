//! Values for the page: a shorter `json!`. serde_json's own puts every insertion into a table where it is written; here a
//! table is listed first and made by one function.

use serde::Serialize;
use serde_json::{Map, Value};

/// The fields of a JSON object.
pub type Fields = Map<String, Value>;

/// A value as JSON has it; null for what JSON cannot hold.
#[inline(never)]
pub fn given<T: Serialize + ?Sized>(value: &T) -> Value {
    serde_json::to_value(value).unwrap_or_default()
}

/// An object of these fields; the values are taken.
#[inline(never)]
pub fn object(listed: &mut [(&'static str, Value)]) -> Value {
    let mut all = Fields::new();
    for (key, value) in listed {
        all.insert((*key).into(), value.take());
    }
    Value::Object(all)
}

/// An array of these values, which are taken.
#[inline(never)]
pub fn list(listed: &mut [Value]) -> Value {
    Value::Array(listed.iter_mut().map(Value::take).collect())
}

/// The fields of an object from pairs. Collecting into a map would bring a sort of its own at every such place.
#[inline(never)]
pub fn fields(pairs: &mut dyn Iterator<Item = (String, Value)>) -> Fields {
    let mut all = Fields::new();
    for (key, value) in pairs {
        all.insert(key, value);
    }
    all
}

/// Puts a field into an object where there is something to put; an object without it has no such field.
pub fn put<T: Serialize>(table: &mut Value, key: &'static str, what: Option<T>) {
    if let (Some(what), Value::Object(fields)) = (what, table) {
        fields.insert(key.into(), given(&what));
    }
}

/// JSON as it is written: `json!({"x": 1.0, "parts": ["a", "b"]})`. Keys are literals.
macro_rules! json {
    (@object [$($done:tt)*]) => {
        $crate::plain::object(&mut [$($done)*])
    };
    (@object [$($done:tt)*] $key:literal : null $(, $($rest:tt)*)?) => {
        $crate::plain::json!(@object [$($done)* ($key, serde_json::Value::Null),] $($($rest)*)?)
    };
    (@object [$($done:tt)*] $key:literal : {$($inner:tt)*} $(, $($rest:tt)*)?) => {
        $crate::plain::json!(@object [$($done)* ($key, $crate::plain::json!({$($inner)*})),] $($($rest)*)?)
    };
    (@object [$($done:tt)*] $key:literal : [$($inner:tt)*] $(, $($rest:tt)*)?) => {
        $crate::plain::json!(@object [$($done)* ($key, $crate::plain::json!([$($inner)*])),] $($($rest)*)?)
    };
    (@object [$($done:tt)*] $key:literal : $value:expr $(, $($rest:tt)*)?) => {
        $crate::plain::json!(@object [$($done)* ($key, $crate::plain::given(&$value)),] $($($rest)*)?)
    };
    (null) => { serde_json::Value::Null };
    ({}) => { serde_json::Value::Object(Default::default()) };
    ([]) => { serde_json::Value::Array(Vec::new()) };
    ({$($inner:tt)*}) => { $crate::plain::json!(@object [] $($inner)*) };
    ([$($value:expr),* $(,)?]) => { $crate::plain::list(&mut [$($crate::plain::given(&$value)),*]) };
    ($value:expr) => { $crate::plain::given(&$value) };
}
pub(crate) use json;
