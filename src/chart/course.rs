//! The course of a fermentation: gravity and temperature over days, as coordinates ready to draw.

mod outlook;
mod thin;
mod walk;

pub use outlook::OutlookPoint;
pub use walk::Stop;

use self::thin::{fewer, thinned};
use super::curve::{Point, band, smooth, straight};
use super::scale::Scale;
use super::ticks::{DayTick, days, round_out};
use crate::order::in_order;
use crate::quantity::{GravityUnit, write_number};

/// What is to be drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CourseData {
    /// The readings, of the main beer and of the satellite.
    pub points: Vec<CoursePoint>,
    /// Temperatures: minutes since 1970 in UTC, degrees.
    pub temperatures: Vec<(i64, f64)>,
    /// Where the gravity is expected to end, lower and upper.
    pub end_zone: Option<(f64, f64)>,
    /// The forecast, if there is one.
    pub outlook: Vec<OutlookPoint>,
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
    /// Its value in words; shown beside the last of its kind.
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

/// Words beside a mark.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// The foot of the words.
    pub at: Point,
    /// They end here instead of beginning here.
    pub ends: bool,
    /// The words.
    pub text: String,
}

/// Everything in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// Foot of the gravity picture.
    pub floor: f64,
    /// Numbers for the gravity.
    pub gravity: Vec<AxisMark>,
    /// Numbers for the temperature; none without temperatures.
    pub temperature: Vec<AxisMark>,
    /// Days, each with its place across.
    pub days: Vec<(f64, DayTick)>,
    /// The line of the main beer.
    pub main_line: String,
    /// The line of the satellite.
    pub satellite_line: String,
    /// The line of the temperature.
    pub temperature_line: String,
    /// The expected end: its area, upper and lower edge.
    pub zone: Option<(String, f64, f64)>,
    /// The words for the zone stand at the right, away from the satellite's.
    pub zone_words_right: bool,
    /// The area of the forecast's band, nothing without one.
    pub outlook_band: String,
    /// The line of its middle, from the last reading of the main beer on.
    pub outlook_line: String,
    /// The readings that are drawn: all, or of very many those that show.
    pub marks: Vec<Mark>,
    /// Half the width of a mark: smaller where there are many.
    pub mark_size: f64,
    /// The last reading of each kind in words.
    pub named: Vec<Named>,
    /// Every reading, the earliest first, to walk along.
    pub stops: Vec<Stop>,
}

impl Course {
    /// Width and height of the picture.
    pub const SIZE: (f64, f64) = (320.0, 292.0);
    /// Left and right edge of what is plotted.
    pub const SIDES: (f64, f64) = (54.0, 314.0);
    /// Its upper edge.
    pub const TOP: f64 = 28.0;
    /// Foot of everything plotted: the days stand below.
    pub const FLOOR: f64 = 246.0;
}

/// The temperature's own strip.
const STRIP: (f64, f64) = (202.0, 242.0);
const ABOVE_STRIP: f64 = 178.0;
/// Kept free at both sides, so that no mark is cut.
const MARGIN: f64 = 14.0;
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
    let end = outlook::reach(&data.outlook, start, last).max(start.saturating_add(LEAST));
    let outlook = outlook::cut(&data.outlook, start, end);
    let (left, right) = Course::SIDES;
    let across = Scale::new((start as f64, end as f64), (left + MARGIN, right - MARGIN));

    let floor = if warmth.is_empty() { Course::FLOOR } else { ABOVE_STRIP };
    let ticks = round_out_gravity(&points, &outlook, data);
    let low = ticks.values.first().copied().unwrap_or(0.0);
    let high = ticks.values.last().copied().unwrap_or(1.0);
    let down = Scale::new((high, low), (Course::TOP, floor));
    let places = if data.plato { ticks.places } else { 3 };

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
    let zone = data.end_zone.filter(|(a, b)| a.is_finite() && b.is_finite()).map(|(a, b)| {
        let (top, bottom) = (down.place(a.max(b)), down.place(a.min(b)));
        (band(&[(left, top), (right, top)], &[(left, bottom), (right, bottom)]), top, bottom)
    });
    let bar = |p: &CoursePoint| {
        Some(p.sigma).filter(|s| s.is_finite() && *s > 0.0).map(|s| {
            let clip = |y: f64| y.clamp(Course::TOP, floor);
            (clip(down.place(p.gravity + s)), clip(down.place(p.gravity - s)))
        })
    };
    let mark = |p: &&CoursePoint| Mark { at: place(p), bar: bar(p), satellite: p.satellite };
    let marks: Vec<Mark> = points.iter().map(mark).collect();
    let (temperature, temperature_line) = strip(&warmth, &across, data.celsius);
    Course {
        floor,
        gravity: axis(&ticks.values, &down, |v| write_number(v, places)),
        temperature,
        days: days.into_iter().map(|d| (across.place(d.minutes as f64), d)).collect(),
        main_line: smooth(&of(false)),
        satellite_line: straight(&of(true)),
        temperature_line,
        zone,
        outlook_band,
        outlook_line,
        zone_words_right: of(true).last().is_some_and(|(x, _)| !right_half(*x)),
        mark_size: match stops.len() {
            0..=24 => 5.0,
            25..=70 => 3.5,
            _ => 2.2,
        },
        named: named(&points, &marks),
        marks,
        stops,
    }
}

