//! The course of a fermentation: gravity and temperature over days, as coordinates ready to draw.

mod ends;
mod outlook;
mod thin;
mod walk;

pub use ends::{EndZone, Zone};
pub use outlook::OutlookPoint;
pub use walk::Stop;

use self::thin::{fewer, thinned};
use super::curve::{Point, straight};
use super::scale::Scale;
use super::ticks::{DayTick, days, within};
use crate::order::in_order;
use crate::quantity::{GravityUnit, write_number};

/// What is to be drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CourseData {
    /// The readings, of the main beer and of the satellite.
    pub points: Vec<CoursePoint>,
    /// Temperatures: minutes since 1970 in UTC, degrees.
    pub temperatures: Vec<(i64, f64)>,
    /// Where the gravity is expected to end: the higher first where there are two.
    pub ends: Vec<EndZone>,
    /// The forecast, if there is one.
    pub outlook: Vec<OutlookPoint>,
    /// Now, minutes since 1970 in UTC; drawn where it is not long after the last reading.
    pub now: Option<i64>,
    /// When to read again, on the same scale.
    pub next: Option<i64>,
    /// The temperatures that suit the yeast, lower and upper.
    pub yeast: Option<(f64, f64)>,
    /// How far the brewer's clock is ahead of UTC.
    pub offset_minutes: i32,
    /// Gravities are °P, not specific gravity.
    pub plato: bool,
    /// Temperatures are °C, not °F.
    pub celsius: bool,
}

/// One reading.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CoursePoint {
    /// Minutes since 1970 in UTC.
    pub minutes: i64,
    /// Its gravity.
    pub gravity: f64,
    /// Half the length of its error bar; what is not finite has none.
    pub sigma: f64,
    /// Of the satellite, not of the main beer.
    pub satellite: bool,
    /// Its value in words.
    pub label: String,
}

/// A number beside an axis.
#[derive(Clone, Debug, PartialEq)]
pub struct AxisMark {
    /// Its place down the picture.
    pub at: f64,
    /// The number.
    pub text: String,
}

/// One reading in the picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Where.
    pub at: Point,
    /// Top and bottom of its error bar.
    pub bar: Option<(f64, f64)>,
    /// Of the satellite.
    pub satellite: bool,
}

/// Everything in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// Foot of the gravity picture.
    pub floor: f64,
    /// The long lines of the paper, each with its number.
    pub gravity: Vec<AxisMark>,
    /// Its short lines.
    pub short: Vec<f64>,
    /// Numbers for the temperature: what suits the yeast, or else from where to where they go; none
    /// without temperatures.
    pub temperature: Vec<AxisMark>,
    /// Days, each with its place across.
    pub days: Vec<(f64, DayTick)>,
    /// The line of the main beer.
    pub main_line: String,
    /// The line of the satellite.
    pub satellite_line: String,
    /// The line of the temperature, and its points.
    pub temperature_line: String,
    /// Each temperature that was noted.
    pub warmth: Vec<Point>,
    /// The temperatures that suit the yeast: upper and lower edge.
    pub yeast: Option<(f64, f64)>,
    /// The expected end, or two: the higher first.
    pub zones: Vec<Zone>,
    /// The area of the forecast's band from the last reading on, nothing without one.
    pub outlook_band: String,
    /// The line of its middle.
    pub outlook_line: String,
    /// Now, across.
    pub now: Option<f64>,
    /// When to read again, across.
    pub next: Option<f64>,
    /// The readings that are drawn: all, or of very many those that show.
    pub marks: Vec<Mark>,
    /// Half the width of a mark: smaller where there are many.
    pub mark_size: f64,
    /// Every reading, the earliest first, to walk along.
    pub stops: Vec<Stop>,
}

impl Course {
    /// Width and height of the picture. It is stretched to the room it has: lines keep their width and
    /// letters their size.
    pub const SIZE: (f64, f64) = (320.0, 300.0);
    /// Left and right edge of what is plotted.
    pub const SIDES: (f64, f64) = (0.0, 320.0);
    /// Its upper edge.
    pub const TOP: f64 = 8.0;
    /// Foot of the gravities where no temperature was noted: the days stand below.
    pub const FLOOR: f64 = 268.0;

