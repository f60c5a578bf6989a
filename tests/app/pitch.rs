//! Pitching day.

use crate::paper::{Paper, Shelf, brewing_day, golden};
use crate::told::told;
use fermentside::advice::family::Family;
use fermentside::app::{Effect, Event, Keeper, Part, Screen, What};
use fermentside::batch::{BatchHeading, Change, Entry, HydrometerItem, Id};
use fermentside::quantity::{Gravity, Litres, SpecificGravity, Zone};
use fermentside::store::Token;

fn batch() -> Id {
    Id::new("b1").expect("an identity")
}

/// A phone with one batch, at its Pitch.
fn pitching() -> Paper {
    let heading = BatchHeading {
        name: "Cellar bitter".to_owned(),
        started: brewing_day(),
        volume: Litres::literal(20.0),
        family: Family::EnglishAle,
        hydrometer: HydrometerItem::usual_id(),
        packet: None,
        expected_start: None,
        expected_end: None,
        target: None,
    };
    let shelf = Shelf::default();
    let mut keeper = Keeper::new(shelf.clone());
    let change = Change::put(batch(), Entry::Batch(heading));
    keeper.load().expect("it is empty");
    keeper.save(1, (&change, &change), brewing_day(), &mut || Token::from_random([7; 8]));
    let mut phone = Paper::with(shelf, brewing_day(), Zone::fixed(60), 1);
    phone.go("#/batch/b1/pitch");
    phone
}

/// What stands at Pitch, below the head of the batch.
fn stage(phone: &Paper) -> String {
    let of_stage =
        |part: &Part| ["pitch/", "pitched/"].iter().any(|scope| part.name.starts_with(scope));
    let main = phone.screen().main.into_iter().filter(of_stage).collect();
    told(&Screen { main, ..Screen::default() })
}

#[test]
fn a_pitching_day_goes_from_hot_wort_to_the_record() {
    let mut phone = pitching();
    phone.sees("(Can't tell) Give the wort's temperature.");
    phone.type_into("Wort now", "31");
    phone.tap("Strip on the wall");
    phone.sees("Too warm for this yeast yet.");
    phone.type_into("Water at hand", "8");
    phone.type_into("Clean ice at hand", "3");
    phone.type_into("The vessel holds to the brim", "26");
    golden("pitch-hot", &stage(&phone));
    phone.type_into("Wort now", "19");
    phone.sees("Cool enough: pitch.");
    phone.sees_no("Ways there");
    phone.tap("Starting gravity");
    phone.choose("Ingredient 1", "Malt syrup");
    phone.type_into("Mass of ingredient 1", "1.7");
    phone.choose("Ingredient 2", "Corn sugar");
    phone.type_into("Mass of ingredient 2", "1");
    phone.type_into("Hydrometer reads", "1.032");
    phone.type_into("Sample temperature", "24");
    phone.sees("They differ; one more look will tell.");
    phone.type_into("Hydrometer reads", "1.042");
    phone.sees("Sample and ingredients agree.");
    phone.tap("Sachets");
    phone.choose("Sachets", "1");
    phone.sees("Enough yeast.");
    phone.tap("Sprinkle");
    phone.tap("Satellite");
    phone.tap("Set");
    phone.tap("Air");
    phone.type_into("Splashed or shaken for", "5");
    phone.tap("Place");
    phone.type_into("Room where it will stand", "18");
    phone.sees("It warms itself by about");
    golden("pitch-cool", &stage(&phone));
    phone.tap("The yeast is in");
    phone.sees("0 h since pitching.");
    phone.reload();
    golden("pitched", &stage(&phone));
    // Of the sample one reading was made, exactly as it was typed.
    let readings = phone.model.journal.readings(&batch()).to_vec();
    assert_eq!(readings.len(), 1);
    assert_eq!(readings[0].1.as_read, Some(Gravity::Specific(SpecificGravity::literal(1.042))));
    assert_eq!(readings[0].1.typed, "1.042");
    assert_eq!(phone.model.drafts.texts(), []);
}

