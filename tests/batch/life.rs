//! The life of a batch, stage by stage: what is known, and where the page then stands.

use crate::support::{bottling, day, heading, opening, pitching, put, reading, summary};
use fermentside::advice::practice::waking;
use fermentside::batch::{
    BottlingRecord, Due, Entry, Fizz, Journal, MadeSafe, NextStep, OpeningRecord, Reading, SafeBy,
    Stage, Vessel,
};
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
        assert_eq!(
            (found.stage, found.next),
            (step.stage, step.next),
            "step {at}: {found:?} {:?}",
            summary(&journal).standing
        );
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

/// Not before that day, by eight in the morning where that is at night.
fn ahead(days: f64) -> Due {
    Due::Ahead(waking(day(days)))
}

fn since(days: f64) -> Due {
    Due::Since(waking(day(days)))
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
        step(("p", Entry::Pitch(pitching(0.0))), 0.0, Watch, FirstLook(ahead(3.0))),
        // Nothing is judged while nothing is read, however long; but it is due, and said to be.
        later(30.0, Watch, FirstLook(since(3.0))),
        step(("s", satellite(3.0, 1.010)), 2.9, Watch, FirstLook(ahead(3.0))),
        step(("r1", main_reading(4.0, 1.021)), 4.0, Watch, ReadAgain(ahead(6.5))),
        step(("r2", main_reading(7.0, 1.011)), 7.0, Watch, ReadAgain(ahead(8.75))),
        later(20.0, Watch, ReadAgain(since(8.75))),
        step(("r3", main_reading(8.0, 1.011)), 8.0, Watch, ReadAgain(ahead(9.5))),
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
        step(("p", Entry::Pitch(pitching(0.0))), 0.0, Watch, NextStep::FirstLook(ahead(3.0))),
        step(("r1", main_reading(6.0, 1.022)), 6.0, Watch, NextStep::ReadAgain(ahead(8.5))),
        step(("r2", main_reading(9.0, 1.022)), 9.0, Watch, NextStep::Stuck(ahead(12.0))),
        later(13.0, Watch, NextStep::Stuck(since(12.0))),
        // The satellite stands there too: if it has ended, so has the beer. It is read a second time.
        step(("s", satellite(9.0, 1.022)), 9.0, Watch, NextStep::Stuck(ahead(12.0))),
        step(("s2", satellite(10.0, 1.022)), 10.0, Stage::Bottle, NextStep::Bottle),
        // The beer once more beside it says nothing else.
        step(("r3", main_reading(10.0, 1.022)), 10.0, Stage::Bottle, NextStep::Bottle),
    ]);
}

/// One flat bottle on day 8 once was "Ready" here and "Leave them" on the screen of the bottles.
#[test]
fn one_flat_bottle_in_time_is_left_and_a_gush_stops_everything() {
    let opened = |days, fizz| {
        let fizz = Fizz::new(fizz).expect("one to five");
        Entry::Opening(OpeningRecord { fizz, ..opening(days) })
    };
    let wait = NextStep::WaitForBottles(day(25.0));
    let made_safe = Some(MadeSafe { at: day(90.0), by: SafeBy::Vented });
    let safe = Entry::Bottling(BottlingRecord { made_safe, ..bottling(11.0) });
    walk(vec![
        step(("o", Entry::Bottling(bottling(11.0))), 11.0, Stage::Open, wait),
        step(("flat", opened(19.0, 1)), 19.0, Stage::Open, wait),
        later(25.0, Stage::Open, NextStep::TryOne),
        step(("well", opened(26.0, 3)), 26.0, Stage::Open, NextStep::Enjoy),
        step(("gush", opened(27.0, 5)), 27.0, Stage::Open, NextStep::MakeSafe),
        later(90.0, Stage::Open, NextStep::MakeSafe),
        step(("o", safe), 90.0, Stage::Open, NextStep::AfterSafe(SafeBy::Vented)),
    ]);
    // Later than two weeks a flat one is no sign of youth.
    walk(vec![
        step(("o", Entry::Bottling(bottling(11.0))), 11.0, Stage::Open, wait),
        step(("flat", opened(30.0, 1)), 30.0, Stage::Open, NextStep::WakeBottles(day(37.0))),
        later(37.0, Stage::Open, NextStep::TryOne),
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
