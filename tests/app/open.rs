//! Opened bottles.

use crate::paper::{Paper, golden};
use crate::shelf::{ago, bottling, id, in_zone, reading, with};
use fermentside::app::{Effect, What};
use fermentside::batch::{BottlingRecord, Clarity};
use fermentside::quantity::{Celsius, Moment, Zone};

/// Bottles that have stood in the cool for so many days.
fn bottled(days: f64) -> Paper {
    let readings = [reading(days + 20.1, 1.048), reading(days + 2.0, 1.011)];
    let mut phone = with(days + 20.0, readings, vec![bottling(days)]);
    phone.go("#/batch/b/open");
    phone
}

fn record(phone: &Paper) -> BottlingRecord {
    phone.model.journal.bottling(&id("b")).expect("it is bottled").1.clone()
}

#[test]
fn a_day_that_has_passed_is_no_plan() {
    let mut phone = warm();
    phone.sees("Chill one from: ");
    phone.days(20.0);
    phone.sees("The rest ready about: ");
    phone.sees_no("Chill one from: ");
    phone.tap("2 little");
    phone.tap("Save");
    phone.sees_no("The rest ready about: ");
    phone.sees("Carbonation expected: ");
}

#[test]
fn before_bottling_there_is_nothing_to_open() {
    let mut phone = with(4.0, [reading(4.1, 1.048)], vec![]);
    phone.go("#/batch/b/open");
    phone.sees("Nothing is noted as bottled yet.");
    phone.sees_no("Moved the bottles?");
}

/// What is seldom noted stands folded away once for all.
fn more(phone: &mut Paper) {
    if !phone.text().contains("Taste:") {
        phone.tap("Taste, note, time");
    }
}

/// The same steps once stood twice below each other, and what was learned below them.
#[test]
fn while_something_is_wrong_it_is_told_once_and_nothing_else() {
    let mut phone = bottled(30.0);
    phone.tap("5 gushes");
    phone.tap("Save");
    phone.sees("What this batch taught");
    phone.tap("Something is wrong");
    phone.tap("All of them gush");
    let told = phone.text().matches("Go away from them first").count();
    assert_eq!(told, 1);
    phone.sees("at worst 2.9 bar");
    phone.sees_no("What this batch taught");
    phone.tap("What may be behind it");
    phone.sees("It had not finished. To tell:");
}

#[test]
fn bottles_that_stand_read_well() {
    let mut phone = bottled(30.0);
    for (fizz, days) in [("4 much", 1.0), ("5 gushes", 0.5)] {
        phone.tap(fizz);
        phone.tap("Hazy");
        more(&mut phone);
        phone.type_into("Taste", "bready");
        phone.dated("Opened", ago(days));
        phone.tap("Save");
    }
    phone.tap("Something is wrong");
    phone.tap("All of them gush");
    golden("open", &phone.text());
}

#[test]
fn a_bottle_is_noted_deleted_and_taken_back() {
    let mut phone = bottled(30.0);
    more(&mut phone);
    phone.type_into("Taste", " fruity ");
    phone.tap("Save");
    phone.sees("!! Say how much fizz it had, 1 to 5, or that it burst.");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("opening/b/fizz".to_owned())));
    phone.reload();
    more(&mut phone);
    assert_eq!(phone.value_in("Taste"), " fruity ");
    phone.tap("3 right");
    phone.tap("Bright");
    phone.type_into("Anything else", "lacing");
    phone.tap("Something is wrong");
    phone.tap("Some are flat");
    phone.tap("Save");
    phone.sees("Bottle noted");
    phone.sees("Fizz 3 of 5");
    phone.sees("Bright · fruity");
    phone.sees_no("Say how much fizz");
    let (_, opening) = phone.model.journal.openings(&id("b"))[0].clone();
    assert_eq!((opening.fizz.value(), opening.clarity), (3, Some(Clarity::Bright)));
    assert_eq!((opening.taste.as_str(), opening.note.as_str()), ("fruity", "lacing"));
    assert_eq!(opening.at, phone.model.now);
    // Its form is empty again, and what was asked beside it still stands.
    assert_eq!(phone.value_in("Taste"), "");
    assert_eq!(phone.value_in("Fizz"), "");
    phone.sees("(x) Some are flat");

    phone.tap("Delete the bottle of");
    phone.sees("Bottle deleted");
    phone.sees_no("Fizz 3 of 5");
    phone.tap("Undo");
    phone.reload();
    phone.sees("Fizz 3 of 5");
}

