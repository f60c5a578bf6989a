//! The sachets in hand: how many, how old, and how they were kept.

use crate::quantity::{Grams, Measured};
use serde::{Deserialize, Serialize};

/// A sachet that is not measured (common practice, no source).
pub const USUAL_SACHET: Grams = Grams::literal(11.0);

/// Whole months.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Months(pub u16);

crate::choices! {
    /// Whether the sachets are past their best-before date, as roughly as it matters.
    pub enum Dated {
        /// In date, or not known.
        InDate = "no",
        /// Past it.
        Past = "3",
        /// Past it by more than a year.
        LongPast = "13",
    }

    /// How the sachets were kept.
    pub enum Kept {
        /// Cool.
        Cool = "no",
        /// They stood warm for weeks.
        Warm = "yes",
    }
}

impl Dated {
    /// Months past the date that are reckoned with; `None` in date.
    ///
    /// ```
    /// use fermentside::advice::pitch::sachets::{Dated, Months};
    ///
    /// assert_eq!(Dated::Past.months(), Some(Months(3)));
    /// assert_eq!(Dated::InDate.months(), None);
    /// ```
    #[must_use]
    pub const fn months(self) -> Option<Months> {
        match self {
            Self::InDate => None,
            Self::Past => Some(Months(3)),
            Self::LongPast => Some(Months(13)),
        }
    }
}

/// Dry yeast in so many sachets; one that was not measured holds [`USUAL_SACHET`].
///
/// ```
/// use fermentside::{advice::pitch::sachets::in_sachets, quantity::Grams};
///
/// assert_eq!(in_sachets(2, Some(Grams::literal(7.0))), Grams::literal(14.0));
/// assert_eq!(in_sachets(2, None), Grams::literal(22.0));
/// ```
#[must_use]
pub fn in_sachets(count: u32, size: Option<Grams>) -> Grams {
    Grams::nearest(f64::from(count) * size.unwrap_or(USUAL_SACHET).value())
}
