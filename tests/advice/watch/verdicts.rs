//! The verdicts as a table: what is read on which day, and what is said. Each row was worked on paper by
//! the rules at the head of `advice::watch`; the readings are invented.

use fermentside::advice::family::Family::{self, CleanAle, Lager, Saison};
use fermentside::advice::watch::State::{
    CannotTell, Finished, LooksStuck, NotStarted, NotYet, OneMore, Slow,
};
use fermentside::advice::watch::forecast::Refusal;
use fermentside::advice::watch::with_forecast::judge_with_forecast;
use fermentside::advice::watch::{Course, Look, Measure, Next, Reason, Refracted, State, judge};
use fermentside::quantity::{Estimate, Hours, Measured, Moment, Plato, SpecificGravity};

fn at(day: f64) -> Moment {
    let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    start.after(Hours::nearest(day * 24.0))
}

/// State, yeast, readings of the beer and of its satellite, and what is next.
type Row = (State, Family, &'static str, &'static str, (char, f64));

/// `days : points`, with blanks between; half a division of a fine hydrometer (0.001) is the error.
fn looks(text: &str) -> Vec<Look> {
    let one = |reading: &str| {
        let (day, points) = reading.split_once(':').expect("a colon");
        let gravity = 1.0 + points.parse::<f64>().expect("points") / 1000.0;
        Look {
            at: at(day.parse().expect("days")),
            gravity: Estimate::new(SpecificGravity::nearest(gravity), 0.0005),
            beer: None,
        }
    };
    text.split_whitespace().map(one).collect()
}

/// Wort of 1.048 pitched on day 0, so that a clean ale is expected at 9.5 to 13 points.
fn course(family: Family, main: &str, satellite: &str) -> Course {
    Course {
        main: looks(main),
        satellite: looks(satellite),
        original: Some(Estimate::new(SpecificGravity::literal(1.048), 0.0005)),
        pitched: Some(at(0.0)),
        ..Course::of(family)
    }
}

/// The day before which nothing is to be done, and what is to be done.
fn next(course: &Course) -> (char, f64) {
    let day = |moment: Moment| moment.since(at(0.0)).days();
    match judge(course).advice.next {
        Next::ReadAgain(moment) => ('r', day(moment)),
        Next::Rouse(moment) => ('s', day(moment)),
        Next::LookForSigns(moment) => ('l', day(moment)),
        Next::ReadFirst => ('f', 0.0),
        Next::Bottle => ('b', 0.0),
        Next::PitchAgain => ('p', 0.0),
    }
}

