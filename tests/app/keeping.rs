//! What was changed in two places, what could not be read, and everything as text.

use crate::gear::{add_bottles, at_gear, bottles};
use crate::paper::{Paper, Shelf, brewing_day};
use crate::shelf::{reading, with};
use fermentside::app::{Event, Part, What};
use fermentside::quantity::Zone;
use fermentside::store::Store;

fn named(phone: &Paper, name: &str) -> Part {
    let parts = phone.parts();
    parts.into_iter().find(|part| part.name == name).unwrap_or_else(|| panic!("no {name}"))
}

/// Two tabs that each changed the bottles, the second without knowing of the first.
fn two_versions() -> (Paper, Paper) {
    let mut first = at_gear();
    add_bottles(&mut first, "Brown ones", "20");
    let mut second = first.second_tab();
    second.tap("Gear");
    for (phone, count) in [(&mut first, "21"), (&mut second, "22")] {
        phone.tap("Change Brown ones");
        phone.type_into("How many", count);
        phone.tap("Save");
    }
    (first, second)
}

#[test]
fn a_conflict_names_its_thing_and_a_newer_finding_replaces_the_row() {
    let (_, mut phone) = two_versions();
    phone.sees("### Bottles on hand: Brown ones");
    phone.tap("Change Brown ones");
    phone.type_into("How many", "23");
    phone.tap("Save");
    let rows = phone.text().matches("### Bottles on hand: Brown ones").count();
    assert_eq!(rows, 1, "one row for one thing:\n{}", phone.text());
    // In words, and only what differs: side by side.
    phone.sees(" | First | Second\nHow many | 23 | 21");
    phone.sees_no("22");
    phone.sees_no("Size of one |");
    phone.sees_no("count");
    phone.sees("First: saved Sat 7 Mar, 09:00");
    phone.tap("Keep this one");
    phone.sees_no("Changed in two places");
    assert_eq!(bottles(&phone).bottles.count, 23);
    phone.reload();
    phone.sees_no("Changed in two places");
    assert_eq!(bottles(&phone).bottles.count, 23);
}

#[test]
fn settling_shows_what_is_kept_and_no_undo_brings_another_text_over_it() {
    let (mut first, mut phone) = two_versions();
    phone.sees("Bottles saved");
    phone.tap("Use this one instead");
    assert_eq!(bottles(&phone).bottles.count, 21);
    phone.sees_no("Bottles saved");
    phone.sees_no("Undo");
    // The tab that knew of no conflict goes on with what was settled.
    first.tap("Now");
    first.reload();
    first.tap("Gear");
    first.sees_no("Changed in two places");
    assert_eq!(bottles(&first).bottles.count, 21);
}

#[test]
fn a_conflict_that_was_not_settled_stays_and_says_why() {
    let (_, mut phone) = two_versions();
    *phone.shelf.writes_left.borrow_mut() = Some(0);
    phone.tap("Keep this one");
    phone.sees("Changed in two places");
    phone.sees("!! Not saved");
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.tap("Keep this one");
    phone.sees_no("Changed in two places");
    phone.sees_no("Not saved");
}

#[test]
fn everything_is_shown_and_handed_out_and_never_grows_old() {
    let mut phone = at_gear();
    add_bottles(&mut phone, "Brown ones", "20");
    phone.tap("Make a copy of everything");
    let text = phone.value_in("Or copy this text");
    assert!(text.contains("Brown ones"), "{text}");
    let What::HandOut(file) = named(&phone, "copy/file").what else { panic!("a file") };
    assert_eq!(file.text, text);
    let What::Words(copy) = named(&phone, "copy/text").what else { panic!("a text") };
    assert!(copy.to_copy && copy.long);
    phone.tap("Night");
    phone.sees_no("Or copy this text");
    phone.tap("Make a copy of everything");
    phone.tap("Bench");
    phone.tap("Gear");
    phone.sees_no("Or copy this text");
}

#[test]
fn how_things_are_kept_is_said_as_it_is() {
    let mut phone = at_gear();
    phone.sees("Not yet kept for use without a network.");
    phone.happens(Event::OfflineReady);
    phone.sees("it works with no network");
    phone.sees("They are kept in this browser");
    phone.model.phone.memory_only = true;
    phone.sees_no("They are kept in this browser");
    phone.sees("only for as long as this page is open");
}

#[test]
fn what_could_not_be_read_is_shown_as_it_is() {
    let mut shelf = Shelf::default();
    shelf.write("fermentside/note/odd", "a text of no form").expect("written");
    let mut phone = Paper::with(shelf, brewing_day(), Zone::fixed(60), 5);
    phone.tap("Gear");
    phone.sees("## Could not be read");
    phone.sees_no("a text of no form");
    phone.tap("fermentside/note/odd");
    phone.sees("a text of no form");
}

#[test]
fn a_conflict_of_a_reading_names_its_batch_and_what_differs() {
    let mut first = with(10.0, [reading(9.0, 1.048)], vec![]);
    let mut second = first.second_tab();
    second.go("#/batch/b/watch");
    for (phone, gravity, note) in [(&mut first, "1.045", "foamy"), (&mut second, "11.5 P", "")] {
        phone.tap("Thu 26 Feb");
        phone.tap("Change the reading of");
        phone.type_into("Hydrometer reads", gravity);
        phone.tap("Temperatures, time and note");
        if !note.is_empty() {
            phone.type_into("Note", note);
        }
        phone.tap("Save");
    }
    second.go("#/gear");
    second.sees("### A reading of Cellar bitter");
    second.sees("Note | – | foamy");
    second.sees("As typed | 11.5 P | 1.045");
    second.sees_no("Sample temperature |");
    second.sees_no("{");
    // Settled in one place, it is settled in the other too.
    second.tap("Use this one instead");
    second.sees_no("Changed in two places");
    first.happens(Event::Elsewhere);
    first.sees_no("changed in two places");
    first.sees("foamy");
}

#[test]
fn what_was_deleted_in_one_place_and_changed_in_another_says_so() {
    let (mut first, _) = {
        let mut first = at_gear();
        add_bottles(&mut first, "Brown ones", "20");
        let second = first.second_tab();
        (first, second)
    };
    let mut second = first.second_tab();
    second.tap("Gear");
    first.tap("Change Brown ones");
    first.type_into("How many", "21");
    first.tap("Save");
    second.tap("Delete Brown ones");
    second.reload();
    second.sees("First: saved Sat 7 Mar, 09:00");
    second.sees("Second: saved Sat 7 Mar, 09:00, deleted");
    second.sees("Name | Brown ones | –");
}

#[test]
fn what_a_stopped_page_handed_out_comes_back_like_a_copy() {
    let phone = with(10.0, [reading(9.0, 1.048), reading(8.0, 1.030)], vec![]);
    let keys = phone.shelf.keys().expect("keys");
    let texts = keys.iter().filter(|key| key.starts_with("fermentside/"));
    let texts: std::collections::BTreeMap<_, _> =
        texts.map(|key| (key, phone.shelf.read(key).expect("read").expect("a text"))).collect();
    let rescue = serde_json::to_string(&texts).expect("JSON");
    let mut other = at_gear();
    other.choose_file("The file of a copy", &rescue);
    other.sees("Would be added: 1 batch, 1 pitching, 2 readings");
    other.tap("Bring it in");
    assert_eq!(other.model.journal, phone.model.journal);
    other.choose_file("The file of a copy", r#"{"a":"b"}"#);
    other.sees("this file is no copy of these records");
}
