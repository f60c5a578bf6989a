//! Water: its density and the pressure of its vapour.

use super::ScienceError;
use crate::quantity::{Celsius, Density, Kilopascals, Measured};

/// Density of air that weighings are reduced by, kg/m³ (the convention of published gravity tables).
pub(super) const AIR: f64 = 1.2;

/// Density of water in kg/m³ at `t` °C, 0 to 100. Kell's form with the coefficients of ICUMSA SPS-4
/// (Bubník, Kadlec, Urban, Bruhns, Sugar Technologists Manual, 1995); within 0.02 kg/m³ of IAPWS-95.
pub(super) fn rho(t: f64) -> f64 {
    let top = 999.839_52
        + t * (16.952_577
            + t * (-7.990_512_7e-3
                + t * (-46.241_757e-6 + t * (105.846_01e-9 - t * 281.030_06e-12))));
    top / (1.0 + 16.887_236e-3 * t)
}

/// Density of water at 1 atm.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured};
/// use fermentside::science::water::density;
///
/// // IAPWS-95: 995.6495 kg/m³ at 30 °C.
/// assert!((density(Celsius::literal(30.0))?.value() - 995.6495).abs() < 0.02);
/// assert!(density(Celsius::literal(-5.0)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 100 °C.
pub fn density(t: Celsius) -> Result<Density, ScienceError> {
    let (min, max) = (Celsius::literal(0.0), Celsius::literal(100.0));
    if !(min..=max).contains(&t) {
        return Err(ScienceError::Temperature { given: t, min, max });
    }
    Ok(Density::new(rho(t.value()))?)
}

/// Pressure of water vapour over water, kPa (Weiss & Price, Marine Chemistry 8:347, 1980, fresh
/// water; from memory). 0 to 40 °C within 0.1 %.
pub(super) fn vapour(t: f64) -> f64 {
    let kelvin = t + Celsius::ZERO_IN_KELVIN;
    let ln_atm = 24.4543 - 67.4509 * (100.0 / kelvin) - 4.8489 * (kelvin / 100.0).ln();
    101.325 * ln_atm.exp()
}

/// Pressure of water vapour over water or beer.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured};
/// use fermentside::science::water::vapour_pressure;
///
/// // IAPWS-95: 2.3393 kPa at 20 °C (from memory).
/// assert!((vapour_pressure(Celsius::literal(20.0)).value() - 2.3393).abs() < 0.005);
/// ```
#[must_use]
pub fn vapour_pressure(t: Celsius) -> Kilopascals {
    Kilopascals::nearest(vapour(t.value()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn vapour_agrees_with_the_steam_tables() {
        // IAPWS-95 saturation pressures, kPa: 0.6112 at 0 °C, 2.3393 at 20 °C, 4.2470 at 30 °C (from memory).
        for (t, kpa) in [(0.0, 0.6112), (20.0, 2.3393), (30.0, 4.2470)] {
            assert!((vapour(t) / kpa - 1.0).abs() < 0.003, "{t}: {}", vapour(t));
        }
    }
}
