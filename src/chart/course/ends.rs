//! The expected end in the picture: one zone, or two where it may rest and go on later.

use super::Course;
use crate::chart::curve::band;
use crate::chart::scale::Scale;

/// One of the ends that are not ruled out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct EndZone {
    /// Its lower edge.
    pub low: f64,
    /// Its upper edge.
    pub high: f64,
    /// The other one is likelier.
    pub less: bool,
}

/// The same in the picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Its area.
    pub area: String,
    /// Its upper and its lower edge.
    pub edges: (f64, f64),
    /// The other one is likelier.
    pub less: bool,
}

/// Those that are numbers.
pub(super) fn finite(ends: &[EndZone]) -> impl Iterator<Item = &EndZone> {
    ends.iter().filter(|end| end.low.is_finite() && end.high.is_finite())
}

/// Each in its place, from side to side.
pub(super) fn placed(ends: &[EndZone], down: &Scale) -> Vec<Zone> {
    let (left, right) = Course::SIDES;
    let zone = |end: &EndZone| {
        let top = down.place(end.low.max(end.high));
        let bottom = down.place(end.low.min(end.high));
        let area = band(&[(left, top), (right, top)], &[(left, bottom), (right, bottom)]);
        Zone { area, edges: (top, bottom), less: end.less }
    };
    finite(ends).map(zone).collect()
}
