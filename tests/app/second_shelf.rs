//! A browser that brings its first store to the disk late, and dies at any moment.

use crate::paper::brewing_day;
use crate::shelf::{batch, bottling, id, reading};
use fermentside::app::{Event, Keeper, Opened};
use fermentside::batch::{Change, Edit, Entry, EntryKey, Id, Journal, Kind};
use fermentside::quantity::{Hours, Measured};
use fermentside::store::{Lying, MemoryStore, Store, StoreError, Token};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

/// What the page sees, and what is on the disk.
#[derive(Clone, Default)]
struct Late {
    seen: Rc<RefCell<MemoryStore>>,
    disk: MemoryStore,
}

impl Late {
    fn flush(&mut self) {
        self.disk = self.seen.borrow().clone();
    }

    /// The browser dies and is started again.
    fn killed(&self) -> Self {
        Self { seen: Rc::new(RefCell::new(self.disk.clone())), disk: self.disk.clone() }
    }
}

impl Store for Late {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        self.seen.borrow().keys()
    }
    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.seen.borrow().read(key)
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        self.seen.borrow_mut().write(key, text)
    }
    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        self.seen.borrow_mut().remove(key)
    }
}

const HOUR: f64 = 3_600_000.0;

/// A phone in the hand: the keeper over the first store, and the second shelf beside it.
struct Phone {
    late: Late,
    keeper: Keeper<Late>,
    second: BTreeMap<String, String>,
    /// Hours since the story began.
    hours: f64,
    tokens: u64,
}

impl Phone {
    fn new() -> Self {
        let late = Late::default();
        let mut keeper = Keeper::new(late.clone());
        keeper.load().expect("it is empty");
        Self { late, keeper, second: BTreeMap::new(), hours: 0.0, tokens: 0 }
    }

    fn put_there(&mut self) {
        for note in self.keeper.notes() {
            match note.text {
                Some(text) => {
                    let stored = Lying::stored(&text, self.hours * HOUR);
                    self.second.insert(note.key, stored);
                }
                None => drop(self.second.remove(&note.key)),
            }
        }
    }

    /// Saves, until the page says that it is saved.
    fn saves(&mut self, change: Change) {
        self.hours += 0.05;
        let tokens = &mut self.tokens;
        let mut token = || {
            *tokens += 1;
            Token::from_random(tokens.to_be_bytes())
        };
        let now = brewing_day().after(Hours::new(self.hours).expect("hours"));
        let kept = self.keeper.save(1, (&change, &change), now, &mut token);
        assert_eq!(kept, Event::Saved(1));
        self.put_there();
    }

    /// The browser dies and is started again: what the page then shows.
    fn killed(&mut self) -> Opened {
        self.late = self.late.killed();
        self.keeper = Keeper::new(self.late.clone());
        let opened = self.keeper.load().expect("loads");
        let lying: Vec<Lying> =
            self.second.iter().filter_map(|(key, text)| Lying::read(key, text)).collect();
        let (anew, settled) = self.keeper.merge(&lying, self.hours * HOUR);
        self.put_there();
        settled.iter().for_each(|key| drop(self.second.remove(key)));
        anew.unwrap_or(opened)
    }
}

fn noted(n: usize) -> (Id, Entry) {
    (id(&format!("r{n}")), Entry::Reading(reading(9.0 - 0.1 * n as f64, 1.050 - 0.0005 * n as f64)))
}

/// A season: a batch, readings, corrections of them, some taken out, the bottling.
fn season() -> Vec<Change> {
    let mut all: Vec<Change> =
        batch(10.0).into_iter().map(|(id, entry)| Change::put(id, entry)).collect();
    for n in 0..30 {
        let (id, entry) = noted(n);
        all.push(Change::put(id.clone(), entry.clone()));
        if n % 3 == 0 {
            let Entry::Reading(mut again) = entry else { continue };
            again.note = format!("looked again {n}");
            all.push(Change::all([Edit::Put(id.clone(), Entry::Reading(again)), {
                let (more, entry) = noted(n + 100);
                Edit::Put(more, entry)
            }]));
        }
        if n % 4 == 3 {
            all.push(Change::remove(EntryKey { kind: Kind::Reading, id }));
        }
    }
    let (id, entry) = bottling(0.2);
    all.push(Change::put(id, entry));
    all
}

#[test]
fn a_browser_killed_after_any_save_has_all_that_was_called_saved() {
    let season = season();
    let mut lost_without = 0;
    for dies_after in 1..=season.len() {
        for flushed_after in [0, dies_after / 2, dies_after.saturating_sub(1)] {
            let mut phone = Phone::new();
            let mut told = Journal::default();
            for (n, change) in season.iter().take(dies_after).enumerate() {
                if n == flushed_after {
                    phone.late.flush();
                }
                told.apply(change.clone()).expect("it fits");
                phone.saves(change.clone());
            }
            let alone = Keeper::new(phone.late.killed()).load().expect("loads");
            lost_without += usize::from(Journal::of(alone.entries) != told);
            for _ in 0..2 {
                let opened = phone.killed();
                assert_eq!(Journal::of(opened.entries), told, "killed after {dies_after}");
                assert!(opened.conflicts.is_empty() && opened.set_aside.is_empty());
            }
        }
    }
    println!("lost without the second shelf: {lost_without} of {} times", 3 * season.len());
    assert!(lost_without > season.len(), "the browser of this test does lose something");
}

#[test]
fn the_second_shelf_lets_go_of_what_is_known_to_be_on_the_disk() {
    let mut phone = Phone::new();
    for change in season().into_iter().take(10) {
        phone.saves(change);
    }
    phone.late.flush();
    let lying = phone.second.len();
    assert!(lying >= 10);
    phone.hours += 1.0;
    phone.killed();
    assert_eq!(phone.second.len(), lying, "an hour is no proof");
    phone.hours += 1.5;
    phone.killed();
    assert_eq!(phone.second.len(), 0);
    // What the first store lost however long ago comes back, and is on the second shelf as new.
    phone.saves(Change::put(id("late"), noted(50).1));
    phone.hours += 100.0;
    let opened = phone.killed();
    assert!(opened.entries.iter().any(|(known, _)| *known == id("late")));
    assert_eq!(phone.second.len(), 1);
    let (key, text) = phone.second.first_key_value().expect("one");
    assert!(Lying::read(key, text).expect("as stored").since >= 100.0 * HOUR);
}

#[test]
fn what_is_none_of_ours_on_the_second_shelf_is_not_believed() {
    let mut phone = Phone::new();
    phone.second.insert("fermentside.theme".to_owned(), Lying::stored("night", 0.0));
    phone.second.insert("fermentside/reading/r/1/x".to_owned(), Lying::stored("odd", 0.0));
    phone.killed();
    assert!(phone.second.is_empty());
    assert_eq!(phone.late.keys(), Ok(vec![]));
    assert_eq!(Lying::read("k", "no time"), None);
    assert_eq!(Lying::read("k", "12"), None);
}
