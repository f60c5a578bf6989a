//! How much sugar gives the wished carbon dioxide, by weight only.
//!
//! What is still to come from an unfinished fermentation never makes the dose smaller: that beer is
//! not bottled. The dose uses 95 % of the full yield (published practice spans 3.7 to 4.3 g/L of
//! sucrose or glucose a volume); a guard uses 100 %.

use super::carbon_dioxide::GRAMS_PER_VOLUME;
use super::{Amount, ScienceError, Source, Term, Worked};
use crate::quantity::{CarbonDioxideVolumes, Estimate, Extract, Grams, Litres, Measured, Share};
use serde::{Deserialize, Serialize};

/// Grams of carbon dioxide from a gram of glucose, by molar masses (IUPAC): 2 × 44.009 / 180.156.
pub const GLUCOSE_YIELD: Share = Share::literal(2.0 * 44.009 / 180.156);
/// From a gram of sucrose: 4 × 44.009 / 342.297. Maltose is the same.
pub const SUCROSE_YIELD: Share = Share::literal(4.0 * 44.009 / 342.297);
/// Water in dextrose monohydrate, by mass: 18.015 / 198.171.
pub const MONOHYDRATE_WATER: Share = Share::literal(18.015 / 198.171);
/// Share of the full yield that a dose counts on.
const COUNTED_ON: f64 = 0.95;
/// One standard deviation of the yield in practice, relative.
const PRACTICE: f64 = 0.04;

/// What is put in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sugar {
    /// Table sugar.
    Sucrose,
    /// The usual corn sugar, which carries 9.1 % water.
    DextroseMonohydrate,
    /// Glucose without water.
    GlucoseAnhydrous,
    /// Dry malt extract: 0.97 solids, of which 55 to 75 % ferments.
    DryMaltExtract,
    /// Honey: about 0.80 sugars.
    Honey,
}

impl Sugar {
    /// Every kind, the commonest first.
    pub const ALL: [Self; 5] = [
        Self::Sucrose,
        Self::DextroseMonohydrate,
        Self::GlucoseAnhydrous,
        Self::DryMaltExtract,
        Self::Honey,
    ];

    /// Grams of carbon dioxide from a gram, at full yield, with the kind's own spread.
    #[must_use]
    pub fn full_yield(self) -> Estimate<Share> {
        let (glucose, sucrose) = (GLUCOSE_YIELD.value(), SUCROSE_YIELD.value());
        let (best, sigma) = match self {
            Self::Sucrose => (sucrose, 0.0),
            Self::DextroseMonohydrate => (glucose * (1.0 - MONOHYDRATE_WATER.value()), 0.0),
            Self::GlucoseAnhydrous => (glucose, 0.0),
            // Half the spread of fermentability is taken as two standard deviations.
            Self::DryMaltExtract => (0.97 * 0.65 * sucrose, 0.97 * 0.05 * sucrose),
            Self::Honey => (0.80 * glucose, 0.025 * glucose),
        };
        Estimate::new(Share::nearest(best), sigma)
    }
}

/// What is to be primed, and to what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Priming {
    /// The carbon dioxide wished for.
    pub target: CarbonDioxideVolumes,
    /// What the beer already holds.
    pub already_in: Estimate<CarbonDioxideVolumes>,
    /// The beer actually in the bottling vessel.
    pub beer: Estimate<Litres>,
    /// With what.
    pub sugar: Sugar,
}

/// The sugar to weigh.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// For the whole vessel; zero when the beer already holds the target.
    pub sugar: Estimate<Grams>,
    /// How it was worked out.
    pub worked: Worked,
}

