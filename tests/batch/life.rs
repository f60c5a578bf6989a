//! The life of a batch, stage by stage: what is known, and where the page then stands.

use crate::support::{bottling, day, heading, opening, pitching, put, reading, summary};
use fermentside::batch::{Entry, Journal, NextStep, Reading, Stage, Vessel};
use fermentside::quantity::Celsius;

/// One step: what is noted under which name, the day on which one looks, and what is then next.
struct Step {
    noted: Option<(&'static str, Entry)>,
    looked: f64,
    stage: Stage,
    next: NextStep,
}

fn walk(steps: Vec<Step>) {
    let mut journal = Journal::default();
    put(&mut journal, "b", Entry::Batch(heading()));
    for (at, step) in steps.into_iter().enumerate() {
        if let Some((name, entry)) = step.noted {
            put(&mut journal, name, entry);
        }
        let found = summary(&journal).today(day(step.looked));
        assert_eq!((found.stage, found.next), (step.stage, step.next), "step {at}");
    }
}

fn step(noted: (&'static str, Entry), looked: f64, stage: Stage, next: NextStep) -> Step {
    Step { noted: Some(noted), looked, stage, next }
}

fn later(looked: f64, stage: Stage, next: NextStep) -> Step {
    Step { noted: None, looked, stage, next }
}

fn main_reading(days: f64, sg: f64) -> Entry {
    Entry::Reading(reading(days, sg))
}

fn satellite(days: f64, sg: f64) -> Entry {
    Entry::Reading(Reading { vessel: Vessel::Satellite, ..reading(days, sg) })
}

#[test]
fn a_plain_ale() {
    use NextStep::{
        Bottle as BottleIt, Enjoy, FirstLook, Pitch as PitchIt, ReadAgain, TryOne, WaitForBottles,
    };
    use Stage::{Bottle, Open, Pitch, Watch};
    walk(vec![
        later(-0.1, Pitch, PitchIt),
        step(("og", main_reading(-0.1, 1.048)), -0.1, Pitch, PitchIt),
        step(("p", Entry::Pitch(pitching(0.0))), 0.0, Watch, FirstLook(day(3.0))),
        // Nothing is judged while nothing is read, however long.
        later(30.0, Watch, FirstLook(day(3.0))),
        step(("s", satellite(3.0, 1.010)), 3.0, Watch, FirstLook(day(3.0))),
        step(("r1", main_reading(4.0, 1.020)), 4.0, Watch, ReadAgain(day(6.0))),
        step(("r2", main_reading(7.0, 1.011)), 7.0, Watch, ReadAgain(day(9.0))),
        step(("r3", main_reading(8.0, 1.011)), 8.0, Watch, ReadAgain(day(10.0))),
        step(("r4", main_reading(10.0, 1.011)), 10.0, Bottle, BottleIt),
        later(40.0, Bottle, BottleIt),
        step(("o", Entry::Bottling(bottling(11.0))), 11.0, Open, WaitForBottles(day(25.0))),
        later(24.9, Open, WaitForBottles(day(25.0))),
        later(25.0, Open, TryOne),
        step(("t", Entry::Opening(opening(26.0))), 26.0, Open, Enjoy),
    ]);
}

#[test]
fn a_stuck_one() {
    use Stage::Watch;
    walk(vec![
        step(("og", main_reading(-0.1, 1.048)), -0.1, Stage::Pitch, NextStep::Pitch),
        step(("p", Entry::Pitch(pitching(0.0))), 0.0, Watch, NextStep::FirstLook(day(3.0))),
        step(("r1", main_reading(6.0, 1.022)), 6.0, Watch, NextStep::ReadAgain(day(8.0))),
        step(("r2", main_reading(9.0, 1.022)), 9.0, Watch, NextStep::Stuck),
        // The satellite stands there too: if it has ended, so has the beer. It is read a second time.
        step(("s", satellite(9.0, 1.022)), 9.0, Watch, NextStep::ReadAgain(day(11.0))),
        step(("s2", satellite(10.0, 1.022)), 10.0, Stage::Bottle, NextStep::Bottle),
    ]);
}

#[test]
fn bottles_in_a_cool_place_wait_twice_as_long_and_in_the_cold_until_they_are_warmed() {
    let standing_at = |t| {
        let mut record = bottling(11.0);
        record.place = Some(Celsius::literal(t));
        Entry::Bottling(record)
    };
    let wait = |days| NextStep::WaitForBottles(day(days));
    walk(vec![
        step(("o", standing_at(15.0)), 12.0, Stage::Open, wait(39.0)),
        later(39.0, Stage::Open, NextStep::TryOne),
    ]);
    walk(vec![
        step(("o", standing_at(11.0)), 12.0, Stage::Open, wait(26.0)),
        later(80.0, Stage::Open, wait(94.0)),
    ]);
}
