//! Carbon dioxide already in the beer, from what has happened to it since it went quiet.
//!
//! The rule is the warmest temperature since then: gas that left under an airlock does not come back when
//! the beer is chilled. Where it was closed while it was cold, was still working then, or was warm for
//! too short a time to let its gas go, it may hold what the cold allows. Then there are two ends: the
//! dose is for one of them, as the brewer chooses, and the guard counts the one that presses harder.

use super::bottling::Bottling;
use super::dose_plan::{Plan, plan};
use crate::advice::practice::remembered;
use crate::quantity::{CarbonDioxideVolumes, Celsius, Estimate, Grams, Hours, Measured, Metres};
use crate::science::carbon_dioxide::already_in;
use crate::science::{ScienceError, Worked};
use serde::{Deserialize, Serialize};

/// Still beer lets most of its surplus go in two days (common practice, no source).
const LETS_GO: Hours = Hours::literal(48.0);
/// Two ends nearer than this are one.
const NO_MATTER: f64 = 0.1;

crate::choices! {
    /// How the vessel was closed while the beer was cold.
    pub enum Seal {
        /// Under an airlock, open to the air.
        Airlock = "airlock",
        /// Closed, so that gas could not leave or be lost.
        Sealed = "sealed",
        /// Nobody knows.
        Unsure = "unsure",
    }
}

crate::choices! {
    /// Whether it still made gas when it was chilled.
    pub enum Working {
        /// It had gone quiet.
        Quiet = "quiet",
        /// It still worked.
        Still = "still",
        /// Nobody knows.
        Unsure = "unsure",
    }
}

/// What happened to the beer beside its warmest temperature.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Past {
    /// About how long it was that warm; `None` when nobody knows, which is taken as long.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub warm_for: Option<Hours>,
    /// The coldest it has been since it went quiet, or since it was chilled; `None` when it was not.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coldest: Option<Celsius>,
    /// How it was closed then.
    pub seal: Seal,
    /// Whether it still worked then.
    pub when_chilled: Working,
}

impl Past {
    /// Never chilled.
    pub const PLAIN: Self =
        Self { warm_for: None, coldest: None, seal: Seal::Airlock, when_chilled: Working::Quiet };
}

/// Why it may hold more than the rule says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doubt {
    /// It was closed while it was cold.
    ColdSealed,
    /// It still worked in the cold.
    ColdWorking,
    /// It was warm for so short a time.
    ShortWarmth(Hours),
    /// Nobody knows how it was closed, or whether it still worked.
    NotKnown,
}

/// What the beer holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// By the warmest temperature.
    pub by_rule: Estimate<CarbonDioxideVolumes>,
    /// What it may hold instead, and why.
    pub may_hold: Option<(Estimate<CarbonDioxideVolumes>, Doubt)>,
    /// How the rule's value was worked out.
    pub worked: Worked,
}

/// What the beer holds after `past`, at most as warm as `warmest`, at `height`.
///
/// ```
/// use fermentside::advice::bottle::history::{Doubt, Past, Seal, held};
/// use fermentside::quantity::{Celsius, Estimate, Measured, Metres};
///
/// let sea = Metres::literal(0.0);
/// let at = |t, past| held(Estimate::new(Celsius::literal(t), 1.0), past, sea);
/// let plain = at(20.0, Past::PLAIN)?;
/// assert_eq!(format!("{:.1}", plain.by_rule.value().value()), "0.8");
/// let chilled = Past { coldest: Some(Celsius::literal(2.0)), seal: Seal::Sealed, ..Past::PLAIN };
/// let (more, why) = at(20.0, chilled)?.may_hold.unwrap();
/// assert!(more.value() > plain.by_rule.value() && why == Doubt::ColdSealed);
/// assert!(at(60.0, Past::PLAIN).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside −2 to 45 °C.
pub fn held(warmest: Estimate<Celsius>, past: Past, height: Metres) -> Result<Held, ScienceError> {
    let rule = already_in(warmest, height)?;
    let mut may_hold = None;
    if let Some(coldest) = past.coldest
        && let Some(doubt) = doubt(past)
    {
        let cold = already_in(remembered(coldest), height)?.volumes;
        if cold.value().value() - rule.volumes.value().value() > NO_MATTER {
            may_hold = Some((cold, doubt));
        }
    }
    Ok(Held { by_rule: rule.volumes, may_hold, worked: rule.worked })
}

fn doubt(past: Past) -> Option<Doubt> {
    match (past.seal, past.when_chilled, past.warm_for) {
        (_, Working::Still, _) => Some(Doubt::ColdWorking),
        (Seal::Sealed, ..) => Some(Doubt::ColdSealed),
        (_, _, Some(hours)) if hours < LETS_GO => Some(Doubt::ShortWarmth(hours)),
        (Seal::Unsure, ..) | (_, Working::Unsure, _) => Some(Doubt::NotKnown),
        (Seal::Airlock, Working::Quiet, _) => None,
    }
}

/// The same beer dosed for either end, and what it costs to be wrong.
#[derive(Clone, Debug, PartialEq)]
pub struct Ends {
    /// Dosed by the warmest temperature.
    pub by_rule: Plan,
    /// Dosed for beer that holds more.
    pub holds_more: Plan,
    /// What is wished for.
    pub target: CarbonDioxideVolumes,
    /// By so much it would be too lively, or too flat, dosed for the wrong end.
    pub off_by: CarbonDioxideVolumes,
    /// What it comes to when it was dosed by the warmest temperature and holds more.
    pub too_lively: CarbonDioxideVolumes,
    /// What it comes to when it was dosed for beer that holds more and does not.
    pub too_flat: CarbonDioxideVolumes,
}

