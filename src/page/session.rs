//! The page's memory: the journal as a signal, and the only way to write to the store.

use super::clock;
use super::words;
use super::write::Writer;
use crate::batch::{Change, Edit, Entry, Id, Journal, Kind, Settings, Summary, Units};
use crate::json_unknown::Unknown;
use crate::quantity::{Moment, Unit};
use crate::store::{
    Archive, BrowserStore, Conflict, MemoryStore, Outcome, PREFIX, Record, SaveError, SetAside,
    Store, StoreError, Token,
};
use leptos::prelude::*;

/// What the brewer has to know about the store, all the time or until settled.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Keeping {
    /// The phone refuses storage: what is noted lives only as long as the page.
    pub memory_only: bool,
    /// Stored texts that could not be read, kept as they are.
    pub set_aside: Vec<(String, String)>,
    /// Two versions of one thing.
    pub conflicts: Vec<Conflict>,
    /// Another tab has saved something.
    pub changed_elsewhere: bool,
}

/// Something that can be taken back.
#[derive(Clone, Debug, PartialEq)]
pub struct Undo {
    /// What was done, in words.
    pub done: String,
    /// The change that takes it back.
    pub change: Change,
}

/// The one session of the page.
#[derive(Clone, Copy)]
pub struct Session {
    /// Everything recorded.
    pub journal: RwSignal<Journal>,
    /// How it is kept.
    pub keeping: RwSignal<Keeping>,
    /// The last thing that can be taken back.
    pub undo: RwSignal<Option<Undo>>,
    /// Now, to the half minute.
    pub now: RwSignal<Moment>,
    archive: StoredValue<Archive<Box<dyn Store>>, LocalStorage>,
    /// Things whose text is whole but means nothing to this version: never written over.
    closed: StoredValue<Vec<(String, String)>>,
    /// What a later version noted in things that this one reads: written again with them.
    unknown: StoredValue<Vec<(Kind, Id, Unknown)>, LocalStorage>,
}

/// The session of this page.
pub fn use_session() -> Session {
    use_context().unwrap_or_else(Session::open)
}

impl Session {
    /// Opens the store, or the page's own memory where it is refused, and loads all that can be read.
    pub fn open() -> Self {
        let (store, memory_only): (Box<dyn Store>, bool) = match BrowserStore::open() {
            Ok(store) => (Box::new(store), false),
            Err(_) => (Box::new(MemoryStore::new()), true),
        };
        let mut archive = Archive::new(store);
        let mut keeping = Keeping { memory_only, ..Keeping::default() };
        let mut entries = Vec::new();
        let mut closed = Vec::new();
        let mut unknown = Vec::new();
        match archive.load() {
            Ok(loaded) => {
                for record in loaded.records.into_iter().filter(|record| !record.deleted) {
                    match entry_of(&record) {
                        Some((id, entry, more)) => {
                            unknown.push((entry.kind(), id.clone(), more));
                            entries.push((id, entry));
                        }
                        None => {
                            closed.push((record.kind.clone(), record.id.clone()));
                            keeping
                                .set_aside
                                .push((format!("{} {}", record.kind, record.id), record.body));
                        }
                    }
                }
                let texts =
                    loaded.set_aside.into_iter().map(|SetAside { key, text, .. }| (key, text));
                keeping.set_aside.extend(texts);
                keeping.conflicts = loaded.conflicts;
            }
            Err(_) => keeping.memory_only = true,
        }
        Self {
            journal: RwSignal::new(Journal::of(entries)),
            keeping: RwSignal::new(keeping),
            undo: RwSignal::new(None),
            now: RwSignal::new(clock::now()),
            archive: StoredValue::new_local(archive),
            closed: StoredValue::new(closed),
            unknown: StoredValue::new_local({
                unknown.retain(|(_, _, more)| !more.is_empty());
                unknown
            }),
        }
    }

    /// Makes a change, saved first and shown after. `done` is said beside an undo button when it is
    /// some.
    ///
    /// # Errors
    /// The sentence to show beside the button; nothing has changed, and what was typed stays.
    pub fn change(&self, change: Change, done: Option<&str>) -> Result<(), String> {
        let mut journal = self.journal.get_untracked();
        let undo = journal.apply(change.clone()).map_err(words::rejected)?;
        self.save(&change, &undo)?;
        self.journal.set(journal);
        self.undo.set(done.map(|done| Undo { done: done.to_owned(), change: undo }));
        Ok(())
    }

    /// Puts an entry under a new identity, and gives the identity.
    ///
    /// # Errors
    /// As [`Session::change`].
    pub fn put_new(&self, entry: Entry, done: Option<&str>) -> Result<Id, String> {
        let id = Id::random(clock::random());
        self.change(Change::put(id.clone(), entry), done)?;
        Ok(id)
    }

    /// Puts entries under new identities, all or none, and has `done` said.
    ///
    /// # Errors
    /// As [`Session::change`].
    pub fn put_all_new(
        &self,
        entries: impl Iterator<Item = Entry>,
        done: &str,
    ) -> Result<(), String> {
        let put = |entry| Edit::Put(Id::random(clock::random()), entry);
        self.change(Change::all(entries.map(put)), Some(done))
    }

    /// Takes the last change back.
    pub fn take_back(&self) -> Result<(), String> {
        match self.undo.get_untracked() {
            Some(undo) => {
                // What was here before needs no leave to come back.
                let mut journal = self.journal.get_untracked();
                let back = journal.take_as_it_is(undo.change.clone());
                self.save(&undo.change, &back)?;
                self.journal.set(journal);
                self.undo.set(None);
                Ok(())
            }
            None => Ok(()),
        }
    }

