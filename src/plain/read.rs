//! Serde's deserialiser over a [`Plain`] value. Each method goes only to what can be right and refuses the rest itself: what
//! it would hand to a visitor in vain, the visitor's code for it would have to be carried for.

use super::{Entry, Kind, Plain, Unread};
use serde::de::{
    DeserializeSeed, Deserializer, EnumAccess, Error, Expected, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, VariantAccess, Visitor,
};

impl Plain {
    #[inline(never)]
    fn refuse(&self, expected: &dyn Expected) -> Unread {
        let found = match &self.kind {
            Kind::Null => Unexpected::Other("null"),
            Kind::Bool(on) => Unexpected::Bool(*on),
            Kind::Below(n) => Unexpected::Signed(*n),
            Kind::Whole(n) => Unexpected::Unsigned(*n),
            Kind::Float(n) => Unexpected::Float(*n),
            Kind::Text(text) => Unexpected::Str(text),
            Kind::List(_) => Unexpected::Seq,
            Kind::Table(_) => Unexpected::Map,
        };
        Unread::invalid_type(found, expected)
    }

    fn number(&self) -> Option<f64> {
        match self.kind {
            Kind::Below(n) => Some(n as f64),
            Kind::Whole(n) => Some(n as f64),
            Kind::Float(n) => Some(n),
            _ => None,
        }
    }
}

/// Methods that read one kind of number.
macro_rules! whole {
    ($($name:ident)*) => {$(
        #[inline(never)]
        fn $name<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
            match self.kind {
                Kind::Whole(n) => visitor.visit_u64(n),
                Kind::Below(n) => Err(Unread::invalid_value(Unexpected::Signed(n), &visitor)),
                _ => Err(self.refuse(&visitor)),
            }
        }
    )*};
}
macro_rules! signed {
    ($($name:ident)*) => {$(
        #[inline(never)]
        fn $name<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
            match self.kind {
                Kind::Whole(n) => visitor.visit_u64(n),
                Kind::Below(n) => visitor.visit_i64(n),
                _ => Err(self.refuse(&visitor)),
            }
        }
    )*};
}
/// Methods that read something else.
macro_rules! only {
    ($($name:ident $kind:ident($found:ident) $visit:ident $with:expr;)*) => {$(
        #[inline(never)]
        fn $name<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
            match &self.kind {
                Kind::$kind($found) => visitor.$visit($with),
                _ => Err(self.refuse(&visitor)),
            }
        }
    )*};
}

