//! All entries together, and the one pure way to change them.

use super::change::{Change, Edit, Rejected};
use super::entry::{Entry, EntryKey, Kind};
use super::gear::{HydrometerItem, Settings};
use super::id::Id;
use super::log::Log;
use super::pitch_record::PitchRecord;
use super::record::{BatchHeading, BottlingRecord, OpeningRecord, Reading};
use crate::order::{ByKey, in_order};
use crate::science::hydrometer::Hydrometer;

/// The batch an entry belongs to; its own, if it is a heading.
fn batch_of_entry(key: &EntryKey, entry: &Entry) -> Option<Id> {
    match entry {
        Entry::Batch(_) => Some(key.id.clone()),
        _ => entry.batch().cloned(),
    }
}

/// What undoes edits, the last of them first.
fn undone(mut undo: Vec<Edit>) -> Change {
    undo.reverse();
    Change::all(undo)
}

/// Everything that is recorded: a log for each batch, and the gear.
#[derive(Clone, Debug, Default)]
pub struct Journal {
    logs: ByKey<Id, Log>,
    /// In which log each record is; headings are in that of their own identity.
    batch_of: ByKey<EntryKey, Id>,
    /// What belongs to no batch.
    gear: ByKey<EntryKey, Entry>,
    gear_revision: u64,
    /// Counted, and never back, so that no state of a log has the number of an earlier one.
    edits: u64,
}

/// Two journals are one when they say the same, however they came to it.
impl PartialEq for Journal {
    fn eq(&self, other: &Self) -> bool {
        self.logs == other.logs && self.gear == other.gear
    }
}

impl Journal {
    /// A journal of entries read from the store. Entries whose batch is not (yet) there are kept.
    #[must_use]
    pub fn of(entries: impl IntoIterator<Item = (Id, Entry)>) -> Self {
        let keyed = entries.into_iter().map(|(id, e)| (EntryKey { kind: e.kind(), id }, e));
        let (mut records, mut batch_of, mut gear) = (vec![], vec![], vec![]);
        for (key, entry) in keyed.collect::<ByKey<_, _>>() {
            match batch_of_entry(&key, &entry) {
                Some(batch) => {
                    batch_of.push((key.clone(), batch.clone()));
                    records.push((batch, key.id, entry));
                }
                None => gear.push((key, entry)),
            }
        }
        let mut logs: Vec<(Id, Log)> = vec![];
        for (batch, id, entry) in in_order(records, |a, b| a.0.cmp(&b.0)) {
            if logs.last().is_none_or(|(last, _)| *last != batch) {
                logs.push((batch, Log::default()));
            }
            if let Some((_, log)) = logs.last_mut() {
                log.add(id, entry);
            }
        }
        for (_, log) in &mut logs {
            log.put_in_order();
        }
        Self {
            logs: logs.into_iter().collect(),
            batch_of: batch_of.into_iter().collect(),
            gear: gear.into_iter().collect(),
            ..Self::default()
        }
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
        self.edits += 1;
        let key = edit.key();
        let before = self.take(&key);
        if let Edit::Put(_, entry) = edit {
            self.put(key.clone(), entry);
        }
        before.map_or(Edit::Remove(key.clone()), |entry| Edit::Put(key.id, entry))
    }

    fn take(&mut self, key: &EntryKey) -> Option<Entry> {
        if let Some(batch) = self.batch_of.remove(key) {
            let log = self.logs.get_mut(&batch)?;
            log.revision = self.edits;
            let entry = log.take(key);
            if log.is_empty() {
                self.logs.remove(&batch);
            }
            return entry;
        }
        let entry = self.gear.remove(key)?;
        self.gear_changed(key);
        Some(entry)
    }

    fn put(&mut self, key: EntryKey, entry: Entry) {
        match batch_of_entry(&key, &entry) {
            Some(batch) => {
                self.batch_of.insert(key.clone(), batch.clone());
                let log = self.logs.or_insert_with(batch, Log::default);
                log.add(key.id, entry);
                log.put_in_order();
                log.revision = self.edits;
            }
            None => {
                self.gear_changed(&key);
                self.gear.insert(key, entry);
            }
        }
    }

    fn gear_changed(&mut self, key: &EntryKey) {
        self.gear_revision = self.edits;
        if key.kind == Kind::Hydrometer {
            for (_, log) in self.logs.iter_mut().filter(|(_, log)| log.uses(&key.id)) {
                log.revision = self.edits;
            }
        }
    }

    pub(super) fn has(&self, key: &EntryKey) -> bool {
        self.batch_of.get(key).is_some() || self.gear.get(key).is_some()
    }

    /// Whether a batch or a reading is by this instrument, also a reading whose batch is not there: it may
    /// come, and its correction stands on the instrument.
    pub(super) fn uses(&self, hydrometer: &Id) -> bool {
        self.logs.iter().any(|(_, log)| log.uses(hydrometer))
    }

