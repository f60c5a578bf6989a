//! Blending hot and cold: a balance by mass and heat, with the volume and gravity that result.

use super::practice::VOLUME_MARK;
use super::root::rising_root;
use super::{Amount, ScienceError, Source, Term, Worked, sucrose};
use crate::quantity::{
    Celsius, Estimate, Grams, HeatCapacity, Litres, Measured, Plato, SpecificGravity,
};

/// Heat capacity of water, kJ/(kg K), in powers of t/100: our fit to IAPWS-95 at 1 atm, 0 to 100 °C,
/// which it meets within 0.0006.
const WATER: [f64; 6] = [4.2189, -0.3194, 0.9654, -1.4220, 1.1039, -0.3314];
/// How much less for each unit of sugar fraction: 2.511 − 0.0075 t (pure sucrose, by
/// 4184 − 2971 w + 460 w q + 7.5 w t in J/(kg K) with purity q = 1).
const SUGAR: [f64; 2] = [2.511, -0.0075];
/// Heat that melts a kilogram of ice at 0 °C, kJ (IAPWS, ice Ih).
pub const OF_MELTING_KJ_PER_KG: f64 = 333.4;
/// One standard deviation of a brewer's thermometer, °C (common practice, no source).
const THERMOMETER: f64 = 0.7;

/// Heat of fermentation, kJ a gram of extract fermented (0.56 to 0.65 in print).
pub const OF_FERMENTATION_KJ_PER_G: f64 = 0.586;

/// One liquid to be blended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// Its volume at its own temperature.
    pub volume: Litres,
    /// Its extract; zero for water.
    pub extract: Plato,
    /// Its temperature, 0 to 100 °C.
    pub temperature: Celsius,
}

impl Part {
    fn checked(self) -> Result<Self, ScienceError> {
        let (min, max) = (Celsius::literal(0.0), Celsius::literal(100.0));
        if !(min..=max).contains(&self.temperature) {
            return Err(ScienceError::Temperature { given: self.temperature, min, max });
        }
        Ok(self)
    }

    fn fraction(self) -> f64 {
        self.extract.value().max(0.0) / 100.0
    }

    fn kilograms(self) -> f64 {
        self.volume.value() * sucrose::rho(self.fraction(), self.temperature.value()) / 1000.0
    }

    /// Heat capacity of the whole part where it is, kJ/K.
    fn capacity(self) -> f64 {
        self.kilograms() * capacity(self.fraction(), self.temperature.value())
    }

    /// Heat that the part holds above the same at `t`, kJ.
    fn heat_above(self, t: Celsius) -> f64 {
        let w = self.fraction();
        self.kilograms() * (heat(w, self.temperature.value()) - heat(w, t.value()))
    }
}

/// Heat capacity of a solution with mass fraction `w` of sugar at `t` °C, kJ/(kg K).
fn capacity(w: f64, t: f64) -> f64 {
    let water = WATER.iter().rev().fold(0.0, |sum, c| sum * (t / 100.0) + c);
    water - w * (SUGAR[0] + SUGAR[1] * t)
}

/// Heat a kilogram of it holds above 0 °C, kJ: the capacity summed from 0 to `t`.
fn heat(w: f64, t: f64) -> f64 {
    let x = t / 100.0;
    // The last coefficient of six belongs to the sixth power of the sum.
    let summed = WATER
        .iter()
        .rev()
        .zip([6.0, 5.0, 4.0, 3.0, 2.0, 1.0])
        .fold(0.0, |sum, (c, n)| sum * x + c / n);
    t * summed - w * t * (SUGAR[0] + SUGAR[1] * t / 2.0)
}

/// What ice melts to: as many litres of water as it weighs kilograms (water's density, to a part in a
/// thousand).
///
/// ```
/// use fermentside::{quantity::{Grams, Litres}, science::heat::melted};
///
/// assert_eq!(melted(Grams::literal(2500.0)), Litres::literal(2.5));
/// ```
#[must_use]
pub fn melted(ice: Grams) -> Litres {
    Litres::nearest(ice.value() / 1000.0)
}

/// Heat capacity by mass of wort, or of water at zero extract.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured, Plato};
/// use fermentside::science::heat::heat_capacity;
///
/// // IAPWS-95: water of 60 °C has 4.1850 kJ/(kg K).
/// let water = |t| heat_capacity(Plato::literal(0.0), Celsius::literal(t));
/// assert!((water(60.0)?.value() - 4.1850).abs() < 0.001);
/// assert!(water(105.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 100 °C.
pub fn heat_capacity(extract: Plato, t: Celsius) -> Result<HeatCapacity, ScienceError> {
    let part = Part { volume: Litres::literal(0.0), extract, temperature: t }.checked()?;
    Ok(HeatCapacity::new(capacity(part.fraction(), t.value()))?)
}

