//! The verdicts as a table: what is read on which day, and what is said. The readings are invented.

use crate::support::hour;
use fermentside::advice::family::Family::{self, CleanAle, Lager, Saison};
use fermentside::advice::standing::State::{
    self, CannotTell, Falling, Finished, Level, LooksStuck, NotStarted, Slow,
};
use fermentside::advice::standing::{Next, Reason, Record, Seen, Standing, SugarFrom};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, Plato, SpecificGravity};

/// The state, the yeast, the beer's readings, the satellite's, and what is to be done.
type Row = (State, Family, &'static str, &'static str, (char, f64));

/// `days : points`, with blanks between; half a division of a fine hydrometer (0.001) is the error.
fn seen(text: &str) -> Vec<Seen> {
    let one = |reading: &str| {
        let (day, points) = reading.split_once(':').expect("a colon");
        let gravity = 1.0 + points.parse::<f64>().expect("points") / 1000.0;
        Seen {
            at: hour(24.0 * day.parse::<f64>().expect("days")),
            gravity: Estimate::new(SpecificGravity::nearest(gravity), 0.0005),
            beer: None,
            instrument: 0,
            doubtful: false,
        }
    };
    text.split_whitespace().map(one).collect()
}

/// Wort of 1.048 pitched at noon of day 0, so that a clean ale is expected at 9 to 13.6 points.
fn record(family: Family, main: &str, satellite: &str) -> Record {
    Record {
        main: seen(main),
        satellite: seen(satellite),
        original: Some(Estimate::new(SpecificGravity::literal(1.048), 0.0005)),
        pitched: Some(hour(0.0)),
        ..Record::of(family, hour(0.0))
    }
}

/// Long after every reading.
fn judged(record: &Record) -> Standing {
    Standing::of(record, hour(24.0 * 90.0))
}

/// What is to be done, and the hundredth of a day before which it is not.
fn next(found: &Standing) -> (char, f64) {
    let day = |moment: Moment| (100.0 * moment.since(hour(0.0)).days()).round() / 100.0;
    match found.next {
        Next::ReadAgain(moment) => ('r', day(moment)),
        Next::Rouse(moment) => ('s', day(moment)),
        Next::LookForSigns(moment) => ('l', day(moment)),
        Next::ReadFirst(moment) => ('f', day(moment)),
        Next::Bottle => ('b', 0.0),
        Next::PitchAgain => ('p', 0.0),
        other => panic!("{other:?}"),
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
        // Falling: two nights on, three for lager, and not before it is likely to have ended.
        (Falling, CleanAle, "3:24 6:14", "", ('r', 7.75)),
        (Falling, CleanAle, "2:40 4:20", "3:10 4:10", ('r', 6.68)),
        (Falling, Lager, "7:30 10:22", "", ('r', 17.0)),
        (Falling, CleanAle, "6:16 7:14 8:13", "", ('r', 9.75)),
        // Slow, or drifting down though no two neighbours show it.
        (Slow, CleanAle, "6:15 12:12.5", "", ('r', 13.75)),
        (Slow, CleanAle, "9:14 12:13 15:12 18:11", "", ('r', 19.75)),
        (Slow, CleanAle, "3:13 6:13 9:12 12:12 15:11 18:11 21:10", "", ('r', 22.75)),
        (Slow, Lager, "14:15 17:14 20:13 23:12", "", ('r', 25.75)),
        // Looks stuck.
        (LooksStuck, CleanAle, "9:22 12:22", "", ('s', 15.0)),
        (LooksStuck, CleanAle, "9:19 12:19", "4:10 5:10", ('s', 15.0)),
        (LooksStuck, CleanAle, "9:19 12:19", "4:12", ('s', 15.0)),
        // A satellite that never fermented proves no end, however steady.
        (LooksStuck, CleanAle, "9:37 12:36.5", "2:36 3:36", ('s', 15.0)),
        // Level: the day is that on which one more equal reading will do, or a week on when that is sooner.
        (Level, CleanAle, "2:10 5:10", "", ('r', 6.0)),
        (Level, CleanAle, "9:10 9.5:10", "", ('r', 11.0)),
        (Level, CleanAle, "9:15 12:15", "", ('r', 19.0)),
        (Level, CleanAle, "9:13 12:13", "4:10", ('r', 19.0)),
        (Level, Lager, "12:20 15:20", "", ('r', 17.75)),
        // A satellite read once proves no end.
        (LooksStuck, CleanAle, "9:19 12:19", "4:18", ('s', 15.0)),
        // A jar read so early may yet fall, though it was read twice.
        (Level, CleanAle, "9:19 12:19", "4:18 5:18", ('r', 19.0)),
        // Two points over its jar is a little much.
        (Level, CleanAle, "9:12 12:12", "4:10 5:10", ('r', 19.0)),
        // One of the two is wrong.
        (Level, CleanAle, "9:10 12:13", "", ('r', 13.75)),
        (Level, Saison, "18:4 25:4", "", ('r', 32.0)),
        (Level, Saison, "20:4 23:4", "", ('r', 29.67)),
        // Finished.
        (Finished, CleanAle, "9:10 12:10", "", ('b', 0.0)),
        (Finished, CleanAle, "9:12 12:12", "4:11 5:11", ('b', 0.0)),
        (Finished, Lager, "12:11 15:11", "", ('b', 0.0)),
        (Finished, CleanAle, "4:20 9:10 12:10", "", ('b', 0.0)),
        (Finished, CleanAle, "6:12 9:10.5 12:10 15:10 18:10", "", ('b', 0.0)),
        (Finished, CleanAle, "4:14 12:10 15:10", "", ('b', 0.0)),
        // Can't tell.
        (CannotTell, CleanAle, "", "", ('f', 3.0)),
        (CannotTell, CleanAle, "-0.1:48", "", ('f', 3.0)),
        (CannotTell, CleanAle, "9:10", "", ('r', 10.75)),
    ];
    for (row, (state, family, main, satellite, then)) in table.iter().enumerate() {
        let found = judged(&record(*family, main, satellite));
        let is = (found.state, next(&found));
        assert_eq!(is, (*state, *then), "row {row}: {main} / {satellite}: {:?}", found.reasons);
        let promised = matches!(found.sugar.from, SugarFrom::Now | SugarFrom::About(_));
        assert!(promised || *state != Finished, "row {row}");
    }
}

