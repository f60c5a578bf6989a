//! From hot wort to the record, and all that is typed on the way kept.

use super::{batch, pitching, stage};
use crate::paper::{Paper, golden};
use fermentside::app::{Effect, Event, What};
use fermentside::quantity::{Gravity, SpecificGravity};

#[test]
fn a_pitching_day_goes_from_hot_wort_to_the_record() {
    let mut phone = pitching();
    phone.sees("(Can't tell) Give the wort's temperature.");
    phone.type_into("Wort now", "31");
    phone.tap("Strip on the wall");
    phone.sees("Too warm for this yeast yet.");
    phone.type_into("Water at hand", "8");
    phone.type_into("Clean ice at hand", "3");
    phone.tap("How much wort, and how large its vessel");
    phone.type_into("The vessel holds to the brim", "26");
    golden("pitch-hot", &stage(&phone));
    phone.type_into("Wort now", "19");
    phone.sees("(Go) Cool enough.");
    phone.sees("> Next: read the gravity.");
    phone.sees_no("With water or ice");
    phone.sees_no("Pitch now");
    phone.tap("Next");
    phone.sees("[Cool: 19.0 °C, in the yeast's range]");
    phone.tap("Or by the ingredients");
    phone.choose("Ingredient 1", "Malt syrup");
    phone.type_into("Mass of ingredient 1", "1.7");
    phone.choose("Ingredient 2", "Corn sugar");
    phone.type_into("Mass of ingredient 2", "1");
    phone.type_into("Hydrometer reads", "1.032");
    phone.type_into("Sample temperature", "24");
    phone.sees("They differ; one more look will tell.");
    phone.type_into("Hydrometer reads", "1.042");
    phone.sees("Sample and ingredients agree.");
    golden("pitch-gravity", &stage(&phone));
    phone.tap("Next");
    phone.sees("> Next: is there yeast enough?");
    phone.tap("1");
    phone.sees("Enough yeast.");
    phone.tap("Sprinkle");
    golden("pitch-yeast", &stage(&phone));
    phone.tap("Next");
    phone.sees("small jar of the same wort, fermented fast and warm");
    phone.tap("Set");
    golden("pitch-satellite", &stage(&phone));
    phone.tap("Next");
    phone.sees("> Next: splash it, for air.");
    phone.type_into("Splashed or shaken for", "5");
    phone.tap("Next");
    phone.type_into("Room where it will stand", "18");
    phone.sees("It gets about");
    golden("pitch-place", &stage(&phone));
    phone.tap("Next");
    phone.sees("> Pitch now, and seal.");
    golden("pitch-in", &stage(&phone));
    phone.tap("The yeast is in");
    phone.sees("Pitched just now.");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("pitched/verdict".to_owned())));
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
    phone.tap("Gravity");
    phone.type_into("Hydrometer reads", "1.042");
    phone.tap("The yeast goes in");
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
    phone.sees("Pitched just now.");
    phone.reload();
    phone.sees("OG by the sample");
    let readings = phone.model.journal.readings(&batch());
    assert_eq!(readings.iter().map(|(id, _)| id.as_str()).collect::<Vec<_>>(), [first]);
    // Taken back as one.
    phone.tap("Delete the pitching");
    phone.sees("Pitching deleted");
    phone.tap("Undo");
    phone.sees("Pitched just now.");
}

#[test]
fn half_a_sample_is_said_and_not_dropped() {
    let mut phone = pitching();
    phone.tap("Gravity");
    phone.type_into("Sample temperature", "24");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("!! The sample's gravity is missing. Give it, or empty its temperature.");
    let field = phone.field("Hydrometer reads");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend(field.name.clone())));
    assert!(matches!(field.what, What::Number(number) if !number.error.is_empty()));
    phone.type_into("Hydrometer reads", "1.048");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("OG by the sample");
}

