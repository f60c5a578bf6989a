//! Instruments, bottles and sugars.

use crate::paper::{Paper, golden};
use fermentside::advice::bottle::{kinds::Bottle, stock::Bottles};
use fermentside::app::{Effect, What};
use fermentside::batch::{BottlesItem, Change, Entry, HydrometerItem, Id, Kind, SugarItem};
use fermentside::quantity::{Celsius, Gravity, GravityChange, Litres, Share, SpecificGravity};
use fermentside::science::hydrometer::Hydrometer;
use fermentside::science::priming::OwnSugar;

pub fn at_gear() -> Paper {
    let mut phone = Paper::new();
    phone.tap("Gear");
    phone
}

fn only<T>(phone: &Paper, kind: Kind, item: fn(&Entry) -> Option<T>) -> T {
    let mut all: Vec<T> = phone.model.journal.gear(kind).filter_map(|(_, e)| item(e)).collect();
    assert_eq!(all.len(), 1, "one of {kind:?}");
    all.remove(0)
}

fn hydrometer(phone: &Paper) -> HydrometerItem {
    only(phone, Kind::Hydrometer, |entry| match entry {
        Entry::Hydrometer(item) => Some(item.clone()),
        _ => None,
    })
}

pub fn bottles(phone: &Paper) -> BottlesItem {
    only(phone, Kind::Bottles, |entry| match entry {
        Entry::Bottles(item) => Some(item.clone()),
        _ => None,
    })
}

fn put(phone: &mut Paper, entry: Entry) -> Id {
    let id = Id::random(*b"a thing!");
    phone.model.journal.apply(Change::put(id.clone(), entry)).expect("it fits");
    id
}

pub fn add_bottles(phone: &mut Paper, name: &str, count: &str) {
    phone.tap("Add bottles");
    phone.type_into("What you call them", name);
    phone.choose("What kind", "Sound");
    phone.type_into("Size of one", "330");
    phone.type_into("How many", count);
    phone.tap("Save");
}

#[test]
fn gear_reads_well() {
    let mut phone = at_gear();
    golden("gear", &phone.text());
    phone.tap("Add a hydrometer");
    phone.tap("A second check, in sugar water");
    golden("gear-hydrometer", &phone.text());
}

#[test]
fn a_hydrometer_is_added_with_both_checks_and_taken_back() {
    let mut phone = at_gear();
    phone.tap("Add a hydrometer");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("gear/new/name".to_owned())));
    phone.type_into("Name", "The old one");
    phone.tap("60 °F");
    phone.tap("0.001");
    phone.type_into("In plain water it shows", "0.998");
    phone.type_into("Temperature of that water", "15.56");
    phone.sees("2.0 points will be added to its readings.");
    phone.tap("A second check, in sugar water");
    phone.sees("of dry table sugar in");
    phone.type_into("In the sugar water it shows", "1.045");
    phone.tap("Save");
    phone.sees("Made for 15.6 °C, lines every 0.0010, corrected by two checks");
    let item = hydrometer(&phone);
    assert_eq!(item.name, "The old one");
    assert_eq!(item.instrument.reference, Celsius::literal(15.56));
    let check = item.instrument.sugar.expect("a second check");
    assert_eq!(check.shown, Gravity::Specific(SpecificGravity::literal(1.045)));
    phone.tap("Undo");
    phone.sees_no("The old one");
    phone.reload();
    phone.sees_no("The old one");
    assert!(!phone.model.drafts.any("gear/"), "nothing of it is half typed");
}

#[test]
fn a_new_name_alone_changes_nothing_else() {
    let mut phone = at_gear();
    // As an earlier version, or another instrument's maker, may have it: none of the choices.
    let instrument = Hydrometer {
        reference: Celsius::literal(15.6),
        division: GravityChange::literal(0.0025),
        offset: GravityChange::literal(0.001_234),
        sugar: None,
    };
    put(&mut phone, Entry::Hydrometer(HydrometerItem { name: "One".to_owned(), instrument }));
    let sugar = OwnSugar { fermentable: Share::literal(0.6789), water: Share::literal(0.123_45) };
    put(&mut phone, Entry::Sugar(SugarItem { name: "Syrup".to_owned(), sugar }));
    let of = Bottles { size: Litres::literal(0.355), class: Bottle::Pet, count: 7 };
    put(&mut phone, Entry::Bottles(BottlesItem { name: "Some".to_owned(), bottles: of }));
    for (change, field) in [
        ("Change One", "Name"),
        ("Change Syrup", "What you call it"),
        ("Change Some", "What you call them"),
    ] {
        phone.tap(change);
        phone.type_into(field, "Another");
        phone.tap("Save");
    }
    assert_eq!(hydrometer(&phone), HydrometerItem { name: "Another".to_owned(), instrument });
    let kept = only(&phone, Kind::Sugar, |entry| match entry {
        Entry::Sugar(item) => Some(item.clone()),
        _ => None,
    });
    assert_eq!(kept, SugarItem { name: "Another".to_owned(), sugar });
    assert_eq!(bottles(&phone), BottlesItem { name: "Another".to_owned(), bottles: of });
}

