//! What a reading in a jar means: the true gravity of a sample that is not at the instrument's
//! temperature, in wort and in beer.
//!
//! A floating hydrometer displaces its own mass. Its glass grows with temperature by 25e-6 a degree
//! (ISO 1768), and the liquid by its own law, stronger wort more than water; so the correction depends
//! on the gravity as well as on the temperature, and is no table in temperature alone.

use super::hydrometer::{GLASS, Hydrometer, SAMPLE, correction, on_scale};
use super::root::rising_root;
use super::{ScienceError, Source, Term, Worked, ethanol, sucrose};
use crate::quantity::{Celsius, Estimate, Gravity, Measured, Plato, SpecificGravity};

/// One standard deviation of a household thermometer in a jar, °C (common practice, no source).
const THERMOMETER: f64 = 0.5;
/// What gas on the bulb can lift a reading by is 0.001 to 0.006; one standard deviation of that.
const GAS: f64 = 0.002;
/// Above this the sample must cool first: the correction is a guess and hot liquid can crack the glass.
pub const COOL_FIRST_ABOVE: Celsius = Celsius::literal(40.0);

crate::choices! {
    /// How the sample stood when it was read.
    pub enum Condition {
        /// Still, and its gas knocked out. Unfermented wort is so by itself.
        Still = "still",
        /// Foam hid the line: a whole division of doubt.
        Foam = "foam",
        /// Gas was left in: bubbles on the bulb lift it.
        Gassy = "gassy",
    }
}

impl Condition {
    /// Nothing in the sample lifts the instrument.
    #[must_use]
    pub fn is_still(self) -> bool {
        self == Self::Still
    }
}

/// One reading in one jar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// As the eye read it.
    pub reading: Gravity,
    /// Of the liquid in the jar, at that moment.
    pub temperature: Celsius,
    /// How it stood.
    pub condition: Condition,
}

/// A reading made true.
#[derive(Clone, Debug, PartialEq)]
pub struct Corrected {
    /// Specific gravity 20/20 with one standard deviation.
    pub gravity: Estimate<SpecificGravity>,
    /// The same liquid as the instrument would show it at its own temperature.
    pub at_reference: SpecificGravity,
    /// The sample was too hot for the answer to be worth much.
    pub cool_first: bool,
    /// How it was worked out.
    pub worked: Worked,
}

/// The gravity of wort, or of any sample whose alcohol is not known.
///
/// rho(t) = rho_ref(R) / (1 + 25e-6 (t − t_ref)), then the extract w with rho(w, t) = rho(t), then the
/// specific gravity of that w. Model error 0.0001 to 30 °C, growing to 0.0005 at 40 °C and on.
///
/// ```
/// use fermentside::quantity::{Celsius, Gravity, Measured, SpecificGravity};
/// use fermentside::science::hydrometer::Hydrometer;
/// use fermentside::science::hydrometer_sample::{Condition, Sample, correct_wort};
///
/// let sample = Sample {
///     reading: Gravity::Specific(SpecificGravity::literal(1.050)),
///     temperature: Celsius::literal(30.0),
///     condition: Condition::Still,
/// };
/// let found = correct_wort(sample, &Hydrometer::USUAL)?;
/// assert_eq!(format!("{:.3}", found.gravity.value().value()), "1.053");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] for a sample or an instrument outside 0 to 60 °C;
/// [`ScienceError::OutOfRange`] for a result no hydrometer can mean.
pub fn correct_wort(sample: Sample, by: &Hydrometer) -> Result<Corrected, ScienceError> {
    correct(sample, by, |rho, t, _| sucrose::fraction(rho, t), false)
}