#[test]
fn every_field_is_looked_at_and_the_step_and_fold_of_the_first_wrong_one_open() {
    let mut phone = pitching();
    phone.tap("Gravity");
    phone.tap("Or by the ingredients");
    phone.choose("Ingredient 1", "Another");
    phone.tap("Or by the ingredients");
    phone.tap("Place");
    phone.type_into("Room where it will stand", "hot");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("!! Look again at “Mass of ingredient 1”.");
    for label in ["Mass of ingredient 1", "Extract in ingredient 1"] {
        let What::Number(number) = phone.field(label).what else { panic!("a number") };
        assert_eq!(number.error, "Something is needed here.", "{label}");
    }
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("pitch/b1/mass-1".to_owned())));
}

/// A step, the folds in it that are opened, what is typed, and what is chosen: label, option, stored name.
type Filled<'a> =
    (&'a str, &'a [&'a str], &'a [(&'a str, &'a str)], &'a [(&'a str, &'a str, &'a str)]);

#[test]
fn leaving_and_coming_back_keeps_every_draft_and_the_step() {
    let mut phone = pitching();
    let steps: [Filled; 7] = [
        (
            "Cool",
            &["By waiting"],
            &[("Wort now", "31"), ("Water at hand", "8"), ("Wort at the earlier look", "60")],
            &[("Read with", "Not stirred", "still")],
        ),
        (
            "Gravity",
            &["Or by the ingredients"],
            &[("Hydrometer reads", "11,9")],
            &[("Ingredient 1", "Honey", "honey")],
        ),
        (
            "Yeast",
            &["Age, name and weight of the yeast"],
            &[("Name on the packet", "Old ale yeast"), ("Dry yeast", "11.5")],
            &[
                ("Sachets", "2", "2"),
                ("Best-before date", "A year past", "13"),
                ("The sachets were kept", "Warm for weeks", "yes"),
                ("How it goes in", "Rehydrated in water", "rehydrated"),
            ],
        ),
        ("Satellite", &[], &[], &[("A satellite", "Not this time", "no")]),
        ("Air", &[], &[("Splashed or shaken for", "5")], &[]),
        (
            "Place",
            &["Foam and light", "The air of the room"],
            &[("Where, in your words", "Under the stairs"), ("Size of the room", "12")],
            &[
                ("Vessel", "In a tub of water", "water_tub"),
                ("What kind of room", "A shut cupboard", "shut"),
                ("In the light", "Yes", "yes"),
            ],
        ),
        ("The yeast goes in", &[], &[("Pitched", "2026-03-07T21:30"), ("Note", "late")], &[]),
    ];
    let open = |phone: &mut Paper, step: &str, folds: &[&str]| {
        if !phone.text().contains(&format!("## {step}\n")) {
            phone.tap(step);
        }
        for fold in folds {
            if phone.text().contains(&format!("> {fold}")) {
                phone.tap(fold);
            }
        }
    };
    for (step, folds, typed, chosen) in steps {
        open(&mut phone, step, &[]);
        if step == "Cool" {
            // What is asked of the ways down comes with wort that is too warm.
            phone.type_into("Wort now", "31");
        }
        open(&mut phone, step, folds);
        typed.iter().for_each(|(label, text)| phone.type_into(label, text));
        chosen.iter().for_each(|(label, option, _)| phone.choose(label, option));
    }
    phone.tap("Air");
    phone.tap("Gear");
    phone.back();
    phone.reload();
    phone.sees("## Air");
    for (step, folds, typed, chosen) in steps {
        open(&mut phone, step, folds);
        for (label, text) in typed {
            assert_eq!(phone.value_in(label), *text, "{label}");
        }
        for (label, _, stored) in chosen {
            assert_eq!(phone.value_in(label), *stored, "{label}");
        }
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
    // It comes back to the step that was open.
    assert_eq!(awake(&mut phone), [Effect::Awake(true)]);
    phone.sees("(Splash) 50 s, turn 2 of 5");
    // With the step closed its line says that it runs.
    phone.tap("Place");
    phone.sees("[Air: the timer runs]");
    assert_eq!(awake(&mut phone), [Effect::Awake(false)]);
    phone.tap("Air");
    assert_eq!(awake(&mut phone), [Effect::Awake(true)]);
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
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.tap("Pitch without it");
    phone.sees("Splashed: 0 min");
}
