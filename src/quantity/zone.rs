//! A time zone: how far its clocks are from UTC, and when that changes.
//!
//! A page asks the phone for the changes once, and turns what a date field gives into a [`Moment`] without
//! asking again.

use super::moment::{FURTHEST, clock_minutes};
use super::{Moment, MomentError};
use crate::order::in_order;

/// Clocks that change together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Zone {
    /// Since when, in minutes since 1970-01-01T00:00Z, the clocks are so many minutes ahead of UTC. The
    /// earliest first; that one holds from the beginning of time.
    changes: Vec<(i64, i32)>,
}

impl Zone {
    /// Clocks that are always `ahead_of_utc_minutes` ahead of UTC; more than 25 h 59 min either way is
    /// taken as that.
    #[must_use]
    pub fn fixed(ahead_of_utc_minutes: i32) -> Self {
        Self::new(ahead_of_utc_minutes, [])
    }

    /// Clocks that are `first` minutes ahead of UTC, and from each of the `changes` on (minutes since
    /// 1970-01-01T00:00Z, in any order) as many as stand beside it. More than 25 h 59 min either way is
    /// taken as that.
    #[must_use]
    pub fn new(first: i32, changes: impl IntoIterator<Item = (i64, i32)>) -> Self {
        let all = std::iter::once((i64::MIN, first)).chain(changes);
        let within = all.map(|(from, ahead)| (from, ahead.clamp(-FURTHEST, FURTHEST)));
        Self { changes: in_order(within.collect(), |a, b| a.0.cmp(&b.0)) }
    }

    /// Minutes that the clocks are ahead of UTC at so many minutes since 1970-01-01T00:00Z.
    #[must_use]
    pub fn offset_at(&self, utc_minutes: i64) -> i32 {
        let after = self.changes.partition_point(|(from, _)| *from <= utc_minutes);
        self.changes.get(after.saturating_sub(1)).map_or(0, |(_, ahead)| *ahead)
    }

    /// The moment of a local date and time as a date field gives it (`2026-03-01T09:30`).
    ///
    /// A time that the clocks showed twice, as they were put back, is the first of the two. One that they
    /// never showed, as they were put forward, moves on by what they were put forward: 02:30 becomes
    /// 03:30.
    ///
    /// ```
    /// use fermentside::quantity::{Moment, MomentError, Zone};
    ///
    /// let spring: Moment = "2026-03-29T01:00+00:00".parse()?;
    /// let zone = Zone::new(60, [(spring.minutes_since_epoch(), 120)]);
    /// assert_eq!(zone.local("2026-03-28T12:00")?.to_string(), "2026-03-28T12:00+01:00");
    /// assert_eq!(zone.local("2026-03-29T02:30")?.to_string(), "2026-03-29T03:30+02:00");
    /// assert_eq!(zone.local("2026-02-30T12:00"), Err(MomentError::NoSuchTime));
    /// # Ok::<(), MomentError>(())
    /// ```
    ///
    /// # Errors
    /// [`MomentError`] when the text has another form or names no day or time.
    pub fn local(&self, text: &str) -> Result<Moment, MomentError> {
        let clock = clock_minutes(text)?;
        let ends = self.changes.iter().skip(1).map(|(from, _)| *from).chain([i64::MAX]);
        for (&(from, ahead), end) in self.changes.iter().zip(ends) {
            let utc = clock - i64::from(ahead);
            if (from..end).contains(&utc) {
                return Moment::from_local(text, ahead);
            }
            // The next clock already showed a later time when it began: this time was left out.
            let next = i64::from(self.offset_at(end));
            if utc >= end && end.saturating_add(next) > clock {
                let then = Moment::from_utc(utc, self.offset_at(utc));
                return then.ok_or(MomentError::NoSuchTime);
            }
        }
        Err(MomentError::NoSuchTime)
    }

    /// The same instant on these clocks; as it was where they then show no time of the years 0000 to
    /// 9999.
    ///
    /// ```
    /// use fermentside::quantity::{Moment, Zone};
    ///
    /// let moment: Moment = "2026-03-01T23:30+01:00".parse()?;
    /// assert_eq!(Zone::fixed(120).shown(moment).to_string(), "2026-03-02T00:30+02:00");
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn shown(&self, moment: Moment) -> Moment {
        let utc = moment.minutes_since_epoch();
        Moment::from_utc(utc, self.offset_at(utc)).unwrap_or(moment)
    }
}
