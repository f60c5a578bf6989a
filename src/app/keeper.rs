//! Saving what the page decided: changes above the archive, whatever store is beneath.

use super::copies;
use super::event::{Event, NotSaved};
use super::opened::Opened;
use super::room::is_tight;
use crate::batch::{Change, Edit, Entry, Id, Kind};
use crate::exchange::copy::Thing;
use crate::json_unknown::Unknown;
use crate::quantity::Moment;
use crate::store::{
    Archive, Conflict, Lying, Note, Outcome, Record, Revision, SaveError, Store, StoreError, Token,
    Watched,
};

/// The only writer of the store.
#[derive(Debug)]
pub struct Keeper<S> {
    archive: Archive<Watched<S>>,
    /// What has happened to the store.
    news: Vec<Event>,
    /// Things whose text is whole but means nothing to this version: never written over.
    closed: Vec<(String, String)>,
    /// What a later version noted in things that this one reads: written again with them.
    unknown: Vec<(String, String, Unknown)>,
}

impl<S: Store> Keeper<S> {
    /// A keeper that knows nothing yet; load before the first save.
    pub fn new(store: S) -> Self {
        Self {
            archive: Archive::new(Watched::new(store)),
            news: vec![],
            closed: vec![],
            unknown: vec![],
        }
    }

    /// Everything that is kept, and what was lost of it written back first. A store that cannot be read is
    /// given up.
    ///
    /// # Errors
    /// [`StoreError`] when the keys cannot be listed.
    pub fn load(&mut self) -> Result<Opened, StoreError> {
        self.look_after();
        let loaded = self.archive.load().inspect_err(|_| self.go_on_alone())?;
        let (opened, unknown) = Opened::of(loaded);
        let name = |record: &Record| (record.kind.clone(), record.id.clone());
        self.closed = opened.closed.iter().map(name).collect();
        self.unknown = unknown;
        Ok(opened)
    }

    /// Writes back what the store has lost under the page, as when the browser's data were cleared, and
    /// comes back to a store that kept nothing before.
    pub fn look_after(&mut self) {
        let was_alone = self.archive.store().is_alone();
        match self.archive.store_mut().write_back() {
            Ok(0) => {}
            Ok(count) if !was_alone => self.news.push(Event::WroteBack(count)),
            Ok(_) | Err(_) => {}
        }
        if self.archive.store().is_alone() != was_alone {
            self.news.push(Event::Alone(!was_alone));
        }
    }

    fn go_on_alone(&mut self) {
        self.archive.store_mut().go_on_alone();
        self.news.push(Event::Alone(true));
    }

    /// What has happened to the store since this was last asked: to be told before what came of a save.
    pub fn news(&mut self) -> Vec<Event> {
        std::mem::take(&mut self.news)
    }

    /// What was written and taken away since this was last asked: for the second shelf.
    pub fn notes(&mut self) -> Vec<Note> {
        self.archive.store_mut().take_notes()
    }

    /// Another tab wrote a text, or took one away.
    pub fn elsewhere(&mut self, key: &str, text: Option<&str>) {
        self.archive.store_mut().elsewhere(key, text);
    }

    /// Gives the store what it has lost and the second shelf still has; everything anew, when something
    /// came back. With it the keys that the second shelf may let go of. `now` is in milliseconds since 1970.
    pub fn merge(&mut self, lying: &[Lying], now: f64) -> (Option<Opened>, Vec<String>) {
        let merged = self.archive.merge(lying, now);
        let anew = if merged.adopted > 0 { self.load().ok() } else { None };
        (anew, merged.settled)
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
        self.save_or_go_on_alone(ticket, (change, back), &[], now, token)
    }

    /// Saves a change that brings `revisions` in, each as the revision it was elsewhere; else as [`Keeper::save`].
    pub fn bring_in(
        &mut self,
        ticket: u32,
        revisions: &[Revision],
        both: (&Change, &Change),
        now: Moment,
        token: &mut dyn FnMut() -> Token,
    ) -> Event {
        self.save_or_go_on_alone(ticket, both, revisions, now, token)
    }

