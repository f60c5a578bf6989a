//! Has it begun at all? Hours since the yeast went in, and what can be asked at each.
//!
//! Lag is usually 6 to 18 h and up to a day or two; with lager, cold beer or old yeast up to three days
//! (common practice, no source). So nothing is asked on the first day; then one looks for foam, a ring or
//! drops under the lid; then a gravity is taken; and fresh yeast goes in only when the gravity has not
//! moved for about three days, four for slow yeast.

use super::course::{Course, Look, Next, Reason};
use super::steady::value;
use crate::advice::family::Family;
use crate::advice::practice::{COOL_BEER, P95, POINT};
use crate::quantity::{Celsius, Hours, Measured, Moment, SpecificGravity};

/// Beer this soon after the yeast went in is not asked at all.
const TOO_SOON: Hours = Hours::literal(12.0);
/// A fall of more than this is a fall, however rough the readings.
const MOVED: f64 = 0.006;

/// When each thing is worth doing, from pitching.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lag {
    /// Look for foam, a ring, drops under the lid.
    pub signs: Hours,
    /// Take a gravity.
    pub gravity: Hours,
    /// Fresh yeast, if the gravity has not moved.
    pub pitch_again: Hours,
}

impl Lag {
    /// For a usual or a slow start.
    ///
    /// ```
    /// use fermentside::{advice::watch::started::Lag, quantity::Hours};
    ///
    /// assert_eq!(Lag::of(false).pitch_again, Hours::literal(72.0));
    /// assert_eq!(Lag::of(true).pitch_again, Hours::literal(96.0));
    /// ```
    #[must_use]
    pub const fn of(slow: bool) -> Self {
        let (signs, gravity, pitch_again) =
            if slow { (48.0, 72.0, 96.0) } else { (24.0, 48.0, 72.0) };
        Self {
            signs: Hours::literal(signs),
            gravity: Hours::literal(gravity),
            pitch_again: Hours::literal(pitch_again),
        }
    }
}

impl Lag {
    /// Whether this yeast, or beer this cold, begins slowly.
    ///
    /// ```
    /// use fermentside::advice::{family::Family, watch::started::Lag};
    /// use fermentside::quantity::Celsius;
    ///
    /// assert!(Lag::is_slow(Family::Lager, None));
    /// assert!(!Lag::is_slow(Family::CleanAle, Some(Celsius::literal(18.0))));
    /// assert!(Lag::is_slow(Family::CleanAle, Some(Celsius::literal(14.0))));
    /// ```
    #[must_use]
    pub fn is_slow(family: Family, beer: Option<Celsius>) -> bool {
        beer.is_some_and(|beer| beer < COOL_BEER) || family.starts_slowly()
    }

    /// By the yeast and the beer's temperature at the last reading.
    pub(super) fn for_course(course: &Course) -> Self {
        let last = course.main.iter().map(|look| look.at).max();
        let mut at_last = course.main.iter().filter(|look| Some(look.at) == last);
        Self::of(at_last.any(|look| Self::is_slow(course.family, look.beer)))
    }
}

/// What is known of a start that was looked for in vain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct NotStarted {
    /// The yeast went in.
    pub from: Moment,
    /// From then to the last reading.
    pub since: Hours,
    /// The times that hold for it.
    pub lag: Lag,
    /// Gravity at the start.
    pub start: SpecificGravity,
}

/// Whether the gravity has not moved from its start within the error of the two. `main` is in order of
/// time; readings before the yeast do not count.
pub(super) fn not_started(course: &Course, main: &[Look]) -> Option<NotStarted> {
    let (original, last) = (course.original?, main.last()?);
    let from = course.pitched.or(main.first().map(|look| look.at))?;
    let since = last.at.since(from);
    if since < TOO_SOON {
        return None;
    }
    let start = original.value();
    let unmoved = |look: &Look| {
        let error =
            (P95 * look.gravity.sigma().hypot(original.sigma())).clamp(POINT.value(), MOVED);
        (start.value() - value(look)).abs() <= error
    };
    if !main.iter().filter(|look| look.at > from).all(unmoved) {
        return None;
    }
    Some(NotStarted { from, since, lag: Lag::for_course(course), start })
}

impl NotStarted {
    /// The reasons and the next step, by the clock of the readings.
    pub(super) fn next(self, now: SpecificGravity) -> (Vec<Reason>, Next) {
        let Self { from, since, lag, start } = self;
        let mut reasons = vec![Reason::NotMoved { start, now, since }];
        let next = if since < lag.signs {
            reasons.push(Reason::UsualSoSoon(lag.signs));
            Next::LookForSigns(from.after(lag.signs))
        } else if since < lag.gravity {
            Next::ReadAgain(from.after(lag.gravity))
        } else if since < lag.pitch_again {
            Next::ReadAgain(from.after(lag.pitch_again))
        } else {
            Next::PitchAgain
        };
        (reasons, next)
    }
}
