//! The archive: records above a store, each save beside the one before it.

use super::envelope::{Record, Revision};
use super::forget::{forget, sweep};
use super::key::PREFIX;
use super::known::{Known, KnownThings};
use super::lineage::{Conflict, heads};
use super::load::{Loaded, SetAside, our_keys, prefix_of, scan};
use super::save::{Outcome, SaveError, Stamp, delete, resolve, save};
use super::second_shelf::{Lying, Merged, merge};
use super::token::Token;
use super::{Store, StoreError, Watched};
use crate::json_texts::write_lines;
use crate::order::in_order;
use crate::quantity::Moment;

/// Records above a store, kept so that nothing once called saved is lost.
///
/// An archive remembers which revision of each thing it last gave out ([`Archive::load`]) or saved; the
/// next save stands upon that one. If the store has moved on by then (another tab), the save still goes
/// to its own key and the answer is [`Outcome::SavedBeside`]. So load anew only when the screen shows
/// what was loaded.
#[derive(Debug)]
pub struct Archive<S> {
    store: S,
    things: KnownThings,
}

impl<S: Store> Archive<S> {
    /// An archive that knows nothing yet. Load before the first save of a thing that may exist;
    /// otherwise that save stands beside it.
    pub fn new(store: S) -> Self {
        Self { store, things: KnownThings::new() }
    }

    /// Everything that is kept, found by looking at every key.
    ///
    /// Where the standing revision of a thing is damaged, the newest one before it that can be read
    /// stands in its place, and the damaged text is set aside.
    ///
    /// # Errors
    /// [`StoreError`] when the keys cannot be listed. A text that cannot be read is no error, but set
    /// aside.
    pub fn load(&mut self) -> Result<Loaded, StoreError> {
        load(&self.store, &mut self.things)
    }

    /// Saves `body` as the new state of a thing, at `at`, under the new `token`. To undo, save again what
    /// was there before.
    ///
    /// # Errors
    /// [`SaveError`]; all that was saved before is then as it was. A new try needs a new token.
    pub fn save(
        &mut self,
        kind: &str,
        id: &str,
        body: &str,
        at: Moment,
        token: Token,
    ) -> Result<Outcome, SaveError> {
        save(
            &mut self.store,
            &mut self.things,
            Stamp { kind, id, at, token, least: 1, over: &[] },
            Some(body),
        )
    }

    /// Saves what was saved elsewhere, in another browser or before this one was cleared, as that very
    /// revision: with its time, its number where that is free, its token, and what it replaced there. Where the
    /// token has been here before, it is saved anew under `fresh`.
    ///
    /// # Errors
    /// As [`Archive::save`].
    pub fn adopt(&mut self, from: &Revision, fresh: Token) -> Result<Outcome, SaveError> {
        let Record { kind, id, body, revision, token, at, .. } = &from.record;
        let over: Vec<_> = from.replaces().collect();
        let stamp = Stamp { kind, id, at: *at, token: *token, least: *revision, over: &over };
        match save(&mut self.store, &mut self.things, stamp, Some(body)) {
            Err(SaveError::TokenUsed) => {
                let stamp = Stamp { token: fresh, ..stamp };
                save(&mut self.store, &mut self.things, stamp, Some(body))
            }
            other => other,
        }
    }

    /// Saves that a thing is deleted. What it said stays ([`Archive::earlier`]) until it is saved again,
    /// [forgotten](Archive::forget) or the room is needed. In a store without room even for that, the thing is taken out of it
    /// ([`Outcome::TakenAway`]).
    ///
    /// # Errors
    /// As [`Archive::save`].
    pub fn delete(
        &mut self,
        kind: &str,
        id: &str,
        at: Moment,
        token: Token,
    ) -> Result<Outcome, SaveError> {
        delete(
            &mut self.store,
            &mut self.things,
            Stamp { kind, id, at, token, least: 1, over: &[] },
        )
    }

    /// Takes away all that lies there of a deleted thing, once nobody will take the deletion back. Whether
    /// it is gone: `false`, and it stays deleted, when something else stands beside the deletion, when
    /// something of it cannot be read, or when the store did not do it. Saved again later, it is a new
    /// thing.
    ///
    /// # Errors
    /// [`StoreError`] when the keys cannot be listed or read. The thing then stays deleted.
    pub fn forget(&mut self, kind: &str, id: &str) -> Result<bool, StoreError> {
        forget(&mut self.store, &mut self.things, kind, id)
    }

    /// Forgets everything that this archive knows as deleted no later than `until`, as by
    /// [`Archive::forget`]. How many things are gone; a thing that could not be taken away is tried again
    /// at the next sweep.
    ///
    /// # Errors
    /// [`StoreError`] when the keys cannot be listed.
    pub fn sweep(&mut self, until: Moment) -> Result<usize, StoreError> {
        sweep(&mut self.store, &mut self.things, until)
    }

    /// Settles a conflict: saves what the revision `keep` says over everything that was known to stand.
    /// What came since from elsewhere is not settled by it and stands beside it.
    ///
    /// # Errors
    /// As [`Archive::save`], and [`SaveError::NotThere`] when `keep` is no readable revision of the thing.
    pub fn resolve(
        &mut self,
        kind: &str,
        id: &str,
        keep: Token,
        at: Moment,
        token: Token,
    ) -> Result<Outcome, SaveError> {
        resolve(
            &mut self.store,
            &mut self.things,
            Stamp { kind, id, at, token, least: 1, over: &[] },
            keep,
        )
    }

