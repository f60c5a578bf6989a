//! What stands round every screen.

use crate::batches::start;
use crate::paper::Paper;
use fermentside::app::Event;
use fermentside::store::Store;

fn keys(phone: &Paper) -> usize {
    phone.shelf.keys().expect("keys").len()
}

#[test]
fn a_deleted_batch_frees_its_room_once_the_undo_has_passed() {
    let mut phone = Paper::new();
    let before = keys(&phone);
    let batch = start(&mut phone, "Cellar bitter");
    let with_settings = keys(&phone) - 1;
    phone.go(&format!("{batch}edit"));
    phone.tap("Delete this batch");
    assert!(keys(&phone) > with_settings, "it can still be had back");
    phone.go("#/gear");
    phone.happens(Event::Room(4_500_000));
    phone.hours(0.1);
    phone.sees_no("Undo");
    phone.sees("Deleted: Cellar bitter, on Sat 7 Mar 2026.");
    assert!(keys(&phone) > with_settings, "there is room, so it can be had back for a month");
    phone.days(31.0);
    phone.sees_no("Deleted: Cellar bitter");
    phone.reload();
    phone.hours(0.1);
    assert_eq!(keys(&phone), with_settings, "the settings alone are left");
    assert!(before < with_settings);
    phone.sees_no("Deleted:");
    phone.go("#/now");
    phone.sees("Start a batch");
}

#[test]
fn an_undo_that_was_not_kept_can_be_tried_again() {
    let mut phone = Paper::new();
    let batch = start(&mut phone, "Cellar bitter");
    phone.go(&format!("{batch}edit"));
    phone.type_into("Name", "Cellar best");
    phone.tap("Save");
    *phone.shelf.writes_left.borrow_mut() = Some(0);
    phone.tap("Undo");
    phone.sees("Not saved");
    phone.sees("# Cellar best");
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.tap("Undo");
    phone.sees("# Cellar bitter");
    phone.reload();
    phone.sees("# Cellar bitter");
}

#[test]
fn a_start_that_is_half_kept_is_taken_back_whole() {
    for room in 0..4 {
        let mut phone = Paper::new();
        phone.go("#/batches/new");
        phone.type_into("Name", "Cellar bitter");
        phone.type_into("Volume in the fermenter", "20");
        // A batch and the settings are one change of two writes.
        *phone.shelf.writes_left.borrow_mut() = Some(room);
        phone.tap("Start");
        let begun = phone.model.journal.batches().count();
        *phone.shelf.writes_left.borrow_mut() = None;
        phone.reload();
        assert_eq!(phone.model.journal.batches().count(), begun, "with room for {room}");
        if begun == 0 {
            phone.tap("Start");
            assert_eq!(phone.model.journal.batches().count(), 1, "{}", phone.text());
        }
    }
}

#[test]
fn what_another_tab_saved_is_shown_at_once() {
    let mut first = Paper::new();
    let mut second = first.second_tab();
    start(&mut second, "Cellar bitter");
    first.sees_no("Cellar bitter");
    first.happens(Event::Elsewhere);
    first.sees("Cellar bitter");
    first.sees_no("another tab");
}

#[test]
fn a_half_filled_form_is_not_changed_under_the_hand() {
    let mut first = Paper::new();
    let mut second = first.second_tab();
    first.go("#/batches/new");
    first.type_into("Name", "Cellar mild");
    start(&mut second, "Cellar bitter");
    first.happens(Event::Elsewhere);
    first.sees("Something was saved in another tab.");
    assert_eq!(first.model.journal.batches().count(), 0);
    // Once it is saved, all is shown.
    first.type_into("Volume", "20");
    first.tap("Start");
    first.sees_no("another tab");
    assert_eq!(first.model.journal.batches().count(), 2);
    // Or on a touch.
    start(&mut second, "Third");
    first.go("#/batches/new");
    first.type_into("Name", "Cellar mild");
    first.happens(Event::Elsewhere);
    first.tap("Show it");
    first.sees_no("another tab");
    assert_eq!(first.model.journal.batches().count(), 3);
    assert_eq!(first.value_in("Name"), "Cellar mild");
}

#[test]
fn what_another_tab_saved_is_not_undone_by_an_older_undo() {
    let mut first = Paper::new();
    let batch = start(&mut first, "Cellar bitter");
    let mut second = first.second_tab();
    first.go(&format!("{batch}edit"));
    first.type_into("Name", "Cellar mild");
    first.tap("Save");
    first.sees("Undo");
    second.happens(Event::Elsewhere);
    second.reload();
    second.go(&format!("{batch}edit"));
    second.type_into("Name", "Cellar best");
    second.tap("Save");
    first.happens(Event::Elsewhere);
    first.sees("Cellar best");
    first.sees_no("Undo");
}
