//! Gravity as it is read and written: specific gravity, points or degrees Plato.

use super::decimal::{plain, read_numeral, write_number};
use super::measured::{Measured, Plato, SpecificGravity};
use super::read::key_of;
use super::read_error::ReadError;
use serde::{Deserialize, Serialize};

/// The scale a gravity is read on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GravityUnit {
    /// Specific gravity: 1.050.
    SpecificGravity,
    /// Degrees Plato (the same as Brix within 0.002 here): 12.4.
    Plato,
}

impl GravityUnit {
    /// Both scales, in the order offered.
    pub const ALL: [Self; 2] = [Self::SpecificGravity, Self::Plato];

    /// What stands behind the number.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::SpecificGravity => "SG",
            Self::Plato => "°P",
        }
    }
}

/// A gravity on the scale it was read on. It is kept so: turning one scale into the other is a
/// calculation (`science::sucrose`), and what was read is not.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Gravity {
    /// Read as specific gravity.
    Specific(SpecificGravity),
    /// Read as degrees Plato or Brix.
    Plato(Plato),
}

impl Gravity {
    /// The scale it is on.
    #[must_use]
    pub fn unit(self) -> GravityUnit {
        match self {
            Self::Specific(_) => GravityUnit::SpecificGravity,
            Self::Plato(_) => GravityUnit::Plato,
        }
    }
}

/// Gravities a hydrometer for beer, wine or cider can show.
const SG_MIN: f64 = 0.98;
const SG_MAX: f64 = 1.18;
const PLATO_MIN: f64 = -5.0;
const PLATO_MAX: f64 = 40.0;

/// Reads a gravity: `1.050`, `1050`, `50`, `1,050`, `12.4 P`, `50 points`. A scale behind the number
/// wins over `unit`.
///
/// As specific gravity a bare number above 0 and up to 2 is the ratio, from 900 the ratio in thousandths,
/// and anything else is points.
///
/// ```
/// use fermentside::quantity::{Gravity, GravityUnit, Plato, ReadError, SpecificGravity, read_gravity};
///
/// let same = Gravity::Specific(SpecificGravity::literal(1.050));
/// for text in ["1.050", "1,050", "1050", "50"] {
///     assert_eq!(read_gravity(text, GravityUnit::SpecificGravity)?, same);
/// }
/// let plato = read_gravity("12.4 P", GravityUnit::SpecificGravity)?;
/// assert_eq!(plato, Gravity::Plato(Plato::literal(12.4)));
/// let told = read_gravity("300", GravityUnit::SpecificGravity).unwrap_err().to_string();
/// assert_eq!(told, "it must be from 0.980 to 1.180");
/// # Ok::<(), ReadError>(())
/// ```
///
/// # Errors
/// [`ReadError`], with the limits on the scale in force (0.980 to 1.180, or −5 to 40 °P).
pub fn read_gravity(text: &str, unit: GravityUnit) -> Result<Gravity, ReadError> {
    let (numeral, behind) = read_numeral(text)?;
    let unit = match key_of(&behind).as_str() {
        // Degrees and per cent are words for extract; other signs mean nothing.
        "" if behind.is_empty() || (unit == GravityUnit::Plato && "°%".contains(&behind)) => unit,
        "sg" | "og" | "fg" | "pt" | "pts" | "point" | "points" => GravityUnit::SpecificGravity,
        "p" | "plato" | "brix" | "bx" => GravityUnit::Plato,
        _ => {
            let known = vec!["SG", "points", "°P"];
            return Err(ReadError::UnknownUnit { typed: behind, known });
        }
    };
    let points = key_of(&behind).starts_with('p') && unit == GravityUnit::SpecificGravity;
    let mut meanings = numeral.meanings();
    match unit {
        GravityUnit::SpecificGravity => meanings
            .find_map(|number| specific(number, points))
            .map(Gravity::Specific)
            .ok_or_else(|| limits(unit)),
        GravityUnit::Plato => {
            let number = meanings.next().unwrap_or(f64::NAN);
            // Three decimals near one, on a Plato scale, is a specific gravity in the wrong field.
            let like_sg =
                behind.is_empty() && (0.98..=1.18).contains(&number) && decimals(text) >= 3;
            if like_sg {
                let small = format!("{} SG", write_number(number, 3));
                return Err(ReadError::Ambiguous {
                    small,
                    large: format!("{} P", write_number(number, 1)),
                });
            }
            Plato::new(number)
                .ok()
                .filter(|p| (PLATO_MIN..=PLATO_MAX).contains(&p.value()))
                .map(Gravity::Plato)
                .ok_or_else(|| limits(unit))
        }
    }
}

fn decimals(text: &str) -> usize {
    plain(text).trim().rsplit_once(['.', ',']).map_or(0, |(_, after)| after.len())
}

fn specific(number: f64, points: bool) -> Option<SpecificGravity> {
    let ratio = match number {
        _ if points => 1.0 + number / 1000.0,
        n if n > 0.0 && n < 2.0 => n,
        n if n >= 900.0 => n / 1000.0,
        n => 1.0 + n / 1000.0,
    };
    // Dividing by a thousand leaves a last bit behind that typing 1.050 does not.
    let ratio = (ratio * 1e6).round() / 1e6;
    SpecificGravity::new(ratio).ok().filter(|sg| (SG_MIN..=SG_MAX).contains(&sg.value()))
}

