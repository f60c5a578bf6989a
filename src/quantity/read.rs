//! From typed text to a checked quantity, and back to text.

use super::decimal::{read_numeral, write_number};
use super::hair::HAIR;
use super::measured::Measured;
use super::read_error::ReadError;
use super::unit::{Unit, UnitRow};

/// The values a field takes: within what the quantity can be, and often narrower.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds<Q> {
    /// The lowest value taken.
    pub min: Q,
    /// The highest value taken.
    pub max: Q,
}

impl<Q: Measured> Bounds<Q> {
    /// From `min` to `max`, both taken.
    #[must_use]
    pub const fn new(min: Q, max: Q) -> Self {
        Self { min, max }
    }

    /// All that the quantity can be.
    ///
    /// ```
    /// use fermentside::quantity::{Bounds, ReadError, Share, ShareUnit, read};
    ///
    /// assert_eq!(read("75", ShareUnit::Percent, Bounds::all()), Ok(Share::literal(0.75)));
    /// let more = read("120", ShareUnit::Percent, Bounds::all());
    /// assert!(matches!(more, Err(ReadError::OutOfRange { .. })));
    /// ```
    #[must_use]
    pub fn all() -> Self {
        Self { min: Q::nearest(Q::MIN), max: Q::nearest(Q::MAX) }
    }
}

/// Reads a quantity. A unit behind the number wins over `unit`, the one chosen beside the field.
///
/// ```
/// use fermentside::quantity::{Bounds, Celsius, TemperatureUnit, read};
///
/// let room = Bounds::new(Celsius::literal(0.0), Celsius::literal(40.0));
/// assert_eq!(read("20,5", TemperatureUnit::Celsius, room), Ok(Celsius::literal(20.5)));
/// let told = |text| read(text, TemperatureUnit::Celsius, room).unwrap_err().to_string();
/// assert_eq!(told("200 F"), "it must be from 32.0\u{A0}°F to 104.0\u{A0}°F");
/// assert_eq!(told("5 bar"), "\u{201C}bar\u{201D} is no unit here; use °C, °F");
/// ```
///
/// # Errors
/// [`ReadError`], with limits in the unit in force.
pub fn read<U: Unit>(
    text: &str,
    unit: U,
    bounds: Bounds<U::Quantity>,
) -> Result<U::Quantity, ReadError> {
    let limits = (bounds.min.value(), bounds.max.value());
    read_own(text, unit.row(), U::ROWS, limits).map(U::Quantity::nearest)
}

/// Reads a number in the quantity's own unit, from `limits.0` to `limits.1`, as [`read`] does with types:
/// `units` are all there are, `unit` the one of them that is chosen.
///
/// ```
/// use fermentside::quantity::{ReadError, Unit, VolumeUnit, read_own};
///
/// let volume = |text| read_own(text, VolumeUnit::Litres.row(), VolumeUnit::ROWS, (0.0, 100.0));
/// assert_eq!(volume("5 US gal"), Ok(5.0 * 3.785411784));
/// assert!(matches!(volume("5 gal"), Err(ReadError::TwoUnits { .. })));
/// ```
///
/// # Errors
/// As [`read`].
pub fn read_own(
    text: &str,
    unit: &'static UnitRow,
    units: &'static [UnitRow],
    (min, max): (f64, f64),
) -> Result<f64, ReadError> {
    let (numeral, behind) = read_numeral(text)?;
    // A degree alone is one of the scale chosen beside the field.
    let degree = matches!(behind.to_ascii_lowercase().as_str(), "°" | "deg" | "degree" | "degrees");
    let chosen = behind.is_empty() || (degree && unit.symbol.starts_with('°'));
    let unit = if chosen { unit } else { unit_named(&behind, unit, units)? };
    // Limits are told rounded; what is told is taken, as the limit itself. A hair is lost in the units.
    let hair = |limit: f64| HAIR * limit.abs().max(1.0);
    let told_min = as_told(min, unit).min(min) - hair(min);
    let told_max = as_told(max, unit).max(max) + hair(max);
    let fits = |number: f64| {
        let own = unit.to_own(number);
        (told_min..=told_max).contains(&own).then_some(own.clamp(min, max))
    };
    let mut fitting = numeral.meanings().filter_map(|number| Some((number, fits(number)?)));
    match (fitting.next(), fitting.next()) {
        (Some((_, value)), None) => Ok(value),
        (Some((small, _)), Some((large, _))) => Err(ReadError::Ambiguous {
            small: trimmed(write_number(small, 3)),
            large: write_number(large, 0),
        }),
        (None, _) => {
            Err(ReadError::OutOfRange { min: write_own(min, unit), max: write_own(max, unit) })
        }
    }
}

