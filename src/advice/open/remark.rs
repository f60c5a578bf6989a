//! What is said first to someone who worries, before the steps.

use super::worried::{Facts, Symptom};
use crate::advice::practice::GREEN;

/// What comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Remark {
    /// At worst they hold more than their usual ceiling, or have none.
    AboveCeiling,
    /// They are green yet: most often that is all.
    Green,
}

/// The remark on what is seen, if there is one.
///
/// ```
/// use fermentside::advice::open::remark::{Remark, remark};
/// use fermentside::advice::open::worried::{Facts, Symptom};
/// use fermentside::quantity::{CarbonDioxideVolumes, Hours};
/// use fermentside::science::bottle_pressure::Closing;
///
/// let gas = CarbonDioxideVolumes::literal;
/// let young = Facts {
///     age: Hours::literal(5.0 * 24.0),
///     place: None,
///     worst: gas(3.1),
///     expected: gas(2.4),
///     target: gas(2.4),
///     ceiling: Some(gas(3.3)),
///     was_finished: true,
///     yeast_may_go_on: false,
///     closing: Closing::USUAL,
/// };
/// assert_eq!(remark(Symptom::FlatAll, &young), Some(Remark::Green));
/// // Over-pressured bottles may be green as well: nobody is told to wait for those.
/// assert_eq!(remark(Symptom::GushingAll, &young), None);
/// let over = Facts { worst: gas(3.4), ..young };
/// assert_eq!(remark(Symptom::FlatAll, &over), Some(Remark::AboveCeiling));
/// ```
#[must_use]
pub fn remark(symptom: Symptom, facts: &Facts) -> Option<Remark> {
    if facts.ceiling.is_none_or(|ceiling| facts.worst > ceiling) {
        return Some(Remark::AboveCeiling);
    }
    (!symptom.is_hazard() && facts.age < GREEN).then_some(Remark::Green)
}
