//! How strong it is and how far it has gone, from two gravities, by named rules.
//!
//! Main figure: Balling (1865) through the alcohol factors of his own tables, then volume by OIML
//! R 22. Beside it the UK duty table and the common multiplier; the ± covers their spread as well as
//! the readings' own error. For the brewer's own use; not for a label, duty, driving or health.

use super::{ScienceError, Source, Term, Worked, ethanol, sucrose};
use crate::quantity::{
    AlcoholByMass, AlcoholByVolume, Attenuation, Estimate, Grams, GravityChange, HAIR, Litres,
    Measured, Plato, Share, SpecificGravity,
};

/// Alcohol factors of Balling's tables: % alcohol by mass a degree Plato of apparent fall, by original
/// extract (F. Eckhardt, Table of alcohol factors, 1995/2000).
const FACTORS: [(f64, f64); 16] = [
    (6.0, 0.4073),
    (8.0, 0.4110),
    (10.0, 0.4148),
    (11.0, 0.4168),
    (12.0, 0.4187),
    (13.0, 0.4206),
    (14.0, 0.4226),
    (15.0, 0.4246),
    (16.0, 0.4267),
    (18.0, 0.4309),
    (20.0, 0.4351),
    (22.0, 0.4395),
    (24.0, 0.4439),
    (26.0, 0.4485),
    (28.0, 0.4532),
    (30.0, 0.4580),
];

/// UK duty practice, Notice 226 section 30: factor up to so many points of fall. Every other row was
/// read in a quotation of the notice; the rows between are from memory and fit its steps.
const UK_DUTY: [(f64, f64); 11] = [
    (6.9, 0.125),
    (10.4, 0.126),
    (17.2, 0.127),
    (26.1, 0.128),
    (36.0, 0.129),
    (46.5, 0.130),
    (57.1, 0.131),
    (67.9, 0.132),
    (78.8, 0.133),
    (89.7, 0.134),
    (f64::INFINITY, 0.135),
];

/// What the two gravities mean.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    /// By the main rule, with one standard deviation from the readings and the spread of the rules.
    pub alcohol: Estimate<AlcoholByVolume>,
    /// By the UK duty table.
    pub by_duty_table: AlcoholByVolume,
    /// By the common rule, gravity points × 0.13125.
    pub by_common_rule: AlcoholByVolume,
    /// Apparent attenuation, with one standard deviation from the readings.
    pub apparent: Estimate<Attenuation>,
    /// Real attenuation (Speers and others' quotient).
    pub real: Attenuation,
    /// How it was worked out.
    pub worked: Worked,
}

/// The alcohol factor for an original extract: the table, straight between its rows and on beyond.
///
/// ```
/// use fermentside::quantity::{Plato, Share};
/// use fermentside::science::strength::alcohol_factor;
///
/// // Eckhardt's table of alcohol factors at 12 °P.
/// assert_eq!(alcohol_factor(Plato::literal(12.0)), Share::literal(0.4187));
/// ```
#[must_use]
pub fn alcohol_factor(original: Plato) -> Share {
    let oe = original.value();
    let last = FACTORS.len() - 2;
    let row = FACTORS.iter().skip(1).position(|&(x, _)| oe <= x).unwrap_or(last).min(last);
    let ((x0, y0), (x1, y1)) = (FACTORS[row], FACTORS[row + 1]);
    Share::nearest(y0 + (oe - x0) * (y1 - y0) / (x1 - x0))
}

/// The UK duty factor: % alcohol by volume a point of fall.
///
/// ```
/// use fermentside::quantity::{GravityChange, Share};
/// use fermentside::science::strength::duty_factor;
///
/// // Notice 226: from 26.2 to 36.0 points of fall.
/// assert_eq!(duty_factor(GravityChange::literal(0.036)), Share::literal(0.129));
/// ```
#[must_use]
pub fn duty_factor(fall: GravityChange) -> Share {
    // The notice prints tenths; a fall between two rows belongs to the row it rounds to.
    let tenths = (fall.points() * 10.0).round() / 10.0;
    let row = UK_DUTY.iter().find(|&&(to, _)| tenths <= to);
    Share::nearest(row.map_or(0.135, |&(_, factor)| factor))
}

