//! What beer is primed with, and how much carbon dioxide a gram of each gives.
//!
//! By molar masses for the pure sugars; for the rest by their solids and by what of them ferments. A
//! dose uses the middle, a guard the upper end (two standard deviations).

use super::carbon_dioxide::GRAMS_PER_VOLUME;
use super::sucrose;
use crate::quantity::{Estimate, Extract, Grams, Litres, Measured, Share, SpecificGravity};
use serde::{Deserialize, Serialize};

/// Grams of carbon dioxide from a gram of glucose, by molar masses (IUPAC): 2 × 44.009 / 180.156.
pub const GLUCOSE_YIELD: Share = Share::literal(2.0 * 44.009 / 180.156);
/// From a gram of sucrose: 4 × 44.009 / 342.297. Maltose is the same.
pub const SUCROSE_YIELD: Share = Share::literal(4.0 * 44.009 / 342.297);
/// Water in dextrose monohydrate, by mass: 18.015 / 198.171.
pub const MONOHYDRATE_WATER: Share = Share::literal(18.015 / 198.171);
/// How much more of an own sugar than the brewer says may ferment (common practice, no source).
const MAY_FERMENT_MORE: f64 = 0.05;
/// One standard deviation of each of the two gravities that kept-back wort goes by, degrees Plato: a
/// point.
const GRAVITY_DOUBT: f64 = 0.255;
/// One standard deviation of the quotient of real to apparent fall, relative.
const QUOTIENT_DOUBT: f64 = 0.02;

/// A sugar or syrup of the brewer's own, by its label or by what is known of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OwnSugar {
    /// The part of its dry weight that ferments.
    pub fermentable: Share,
    /// The part of its weight that is water.
    pub water: Share,
}

impl OwnSugar {
    /// A syrup of which the label says so many grams of sugars in a hundred.
    ///
    /// ```
    /// use fermentside::quantity::Share;
    /// use fermentside::science::priming::OwnSugar;
    ///
    /// let syrup = OwnSugar::by_label(Share::literal(0.75));
    /// assert_eq!(syrup.water, Share::literal(0.25));
    /// // No label says so much.
    /// assert!(Share::try_from(1.2).is_err());
    /// ```
    #[must_use]
    pub fn by_label(sugars: Share) -> Self {
        Self { fermentable: Share::literal(1.0), water: Share::nearest(1.0 - sugars.value()) }
    }
}

/// Unfermented wort of the same brew, kept back cold or frozen.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct KeptWort {
    /// Its own gravity, 20/20.
    pub gravity: SpecificGravity,
    /// Where it ends, 20/20: as the beer did.
    pub end: SpecificGravity,
}

impl KeptWort {
    /// Degrees Plato of real extract that ferment, by the quotient of 532 beers.
    fn ferments(self) -> f64 {
        let [original, end] = [self.gravity, self.end].map(|sg| sucrose::plato(sg).value());
        let quotient = 0.814 + 0.000_86 * original;
        (quotient * (original - end)).clamp(0.0, original.max(0.0))
    }
}

/// What is put in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
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
    /// The brewer's own.
    Own(OwnSugar),
    /// Wort kept back.
    Wort(KeptWort),
}

impl Sugar {
    /// Every kind that needs no more said of it, the commonest first.
    pub const ALL: [Self; 5] = [
        Self::Sucrose,
        Self::DextroseMonohydrate,
        Self::GlucoseAnhydrous,
        Self::DryMaltExtract,
        Self::Honey,
    ];

