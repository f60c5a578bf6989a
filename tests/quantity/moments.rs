//! Laws of moments: what is written reads back, and hours add up.

use crate::support::cases;
use fermentside::quantity::{Hours, Measured, Moment};
use proptest::prelude::*;

/// Any minute of the years a batch can lie in, on any clock.
fn moments() -> impl Strategy<Value = Moment> {
    (1970_i32..2100, 1_u8..=12, 1_u8..=28, 0_u8..24, 0_u8..60, -14 * 60..=14 * 60_i32).prop_map(
        |(year, month, day, hour, minute, ahead)| {
            let text = format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}");
            Moment::from_local(&text, ahead).expect("a moment")
        },
    )
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn what_is_written_reads_back(moment in moments()) {
        let text = moment.to_string();
        prop_assert_eq!(text.parse::<Moment>(), Ok(moment));
        prop_assert_eq!(text.parse::<Moment>().map(|m| m.to_string()), Ok(text));
        let stored = serde_json::to_string(&moment).expect("stored");
        prop_assert_eq!(serde_json::from_str::<Moment>(&stored).expect("read"), moment);
    }

    #[test]
    fn later_and_earlier_undo_each_other(moment in moments(), minutes in -600_000_i32..600_000) {
        let hours = Hours::literal(f64::from(minutes) / 60.0);
        let then = moment.after(hours);
        prop_assert!((then.since(moment).value() - hours.value()).abs() < 1e-9);
        prop_assert!((moment.since(then).value() + hours.value()).abs() < 1e-9);
        let back = Hours::literal(-hours.value());
        prop_assert_eq!(then.after(back), moment);
        prop_assert_eq!(then.minutes_since_epoch() - moment.minutes_since_epoch(), i64::from(minutes));
    }

    #[test]
    fn the_order_is_that_of_time(one in moments(), other in moments()) {
        if one.minutes_since_epoch() < other.minutes_since_epoch() {
            prop_assert!(one < other);
            prop_assert!(other.since(one).value() > 0.0);
        }
        prop_assert_eq!(one.cmp(&other), other.cmp(&one).reverse());
    }

    #[test]
    fn no_text_stops_the_reading(
        text in prop_oneof![any::<String>(), "[0-9T:+Z. -]{10,22}"], ahead in any::<i32>(),
    ) {
        let _ = Moment::from_local(&text, ahead);
        if let Ok(moment) = text.parse::<Moment>() {
            prop_assert_eq!(moment.to_string().parse::<Moment>(), Ok(moment));
        }
    }
}

#[test]
fn the_ends_of_the_calendar_stop_nothing() {
    for text in ["0000-01-01T00:00", "9999-12-31T23:59"] {
        for ahead in [-14 * 60, 0, 14 * 60] {
            let moment = Moment::from_local(text, ahead).expect("a moment");
            for hours in [Hours::MIN, Hours::MAX] {
                let then = moment.after(Hours::literal(hours));
                let _ = (then.since(moment), then < moment, then.to_string(), then.parts());
                let _ = then.minutes_since_epoch();
            }
        }
    }
}

#[test]
fn the_last_minute_of_the_calendar_is_a_moment_on_every_clock() {
    for ahead in [-25 * 60 - 59, -12 * 60, -1, 0, 1, 14 * 60, 25 * 60 + 59] {
        for text in ["0000-01-01T00:00", "9999-12-31T23:59"] {
            let moment = Moment::from_local(text, ahead).expect("a moment");
            assert_eq!(moment.to_string().parse::<Moment>(), Ok(moment));
            assert_eq!(moment.local_text(), text);
            assert_eq!(moment.utc_text().len(), "20260301T083000Z".len(), "{moment}");
            let noon = Moment::from_local("2026-03-01T12:00", -ahead).expect("a moment");
            assert_eq!(moment > noon, text.starts_with('9'), "{moment}");
            assert_eq!(moment.since(noon).value() > 0.0, text.starts_with('9'), "{moment}");
        }
    }
    let beyond = |hours| {
        let last: Moment = "9999-12-31T23:59-05:00".parse().expect("a moment");
        last.after(Hours::literal(hours)).to_string()
    };
    assert_eq!(beyond(1.0), "9999-12-31T23:59-05:00");
    assert_eq!(beyond(-1.0), "9999-12-31T22:59-05:00");
}

fn at(text: &str) -> Moment {
    text.parse().expect("a moment")
}

#[test]
fn reads_back_what_it_writes() {
    for text in ["2026-03-01T09:30+01:00", "2024-02-29T23:59-03:30", "1999-12-31T00:00+00:00"] {
        assert_eq!(at(text).to_string(), text);
    }
}

#[test]
fn hours_are_true_across_a_clock_change() {
    // The European spring change of 2026 is on 29 March.
    let before = at("2026-03-28T12:00+01:00");
    let after = at("2026-03-29T12:00+02:00");
    assert_eq!(after.since(before).value(), 23.0);
    assert!(before < after);
}

#[test]
fn refuses_what_is_no_time() {
    for text in [
        "",
        "2026-03-01",
        "2026-13-01T00:00+00:00",
        "2026-02-30T00:00+00:00",
        "2026-02-01T24:00+00:00",
        "2026-02-01 10:00+00:00",
        "2026-02-01T10:00Z",
        "२०२६-02-01T10:00+00:00",
    ] {
        assert!(text.parse::<Moment>().is_err(), "{text}");
    }
    assert!(Moment::from_local("2026-03-01T09:30:00", 60).is_ok());
}
