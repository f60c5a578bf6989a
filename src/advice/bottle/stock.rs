//! Bottles on hand: how many of which to fill.

use super::kinds::Bottle;
use crate::order::in_order;
use crate::quantity::{HAIR, Litres, Measured};
use serde::{Deserialize, Serialize};

/// Bottles of one size and kind.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bottles {
    /// What one holds, filled as usual.
    pub size: Litres,
    /// Their kind.
    pub class: Bottle,
    /// How many.
    pub count: u32,
}

impl Bottles {
    /// What they hold together.
    ///
    /// ```
    /// use fermentside::advice::bottle::{kinds::Bottle, stock::Bottles};
    /// use fermentside::quantity::Litres;
    ///
    /// let own = Bottles { size: Litres::literal(0.5), class: Bottle::ReusableGlass, count: 24 };
    /// assert_eq!(own.volume(), Litres::literal(12.0));
    /// ```
    #[must_use]
    pub fn volume(self) -> Litres {
        Litres::nearest(self.size.value() * f64::from(self.count))
    }
}

/// What is filled from a vessel.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    /// The bottles to fill, the largest first.
    pub filled: Vec<Bottles>,
    /// Beer left over, for a glass or for more bottles.
    pub left: Litres,
    /// The smallest bottle that is filled would still be full with what is left: more are wanted.
    pub short: bool,
}

crate::choices! {
    /// Sizes that bottles commonly come in, named by their millilitres.
    pub enum Size {
        /// 250 mL.
        Ml250 = "250",
        /// 330 mL.
        Ml330 = "330",
        /// 341 mL, 12 imperial ounces.
        Ml341 = "341",
        /// 355 mL, 12 US ounces.
        Ml355 = "355",
        /// 375 mL.
        Ml375 = "375",
        /// 500 mL.
        Ml500 = "500",
        /// 568 mL, an imperial pint.
        Ml568 = "568",
        /// 650 mL, 22 US ounces.
        Ml650 = "650",
        /// 750 mL.
        Ml750 = "750",
        /// A litre.
        Ml1000 = "1000",
    }
}

impl Size {
    /// What such a bottle holds.
    ///
    /// ```
    /// use fermentside::{advice::bottle::stock::Size, quantity::Litres};
    ///
    /// assert_eq!(Size::Ml330.litres(), Litres::literal(0.33));
    /// ```
    #[must_use]
    pub const fn litres(self) -> Litres {
        Litres::literal(match self {
            Self::Ml250 => 0.25,
            Self::Ml330 => 0.33,
            Self::Ml341 => 0.341,
            Self::Ml355 => 0.355,
            Self::Ml375 => 0.375,
            Self::Ml500 => 0.5,
            Self::Ml568 => 0.568,
            Self::Ml650 => 0.65,
            Self::Ml750 => 0.75,
            Self::Ml1000 => 1.0,
        })
    }
}

/// Fills as many bottles of one size and kind as the beer fills, however many are wanted.
///
/// ```
/// use fermentside::advice::bottle::{kinds::Bottle, stock::fill_all};
/// use fermentside::quantity::Litres;
///
/// let filling = fill_all(Litres::literal(19.25), Litres::literal(0.5), Bottle::ReusableGlass);
/// assert_eq!((filling.filled[0].count, filling.left), (38, Litres::literal(0.25)));
/// assert!(!filling.short);
/// ```
#[must_use]
pub fn fill_all(beer: Litres, size: Litres, class: Bottle) -> Filling {
    Filling { short: false, ..fill(beer, &[Bottles { size, class, count: u32::MAX }]) }
}

