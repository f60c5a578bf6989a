//! Carbon dioxide in beer: what dissolves, and what is left when it has gone quiet.
//!
//! Solubility in water by Weiss (Marine Chemistry 2:203, 1974); beer holds about 4 % less. One volume
//! is 1 L of gas at 0 °C and 1 atm a litre of beer: 1.977 g/L.

use super::{ScienceError, Source, Term, Worked, air, water};
use crate::quantity::{CarbonDioxideVolumes, Celsius, Estimate, Kilopascals, Measured, Metres};

/// Grams a litre in one volume.
pub const GRAMS_PER_VOLUME: f64 = 1.977;
/// Molar mass, g/mol (IUPAC).
pub(super) const MOLAR_MASS: f64 = 44.009;
/// What beer holds of what water holds: 0.96, from 0.937 to 0.981.
pub(super) const BEER_FACTOR: f64 = 0.96;
/// The least of it, which makes the pressure in a bottle the highest.
pub(super) const LEAST_FACTOR: f64 = 0.937;
/// One standard deviation of the whole model, relative.
pub(super) const MODEL_ERROR: f64 = 0.05;
/// kPa in an atmosphere.
pub(super) const ATM: f64 = 101.325;
/// The temperatures the formula is used at.
const RANGE: (Celsius, Celsius) = (Celsius::literal(-2.0), Celsius::literal(45.0));

/// Weiss's K0 in mol/(L atm) at `kelvin`, fresh water.
pub(super) fn k0(kelvin: f64) -> f64 {
    (-58.0931 + 9050.69 / kelvin + 22.2940 * (kelvin / 100.0).ln()).exp()
}

/// Fugacity in atm of carbon dioxide at `atm` and `kelvin`, by its second virial coefficient.
pub(super) fn fugacity(atm: f64, kelvin: f64) -> f64 {
    let b = -1636.75 + kelvin * (12.0408 + kelvin * (-0.032_795_7 + kelvin * 3.165_28e-5));
    // 82.057 cm³ atm/(mol K).
    atm * (atm * b / (82.057 * kelvin)).exp()
}

/// Volumes that `mol` a litre are.
pub(super) fn volumes_of(mol: f64) -> f64 {
    mol * MOLAR_MASS / GRAMS_PER_VOLUME
}

fn in_range(t: Celsius) -> Result<Celsius, ScienceError> {
    let (min, max) = RANGE;
    if (min..=max).contains(&t) {
        Ok(t)
    } else {
        Err(ScienceError::Temperature { given: t, min, max })
    }
}

/// What pure water holds at `t` under a partial pressure of carbon dioxide.
///
/// ```
/// use fermentside::quantity::{Celsius, Kilopascals, Measured};
/// use fermentside::science::carbon_dioxide::dissolved_in_water;
///
/// let at = |t| dissolved_in_water(Celsius::literal(t), Kilopascals::literal(101.325));
/// // Murray and Riley (1971) measured 0.8652.
/// assert!((at(20.0)?.value() - 0.8652).abs() < 0.01);
/// assert!(at(50.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside −2 to 45 °C.
pub fn dissolved_in_water(
    t: Celsius,
    partial: Kilopascals,
) -> Result<CarbonDioxideVolumes, ScienceError> {
    let kelvin = in_range(t)?.kelvin();
    let mol = k0(kelvin) * fugacity(partial.value() / ATM, kelvin);
    Ok(CarbonDioxideVolumes::new(volumes_of(mol))?)
}

/// What beer holds at `t` under a partial pressure of carbon dioxide, with the model's own error.
///
/// ```
/// use fermentside::quantity::{Celsius, Kilopascals, Measured};
/// use fermentside::science::carbon_dioxide::{dissolved_in_beer, dissolved_in_water};
///
/// let (t, partial) = (Celsius::literal(20.0), Kilopascals::literal(101.325));
/// let (beer, water) = (dissolved_in_beer(t, partial)?, dissolved_in_water(t, partial)?);
/// assert!((beer.value().value() / water.value() - 0.96).abs() < 1e-9);
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside −2 to 45 °C.
pub fn dissolved_in_beer(
    t: Celsius,
    partial: Kilopascals,
) -> Result<Estimate<CarbonDioxideVolumes>, ScienceError> {
    let water = dissolved_in_water(t, partial)?.value();
    let beer = BEER_FACTOR * water;
    Ok(Estimate::new(CarbonDioxideVolumes::new(beer)?, MODEL_ERROR * beer))
}

