//! The guard: carbon dioxide and pressure in a bottle in the worst case.
//!
//! Worst case for safety: the end of every range that makes the pressure higher.

use super::bottling::Bottling;
use super::dosing::Dosing;
use crate::quantity::{CarbonDioxideVolumes, Celsius, Grams, GravityChange, Kilopascals, Measured};
use crate::science::bottle_pressure::{End, from_points, in_bottle};
use crate::science::{ScienceError, Source, Step, Term, Worked};

/// Carbon dioxide and pressure in the worst case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Guard {
    /// Already in, upper end of whatever its history allows.
    pub already_in: CarbonDioxideVolumes,
    /// From the sugar, at full yield, in the bottle that gets the most of it.
    pub from_sugar: CarbonDioxideVolumes,
    /// Still to come.
    pub still_to_come: CarbonDioxideVolumes,
    /// All together.
    pub worst: CarbonDioxideVolumes,
    /// The ceiling of the weakest bottle; `None` for one that must not be filled.
    pub ceiling: Option<CarbonDioxideVolumes>,
    /// Pressure above the air outside at 20 °C.
    pub at_20: Kilopascals,
    /// And at the hottest place.
    pub at_hottest: Kilopascals,
}

/// What is taken as still to come when nothing bounds it: ten points.
const UNBOUNDED: GravityChange = GravityChange::literal(0.010);
/// 20 °C, where bottles are compared.
const ROOM: Celsius = Celsius::literal(20.0);

/// The warmest room that the ceilings in volumes are meant for (design advice, as they are).
pub(super) const WARM_ROOM: Celsius = Celsius::literal(30.0);

/// The worst case for so much sugar, whether it was the dose or not.
///
/// ```
/// # use fermentside::advice::bottle::{Bottling, Over, dosing::Weighing, kinds::Bottle};
/// # use fermentside::quantity::{Celsius, Estimate, GravityChange, Litres};
/// # use fermentside::science::{bottle_pressure::Closing, priming::Sugar};
/// use fermentside::advice::bottle::guard;
/// use fermentside::quantity::{CarbonDioxideVolumes, Grams};
///
/// // The bottling is that of `plan`, but a point may be left.
/// # let bottling = Bottling {
/// #     over: Over::Judged,
/// #     points_left: Some(GravityChange::literal(0.001)),
/// #     yeast_may_go_on: false,
/// #     target: CarbonDioxideVolumes::literal(2.4),
/// #     already_in: Estimate::new(CarbonDioxideVolumes::literal(0.84), 0.04),
/// #     may_hold: None,
/// #     beer: Estimate::new(Litres::literal(19.0), 0.3),
/// #     sugar: Sugar::Sucrose,
/// #     weighing: Weighing::USUAL,
/// #     weakest: Bottle::ReusableGlass,
/// #     hottest: Celsius::literal(25.0),
/// #     closing: Closing::USUAL,
/// # };
/// let found = guard(&bottling, Grams::literal(120.0))?;
/// assert_eq!(found.still_to_come, CarbonDioxideVolumes::literal(0.5));
/// // Not 0.84, 1.56 and 0.5, but the end of each that presses harder.
/// assert!(found.worst > CarbonDioxideVolumes::literal(0.84 + 1.56 + 0.5));
/// let in_the_sun = Bottling { hottest: Celsius::literal(60.0), ..bottling };
/// assert!(guard(&in_the_sun, Grams::literal(120.0)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError`] when an input lies outside what the formulas hold for.
pub fn guard(bottling: &Bottling, sugar: Grams) -> Result<Guard, ScienceError> {
    let held = bottling.already_in.upper(2.0);
    let may_hold = bottling.may_hold.map_or(held, |other| other.upper(2.0));
    let already_in = if may_hold > held { may_hold } else { held };
    let from_sugar = bottling.weighing.most(sugar, bottling.sugar, bottling.beer);
    let still_to_come = from_points(bottling.points_left.unwrap_or(UNBOUNDED));
    let worst = CarbonDioxideVolumes::nearest(
        already_in.value() + from_sugar.value() + still_to_come.value(),
    );
    Ok(Guard {
        already_in,
        from_sugar,
        still_to_come,
        worst,
        ceiling: bottling.weakest.ceiling(bottling.yeast_may_go_on),
        at_20: pressure(bottling, worst, ROOM)?,
        at_hottest: pressure(bottling, worst, bottling.hottest)?,
    })
}

/// Pressure of so much gas at `t`, by the end of the solubility that makes it higher.
pub(super) fn pressure(
    bottling: &Bottling,
    gas: CarbonDioxideVolumes,
    t: Celsius,
) -> Result<Kilopascals, ScienceError> {
    in_bottle(gas, t, bottling.closing, End::High).map(|found| found.gauge)
}

pub(super) fn guard_steps(guard: &Guard, dosing: Dosing) -> Vec<Step> {
    let how = match dosing {
        Dosing::Vessel => "100 % yield; 2 σ less beer, 5 % uneven; a step of the scale",
        Dosing::Bottles { .. } => "100 % yield; filled 2 % short; a step of the scale",
    };
    Worked::default()
        .step(Term::CarbonDioxideAlreadyIn, guard.already_in, "+ 2 σ", Source::Propagation)
        .step(Term::CarbonDioxideFromPriming, guard.from_sugar, how, Source::Stoichiometry)
        .step(
            Term::CarbonDioxideStillToCome,
            guard.still_to_come,
            "0.5 vol for each 0.001",
            Source::Balling1865,
        )
        .step(Term::CarbonDioxideTotal, guard.worst, "sum, worst case", None)
        .step(Term::PressureOverOutside, guard.at_20, "at 20 °C, worst case", Source::HenryLaw)
        .step(
            Term::PressureOverOutside,
            guard.at_hottest,
            "at the hottest place, worst case",
            Source::HenryLaw,
        )
        .steps
}