#[test]
fn the_table() {
    // r: read again on that day; s: go through the steps, read on that day; l: look; p: pitch; b: bottle.
    let table: &[Row] = &[
        // Not started.
        (NotStarted, CleanAle, "0.7:48", "", ('l', 1.0)),
        (NotStarted, CleanAle, "-0.1:48 1.5:48", "", ('r', 2.0)),
        (NotStarted, CleanAle, "2:47.5", "", ('r', 3.0)),
        (NotStarted, CleanAle, "1:48 2:48 3:48", "", ('p', 0.0)),
        (NotStarted, Lager, "3:48", "", ('r', 4.0)),
        (NotStarted, Lager, "4:48", "", ('p', 0.0)),
        // Not yet.
        (NotYet, CleanAle, "3:24 6:14", "", ('r', 8.0)),
        (NotYet, CleanAle, "2:40 4:20", "3:10 4:10", ('r', 6.0)),
        (NotYet, Lager, "7:30 10:22", "", ('r', 13.0)),
        (NotYet, CleanAle, "6:16 7:14 8:13", "", ('r', 10.0)),
        // Slow.
        (Slow, CleanAle, "6:15 12:12.5", "", ('r', 14.0)),
        (Slow, CleanAle, "9:14 12:13 15:12 18:11", "", ('r', 20.0)),
        (Slow, CleanAle, "3:13 6:13 9:12 12:12 15:11 18:11 21:10", "", ('r', 23.0)),
        (Slow, Lager, "14:15 17:14 20:13 23:12", "", ('r', 26.0)),
        // Looks stuck.
        (LooksStuck, CleanAle, "9:22 12:22", "", ('s', 15.0)),
        (LooksStuck, CleanAle, "9:19 12:19", "4:10 5:10", ('s', 15.0)),
        (LooksStuck, Lager, "12:20 15:20", "", ('s', 18.0)),
        (LooksStuck, CleanAle, "9:19 12:19", "4:12", ('s', 15.0)),
        // One more.
        (OneMore, CleanAle, "2:10 5:10", "", ('r', 7.0)),
        (OneMore, CleanAle, "9:15 12:15", "", ('r', 14.0)),
        (OneMore, CleanAle, "9:12 12:12", "4:10 5:10", ('r', 14.0)),
        // A satellite read once cannot call a beer finished that stands high, nor stuck beside it.
        (OneMore, CleanAle, "9:19 12:19", "4:18", ('r', 14.0)),
        // A satellite that never fermented is no end, however steady.
        (OneMore, CleanAle, "9:37 12:36.5", "2:36 3:36", ('r', 14.0)),
        // Read once and low, it takes the upper side off the range.
        (OneMore, CleanAle, "9:13 12:13", "4:10", ('r', 14.0)),
        // Finished.
        (Finished, CleanAle, "9:10 12:10", "", ('b', 0.0)),
        (Finished, CleanAle, "9:19 12:19", "4:18 5:18", ('b', 0.0)),
        (Finished, Lager, "12:11 15:11", "", ('b', 0.0)),
        (Finished, CleanAle, "4:20 9:10 12:10", "", ('b', 0.0)),
        (Finished, CleanAle, "6:12 9:10.5 12:10 15:10 18:10", "", ('b', 0.0)),
        (Finished, CleanAle, "4:14 12:10 15:10", "", ('b', 0.0)),
        (Finished, Saison, "18:4 25:4", "", ('b', 0.0)),
        // Can't tell.
        (CannotTell, CleanAle, "", "", ('f', 0.0)),
        (CannotTell, CleanAle, "-0.1:48", "", ('r', 3.0)),
        (CannotTell, CleanAle, "9:10", "", ('r', 11.0)),
        (CannotTell, CleanAle, "9:10 9.5:10", "", ('r', 11.0)),
        (CannotTell, CleanAle, "9:10 12:13", "", ('r', 14.0)),
        (CannotTell, Saison, "20:4 23:4", "", ('r', 27.0)),
    ];
    for (row, (state, family, main, satellite, then)) in table.iter().enumerate() {
        let course = course(*family, main, satellite);
        let found = judge(&course);
        assert_eq!(found.state, *state, "row {row}: {main} / {satellite}: {found:?}");
        assert_eq!(next(&course), *then, "row {row}: {main} / {satellite}: {found:?}");
        assert_eq!(found.settles.is_none(), *state == Finished || main.is_empty(), "row {row}");
    }
}

#[test]
fn a_satellite_read_once_is_read_again_a_day_later() {
    let once = judge(&course(CleanAle, "9:19 12:19", "4:18"));
    let settles = once.settles.expect("a measurement");
    assert_eq!((settles.by, settles.at), (Measure::ReadSatellite, at(5.0)));
    let unproven = |reason: &Reason| matches!(reason, Reason::SatelliteUnproven { have: 1, .. });
    assert!(once.advice.reasons.iter().any(unproven), "{once:?}");
}

#[test]
fn a_high_end_with_its_satellite_beside_it_is_the_worts_own() {
    let high = judge(&course(CleanAle, "9:19 12:19", "4:18 5:18"));
    let own = |reason: &Reason| matches!(reason, Reason::WortEndsHigh(_));
    assert!(high.advice.reasons.iter().any(own), "{high:?}");
    assert!(!judge(&course(CleanAle, "9:10 12:10", "4:10 5:10")).advice.reasons.iter().any(own));
}

