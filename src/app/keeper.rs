//! Saving what the page decided: changes above the archive, whatever store is beneath.

use super::copies;
use super::event::{Event, NotSaved};
use crate::batch::{Change, Edit, Entry, Id, Kind};
use crate::exchange::copy::Thing;
use crate::json_unknown::Unknown;
use crate::quantity::Moment;
use crate::store::{
    Archive, Conflict, Loaded, Outcome, Record, SaveError, Store, StoreError, Token,
};

/// The only writer of the store.
#[derive(Debug)]
pub struct Keeper<S> {
    archive: Archive<S>,
    /// Things whose text is whole but means nothing to this version: never written over.
    closed: Vec<(String, String)>,
    /// What a later version noted in things that this one reads: written again with them.
    unknown: Vec<(String, String, Unknown)>,
}

impl<S: Store> Keeper<S> {
    /// A keeper that knows nothing yet; load before the first save.
    pub fn new(store: S) -> Self {
        Self { archive: Archive::new(store), closed: vec![], unknown: vec![] }
    }

    /// Everything that is kept.
    ///
    /// # Errors
    /// [`StoreError`] when the keys cannot be listed.
    pub fn load(&mut self) -> Result<Loaded, StoreError> {
        let loaded = self.archive.load()?;
        self.closed.clear();
        self.unknown.clear();
        for record in loaded.records.iter().filter(|record| !record.deleted) {
            let (kind, id) = (record.kind.clone(), record.id.clone());
            let read = Kind::named(&kind).filter(|_| Id::new(id.as_str()).is_ok());
            match read.and_then(|kind| Entry::read(kind, &record.body).ok()) {
                None => self.closed.push((kind, id)),
                Some((_, unknown)) if !unknown.is_empty() => self.unknown.push((kind, id, unknown)),
                Some(_) => {}
            }
        }
        Ok(loaded)
    }

    /// Saves a change edit by edit, each under a token of its own, and says how it went. Should one not
    /// be kept, those before it are taken back by the end of `back`, which undoes the change from its
    /// last edit on.
    pub fn save(
        &mut self,
        ticket: u32,
        (change, back): (&Change, &Change),
        now: Moment,
        token: &mut dyn FnMut() -> Token,
    ) -> Event {
        self.save_all(ticket, (change, back), &[], now, token)
    }

    /// Saves a change that brings `records` in, each as the revision it was elsewhere; else as [`Keeper::save`].
    pub fn bring_in(
        &mut self,
        ticket: u32,
        records: &[Record],
        both: (&Change, &Change),
        now: Moment,
        token: &mut dyn FnMut() -> Token,
    ) -> Event {
        self.save_all(ticket, both, records, now, token)
    }

    fn save_all(
        &mut self,
        ticket: u32,
        (change, back): (&Change, &Change),
        records: &[Record],
        now: Moment,
        token: &mut dyn FnMut() -> Token,
    ) -> Event {
        let mut beside = None;
        for (done, edit) in change.edits().iter().enumerate() {
            let key = edit.key();
            let named = |r: &&Record| r.kind == key.kind.name() && r.id == key.id.as_str();
            // They stand in the order of the edits.
            let from = records.get(done).filter(named);
            let saved = match from {
                Some(from) => self.adopt(from, token()),
                None => self.save_one(edit, now, token()),
            };
            match saved {
                Ok(Outcome::SavedBeside(conflict)) => beside = Some(conflict),
                Ok(Outcome::Saved(_) | Outcome::TakenAway(_)) => {}
                Err(why) => {
                    let undone = back.edits().len().saturating_sub(done);
                    for edit in back.edits().iter().skip(undone) {
                        // What cannot be taken back is kept, which loses nothing.
                        let _ = self.save_one(edit, now, token());
                    }
                    return Event::NotSaved(ticket, why);
                }
            }
        }
        match beside {
            Some(conflict) => Event::SavedBeside(ticket, Box::new(conflict)),
            None => Event::Saved(ticket),
        }
    }

    fn save_one(&mut self, edit: &Edit, now: Moment, token: Token) -> Result<Outcome, NotSaved> {
        let key = edit.key();
        let (kind, id) = (key.kind.name(), key.id.as_str());
        if self.closed.iter().any(|(k, i)| k == kind && i == id) {
            return Err(NotSaved::Unreadable);
        }
        let saved = match edit {
            Edit::Put(_, entry) => {
                let unknown = self.unknown.iter().find(|(k, i, _)| k == kind && i == id);
                let body = match unknown {
                    Some((_, _, unknown)) => entry.to_text_with(unknown),
                    None => entry.to_text(),
                };
                let body = body.map_err(|_| NotSaved::Store(StoreError::NotKept))?;
                self.archive.save(kind, id, &body, now, token)
            }
            Edit::Remove(_) => self.archive.delete(kind, id, now, token),
        };
        saved.map_err(not_saved)
    }

    fn adopt(&mut self, from: &Record, fresh: Token) -> Result<Outcome, NotSaved> {
        let (kind, id) = (&from.kind, &from.id);
        if self.closed.iter().any(|(k, i)| k == kind && i == id) {
            return Err(NotSaved::Unreadable);
        }
        let outcome = self.archive.adopt(from, fresh).map_err(not_saved)?;
        // From now on it has what the copy had of a later version.
        self.unknown.retain(|(k, i, _)| k != kind || i != id);
        let read = Kind::named(kind).and_then(|kind| Entry::read(kind, &from.body).ok());
        if let Some((_, unknown)) = read.filter(|(_, unknown)| !unknown.is_empty()) {
            self.unknown.push((kind.clone(), id.clone(), unknown));
        }
        Ok(outcome)
    }

    /// What stands in the store, as things of a copy; nothing where it cannot be read.
    #[must_use]
    pub fn things(&self) -> Vec<Thing> {
        self.archive.standing().map(|standing| copies::things(&standing)).unwrap_or_default()
    }

    /// How many bytes everything takes, two for a letter as browsers count; 0 where it cannot be read.
    #[must_use]
    pub fn used(&self) -> u64 {
        self.archive.used().unwrap_or_default()
    }

    /// A copy of a batch or of everything, as text.
    #[must_use]
    pub fn copy(&self, batch: Option<&Id>, now: Moment) -> String {
        let standing = self.archive.standing().unwrap_or_default();
        copies::text(&standing, batch, now)
    }

    /// Settles a conflict by keeping one of its versions, and reads everything anew.
    ///
    /// # Errors
    /// As for a save.
    pub fn settle(
        &mut self,
        conflict: &Conflict,
        keep: Token,
        now: Moment,
        token: Token,
    ) -> Result<Box<Loaded>, NotSaved> {
        self.archive.resolve(&conflict.kind, &conflict.id, keep, now, token).map_err(not_saved)?;
        self.load().map(Box::new).map_err(NotSaved::Store)
    }

    /// Frees the room of what was deleted no later than `until`, when nobody can take it back any more.
    /// What cannot be freed now is tried again the next time.
    pub fn sweep(&mut self, until: Moment) {
        // Nothing shown as kept depends on it.
        let _ = self.archive.sweep(until);
    }

    /// The store beneath.
    pub fn store(&self) -> &S {
        self.archive.store()
    }
}

fn not_saved(why: SaveError) -> NotSaved {
    match why {
        SaveError::Store(why) => NotSaved::Store(why),
        SaveError::Newer { .. } => NotSaved::Newer,
        _ => NotSaved::Store(StoreError::NotKept),
    }
}