fn trimmed(text: String) -> String {
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A limit after it was rounded to be written.
fn as_told(limit: f64, unit: &UnitRow) -> f64 {
    let places = 10_f64.powi(unit.places as i32);
    unit.to_own((unit.express(limit) * places).round() / places)
}

fn unit_named(
    typed: &str,
    chosen: &'static UnitRow,
    units: &'static [UnitRow],
) -> Result<&'static UnitRow, ReadError> {
    let key = key_of(typed);
    let known = || units.iter().map(|unit| unit.symbol).collect();
    let mut named = units.iter().filter(|unit| unit.spellings.contains(&key.as_str()));
    match (named.next(), named.next()) {
        (Some(unit), None) => Ok(unit),
        (Some(_), Some(_)) if chosen.spellings.contains(&key.as_str()) => Ok(chosen),
        (Some(_), Some(_)) => Err(ReadError::TwoUnits { typed: typed.to_owned(), known: known() }),
        (None, _) => Err(ReadError::UnknownUnit { typed: typed.to_owned(), known: known() }),
    }
}

/// Letters and digits only, lower case: `°F`, `deg F` and `f` are one.
pub(super) fn key_of(typed: &str) -> String {
    let lower: String =
        typed.to_ascii_lowercase().chars().filter(|c| c.is_alphanumeric() || *c == '/').collect();
    let scale = ["degrees", "degree", "deg"].iter().find_map(|word| lower.strip_prefix(word));
    scale.unwrap_or(&lower).to_owned()
}

/// Writes a quantity with its unit, to the unit's usual number of decimals: `20.0 °C`.
///
/// ```
/// use fermentside::quantity::{Celsius, TemperatureUnit, write};
///
/// assert_eq!(write(Celsius::literal(20.0), TemperatureUnit::Fahrenheit), "68.0\u{A0}°F");
/// ```
#[must_use]
pub fn write<U: Unit>(quantity: U::Quantity, unit: U) -> String {
    write_own(quantity.value(), unit.row())
}

fn write_own(own: f64, unit: &UnitRow) -> String {
    format!("{}\u{A0}{}", write_bare_own(own, unit), unit.symbol)
}

/// Writes a number of the quantity's own unit in `unit`, without its sign: as a field shows it.
///
/// ```
/// use fermentside::quantity::{PressureUnit, Unit, write_bare_own};
///
/// assert_eq!(write_bare_own(250.0, PressureUnit::Bar.row()), "2.5");
/// ```
#[must_use]
pub fn write_bare_own(own: f64, unit: &UnitRow) -> String {
    write_number(unit.express(own), unit.places)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Celsius, LengthUnit, Litres, TemperatureUnit, VolumeUnit};

    #[test]
    fn a_long_text_is_quoted_by_how_it_begins() {
        let said = |text: &str| {
            read(text, VolumeUnit::Litres, Bounds::all()).expect_err("no volume").to_string()
        };
        assert_eq!(said("plenty"), "\u{201C}plenty\u{201D} is not a number");
        for text in ["z".repeat(5000), "5".to_owned() + &"é".repeat(5000), "1,2.".repeat(1000)] {
            assert!(said(&text).chars().count() < 90, "{}", said(&text));
        }
    }

    #[test]
    fn reads_a_unit_behind_the_number() {
        let warm = read("68F", TemperatureUnit::Celsius, Bounds::all()).map(Measured::value);
        assert!(warm.is_ok_and(|t| (t - 20.0).abs() < 1e-9));
        let cool = read("20 C", TemperatureUnit::Fahrenheit, Bounds::all()).map(Measured::value);
        assert_eq!(cool, Ok(20.0));
        let spelt = read("68 °F", TemperatureUnit::Celsius, Bounds::all()).map(Measured::value);
        assert!(spelt.is_ok_and(|t| (t - 20.0).abs() < 1e-9));
        for text in ["68°", "68 degree F", "68 degrees"] {
            let read = read(text, TemperatureUnit::Fahrenheit, Bounds::all()).map(Measured::value);
            assert!(read.is_ok_and(|t| (t - 20.0).abs() < 1e-9), "{text}");
        }
        assert!(read("5°", VolumeUnit::Litres, Bounds::all()).is_err());
    }

    #[test]
    fn a_gallon_alone_is_refused_unless_one_is_chosen() {
        let metric = read("5 gal", VolumeUnit::Litres, Bounds::all());
        assert!(matches!(metric, Err(ReadError::TwoUnits { .. })), "{metric:?}");
        let us = read("5 gal", VolumeUnit::UsGallons, Bounds::all()).map(Measured::value);
        assert_eq!(us, Ok(5.0 * 3.785_411_784));
    }

    #[test]
    fn the_limit_is_told_in_the_unit_used() {
        let bounds = Bounds::new(Celsius::literal(0.0), Celsius::literal(60.0));
        let hot = read("200 F", TemperatureUnit::Celsius, bounds);
        let told =
            ReadError::OutOfRange { min: "32.0\u{A0}°F".into(), max: "140.0\u{A0}°F".into() };
        assert_eq!(hot, Err(told));
        // The limit as told is itself taken.
        assert!(read("140 F", TemperatureUnit::Celsius, bounds).is_ok());
    }

    #[test]
    fn the_range_decides_what_a_comma_means() {
        let feet = read("1,500", LengthUnit::Feet, Bounds::all());
        assert!(matches!(feet, Err(ReadError::Ambiguous { .. })), "{feet:?}");
        let volume = Bounds::new(Litres::literal(0.1), Litres::literal(1000.0));
        assert_eq!(read("1,500", VolumeUnit::Litres, volume).map(Measured::value), Ok(1.5));
    }
}
