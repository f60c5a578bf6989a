//! The pressure in a closed bottle, from all the carbon dioxide that is or can come to be in it.
//!
//! The gas shares between beer and headspace by Henry's law with Weiss's solubility (1974) and its
//! fugacity; the air shut in with it warms, and water vapour is added.

use super::carbon_dioxide::{
    ATM, BEER_FACTOR, GRAMS_PER_VOLUME, LEAST_FACTOR, MOLAR_MASS, fugacity, k0,
};
use super::root::rising_root;
use super::{Amount, ScienceError, Source, Term, Worked, air, water};
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, GravityChange, Kilopascals, Measured, Metres, Share,
};

/// One gravity point that still ferments in the bottle gives about this many volumes (by Balling's
/// balance 0.48 to 0.53; common practice says half a volume).
pub const VOLUMES_PER_POINT: CarbonDioxideVolumes = CarbonDioxideVolumes::literal(0.5);

/// How a bottle was closed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Closing {
    /// Headspace as a part of the fill.
    pub headspace: Share,
    /// Temperature at filling.
    pub filled_at: Celsius,
    /// Height above the sea, where it was filled and stands.
    pub height: Metres,
}

impl Closing {
    /// 4 % headspace, filled at 20 °C at sea level.
    pub const USUAL: Self = Self {
        headspace: Share::literal(0.04),
        filled_at: Celsius::literal(20.0),
        height: Metres::literal(0.0),
    };
}

/// Which end of the solubility is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The middle value.
    Best,
    /// The end that makes the pressure higher: the least that beer has been found to hold.
    High,
}

/// Pressure in the bottle.
#[derive(Clone, Debug, PartialEq)]
pub struct InBottle {
    /// Above the air outside.
    pub gauge: Kilopascals,
    /// How it was worked out.
    pub worked: Worked,
}

/// Pressure above the outside air in a bottle that holds `total` volumes, at `t`.
///
/// p(CO2) solves n = K0(T) 0.96 f(p) + h p/(RT) for n moles a litre of beer and headspace share h;
/// then air, vapour and the outside are added and taken off.
///
/// ```
/// use fermentside::quantity::{CarbonDioxideVolumes, Celsius, Measured};
/// use fermentside::science::bottle_pressure::{Closing, End, in_bottle};
///
/// let volumes = CarbonDioxideVolumes::literal(2.5);
/// let at = |t| in_bottle(volumes, Celsius::literal(t), Closing::USUAL, End::High);
/// let (cool, hot) = (at(20.0)?.gauge.value(), at(30.0)?.gauge.value());
/// assert_eq!(format!("{:.1} and {:.1} bar", cool / 100.0, hot / 100.0), "3.0 and 4.0 bar");
/// assert!(at(60.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 45 °C.
pub fn in_bottle(
    total: CarbonDioxideVolumes,
    t: Celsius,
    closing: Closing,
    end: End,
) -> Result<InBottle, ScienceError> {
    let (min, max) = (Celsius::literal(0.0), Celsius::literal(45.0));
    for given in [t, closing.filled_at] {
        if !(min..=max).contains(&given) {
            return Err(ScienceError::Temperature { given, min, max });
        }
    }
    let kelvin = t.kelvin();
    let headspace = closing.headspace.value();
    let (factor, formula) = match end {
        End::Best => (BEER_FACTOR, "n = K0(T) · 0.96 · f(p) + h p ÷ (R T)"),
        End::High => (LEAST_FACTOR, "n = K0(T) · 0.937 · f(p) + h p ÷ (R T)"),
    };
    let mol = total.value() * GRAMS_PER_VOLUME / MOLAR_MASS;
    // R in L atm/(mol K). The sum rises with p all the way to 100 atm, far above any bottle.
    let held =
        |p: f64| factor * k0(kelvin) * fugacity(p, kelvin) + headspace * p / (0.082_057 * kelvin);
    let gas = ATM * rising_root(0.0, 100.0, |p| held(p) - mol);
    let outside = air::pressure(closing.height).value();
    let air_in = if headspace > 0.0 {
        let dry = (outside - water::vapour(closing.filled_at.value())).max(0.0);
        dry * kelvin / closing.filled_at.kelvin()
    } else {
        0.0
    };
    let vapour = water::vapour(t.value());
    let gauge = Kilopascals::nearest(gas + air_in + vapour - outside);
    let worked = Worked::default()
        .input(Term::CarbonDioxideTotal, total)
        .input(Term::WarmestTemperature, t)
        .input(Term::BottleHeadspace, Amount::Number(100.0 * headspace, 0, "%"))
        .step(Term::CarbonDioxideTotal, Kilopascals::nearest(gas), formula, Source::HenryLaw)
        .step(Term::HeadspaceAir, Kilopascals::nearest(air_in), "p_air T ÷ T_fill", None)
        .step(
            Term::WaterVapour,
            Kilopascals::nearest(vapour),
            "p_vapour(T)",
            Source::WeissPrice1980,
        )
        .step(Term::PressureOverOutside, gauge, "sum − air outside", Source::StandardAtmosphere);
    Ok(InBottle { gauge, worked })
}

