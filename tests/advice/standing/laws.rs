//! What no record may ever make the standing say. `CASES=100000` tries so many.

use crate::support::{hour, record as any};
use fermentside::advice::family::Family;
use fermentside::advice::own_ends::Ended;
use fermentside::advice::standing::{Doubt, Record, Seen, Standing, State, SugarFrom};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, SpecificGravity};
use proptest::prelude::*;
use proptest::test_runner::Config;

fn cases() -> Config {
    let wanted = std::env::var("CASES").ok().and_then(|n| n.parse().ok());
    let usual = if cfg!(debug_assertions) { 8 } else { 400 };
    Config { cases: wanted.unwrap_or(usual), failure_persistence: None, ..Config::default() }
}

/// Long after every reading.
fn now() -> Moment {
    hour(24.0 * 90.0)
}

fn gravity(points: f64) -> SpecificGravity {
    SpecificGravity::nearest(1.0 + points / 1000.0)
}

fn seen(day: f64, points: f64, sigma: f64, beer: Option<f64>) -> Seen {
    Seen {
        at: hour(24.0 * day),
        gravity: Estimate::new(gravity(points), sigma / 1000.0),
        beer: beer.map(Celsius::nearest),
        instrument: 0,
        doubtful: false,
    }
}

/// A fall with a level end, by an eye that is off by half points: such beer is dosed often enough for
/// the laws to bite.
fn record() -> impl Strategy<Value = Record> {
    let family = prop::sample::select(vec![
        Family::CleanAle,
        Family::EnglishAle,
        Family::Unknown,
        Family::Lager,
        Family::Kveik,
        Family::Saison,
    ]);
    let end = 6..18_i32;
    let sigma = prop::sample::select(vec![0.3, 0.5, 0.7, 1.0, 1.5]);
    let level = prop::collection::vec((0.5..5.0_f64, -1..=1_i32), 1..6);
    let early = prop::option::weighted(0.6, (2.0..5.0_f64, 20..36_i32));
    let beer = prop::option::weighted(0.5, 8.0..22.0_f64);
    let original = prop::option::weighted(0.9, 42..58_i32);
    let satellite = prop::option::weighted(0.3, -2..=1_i32);
    let stated = prop::option::weighted(0.2, 8..16_i32);
    let own = prop::option::weighted(0.2, (8..16_i32, 44..60_i32));
    (family, end, sigma, level, early, beer, (original, satellite, (stated, own))).prop_map(
        |(family, end, sigma, level, early, beer, (original, satellite, (stated, own)))| {
            let end = f64::from(end);
            let mut record = Record::of(family, hour(0.0));
            record.pitched = Some(hour(0.0));
            record.original = original.map(|og| Estimate::new(gravity(f64::from(og)), 0.001));
            record.stated_end = stated.map(|end| gravity(f64::from(end)));
            let ended = |(end, start)| Ended {
                start: gravity(f64::from(start)),
                end: gravity(f64::from(end)),
            };
            record.own_ends = own.map(ended).into_iter().cycle().take(3).collect();
            let mut day = 5.0;
            if let Some((at, points)) = early {
                record.main.push(seen(at, f64::from(points), sigma, beer));
            }
            for (after, off) in level {
                day += after;
                record.main.push(seen(day, end + 0.5 * f64::from(off), sigma, beer));
            }
            if let Some(off) = satellite {
                for day in [3.0, 4.5] {
                    record.satellite.push(seen(day, end + f64::from(off), 0.7, Some(22.0)));
                }
            }
            record
        },
    )
}

fn dosed(record: &Record) -> bool {
    Standing::of(record, now()).state == State::Finished
}

fn last(record: &Record) -> Seen {
    *record.main.iter().max_by_key(|seen| seen.at).expect("a reading")
}

