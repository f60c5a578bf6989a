//! Fields keep what they were given.

use crate::paper::Paper;

#[test]
fn a_text_keeps_the_unit_it_was_typed_in() {
    let mut phone = Paper::new();
    phone.go("#/bench/gravity");
    phone.type_into("Sample temperature", "31");
    phone.in_unit("Sample temperature", "°F");
    assert_eq!(phone.value_in("Sample temperature"), "87.8");
    phone.in_unit("Sample temperature", "°C");
    assert_eq!(phone.value_in("Sample temperature"), "31");
    phone.in_unit("Sample temperature", "°F");
    phone.reload();
    assert_eq!(phone.value_in("Sample temperature"), "87.8");
    phone.type_into("Sample temperature", "68");
    phone.in_unit("Sample temperature", "°C");
    assert_eq!(phone.value_in("Sample temperature"), "20.0");
}

#[test]
fn a_text_that_means_nothing_in_its_unit_is_meant_in_the_one_chosen_after() {
    let mut phone = Paper::new();
    phone.go("#/bench/gravity");
    phone.type_into("Hydrometer reads", "1.048");
    phone.type_into("Sample temperature", "99");
    phone.sees("It must be from 0.0 °C to 60.0 °C.");
    phone.in_unit("Sample temperature", "°F");
    phone.sees_no("It must be from");
    assert_eq!(phone.value_in("Sample temperature"), "99");
    phone.sees("= Gravity at 20 °C: 1.053");
    phone.type_into("Sample temperature", "200");
    phone.sees("It must be from 32.0 °F to 140.0 °F.");
    phone.in_unit("Sample temperature", "°C");
    phone.sees("It must be from 0.0 °C to 60.0 °C.");
    assert_eq!(phone.value_in("Sample temperature"), "200");
}

#[test]
fn the_answer_follows_and_tells_what_is_missing() {
    let mut phone = Paper::new();
    phone.go("#/bench/gravity");
    phone.sees("= Gravity at 20 °C: –");
    phone.type_into("Hydrometer reads", "1,048");
    phone.type_into("Sample temperature", "31");
    phone.sees("= Gravity at 20 °C: 1.051");
    phone.sees("~ Read as 1.048");
    phone.type_into("Sample temperature", "hot");
    phone.sees("is not a number");
    phone.tap("Bench");
    phone.tap("True gravity");
    assert_eq!(phone.value_in("Sample temperature"), "hot");
}
