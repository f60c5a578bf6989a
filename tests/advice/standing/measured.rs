//! Records that were once judged wrongly, and what is said of them now.

use crate::support::hour;
use fermentside::advice::family::Family;
use fermentside::advice::standing::{
    Doubt, Hazard, Next, Opened, Reason, Record, Seen, Standing, State, SugarFrom,
};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, SpecificGravity};

fn gravity(points: f64) -> SpecificGravity {
    SpecificGravity::nearest(1.0 + points / 1000.0)
}

fn seen(day: f64, points: f64) -> Seen {
    Seen {
        at: hour(24.0 * day),
        gravity: Estimate::new(gravity(points), 0.0007),
        beer: None,
        instrument: 0,
        doubtful: false,
    }
}

fn record(family: Family, original: f64, main: &[(f64, f64)]) -> Record {
    let mut record = Record::of(family, hour(0.0));
    record.pitched = Some(hour(0.0));
    record.original = Some(Estimate::new(gravity(original), 0.001));
    record.main = main.iter().map(|&(day, points)| seen(day, points)).collect();
    record
}

fn stands(record: &Record) -> Standing {
    let last = record.main.iter().map(|seen| seen.at).max().expect("a reading");
    Standing::of(record, last)
}

/// Two readings and more are judged by the same posterior, and a third equal one takes nothing away.
#[test]
fn two_readings_of_unknown_yeast_high_in_its_range_are_no_finish() {
    let two = record(Family::Unknown, 44.0, &[(9.0, 15.0), (12.5, 15.0)]);
    let found = stands(&two);
    assert_ne!(found.state, State::Finished, "{found:?}");
    assert!(found.doubts.iter().any(|doubt| matches!(doubt, Doubt::Stall(..))), "{found:?}");
    assert!(matches!(found.sugar.from, SugarFrom::About(_) | SugarFrom::NotWithin(_)));
    assert!(found.sugar.with_satellite.is_some(), "a late satellite is named: {found:?}");
}

/// An end where such beer ends is told after two nights, and not by the half hour.
#[test]
fn beer_low_in_its_range_is_finished_after_two_nights() {
    for apart in [42.0, 48.0, 72.0] {
        let low =
            record(Family::CleanAle, 50.0, &[(3.0, 22.0), (8.0, 11.0), (8.0 + apart / 24.0, 11.0)]);
        assert_eq!(stands(&low).state, State::Finished, "{apart}: {:?}", stands(&low));
    }
    let near = record(Family::CleanAle, 50.0, &[(3.0, 22.0), (8.0, 11.0), (9.7, 11.0)]);
    assert_ne!(stands(&near).state, State::Finished);
}

/// A stall six points high that was read twice got its sugar. A jar of the same wort says which it is.
#[test]
fn stalled_beer_gets_no_dose_and_a_satellite_settles_it() {
    let mut stalled = record(Family::CleanAle, 50.0, &[(4.0, 24.0), (8.0, 17.0), (11.0, 17.0)]);
    assert!(matches!(stands(&stalled).state, State::Level | State::LooksStuck));
    let sat =
        |day: f64, points: f64| Seen { beer: Some(Celsius::literal(22.0)), ..seen(day, points) };
    stalled.satellite = vec![sat(4.0, 11.0), sat(5.5, 11.0)];
    assert_eq!(stands(&stalled).state, State::LooksStuck);
    // The same beer beside a satellite that ends there is done.
    stalled.satellite = vec![sat(4.0, 17.0), sat(5.5, 17.0)];
    assert_eq!(stands(&stalled).state, State::Finished, "{:?}", stands(&stalled));
}

/// Beer that still fell when it was chilled stands level because it is cold.
#[test]
fn beer_chilled_while_it_fell_is_not_finished() {
    let mut chilled = record(
        Family::CleanAle,
        50.0,
        &[(3.0, 26.0), (5.0, 15.0), (6.0, 13.5), (9.0, 13.0), (12.0, 13.0)],
    );
    for seen in &mut chilled.main {
        let cold = seen.at > hour(24.0 * 5.5);
        seen.beer = Some(Celsius::nearest(if cold { 4.0 } else { 20.0 }));
    }
    let found = stands(&chilled);
    assert_ne!(found.state, State::Finished);
    assert!(
        found.reasons.iter().any(|reason| matches!(reason, Reason::LevelWhileCold(..))),
        "{found:?}"
    );
}

