//! Bottles, and how much carbon dioxide each kind is asked to hold at most.
//!
//! The ceilings are design advice and no standard: no source gives a safe limit for a used bottle of
//! unknown make. Chips, scratches and heat take margin away unseen. The best word here is "within the
//! usual ceiling".

use crate::quantity::CarbonDioxideVolumes;

crate::choices! {
    /// A kind of bottle.
    pub enum Bottle {
        /// Sound glass made to be used again for beer.
        ReusableGlass = "reusable_glass",
        /// Heavy sparkling-type glass, or a swing-top rated for pressure.
        HeavyGlass = "heavy_glass",
        /// Plastic made for carbonated drinks.
        Pet = "pet",
        /// One-way, twist-off or unknown glass.
        UnknownGlass = "unknown_glass",
        /// Square, decorative or still-drink glass.
        NotForPressure = "not_for_pressure",
    }
}

impl Bottle {
    /// The most it is asked to hold; `None` for what must never be filled. A yeast that may go on for
    /// weeks takes half a volume off.
    ///
    /// ```
    /// use fermentside::{advice::bottle::kinds::Bottle, quantity::CarbonDioxideVolumes};
    ///
    /// let volumes = |volumes| Some(CarbonDioxideVolumes::literal(volumes));
    /// assert_eq!(Bottle::UnknownGlass.ceiling(false), volumes(2.8));
    /// assert_eq!(Bottle::UnknownGlass.ceiling(true), volumes(2.3));
    /// assert_eq!(Bottle::NotForPressure.ceiling(false), None);
    /// ```
    #[must_use]
    pub fn ceiling(self, yeast_may_go_on: bool) -> Option<CarbonDioxideVolumes> {
        let (usual, lowered) = match self {
            Self::UnknownGlass => (2.8, 2.3),
            Self::ReusableGlass => (3.3, 2.8),
            Self::HeavyGlass | Self::Pet => (4.0, 3.5),
            Self::NotForPressure => return None,
        };
        Some(CarbonDioxideVolumes::literal(if yeast_may_go_on { lowered } else { usual }))
    }

    /// Above this a caution is given though the ceiling is not reached.
    ///
    /// ```
    /// use fermentside::{advice::bottle::kinds::Bottle, quantity::CarbonDioxideVolumes};
    ///
    /// let above = CarbonDioxideVolumes::literal(2.5);
    /// assert_eq!(Bottle::UnknownGlass.caution_above(), Some(above));
    /// assert_eq!(Bottle::ReusableGlass.caution_above(), None);
    /// ```
    #[must_use]
    pub fn caution_above(self) -> Option<CarbonDioxideVolumes> {
        (self == Self::UnknownGlass).then(|| CarbonDioxideVolumes::literal(2.5))
    }
}