    /// The entry of that key.
    #[must_use]
    pub fn entry(&self, key: &EntryKey) -> Option<Entry> {
        match self.batch_of.get(key) {
            Some(batch) => self.logs.get(batch)?.entry(key),
            None => self.gear.get(key).cloned(),
        }
    }

    /// All that is recorded of a batch, with or without its heading.
    #[must_use]
    pub fn log(&self, batch: &Id) -> Option<&Log> {
        self.logs.get(batch)
    }

    /// Another number whenever anything has changed. Numbers of one journal alone can be compared.
    #[must_use]
    pub fn revision(&self) -> u64 {
        self.edits
    }

    /// Another number whenever gear or settings have changed. Numbers of one journal alone can be
    /// compared.
    #[must_use]
    pub fn gear_revision(&self) -> u64 {
        self.gear_revision
    }

    /// Identities of batches that are not here, though records of them are: as when one tab deletes a batch
    /// and another saves a reading of it. With each, how many records.
    #[must_use]
    pub fn without_batch(&self) -> Vec<(&Id, usize)> {
        let alone = self.logs.iter().filter(|(_, log)| log.heading().is_none());
        alone.map(|(id, log)| (id, log.keys().len())).collect()
    }

    /// The heading of a batch.
    #[must_use]
    pub fn batch(&self, id: &Id) -> Option<&BatchHeading> {
        self.logs.get(id)?.heading()
    }

    /// Every batch, by identity.
    pub fn batches(&self) -> impl Iterator<Item = (&Id, &BatchHeading)> {
        self.logs.iter().filter_map(|(id, log)| Some((id, log.heading()?)))
    }

    /// The change that takes a batch out with every record of it, so that taking it back brings all of
    /// them back. Records whose batch is not there are taken out alone.
    #[must_use]
    pub fn removal(&self, batch: &Id) -> Change {
        let mut keys = self.log(batch).map(Log::keys).unwrap_or_default();
        let heading = EntryKey { kind: Kind::Batch, id: batch.clone() };
        // Without anything there the journal has to say so.
        if keys.is_empty() || self.batch(batch).is_some() {
            keys.push(heading);
        }
        Change::all(keys.into_iter().map(Edit::Remove))
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
    pub fn readings(&self, batch: &Id) -> &[(Id, Reading)] {
        self.log(batch).map_or(&[], Log::readings)
    }

    /// When and how the yeast went in; the first time, should there be more.
    #[must_use]
    pub fn pitch(&self, batch: &Id) -> Option<&(Id, PitchRecord)> {
        self.log(batch)?.pitch()
    }

    /// The bottling of a batch; the latest, should there be more.
    #[must_use]
    pub fn bottling(&self, batch: &Id) -> Option<&(Id, BottlingRecord)> {
        self.log(batch)?.bottling()
    }

    /// Opened bottles of a batch, the latest first.
    #[must_use]
    pub fn openings(&self, batch: &Id) -> &[(Id, OpeningRecord)] {
        self.log(batch).map_or(&[], Log::openings)
    }

    /// Every instrument; the usual one when none was entered.
    #[must_use]
    pub fn hydrometers(&self) -> Vec<(Id, HydrometerItem)> {
        let entered = self.gear(Kind::Hydrometer).filter_map(|(id, entry)| match entry {
            Entry::Hydrometer(item) => Some((id.clone(), item.clone())),
            _ => None,
        });
        let mut found: Vec<_> = entered.collect();
        if !found.iter().any(|(id, _)| *id == HydrometerItem::usual_id()) {
            found.insert(0, (HydrometerItem::usual_id(), HydrometerItem::usual()));
        }
        found
    }

    /// The instrument of that identity; the usual one when it is gone.
    #[must_use]
    pub fn hydrometer(&self, id: &Id) -> Hydrometer {
        match self.gear.get(&EntryKey { kind: Kind::Hydrometer, id: id.clone() }) {
            Some(Entry::Hydrometer(item)) => item.instrument,
            _ => Hydrometer::USUAL,
        }
    }

    /// Whether that instrument was entered once and is no longer there. The usual one is always there.
    #[must_use]
    pub fn is_gone(&self, id: &Id) -> bool {
        *id != HydrometerItem::usual_id()
            && self.gear.get(&EntryKey { kind: Kind::Hydrometer, id: id.clone() }).is_none()
    }

    /// Every entry of a kind that belongs to no batch, by identity.
    pub fn gear(&self, kind: Kind) -> impl Iterator<Item = (&Id, &Entry)> {
        self.gear.iter().filter(move |(key, _)| key.kind == kind).map(|(key, e)| (&key.id, e))
    }

    /// The settings, or the usual ones.
    #[must_use]
    pub fn settings(&self) -> Settings {
        match self.gear.get(&EntryKey { kind: Kind::Settings, id: Settings::id() }) {
            Some(Entry::Settings(settings)) => settings.clone(),
            _ => Settings::default(),
        }
    }
}
