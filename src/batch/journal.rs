//! All entries together, and the one pure way to change them.

use super::change::{Change, Edit, Rejected};
use super::entry::{Entry, EntryKey, Kind};
use super::gear::{HydrometerItem, Settings};
use super::id::Id;
use super::pitch_record::PitchRecord;
use super::record::{BatchHeading, BottlingRecord, OpeningRecord, Reading};
use super::summary::Summary;
use crate::order::{ByKey, in_order};
use crate::science::hydrometer::Hydrometer;

/// What undoes edits, the last of them first.
fn undone(mut undo: Vec<Edit>) -> Change {
    undo.reverse();
    Change::all(undo)
}

/// Everything that is recorded.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Journal {
    entries: ByKey<EntryKey, Entry>,
}

impl Journal {
    /// A journal of entries read from the store. Entries whose batch is not (yet) there are kept.
    #[must_use]
    pub fn of(entries: impl IntoIterator<Item = (Id, Entry)>) -> Self {
        let keyed = entries.into_iter().map(|(id, e)| (EntryKey { kind: e.kind(), id }, e));
        Self { entries: keyed.collect() }
    }

    /// Makes a change, each edit in the journal as the one before left it, and gives back the change that
    /// undoes it.
    ///
    /// # Errors
    /// [`Rejected`], and the journal is as it was.
    pub fn apply(&mut self, change: Change) -> Result<Change, Rejected> {
        let mut undo = vec![];
        for edit in change.into_edits() {
            if let Err(why) = self.check(&edit) {
                self.take_as_it_is(undone(undo));
                return Err(why);
            }
            undo.push(self.make(edit));
        }
        Ok(undone(undo))
    }

    /// Makes a change without asking whether it fits, and gives back the one that undoes it. For what
    /// was once here or lies in the store: a change that is taken back, a version that is settled on.
    pub fn take_as_it_is(&mut self, change: Change) -> Change {
        undone(change.into_edits().into_iter().map(|edit| self.make(edit)).collect())
    }

    /// Makes one edit, and gives back the one that undoes it.
    fn make(&mut self, edit: Edit) -> Edit {
        let key = edit.key();
        let before = match edit {
            Edit::Put(_, entry) => self.entries.insert(key.clone(), entry),
            Edit::Remove(_) => self.entries.remove(&key),
        };
        before.map_or(Edit::Remove(key.clone()), |entry| Edit::Put(key.id, entry))
    }

    /// Whether an edit fits in the journal as it is.
    fn check(&self, edit: &Edit) -> Result<(), Rejected> {
        match edit {
            Edit::Put(_, entry) => self.check_entry(entry),
            Edit::Remove(key) if self.entries.get(key).is_none() => Err(Rejected::NothingThere),
            Edit::Remove(key) if key.kind == Kind::Hydrometer && self.uses(&key.id) => {
                Err(Rejected::InUse)
            }
            Edit::Remove(_) => Ok(()),
        }
    }

