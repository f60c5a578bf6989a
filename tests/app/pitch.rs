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
    pitching_with(Family::EnglishAle)
}

/// The same with another yeast.
fn pitching_with(family: Family) -> Paper {
    let heading = BatchHeading {
        name: "Cellar bitter".to_owned(),
        started: brewing_day(),
        volume: Litres::literal(20.0),
        family,
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
    phone.tap("Or by what went in");
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
    phone.sees("It warms itself by about");
    golden("pitch-place", &stage(&phone));
    phone.tap("Next");
    phone.sees("> Pitch now, and seal.");
    golden("pitch-in", &stage(&phone));
    phone.tap("The yeast is in");
    phone.sees("0 h since pitching.");
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
    phone.sees("h since pitching.");
    phone.reload();
    phone.sees("OG by the sample");
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
    phone.tap("Or by what went in");
    phone.choose("Ingredient 1", "Another");
    phone.tap("Or by what went in");
    phone.tap("Place");
    phone.type_into("Room where it will stand", "hot");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("!! Some fields need another look.");
    for label in ["Mass of ingredient 1", "Extract in ingredient 1"] {
        let What::Number(number) = phone.field(label).what else { panic!("a number") };
        assert_eq!(number.error, "Something is needed here.", "{label}");
    }
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("pitch/b1/mass-1".to_owned())));
}