/// Dose = (target − already in) × 1.977 × litres ÷ (0.95 × full yield).
///
/// ```
/// use fermentside::quantity::{CarbonDioxideVolumes, Estimate, Litres, Measured};
/// use fermentside::science::priming::{Priming, Sugar, dose};
///
/// let found = dose(Priming {
///     target: CarbonDioxideVolumes::literal(2.4),
///     already_in: Estimate::new(CarbonDioxideVolumes::literal(0.84), 0.04),
///     beer: Estimate::new(Litres::literal(19.0), 0.3),
///     sugar: Sugar::Sucrose,
/// })?;
/// assert_eq!(format!("{:.0}", found.sugar.value().value()), "120");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no beer; [`ScienceError::OutOfRange`] for more sugar than can be.
pub fn dose(priming: Priming) -> Result<Dose, ScienceError> {
    let litres = priming.beer.value().value();
    if litres <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let full = priming.sugar.full_yield();
    let counted = COUNTED_ON * full.value().value();
    let to_add = (priming.target.value() - priming.already_in.value().value()).max(0.0);
    let per_volume = GRAMS_PER_VOLUME * litres / counted;
    let grams = to_add * per_volume;
    let sugar = Grams::new(grams)?;
    let worked = Worked::default()
        .input(Term::CarbonDioxideTarget, priming.target)
        .input(Term::CarbonDioxideAlreadyIn, priming.already_in.value())
        .input(Term::BeerVolume, priming.beer.value())
        .step(
            Term::CarbonDioxideToAdd,
            CarbonDioxideVolumes::new(to_add)?,
            "target − already in",
            None,
        )
        .step(
            Term::SugarYield,
            Amount::Number(full.value().value(), 4, "g CO₂ a gram"),
            "full yield by molar mass, solids and fermentability",
            Source::Stoichiometry,
        )
        .step(
            Term::SugarPerVolume,
            Amount::Number(GRAMS_PER_VOLUME / counted, 2, "g/L a volume"),
            "1.977 ÷ (0.95 × yield)",
            Source::CommonPractice,
        )
        .step(Term::PrimingSugar, sugar, "to add × g/L a volume × litres", None)
        .doubt(Term::SugarYield, grams * PRACTICE.hypot(full.sigma() / full.value().value()))
        .doubt(Term::CarbonDioxideAlreadyIn, per_volume * priming.already_in.sigma())
        .doubt(Term::BeerVolume, grams * priming.beer.sigma() / litres);
    Ok(Dose { sugar: Estimate::new(sugar, worked.sigma()), worked })
}

/// The most carbon dioxide that so much sugar can give: 100 % yield, the upper end (two standard
/// deviations) of the sugar's own spread, in `beer` litres (give the lower end).
///
/// # Errors
/// [`ScienceError::NothingThere`] for no beer; [`ScienceError::OutOfRange`] beyond 60 volumes.
pub fn most_from(
    sugar: Grams,
    kind: Sugar,
    beer: Litres,
) -> Result<CarbonDioxideVolumes, ScienceError> {
    if beer.value() <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let grams = sugar.value() * kind.full_yield().upper(2.0).value();
    Ok(CarbonDioxideVolumes::new(grams / GRAMS_PER_VOLUME / beer.value())?)
}

/// Carbon dioxide from so much extract that ferments in each litre, by Balling's balance: 0.9565 g from
/// 2.0665 g, the rest going to alcohol and yeast. For wort kept back as priming, and for what a stalled
/// beer still holds.
#[must_use]
pub fn from_extract(fermenting: Extract) -> CarbonDioxideVolumes {
    CarbonDioxideVolumes::nearest(fermenting.value() * 0.9565 / 2.0665 / GRAMS_PER_VOLUME)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_the_hand_check() {
        // 20 °C beer (0.84 volumes in it), 2.4 volumes, 19 L: about 115 ± 8 g of table sugar.
        let priming = Priming {
            target: CarbonDioxideVolumes::literal(2.4),
            already_in: Estimate::new(CarbonDioxideVolumes::literal(0.84), 0.04),
            beer: Estimate::new(Litres::literal(19.0), 0.3),
            sugar: Sugar::Sucrose,
        };
        let dose = dose(priming).expect("in range").sugar;
        assert!((dose.value().value() - 115.0).abs() < 8.0, "{dose:?}");
        assert!((4.0..10.0).contains(&dose.sigma()), "{dose:?}");
    }

    #[test]
    fn a_beer_that_holds_enough_gets_none() {
        let priming = Priming {
            target: CarbonDioxideVolumes::literal(1.2),
            already_in: Estimate::new(CarbonDioxideVolumes::literal(1.6), 0.05),
            beer: Estimate::exact(Litres::literal(19.0)),
            sugar: Sugar::Honey,
        };
        assert_eq!(dose(priming).expect("in range").sugar.value().value(), 0.0);
    }
}
