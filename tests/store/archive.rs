//! What the archive does in the situations a person can come into.
use crate::faulty::{Disk, Fault, Tab, minute, token};
use fermentside::store::{
    Archive, Key, MemoryStore, Outcome, SaveError, Store, StoreError, Unreadable,
};
use std::cell::RefCell;
use std::rc::Rc;

type Shared = Rc<RefCell<Disk>>;

fn put(archive: &mut Archive<Tab>, id: &str, body: &str, n: u32) -> Result<Outcome, SaveError> {
    archive.save("note", id, body, minute(n), token(n))
}

fn tab(disk: &Shared) -> Archive<Tab> {
    Archive::new(Tab::new(disk))
}

fn bodies(disk: &Shared) -> Vec<String> {
    tab(disk).load().unwrap().records.into_iter().map(|r| r.body).collect()
}

fn keys(disk: &Shared) -> Vec<String> {
    disk.borrow().texts.keys().cloned().collect()
}

#[test]
fn a_save_keeps_the_one_before_and_drops_the_rest() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    for n in 1..=5 {
        let outcome = put(&mut archive, "a", &n.to_string(), n).unwrap();
        assert!(matches!(&outcome, Outcome::Saved(r) if r.revision == n));
    }
    let left: Vec<u32> = keys(&disk).iter().map(|k| Key::read(k).unwrap().revision).collect();
    assert_eq!(left, [4, 5]);
    assert_eq!(archive.earlier("note", "a").unwrap()[0].body, "4");
}

#[test]
fn a_deleted_thing_can_be_had_back() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    put(&mut archive, "a", "here", 1).unwrap();
    archive.delete("note", "a", minute(2), token(2)).unwrap();
    assert!(tab(&disk).load().unwrap().records[0].deleted);
    let before = archive.earlier("note", "a").unwrap().remove(0);
    assert!(matches!(put(&mut archive, "a", &before.body, 3), Ok(Outcome::Saved(_))));
    assert_eq!(bodies(&disk), ["here"]);
}

#[test]
fn two_tabs_stand_side_by_side_until_one_settles_it() {
    let disk = Shared::default();
    put(&mut tab(&disk), "a", "first", 1).unwrap();
    let (mut one, mut two) = (tab(&disk), tab(&disk));
    one.load().unwrap();
    two.load().unwrap();
    put(&mut one, "a", "from one", 2).unwrap();
    let Outcome::SavedBeside(conflict) = put(&mut two, "a", "from two", 3).unwrap() else {
        panic!("it should have told of the other")
    };
    assert_eq!(conflict.shown.body, "from two");
    assert_eq!(conflict.others[0].body, "from one");
    let loaded = one.load().unwrap();
    assert_eq!(loaded.conflicts, [conflict]);

    let keep = loaded.conflicts[0].others[0].token;
    assert!(matches!(one.resolve("note", "a", keep, minute(4), token(4)), Ok(Outcome::Saved(_))));
    let after = tab(&disk).load().unwrap();
    assert_eq!((after.conflicts.len(), after.records[0].body.as_str()), (0, "from one"));
    // Both are still there, one step back.
    assert_eq!(one.earlier("note", "a").unwrap().len(), 2);
}

#[test]
fn settling_leaves_what_came_since() {
    let disk = Shared::default();
    let (mut one, mut two, mut three) = (tab(&disk), tab(&disk), tab(&disk));
    put(&mut one, "a", "one", 1).unwrap();
    put(&mut two, "a", "two", 2).unwrap();
    let keep = one.load().unwrap().conflicts[0].shown.token;
    put(&mut three, "a", "three", 3).unwrap();
    let outcome = one.resolve("note", "a", keep, minute(4), token(4)).unwrap();
    let Outcome::SavedBeside(conflict) = outcome else { panic!("three was not seen") };
    assert_eq!((conflict.shown.body.as_str(), conflict.others[0].body.as_str()), ("two", "three"));
}

