//! Finding what is kept: every key is looked at, no index is trusted.

use super::envelope::{Record, Revision, Unreadable};
use super::key::{Key, PREFIX, is_ours};
use super::lineage::Conflict;
use super::token::Token;
use super::{Store, StoreError};
use crate::order::{ByKey, in_order};

/// How often a scan begins anew because another tab took away a text under it.
const SCANS: usize = 4;

/// Everything that is kept.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Loaded {
    /// The standing revision of each thing, by kind and id; deleted things too. Of a thing in conflict,
    /// the one to show.
    pub records: Vec<Record>,
    /// Things of which several different revisions stand.
    pub conflicts: Vec<Conflict>,
    /// Texts that could not be read. They stay where they are.
    pub set_aside: Vec<SetAside>,
    /// What is deleted and can be had back: the revision that says so, and what it said before.
    pub deleted: Vec<(Record, Record)>,
}

/// A stored text that could not be read, as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetAside {
    /// The key under which it lies.
    pub key: String,
    /// The whole text; empty when the store did not give it out.
    pub text: String,
    /// What is the matter with it.
    pub why: Unreadable,
}

impl SetAside {
    /// Which thing and revision it is of, as far as its key tells.
    #[must_use]
    pub fn of(&self) -> Option<Key> {
        Key::read(&self.key)
    }
}

/// All that lies there of one thing.
#[derive(Debug, Default)]
pub(super) struct Shelf {
    /// What can be read.
    pub(super) revisions: Vec<Revision>,
    /// Tokens of all keys, readable or not.
    pub(super) tokens: Vec<Token>,
    /// The greatest number among all keys.
    pub(super) highest: u32,
    /// What cannot be read.
    pub(super) unreadable: Vec<SetAside>,
}

impl Shelf {
    /// The schema of a newer program that has written here.
    pub(super) fn newer(&self) -> Option<u32> {
        self.unreadable.iter().find_map(|s| match s.why {
            Unreadable::Newer { schema } => Some(schema),
            _ => None,
        })
    }
}

/// Everything under our prefix, by kind and id.
#[derive(Debug, Default)]
pub(super) struct Shelves {
    pub(super) things: ByKey<(String, String), Shelf>,
    /// Texts under keys that tell of no thing.
    pub(super) strays: Vec<SetAside>,
}

impl Shelves {
    /// Lays a text, or why there is none, with what else there is of its thing.
    fn lay(&mut self, name: String, text: Result<String, Unreadable>) {
        let Some(key) = Key::read(&name) else {
            let why = text.clone().err().unwrap_or(Unreadable::UnknownKey);
            let text = text.unwrap_or_default();
            self.strays.push(SetAside { key: name, text, why });
            return;
        };
        let shelf = self.things.or_insert_with((key.kind.clone(), key.id.clone()), Shelf::default);
        shelf.tokens.push(key.token);
        shelf.highest = shelf.highest.max(key.revision);
        let (text, read) = match text {
            Ok(text) => {
                let read = Revision::decode_under(&key, &text);
                (text, read)
            }
            Err(why) => (String::new(), Err(why)),
        };
        match read {
            Ok(revision) => shelf.revisions.push(revision),
            Err(why) => shelf.unreadable.push(SetAside { key: name, text, why }),
        }
    }
}

/// Our keys that begin with `prefix`, in order.
pub(super) fn our_keys(store: &dyn Store, prefix: &str) -> Result<Vec<String>, StoreError> {
    let mut keys = store.keys_under(prefix)?;
    keys.retain(|k| is_ours(k));
    let mut keys = in_order(keys, Ord::cmp);
    keys.dedup();
    Ok(keys)
}

/// The beginning of all keys of one thing.
pub(super) fn prefix_of(kind: &str, id: &str) -> String {
    format!("{PREFIX}{kind}/{id}/")
}

/// Reads all that lies under keys beginning with `prefix`.
///
/// Another tab may write a new revision and remove the old one between our list and our reading; then
/// the list is old, and a thing would seem gone that is not. So the scan begins anew.
pub(super) fn scan(store: &dyn Store, prefix: &str) -> Result<Shelves, StoreError> {
    let all = (prefix == PREFIX).then(|| store.texts()).flatten();
    if let Some(texts) = all {
        let mut shelves = Shelves::default();
        texts.into_iter().for_each(|(name, text)| shelves.lay(name, Ok(text)));
        return Ok(shelves);
    }
    scan_listed(store, &|| our_keys(store, prefix))
}

/// The same of things with more than one key: of the others nothing has been replaced.
pub(super) fn scan_replaced(store: &dyn Store) -> Result<Shelves, StoreError> {
    scan_listed(store, &|| {
        let keys = our_keys(store, PREFIX)?;
        // As texts: there are thousands, and few that are not alone.
        let thing = |at: usize| keys.get(at).map(|name| before_revision(name));
        let like = |at: usize, other: usize| thing(at) == thing(other);
        let places =
            (0..keys.len()).filter(|at| (*at > 0 && like(*at, at - 1)) || like(*at, at + 1));
        Ok(places.filter_map(|at| keys.get(at).cloned()).collect())
    })
}

/// Of a key what stands before the revision: which thing it is of.
pub(super) fn before_revision(key: &str) -> &str {
    key.rsplitn(3, '/').last().unwrap_or(key)
}

