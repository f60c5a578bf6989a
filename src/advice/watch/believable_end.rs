//! Rules (b) and (c) of a finish: a believable end, and days enough.

use super::course::{Course, Look, Reason};
use super::expected_end::{by_range, expected, has_passed, satellite_of};
use super::satellite_end::SatelliteEnd;
use crate::quantity::{GravityChange, HAIR, Hours, Measured};

/// So far above its end, a steady beer looks stuck.
const STUCK: GravityChange = GravityChange::literal(0.004);
/// So far below its end, something else may be eating: wild or diastatic yeast goes on for weeks.
const FAR_BELOW: GravityChange = GravityChange::literal(0.003);
/// After something that ferments was added, an end is believed no sooner (common practice, no source).
const AFTER_ADDING: Hours = Hours::literal(14.0 * 24.0);

/// Rule (b): is this a believable end, and if not, is it so far above that it looks stuck?
///
/// After a late addition the expected end proves nothing, for there was more to eat. It still has to be
/// met, for what was added leaves little behind; and the longer wait of (a) and (c) has to carry it.
pub(super) fn believable_end(
    course: &Course,
    last: Look,
    reasons: &mut Vec<Reason>,
) -> (bool, bool) {
    let now = last.gravity.value();
    if let Some(added) = course.added {
        reasons.push(Reason::AddedLater(added));
    }
    if course.family.may_go_on() {
        reasons.push(Reason::MayGoOn);
    }
    let satellite = satellite_of(course);
    if let SatelliteEnd::Unproven { lowest, have, again } = satellite {
        reasons.push(Reason::SatelliteUnproven { lowest: lowest.value(), have, again });
    }
    let Some(end) = expected(course) else {
        reasons.push(Reason::NoEndKnown);
        return (false, false);
    };
    let above = now.value() - end.span.to.value();
    let passed = has_passed(now, end);
    let below = GravityChange::nearest(end.passed.value() - now.value());
    reasons.extend(match end.satellite {
        Some(satellite) if above > HAIR => {
            let by = GravityChange::nearest(now.value() - satellite.value().value());
            Some(Reason::AboveSatellite(satellite.value(), by))
        }
        None if above > HAIR => Some(Reason::AboveRange(end.span, GravityChange::nearest(above))),
        _ if course.added.is_some() => None,
        // Beer that has passed its satellite shows that the satellite had not ended.
        _ if passed => Some(Reason::BelowRange(end.span, below)),
        Some(satellite) => Some(Reason::AtSatellite(satellite.value())),
        None => Some(Reason::InRange(end.span)),
    });
    let usual = by_range(course);
    if let (Some(satellite), Some(usual)) = (end.satellite, usual)
        && above <= HAIR
        && satellite.value() > usual.to
    {
        reasons.push(Reason::WortEndsHigh(usual));
    }
    // Four above the satellite itself, or above the range's upper end. A satellite that may not have
    // ended, but stands high beside the beer, leaves both open: it is read again first.
    let from = end.satellite.map_or(end.span.to, |satellite| satellite.value());
    let beside = matches!(satellite, SatelliteEnd::Unproven { lowest, .. }
        if now.value() - lowest.value().value() < STUCK.value() - HAIR);
    let far_above = now.value() - from.value() >= STUCK.value() - HAIR;
    let far_below = passed && below.value() > FAR_BELOW.value() + HAIR;
    (above <= HAIR && !far_below, far_above && !beside)
}

/// Rule (c): enough time for the family, and since anything was added, by the clock of the readings.
pub(super) fn long_enough(course: &Course, last: Look, reasons: &mut Vec<Reason>) -> bool {
    let Some(pitched) = course.pitched else {
        reasons.push(Reason::PitchNotNoted);
        return false;
    };
    let least = course.family.least_time();
    let days = last.at.since(pitched);
    if days < least {
        reasons.push(Reason::TooEarly { days, least });
        return false;
    }
    let fed = course.added.map(|added| last.at.since(added)).filter(|days| *days < AFTER_ADDING);
    if let Some(days) = fed {
        reasons.push(Reason::SoonAfterAddition { days, least: AFTER_ADDING });
    }
    fed.is_none()
}
