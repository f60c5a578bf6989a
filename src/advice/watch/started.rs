//! Has it begun at all? Hours since the yeast went in, and what can be asked at each.
//!
//! Lag is usually 6 to 18 h and up to a day or two; with lager, cold beer or old yeast up to three days
//! (common practice, no source). So nothing is asked on the first day; then one looks for foam, a ring or
//! drops under the lid; then a gravity is taken; and fresh yeast goes in only when the gravity has not
//! moved for about three days, four for slow yeast.

pub use crate::advice::practice::Lag;

use super::course::{Course, Look, Next, Reason};
use super::steady::value;
use crate::advice::practice::{P95, POINT, STILL_START};
use crate::quantity::{Hours, Measured, Moment, SpecificGravity};

/// A fall of more than this is a fall, however rough the readings.
const MOVED: f64 = 0.006;

impl Lag {
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
    if since < STILL_START {
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
