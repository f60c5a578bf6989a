//! A batch summed up: what was read stays, what follows is worked out beside it.

use crate::support::{
    bottling, day, heading, id, opening, pitched, put, reading, summary, with_readings,
};
use fermentside::advice::standing::{Reason, State};
use fermentside::batch::{
    BatchHeading, Entry, HydrometerItem, Journal, NextStep, Reading, Stage, Summary, Vessel,
};
use fermentside::quantity::{Celsius, Estimate, Gravity, GravityChange, Measured, SpecificGravity};
use fermentside::science::hydrometer::Hydrometer;
use std::time::Instant;

fn sg(estimate: Option<Estimate<SpecificGravity>>) -> f64 {
    estimate.expect("a gravity").value().value()
}

#[test]
fn a_warm_reading_is_shown_corrected_and_kept_raw() {
    let warm = Reading { sample: Some(Celsius::literal(30.0)), ..reading(-0.1, 1.050) };
    let summary = summary(&with_readings([warm.clone()]));
    let line = &summary.lines[0];
    assert_eq!(line.reading, warm);
    // Water alone thins by 2.5 points from 20 to 30 °C; glass gives a little of it back.
    assert!((sg(line.gravity()) - 1.0524).abs() < 0.0005, "{}", sg(line.gravity()));
    assert_eq!(summary.original, line.gravity());
}

#[test]
fn an_instruments_offset_changes_corrections_and_no_reading() {
    let mut journal = with_readings([reading(-0.1, 1.048), reading(4.0, 1.012)]);
    let before = summary(&journal);
    let checked = Hydrometer { offset: GravityChange::literal(0.003), ..Hydrometer::USUAL };
    let item = HydrometerItem { name: "Checked".to_owned(), instrument: checked };
    put(&mut journal, HydrometerItem::usual_id().as_str(), Entry::Hydrometer(item));
    let after = summary(&journal);
    for (before, after) in before.lines.iter().zip(&after.lines) {
        assert_eq!(before.reading, after.reading);
        let moved = sg(after.gravity()) - sg(before.gravity());
        assert!((moved - 0.003).abs() < 1e-4, "{moved}");
    }
}

#[test]
fn a_reading_with_no_sample_temperature_is_believed_less() {
    let blind = Reading { sample: None, ..reading(4.0, 1.012) };
    let summary = summary(&with_readings([reading(-0.1, 1.048), blind, reading(5.0, 1.012)]));
    let sigma = |at: usize| summary.lines[at].gravity().expect("a gravity").sigma();
    assert!(sigma(1) > sigma(2), "{} and {}", sigma(1), sigma(2));
}

#[test]
fn the_start_is_the_first_main_reading_about_pitching_else_what_was_stated() {
    let stated =
        BatchHeading { expected_start: Some(SpecificGravity::literal(1.052)), ..heading() };
    let of = |readings: Vec<Reading>| {
        let mut journal = with_readings(readings);
        put(&mut journal, "b", Entry::Batch(stated.clone()));
        let summary = summary(&journal);
        (sg(summary.original), summary.original_was_read)
    };
    let satellite = |days, sg| Reading { vessel: Vessel::Satellite, ..reading(days, sg) };
    let near = |found: (f64, bool), value: f64, read: bool| {
        assert!((found.0 - value).abs() < 5e-4 && found.1 == read, "{found:?}");
    };
    near(of(vec![]), 1.052, false);
    near(of(vec![reading(-0.1, 1.048), reading(0.2, 1.047)]), 1.048, true);
    near(of(vec![reading(0.4, 1.047), reading(3.0, 1.020)]), 1.047, true);
    // Twelve hours on it has begun.
    near(of(vec![reading(0.6, 1.044)]), 1.052, false);
    // A satellite is no start, nor a look without gravity.
    near(of(vec![satellite(0.0, 1.060)]), 1.052, false);
    let look = Reading { as_read: None, note: "cold".to_owned(), ..reading(-0.2, 1.0) };
    near(of(vec![look, reading(-0.1, 1.048)]), 1.048, true);
    // A sample too hot to mean anything, read again when it had cooled.
    let hot = Reading { sample: Some(Celsius::literal(70.0)), ..reading(-0.2, 1.030) };
    near(of(vec![hot, reading(-0.1, 1.048)]), 1.048, true);
}

#[test]
fn a_satellite_never_counts_as_the_beer() {
    let satellite = |days| Reading { vessel: Vessel::Satellite, ..reading(days, 1.010) };
    let beer = [reading(-0.1, 1.048), reading(3.0, 1.020)];
    let with = summary(&with_readings(beer.into_iter().chain([satellite(4.0), satellite(5.0)])));
    assert!((sg(with.present) - 1.020).abs() < 1e-3, "{}", sg(with.present));
    // Read level it is where the beer is expected to end, and a little above.
    let of_satellite = |why: &&Reason| matches!(why, Reason::Satellite(..));
    let said = with.standing.reasons.iter().find(of_satellite);
    let Some(Reason::Satellite(end, over)) = said else { panic!("{:?}", with.standing) };
    assert!((end.value() - 1.010).abs() < 1e-3 && (over.points() - 10.0).abs() < 0.2, "{end:?}");
    // Only satellites: nothing of the beer is known.
    let alone = Reading { vessel: Vessel::Satellite, ..reading(5.0, 1.010) };
    let alone = summary(&with_readings([alone]));
    assert_eq!((alone.present, alone.strength), (None, None));
}

