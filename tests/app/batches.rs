//! The list of batches, the form of one, and Now.

use crate::paper::{Paper, golden};
use crate::shelf::{batch, bottling, id, reading};
use fermentside::batch::{Entry, Journal};

/// Starts a batch of 20 litres with a clean ale yeast, and gives its address without the stage.
pub fn start(phone: &mut Paper, name: &str) -> String {
    phone.go("#/batches/new");
    phone.type_into("Name", name);
    phone.type_into("Volume in the fermenter", "20");
    phone.choose("Yeast", "Ale, clean or American type");
    phone.tap("Start");
    phone.place().trim_end_matches("pitch").to_owned()
}

#[test]
fn a_batch_is_started_changed_deleted_and_taken_back() {
    let mut phone = Paper::new();
    golden("now-empty", &phone.text());
    let batch = start(&mut phone, "Cellar bitter");
    phone.sees("# Cellar bitter");
    phone.tap("Now");
    golden("now", &phone.text());
    phone.tap("Batches");
    golden("batches", &phone.text());
    phone.reload();
    phone.sees("Cellar bitter Cool it, read it and pitch");

    phone.go(&format!("{batch}edit"));
    golden("batch-form", &phone.text());
    phone.type_into("Name", "Cellar best");
    phone.tap("Save");
    phone.sees("# Cellar best");
    phone.sees("Batch changed");
    phone.tap("Undo");
    phone.sees("# Cellar bitter");

    phone.go(&format!("{batch}edit"));
    phone.tap("Delete this batch");
    phone.sees("No batch yet.");
    phone.sees("Batch deleted, with its log");
    phone.tap("Undo");
    phone.sees("Cellar bitter");
    phone.reload();
    phone.sees("Cellar bitter");
}

#[test]
fn batches_are_grouped_by_what_is_due_what_comes_later_and_what_is_in_bottles() {
    let mut phone = Paper::new();
    let mut entries = vec![];
    for (name, days) in [("Due", None), ("Later", Some(0.5)), ("Bottled", Some(40.0))] {
        let mut all = batch(days.unwrap_or(3.0));
        if days.is_none() {
            all.truncate(1);
        }
        if name == "Bottled" {
            all.push((id("r"), Entry::Reading(reading(20.0, 1.010))));
            all.push(bottling(1.0));
        }
        // Each batch has names of its own.
        for (own, mut entry) in all {
            match &mut entry {
                Entry::Batch(heading) => heading.name = format!("{name} one"),
                Entry::Pitch(pitch) => pitch.batch = id(name),
                Entry::Reading(reading) => reading.batch = id(name),
                Entry::Bottling(record) => record.batch = id(name),
                _ => {}
            }
            let is_heading = matches!(entry, Entry::Batch(_));
            let own = if is_heading { id(name) } else { id(&format!("{name}-{}", own.as_str())) };
            entries.push((own, entry));
        }
    }
    phone.model.journal = Journal::of(entries);
    phone.go("#/batches");
    let text = phone.text();
    let order = [
        "## Due",
        "Due one Cool it, read it and pitch",
        "## Later",
        "Later one Can't tell First reading about",
        "## Open",
        "Bottled one Wait Try one",
        "## Begun in each year",
    ];
    let places: Vec<_> = order.iter().map(|one| text.find(one)).collect();
    assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?}\n{text}");
}

#[test]
fn the_home_screen_and_copies_are_offered_before_the_first_batch_and_once_after_it() {
    let mut phone = Paper::new();
    phone.sees("First put this page on the home screen.");
    let batch = start(&mut phone, "Cellar bitter");
    phone.sees("Kept on this phone alone: best on its home screen, and with a copy elsewhere.");
    phone.go(&format!("{batch}pitch"));
    phone.type_into("Wort now", "19");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    if phone.text().contains("Pitch without it") {
        phone.tap("Pitch without it");
    }
    phone.sees_no("home screen");
    phone.go("#/now");
    phone.sees_no("home screen");
}

#[test]
fn of_a_full_cellar_the_first_due_stand_there_and_the_others_are_a_touch_away() {
    let mut phone = Paper::new();
    for n in 1..=12 {
        start(&mut phone, &format!("Brew {n:02}"));
    }
    phone.go("#/batches");
    phone.sees_no("more batch");
    for n in 13..=15 {
        start(&mut phone, &format!("Brew {n:02}"));
    }
    phone.go("#/batches");
    let shown =
        |phone: &Paper| (1..=15).filter(|n| phone.text().contains(&format!("Brew {n:02}"))).count();
    assert_eq!(shown(&phone), 12);
    phone.tap("3 more batches");
    assert_eq!(shown(&phone), 15);
}

#[test]
fn a_form_says_what_it_lacks_and_keeps_what_was_typed() {
    let mut phone = Paper::new();
    phone.go("#/batches/new");
    phone.type_into("Final gravity (FG) by kit or recipe", "1.050");
    phone.tap("Start");
    phone.sees("Name: [] Give it a name.");
    phone.sees("Some fields need another look.");
    phone.sees("! Something is needed here.");
    phone.type_into("Name", "Cellar bitter");
    phone.type_into("Volume in the fermenter", "20");
    phone.type_into("Starting gravity (OG) by kit or recipe", "1.040");
    phone.reload();
    phone.tap("Start");
    phone.sees("The final gravity should be below the starting gravity.");
    assert_eq!(phone.value_in("Final gravity (FG) by kit or recipe"), "1.050");
}

#[test]
fn a_name_is_letters_that_show_and_not_too_many() {
    for name in ["\u{200B}\u{200E}", &"long ".repeat(80)] {
        let mut phone = Paper::new();
        phone.go("#/batches/new");
        phone.type_into("Name", name);
        phone.type_into("Volume in the fermenter", "20");
        phone.tap("Start");
        assert_eq!(phone.place(), "#/batches/new", "{}", phone.text());
        phone.sees("!!");
    }
}
