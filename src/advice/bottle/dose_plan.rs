//! Bottle: how much sugar, and whether the glass holds.
//!
//! Best estimate for the dose, worst case for the guard. The two leave this file together or not at
//! all: there is no way to a dose but through [`plan`], and above a ceiling it is withheld. Unfinished
//! beer is never answered with less sugar.

use super::bottling::{Bottling, Over};
use super::dosing::{Dosing, PerBottle, a_litre_filled};
use super::guard::{Guard, WARM_ROOM, guard, guard_steps, pressure};
use super::under_ceiling::{cooler_place, way_down};
use crate::advice::{Advice, Verdict};
use crate::quantity::{CarbonDioxideVolumes, Celsius, Grams, Kilopascals, Litres, Measured};
use crate::science::priming::{Dose, dose};
use crate::science::{ScienceError, Term, Worked};

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// It is not known to be finished.
    NotFinished,
    /// It still worked when it was chilled.
    ColdStopped,
    /// The brewer's own reason stands in for the judgement.
    OnStatedReason,
    /// Nothing bounds what is still to come.
    LeftUnknown,
    /// This bottle is not made for pressure.
    NotForPressure,
    /// The worst case lies above the ceiling.
    AboveCeiling {
        /// Worst case.
        worst: CarbonDioxideVolumes,
        /// The bottle's ceiling.
        ceiling: CarbonDioxideVolumes,
    },
    /// The worst case is within the usual ceiling.
    WithinCeiling {
        /// Worst case.
        worst: CarbonDioxideVolumes,
        /// The bottle's ceiling.
        ceiling: CarbonDioxideVolumes,
    },
    /// Within the ceiling, but for glass like this already much.
    CautionForGlass,
    /// This yeast may go on for weeks.
    YeastMayGoOn,
    /// The beer already holds as much as is wished.
    HoldsEnough,
    /// In the hottest place this would press harder than the bottle's ceiling does in a warm room.
    TooHotAPlace {
        /// The place.
        hottest: Celsius,
        /// Pressure there, at worst.
        pressure: Kilopascals,
        /// Pressure at the ceiling, at 30 °C.
        limit: Kilopascals,
    },
    /// Most of the worst case is what may still ferment.
    MostlyStillToCome(CarbonDioxideVolumes),
    /// Its history leaves open that it holds more than the dose counts on; the guard counts this.
    MayHoldMore(CarbonDioxideVolumes),
    /// For a bottle this small the scale is too rough.
    ScaleTooRough(Litres),
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Weigh it and bottle.
    Bottle,
    /// Wait, and read the gravity again.
    ReadAgain,
    /// Go down to this target, or take stronger bottles.
    LowerTarget(CarbonDioxideVolumes),
    /// Only stronger bottles, or waiting, help.
    StrongerBottles,
    /// Keep them cooler than this, or go down with the target.
    CoolerPlace(Celsius),
}

/// The plan: judgement, guard and, only when the guard is content, the dose.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The judgement.
    pub advice: Advice<Reason, Next>,
    /// The worst case.
    pub guard: Guard,
    dose: Option<Dose>,
    asked: Bottling,
}

impl Plan {
    /// The sugar to weigh; `None` when it is withheld.
    #[must_use]
    pub fn dose(&self) -> Option<&Dose> {
        self.dose.as_ref()
    }

    /// The same as the scale can show it.
    #[must_use]
    pub fn weigh(&self) -> Option<Grams> {
        self.dose().map(|dose| self.asked.weighing.on_scale(dose.sugar.value()))
    }

    /// The dose's share for so much of the beer; `None` when it is withheld.
    #[must_use]
    pub fn sugar_for(&self, volume: Litres) -> Option<Grams> {
        let a_litre = self.dose()?.sugar.value().value() / self.asked.beer.value().value();
        Some(Grams::nearest(a_litre * volume.value()))
    }

    /// What there is to fill into bottles: the beer, and the wort that is added to it.
    #[must_use]
    pub fn to_fill(&self) -> Litres {
        let Bottling { sugar, beer, .. } = self.asked;
        let more = self.weigh().and_then(|weigh| sugar.volume(weigh)).map_or(0.0, Measured::value);
        Litres::nearest(beer.value().value() + more)
    }

    /// The step of the scale that was counted.
    #[must_use]
    pub fn scale(&self) -> Grams {
        self.asked.weighing.scale
    }

    /// The sugar for one bottle of `size`; `None` when it is withheld, when the vessel is dosed, or for
    /// a bottle smaller than the one that the guard was told of.
    #[must_use]
    pub fn per_bottle(&self, size: Litres) -> Option<PerBottle> {
        let Bottling { weighing, sugar, beer, .. } = self.asked;
        match weighing.dosing {
            Dosing::Bottles { smallest } if size >= smallest => {
                let a_litre = a_litre_filled(self.dose()?.sugar.value(), sugar, beer.value());
                Some(PerBottle::of(size, a_litre, sugar, weighing))
            }
            _ => None,
        }
    }
}

