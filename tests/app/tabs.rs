//! Two tabs of one browser, and records that one of them does not know.

use crate::gear::at_gear;
use crate::paper::{Paper, Shelf, brewing_day};
use crate::shelf::{bottling, id, reading, with};
use fermentside::app::{Event, Keeper};
use fermentside::batch::{Change, Entry, PitchRecord, Theme};
use fermentside::quantity::Zone;
use fermentside::store::{Store, Token};

#[test]
fn a_batch_begun_in_each_of_two_tabs_is_no_conflict() {
    let mut first = Paper::new();
    let mut second = first.second_tab();
    for (phone, name) in [(&mut first, "One"), (&mut second, "Two")] {
        phone.go("#/batches/new");
        phone.type_into("Name", name);
        phone.type_into("Volume", "20");
        phone.tap("Start");
        phone.sees_no("changed in two places");
    }
    assert_eq!(second.model.journal.batches().count(), 2, "what is settled is read anew");
    // Settled it is, not hidden: a later wish of either tab stands alone.
    second.tap("Gear");
    second.tap("Night");
    second.reload();
    second.sees_no("changed in two places");
    assert_eq!(second.model.settings().theme, Theme::Night);
    let mut third = second.second_tab();
    third.sees_no("changed in two places");
    third.go("#/gear");
    third.sees_no("Changed in two places");
}

#[test]
fn different_wishes_of_two_tabs_are_still_a_conflict() {
    let mut first = at_gear();
    let mut second = first.second_tab();
    second.tap("Gear");
    first.tap("Night");
    second.tap("Day");
    second.sees("Changed in two places");
}

#[test]
fn a_reading_of_a_batch_that_another_tab_deleted_is_shown() {
    let mut first = with(10.0, [reading(9.0, 1.048)], vec![]);
    let mut second = first.second_tab();
    second.go("#/batch/b/edit");
    second.tap("Delete this batch");
    first.tap("Add a reading");
    first.type_into("Hydrometer reads", "1.020");
    first.type_into("Sample temperature", "20");
    first.tap("Save");
    second.reload();
    second.sees("There are records of a batch that is not here.");
    second.tap("See it in Gear");
    second.sees("## Records whose batch is not here");
    second.sees("1 record");
    second.tap("Delete them");
    second.sees_no("batch that is not here");
    second.tap("Undo");
    second.go("#/gear");
    second.sees("## Records whose batch is not here");
}

#[test]
fn the_yeast_and_the_bottling_noted_in_two_tabs_are_both_said() {
    let again = PitchRecord::new(id("b"), crate::shelf::ago(9.5));
    let (_, Entry::Bottling(later)) = bottling(0.2) else { panic!("a bottling") };
    let more =
        vec![(id("p2"), Entry::Pitch(again)), bottling(0.5), (id("o2"), Entry::Bottling(later))];
    let mut phone = with(10.0, [reading(9.0, 1.048)], more);
    assert_eq!(phone.text().matches("The yeast is noted more than once").count(), 2);
    assert_eq!(phone.text().matches("Bottling is noted more than once").count(), 2);
    assert_eq!(phone.text().matches("This one counts.").count(), 2);
    phone.tap("Delete this one");
    phone.sees_no("The yeast is noted more than once");
    phone.tap("Delete this one");
    phone.sees_no("more than once");
}

#[test]
fn what_a_newer_version_kept_is_shown_as_newer_and_stays() {
    let mut shelf = Shelf::default();
    let mut keeper = Keeper::new(shelf.clone());
    keeper.load().expect("an empty shelf");
    let change = Change::put(id("p"), Entry::Pitch(PitchRecord::new(id("b"), brewing_day())));
    let kept =
        keeper.save(1, (&change, &change), brewing_day(), &mut || Token::from_random([7; 8]));
    assert_eq!(kept, Event::Saved(1));
    // A text of a later schema, sealed as every schema seals it.
    let rest = "whatever that will be";
    let sum = crc32fast::hash(&[&9_u32.to_le_bytes()[..], rest.as_bytes()].concat());
    let text = format!("fermentside 9 {} {sum:08x}\n{rest}", rest.len());
    let key = "fermentside/reading/r/1/00000000000000aa";
    shelf.write(key, &text).expect("written");
    let mut phone = Paper::with(shelf.clone(), brewing_day(), Zone::fixed(60), 5);
    phone.sees("One saved thing is of a newer version of this page.");
    phone.sees_no("could not be read");
    phone.tap("Gear");
    phone.sees("## Of a newer version of this page");
    phone.sees_no("Could not be read");
    phone.tap("Make a copy of everything");
    assert!(phone.value_in("Or copy this text").contains("whatever that will be"));
    assert_eq!(shelf.read(key), Ok(Some(text)));
}

#[test]
fn room_is_told_with_years_to_spare_and_before_a_save() {
    let mut phone = with(400.0, [reading(9.0, 1.048)], vec![]);
    phone.go("#/gear");
    phone.sees("Less than 1 % of the room in this browser is used.");
    phone.sees_no("At your pace");
    phone.happens(Event::Room(2_000_000));
    phone.sees(
        "39 % of the room in this browser is used. At your pace the rest lasts about 2 years.",
    );
    phone.sees_no("hardly any room");
    phone.happens(Event::Room(4_000_000));
    phone.sees("At your pace the rest lasts less than a year: take a copy");
    phone.happens(Event::Room(5_100_000));
    phone.sees("There is hardly any room left: a save may be refused, and half-typed text lost");
}

#[test]
fn two_tabs_that_save_200_readings_each_keep_400() {
    let first = with(10.0, [], vec![]);
    let mut tabs = [1_u64, 2].map(|tab| {
        let mut keeper = Keeper::new(first.shelf.clone());
        keeper.load().expect("it is read");
        (tab, keeper)
    });
    for n in 0..200_u64 {
        for (tab, keeper) in &mut tabs {
            let name = id(&format!("t{tab}-{n}"));
            let mut one = reading(9.0 - 0.04 * n as f64, 1.048 - 0.0001 * n as f64);
            one.note = format!("{tab}: {n}");
            let change = Change::put(name, Entry::Reading(one));
            let mut token = || Token::from_random((*tab << 32 | n).to_be_bytes());
            let kept = keeper.save(1, (&change, &Change::default()), brewing_day(), &mut token);
            assert_eq!(kept, Event::Saved(1));
        }
    }
    let phone = Paper::with(first.shelf.clone(), brewing_day(), Zone::fixed(60), 5);
    let notes: std::collections::BTreeSet<_> =
        phone.model.journal.readings(&id("b")).iter().map(|(_, one)| one.note.clone()).collect();
    assert_eq!(notes.len(), 400);
    assert!(phone.model.phone.conflicts.is_empty());
}
