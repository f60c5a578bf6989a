//! Where the satellite says this wort will end, and whether it has ended itself.
//!
//! Read once, or read too early, a satellite ends too high, and the beer beside it looks finished too
//! soon. So it is believed only when two readings a day or more apart agree; until then it can lower the
//! expected end and never raise it.

use super::course::Look;
use crate::advice::practice::{APART, POINT, SLOW_A_DAY};
use crate::order::in_order;
use crate::quantity::{Estimate, HAIR, Measured, Moment, SpecificGravity};

/// What the satellite's readings are worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SatelliteEnd {
    /// It was not read.
    Unread,
    /// Read, but nothing shows that it had ended.
    Unproven {
        /// The lowest it was read at.
        lowest: Estimate<SpecificGravity>,
        /// How many readings there are.
        have: usize,
        /// Read it again then.
        again: Moment,
    },
    /// It has ended there: the lowest reading, with the roughest error of those that agree.
    Ended(Estimate<SpecificGravity>),
}

impl SatelliteEnd {
    /// The end, once it is believed.
    #[must_use]
    pub fn ended(self) -> Option<Estimate<SpecificGravity>> {
        match self {
            Self::Ended(end) => Some(end),
            Self::Unread | Self::Unproven { .. } => None,
        }
    }
}

fn value(look: &Look) -> f64 {
    look.gravity.value().value()
}

/// Judges the satellite's readings, in any order. All from the nearest reading a day or more before the
/// last one to the last must lie within a point, and the fall between the two within half a point a day:
/// limits that do not stretch with the error of a reading, for a rougher reading must not prove more.
///
/// ```
/// use fermentside::advice::watch::{Look, satellite_end::{SatelliteEnd, satellite_end}};
/// use fermentside::quantity::{Estimate, Hours, Moment, SpecificGravity};
///
/// let gravity = Estimate::new(SpecificGravity::literal(1.010), 0.001);
/// let looks = [48.0, 72.0].map(|hours| {
///     Look { at: Moment::EPOCH.after(Hours::literal(hours)), gravity, beer: None }
/// });
/// assert_eq!(satellite_end(&looks), SatelliteEnd::Ended(gravity));
/// assert_eq!(satellite_end(&looks[..1]).ended(), None);
/// ```
#[must_use]
pub fn satellite_end(looks: &[Look]) -> SatelliteEnd {
    let looks =
        in_order(looks.to_vec(), |a, b| a.at.cmp(&b.at).then(value(a).total_cmp(&value(b))));
    let lowest = looks.iter().min_by(|a, b| {
        // Of two that are equal the rougher counts.
        value(a).total_cmp(&value(b)).then(b.gravity.sigma().total_cmp(&a.gravity.sigma()))
    });
    let (Some(last), Some(lowest)) = (looks.last(), lowest) else { return SatelliteEnd::Unread };
    let unproven = SatelliteEnd::Unproven {
        lowest: lowest.gravity,
        have: looks.len(),
        again: last.at.after(APART),
    };
    let far = |look: &&Look| last.at.since(look.at).value() >= APART.value() - 0.5;
    let Some(earlier) = looks.iter().rev().find(far) else { return unproven };
    let window = || looks.iter().filter(|look| look.at >= earlier.at);
    let highest = window().map(value).fold(f64::MIN, f64::max);
    let least = window().map(value).fold(f64::MAX, f64::min);
    let at_last = window().filter(|look| look.at == last.at).map(value).fold(f64::MAX, f64::min);
    let may_fall = SLOW_A_DAY.value() * last.at.since(earlier.at).days().max(1.0);
    if highest - least > POINT.value() + HAIR || value(earlier) - at_last > may_fall + HAIR {
        return unproven;
    }
    let sigma = window().map(|look| look.gravity.sigma()).fold(lowest.gravity.sigma(), f64::max);
    SatelliteEnd::Ended(Estimate::new(lowest.gravity.value(), sigma))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Hours;

    fn end(readings: &[(f64, f64)]) -> SatelliteEnd {
        let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        let looks: Vec<_> = readings
            .iter()
            .map(|&(day, sg)| Look {
                at: start.after(Hours::nearest(24.0 * day)),
                gravity: Estimate::new(SpecificGravity::literal(sg), 0.001),
                beer: None,
            })
            .collect();
        satellite_end(&looks)
    }

    fn ended(readings: &[(f64, f64)]) -> Option<f64> {
        end(readings).ended().map(|end| end.value().value())
    }

    #[test]
    fn two_readings_a_day_apart_that_agree_are_an_end() {
        assert_eq!(end(&[]), SatelliteEnd::Unread);
        assert_eq!(ended(&[(2.0, 1.010), (3.0, 1.010)]), Some(1.010));
        assert_eq!(ended(&[(2.0, 1.011), (4.0, 1.010)]), Some(1.010));
        // It once stood lower: the careful end is that one.
        assert_eq!(ended(&[(1.0, 1.008), (2.0, 1.010), (3.0, 1.010)]), Some(1.008));
    }

    #[test]
    fn one_reading_two_in_a_day_or_a_falling_one_are_not() {
        assert_eq!(ended(&[(2.0, 1.010)]), None);
        assert_eq!(ended(&[(2.0, 1.010), (2.5, 1.010)]), None);
        assert_eq!(ended(&[(2.0, 1.014), (3.0, 1.011)]), None);
        // A point a day is within what an eye can do, and still a fall.
        assert_eq!(ended(&[(2.0, 1.011), (3.0, 1.010)]), None);
        let SatelliteEnd::Unproven { have: 1, again, .. } = end(&[(2.0, 1.010)]) else {
            unreachable!("one reading proves nothing");
        };
        assert_eq!(again.to_string(), "2026-04-04T18:00+01:00");
    }
}
