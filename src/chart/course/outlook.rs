//! The forecast in the picture: a band, and its middle from the last reading on.

use super::{Course, LEAST};
use crate::chart::curve::{Point, band, smooth};
use crate::chart::scale::Scale;

/// The forecast at one moment, in the picture's own scale of gravity.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OutlookPoint {
    /// Minutes since 1970 in UTC.
    pub minutes: i64,
    /// Lower edge.
    pub low: f64,
    /// Middle.
    pub middle: f64,
    /// Upper edge.
    pub high: f64,
}

impl OutlookPoint {
    fn is_finite(&self) -> bool {
        [self.low, self.middle, self.high].into_iter().all(f64::is_finite)
    }

    /// Part of the way to `other`.
    fn towards(&self, other: &Self, minutes: i64) -> Self {
        let share =
            (minutes as f64 - self.minutes as f64) / (other.minutes as f64 - self.minutes as f64);
        let between = |a: f64, b: f64| a + share.clamp(0.0, 1.0) * (b - a);
        Self {
            minutes,
            low: between(self.low, other.low),
            middle: between(self.middle, other.middle),
            high: between(self.high, other.high),
        }
    }
}

/// How far the axis goes for a forecast: to its end, but so that the readings keep half of the picture.
pub(super) fn reach(points: &[OutlookPoint], start: i64, last: i64) -> i64 {
    let limit = last.saturating_add(last.saturating_sub(start).max(LEAST));
    points.iter().map(|p| p.minutes).max().map_or(last, |end| end.clamp(last, limit))
}

/// What of the forecast lies between two moments, cut there.
pub(super) fn cut(points: &[OutlookPoint], from: i64, to: i64) -> Vec<OutlookPoint> {
    let points = points.iter().filter(|p| p.is_finite()).copied().collect();
    let points = crate::order::in_order(points, |a: &OutlookPoint, b| a.minutes.cmp(&b.minutes));
    let mut kept: Vec<OutlookPoint> = Vec::with_capacity(points.len());
    for pair in points.windows(2) {
        let [a, b] = pair else { continue };
        for edge in [from, to] {
            if a.minutes < edge && edge < b.minutes {
                kept.push(a.towards(b, edge));
            }
        }
    }
    kept.extend(points.iter().filter(|p| (from..=to).contains(&p.minutes)));
    crate::order::in_order(kept, |a, b| a.minutes.cmp(&b.minutes))
}

/// The band's area and the line of its middle, both from `last` on.
pub(super) fn paths(
    points: &[OutlookPoint],
    last: i64,
    across: &Scale,
    down: &Scale,
    floor: f64,
) -> (String, String) {
    let place = |minutes: i64, v: f64| -> Point {
        (across.place(minutes as f64), down.place(v).clamp(Course::TOP, floor))
    };
    let end = points.last().map_or(last, |p| p.minutes);
    let to_come = cut(points, last, end);
    let edge = |of: fn(&OutlookPoint) -> f64| -> Vec<Point> {
        to_come.iter().map(|p| place(p.minutes, of(p))).collect()
    };
    (band(&edge(|p| p.high), &edge(|p| p.low)), smooth(&edge(|p| p.middle)))
}