#[test]
fn a_satellite_read_once_is_read_again_a_day_later() {
    let once = judged(&record(CleanAle, "9:19 12:19", "4:18"));
    let again = hour(24.0 * 5.0);
    let lowest = SpecificGravity::nearest(1.018);
    let said = Reason::SatelliteUnproven(1, lowest, again);
    assert!(once.reasons.contains(&said), "{:?}", once.reasons);
}

#[test]
fn nothing_is_asked_for_at_night() {
    for hours in [200.0, 203.0, 207.0, 209.0, 213.0, 217.0, 221.0] {
        let mut read = record(CleanAle, "3:24 6:14", "");
        read.main[1].at = hour(hours);
        let Next::ReadAgain(at) = judged(&read).next else { panic!("falling") };
        assert!((8..21).contains(&at.parts().3), "{at}");
        assert!(at.since(hour(hours)).value() >= 42.0, "{at}");
    }
}

/// Each mark is 0.2 °Bx; a fall of more since the last reading shows that it still ferments.
#[test]
fn a_refractometer_only_makes_beer_less_finished() {
    let level = record(CleanAle, "9:10 12:10", "");
    let with = |shown: &[(f64, f64)]| {
        let refracted = shown.iter().map(|&(day, brix)| (hour(24.0 * day), Plato::nearest(brix)));
        judged(&Record { refracted: refracted.collect(), ..level.clone() })
    };
    let falls = with(&[(10.0, 6.4), (12.5, 6.0)]);
    assert_eq!(falls.state, Falling);
    assert!(!falls.left.bounded);
    assert!(falls.reasons.contains(&Reason::RefractometerFalls(Plato::nearest(6.4 - 6.0))));
    let steady = with(&[(10.0, 6.2), (12.5, 6.0)]);
    assert_eq!(steady.state, Finished);
    assert!(steady.reasons.contains(&Reason::RefractometerSteady));
    // What was shown before the last reading, or within a day, says nothing of now.
    for shown in [&[(8.0, 7.0), (10.0, 6.0)][..], &[(12.2, 6.4), (12.5, 6.0)], &[(13.0, 6.0)]] {
        assert_eq!(with(shown).state, Finished, "{shown:?}");
    }
    // A later reading of the beer that is level settles it.
    let later = Record { main: seen("9:10 12:10 15:10"), ..level.clone() };
    let shown = vec![(hour(240.0), Plato::nearest(6.4)), (hour(300.0), Plato::nearest(6.0))];
    assert_eq!(judged(&Record { refracted: shown, ..later }).state, Finished);
    // No number of looks through it makes a finish.
    let alone = Record { main: vec![], ..level };
    let shown = (0..9).map(|n| (hour(240.0 + 48.0 * f64::from(n)), Plato::literal(6.0))).collect();
    assert_eq!(judged(&Record { refracted: shown, ..alone }).state, CannotTell);
}

/// Noted while it ferments, cold beer begins and ends slowly.
#[test]
fn what_was_added_later_waits_two_weeks() {
    let plain = record(CleanAle, "9:10 12:10 16:10", "");
    assert_eq!(judged(&plain).state, Finished);
    let fed = Record { added: Some(hour(24.0 * 8.0)), ..plain.clone() };
    let found = judged(&fed);
    assert_ne!(found.state, Finished);
    assert!(found.reasons.contains(&Reason::AddedLater(hour(24.0 * 8.0))));
    assert!(found.reasons.iter().any(|why| matches!(why, Reason::TooEarly(..))), "{found:?}");
}

#[test]
fn cold_beer_is_read_three_nights_apart() {
    let cold = |from: f64| {
        let mut read = record(CleanAle, "3:20 9:10", "");
        read.main.extend(seen("0:10").into_iter().map(|one| Seen { at: hour(24.0 * from), ..one }));
        read.main.iter_mut().for_each(|one| one.beer = Some(Celsius::literal(17.0)));
        read.main[2].beer = Some(Celsius::literal(14.5));
        judged(&read)
    };
    let near = cold(11.0);
    assert_ne!(near.state, Finished);
    let needed = Hours::literal(66.0);
    let said = |why: &Reason| matches!(why, Reason::TooNear(_, nights) if *nights == needed);
    assert!(near.reasons.iter().any(said), "{:?}", near.reasons);
}

/// The first reading is a slip, as such a yeast was level long before: two equal ones prove the end, and a third
/// however late.
#[test]
fn no_drift_is_seen_through_a_slip() {
    let mut read = record(Family::Kveik, "4.485:27 7.453:7", "");
    read.original = Some(Estimate::new(SpecificGravity::literal(1.042), 0.001));
    let SugarFrom::About(at) = judged(&read).sugar.from else { panic!("no day for the sugar") };
    for days in [0.0, 1.0, 2.0, 3.6, 5.0, 9.0] {
        let mut later = read.clone();
        later.main.push(Seen { at: at.after(Hours::nearest(24.0 * days)), ..read.main[1] });
        assert_eq!(judged(&later).state, Finished, "{days} days after it");
    }
}