/// What a blend comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Blend {
    /// Its temperature.
    pub temperature: Estimate<Celsius>,
    /// Its volume at that temperature.
    pub volume: Litres,
    /// Its gravity.
    pub gravity: SpecificGravity,
    /// How it was worked out.
    pub worked: Worked,
}

/// Blends liquids, and ice of 0 °C, with no heat lost: Σ mᵢ hᵢ(T) + m_ice h(T) = Σ mᵢ hᵢ(Tᵢ) − 333.4 m_ice,
/// where h is the heat a kilogram holds above 0 °C.
///
/// ```
/// use fermentside::quantity::{Celsius, Grams, Litres, Measured, Plato};
/// use fermentside::science::heat::{Part, blend};
///
/// let water = |litres, t| Part {
///     volume: Litres::literal(litres),
///     extract: Plato::literal(0.0),
///     temperature: Celsius::literal(t),
/// };
/// // 20 kg of 40 °C and 3 kg of 2 °C are 35.03 °C by the heat that IAPWS-95 gives them.
/// let found = blend(&[water(20.157, 40.0), water(3.0, 2.0)], Grams::literal(0.0))?;
/// assert!((found.temperature.value().value() - 35.03).abs() < 0.05);
/// assert!(blend(&[], Grams::literal(1000.0)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] for a part outside 0 to 100 °C; [`ScienceError::NothingThere`] for
/// nothing to blend; [`ScienceError::OutOfReach`] when the ice would not all melt.
pub fn blend(parts: &[Part], ice: Grams) -> Result<Blend, ScienceError> {
    let parts = parts.iter().map(|part| part.checked()).collect::<Result<Vec<_>, _>>()?;
    let ice_kg = ice.value() / 1000.0;
    let mass: f64 = parts.iter().map(|p| p.kilograms()).sum::<f64>() + ice_kg;
    let capacity: f64 = parts.iter().map(|p| p.capacity()).sum();
    if parts.is_empty() || capacity <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let held: f64 = parts.iter().map(|p| p.heat_above(Celsius::literal(0.0))).sum();
    let left = held - OF_MELTING_KJ_PER_KG * ice_kg;
    if left < 0.0 {
        return Err(ScienceError::OutOfReach);
    }
    let extract = parts.iter().map(|p| p.kilograms() * p.fraction()).sum::<f64>() / mass;
    let t = rising_root(0.0, 100.0, |t| mass * heat(extract, t) - left);
    let volume = Litres::new(1000.0 * mass / sucrose::rho(extract, t))?;
    let plato = Plato::new(100.0 * extract)?;
    let gravity = sucrose::specific_gravity(plato);

    let whole = mass * self::capacity(extract, t);
    let by_thermometer =
        parts.iter().fold(0.0, |sum: f64, p| sum.hypot(THERMOMETER * p.capacity() / whole));
    let by_marks = parts.iter().fold(0.0, |sum: f64, p| {
        sum.hypot(VOLUME_MARK.value() * p.capacity() * (p.temperature.value() - t) / whole)
    });
    let temperature = Celsius::new(t)?;
    let mut worked = Worked::default();
    for part in &parts {
        worked = worked
            .input(Term::BeerVolume, part.volume)
            .input(Term::WortTemperature, part.temperature);
    }
    if ice.value() > 0.0 {
        worked = worked.input(Term::IceMass, ice);
    }
    let worked = worked
        .step(
            Term::HeatOfParts,
            Amount::Number(capacity, 1, "kJ/K"),
            "Σ mᵢ (c_water(tᵢ) − (2.511 − 0.0075 tᵢ) wᵢ)",
            Source::SugarHeat,
        )
        .step(
            Term::BlendTemperature,
            temperature,
            "Σ m h(T) = Σ mᵢ hᵢ(Tᵢ) − 333.4 m_ice",
            Source::Iapws,
        )
        .step(Term::VolumeAfter, volume, "Σ m ÷ ρ(w, T)", Source::IcumsaSps4)
        .step(Term::CorrectedGravity, gravity, "w = Σ mᵢ wᵢ ÷ Σ m", Source::IcumsaSps4)
        .doubt(Term::WortTemperature, by_thermometer)
        .doubt(Term::BeerVolume, by_marks);
    Ok(Blend { temperature: Estimate::new(temperature, worked.sigma()), volume, gravity, worked })
}

