//! How the sugar gets into the bottles, and what that does to the bottle that gets the most.
//!
//! Stirred into the whole vessel, or weighed into each bottle. Both come from one dose and agree to the
//! gram; what differs is what can go wrong.

use crate::advice::family::Span;
use crate::quantity::{
    CarbonDioxideVolumes, Estimate, Grams, Litres, MassUnit, Measured, Share, Unit,
};
use crate::science::carbon_dioxide::GRAMS_PER_VOLUME;
use crate::science::priming::{Sugar, most_from};

/// How much more sugar than the mean one bottle may get from a vessel that was stirred gently (common
/// practice, no source). Independent of the doubt of the volume, and added to it in quadrature.
pub const UNEVEN: Share = Share::literal(0.05);
/// How far a bottle may be filled short of its size (common practice, no source).
pub const SHORT_FILL: Share = Share::literal(0.02);
/// A scale this rough for one bottle is useless (common practice, no source).
const TOO_ROUGH: CarbonDioxideVolumes = CarbonDioxideVolumes::literal(0.2);
/// One or two cups of water to boil the sugar in (common practice, no source).
pub const SYRUP_WATER: Span<Litres> =
    Span { from: Litres::literal(0.25), to: Litres::literal(0.5) };

/// Into the vessel or into each bottle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Dosing {
    /// One syrup, stirred into the bottling vessel.
    Vessel,
    /// Weighed into each bottle.
    Bottles {
        /// The smallest bottle that is filled, where the scale tells most.
        smallest: Litres,
    },
}

/// How it is dosed and weighed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighing {
    /// Into what.
    pub dosing: Dosing,
    /// What the scale shows at the finest.
    pub scale: Grams,
}

impl Weighing {
    /// Into the vessel, by a kitchen scale.
    pub const USUAL: Self = Self { dosing: Dosing::Vessel, scale: Grams::literal(1.0) };

    /// What is to be read off the scale for `amount`: a whole number of its steps.
    ///
    /// ```
    /// use fermentside::{advice::bottle::dosing::Weighing, quantity::Grams};
    ///
    /// let weighing = Weighing { scale: Grams::literal(5.0), ..Weighing::USUAL };
    /// assert_eq!(weighing.on_scale(Grams::literal(117.4)), Grams::literal(115.0));
    /// ```
    #[must_use]
    pub fn on_scale(self, amount: Grams) -> Grams {
        let step = self.scale.value();
        if step > 0.0 { Grams::nearest((amount.value() / step).round() * step) } else { amount }
    }

    /// The most carbon dioxide that `sugar` in `beer` can give in one bottle: full yield, the upper end
    /// of the kind, less beer than thought (two standard deviations), uneven mixing or a short fill, and
    /// a step of the scale for rounding and its own error. Wort counts with its own volume: what one bottle
    /// gets more of it stands in place of beer, and a bottle that it is weighed into holds no more for it. No
    /// sugar gives none; where there may be no beer at all nothing bounds it, and it is the most that can be
    /// written.
    ///
    /// ```
    /// use fermentside::advice::bottle::dosing::Weighing;
    /// use fermentside::quantity::{CarbonDioxideVolumes, Estimate, Grams, Litres, Measured};
    /// use fermentside::science::priming::Sugar;
    ///
    /// let most = |litres| {
    ///     let beer = Estimate::exact(Litres::literal(litres));
    ///     Weighing::USUAL.most(Grams::literal(120.0), Sugar::Sucrose, beer)
    /// };
    /// // 121 g × 0.5143 ÷ 1.977 in 19 L, and 5 % more in the bottle that gets the most.
    /// assert_eq!(format!("{:.2}", most(19.0).value()), "1.74");
    /// assert_eq!(most(0.0).value(), CarbonDioxideVolumes::MAX);
    /// ```
    #[must_use]
    pub fn most(self, sugar: Grams, kind: Sugar, beer: Estimate<Litres>) -> CarbonDioxideVolumes {
        if sugar.value() == 0.0 {
            return CarbonDioxideVolumes::literal(0.0);
        }
        // With what is added to the beer.
        let (grams, litres) = match self.dosing {
            Dosing::Vessel => {
                let less = beer.value().value() / beer.lower(2.0).value() - 1.0;
                let share = less.hypot(UNEVEN.value());
                let grams = sugar.value() + self.scale.value();
                (grams, (beer.value().value() + adds(kind, grams)) / (1.0 + share))
            }
            Dosing::Bottles { smallest } => {
                let rough = self.scale.value() / smallest.value();
                let grams = a_litre_filled(sugar, kind, beer.value()) + rough;
                (grams, 1.0 / (1.0 + SHORT_FILL.value()))
            }
        };
        let most = || {
            let beer = Litres::new(litres - adds(kind, grams)).ok()?;
            most_from(Grams::new(grams).ok()?, kind, beer).ok()
        };
        most().unwrap_or(CarbonDioxideVolumes::literal(CarbonDioxideVolumes::MAX))
    }
}

/// Litres that so many grams add to the beer.
fn adds(kind: Sugar, grams: f64) -> f64 {
    kind.volume(Grams::nearest(grams)).map_or(0.0, Measured::value)
}

/// Grams for each litre that is filled into bottles, of a dose for so much beer. Wort fills bottles too.
pub(super) fn a_litre_filled(sugar: Grams, kind: Sugar, beer: Litres) -> f64 {
    sugar.value() / (beer.value() + adds(kind, sugar.value()))
}

