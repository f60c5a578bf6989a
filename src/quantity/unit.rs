//! The brewer's units, used at the edge only.

use super::measured::{
    CarbonDioxideVolumes, Celsius, Count, CubicMetres, Grams, Hours, Kilopascals, Litres, Measured,
    Metres, Plato, Share, WortFactor,
};
use serde::{Deserialize, Serialize};

/// One unit in words and numbers, its type taken away: what reads and writes is so compiled once and
/// not for every quantity.
#[derive(Debug)]
pub struct UnitRow {
    /// What stands behind the number.
    pub symbol: &'static str,
    /// What people type for it: lower case, letters, digits and `/` only. A spelling shared by two
    /// units is refused unless one of them is chosen beside the field.
    pub spellings: &'static [&'static str],
    /// Decimals usually written.
    pub places: usize,
    /// One of it in the quantity's own unit.
    scale: f64,
    /// Its number where the own unit's is nought.
    zero: f64,
}

impl UnitRow {
    /// From a number in this unit to the quantity's own unit.
    ///
    /// ```
    /// use fermentside::quantity::{TemperatureUnit, Unit};
    ///
    /// assert_eq!(TemperatureUnit::Fahrenheit.row().to_own(212.0), 100.0);
    /// ```
    #[must_use]
    pub fn to_own(&self, number: f64) -> f64 {
        (number - self.zero) * self.scale
    }

    /// From the quantity's own unit to a number in this unit.
    ///
    /// ```
    /// use fermentside::quantity::{MassUnit, Unit};
    ///
    /// assert_eq!(MassUnit::Kilograms.row().express(1700.0), 1.7);
    /// ```
    #[must_use]
    pub fn express(&self, own: f64) -> f64 {
        own / self.scale + self.zero
    }
}

/// A unit that a field can be written in.
pub trait Unit: Copy + Eq + std::fmt::Debug + 'static {
    /// What it measures.
    type Quantity: Measured;
    /// Every unit of this quantity, in the order offered.
    const ALL: &'static [Self];
    /// The same, their type taken away.
    const ROWS: &'static [UnitRow];
    /// This one, its type taken away.
    fn row(self) -> &'static UnitRow;

    /// What stands behind the number.
    fn symbol(self) -> &'static str {
        self.row().symbol
    }
    /// What people type for it.
    fn spellings(self) -> &'static [&'static str] {
        self.row().spellings
    }
    /// Decimals usually written.
    fn places(self) -> usize {
        self.row().places
    }
    /// From a number in this unit to the quantity's own unit.
    fn to_own(self, number: f64) -> f64 {
        self.row().to_own(number)
    }
    /// From the quantity's own unit to a number in this unit.
    fn express(self, own: f64) -> f64 {
        self.row().express(own)
    }
}

macro_rules! units {
    ($(#[$doc:meta])* $name:ident of $quantity:ident {
        $($(#[$vdoc:meta])* $variant:ident: $symbol:literal [$($spelling:literal),*]
            places $places:literal, scale $scale:expr, zero $zero:expr;)+
    }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum $name { $($(#[$vdoc])* $variant),+ }

        impl Unit for $name {
            type Quantity = $quantity;
            const ALL: &'static [Self] = &[$(Self::$variant),+];
            const ROWS: &'static [UnitRow] = &[$(UnitRow {
                symbol: $symbol,
                spellings: &[$($spelling),*],
                places: $places,
                scale: $scale,
                zero: $zero,
            }),+];
            fn row(self) -> &'static UnitRow {
                &Self::ROWS[self as usize]
            }
        }
    };
}

