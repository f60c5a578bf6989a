//! A store that is watched over. Every text that was there is remembered, so that it can be written back
//! when the store is cleared under the page, or kept here alone when the store is refused.

use super::key::Key;
use super::load::before_revision;
use super::{Store, StoreError};
use crate::order::{ByKey, in_order};
use std::cell::RefCell;

/// How many of the remembered texts are looked for to learn whether the store was cleared.
const LOOKED_FOR: usize = 5;

/// Something that was written, or taken away, since it was last asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// The key.
    pub key: String,
    /// The text that now lies there; `None` when it was taken away.
    pub text: Option<String>,
}

/// A store, and what this page has seen of it.
#[derive(Debug)]
pub struct Watched<S> {
    store: S,
    /// Readable or not, ours or of a newer version.
    seen: RefCell<ByKey<String, String>>,
    alone: bool,
    notes: Vec<Note>,
    /// While a change of many edits is kept: the keys in order, once they were listed.
    held: RefCell<Option<Vec<String>>>,
    holds: bool,
}

impl<S: Store> Watched<S> {
    /// Watches over a store from now on.
    pub fn new(store: S) -> Self {
        Self {
            store,
            seen: RefCell::default(),
            alone: false,
            notes: vec![],
            held: RefCell::default(),
            holds: false,
        }
    }

    /// Lists the keys once for all that follows, until it is told otherwise. To list thousands of them takes
    /// milliseconds, and a change may have a thousand edits. What another tab writes meanwhile is missed, as
    /// if both had saved at once: then both stand.
    pub fn hold(&mut self, holds: bool) {
        self.holds = holds;
        self.held.replace(None);
    }

    /// The store that is watched over.
    pub fn inner(&self) -> &S {
        &self.store
    }

    /// Whether nothing is kept but here, for as long as the page is open.
    pub fn is_alone(&self) -> bool {
        self.alone
    }

    /// Goes on without the store, with all that was seen of it.
    pub fn go_on_alone(&mut self) {
        self.alone = true;
    }

    /// Whether a refusal means that nothing can be kept there at all, by anyone. Some private windows have a
    /// store with room for nothing.
    pub fn keeps_nothing(&self, why: &StoreError) -> bool {
        let seen = self.seen.borrow();
        let mut some = seen.iter().take(1);
        // Quicker than to list all.
        let keeps = some.any(|(key, _)| self.store.read(key).is_ok_and(|text| text.is_some()));
        let is_empty = || self.store.keys().map_or(true, |keys| keys.is_empty());
        *why == StoreError::Refused || (!keeps && is_empty())
    }

    /// What was written and taken away since this was last asked, in that order.
    pub fn take_notes(&mut self) -> Vec<Note> {
        std::mem::take(&mut self.notes)
    }

    /// Another tab wrote a text, or took one away. The last text of a thing that lives is not let go of:
    /// no tab takes that away.
    pub fn elsewhere(&mut self, key: &str, text: Option<&str>) {
        let seen = self.seen.get_mut();
        if let Some(text) = text {
            seen.insert(key.to_owned(), text.to_owned());
            return;
        }
        let of = thing(key);
        let same = || seen.iter().filter(|(other, _)| thing(other) == of);
        if same().count() > 1 || same().any(|(_, text)| says_deleted(text)) {
            seen.remove(&key.to_owned());
        }
    }

    fn place_held(&self, key: &str) -> Option<Result<usize, usize>> {
        let held = self.held.borrow();
        held.as_ref().map(|keys| keys.binary_search_by(|known| known.as_str().cmp(key)))
    }

    /// Letters that all remembered keys and texts take, and those of these things among them; they stand in
    /// order, as `fermentside/<kind>/<id>`. What is no ASCII counts for more.
    pub fn letters(&self, things: &[String]) -> (usize, usize) {
        let seen = self.seen.borrow();
        seen.iter().fold((0, 0), |(all, of_them), (key, text)| {
            let letters = key.len() + text.len();
            let is_one = things.binary_search_by(|one| one.as_str().cmp(thing(key))).is_ok();
            (all + letters, of_them + if is_one { letters } else { 0 })
        })
    }

