//! The starting gravity that follows from what was weighed in: extract, and the volume it is in.

pub use super::practice::by_mark;

use super::root::rising_root;
use super::{Amount, ScienceError, Source, Term, Worked, sucrose};
use crate::quantity::{Estimate, Grams, Litres, Measured, Plato, Share, SpecificGravity};
use serde::{Deserialize, Serialize};

crate::choices! {
    /// What goes in. The stored names never change.
    pub enum Fermentable {
        /// Malt syrup, hopped or not.
        MaltSyrup = "malt_syrup",
        /// Dry malt extract.
        DryMalt = "dry_malt",
        /// Table sugar.
        Sucrose = "sucrose",
        /// Dextrose with its water of crystallisation, as corn sugar is sold.
        Dextrose = "dextrose",
        /// Honey.
        Honey = "honey",
        /// Anything else; its share of extract is given with it.
        Own = "own",
    }
}

impl Fermentable {
    /// Usual share of extract by mass (common practice, no source; dextrose monohydrate is
    /// 180.16 ÷ 198.17 by its molar masses). `None` where it has to be given.
    ///
    /// ```
    /// use fermentside::quantity::Share;
    /// use fermentside::science::kit_gravity::Fermentable;
    ///
    /// assert_eq!(Fermentable::DryMalt.usual_extract(), Some(Share::literal(0.97)));
    /// assert_eq!(Fermentable::Own.usual_extract(), None);
    /// ```
    #[must_use]
    pub const fn usual_extract(self) -> Option<Share> {
        let share = match self {
            Self::MaltSyrup | Self::Honey => 0.80,
            Self::DryMalt => 0.97,
            Self::Sucrose => 1.00,
            Self::Dextrose => 0.91,
            Self::Own => return None,
        };
        Some(Share::literal(share))
    }

    /// One standard deviation of that share (common practice, no source).
    const fn doubt(self) -> f64 {
        match self {
            Self::MaltSyrup => 0.02,
            Self::DryMalt => 0.01,
            Self::Sucrose => 0.001,
            Self::Dextrose => 0.005,
            Self::Honey | Self::Own => 0.03,
        }
    }
}

/// One thing that was weighed in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Ingredient {
    /// What it is.
    pub kind: Fermentable,
    /// How much, as weighed or as the tin says.
    pub mass: Grams,
    /// Share of extract by mass, where the brewer knows better than [`Fermentable::usual_extract`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub extract: Option<Share>,
    /// Share of water by mass; all that is not extract when not given. What is neither stays behind
    /// (grain, fruit).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub water: Option<Share>,
}

impl Ingredient {
    /// With the usual shares of its kind.
    #[must_use]
    pub const fn usual(kind: Fermentable, mass: Grams) -> Self {
        Self { kind, mass, extract: None, water: None }
    }

    /// Its share of extract; `None` for an own ingredient that has none.
    #[must_use]
    pub fn extract_share(&self) -> Option<Share> {
        self.extract.or(self.kind.usual_extract())
    }

    /// Its share of water: as given, never more than is left beside the extract.
    ///
    /// ```
    /// use fermentside::quantity::{Grams, Measured, Share};
    /// use fermentside::science::kit_gravity::{Fermentable, Ingredient};
    ///
    /// let syrup = Ingredient::usual(Fermentable::MaltSyrup, Grams::literal(1700.0));
    /// assert_eq!(format!("{:.2}", syrup.water_share().value()), "0.20");
    /// let dry = Ingredient { water: Some(Share::literal(0.0)), ..syrup };
    /// assert_eq!(dry.water_share(), Share::literal(0.0));
    /// ```
    #[must_use]
    pub fn water_share(&self) -> Share {
        let left = 1.0 - self.extract_share().map_or(0.0, Share::value);
        Share::nearest(self.water.map_or(left, |water| water.value().min(left)))
    }
}

/// What the ingredients make when all is mixed.
#[derive(Clone, Debug, PartialEq)]
pub struct KitGravity {
    /// Extract in all.
    pub extract: Grams,
    /// Its share of the wort by mass.
    pub plato: Plato,
    /// Specific gravity 20/20 of the mixed wort.
    pub gravity: Estimate<SpecificGravity>,
    /// The volume it is in, at 20 °C.
    pub volume: Litres,
    /// Water that came with the ingredients.
    pub water_brought: Grams,
    /// All other water in the vessel, from kettle and top-up.
    pub water_added: Grams,
    /// How it was worked out.
    pub worked: Worked,
}

