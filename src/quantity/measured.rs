//! The newtypes: each a finite number in a stated unit and range.

use serde::{Deserialize, Serialize};
use std::fmt;

/// A value was not finite or lay outside what the quantity can be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// The type's name, for developers.
    pub quantity: &'static str,
    /// What was offered.
    pub value: f64,
    /// The lowest value allowed, in the type's own unit.
    pub min: f64,
    /// The highest value allowed, in the type's own unit.
    pub max: f64,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { quantity, value, min, max } = self;
        write!(f, "{quantity} must be from {min} to {max}, not {value}")
    }
}

impl std::error::Error for OutOfRange {}

/// What every quantity can do.
pub trait Measured: Copy + PartialOrd + fmt::Debug + 'static {
    /// The type's name.
    const NAME: &'static str;
    /// The lowest value, in the type's own unit.
    const MIN: f64;
    /// The highest value, in the type's own unit.
    const MAX: f64;

    /// Builds the quantity from a number in its own unit.
    ///
    /// ```
    /// use fermentside::quantity::{Measured, SpecificGravity};
    ///
    /// assert!(SpecificGravity::new(1.050).is_ok());
    /// let told = SpecificGravity::new(1050.0).unwrap_err().to_string();
    /// assert_eq!(told, "SpecificGravity must be from 0.95 to 1.2, not 1050");
    /// ```
    ///
    /// # Errors
    /// [`OutOfRange`] when the number is not finite or outside `MIN..=MAX`.
    fn new(value: f64) -> Result<Self, OutOfRange>;

    /// The number, in the type's own unit.
    fn value(self) -> f64;

    /// The nearest allowed value; not-a-number becomes the highest, which is the careful side for
    /// temperature, pressure and gas.
    fn nearest(value: f64) -> Self;
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $min:literal ..= $max:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
        #[serde(try_from = "f64", into = "f64")]
        pub struct $name(f64);

        impl $name {
            /// A literal of the program itself.
            ///
            /// # Panics
            /// When out of range; meant for `const`, where that stops the build.
            #[must_use]
            #[allow(clippy::manual_range_contains)] // `contains` is not const
            pub const fn literal(value: f64) -> Self {
                assert!(value >= $min && value <= $max, "literal out of range");
                Self(value)
            }
        }

        impl Measured for $name {
            const NAME: &'static str = stringify!($name);
            const MIN: f64 = $min;
            const MAX: f64 = $max;

            fn new(value: f64) -> Result<Self, OutOfRange> {
                if ($min..=$max).contains(&value) {
                    // Adding zero turns -0.0 into 0.0, so that equal values look equal.
                    Ok(Self(value + 0.0))
                } else {
                    Err(OutOfRange { quantity: Self::NAME, value, min: $min, max: $max })
                }
            }

            fn value(self) -> f64 {
                self.0
            }

            fn nearest(value: f64) -> Self {
                if value.is_nan() { Self($max) } else { Self(value.clamp($min, $max)) }
            }
        }

        impl TryFrom<f64> for $name {
            type Error = OutOfRange;
            fn try_from(value: f64) -> Result<Self, OutOfRange> {
                Self::new(value)
            }
        }

        impl From<$name> for f64 {
            fn from(quantity: $name) -> f64 {
                quantity.0
            }
        }
    };
}

