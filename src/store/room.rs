//! Taking away what has been replaced: after a save, and when there is no room.
//!
//! A failure here does no harm. What stays too long is named as replaced by what stands, so it is
//! never taken for more than it is.

use super::forget::take_out;
use super::key::Key;
use super::lineage::{Room, heads, to_spare};
use super::load::scan_replaced;
use super::{Revision, Store};
use crate::order::in_order;

/// After a save that was read back: of one thing, what is older than the parents of what stands.
pub(super) fn tidy(store: &mut dyn Store, all: &[Revision]) {
    for revision in to_spare(all, Room::Older) {
        // Tried again after the next save.
        let _ = store.remove(&revision.record.key().to_string());
    }
}

/// What may be given up in need, found once however often room is asked for.
///
/// Things of which something cannot be read are left alone, since what is replaced there may be the
/// best that is left.
pub(super) struct Spare {
    things: Vec<Vec<Revision>>,
}

impl Spare {
    /// Of all things; nothing where the store cannot be read.
    pub(super) fn of(store: &dyn Store) -> Self {
        let shelves = scan_replaced(store).map(|found| found.things).unwrap_or_default();
        let sound = shelves.into_iter().map(|(_, shelf)| shelf).filter(|s| s.unreadable.is_empty());
        Self { things: sound.map(|shelf| shelf.revisions).collect() }
    }

    /// Takes away what is so little missed. Whether anything went.
    pub(super) fn make(&mut self, store: &mut dyn Store, room: Room) -> bool {
        let mut gone = false;
        for revisions in &mut self.things {
            let keys = to_spare(revisions, room).into_iter().map(|r| r.record.key());
            for key in keys.collect::<Vec<_>>() {
                if store.remove(&key.to_string()).is_ok() {
                    gone = true;
                    revisions.retain(|r| r.record.token != key.token);
                }
            }
        }
        gone
    }

    /// Takes away all that lies there of the things that were deleted longest ago, but not of the one that is
    /// to be saved under `key`: an eighth of them and at least one, so that a change of many edits does not
    /// ask for each. Which those were; what cannot be taken away is left alone from then on.
    pub(super) fn forget_oldest(
        &mut self,
        store: &mut dyn Store,
        key: &Key,
    ) -> Vec<(String, String)> {
        self.things.retain(|all| {
            all.iter().all(|r| (&r.record.kind, &r.record.id) != (&key.kind, &key.id))
        });
        let deleted = |revisions: &[Revision]| {
            let standing = heads(revisions);
            let deleted = standing.iter().all(|head| head.record.deleted);
            standing.iter().map(|head| head.record.at).max().filter(|_| deleted)
        };
        let dated = std::mem::take(&mut self.things).into_iter().map(|all| (deleted(&all), all));
        let (dated, living): (Vec<_>, Vec<_>) = dated.partition(|(at, _)| at.is_some());
        self.things.extend(living.into_iter().map(|(_, all)| all));
        let some = (dated.len() / 8).max(1);
        let mut gone = vec![];
        for (_, revisions) in in_order(dated, |a, b| a.0.cmp(&b.0)) {
            if gone.len() == some {
                self.things.push(revisions);
                continue;
            }
            let keys = revisions.iter().map(|r| r.record.key().to_string()).collect();
            if take_out(store, keys) == Ok(true) {
                gone.extend(revisions.into_iter().take(1).map(|r| (r.record.kind, r.record.id)));
            }
        }
        gone
    }
}