#[test]
fn a_retry_after_half_a_pitching_is_not_refused_and_leaves_nothing_twice() {
    let mut phone = pitching();
    phone.tap("Starting gravity");
    phone.type_into("Hydrometer reads", "1.042");
    phone.tap("Yeast, time and note");
    phone.type_into("Note", "late");
    // The reading is kept, the record is not.
    *phone.shelf.writes_left.borrow_mut() = Some(1);
    phone.tap("The yeast is in");
    phone.sees("!! Not saved");
    assert_eq!(phone.value_in("Note"), "late");
    assert_eq!(phone.model.journal.readings(&batch()).len(), 0);
    // The page is closed in between, and the same reading is written at the second try.
    phone.reload();
    let first = phone.model.drafts.text("pitch/b1/reading-id").expect("it was tried").to_owned();
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.tap("The yeast is in");
    phone.sees("h since pitching.");
    phone.reload();
    phone.sees("Start by the sample");
    let readings = phone.model.journal.readings(&batch());
    assert_eq!(readings.iter().map(|(id, _)| id.as_str()).collect::<Vec<_>>(), [first]);
    // Taken back as one.
    phone.tap("Delete the pitching");
    phone.sees("Pitching deleted");
    phone.tap("Undo");
    phone.sees("h since pitching.");
}

#[test]
fn half_a_sample_is_said_and_not_dropped() {
    let mut phone = pitching();
    phone.tap("Starting gravity");
    phone.type_into("Sample temperature", "24");
    phone.tap("The yeast is in");
    phone.sees("!! The sample's gravity is missing. Give it, or empty its temperature.");
    let field = phone.field("Hydrometer reads");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend(field.name.clone())));
    assert!(matches!(field.what, What::Number(number) if !number.error.is_empty()));
    phone.type_into("Hydrometer reads", "1.048");
    phone.tap("The yeast is in");
    phone.sees("Start by the sample");
}

#[test]
fn every_field_is_looked_at_and_the_fold_of_the_first_wrong_one_opens() {
    let mut phone = pitching();
    phone.tap("Starting gravity");
    phone.choose("Ingredient 1", "Another");
    phone.tap("Starting gravity");
    phone.tap("The yeast is in");
    phone.sees("!! Some fields need another look.");
    for label in ["Mass of ingredient 1", "Extract in ingredient 1"] {
        let What::Number(number) = phone.field(label).what else { panic!("a number") };
        assert_eq!(number.error, "Something is needed here.", "{label}");
    }
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("pitch/b1/mass-1".to_owned())));
}

#[test]
fn leaving_and_coming_back_keeps_every_draft() {
    let mut phone = pitching();
    let open = |phone: &mut Paper| {
        for fold in ["Starting gravity", "Sachets", "Satellite", "Air", "Place", "Yeast, time"] {
            phone.tap(fold);
        }
    };
    phone.type_into("Wort now", "31");
    open(&mut phone);
    let typed = [
        ("Water at hand", "8"),
        ("Wort at an earlier look", "60"),
        ("Hydrometer reads", "11,9"),
        ("Name on the packet", "Old ale yeast"),
        ("Splashed or shaken for", "5"),
        ("Where, in your words", "Under the stairs"),
        ("Size of the room", "12"),
        ("Dry yeast", "11.5"),
        ("Pitched", "2026-03-07T21:30"),
        ("Note", "late"),
    ];
    for (label, text) in typed {
        phone.type_into(label, text);
    }
    let chosen = [
        ("Read with", "Strip on the wall", "strip"),
        ("The wort was", "Not stirred", "no"),
        ("Ingredient 1", "Honey", "honey"),
        ("Sachets", "2", "2"),
        ("Their date", "A year past", "13"),
        ("They", "Stood warm", "yes"),
        ("It goes in", "Wake in water", "rehydrated"),
        ("The satellite is", "Not this time", "no"),
        ("It stands", "In a tub of water", "water_tub"),
        ("That is", "A shut cupboard", "shut"),
        ("In the light", "Yes", "yes"),
    ];
    for (label, option, _) in chosen {
        phone.choose(label, option);
    }
    phone.tap("Gear");
    phone.back();
    phone.reload();
    open(&mut phone);
    for (label, text) in typed {
        assert_eq!(phone.value_in(label), text, "{label}");
    }
    for (label, _, stored) in chosen {
        assert_eq!(phone.value_in(label), stored, "{label}");
    }
}

