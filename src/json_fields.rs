//! A record's fields, listed once: the list makes the type, its writing and its reading.

use crate::json::{Tree, Wrong};
use crate::json_unknown::Unknown;
use serde::ser::{Serialize, SerializeStruct};

/// Reads a stored record, field by field: a reader derived for each would be 25 kB more. With it comes
/// what the text holds that this version has no name for.
///
/// # Errors
/// When the text is no JSON, or its fields are refused by `T`.
pub fn read_record<T: FromFields>(text: &str) -> Result<(T, Unknown), serde_json::Error> {
    let tree = serde_json::from_str::<Tree>(text)?;
    let record = T::from_fields(&tree).map_err(Wrong::told)?;
    Ok((record, Unknown::left_in(tree)))
}

/// What is read out of the named fields of an object; made by `record!`.
pub trait FromFields: Sized {
    /// Reads it.
    ///
    /// # Errors
    /// When the tree is no object, or a field is missing, there twice, or refused.
    fn from_fields(tree: &Tree) -> Result<Self, Wrong>;
}

/// Makes a record of its fields. Before each stands how it is stored:
///
/// - `must`: always there;
/// - `may`: missing where nothing was said, which is the type's default;
/// - `must_record`, `may_record`: the same for a record within the record.
macro_rules! record {
    (
        $(#[$about:meta])*
        pub struct $record:ident { $($(#[$doc:meta])* $how:ident $field:ident: $kind:ty,)* }
    ) => {
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq)]
        pub struct $record {
            $($(#[$doc])* pub $field: $kind,)*
        }

        impl $crate::json_fields::FromFields for $record {
            fn from_fields(tree: &$crate::json::Tree) -> Result<Self, $crate::json::Wrong> {
                Ok(Self { $($field: tree.$how(stringify!($field))?,)* })
            }
        }

        impl serde::Serialize for $record {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                let mut fields = to.serialize_struct(stringify!($record), 1)?;
                $($crate::json_fields::$how(&mut fields, stringify!($field), &self.$field)?;)*
                serde::ser::SerializeStruct::end(fields)
            }
        }

        impl<'de> serde::Deserialize<'de> for $record {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let tree = $crate::json::Tree::deserialize(from)?;
                $crate::json_fields::FromFields::from_fields(&tree)
                    .map_err(serde::de::Error::custom)
            }
        }
    };
}
pub(crate) use record;

/// Writes a field that is always there.
///
/// # Errors
/// The serializer's.
pub fn must<S: SerializeStruct, T: Serialize>(
    fields: &mut S,
    name: &'static str,
    value: &T,
) -> Result<(), S::Error> {
    fields.serialize_field(name, value)
}

/// Writes a field, unless it says nothing.
///
/// # Errors
/// The serializer's.
pub fn may<S: SerializeStruct, T: Serialize + Default + PartialEq>(
    fields: &mut S,
    name: &'static str,
    value: &T,
) -> Result<(), S::Error> {
    if *value == T::default() { Ok(()) } else { fields.serialize_field(name, value) }
}

pub use may as may_record;
pub use must as must_record;
