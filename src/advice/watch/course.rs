//! A course of readings, and what can be said of it: the words of [`watch`](super).

use crate::advice::Advice;
use crate::advice::family::{Family, Span};
use crate::quantity::{Celsius, Estimate, GravityChange, Hours, Moment, Plato, SpecificGravity};
use crate::science::Amount;

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

/// One look through a refractometer once the yeast is in. Alcohol lifts what it shows, so it tells no
/// gravity: only whether there was a change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Refracted {
    /// When.
    pub at: Moment,
    /// As read: degrees Brix are degrees Plato of plain sugar.
    pub shown: Plato,
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
    /// When something that ferments was last added after the yeast: sugar, fruit.
    pub added: Option<Moment>,
    /// Refractometer readings of the fermenting beer, in any order.
    pub refracted: Vec<Refracted>,
}

impl Course {
    /// Nothing read yet.
    #[must_use]
    pub const fn of(family: Family) -> Self {
        Self {
            main: vec![],
            satellite: vec![],
            original: None,
            pitched: None,
            family,
            stated_end: None,
            added: None,
            refracted: vec![],
        }
    }

    /// An expected end proves nothing: the yeast may go on for weeks, or it was fed later.
    ///
    /// ```
    /// use fermentside::{advice::{family::Family, watch::Course}, quantity::Moment};
    ///
    /// let ale = Course::of(Family::CleanAle);
    /// let fed = Course { added: Some(Moment::EPOCH), ..ale.clone() };
    /// assert!(!ale.may_go_on() && fed.may_go_on() && Course::of(Family::Saison).may_go_on());
    /// ```
    #[must_use]
    pub const fn may_go_on(&self) -> bool {
        self.family.may_go_on() || self.added.is_some()
    }
}

/// How it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// The gravity has not moved from its start.
    NotStarted,
    /// Falling.
    NotYet,
    /// Falling by less than half a point a day, or drifting down for a week and longer.
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
    /// Nothing was read since the yeast went in.
    OnlyStart,
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
    /// The gravity is where it was at the start, so long after the yeast went in.
    NotMoved {
        /// At the start.
        start: SpecificGravity,
        /// Now.
        now: SpecificGravity,
        /// Since the yeast went in.
        since: Hours,
    },
    /// So soon, that is usual.
    UsualSoSoon(Hours),
    /// From one reading to the next it may pass for steady, but over a week and longer it falls.
    Drifting {
        /// A week or more before.
        earlier: SpecificGravity,
        /// The last.
        later: SpecificGravity,
        /// The time between.
        apart: Hours,
        /// Points a day.
        rate: Amount,
    },
    /// The satellite was read, but nothing shows that it had ended: it may end lower still.
    SatelliteUnproven {
        /// The lowest it was read at.
        lowest: SpecificGravity,
        /// How many readings there are.
        have: usize,
        /// Read it again then.
        again: Moment,
    },
    /// The satellite ended above this range too: the wort is like that, and no yeast is to blame.
    WortEndsHigh(Span<SpecificGravity>),
    /// Something that ferments was added then, so no expected end holds.
    AddedLater(Moment),
    /// Too soon after it was added.
    SoonAfterAddition {
        /// Since then, at the last reading.
        days: Hours,
        /// Least.
        least: Hours,
    },
    /// By the forecast more than a point is more likely left than not, until then.
    ForecastAhead(Moment),
    /// Two refractometer readings show no change.
    RefractometerSteady,
    /// The refractometer fell by so many degrees Brix: it still ferments.
    RefractometerFalls(Plato),
}

/// The one cheap measurement that would settle it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Read the beer again.
    ReadBeer,
    /// Read the satellite again.
    ReadSatellite,
    /// Knock the gas out, note the sample's temperature, and read the beer again.
    DegasAndRead,
    /// Check the hydrometer in water.
    WaterCheck,
    /// Draw a jar of the beer, keep it warm with fresh yeast, and read it: the end of this wort.
    LateSatellite,
    /// Note when the yeast went in.
    NotePitching,
}

/// What would change the judgement, and from when it can be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NextMeasurement {
    /// The measurement.
    pub by: Measure,
    /// Not before then.
    pub at: Moment,
}

/// What to do next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Read again, not before this.
    ReadAgain(Moment),
    /// Take a first reading.
    ReadFirst,
    /// Go through the steps; read again then.
    Rouse(Moment),
    /// Look for foam, a ring, drops under the lid, not before then.
    LookForSigns(Moment),
    /// Pitch fresh yeast: it never began.
    PitchAgain,
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
    /// What would settle it; `None` once it is finished.
    pub settles: Option<NextMeasurement>,
}
