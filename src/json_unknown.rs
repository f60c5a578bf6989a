//! What a stored text holds that this version has no name for: a later version wrote it, and it is
//! written again as it was.

use crate::json::{Member, Tree};
use serde::ser::{Serialize, SerializeMap, Serializer};

/// The members of an object that were not asked for, and those of the objects within it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Unknown {
    members: Vec<(String, Left)>,
}

/// What is left of one member.
#[derive(Clone, Debug, PartialEq)]
enum Left {
    /// All of it.
    Whole(Tree),
    /// Some of the object that it is.
    Within(Unknown),
    /// Some of the objects that it lists, each beside what is known of it.
    Listed(Vec<(Tree, Unknown)>),
}

impl Unknown {
    /// What was not asked for in a tree that has been read.
    #[must_use]
    pub fn left_in(tree: Tree) -> Self {
        let Tree::Object(all) = tree else { return Self::default() };
        let left = |member: Member| {
            if !member.known.get() {
                return Some((member.name, Left::Whole(member.value)));
            }
            let left = match member.value {
                Tree::List(items) => Left::Listed(
                    items
                        .into_iter()
                        .map(|item| (known_of(&item), Self::left_in(item)))
                        .filter(|(_, left)| !left.is_empty())
                        .collect(),
                ),
                other => Left::Within(Self::left_in(other)),
            };
            (!left.is_empty()).then_some((member.name, left))
        };
        Self { members: all.into_iter().filter_map(left).collect() }
    }

    /// Nothing is left: this version knows all that was there.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.members.is_empty()
    }

    /// The text of an object with what is unknown put back, behind what is known. An object within that
    /// is there no more, or lists something else, takes what was unknown of it along.
    ///
    /// A whole number beyond 64 bits may lose its last digits.
    ///
    /// # Errors
    /// When the text is no JSON.
    pub fn put_back(&self, text: String) -> Result<String, serde_json::Error> {
        if self.is_empty() {
            return Ok(text);
        }
        let mut tree = serde_json::from_str(&text)?;
        self.add_to(&mut tree);
        serde_json::to_string(&tree)
    }

    fn add_to(&self, tree: &mut Tree) {
        let Tree::Object(all) = tree else { return };
        for (name, left) in &self.members {
            let there = all.iter_mut().find(|member| member.name == *name);
            match (left, there) {
                (Left::Whole(value), None) => {
                    all.push(Member::new(name.clone(), value.clone()));
                }
                (Left::Within(unknown), Some(member)) => unknown.add_to(&mut member.value),
                (Left::Listed(known), Some(Member { value: Tree::List(items), .. })) => {
                    for item in items {
                        if let Some((_, unknown)) =
                            known.iter().find(|(known, _)| same(known, item))
                        {
                            unknown.add_to(item);
                        }
                    }
                }
                _ => {}
            }
        }
    }
}

impl Left {
    fn is_empty(&self) -> bool {
        match self {
            Self::Whole(_) => false,
            Self::Within(unknown) => unknown.is_empty(),
            Self::Listed(items) => items.is_empty(),
        }
    }
}

/// What was asked for in a tree that has been read.
fn known_of(tree: &Tree) -> Tree {
    match tree {
        Tree::Object(all) => {
            let known = all.iter().filter(|member| member.known.get());
            let known = known.map(|m| Member::new(m.name.clone(), known_of(&m.value)));
            Tree::Object(known.collect())
        }
        Tree::List(items) => Tree::List(items.iter().map(known_of).collect()),
        other => other.clone(),
    }
}

/// Whether both say the same, in whatever order their members stand.
fn same(one: &Tree, other: &Tree) -> bool {
    match (one, other) {
        (Tree::Object(one), Tree::Object(other)) => {
            let in_other = |member: &Member| {
                let mut named = other.iter().filter(|twin| twin.name == member.name);
                named.any(|twin| same(&member.value, &twin.value))
            };
            one.len() == other.len() && one.iter().all(in_other)
        }
        (Tree::List(one), Tree::List(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(a, b)| same(a, b))
        }
        _ => one == other,
    }
}

impl Serialize for Tree {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Null => to.serialize_unit(),
            Self::Bool(value) => to.serialize_bool(*value),
            Self::Whole(value) => to.serialize_u64(*value),
            Self::Negative(value) => to.serialize_i64(*value),
            Self::Number(value) => to.serialize_f64(*value),
            Self::Text(text) => to.serialize_str(text),
            Self::List(items) => to.collect_seq(items),
            Self::Object(all) => {
                let mut object = to.serialize_map(None)?;
                for member in all {
                    object.serialize_entry(&member.name, &member.value)?;
                }
                object.end()
            }
        }
    }
}
