//! The stored text of one revision, and how to tell a sound one from a damaged or a newer one.
//!
//! Three parts, each begun on its own line; the body is the rest, byte for byte:
//!
//! ```text
//! fermentside 1 171 9f3c2a11
//! {"kind":"reading","id":"a1","revision":2,"token":"…","parents":["…"],"older":[],"at":"…","deleted":false}
//! {"gravity":1.012}
//! ```
//!
//! The first line gives the schema, the bytes that follow the line, and a CRC-32 over the schema and
//! those bytes. **That line has the same form in every schema to come**, so that a program can tell a
//! newer text from a damaged one. One changed byte or a lost end is always noticed: the CRC finds any
//! error within 32 bits, the count any loss.

use super::StoreError;
use super::checksum::crc32;
use super::key::Key;
use super::token::Token;
use crate::quantity::Moment;
use serde::{Deserialize, Serialize};
use std::fmt;

/// The schema written by this program. Texts of a greater one are kept but not read.
pub const SCHEMA: u32 = 1;

/// The first word of every stored text.
const MARK: &str = "fermentside";

/// One thing as it was saved at one time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// What sort of thing it is: one or more of a-z and `_`.
    pub kind: String,
    /// Which of them: one or more of A-Z, a-z, 0-9 and `-`.
    pub id: String,
    /// What was saved, as it was given; empty when `deleted`.
    pub body: String,
    /// 1 for the first save of this thing, more for later ones.
    pub revision: u32,
    /// Which revision this is.
    pub token: Token,
    /// When it was saved, by the clock of the device.
    pub at: Moment,
    /// Whether this revision says that the thing was deleted.
    pub deleted: bool,
}

impl Record {
    /// Whether both say the same, whoever saved it when.
    #[must_use]
    pub fn says_the_same(&self, other: &Self) -> bool {
        self.deleted == other.deleted && self.body == other.body
    }

    /// The key under which it lies.
    #[must_use]
    pub fn key(&self) -> Key {
        let (kind, id) = (self.kind.clone(), self.id.clone());
        Key { kind, id, revision: self.revision, token: self.token }
    }
}

/// A record, and what it replaces.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Revision {
    /// What was saved.
    pub record: Record,
    /// What it was made from: none for a first save, one as a rule, several when it settles a conflict.
    pub parents: Vec<Token>,
    /// What else lay there that its parents had replaced. With it, an old revision that outlived a
    /// younger one is not taken for a conflict.
    pub older: Vec<Token>,
}

/// Why a stored text is set aside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Its first line or its header is not as this program writes them.
    Form,
    /// Bytes are missing, or there are too many.
    Length,
    /// The checksum does not fit: something changed.
    Checksum,
    /// It is sound, but belongs under another key.
    Misplaced,
    /// The key begins like ours, but has another form.
    UnknownKey,
    /// A newer program wrote it.
    Newer {
        /// The schema of that program; greater than [`SCHEMA`].
        schema: u32,
    },
    /// The store did not give it out.
    NotRead(StoreError),
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Form => write!(f, "damaged: it does not have the form of a stored text"),
            Self::Length => write!(f, "damaged: a part of it is missing or doubled"),
            Self::Checksum => write!(f, "damaged: its checksum does not fit"),
            Self::Misplaced => write!(f, "damaged: it lies under the key of another"),
            Self::UnknownKey => write!(f, "its key has an unknown form"),
            Self::Newer { schema } => {
                write!(f, "a newer version of this page wrote it (schema {schema}, here {SCHEMA})")
            }
            Self::NotRead(why) => write!(f, "it could not be read: {why}"),
        }
    }
}

impl std::error::Error for Unreadable {}

#[derive(Serialize, Deserialize)]
struct Header {
    kind: String,
    id: String,
    revision: u32,
    token: Token,
    parents: Vec<Token>,
    older: Vec<Token>,
    at: Moment,
    deleted: bool,
}

fn checksum(schema: u32, rest: &str) -> u32 {
    crc32(schema.to_le_bytes().into_iter().chain(rest.bytes()))
}

impl Revision {
    /// The text to store.
    ///
    /// # Errors
    /// [`StoreError::Failed`] should the header not become JSON; no value is known for which that
    /// happens.
    pub fn encode(&self) -> Result<String, StoreError> {
        let Record { kind, id, body, revision, token, at, deleted } = &self.record;
        let header = Header {
            kind: kind.clone(),
            id: id.clone(),
            revision: *revision,
            token: *token,
            parents: self.parents.clone(),
            older: self.older.clone(),
            at: *at,
            deleted: *deleted,
        };
        let mut rest =
            serde_json::to_string(&header).map_err(|why| StoreError::Failed(why.to_string()))?;
        rest.push('\n');
        rest.push_str(body);
        Ok(sealed(SCHEMA, &rest))
    }

    /// Reads a stored text back.
    ///
    /// # Errors
    /// [`Unreadable`]: damaged, or newer than this program.
    pub fn decode(text: &str) -> Result<Self, Unreadable> {
        let (schema, rest) = unseal(text)?;
        if schema > SCHEMA {
            return Err(Unreadable::Newer { schema });
        }
        let (header, body) = rest.split_once('\n').ok_or(Unreadable::Form)?;
        let h: Header = crate::json::read(header).map_err(|_| Unreadable::Form)?;
        let Header { kind, id, revision, token, parents, older, at, deleted } = h;
        let body = body.to_owned();
        let record = Record { kind, id, body, revision, token, at, deleted };
        Ok(Self { record, parents, older })
    }