    /// What a thing said before, newest first: as a rule the one revision before the standing one.
    ///
    /// # Errors
    /// [`StoreError`] when the keys cannot be listed.
    pub fn earlier(&self, kind: &str, id: &str) -> Result<Vec<Record>, StoreError> {
        earlier(&self.store, kind, id)
    }

    /// What stands in the store now, for a copy: this archive goes on knowing what it knew.
    ///
    /// # Errors
    /// As [`Archive::load`].
    pub fn standing(&self) -> Result<Standing, StoreError> {
        standing(&self.store)
    }

    /// Every text under our prefix as it is, readable or not, as one JSON object from key to text;
    /// `null` for a text that the store does not give out.
    ///
    /// # Errors
    /// [`StoreError`] when the keys cannot be listed.
    pub fn everything_as_text(&self) -> Result<String, StoreError> {
        everything(&self.store)
    }

    /// Gives the store what it has lost and the second shelf still has. Load anew when something came back.
    pub fn merge(&mut self, lying: &[Lying], now: f64) -> Merged {
        merge(&mut self.store, lying, now)
    }

    /// The store beneath.
    pub fn store(&self) -> &S {
        &self.store
    }

    /// The store beneath, to be told of what happens to it.
    pub fn store_mut(&mut self) -> &mut S {
        &mut self.store
    }

    /// The store beneath, given back.
    pub fn into_store(self) -> S {
        self.store
    }
}

impl<S: Store> Archive<Watched<S>> {
    /// How many bytes our keys and texts take, two for a letter as browsers count them, by what was last
    /// seen. What is deleted does not count: it goes when the room is needed.
    pub fn used(&self) -> u64 {
        let deleted = self.things.iter().filter(|(_, known)| known.deleted.is_some());
        let (all, deleted) = self.store.letters(&names(deleted.map(|(name, _)| name)));
        2 * (all - deleted) as u64
    }

    /// How many of them these things take, by kind and id.
    pub fn used_by(&self, things: &[(String, String)]) -> u64 {
        2 * self.store.letters(&names(things.iter())).1 as u64
    }
}

/// What their keys begin with, in order.
fn names<'a>(things: impl Iterator<Item = &'a (String, String)>) -> Vec<String> {
    let name = |(kind, id): &(String, String)| format!("{PREFIX}{kind}/{id}");
    in_order(things.map(name).collect(), Ord::cmp)
}

/// What stands in a store, with what it replaces.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    /// Of each thing the revision to show; deleted things too.
    pub shown: Vec<Revision>,
    /// The others of things in conflict.
    pub beside: Vec<Revision>,
    /// Texts that could not be read.
    pub set_aside: Vec<SetAside>,
}

fn standing(store: &dyn Store) -> Result<Standing, StoreError> {
    let shelves = scan(store, PREFIX)?;
    let mut found = Standing { set_aside: shelves.strays, ..Standing::default() };
    for (_, shelf) in shelves.things {
        let mut heads = heads(&shelf.revisions).into_iter();
        found.shown.extend(heads.next().cloned());
        found.beside.extend(heads.cloned());
        found.set_aside.extend(shelf.unreadable);
    }
    Ok(found)
}

fn load(store: &dyn Store, things: &mut KnownThings) -> Result<Loaded, StoreError> {
    let shelves = scan(store, PREFIX)?;
    let mut loaded = Loaded { set_aside: shelves.strays, ..Loaded::default() };
    let mut known = KnownThings::new();
    for (name, shelf) in shelves.things {
        let standing = heads(&shelf.revisions);
        if let Some(shown) = standing.first() {
            loaded.records.push(shown.record.clone());
            loaded.conflicts.extend(Conflict::among(&standing));
            let known_of = Known::of(&standing);
            if known_of.deleted.is_some() {
                let before = shelf.revisions.iter().map(|r| &r.record).filter(|r| !r.deleted);
                let before = before.max_by_key(|r| (r.revision, r.token)).cloned();
                loaded.deleted.extend(before.map(|before| (shown.record.clone(), before)));
            }
            known.insert(name, known_of);
        }
        loaded.set_aside.extend(shelf.unreadable);
    }
    *things = known;
    Ok(loaded)
}

fn earlier(store: &dyn Store, kind: &str, id: &str) -> Result<Vec<Record>, StoreError> {
    let name = (kind.to_owned(), id.to_owned());
    let shelf = scan(store, &prefix_of(kind, id))?.things.remove(&name).unwrap_or_default();
    let standing: Vec<Token> = heads(&shelf.revisions).iter().map(|h| h.record.token).collect();
    let mut records: Vec<Record> = shelf.revisions.into_iter().map(|r| r.record).collect();
    records.retain(|r| !standing.contains(&r.token));
    Ok(in_order(records, |a, b| (b.revision, b.token).cmp(&(a.revision, a.token))))
}

fn everything(store: &dyn Store) -> Result<String, StoreError> {
    let keys = our_keys(store, PREFIX)?.into_iter();
    let texts: Vec<_> = keys.map(|key| (store.read(&key).ok().flatten(), key)).collect();
    let pairs = texts.iter().map(|(text, key)| (key.as_str(), text.as_deref()));
    write_lines(pairs).map_err(|why| StoreError::Failed(why.to_string()))
}