    /// Saves a change edit by edit. Where one is refused, those before it are taken back by what `undo`
    /// holds for them: it begins with what undoes the last.
    fn save(&self, change: &Change, undo: &Change) -> Result<(), String> {
        for (saved, edit) in change.edits().iter().enumerate() {
            if let Err(why) = self.save_one(edit) {
                for back in undo.edits().iter().rev().take(saved).rev() {
                    let _ = self.save_one(back);
                }
                return Err(why);
            }
        }
        Ok(())
    }

    fn save_one(&self, edit: &Edit) -> Result<(), String> {
        let key = edit.key();
        let (kind, id) = (key.kind.name(), key.id.as_str());
        if self.closed.with_value(|closed| closed.contains(&(kind.to_owned(), id.to_owned()))) {
            return Err("This was saved in a form that this version can't read. It is kept as it is; see Gear.".to_owned());
        }
        let body = match edit {
            Edit::Put(_, entry) => {
                let written = self.unknown.with_value(|all| {
                    let known = all.iter().find(|(k, i, _)| *k == key.kind && *i == key.id);
                    known.map_or_else(|| entry.to_text(), |(_, _, more)| entry.to_text_with(more))
                });
                Some(written.map_err(|_| not_saved(&StoreError::NotKept))?)
            }
            Edit::Remove(_) => None,
        };
        let token = Token::from_random(clock::random());
        let outcome = self.archive.try_update_value(|archive| match &body {
            Some(body) => archive.save(kind, id, body, clock::now(), token),
            None => archive.delete(kind, id, clock::now(), token),
        });
        match outcome {
            Some(Ok(Outcome::SavedBeside(conflict))) => {
                self.keeping.update(|keeping| keeping.conflicts.push(conflict));
                Ok(())
            }
            Some(Ok(Outcome::Saved(_) | Outcome::TakenAway(_))) => Ok(()),
            Some(Err(SaveError::Store(why))) => Err(not_saved(&why)),
            Some(Err(SaveError::Newer { .. })) => {
                Err("Not saved: a newer version of this page wrote this. Reload to update."
                    .to_owned())
            }
            Some(Err(_)) | None => Err(not_saved(&StoreError::NotKept)),
        }
    }

    /// Settles a conflict by keeping one of its versions.
    ///
    /// # Errors
    /// As [`Session::change`].
    pub fn settle(&self, conflict: &Conflict, keep: &Record) -> Result<(), String> {
        let token = Token::from_random(clock::random());
        let (kind, id) = (conflict.kind.clone(), conflict.id.clone());
        let settled = self.archive.try_update_value(|archive| {
            archive.resolve(&kind, &id, keep.token, clock::now(), token)
        });
        match settled {
            Some(Ok(_)) => {}
            Some(Err(why)) => return Err(words::not_saved(&why.to_string())),
            None => return Err(not_saved(&StoreError::NotKept)),
        }
        self.keeping.update(|keeping| keeping.conflicts.retain(|other| other != conflict));
        self.journal.update(|journal| {
            let change = match (keep.deleted, entry_of(keep), Kind::named(&kind), Id::new(&*id)) {
                (false, Some((id, entry, _)), _, _) => Some(Change::put(id, entry)),
                (true, _, Some(kind), Ok(id)) => {
                    Some(Change::remove(crate::batch::EntryKey { kind, id }))
                }
                _ => None,
            };
            if let Some(change) = change {
                // The store holds it now, whether or not a form would take it.
                journal.take_as_it_is(change);
            }
        });
        Ok(())
    }

    /// Everything stored, as one text to be kept elsewhere.
    pub fn everything(&self) -> String {
        self.archive
            .try_with_value(|archive| archive.everything_as_text().ok())
            .flatten()
            .unwrap_or_default()
    }

    /// The settings, followed.
    pub fn settings(&self) -> Settings {
        self.journal.with(Journal::settings)
    }

    /// The settings as they are now: where a field begins.
    pub fn settings_now(&self) -> Settings {
        self.journal.with_untracked(Journal::settings)
    }

    /// The units as they are now: where a field begins.
    pub fn units_now(&self) -> Units {
        self.settings_now().units
    }

    /// Writes in the brewer's units, followed.
    pub fn writer(&self) -> Writer {
        Writer { units: self.settings().units }
    }

    /// One batch worked out, followed.
    pub fn summary(&self, id: &Id) -> Option<Summary> {
        self.journal.with(|journal| Summary::of(journal, id))
    }

    /// Saves changed settings.
    ///
    /// # Errors
    /// As [`Session::change`].
    pub fn set(&self, change: impl FnOnce(&mut Settings)) -> Result<(), String> {
        let mut settings = self.settings_now();
        change(&mut settings);
        self.change(Change::put(Settings::id(), Entry::Settings(settings)), None)
    }

    /// The batch in hand: the one chosen, else the latest that is still on its way.
    pub fn in_hand(&self) -> Option<Id> {
        self.journal.with(Journal::in_hand)
    }
}

/// Whether a storage key is one of the archive's.
pub fn is_ours(key: &str) -> bool {
    key.starts_with(PREFIX)
}

fn not_saved(why: &StoreError) -> String {
    words::not_saved(&why.to_string())
}

fn entry_of(record: &Record) -> Option<(Id, Entry, Unknown)> {
    let kind = Kind::named(&record.kind)?;
    let id = Id::new(&*record.id).ok()?;
    Entry::read(kind, &record.body).ok().map(|(entry, unknown)| (id, entry, unknown))
}

/// The unit whose symbol is `symbol`.
pub fn unit_named<U: Unit>(symbol: &str) -> Option<U> {
    U::ALL.iter().copied().find(|unit| unit.symbol() == symbol)
}
