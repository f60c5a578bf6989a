//! A course of readings, and what can be said of it: the words of [`watch`](super::watch).

use super::Advice;
use super::family::{Family, Span};
use crate::quantity::{Celsius, Estimate, GravityChange, Hours, Measured, Moment, SpecificGravity};
use crate::science::Amount;

/// How far above the satellite's end the main beer's end may lie.
const ABOVE_SATELLITE: f64 = 0.001;

/// One corrected reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// When.
    pub at: Moment,
    /// The corrected gravity.
    pub gravity: Estimate<SpecificGravity>,
    /// Of the beer, if it was read.
    pub beer: Option<Celsius>,
}

/// All that the judgement stands on.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// Readings of the main beer, in any order.
    pub main: Vec<Look>,
    /// Readings of the satellite, in any order.
    pub satellite: Vec<Look>,
    /// Gravity at the start, if known.
    pub original: Option<Estimate<SpecificGravity>>,
    /// When the yeast went in, if known.
    pub pitched: Option<Moment>,
    /// The yeast.
    pub family: Family,
    /// The end that the brewer expects, if told by kit or recipe.
    pub stated_end: Option<SpecificGravity>,
}

/// How it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// Falling.
    NotYet,
    /// Falling by less than half a point a day.
    Slow,
    /// Steady, far above its end.
    LooksStuck,
    /// Nearly all is there: one more reading settles it.
    OneMore,
    /// All three rules are met.
    Finished,
    /// The readings do not tell.
    CannotTell,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// Fewer than two readings of the main beer.
    TooFew {
        /// How many there are.
        have: usize,
    },
    /// The two readings compared.
    Compared {
        /// The earlier.
        earlier: SpecificGravity,
        /// The later.
        later: SpecificGravity,
        /// The time between.
        apart: Hours,
    },
    /// The fall that the two readings cannot rule out, points a day.
    NotRuledOut(Amount),
    /// The two are too near in time to compare.
    TooNear {
        /// The time between.
        apart: Hours,
        /// The time needed.
        needed: Hours,
    },
    /// It falls this much a day.
    Falling(Amount),
    /// A later reading is higher than an earlier one.
    Rose(GravityChange),
    /// Within a point of the satellite's end.
    AtSatellite(SpecificGravity),
    /// Above the satellite's end.
    AboveSatellite(SpecificGravity, GravityChange),
    /// Inside the expected range.
    InRange(Span<SpecificGravity>),
    /// Above the expected range.
    AboveRange(Span<SpecificGravity>, GravityChange),
    /// Below the expected range, or the satellite's end: no harm by itself, but look for the reason.
    BelowRange(Span<SpecificGravity>, GravityChange),
    /// No starting gravity, no stated end, no satellite: nothing to compare the end with.
    NoEndKnown,
    /// This yeast may go on for weeks.
    MayGoOn,
    /// Too early for this family.
    TooEarly {
        /// Since pitching, at the last reading.
        days: Hours,
        /// Least for the family.
        least: Hours,
    },
    /// Nobody noted when the yeast went in.
    PitchNotNoted,
}

/// What to do next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Read again, not before this.
    ReadAgain(Moment),
    /// Take a first reading.
    ReadFirst,
    /// Warm, rouse, read again.
    Rouse(Moment),
    /// Bottle.
    Bottle,
}

/// The judgement, and what the bottle guard needs of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Finish {
    /// How it stands.
    pub state: State,
    /// The judgement.
    pub advice: Advice<Reason, Next>,
    /// The end that is expected.
    pub end: Option<Span<SpecificGravity>>,
    /// The most that can be left to ferment; `None` when nothing bounds it.
    pub points_left: Option<GravityChange>,
}

/// Where the gravity is expected to end: by the satellite, by what the brewer was told, by the family.
#[must_use]
pub fn expected_end(course: &Course) -> Option<Span<SpecificGravity>> {
    let lowest = lowest(&course.satellite);
    if let Some(satellite) = lowest.filter(|_| !course.family.may_go_on()) {
        let end = satellite.gravity.value().value();
        return Some(Span::new(
            SpecificGravity::nearest(end - 0.001),
            SpecificGravity::nearest(end + ABOVE_SATELLITE),
        ));
    }
    if let Some(stated) = course.stated_end {
        let end = stated.value();
        return Some(Span::new(
            SpecificGravity::nearest(end - 0.002),
            SpecificGravity::nearest(end + 0.002),
        ));
    }
    course.original.map(|og| course.family.ends_at(og.value()))
}

pub(super) fn lowest(looks: &[Look]) -> Option<&Look> {
    looks.iter().min_by(|a, b| a.gravity.value().value().total_cmp(&b.gravity.value().value()))
}