    /// Whether some of what was seen is there no more. A few texts are looked for, since what clears a
    /// store clears all of it.
    fn seems_cleared(&self) -> bool {
        let seen = self.seen.borrow();
        let step = seen.iter().count() / LOOKED_FOR + 1;
        let mut some = seen.iter().step_by(step);
        some.any(|(key, _)| self.store.read(key).is_ok_and(|text| text.is_none()))
    }

    /// Writes back what is gone: every text of the things of which nothing lies there any more; after
    /// going on alone, all there is. How many texts came back.
    ///
    /// # Errors
    /// [`StoreError`] when one is not taken. From then on all is kept here alone, until this succeeds.
    pub fn write_back(&mut self) -> Result<usize, StoreError> {
        if !self.alone && !self.seems_cleared() {
            return Ok(0);
        }
        let there = self.store.keys()?;
        let here = |key: &String| {
            let whole = self.alone && !there.contains(key);
            whole || !there.iter().any(|other| thing(other) == thing(key))
        };
        let seen = self.seen.borrow();
        let gone = seen.iter().filter(|(key, _)| here(key));
        let gone: Vec<_> = gone.map(|(key, text)| (key.clone(), text.clone())).collect();
        drop(seen);
        self.alone = true;
        for (key, text) in &gone {
            self.store.write(key, text)?;
            if self.store.read(key)?.as_ref() != Some(text) {
                return Err(StoreError::NotKept);
            }
            self.notes.push(Note { key: key.clone(), text: Some(text.clone()) });
        }
        self.alone = false;
        Ok(gone.len())
    }
}

/// What stands before the revision: which thing a key is of; the whole of a key that is of none.
fn thing(key: &str) -> &str {
    let of_thing = Key::read(key).is_some();
    if of_thing { before_revision(key) } else { key }
}

fn says_deleted(text: &str) -> bool {
    super::Revision::decode(text).is_ok_and(|revision| revision.record.deleted)
}

impl<S: Store> Store for Watched<S> {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        if self.alone {
            return Ok(self.seen.borrow().iter().map(|(key, _)| key.clone()).collect());
        }
        self.store.keys()
    }

    fn keys_under(&self, prefix: &str) -> Result<Vec<String>, StoreError> {
        if self.alone || !self.holds {
            let mut keys = self.keys()?;
            keys.retain(|key| key.starts_with(prefix));
            return Ok(keys);
        }
        let mut held = self.held.borrow_mut();
        let keys = match held.take() {
            Some(keys) => keys,
            None => in_order(self.store.keys()?, Ord::cmp),
        };
        let keys = held.insert(keys);
        let from = keys.partition_point(|key| key.as_str() < prefix);
        let under = keys.iter().skip(from).take_while(|key| key.starts_with(prefix));
        Ok(under.cloned().collect())
    }

    fn texts(&self) -> Option<Vec<(String, String)>> {
        let texts = if self.alone { None } else { self.store.texts() }?;
        let mut seen = self.seen.borrow_mut();
        for (key, text) in &texts {
            seen.insert(key.clone(), text.clone());
        }
        Some(texts)
    }

    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        if self.alone {
            return Ok(self.seen.borrow().get(&key.to_owned()).cloned());
        }
        let text = self.store.read(key)?;
        match &text {
            Some(text) => drop(self.seen.borrow_mut().insert(key.to_owned(), text.clone())),
            // Another tab may have taken it away: it is listed anew.
            None if self.place_held(key).is_some_and(|at| at.is_ok()) => drop(self.held.take()),
            None => {}
        }
        Ok(text)
    }

    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        if !self.alone {
            let told = self.store.write(key, text);
            // What the store holds afterwards decides, not what it said.
            if told.is_err() && self.store.read(key)?.as_deref() != Some(text) {
                return told;
            }
            self.notes.push(Note { key: key.to_owned(), text: Some(text.to_owned()) });
            if let (Some(Err(at)), Some(held)) = (self.place_held(key), self.held.get_mut()) {
                held.insert(at, key.to_owned());
            }
        }
        self.seen.get_mut().insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        if !self.alone {
            self.store.remove(key)?;
            self.notes.push(Note { key: key.to_owned(), text: None });
            if let (Some(Ok(at)), Some(held)) = (self.place_held(key), self.held.get_mut()) {
                held.remove(at);
            }
        }
        self.seen.get_mut().remove(&key.to_owned());
        Ok(())
    }
}
