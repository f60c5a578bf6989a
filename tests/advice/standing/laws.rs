//! What no record may ever make the standing say. `CASES=100000` tries so many: each record is judged once, and
//! all laws start from that.

use crate::support::{hour, record as any};
use fermentside::advice::family::Family;
use fermentside::advice::own_ends::Ended;
use fermentside::advice::standing::{Doubt, Record, Seen, Standing, State, SugarFrom};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, SpecificGravity};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestCaseResult};
use std::cell::Cell;

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

/// A record, and how it stands at its last reading.
struct Case<'a> {
    record: &'a Record,
    found: &'a Standing,
    dosed: bool,
}

/// How often each law had something to say.
#[derive(Default)]
struct Told {
    dosed: Cell<usize>,
    promised: Cell<usize>,
    jars: Cell<usize>,
}

impl Case<'_> {
    fn an_equal_later_reading_never_takes_a_dose_away(&self, days: f64) -> TestCaseResult {
        let last = last(self.record);
        let mut later = self.record.clone();
        later.main.push(Seen { at: last.at.after(Hours::nearest(24.0 * days)), ..last });
        prop_assert!(!self.dosed || dosed(&later), "an equal later reading takes a dose away");
        Ok(())
    }

    fn a_rougher_colder_or_doubtful_one_never_gives_a_dose(
        &self,
        times: f64,
        colder: f64,
    ) -> TestCaseResult {
        let rougher = with_last(self.record, |seen| Seen {
            gravity: Estimate::new(seen.gravity.value(), times * seen.gravity.sigma()),
            ..seen
        });
        let cold = with_last(self.record, |seen| Seen {
            beer: seen.beer.map(|beer| Celsius::nearest(beer.value() - colder)),
            ..seen
        });
        let doubtful = with_last(self.record, |seen| Seen { doubtful: true, ..seen });
        for (what, other) in [("rougher", rougher), ("colder", cold), ("doubtful", doubtful)] {
            // What was not changed was judged.
            let same = other == *self.record;
            prop_assert!(self.dosed || same || !dosed(&other), "a {what} reading gives a dose");
        }
        Ok(())
    }

    fn a_promise_is_kept_on_its_day_and_on_a_later_one(
        &self,
        days: f64,
        told: &Told,
    ) -> TestCaseResult {
        let SugarFrom::About(at) = self.found.sugar.from else { return Ok(()) };
        told.promised.set(told.promised.get() + 1);
        for at in [at, at.after(Hours::nearest(24.0 * days))] {
            let mut later = self.record.clone();
            later.main.push(Seen { at, beer: None, ..last(self.record) });
            let state = Standing::of(&later, at).state;
            prop_assert_eq!(state, State::Finished, "a promise is broken on {}", at);
        }
        Ok(())
    }

    /// Begun at the last reading, read twice to the same gravity as the beer, and the beer once more beside it.
    fn a_satellite_that_is_named_as_sooner_settles_it(&self, told: &Told) -> TestCaseResult {
        let Some(takes) = self.found.sugar.with_satellite else { return Ok(()) };
        told.jars.set(told.jars.get() + 1);
        let last = last(self.record);
        let at = last.at.after(takes);
        let mut later = self.record.clone();
        for before in [24.0, 0.0] {
            let (at, beer) = (at.after(Hours::nearest(-before)), Some(Celsius::literal(22.0)));
            later.satellite.push(Seen { at, beer, ..last });
        }
        later.main.push(Seen { at, beer: None, ..last });
        let state = Standing::of(&later, at).state;
        prop_assert_eq!(state, State::Finished, "a satellite does not settle it by {}", at);
        Ok(())
    }

    fn nothing_is_finished_without_two_sound_readings_two_nights_apart(&self) -> TestCaseResult {
        let record = self.record;
        if self.dosed {
            let warm = |beer: Celsius| beer.value() > record.range().from.value() - 7.0;
            let sound =
                || record.main.iter().filter(|seen| !seen.doubtful && seen.beer.is_none_or(warm));
            let first = sound().map(|seen| seen.at).min().expect("a sound reading");
            let last = sound().map(|seen| seen.at).max().expect("a sound reading");
            prop_assert!(last.since(first).value() >= 42.0, "finished by one night");
            prop_assert!(self.found.left.bounded);
        }
        Ok(())
    }

    /// Nor does the clock: what is recorded is judged, and not the day on which it is looked at.
    fn the_order_of_readings_does_not_matter(&self) -> TestCaseResult {
        let mut other = self.record.clone();
        other.main.reverse();
        other.satellite.reverse();
        prop_assert_eq!(self.found, &Standing::of(&other, now()), "order and clock");
        Ok(())
    }

    fn what_is_foretold_is_in_order(&self) -> TestCaseResult {
        let left = &self.found.left;
        let shares = [left.ended, left.tail, left.stalled, left.eaten];
        let sum: f64 = shares.iter().map(|part| part.share.value()).sum();
        prop_assert!((sum - 1.0).abs() < 1e-6, "shares of {sum}");
        let outlook = self.found.outlook.as_ref().expect("readings");
        prop_assert!(outlook.one_point.from <= outlook.one_point_middle, "the day");
        prop_assert!(outlook.one_point_middle <= outlook.one_point.to, "the day");
        prop_assert!(outlook.end.end.contains(outlook.end.middle), "the end");
        for two in outlook.band.windows(2) {
            prop_assert!(two[0].low <= two[0].middle && two[0].middle <= two[0].high, "the band");
            prop_assert!(two[1].low <= two[0].low && two[1].high <= two[0].high, "it rises");
        }
        Ok(())
    }

    fn a_date_ahead_of_now_is_doubted_and_proves_nothing(&self) -> TestCaseResult {
        let last = last(self.record);
        let ahead = Standing::of(self.record, last.at.after(Hours::literal(-2.0)));
        prop_assert!(ahead.doubts.contains(&Doubt::Ahead(last.at)), "a date ahead");
        prop_assert!(ahead.state != State::Finished || self.dosed, "a date ahead proves");
        Ok(())
    }
}

