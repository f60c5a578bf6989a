//! The key of one revision: what it is of, and which revision.

use super::token::Token;
use std::fmt;

/// What all our keys begin with; others may share the origin.
pub const PREFIX: &str = "fermentside/";

/// Written and removed again to learn whether a browser keeps anything; no record.
pub(super) const PROBE: &str = "fermentside/probe";

/// Where one revision lies. Written `fermentside/<kind>/<id>/<revision>/<token>`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Key {
    /// What sort of thing it is: one or more of a-z and `_`.
    pub kind: String,
    /// Which of them: one or more of A-Z, a-z, 0-9 and `-`.
    pub id: String,
    /// 1 for the first; greater than that of every revision known when it was written.
    pub revision: u32,
    /// Which revision: two tabs may write the same number.
    pub token: Token,
}

impl Key {
    /// The key that `text` is; `None` for any other text, even a near one.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.strip_prefix(PREFIX)?.split('/');
        let (kind, id) = (parts.next()?, parts.next()?);
        let (revision, token) = (parts.next()?, parts.next()?);
        // Written again, it must be the same text: no leading zero, no sign, nothing behind.
        let plain = !revision.starts_with(['0', '+']) && parts.next().is_none();
        (plain && is_kind(kind) && is_id(id)).then_some(())?;
        Some(Self {
            kind: kind.to_owned(),
            id: id.to_owned(),
            revision: revision.parse().ok()?,
            token: token.parse().ok()?,
        })
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{PREFIX}{}/{}/{}/{}", self.kind, self.id, self.revision, self.token)
    }
}

/// Whether `text` can name a kind: one or more of a-z and `_`.
#[must_use]
pub fn is_kind(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|b| b.is_ascii_lowercase() || b == b'_')
}

/// Whether `text` can be an id: one or more of A-Z, a-z, 0-9 and `-`.
#[must_use]
pub fn is_id(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-')
}

/// Whether what lies under a storage key is ours, and no probe.
pub(super) fn is_ours(key: &str) -> bool {
    key.starts_with(PREFIX) && key != PROBE
}

/// Whether a storage key is one of a record of ours, and not a probe or another program's.
#[must_use]
pub fn is_record(key: &str) -> bool {
    Key::read(key).is_some()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_back_what_it_writes() {
        let text = "fermentside/batch_note/A-1/12/00000000000000ff";
        let key = Key::read(text).expect("a key");
        assert_eq!((key.kind.as_str(), key.id.as_str(), key.revision), ("batch_note", "A-1", 12));
        assert_eq!(key.to_string(), text);
    }

    #[test]
    fn a_near_key_is_no_key() {
        for text in [
            "",
            PREFIX,
            PROBE,
            "other/batch/1/1/00000000000000ff",
            "fermentside/batch/1/1",
            "fermentside/batch/1/01/00000000000000ff",
            "fermentside/batch/1/+1/00000000000000ff",
            "fermentside/batch/1/0/00000000000000ff",
            "fermentside/batch/1/4294967296/00000000000000ff",
            "fermentside/batch/1/1/00000000000000FF",
            "fermentside/batch/1/1/00000000000000ff/",
            "fermentside/Batch/1/1/00000000000000ff",
            "fermentside/batch//1/00000000000000ff",
            "fermentside/batch/\u{e9}/1/00000000000000ff",
        ] {
            assert_eq!(Key::read(text), None, "{text}");
        }
    }
}
