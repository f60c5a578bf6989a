//! The forecast: where the course goes on from here, how far down it ends, and by when.
//!
//! Every likely curve of the logistic family (see `science::fermentation_curve`) is weighed by how well
//! it goes through the readings and by what is usual for the yeast; nothing is drawn by lot. A forecast
//! advises when to read again. It never makes beer finished: that is for readings and
//! [`watch`](super::watch) alone.

mod figures;
mod looks;
mod outlook;
mod prior;
mod weigh;

use super::course::Course;
use crate::advice::family::Span;
use crate::quantity::{GravityChange, Hours, Measured, Moment, SpecificGravity};
use crate::science::{Amount, Source, Term, Worked, sucrose};

/// Fewest looks at the fermenting beer, two hours apart or more, that a forecast stands on.
pub const FEWEST: usize = 3;
/// How far after the last reading anything is said: four weeks.
pub const HORIZON: Hours = Hours::literal(28.0 * 24.0);

/// Why there is no forecast.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Nobody noted when the yeast went in.
    PitchNotNoted,
    /// The gravity at the start is not known.
    StartUnknown,
    /// This yeast may go on for weeks, so no end can be foretold.
    MayGoOn,
    /// Fewer than [`FEWEST`] looks at the fermenting beer.
    TooFew {
        /// How many there are.
        have: usize,
    },
}

/// The band at one moment: the gravity lies between `low` and `high` in four of five such beers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BandPoint {
    /// When.
    pub at: Moment,
    /// One in ten is lower.
    pub low: SpecificGravity,
    /// As many are lower as are higher.
    pub middle: SpecificGravity,
    /// One in ten is higher.
    pub high: SpecificGravity,
}

/// When a point or less is left to ferment: four chances of five.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OnePointLeft {
    /// It was so at the last reading, in nine of ten such beers.
    Already,
    /// Between two moments; the first is that of the last reading when it may be so already.
    Between(Moment, Moment),
    /// Not before this moment, and it cannot be said by when.
    From(Moment),
    /// Not within this time after the last reading, in nine of ten such beers.
    NotWithin(Hours),
}

/// The forecast of one batch.
#[derive(Clone, Debug, PartialEq)]
pub struct Forecast {
    /// The band from pitching to some days after the last reading, in order of time: 40 points at most,
    /// none of the three gravities ever rising.
    pub band: Vec<BandPoint>,
    /// Where it ends: between these in four of five such beers.
    pub end: Span<SpecificGravity>,
    /// As many end lower as higher.
    pub end_middle: SpecificGravity,
    /// When a point or less is left.
    pub one_point_left: OnePointLeft,
    /// As likely before this moment as after it; it may lie before the last reading. `None` when that is
    /// later than anything is said of.
    pub one_point_middle: Option<Moment>,
    /// The most that is left to ferment at the last reading, in 95 of 100 such beers.
    pub left_now: GravityChange,
    /// The last reading that it stands on.
    pub last: Moment,
    /// How many different readings it stands on.
    pub readings: usize,
    /// The satellite was read twice, a day apart, and agreed: the end leans on it.
    pub by_satellite: bool,
    /// How it was worked out.
    pub worked: Worked,
}

/// Forecasts the course. The order of the readings does not matter, the same reading entered twice
/// counts once, and no clock is read: the same readings give the same forecast.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::watch::{Course, Look, forecast::{Refusal, forecast}};
/// use fermentside::quantity::{Estimate, Hours, Moment, SpecificGravity};
///
/// let pitched: Moment = "2026-03-01T12:00+00:00".parse().unwrap();
/// let read = |sg| Estimate::new(SpecificGravity::literal(sg), 0.001);
/// let look = |(hours, sg)| {
///     Look { at: pitched.after(Hours::literal(hours)), gravity: read(sg), beer: None }
/// };
/// let mut course = Course {
///     main: [(24.0, 1.044), (48.0, 1.026), (72.0, 1.015), (96.0, 1.012)].map(look).to_vec(),
///     original: Some(read(1.050)),
///     pitched: Some(pitched),
///     ..Course::of(Family::CleanAle)
/// };
/// assert!(forecast(&course)?.end.contains(SpecificGravity::literal(1.011)));
/// course.main.truncate(2);
/// assert_eq!(forecast(&course), Err(Refusal::TooFew { have: 2 }));
/// # Ok::<(), Refusal>(())
/// ```
///
/// # Errors
/// [`Refusal`], the reason why it is not shown.
pub fn forecast(course: &Course) -> Result<Forecast, Refusal> {
    if course.may_go_on() {
        return Err(Refusal::MayGoOn);
    }
    let pitched = course.pitched.ok_or(Refusal::PitchNotNoted)?;
    let original = course.original.filter(|og| og.sigma() < looks::ROUGHEST);
    let original = original.ok_or(Refusal::StartUnknown)?;
    let seen = looks::usable(&course.main, pitched);
    let have = looks::apart(&seen);
    let last = match seen.last() {
        Some(last) if have >= FEWEST => *last,
        _ => return Err(Refusal::TooFew { have }),
    };
    let start = looks::Start::of(original);
    let ends = prior::ends(course, start, &seen);
    let pace = prior::pace(course.family, &seen);
    let looks = looks::thinned(&seen, start, ends.core);
    let weighed = weigh::weigh(&looks, start, &ends, pace);
    let outlook = outlook::outlook(&weighed, last.hours, start, &ends, pace);
    let moment = |hours: f64| pitched.after(Hours::nearest(hours));
    let gravity = looks::gravity;
    let band = outlook.band.iter().map(|&(hours, [low, middle, high])| BandPoint {
        at: moment(hours),
        low: gravity(low),
        middle: gravity(middle),
        high: gravity(high),
    });
    let [low, middle, high] = outlook.end.map(gravity);
    let one_point_left = match outlook.one_point {
        [_, _, Some(to)] if to <= last.hours => OnePointLeft::Already,
        [Some(from), _, Some(to)] => OnePointLeft::Between(moment(from).max(last.at), moment(to)),
        [Some(from), _, None] => OnePointLeft::From(moment(from).max(last.at)),
        [None, ..] => OnePointLeft::NotWithin(HORIZON),
    };
    let left_now = GravityChange::nearest(outlook.left_now);
    let worked = Worked::default()
        .input(Term::OriginalGravity, original.value())
        .input(Term::ReadingsUsed, Amount::Number(seen.len() as f64, 0, ""))
        .step(
            Term::ExpectedEnd,
            sucrose::specific_gravity(ends.middle()),
            "middle of what is expected",
            if ends.by_satellite { None } else { Some(Source::CommonPractice) },
        )
        .step(
            Term::ForecastEnd,
            middle,
            "P(t) = P_end + (P_start − P_end) / (1 + s e^(b(t − m)))^(1/s)",
            Source::LogisticCurve,
        )
        .step(
            Term::PointsLeft,
            Amount::Points(left_now.points()),
            "95 % of the curves, weighed by the readings",
            Source::WeighedCurves,
        )
        .doubt(Term::ForecastEnd, (high.value() - low.value()) / (2.0 * figures::TENTH));
    Ok(Forecast {
        band: band.collect(),
        end: Span::new(low, high),
        end_middle: middle,
        one_point_left,
        one_point_middle: outlook.one_point[1].map(moment),
        left_now,
        last: last.at,
        readings: seen.len(),
        by_satellite: ends.by_satellite,
        worked,
    })
}