/// The finest step that counts for a whole vessel's sugar: the scale's, or what the brewer's unit is
/// written to when that is rougher.
///
/// ```
/// use fermentside::advice::bottle::dosing::finest_step;
/// use fermentside::quantity::{Grams, MassUnit, Measured};
///
/// let scale = Grams::literal(0.1);
/// assert_eq!(finest_step(scale, MassUnit::Grams), scale);
/// // A hundredth of an ounce.
/// assert_eq!(format!("{:.2}", finest_step(scale, MassUnit::Ounces).value()), "0.28");
/// ```
#[must_use]
pub fn finest_step(scale: Grams, unit: MassUnit) -> Grams {
    let written = match unit {
        MassUnit::Grams => 0.0,
        other => other.to_own(0.1_f64.powi(other.places() as i32)),
    };
    Grams::nearest(scale.value().max(written))
}

/// The sugar for one bottle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PerBottle {
    /// The bottle.
    pub size: Litres,
    /// By the dose.
    pub exact: Grams,
    /// As the scale can show it.
    pub weigh: Grams,
    /// What rounding and the scale's own error can do, either way.
    pub off_by: CarbonDioxideVolumes,
    /// The scale is too rough for so small a bottle.
    pub too_rough: bool,
}

impl PerBottle {
    /// For a bottle of `size`, at so many grams a litre.
    pub(super) fn of(size: Litres, a_litre: f64, kind: Sugar, weighing: Weighing) -> Self {
        let exact = Grams::nearest(a_litre * size.value());
        let weigh = weighing.on_scale(exact);
        let off = (weigh.value() - exact.value()).abs() + 0.5 * weighing.scale.value();
        let gas = off * kind.full_yield().value().value() / GRAMS_PER_VOLUME / size.value();
        let off_by = CarbonDioxideVolumes::nearest(gas);
        Self { size, exact, weigh, off_by, too_rough: off_by > TOO_ROUGH }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::SpecificGravity;
    use crate::science::priming::KeptWort;

    fn per(size: f64, scale: f64) -> PerBottle {
        let weighing = Weighing { scale: Grams::literal(scale), ..Weighing::USUAL };
        PerBottle::of(Litres::literal(size), 6.3, Sugar::Sucrose, weighing)
    }

    #[test]
    fn a_whole_gram_is_useless_for_a_small_bottle() {
        // 2.1 g on a scale of 1 g: half a gram in 330 mL is 0.4 volumes.
        let rough = per(0.33, 1.0);
        assert_eq!(rough.weigh.value(), 2.0);
        assert!(rough.too_rough && rough.off_by.value() > 0.39, "{rough:?}");
        let fine = per(0.33, 0.1);
        assert!(!fine.too_rough && fine.off_by.value() < 0.1, "{fine:?}");
        assert!((fine.weigh.value() - 2.1).abs() < 1e-9);
    }

    /// Wort weighed into bottles takes the place of beer in them: counted on top of a full bottle it would be
    /// a twelfth too much, and the guard a twelfth too low.
    #[test]
    fn wort_in_a_bottle_is_part_of_what_it_holds() {
        let [gravity, end] = [1.050, 1.010].map(SpecificGravity::literal);
        let kind = Sugar::Wort(KeptWort { gravity, end });
        let (dose, beer) = (Grams::literal(1660.0), Litres::literal(19.0));
        // 1660 g are 1.584 L: 20.584 L are filled, 80.65 g in each of them.
        let a_litre = a_litre_filled(dose, kind, beer);
        assert!((a_litre - 80.65).abs() < 0.02, "{a_litre}");
        let smallest = Litres::literal(0.5);
        let scale = Grams::literal(0.1);
        let weighing = Weighing { dosing: Dosing::Bottles { smallest }, scale };
        let each = PerBottle::of(smallest, a_litre, kind, weighing);
        assert!((each.weigh.value() - 40.3).abs() < 0.05, "{each:?}");
        // 80.85 g of it, at the upper end of what ferments, in a litre that is filled 2 % short.
        let full = kind.full_yield().upper(2.0).value();
        let most = weighing.most(dose, kind, Estimate::exact(beer)).value();
        assert!((most - 80.85 * full / 1.977 * 1.02).abs() < 0.002, "{most}");
        // Stirred in, a twentieth more wort is a twentieth more gas, for it stands in place of beer.
        let weighing = Weighing { dosing: Dosing::Vessel, scale: Grams::literal(0.0) };
        let most = weighing.most(dose, kind, Estimate::exact(beer)).value();
        let mean = 1660.0 * full / 1.977 / 20.584;
        assert!((most / mean - 1.05).abs() < 1e-4, "{most} {mean}");
    }

    #[test]
    fn nothing_bounds_sugar_in_no_beer() {
        let most = |sigma, dosing| {
            let beer = Estimate::new(Litres::literal(19.0), sigma);
            let weighing = Weighing { dosing, ..Weighing::USUAL };
            weighing.most(Grams::literal(120.0), Sugar::Sucrose, beer).value()
        };
        assert_eq!(most(9.5, Dosing::Vessel), 60.0);
        assert_eq!(most(f64::INFINITY, Dosing::Vessel), 60.0);
        assert_eq!(most(0.3, Dosing::Bottles { smallest: Litres::literal(0.0) }), 60.0);
        // 120 g in 19 L at full yield are 1.643; 3.3 % less beer and 5 % uneven are 6.0 % together.
        assert!((most(0.3, Dosing::Vessel) - 1.643 * 121.0 / 120.0 * 1.060).abs() < 0.003);
    }
}
