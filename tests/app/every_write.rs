//! A season in which every single writing goes wrong in turn, once and for good, before it is done after all.

use crate::batches::start;
use crate::gear::add_bottles;
use crate::paper::{Fault, Paper};
use fermentside::app::Keeper;
use fermentside::batch::Journal;

/// What a page that is opened now would show is what this one shows, and this one goes on.
#[track_caller]
fn is_well(phone: &Paper, when: &str) {
    let opened = Keeper::new(phone.shelf.clone()).load().expect("it is read");
    assert!(opened.set_aside.is_empty() && opened.closed.is_empty(), "half-written: {when}");
    assert!(opened.conflicts.is_empty(), "two versions: {when}");
    let kept = Journal::of(opened.entries);
    assert!(kept == phone.model.journal, "{when}: what is shown is not what is kept");
    assert!(!phone.screen().main.is_empty(), "{when}");
}

/// Does it, with each of its writings going wrong in every way, until it is done. A fault for good leaves
/// some of it done, so that less is left to go wrong.
#[track_caller]
fn does(phone: &mut Paper, words: &str) {
    does_with(phone, words, &[false, true]);
}

#[track_caller]
fn does_with(phone: &mut Paper, words: &str, for_good: &[bool]) {
    let before = phone.model.journal.clone();
    let ways = [Fault::Fails, Fault::Lost, Fault::Torn, Fault::Full];
    let ways = ways.iter().flat_map(|fault| for_good.iter().map(|lasts| (*fault, *lasts)));
    // Where there is no room only once, some is made; and a deletion takes away what it cannot mark.
    let works =
        |fault, lasts: bool| fault == Fault::Full && (!lasts || words.starts_with("Delete"));
    let ways: Vec<_> = ways.filter(|(fault, lasts)| !works(*fault, *lasts)).collect();
    for after in 0_u32.. {
        for &(fault, lasts) in &ways {
            let faults = *phone.shelf.faults.borrow();
            *phone.shelf.faulty.borrow_mut() = Some((after, fault, lasts));
            phone.tap(words);
            *phone.shelf.faulty.borrow_mut() = None;
            is_well(phone, &format!("{words}, {fault:?} after {after}, for good: {lasts}"));
            let went_wrong = *phone.shelf.faults.borrow() > faults;
            if !went_wrong || !phone.text().contains("Not saved") {
                assert!(phone.model.journal != before, "{words} was done");
                return;
            }
        }
    }
}

fn a_batch(phone: &mut Paper, name: &str, readings: u32) -> String {
    phone.go("#/batches/new");
    phone.type_into("Name", name);
    phone.type_into("Volume in the fermenter", "20");
    does(phone, "Start");
    let batch = phone.place().trim_end_matches("pitch").to_owned();
    for n in 0..readings {
        phone.hours(12.0);
        phone.go(&format!("{batch}watch"));
        if !phone.text().contains("Hydrometer reads") {
            phone.tap("Add a reading");
        }
        phone.type_into("Hydrometer reads", &format!("1.0{}", 48 - n));
        phone.type_into("Sample temperature", "20");
        does(phone, "Save the reading");
    }
    batch
}

#[test]
fn whichever_writing_goes_wrong_nothing_shown_as_saved_is_missing() {
    let mut phone = Paper::new();
    let first = start(&mut phone, "Cellar mild");
    let batch = a_batch(&mut phone, "Cellar bitter", 12);
    phone.go(&format!("{batch}edit"));
    phone.type_into("Name", "Cellar best");
    does(&mut phone, "Save");
    phone.hours(1.0);
    phone.go("#/gear");
    add_bottles(&mut phone, "Brown ones", "20");
    phone.tap("Change Brown ones");
    phone.type_into("How many", "21");
    does(&mut phone, "Save");
    does(&mut phone, "Undo");
    does(&mut phone, "Night");
    does(&mut phone, "US");
    phone.go(&format!("{first}edit"));
    does(&mut phone, "Delete this batch");
    does(&mut phone, "Undo");
    phone.go(&format!("{batch}edit"));
    for for_good in [&[false][..], &[false], &[false], &[false], &[false], &[false, true]] {
        phone.go(&format!("{batch}edit"));
        does_with(&mut phone, "Delete this batch", for_good);
        does_with(&mut phone, "Undo", for_good);
    }
    phone.go(&format!("{batch}edit"));
    does_with(&mut phone, "Delete this batch", &[false]);
    phone.hours(1.0);
    phone.go("#/gear");
    does_with(&mut phone, "Have it back", &[false]);
    let points = *phone.shelf.faults.borrow();
    println!("{points} writings went wrong");
    assert!(points >= 500, "{points}");
    phone.reload();
    is_well(&phone, "at the end");
}
