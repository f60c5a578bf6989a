//! A wish to change what is recorded, and why it may be refused.

use super::entry::{Entry, EntryKey};
use super::id::Id;
use std::fmt;

/// One entry written or taken out.
// There are a few at a time, and an undo list of a few: the room a large entry takes is nothing.
#[allow(clippy::large_enum_variant)]
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Write this entry, new or in place of its earlier self.
    Put(Id, Entry),
    /// Take this entry out.
    Remove(EntryKey),
}

impl Edit {
    /// The entry it is about.
    #[must_use]
    pub fn key(&self) -> EntryKey {
        match self {
            Self::Put(id, entry) => EntryKey { kind: entry.kind(), id: id.clone() },
            Self::Remove(key) => key.clone(),
        }
    }
}

/// A wish to change what is recorded: edits that are made in their order, all of them or none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Change {
    edits: Vec<Edit>,
}

impl Change {
    /// One entry written.
    #[must_use]
    pub fn put(id: Id, entry: Entry) -> Self {
        Self { edits: vec![Edit::Put(id, entry)] }
    }

    /// One entry taken out.
    #[must_use]
    pub fn remove(key: EntryKey) -> Self {
        Self { edits: vec![Edit::Remove(key)] }
    }

    /// All of these, in this order. A record comes after the batch it belongs to.
    #[must_use]
    pub fn all(edits: impl IntoIterator<Item = Edit>) -> Self {
        Self { edits: edits.into_iter().collect() }
    }

    /// The edits, in the order in which they are made.
    #[must_use]
    pub fn edits(&self) -> &[Edit] {
        &self.edits
    }

    /// The edits, given out.
    pub(super) fn into_edits(self) -> Vec<Edit> {
        self.edits
    }
}

/// The most characters of a name: a line or two on a small phone.
pub const LONGEST_NAME: usize = 60;

/// Why a change was not made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rejected {
    /// A batch or a piece of gear needs a name.
    NoName,
    /// The name is longer than [`LONGEST_NAME`].
    NameTooLong,
    /// Not one letter or digit of the name shows.
    NameUnseen,
    /// The batch it belongs to is not there.
    NoSuchBatch,
    /// There is nothing of that identity.
    NothingThere,
    /// A batch or a reading still uses the instrument.
    InUse,
    /// A reading with neither gravity nor temperature nor note.
    EmptyReading,
    /// Bottled before it was started.
    BeforeStart,
}

impl fmt::Display for Rejected {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoName => "a name is needed",
            Self::NameTooLong => return write!(f, "a name has at most {LONGEST_NAME} characters"),
            Self::NameUnseen => "a name needs a letter or a digit that shows",
            Self::NoSuchBatch => "the batch it belongs to is not there",
            Self::NothingThere => "there is nothing of that identity",
            Self::InUse => "a batch or a reading still uses this instrument",
            Self::EmptyReading => "a reading needs a gravity, a temperature or a note",
            Self::BeforeStart => "bottling day lies before brewing day",
        })
    }
}

impl std::error::Error for Rejected {}