/// Gravity of the wort that `ingredients` make in `volume` at 20 °C: the w with w ρ(w, 20) V = extract.
///
/// The doubt is made of the volume and of the shares of extract; two tins of one kind are wrong
/// together, two kinds each for itself.
///
/// ```
/// use fermentside::quantity::{Grams, Litres, Measured};
/// use fermentside::science::kit_gravity::{Fermentable, Ingredient, by_mark, gravity};
///
/// let kit = [
///     Ingredient::usual(Fermentable::MaltSyrup, Grams::literal(1700.0)),
///     Ingredient::usual(Fermentable::Dextrose, Grams::literal(1000.0)),
/// ];
/// let found = gravity(&kit, by_mark(Litres::literal(23.0)))?;
/// assert_eq!(format!("{:.3}", found.gravity.value().value()), "1.038");
/// assert!(gravity(&kit, by_mark(Litres::literal(2.0))).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no volume, no ingredient or an own one without its share;
/// [`ScienceError::OutOfReach`] when the ingredients alone are more than the volume holds;
/// [`ScienceError::OutOfRange`] above 45 °P.
pub fn gravity(
    ingredients: &[Ingredient],
    volume: Estimate<Litres>,
) -> Result<KitGravity, ScienceError> {
    let litres = volume.value().value();
    if litres <= 0.0 || ingredients.is_empty() {
        return Err(ScienceError::NothingThere);
    }
    let (mut extract, mut brought) = (0.0, 0.0);
    let mut by_kind = [0.0; Fermentable::ALL.len()];
    let mut worked = Worked::default();
    for one in ingredients {
        let share = one.extract_share().ok_or(ScienceError::NothingThere)?.value();
        let mass = one.mass.value();
        extract += mass * share;
        brought += mass * one.water_share().value();
        // What the brewer gave is doubted as much: labels are no better.
        by_kind[one.kind as usize] += mass * one.kind.doubt();
        worked = worked
            .input(Term::IngredientMass, one.mass)
            .input(Term::ExtractShare, Amount::Number(100.0 * share, 0, "%"));
    }
    let w = fraction(extract / litres);
    let plato = Plato::new(100.0 * w)?;
    let sg = sucrose::specific_gravity(plato);
    let wort = sucrose::rho(w, 20.0) * litres;
    let added = wort - extract - brought;
    // A hair below nothing is the rounding of a volume that the ingredients fill by themselves.
    if added < -1e-6 * wort {
        return Err(ScienceError::OutOfReach);
    }
    let per_gram_a_litre = slope(extract / litres);
    let by_volume = per_gram_a_litre * extract / litres * volume.sigma() / litres;
    let by_share = by_kind.iter().fold(0.0, |sum: f64, grams| sum.hypot(*grams));
    let worked = worked
        .input(Term::BeerVolume, volume.value())
        .step(Term::ExtractMass, Grams::new(extract)?, "Σ mass × share", Source::CommonPractice)
        .step(Term::OriginalExtract, plato, "w ρ(w, 20) V = extract", Source::IcumsaSps4)
        .step(
            Term::OriginalGravity,
            sg,
            "SG = (ρ(w, 20) − 1.2) ÷ (ρ_water(20) − 1.2)",
            Source::IcumsaSps4,
        )
        .step(
            Term::WaterToAdd,
            Grams::nearest(added),
            "ρ(w, 20) V − extract − water in the ingredients",
            None,
        )
        .doubt(Term::BeerVolume, by_volume)
        .doubt(Term::ExtractShare, per_gram_a_litre * by_share / litres);
    Ok(KitGravity {
        extract: Grams::new(extract)?,
        plato,
        gravity: Estimate::new(sg, worked.sigma()),
        volume: volume.value(),
        water_brought: Grams::new(brought)?,
        water_added: Grams::nearest(added.max(0.0)),
        worked,
    })
}

/// Mass fraction of a solution with so many grams of extract in a litre at 20 °C.
fn fraction(grams_a_litre: f64) -> f64 {
    rising_root(0.0, 0.6, |w| w * sucrose::rho(w, 20.0) - grams_a_litre)
}

/// How much the gravity rises for each gram a litre.
fn slope(grams_a_litre: f64) -> f64 {
    let at = |grams: f64| sucrose::sg_at(fraction(grams), 20.0);
    let (low, high) = ((grams_a_litre - 1.0).max(0.0), grams_a_litre + 1.0);
    (at(high) - at(low)) / (high - low)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(kind: Fermentable, grams: f64, litres: f64) -> KitGravity {
        let one = [Ingredient::usual(kind, Grams::literal(grams))];
        gravity(&one, by_mark(Litres::literal(litres))).expect("in range")
    }

    #[test]
    fn a_pound_in_a_gallon_gives_the_customary_points() {
        // Points of a pound in a US gallon: sucrose 46, dry extract 44 to 45, syrup 36 to 37
        // (common practice, no source).
        for (kind, from, to) in [
            (Fermentable::Sucrose, 45.8, 46.5),
            (Fermentable::DryMalt, 44.0, 45.2),
            (Fermentable::MaltSyrup, 36.0, 37.2),
        ] {
            let points = of(kind, 453.592_37, 3.785_411_784).gravity.value().points();
            assert!((from..to).contains(&points), "{kind:?}: {points}");
        }
    }

    #[test]
    fn refuses_what_does_not_fit_and_what_is_not_told() {
        let own = Ingredient::usual(Fermentable::Own, Grams::literal(500.0));
        let in_10 = by_mark(Litres::literal(10.0));
        assert_eq!(gravity(&[own], in_10).map(|k| k.plato), Err(ScienceError::NothingThere));
        assert!(
            gravity(&[Ingredient { extract: Some(Share::literal(0.6)), ..own }], in_10).is_ok()
        );
        let syrup = [Ingredient::usual(Fermentable::MaltSyrup, Grams::literal(1400.0))];
        assert!(gravity(&syrup, by_mark(Litres::literal(1.0))).is_err());
    }

    #[test]
    fn a_mark_three_per_cent_out_is_about_three_per_cent_of_the_points() {
        let found = of(Fermentable::Sucrose, 2500.0, 20.0).gravity;
        assert!((found.sigma() / (found.value().value() - 1.0) - 0.03).abs() < 0.002);
    }
}