/// Fills the chosen bottles, the largest first, only whole ones. What must never be filled is passed over.
///
/// ```
/// use fermentside::advice::bottle::{kinds::Bottle, stock::{Bottles, fill}};
/// use fermentside::quantity::Litres;
///
/// let (size, count) = (Litres::literal(0.5), 50);
/// let beer = Litres::literal(19.25);
/// let filling = fill(beer, &[Bottles { size, class: Bottle::ReusableGlass, count }]);
/// assert_eq!((filling.filled[0].count, filling.left), (38, Litres::literal(0.25)));
/// let none = fill(beer, &[Bottles { size, class: Bottle::NotForPressure, count }]);
/// assert_eq!((none.filled, none.left), (vec![], beer));
/// ```
#[must_use]
pub fn fill(beer: Litres, chosen: &[Bottles]) -> Filling {
    let usable = chosen
        .iter()
        .copied()
        .filter(|own| own.size.value() > 0.0 && own.class.ceiling(false).is_some());
    let ordered =
        in_order(usable.collect(), |a: &Bottles, b| b.size.value().total_cmp(&a.size.value()));
    let mut left = beer.value();
    let mut filled = vec![];
    for own in ordered {
        // A hair of floating point must not cost a bottle.
        let fits = (left / own.size.value() + HAIR).floor();
        let count = if fits < f64::from(own.count) { fits as u32 } else { own.count };
        if count > 0 {
            left = (left - own.size.value() * f64::from(count)).max(0.0);
            filled.push(Bottles { count, ..own });
        }
    }
    let short = smallest(&filled).is_none_or(|size| left >= size.value());
    Filling { filled, left: Litres::nearest(left), short }
}

/// The weakest kind among them, which decides; `None` when there are none.
///
/// ```
/// use fermentside::advice::bottle::{kinds::Bottle, stock::{Bottles, weakest}};
/// use fermentside::quantity::Litres;
///
/// let own = |class| Bottles { size: Litres::literal(0.5), class, count: 12 };
/// let mixed = [Bottle::HeavyGlass, Bottle::UnknownGlass, Bottle::ReusableGlass].map(own);
/// assert_eq!(weakest(&mixed), Some(Bottle::UnknownGlass));
/// assert_eq!(weakest(&[]), None);
/// ```
#[must_use]
pub fn weakest(bottles: &[Bottles]) -> Option<Bottle> {
    let ceiling = |class: Bottle| {
        class
            .ceiling(false)
            .map_or(0.0, |volumes: crate::quantity::CarbonDioxideVolumes| volumes.value())
    };
    let weaker = |a: Bottle, b: Bottle| if ceiling(b) < ceiling(a) { b } else { a };
    bottles.iter().map(|own| own.class).reduce(weaker)
}

/// The smallest size among them; `None` when there are none.
#[must_use]
pub fn smallest(bottles: &[Bottles]) -> Option<Litres> {
    bottles.iter().map(|own| own.size).reduce(|a, b| if b < a { b } else { a })
}

/// How many there are.
#[must_use]
pub fn how_many(bottles: &[Bottles]) -> u32 {
    bottles.iter().fold(0, |sum, own| sum.saturating_add(own.count))
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn of(size: f64, class: Bottle, count: u32) -> Bottles {
        Bottles { size: Litres::literal(size), class, count }
    }

    #[test]
    fn nineteen_litres_fill_what_is_known() {
        // 19 L are 38 of 500 mL, or 57 of 330 mL and a little.
        let halves = fill(Litres::literal(19.0), &[of(0.5, Bottle::ReusableGlass, 60)]);
        assert_eq!((how_many(&halves.filled), halves.left.value(), halves.short), (38, 0.0, false));
        let thirds = fill(Litres::literal(19.0), &[of(0.33, Bottle::UnknownGlass, 99)]);
        assert_eq!(how_many(&thirds.filled), 57);
        assert!((thirds.left.value() - 0.19).abs() < 1e-9);
    }

    #[test]
    fn the_largest_are_filled_first_and_fancy_ones_never() {
        let chosen = [
            of(0.33, Bottle::UnknownGlass, 6),
            of(0.75, Bottle::HeavyGlass, 2),
            of(1.0, Bottle::NotForPressure, 9),
        ];
        let filling = fill(Litres::literal(3.0), &chosen);
        assert_eq!(
            filling.filled,
            [of(0.75, Bottle::HeavyGlass, 2), of(0.33, Bottle::UnknownGlass, 4)]
        );
        assert!((filling.left.value() - 0.18).abs() < 1e-9);
        assert_eq!(weakest(&filling.filled), Some(Bottle::UnknownGlass));
        assert_eq!(smallest(&filling.filled), Some(Litres::literal(0.33)));
        assert!(fill(Litres::literal(9.0), &chosen).short);
        assert!(fill(Litres::literal(9.0), &[]).short);
    }
}