    /// The name it is stored under.
    ///
    /// ```
    /// use fermentside::science::priming::Sugar;
    ///
    /// assert_eq!(Sugar::DextroseMonohydrate.name(), "dextrose_monohydrate");
    /// ```
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sucrose => "sucrose",
            Self::DextroseMonohydrate => "dextrose_monohydrate",
            Self::GlucoseAnhydrous => "glucose_anhydrous",
            Self::DryMaltExtract => "dry_malt_extract",
            Self::Honey => "honey",
            Self::Own(_) => "own",
            Self::Wort(_) => "wort",
        }
    }

    /// Grams of carbon dioxide from a gram, at full yield, with the kind's own spread.
    ///
    /// ```
    /// use fermentside::quantity::Measured;
    /// use fermentside::science::priming::Sugar;
    ///
    /// // By molar masses: 4 × 44.009 ÷ 342.297 and 2 × 44.009 ÷ 198.171.
    /// let of = |sugar: Sugar| format!("{:.4}", sugar.full_yield().value().value());
    /// assert_eq!(of(Sugar::Sucrose), "0.5143");
    /// assert_eq!(of(Sugar::DextroseMonohydrate), "0.4442");
    /// ```
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
            Self::Own(own) => {
                // Which sugar it is nobody says: between glucose and sucrose, at most all sucrose.
                let (dry, part) = (1.0 - own.water.value(), own.fermentable.value());
                let best = dry * part * 0.5 * (glucose + sucrose);
                let most = dry * (part * (1.0 + MAY_FERMENT_MORE)).min(1.0) * sucrose;
                (best, 0.5 * (most - best))
            }
            Self::Wort(wort) => {
                let ferments = wort.ferments();
                let doubt = (GRAVITY_DOUBT * 0.82 * std::f64::consts::SQRT_2)
                    .hypot(QUOTIENT_DOUBT * ferments);
                (0.01 * ferments * sucrose, 0.01 * doubt * sucrose)
            }
        };
        Estimate::new(Share::nearest(best), sigma)
    }

    /// What a litre needs of it for one volume of carbon dioxide, at full yield; `None` for what does not
    /// ferment, or so little that no real amount of it would do.
    ///
    /// ```
    /// use fermentside::quantity::{Measured, Share};
    /// use fermentside::science::priming::{OwnSugar, Sugar};
    ///
    /// let of = |sugar: Sugar| sugar.grams_a_volume().map(|each| format!("{:.2}", each.value()));
    /// assert_eq!(of(Sugar::Sucrose).as_deref(), Some("3.84"));
    /// let [none, all] = [0.0, 1.0].map(Share::literal);
    /// assert_eq!(of(Sugar::Own(OwnSugar { fermentable: none, water: none })), None);
    /// assert_eq!(of(Sugar::Own(OwnSugar { fermentable: all, water: all })), None);
    /// ```
    #[must_use]
    pub fn grams_a_volume(self) -> Option<Extract> {
        let full = self.full_yield().value().value();
        (full > 0.0).then(|| Extract::new(GRAMS_PER_VOLUME / full).ok()).flatten()
    }

    /// Table sugar that gives as much gas and alcohol as so much of this.
    ///
    /// ```
    /// use fermentside::quantity::{Grams, Measured};
    /// use fermentside::science::priming::Sugar;
    ///
    /// let same = Sugar::DextroseMonohydrate.as_sucrose(Grams::literal(100.0));
    /// assert_eq!(format!("{:.1}", same.value()), "86.4");
    /// ```
    #[must_use]
    pub fn as_sucrose(self, amount: Grams) -> Grams {
        Grams::nearest(amount.value() * self.full_yield().value().value() / SUCROSE_YIELD.value())
    }

    /// Litres that a gram adds to the beer: wort makes it more; dry sugar and its water are left out.
    pub(super) fn litres_a_gram(self) -> f64 {
        match self {
            Self::Wort(wort) => 1.0 / sucrose::rho_of_sg(wort.gravity.value(), 20.0),
            _ => 0.0,
        }
    }

    /// The volume of so much wort; `None` for what is dry.
    ///
    /// ```
    /// use fermentside::quantity::{Grams, Measured, SpecificGravity};
    /// use fermentside::science::priming::{KeptWort, Sugar};
    ///
    /// let [gravity, end] = [1.050, 1.010].map(SpecificGravity::literal);
    /// let wort = Sugar::Wort(KeptWort { gravity, end }).volume(Grams::literal(1048.1)).unwrap();
    /// assert_eq!(format!("{:.3}", wort.value()), "1.000");
    /// assert_eq!(Sugar::Honey.volume(Grams::literal(100.0)), None);
    /// ```
    #[must_use]
    pub fn volume(self, amount: Grams) -> Option<Litres> {
        let litres = amount.value() * self.litres_a_gram();
        (litres > 0.0).then(|| Litres::nearest(litres))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn own(fermentable: f64, water: f64) -> f64 {
        let sugar =
            OwnSugar { fermentable: Share::literal(fermentable), water: Share::literal(water) };
        Sugar::Own(sugar).full_yield().upper(2.0).value()
    }

    #[test]
    fn an_own_sugar_is_guarded_as_the_strongest_it_can_be() {
        assert!((own(1.0, 0.0) - SUCROSE_YIELD.value()).abs() < 1e-12);
        assert!((own(0.5, 0.2) - 0.8 * 0.525 * SUCROSE_YIELD.value()).abs() < 1e-12);
        // Lactose ferments not at all.
        assert_eq!(own(0.0, 0.0), 0.0);
        let label = OwnSugar::by_label(Share::literal(0.75));
        assert_eq!((label.water.value(), label.fermentable.value()), (0.25, 1.0));
    }

    #[test]
    fn kept_wort_gives_what_of_it_ferments() {
        // 1.050 to 1.010: 12.4 and 2.6 °P; 9.8 × 0.825 is 8.1 g of 100 g.
        let wort = KeptWort {
            gravity: SpecificGravity::literal(1.050),
            end: SpecificGravity::literal(1.010),
        };
        let full = Sugar::Wort(wort).full_yield().value().value();
        assert!((full / SUCROSE_YIELD.value() - 0.081).abs() < 0.001, "{full}");
        let litre = Sugar::Wort(wort).volume(Grams::literal(1048.1)).map(Measured::value);
        assert!(litre.is_some_and(|litre| (litre - 1.0).abs() < 0.002), "{litre:?}");
        assert_eq!(Sugar::Honey.volume(Grams::literal(100.0)), None);
    }

    #[test]
    fn corn_sugar_counts_as_less_table_sugar() {
        let as_sucrose = Sugar::DextroseMonohydrate.as_sucrose(Grams::literal(100.0)).value();
        assert!((as_sucrose - 86.4).abs() < 0.1, "{as_sucrose}");
    }
}