/// The words beside the last reading of each kind: above the main beer's mark, below the satellite's,
/// because the satellite runs ahead and so lies below the main beer.
fn named(points: &[&CoursePoint], marks: &[Mark]) -> Vec<Named> {
    let last = |satellite| points.iter().zip(marks).rev().find(|(p, _)| p.satellite == satellite);
    let words = |(p, mark): (&&CoursePoint, &Mark)| {
        let ((x, y), bar) = (mark.at, mark.bar.unwrap_or((mark.at.1, mark.at.1)));
        let ends = right_half(x);
        let beside = if ends { x + 8.0 } else { x - 8.0 };
        // Clear of the mark and of its error bar.
        let foot = if p.satellite {
            f64::max(y + 8.0, bar.1) + 16.0
        } else {
            f64::min(y - 6.0, bar.0) - 7.0
        };
        Named { at: (beside, foot), ends, text: p.label.clone() }
    };
    let both = [last(false), last(true)].into_iter().flatten();
    both.filter(|(p, _)| !p.label.is_empty()).map(words).collect()
}

fn right_half(x: f64) -> bool {
    x > f64::midpoint(Course::SIDES.0, Course::SIDES.1)
}

fn round_out_gravity(
    points: &[&CoursePoint],
    outlook: &[OutlookPoint],
    data: &CourseData,
) -> super::Ticks {
    // An error bar may stretch the axis, but not by more than this.
    let (most, least_span, default) =
        if data.plato { (2.0, 2.0, (0.0, 15.0)) } else { (0.008, 0.008, (1.0, 1.06)) };
    let ends = points.iter().flat_map(|p| {
        let bar = if p.sigma.is_finite() { p.sigma.clamp(0.0, most) } else { 0.0 };
        [p.gravity - bar, p.gravity + bar]
    });
    let zone = data.end_zone.into_iter().flat_map(|(a, b)| [a, b]).filter(|v| v.is_finite());
    let (low, high) = ends
        .chain(zone)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(v), high.max(v)));
    let (low, high) = if low <= high { (low, high) } else { default };
    // Nor may the forecast.
    let (low, high) = outlook.iter().fold((low, high), |(new_low, new_high), p| {
        (new_low.min(p.low.max(low - most)), new_high.max(p.high.min(high + most)))
    });
    // Room for the words below the zone and the satellite.
    let below = if data.end_zone.is_some() || points.iter().any(|p| p.satellite) {
        (high - low).max(least_span) * 0.12
    } else {
        0.0
    };
    let short = (least_span - (high - low)).max(0.0) / 2.0;
    round_out(low - below - short, high + short, 7)
}

fn strip(warmth: &[(i64, f64)], across: &Scale, celsius: bool) -> (Vec<AxisMark>, String) {
    if warmth.is_empty() {
        return (Vec::new(), String::new());
    }
    let (low, high) =
        warmth.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), (_, t)| {
            (low.min(*t), high.max(*t))
        });
    // Whole degrees are near enough, and their numbers short.
    let room = ((3.0 - (high - low)) / 2.0).max(0.5);
    let ticks = round_out(low - room, high + room, 5);
    let ends = [ticks.values.first(), ticks.values.last()];
    let ends: Vec<f64> = ends.into_iter().flatten().copied().collect();
    let (bottom, top) =
        (ends.first().copied().unwrap_or(low), ends.last().copied().unwrap_or(high));
    let down = Scale::new((top, bottom), STRIP);
    let unit = if celsius { "°C" } else { "°F" };
    let line: Vec<Point> =
        warmth.iter().map(|(at, t)| (across.place(*at as f64), down.place(*t))).collect();
    let line = thinned(line, 1.0, |p| *p);
    let text = |v: f64| format!("{}\u{A0}{unit}", write_number(v, ticks.places));
    (axis(&ends, &down, text), smooth(&line))
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
