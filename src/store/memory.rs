//! A store that lasts as long as the page: for browsers that refuse theirs, and for tests.

use super::{Store, StoreError};
use crate::order::ByKey;

/// Keeps texts in memory, without limit. It never fails.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct MemoryStore {
    texts: ByKey<String, String>,
}

impl MemoryStore {
    /// An empty one.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }
}

impl Store for MemoryStore {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        Ok(self.texts.iter().map(|(key, _)| key.clone()).collect())
    }
    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        Ok(self.texts.get(&key.to_owned()).cloned())
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        self.texts.insert(key.to_owned(), text.to_owned());
        Ok(())
    }
    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        self.texts.remove(&key.to_owned());
        Ok(())
    }
}
