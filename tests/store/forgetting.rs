//! Room that is freed: of what was deleted, and in need; and how little is read for it.
use crate::faulty::{Disk, Fault, Tab, minute, token};
use fermentside::store::{Archive, MemoryStore, SaveError, Store, StoreError};
use std::cell::{Cell, RefCell};
use std::rc::Rc;

type Shared = Rc<RefCell<Disk>>;

fn used(disk: &Shared) -> usize {
    disk.borrow().used()
}

/// A thing of 10,000 characters, written twice and deleted.
fn deleted(disk: &Shared) -> (Tab, Archive<Tab>) {
    let tab = Tab::new(disk);
    let mut archive = Archive::new(tab.clone());
    for n in 1..=2 {
        archive.save("note", "a", &"x".repeat(10_000), minute(n), token(n)).unwrap();
    }
    archive.delete("note", "a", minute(3), token(3)).unwrap();
    (tab, archive)
}

fn records(disk: &Shared) -> Vec<(String, bool)> {
    let loaded = Archive::new(Tab::new(disk)).load().unwrap();
    loaded.records.into_iter().map(|record| (record.id, record.deleted)).collect()
}

#[test]
fn what_was_deleted_takes_no_room_once_it_is_forgotten() {
    let disk = Shared::default();
    let (_, mut archive) = deleted(&disk);
    archive.save("note", "b", "stays", minute(4), token(4)).unwrap();
    assert!(used(&disk) > 10_000);
    assert_eq!(archive.forget("note", "b"), Ok(false), "what lives is not forgotten");
    assert_eq!(archive.forget("note", "a"), Ok(true));
    assert_eq!(archive.forget("note", "a"), Ok(false), "it is gone already");
    assert!(used(&disk) < 400, "{}", used(&disk));
    assert_eq!(records(&disk), [("b".to_owned(), false)]);
    // Had back after all, it is a new thing.
    let outcome = archive.save("note", "a", "again", minute(5), token(5)).unwrap();
    assert_eq!(outcome.record().revision, 1);
    assert_eq!(records(&disk).len(), 2);
}

#[test]
fn a_sweep_forgets_what_was_deleted_before_and_nothing_else() {
    let disk = Shared::default();
    let (_, mut archive) = deleted(&disk);
    archive.save("note", "b", "stays", minute(4), token(4)).unwrap();
    archive.save("note", "c", "goes later", minute(5), token(5)).unwrap();
    archive.delete("note", "c", minute(6), token(6)).unwrap();
    assert_eq!(archive.sweep(minute(2)), Ok(0));
    assert_eq!(archive.sweep(minute(5)), Ok(1));
    assert_eq!(records(&disk), [("b".to_owned(), false), ("c".to_owned(), true)]);
    // A page that is opened later knows it too.
    let mut later = Archive::new(Tab::new(&disk));
    assert_eq!(later.sweep(minute(60)), Ok(0), "nothing is known before it is loaded");
    later.load().unwrap();
    assert_eq!(later.sweep(minute(60)), Ok(1));
    assert_eq!(records(&disk), [("b".to_owned(), false)]);
}

#[test]
fn what_stands_beside_a_deletion_or_cannot_be_read_stays() {
    let disk = Shared::default();
    let (_, mut archive) = deleted(&disk);
    let mut elsewhere = Archive::new(Tab::new(&disk));
    elsewhere.save("note", "a", "from elsewhere", minute(4), token(4)).unwrap();
    assert_eq!(archive.forget("note", "a"), Ok(false));
    assert_eq!(records(&disk), [("a".to_owned(), false)]);

    let disk = Shared::default();
    let (_, mut archive) = deleted(&disk);
    disk.borrow_mut().plant(&format!("fermentside/note/a/9/{}", token(9)), "damaged");
    let before = used(&disk);
    assert_eq!(archive.forget("note", "a"), Ok(false));
    assert_eq!(archive.sweep(minute(9)), Ok(0));
    assert_eq!(used(&disk), before);
}

#[test]
fn whatever_fails_on_the_way_it_stays_deleted_or_is_gone() {
    for fault in [Fault::Fails, Fault::Lost, Fault::Denied, Fault::Torn, Fault::Dies] {
        for after in 0..20 {
            let disk = Shared::default();
            let (tab, mut archive) = deleted(&disk);
            tab.fault.set(Some((after, fault)));
            let forgotten = archive.forget("note", "a");
            let left = records(&disk);
            assert!(left.iter().all(|(_, deleted)| *deleted), "{fault:?} {after}: {left:?}");
            assert!(forgotten != Ok(true) || left.is_empty(), "{fault:?} {after}");
            // Tried again, it goes.
            tab.fault.set(None);
            let mut again = Archive::new(Tab::new(&disk));
            again.load().unwrap();
            again.sweep(minute(9)).unwrap();
            assert_eq!(disk.borrow().texts.len(), 0, "{fault:?} {after}");
        }
    }
}

/// A full store that counts how often it is read.
struct Full {
    texts: MemoryStore,
    reads: Cell<u32>,
    full: bool,
}

impl Store for Full {
    fn keys(&self) -> Result<Vec<String>, StoreError> {
        self.texts.keys()
    }
    fn read(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.reads.set(self.reads.get() + 1);
        self.texts.read(key)
    }
    fn write(&mut self, key: &str, text: &str) -> Result<(), StoreError> {
        if self.full { Err(StoreError::Full) } else { self.texts.write(key, text) }
    }
    fn remove(&mut self, key: &str) -> Result<(), StoreError> {
        self.texts.remove(key)
    }
}

/// Reads that a save takes which is refused for want of room, among things of so many revisions.
fn reads_of_a_refusal(things: u32, revisions: u32) -> u32 {
    let mut store = Full { texts: MemoryStore::new(), reads: Cell::new(0), full: false };
    let mut n = 0;
    for thing in 0..things {
        let mut archive = Archive::new(store);
        for _ in 0..revisions {
            n += 1;
            archive.save("note", &format!("t{thing}"), "body", minute(n), token(n)).unwrap();
        }
        store = archive.into_store();
    }
    store.full = true;
    store.reads.set(0);
    let mut archive = Archive::new(store);
    let refused = archive.save("note", "new", "body", minute(n), token(n + 1));
    assert_eq!(refused, Err(SaveError::Store(StoreError::Full)));
    archive.store().reads.get()
}

#[test]
fn a_save_that_is_refused_reads_little() {
    // Where nothing has been replaced there is nothing to give up.
    let few = reads_of_a_refusal(10, 1);
    assert_eq!(reads_of_a_refusal(200, 1), few);
    // Else each text that might go is read once, and the new one tried a few times.
    assert!(reads_of_a_refusal(100, 2) <= 2 * 100 + 10);
}