quantity! {
    /// Specific gravity 20/20: weight in air over that of the same volume of water, both at 20 °C.
    SpecificGravity, 0.95..=1.2
}
quantity! {
    /// A difference of two specific gravities. Not a gravity: 0.002 is two points.
    GravityChange, -0.1..=0.1
}
quantity! {
    /// Degrees Plato: grams of extract in 100 g of solution (apparent extract may be below zero).
    Plato, -14.0..=45.0
}
quantity! {
    /// Extract in grams for each litre of solution.
    Extract, 0.0..=600.0
}
quantity! {
    /// A temperature, degrees Celsius.
    Celsius, -40.0..=130.0
}
quantity! {
    /// A difference of two temperatures, degrees Celsius. Not a temperature: 10 degrees warmer is
    /// not 10 °C.
    TemperatureChange, -170.0..=170.0
}
quantity! {
    /// A volume of liquid, litres.
    Litres, 0.0..=10000.0
}
quantity! {
    /// A mass, grams.
    Grams, 0.0..=10000000.0
}
quantity! {
    /// A density, kilograms a cubic metre.
    Density, 500.0..=2000.0
}
quantity! {
    /// Heat capacity by mass, kJ/(kg K).
    HeatCapacity, 0.0..=10.0
}
quantity! {
    /// A pressure, kilopascals; absolute or above the air outside, as the function says.
    Kilopascals, 0.0..=10000.0
}
quantity! {
    /// Carbon dioxide in beer: litres of gas at 0 °C and 1 atm a litre of beer.
    CarbonDioxideVolumes, 0.0..=60.0
}
quantity! {
    /// Alcohol by volume at 20 °C, per cent.
    AlcoholByVolume, 0.0..=30.0
}
quantity! {
    /// Alcohol by mass, per cent.
    AlcoholByMass, 0.0..=100.0
}
quantity! {
    /// The share of the extract that has gone, per cent; above 100 is usual for cider and wine.
    Attenuation, -60.0..=200.0
}
quantity! {
    /// Height above the sea, metres.
    Metres, -450.0..=6000.0
}
quantity! {
    /// A part of a whole, or a factor below one: 0 to 1.
    Share, 0.0..=1.0
}
quantity! {
    /// What a refractometer's mark is divided by, for wort is not plain sugar: about 1.04.
    WortFactor, 0.9..=1.2
}
quantity! {
    /// Oxygen dissolved in a liquid, milligrams a litre.
    DissolvedOxygen, 0.0..=60.0
}
quantity! {
    /// The size of a room or box, cubic metres.
    CubicMetres, 0.0..=100000.0
}
quantity! {
    /// A gas in the air of a room, parts in a million by volume.
    PartsPerMillion, 0.0..=1000000.0
}
quantity! {
    /// How many of something that is counted.
    Count, 0.0..=100000.0
}
quantity! {
    /// A length of time, hours.
    Hours, -10000000.0..=10000000.0
}

impl SpecificGravity {
    /// Gravity points: 1.050 is 50.
    #[must_use]
    pub fn points(self) -> f64 {
        (self.0 - 1.0) * 1000.0
    }
}

impl GravityChange {
    /// The difference in points: 0.002 is 2.
    #[must_use]
    pub fn points(self) -> f64 {
        self.0 * 1000.0
    }
}

impl Celsius {
    /// 0 °C in kelvin.
    pub const ZERO_IN_KELVIN: f64 = 273.15;

    /// The temperature in kelvin.
    #[must_use]
    pub fn kelvin(self) -> f64 {
        self.0 + Self::ZERO_IN_KELVIN
    }

    /// How much warmer this is than `other`.
    ///
    /// ```
    /// use fermentside::quantity::{Celsius, TemperatureChange};
    ///
    /// let warmer = Celsius::literal(30.0).above(Celsius::literal(20.0));
    /// assert_eq!(warmer, TemperatureChange::literal(10.0));
    /// ```
    #[must_use]
    pub fn above(self, other: Self) -> TemperatureChange {
        TemperatureChange(self.0 - other.0)
    }

    /// This temperature changed by `change`.
    ///
    /// ```
    /// use fermentside::quantity::{Celsius, TemperatureChange};
    ///
    /// let warm = Celsius::literal(30.0);
    /// assert_eq!(warm.changed_by(TemperatureChange::literal(-10.0)), Ok(Celsius::literal(20.0)));
    /// assert!(warm.changed_by(TemperatureChange::literal(110.0)).is_err());
    /// ```
    ///
    /// # Errors
    /// [`OutOfRange`] when the result leaves the range of [`Celsius`].
    pub fn changed_by(self, change: TemperatureChange) -> Result<Self, OutOfRange> {
        Self::new(self.0 + change.0)
    }
}

impl Count {
    /// The nearest whole number.
    #[must_use]
    pub fn whole(self) -> u32 {
        self.0.round() as u32
    }
}

impl Hours {
    /// The same time in days of 24 hours.
    #[must_use]
    pub fn days(self) -> f64 {
        self.0 / 24.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn refuses_what_cannot_be() {
        for wrong in [f64::NAN, f64::INFINITY, 0.5, 1.3] {
            assert!(SpecificGravity::new(wrong).is_err(), "{wrong}");
        }
        assert_eq!(Litres::new(-0.0).map(f64::from).map(f64::is_sign_negative), Ok(false));
    }

    #[test]
    fn a_stored_value_out_of_range_is_not_read() {
        assert!(serde_json::from_str::<Celsius>("20.5").is_ok());
        assert!(serde_json::from_str::<Celsius>("500").is_err());
        assert!(serde_json::from_str::<Celsius>("null").is_err());
    }

    #[test]
    fn not_a_number_falls_on_the_careful_side() {
        assert_eq!(Kilopascals::nearest(f64::NAN).value(), Kilopascals::MAX);
        assert_eq!(Kilopascals::nearest(-3.0).value(), 0.0);
    }
}
