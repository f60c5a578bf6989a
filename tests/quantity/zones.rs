//! Laws of time zones: what a date field gives, and what the clock there shows.

use crate::support::cases;
use fermentside::quantity::{Moment, MomentError, Zone};
use proptest::prelude::*;

fn at(text: &str) -> Moment {
    text.parse().expect("a moment")
}

/// Central Europe in 2026: clocks forward on 29 March at 01:00Z, back on 25 October at 01:00Z.
fn central_europe() -> Zone {
    let change = |text| at(text).minutes_since_epoch();
    let spring = (change("2026-03-29T01:00+00:00"), 120);
    let autumn = (change("2026-10-25T01:00+00:00"), 60);
    Zone::new(60, [autumn, spring])
}

#[test]
fn each_half_of_the_year_has_its_offset() {
    let zone = central_europe();
    for (text, moment) in [
        ("2020-07-01T12:00", "2020-07-01T12:00+01:00"),
        ("2026-03-29T01:59", "2026-03-29T01:59+01:00"),
        ("2026-03-29T03:00", "2026-03-29T03:00+02:00"),
        ("2026-07-01T12:00:30", "2026-07-01T12:00+02:00"),
        ("2026-10-25T01:59", "2026-10-25T01:59+02:00"),
        ("2026-10-25T03:00", "2026-10-25T03:00+01:00"),
    ] {
        assert_eq!(zone.local(text).expect(text).to_string(), moment);
        assert_eq!(zone.offset_at(at(moment).minutes_since_epoch()), at(moment).offset_minutes());
    }
}

#[test]
fn the_hour_left_out_in_spring_moves_on() {
    let zone = central_europe();
    for (text, moment) in [
        ("2026-03-29T02:00", "2026-03-29T03:00+02:00"),
        ("2026-03-29T02:30", "2026-03-29T03:30+02:00"),
        ("2026-03-29T02:59", "2026-03-29T03:59+02:00"),
    ] {
        assert_eq!(zone.local(text).expect(text).to_string(), moment);
    }
}

#[test]
fn the_hour_there_twice_in_autumn_is_the_first() {
    let zone = central_europe();
    for text in ["2026-10-25T02:00", "2026-10-25T02:59"] {
        assert_eq!(zone.local(text).expect(text).offset_minutes(), 120, "{text}");
    }
    // The second of them is still shown as what it is.
    let second = at("2026-10-25T01:30+00:00");
    assert_eq!(zone.shown(second).to_string(), "2026-10-25T02:30+01:00");
}

#[test]
fn the_ends_of_the_calendar_stop_nothing() {
    let text = "9999-12-31T23:59";
    for ahead in [-12 * 60, -60, 0, 60, 14 * 60, i32::MIN, i32::MAX] {
        let zone = Zone::fixed(ahead);
        let moment = zone.local(text).expect("a moment");
        assert_eq!(moment.local_text(), text);
        assert_eq!(moment.to_string().parse(), Ok(moment));
        assert_eq!(zone.shown(moment), moment);
        // No clock further east has a day to show then.
        assert_eq!(Zone::fixed(15 * 60).shown(at("9999-12-31T23:59+00:00")).offset_minutes(), 0);
    }
    let changes = [(i64::MAX, 60), (i64::MIN, -60)];
    assert_eq!(Zone::new(0, changes).local(text).expect("a moment").offset_minutes(), -60);
    assert_eq!(Zone::fixed(0).local("2026-02-30T10:00"), Err(MomentError::NoSuchTime));
    assert_eq!(Zone::fixed(0).local("today"), Err(MomentError::Form));
}

/// Zones that change by up to two hours, weeks apart.
fn zones() -> impl Strategy<Value = Zone> {
    let first = 24_000_000_i64..40_000_000;
    let more = prop::collection::vec((10_000_i64..300_000, -120_i32..=120), 0..6);
    (first, -720_i32..=840, more).prop_map(|(mut from, first, more)| {
        let changes = more.into_iter().map(|(after, by)| {
            from += after;
            (from, first + by)
        });
        Zone::new(first, changes.collect::<Vec<_>>())
    })
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn what_the_clock_shows_leads_back(zone in zones(), utc in 23_000_000_i64..43_000_000) {
        let there = Moment::from_utc(utc, zone.offset_at(utc)).expect("a moment");
        prop_assert_eq!(zone.shown(Moment::from_utc(utc, 0).expect("a moment")), there);
        prop_assert_eq!(there.minutes_since_epoch(), utc);
        let back = zone.local(&there.local_text()).expect("a moment");
        // The same minute, or the first of the two that looked like it.
        prop_assert_eq!(back.local_text(), there.local_text());
        prop_assert!(back <= there);
        prop_assert_eq!(zone.shown(back), back);
    }

    #[test]
    fn every_text_of_a_time_is_one_there(zone in zones(), clock in 23_000_000_i64..43_000_000) {
        let text = Moment::from_utc(clock, 0).expect("a moment").local_text();
        let there = zone.local(&text).expect("a moment");
        prop_assert_eq!(zone.shown(there), there);
        let moved = there.minutes_since_epoch() + i64::from(there.offset_minutes()) - clock;
        prop_assert!((0..=240).contains(&moved), "{} became {}", text, there);
    }

    #[test]
    fn no_text_and_no_zone_stops_the_reading(
        text in prop_oneof![any::<String>(), "[0-9]{4}-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]"],
        first in any::<i32>(),
        changes in prop::collection::vec(any::<(i64, i32)>(), 0..4),
    ) {
        let zone = Zone::new(first, changes);
        if let Ok(moment) = zone.local(&text) {
            prop_assert_eq!(moment.to_string().parse::<Moment>(), Ok(moment));
        }
    }
}
