//! How much sugar gives the wished carbon dioxide, by weight only.
//!
//! What is still to come from an unfinished fermentation never makes the dose smaller: that beer is
//! not bottled. The dose uses 95 % of the full yield (published practice spans 3.7 to 4.3 g/L of
//! sucrose or glucose a volume); a guard uses 100 %.

pub use super::sugar::{
    GLUCOSE_YIELD, KeptWort, MONOHYDRATE_WATER, OwnSugar, SUCROSE_YIELD, Sugar,
};

use super::carbon_dioxide::GRAMS_PER_VOLUME;
use super::{Amount, ScienceError, Source, Term, Worked};
use crate::quantity::{CarbonDioxideVolumes, Estimate, Extract, Grams, Litres, Measured};

/// Share of the full yield that a dose counts on.
const COUNTED_ON: f64 = 0.95;
/// One standard deviation of the yield in practice, relative.
const PRACTICE: f64 = 0.04;

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

/// Dose = (target − already in) × 1.977 × litres ÷ (0.95 × full yield). Kept-back wort makes the beer more
/// by its own volume, which is counted: a gram of it gives that much less.
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
/// [`ScienceError::NothingThere`] for no beer; [`ScienceError::OutOfReach`] for a sugar too weak to get
/// there; [`ScienceError::OutOfRange`] for more sugar than can be.
pub fn dose(priming: Priming) -> Result<Dose, ScienceError> {
    let litres = priming.beer.value().value();
    if litres <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let full = priming.sugar.full_yield();
    let to_add = (priming.target.value() - priming.already_in.value().value()).max(0.0);
    let dilutes = priming.target.value() * GRAMS_PER_VOLUME * priming.sugar.litres_a_gram();
    let counted = COUNTED_ON * full.value().value() - dilutes;
    // So weak that no real amount of it would do: a tenth of a gram of gas from a hundred.
    if counted < 0.001 && to_add > 0.0 {
        return Err(ScienceError::OutOfReach);
    }
    let per_volume = GRAMS_PER_VOLUME * litres / counted.max(0.001);
    let grams = to_add * per_volume;
    let sugar = Grams::new(grams)?;
    // What a relative doubt of the yield does to the dose.
    let leverage = COUNTED_ON * full.value().value() / counted.max(0.001);
    let doubt = PRACTICE.hypot(full.sigma() / full.value().value().max(0.001));
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
            Amount::Number(per_volume / litres, 2, "g/L a volume"),
            "1.977 ÷ (0.95 × yield)",
            Source::CommonPractice,
        )
        .step(Term::PrimingSugar, sugar, "to add × sugar for one volume × volume", None)
        .doubt(Term::SugarYield, grams * leverage * doubt)
        .doubt(Term::CarbonDioxideAlreadyIn, per_volume * priming.already_in.sigma())
        .doubt(Term::BeerVolume, grams * priming.beer.sigma() / litres);
    Ok(Dose { sugar: Estimate::new(sugar, worked.sigma()), worked })
}

/// Carbon dioxide that so much sugar should give in `beer` litres (its own volume already in them), by
/// what a dose counts on.
///
/// ```
/// use fermentside::quantity::{Grams, Litres, Measured};
/// use fermentside::science::priming::{Sugar, expected_from};
///
/// // 4 g/L of sugar a volume (M. Hibberd's table).
/// let gives = |litres| expected_from(Grams::literal(4.0), Sugar::Sucrose, Litres::literal(litres));
/// assert!((gives(1.0)?.value() - 1.0).abs() < 0.05);
/// assert!(gives(0.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no beer; [`ScienceError::OutOfRange`] beyond 60 volumes.
pub fn expected_from(
    sugar: Grams,
    kind: Sugar,
    beer: Litres,
) -> Result<CarbonDioxideVolumes, ScienceError> {
    if beer.value() <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let grams = sugar.value() * COUNTED_ON * kind.full_yield().value().value();
    Ok(CarbonDioxideVolumes::new(grams / GRAMS_PER_VOLUME / beer.value())?)
}

/// The most carbon dioxide that so much sugar can give: 100 % yield, the upper end (two standard
/// deviations) of the sugar's own spread, in `beer` litres (give the lower end) and its own volume.
///
/// ```
/// use fermentside::quantity::{Grams, Litres, Measured};
/// use fermentside::science::priming::{Sugar, most_from};
///
/// // By molar masses 3.844 g/L of sucrose are a volume.
/// let gives = |g| most_from(Grams::literal(g), Sugar::Sucrose, Litres::literal(1.0));
/// assert!((gives(3.844)?.value() - 1.0).abs() < 0.001);
/// assert!(gives(500.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
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
    let litres = beer.value() + sugar.value() * kind.litres_a_gram();
    Ok(CarbonDioxideVolumes::new(grams / GRAMS_PER_VOLUME / litres)?)
}

/// Carbon dioxide from so much extract that ferments in each litre, by Balling's balance: 0.9565 g from
/// 2.0665 g, the rest going to alcohol and yeast. For what a stalled beer still holds.
///
/// ```
/// use fermentside::quantity::{Extract, Measured};
/// use fermentside::science::priming::from_extract;
///
/// // Balling: 4.271 g/L of extract are a volume.
/// assert!((from_extract(Extract::literal(4.271)).value() - 1.0).abs() < 0.001);
/// ```
#[must_use]
pub fn from_extract(fermenting: Extract) -> CarbonDioxideVolumes {
    CarbonDioxideVolumes::nearest(fermenting.value() * 0.9565 / 2.0665 / GRAMS_PER_VOLUME)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::SpecificGravity;

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
    fn kept_wort_carries_as_far_as_sugar_does() {
        // Worked by hand: 2.4 − 0.84 volumes in 19 L are 58.6 g of gas; a kilogram of 1.050 wort that
        // ends at 1.010 gives 39.7 g at 95 % and takes 4.5 g for its own litre: 1.66 kg, 1.6 L.
        let wort = KeptWort {
            gravity: SpecificGravity::literal(1.050),
            end: SpecificGravity::literal(1.010),
        };
        let priming = Priming {
            target: CarbonDioxideVolumes::literal(2.4),
            already_in: Estimate::exact(CarbonDioxideVolumes::literal(0.84)),
            beer: Estimate::exact(Litres::literal(19.0)),
            sugar: Sugar::Wort(wort),
        };
        let grams = dose(priming).expect("in range").sugar.value();
        assert!((grams.value() - 1660.0).abs() < 15.0, "{grams:?}");
        let weak = KeptWort { gravity: SpecificGravity::literal(1.004), ..wort };
        let asked = dose(Priming { sugar: Sugar::Wort(weak), ..priming });
        assert_eq!(asked, Err(ScienceError::OutOfReach));
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
