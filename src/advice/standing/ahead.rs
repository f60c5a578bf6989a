//! What is tried before it is promised: one more reading, or a late satellite, for whatever is about to be
//! bottled.

use super::judge::{Case, Judged};
use super::record::Record;
use super::said::State;
use super::sugar::allowed;
use super::{LATE_SATELLITE, TRIED, say};
use crate::quantity::{GravityChange, Hours, Measured, Moment};

/// A record that is tried further.
pub(super) struct Ahead<'a> {
    case: Case<'a>,
    room: Option<f64>,
    last: f64,
}

/// Whether the beer could go into the bottles with so much left at the most.
pub(super) type Passes<'a> = &'a dyn Fn(GravityChange) -> bool;

impl<'a> Ahead<'a> {
    /// Of a record as it is at `now`; `None` before the fermenting beer was read.
    pub(super) fn of(record: &'a Record, now: Moment) -> Option<Self> {
        let (case, judged) = Case::new(record, now, super::QUANTILE);
        let last = case.looks.main.last().map(|last| last.hours)?;
        let room = allowed(record).map(|left| left.points());
        Some(Self { case: case.likely(&judged), room, last })
    }

    /// The first of some days at which one more sound reading, the same as the last, does. It may lie
    /// before now, for a later one does as well.
    pub(super) fn reading(&self, passes: Passes) -> Option<Moment> {
        let at = |step: usize| self.last + 24.0 * TRIED[step.min(TRIED.len() - 1)];
        let holds = |step: usize| {
            let found = self.case.after_reading(at(step));
            found.is_some_and(|(case, judged)| self.would_pass(&case, &judged, passes))
        };
        let (mut least, mut yes) = (0, TRIED.len() - 1);
        if !holds(yes) {
            return None;
        }
        while least < yes {
            let middle = usize::midpoint(least, yes);
            if holds(middle) { yes = middle } else { least = middle + 1 }
        }
        Some(self.case.looks.moment(at(yes)))
    }

    /// How long after it is begun a late satellite does, read twice to the same gravity as the beer, with
    /// the beer read once more beside it: `None` where none would, or where one was read level.
    pub(super) fn satellite(&self, passes: Passes) -> Option<Hours> {
        if self.case.record.may_go_on() || self.case.ends.satellite.is_some() {
            return None;
        }
        let (case, judged) = self.case.after_satellite(self.last + LATE_SATELLITE.value())?;
        self.would_pass(&case, &judged, passes).then_some(LATE_SATELLITE)
    }

    fn would_pass(&self, case: &Case, judged: &Judged, passes: Passes) -> bool {
        let level = || {
            let state = say::state(case, judged, self.room);
            matches!(state, State::Finished | State::Level)
        };
        judged.bound.is_some_and(|bound| passes(say::change(bound))) && level()
    }
}
