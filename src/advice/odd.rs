//! What is odd about something before it is saved: it is asked about, kept as given when it is confirmed,
//! and then weighed as doubtful. All limits are common practice, no source.

use super::family::Span;
use super::practice::STILL_START;
use super::standing::{BandPoint, Standing, dated_ahead};
use crate::quantity::{Estimate, Gravity, Hours, Litres, Measured, Moment, SpecificGravity};

/// A date so long before the batch was begun is odd: the clock of the brewing day may stand anywhere in it.
const A_DAY: Hours = Hours::literal(24.0);
/// Gravities that wort and beer, cider and wine among them, have.
const BEER: Span<SpecificGravity> =
    Span { from: SpecificGravity::literal(0.990), to: SpecificGravity::literal(1.140) };
/// A reading so far outside of what was foretold is odd, points; or three of its own errors.
const FAR: f64 = 4.0;
/// Over its start nothing is read, points.
const OVER_START: f64 = 3.0;
/// A vessel holds so much more than the batch was noted with.
const MORE: f64 = 1.1;

/// What is odd.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Odd {
    /// Dated ahead of now.
    Ahead(Moment),
    /// Dated so long before the batch was begun.
    BeforeBegun(Hours),
    /// No wort or beer has this gravity.
    NoBeer(SpecificGravity),
    /// Far from the course: it should lie between these.
    FarFromCourse(Span<SpecificGravity>),
    /// What was typed is taken as the first; the second may be meant.
    Meant(SpecificGravity, SpecificGravity),
    /// More than the batch, which is so much.
    AboveBatch(Litres),
}

/// A reading that is about to be saved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look<'a> {
    /// When.
    pub at: Moment,
    /// As it was read.
    pub as_read: Option<Gravity>,
    /// The letters of it.
    pub typed: &'a str,
    /// Corrected.
    pub gravity: Option<Estimate<SpecificGravity>>,
    /// Of the main beer, and not of its satellite.
    pub main: bool,
}

/// What the batch says beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beside<'a> {
    /// When the batch was begun.
    pub begun: Moment,
    /// When the yeast went in.
    pub pitched: Option<Moment>,
    /// Gravity at the start.
    pub original: Option<SpecificGravity>,
    /// How the batch stands without this reading.
    pub standing: &'a Standing,
    /// Now.
    pub now: Moment,
}

/// What is odd about a date: ahead of now, or a day and more before the batch was begun.
///
/// ```
/// use fermentside::advice::odd::{Odd, date};
/// use fermentside::quantity::{Hours, Moment};
///
/// let (begun, now) = (Moment::EPOCH, Moment::EPOCH.after(Hours::literal(240.0)));
/// assert_eq!(date(now, begun, now), None);
/// let next_week = now.after(Hours::literal(168.0));
/// assert_eq!(date(next_week, begun, now), Some(Odd::Ahead(next_week)));
/// let month = Hours::literal(720.0);
/// assert_eq!(date(begun.after(Hours::literal(-720.0)), begun, now), Some(Odd::BeforeBegun(month)));
/// ```
#[must_use]
pub fn date(at: Moment, begun: Moment, now: Moment) -> Option<Odd> {
    if dated_ahead(at, now) {
        return Some(Odd::Ahead(at));
    }
    let before = begun.since(at);
    (before > A_DAY).then_some(Odd::BeforeBegun(before))
}

/// What is odd about a volume of beer beside the batch it is of.
///
/// ```
/// use fermentside::advice::odd::{Odd, volume};
/// use fermentside::quantity::Litres;
///
/// let batch = Litres::literal(23.0);
/// assert_eq!(volume(Litres::literal(22.0), batch), None);
/// assert_eq!(volume(Litres::literal(220.0), batch), Some(Odd::AboveBatch(batch)));
/// ```
#[must_use]
pub fn volume(beer: Litres, batch: Litres) -> Option<Odd> {
    (beer.value() > MORE * batch.value()).then_some(Odd::AboveBatch(batch))
}

/// What is odd about a gravity that kit or recipe states, typed so.
///
/// ```
/// use fermentside::advice::odd::{Odd, stated};
/// use fermentside::quantity::{Gravity, SpecificGravity};
///
/// let [points, meant] = [1.010_42, 1.042].map(SpecificGravity::literal);
/// assert_eq!(stated("10.42", Gravity::Specific(points), points), Some(Odd::Meant(points, meant)));
/// let high = SpecificGravity::literal(1.180);
/// assert_eq!(stated("1.180", Gravity::Specific(high), high), Some(Odd::NoBeer(high)));
/// assert_eq!(stated("1.042", Gravity::Specific(meant), meant), None);
/// ```
#[must_use]
pub fn stated(typed: &str, as_read: Gravity, sg: SpecificGravity) -> Option<Odd> {
    meant(typed, as_read).or_else(|| no_beer(sg))
}

