//! One save: a new key, read back, and only then called saved.

use super::envelope::{Record, Revision};
use super::key::{Key, is_id, is_kind};
use super::known::{Known, KnownThings};
use super::lineage::{Conflict, Room, ancestors, heads};
use super::load::{Shelf, prefix_of, scan};
use super::room::{Spare, tidy};
use super::token::Token;
use super::{Store, StoreError};
use crate::quantity::Moment;
use std::fmt;

/// How many replaced revisions that are there no more a revision names.
const NAMED_OF_GONE: usize = 8;

/// What came of a save or a deletion that was looked at again afterwards and found done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It stands alone.
    Saved(Record),
    /// It is as safe, but something different stands beside it that was saved elsewhere, as in another
    /// tab. What was saved now is `shown`.
    SavedBeside(Conflict),
    /// Deleting only: there was no room even to note that the thing is deleted, so what it said (here)
    /// was taken out of the store itself. It can be had back by saving this again.
    TakenAway(Record),
}

impl Outcome {
    /// What was saved, or taken away.
    #[must_use]
    pub fn record(&self) -> &Record {
        match self {
            Self::Saved(record) | Self::TakenAway(record) => record,
            Self::SavedBeside(conflict) => &conflict.shown,
        }
    }
}

/// Why something was not saved. All that was saved before is as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveError {
    /// The store would not.
    Store(StoreError),
    /// A newer version of the page has saved this thing; here it can only be looked at.
    Newer {
        /// The schema of that version.
        schema: u32,
    },
    /// The kind is not of a-z and `_`, or the id not of A-Z, a-z, 0-9 and `-`.
    BadName,
    /// The token has been used before; each try needs a new one.
    TokenUsed,
    /// The revision to keep is not there.
    NotThere,
}

impl From<StoreError> for SaveError {
    fn from(why: StoreError) -> Self {
        Self::Store(why)
    }
}

impl fmt::Display for SaveError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Store(why) => why.fmt(f),
            Self::Newer { schema } => {
                write!(f, "a newer version of this page has saved this (schema {schema})")
            }
            Self::BadName => write!(f, "a kind is of a-z and _, an id of A-Z, a-z, 0-9 and -"),
            Self::TokenUsed => write!(f, "this token has been used before"),
            Self::NotThere => write!(f, "the version to keep is not there"),
        }
    }
}

impl std::error::Error for SaveError {}

/// Which thing a save is of, when it is and under which token.
#[derive(Clone, Copy)]
pub(super) struct Stamp<'a> {
    pub(super) kind: &'a str,
    pub(super) id: &'a str,
    pub(super) at: Moment,
    pub(super) token: Token,
    /// The least number that it gets.
    pub(super) least: u32,
    /// What it replaced where it was saved before.
    pub(super) over: &'a [Token],
}

/// Saves `body` over what this archive knows of the thing; `None` deletes it.
pub(super) fn save(
    store: &mut dyn Store,
    things: &mut KnownThings,
    stamp: Stamp<'_>,
    body: Option<&str>,
) -> Result<Outcome, SaveError> {
    let (shelf, known) = look(store, things, stamp)?;
    let mut parents: Vec<Token> = known.token.into_iter().collect();
    // A twin that says the same as what was on the screen is replaced along with it.
    let base = shelf.revisions.iter().find(|r| Some(r.record.token) == known.token);
    if let Some(base) = base {
        let twins =
            heads(&shelf.revisions).into_iter().filter(|h| h.record.says_the_same(&base.record));
        parents.extend(twins.map(|h| h.record.token).filter(|&t| Some(t) != known.token));
    }
    put(store, things, stamp, body, (shelf, known, parents))
}

/// Deletes the thing, in a store without any room as well: deleting is how a person makes room.
pub(super) fn delete(
    store: &mut dyn Store,
    things: &mut KnownThings,
    stamp: Stamp<'_>,
) -> Result<Outcome, SaveError> {
    match save(store, things, stamp, None) {
        Err(SaveError::Store(StoreError::Full)) => take_away(store, things, stamp),
        other => other,
    }
}

/// Removes the thing, if its one text is the one that was on the screen. Anything else there might come
/// up in its place or has not been seen.
fn take_away(
    store: &mut dyn Store,
    things: &mut KnownThings,
    stamp: Stamp<'_>,
) -> Result<Outcome, SaveError> {
    let (shelf, known) = look(store, things, stamp)?;
    let full = Err(SaveError::Store(StoreError::Full));
    let [only] = shelf.revisions.as_slice() else { return full };
    if Some(only.record.token) != known.token || shelf.tokens.len() > 1 {
        return full;
    }
    let key = only.record.key().to_string();
    // Whether it is gone decides, not what the store says.
    let _ = store.remove(&key);
    if store.read(&key)?.is_some() {
        return full;
    }
    things.remove(&(stamp.kind.to_owned(), stamp.id.to_owned()));
    Ok(Outcome::TakenAway(only.record.clone()))
}