    /// The last reading of the main beer, or of the satellite.
    #[must_use]
    pub fn last(&self, satellite: bool) -> Option<Point> {
        self.marks.iter().rev().find(|mark| mark.satellite == satellite).map(|mark| mark.at)
    }
}

/// The temperature's own strip, below the days.
const STRIP: (f64, f64) = (246.0, 294.0);
const ABOVE_STRIP: f64 = 212.0;
/// Kept free at both sides, so that no mark is cut.
const MARGIN: f64 = 12.0;
/// The least time shown: two days.
const LEAST: i64 = 2 * 24 * 60;

/// Puts everything in its place. Readings that are no number are left out.
#[must_use]
pub fn course(data: &CourseData) -> Course {
    let points: Vec<&CoursePoint> = data.points.iter().filter(|p| p.gravity.is_finite()).collect();
    let points = in_order(points, |a, b| a.minutes.cmp(&b.minutes));
    let warmth: Vec<(i64, f64)> =
        data.temperatures.iter().copied().filter(|(_, t)| t.is_finite()).collect();
    let warmth = in_order(warmth, |a, b| a.0.cmp(&b.0));

    let times = || points.iter().map(|p| p.minutes).chain(warmth.iter().map(|(at, _)| *at));
    let start = times().min().unwrap_or(0);
    let last = times().max().unwrap_or(0);
    // What is to come may take as much room as what has been, and what is further off is not drawn.
    let limit = last.saturating_add(last.saturating_sub(start).max(LEAST));
    let near = |at: Option<i64>| at.filter(|at| (start..=limit).contains(at) && !points.is_empty());
    let (now, next) = (near(data.now), near(data.next));
    let end = outlook::reach(&data.outlook, start, last)
        .max(start.saturating_add(LEAST))
        .max(now.unwrap_or(start))
        .max(next.unwrap_or(start));
    let outlook = outlook::cut(&data.outlook, start, end);
    let (left, right) = Course::SIDES;
    let across = Scale::new((start as f64, end as f64), (left + MARGIN, right - MARGIN));

    let floor = if warmth.is_empty() { Course::FLOOR } else { ABOVE_STRIP };
    let (low, high) = gravities(&points, &outlook, data);
    let ticks = within(low, high, 8);
    let down = Scale::new((high, low), (Course::TOP, floor));
    let places = if data.plato { ticks.places } else { 3 };
    // Five short lines from number to number.
    let fifth = ticks.step / 5.0;
    let (first, last_line) = ((low / fifth).ceil() as i64, (high / fifth).floor() as i64);
    let short = (first..=last_line).take(60).map(|i| down.place(i as f64 * fifth)).collect();

    let day_zero = points.first().map(|p| p.minutes).or(warmth.first().map(|w| w.0));
    // "day 12" takes more room than "day 2".
    let most = if end.saturating_sub(start) < 9 * LEAST / 2 { 5 } else { 4 };
    let days =
        day_zero.map(|first| days(first, end, data.offset_minutes, most)).unwrap_or_default();
    let place = |p: &CoursePoint| (across.place(p.minutes as f64), down.place(p.gravity));
    let last_main = points.iter().rev().find(|p| !p.satellite).map_or(last, |p| p.minutes);
    let (outlook_band, outlook_line) = outlook::paths(&outlook, last_main, &across, &down, floor);
    let stops = walk::stops(&points, data, place);
    let points = fewer(points, place);
    let of = |satellite: bool| -> Vec<Point> {
        points.iter().filter(|p| p.satellite == satellite).map(|p| place(p)).collect()
    };
    let zones = ends::placed(&data.ends, &down);
    let bar = |p: &CoursePoint| {
        Some(p.sigma).filter(|s| s.is_finite() && *s > 0.0).map(|s| {
            let clip = |y: f64| y.clamp(Course::TOP, floor);
            (clip(down.place(p.gravity + s)), clip(down.place(p.gravity - s)))
        })
    };
    let mark = |p: &&CoursePoint| Mark { at: place(p), bar: bar(p), satellite: p.satellite };
    let marks: Vec<Mark> = points.iter().map(mark).collect();
    let strip = strip(&warmth, &across, data);
    Course {
        floor,
        gravity: axis(&ticks.values, &down, |v| write_number(v, places)),
        short,
        temperature: strip.numbers,
        days: days.into_iter().map(|d| (across.place(d.minutes as f64), d)).collect(),
        main_line: straight(&of(false)),
        satellite_line: straight(&of(true)),
        temperature_line: straight(&strip.points),
        warmth: strip.points,
        yeast: strip.yeast,
        zones,
        outlook_band,
        outlook_line,
        now: now.map(|at| across.place(at as f64)),
        next: next.map(|at| across.place(at as f64)),
        mark_size: match stops.len() {
            0..=24 => 4.0,
            25..=70 => 3.0,
            _ => 2.0,
        },
        marks,
        stops,
    }
}

