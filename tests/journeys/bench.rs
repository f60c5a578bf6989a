//! The six sums of the Bench: a number in, the answer at once, the working behind it.

use serde_json::json;
use thirtyfour::Key;

use crate::brewing::opened;
use crate::phone::Phone;

/// Opens the working and sees this in it.
async fn working_says(phone: &Phone, words: &str) {
    phone.tap("How this was worked out").await;
    phone.says("details.worked[open]", words).await;
}

#[tokio::test]
async fn true_gravity() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/gravity").await;
    phone.says(".answer", "Give the reading").await;
    phone.type_into("Hydrometer reads", "1.048").await;
    phone.type_into("Sample temperature", "31").await;
    phone.says(".answer .answer-main", "1.051 ± 0.00").await;
    phone.type_into("Sample temperature", "20").await;
    phone.says(".answer .answer-main", "1.048").await;
    working_says(&phone, "Sample temperature").await;
    phone.is_well().await;
}

#[tokio::test]
async fn strength_and_scales() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/strength").await;
    phone.type_into("Starting gravity (OG)", "1.050").await;
    phone.type_into("Gravity now", "1.010").await;
    phone.says(".answer .answer-main", "5.3 % ± 0.").await;
    working_says(&phone, "Original extract").await;
    phone.type_into("Gravity now", "1.060").await;
    phone.says(".answer", "The gravity now is above the start").await;

    phone.go("#/bench/scales").await;
    phone.type_into("Gravity", "1.050").await;
    phone.says(".answer .answer-main", "12.3").await;
    phone.says(".answer", "50.0 points").await;
    working_says(&phone, "ICUMSA").await;
    phone.is_well().await;
}

#[tokio::test]
async fn priming_sugar() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/sugar").await;
    phone.type_into("Beer to bottle", "19").await;
    phone.type_into("Warmest since it ended", "20").await;
    phone.says(".answer", "the two readings that agree").await;
    phone.choose("Weakest bottle", "Sound").await;
    phone.type_into("It read the same twice", "1.010").await;
    phone.type_into("Days between them", "4").await;
    phone.type_into("Days since pitching", "14").await;
    phone.type_into("Starting gravity (OG)", "1.048").await;
    phone.choose("Yeast", "Ale, clean").await;
    phone.says(".answer .answer-main", "122 g ±").await;
    phone.says(".verdict .verdict-word", "Go").await;
    working_says(&phone, "CO₂ to add").await;
    phone.choose("Weakest bottle", "Square").await;
    phone.says(".answer", "No dose").await;
    phone.says(".verdict .verdict-word", "Stop").await;
    phone.is_well().await;
}

#[tokio::test]
async fn pitching_temperature_and_yeast() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/cooling").await;
    phone.says(".verdict .verdict-word", "Can't tell").await;
    phone.type_into("Wort now", "26").await;
    phone.says(".verdict .verdict-word", "Wait").await;
    phone.type_into("How much wort", "15").await;
    phone.type_into("Water to add", "8").await;
    phone.sees("kg of ice").await;
    phone.says(".plain-answer", "Add").await;
    working_says(&phone, "Temperature of the blend").await;
    phone.type_into("Wort at the earlier look", "40").await;
    phone.type_into("Time between the two looks", "30").await;
    phone.type_into("Water or air around it", "12").await;
    phone.sees("after the second look").await;
    phone.type_into("Wort now", "19").await;
    phone.says(".verdict .verdict-word", "Go").await;

    phone.go("#/bench/yeast").await;
    phone.type_into("Wort", "20").await;
    phone.type_into("Gravity", "1.048").await;
    phone.says(".answer .answer-main", "10 to 16 g").await;
    phone.tap("Cold: lager").await;
    phone.says(".answer", "sachets").await;
    working_says(&phone, "Cells wanted").await;
    phone.is_well().await;
}

#[tokio::test]
async fn a_gravity_is_read_in_every_way_people_write_it() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/gravity").await;
    for (typed, corrected) in [
        ("1.050", "1.050"),
        ("1050", "1.050"),
        ("50", "1.050"),
        ("1,050", "1.050"),
        ("12.4 P", "1.050"),
        ("0.998", "0.998"),
    ] {
        phone.type_into("Hydrometer reads", typed).await;
        phone.says(".answer .answer-main", corrected).await;
        assert_eq!(phone.value_in("Hydrometer reads").await, typed, "it stays as typed");
        // What does not look like what was typed is said, so that a slip shows.
        let read = phone.run("return document.querySelector('.field-read').innerText").await;
        assert_eq!(read != json!(""), typed != corrected, "{typed}: {read}");
        phone.type_into("Hydrometer reads", "1.100").await;
        phone.says(".answer .answer-main", "1.100").await;
    }
}

#[tokio::test]
async fn the_stem_and_its_field_are_one() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/gravity").await;
    phone.type_into("Hydrometer reads", "1.050").await;
    phone.says(".answer .answer-main", "1.050").await;
    phone.run("document.querySelector('[role=slider]').focus()").await;
    phone.press(Key::Up).await;
    phone.press(Key::Up).await;
    phone.says(".answer .answer-main", "1.052").await;
    assert_eq!(phone.value_in("Hydrometer reads").await, "1.0520");
    phone.press(Key::Down).await;
    phone.says(".answer .answer-main", "1.051").await;
    let spoken = phone.run("return document.querySelector('[role=slider]').ariaValueText").await;
    assert_eq!(spoken, json!("1.0510"));

    phone.tap("Hydrometer reads: more").await;
    phone.says(".answer .answer-main", "1.052").await;
}

#[tokio::test]
async fn units_are_taken_as_typed_or_chosen() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/gravity").await;
    phone.type_into("Hydrometer reads", "1.050").await;
    phone.type_into("Sample temperature", "68F").await;
    phone.says(".answer .answer-main", "1.050").await;
    phone.sees("Read as 20.0\u{A0}°C").await;
    phone.choose("Sample temperature: unit", "°F").await;
    assert_eq!(phone.value_in("Sample temperature").await, "68.0");
    phone.says(".answer .answer-main", "1.050").await;

    phone.go("#/bench/yeast").await;
    phone.type_into("Wort", "20").await;
    phone.type_into("Gravity", "1.048").await;
    phone.says(".answer .answer-main", " g").await;
    let by_litres = phone.text_of(".answer .answer-main").await;
    phone.choose("Wort: unit", "US gal").await;
    assert_eq!(phone.value_in("Wort").await, "5.283");
    assert_eq!(phone.text_of(".answer .answer-main").await, by_litres);

    phone.go("#/gear").await;
    phone.tap("US").await;
    phone.go("#/batches/new").await;
    let unit = phone.value_in("Volume in the fermenter: unit").await;
    assert_eq!(unit, "US gal");
    phone.type_into("Volume in the fermenter", "5").await;
    phone.choose("Volume in the fermenter: unit", "L").await;
    assert_eq!(phone.value_in("Volume in the fermenter").await, "18.93");
    phone.reload().await;
    phone.go("#/gear").await;
    assert_eq!(phone.count("#gear-temperature input:checked[value='°F']").await, 1);
}
