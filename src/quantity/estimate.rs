//! A value with its uncertainty.

use super::measured::Measured;
use serde::{Deserialize, Serialize};

/// A best value and its standard deviation, both in the quantity's own unit.
///
/// A sigma that is negative or not a number is taken as infinite: what is not known must never look
/// certain.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Estimate<T> {
    value: T,
    #[serde(with = "stored_sigma")]
    sigma: f64,
}

/// What is not a size of doubt is an endless one.
fn honest(sigma: f64) -> f64 {
    if sigma >= 0.0 { sigma } else { f64::INFINITY }
}

/// An endless doubt is kept as `null`, for JSON has no number for it; and what is read is believed no
/// more than what is built.
mod stored_sigma {
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    pub fn serialize<S: Serializer>(sigma: &f64, to: S) -> Result<S::Ok, S::Error> {
        Some(sigma).filter(|sigma| sigma.is_finite()).serialize(to)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<f64, D::Error> {
        Ok(Option::deserialize(from)?.map_or(f64::INFINITY, super::honest))
    }
}

impl<T: Measured> Estimate<T> {
    /// The value with one standard deviation `sigma`, in the unit of `T`.
    ///
    /// ```
    /// use fermentside::quantity::{Estimate, SpecificGravity};
    ///
    /// let read = Estimate::new(SpecificGravity::literal(1.050), 0.001);
    /// assert_eq!(read.sigma(), 0.001);
    /// assert_eq!(Estimate::new(read.value(), f64::NAN).sigma(), f64::INFINITY);
    /// ```
    #[must_use]
    pub fn new(value: T, sigma: f64) -> Self {
        Self { value, sigma: honest(sigma) }
    }

    /// A value held as exact.
    #[must_use]
    pub fn exact(value: T) -> Self {
        Self { value, sigma: 0.0 }
    }

    /// The best value.
    #[must_use]
    pub fn value(self) -> T {
        self.value
    }

    /// One standard deviation, in the unit of `T`.
    #[must_use]
    pub fn sigma(self) -> f64 {
        self.sigma
    }

    /// The value `sigmas` standard deviations up, held within what the quantity can be.
    ///
    /// ```
    /// use fermentside::quantity::{Estimate, Litres, Measured};
    ///
    /// let in_the_vessel = Estimate::new(Litres::literal(20.0), 0.5);
    /// assert_eq!(in_the_vessel.upper(2.0), Litres::literal(21.0));
    /// assert_eq!(Estimate::new(Litres::literal(20.0), f64::NAN).upper(2.0).value(), Litres::MAX);
    /// ```
    #[must_use]
    pub fn upper(self, sigmas: f64) -> T {
        T::nearest(self.value.value() + sigmas * self.sigma)
    }

    /// The value `sigmas` standard deviations down, held within what the quantity can be.
    ///
    /// ```
    /// use fermentside::quantity::{Estimate, Litres};
    ///
    /// let in_the_vessel = Estimate::new(Litres::literal(20.0), 0.5);
    /// assert_eq!(in_the_vessel.lower(2.0), Litres::literal(19.0));
    /// assert_eq!(in_the_vessel.lower(100.0), Litres::literal(0.0));
    /// ```
    #[must_use]
    pub fn lower(self, sigmas: f64) -> T {
        let lower = self.value.value() - sigmas * self.sigma;
        T::nearest(if lower.is_nan() { T::MIN } else { lower })
    }

    /// The same value with `other` independent standard deviations added in quadrature.
    ///
    /// ```
    /// use fermentside::quantity::{Celsius, Estimate};
    ///
    /// let read = Estimate::new(Celsius::literal(20.0), 0.3);
    /// assert_eq!(read.widened(0.4).sigma(), 0.5);
    /// ```
    #[must_use]
    pub fn widened(self, other: f64) -> Self {
        Self::new(self.value, self.sigma.hypot(other))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Celsius;

    #[test]
    fn what_is_not_known_never_looks_certain() {
        let warm = Celsius::literal(20.0);
        assert_eq!(Estimate::new(warm, f64::NAN).sigma(), f64::INFINITY);
        assert_eq!(Estimate::new(warm, -1.0).upper(2.0).value(), Celsius::MAX);
        assert_eq!(Estimate::new(warm, -1.0).lower(2.0).value(), Celsius::MIN);
    }

    #[test]
    fn what_is_stored_is_read_and_not_believed_more() {
        for sigma in [0.5, f64::INFINITY] {
            let estimate = Estimate::new(Celsius::literal(20.0), sigma);
            let stored = serde_json::to_string(&estimate).expect("stored");
            assert_eq!(serde_json::from_str::<Estimate<Celsius>>(&stored).ok(), Some(estimate));
        }
        let wrong = r#"{"value":20.0,"sigma":-1.0}"#;
        let read = serde_json::from_str::<Estimate<Celsius>>(wrong).expect("read");
        assert_eq!(read.sigma(), f64::INFINITY);
    }

    #[test]
    fn independent_doubts_add_in_quadrature() {
        let wide = Estimate::new(Celsius::literal(20.0), 3.0).widened(4.0);
        assert!((wide.sigma() - 5.0).abs() < 1e-12);
    }
}
