//! Pressure in bottles that something is wrong with, by what the record says: where they stand, and chilled.

use super::worried::Facts;
use crate::quantity::{Celsius, Kilopascals};
use crate::science::ScienceError;
use crate::science::bottle_pressure::{End, in_bottle};

/// Over-pressured bottles are safest about here.
pub const COLD: Celsius = Celsius::literal(4.0);
/// A warm room, taken where the place is not known.
const ROOM: Celsius = Celsius::literal(22.0);

/// Pressure in the bottles, once the sugar is eaten.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressures {
    /// Where they stand, or in a warm room.
    pub at: Celsius,
    /// There, by the best estimate.
    pub here: Kilopascals,
    /// There, at worst.
    pub here_at_worst: Kilopascals,
    /// Chilled, by the best estimate.
    pub chilled: Kilopascals,
    /// Chilled, at worst.
    pub chilled_at_worst: Kilopascals,
}

/// What the record says of the pressure now.
///
/// ```
/// use fermentside::advice::open::{pressures::pressures, worried::Facts};
/// use fermentside::quantity::{CarbonDioxideVolumes, Celsius, Hours, Measured};
/// use fermentside::science::bottle_pressure::Closing;
///
/// let gas = CarbonDioxideVolumes::literal;
/// let at = |t| pressures(&Facts {
///     age: Hours::literal(30.0 * 24.0),
///     place: Some(Celsius::literal(t)),
///     worst: gas(3.1),
///     expected: gas(2.4),
///     target: gas(2.4),
///     ceiling: Some(gas(3.3)),
///     was_finished: true,
///     yeast_may_go_on: false,
///     closing: Closing::USUAL,
/// });
/// let (here, chilled) = (at(21.0)?.here.value(), at(21.0)?.chilled.value());
/// assert_eq!(format!("{:.1} and {:.1} bar", here / 100.0, chilled / 100.0), "2.9 and 1.6 bar");
/// assert!(at(60.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] for a place outside 0 to 45 °C.
pub fn pressures(facts: &Facts) -> Result<Pressures, ScienceError> {
    let at = facts.place.unwrap_or(ROOM);
    // The best estimate must never look worse than the worst case.
    let expected = if facts.expected < facts.worst { facts.expected } else { facts.worst };
    let of = |gas, t, end| in_bottle(gas, t, facts.closing, end).map(|found| found.gauge);
    Ok(Pressures {
        at,
        here: of(expected, at, End::Best)?,
        here_at_worst: of(facts.worst, at, End::High)?,
        chilled: of(expected, COLD, End::Best)?,
        chilled_at_worst: of(facts.worst, COLD, End::High)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::open::worried::tests::FACTS;
    use crate::quantity::Measured;

    #[test]
    fn cold_lowers_the_pressure() {
        let found = pressures(&FACTS).expect("in range");
        assert!(found.chilled < found.here && found.chilled_at_worst < found.here_at_worst);
        assert!(found.here < found.here_at_worst);
        // A trade table has 1.9 bar at 20 °C and 0.8 at 4 °C for 2.5 volumes without the air; the air
        // shut in adds about 0.9.
        assert!((found.here.value() / 100.0 - 2.8).abs() < 0.2, "{found:?}");
        assert!((found.chilled.value() / 100.0 - 1.6).abs() < 0.2, "{found:?}");
    }
}
