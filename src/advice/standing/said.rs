//! What is said of how a batch stands: the words of [`Standing`](super::Standing), as values.

use crate::advice::family::Span;
use crate::advice::practice::waking;
use crate::quantity::{Celsius, GravityChange, Hours, Moment, Plato, Share, SpecificGravity};

/// The four stages of a batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// The yeast is not in.
    Pitch,
    /// It ferments, or nobody can tell.
    Watch,
    /// It is finished.
    Bottle,
    /// It is in bottles.
    Open,
}

impl Stage {
    /// In the order of the work.
    pub const ALL: [Self; 4] = [Self::Pitch, Self::Watch, Self::Bottle, Self::Open];
}

/// How it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// The gravity has not moved from its start.
    NotStarted,
    /// Falling.
    Falling,
    /// Falling by less than half a point a day.
    Slow,
    /// Level, and more may be left than the sugar leaves room for.
    Level,
    /// Level, and more likely stalled than ended.
    LooksStuck,
    /// The usual dose passes for the bottles.
    Finished,
    /// The readings do not tell.
    CannotTell,
}

/// Why, the weightiest first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// So many readings of the fermenting beer.
    Readings(usize),
    /// Level since then, at this gravity.
    LevelSince(Moment, SpecificGravity),
    /// From one reading to the next it may pass for level, but over a week and longer it falls.
    Drifting {
        /// At the first of these readings.
        from: SpecificGravity,
        /// At the last.
        to: SpecificGravity,
        /// The time between.
        apart: Hours,
        /// Each week.
        a_week: GravityChange,
    },
    /// It falls by so many points a day.
    Falling(GravityChange),
    /// The gravity is where it was at the start, so long after the yeast went in.
    NotMoved {
        /// At the start.
        start: SpecificGravity,
        /// Now.
        now: SpecificGravity,
        /// Since the yeast went in.
        since: Hours,
    },
    /// So soon, that is usual: until so long after the yeast went in.
    UsualSoSoon(Hours),
    /// The most that may still be left, and the most that the usual dose leaves room for; `None` when
    /// that glass leaves none.
    MayBeLeft(GravityChange, Option<GravityChange>),
    /// No two sound readings so far apart since it is level: the time between, and the time needed.
    TooNear(Hours, Hours),
    /// Too early for this family: days so far, and the least.
    TooEarly(Hours, Hours),
    /// Level at this temperature proves little: the yeast's range.
    LevelWhileCold(Celsius, Span<Celsius>),
    /// Inside where such beer ends.
    InRange(Span<SpecificGravity>),
    /// Above where such beer ends, by so much.
    AboveRange(Span<SpecificGravity>, GravityChange),
    /// Below where such beer ends, by so much.
    BelowRange(Span<SpecificGravity>, GravityChange),
    /// The satellite was read level here; the beer stands so much above it.
    Satellite(SpecificGravity, GravityChange),
    /// The satellite does not count until it was read level, a day apart: so many readings, the lowest,
    /// and when it can be read again.
    SatelliteUnproven(usize, SpecificGravity, Moment),
    /// No starting gravity, no stated end, no satellite: only time tells, or a late satellite.
    NoEndKnown,
    /// The expected end is by so many own earlier batches with this yeast as well, by which it would be this.
    OwnEnds(usize, SpecificGravity),
    /// This yeast may go on for weeks.
    MayGoOn,
    /// Something that ferments was added then.
    AddedLater(Moment),
    /// Nobody noted when the yeast went in.
    PitchNotNoted,
    /// Nothing shows that it fermented.
    NotKnownToFerment,
    /// Since the last reading two looks through a refractometer show no change.
    RefractometerSteady,
    /// By the refractometer it fell by so many degrees Brix since: it still ferments.
    RefractometerFalls(Plato),
}

/// What is not ruled out, or not believed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doubt {
    /// In its tail still: how likely, and what is then left in the middle.
    Tail(Share, GravityChange),
    /// Stalled and able to wake.
    Stall(Share, GravityChange),
    /// Eaten slowly by something else: wild or diastatic yeast.
    Eaten(Share, GravityChange),
    /// This reading lies far from the course.
    FarFromCourse(Moment),
    /// This reading is dated ahead of now.
    Ahead(Moment),
    /// This reading is dated before the yeast went in.
    BeforeYeast(Moment),
    /// The pitching is dated long before the batch.
    PitchingLongBefore(Moment),
    /// Readings of more than one instrument.
    TwoInstruments,
}