/// Beer whose start nobody read had no way to its sugar in three months.
#[test]
fn without_a_start_there_is_a_way() {
    let mut blind = record(Family::CleanAle, 50.0, &[(9.0, 12.0), (12.0, 12.0)]);
    blind.original = None;
    let found = stands(&blind);
    assert!(found.reasons.contains(&Reason::NoEndKnown));
    let way = found.state == State::Finished
        || found.sugar.with_satellite.is_some()
        || matches!(found.sugar.from, SugarFrom::About(_));
    assert!(way, "{found:?}");
    for day in [18.0, 25.0, 32.0, 40.0] {
        blind.main.push(seen(day, 12.0));
    }
    assert_eq!(stands(&blind).state, State::Finished, "{:?}", stands(&blind));
}

/// The end typed as it was read was proof enough, at twenty points over any such beer.
#[test]
fn an_absurd_stated_end_unlocks_nothing() {
    let mut absurd = record(Family::CleanAle, 48.0, &[(9.0, 30.0), (12.0, 30.0), (15.0, 30.0)]);
    absurd.stated_end = Some(gravity(30.0));
    assert_ne!(stands(&absurd).state, State::Finished);
}

/// Beer and jar with one bad sachet bore each other out.
#[test]
fn a_satellite_that_hardly_fermented_proves_no_end() {
    let mut both = record(Family::CleanAle, 50.0, &[(6.0, 30.0), (9.0, 30.0), (12.0, 30.0)]);
    both.satellite = vec![seen(4.0, 30.0), seen(6.0, 30.0)];
    assert_ne!(stands(&both).state, State::Finished, "{:?}", stands(&both));
}

/// A reading by another hydrometer was as good as one by the same.
#[test]
fn two_instruments_are_two() {
    let mut two = record(Family::CleanAle, 50.0, &[(3.0, 22.0), (8.0, 11.0), (11.0, 11.0)]);
    two.main[2].instrument = 1;
    assert!(stands(&two).doubts.contains(&Doubt::TwoInstruments));
}

/// Two alike two days apart were "still falling", for the start was among the looks.
#[test]
fn equal_readings_do_not_fall() {
    let found = stands(&record(Family::CleanAle, 50.0, &[(9.0, 12.0), (11.0, 12.0)]));
    assert!(!found.reasons.iter().any(|reason| matches!(reason, Reason::Falling(_))), "{found:?}");
}

/// A point in four days, for two weeks, was an end; nobody named what eats on slowly.
#[test]
fn a_point_a_week_is_no_finish_and_something_eating_is_named() {
    let found = stands(&record(
        Family::CleanAle,
        50.0,
        &[(3.0, 22.0), (8.0, 11.5), (12.0, 10.5), (16.0, 9.5), (20.0, 8.5), (24.0, 7.5)],
    ));
    assert_ne!(found.state, State::Finished, "{found:?}");
    assert!(found.doubts.iter().any(|doubt| matches!(doubt, Doubt::Eaten(..))), "{found:?}");
}

/// After a bottle that gushed the next could be opened; a flat one is no hazard.
#[test]
fn a_gush_stops_everything_until_it_is_made_safe() {
    let mut open = record(Family::CleanAle, 50.0, &[(3.0, 22.0), (8.0, 11.0), (11.0, 11.0)]);
    open.bottled = Some(hour(24.0 * 12.0));
    let at = hour(24.0 * 20.0);
    open.opened = vec![(at, Opened::Gushed)];
    let found = Standing::of(&open, hour(24.0 * 21.0));
    assert_eq!((found.hazards, found.next), (vec![Hazard::Gushed(at)], Next::MakeSafe));
    open.made_safe = Some(at.after(Hours::literal(2.0)));
    let after = Standing::of(&open, hour(24.0 * 21.0));
    assert!(after.hazards.is_empty() && after.next == Next::Open);
    open.opened = vec![(at, Opened::Flat)];
    assert!(Standing::of(&open, hour(24.0 * 21.0)).hazards.is_empty());
}

