//! Where the gravity is expected to end: by the satellite, by what the brewer was told, by the family.

use super::course::Course;
use super::satellite_end::{SatelliteEnd, satellite_end};
use crate::advice::family::Span;
use crate::advice::practice::{APART, P95};
use crate::quantity::{Estimate, HAIR, Measured, SpecificGravity};

/// The main beer ends so near to its satellite.
const BESIDE_SATELLITE: f64 = 0.001;
/// An end that kit or recipe states is trusted to this (common practice, no source).
const STATED: f64 = 0.002;

/// A satellite that kept more than this share of its points has not fermented, however steady it is.
const UNFERMENTED: f64 = 2.0 / 3.0;

/// An expected end, as the rules use it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Expected {
    /// Lowest and highest; the lowest less the satellite's error, for what may be left counts from there.
    pub span: Span<SpecificGravity>,
    /// A beer below this has passed it: then it was no end.
    pub passed: SpecificGravity,
    /// The satellite that it comes from, if it had ended.
    pub satellite: Option<Estimate<SpecificGravity>>,
}

/// The end by what was told or by the family, without the satellite.
pub(super) fn by_range(course: &Course) -> Option<Span<SpecificGravity>> {
    if let Some(stated) = course.stated_end {
        let end = stated.value();
        return Some(Span::new(
            SpecificGravity::nearest(end - STATED),
            SpecificGravity::nearest(end + STATED),
        ));
    }
    course.original.map(|og| course.family.ends_at(og.value()))
}

/// What this course's satellite is worth.
pub(super) fn satellite_of(course: &Course) -> SatelliteEnd {
    // Bread yeast says nothing of a yeast that eats dextrins.
    if course.family.may_go_on() {
        return SatelliteEnd::Unread;
    }
    let found = satellite_end(&course.satellite);
    let Some(end) = found.ended() else { return found };
    let start = course.original.map(|og| og.value().points());
    match course.satellite.iter().map(|look| look.at).max() {
        Some(last) if start.is_some_and(|start| end.value().points() > UNFERMENTED * start) => {
            let (have, again) = (course.satellite.len(), last.after(APART));
            SatelliteEnd::Unproven { lowest: end, have, again }
        }
        _ => found,
    }
}

pub(super) fn expected(course: &Course) -> Option<Expected> {
    let plain = |span: Span<SpecificGravity>| Expected { span, passed: span.from, satellite: None };
    let range = by_range(course);
    let beside = |end: Estimate<SpecificGravity>| {
        Span::new(
            SpecificGravity::nearest(end.lower(P95).value() - BESIDE_SATELLITE),
            SpecificGravity::nearest(end.value().value() + BESIDE_SATELLITE),
        )
    };
    match satellite_of(course) {
        SatelliteEnd::Ended(end) => Some(Expected {
            span: beside(end),
            passed: SpecificGravity::nearest(end.value().value() - BESIDE_SATELLITE),
            satellite: Some(end),
        }),
        // It may end lower still, so it lowers the range and never raises it.
        SatelliteEnd::Unproven { lowest, .. } => range.map(|range| {
            let near = beside(lowest);
            let least = |a: SpecificGravity, b| if a < b { a } else { b };
            plain(Span::new(least(range.from, near.from), least(range.to, near.to)))
        }),
        SatelliteEnd::Unread => range.map(plain),
    }
}

/// Where the gravity is expected to end; `None` when nothing tells, or when something that ferments
/// was added after the yeast. A satellite counts once it has ended; before, it can only lower the range.
///
/// ```
/// use fermentside::advice::{family::Family, watch::{Course, expected_end}};
/// use fermentside::quantity::{Measured, SpecificGravity};
///
/// let unread = Course::of(Family::CleanAle);
/// let told = Course { stated_end: Some(SpecificGravity::literal(1.010)), ..unread.clone() };
/// let end = expected_end(&told).unwrap();
/// assert_eq!(format!("{:.3} to {:.3}", end.from.value(), end.to.value()), "1.008 to 1.012");
/// assert_eq!(expected_end(&unread), None);
/// ```
#[must_use]
pub fn expected_end(course: &Course) -> Option<Span<SpecificGravity>> {
    expected(course).filter(|_| course.added.is_none()).map(|end| end.span)
}

/// Whether a gravity lies below the end that was expected.
pub(super) fn has_passed(now: SpecificGravity, end: Expected) -> bool {
    now.value() < end.passed.value() - HAIR
}
