//! A tree asked for its values, as serde asks.

use crate::json::{Member, Tree, Wrong};
use serde::de::value::StrDeserializer;
use serde::de::{self, DeserializeSeed, Deserializer, Visitor};
use serde::forward_to_deserialize_any;

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
            Tree::Object(all) => {
                all.iter().for_each(|member| member.known.set(true));
                visitor.visit_map(Fields { rest: all.iter(), value: &Tree::Null })
            }
            _ => Err(Wrong::Kind),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        let Tree::Object(all) = self else { return Err(Wrong::Kind) };
        for member in all {
            member.known.set(names.contains(&member.name.as_str()));
        }
        visitor.visit_map(Fields { rest: all.iter(), value: &Tree::Null })
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
                [Member { name, value, known }] => {
                    known.set(true);
                    visitor.visit_enum(Variant { name, of: Some(value) })
                }
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
    rest: std::slice::Iter<'de, Member>,
    value: &'de Tree,
}

impl<'de> de::MapAccess<'de> for Fields<'de> {
    type Error = Wrong;

    fn next_key_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, Wrong> {
        let Some(member) = self.rest.next() else { return Ok(None) };
        self.value = &member.value;
        seed.deserialize(StrDeserializer::new(&member.name)).map(Some)
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
