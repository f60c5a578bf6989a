//! A batch's record as the judgement of its standing gets it.

use crate::support::{bottling, day, heading, id, opening, put, reading, summary, with_readings};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::Bottles;
use fermentside::advice::standing::{Hazard, Next, State};
use fermentside::batch::{
    BatchHeading, BottlesItem, Entry, Fizz, MadeSafe, OpeningRecord, Reading, SafeBy, Vessel,
};
use fermentside::quantity::{CarbonDioxideVolumes, Litres};

fn quiet() -> Vec<Reading> {
    vec![reading(-0.1, 1.050), reading(3.0, 1.022), reading(8.0, 1.011), reading(11.0, 1.011)]
}

#[test]
fn a_log_stands_as_its_readings_say() {
    let batch = summary(&with_readings(quiet()));
    assert_eq!((batch.record().main.len(), batch.record().satellite.len()), (4, 0));
    let found = batch.standing;
    assert_eq!((found.state, found.next), (State::Finished, Next::Bottle), "{found:?}");
    let mut falling = quiet();
    falling[3] = reading(8.5, 1.011);
    assert_ne!(summary(&with_readings(falling)).standing.state, State::Finished);
}

#[test]
fn each_hydrometer_is_an_instrument_and_each_vessel_its_own() {
    let mut readings = quiet();
    readings[3].hydrometer = id("other");
    readings.push(Reading { vessel: Vessel::Satellite, ..reading(5.0, 1.010) });
    let record = summary(&with_readings(readings)).record();
    let by: Vec<u32> = record.main.iter().map(|seen| seen.instrument).collect();
    assert_eq!((by[0] == by[2], by[2] == by[3], record.satellite.len()), (true, false, 1));
}

#[test]
fn a_gush_outranks_everything() {
    let mut journal = with_readings(quiet());
    put(&mut journal, "x", Entry::Bottling(bottling(12.0)));
    let opened = OpeningRecord {
        batch: id("b"),
        at: day(30.0),
        fizz: Fizz::new(5).expect("a fizz"),
        clarity: None,
        taste: String::new(),
        note: String::new(),
        burst: false,
    };
    put(&mut journal, "o", Entry::Opening(opened));
    let found = summary(&journal).standing;
    assert_eq!((found.hazards, found.next), (vec![Hazard::Gushed(day(30.0))], Next::MakeSafe));
}

/// One that burst counts as one that gushed, until what was done is noted; a later one stops it anew.
#[test]
fn a_burst_is_made_safe_once_and_may_come_again() {
    let mut journal = with_readings(quiet());
    let mut bottled = bottling(12.0);
    put(&mut journal, "x", Entry::Bottling(bottled.clone()));
    let burst =
        |days| Entry::Opening(OpeningRecord { burst: true, at: day(days), ..opening(days) });
    put(&mut journal, "o", burst(30.0));
    assert_eq!(summary(&journal).standing.next, Next::MakeSafe);
    bottled.made_safe = Some(MadeSafe { at: day(30.5), by: SafeBy::KeptCold });
    put(&mut journal, "x", Entry::Bottling(bottled));
    assert_eq!(summary(&journal).standing.hazards, []);
    put(&mut journal, "p", burst(40.0));
    assert_eq!(summary(&journal).standing.hazards, [Hazard::Gushed(day(40.0))]);
}

/// Finished is said for the bottles that the brewer has, and for what he wishes.
#[test]
fn the_bottles_on_hand_and_the_wish_are_in_the_record() {
    let mut journal = with_readings(quiet());
    assert_eq!(
        (summary(&journal).record().weakest, summary(&journal).record().target),
        (None, None)
    );
    let bottles = |class| {
        let bottles = Bottles { size: Litres::literal(0.5), class, count: 12 };
        Entry::Bottles(BottlesItem { name: "Some".to_owned(), bottles })
    };
    put(&mut journal, "thin", bottles(Bottle::NotForPressure));
    assert_eq!(summary(&journal).record().weakest, None);
    put(&mut journal, "heavy", bottles(Bottle::HeavyGlass));
    put(&mut journal, "pet", bottles(Bottle::UnknownGlass));
    let wish = Some(CarbonDioxideVolumes::literal(3.2));
    put(&mut journal, "b", Entry::Batch(BatchHeading { target: wish, ..heading() }));
    let found = summary(&journal);
    assert_eq!((found.record().weakest, found.record().target), (Some(Bottle::UnknownGlass), wish));
    assert_ne!(found.standing.state, State::Finished, "no such glass holds that");
    // Once it is bottled, what was filled counts.
    put(&mut journal, "x", Entry::Bottling(bottling(12.0)));
    assert_eq!(summary(&journal).record().weakest, Some(bottling(12.0).weakest));
}

#[test]
fn a_reading_kept_against_the_question_is_doubtful() {
    let mut readings = quiet();
    readings[3].doubtful = true;
    let found = summary(&with_readings(readings));
    assert!(found.record().main[3].doubtful);
    assert_ne!(found.standing.state, State::Finished);
}