#[test]
fn a_damaged_text_gives_way_to_the_one_before_and_stays() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    put(&mut archive, "a", "old", 1).unwrap();
    put(&mut archive, "a", "new", 2).unwrap();
    let key = keys(&disk).pop().unwrap();
    let damaged = disk.borrow().texts[&key].replace("new", "nex");
    disk.borrow_mut().plant(&key, &damaged);
    let loaded = archive.load().unwrap();
    assert_eq!(loaded.records[0].body, "old");
    assert_eq!(loaded.set_aside[0].why, Unreadable::Checksum);
    assert_eq!(loaded.set_aside[0].text, damaged);
    assert_eq!(loaded.set_aside[0].of().map(|k| k.revision), Some(2));
    for n in 3..6 {
        let outcome = put(&mut archive, "a", &n.to_string(), n).unwrap();
        assert_eq!(outcome.record().revision, n, "its number is above the damaged one's");
    }
    assert_eq!(bodies(&disk), ["5"]);
    assert_eq!(disk.borrow().texts[&key], damaged);
    assert!(archive.everything_as_text().unwrap().contains("nex"));
}

#[test]
fn damage_under_an_open_page_makes_no_conflict() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    put(&mut archive, "a", "old", 1).unwrap();
    put(&mut archive, "a", "on the screen", 2).unwrap();
    let key = keys(&disk).pop().unwrap();
    disk.borrow_mut().plant(&key, "");
    assert!(matches!(put(&mut archive, "a", "next", 3), Ok(Outcome::Saved(_))));
    assert_eq!(tab(&disk).load().unwrap().conflicts, []);
}

#[test]
fn room_is_not_made_where_something_is_damaged() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    put(&mut archive, "a", "one", 1).unwrap();
    put(&mut archive, "a", "two", 2).unwrap();
    disk.borrow_mut().plant(&format!("fermentside/note/a/3/{}", token(3)), "damaged");
    let before = keys(&disk);
    let used = disk.borrow().used();
    disk.borrow_mut().quota = Some(used);
    assert_eq!(put(&mut archive, "b", "more", 4), Err(StoreError::Full.into()));
    assert_eq!(archive.delete("note", "a", minute(5), token(5)), Err(StoreError::Full.into()));
    assert_eq!(keys(&disk), before);
}

#[test]
fn what_a_newer_page_saved_is_kept_and_not_written_to() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    put(&mut archive, "a", "old", 1).unwrap();
    let rest = "in a form to come";
    let sum = crc32fast::hash(&[&2_u32.to_le_bytes()[..], rest.as_bytes()].concat());
    let text = format!("fermentside 2 {} {sum:08x}\n{rest}", rest.len());
    disk.borrow_mut().plant(&format!("fermentside/note/a/2/{}", token(9)), &text);
    let before = disk.borrow().texts.clone();
    let loaded = archive.load().unwrap();
    assert_eq!(loaded.set_aside[0].why, Unreadable::Newer { schema: 2 });
    assert_eq!(loaded.records[0].body, "old");
    let refused = Err(SaveError::Newer { schema: 2 });
    assert_eq!(put(&mut archive, "a", "over it", 3), refused);
    assert_eq!(archive.delete("note", "a", minute(3), token(3)), refused);
    assert_eq!(disk.borrow().texts, before);
    assert!(put(&mut archive, "b", "another thing", 4).is_ok());
}

#[test]
fn a_full_store_gives_up_what_was_replaced_and_nothing_else() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    let long = |n: u32| n.to_string().repeat(400);
    for n in 1..=4 {
        put(&mut archive, if n % 2 == 0 { "a" } else { "b" }, &long(n), n).unwrap();
    }
    let used = disk.borrow().used();
    disk.borrow_mut().quota = Some(used);
    put(&mut archive, "c", &long(5), 5).unwrap();
    assert_eq!(bodies(&disk), [long(4), long(3), long(5)]);
    assert_eq!(keys(&disk).len(), 3);
    assert_eq!(put(&mut archive, "c", &"x".repeat(2000), 6), Err(StoreError::Full.into()));
    assert_eq!(bodies(&disk), [long(4), long(3), long(5)]);
}

#[test]
fn deleting_makes_room_in_a_full_store() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    put(&mut archive, "a", &"a".repeat(2000), 1).unwrap();
    let used = disk.borrow().used();
    disk.borrow_mut().quota = Some(used + 300);
    archive.delete("note", "a", minute(2), token(2)).unwrap();
    assert!(put(&mut archive, "b", &"b".repeat(1500), 3).is_ok());
    assert_eq!(bodies(&disk), ["b".repeat(1500)], "what was deleted goes whole");
}