impl Ends {
    /// Sugar between the two doses; `None` while either is withheld.
    #[must_use]
    pub fn apart(&self) -> Option<Grams> {
        let [rule, more] = [&self.by_rule, &self.holds_more].map(|plan| plan.dose());
        let grams = |dose: &crate::science::priming::Dose| dose.sugar.value().value();
        Some(Grams::nearest(grams(rule?) - grams(more?)))
    }
}

/// Plans for both ends of `held`; `None` when there is only one. The guard is the same in both: it counts
/// the end that presses harder.
///
/// ```
/// # use fermentside::advice::bottle::asked::{Asked, Cold, DoseFor, Ended, Glass, SugarGoes, WarmFor};
/// # use fermentside::advice::bottle::history::{Seal, Working, both_ends};
/// # use fermentside::advice::bottle::{Bottling, Over, kinds::Bottle};
/// # use fermentside::quantity::{
/// #     CarbonDioxideVolumes, Celsius, Grams, GravityChange, Litres, MassUnit, Measured, Metres,
/// # };
/// # use fermentside::science::priming::Sugar;
/// // Closed tight at 2 °C in a heavy bottle; the rest is as usual.
/// let cold = Cold {
///     coldest: Celsius::literal(2.0),
///     seal: Seal::Sealed,
///     working: Working::Quiet,
///     warm_for: WarmFor::Long,
/// };
/// # let asked = Asked {
/// #     ended: Ended {
/// #         over: Over::Judged,
/// #         points_left: GravityChange::literal(0.0005),
/// #         yeast_may_go_on: false,
/// #     },
/// #     beer: Litres::literal(19.0),
/// #     target: CarbonDioxideVolumes::literal(2.0),
/// #     warmest: Celsius::literal(20.0),
/// #     cold: None,
/// #     dose_for: DoseFor::Rule,
/// #     sugar: Sugar::Sucrose,
/// #     sugar_goes: SugarGoes::Vessel,
/// #     scale: Grams::literal(1.0),
/// #     unit: MassUnit::Grams,
/// #     glass: Glass { weakest: Bottle::HeavyGlass, smallest: Litres::literal(0.5) },
/// #     hottest: Celsius::literal(25.0),
/// #     height: Metres::literal(0.0),
/// # };
/// let ready = Asked { cold: Some(cold), ..asked }.ready()?;
/// let ends = both_ends(ready.bottling, &ready.held)?.unwrap();
/// assert!(ends.too_flat < ends.target && ends.target < ends.too_lively);
/// assert!(ends.by_rule.weigh() > ends.holds_more.weigh());
/// let plain = asked.ready()?;
/// assert_eq!(both_ends(plain.bottling, &plain.held)?, None);
/// let in_the_sun = Bottling { hottest: Celsius::literal(60.0), ..ready.bottling };
/// assert!(both_ends(in_the_sun, &ready.held).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// As [`plan`].
pub fn both_ends(bottling: Bottling, held: &Held) -> Result<Option<Ends>, ScienceError> {
    let Some((more, _)) = held.may_hold else { return Ok(None) };
    let for_end = |already_in| plan(Bottling { already_in, may_hold: Some(more), ..bottling });
    let off_by = more.value().value() - held.by_rule.value().value();
    Ok(Some(Ends {
        by_rule: for_end(held.by_rule)?,
        holds_more: for_end(more)?,
        target: bottling.target,
        off_by: CarbonDioxideVolumes::nearest(off_by),
        too_lively: CarbonDioxideVolumes::nearest(bottling.target.value() + off_by),
        too_flat: CarbonDioxideVolumes::nearest(bottling.target.value() - off_by),
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after(past: Past) -> Held {
        let warmest = Estimate::new(Celsius::literal(20.0), 1.0);
        held(warmest, past, Metres::literal(0.0)).expect("in range")
    }

    const CRASHED: Past = Past { coldest: Some(Celsius::literal(2.0)), ..Past::PLAIN };

    #[test]
    fn gas_that_left_does_not_come_back_under_an_airlock() {
        let crashed = after(CRASHED);
        assert_eq!(crashed.may_hold, None);
        assert_eq!(crashed.by_rule, after(Past::PLAIN).by_rule);
    }

    #[test]
    fn closed_or_working_in_the_cold_it_may_hold_twice_as_much() {
        for (past, doubt) in [
            (Past { seal: Seal::Sealed, ..CRASHED }, Doubt::ColdSealed),
            (Past { when_chilled: Working::Still, ..CRASHED }, Doubt::ColdWorking),
            (Past { seal: Seal::Unsure, ..CRASHED }, Doubt::NotKnown),
            (
                Past { warm_for: Some(Hours::literal(12.0)), ..CRASHED },
                Doubt::ShortWarmth(Hours::literal(12.0)),
            ),
        ] {
            let (cold, why) = after(past).may_hold.expect("two ends");
            // A trade table has 0.88 and 1.6 volumes for pure water at 20 and 2 °C; beer 4 % less.
            assert!((cold.value().value() - 1.54).abs() < 0.06, "{cold:?}");
            assert_eq!(why, doubt);
        }
    }

    #[test]
    fn a_little_cooler_is_no_matter() {
        let past =
            Past { coldest: Some(Celsius::literal(18.0)), seal: Seal::Sealed, ..Past::PLAIN };
        assert_eq!(after(past).may_hold, None);
    }
}
