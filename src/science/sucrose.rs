//! Sugar in water stands for wort: density, and the two scales of gravity that follow from it.
//!
//! ICUMSA SPS-4 (Bubník, Kadlec, Urban, Bruhns, Sugar Technologists Manual, 1995), 0 to 80 °C. The
//! printed tables of specific gravity are ratios of weights in air, so ours are too.
//!
//! The two scales are two types, and one is no stand-in for the other:
//!
//! ```compile_fail,E0308
//! use fermentside::{quantity::Plato, science::sucrose::plato};
//!
//! let twice = plato(Plato::literal(12.4));
//! ```

use super::root::rising_root;
use super::{ScienceError, water};
use crate::quantity::{Celsius, Density, Extract, Gravity, Measured, Plato, SpecificGravity};

/// Lowest and highest temperature of the formula.
const RANGE: (Celsius, Celsius) = (Celsius::literal(0.0), Celsius::literal(80.0));

/// Density in kg/m³ of a solution with mass fraction `w` of sucrose at `t` °C. A small negative `w`
/// (apparent extract of dry beer, down to −0.14) continues the curve.
pub(super) fn rho(w: f64, t: f64) -> f64 {
    let x = (t - 20.0) / 100.0;
    let at_20 = w
        * (385.1761 + w * (135.3705 + w * (40.9299 + w * (-3.9643 + w * (13.4853 - w * 17.2890)))));
    let x1 = w * (-46.2720 + w * (-7.1720 + w * (1.1597 + w * (5.1126 + w * 17.5254))));
    let x2 = w * (59.7712 + w * (7.2491 + w * (12.3630 - w * 35.4791)));
    let x3 = w * (-47.2207 + w * (-21.6977 + w * 27.6301));
    let x4 = w * (18.3184 + w * 12.3081);
    water::rho(t) + at_20 + x * (x1 + x * (x2 + x * (x3 + x * x4)))
}

/// The mass fraction whose solution has density `rho_wanted` at `t` °C.
pub(super) fn fraction(rho_wanted: f64, t: f64) -> f64 {
    rising_root(-0.14, 0.6, |w| rho(w, t) - rho_wanted)
}

/// Specific gravity t/t by weight in air of a solution with mass fraction `w`.
pub(super) fn sg_at(w: f64, t: f64) -> f64 {
    sg_of_rho(rho(w, t), t)
}

/// What an instrument standardised at `t` °C shows in a liquid of density `rho` kg/m³.
pub(super) fn sg_of_rho(rho: f64, t: f64) -> f64 {
    (rho - water::AIR) / (water::rho(t) - water::AIR)
}

/// The density in kg/m³ that an instrument standardised at `t` °C shows as `sg`.
pub(super) fn rho_of_sg(sg: f64, t: f64) -> f64 {
    water::AIR + sg * (water::rho(t) - water::AIR)
}

/// Density of wort with extract `extract`.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured, Plato};
/// use fermentside::science::sucrose::density;
///
/// // ICUMSA SPS-4: 1046.444 kg/m³.
/// let wort = |t| density(Plato::literal(12.0), Celsius::literal(t));
/// assert_eq!(format!("{:.2}", wort(20.0)?.value()), "1046.44");
/// assert!(wort(100.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 80 °C.
pub fn density(extract: Plato, t: Celsius) -> Result<Density, ScienceError> {
    let (min, max) = RANGE;
    if !(min..=max).contains(&t) {
        return Err(ScienceError::Temperature { given: t, min, max });
    }
    Ok(Density::new(rho(extract.value() / 100.0, t.value()))?)
}

/// Specific gravity 20/20 of a solution.
///
/// ```
/// use fermentside::quantity::{Measured, Plato};
/// use fermentside::science::sucrose::specific_gravity;
///
/// // NBS Circular C440, Table 114: 4.0 °Bx is 1.01569.
/// assert!((specific_gravity(Plato::literal(4.0)).value() - 1.01569).abs() < 3e-5);
/// ```
#[must_use]
pub fn specific_gravity(extract: Plato) -> SpecificGravity {
    SpecificGravity::nearest(sg_at(extract.value() / 100.0, 20.0))
}

