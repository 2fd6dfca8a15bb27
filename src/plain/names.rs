//! Names of the variants of an enum, each written once: what is asked for by `name()` and what stands in JSON is the same.

/// `names! { Step { Count => "count" } }` gives `Step::name` and writes it out under that name.
macro_rules! names {
    ($kind:ident { $($variant:ident => $name:literal,)+ }) => {
        impl $kind {
            /// Its name in files and in the view.
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => $name,)+
                }
            }
        }

        impl serde::Serialize for $kind {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.name())
            }
        }
    };
}
pub(crate) use names;