#[test]
fn leaving_a_form_forgets_what_was_typed_and_a_closed_page_does_not() {
    let mut phone = at_gear();
    phone.tap("Add a hydrometer");
    phone.type_into("Name", "Half ty");
    phone.reload();
    phone.tap("Add a hydrometer");
    assert_eq!(phone.value_in("Name"), "Half ty");
    phone.tap("Leave it as it was");
    phone.tap("Add a hydrometer");
    assert_eq!(phone.value_in("Name"), "");
    phone.tap("Leave it as it was");
    phone.tap("Change My hydrometer");
    phone.type_into("Name", "Mine");
    phone.tap("Leave it as it was");
    phone.reload();
    phone.tap("Change My hydrometer");
    assert_eq!(phone.value_in("Name"), "My hydrometer");
}

#[test]
fn what_is_missing_is_said_at_its_field() {
    let mut phone = at_gear();
    phone.tap("Add bottles");
    phone.sees_no("Give it a name.");
    phone.tap("Save");
    phone.sees("!! Some fields need another look.");
    phone.sees("Give it a name.");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("bottles/new/name".to_owned())));
    phone.type_into("What you call them", "Brown ones");
    phone.type_into("Size of one", "330");
    phone.type_into("How many", "20");
    phone.tap("Save");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("bottles/new/class".to_owned())));
    let What::Pick(kind) = phone.field("What kind").what else { panic!("a list") };
    assert_eq!(kind.error, "Choose what kind they are.");
    phone.choose("What kind", "Plastic");
    phone.tap("Save");
    phone.sees("20 × 330 mL · Plastic made for fizzy drinks");
    phone.tap("Delete Brown ones");
    phone.sees_no("20 × 330 mL");
    phone.sees("Bottles deleted");
    phone.tap("Undo");
    phone.sees("20 × 330 mL");
}

#[test]
fn a_check_that_cannot_be_is_refused_and_not_dropped() {
    let mut phone = at_gear();
    phone.tap("Change My hydrometer");
    // It would be out by 150 points.
    phone.type_into("In plain water it shows", "1.150");
    phone.sees("The answer would be beyond anything real.");
    phone.tap("Save");
    phone.sees("!! Some fields need another look.");
    phone.type_into("In plain water it shows", "");
    phone.tap("A second check, in sugar water");
    phone.type_into("Sugar water to make", "1.000");
    phone.type_into("In the sugar water it shows", "1.045");
    phone.tap("A second check, in sugar water");
    phone.tap("Save");
    // The fold is opened, for what is wrong stands in it.
    phone.sees("Sugar water to make: [1.000] *SG* °P  ! Give a gravity above water and the jar.");
    assert_eq!(phone.model.journal.gear(Kind::Hydrometer).count(), 0);
    phone.type_into("Sugar water to make", "1.048");
    phone.tap("Save");
    assert!(hydrometer(&phone).instrument.sugar.is_some());
}

#[test]
fn what_is_in_use_or_not_there_is_not_deleted() {
    let mut phone = at_gear();
    phone.tap("Delete My hydrometer");
    phone.sees("!! There is nothing of that identity.");
    phone.sees("My hydrometer");
}

#[test]
fn a_form_whose_thing_is_deleted_closes() {
    let mut phone = at_gear();
    add_bottles(&mut phone, "Brown ones", "20");
    phone.tap("Change Brown ones");
    phone.type_into("How many", "30");
    phone.tap("Delete Brown ones");
    phone.sees_no("Leave it as it was");
    assert!(!phone.model.drafts.any("bottles/"));
}