/// Makes the plan.
///
/// ```
/// use fermentside::advice::Verdict;
/// use fermentside::advice::bottle::{Bottling, Over, dosing::Weighing, kinds::Bottle, plan};
/// use fermentside::quantity::{CarbonDioxideVolumes, Celsius, Estimate, GravityChange, Litres};
/// use fermentside::science::{bottle_pressure::Closing, priming::Sugar};
///
/// let bottling = Bottling {
///     over: Over::Judged,
///     points_left: Some(GravityChange::literal(0.0)),
///     yeast_may_go_on: false,
///     target: CarbonDioxideVolumes::literal(2.4),
///     already_in: Estimate::new(CarbonDioxideVolumes::literal(0.84), 0.04),
///     may_hold: None,
///     beer: Estimate::new(Litres::literal(19.0), 0.3),
///     sugar: Sugar::Sucrose,
///     weighing: Weighing::USUAL,
///     weakest: Bottle::ReusableGlass,
///     hottest: Celsius::literal(25.0),
///     closing: Closing::USUAL,
/// };
/// assert_eq!(plan(bottling)?.weigh().map(f64::from), Some(120.0));
/// let thin = plan(Bottling { weakest: Bottle::NotForPressure, ..bottling })?;
/// assert_eq!((thin.advice.verdict, thin.dose()), (Verdict::Stop, None));
/// let unfinished = plan(Bottling { over: Over::No, ..bottling })?;
/// assert_eq!((unfinished.advice.verdict, unfinished.dose()), (Verdict::Wait, None));
/// assert!(plan(Bottling { hottest: Celsius::literal(60.0), ..bottling }).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError`] when an input lies outside what the formulas hold for.
pub fn plan(bottling: Bottling) -> Result<Plan, ScienceError> {
    let wanted = dose(bottling.priming())?;
    let guard = guard(&bottling, wanted.sugar.value())?;
    let mut reasons = Vec::new();
    let mut verdict = Verdict::Go;
    let mut next = Next::Bottle;
    if bottling.yeast_may_go_on {
        reasons.push(Reason::YeastMayGoOn);
    }
    match guard.ceiling {
        None => {
            reasons.push(Reason::NotForPressure);
            (verdict, next) = (Verdict::Stop, Next::StrongerBottles);
        }
        Some(ceiling) if guard.worst > ceiling => {
            reasons.push(Reason::AboveCeiling { worst: guard.worst, ceiling });
            if guard.still_to_come > guard.from_sugar {
                reasons.push(Reason::MostlyStillToCome(guard.still_to_come));
            }
            verdict = Verdict::Stop;
            next = way_down(&bottling, ceiling)?.map_or(Next::StrongerBottles, Next::LowerTarget);
        }
        Some(ceiling) if guard.at_hottest > pressure(&bottling, ceiling, WARM_ROOM)? => {
            let limit = pressure(&bottling, ceiling, WARM_ROOM)?;
            let (hottest, pressure) = (bottling.hottest, guard.at_hottest);
            reasons.push(Reason::TooHotAPlace { hottest, pressure, limit });
            verdict = Verdict::Stop;
            next = Next::CoolerPlace(cooler_place(&bottling, guard.worst, limit)?);
        }
        Some(ceiling) => {
            reasons.push(Reason::WithinCeiling { worst: guard.worst, ceiling });
            if bottling.weakest.caution_above().is_some_and(|above| guard.worst > above) {
                reasons.push(Reason::CautionForGlass);
            }
        }
    }
    if guard.already_in > bottling.already_in.upper(2.0) {
        reasons.push(Reason::MayHoldMore(guard.already_in));
    }
    if let Dosing::Bottles { smallest } = bottling.weighing.dosing {
        let a_litre = a_litre_filled(wanted.sugar.value(), bottling.sugar, bottling.beer.value());
        if PerBottle::of(smallest, a_litre, bottling.sugar, bottling.weighing).too_rough {
            reasons.push(Reason::ScaleTooRough(smallest));
        }
    }
    if bottling.points_left.is_none() {
        reasons.push(Reason::LeftUnknown);
    }
    match bottling.over {
        Over::Judged => {}
        Over::Stated => {
            reasons.push(Reason::OnStatedReason);
            // Beer that only a word says is finished is not answered with less sugar either.
            let way_down = matches!(next, Next::LowerTarget(_) | Next::StrongerBottles);
            if way_down && guard.ceiling.is_some() {
                next = Next::ReadAgain;
            }
        }
        Over::No | Over::ColdStopped => {
            let cold = bottling.over == Over::ColdStopped;
            reasons.insert(0, if cold { Reason::ColdStopped } else { Reason::NotFinished });
            // Glass that could not hold it anyway stays the stronger word, but never with "less sugar".
            if verdict == Verdict::Go {
                verdict = Verdict::Wait;
            }
            if guard.ceiling.is_some() {
                next = Next::ReadAgain;
            }
        }
    }
    if wanted.sugar.value().value() == 0.0 {
        reasons.push(Reason::HoldsEnough);
    }
    let mut worked = Worked {
        steps: wanted
            .worked
            .steps
            .iter()
            .copied()
            .chain(guard_steps(&guard, bottling.weighing.dosing))
            .collect(),
        ..wanted.worked.clone()
    };
    let dose = (verdict == Verdict::Go).then_some(wanted);
    if dose.is_none() {
        // Nor is it in the working: neither the sugar itself nor what its ± is made of.
        worked.steps.retain(|step| step.term != Term::PrimingSugar);
        worked.doubts.clear();
    }
    Ok(Plan { advice: Advice { verdict, reasons, next, worked }, guard, dose, asked: bottling })
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
