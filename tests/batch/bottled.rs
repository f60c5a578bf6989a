//! What follows from a bottling as it was recorded.

use crate::support::{bottling, day, id, opening, put, reading, summary, with_readings};
use fermentside::advice::open::learned::{Lesson, lessons};
use fermentside::advice::open::pressures::pressures;
use fermentside::batch::{BottlingRecord, Entry, Grounds, Id, Journal, PitchRecord, tally};
use fermentside::quantity::{
    AlcoholByVolume, CarbonDioxideVolumes, Celsius, Estimate, Grams, Litres, Measured, Metres,
    SpecificGravity,
};
use fermentside::science::priming::{KeptWort, OwnSugar, Sugar};

fn strength(record: &BottlingRecord) -> f64 {
    let beer = Estimate::new(AlcoholByVolume::literal(5.0), 0.2);
    record.strength_in_bottle(beer).expect("beer").value().value()
}

#[test]
fn strength_counts_what_of_the_sugar_ferments() {
    // 114 g in 19 L are 6 g a litre, worth 0.42 %; as monohydrate 0.864 of that, as lactose nothing.
    let plain = bottling(11.0);
    assert!((strength(&plain) - 5.42).abs() < 1e-9, "{}", strength(&plain));
    let corn = BottlingRecord { sugar: Sugar::DextroseMonohydrate, ..plain.clone() };
    assert!((strength(&corn) - 5.363).abs() < 0.001, "{}", strength(&corn));
    let nothing = OwnSugar {
        fermentable: fermentside::quantity::Share::literal(0.0),
        water: fermentside::quantity::Share::literal(0.0),
    };
    let lactose = BottlingRecord { sugar: Sugar::Own(nothing), ..plain.clone() };
    assert_eq!(strength(&lactose), 5.0);
    // Wort of the same brew makes no stronger beer than the brew is, but for the rule's own rounding.
    let wort =
        KeptWort { gravity: SpecificGravity::literal(1.048), end: SpecificGravity::literal(1.010) };
    let weighed = Grams::literal(1700.0);
    let primed = BottlingRecord { sugar: Sugar::Wort(wort), weighed, ..plain };
    assert!((strength(&primed) - 5.0).abs() < 0.1, "{}", strength(&primed));
    assert!((primed.primed_volume().value() - 20.63).abs() < 0.02);
}

#[test]
fn what_was_weighed_is_what_is_expected() {
    // 114 g of sucrose in 19 L at 95 %: 1.48 volumes, upon 0.81 at 20 °C.
    let plain = bottling(11.0);
    assert!((plain.expected().value() - 2.30).abs() < 0.03, "{:?}", plain.expected());
    let held = Some(Estimate::new(CarbonDioxideVolumes::literal(1.5), 0.1));
    let grounds = Some(Grounds { already_in: held, ..Grounds::default() });
    let cold = BottlingRecord { grounds, ..plain };
    assert!((cold.expected().value() - 2.98).abs() < 0.02, "{:?}", cold.expected());
}

#[test]
fn bottles_that_were_moved_count_from_then() {
    let mut record = bottling(11.0);
    let waiting = |record: &BottlingRecord| record.waiting(None, day(40.0)).bottled;
    assert_eq!(waiting(&record), day(11.0));
    record.moved = Some(day(30.0));
    assert_eq!(waiting(&record), day(30.0));
}

#[test]
fn days_in_the_cool_do_not_count_and_warm_ones_go_on() {
    let stood = |place: f64, record: &BottlingRecord, days| {
        record.clone().stood(Celsius::literal(place), day(days))
    };
    let warm = bottling(11.0);
    let warmer = stood(24.0, &warm, 15.0);
    assert_eq!((warmer.place, warmer.moved), (Some(Celsius::literal(24.0)), None));
    let cool = stood(12.0, &warmer, 20.0);
    assert_eq!(cool.moved, None);
    assert_eq!(stood(20.0, &cool, 25.0).moved, Some(day(25.0)));
}

fn opened() -> Journal {
    let mut journal =
        with_readings([reading(-0.1, 1.048), reading(7.0, 1.011), reading(10.0, 1.011)]);
    put(&mut journal, "o", Entry::Bottling(bottling(11.0)));
    journal
}

#[test]
fn a_worried_brewer_is_told_by_the_record() {
    let summary = summary(&opened());
    let facts = summary.facts(Metres::literal(0.0), day(31.0)).expect("bottled");
    assert_eq!(facts.age.days(), 20.0);
    assert!(facts.was_finished);
    let found = pressures(&facts).expect("in range");
    assert!(found.chilled_at_worst < found.here_at_worst);
    assert_eq!(summary.outcome(), None);
}

#[test]
fn opened_bottles_teach() {
    let mut journal = opened();
    put(&mut journal, "t1", Entry::Opening(opening(26.0)));
    put(&mut journal, "t2", Entry::Opening(opening(30.0)));
    let outcome = summary(&journal).outcome().expect("opened");
    let told = lessons(&outcome);
    assert!(matches!(told.first(), Some(Lesson::FizzRight(_))), "{told:?}");
    assert_eq!(told.get(1), Some(&Lesson::LostUsual(Litres::literal(1.0))));
}

#[test]
fn a_year_is_tallied_by_what_was_in_the_fermenter() {
    let mut journal = opened();
    let pitch =
        PitchRecord { volume: Some(Litres::literal(21.5)), ..PitchRecord::new(id("b"), day(0.0)) };
    put(&mut journal, "p", Entry::Pitch(pitch));
    let mut other = |name: &str, days: f64| {
        let heading =
            fermentside::batch::BatchHeading { started: day(days), ..crate::support::heading() };
        let entry = Entry::Batch(heading);
        journal.apply(fermentside::batch::Change::put(Id::new(name).expect("an identity"), entry))
    };
    other("c", 30.0).expect("taken");
    other("d", 300.0).expect("taken");
    let years = tally(&journal);
    let rows: Vec<_> = years.iter().map(|y| (y.year, y.batches, y.volume.value())).collect();
    assert_eq!(rows, [(2027, 1, 20.0), (2026, 2, 41.5)]);
    assert_eq!(tally(&Journal::default()), vec![]);
}
