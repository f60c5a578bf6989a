//! Stored JSON read by way of one tree, on any floor.
//!
//! Reading every record straight from its text compiles the whole reader anew for each of its types,
//! 60 kB in all. Here the text is read once into a tree without types, and only the tree is asked for
//! fields. What is accepted is the same, but that a record is an object and never a list.

use crate::json_fields::FromFields;
use serde::de::{self, Deserialize, DeserializeOwned, Deserializer, Visitor};
use std::cell::Cell;
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
    let pair = |member: Member| match member.value {
        Tree::Text(text) => Ok((member.name, text)),
        _ => Err(kind()),
    };
    pairs.into_iter().map(pair).collect()
}

/// A value as it was written; numbers as `serde_json` tells them apart, names in their order and twice
/// where they stand twice.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)] // each variant is named for what it holds
pub enum Tree {
    Null,
    Bool(bool),
    Whole(u64),
    Negative(i64),
    Number(f64),
    Text(String),
    List(Vec<Tree>),
    Object(Vec<Member>),
}

/// One member of an object.
#[derive(Clone, Debug)]
pub struct Member {
    /// Its name.
    pub name: String,
    /// What stands behind it.
    pub value: Tree,
    /// Whether it has been asked for.
    pub known: Cell<bool>,
}

impl Member {
    /// A member nobody has asked for.
    #[must_use]
    pub fn new(name: String, value: Tree) -> Self {
        Self { name, value, known: Cell::new(false) }
    }
}

/// Two members are one when they say the same, whoever asked.
impl PartialEq for Member {
    fn eq(&self, other: &Self) -> bool {
        self.name == other.name && self.value == other.value
    }
}

impl Tree {
    /// The field of that name, if it is there.
    fn field(&self, name: &'static str) -> Result<Option<&Self>, Wrong> {
        let Self::Object(all) = self else { return Err(Wrong::Kind) };
        let mut found = None;
        for member in all.iter().filter(|member| member.name == name) {
            member.known.set(true);
            if found.replace(&member.value).is_some() {
                return Err(Wrong::Twice(name));
            }
        }
        Ok(found)
    }

    /// The field of that name, read.
    ///
    /// # Errors
    /// When it is missing, there twice, or refused.
    #[inline(never)] // a copy for every field is what this saves
    pub fn must<T: DeserializeOwned>(&self, name: &'static str) -> Result<T, Wrong> {
        T::deserialize(self.field(name)?.ok_or(Wrong::Missing(name))?)
    }

    /// The same, or what stands for nothing said where it is missing.
    ///
    /// # Errors
    /// When it is there twice, or refused.
    #[inline(never)] // as above
    pub fn may<T: DeserializeOwned + Default>(&self, name: &'static str) -> Result<T, Wrong> {
        self.field(name)?.map_or_else(|| Ok(T::default()), T::deserialize)
    }

    /// The record of that name, read.
    ///
    /// # Errors
    /// As [`Tree::must`].
    pub fn must_record<T: FromFields>(&self, name: &'static str) -> Result<T, Wrong> {
        T::from_fields(self.field(name)?.ok_or(Wrong::Missing(name))?)
    }

    /// The same, or none where it is missing or `null`.
    ///
    /// # Errors
    /// As [`Tree::may`].
    pub fn may_record<T: FromFields>(&self, name: &'static str) -> Result<Option<T>, Wrong> {
        match self.field(name)? {
            None | Some(Self::Null) => Ok(None),
            Some(tree) => T::from_fields(tree).map(Some),
        }
    }
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
        while let Some((name, value)) = object.next_entry()? {
            all.push(Member::new(name, value));
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
#[allow(missing_docs)] // its words say it
pub enum Wrong {
    Value(String),
    Kind,
    Missing(&'static str),
    Twice(&'static str),
}

impl Wrong {
    pub(crate) fn told(self) -> serde_json::Error {
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
