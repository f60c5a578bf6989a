//! A batch's record as the judgement of its standing gets it.

use crate::support::{bottling, day, id, put, reading, summary, with_readings};
use fermentside::advice::standing::{Hazard, Next, State};
use fermentside::batch::{Entry, Fizz, OpeningRecord, Reading, Vessel};

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
    };
    put(&mut journal, "o", Entry::Opening(opened));
    let found = summary(&journal).standing;
    assert_eq!((found.hazards, found.next), (vec![Hazard::Gushed(day(30.0))], Next::MakeSafe));
}
