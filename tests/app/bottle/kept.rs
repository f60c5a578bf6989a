//! What is kept of a bottling, and what is printed of it.

use super::*;
use crate::paper::golden;

#[test]
fn what_is_missing_is_said_at_its_field_and_nothing_is_lost() {
    let mut phone = finished();
    phone.tap("It is bottled");
    phone.sees("!! Some fields need another look.");
    assert_eq!(phone.asked, [Effect::Attend("bottling/b/beer".to_owned())]);
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.tap("It is bottled");
    phone.sees("!! Choose the weakest bottle.");
    phone.choose("Weakest bottle", "Thin");
    phone.type_into("Carbonation", "3.4");
    phone.tap("It is bottled");
    phone.sees("!! There is no dose for this.");
    // What would mend it is no longer folded away.
    phone.sees("Sugar you weighed: []");
    phone.reload();
    open_granted(&mut phone);
    assert_eq!(phone.value_in("Carbonation"), "3.4");
    assert_eq!(record(&phone), None);
}

#[test]
fn a_reason_to_go_on_is_kept_only_where_the_log_does_not_show_the_end() {
    let bottled = |readings: &[_]| {
        let mut phone = brewed(readings);
        let (name, text) = ("bottling/b/because".to_owned(), "it tastes dry".to_owned());
        phone.happens(Event::Typed { name, text, unit: String::new() });
        phone.type_into("Beer to bottle", "19");
        phone.type_into("Warmest since it ended", "20");
        phone.choose("Weakest bottle", "Heavy");
        phone.type_into("Carbonation", "1.5");
        phone.tap("It is bottled");
        record(&phone).expect("a record").went_on_because
    };
    assert_eq!(bottled(&[(10.0, 1.012, None), (10.5, 1.010, None)]), "it tastes dry");
    assert_eq!(bottled(&[(10.0, 1.010, None), (14.0, 1.010, None)]), "");
}

#[test]
fn a_dose_that_was_rounded_up_is_not_judged_twice() {
    let mut phone = finished();
    // 3.6 g for a litre are 4 on the scale; counted again with its rounding they would be too much.
    phone.type_into("Beer to bottle", "1");
    phone.type_into("Warmest since it ended", "20");
    phone.choose("Weakest bottle", "Sound");
    phone.type_into("Carbonation", "1.70");
    assert_eq!(answer(&phone), "4 g");
    phone.tap("How this was worked out");
    let judged = figure(&phone.parts(), "At worst").expect("a figure");
    phone.tap("It is bottled");
    let worst = record(&phone).expect("a record").worst.value();
    assert!((worst - judged).abs() < 0.006, "{judged} was judged, {worst} is kept");
}

#[test]
fn the_log_fills_in_and_is_saved_to_its_last_bit() {
    let mut phone = brewed(&[
        (10.0, 1.010, Some(23.45)),
        (14.0, 1.010, Some(23.45)),
        (15.0, 1.010, Some(3.33)),
    ]);
    assert_eq!(phone.value_in("Warmest since it ended"), "23.4");
    assert_eq!(phone.value_in("Chilled since"), "yes");
    assert_eq!(phone.value_in("Coldest it got"), "3.3");
    phone.in_unit("Warmest since it ended", "°F");
    phone.type_into("Beer to bottle", "19");
    phone.tap("Under an airlock");
    phone.choose("Weakest bottle", "Heavy");
    phone.type_into("Carbonation", "2,2");
    phone.tap("Weighed, filled, place, time, note");
    phone.type_into("Note", " six bottles for Ann ");
    phone.tap("It is bottled");
    let record = record(&phone).expect("a record");
    assert_eq!(record.warmest, Celsius::literal(23.45));
    let past = record.grounds.and_then(|grounds| grounds.past).expect("what happened");
    assert_eq!(past.coldest, Some(Celsius::literal(3.33)));
    assert_eq!((record.at, &*record.note), (day(40.0), "six bottles for Ann"));
    // What was saved is no longer half typed.
    assert!(!phone.model.drafts.any("bottling/"));
}

#[test]
fn bottles_on_hand_decide_and_an_own_sugar_keeps_its_name() {
    let mut phone = ready();
    phone.tap("Brown halves: 60");
    phone.tap("Swing-tops: 4");
    phone.sees_no("Weakest bottle");
    phone.reload();
    open_granted(&mut phone);
    phone.sees("[x] Swing-tops: 4 × 750 mL, heavy");
    phone.sees("rated swing-top: 4 × 750 mL");
    phone.sees("Sound reusable beer glass: 32 × 500 mL");
    phone.choose("Sugar", "Beet syrup");
    phone.tap("It is bottled");
    phone.sees("Filled: 4 × 750 mL, 32 × 500 mL");
    phone.sees("g Beet syrup");
    let record = record(&phone).expect("a record");
    assert_eq!(record.weakest, Bottle::ReusableGlass);
    assert_eq!(record.sugar, Sugar::Own(OwnSugar::by_label(Share::literal(0.8))));

    phone.tap("Delete the bottling");
    phone.sees("= Sugar to weigh");
    phone.tap("Undo");
    phone.sees("In the bottle");
}

#[test]
fn paper_is_a_sheet_of_the_batch_or_a_label_for_each_bottle() {
    let mut phone = ready();
    phone.tap("Swing-tops: 4");
    phone.tap("It is bottled");
    phone.sees_no("Pour gently");
    phone.asked.clear();
    phone.tap("Print labels");
    assert_eq!(phone.asked, [Effect::Print]);
    let labels = |phone: &Paper| {
        let is_label =
            |part: &&Part| matches!(&part.what, What::Group(group) if group.kind == "label");
        phone.parts().iter().filter(is_label).count()
    };
    assert_eq!(labels(&phone), 4);
    phone.sees("Bottled Thu 16 Apr 2026");
    phone.sees("vol");
    phone.tap("Print the batch sheet");
    assert_eq!((phone.asked.len(), labels(&phone)), (2, 0));
    golden("bottle-sheet", &phone.text());
    // Left, and come back to, there is nothing to print.
    phone.go("#/now");
    phone.go(BOTTLE);
    phone.sees_no("## Notes");
}

/// Labels were printed for as many as the volume fills, whatever was filled.
#[test]
fn bottles_really_filled_can_be_entered_then_or_later() {
    let mut phone = ready();
    phone.tap("Weighed, filled");
    assert_eq!(phone.value_in("Bottles of 500 mL filled"), "38");
    phone.type_into("Bottles of 500 mL filled", "36");
    phone.tap("It is bottled");
    phone.sees("Filled: 36 × 500 mL");
    phone.tap("Print labels");
    let labels = |phone: &Paper| {
        let is_label =
            |part: &&Part| matches!(&part.what, What::Group(group) if group.kind == "label");
        phone.parts().iter().filter(is_label).count()
    };
    assert_eq!(labels(&phone), 36);
    phone.tap("Filled another number?");
    phone.type_into("Bottles of 500 mL filled", "34.5");
    phone.type_into("Bottles of 500 mL filled", "34");
    phone.tap("Save the number");
    phone.sees("Number of bottles saved");
    phone.sees("Filled: 34 × 500 mL");
    phone.tap("Print labels");
    assert_eq!(labels(&phone), 34);
    phone.tap("Undo");
    phone.sees("Filled: 36 × 500 mL");
}
