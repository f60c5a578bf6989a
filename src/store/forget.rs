//! Forgetting what was deleted, so that the room it took is free again.
//!
//! The revision that says so goes last: whatever fails before, the thing stays deleted.

use super::key::PREFIX;
use super::known::KnownThings;
use super::lineage::{Room, heads, to_spare};
use super::load::{our_keys, prefix_of, read_all};
use super::{Revision, Store, StoreError};
use crate::quantity::Moment;

/// Takes away all revisions of a thing that stands as deleted. Whether it is gone.
pub(super) fn forget(
    store: &mut dyn Store,
    things: &mut KnownThings,
    kind: &str,
    id: &str,
) -> Result<bool, StoreError> {
    let keys = our_keys(store, &prefix_of(kind, id))?;
    let gone = take_out(store, keys)?;
    if gone {
        things.remove(&(kind.to_owned(), id.to_owned()));
    }
    Ok(gone)
}

/// Forgets all things that were known as deleted until `until`. How many are gone.
pub(super) fn sweep(
    store: &mut dyn Store,
    things: &mut KnownThings,
    until: Moment,
) -> Result<usize, StoreError> {
    let past = things.iter().filter(|(_, known)| known.deleted.is_some_and(|at| at <= until));
    let past: Vec<_> = past.map(|(name, _)| name.clone()).collect();
    if past.is_empty() {
        return Ok(0);
    }
    let all = our_keys(store, PREFIX)?;
    let mut gone = 0;
    for name in past {
        let prefix = prefix_of(&name.0, &name.1);
        let from = all.partition_point(|key| *key < prefix);
        let keys = all.iter().skip(from).take_while(|key| key.starts_with(&prefix));
        // What fails here is tried again at the next sweep.
        if take_out(store, keys.cloned().collect()) == Ok(true) {
            things.remove(&name);
            gone += 1;
        }
    }
    Ok(gone)
}

/// Takes away what lies under all keys of one thing, if it stands as deleted and all of it can be read.
pub(super) fn take_out(store: &mut dyn Store, keys: Vec<String>) -> Result<bool, StoreError> {
    let (shelves, whole) = read_all(store, keys);
    let Some((_, shelf)) = shelves.things.into_iter().next() else { return Ok(false) };
    let standing = heads(&shelf.revisions);
    let deleted = !standing.is_empty() && standing.iter().all(|head| head.record.deleted);
    if !whole || !deleted || !shelf.unreadable.is_empty() {
        return Ok(false);
    }
    let replaced = to_spare(&shelf.revisions, Room::Deleted);
    Ok(remove(store, &replaced)? && remove(store, &standing)?)
}

/// Removes revisions. Whether all are gone: what the store shows, twice, decides, not what it says.
fn remove(store: &mut dyn Store, revisions: &[&Revision]) -> Result<bool, StoreError> {
    let keys: Vec<String> = revisions.iter().map(|r| r.record.key().to_string()).collect();
    for key in keys.iter().chain(&keys) {
        if store.read(key)?.is_some() {
            let _ = store.remove(key);
        }
    }
    for key in &keys {
        if store.read(key)?.is_some() {
            return Ok(false);
        }
    }
    Ok(true)
}
