//! Names of the variants of an enum, each written once: what is asked for by `name()` and what stands in JSON is the same.

/// `names! { Step { Count => "count" } }` gives `Step::name` and `Step::of_name`, and writes and reads it under that name.
macro_rules! names {
    ($kind:ident { $($variant:ident => $name:literal,)+ }) => {
        impl $kind {
            /// Its name in files and in the view.
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => $name,)+
                }
            }

            /// The one of this name.
            pub fn of_name(name: &str) -> Option<Self> {
                match name {
                    $($name => Some(Self::$variant),)+
                    _ => None,
                }
            }
        }

        impl serde::Serialize for $kind {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.name())
            }
        }

        impl<'de> serde::Deserialize<'de> for $kind {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let name = <String as serde::Deserialize>::deserialize(deserializer)?;
                Self::of_name(&name).ok_or_else(|| {
                    serde::de::Error::invalid_value(serde::de::Unexpected::Str(&name), &"one of its names")
                })
            }
        }
    };
}
pub(crate) use names;