/// Water of a given temperature that brings wort to `target`.
///
/// ```
/// use fermentside::quantity::{Celsius, Litres, Measured, Plato};
/// use fermentside::science::{ScienceError, heat::{Part, water_to_reach}};
///
/// let [hot, cold, target] = [40.0, 2.0, 35.03].map(Celsius::literal);
/// let (volume, extract) = (Litres::literal(20.157), Plato::literal(0.0));
/// let wort = Part { volume, extract, temperature: hot };
/// // The blend above, the other way round.
/// assert_eq!(format!("{:.1}", water_to_reach(wort, cold, target)?.0.value()), "3.0");
/// assert_eq!(water_to_reach(wort, hot, target), Err(ScienceError::OutOfReach));
/// # Ok::<(), ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::OutOfReach`] when the water is not on the other side of the target;
/// [`ScienceError::Temperature`] outside 0 to 100 °C; [`ScienceError::NothingThere`] for no wort.
pub fn water_to_reach(
    wort: Part,
    water: Celsius,
    target: Celsius,
) -> Result<(Litres, Blend), ScienceError> {
    let one =
        Part { volume: Litres::literal(1.0), extract: Plato::literal(0.0), temperature: water };
    let (to_lose, each_takes) =
        (wort.checked()?.heat_above(target), -one.checked()?.heat_above(target));
    if to_lose == 0.0 {
        return Ok((Litres::literal(0.0), blend(&[wort], Grams::literal(0.0))?));
    }
    let litres = to_lose / each_takes;
    if !litres.is_finite() || litres < 0.0 {
        return Err(ScienceError::OutOfReach);
    }
    let added = Litres::new(litres).map_err(|_| ScienceError::OutOfReach)?;
    let result = blend(&[wort, Part { volume: added, ..one }], Grams::literal(0.0))?;
    Ok((added, result))
}

/// Ice of 0 °C that brings wort down to `target`.
///
/// ```
/// use fermentside::quantity::{Celsius, Litres, Measured, Plato};
/// use fermentside::science::heat::{Part, ice_to_reach};
///
/// let (volume, extract) = (Litres::literal(18.218), Plato::literal(0.0));
/// let wort = Part { volume, extract, temperature: Celsius::literal(50.0) };
/// // 18 kg of 50 °C and 4 kg of ice are 26.39 °C by the heat that IAPWS-95 gives them.
/// let (ice, _) = ice_to_reach(wort, Celsius::literal(26.39))?;
/// assert!((ice.value() - 4000.0).abs() < 20.0);
/// assert!(ice_to_reach(wort, Celsius::literal(60.0)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::OutOfReach`] when the target is not below the wort; else as [`blend`].
pub fn ice_to_reach(wort: Part, target: Celsius) -> Result<(Grams, Blend), ScienceError> {
    let to_lose = wort.checked()?.heat_above(target);
    if to_lose < 0.0 || target.value() < 0.0 {
        return Err(ScienceError::OutOfReach);
    }
    let kilograms = to_lose / (OF_MELTING_KJ_PER_KG + heat(0.0, target.value()));
    let ice = Grams::new(1000.0 * kilograms)?;
    Ok((ice, blend(&[wort], ice)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wort(litres: f64, t: f64) -> Part {
        Part {
            volume: Litres::literal(litres),
            extract: Plato::literal(12.0),
            temperature: Celsius::literal(t),
        }
    }

    #[test]
    fn what_is_said_to_be_needed_gets_there() {
        let target = Celsius::literal(18.0);
        let (water, with_water) =
            water_to_reach(wort(15.0, 35.0), Celsius::literal(8.0), target).expect("reachable");
        assert!((with_water.temperature.value().value() - 18.0).abs() < 1e-9);
        assert!(with_water.volume.value() < 15.0 + water.value() + 0.01);
        assert!(with_water.gravity < sucrose::specific_gravity(Plato::literal(12.0)));
        let (ice, with_ice) = ice_to_reach(wort(15.0, 35.0), target).expect("reachable");
        assert!((with_ice.temperature.value().value() - 18.0).abs() < 1e-9);
        assert!(ice.value() / 1000.0 < water.value());
    }

    #[test]
    fn water_takes_the_heat_that_it_does() {
        // IAPWS-95 at 1 atm, through a general library.
        for (t, known) in
            [(0.0, 4.2194), (20.0, 4.1841), (40.0, 4.1794), (60.0, 4.1850), (95.0, 4.2102)]
        {
            let found = heat_capacity(Plato::literal(0.0), Celsius::literal(t)).expect("in range");
            assert!((found.value() - known).abs() < 0.001, "{t}: {found:?}");
        }
    }

    #[test]
    fn warm_water_cannot_cool() {
        let warm = water_to_reach(wort(15.0, 35.0), Celsius::literal(20.0), Celsius::literal(18.0));
        assert_eq!(warm.map(|(litres, _)| litres), Err(ScienceError::OutOfReach));
        // Warm water for wort that is too cold.
        assert!(
            water_to_reach(wort(15.0, 12.0), Celsius::literal(40.0), Celsius::literal(18.0))
                .is_ok()
        );
    }
}