/// The gravities that can happen, and no more: of the readings with their bars, the expected end and the
/// forecast, with a little room.
fn gravities(points: &[&CoursePoint], outlook: &[OutlookPoint], data: &CourseData) -> (f64, f64) {
    // An error bar may stretch the axis, but not by more than this.
    let (most, least_span, default) =
        if data.plato { (2.0, 2.0, (0.0, 15.0)) } else { (0.008, 0.008, (1.0, 1.06)) };
    let ends = points.iter().flat_map(|p| {
        let bar = if p.sigma.is_finite() { p.sigma.clamp(0.0, most) } else { 0.0 };
        [p.gravity - bar, p.gravity + bar]
    });
    let zone = ends::finite(&data.ends).flat_map(|end| [end.low, end.high]);
    let (low, high) = ends
        .chain(zone)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(v), high.max(v)));
    let (low, high) = if low <= high { (low, high) } else { default };
    // Nor may the forecast.
    let (low, high) = outlook.iter().fold((low, high), |(new_low, new_high), p| {
        (new_low.min(p.low.max(low - most)), new_high.max(p.high.min(high + most)))
    });
    let room = ((least_span - (high - low)) / 2.0).max(0.04 * (high - low));
    (low - room, high + room)
}

/// What the strip of the temperatures holds.
#[derive(Default)]
struct Strip {
    numbers: Vec<AxisMark>,
    points: Vec<Point>,
    yeast: Option<(f64, f64)>,
}

/// The temperatures as points, over what suits the yeast.
fn strip(warmth: &[(i64, f64)], across: &Scale, data: &CourseData) -> Strip {
    if warmth.is_empty() {
        return Strip::default();
    }
    let yeast = data.yeast.filter(|(a, b)| a.is_finite() && b.is_finite() && a < b);
    let all = warmth.iter().map(|(_, t)| *t).chain(yeast.into_iter().flat_map(|(a, b)| [a, b]));
    let seen =
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), t| (low.min(t), high.max(t)));
    let (low, high) = seen;
    let room = ((3.0 - (high - low)) / 2.0).max(0.5);
    let (low, high) = (low - room, high + room);
    let down = Scale::new((high, low), STRIP);
    let points = warmth.iter().map(|(at, t)| (across.place(*at as f64), down.place(*t))).collect();
    // One line for both edges: two of them have no room in so low a strip, with their words.
    let (from, to) = yeast.unwrap_or(seen);
    let unit = if data.celsius { "°C" } else { "°F" };
    let text = format!("{}–{}\u{A0}{unit}", write_number(from, 0), write_number(to, 0));
    let numbers = vec![AxisMark { at: f64::midpoint(STRIP.0, STRIP.1), text }];
    Strip {
        numbers,
        points: thinned(points, 1.0, |p| *p),
        yeast: yeast.map(|(a, b)| (down.place(b), down.place(a))),
    }
}

fn axis(values: &[f64], down: &Scale, text: impl Fn(f64) -> String) -> Vec<AxisMark> {
    values.iter().map(|v| AxisMark { at: down.place(*v), text: text(*v) }).collect()
}

/// The unit above the gravity's numbers.
#[must_use]
pub fn gravity_symbol(plato: bool) -> &'static str {
    let unit = if plato { GravityUnit::Plato } else { GravityUnit::SpecificGravity };
    unit.symbol()
}

#[cfg(test)]
mod tests;