    /// Reads the text that lay under `key`.
    ///
    /// # Errors
    /// As [`Revision::decode`], and [`Unreadable::Misplaced`] when it tells of another key.
    pub fn decode_under(key: &Key, text: &str) -> Result<Self, Unreadable> {
        let revision = Self::decode(text)?;
        let fits = revision.record.key() == *key;
        if fits { Ok(revision) } else { Err(Unreadable::Misplaced) }
    }

    /// Everything this one stands in place of.
    pub fn replaces(&self) -> impl Iterator<Item = Token> + '_ {
        self.parents.iter().chain(&self.older).copied()
    }
}

/// `rest` behind a first line for it.
fn sealed(schema: u32, rest: &str) -> String {
    format!("{MARK} {schema} {} {:08x}\n{rest}", rest.len(), checksum(schema, rest))
}

/// The schema, and what follows the first line, if the line fits it.
fn unseal(text: &str) -> Result<(u32, &str), Unreadable> {
    let (line, rest) = text.split_once('\n').ok_or(Unreadable::Form)?;
    let mut words = line.split(' ').skip(1);
    let schema: u32 = words.next().and_then(|w| w.parse().ok()).ok_or(Unreadable::Form)?;
    let length: usize = words.next().and_then(|w| w.parse().ok()).ok_or(Unreadable::Form)?;
    let sum = words.next().and_then(|w| u32::from_str_radix(w, 16).ok()).ok_or(Unreadable::Form)?;
    // One spelling only, so that no change of the line goes unseen.
    if schema == 0 || line != format!("{MARK} {schema} {length} {sum:08x}") {
        return Err(Unreadable::Form);
    }
    if length != rest.len() {
        return Err(Unreadable::Length);
    }
    if sum != checksum(schema, rest) {
        return Err(Unreadable::Checksum);
    }
    Ok((schema, rest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn moments() -> impl Strategy<Value = Moment> {
        (1990..2100, 1..=12, 1..=28, 0..24, 0..60, -600..=840).prop_map(|(y, m, d, h, min, off)| {
            Moment::from_local(&format!("{y:04}-{m:02}-{d:02}T{h:02}:{min:02}"), off)
                .expect("a moment")
        })
    }

    fn tokens() -> impl Strategy<Value = Vec<Token>> {
        prop::collection::vec(any::<[u8; 8]>().prop_map(Token::from_random), 0..4)
    }

    fn revisions() -> impl Strategy<Value = Revision> {
        let names = ("[a-z_]{1,9}", "[A-Za-z0-9-]{1,9}", any::<String>());
        let which = (1..=u32::MAX, any::<[u8; 8]>(), moments(), any::<bool>());
        (names, which, tokens(), tokens()).prop_map(|(names, which, parents, older)| {
            let ((kind, id, body), (revision, token, at, deleted)) = (names, which);
            let token = Token::from_random(token);
            Revision {
                record: Record { kind, id, body, revision, token, at, deleted },
                parents,
                older,
            }
        })
    }

    proptest! {
        #[test]
        fn reads_back_what_it_writes(revision in revisions()) {
            let text = revision.encode().expect("encodes");
            let back = Revision::decode_under(&revision.record.key(), &text).expect("decodes");
            prop_assert_eq!(&back, &revision);
            // Equal moments may differ in their offset; equal texts do not.
            prop_assert_eq!(back.encode(), Ok(text));
        }

        #[test]
        fn notices_any_changed_byte(revision in revisions(), at in any::<prop::sample::Index>(), to in any::<u8>()) {
            let text = revision.encode().expect("encodes");
            let mut bytes = text.clone().into_bytes();
            let at = at.index(bytes.len());
            prop_assume!(bytes[at] != to);
            bytes[at] = to;
            // A store of texts gives back a text; where the bytes are none, it has marks in their place.
            let changed = String::from_utf8_lossy(&bytes).into_owned();
            // Such a mark that was there before may be the same again.
            prop_assume!(changed != text);
            let found = Revision::decode(&changed);
            prop_assert!(matches!(found, Err(Unreadable::Form | Unreadable::Length | Unreadable::Checksum)), "{found:?}");
        }

        #[test]
        fn notices_a_lost_end(revision in revisions(), end in any::<prop::sample::Index>()) {
            let text = revision.encode().expect("encodes");
            let rest = String::from_utf8_lossy(&text.as_bytes()[..end.index(text.len())]).into_owned();
            // Such a mark that was there before and is cut through is the same again: nothing is lost.
            prop_assume!(rest != text);
            let found = Revision::decode(&rest);
            // A letter cut through becomes a mark of three bytes, and so may leave the length as it was.
            prop_assert!(matches!(found, Err(Unreadable::Form | Unreadable::Length | Unreadable::Checksum)), "{found:?}");
        }

        #[test]
        fn never_panics(text in any::<String>(), first in "fermentside [0-9]{1,11} [0-9]{1,21} [0-9a-f]{8}") {
            prop_assert!(Revision::decode(&text).is_err());
            let _ = Revision::decode(&format!("{first}\n{text}"));
        }
    }

    #[test]
    fn a_sound_text_of_a_newer_schema_is_newer_not_damaged() {
        let text = sealed(7, "whatever that will be");
        assert_eq!(Revision::decode(&text), Err(Unreadable::Newer { schema: 7 }));
        let broken = text.replace("whatever", "Whatever");
        assert_eq!(Revision::decode(&broken), Err(Unreadable::Checksum));
    }
}
