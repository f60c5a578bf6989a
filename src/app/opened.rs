//! Everything that is kept, as it is known once every text was read.

use crate::batch::{Change, Edit, Entry, Id, Kind};
use crate::json_unknown::Unknown;
use crate::order::in_order;
use crate::quantity::Moment;
use crate::store::{Conflict, Loaded, Record, SetAside};

/// What later versions noted in things, by their kinds and identities.
pub(super) type UnknownOf = Vec<(String, String, Unknown)>;

/// Everything that is kept. Each text was read once, for the journal and for the store alike.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Opened {
    /// What this version can read.
    pub entries: Vec<(Id, Entry)>,
    /// Texts that are whole but mean nothing to this version.
    pub closed: Vec<Record>,
    /// Things of which several versions stand.
    pub conflicts: Vec<Conflict>,
    /// Texts that could not be read.
    pub set_aside: Vec<SetAside>,
    /// Batches that were deleted and can be had back, the last first.
    pub deleted: Vec<DeletedBatch>,
}

/// A batch that was deleted, with its log.
#[derive(Clone, Debug, PartialEq)]
pub struct DeletedBatch {
    /// Its identity.
    pub id: Id,
    /// Its name.
    pub name: String,
    /// When it was deleted.
    pub at: Moment,
    /// The change that brings it back.
    pub change: Change,
}

impl Opened {
    /// From what was read, with what later versions noted.
    pub(super) fn of(loaded: Loaded) -> (Self, UnknownOf) {
        let Loaded { records, conflicts, set_aside, deleted } = loaded;
        let mut opened = Self { conflicts, set_aside, ..Self::default() };
        let mut unknown_of = vec![];
        for record in records.into_iter().filter(|record| !record.deleted) {
            let read = read(&record);
            match read {
                Some((id, entry, unknown)) => {
                    if !unknown.is_empty() {
                        unknown_of.push((record.kind, record.id, unknown));
                    }
                    opened.entries.push((id, entry));
                }
                None => opened.closed.push(record),
            }
        }
        let edits = deleted.into_iter().filter_map(|(deletion, before)| {
            let (id, entry, unknown) = read(&before)?;
            if !unknown.is_empty() {
                unknown_of.push((before.kind, before.id, unknown));
            }
            Some((deletion.at, id, entry))
        });
        opened.deleted = batches(&edits.collect::<Vec<_>>());
        (opened, unknown_of)
    }
}

/// A record as an entry, with what a later version noted in it, when this version can read it.
pub(super) fn read(record: &Record) -> Option<(Id, Entry, Unknown)> {
    let kind = Kind::named(&record.kind)?;
    let id = Id::new(&*record.id).ok()?;
    Entry::read(kind, &record.body).ok().map(|(entry, unknown)| (id, entry, unknown))
}

/// The batches among what was deleted, each with the log that was deleted at the same time.
fn batches(deleted: &[(Moment, Id, Entry)]) -> Vec<DeletedBatch> {
    let heading = |(at, id, entry): &(Moment, Id, Entry)| {
        let Entry::Batch(heading) = entry else { return None };
        let log = deleted.iter().filter(|(when, _, entry)| when == at && entry.batch() == Some(id));
        let log = log.map(|(_, id, entry)| Edit::Put(id.clone(), entry.clone()));
        let edits = std::iter::once(Edit::Put(id.clone(), entry.clone())).chain(log);
        let (id, name) = (id.clone(), heading.name.clone());
        Some(DeletedBatch { id, name, at: *at, change: Change::all(edits) })
    };
    in_order(deleted.iter().filter_map(heading).collect(), |a, b| b.at.cmp(&a.at))
}

impl DeletedBatch {
    /// The batches that a change brings back.
    pub(super) fn all_by(change: &Change, at: Moment) -> Vec<Self> {
        let edits = change.edits().iter().filter_map(|edit| match edit {
            Edit::Put(id, entry) => Some((at, id.clone(), entry.clone())),
            Edit::Remove(_) => None,
        });
        batches(&edits.collect::<Vec<_>>())
    }
}