#[test]
fn leaving_and_coming_back_keeps_every_draft_and_the_step() {
    let mut phone = pitching();
    let steps: [(&str, &[&str], &[(&str, &str)], &[(&str, &str, &str)]); 7] = [
        (
            "Cool",
            &["By waiting"],
            &[("Wort now", "31"), ("Water at hand", "8"), ("Wort at an earlier look", "60")],
            &[("Read with", "Not stirred", "still")],
        ),
        (
            "Gravity",
            &["Or by what went in"],
            &[("Hydrometer reads", "11,9")],
            &[("Ingredient 1", "Honey", "honey")],
        ),
        (
            "Yeast",
            &["Its age, its name and its weight"],
            &[("Name on the packet", "Old ale yeast"), ("Dry yeast", "11.5")],
            &[
                ("Sachets", "2", "2"),
                ("Best-before date", "A year past", "13"),
                ("They were kept", "Warm for weeks", "yes"),
                ("How it goes in", "Woken in water", "rehydrated"),
            ],
        ),
        ("Satellite", &[], &[], &[("The satellite is", "Not this time", "no")]),
        ("Air", &[], &[("Splashed or shaken for", "5")], &[]),
        (
            "Place",
            &["Foam and light", "The air of the room"],
            &[("Where, in your words", "Under the stairs"), ("Size of the room", "12")],
            &[
                ("The vessel", "In a tub of water", "water_tub"),
                ("That is", "A shut cupboard", "shut"),
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
fn a_step_is_skipped_with_one_touch_and_its_line_says_so() {
    let mut phone = pitching();
    // On from a step with nothing in it there is no way but past it.
    phone.tap("Next");
    phone.sees("!! There is nothing here yet. Fill it in, or skip it.");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("pitch/b1/wort".to_owned())));
    phone.type_into("Wort now", "hot");
    phone.tap("Next");
    phone.sees("!! Some fields need another look.");
    phone.type_into("Wort now", "19");
    phone.tap("Next");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("pitch/b1/sample".to_owned())));
    for line in ["[Gravity: skipped]", "[Yeast: skipped]", "[Satellite: skipped]"] {
        phone.tap("Skip");
        phone.sees(line);
    }
    phone.sees("> Next: splash it, for air.");
    phone.reload();
    phone.sees("[Yeast: skipped]");
    phone.sees("## Air");
    phone.tap("Skip");
    // Gravity, yeast and air are settled or left out on purpose.
    phone.sees("> Pitch now, and seal.");
    phone.tap("Skip");
    phone.sees("## The yeast goes in");
    // A line opens with one touch, and what is filled in then counts.
    phone.tap("Gravity");
    phone.type_into("Hydrometer reads", "1.046");
    phone.type_into("Sample temperature", "20");
    phone.tap("Next");
    phone.sees("[Gravity: OG 1.046, by the sample]");
    phone.sees("## The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("Pitching saved");
}

#[test]
fn without_any_gravity_it_asks_once_more_and_either_way_is_one_touch() {
    let mut phone = pitching();
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees(
        "Without a starting gravity only time, or a satellite, can tell when it has finished.",
    );
    assert!(phone.model.journal.pitch(&batch()).is_none());
    phone.tap("Read the gravity");
    phone.sees("## Gravity");
    phone.tap("The yeast goes in");
    phone.tap("Pitch without it");
    phone.sees("Pitching saved");
    assert!(phone.model.journal.pitch(&batch()).is_some());
    // With a start nothing is asked.
    let mut phone = pitching();
    phone.tap("Gravity");
    phone.type_into("Hydrometer reads", "1.046");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("Pitching saved");
}

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
    phone.tap("Its age, its name and its weight");
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
    phone.type_into("Wort at an earlier look", "32");
    phone.type_into("Time between the two looks", "30");
    phone.type_into("Water or room round it", "12");
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

/// How high a part is on a screen of 390 by 844, roughly: lines of some 44 letters, fields and buttons as
/// they are drawn now.
fn height(part: &Part) -> usize {
    let lines = |text: &str| 25 * text.chars().count().div_ceil(44);
    let inner = || part.parts.iter().map(height).sum::<usize>();
    let choices = |options: &[(String, String)]| {
        let wide: usize = options.iter().map(|(_, words)| 9 * words.chars().count() + 44).sum();
        36 + 56 * wide.div_ceil(358)
    };
    match &part.what {
        What::Heading(..) => 44,
        What::Text(_, text) => lines(text) + 12,
        What::Verdict(judged) => {
            // All reasons but the first are in a fold.
            let first = judged.reasons.first().map_or(0, |reason| lines(reason));
            let others = if judged.reasons.len() > 1 { 52 } else { 0 };
            70 + lines(&judged.sentence) + first + others + lines(&judged.next)
        }
        What::Timer(_) => 96,
        What::Number(field) => 92 + lines(&field.hint) + lines(&field.error),
        What::Words(field) => {
            if field.long {
                140
            } else {
                88
            }
        }
        What::Choice(choice) => choices(&choice.options),
        What::Pick(_) | What::Moment(_) => 92,
        What::Action(_) => 56,
        What::Figures(rows) => 32 * rows.len(),
        What::Items(_, items) => items.iter().map(|item| lines(&item.text) + 6).sum(),
        What::Drawing(_) => 260,
        What::Fold(fold) => 52 + if fold.open { inner() } else { 0 },
        What::Outcome(why) => lines(why),
        _ => inner(),
    }
}

/// The stage in screens, and its head and the bar below it.
fn screens(phone: &Paper) -> f64 {
    let parts = phone.screen().main;
    (parts.iter().map(height).sum::<usize>() + 80) as f64 / 844.0
}

#[test]
fn no_step_is_longer_than_two_screens_and_a_half() {
    let mut phone = pitching();
    let mut told = vec![];
    let mut look = |phone: &Paper, step: &str| {
        let long = screens(phone);
        println!("{step}: {long:.1} screens");
        told.push((step.to_owned(), long));
    };
    look(&phone, "cool, empty");
    phone.type_into("Wort now", "31");
    look(&phone, "cool, too warm");
    phone.type_into("Water at hand", "8");
    phone.type_into("Clean ice at hand", "3");
    look(&phone, "cool, two ways");
    phone.tap("With water or ice");
    phone.tap("By waiting");
    phone.type_into("Wort at an earlier look", "40");
    phone.type_into("Time between the two looks", "30");
    phone.type_into("Water or room round it", "12");
    phone.type_into("Water in the tub", "60");
    look(&phone, "cool, waiting too");
    phone.type_into("Wort now", "19");
    phone.tap("Next");
    phone.type_into("Hydrometer reads", "1.042");
    phone.type_into("Sample temperature", "20");
    look(&phone, "gravity");
    phone.tap("Or by what went in");
    for (at, kind) in ["Malt syrup", "Dry malt"].into_iter().enumerate() {
        phone.choose(&format!("Ingredient {}", at + 1), kind);
        phone.type_into(&format!("Mass of ingredient {}", at + 1), "1.2");
    }
    look(&phone, "gravity, two ingredients");
    phone.tap("Next");
    phone.tap("1");
    look(&phone, "yeast");
    phone.tap("Its age, its name and its weight");
    look(&phone, "yeast, its age too");
    phone.tap("Next");
    phone.tap("Set");
    phone.tap("What can mislead");
    look(&phone, "satellite");
    phone.tap("Next");
    phone.tap("Start the timer");
    look(&phone, "air");
    phone.tap("Skip");
    phone.type_into("Room where it will stand", "23");
    look(&phone, "place");
    phone.tap("The air of the room");
    phone.type_into("Size of the room", "8");
    look(&phone, "place, its air too");
    phone.tap("Next");
    look(&phone, "in");
    let long: Vec<_> = told.iter().filter(|(_, screens)| *screens > 2.5).collect();
    assert!(long.is_empty(), "{long:?}");
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
    phone.type_into("Water in the tub", "10");
    phone.sees("It does not come into its range there.");
    phone.type_into("Water in the tub", "60");
    phone.sees("In its range ");
    // Of wort whose gravity is not known none is told.
    phone.type_into("Water to add", "8");
    phone.type_into("Its gravity", "");
    phone.sees("then 18.5 °C, 3");
}