/// The gravity of fermenting or finished beer whose original extract is known.
///
/// Tabarié's relation: the beer's density is that of its residue (real extract) plus that of its
/// distillate (ethanol in water) less that of water, each at the temperature of the sample. The
/// alcohol that goes with the reading is found together with it, by Balling's balance.
///
/// ```
/// use fermentside::quantity::{Celsius, Gravity, Measured, Plato, SpecificGravity};
/// use fermentside::science::hydrometer::Hydrometer;
/// use fermentside::science::hydrometer_sample::{Condition, Sample, correct_beer};
///
/// let at = |t| {
///     let reading = Gravity::Specific(SpecificGravity::literal(1.010));
///     let sample = Sample { reading, temperature: Celsius::literal(t), condition: Condition::Still };
///     correct_beer(sample, &Hydrometer::USUAL, Plato::literal(12.4))
/// };
/// assert_eq!(format!("{:.4}", at(30.0)?.gravity.value().value()), "1.0126");
/// assert!(at(61.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// As [`correct_wort`].
pub fn correct_beer(
    sample: Sample,
    by: &Hydrometer,
    original: Plato,
) -> Result<Corrected, ScienceError> {
    let oe = original.value();
    let apparent = move |rho: f64, t: f64, shown_at: f64| {
        // Above its original gravity there is no alcohol to allow for.
        if rho >= sucrose::rho(oe / 100.0, t) {
            return sucrose::fraction(rho, t);
        }
        let alcohol = rising_root(0.0, 30.0, |a| rho - beer_rho(oe, a, t));
        sucrose::fraction(beer_rho(oe, alcohol, shown_at), shown_at)
    };
    correct(sample, by, apparent, true)
}

/// Density in kg/m³ of beer from wort of `oe` °P with `a` % alcohol by mass. The formula for ethanol
/// ends at 40 °C; what it takes off there is held beyond, so that no degree makes the answer jump.
fn beer_rho(oe: f64, a: f64, t: f64) -> f64 {
    let residue = oe - a * (2.0665 - 0.010_665 * oe);
    let held = t.min(COOL_FIRST_ABOVE.value());
    let distillate = ethanol::rho(a / 100.0, held) - ethanol::rho(0.0, held);
    sucrose::rho(residue / 100.0, t) + distillate
}

fn correct(
    sample: Sample,
    by: &Hydrometer,
    fraction: impl Fn(f64, f64, f64) -> f64,
    as_beer: bool,
) -> Result<Corrected, ScienceError> {
    let (min, max) = SAMPLE;
    for given in [sample.temperature, by.reference] {
        if !(min..=max).contains(&given) {
            return Err(ScienceError::Temperature { given, min, max });
        }
    }
    let (t, t_ref) = (sample.temperature.value(), by.reference.value());
    let added = correction(by, sample.reading);
    let shown = on_scale(sample.reading, by.reference) + added.value();
    let liquid = |t: f64| sucrose::rho_of_sg(shown, t_ref) / (1.0 + GLASS * (t - t_ref));
    let gravity_at = |t: f64| sucrose::sg_at(fraction(liquid(t), t, 20.0), 20.0);

    let w = fraction(liquid(t), t, 20.0);
    let value = SpecificGravity::new(sucrose::sg_at(w, 20.0))?;
    let at_reference = SpecificGravity::new(sucrose::sg_at(fraction(liquid(t), t, t_ref), t_ref))?;

    let (warm, cold) = ((t + 0.5).min(max.value()), (t - 0.5).max(min.value()));
    let slope = (gravity_at(warm) - gravity_at(cold)).abs() / (warm - cold);
    let mut worked = Worked::default()
        .input(Term::ReadingError, sample.reading)
        .input(Term::SampleTemperature, sample.temperature)
        .input(Term::InstrumentReference, by.reference);
    if added.value() != 0.0 {
        worked = worked.input(Term::InstrumentOffset, super::Amount::Points(added.points()));
    }
    worked = worked
        .step(
            Term::LiquidDensity,
            super::Amount::Number(liquid(t), 2, "kg/m³"),
            "ρ(t) = ρ_ref(R) ÷ (1 + 25·10⁻⁶ (t − t_ref))",
            Source::Iso1768,
        )
        .step(
            Term::ApparentExtract,
            Plato::new(100.0 * w)?,
            if as_beer {
                "ρ(t) = ρ_residue(t) + ρ_distillate(t) − ρ_water(t)"
            } else {
                "ρ(w, t) = ρ(t)"
            },
            if as_beer { Source::Tabarie } else { Source::IcumsaSps4 },
        )
        .step(
            Term::CorrectedGravity,
            value,
            "SG = (ρ(w, 20) − 1.2) ÷ (ρ_water(20) − 1.2)",
            Source::IcumsaSps4,
        );
    if as_beer {
        let plain = sucrose::sg_at(sucrose::fraction(liquid(t), t), 20.0);
        let plain = SpecificGravity::new(plain)?;
        let more = 1000.0 * (value.value() - plain.value());
        worked = worked
            .step(Term::PlainCorrection, plain, "ρ(w, t) = ρ(t)", Source::IcumsaSps4)
            .step(Term::AlcoholDifference, super::Amount::Points(more), "as beer − plain", None);
    }
    let division = by.division.value();
    worked = worked
        .doubt(
            Term::Scale,
            if sample.condition == Condition::Still { division / 2.0 } else { division },
        )
        .doubt(Term::SampleTemperature, slope * THERMOMETER)
        .doubt(Term::ModelError, model_error(t));
    if sample.condition == Condition::Gassy {
        worked = worked.doubt(Term::FoamOrGas, GAS);
    }
    let gravity = Estimate::new(value, worked.sigma());
    let cool_first = sample.temperature > COOL_FIRST_ABOVE;
    Ok(Corrected { gravity, at_reference, cool_first, worked })
}