/// Carbon dioxide already in still beer that was last `warmest` since its fermentation all but ended,
/// under an airlock at `height`.
#[derive(Clone, Debug, PartialEq)]
pub struct AlreadyIn {
    /// The answer.
    pub volumes: Estimate<CarbonDioxideVolumes>,
    /// How it was worked out.
    pub worked: Worked,
}

/// See [`AlreadyIn`]: K0 × 0.96 × (air pressure − water vapour) at the warmest temperature.
///
/// ```
/// use fermentside::quantity::{Celsius, Estimate, Measured, Metres};
/// use fermentside::science::carbon_dioxide::already_in;
///
/// let warmest = Estimate::new(Celsius::literal(20.0), 1.0);
/// let found = already_in(warmest, Metres::literal(0.0))?;
/// assert_eq!(format!("{:.1}", found.volumes.value().value()), "0.8");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside −2 to 45 °C.
pub fn already_in(warmest: Estimate<Celsius>, height: Metres) -> Result<AlreadyIn, ScienceError> {
    let outside = air::pressure(height);
    let at = |t: Celsius| {
        let partial = (outside.value() - water::vapour(t.value())).max(0.0);
        dissolved_in_beer(t, Kilopascals::nearest(partial))
    };
    let beer = at(warmest.value())?;
    // Slope by one degree; the warm side, which is always inside the range where the other is not.
    let (min, max) = RANGE;
    let warm = Celsius::nearest((warmest.value().value() + 1.0).min(max.value()));
    let cold = Celsius::nearest((warmest.value().value() - 1.0).max(min.value()));
    let slope = (at(warm)?.value().value() - at(cold)?.value().value()) / warm.above(cold).value();
    let worked = Worked::default()
        .input(Term::WarmestTemperature, warmest.value())
        .input(Term::HeightAboveSea, height)
        .step(
            Term::AirPressure,
            outside,
            "p = 101.325 (1 − 2.25577·10⁻⁵ h)^5.2559",
            Source::StandardAtmosphere,
        )
        .step(
            Term::WaterVapour,
            water::vapour_pressure(warmest.value()),
            "ln p = 24.4543 − 67.4509 (100/T) − 4.8489 ln(T/100)",
            Source::WeissPrice1980,
        )
        .step(
            Term::CarbonDioxideAlreadyIn,
            beer.value(),
            "0.96 K0(T) f(p − p_vapour) × 44.01 ÷ 1.977",
            Source::Weiss1974,
        )
        .doubt(Term::ModelError, beer.sigma())
        .doubt(Term::WarmestTemperature, slope * warmest.sigma());
    Ok(AlreadyIn { volumes: Estimate::new(beer.value(), worked.sigma()), worked })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_warmer_history_leaves_less() {
        let at = |t| {
            let warmest = Estimate::new(Celsius::literal(t), 1.0);
            already_in(warmest, Metres::literal(0.0)).expect("in range").volumes.value().value()
        };
        assert!((0.79..=0.84).contains(&at(20.0)), "{}", at(20.0));
        assert!(at(2.0) - at(20.0) > 0.6);
    }

    #[test]
    fn thin_air_leaves_less() {
        // 5000 ft: air pressure times 0.83 or so.
        let at = |h| {
            let warmest = Estimate::exact(Celsius::literal(20.0));
            already_in(warmest, Metres::literal(h)).expect("in range").volumes.value().value()
        };
        assert!((at(1524.0) / at(0.0) - 0.83).abs() < 0.01);
    }
}
