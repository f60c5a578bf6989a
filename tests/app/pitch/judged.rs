//! What is said of wort, yeast, place and quiet.

use super::{pitching, pitching_with};
use crate::paper::{Paper, golden};
use fermentside::advice::family::Family;

#[test]
fn one_sachet_a_little_under_the_dose_is_a_note_and_half_of_it_is_not() {
    let mut phone = pitching();
    phone.type_into("Wort now", "19");
    phone.tap("Gravity");
    phone.type_into("Hydrometer reads", "1.046");
    phone.type_into("Sample temperature", "20");
    phone.tap("Yeast");
    // 23 litres want 11.5 g at the least.
    phone.tap("1");
    phone.tap("Cool");
    phone.type_into("Wort now", "30");
    phone.tap("How much wort");
    phone.type_into("In the vessel now", "23");
    phone.type_into("Wort now", "19");
    phone.tap("Yeast: 1 sachet, a little under the dose");
    phone.sees("(Go) A little less yeast than usual; it will do.");
    phone.tap("Age, name and weight of the yeast");
    phone.type_into("Dry yeast", "11.5");
    phone.sees("(Go) Enough yeast.");
    phone.type_into("Dry yeast", "7");
    phone.sees("(Wait) Far less yeast than this wort wants.");
}

#[test]
fn a_little_under_the_range_is_go_with_a_note_before_and_after_the_yeast() {
    let mut phone = pitching();
    phone.type_into("Wort now", "15");
    phone.sees("(Go) Cool enough.");
    phone.sees("2.0 °C below the yeast's range of 17.0 °C to 20.0 °C: it starts more slowly");
    phone.tap("Gravity");
    phone.type_into("Hydrometer reads", "1.046");
    phone.sees("[Cool: 15.0 °C, a little cool, and fine]");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("(Go) ");
    phone.sees("it begins more slowly, and warms itself as it does.");
}

#[test]
fn the_packet_judges_wort_place_and_beer_alike() {
    let mut phone = pitching();
    phone.go("#/batch/b1/edit");
    phone.tap("Packet and instrument");
    phone.type_into("Packet: temperature from", "12");
    phone.type_into("Packet: temperature up to", "16");
    phone.tap("Save");
    phone.go("#/batch/b1/pitch");
    phone.type_into("Wort now", "15");
    phone.sees("The yeast's range is 12.0 °C to 16.0 °C.");
    phone.tap("Gravity");
    phone.type_into("Hydrometer reads", "1.046");
    phone.tap("Place");
    phone.type_into("Room where it will stand", "12");
    phone.sees("within 12 °C to 16 °C.");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("The yeast's range is 12 °C to 16 °C.");
}

#[test]
fn the_card_and_the_way_beside_it_tell_one_time() {
    let mut phone = pitching();
    phone.type_into("Wort now", "28");
    phone.tap("By waiting");
    phone.type_into("Wort at the earlier look", "32");
    phone.type_into("Time between the two looks", "30");
    phone.type_into("Water or air around it", "12");
    for tub in ["", "60"] {
        phone.type_into("Water in the tub", tub);
        let text = phone.text();
        let (_, told) = text.split_once("In its range ").expect("the card");
        let (window, _) = told.split_once(" after the last look").expect("the card");
        phone.sees(&format!("Wait: {window}"));
    }
    phone.type_into("Water in the tub", "8");
    phone.sees("It comes to rest at about 23.");
}

#[test]
fn what_to_make_of_the_quiet_goes_by_the_yeast() {
    let quiet = |family| {
        let mut phone = pitching_with(family);
        phone.type_into("Wort now", "10");
        phone.tap("Gravity");
        phone.type_into("Hydrometer reads", "1.046");
        phone.tap("The yeast goes in");
        phone.tap("The yeast is in");
        phone.hours(50.0);
        phone
    };
    quiet(Family::Lager).sees("Press the lid and look for a ring of foam");
    quiet(Family::Kveik).sees("Press the lid and look for a ring of foam");
    let mut warm = pitching_with(Family::CleanAle);
    warm.type_into("Wort now", "19");
    warm.tap("Gravity");
    warm.type_into("Hydrometer reads", "1.046");
    warm.tap("The yeast goes in");
    warm.tap("The yeast is in");
    warm.hours(50.0);
    warm.sees("Take a gravity.");
}

#[test]
fn water_or_ice_and_the_clock_bring_wort_to_its_yeast_on_the_bench() {
    let mut phone = Paper::new();
    phone.go("#/bench/cooling");
    phone.sees("(Can't tell) Give the wort's temperature.");
    phone.type_into("Wort now", "30");
    phone.choose("Yeast", "Ale, clean");
    phone.type_into("How much wort", "15");
    phone.type_into("Its gravity", "1.060");
    phone.type_into("Water to add", "8");
    phone.type_into("Wort at the earlier look", "60");
    phone.type_into("Time between the two looks", "30");
    phone.type_into("Water or air around it", "12");
    golden("bench-cooling", &phone.text());
    phone.type_into("Water to add", "25");
    phone.sees("It can't be reached with what is at hand.");
    // A tub that the wort warms takes longer, or does not do.
    phone.type_into("How much wort", "15");
    phone.type_into("Water in the tub", "10");
    phone.sees("It does not come into its range there.");
    phone.type_into("Water in the tub", "60");
    phone.sees("In its range ");
    // Of wort whose gravity is not known none is told.
    phone.type_into("Water to add", "8");
    phone.type_into("Its gravity", "");
    phone.sees("then 18.5 °C, 3");
}
