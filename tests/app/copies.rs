//! A record leaves the phone and comes back.

use crate::gear::{add_bottles, at_gear, bottles};
use crate::paper::{Paper, Shelf, brewing_day};
use crate::shelf::{bottling, id, reading, with};
use fermentside::app::{Event, NoFile, What};
use fermentside::quantity::Zone;

/// A phone with a whole batch, and bottles.
fn full() -> Paper {
    let readings = [(10.0, 1.048), (6.0, 1.014), (4.0, 1.012), (1.0, 1.012)];
    let readings = readings.map(|(days, sg)| reading(days, sg));
    let mut phone = with(11.0, readings, vec![bottling(0.5)]);
    phone.tap("Gear");
    add_bottles(&mut phone, "Brown ones", "20");
    phone
}

/// Another phone, with nothing on it.
fn another() -> Paper {
    let mut phone = Paper::with(Shelf::of_others(), brewing_day(), Zone::fixed(60), 99);
    phone.tap("Gear");
    phone
}

fn copy_of(phone: &mut Paper) -> String {
    phone.tap("Gear");
    phone.tap("Make a copy of everything");
    phone.value_in("Or copy this text")
}

fn records(copy: &str) -> &str {
    copy.split_once("\"records\"").expect("records").1
}

#[test]
fn out_and_in_on_an_empty_phone_is_the_same_and_can_be_taken_back() {
    let mut first = full();
    let copy = copy_of(&mut first);
    let mut second = another();
    second.choose_file("The file of a copy", &copy);
    second.sees(
        "Would be added: 1 batch, 1 pitching, 4 readings, 1 bottling day, 1 entry of bottles",
    );
    second.sees("Would be changed: nothing");
    assert_eq!(second.model.journal.batches().count(), 0, "it is only looked at");
    second.tap("Bring it in");
    second.sees("Brought in: 1 batch, 1 pitching, 4 readings");
    second.sees_no("Would be added");
    assert_eq!(second.model.journal, first.model.journal);
    second.reload();
    assert_eq!(second.model.journal, first.model.journal);
    assert_eq!(records(&copy_of(&mut second)), records(&copy), "with times, numbers and tokens");
    // Once more, and nothing is new.
    second.choose_file("The file of a copy", &copy);
    second.sees("Stay as they are: 8 that say the same");
    second.sees("Nothing in it is new here.");
    second.sees_no("Bring it in");

    let mut third = another();
    third.choose_file("The file of a copy", &copy);
    third.tap("Bring it in");
    third.tap("Undo");
    assert_eq!(third.model.journal.batches().count(), 0);
    third.reload();
    assert_eq!(third.model.journal.batches().count(), 0);
    third.sees_no("could not be read");
    // What was taken back can be brought in again.
    third.choose_file("The file of a copy", &copy);
    third.tap("Bring it in");
    third.reload();
    assert_eq!(third.model.journal, first.model.journal);
    third.sees_no("Changed in two places");
}

#[test]
fn the_later_saving_comes_and_the_older_stays() {
    let mut first = full();
    let early = copy_of(&mut first);
    let mut second = another();
    second.choose_file("The file of a copy", &early);
    second.tap("Bring it in");
    first.hours(1.0);
    first.tap("Change Brown ones");
    first.type_into("How many", "30");
    first.tap("Save");
    let late = copy_of(&mut first);
    second.choose_file("The file of a copy", &late);
    second.sees("Would be changed: 1 entry of bottles");
    second.sees("Bottles on hand: Brown ones: saved later in the copy");
    second.tap("Bring it in");
    assert_eq!(bottles(&second).bottles.count, 30);
    second.choose_file("The file of a copy", &early);
    second.sees("Stay as they are: 7 that say the same, 1 saved later here");
    second.tap("Undo");
    assert_eq!(bottles(&second).bottles.count, 20);
    // Both phones go on by themselves: neither is the later.
    second.hours(5.0);
    second.tap("Change Brown ones");
    second.type_into("How many", "5");
    second.tap("Save");
    first.hours(1.0);
    first.tap("Change Brown ones");
    first.type_into("How many", "31");
    first.tap("Save");
    let later = copy_of(&mut first);
    second.choose_file("The file of a copy", &later);
    second.sees("Bottles on hand: Brown ones: says something else in the copy. It stays as it is");
    second.sees_no("Bring it in");
    assert_eq!(bottles(&second).bottles.count, 5);
}

#[test]
fn what_was_deleted_here_comes_back_and_nothing_is_taken_out() {
    let mut phone = full();
    let copy = copy_of(&mut phone);
    phone.tap("Delete Brown ones");
    phone.hours(1.0);
    add_bottles(&mut phone, "Green ones", "6");
    phone.choose_file("The file of a copy", &copy);
    phone.sees("Would be added: 1 entry of bottles");
    phone.tap("Bring it in");
    for _ in 0..2 {
        phone.sees("Brown ones");
        phone.sees("Green ones");
        phone.sees_no("Changed in two places");
        phone.reload();
    }
}