/// A beer that falls and comes to rest, and what each law changes of it.
#[test]
fn beer_that_comes_to_rest_keeps_every_law() {
    let told = Told::default();
    proptest!(cases(), |(
        record in record(),
        later in (0.1..9.0_f64, 0.0..9.0_f64),
        worse in (1.1..6.0_f64, 1.0..15.0_f64),
    )| {
        let found = &Standing::of(&record, last(&record).at);
        let dosed = found.state == State::Finished;
        told.dosed.set(told.dosed.get() + usize::from(dosed));
        let case = Case { record: &record, found, dosed };
        case.an_equal_later_reading_never_takes_a_dose_away(later.0)?;
        case.a_rougher_colder_or_doubtful_one_never_gives_a_dose(worse.0, worse.1)?;
        case.a_promise_is_kept_on_its_day_and_on_a_later_one(later.1, &told)?;
        case.a_satellite_that_is_named_as_sooner_settles_it(&told)?;
        case.nothing_is_finished_without_two_sound_readings_two_nights_apart()?;
        case.the_order_of_readings_does_not_matter()?;
        case.what_is_foretold_is_in_order()?;
        case.a_date_ahead_of_now_is_doubted_and_proves_nothing()?;
    });
    let [dosed, promised, jars] = [told.dosed, told.promised, told.jars].map(Cell::into_inner);
    println!(
        "{dosed} of {} got their sugar, {promised} a day for it, {jars} sooner with a satellite",
        cases().cases
    );
    let tried = cases().cases as usize;
    assert!(tried < 100 || 20 * dosed > tried && 20 * promised > tried, "too few to tell");
}

proptest! {
    #![proptest_config(cases())]

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
        let unseen = !finished || record.refracted.is_empty()
            || dosed(&Record { refracted: vec![], ..record.clone() });
        prop_assert!(unseen);
    }
}
