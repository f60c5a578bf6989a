//! The plan and what is shown of it.

use super::*;
use crate::paper::golden;

#[test]
fn the_plan_answers_as_soon_as_it_can() {
    let mut phone = finished();
    phone.sees("Give the volume, the bottles and the warmest temperature.");
    phone.type_into("Beer in the bottling vessel", "19");
    phone.type_into("Warmest it has been", "20");
    phone.sees("Give the volume, the bottles");
    phone.choose("Weakest bottle to be filled", "Sound");
    assert_eq!(answer(&phone), "122 g");
    phone.sees("(Go) Within the usual ceiling of the weakest bottle.");
    phone.sees("38 × 500 mL: Sound reusable beer glass");
    assert_eq!(heard(&phone), "");
    phone.tap("How this was worked out");
    phone.tap("What if");
    golden("bottle", &phone.text());
}

#[test]
fn a_stopped_dose_is_heard_and_not_shown_anywhere() {
    let mut phone = brewed(&[(10.0, 1.021, None), (14.0, 1.020, None)]);
    assert_eq!(heard(&phone), "");
    phone.type_into("Beer in the bottling vessel", "19");
    phone.type_into("Warmest it has been", "20");
    phone.choose("Weakest bottle to be filled", "Thin");
    phone.sees("No dose: see why below.");
    let said = heard(&phone);
    for words in ["Stop.", "do not show a finished fermentation", "above the ceiling"] {
        assert!(said.contains(words), "{words:?} is not heard: {said}");
    }
    phone.sees("Less sugar is no answer to beer that may still ferment");
    phone.sees_no("a target of");
    phone.tap("How this was worked out");
    phone.sees("Sugar for one volume");
    phone.sees_no("Sugar = ");
    phone.sees_no("What the ± is made of");
    phone.choose("Weakest bottle to be filled", "Square");
    assert!(heard(&phone).contains("not made for pressure"), "{}", heard(&phone));
}

#[test]
fn a_date_ahead_is_told_by_the_clock_the_phone_will_show_then() {
    let mut phone = brewed(&[(38.5, 1.010, None), (39.5, 1.010, None)]);
    phone.type_into("Beer in the bottling vessel", "19");
    phone.type_into("Warmest it has been", "20");
    phone.choose("Weakest bottle to be filled", "Sound");
    let told = |phone: &Paper| {
        let text = phone.text();
        let (_, rest) = text.split_once("read again on ").expect("a date");
        rest.split_once(" or later").expect("its end").0.to_owned()
    };
    let at_home = told(&phone);
    // Half a day further west it is still the day before.
    phone.happens(Event::Travelled(Zone::fixed(-600)));
    assert_ne!(told(&phone), at_home);
}

#[test]
fn what_if_changes_nothing_until_it_is_taken_over() {
    let mut phone = ready();
    phone.tap("What if");
    let slide = |phone: &mut Paper, label: &str, value| {
        let name = phone.field(label).name;
        phone.happens(Event::Slid { name, value });
    };
    slide(&mut phone, "Carbon dioxide", 2.0);
    phone.sees("Go: 91 g ± ");
    assert_eq!(answer(&phone), "122 g");
    assert_eq!(phone.value_in("Wished carbon dioxide"), "2.40");
    phone.tap("Back to what the form says");
    phone.sees("Go: 122 g ± ");
    slide(&mut phone, "Carbon dioxide", 2.3);
    slide(&mut phone, "Warmest since it went quiet", 68.0);
    phone.in_unit("Warmest it has been", "°F");
    phone.tap("Use these");
    assert_eq!(phone.value_in("Wished carbon dioxide"), "2.30");
    // No further than the slider goes, and in the unit of the field.
    assert_eq!(phone.value_in("Warmest it has been"), "95.0");
    assert_eq!(phone.value_in("Beer in the bottling vessel"), "19");
    phone.reload();
    assert_eq!(phone.value_in("Wished carbon dioxide"), "2.30");
    // What means nothing is not tried.
    phone.tap("What if");
    slide(&mut phone, "Beer", f64::NAN);
    phone.tap("Use these");
    assert_eq!(phone.value_in("Beer in the bottling vessel"), "19");
}

#[test]
fn beer_closed_in_the_cold_has_two_ends() {
    let mut phone = ready();
    phone.tap("Chilled");
    // How cold is asked before any dose.
    phone.sees("Give the volume");
    phone.type_into("Coldest it has been since", "2");
    phone.tap("Closed tight");
    phone.sees("It may hold 1.5");
    phone.sees("<<What either dose may come to: Dosed by the warmest temperature (no dose)");
    phone.sees("let it stand in a warm room under an airlock until ");
    phone.tap("Beer that holds more");
    assert!(answer(&phone).ends_with(" g"), "{}", answer(&phone));
    phone.tap("Under an airlock");
    assert_eq!(answer(&phone), "122 g");
}

#[test]
fn the_sum_of_the_bench_answers_and_guards() {
    let mut phone = finished();
    phone.go("#/bench/sugar");
    phone.sees("Give the volume, the weakest bottle, the warmest temperature, and how level");
    phone.type_into("Beer in the bottling vessel", "19");
    phone.type_into("Warmest it has been", "20");
    phone.choose("Weakest bottle to be filled", "Sound");
    // Nothing is taken as finished that was not said to be.
    phone.sees("how level the beer is");
    phone.type_into("It reads, twice the same", "1.010");
    phone.type_into("Days between the two", "4");
    phone.type_into("Days since the yeast went in", "14");
    phone.type_into("Gravity at the start", "1.048");
    phone.choose("Yeast", "Ale, clean");
    assert_eq!(answer(&phone), "122 g");
    golden("bench-sugar", &phone.text());
    let What::Pick(sugars) = phone.field("Sugar").what else { panic!("no list") };
    for (at, known) in Sugar::ALL.into_iter().enumerate() {
        let stored = serde_json::to_value(known).expect("a name");
        assert_eq!(stored.as_str(), sugars.options.get(at).map(|(stored, _)| &**stored));
    }
    phone.choose("Weakest bottle to be filled", "Heavy");
    phone.choose("Sugar", "Wort kept back");
    phone.sees("Give the volume");
    phone.type_into("Gravity of the wort kept back", "1.048");
    phone.type_into("Where it ends", "1.010");
    phone.sees("Boil it, let it cool, and stir it in like a syrup.");
    phone.type_into("Wished carbon dioxide", "3.9");
    phone.sees("No dose: see why below.");
}
