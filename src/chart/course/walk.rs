//! Walking along the course from reading to reading, by key or by pointing.

use super::{Course, CourseData, CoursePoint};
use crate::chart::Point;

/// One reading to stop at.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    /// Minutes since 1970 in UTC.
    pub minutes: i64,
    /// Where its mark is.
    pub at: Point,
    /// Of the satellite, not of the main beer.
    pub satellite: bool,
    /// Its gravity.
    pub gravity: f64,
    /// The temperature noted at the same moment.
    pub temperature: Option<f64>,
    /// Its gravity in words.
    pub label: String,
}

/// The stops, the earliest first; all readings, also where fewer are drawn.
pub(super) fn stops(
    points: &[&CoursePoint],
    data: &CourseData,
    place: impl Fn(&CoursePoint) -> Point,
) -> Vec<Stop> {
    let warmth = |p: &CoursePoint| {
        let at_once = data.temperatures.iter().find(|(at, t)| *at == p.minutes && t.is_finite());
        at_once.map(|(_, t)| *t).filter(|_| !p.satellite)
    };
    let stop = |p: &&CoursePoint| Stop {
        minutes: p.minutes,
        at: place(p),
        satellite: p.satellite,
        gravity: p.gravity,
        temperature: warmth(p),
        label: p.label.clone(),
    };
    points.iter().map(stop).collect()
}

impl Course {
    /// The stop nearest to `x` across; of two as near the earlier. `None` without stops, or for what is
    /// no number.
    #[must_use]
    pub fn nearest(&self, x: f64) -> Option<usize> {
        let away = |stop: &Stop| (stop.at.0 - x).abs();
        let all = self.stops.iter().enumerate().filter(|_| !x.is_nan());
        all.min_by(|(_, a), (_, b)| away(a).total_cmp(&away(b))).map(|(index, _)| index)
    }

    /// The stop after `from`, or before it; at an end it stays there. From nowhere it is the first, or
    /// backwards the last.
    #[must_use]
    pub fn step(&self, from: Option<usize>, forward: bool) -> Option<usize> {
        let last = self.stops.len().checked_sub(1)?;
        Some(match (from, forward) {
            (None, true) => 0,
            (None, false) => last,
            (Some(from), true) => from.saturating_add(1).min(last),
            (Some(from), false) => from.saturating_sub(1).min(last),
        })
    }
}
