//! The plan and what is shown of it.

use super::*;
use crate::paper::golden;

#[test]
fn the_plan_answers_as_soon_as_it_can() {
    let mut phone = finished();
    phone.sees("> For the dose give the volume, the bottles and the warmest temperature.");
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.sees("> For the dose give the bottles.");
    assert_eq!(answer(&phone), "–");
    phone.choose("Weakest bottle", "Sound");
    assert_eq!(answer(&phone), "122 g");
    phone.sees("(Go) Within the usual ceiling.");
    phone.sees("± 7 g");
    phone.tap("Assumed");
    phone.sees(
        "> Assumed | 2.40 vol · Table sugar (sucrose) · Into the vessel · 500 mL · up to 30 °C",
    );
    phone.sees("Sound reusable beer glass: 38 × 500 mL");
    phone.tap("How this was worked out");
    phone.tap("What if");
    golden("bottle", &phone.text());
}

#[test]
fn a_stopped_dose_is_said_on_the_plate_and_shown_nowhere() {
    let mut phone = brewed(&[(10.0, 1.021, None), (14.0, 1.020, None)]);
    // Beer that may still ferment gets none, whatever is given.
    assert_eq!(answer(&phone), "No dose");
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.choose("Weakest bottle", "Thin");
    assert_eq!(answer(&phone), "No dose");
    let said = why(&phone);
    for words in ["Stop.", "do not show a finished fermentation", "above the ceiling"] {
        assert!(said.contains(words), "{words:?} is not said: {said}");
    }
    phone.sees("Less sugar is no answer to beer that may still ferment");
    phone.sees_no("Less fizz");
    phone.tap("How this was worked out");
    phone.sees("Sugar for one volume");
    phone.sees_no("Sugar = ");
    phone.sees_no("What the ± is made of");
    phone.choose("Weakest bottle", "Square");
    assert!(why(&phone).contains("not made for pressure"), "{}", why(&phone));
}

/// Each way that can be gone at once is one touch, and gives what it says.
#[test]
fn a_way_that_is_touched_gives_the_dose_it_names() {
    let mut gone = 0;
    for (bottle, carbonation, hottest) in [
        ("Thin", "2.4", "30"),
        ("Thin", "3.0", "30"),
        ("Sound", "3.2", "30"),
        ("Sound", "2.4", "44"),
        ("Heavy", "3.9", "30"),
    ] {
        let phone = || {
            let mut phone = ready();
            phone.choose("Weakest bottle", bottle);
            phone.type_into("Carbonation", carbonation);
            phone.type_into("Hottest they may stand", hottest);
            phone
        };
        let rows = |phone: &Paper| -> Vec<Part> {
            let is_way = |part: &Part| part.name.starts_with("ways/") && part.name.ends_with("/go");
            phone.parts().into_iter().filter(is_way).collect()
        };
        for at in 0..rows(&phone()).len() {
            let mut phone = phone();
            assert_eq!(answer(&phone), "No dose");
            let row = rows(&phone).swap_remove(at);
            let What::Action(way) = &row.what else { continue };
            let (_, sugar) = way.label.rsplit_once(": ").expect("what it gives");
            let sugar = sugar.replace('\u{A0}', " ");
            if !sugar.ends_with(" g") {
                continue;
            }
            phone.touch(&row, "");
            assert_eq!(answer(&phone), sugar, "{}\n{}", way.label, phone.text());
            assert_eq!(phone.asked.last(), Some(&Effect::Attend("dose/plate".to_owned())));
            assert!(rows(&phone).is_empty());
            gone += 1;
        }
    }
    assert!(gone > 5, "{gone}");
}

#[test]
fn a_date_ahead_is_told_by_the_clock_the_phone_will_show_then() {
    let mut phone = brewed(&[(38.5, 1.010, None), (39.5, 1.010, None)]);
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.choose("Weakest bottle", "Sound");
    let told = |phone: &Paper| {
        let text = phone.text();
        let (_, rest) = text.split_once("Read it again on ").expect("a date");
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
    slide(&mut phone, "Volumes of CO₂", 2.0);
    phone.sees("Go: 91 g ± ");
    assert_eq!(answer(&phone), "122 g");
    assert_eq!(phone.value_in("Carbonation"), "2.40");
    phone.tap("Put them back");
    phone.sees("Go: 122 g ± ");
    slide(&mut phone, "Volumes of CO₂", 2.3);
    slide(&mut phone, "Warmest", 68.0);
    phone.in_unit("Warmest since it ended", "°F");
    phone.tap("Use these");
    assert_eq!(phone.value_in("Carbonation"), "2.30");
    // No further than the slider goes, and in the unit of the field.
    assert_eq!(phone.value_in("Warmest since it ended"), "95.0");
    assert_eq!(phone.value_in("Beer to bottle"), "19");
    phone.reload();
    open_granted(&mut phone);
    assert_eq!(phone.value_in("Carbonation"), "2.30");
    // What means nothing is not tried.
    phone.tap("What if");
    slide(&mut phone, "Beer", f64::NAN);
    phone.tap("Use these");
    assert_eq!(phone.value_in("Beer to bottle"), "19");
}

#[test]
fn beer_closed_in_the_cold_has_two_ends() {
    let mut phone = ready();
    phone.choose("Chilled since", "Yes");
    // How cold is asked before any dose.
    phone.sees("> For the dose give how cold it got.");
    phone.type_into("Coldest it got", "2");
    phone.tap("Closed tight");
    phone.sees("It may hold 1.5");
    phone.sees("<<What each dose may come to: Dosed by the warmest temperature (no dose)");
    phone.sees("Let its gas go, in a warm room under an airlock until ");
    phone.tap("Beer that holds more");
    assert!(answer(&phone).ends_with(" g"), "{}", answer(&phone));
    phone.tap("Under an airlock");
    assert_eq!(answer(&phone), "122 g");
}

#[test]
fn the_sum_of_the_bench_answers_and_guards() {
    let mut phone = finished();
    phone.go("#/bench/sugar");
    phone.sees(
        "give the volume, the bottles, the warmest temperature and the two readings that agree.",
    );
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.choose("Weakest bottle", "Sound");
    // Nothing is taken as finished that was not said to be.
    phone.sees("the two readings that agree");
    phone.type_into("It read the same twice", "1.010");
    phone.type_into("Days between them", "4");
    phone.type_into("Days since pitching", "14");
    phone.type_into("Starting gravity (OG)", "1.048");
    phone.choose("Yeast", "Ale, clean");
    assert_eq!(answer(&phone), "122 g");
    phone.tap("Assumed");
    golden("bench-sugar", &phone.text());
    let What::Pick(sugars) = phone.field("Sugar").what else { panic!("no list") };
    for (at, known) in Sugar::ALL.into_iter().enumerate() {
        let stored = serde_json::to_value(known).expect("a name");
        assert_eq!(stored.as_str(), sugars.options.get(at).map(|(stored, _)| &**stored));
    }
    phone.choose("Weakest bottle", "Heavy");
    phone.choose("Sugar", "Wort kept back");
    phone.sees("give what the sugar is");
    phone.type_into("Gravity of the wort kept back (OG)", "1.048");
    phone.type_into("Where that wort ends (FG)", "1.010");
    phone.sees("Boil it, let it cool, and stir it in like a syrup.");
    phone.type_into("Carbonation", "3.9");
    assert_eq!(answer(&phone), "No dose");
}
