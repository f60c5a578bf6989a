//! What the journal takes and what it refuses.

use super::change::{Edit, LONGEST_NAME, Rejected};
use super::entry::{Entry, Kind};
use super::journal::Journal;

/// A letter or digit that can be seen: fillers of the Korean script count as letters and are blank.
fn shows(c: char) -> bool {
    c.is_alphanumeric() && !matches!(c, '\u{115F}' | '\u{1160}' | '\u{3164}' | '\u{FFA0}')
}

impl Journal {
    /// Whether an edit fits in the journal as it is.
    pub(super) fn check(&self, edit: &Edit) -> Result<(), Rejected> {
        match edit {
            Edit::Put(_, entry) => {
                self.check_name(edit, entry)?;
                self.check_entry(entry)
            }
            Edit::Remove(key) if !self.has(key) => Err(Rejected::NothingThere),
            Edit::Remove(key) if key.kind == Kind::Hydrometer && self.uses(&key.id) => {
                Err(Rejected::InUse)
            }
            Edit::Remove(_) => Ok(()),
        }
    }

    /// A name that is there already, of an earlier version of the page, is let be.
    fn check_name(&self, edit: &Edit, entry: &Entry) -> Result<(), Rejected> {
        let Some(name) = entry.name().map(str::trim) else { return Ok(()) };
        let wrong = if name.is_empty() {
            return Err(Rejected::NoName);
        } else if name.chars().count() > LONGEST_NAME {
            Rejected::NameTooLong
        } else if !name.chars().any(shows) {
            Rejected::NameUnseen
        } else {
            return Ok(());
        };
        let before = self.entry(&edit.key());
        let kept =
            before.as_ref().and_then(Entry::name).is_some_and(|before| before.trim() == name);
        if kept { Ok(()) } else { Err(wrong) }
    }

    fn check_entry(&self, entry: &Entry) -> Result<(), Rejected> {
        if let Some(batch) = entry.batch()
            && self.batch(batch).is_none()
        {
            return Err(Rejected::NoSuchBatch);
        }
        match entry {
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
