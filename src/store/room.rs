//! Taking away what has been replaced: after a save, and when there is no room.
//!
//! A failure here does no harm. What stays too long is named as replaced by what stands, so it is
//! never taken for more than it is.

use super::key::PREFIX;
use super::lineage::{Room, to_spare};
use super::load::scan;
use super::{Revision, Store};

/// After a save that was read back: of one thing, what is older than the parents of what stands.
pub(super) fn tidy(store: &mut dyn Store, all: &[Revision]) {
    for revision in to_spare(all, Room::Older) {
        // Tried again after the next save.
        let _ = store.remove(&revision.record.key().to_string());
    }
}

/// In need: from all things. Whether anything went.
///
/// Things of which something cannot be read are left alone, since what is replaced there may be the
/// best that is left.
pub(super) fn make(store: &mut dyn Store, room: Room) -> bool {
    let Ok(shelves) = scan(store, PREFIX) else { return false };
    let mut gone = false;
    for shelf in shelves.things.iter().map(|(_, shelf)| shelf).filter(|s| s.unreadable.is_empty()) {
        for revision in to_spare(&shelf.revisions, room) {
            gone |= store.remove(&revision.record.key().to_string()).is_ok();
        }
    }
    gone
}
