//! What can still be left to ferment, as an upper bound: the part of "is it finished?" that the bottle
//! guard stands on.

use super::expected_end::{Expected, has_passed};
use crate::advice::practice::P95;
use crate::quantity::{Estimate, GravityChange, Hours, Measured, SpecificGravity};

/// How fast the last points of a fermentation go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tail {
    /// Warm ale.
    Usual,
    /// Cold or strong beer.
    Slow,
    /// A yeast that eats dextrins, or one that was fed later.
    GoesOn,
}

impl Tail {
    /// Share that goes in a day: the slow end of each (common practice, no source). Slower is the careful
    /// side.
    fn rate(self) -> f64 {
        match self {
            Self::Usual => 0.4,
            Self::Slow => 0.25,
            Self::GoesOn => 0.12,
        }
    }
}

/// From the expected end alone: gravity now, upper end, less the expected end, lower end. An end that
/// was passed was no end: then it says nothing of where this beer stops, which is `None` and never zero.
pub(super) fn left_by_range(
    now: Estimate<SpecificGravity>,
    end: Expected,
) -> Option<GravityChange> {
    let left = now.upper(P95).value() - end.span.from.value();
    (!has_passed(now.value(), end)).then(|| GravityChange::nearest(left))
}

/// From two readings `apart`: had the tail been falling like e^(−kt) unseen within the readings' error,
/// this much could be left of it now, (fall + 1.96 σ) / (e^(kt) − 1).
pub(super) fn left_by_tail(
    earlier: Estimate<SpecificGravity>,
    later: Estimate<SpecificGravity>,
    apart: Hours,
    tail: Tail,
) -> GravityChange {
    let fall = (earlier.value().value() - later.value().value()).max(0.0);
    let unseen = fall + P95 * earlier.sigma().hypot(later.sigma());
    let grown = (tail.rate() * apart.days()).exp_m1();
    GravityChange::nearest(if grown > 0.0 { unseen / grown } else { f64::NAN })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::family::Span;

    fn read(sg: f64) -> Estimate<SpecificGravity> {
        Estimate::new(SpecificGravity::literal(sg), 0.001)
    }

    #[test]
    fn more_days_of_quiet_leave_less() {
        let after = |days: f64| {
            left_by_tail(read(1.011), read(1.011), Hours::literal(days * 24.0), Tail::Usual)
                .points()
        };
        assert!((after(3.0) - 1.19).abs() < 0.02, "{}", after(3.0));
        assert!(after(2.0) > after(3.0) && after(3.0) > after(7.0));
        // Readings at one moment say nothing.
        assert_eq!(after(0.0), GravityChange::MAX * 1000.0);
    }

    #[test]
    fn the_range_counts_from_its_low_end() {
        let span = Span::new(SpecificGravity::literal(1.010), SpecificGravity::literal(1.014));
        let end = Expected { span, passed: span.from, satellite: None };
        let left = |sg| left_by_range(read(sg), end).map(GravityChange::points);
        assert!(left(1.012).is_some_and(|left| (left - 3.96).abs() < 1e-9));
        assert!(left(1.010).is_some_and(|left| (left - 1.96).abs() < 1e-9));
        assert_eq!(left(1.009), None);
    }
}