units! {
    /// Temperature.
    TemperatureUnit of Celsius {
        /// Degrees Celsius.
        Celsius: "°C" ["c", "celsius", "centigrade"] places 1, scale 1.0, zero 0.0;
        /// Degrees Fahrenheit.
        Fahrenheit: "°F" ["f", "fahrenheit"] places 1, scale (5.0 / 9.0), zero 32.0;
    }
}
units! {
    /// Volume of liquid. A US and an imperial gallon differ by a fifth, so both are named in full.
    VolumeUnit of Litres {
        /// Litres.
        Litres: "L" ["l", "litre", "litres", "liter", "liters"] places 2, scale 1.0, zero 0.0;
        /// US liquid gallons: exactly 231 cubic inches.
        UsGallons: "US gal" ["usgal", "usgallon", "usgallons", "gal", "gallon", "gallons"]
            places 3, scale 3.785_411_784, zero 0.0;
        /// Imperial gallons: exactly 4.54609 L.
        ImperialGallons: "imp gal"
            ["impgal", "imperialgal", "imperialgallon", "imperialgallons", "ukgal", "ukgallon",
             "ukgallons", "gal", "gallon", "gallons"]
            places 3, scale 4.546_09, zero 0.0;
    }
}
units! {
    /// The size of a bottle.
    BottleUnit of Litres {
        /// Millilitres.
        Millilitres: "mL" ["ml", "millilitre", "millilitres", "milliliter", "milliliters"]
            places 0, scale 0.001, zero 0.0;
        /// US fluid ounces: exactly a 128th of a US gallon.
        UsFluidOunces: "US fl oz" ["usfloz", "floz", "oz"]
            places 1, scale (3.785_411_784 / 128.0), zero 0.0;
        /// Imperial fluid ounces: exactly a 160th of an imperial gallon.
        ImperialFluidOunces: "imp fl oz" ["impfloz", "ukfloz", "floz", "oz"]
            places 1, scale (4.546_09 / 160.0), zero 0.0;
    }
}
units! {
    /// What is counted.
    CountUnit of Count {
        /// Bottles.
        Bottles: "bottles" ["bottles", "bottle"] places 0, scale 1.0, zero 0.0;
    }
}
units! {
    /// Mass.
    MassUnit of Grams {
        /// Grams.
        Grams: "g" ["g", "gram", "grams", "gramme", "grammes"] places 1, scale 1.0, zero 0.0;
        /// Kilograms.
        Kilograms: "kg" ["kg", "kilo", "kilos", "kilogram", "kilograms"]
            places 3, scale 1000.0, zero 0.0;
        /// Avoirdupois ounces: exactly 28.349523125 g.
        Ounces: "oz" ["oz", "ounce", "ounces"] places 2, scale 28.349_523_125, zero 0.0;
        /// Avoirdupois pounds: exactly 453.59237 g.
        Pounds: "lb" ["lb", "lbs", "pound", "pounds"] places 3, scale 453.592_37, zero 0.0;
    }
}
units! {
    /// Pressure.
    PressureUnit of Kilopascals {
        /// Bar.
        Bar: "bar" ["bar", "bars"] places 1, scale 100.0, zero 0.0;
        /// Pounds-force a square inch.
        Psi: "psi" ["psi", "psig", "lb/in2"] places 0, scale 6.894_757_293, zero 0.0;
        /// Kilopascals.
        Kilopascals: "kPa" ["kpa"] places 0, scale 1.0, zero 0.0;
    }
}
units! {
    /// Carbon dioxide dissolved in beer. One volume is 1.977 g/L (science, `carbon_dioxide`).
    GasUnit of CarbonDioxideVolumes {
        /// Volumes of gas at 0 °C and 1 atm a volume of beer.
        Volumes: "vol" ["vol", "vols", "volume", "volumes", "v"] places 2, scale 1.0, zero 0.0;
        /// Grams a litre.
        GramsPerLitre: "g/L" ["g/l", "gl", "gperl"] places 2, scale (1.0 / 1.977), zero 0.0;
    }
}
units! {
    /// Height above the sea.
    LengthUnit of Metres {
        /// Metres.
        Metres: "m" ["m", "metre", "metres", "meter", "meters"] places 0, scale 1.0, zero 0.0;
        /// International feet: exactly 0.3048 m.
        Feet: "ft" ["ft", "foot", "feet"] places 0, scale 0.3048, zero 0.0;
    }
}
units! {
    /// Short times, as a brewer waits for them.
    MinuteUnit of Hours {
        /// Minutes.
        Minutes: "min" ["min", "mins", "minute", "minutes"] places 0, scale (1.0 / 60.0), zero 0.0;
        /// Hours.
        Hours: "h" ["h", "hr", "hrs", "hour", "hours"] places 1, scale 1.0, zero 0.0;
    }
}
units! {
    /// Long times, as a brewer counts them.
    DayUnit of Hours {
        /// Days.
        Days: "days" ["d", "day", "days"] places 1, scale 24.0, zero 0.0;
    }
}
units! {
    /// What a refractometer is marked in: degrees Plato of plain sugar.
    BrixUnit of Plato {
        /// Degrees Brix.
        Brix: "°Bx" ["bx", "brix"] places 1, scale 1.0, zero 0.0;
    }
}
units! {
    /// A refractometer's wort factor: a number and no more.
    FactorUnit of WortFactor {
        /// As it is.
        Times: "×" ["x", "×"] places 2, scale 1.0, zero 0.0;
    }
}
units! {
    /// A part of a whole.
    ShareUnit of Share {
        /// Per cent.
        Percent: "%" ["percent", "pct"] places 0, scale 0.01, zero 0.0;
    }
}
units! {
    /// Room in a house.
    RoomUnit of CubicMetres {
        /// Cubic metres.
        CubicMetres: "m³" ["m3", "m³", "cubicmetres", "cubicmeters"] places 1, scale 1.0, zero 0.0;
        /// Cubic feet: exactly 0.3048 m cubed.
        CubicFeet: "ft³" ["ft3", "ft³", "cubicfeet"] places 0, scale 0.028_316_846_592, zero 0.0;
    }
}