fn model_error(t: f64) -> f64 {
    0.0001 + if t > 30.0 { (t - 30.0) * 0.000_04 } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample(sg: f64, t: f64) -> Sample {
        Sample {
            reading: Gravity::Specific(SpecificGravity::literal(sg)),
            temperature: Celsius::nearest(t),
            condition: Condition::Still,
        }
    }

    #[test]
    fn beer_and_wort_agree_at_the_reference_and_part_in_the_warm() {
        let oe = Plato::literal(12.4);
        let at = |t| {
            let beer = correct_beer(sample(1.010, t), &Hydrometer::USUAL, oe).expect("in range");
            let wort = correct_wort(sample(1.010, t), &Hydrometer::USUAL).expect("in range");
            beer.gravity.value().value() - wort.gravity.value().value()
        };
        assert!(at(20.0).abs() < 1e-9, "{}", at(20.0));
        // Alcohol makes the liquid expand a little more.
        assert!(at(30.0) > 1e-5 && at(30.0) < 5e-4, "{}", at(30.0));
    }

    #[test]
    fn the_working_of_beer_shows_the_plain_correction_and_the_difference() {
        let oe = Plato::literal(12.4);
        let beer = correct_beer(sample(1.010, 30.0), &Hydrometer::USUAL, oe).expect("in range");
        let wort = correct_wort(sample(1.010, 30.0), &Hydrometer::USUAL).expect("in range");
        let step = |term| beer.worked.steps.iter().find(|step| step.term == term).expect("a step");
        let plain = wort.gravity.value();
        assert_eq!(step(Term::PlainCorrection).amount, super::super::Amount::Gravity(plain));
        let super::super::Amount::Points(more) = step(Term::AlcoholDifference).amount else {
            unreachable!("a difference is in points");
        };
        let known = beer.gravity.value().points() - plain.points();
        assert!((more - known).abs() < 1e-9 && more > 0.01, "{more}");
        assert!(!wort.worked.steps.iter().any(|step| step.term == Term::AlcoholDifference));
    }

    #[test]
    fn refuses_a_boiling_sample_and_marks_a_hot_one() {
        assert!(correct_wort(sample(1.05, 61.0), &Hydrometer::USUAL).is_err());
        assert!(correct_wort(sample(1.05, 45.0), &Hydrometer::USUAL).expect("in range").cool_first);
    }
}
