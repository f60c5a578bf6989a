//! What would change the judgement: the one cheap measurement that would settle it, and when.

use super::course::{Course, Finish, Look, Measure, Next, NextMeasurement, Reason, State};
use crate::quantity::Hours;

/// A jar of the beer, warm and with fresh yeast, shows its end after so long (common practice, no
/// source).
const LATE_SATELLITE: Hours = Hours::literal(48.0);

/// The measurement for a judgement; `None` when it is finished or nothing was read.
pub(super) fn next_measurement(
    course: &Course,
    found: &Finish,
    last: Option<&Look>,
) -> Option<NextMeasurement> {
    let last = last?.at;
    let again = match found.advice.next {
        Next::ReadAgain(at) | Next::Rouse(at) | Next::LookForSigns(at) => at,
        Next::ReadFirst | Next::Bottle | Next::PitchAgain => last,
    };
    let measure = |by, at| Some(NextMeasurement { by, at });
    let unproven = found.advice.reasons.iter().find_map(|reason| match reason {
        Reason::SatelliteUnproven { again, .. } => Some(*again),
        _ => None,
    });
    match found.state {
        State::Finished => None,
        State::NotStarted | State::NotYet | State::Slow => measure(Measure::ReadBeer, again),
        State::CannotTell => {
            let rose = found.advice.reasons.iter().any(|reason| matches!(reason, Reason::Rose(_)));
            let by = if rose { Measure::DegasAndRead } else { Measure::ReadBeer };
            measure(by, if rose { last } else { again })
        }
        State::LooksStuck => match unproven {
            Some(at) => measure(Measure::ReadSatellite, at),
            // With a satellite that has ended lower, only the reading itself is left to doubt.
            None if !course.satellite.is_empty() && !course.family.may_go_on() => {
                measure(Measure::WaterCheck, last)
            }
            None => measure(Measure::LateSatellite, last.after(LATE_SATELLITE)),
        },
        State::OneMore => match unproven {
            Some(at) => measure(Measure::ReadSatellite, at),
            None if found.advice.reasons.contains(&Reason::PitchNotNoted) => {
                measure(Measure::NotePitching, last)
            }
            None if found.advice.reasons.contains(&Reason::NoEndKnown) => {
                measure(Measure::LateSatellite, last.after(LATE_SATELLITE))
            }
            None => measure(Measure::ReadBeer, again),
        },
    }
}