/// What to do next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Note the starting gravity, and pitch.
    Pitch,
    /// Take the first reading of the fermenting beer, about then.
    ReadFirst(Moment),
    /// Read again then.
    ReadAgain(Moment),
    /// Look for foam, a ring, drops under the lid, not before then.
    LookForSigns(Moment),
    /// Fresh yeast, and air only if nothing ever began.
    PitchAgain,
    /// Warm and rouse it, and read again then.
    Rouse(Moment),
    /// Bottle.
    Bottle,
    /// Go by the bottles.
    Open,
    /// Do what the hazard asks for.
    MakeSafe,
}

/// What outranks everything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hazard {
    /// A bottle gushed or burst then, and nothing was done about the rest.
    Gushed(Moment),
}

/// From when sugar may go in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SugarFrom {
    /// Now.
    Now,
    /// If it then reads the same: tried by the judgement itself.
    About(Moment),
    /// It still falls: by what is foretold, about then, and no promise.
    Foretold(Moment),
    /// No reading within so long would do.
    NotWithin(Hours),
    /// Nothing tells yet.
    NotKnown,
}

/// When sugar may go in, and what makes it sooner. Nothing here moves with the clock: a date that has
/// passed means "read it now", for a later equal reading proves more.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SugarDate {
    /// By reading on.
    pub from: SugarFrom,
    /// A late satellite that is read twice to the same gravity as the beer does as well, so long after it
    /// was begun.
    pub with_satellite: Option<Hours>,
}

impl SugarDate {
    /// When a satellite that is begun at `now` would do, if that is sooner.
    ///
    /// ```
    /// use fermentside::advice::standing::{SugarDate, SugarFrom};
    /// use fermentside::quantity::{Hours, Moment};
    ///
    /// let now: Moment = "2026-04-11T18:00+01:00".parse()?;
    /// let after = |hours| now.after(Hours::literal(hours));
    /// let from = SugarFrom::About(after(200.0));
    /// let date = SugarDate { from, with_satellite: Some(Hours::literal(72.0)) };
    /// assert_eq!(date.by_satellite(now), Some(after(72.0)));
    /// assert_eq!(date.by_satellite(after(190.0)), None);
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn by_satellite(&self, now: Moment) -> Option<Moment> {
        let then = waking(now.after(self.with_satellite?));
        match self.from {
            SugarFrom::About(at) => (then < at).then_some(then),
            _ => Some(then),
        }
    }
}

/// One kind of beer that is not ruled out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// How likely.
    pub share: Share,
    /// What is then left, in the mean.
    pub left: GravityChange,
}

/// What is left to ferment at the last reading: one posterior.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WhatIsLeft {
    /// Ended: less than half a point left.
    pub ended: Part,
    /// In its tail.
    pub tail: Part,
    /// Stalled and able to wake.
    pub stalled: Part,
    /// Eaten slowly by something else.
    pub eaten: Part,
    /// In the mean of all.
    pub mean: GravityChange,
    /// The most, for the bottles: at [`QUANTILE`](super::QUANTILE) of the posterior, and no less than
    /// sound readings leave open.
    pub upper: GravityChange,
    /// Sound readings bound it; without them no dose is given, whatever `upper` says.
    pub bounded: bool,
    /// It is known to have fermented.
    pub fermented: bool,
}

/// The band at one moment: the gravity lies between `low` and `high` in four of five such beers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BandPoint {
    /// When.
    pub at: Moment,
    /// One in ten is lower.
    pub low: SpecificGravity,
    /// The mean.
    pub middle: SpecificGravity,
    /// One in ten is higher.
    pub high: SpecificGravity,
}

/// One of the ends that are not ruled out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hump {
    /// How likely.
    pub share: Share,
    /// Four of five of these end between.
    pub end: Span<SpecificGravity>,
    /// As many end lower as higher.
    pub middle: SpecificGravity,
}

/// What is foretold.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlook {
    /// The end; with a second one the first is without waking.
    pub end: Hump,
    /// The end of a beer that wakes, unless that is unlikely.
    pub wakes: Option<Hump>,
    /// When a point or less is left, unless it wakes, to the day: four chances of five over all kinds of beer, three
    /// of four for each; it may lie before the last reading.
    pub one_point: Span<Moment>,
    /// As likely before as after.
    pub one_point_middle: Moment,
    /// From pitching to some days after the last reading, none of the three gravities ever rising.
    pub band: Vec<BandPoint>,
}