/// Balling's balance: the original extract that `alcohol` and real extract `real` came from,
/// OE = 100 (2.0665 A + RE) / (100 + 1.0665 A).
///
/// ```
/// use fermentside::quantity::{AlcoholByMass, Measured, Plato};
/// use fermentside::science::strength::original_extract;
///
/// let found = original_extract(AlcoholByMass::literal(4.0), Plato::literal(4.5))?;
/// assert_eq!(format!("{:.3}", found.value()), "12.244");
/// assert!(original_extract(AlcoholByMass::literal(40.0), Plato::literal(4.5)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::OutOfRange`] when no wort is that strong.
pub fn original_extract(alcohol: AlcoholByMass, real: Plato) -> Result<Plato, ScienceError> {
    let a = alcohol.value();
    Ok(Plato::new(100.0 * (2.0665 * a + real.value()) / (100.0 + 1.0665 * a))?)
}

fn by_main_rule(og: f64, fg: f64) -> (f64, f64, f64, f64) {
    let [oe, ae] = [og, fg].map(|sg| sucrose::plato(SpecificGravity::nearest(sg)).value());
    let abw = alcohol_factor(Plato::nearest(oe)).value() * (oe - ae);
    let abv = abw * sucrose::rho_of_sg(fg, 20.0) / ethanol::PURE_AT_20;
    (oe, ae, abw, abv)
}

/// Strength and attenuation from original and present gravity, both 20/20.
///
/// ```
/// use fermentside::quantity::{Estimate, Measured, SpecificGravity};
/// use fermentside::science::strength::strength;
///
/// let read = |sg| Estimate::new(SpecificGravity::literal(sg), 0.001);
/// let found = strength(read(1.050), read(1.010))?;
/// assert_eq!(format!("{:.1}", found.alcohol.value().value()), "5.3");
/// assert_eq!(format!("{:.2}", found.by_common_rule.value()), "5.25");
/// assert!(strength(read(1.010), read(1.050)).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::RisingGravity`] when the present gravity is above the original by more than both
/// readings' doubt can explain; [`ScienceError::NothingThere`] when the original is water.
pub fn strength(
    original: Estimate<SpecificGravity>,
    present: Estimate<SpecificGravity>,
) -> Result<Strength, ScienceError> {
    let (og, fg) = (original.value().value(), present.value().value());
    if fg > og + 2.0 * original.sigma().hypot(present.sigma()) + HAIR {
        return Err(ScienceError::RisingGravity);
    }
    let fg = fg.min(og);
    let (oe, ae, abw, abv) = by_main_rule(og, fg);
    if oe < 0.2 {
        return Err(ScienceError::NothingThere);
    }
    let points = (og - fg) * 1000.0;
    let duty = points * duty_factor(GravityChange::nearest(og - fg)).value();
    let common = points * 0.131_25;
    let spread = abv.max(duty).max(common) - abv.min(duty).min(common);

    // Sensitivities by a small step; the rules are smooth.
    let step = 1e-4;
    let to_og = (by_main_rule(og + step, fg).3 - abv) / step;
    let to_fg = (by_main_rule(og, fg - step).3 - abv) / step;
    // Beer's quotient of real to apparent fall, over 532 beers.
    let quotient = 0.814 + 0.000_86 * oe;
    // Nothing ferments extract that is not there: two gravities that say so are read wrong.
    let re = (oe - quotient * (oe - ae)).max(0.0);
    let apparent_attenuation = 100.0 * (oe - ae) / oe;
    let per_plato = 100.0 / oe * 0.25;
    let attenuation_sigma = per_plato
        * 1000.0
        * present.sigma().hypot(original.sigma() * (1.0 - apparent_attenuation / 100.0));

    let alcohol = AlcoholByVolume::new(abv)?;
    let worked = Worked::default()
        .input(Term::OriginalGravity, original.value())
        .input(Term::FinalGravity, present.value())
        .step(Term::OriginalExtract, Plato::new(oe)?, "ρ(w, 20) = ρ(SG)", Source::IcumsaSps4)
        .step(Term::ApparentExtract, Plato::new(ae)?, "ρ(w, 20) = ρ(SG)", Source::IcumsaSps4)
        .step(
            Term::AlcoholByMass,
            super::Amount::Number(abw, 2, "% by mass"),
            "A = f(OE) (OE − AE)",
            Source::AlcoholFactorTable,
        )
        .step(Term::AlcoholContent, alcohol, "ABV = A ρ_beer ÷ 789.24", Source::OimlR22)
        .step(
            Term::DutyTableStrength,
            AlcoholByVolume::new(duty)?,
            "points × f",
            Source::UkDutyTable,
        )
        .step(
            Term::CommonRuleStrength,
            AlcoholByVolume::new(common)?,
            "(OG − FG) × 131.25",
            Source::CommonPractice,
        )
        .step(
            Term::RealExtract,
            Plato::nearest(re),
            "(OE − RE) ÷ (OE − AE) = 0.814 + 0.00086 OE",
            Source::SpeersQuotient,
        )
        .doubt(Term::OriginalGravity, to_og * original.sigma())
        .doubt(Term::FinalGravity, to_fg * present.sigma())
        .doubt(Term::SpreadOfRules, spread / 2.0);
    Ok(Strength {
        alcohol: Estimate::new(alcohol, worked.sigma()),
        by_duty_table: AlcoholByVolume::new(duty)?,
        by_common_rule: AlcoholByVolume::new(common)?,
        apparent: Estimate::new(Attenuation::new(apparent_attenuation)?, attenuation_sigma),
        real: Attenuation::new(100.0 * (oe - re) / oe)?,
        worked,
    })
}

