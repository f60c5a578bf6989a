//! What the form of a reading starts from and what it need not ask, by the log.

use super::record::Vessel;
use super::summary::Summary;
use crate::advice::standing::State;
use crate::quantity::{Estimate, Gravity, Hours, Measured, Moment, SpecificGravity};
use crate::science::sucrose;

/// After so long nobody asks whether it has begun, unless it has not (common practice, no source).
const ASKED_FOR: Hours = Hours::literal(7.0 * 24.0);
/// Points within which a reading is as the one before: one, and a hair of floating point.
const AS_BEFORE: f64 = 1.05;
/// Where a stem rests when nothing is known (common practice, no source).
const USUAL_START: SpecificGravity = SpecificGravity::literal(1.050);

fn points(gravity: Gravity) -> f64 {
    sucrose::as_specific(gravity).points()
}

impl Summary {
    /// The last gravity that was read of a vessel, as it was read, and when.
    fn last_read(&self, vessel: Vessel) -> Option<(Moment, Gravity)> {
        let of_vessel = self.lines.iter().rev().filter(|line| line.reading.vessel == vessel);
        of_vessel.map(|line| &line.reading).find_map(|reading| Some((reading.at, reading.as_read?)))
    }

    /// Where a stem rests until it is set: at that vessel's last reading, else where the beer is.
    #[must_use]
    pub fn rest(&self, vessel: Vessel) -> SpecificGravity {
        let last = self.last_read(vessel).map(|(_, read)| sucrose::as_specific(read));
        let known = last.or_else(|| self.present.or(self.original).map(Estimate::value));
        known.unwrap_or(USUAL_START)
    }

    /// Whether it is asked how the sample of a new reading stood: not of a beer past its usual time that
    /// reads as it did before, or where nothing is read yet.
    #[must_use]
    pub fn asks_condition(&self, vessel: Vessel, read: Option<Gravity>) -> bool {
        let pitched = self.pitch.as_ref().map(|(_, pitch)| pitch.at);
        let least = Hours::nearest(self.heading.family.least_time().value());
        let (Some((at, last)), Some(pitched), Vessel::Main) =
            (self.last_read(vessel), pitched, vessel)
        else {
            return true;
        };
        let differs = |read| (points(read) - points(last)).abs() > AS_BEFORE;
        at.since(pitched) < least || read.is_some_and(differs)
    }

    /// A satellite was set beside it, or read.
    #[must_use]
    pub fn has_satellite(&self) -> bool {
        let set = self.pitch.as_ref().is_some_and(|(_, pitch)| pitch.satellite == Some(true));
        set || self.lines.iter().any(|line| line.reading.vessel == Vessel::Satellite)
    }

    /// Whether somebody may ask at `now` if it has begun: in the first days, or when it has not.
    #[must_use]
    pub fn may_not_have_begun(&self, now: Moment) -> bool {
        let Some((_, pitch)) = &self.pitch else { return false };
        let early = now.since(pitch.at) < ASKED_FOR;
        match self.standing.state {
            State::Finished => false,
            State::NotStarted => true,
            _ => early,
        }
    }
}