#[test]
fn strength_in_the_bottle_counts_the_priming_sugar() {
    let mut journal = with_readings([reading(-0.1, 1.048), reading(9.0, 1.010)]);
    assert_eq!(summary(&journal).strength_in_bottle(), None);
    put(&mut journal, "o", Entry::Bottling(bottling(14.0)));
    let summary = summary(&journal);
    let beer = summary.strength.as_ref().expect("a strength").alcohol.value().value();
    let bottle = summary.strength_in_bottle().expect("a strength").value().value();
    // 0.07 % for each gram a litre.
    assert!((bottle - beer - 0.07 * 114.0 / 19.0).abs() < 1e-9, "{beer} to {bottle}");
}

#[test]
fn time_alone_moves_no_step_before_it_is_bottled() {
    let mut journal = with_readings([reading(-0.1, 1.048), reading(9.0, 1.010)]);
    for step in 0..3 {
        let summary = summary(&journal);
        let early = summary.today(day(10.0));
        for days in [-10.0, 11.0, 60.0, 4000.0] {
            let later = summary.today(day(days));
            assert_eq!((later.stage, later.due), (early.stage, early.due));
            let kind = std::mem::discriminant(&early.next);
            assert_eq!(std::mem::discriminant(&later.next), kind);
        }
        put(&mut journal, &format!("more{step}"), Entry::Reading(reading(9.0 + 3.0, 1.010)));
    }
    // Bottled, the day alone moves it on.
    put(&mut journal, "o", Entry::Bottling(bottling(14.0)));
    let summary = summary(&journal);
    let [soon, later] = [15.0, 40.0].map(|days| summary.today(day(days)));
    assert_eq!((soon.stage, later.stage), (Stage::Open, Stage::Open));
    assert_eq!((soon.next, later.next), (NextStep::WaitForBottles(day(28.0)), NextStep::TryOne));
    assert_eq!((soon.due, later.due), (Some(day(28.0)), Some(day(14.0))));
    assert!(soon.opening.is_some() && soon.opening != later.opening);
}

#[test]
fn a_batch_that_is_not_there_has_no_summary() {
    assert_eq!(Summary::of(&Journal::default(), &id("b"), day(900.0)), None);
    assert_eq!(Summary::of(&pitched(), &id("other"), day(900.0)), None);
}

#[test]
fn a_journal_in_a_muddle_is_still_summed_up() {
    // Rising gravity, boiling samples, readings before brewing, openings without a bottling.
    let hot = Reading { sample: Some(Celsius::literal(95.0)), ..reading(2.0, 1.040) };
    let plato = Gravity::Plato(fermentside::quantity::Plato::literal(-3.0));
    let odd = Reading { as_read: Some(plato), ..reading(-400.0, 1.0) };
    let mut journal = with_readings([hot, odd, reading(3.0, 1.020), reading(9.0, 1.070)]);
    put(&mut journal, "t", Entry::Opening(opening(3.0)));
    let summary = summary(&journal);
    assert_eq!(summary.lines.len(), 4);
    assert!(summary.lines.iter().any(|line| matches!(line.corrected, Some(Err(_)))));
    assert_ne!(summary.standing.state, State::Finished);
}

#[test]
fn a_tick_of_the_clock_works_out_nothing_anew() {
    let readings = (0..60).map(|n| reading(f64::from(n) * 0.25, 1.040 - f64::from(n) * 1e-4));
    let mut journal = with_readings(readings);
    for bottled in [false, true] {
        let start = Instant::now();
        let summary = summary(&journal);
        let worked_out = start.elapsed();
        let ticks = 20;
        let start = Instant::now();
        for tick in 0..ticks {
            assert!(summary.today(day(30.0 + f64::from(tick))).due.is_some());
        }
        let ticked = start.elapsed() / ticks as u32;
        println!("bottled {bottled}: worked out in {worked_out:?}, a tick {ticked:?}");
        assert!(ticked * 10 < worked_out, "{ticked:?} of {worked_out:?}");
        put(&mut journal, "o", Entry::Bottling(bottling(14.0)));
    }
}

#[test]
fn two_hundred_readings_are_no_burden() {
    let readings = (0..200).map(|n| reading(f64::from(n) * 0.25, 1.040 - f64::from(n) * 1e-4));
    let journal = with_readings(readings);
    let start = Instant::now();
    let summary = summary(&journal);
    let took = start.elapsed();
    println!("200 readings summed up in {took:?}, not optimised");
    assert_eq!(summary.lines.len(), 200);
    // Some 0.3 s, not optimised; a slow machine must not fail this.
    assert!(took.as_millis() < 3000, "{took:?}");
}

#[test]
fn a_reading_not_yet_saved_is_made_true_as_it_will_be_logged() {
    let pitched = pitched();
    let fed = with_readings([reading(-0.1, 1.048), reading(3.0, 1.020)]);
    let stranger = reading(-0.05, 1.047);
    let blind = Reading { sample: None, ..reading(5.0, 1.012) };
    let moved = Reading { note: "moved".to_owned(), ..reading(4.0, 1.020) };
    for (mut journal, name, reading) in [
        // The first of its batch is the start itself; so is a later one of the wort.
        (pitched.clone(), "new", reading(-0.1, 1.048)),
        (fed.clone(), "new", stranger),
        // Beer, with no word of its temperature.
        (fed.clone(), "new", blind),
        // One that is changed: the start, moved until after it had begun.
        (fed.clone(), "r0", moved),
    ] {
        let foretold = summary(&journal).line_of(&journal, &id(name), &reading);
        put(&mut journal, name, Entry::Reading(reading));
        let logged = summary(&journal).lines.into_iter().find(|line| line.id == id(name));
        assert_eq!(Some(foretold), logged);
    }
}
