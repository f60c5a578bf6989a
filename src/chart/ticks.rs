//! Where an axis is marked: round numbers, and whole days.

use super::scale::widened;
use crate::quantity::{HAIR, Moment};

/// Evenly spaced round numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Ticks {
    /// The numbers, rising.
    pub values: Vec<f64>,
    /// Between two of them: 1, 2 or 5 times a power of ten.
    pub step: f64,
    /// Decimals that tell them apart.
    pub places: usize,
}

/// The round numbers inside a range, `at_most` of them (two at least are allowed).
#[must_use]
pub fn within(a: f64, b: f64, at_most: usize) -> Ticks {
    let (low, high) = widened(a, b);
    let step = round_up((high - low) / at_most.saturating_sub(1).max(1) as f64);
    let (first, last) = ((low / step - HAIR).ceil(), (high / step + HAIR).floor());
    let mut ticks = Ticks::from_steps(first, last, step);
    // Rounding must not push a mark out of the picture.
    ticks.values.iter_mut().for_each(|v| *v = v.clamp(low, high));
    ticks
}

impl Ticks {
    fn from_steps(first: f64, last: f64, step: f64) -> Self {
        let count = (last - first + 1.0).clamp(0.0, 1000.0) as usize;
        let values = (0..count).map(|i| (first + i as f64) * step).collect();
        Self { values, step, places: (-step.log10() - HAIR).ceil().clamp(0.0, 9.0) as usize }
    }
}

/// The next 1, 2 or 5 times a power of ten.
fn round_up(least: f64) -> f64 {
    let power = 10f64.powf(least.log10().floor());
    let factor = [1.0, 2.0, 5.0].into_iter().find(|f| f * power >= least * (1.0 - HAIR));
    factor.unwrap_or(10.0) * power
}

/// A whole number of days after the first reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DayTick {
    /// When, in minutes since 1970-01-01T00:00Z.
    pub minutes: i64,
    /// How many days after the first.
    pub day: i64,
    /// The local date there: year, month (1 to 12), day of the month.
    pub date: (i32, u8, u8),
}

const DAY: i64 = 24 * 60;
/// About the years −9000 to 9000, within what a calendar is kept for.
const CALENDAR: i64 = 4_700_000_000;

/// Marks every so many whole days from `first` to `last` (minutes since 1970 in UTC), `at_most` of
/// them, with the date on a clock `offset_minutes` ahead of UTC.
#[must_use]
pub fn days(first: i64, last: i64, offset_minutes: i32, at_most: usize) -> Vec<DayTick> {
    let first = first.clamp(-CALENDAR, CALENDAR);
    let whole = (last.clamp(-CALENDAR, CALENDAR) - first).max(0) / DAY;
    let most = at_most.max(1) as i64;
    let fits = |step: &i64| whole / step < most;
    // A week is the round number beyond a few days.
    let weeks = std::iter::successors(Some(7), |step| Some(step * 2));
    let step = [1, 2, 3, 5].into_iter().chain(weeks).find(fits).unwrap_or(DAY);
    (0..=whole / step).filter_map(|i| day_tick(first, i * step, offset_minutes)).collect()
}

fn day_tick(first: i64, day: i64, offset_minutes: i32) -> Option<DayTick> {
    let minutes = first + day * DAY;
    let on_clock = Moment::from_utc(minutes, offset_minutes);
    let (year, month, of_month, ..) = on_clock.or_else(|| Moment::from_utc(minutes, 0))?.parts();
    Some(DayTick { minutes, day, date: (year, month, of_month) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn steps_are_round() {
        assert_eq!(within(0.0, 10.0, 6).values, [0.0, 2.0, 4.0, 6.0, 8.0, 10.0]);
        let gravity = within(1.0, 1.06, 7);
        assert_eq!((gravity.step, gravity.places, gravity.values.len()), (0.01, 2, 7));
    }

    #[test]
    fn days_count_from_the_first_reading_on_the_local_calendar() {
        let moment: Moment = "2026-03-01T23:30+01:00".parse().expect("a moment");
        let first = moment.minutes_since_epoch();
        let drawn = days(first, first + 14 * DAY, 60, 5);
        let counted: Vec<_> = drawn.iter().map(|t| t.day).collect();
        assert_eq!(counted, [0, 3, 6, 9, 12]);
        assert_eq!((drawn[0].date, drawn[1].date), ((2026, 3, 1), (2026, 3, 4)));
        // An hour further east it is already the next day.
        assert_eq!(days(first, first, 120, 5)[0].date, (2026, 3, 2));
    }

    proptest! {
        #[test]
        fn lie_within_evenly_and_reach_the_ends(
            a in proptest::num::f64::NORMAL | proptest::num::f64::ZERO,
            b in -1e6..1e6, same in any::<bool>(), at_most in 2usize..12,
        ) {
            let b = if same { a } else { b };
            let (low, high) = widened(a, b);
            let ticks = within(a, b, at_most);
            let slack = ticks.step * 1e-6;
            prop_assert!(ticks.step.is_finite() && ticks.step > 0.0);
            prop_assert!(ticks.values.len() <= at_most);
            prop_assert!(ticks.values.iter().all(|v| (low..=high).contains(v)));
            prop_assert!(ticks.values.windows(2).all(|w| (w[1] - w[0] - ticks.step).abs() < slack));
            if let (Some(first), Some(last)) = (ticks.values.first(), ticks.values.last()) {
                prop_assert!(first - low < ticks.step + slack);
                prop_assert!(high - last < ticks.step + slack);
            }
        }

        #[test]
        fn days_are_few_and_rise(a in any::<i64>(), b in any::<i64>(), o in any::<i32>(), n in 0usize..9) {
            let ticks = days(a, b, o, n);
            prop_assert!(ticks.len() <= n.max(1));
            prop_assert!(ticks.windows(2).all(|w| w[0].minutes < w[1].minutes));
        }
    }
}
