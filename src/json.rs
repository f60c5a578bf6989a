//! Stored JSON read by way of one tree, on any floor.
//!
//! Reading every record straight from its text compiles the whole reader anew for each of its types,
//! 60 kB in all. Here the text is read once into a tree without types, and only the tree is asked for
//! fields. What is accepted is the same, but that a record is an object and never a list.

use serde::de::value::StrDeserializer;
use serde::de::{self, Deserialize, DeserializeOwned, DeserializeSeed, Deserializer, Visitor};
use serde::forward_to_deserialize_any;
use std::fmt;

/// Reads a stored text.
///
/// # Errors
/// When the text is no JSON, or its values are refused by `T`.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, serde_json::Error> {
    T::deserialize(&serde_json::from_str::<Tree>(text)?).map_err(Wrong::told)
}

/// Reads an object of texts alone, as it is written by [`write_texts`](crate::json_texts::write_texts).
///
/// # Errors
/// When it is anything else.
pub fn read_texts(text: &str) -> Result<Vec<(String, String)>, serde_json::Error> {
    let kind = || Wrong::Kind.told();
    let Tree::Object(pairs) = serde_json::from_str(text)? else { return Err(kind()) };
    let pair = |(name, value)| match value {
        Tree::Text(text) => Ok((name, text)),
        _ => Err(kind()),
    };
    pairs.into_iter().map(pair).collect()
}

/// A value as it was written; numbers as `serde_json` tells them apart, names in their order and twice
/// where they stand twice.
enum Tree {
    Null,
    Bool(bool),
    Whole(u64),
    Negative(i64),
    Number(f64),
    Text(String),
    List(Vec<Tree>),
    Object(Vec<(String, Tree)>),
}

struct Grower;

impl<'de> Visitor<'de> for Grower {
    type Value = Tree;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Tree, E> {
        Ok(Tree::Bool(value))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Tree, E> {
        Ok(Tree::Whole(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Tree, E> {
        Ok(Tree::Negative(value))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Tree, E> {
        Ok(Tree::Number(value))
    }

    fn visit_str<E>(self, value: &str) -> Result<Tree, E> {
        Ok(Tree::Text(value.to_owned()))
    }

    fn visit_seq<A: de::SeqAccess<'de>>(self, mut list: A) -> Result<Tree, A::Error> {
        let mut all = vec![];
        while let Some(value) = list.next_element()? {
            all.push(value);
        }
        Ok(Tree::List(all))
    }

    fn visit_map<A: de::MapAccess<'de>>(self, mut object: A) -> Result<Tree, A::Error> {
        let mut all = vec![];
        while let Some(entry) = object.next_entry()? {
            all.push(entry);
        }
        Ok(Tree::Object(all))
    }
}

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Grower)
    }
}

/// Why a tree was refused.
#[derive(Debug)]
enum Wrong {
    Value(String),
    Kind,
    Missing(&'static str),
    Twice(&'static str),
}

impl Wrong {
    fn told(self) -> serde_json::Error {
        de::Error::custom(self)
    }
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Value(why) => f.write_str(why),
            Self::Kind => f.write_str("a value of another kind, or a name that is not known"),
            Self::Missing(name) => write!(f, "no {name}"),
            Self::Twice(name) => write!(f, "{name} twice"),
        }
    }
}

impl std::error::Error for Wrong {}

impl de::Error for Wrong {
    fn custom<T: fmt::Display>(why: T) -> Self {
        Self::Value(why.to_string())
    }

    fn invalid_type(_: de::Unexpected<'_>, _: &dyn de::Expected) -> Self {
        Self::Kind
    }

    fn invalid_value(_: de::Unexpected<'_>, _: &dyn de::Expected) -> Self {
        Self::Kind
    }

    fn unknown_variant(_: &str, _: &'static [&'static str]) -> Self {
        Self::Kind
    }

    fn missing_field(name: &'static str) -> Self {
        Self::Missing(name)
    }

    fn duplicate_field(name: &'static str) -> Self {
        Self::Twice(name)
    }
}

impl<'de> Deserializer<'de> for &'de Tree {
    type Error = Wrong;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self {
            Tree::Null => visitor.visit_unit(),
            Tree::Bool(value) => visitor.visit_bool(*value),
            Tree::Whole(value) => visitor.visit_u64(*value),
            Tree::Negative(value) => visitor.visit_i64(*value),
            Tree::Number(value) => visitor.visit_f64(*value),
            Tree::Text(text) => visitor.visit_borrowed_str(text),
            Tree::List(_) => self.deserialize_seq(visitor),
            Tree::Object(_) => self.deserialize_map(visitor),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self {
            Tree::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self {
            Tree::List(all) => visitor.visit_seq(Items(all.iter())),
            _ => Err(Wrong::Kind),
        }
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self {
            Tree::Object(all) => visitor.visit_map(Fields { rest: all.iter(), value: &Tree::Null }),
            _ => Err(Wrong::Kind),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        self.deserialize_map(visitor)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        match self {
            Tree::Text(name) => visitor.visit_enum(Variant { name, of: None }),
            Tree::Object(all) => match all.as_slice() {
                [(name, of)] => visitor.visit_enum(Variant { name, of: Some(of) }),
                _ => Err(Wrong::Kind),
            },
            _ => Err(Wrong::Kind),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        visitor.visit_unit()
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit
        unit_struct tuple tuple_struct identifier
    }
}

struct Items<'de>(std::slice::Iter<'de, Tree>);

impl<'de> de::SeqAccess<'de> for Items<'de> {
    type Error = Wrong;

    fn next_element_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Wrong> {
        self.0.next().map(|value| seed.deserialize(value)).transpose()
    }
}

struct Fields<'de> {
    rest: std::slice::Iter<'de, (String, Tree)>,
    value: &'de Tree,
}

impl<'de> de::MapAccess<'de> for Fields<'de> {
    type Error = Wrong;

    fn next_key_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Wrong> {
        let Some((name, value)) = self.rest.next() else { return Ok(None) };
        self.value = value;
        seed.deserialize(StrDeserializer::new(name)).map(Some)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, Wrong> {
        seed.deserialize(self.value)
    }
}

/// A variant by its name, with what stands behind it.
struct Variant<'de> {
    name: &'de str,
    of: Option<&'de Tree>,
}

impl<'de> de::EnumAccess<'de> for Variant<'de> {
    type Error = Wrong;
    type Variant = Self;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self), Wrong> {
        Ok((seed.deserialize(StrDeserializer::new(self.name))?, self))
    }
}

impl<'de> de::VariantAccess<'de> for Variant<'de> {
    type Error = Wrong;

    fn unit_variant(self) -> Result<(), Wrong> {
        if self.of.is_none() { Ok(()) } else { Err(Wrong::Kind) }
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, Wrong> {
        seed.deserialize(self.of.ok_or(Wrong::Kind)?)
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Result<V::Value, Wrong> {
        Err(Wrong::Kind)
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        _: V,
    ) -> Result<V::Value, Wrong> {
        Err(Wrong::Kind)
    }
}