/// Degrees Plato of a specific gravity 20/20.
///
/// ```
/// use fermentside::quantity::{Measured, SpecificGravity};
/// use fermentside::science::sucrose::plato;
///
/// // NBS Circular C440, Table 114: 1.03017 is 7.6 °Bx.
/// assert_eq!(format!("{:.1}", plato(SpecificGravity::literal(1.03017)).value()), "7.6");
/// ```
#[must_use]
pub fn plato(gravity: SpecificGravity) -> Plato {
    Plato::nearest(100.0 * fraction(rho_of_sg(gravity.value(), 20.0), 20.0))
}

/// Degrees Plato of a specific gravity standardised at another temperature (15/15, 60/60 °F).
///
/// ```
/// use fermentside::quantity::{Celsius, Measured, SpecificGravity};
/// use fermentside::science::sucrose::{extract_per_litre, plato_at};
///
/// // Table of the Normal-Eichungs-Kommission: 1.010 (15/15) is 2.58 g in 100 mL of 15 °C.
/// let (gravity, at_15) = (SpecificGravity::literal(1.010), Celsius::literal(15.0));
/// let extract = extract_per_litre(plato_at(gravity, at_15)?, at_15)?;
/// assert!((extract.value() - 25.8).abs() < 0.1);
/// assert!(plato_at(gravity, Celsius::literal(100.0)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 80 °C.
pub fn plato_at(gravity: SpecificGravity, reference: Celsius) -> Result<Plato, ScienceError> {
    let (min, max) = RANGE;
    if !(min..=max).contains(&reference) {
        return Err(ScienceError::Temperature { given: reference, min, max });
    }
    let t = reference.value();
    Ok(Plato::new(100.0 * fraction(rho_of_sg(gravity.value(), t), t))?)
}

/// The specific gravity 20/20 of a gravity on either scale.
///
/// ```
/// use fermentside::quantity::{Gravity, Measured, Plato, SpecificGravity};
/// use fermentside::science::sucrose::as_specific;
///
/// let sg = SpecificGravity::literal(1.050);
/// assert_eq!(as_specific(Gravity::Specific(sg)), sg);
/// let same = as_specific(Gravity::Plato(Plato::literal(12.39)));
/// assert_eq!(format!("{:.4}", same.value()), "1.0500");
/// ```
#[must_use]
pub fn as_specific(gravity: Gravity) -> SpecificGravity {
    match gravity {
        Gravity::Specific(sg) => sg,
        Gravity::Plato(plato) => specific_gravity(plato),
    }
}

/// Degrees Plato of a gravity on either scale.
///
/// ```
/// use fermentside::quantity::{Gravity, Measured, SpecificGravity};
/// use fermentside::science::sucrose::as_plato;
///
/// let same = as_plato(Gravity::Specific(SpecificGravity::literal(1.050)));
/// assert_eq!(format!("{:.1}", same.value()), "12.4");
/// ```
#[must_use]
pub fn as_plato(gravity: Gravity) -> Plato {
    match gravity {
        Gravity::Specific(sg) => plato(sg),
        Gravity::Plato(plato) => plato,
    }
}

/// Grams of extract in a litre at `t`.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured, Plato};
/// use fermentside::science::sucrose::extract_per_litre;
///
/// // 12 % of 1046.44 g.
/// let found = |plato| extract_per_litre(Plato::literal(plato), Celsius::literal(20.0));
/// assert_eq!(format!("{:.1}", found(12.0)?.value()), "125.6");
/// assert!(found(-0.5).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 80 °C; [`ScienceError::OutOfRange`] below zero extract.
pub fn extract_per_litre(extract: Plato, t: Celsius) -> Result<Extract, ScienceError> {
    let rho = density(extract, t)?.value();
    Ok(Extract::new(extract.value() / 100.0 * rho)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_the_known_points() {
        // ICUMSA SPS-4: 1038.12 at 10 %, 1080.98 at 20 %, both at 20 °C.
        assert!((rho(0.10, 20.0) - 1038.12).abs() < 0.01);
        assert!((rho(0.20, 20.0) - 1080.98).abs() < 0.01);
    }

    /// The short cubic of the ASBC, P = −616.868 + 1111.14 S − 630.272 S² + 135.997 S³.
    #[test]
    fn the_short_formula_stays_near() {
        for tenth in 0..=300 {
            let p = f64::from(tenth) / 10.0;
            let s = specific_gravity(Plato::nearest(p)).value();
            let short = -616.868 + s * (1111.14 + s * (-630.272 + s * 135.997));
            assert!((short - p).abs() < 0.02, "{p} {short}");
        }
    }
}