/// A pitching dated a month too early made young lager old enough.
#[test]
fn a_pitching_long_before_the_batch_is_no_age() {
    let mut early = record(Family::Lager, 50.0, &[(3.0, 22.0), (6.0, 11.0), (9.0, 11.0)]);
    early.pitched = Some(hour(-24.0 * 30.0));
    let found = stands(&early);
    assert!(found.doubts.contains(&Doubt::PitchingLongBefore(hour(-24.0 * 30.0))));
    assert_ne!(found.state, State::Finished);
}

/// Read by a tired eye: a true end is not taken back from one look to the next.
#[test]
fn a_tired_eye_does_not_make_it_waver() {
    let shown =
        [40.0, 20.0, 13.0, 12.0, 14.0, 11.0, 13.0, 10.0, 12.0, 14.0, 11.0, 13.0, 10.0, 12.0];
    let days: Vec<f64> = [2.0, 4.0].into_iter().chain((6..18).map(f64::from)).collect();
    let mut found = Vec::new();
    for count in 5..=shown.len() {
        let main: Vec<_> = days.iter().copied().zip(shown).take(count).collect();
        found.push(stands(&record(Family::CleanAle, 50.0, &main)).state == State::Finished);
    }
    let changes = found.windows(2).filter(|two| two[0] && !two[1]).count();
    assert!(found.last() == Some(&true) && changes <= 1, "{found:?}");
}

/// One misread line in the midst of level ones cost six days.
#[test]
fn one_slip_neither_proves_nor_spoils() {
    let level = [(3.0, 22.0), (8.0, 11.0), (10.0, 11.0), (12.0, 11.0)];
    for slip in [1.0, 21.0] {
        let mut main = level.to_vec();
        main.push((13.0, slip));
        main.push((14.0, 11.0));
        let found = stands(&record(Family::CleanAle, 50.0, &main));
        assert_eq!(found.state, State::Finished, "{slip}: {found:?}");
        assert!(found.doubts.contains(&Doubt::FarFromCourse(hour(24.0 * 13.0))));
    }
}

/// A tail that has gone flat for days is no drift, however often it was read: four readings a day show no
/// fall of a point from one to the next, and a straight line through all of them still leans.
#[test]
fn a_tail_that_went_flat_is_no_drift() {
    for a_day in [1, 2, 3, 4, 6] {
        let course: Vec<(f64, f64)> = (0..=14 * a_day)
            .map(|n| f64::from(n) / f64::from(a_day))
            .map(|day| (day, (10.5 + 37.5 * (-day / 1.9).exp()).round()))
            .collect();
        let found = stands(&record(Family::CleanAle, 48.0, &course));
        assert_eq!(found.state, State::Finished, "{a_day} a day: {:?}", found.reasons);
    }
}

/// Two readings of one moment that read alike, of which one was noted with a temperature, roughly, or by
/// another instrument: it does not matter which was written down first.
#[test]
fn readings_of_one_moment_are_judged_alike_in_any_order() {
    let like = seen(9.0, 12.0);
    let rough = Estimate::new(gravity(12.0), 0.002);
    let others = [
        Seen { beer: Some(Celsius::literal(12.0)), ..like },
        Seen { gravity: rough, ..like },
        Seen { instrument: 1, ..like },
        Seen { doubtful: true, ..like },
    ];
    let mut sleepy = record(Family::Saison, 50.0, &[(3.0, 30.0)]);
    for beer in [12.0, 19.0] {
        sleepy.main.push(Seen { beer: Some(Celsius::literal(beer)), ..like });
    }
    let found = stands(&sleepy);
    sleepy.main.reverse();
    assert_eq!(stands(&sleepy), found);
    for other in others {
        let mut record = record(Family::CleanAle, 50.0, &[(3.0, 22.0), (6.0, 12.0)]);
        record.main.extend([like, other]);
        let found = stands(&record);
        record.main.reverse();
        assert_eq!(stands(&record), found, "{other:?}");
    }
}