#[test]
fn a_batch_alone_goes_with_its_instruments() {
    let mut phone = full();
    phone.go("#/batch/b/edit");
    phone.sees_no("Hand the copy over");
    phone.tap("Make a copy of this batch");
    phone.sees(
        "[Hand the copy over or save it] hands out fermentside-cellar-bitter-2026-03-07.json",
    );
    let copy = phone.value_in("Or copy this text");
    assert!(copy.contains("\"batch\": \"b\"") && !copy.contains("Brown ones"), "{copy}");
    phone.tap("Hand the copy over");
    assert!(phone.model.settings().copied.is_none(), "the rest is in no copy");
    let mut second = another();
    second.choose_file("The file of a copy", &copy);
    second.sees("Would be added: 1 batch, 1 pitching, 4 readings, 1 bottling day");
    second.tap("Bring it in");
    assert_eq!(second.model.journal.log(&id("b")), phone.model.journal.log(&id("b")));
}

#[test]
fn a_copy_is_asked_for_by_what_is_in_none_and_no_more_once_it_is() {
    let readings = (0..9).map(|day| reading(9.5 - f64::from(day), 1.050 - 0.003 * f64::from(day)));
    let mut phone = with(11.0, readings, vec![]);
    phone.go("#/now");
    phone.sees_no("no copy yet");
    phone.go("#/gear");
    phone.sees("No copy was taken yet of 9 readings.");
    phone.go("#/batch/b/watch");
    phone.tap("Add a reading");
    phone.type_into("Hydrometer reads", "1.020");
    phone.type_into("Sample temperature", "20");
    phone.tap("Save");
    phone.sees_no("no copy yet");
    phone.go("#/now");
    phone.sees("10 readings are in no copy yet.");
    phone.tap("Take a copy in Gear");
    phone.tap("Make a copy of everything");
    phone.tap("Hand the copy over");
    phone.sees("has every reading.");
    phone.sees("Hand the copy over");
    phone.reload();
    phone.go("#/now");
    phone.sees_no("no copy yet");
    let (name, entry) = bottling(0.1);
    let change = fermentside::batch::Change::put(name, entry);
    phone.model.journal.apply(change).expect("it fits");
    phone.sees("1 bottled batch is in no copy yet.");
}

#[test]
fn a_file_that_is_no_copy_says_so_and_changes_nothing() {
    let mut phone = full();
    let copy = copy_of(&mut phone);
    let before = phone.model.journal.clone();
    for (text, said) in [
        ("", "the file is empty"),
        ("%PDF-1.7", "this file is no copy, or its end is missing"),
        (&copy[..copy.len() - 30], "this file is no copy, or its end is missing"),
        ("{\"name\":\"x\"}", "this file is no copy of these records"),
        (&copy.replace("\"version\": 1", "\"version\": 2"), "a newer version of this page made"),
        (
            &copy.replace("\"kind\": \"pitch\"", "\"kind\": \"<p>\""),
            "record 4 in it is not as a copy has",
        ),
        (&"[".repeat(99), "this file is no copy of these records"),
    ] {
        phone.choose_file("The file of a copy", text);
        phone.sees(&format!("!! Nothing was changed: {said}"));
        phone.sees_no("Bring it in");
    }
    let name = phone.field("The file of a copy").name;
    for (why, said) in [(NoFile::TooLarge, "12 million letters"), (NoFile::Unread, "did not give")]
    {
        phone.happens(Event::FileChosen { name: name.clone(), text: Err(why) });
        phone.sees(said);
    }
    assert_eq!(phone.model.journal, before);
    phone.choose_file("The file of a copy", &copy);
    phone.sees_no("Nothing was changed");
}

#[test]
fn where_there_is_no_room_nothing_of_it_stays() {
    let copy = copy_of(&mut full());
    for room in [0, 1, 3, 7] {
        let mut second = another();
        second.choose_file("The file of a copy", &copy);
        *second.shelf.writes_left.borrow_mut() = Some(room);
        second.tap("Bring it in");
        second.sees("!! Not saved: there is no room left");
        assert_eq!(second.model.journal.batches().count(), 0);
        *second.shelf.writes_left.borrow_mut() = None;
        second.reload();
        assert_eq!(second.model.journal.batches().count(), 0, "{room} writes");
        second.choose_file("The file of a copy", &copy);
        second.tap("Bring it in");
        second.sees("Brought in");
    }
}

#[test]
fn what_a_copy_left_is_handed_out_as_a_file_of_today() {
    let mut phone = at_gear();
    phone.tap("Make a copy of everything");
    let parts = phone.parts();
    let file = parts.iter().find_map(|part| match &part.what {
        What::HandOut(file) => Some(file),
        _ => None,
    });
    let file = file.expect("a file");
    assert_eq!(file.file, "fermentside-2026-03-07.json");
    assert_eq!(file.media, "application/json");
}
