//! Back within the ceiling: whether a bottling stays under it, and what would bring it there.

use super::dose_plan::{Bottling, Next, Over, WARM_ROOM, plan};
use super::guard::{guard, pressure};
use crate::quantity::{CarbonDioxideVolumes, Celsius, Grams, Kilopascals, Measured};
use crate::science::ScienceError;
use crate::science::priming::{Priming, dose};

/// Whether a plan would give a dose: the same conditions, and nothing that only a plan needs.
pub(super) fn gives_dose(bottling: &Bottling) -> bool {
    let content = || -> Result<bool, ScienceError> {
        let wanted = dose(Priming {
            target: bottling.target,
            already_in: bottling.already_in,
            beer: bottling.beer,
            sugar: bottling.sugar,
        })?;
        let guard = guard(bottling, wanted.sugar.value())?;
        let Some(ceiling) = guard.ceiling.filter(|_| bottling.over != Over::No) else {
            return Ok(false);
        };
        let limit = pressure(bottling, ceiling, WARM_ROOM)?;
        Ok(guard.worst <= ceiling && guard.at_hottest <= limit)
    };
    content().unwrap_or(false)
}

/// The worst case once `weighed` is in. For a plan's own dose it is what the plan counted, which has the
/// scale's rounding in it already; for any other amount it is [`guard`]'s.
///
/// ```
/// # use fermentside::advice::bottle::{Bottling, Over, dosing::Weighing, kinds::Bottle};
/// # use fermentside::quantity::{CarbonDioxideVolumes, Celsius, Estimate, GravityChange, Litres};
/// # use fermentside::science::{bottle_pressure::Closing, priming::Sugar};
/// use fermentside::advice::bottle::{plan, worst_once_weighed};
/// use fermentside::quantity::Grams;
///
/// // The bottling is that of `plan`, but half a litre of it.
/// # let bottling = Bottling {
/// #     over: Over::Judged,
/// #     points_left: Some(GravityChange::literal(0.0)),
/// #     yeast_may_go_on: false,
/// #     target: CarbonDioxideVolumes::literal(2.0),
/// #     already_in: Estimate::new(CarbonDioxideVolumes::literal(0.84), 0.04),
/// #     may_hold: None,
/// #     beer: Estimate::new(Litres::literal(0.5), 0.01),
/// #     sugar: Sugar::Sucrose,
/// #     weighing: Weighing::USUAL,
/// #     weakest: Bottle::HeavyGlass,
/// #     hottest: Celsius::literal(25.0),
/// #     closing: Closing::USUAL,
/// # };
/// let planned = plan(bottling)?;
/// let dose = planned.weigh().unwrap();
/// assert_eq!(worst_once_weighed(&bottling, dose)?, planned.guard.worst);
/// assert!(worst_once_weighed(&bottling, Grams::literal(4.0))? > planned.guard.worst);
/// let in_the_sun = Bottling { hottest: Celsius::literal(60.0), ..bottling };
/// assert!(worst_once_weighed(&in_the_sun, dose).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// As [`guard`].
pub fn worst_once_weighed(
    bottling: &Bottling,
    weighed: Grams,
) -> Result<CarbonDioxideVolumes, ScienceError> {
    match plan(*bottling) {
        Ok(plan) if plan.weigh() == Some(weighed) => Ok(plan.guard.worst),
        _ => guard(bottling, weighed).map(|guard| guard.worst),
    }
}

/// The warmest whole degree at which `worst` presses no harder than `limit`.
pub(super) fn cooler_place(
    bottling: &Bottling,
    worst: CarbonDioxideVolumes,
    limit: Kilopascals,
) -> Result<Next, ScienceError> {
    let mut t = bottling.hottest.value().floor();
    while t > WARM_ROOM.value() && pressure(bottling, worst, Celsius::nearest(t))? > limit {
        t -= 1.0;
    }
    Ok(Next::CoolerPlace(Celsius::nearest(t)))
}

/// The highest target, in tenths, that the glass would hold; if none is worth bottling for, other
/// bottles or time.
pub(super) fn way_down(
    bottling: &Bottling,
    ceiling: CarbonDioxideVolumes,
) -> Result<Next, ScienceError> {
    let limit = pressure(bottling, ceiling, WARM_ROOM)?;
    let mut tenths = (bottling.target.value() * 10.0).ceil() as i32 - 1;
    while f64::from(tenths) / 10.0 > bottling.already_in.value().value() && tenths >= 12 {
        let target = CarbonDioxideVolumes::nearest(f64::from(tenths) / 10.0);
        let lower = Priming {
            target,
            already_in: bottling.already_in,
            beer: bottling.beer,
            sugar: bottling.sugar,
        };
        let would = guard(bottling, dose(lower)?.sugar.value())?;
        if would.worst <= ceiling && would.at_hottest <= limit {
            return Ok(Next::LowerTarget(target));
        }
        tenths -= 1;
    }
    Ok(Next::StrongerBottles)
}