/// Carbon dioxide that so many points of gravity can still give.
///
/// ```
/// use fermentside::quantity::{CarbonDioxideVolumes, GravityChange};
/// use fermentside::science::bottle_pressure::from_points;
///
/// let (left, risen) = (GravityChange::literal(0.004), GravityChange::literal(-0.001));
/// assert_eq!(from_points(left), CarbonDioxideVolumes::literal(2.0));
/// assert_eq!(from_points(risen), CarbonDioxideVolumes::literal(0.0));
/// ```
#[must_use]
pub fn from_points(left: GravityChange) -> CarbonDioxideVolumes {
    CarbonDioxideVolumes::nearest(left.points().max(0.0) * VOLUMES_PER_POINT.value())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn best(total: f64, t: f64, headspace: f64) -> f64 {
        let closing = Closing { headspace: Share::literal(headspace), ..Closing::USUAL };
        let total = CarbonDioxideVolumes::literal(total);
        in_bottle(total, Celsius::literal(t), closing, End::Best).expect("in range").gauge.value()
    }

    #[test]
    fn a_bottle_by_the_fire_is_another_bottle() {
        // By hand for a brim-full bottle: pure water 1.97 and 2.92 bar (WEISS1974), beer 4 % more.
        assert!((best(2.5, 20.0, 0.0) / 100.0 - 2.1).abs() < 0.1, "{}", best(2.5, 20.0, 0.0));
        assert!((best(2.5, 30.0, 0.0) / 100.0 - 3.1).abs() < 0.1, "{}", best(2.5, 30.0, 0.0));
    }

    #[test]
    fn air_shut_in_adds_nearly_an_atmosphere() {
        // Warmed air presses on by itself, while the larger space takes a little of the gas.
        let more = best(2.5, 30.0, 0.04) - best(2.5, 30.0, 0.0);
        assert!((75.0..101.0).contains(&more), "{more}");
    }

    #[test]
    fn the_high_end_is_higher() {
        let at = |end| {
            let total = CarbonDioxideVolumes::literal(3.0);
            in_bottle(total, Celsius::literal(30.0), Closing::USUAL, end).expect("in range").gauge
        };
        assert!(at(End::High) > at(End::Best));
    }

    #[test]
    fn the_working_shows_the_factor_that_was_used() {
        let shown = |end| {
            let total = CarbonDioxideVolumes::literal(3.0);
            let found = in_bottle(total, Celsius::literal(30.0), Closing::USUAL, end);
            found.expect("in range").worked.steps.first().expect("a step").formula
        };
        assert!(shown(End::Best).contains("0.96 "), "{}", shown(End::Best));
        assert!(shown(End::High).contains("0.937 "), "{}", shown(End::High));
    }
}