    /// Whether a batch or a reading is by this instrument, also a reading whose batch is taken out: it
    /// may come back, and its correction stands on the instrument.
    fn uses(&self, hydrometer: &Id) -> bool {
        self.entries.iter().any(|(_, entry)| match entry {
            Entry::Batch(heading) => heading.hydrometer == *hydrometer,
            Entry::Reading(reading) => reading.hydrometer == *hydrometer,
            _ => false,
        })
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

    /// Every record of a batch but its heading.
    pub(super) fn keys_of(&self, batch: &Id) -> Vec<EntryKey> {
        let of_batch = self.entries.iter().filter(|(_, entry)| entry.batch() == Some(batch));
        of_batch.map(|(key, _)| key.clone()).collect()
    }

    /// The entry of that key.
    #[must_use]
    pub fn entry(&self, key: &EntryKey) -> Option<&Entry> {
        self.entries.get(key)
    }

    /// The heading of a batch.
    #[must_use]
    pub fn batch(&self, id: &Id) -> Option<&BatchHeading> {
        match self.entries.get(&EntryKey { kind: Kind::Batch, id: id.clone() }) {
            Some(Entry::Batch(heading)) => Some(heading),
            _ => None,
        }
    }

    /// Every batch, by identity.
    pub fn batches(&self) -> impl Iterator<Item = (&Id, &BatchHeading)> {
        self.entries.iter().filter_map(|(key, entry)| match entry {
            Entry::Batch(heading) => Some((&key.id, heading)),
            _ => None,
        })
    }

    /// Every batch worked out, the latest begun first.
    #[must_use]
    pub fn summaries(&self) -> Vec<Summary> {
        let latest = self.batches_latest_first().into_iter();
        latest.filter_map(|(id, _)| Summary::of(self, id)).collect()
    }

    /// The batch in hand: the one chosen, else the latest of which no bottle has been opened, else the
    /// latest.
    #[must_use]
    pub fn in_hand(&self) -> Option<Id> {
        let chosen = self.settings().in_hand.filter(|id| self.batch(id).is_some());
        chosen.or_else(|| {
            let batches = self.batches_latest_first();
            let on_its_way = batches.iter().find(|(id, _)| self.openings(id).is_empty());
            on_its_way.or(batches.first()).map(|(id, _)| (*id).clone())
        })
    }

    /// Every batch, the latest begun first.
    #[must_use]
    pub fn batches_latest_first(&self) -> Vec<(&Id, &BatchHeading)> {
        in_order(self.batches().collect(), |a, b| b.1.started.cmp(&a.1.started))
    }

    /// Readings of a batch in the order they were taken.
    #[must_use]
    pub fn readings(&self, batch: &Id) -> Vec<(&Id, &Reading)> {
        let found = self
            .entries
            .iter()
            .filter_map(|(key, entry)| match entry {
                Entry::Reading(reading) if reading.batch == *batch => Some((&key.id, reading)),
                _ => None,
            })
            .collect();
        in_order(found, |a: &(&Id, &Reading), b| a.1.at.cmp(&b.1.at).then_with(|| a.0.cmp(b.0)))
    }

    /// When and how the yeast went in; the first time, should there be more.
    #[must_use]
    pub fn pitch(&self, batch: &Id) -> Option<(&Id, &PitchRecord)> {
        let of_batch = self.entries.iter().filter_map(|(key, entry)| match entry {
            Entry::Pitch(record) if record.batch == *batch => Some((&key.id, record)),
            _ => None,
        });
        of_batch.min_by_key(|(_, record)| record.at)
    }

    /// The bottling of a batch; the latest, should there be more.
    #[must_use]
    pub fn bottling(&self, batch: &Id) -> Option<(&Id, &BottlingRecord)> {
        let of_batch = self.entries.iter().filter_map(|(key, entry)| match entry {
            Entry::Bottling(record) if record.batch == *batch => Some((&key.id, record)),
            _ => None,
        });
        of_batch.max_by_key(|(_, record)| record.at)
    }

    /// Opened bottles of a batch, the latest first.
    #[must_use]
    pub fn openings(&self, batch: &Id) -> Vec<(&Id, &OpeningRecord)> {
        let found = self
            .entries
            .iter()
            .filter_map(|(key, entry)| match entry {
                Entry::Opening(record) if record.batch == *batch => Some((&key.id, record)),
                _ => None,
            })
            .collect();
        in_order(found, |a: &(&Id, &OpeningRecord), b| {
            b.1.at.cmp(&a.1.at).then_with(|| a.0.cmp(b.0))
        })
    }

    /// Every instrument; the usual one when none was entered.
    #[must_use]
    pub fn hydrometers(&self) -> Vec<(Id, HydrometerItem)> {
        let mut found: Vec<_> = self
            .entries
            .iter()
            .filter_map(|(key, entry)| match entry {
                Entry::Hydrometer(item) => Some((key.id.clone(), item.clone())),
                _ => None,
            })
            .collect();
        if !found.iter().any(|(id, _)| *id == HydrometerItem::usual_id()) {
            found.insert(0, (HydrometerItem::usual_id(), HydrometerItem::usual()));
        }
        found
    }

    /// The instrument of that identity; the usual one when it is gone.
    #[must_use]
    pub fn hydrometer(&self, id: &Id) -> Hydrometer {
        match self.entries.get(&EntryKey { kind: Kind::Hydrometer, id: id.clone() }) {
            Some(Entry::Hydrometer(item)) => item.instrument,
            _ => Hydrometer::USUAL,
        }
    }

    /// Whether that instrument was entered once and is no longer there. The usual one is always there.
    #[must_use]
    pub fn is_gone(&self, id: &Id) -> bool {
        *id != HydrometerItem::usual_id()
            && self.entry(&EntryKey { kind: Kind::Hydrometer, id: id.clone() }).is_none()
    }

    /// Every entry of a kind that belongs to no batch, by identity.
    pub fn gear(&self, kind: Kind) -> impl Iterator<Item = (&Id, &Entry)> {
        self.entries.iter().filter(move |(key, _)| key.kind == kind).map(|(key, e)| (&key.id, e))
    }

    /// The settings, or the usual ones.
    #[must_use]
    pub fn settings(&self) -> Settings {
        match self.entries.get(&EntryKey { kind: Kind::Settings, id: Settings::id() }) {
            Some(Entry::Settings(settings)) => settings.clone(),
            _ => Settings::default(),
        }
    }
}