fn no_beer(sg: SpecificGravity) -> Option<Odd> {
    (sg < BEER.from || sg > BEER.to).then_some(Odd::NoBeer(sg))
}

/// What is odd about a reading.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::odd::{Beside, Look, Odd, reading};
/// use fermentside::advice::standing::{Record, Standing};
/// use fermentside::quantity::{Estimate, Gravity, Moment, SpecificGravity};
///
/// let now = Moment::EPOCH;
/// let standing = Standing::of(&Record::of(Family::CleanAle, now), now);
/// let beside = Beside { begun: now, pitched: None, original: None, standing: &standing, now };
/// let sg = SpecificGravity::literal(1.010_42);
/// let look = Look {
///     at: now,
///     as_read: Some(Gravity::Specific(sg)),
///     typed: "10.42",
///     gravity: Some(Estimate::new(sg, 0.001)),
///     main: true,
/// };
/// assert_eq!(reading(look, beside), [Odd::Meant(sg, SpecificGravity::literal(1.042))]);
/// assert_eq!(reading(Look { typed: "1.01042", ..look }, beside), []);
/// ```
#[must_use]
pub fn reading(look: Look, beside: Beside) -> Vec<Odd> {
    let mut odd: Vec<Odd> = date(look.at, beside.begun, beside.now).into_iter().collect();
    odd.extend(look.as_read.and_then(|read| meant(look.typed, read)));
    let Some(gravity) = look.gravity else { return odd };
    let sg = gravity.value();
    if let Some(none) = no_beer(sg) {
        odd.push(none);
        return odd;
    }
    let far = FAR.max(3.0 * gravity.sigma() * 1000.0) / 1000.0;
    // A reading of the wort, or dated wrong, is not beside the course.
    let ferments = beside.pitched.is_some_and(|at| look.at > at.after(STILL_START));
    let course = Some(look.at).filter(|_| ferments && look.main && odd.is_empty());
    let outside = course
        .and_then(|at| course_at(beside.standing, at))
        .filter(|span| sg.value() > span.to.value() + far || sg.value() < span.from.value() - far);
    let over_start = beside.original.filter(|start| {
        ferments && sg.value() > start.value() + OVER_START / 1000.0 + 2.0 * gravity.sigma()
    });
    if let Some(span) = outside {
        odd.push(Odd::FarFromCourse(span));
    } else if let Some(start) = over_start {
        odd.push(Odd::FarFromCourse(Span::new(BEER.from, start)));
    }
    odd
}

/// Where four of five such beers stand at a moment; `None` where nothing is foretold.
fn course_at(standing: &Standing, at: Moment) -> Option<Span<SpecificGravity>> {
    let outlook = standing.outlook.as_ref()?;
    let after = outlook.band.iter().position(|point| point.at >= at);
    let span = |point: &BandPoint| Span::new(point.low, point.high);
    // A rest that ends goes lower than the band.
    let lowest = outlook.wakes.map_or(outlook.end.end.from, |wakes| wakes.end.from);
    let found = match after {
        // Between two points of the band, from the higher to the lower.
        Some(after) => {
            let (before, after) =
                (outlook.band.get(after.checked_sub(1)?)?, outlook.band.get(after)?);
            Span::new(after.low, before.high)
        }
        None => span(outlook.band.last()?),
    };
    let lower = if outlook.wakes.is_some() && lowest < found.from { lowest } else { found.from };
    let end = outlook.end.end.from;
    let lower = if after.is_none() && end < lower { end } else { lower };
    Some(Span::new(lower, found.to))
}

/// `10.42` is taken as points; 1.042 may be meant.
fn meant(typed: &str, read: Gravity) -> Option<Odd> {
    let Gravity::Specific(read) = read else { return None };
    let (whole, part) = typed.trim().split_once(['.', ','])?;
    let slipped = matches!(whole, "9" | "10" | "11") && part.len() == 2;
    let thousandths: u32 = format!("{whole}{part}").parse().ok().filter(|_| slipped)?;
    let meant = SpecificGravity::new(f64::from(thousandths) / 1000.0).ok()?;
    let points = read.points() < 12.0;
    (points && meant != read).then_some(Odd::Meant(read, meant))
}
