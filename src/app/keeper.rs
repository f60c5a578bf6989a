//! Saving what the page decided: changes above the archive, whatever store is beneath.

use super::event::{Event, NotSaved};
use crate::batch::{Change, Edit, Entry, Id, Kind};
use crate::json_unknown::Unknown;
use crate::quantity::Moment;
use crate::store::{Archive, Conflict, Loaded, Outcome, SaveError, Store, StoreError, Token};

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
        let mut beside = None;
        for (done, edit) in change.edits().iter().enumerate() {
            match self.save_one(edit, now, token()) {
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

    /// Everything stored, as one text to be kept elsewhere.
    #[must_use]
    pub fn everything(&self) -> String {
        self.archive.everything_as_text().unwrap_or_default()
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
