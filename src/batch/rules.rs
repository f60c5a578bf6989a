//! What the journal takes and what it refuses.

use super::change::{Edit, Rejected};
use super::entry::{Entry, Kind};
use super::journal::Journal;

impl Journal {
    /// Whether an edit fits in the journal as it is.
    pub(super) fn check(&self, edit: &Edit) -> Result<(), Rejected> {
        match edit {
            Edit::Put(_, entry) => self.check_entry(entry),
            Edit::Remove(key) if !self.has(key) => Err(Rejected::NothingThere),
            Edit::Remove(key) if key.kind == Kind::Hydrometer && self.uses(&key.id) => {
                Err(Rejected::InUse)
            }
            Edit::Remove(_) => Ok(()),
        }
    }

    fn check_entry(&self, entry: &Entry) -> Result<(), Rejected> {
        if let Some(batch) = entry.batch()
            && self.batch(batch).is_none()
        {
            return Err(Rejected::NoSuchBatch);
        }
        match entry {
            Entry::Batch(heading) if heading.name.trim().is_empty() => Err(Rejected::NoName),
            Entry::Hydrometer(item) if item.name.trim().is_empty() => Err(Rejected::NoName),
            Entry::Bottles(item) if item.name.trim().is_empty() => Err(Rejected::NoName),
            Entry::Sugar(item) if item.name.trim().is_empty() => Err(Rejected::NoName),
            Entry::Reading(reading)
                if reading.as_read.is_none()
                    && reading.refractometer.is_none()
                    && reading.added.is_none()
                    && reading.beer.is_none()
                    && reading.room.is_none()
                    && reading.note.trim().is_empty() =>
            {
                Err(Rejected::EmptyReading)
            }
            Entry::Bottling(record)
                if self.batch(&record.batch).is_some_and(|heading| record.at < heading.started) =>
            {
                Err(Rejected::BeforeStart)
            }
            _ => Ok(()),
        }
    }
}
