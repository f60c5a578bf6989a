//! A kit brewer's whole job on paper, from warm wort to the first bottle, counted in touches and keys.

use crate::bottle::{brewed, id};
use crate::paper::Paper;

/// What a step of the job took.
struct Steps(Vec<(&'static str, usize, usize)>);

impl Steps {
    fn done(&mut self, phone: &mut Paper, step: &'static str) {
        self.0.push((step, phone.taps, phone.keys));
        (phone.taps, phone.keys) = (0, 0);
    }

    fn taps(&self) -> usize {
        self.0.iter().map(|(_, taps, _)| taps).sum()
    }
}

/// One more reading of the beer, taken at 20 °C.
fn read(phone: &mut Paper, gravity: &str) {
    phone.tap("Watch");
    // The first look opens the form by itself.
    if !phone.text().contains("Hydrometer reads") {
        phone.tap("Add a reading");
    }
    phone.type_into("Hydrometer reads", gravity);
    phone.type_into("Sample temperature", "20");
    phone.tap("Save the reading");
    phone.sees("Reading saved");
}

#[test]
fn from_warm_wort_to_the_first_bottle() {
    let mut phone = Paper::new();
    let mut steps = Steps(vec![]);

    phone.tap("Start a batch");
    phone.type_into("Name", "Cellar bitter");
    phone.type_into("Volume in the fermenter", "20");
    phone.choose("Yeast", "Ale, clean or American type");
    phone.tap("Start");
    steps.done(&mut phone, "start");

    phone.type_into("Wort now", "31");
    phone.sees("(Wait) Too warm for this yeast yet.");
    phone.hours(2.0);
    phone.type_into("Wort now", "19");
    phone.sees("(Go) Cool enough.");
    phone.tap("Next");
    steps.done(&mut phone, "wort");

    phone.type_into("Hydrometer reads", "1.046");
    phone.type_into("Sample temperature", "24");
    phone.tap("Next");
    steps.done(&mut phone, "gravity");

    phone.tap("1");
    phone.sees("Enough yeast.");
    phone.tap("Next");
    steps.done(&mut phone, "yeast");

    phone.tap("Skip");
    phone.sees("Satellite: skipped");
    phone.type_into("Splashed or shaken for", "5");
    phone.tap("Next");
    phone.type_into("Room where it will stand", "18");
    phone.tap("Next");
    steps.done(&mut phone, "satellite, air, place");

    phone.sees("Pitch now, and seal.");
    phone.tap("The yeast is in");
    phone.sees("Pitching saved");
    steps.done(&mut phone, "pitched");

    phone.days(5.0);
    read(&mut phone, "1.014");
    steps.done(&mut phone, "first reading");
    phone.sees("These readings do not tell yet.");
    phone.days(4.0);
    read(&mut phone, "1.010");
    steps.done(&mut phone, "second reading");

    phone.tap("Bottle");
    phone.type_into("Beer to bottle", "19");
    phone.type_into("Warmest since it ended", "20");
    phone.choose("Weakest bottle", "Sound");
    steps.done(&mut phone, "sugar");

    // No dose before it is known to be finished; what was typed waits.
    let mut more = 0;
    while phone.text().contains("= Sugar to weigh: No dose") {
        assert!(more < 6, "{}", phone.text());
        phone.days(3.0);
        read(&mut phone, "1.010");
        phone.tap("Bottle");
        more += 1;
    }
    assert!(more > 0, "one reading at the end proves nothing");
    steps.done(&mut phone, "level readings");
    phone.tap("It is bottled");
    phone.sees("In the bottle");
    steps.done(&mut phone, "bottled");

    phone.reload();
    phone.days(21.0);
    phone.tap("Now");
    phone.sees("Chill one for two days");
    phone.tap("Note how it was");
    phone.tap("3 right");
    phone.tap("Save");
    phone.sees("Fizz 3 of 5");
    steps.done(&mut phone, "opened");

    for (step, taps, keys) in &steps.0 {
        println!("{step}: {taps} touches, {keys} keys");
    }
    println!("in all: {} touches", steps.taps());
    assert!(steps.taps() <= 55, "the whole job took {} touches", steps.taps());
}

/// What is done most often is a few touches from a cold start.
#[test]
fn the_sums_used_most_are_a_few_touches_away() {
    let mut phone = Paper::new();
    phone.tap("True gravity");
    phone.type_into("Hydrometer reads", "1.048");
    phone.type_into("Sample temperature", "31");
    phone.sees("= Gravity at 20 °C: 1.051");
    println!("warm sample: {} touches", phone.taps);
    assert!(phone.taps <= 3, "{}", phone.taps);

    let mut phone = Paper::new();
    phone.tap("Strength");
    phone.type_into("Starting gravity (OG)", "1.050");
    phone.type_into("Gravity now", "1.010");
    phone.sees("= Alcohol by volume: 5.3 %");
    println!("strength: {} touches", phone.taps);
    assert!(phone.taps <= 3, "{}", phone.taps);

    // The log knows how warm the beer was.
    let mut phone = brewed(&[(10.0, 1.010, Some(20.0)), (14.0, 1.010, Some(20.0))]);
    phone.go("#/now");
    phone.tap("Work out the sugar");
    phone.type_into("Beer to bottle", "19");
    phone.choose("Weakest bottle", "Sound");
    phone.sees("= Sugar to weigh: 122 g");
    println!("sugar: {} touches", phone.taps);
    assert!(phone.taps <= 4, "{}", phone.taps);
}

/// A slip of the thumb, from the row of the reading to the right number.
#[test]
fn a_slip_is_corrected_in_four_touches() {
    let mut phone = brewed(&[(10.0, 1.100, None)]);
    phone.go("#/batch/b/watch");
    phone.tap("Tue 17 Mar");
    phone.tap("Change the reading");
    phone.type_into("Hydrometer reads", "1.010");
    phone.tap("Save the change");
    let last = phone.model.journal.readings(&id("b")).last().expect("a reading").1.clone();
    assert_eq!(last.typed, "1.010");
    println!("a slip: {} touches", phone.taps);
    assert!(phone.taps <= 4, "{}", phone.taps);
}
