//! A store that is cleared under the page, one that keeps nothing, and batches that were deleted.

use crate::batches::start;
use crate::paper::{Paper, Shelf, brewing_day};
use crate::shelf::{bottling, reading, with};
use fermentside::app::{Effect, Event, What, update};
use fermentside::quantity::Zone;
use fermentside::store::Store;

fn log_reading(phone: &mut Paper, gravity: &str) {
    phone.tap("Add a reading");
    phone.type_into("Hydrometer reads", gravity);
    phone.type_into("Sample temperature", "20");
    phone.tap("Save");
}

#[test]
fn a_store_cleared_under_the_page_is_written_back_at_the_next_save() {
    let mut phone = with(10.0, [reading(9.0, 1.048)], vec![]);
    phone.shelf.clear();
    log_reading(&mut phone, "1.020");
    phone.sees(
        "This browser's storage was cleared while the page was open. 3 records were still here",
    );
    phone.reload();
    phone.sees("°C 1.048");
    phone.sees("°C 1.020");
    phone.sees_no("storage was cleared");
}

#[test]
fn the_form_of_what_is_saved_is_not_found_filled_again() {
    let mut phone = with(10.0, [reading(9.0, 1.048)], vec![]);
    phone.tap("Add a reading");
    phone.type_into("Hydrometer reads", "1.020");
    phone.type_into("Sample temperature", "20");
    let typed = phone.model.drafts.texts();
    assert!(typed.len() > 1, "{typed:?}");
    let mut act = None;
    phone.screen().main.iter().for_each(|part| {
        part.each(&mut |part| {
            if let What::Group(group) = &part.what
                && group.send.is_some()
            {
                act.clone_from(&group.send);
            }
        });
    });
    let effects = update(&mut phone.model, Event::Did(act.expect("a form")));
    let ticket = effects.iter().find_map(|effect| match effect {
        Effect::Save(ticket, ..) => Some(*ticket),
        _ => None,
    });
    // Asked for and not yet told: what is written with it has the form no more, and what is shown has.
    let once_saved = phone.model.drafts_once_saved(ticket.expect("a save"));
    assert_eq!(once_saved.texts(), []);
    assert_eq!(phone.model.drafts.texts(), typed);
}

#[test]
fn a_store_cleared_under_the_page_is_written_back_when_it_is_looked_at() {
    let mut phone = with(10.0, [reading(9.0, 1.048)], vec![bottling(0.5)]);
    let mut before = phone.shelf.keys().expect("keys");
    before.push("theirs".to_owned());
    phone.happens(Event::Seen);
    phone.sees_no("storage was cleared");
    phone.shelf.clear();
    phone.happens(Event::Seen);
    phone.sees("storage was cleared while the page was open. 4 records were");
    assert_eq!(phone.shelf.keys().expect("keys"), before, "under the very keys");
    // Where nothing can be written back, that is said, and nothing is called saved.
    phone.shelf.clear();
    *phone.shelf.writes_left.borrow_mut() = Some(1);
    phone.happens(Event::Seen);
    phone.sees("kept only until this page is closed: take a copy");
    log_reading(&mut phone, "1.019");
    phone.sees("°C 1.019");
    phone.sees_no("Reading saved");
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.happens(Event::Seen);
    phone.sees_no("kept only until");
    phone.reload();
    phone.sees("°C 1.048");
    phone.sees("°C 1.019");
    phone.sees_no("changed in two places");
}

#[test]
fn what_another_tab_deleted_for_good_does_not_come_back() {
    let mut first = with(10.0, [reading(9.0, 1.048)], vec![]);
    let keys = first.shelf.keys().expect("keys");
    let of_reading: Vec<_> = keys.iter().filter(|key| key.contains("/reading/")).collect();
    let mut second = first.second_tab();
    second.go("#/batch/b/watch");
    second.tap("Thu 26 Feb");
    second.tap("Delete the reading of");
    // As the browser tells it: what was written, and what was then swept out.
    let marked = second.shelf.keys().expect("keys").into_iter().find(|key| !keys.contains(key));
    let marked = marked.expect("a text says that it is deleted");
    let text = second.shelf.read(&marked).expect("read");
    first.elsewhere(&marked, text.as_deref());
    for key in [of_reading[0], &marked] {
        second.shelf.remove(key).expect("removed");
        first.elsewhere(key, None);
    }
    first.happens(Event::Seen);
    first.sees_no("storage was cleared");
    first.reload();
    first.sees_no("°C 1.048");
    // But nothing takes away what lives: that is written back.
    let key = keys.iter().find(|key| key.contains("/pitch/")).expect("a pitching");
    let mut shelf = first.shelf.clone();
    shelf.remove(key).expect("removed");
    first.elsewhere(key, None);
    first.shelf.clear();
    first.happens(Event::Seen);
    assert!(shelf.read(key).expect("read").is_some());
}

#[test]
fn where_nothing_is_kept_nothing_is_called_saved() {
    let mut phone = Paper::with(Shelf::default(), brewing_day(), Zone::fixed(60), 1);
    *phone.shelf.writes_left.borrow_mut() = Some(0);
    phone.sees_no("keep nothing");
    let batch = start(&mut phone, "Cellar bitter");
    phone.sees(
        "This browser lets the page keep nothing. What you note is kept only until this page",
    );
    phone.go(&format!("{batch}watch"));
    phone.type_into("Hydrometer reads", "1.048");
    phone.type_into("Sample temperature", "20");
    phone.tap("Save");
    phone.sees("°C 1.048");
    phone.sees("Kept only until this page is closed: take a copy");
    phone.sees_no("Reading saved");
    phone.tap("Take a copy in Gear");
    phone.sees("They are kept only for as long as this page is open");
    phone.sees_no("They are kept in this browser");
    phone.tap("Make a copy of everything");
    assert!(phone.value_in("Or copy this text").contains("1.048"));
    // Allowed after all, everything is kept at once.
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.tap("Night");
    phone.sees_no("keep nothing");
    phone.sees("They are kept in this browser");
    phone.reload();
    phone.go(&format!("{batch}watch"));
    phone.sees("°C 1.048");
}

#[test]
fn a_deleted_batch_is_had_back_with_its_log_for_a_month() {
    let mut phone = with(10.0, [reading(9.0, 1.048), reading(8.0, 1.030)], vec![bottling(0.5)]);
    phone.tap("Fri 27 Feb");
    phone.tap("Delete the reading of");
    let log = phone.model.journal.clone();
    phone.hours(2.0);
    phone.go("#/batch/b/edit");
    phone.tap("Delete this batch");
    phone.days(29.0);
    for _ in 0..2 {
        phone.go("#/gear");
        phone.sees("Deleted: Cellar bitter, on Sat 7 Mar 2026.");
        phone.reload();
    }
    phone.tap("Have it back");
    phone.sees("Cellar bitter is back");
    phone.sees_no("Deleted: Cellar bitter");
    assert_eq!(phone.model.journal, log, "without what was deleted before");
    phone.tap("Undo");
    phone.sees("Deleted: Cellar bitter");
    phone.tap("Have it back");
    phone.reload();
    assert_eq!(phone.model.journal, log);
    phone.sees_no("Deleted: Cellar bitter");
}
