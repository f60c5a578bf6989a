//! Where it is kept, so that nothing is lost.
//!
//! A [`Store`] holds texts under keys, as a browser's local storage does: one key is written whole or
//! not at all, nothing holds across two keys, and two tabs may work on the same texts without telling
//! each other. The [`Archive`] above it therefore never writes over a key. Each save is a new revision
//! under a new key, read back before it is called saved; the revisions it replaces go afterwards.
//!
//! Two revisions that do not know of each other are a [`Conflict`]: both stay. A text that cannot be
//! read is [`SetAside`]: listed, exported, never replaced and never removed.
//!
//! To this floor a body is a text. Clock and chance enter as arguments.

mod archive;
#[cfg(feature = "web")]
mod browser;
mod checksum;
mod envelope;
mod forget;
mod key;
mod known;
mod lineage;
mod load;
mod memory;
mod room;
mod save;
mod second_shelf;
mod token;
mod watched;

pub use archive::{Archive, Standing};
#[cfg(feature = "web")]
pub use browser::BrowserStore;
pub use envelope::{Record, Revision, SCHEMA, Unreadable};
pub use key::{Key, PREFIX, is_id, is_kind, is_record};
pub use lineage::Conflict;
pub use load::{Loaded, SetAside};
pub use memory::MemoryStore;
pub use save::{Outcome, SaveError};
pub use second_shelf::{Lying, Merged};
pub use token::{NoToken, Token};
pub use watched::{Note, Watched};

use std::fmt;

/// Texts under keys. One key is written whole or not at all; nothing more is asked.
pub trait Store {
    /// Every key that is ours to see, in any order; keys of others on the same origin may be among
    /// them.
    ///
    /// # Errors
    /// [`StoreError`] when the list cannot be had.
    fn keys(&self) -> Result<Vec<String>, StoreError>;

    /// Those of the keys that begin with `prefix`, in any order.
    ///
    /// # Errors
    /// As [`Store::keys`].
    fn keys_under(&self, prefix: &str) -> Result<Vec<String>, StoreError> {
        let mut keys = self.keys()?;
        keys.retain(|key| key.starts_with(prefix));
        Ok(keys)
    }

    /// Every key of ours but the probe's with its text, in the order of the keys, where that is quicker had at
    /// once than one by one; `None` where it is not, or cannot be had.
    fn texts(&self) -> Option<Vec<(String, String)>> {
        None
    }

    /// The text under `key`; `None` when there is none.
    ///
    /// # Errors
    /// [`StoreError`] when it cannot be told.
    fn read(&self, key: &str) -> Result<Option<String>, StoreError>;

    /// Puts `text` under `key`.
    ///
    /// # Errors
    /// [`StoreError`] when it was not taken; what was under `key` is then still there.
    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError>;

    /// Takes `key` and its text away; no error when there is none.
    ///
    /// # Errors
    /// [`StoreError`] when it could not be done.
    fn remove(&mut self, key: &str) -> Result<(), StoreError>;
}

/// So that a page can choose its store as it starts and still hold one kind of archive.
impl Store for Box<dyn Store> {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        (**self).keys()
    }
    fn keys_under(&self, prefix: &str) -> Result<Vec<String>, StoreError> {
        (**self).keys_under(prefix)
    }
    fn texts(&self) -> Option<Vec<(String, String)>> {
        (**self).texts()
    }
    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        (**self).read(key)
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        (**self).write(key, text)
    }
    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        (**self).remove(key)
    }
}

/// What a store may answer instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// The browser allows this page no storage at all.
    Refused,
    /// There is no room left.
    Full,
    /// The store took the text without complaint, but did not give the same text back.
    NotKept,
    /// Anything else, in the store's own words.
    Failed(String),
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Refused => write!(f, "this browser lets the page keep nothing"),
            Self::Full => write!(f, "there is no room left to keep more"),
            Self::NotKept => write!(f, "it was written, but did not read back the same"),
            Self::Failed(words) => write!(f, "the store failed: {words}"),
        }
    }
}

impl std::error::Error for StoreError {}