    /// Where the store turns out to keep nothing at all, it is kept here alone, and told so.
    fn save_or_go_on_alone(
        &mut self,
        ticket: u32,
        both: (&Change, &Change),
        revisions: &[Revision],
        now: Moment,
        token: &mut dyn FnMut() -> Token,
    ) -> Event {
        self.look_after();
        self.archive.store_mut().hold(true);
        let mut saved = self.save_all(ticket, both, revisions, now, token);
        if let Event::NotSaved(_, NotSaved::Store(why)) = &saved
            && self.archive.store().keeps_nothing(why)
        {
            self.go_on_alone();
            saved = self.save_all(ticket, both, revisions, now, token);
        }
        self.archive.store_mut().hold(false);
        saved
    }

    fn save_all(
        &mut self,
        ticket: u32,
        (change, back): (&Change, &Change),
        revisions: &[Revision],
        now: Moment,
        token: &mut dyn FnMut() -> Token,
    ) -> Event {
        let mut beside = None;
        for (done, edit) in change.edits().iter().enumerate() {
            let key = edit.key();
            let named =
                |r: &&Revision| r.record.kind == key.kind.name() && r.record.id == key.id.as_str();
            // They stand in the order of the edits.
            let from = revisions.get(done).filter(named);
            let saved = match from {
                Some(from) => self.adopt(from, token()),
                None => self.save_one(edit, now, token()),
            };
            match saved {
                Ok(Outcome::SavedBeside(conflict)) => beside = Some(conflict),
                Ok(Outcome::Saved(_) | Outcome::TakenAway(_)) => {}
                Err(why) => {
                    let undone = back.edits().len().saturating_sub(done);
                    let mut whole = true;
                    for edit in back.edits().iter().skip(undone) {
                        whole &= self.save_one(edit, now, token()).is_ok();
                    }
                    // What cannot be taken back is kept, and so must be shown.
                    let why = match why {
                        NotSaved::Store(why) if !whole => NotSaved::Half(why),
                        why => why,
                    };
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

    fn adopt(&mut self, from: &Revision, fresh: Token) -> Result<Outcome, NotSaved> {
        let Record { kind, id, body, .. } = &from.record;
        if self.closed.iter().any(|(k, i)| k == kind && i == id) {
            return Err(NotSaved::Unreadable);
        }
        let outcome = self.archive.adopt(from, fresh).map_err(not_saved)?;
        // From now on it has what the copy had of a later version.
        self.unknown.retain(|(k, i, _)| k != kind || i != id);
        let read = Kind::named(kind).and_then(|kind| Entry::read(kind, body).ok());
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

    /// How many bytes everything takes that is not deleted, two for a letter as browsers count.
    #[must_use]
    pub fn used(&self) -> u64 {
        self.archive.used()
    }

    /// A copy of these batches, or of everything when of none: its text, and the room that what it is of takes.
    #[must_use]
    pub fn copy(&self, of: Vec<Id>, now: Moment) -> Event {
        let standing = self.archive.standing().unwrap_or_default();
        let (text, things) = copies::text(&standing, &of, now);
        Event::Copied { of, text, room: self.archive.used_by(&things) }
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
    ) -> Result<Box<Opened>, NotSaved> {
        self.look_after();
        self.archive.resolve(&conflict.kind, &conflict.id, keep, now, token).map_err(not_saved)?;
        self.load().map(Box::new).map_err(NotSaved::Store)
    }

    /// Frees the room of what was deleted no later than `until`, when nobody can take it back any more; and
    /// of what was deleted no later than `undone`, where room is scarce. What cannot be freed now is tried
    /// again the next time.
    pub fn sweep(&mut self, until: Moment, undone: Moment) {
        let until = if is_tight(self.archive.used()) { undone } else { until };
        // Nothing shown as kept depends on it.
        let _ = self.archive.sweep(until);
    }

    /// The store beneath.
    pub fn store(&self) -> &S {
        self.archive.store().inner()
    }
}

fn not_saved(why: SaveError) -> NotSaved {
    match why {
        SaveError::Store(why) => NotSaved::Store(why),
        SaveError::Newer { .. } => NotSaved::Newer,
        _ => NotSaved::Store(StoreError::NotKept),
    }
}