#[test]
fn the_timer_runs_on_while_the_page_is_closed_and_keeps_the_screen_on_only_here() {
    let mut phone = pitching();
    let awake = |phone: &mut Paper| {
        let asked = std::mem::take(&mut phone.asked);
        asked.into_iter().filter(|effect| matches!(effect, Effect::Awake(_))).collect::<Vec<_>>()
    };
    let start = 1_700_000_000;
    phone.tap("Air");
    phone.happens(Event::Tick(start));
    phone.tap("Start the timer");
    assert_eq!(awake(&mut phone), [Effect::Awake(true)]);
    phone.sees("(Splash) 60 s, turn 1 of 5");
    phone.happens(Event::Tick(start + 75));
    phone.sees("(Rest) 15 s");
    // Elsewhere it counts on by itself; the screen may sleep.
    phone.tap("Gear");
    assert_eq!(awake(&mut phone), [Effect::Awake(false)]);
    phone.reload();
    phone.happens(Event::Tick(start + 100));
    phone.go("#/batch/b1/pitch");
    assert_eq!(awake(&mut phone), [Effect::Awake(true)]);
    phone.tap("Air");
    phone.sees("(Splash) 50 s, turn 2 of 5");
    // Minutes are noted, whatever unit the field is shown in.
    phone.in_unit("Splashed or shaken for", "h");
    phone.happens(Event::Tick(start + 240));
    phone.tap("Stop the timer");
    assert_eq!(awake(&mut phone), [Effect::Awake(false)]);
    phone.in_unit("Splashed or shaken for", "min");
    assert_eq!(phone.value_in("Splashed or shaken for"), "3.0");
    phone.sees_no("(Splash)");
    // Once it is done nothing is left to count.
    phone.tap("Start the timer");
    phone.happens(Event::Tick(start + 240 + 420));
    phone.sees("(Done) Stop the timer to note it.");
    assert_eq!(awake(&mut phone), [Effect::Awake(true), Effect::Awake(false)]);
}

#[test]
fn a_timer_that_is_stopped_at_once_notes_what_can_be_saved() {
    let mut phone = pitching();
    phone.tap("Air");
    phone.happens(Event::Tick(5));
    phone.tap("Start the timer");
    phone.tap("Stop the timer");
    assert_eq!(phone.value_in("Splashed or shaken for"), "0.1");
    phone.tap("The yeast is in");
    phone.sees("Splashed: 0 min");
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
    phone.type_into("Wort at an earlier look", "60");
    phone.type_into("Time between the two looks", "30");
    phone.type_into("Water or room round it", "12");
    golden("bench-cooling", &phone.text());
    phone.type_into("Water to add", "25");
    phone.sees("It can't be reached with what is at hand.");
    // A tub that the wort warms takes longer, or does not do.
    phone.type_into("How much wort", "15");
    phone.choose("Does it stay so?", "No: a tub");
    phone.type_into("Water in the tub", "10");
    phone.sees("It does not come into its range there.");
    phone.type_into("Water in the tub", "60");
    phone.sees("In its range ");
    // Of wort whose gravity is not known none is told.
    phone.type_into("Water to add", "8");
    phone.type_into("Its gravity", "");
    phone.sees("then 18.5 °C, 3");
}
