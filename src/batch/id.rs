//! Identities.

use serde::{Deserialize, Serialize};
use std::fmt;

/// An identity: letters, digits and hyphens, made once and never reused.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Id(String);

/// A text that can be no identity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IdError;

impl fmt::Display for IdError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "an identity is 1 to 64 letters, digits or hyphens")
    }
}

impl std::error::Error for IdError {}

impl Id {
    /// From a text of 1 to 64 letters, digits or hyphens.
    ///
    /// # Errors
    /// [`IdError`] for anything else.
    pub fn new(text: impl Into<String>) -> Result<Self, IdError> {
        let text = text.into();
        let fits = (1..=64).contains(&text.len())
            && text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-');
        if fits { Ok(Self(text)) } else { Err(IdError) }
    }

    /// From eight random bytes.
    #[must_use]
    pub fn random(bytes: [u8; 8]) -> Self {
        let digits = bytes.into_iter().flat_map(|byte| [byte >> 4, byte & 15]);
        Self(digits.filter_map(|digit| char::from_digit(digit.into(), 16)).collect())
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for Id {
    type Error = IdError;
    fn try_from(text: String) -> Result<Self, IdError> {
        Self::new(text)
    }
}

impl From<Id> for String {
    fn from(id: Id) -> String {
        id.0
    }
}