/// Saves what the revision `keep` says over all that was known to stand.
pub(super) fn resolve(
    store: &mut dyn Store,
    things: &mut KnownThings,
    stamp: Stamp<'_>,
    keep: Token,
) -> Result<Outcome, SaveError> {
    let (shelf, known) = look(store, things, stamp)?;
    let kept = shelf.revisions.iter().find(|r| r.record.token == keep);
    let kept = kept.map(|r| r.record.clone()).ok_or(SaveError::NotThere)?;
    // What came since has not been seen by anyone here, so it is not settled.
    let standing = heads(&shelf.revisions);
    let told = |h: &Revision| h.record.token == keep || known.seen.contains(&h.record.token);
    let told: Vec<&Revision> = standing.iter().copied().filter(|h| told(h)).collect();
    let settled = |h: &Revision| told.iter().any(|t| t.record.says_the_same(&h.record));
    let parents = standing.iter().filter(|h| settled(h)).map(|h| h.record.token).collect();
    let body = (!kept.deleted).then_some(kept.body.as_str());
    put(store, things, stamp, body, (shelf, known, parents))
}

/// What lies there of the thing now, and what this archive knew of it.
fn look(
    store: &dyn Store,
    things: &KnownThings,
    stamp: Stamp<'_>,
) -> Result<(Shelf, Known), SaveError> {
    let Stamp { kind, id, token, .. } = stamp;
    if !is_kind(kind) || !is_id(id) {
        return Err(SaveError::BadName);
    }
    let name = (kind.to_owned(), id.to_owned());
    let shelf = scan(store, &prefix_of(kind, id))?.things.remove(&name).unwrap_or_default();
    if let Some(schema) = shelf.newer() {
        return Err(SaveError::Newer { schema });
    }
    let known = things.get(&name).cloned().unwrap_or_default();
    let named = shelf.revisions.iter().flat_map(Revision::replaces);
    let mut used = named
        .chain(shelf.tokens.iter().copied())
        .chain(known.token)
        .chain(known.over.iter().copied());
    if used.any(|t| t == token) {
        return Err(SaveError::TokenUsed);
    }
    drop(used);
    Ok((shelf, known))
}

fn put(
    store: &mut dyn Store,
    things: &mut KnownThings,
    stamp: Stamp<'_>,
    body: Option<&str>,
    (mut shelf, known, parents): (Shelf, Known, Vec<Token>),
) -> Result<Outcome, SaveError> {
    let Stamp { kind, id, at, token, least, over } = stamp;
    let mut older = ancestors(&parents, &shelf.revisions);
    // What was on the screen may have been damaged or taken away since; what it replaced still is.
    older.extend(
        known
            .over
            .iter()
            .chain(over)
            .filter(|t| !older.contains(t) && !parents.contains(t))
            .copied()
            .collect::<Vec<_>>(),
    );
    // A few that are gone stay named, nearest first: copies made elsewhere may be of them.
    let mut named = NAMED_OF_GONE;
    older.retain(|t| {
        // A copy loses nothing on its way back.
        let there = shelf.tokens.contains(t) || over.contains(t);
        let gone = !there && named > 0;
        named -= usize::from(gone);
        there || gone
    });
    let record = Record {
        kind: kind.to_owned(),
        id: id.to_owned(),
        body: body.unwrap_or_default().to_owned(),
        revision: shelf.highest.max(known.revision).saturating_add(1).max(least),
        token,
        at,
        deleted: body.is_none(),
    };
    let revision = Revision { record: record.clone(), parents, older };
    keep(store, things, &record.key(), &revision.encode()?)?;

    shelf.revisions.push(revision);
    let (ours, others): (Vec<_>, Vec<_>) =
        heads(&shelf.revisions).into_iter().partition(|h| h.record.token == token);
    let standing = [ours, others].concat();
    things.insert((kind.to_owned(), id.to_owned()), Known::of(&standing));
    let outcome = match Conflict::among(&standing) {
        None => Outcome::Saved(record),
        Some(conflict) => Outcome::SavedBeside(conflict),
    };
    tidy(store, &shelf.revisions);
    Ok(outcome)
}

/// Writes `text` under the new `key` and reads it back, making room where there is none. What was deleted
/// goes last, whole, and the longest deleted first.
fn keep(
    store: &mut dyn Store,
    things: &mut KnownThings,
    key: &Key,
    text: &str,
) -> Result<(), StoreError> {
    let name = &key.to_string();
    let mut result = write_and_read(store, name, text);
    if result != Err(StoreError::Full) {
        return result;
    }
    let mut spare = Spare::of(store);
    for room in [Room::Older, Room::Spare] {
        if result == Err(StoreError::Full) && spare.make(store, room) {
            result = write_and_read(store, name, text);
        }
    }
    while result == Err(StoreError::Full) {
        let gone = spare.forget_oldest(store, key);
        if gone.is_empty() {
            break;
        }
        for name in &gone {
            things.remove(name);
        }
        result = write_and_read(store, name, text);
    }
    result
}

/// What the store holds afterwards decides, not what it said.
fn write_and_read(store: &mut dyn Store, key: &str, text: &str) -> Result<(), StoreError> {
    let told = store.write(key, text);
    let back = store.read(key);
    if matches!(&back, Ok(Some(back)) if back == text) {
        return Ok(());
    }
    if told.is_ok() || back != Ok(None) {
        // It will not be called saved, so it should not turn up later either. The key is new and ours.
        let _ = store.remove(key);
    }
    told?;
    back?;
    Err(StoreError::NotKept)
}