/// What is said after each of some readings, once there are so many.
fn each(record: &Record, from: usize) -> Vec<Standing> {
    let first = |count: usize| Record { main: record.main[..count].to_vec(), ..record.clone() };
    (from..=record.main.len()).map(|count| stands(&first(count))).collect()
}

/// Lager that falls from its first hours on and dies away slowly, read daily by a tired eye.
#[test]
fn lager_that_dies_away_is_not_stuck() {
    let logs: [(f64, &[f64]); 4] = [
        (37.3, &[23.0, 25.0, 19.0, 19.0, 19.0, 15.0, 17.0, 16.0, 17.0]),
        (41.2, &[26.0, 20.0, 20.0, 18.0, 19.0]),
        (40.7, &[27.0, 26.0, 21.0, 19.0, 19.0, 17.0, 19.0, 18.0, 15.0]),
        (48.0, &[28.0, 22.0, 21.0, 21.0, 21.0]),
    ];
    for (original, shown) in logs {
        let days = (4..).map(f64::from).zip(shown.iter().copied());
        let main: Vec<_> = days.collect();
        let stuck = |found: &Standing| found.state == State::LooksStuck;
        let found = each(&record(Family::Lager, original, &main), 3);
        assert!(!found.iter().any(stuck), "{original}: {found:?}");
    }
}

/// Thirty-five points that go by one rate from the first hour on, a third of what is left in two days: a point
/// is left on day 17.8.
#[test]
fn lager_that_dies_away_is_foretold() {
    let course = |day: f64| (10.0 + 35.0 * (-day / 5.0).exp()).round();
    let main: Vec<_> = [3.0, 5.0, 7.0, 9.0, 11.0].map(|day| (day, course(day))).into();
    let outlook = stands(&record(Family::Lager, 45.0, &main)).outlook.expect("readings");
    let middle = outlook.one_point_middle.since(hour(0.0)).days();
    assert!((middle - 17.8).abs() < 3.0, "{middle}");
    // The day is said, and not the hour.
    let date = |at: Moment| (at.parts().1, at.parts().2);
    assert!(date(outlook.one_point.to) >= date(hour(24.0 * 17.8)), "{outlook:?}");
}

/// An end that was found stands until more than chance speaks against it: not one low reading, nor a line that
/// leans because the first of its days were the last of the fall.
#[test]
fn a_true_end_is_not_taken_back() {
    let tired: &[f64] = &[
        41.0, 30.0, 36.0, 32.0, 28.0, 22.0, 21.0, 16.0, 17.0, 13.0, 12.0, 11.0, 14.0, 12.0, 9.0,
        10.0, 11.0, 9.0, 11.0, 11.0, 12.0, 8.0, 10.0, 10.0, 8.0, 11.0, 10.0, 9.0, 9.0, 8.0, 10.0,
        7.0, 10.0,
    ];
    let careful: &[f64] =
        &[26.5, 18.0, 15.0, 13.5, 13.0, 12.0, 11.5, 12.0, 11.5, 11.0, 12.5, 11.0, 11.0];
    for (original, apart, shown) in [(46.8, 1.0, tired), (53.4, 2.0, careful)] {
        let days = (0..).map(|n| 4.0 + apart * f64::from(n));
        let main: Vec<_> = days.zip(shown.iter().copied()).collect();
        let found = each(&record(Family::Lager, original, &main), 3);
        let finished: Vec<_> = found.iter().map(|found| found.state == State::Finished).collect();
        let first = finished.iter().position(|finished| *finished).expect("a finish");
        assert!(finished[first..].iter().all(|finished| *finished), "{original}: {finished:?}");
    }
}

/// Beer that falls on after it was called finished is taken back all the same.
#[test]
fn a_fall_takes_a_finish_back() {
    let mut ale = record(Family::CleanAle, 50.0, &[(3.0, 22.0), (8.0, 11.0), (11.0, 11.0)]);
    assert_eq!(stands(&ale).state, State::Finished);
    ale.main.extend([(12.0, 9.5), (13.0, 8.0), (14.0, 6.5)].map(|(day, sg)| seen(day, sg)));
    assert_ne!(stands(&ale).state, State::Finished, "{:?}", stands(&ale));
}