impl<'de> Deserializer<'de> for &'de Plain {
    type Error = Unread;

    whole! { deserialize_u8 deserialize_u16 deserialize_u32 deserialize_u64 }
    signed! { deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 }
    only! {
        deserialize_bool Bool(on) visit_bool *on;
        deserialize_char Text(text) visit_str text;
        deserialize_str Text(text) visit_str text;
        deserialize_string Text(text) visit_str text;
        deserialize_identifier Text(text) visit_str text;
        deserialize_seq List(items) visit_seq Items { items, next: 0 };
        deserialize_map Table(entries) visit_map Fields { entries, next: 0 };
    }

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        match &self.kind {
            Kind::Null => visitor.visit_unit(),
            Kind::Bool(on) => visitor.visit_bool(*on),
            Kind::Below(n) => visitor.visit_i64(*n),
            Kind::Whole(n) => visitor.visit_u64(*n),
            Kind::Float(n) => visitor.visit_f64(*n),
            Kind::Text(text) => visitor.visit_str(text),
            Kind::List(items) => visitor.visit_seq(Items { items, next: 0 }),
            Kind::Table(entries) => visitor.visit_map(Fields { entries, next: 0 }),
        }
    }

    fn deserialize_f32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        self.deserialize_f64(visitor)
    }

    #[inline(never)]
    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        match self.number() {
            Some(n) => visitor.visit_f64(n),
            None => Err(self.refuse(&visitor)),
        }
    }

    fn deserialize_bytes<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        Err(self.refuse(&visitor))
    }

    fn deserialize_byte_buf<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        Err(self.refuse(&visitor))
    }

    #[inline(never)]
    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        match self.kind {
            Kind::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_unit<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        match self.kind {
            Kind::Null => visitor.visit_unit(),
            _ => Err(self.refuse(&visitor)),
        }
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Unread> {
        self.deserialize_unit(visitor)
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Unread> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, length: usize, visitor: V) -> Result<V::Value, Unread> {
        match &self.kind {
            // The visitor itself would take no notice of what is left over.
            Kind::List(items) if items.len() > length => Err(Unread::invalid_length(items.len(), &visitor)),
            _ => self.deserialize_seq(visitor),
        }
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        length: usize,
        visitor: V,
    ) -> Result<V::Value, Unread> {
        self.deserialize_tuple(length, visitor)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Unread> {
        self.deserialize_map(visitor)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Unread> {
        match &self.kind {
            Kind::Text(name) => visitor.visit_enum(Choice { name, content: None }),
            Kind::Table(entries) => match entries.as_slice() {
                [only] => visitor.visit_enum(Choice { name: &only.key, content: Some(&only.value) }),
                _ => Err(Unread::invalid_value(Unexpected::Map, &"a table with one key")),
            },
            _ => Err(self.refuse(&visitor)),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Unread> {
        visitor.visit_unit()
    }
}

/// A list being read.
struct Items<'de> {
    items: &'de [Plain],
    next: usize,
}

impl<'de> SeqAccess<'de> for Items<'de> {
    type Error = Unread;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Unread> {
        let Some(item) = self.items.get(self.next) else { return Ok(None) };
        let number = self.next;
        self.next += 1;
        seed.deserialize(item).map(Some).map_err(|e| e.within_item(number, item.at))
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.items.len().saturating_sub(self.next))
    }
}

/// A table being read; `next` is the entry whose key comes next.
struct Fields<'de> {
    entries: &'de [Entry],
    next: usize,
}

impl<'de> MapAccess<'de> for Fields<'de> {
    type Error = Unread;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Unread> {
        let Some(entry) = self.entries.get(self.next) else { return Ok(None) };
        self.next += 1;
        let key = IntoDeserializer::<Unread>::into_deserializer(entry.key.as_str());
        seed.deserialize(key).map(Some).map_err(|e| e.within(&entry.key, entry.at))
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Unread> {
        // Only ever called after a key.
        let Some(entry) = self.next.checked_sub(1).and_then(|k| self.entries.get(k)) else {
            return Err(Unread::custom("a value without a key"));
        };
        seed.deserialize(&entry.value).map_err(|e| e.within(&entry.key, entry.value.at))
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.entries.len().saturating_sub(self.next))
    }
}

/// One of several forms: its name, and what belongs to it.
struct Choice<'de> {
    name: &'de str,
    content: Option<&'de Plain>,
}

impl<'de> EnumAccess<'de> for Choice<'de> {
    type Error = Unread;
    type Variant = Content<'de>;

    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, Content<'de>), Unread> {
        let name = IntoDeserializer::<Unread>::into_deserializer(self.name);
        Ok((seed.deserialize(name)?, Content(self.content)))
    }
}

/// What belongs to one of several forms.
struct Content<'de>(Option<&'de Plain>);

impl<'de> Content<'de> {
    #[inline(never)]
    fn there(self) -> Result<&'de Plain, Unread> {
        self.0.ok_or_else(|| Unread::invalid_type(Unexpected::UnitVariant, &"something with fields"))
    }
}

impl<'de> VariantAccess<'de> for Content<'de> {
    type Error = Unread;

    #[inline(never)]
    fn unit_variant(self) -> Result<(), Unread> {
        match self.0 {
            None | Some(Plain { kind: Kind::Null, .. }) => Ok(()),
            Some(content) => Err(content.refuse(&"a name alone")),
        }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Unread> {
        seed.deserialize(self.there()?)
    }

    fn tuple_variant<V: Visitor<'de>>(self, length: usize, visitor: V) -> Result<V::Value, Unread> {
        self.there()?.deserialize_tuple(length, visitor)
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        _fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Unread> {
        self.there()?.deserialize_map(visitor)
    }
}