fn limits(unit: GravityUnit) -> ReadError {
    match unit {
        GravityUnit::SpecificGravity => {
            ReadError::OutOfRange { min: write_number(SG_MIN, 3), max: write_number(SG_MAX, 3) }
        }
        GravityUnit::Plato => ReadError::OutOfRange {
            min: format!("{}\u{A0}°P", write_number(PLATO_MIN, 0)),
            max: format!("{}\u{A0}°P", write_number(PLATO_MAX, 0)),
        },
    }
}

/// Writes a gravity on its own scale: `1.050` or `12.4 °P`.
///
/// Half and finer points are kept, as narrow-range instruments show them.
///
/// ```
/// use fermentside::quantity::{Gravity, Plato, SpecificGravity, write_gravity};
///
/// let specific = |sg| write_gravity(Gravity::Specific(SpecificGravity::literal(sg)));
/// assert_eq!([specific(1.05), specific(1.0105)], ["1.050", "1.0105"]);
/// assert_eq!(write_gravity(Gravity::Plato(Plato::literal(12.4))), "12.4\u{A0}°P");
/// ```
#[must_use]
pub fn write_gravity(gravity: Gravity) -> String {
    match gravity {
        Gravity::Specific(sg) => {
            let thousandths = sg.value() * 1000.0;
            let whole = (thousandths - thousandths.round()).abs() < 0.05;
            write_number(sg.value(), if whole { 3 } else { 4 })
        }
        Gravity::Plato(plato) => format!("{}\u{A0}°P", write_number(plato.value(), 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_every_way_of_writing_a_gravity() {
        for text in
            ["1.050", "1050", "50", "1,050", "1 050", "50 pts", "1.05", "1.050 SG", "１.050"]
        {
            let read = read_gravity(text, GravityUnit::SpecificGravity);
            assert_eq!(read, Ok(Gravity::Specific(SpecificGravity::literal(1.05))), "{text}");
        }
        for (text, sg) in [
            ("0.998", 0.998),
            ("998", 0.998),
            ("-2", 0.998),
            ("0", 1.0),
            ("1.0125", 1.0125),
            ("12.5", 1.0125),
            ("1.5 points", 1.0015),
        ] {
            let read = read_gravity(text, GravityUnit::SpecificGravity);
            assert_eq!(read, Ok(Gravity::Specific(SpecificGravity::literal(sg))), "{text}");
        }
    }

    #[test]
    fn a_scale_behind_the_number_wins() {
        let plato = Ok(Gravity::Plato(Plato::literal(12.4)));
        for text in ["12.4 P", "12,4 plato", "12.4°P", "12.4 Brix"] {
            assert_eq!(read_gravity(text, GravityUnit::SpecificGravity), plato, "{text}");
        }
        assert_eq!(read_gravity("12.4", GravityUnit::Plato), plato);
    }

    #[test]
    fn half_is_a_ratio_that_no_beer_has_and_not_half_a_point() {
        for text in ["0.5", "0,5", "٠٫٥", ".7", "0.05"] {
            let read = read_gravity(text, GravityUnit::SpecificGravity);
            assert!(matches!(read, Err(ReadError::OutOfRange { .. })), "{text}: {read:?}");
        }
    }

    #[test]
    fn a_specific_gravity_in_the_wrong_field_is_asked_about_in_any_digits() {
        for text in ["1.050", "1,050", "١٫٠٥٠", "１．０５０", "1.050\u{200F}"] {
            let read = read_gravity(text, GravityUnit::Plato);
            assert!(matches!(read, Err(ReadError::Ambiguous { .. })), "{text}: {read:?}");
        }
    }

    #[test]
    fn refuses_with_the_limits_of_the_scale() {
        let wrong = read_gravity("1.5", GravityUnit::SpecificGravity);
        assert_eq!(wrong, Err(ReadError::OutOfRange { min: "0.980".into(), max: "1.180".into() }));
        assert!(read_gravity("60", GravityUnit::Plato).is_err());
        assert!(matches!(
            read_gravity("50 kg", GravityUnit::Plato),
            Err(ReadError::UnknownUnit { .. })
        ));
        // A sign that is no scale is not passed over: 12 % is not twelve points.
        for text in ["12 %", "1.050 $", "12°"] {
            let read = read_gravity(text, GravityUnit::SpecificGravity);
            assert!(matches!(read, Err(ReadError::UnknownUnit { .. })), "{text}: {read:?}");
        }
        assert!(read_gravity("12.4°", GravityUnit::Plato).is_ok());
        // A specific gravity typed into a Plato field is asked about, not believed.
        assert!(matches!(
            read_gravity("1.050", GravityUnit::Plato),
            Err(ReadError::Ambiguous { .. })
        ));
        assert!(read_gravity("1.0", GravityUnit::Plato).is_ok());
    }
}
