//! Back within the ceiling: whether a bottling stays under it, and what would bring it there.

use super::bottling::Bottling;
use super::guard::{WARM_ROOM, guard, pressure};
use crate::quantity::{CarbonDioxideVolumes, Celsius, Kilopascals, Measured};
use crate::science::ScienceError;
use crate::science::priming::{Priming, dose};

/// The warmest whole degree at which `worst` presses no harder than `limit`.
pub(super) fn cooler_place(
    bottling: &Bottling,
    worst: CarbonDioxideVolumes,
    limit: Kilopascals,
) -> Result<Celsius, ScienceError> {
    let mut t = bottling.hottest.value().floor();
    while t > WARM_ROOM.value() && pressure(bottling, worst, Celsius::nearest(t))? > limit {
        t -= 1.0;
    }
    Ok(Celsius::nearest(t))
}

/// The highest target, in tenths, that the glass would hold; `None` when none is worth bottling for, and
/// only other bottles or time help.
pub(super) fn way_down(
    bottling: &Bottling,
    ceiling: CarbonDioxideVolumes,
) -> Result<Option<CarbonDioxideVolumes>, ScienceError> {
    let limit = pressure(bottling, ceiling, WARM_ROOM)?;
    let mut tenths = (bottling.target.value() * 10.0).ceil() as i32 - 1;
    while f64::from(tenths) / 10.0 > bottling.already_in.value().value() && tenths >= 12 {
        let target = CarbonDioxideVolumes::nearest(f64::from(tenths) / 10.0);
        let lower = dose(Priming { target, ..bottling.priming() })?;
        let would = guard(bottling, lower.sugar.value())?;
        if would.worst <= ceiling && would.at_hottest <= limit {
            return Ok(Some(target));
        }
        tenths -= 1;
    }
    Ok(None)
}
