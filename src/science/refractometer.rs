//! What a refractometer means in wort that has not begun to ferment.
//!
//! It is marked for sugar in water. Wort bends light a little more, so what it shows is divided by a wort
//! factor, usually 1.04 (common practice, no source). Once there is alcohol no single formula is safe for
//! the gravity, so none is given.

use super::{Amount, ScienceError, Source, Term, Worked, sucrose};
use crate::quantity::{Estimate, Measured, Plato, SpecificGravity, WortFactor};

/// The usual factor (common practice, no source).
pub const USUAL_FACTOR: WortFactor = WortFactor::literal(1.04);
/// Half a mark of the usual scale and a little for its temperature, °Bx (common practice, no source).
const READING: f64 = 0.15;
/// The factor differs from wort to wort by about so much (common practice, no source).
const FACTOR: f64 = 0.02;

/// The gravity of unfermented wort from what the refractometer shows: °P = °Bx ÷ factor, then the specific
/// gravity of that sugar solution, 20/20, with one standard deviation and the working.
///
/// ```
/// use fermentside::quantity::{Measured, Plato, WortFactor};
/// use fermentside::science::refractometer::{USUAL_FACTOR, wort};
///
/// // 12.48 ÷ 1.04 is 12 °P, which is 1.0484 by ICUMSA SPS-4.
/// let (gravity, _) = wort(Plato::literal(12.48), USUAL_FACTOR)?;
/// assert_eq!(format!("{:.4}", gravity.value().value()), "1.0484");
/// assert!(wort(Plato::literal(45.0), WortFactor::literal(0.95)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::OutOfRange`] for a result no wort can have.
pub fn wort(
    shown: Plato,
    factor: WortFactor,
) -> Result<(Estimate<SpecificGravity>, Worked), ScienceError> {
    let extract = Plato::new(shown.value() / factor.value())?;
    let gravity = SpecificGravity::new(sucrose::sg_at(extract.value() / 100.0, 20.0))?;
    let per_plato = {
        let at = |p: f64| sucrose::sg_at((extract.value() + p) / 100.0, 20.0);
        (at(0.05) - at(-0.05)) / 0.1
    };
    let worked = Worked::default()
        .input(Term::RefractometerShows, Amount::Number(shown.value(), 1, "°Bx"))
        .input(Term::WortFactor, Amount::Number(factor.value(), 2, ""))
        .step(Term::OriginalExtract, extract, "°Bx ÷ factor", Source::CommonPractice)
        .step(
            Term::CorrectedGravity,
            gravity,
            "SG = (ρ(w, 20) − 1.2) ÷ (ρ_water(20) − 1.2)",
            Source::IcumsaSps4,
        )
        .doubt(Term::Scale, per_plato * READING / factor.value())
        .doubt(Term::WortFactor, per_plato * extract.value().abs() * FACTOR / factor.value());
    Ok((Estimate::new(gravity, worked.sigma()), worked))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wort_of_twelve_plato_shows_twelve_and_a_half() {
        // 12 °P is 1.0484 (ICUMSA SPS-4).
        let (gravity, worked) = wort(Plato::literal(12.48), USUAL_FACTOR).expect("in range");
        assert!((gravity.value().value() - 1.0484).abs() < 1e-4, "{gravity:?}");
        assert!((0.0008..0.0015).contains(&gravity.sigma()), "{gravity:?}");
        assert_eq!(worked.steps.len(), 2);
    }

    #[test]
    fn plain_sugar_has_a_factor_of_one() {
        let (gravity, _) = wort(Plato::literal(10.0), WortFactor::literal(1.0)).expect("in range");
        let known = sucrose::specific_gravity(Plato::literal(10.0));
        assert!((gravity.value().value() - known.value()).abs() < 1e-12);
    }
}