#[test]
fn bottles_moved_out_of_the_cool_count_from_now() {
    let mut phone = bottled(30.0);
    phone.tap("Moved the bottles?");
    phone.tap("They stand there now");
    phone.sees("Something is needed here.");
    phone.type_into("Where they stand now", "20");
    phone.tap("They stand there now");
    phone.sees("Place saved");
    phone.sees("They stand at: 20.0 °C");
    assert_eq!(record(&phone).place, Some(Celsius::literal(20.0)));
    assert_eq!(record(&phone).moved, Some(phone.model.now));
    phone.sees("Bottled just now.");
    phone.tap("Undo");
    assert_eq!((record(&phone).place, record(&phone).moved), (Some(Celsius::literal(12.0)), None));
}

#[test]
fn only_what_is_no_hazard_is_told_to_wait() {
    let mut phone = bottled(5.0);
    phone.tap("Something is wrong");
    phone.tap("All are flat");
    phone.sees("They are less than two weeks old: most often that is all.");
    phone.sees("No sugar into every bottle");
    phone.sees_no("bursts without warning");
    phone.tap("One has burst");
    phone.sees_no("less than two weeks old");
    phone.sees("## First make them safe");
    phone.sees("bursts without warning");
}

#[test]
fn the_day_to_try_one_is_told_by_the_clock_of_then() {
    // West of where it was bottled the day of the plan is another; it was told by the clock of old.
    let plan = |zone: Zone| {
        let (mut bottles, at) = (bottling(1.0), "2026-03-06T09:00+13:00");
        if let fermentside::batch::Entry::Bottling(record) = &mut bottles.1 {
            record.at = at.parse::<Moment>().expect("a moment");
            record.place = Some(Celsius::literal(20.0));
        }
        let mut phone = in_zone(20.0, [reading(20.1, 1.048)], vec![bottles], zone);
        phone.go("#/batch/b/open");
        let text = phone.text();
        let line = text.lines().find(|line| line.starts_with("Try that one:"));
        line.expect("the plan").to_owned()
    };
    assert_eq!(plan(Zone::fixed(780)), "Try that one: Fri 20 Mar");
    assert_eq!(plan(Zone::fixed(-300)), "Try that one: Thu 19 Mar");
}

/// A bottle that gushed once left Open at "Try one" and Now at "Ready".
#[test]
fn a_gush_or_a_burst_stops_every_screen_until_it_is_said_what_was_done() {
    for (seen, noted) in [("5 gushes", "Fizz 5 of 5"), ("It burst by itself", "It burst")] {
        let mut phone = bottled(30.0);
        phone.tap(seen);
        phone.tap("Save");
        phone.sees(noted);
        phone.sees("(Stop) Make the other bottles safe first.");
        phone.sees("Go away from them first");
        phone.sees("bursts without warning");
        phone.sees_no("Try that one:");
        phone.go("#/now");
        phone.sees("(Stop) Make the other bottles safe first.");
        phone.go("#/batch/b/bottle");
        phone.sees("The steps to make the others safe stand at Open.");

        phone.go("#/batch/b/open");
        phone.tap("The others are safe now");
        phone.sees("!! Say what was done.");
        phone.tap("All are cold, and each was vented");
        phone.tap("The others are safe now");
        phone.sees("Noted what was done");
        phone.sees("(Wait) They were made safe: open each with care.");
        phone.sees_no("Go away from them first");
        phone.reload();
        phone.sees("After one had gushed or burst: all are cold, and each was vented.");
        phone.go("#/now");
        phone.sees("Open each cold and slowly");
        phone.go("#/batch/b/bottle");
        phone.sees_no("The steps to make the others safe stand at Open.");
        phone.sees("Made safe: Sat 7 Mar");

        // A later one stops it again.
        phone.go("#/batch/b/open");
        phone.days(1.0);
        phone.tap(seen);
        phone.tap("Save");
        phone.sees("(Stop)");
        phone.tap("All were emptied");
        phone.tap("The others are safe now");
        phone.sees("They were emptied.");
    }
}

#[test]
fn what_was_done_can_be_taken_back() {
    let mut phone = bottled(30.0);
    phone.tap("5 gushes");
    phone.tap("Save");
    phone.tap("All are cold and covered");
    phone.tap("The others are safe now");
    phone.tap("Undo");
    phone.sees("(Stop)");
    assert_eq!(record(&phone).made_safe, None);
}

