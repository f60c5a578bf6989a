//! Air for the yeast: how much oxygen wort can take up from air, and how much of it shaking reaches.
//!
//! Benson and Krause (1984) in the form of the APHA Standard Methods, for water under air that is full
//! of vapour: ln C = −139.34411 + 1.575701e5/T − 6.642308e7/T² + 1.2438e10/T³ − 8.621949e11/T⁴, mg/L at
//! 1 atm, T in kelvin. Corrected for pressure as APHA has it (from memory):
//! C(P) = C P (1 − p_w/P)(1 − θP) ÷ ((1 − p_w)(1 − θ)), P and vapour p_w in atm, with
//! ln p_w = 11.8571 − 3840.70/T − 216961/T² and θ = 0.000975 − 1.426e-5 t + 6.436e-8 t².

use super::{Amount, ScienceError, Source, Term, Worked, air};
use crate::quantity::{Celsius, DissolvedOxygen, Estimate, Kilopascals, Measured, Metres, Plato};

/// Coldest and warmest water of the formula.
const RANGE: (Celsius, Celsius) = (Celsius::literal(0.0), Celsius::literal(40.0));
/// What extract takes off, for each degree Plato: 26 % at 15 °P, taken as straight (Oxford Companion to
/// Beer, the only source there is).
const LESS_PER_PLATO: f64 = 0.26 / 15.0;
/// One standard deviation of that, relative to itself: one source, and a straight line.
const LESS_DOUBT: f64 = 0.2;
/// Sources for water lie up to 3 % apart; one standard deviation.
const WATER_DOUBT: f64 = 0.015;
/// Weather moves the pressure; one standard deviation.
const WEATHER: f64 = 0.01;

/// What yeast is said to want, mg/L (common practice, no source). Dry yeast wants less or none, by its
/// makers.
pub const WANTED: (DissolvedOxygen, DissolvedOxygen) =
    (DissolvedOxygen::literal(8.0), DissolvedOxygen::literal(10.0));

/// Oxygen that water takes up from air at a pressure.
///
/// ```
/// use fermentside::quantity::{Celsius, Kilopascals, Measured};
/// use fermentside::science::oxygen::in_water;
///
/// // EN 25814: 9.09 mg/L at 20 °C and 1 atm.
/// let at = |t| in_water(Celsius::literal(t), Kilopascals::literal(101.325));
/// assert_eq!(format!("{:.2}", at(20.0)?.value()), "9.09");
/// assert!(at(60.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 40 °C; [`ScienceError::OutOfRange`] for a pressure beyond
/// what air has anywhere people brew.
pub fn in_water(t: Celsius, pressure: Kilopascals) -> Result<DissolvedOxygen, ScienceError> {
    let (min, max) = RANGE;
    if !(min..=max).contains(&t) {
        return Err(ScienceError::Temperature { given: t, min, max });
    }
    let kelvin = t.kelvin();
    let at_1_atm = (-139.344_11
        + (1.575_701e5 + (-6.642_308e7 + (1.2438e10 - 8.621_949e11 / kelvin) / kelvin) / kelvin)
            / kelvin)
        .exp();
    let p = pressure.value() / air::SEA_LEVEL.value();
    let vapour = (11.8571 - (3840.70 + 216_961.0 / kelvin) / kelvin).exp();
    let t = t.value();
    let theta = 0.000_975 - 1.426e-5 * t + 6.436e-8 * t * t;
    let factor = (p - vapour) * (1.0 - theta * p) / ((1.0 - vapour) * (1.0 - theta));
    Ok(DissolvedOxygen::new(at_1_atm * factor)?)
}

/// Air in wort.
#[derive(Clone, Debug, PartialEq)]
pub struct AirInWort {
    /// The most that air can give.
    pub full: Estimate<DissolvedOxygen>,
    /// What shaking or splashing reaches at least: half of it (common practice, no source).
    pub shaken_from: DissolvedOxygen,
    /// What it reaches at most: all of it.
    pub shaken_to: DissolvedOxygen,
    /// How it was worked out.
    pub worked: Worked,
}

/// Oxygen that wort takes up from air at a height above the sea.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured, Metres, Plato};
/// use fermentside::science::oxygen::in_wort;
///
/// let found = in_wort(Celsius::literal(20.0), Plato::literal(12.0), Metres::literal(0.0))?;
/// assert_eq!(format!("{:.1}", found.full.value().value()), "7.2");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// As [`in_water`].
pub fn in_wort(t: Celsius, extract: Plato, height: Metres) -> Result<AirInWort, ScienceError> {
    let pressure = air::pressure(height);
    let water = in_water(t, pressure)?;
    let less = LESS_PER_PLATO * extract.value().max(0.0);
    let full = DissolvedOxygen::new(water.value() * (1.0 - less))?;
    let half = DissolvedOxygen::new(0.5 * full.value())?;
    let worked = Worked::default()
        .input(Term::WortTemperature, t)
        .input(Term::OriginalExtract, extract)
        .input(Term::HeightAboveSea, height)
        .step(
            Term::AirPressure,
            pressure,
            "101.325 (1 − 2.25577·10⁻⁵ h)^5.2559",
            Source::StandardAtmosphere,
        )
        .step(
            Term::OxygenInWater,
            milligrams(water),
            "exp(A(T)) × pressure",
            Source::BensonKrause1984,
        )
        .step(Term::OxygenInWort, milligrams(full), "× (1 − 0.26 °P ÷ 15)", Source::OxfordCompanion)
        .step(Term::OxygenByShaking, milligrams(half), "half of it", Source::CommonPractice)
        .step(Term::OxygenByShaking, milligrams(full), "all of it", Source::CommonPractice)
        .doubt(Term::ExtractShare, water.value() * less * LESS_DOUBT)
        .doubt(Term::ModelError, full.value() * WATER_DOUBT)
        .doubt(Term::AirPressure, full.value() * WEATHER);
    Ok(AirInWort {
        full: Estimate::new(full, worked.sigma()),
        shaken_from: half,
        shaken_to: full,
        worked,
    })
}

fn milligrams(oxygen: DissolvedOxygen) -> Amount {
    Amount::Number(oxygen.value(), 1, "mg/L")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn full(t: f64, plato: f64, height: f64) -> f64 {
        let found = in_wort(Celsius::literal(t), Plato::literal(plato), Metres::literal(height));
        found.expect("in range").full.value().value()
    }

    #[test]
    fn warm_strong_and_high_take_less() {
        assert!(full(10.0, 12.0, 0.0) > full(20.0, 12.0, 0.0));
        assert!(full(20.0, 8.0, 0.0) > full(20.0, 18.0, 0.0));
        assert!(full(20.0, 12.0, 0.0) > full(20.0, 12.0, 1600.0));
        assert!(full(40.0, 45.0, 6000.0) > 0.0);
    }

    #[test]
    fn hot_wort_has_no_answer() {
        assert!(in_water(Celsius::literal(41.0), air::SEA_LEVEL).is_err());
    }
}