#[test]
fn the_satellites_error_lowers_the_end_that_the_rest_is_counted_from() {
    let of = |sigma: f64| {
        let mut course = course(CleanAle, "8:10 9:10", "4:10 5:10");
        for look in &mut course.satellite {
            look.gravity = Estimate::new(look.gravity.value(), sigma);
        }
        judge(&course).points_left.expect("a bound").points()
    };
    // 10 + 1.96 × 0.5 less 10 − 1 − 1.96 σ.
    assert!((of(0.0005) - 2.96).abs() < 1e-6, "{}", of(0.0005));
    assert!((of(0.001) - 3.94).abs() < 1e-6, "{}", of(0.001));
}

#[test]
fn what_was_added_later_voids_the_end_and_waits_longer() {
    let fed = |day: f64, main: &str| Course {
        added: Some(at(day)),
        ..course(CleanAle, main, "4:10 5:10")
    };
    // What was read before says nothing of the beer since.
    assert_eq!(judge(&fed(10.0, "6:10 9:10")).state, CannotTell);
    assert_eq!(judge(&fed(10.0, "9:10 12:12 14:10")).state, CannotTell);
    // Quiet for a week, but not yet two weeks since.
    let early = judge(&fed(10.0, "12:10 20:10"));
    assert_eq!((early.state, early.end), (OneMore, None));
    assert_eq!(judge(&fed(10.0, "12:10 20:10 27:10")).state, Finished);
    assert_eq!(judge(&fed(10.0, "20:20 27:20")).state, LooksStuck);
}

#[test]
fn a_refractometer_only_makes_it_less_finished() {
    let with = |main: &str, shown: &[(f64, f64)]| {
        let refracted =
            |&(day, brix): &(f64, f64)| Refracted { at: at(day), shown: Plato::literal(brix) };
        judge(&Course {
            refracted: shown.iter().map(refracted).collect(),
            ..course(CleanAle, main, "")
        })
    };
    assert_eq!(with("9:10 12:10", &[(10.0, 5.6), (12.0, 5.6)]).state, Finished);
    let falls = with("9:10 12:10", &[(10.0, 6.4), (12.0, 5.6)]);
    assert_eq!((falls.state, falls.points_left.is_some()), (NotYet, true));
    assert_eq!(with("9:22 12:22", &[(10.0, 6.4), (12.0, 5.6)]).state, Slow);
    // Steady, it proves nothing; old news neither.
    assert_eq!(with("9:10", &[(9.0, 5.6), (12.0, 5.6)]).state, CannotTell);
    assert_eq!(with("9:10 12:10", &[(4.0, 9.0), (6.0, 6.0)]).state, Finished);
}

#[test]
fn the_more_cautious_of_rule_and_forecast_wins() {
    // Down to its end within two days and a point lower since: level enough for the rule, but the curve
    // through all four readings still goes down.
    let falling = course(CleanAle, "4:30 6:21 7:13 9:12", "");
    let (rule, both) = (judge(&falling), judge_with_forecast(&falling).finish);
    assert_eq!((rule.state, both.state), (Finished, OneMore));
    let ahead = |reason: &Reason| matches!(reason, Reason::ForecastAhead(_));
    assert!(both.advice.reasons.iter().any(ahead), "{both:?}");
    assert!(both.points_left > rule.points_left, "{both:?}");
    assert!(matches!(both.advice.next, Next::ReadAgain(moment) if moment > at(9.0)));
    assert!(both.settles.is_some_and(|settles| settles.by == Measure::ReadBeer));
    // Level for three days where such beer ends: both agree.
    let level = course(CleanAle, "3:30 6:14 9:10 12:10", "");
    assert_eq!(judge_with_forecast(&level).finish.state, Finished);
    // Two readings are no forecast, and the rule stands alone.
    let short = course(CleanAle, "9:10 12:10", "");
    assert_eq!(judge_with_forecast(&short).finish, judge(&short));
    // Nothing is foretold of what was fed later.
    let fed = Course { added: Some(at(1.0)), ..level };
    assert_eq!(judge_with_forecast(&fed).forecast, Err(Refusal::MayGoOn));
}