/// Bottles that were brought into the warm today.
fn warm() -> Paper {
    let mut phone = bottled(1.0);
    phone.tap("Moved the bottles?");
    phone.type_into("Where they stand now", "20");
    phone.tap("They stand there now");
    phone
}

/// One flat bottle on day 8 is left alone by both screens; after two weeks the rest are woken.
#[test]
fn one_flat_bottle_is_left_in_time_and_woken_later() {
    let flat = |phone: &mut Paper| {
        phone.tap("1 flat");
        phone.tap("Save");
    };
    let mut early = warm();
    early.days(8.0);
    flat(&mut early);
    early.sees("(Wait) Leave them a while.");
    early.sees("was flat, which at that age says nothing.");
    early.sees_no("Turn each bottle over once");
    early.go("#/now");
    early.sees("(Wait) Leave them a while.");
    early.sees("= Try one: ");

    let mut late = warm();
    late.days(20.0);
    flat(&mut late);
    late.sees("(Wait) They should have their fizz by now.");
    late.sees("Turn each bottle over once");
    late.sees("No sugar into every bottle");
    late.go("#/now");
    late.sees("(Wait) They should have their fizz by now.");
    late.days(7.0);
    late.sees("Chill one for two days, then open it over the sink.");
    late.go("#/batch/b/open");
    late.sees("(Go) Try one.");
}

/// A bottle that is noted is answered at once, by its age and its fizz.
#[test]
fn a_bottle_is_answered_by_its_age_and_its_fizz() {
    let early =
        [("2 little", "as it should"), ("3 right", "more will come"), ("4 much", "far too soon")];
    let late = [
        ("2 little", "two more weeks"),
        ("3 right", "change little"),
        ("4 much", "less sugar next"),
    ];
    for (days, all) in [(6.0, early), (20.0, late)] {
        for (fizz, said) in all {
            let mut phone = bottled(days);
            phone.tap(fizz);
            phone.tap("Save");
            let plate = phone.parts().into_iter().find(|part| part.name == "open/first");
            let Some(What::Verdict(judged)) = plate.map(|part| part.what) else {
                panic!("a plate")
            };
            let first = judged.reasons.first().expect("a reason").replace('\u{A0}', " ");
            assert!(first.starts_with(&format!("After {days} days the last one")), "{first}");
            assert!(first.contains(said), "{first}");
            assert_eq!(phone.asked.last(), Some(&Effect::Attend("open/first".to_owned())));
        }
    }
}

/// "They have their fizz" once stood over "give the others two more weeks".
#[test]
fn what_is_said_of_the_last_bottle_and_of_the_others_is_one_answer() {
    let answered = |days, fizz| {
        let mut phone = warm();
        phone.days(days);
        phone.tap(fizz);
        phone.tap("Save");
        phone
    };
    let mut little = answered(20.0, "2 little");
    little.sees("(Wait) Leave them a while.");
    little.sees("give the others two more weeks");
    little.days(14.0);
    little.sees("(Go) Try one.");
    little.sees_no("give the others two more weeks");

    let mut lively = answered(6.0, "4 much");
    lively.sees("(Stop) Chill all the others now.");
    lively.go("#/now");
    lively.sees("(Stop) Chill all the others now.");
    lively.go("#/batches");
    lively.sees("Lively too soon: chill the others");
    // The same plate stands where it was bottled.
    lively.go("#/batch/b/bottle");
    lively.sees("(Stop) Chill all the others now.");
    lively.sees("far too soon");
    lively.days(2.0);
    lively.go("#/batch/b/open");
    lively.sees("(Go) Try one.");

    answered(20.0, "3 right").sees("(Go) They have their fizz.");
}

/// A gush dated ahead could not be made safe before that day came.
#[test]
fn an_opening_ahead_of_now_is_asked_about() {
    let mut phone = bottled(30.0);
    phone.tap("5 gushes");
    more(&mut phone);
    phone.dated("Opened", ago(-3.0));
    phone.tap("Save");
    phone.sees("Is that right?");
    phone.sees("is still to come.");
    assert!(phone.model.summary(&id("b")).expect("the batch").openings.is_empty());
    phone.tap("Yes, keep it as it is");
    assert_eq!(phone.model.summary(&id("b")).expect("the batch").openings.len(), 1);
}