/// What the priming sugar adds to the strength: about 0.07 % by volume for each gram of table sugar a
/// litre. Of other kinds give the table sugar that they are worth, `Sugar::as_sucrose`.
///
/// ```
/// use fermentside::quantity::{Grams, Litres, Measured};
/// use fermentside::science::strength::from_priming;
///
/// let more = |litres| from_priming(Grams::literal(120.0), Litres::literal(litres));
/// assert_eq!(format!("{:.2}", more(19.0)?.value()), "0.44");
/// assert!(more(0.0).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no beer.
pub fn from_priming(sugar: Grams, beer: Litres) -> Result<AlcoholByVolume, ScienceError> {
    if beer.value() <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    Ok(AlcoholByVolume::new(0.07 * sugar.value() / beer.value())?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn exact(og: f64, fg: f64) -> Strength {
        let sg = |v| Estimate::exact(SpecificGravity::literal(v));
        strength(sg(og), sg(fg)).expect("in range")
    }

    #[test]
    fn agrees_with_the_hand_checks() {
        // Worked by hand from Balling's tables and the UK table.
        let usual = exact(1.050, 1.010);
        assert!((5.15..5.35).contains(&usual.alcohol.value().value()), "{:?}", usual.alcohol);
        assert!((usual.by_duty_table.value() - 5.20).abs() < 0.01);
        assert!((usual.by_common_rule.value() - 5.25).abs() < 0.01);
    }

    #[test]
    fn a_thousandth_in_each_reading_is_about_a_fifth_of_a_per_cent() {
        let sg = |v| Estimate::new(SpecificGravity::literal(v), 0.001);
        let sigma = strength(sg(1.050), sg(1.010)).expect("in range").alcohol.sigma();
        assert!((0.17..0.23).contains(&sigma), "{sigma}");
    }

    #[test]
    fn refuses_a_gravity_that_rose() {
        let sg = |v| Estimate::exact(SpecificGravity::literal(v));
        assert_eq!(strength(sg(1.010), sg(1.050)), Err(ScienceError::RisingGravity));
        let noisy = |v| Estimate::new(SpecificGravity::literal(v), 0.001);
        let level = strength(noisy(1.050), noisy(1.051)).expect("within the doubt");
        assert_eq!(level.alcohol.value().value(), 0.0);
    }
}