#[test]
fn what_was_deleted_longest_ago_makes_room_first_and_its_marks_take_none() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    let names = ["a", "b", "c", "d", "e"];
    for (n, name) in (1..).zip(names) {
        put(&mut archive, name, &name.repeat(400), n).unwrap();
        disk.borrow_mut().quota = None;
        archive.delete("note", name, minute(10 - n), token(10 + n)).unwrap();
    }
    let used = disk.borrow().used();
    disk.borrow_mut().quota = Some(used);
    put(&mut archive, "f", "one more", 20).unwrap();
    let left: Vec<_> = archive.load().unwrap().records.into_iter().map(|r| r.id).collect();
    assert_eq!(left, ["a", "b", "c", "d", "f"], "the one of the earliest minute is gone");
    // Five deleted make room for more than five others of their size: their marks go too.
    let more = (30..)
        .zip('g'..)
        .map(|(n, name)| put(&mut archive, &name.to_string(), &"x".repeat(400), n));
    let fit = more.take_while(Result::is_ok).count();
    assert!(fit > 5, "{fit}");
    assert!(bodies(&disk).iter().all(|body| !body.is_empty()));
}

#[test]
fn deleting_works_without_room_for_anything() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    put(&mut archive, "a", "first", 1).unwrap();
    put(&mut archive, "b", "second", 2).unwrap();
    let used = disk.borrow().used();
    disk.borrow_mut().quota = Some(used);
    // One that has not looked does not know what it would take away.
    assert_eq!(tab(&disk).delete("note", "a", minute(3), token(3)), Err(StoreError::Full.into()));
    let outcome = archive.delete("note", "a", minute(4), token(4)).unwrap();
    assert!(matches!(&outcome, Outcome::TakenAway(r) if r.body == "first"));
    assert_eq!(bodies(&disk), ["second"]);
    assert!(matches!(put(&mut archive, "a", "first", 5), Ok(Outcome::Saved(_))));
    assert_eq!(bodies(&disk), ["first", "second"]);
}

#[test]
fn what_the_store_only_claims_to_keep_is_not_called_saved() {
    for (fault, why) in [
        (Fault::Lost, StoreError::NotKept),
        (Fault::Torn, StoreError::NotKept),
        (Fault::Fails, StoreError::Failed("test".to_owned())),
    ] {
        let disk = Shared::default();
        let mut archive = tab(&disk);
        put(&mut archive, "a", "first", 1).unwrap();
        // List, read, then write.
        archive.store().fault.set(Some((2, fault)));
        assert_eq!(put(&mut archive, "a", "second", 2), Err(why.into()));
        assert_eq!((bodies(&disk), keys(&disk).len()), (vec!["first".to_owned()], 1));
        assert!(matches!(put(&mut archive, "a", "second", 3), Ok(Outcome::Saved(_))));
    }
}

#[test]
fn twins_go_together() {
    let disk = Shared::default();
    let (mut one, mut two) = (tab(&disk), tab(&disk));
    put(&mut one, "a", "same", 1).unwrap();
    assert!(matches!(put(&mut two, "a", "same", 2), Ok(Outcome::Saved(_))));
    assert_eq!(one.load().unwrap().conflicts, []);
    assert!(matches!(put(&mut one, "a", "next", 3), Ok(Outcome::Saved(_))));
}

#[test]
fn names_and_tokens_are_checked() {
    let disk = Shared::default();
    let mut archive = tab(&disk);
    for (kind, id) in [("", "a"), ("Note", "a"), ("note", ""), ("note", "a/b"), ("no/te", "a")] {
        let result = archive.save(kind, id, "", minute(1), token(1));
        assert_eq!(result, Err(SaveError::BadName), "{kind} {id}");
    }
    for n in 1..=4 {
        put(&mut archive, "a", &n.to_string(), n).unwrap();
    }
    // The first is no longer there, but still named by what came after.
    assert_eq!(put(&mut archive, "a", "again", 1), Err(SaveError::TokenUsed));
    let none = archive.resolve("note", "a", token(99), minute(5), token(5));
    assert_eq!(none, Err(SaveError::NotThere));
}

#[test]
fn one_kind_of_archive_serves_whichever_store_there_is() {
    let store: Box<dyn Store> = Box::new(MemoryStore::new());
    let mut archive = Archive::new(store);
    archive.save("note", "a", "here", minute(1), token(1)).unwrap();
    assert_eq!(archive.load().unwrap().records[0].body, "here");
}