fn with_last(record: &Record, change: impl Fn(Seen) -> Seen) -> Record {
    let at = last(record).at;
    let mut other = record.clone();
    for seen in &mut other.main {
        if seen.at == at {
            *seen = change(*seen);
        }
    }
    other
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn an_equal_later_reading_never_takes_a_dose_away(record in record(), days in 0.1..9.0_f64) {
        let last = last(&record);
        let mut later = record.clone();
        later.main.push(Seen { at: last.at.after(Hours::nearest(24.0 * days)), ..last });
        prop_assert!(!dosed(&record) || dosed(&later));
    }

    #[test]
    fn a_rougher_colder_or_doubtful_one_never_gives_a_dose(
        record in record(),
        times in 1.1..6.0_f64,
        colder in 1.0..15.0_f64,
    ) {
        let before = dosed(&record);
        let rougher = with_last(&record, |seen| Seen {
            gravity: Estimate::new(seen.gravity.value(), times * seen.gravity.sigma()),
            ..seen
        });
        let cold = with_last(&record, |seen| Seen {
            beer: seen.beer.map(|beer| Celsius::nearest(beer.value() - colder)),
            ..seen
        });
        let doubtful = with_last(&record, |seen| Seen { doubtful: true, ..seen });
        for (what, other) in [("rougher", rougher), ("colder", cold), ("doubtful", doubtful)] {
            prop_assert!(before || !dosed(&other), "{what}");
        }
    }

    #[test]
    fn a_promise_is_kept_on_its_day_and_on_a_later_one(record in record(), days in 0.0..9.0_f64) {
        let now = last(&record).at;
        let SugarFrom::About(at) = Standing::of(&record, now).sugar.from else { return Ok(()) };
        for at in [at, at.after(Hours::nearest(24.0 * days))] {
            let mut later = record.clone();
            later.main.push(Seen { at, beer: None, ..last(&record) });
            prop_assert_eq!(Standing::of(&later, at).state, State::Finished);
        }
    }

    /// Whatever stands in a record: no error, the same by any order, and never a dose but by sound readings.
    #[test]
    fn any_record_is_judged_and_only_sound_readings_give_a_dose(record in any()) {
        let found = Standing::of(&record, now());
        let mut other = record.clone();
        other.main.reverse();
        other.satellite.reverse();
        other.refracted.reverse();
        prop_assert_eq!(&found, &Standing::of(&other, now()));
        let finished = found.state == State::Finished;
        prop_assert!(!finished || found.left.bounded);
        // Equal ones later never take it away; one that is rougher never gives it.
        let Some(last) = record.main.iter().copied().max_by_key(|seen| seen.at) else {
            return Ok(());
        };
        let mut later = record.clone();
        let (at, beer) = (last.at.after(Hours::literal(60.0)), None);
        later.main.push(Seen { at, beer, ..last });
        let alone = record.main.iter().filter(|seen| seen.at == last.at).count() == 1;
        prop_assert!(!finished || !alone || dosed(&later), "{found:?}");
        let rougher = with_last(&record, |seen| Seen {
            gravity: Estimate::new(seen.gravity.value(), 3.0 * seen.gravity.sigma()),
            ..seen
        });
        prop_assert!(finished || !dosed(&rougher));
        // Through a refractometer it can only become less finished.
        let unseen = dosed(&Record { refracted: vec![], ..record.clone() });
        prop_assert!(!finished || unseen);
    }

    #[test]
    fn nothing_is_finished_without_two_sound_readings_two_nights_apart(record in record()) {
        let found = Standing::of(&record, now());
        if found.state == State::Finished {
            let sound = || record.main.iter().filter(|seen| {
                !seen.doubtful && seen.beer.is_none_or(|beer| beer.value() > record.range().from.value() - 7.0)
            });
            let first = sound().map(|seen| seen.at).min().expect("a sound reading");
            let last = sound().map(|seen| seen.at).max().expect("a sound reading");
            prop_assert!(last.since(first).value() >= 42.0);
            prop_assert!(found.left.bounded);
        }
    }

    #[test]
    fn the_order_of_readings_does_not_matter(record in record()) {
        let mut other = record.clone();
        other.main.reverse();
        other.satellite.reverse();
        prop_assert_eq!(Standing::of(&record, now()), Standing::of(&other, now()));
    }

    #[test]
    fn what_is_foretold_is_in_order(record in record()) {
        let found = Standing::of(&record, now());
        let shares = [found.left.ended, found.left.tail, found.left.stalled, found.left.eaten];
        let sum: f64 = shares.iter().map(|part| part.share.value()).sum();
        prop_assert!((sum - 1.0).abs() < 1e-6, "{sum}");
        let outlook = found.outlook.expect("readings");
        prop_assert!(outlook.one_point.from <= outlook.one_point_middle);
        prop_assert!(outlook.one_point_middle <= outlook.one_point.to);
        prop_assert!(outlook.end.end.contains(outlook.end.middle));
        for two in outlook.band.windows(2) {
            prop_assert!(two[0].low <= two[0].middle && two[0].middle <= two[0].high);
            prop_assert!(two[1].low <= two[0].low && two[1].high <= two[0].high);
        }
    }

    #[test]
    fn a_date_ahead_of_now_is_doubted_and_proves_nothing(record in record()) {
        let last = last(&record);
        let now = last.at.after(Hours::literal(-2.0));
        let ahead = Standing::of(&record, now);
        prop_assert!(ahead.doubts.contains(&Doubt::Ahead(last.at)));
        prop_assert!(ahead.state != State::Finished || dosed(&record));
    }
}