fn scan_listed(
    store: &dyn Store,
    list: &dyn Fn() -> Result<Vec<String>, StoreError>,
) -> Result<Shelves, StoreError> {
    let mut shelves = Shelves::default();
    for _ in 0..SCANS {
        let (found, whole) = read_all(store, list()?);
        shelves = found;
        if whole {
            break;
        }
    }
    Ok(shelves)
}

/// What lies under keys, and whether every one of them still had a text.
pub(super) fn read_all(store: &dyn Store, keys: Vec<String>) -> (Shelves, bool) {
    let mut shelves = Shelves::default();
    let mut whole = true;
    for name in keys {
        match store.read(&name) {
            Ok(Some(text)) => shelves.lay(name, Ok(text)),
            Ok(None) => whole = false,
            Err(why) => shelves.lay(name, Err(Unreadable::NotRead(why))),
        }
    }
    (shelves, whole)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::key::PROBE;
    use crate::store::{Archive, MemoryStore, Watched};
    use std::cell::Cell;

    /// A store in which another tab replaces a text between our first list and our reading.
    struct Moving {
        before: MemoryStore,
        after: MemoryStore,
        lists: Cell<u32>,
    }

    impl Store for Moving {
        fn keys(&self) -> Result<Vec<String>, StoreError> {
            self.lists.set(self.lists.get() + 1);
            if self.lists.get() == 1 { self.before.keys() } else { self.after.keys() }
        }
        fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
            self.after.read(key)
        }
        fn write(&mut self, _: &str, _: &str) -> Result<(), StoreError> {
            Err(StoreError::Refused)
        }
        fn remove(&mut self, _: &str) -> Result<(), StoreError> {
            Err(StoreError::Refused)
        }
    }

    #[test]
    fn a_text_replaced_during_the_scan_is_found_in_its_new_place() {
        let mut archive = Archive::new(MemoryStore::new());
        let mut stores = Vec::new();
        for n in 1..=3 {
            let at = format!("2026-03-01T09:0{n}+00:00").parse().expect("a moment");
            archive
                .save("note", "a", &n.to_string(), at, Token::from_random([n; 8]))
                .expect("saved");
            stores.push(archive.store().clone());
        }
        let (before, after) = (stores.remove(0), stores.remove(1));
        let mut moving = Archive::new(Moving { before, after, lists: Cell::new(0) });
        let loaded = moving.load().expect("loads");
        assert_eq!(loaded.records.len(), 1);
        assert_eq!(loaded.records[0].body, "3");
    }

    /// A store that gives all its texts at once, and then none alone.
    struct AtOnce(MemoryStore);

    impl Store for AtOnce {
        fn keys(&self) -> Result<Vec<String>, StoreError> {
            Err(StoreError::Refused)
        }
        fn texts(&self) -> Option<Vec<(String, String)>> {
            let keys = our_keys(&self.0, PREFIX).ok()?;
            let text = |key: String| self.0.read(&key).ok().flatten().map(|text| (key, text));
            keys.into_iter().map(text).collect()
        }
        fn read(&self, _: &str) -> Result<Option<String>, StoreError> {
            Err(StoreError::Refused)
        }
        fn write(&mut self, _: &str, _: &str) -> Result<(), StoreError> {
            Err(StoreError::Refused)
        }
        fn remove(&mut self, _: &str) -> Result<(), StoreError> {
            Err(StoreError::Refused)
        }
    }

    #[test]
    fn read_at_once_it_is_what_it_is_one_by_one_and_as_well_remembered() {
        let mut archive = Archive::new(MemoryStore::new());
        for (n, id) in (1..).zip(["a", "b", "a", "c"]) {
            let at = format!("2026-03-01T09:0{n}+00:00").parse().expect("a moment");
            archive
                .save("note", id, &n.to_string(), at, Token::from_random([n; 8]))
                .expect("saved");
        }
        let mut store = archive.store().clone();
        for (key, text) in [(PROBE, "x"), ("theirs", "x"), ("fermentside/odd", "x")] {
            store.write(key, text).expect("writes");
        }
        let mut one_by_one = Archive::new(Watched::new(store.clone()));
        let mut at_once = Archive::new(Watched::new(AtOnce(store)));
        let loaded = at_once.load().expect("loads");
        assert_eq!(loaded, one_by_one.load().expect("loads"));
        assert_eq!((loaded.records.len(), loaded.set_aside.len()), (3, 1));
        let letters = one_by_one.store().letters(&[]);
        assert_eq!(at_once.store().letters(&[]), letters);
    }

    #[test]
    fn keys_of_others_and_of_the_probe_are_left_out() {
        let mut store = MemoryStore::new();
        for key in ["theirs", "fermentsider/x", PROBE, "fermentside/odd", "fermentside/note/a/1/x"]
        {
            store.write(key, "text").expect("writes");
        }
        let loaded = Archive::new(store).load().expect("loads");
        let listed: Vec<_> = loaded.set_aside.iter().map(|s| (s.key.as_str(), &s.why)).collect();
        let why = &Unreadable::UnknownKey;
        assert_eq!(listed, [("fermentside/note/a/1/x", why), ("fermentside/odd", why)]);
    }
}
