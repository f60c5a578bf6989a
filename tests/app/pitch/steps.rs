//! The walk: one step open at a time, none too long, each left out or gone back to with one touch.

use super::{batch, pitching};
use crate::paper::Paper;
use fermentside::app::{Effect, Part, What};

#[test]
fn a_step_is_skipped_with_one_touch_and_its_line_says_so() {
    let mut phone = pitching();
    // On from a step with nothing in it there is no way but past it.
    phone.tap("Next");
    phone.sees("!! There is nothing here yet. Fill it in, or skip it.");
    assert_eq!(phone.asked.last(), Some(&Effect::Attend("pitch/b1/wort".to_owned())));
    phone.type_into("Wort now", "hot");
    phone.tap("Next");
    phone.sees("!! Look again at “Wort now”.");
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
    phone.type_into("Wort at the earlier look", "40");
    phone.type_into("Time between the two looks", "30");
    phone.type_into("Water or air around it", "12");
    phone.type_into("Water in the tub", "60");
    look(&phone, "cool, waiting too");
    phone.type_into("Wort now", "19");
    phone.tap("Next");
    phone.type_into("Hydrometer reads", "1.042");
    phone.type_into("Sample temperature", "20");
    look(&phone, "gravity");
    phone.tap("Or by the ingredients");
    for (at, kind) in ["Malt syrup", "Dry malt"].into_iter().enumerate() {
        phone.choose(&format!("Ingredient {}", at + 1), kind);
        phone.type_into(&format!("Mass of ingredient {}", at + 1), "1.2");
    }
    look(&phone, "gravity, two ingredients");
    phone.tap("Next");
    phone.tap("1");
    look(&phone, "yeast");
    phone.tap("Age, name and weight of the yeast");
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
