//! Units, height, scale and colours: saved when they are chosen or left.

use crate::gear::at_gear;
use crate::paper::{Paper, Shelf, brewing_day};
use fermentside::app::{Event, Undo, What};
use fermentside::batch::{Change, Entry, Settings, Theme};
use fermentside::quantity::{LengthUnit, Measured, Metres, Zone};
use fermentside::store::{Archive, Store, Token};

/// Gear, with each unit and the height in sight.
fn one_by_one() -> Paper {
    let mut phone = at_gear();
    phone.tap("One by one");
    phone
}

/// So often have the settings been saved.
fn saves_of_settings(phone: &Paper) -> u32 {
    let keys = phone.shelf.keys().expect("keys");
    let revision = |key: &String| -> Option<u32> {
        key.strip_prefix("fermentside/settings/")?.split('/').nth(1)?.parse().ok()
    };
    keys.iter().filter_map(revision).max().unwrap_or(0)
}

#[test]
fn a_height_is_saved_when_its_field_is_left_and_never_at_a_key() {
    let mut phone = at_gear();
    for text in ["1", "12", "120"] {
        let (name, unit) = ("gear/height".to_owned(), "m".to_owned());
        phone.happens(Event::Typed { name, text: text.to_owned(), unit });
        assert_eq!(saves_of_settings(&phone), 0, "nothing is saved at {text}");
    }
    phone.happens(Event::Left("gear/height".to_owned()));
    assert_eq!(saves_of_settings(&phone), 1);
    assert_eq!(phone.model.settings().height, Metres::literal(120.0));
    assert_eq!(phone.model.drafts.text("gear/height"), None);
    phone.reload();
    phone.tap("One by one");
    assert_eq!(phone.value_in("Height above the sea"), "120");
}

#[test]
fn a_height_that_means_nothing_is_told_and_not_saved() {
    let mut phone = one_by_one();
    phone.type_into("Height above the sea", "9000");
    phone.sees("It must be from");
    phone.tap("Bench");
    assert_eq!(saves_of_settings(&phone), 0);
}

#[test]
fn gear_opened_and_left_saves_no_rounded_height() {
    let mut phone = one_by_one();
    phone.type_into("Height above the sea", "1000 ft");
    let height = phone.model.settings().height;
    assert!((height.value() - 304.8).abs() < 1e-9, "{height:?}");
    assert_eq!(saves_of_settings(&phone), 1);
    phone.tap("Bench");
    phone.tap("Gear");
    phone.tap("One by one");
    assert_eq!(phone.value_in("Height above the sea"), "305");
    phone.happens(Event::Left("gear/height".to_owned()));
    phone.tap("Now");
    assert_eq!(saves_of_settings(&phone), 1);
    assert_eq!(phone.model.settings().height, height);
}

#[test]
fn a_height_that_was_stepped_to_is_saved_on_going_elsewhere() {
    let mut phone = one_by_one();
    for _ in 0..3 {
        let field = phone.field("Height above the sea");
        let What::Number(number) = field.what else { panic!("a number") };
        let (text, unit) = (number.steps.1, number.unit.to_owned());
        phone.happens(Event::Typed { name: field.name, text, unit });
    }
    assert_eq!(saves_of_settings(&phone), 0);
    phone.tap("Bench");
    assert_eq!(phone.model.settings().height, Metres::literal(300.0));
    assert_eq!(saves_of_settings(&phone), 1);
}

#[test]
fn the_unit_beside_the_height_is_a_preference() {
    let mut phone = one_by_one();
    phone.type_into("Height above the sea", "300");
    phone.in_unit("Height above the sea", "ft");
    assert_eq!(phone.model.units().height, LengthUnit::Feet);
    assert_eq!(phone.model.settings().height, Metres::literal(300.0));
    assert_eq!(phone.value_in("Height above the sea"), "984");
    phone.reload();
    phone.tap("One by one");
    assert_eq!(phone.value_in("Height above the sea"), "984");
    // All units that are usual together: the height's too, though it was chosen by itself before.
    phone.tap("Metric");
    assert_eq!(phone.value_in("Height above the sea"), "300");
    assert_eq!(phone.model.settings().height, Metres::literal(300.0));
}

#[test]
fn choices_are_saved_at_once_and_keep_what_a_later_version_noted() {
    let shelf = Shelf::default();
    let body = r#"{"units":{"gravity":"specific_gravity","temperature":"celsius","volume":"litres","mass":"grams","height":"metres","beauty":"high"},"height":12.25,"theme":"follow","later":[1,"two"]}"#;
    let mut archive = Archive::new(shelf.clone());
    let (id, token) = (Settings::id(), Token::from_random([9; 8]));
    archive.save("settings", id.as_str(), body, brewing_day(), token).expect("saved");
    let mut phone = Paper::with(shelf, brewing_day(), Zone::fixed(60), 5);
    phone.tap("Gear");
    phone.tap("Night");
    phone.tap("One by one");
    phone.tap("°F");
    phone.tap("imp gal");
    phone.tap("°P");
    phone.tap("0.1 g");
    phone.reload();
    phone.sees("°P · °F · imp gal · ");
    phone.tap("One by one");
    assert_eq!(phone.value_in("Colours"), "night");
    assert_eq!(phone.value_in("Temperature"), "°F");
    assert_eq!(phone.value_in("Volume"), "imp gal");
    assert_eq!(phone.value_in("Your scale shows steps of"), "0.1");
    assert_eq!(phone.model.settings().height, Metres::literal(12.25));
    assert_eq!(phone.model.settings().theme, Theme::Night);
    phone.tap("Make a copy of everything");
    let text = phone.value_in("Or copy this text");
    assert!(text.contains(r#""later":[1,"two"]"#), "{text}");
    assert!(text.contains(r#""beauty":"high""#), "{text}");
}

#[test]
fn a_choice_that_was_not_kept_is_not_in_force_and_says_so() {
    let mut phone = at_gear();
    *phone.shelf.writes_left.borrow_mut() = Some(0);
    phone.tap("Night");
    phone.sees("!! Not saved: there is no room left");
    assert_eq!(phone.value_in("Colours"), "follow");
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.tap("Night");
    phone.sees_no("Not saved");
    assert_eq!(phone.value_in("Colours"), "night");
}

#[test]
fn what_was_done_before_to_the_settings_is_not_taken_back_over_a_later_choice() {
    let mut phone = at_gear();
    let (since, done) = (phone.model.now, "Taken in hand".to_owned());
    let change = Change::put(Settings::id(), Entry::Settings(Settings::default()));
    phone.model.undo = Some(Undo { done, change, since });
    phone.sees("Taken in hand");
    phone.tap("Night");
    phone.sees_no("Taken in hand");
    assert_eq!(phone.value_in("Colours"), "night");
}
