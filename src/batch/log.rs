//! One batch: its heading and every record of it, in the order of time.

use super::entry::{Entry, EntryKey, Kind};
use super::id::Id;
use super::pitch_record::PitchRecord;
use super::record::{BatchHeading, BottlingRecord, OpeningRecord, Reading};
use crate::order::in_order;
use crate::quantity::Moment;

/// Records of one kind, each with its identity.
type Records<R> = Vec<(Id, R)>;

/// Everything that is recorded of one batch.
#[derive(Clone, Debug, Default)]
pub struct Log {
    heading: Option<BatchHeading>,
    pitches: Records<PitchRecord>,
    readings: Records<Reading>,
    bottlings: Records<BottlingRecord>,
    openings: Records<OpeningRecord>,
    pub(super) revision: u64,
}

/// Two logs are one when they say the same, however often they were changed.
impl PartialEq for Log {
    fn eq(&self, other: &Self) -> bool {
        self.heading == other.heading
            && self.pitches == other.pitches
            && self.readings == other.readings
            && self.bottlings == other.bottlings
            && self.openings == other.openings
    }
}

impl Log {
    /// The heading; `None` when records are there whose batch is not.
    #[must_use]
    pub fn heading(&self) -> Option<&BatchHeading> {
        self.heading.as_ref()
    }

    /// When and how the yeast went in; the first time, should there be more.
    #[must_use]
    pub fn pitch(&self) -> Option<&(Id, PitchRecord)> {
        self.pitches.first()
    }

    /// Every pitching, the first first: two tabs may have noted it.
    #[must_use]
    pub fn pitches(&self) -> &[(Id, PitchRecord)] {
        &self.pitches
    }

    /// Every bottling, the latest last: two tabs may have noted it.
    #[must_use]
    pub fn bottlings(&self) -> &[(Id, BottlingRecord)] {
        &self.bottlings
    }

    /// The readings in the order they were taken.
    #[must_use]
    pub fn readings(&self) -> &[(Id, Reading)] {
        &self.readings
    }

    /// The bottling; the latest, should there be more.
    #[must_use]
    pub fn bottling(&self) -> Option<&(Id, BottlingRecord)> {
        self.bottlings.last()
    }

    /// Opened bottles, the latest first.
    #[must_use]
    pub fn openings(&self) -> &[(Id, OpeningRecord)] {
        &self.openings
    }

    /// Another number whenever a record of the batch or an instrument that it was read with has changed:
    /// while it is the same, so is all that was worked out. Numbers of one journal alone can be compared.
    #[must_use]
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// The heading, or a record, by its kind and identity.
    pub(super) fn entry(&self, key: &EntryKey) -> Option<Entry> {
        match key.kind {
            Kind::Batch => self.heading.clone().map(Entry::Batch),
            Kind::Pitch => found(&self.pitches, &key.id).map(Entry::Pitch),
            Kind::Reading => found(&self.readings, &key.id).map(Entry::Reading),
            Kind::Bottling => found(&self.bottlings, &key.id).map(Entry::Bottling),
            Kind::Opening => found(&self.openings, &key.id).map(Entry::Opening),
            Kind::Hydrometer | Kind::Settings | Kind::Bottles | Kind::Sugar => None,
        }
    }

    /// Takes the heading, or a record, out.
    pub(super) fn take(&mut self, key: &EntryKey) -> Option<Entry> {
        match key.kind {
            Kind::Batch => self.heading.take().map(Entry::Batch),
            Kind::Pitch => taken(&mut self.pitches, &key.id).map(Entry::Pitch),
            Kind::Reading => taken(&mut self.readings, &key.id).map(Entry::Reading),
            Kind::Bottling => taken(&mut self.bottlings, &key.id).map(Entry::Bottling),
            Kind::Opening => taken(&mut self.openings, &key.id).map(Entry::Opening),
            Kind::Hydrometer | Kind::Settings | Kind::Bottles | Kind::Sugar => None,
        }
    }

    /// Adds a heading, or a record that is not there, behind the others: [`Log::put_in_order`] comes
    /// after.
    pub(super) fn add(&mut self, id: Id, entry: Entry) {
        match entry {
            Entry::Batch(heading) => self.heading = Some(heading),
            Entry::Pitch(record) => self.pitches.push((id, record)),
            Entry::Reading(record) => self.readings.push((id, record)),
            Entry::Bottling(record) => self.bottlings.push((id, record)),
            Entry::Opening(record) => self.openings.push((id, record)),
            Entry::Hydrometer(_) | Entry::Settings(_) | Entry::Bottles(_) | Entry::Sugar(_) => {}
        }
    }

    /// Puts the records in the order of time.
    pub(super) fn put_in_order(&mut self) {
        put_in_order(&mut self.pitches, |record| record.at);
        put_in_order(&mut self.readings, |record| record.at);
        put_in_order(&mut self.bottlings, |record| record.at);
        let openings = std::mem::take(&mut self.openings);
        self.openings = in_order(openings, |a, b| b.1.at.cmp(&a.1.at).then_with(|| a.0.cmp(&b.0)));
    }

    /// Every record but the heading.
    pub(super) fn keys(&self) -> Vec<EntryKey> {
        fn of<R>(records: &Records<R>, kind: Kind) -> impl Iterator<Item = EntryKey> {
            records.iter().map(move |(id, _)| EntryKey { kind, id: id.clone() })
        }
        of(&self.pitches, Kind::Pitch)
            .chain(of(&self.readings, Kind::Reading))
            .chain(of(&self.bottlings, Kind::Bottling))
            .chain(of(&self.openings, Kind::Opening))
            .collect()
    }

    /// Nothing is there any more.
    pub(super) fn is_empty(&self) -> bool {
        self.heading.is_none() && self.keys().is_empty()
    }

    /// Whether the batch or a reading is by this instrument.
    pub(super) fn uses(&self, hydrometer: &Id) -> bool {
        self.heading.as_ref().is_some_and(|heading| heading.hydrometer == *hydrometer)
            || self.readings.iter().any(|(_, reading)| reading.hydrometer == *hydrometer)
    }
}

fn found<R: Clone>(records: &Records<R>, id: &Id) -> Option<R> {
    records.iter().find(|(other, _)| other == id).map(|(_, record)| record.clone())
}

fn taken<R>(records: &mut Records<R>, id: &Id) -> Option<R> {
    let at = records.iter().position(|(other, _)| other == id)?;
    Some(records.remove(at).1)
}

fn put_in_order<R>(records: &mut Records<R>, at: fn(&R) -> Moment) {
    let all = std::mem::take(records);
    *records = in_order(all, |a, b| at(&a.1).cmp(&at(&b.1)).then_with(|| a.0.cmp(&b.0)));
}
