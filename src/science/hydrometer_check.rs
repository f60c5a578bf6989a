//! Checking a hydrometer: in water, and in a sugar solution weighed for it.
//!
//! One point gives one correction for the whole scale. With two, the correction is straight between
//! their marks and held beyond them: a slip of paper in the stem moves every mark alike, a wrong scale
//! does not, and nothing is known outside what was tried.

use super::hydrometer::{GLASS, Hydrometer, SAMPLE};
use super::{ScienceError, sucrose};
use crate::quantity::{
    Celsius, Estimate, Grams, Gravity, GravityChange, Litres, Measured, Plato, Share,
    SpecificGravity,
};
use serde::{Deserialize, Serialize};

/// The two marks must lie so far apart for a line between them to mean anything.
const APART: f64 = 0.010;

/// A check in a weighed solution of table sugar, as it was done: nothing worked out is kept.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SugarCheck {
    /// Dry table sugar.
    pub sugar: Grams,
    /// Water it was dissolved in.
    pub water: Grams,
    /// What the instrument showed.
    pub shown: Gravity,
    /// Of the solution in the jar.
    pub temperature: Celsius,
}

impl SugarCheck {
    /// What a true instrument made for `reference` shows in it.
    ///
    /// # Errors
    /// As [`reading_in_solution`]; [`ScienceError::NothingThere`] without sugar or water.
    pub fn should_show(&self, reference: Celsius) -> Result<SpecificGravity, ScienceError> {
        let strength = by_weight(self.sugar, self.water)?;
        let plato = Plato::new(100.0 * strength.value())?;
        reading_in_solution(plato, self.temperature, reference)
    }
}

/// Share by weight of so much sugar in so much water.
///
/// ```
/// use fermentside::quantity::{Grams, Share};
/// use fermentside::science::hydrometer_check::by_weight;
///
/// let found = by_weight(Grams::literal(30.0), Grams::literal(220.0));
/// assert_eq!(found, Ok(Share::literal(0.12)));
/// assert!(by_weight(Grams::literal(30.0), Grams::literal(0.0)).is_err());
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] without sugar or water.
pub fn by_weight(sugar: Grams, water: Grams) -> Result<Share, ScienceError> {
    if sugar.value() <= 0.0 || water.value() <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    Ok(Share::new(sugar.value() / (sugar.value() + water.value()))?)
}

/// The mark a true instrument made for `reference` stands at in a sugar solution of `t`; plain water
/// is a solution of 0 °P.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured, Plato};
/// use fermentside::science::hydrometer_check::reading_in_solution;
///
/// // ICUMSA SPS-4: 12 % by weight is 1.04839.
/// let at_20 = Celsius::literal(20.0);
/// let shown = reading_in_solution(Plato::literal(12.0), at_20, at_20)?;
/// assert_eq!(format!("{:.4}", shown.value()), "1.0484");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 60 °C, [`ScienceError::OutOfRange`] above 1.2.
pub fn reading_in_solution(
    extract: Plato,
    t: Celsius,
    reference: Celsius,
) -> Result<SpecificGravity, ScienceError> {
    let (min, max) = SAMPLE;
    for given in [t, reference] {
        if !(min..=max).contains(&given) {
            return Err(ScienceError::Temperature { given, min, max });
        }
    }
    let w = extract.value() / 100.0;
    let (t, t_ref) = (t.value(), reference.value());
    let rho = sucrose::rho(w, t) * (1.0 + GLASS * (t - t_ref));
    Ok(SpecificGravity::new(sucrose::sg_of_rho(rho, t_ref))?)
}

/// What an unchecked reading in pure water at `t` should be: the mark that the surface stands at when
/// the instrument is true.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured};
/// use fermentside::science::hydrometer_check::reading_in_water;
///
/// let warm = reading_in_water(Celsius::literal(30.0), Celsius::literal(20.0))?;
/// assert_eq!(format!("{:.4}", warm.value()), "0.9977");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 60 °C.
pub fn reading_in_water(t: Celsius, reference: Celsius) -> Result<SpecificGravity, ScienceError> {
    reading_in_solution(Plato::literal(0.0), t, reference)
}

/// What a check in water says to add: what it should have shown less what it showed.
///
/// ```
/// use fermentside::quantity::{Celsius, Gravity, SpecificGravity};
/// use fermentside::science::hydrometer_check::offset_from_water;
///
/// let (shown, at_20) = (Gravity::Specific(SpecificGravity::literal(0.998)), Celsius::literal(20.0));
/// assert_eq!(format!("{:.0}", offset_from_water(shown, at_20, at_20)?.points()), "2");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// As [`reading_in_water`]; [`ScienceError::OutOfRange`] for more than 0.1.
pub fn offset_from_water(
    shown: Gravity,
    t: Celsius,
    reference: Celsius,
) -> Result<GravityChange, ScienceError> {
    let should = reading_in_water(t, reference)?.value();
    Ok(GravityChange::new(should - on_scale(shown, reference))?)
}

/// A gravity as a mark on a scale in specific gravity: a Plato stick is marked for that extract at its
/// own temperature.
pub(super) fn on_scale(gravity: Gravity, reference: Celsius) -> f64 {
    match gravity {
        Gravity::Specific(sg) => sg.value(),
        Gravity::Plato(plato) => sucrose::sg_at(plato.value() / 100.0, reference.value()),
    }
}

/// What is added to this mark of this instrument.
///
/// Through water alone: the offset. Through water and sugar: straight between the marks that were
/// shown, held beyond. A sugar check that means nothing (no sugar, too near to water, too hot) is
/// passed over.
///
/// ```
/// use fermentside::quantity::{Gravity, GravityChange, SpecificGravity};
/// use fermentside::science::{hydrometer::Hydrometer, hydrometer_check::correction};
///
/// let offset = GravityChange::literal(0.002);
/// let by = Hydrometer { offset, ..Hydrometer::USUAL };
/// assert_eq!(correction(&by, Gravity::Specific(SpecificGravity::literal(1.048))), offset);
/// ```
#[must_use]
pub fn correction(by: &Hydrometer, shown: Gravity) -> GravityChange {
    let mark = on_scale(shown, by.reference);
    let in_water = by.offset.value();
    let water_mark = 1.0 - in_water;
    let Some((sugar_mark, in_sugar)) = by.sugar.and_then(|check| {
        let sugar_mark = on_scale(check.shown, by.reference);
        let should = check.should_show(by.reference).ok()?.value();
        (sugar_mark - water_mark >= APART).then_some((sugar_mark, should - sugar_mark))
    }) else {
        return by.offset;
    };
    let along = ((mark - water_mark) / (sugar_mark - water_mark)).clamp(0.0, 1.0);
    GravityChange::nearest(in_water + along * (in_sugar - in_water))
}

/// What to weigh for a check.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solution {
    /// Dry table sugar.
    pub sugar: Grams,
    /// Water.
    pub water: Grams,
    /// Sugar's share of the whole by weight.
    pub by_weight: Share,
    /// Specific gravity 20/20, with one standard deviation from the scales.
    pub gravity: Estimate<SpecificGravity>,
    /// What a true instrument shows in it at the temperature asked for.
    pub shows: SpecificGravity,
}

/// Sugar and water that fill a jar of `jar` at 20 °C with a solution of `target` 20/20, weighed on
/// scales of `step` from one mark to the next, and what an instrument made for `reference` shows in it
/// at `t`.
///
/// ```
/// use fermentside::quantity::{Celsius, Grams, Litres, Measured, SpecificGravity};
/// use fermentside::science::hydrometer_check::solution;
///
/// let at_20 = Celsius::literal(20.0);
/// let (jar, scales) = (Litres::literal(0.25), Grams::literal(1.0));
/// let found = solution(SpecificGravity::literal(1.048), jar, scales, at_20, at_20)?;
/// assert_eq!(format!("{:.0} g in {:.0} g", found.sugar.value(), found.water.value()), "31 g in 230 g");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no jar or a target not above water;
/// [`ScienceError::Temperature`] outside 0 to 60 °C.
pub fn solution(
    target: SpecificGravity,
    jar: Litres,
    step: Grams,
    t: Celsius,
    reference: Celsius,
) -> Result<Solution, ScienceError> {
    let plato = sucrose::plato(target);
    let w = plato.value() / 100.0;
    let mass = sucrose::rho(w, 20.0) * jar.value();
    if w <= 1e-9 || mass <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let (sugar, water) = (w * mass, (1.0 - w) * mass);
    // Half a step in the sugar and half in the water: ∂w = (1 − w) ∂s ÷ m and −w ∂h ÷ m.
    let one = 0.5 * step.value() / mass;
    let per_share = (sucrose::sg_at(w + 1e-4, 20.0) - sucrose::sg_at(w - 1e-4, 20.0)) / 2e-4;
    let sigma = per_share * ((1.0 - w) * one).hypot(w * one);
    Ok(Solution {
        sugar: Grams::new(sugar)?,
        water: Grams::new(water)?,
        by_weight: Share::new(w)?,
        gravity: Estimate::new(target, sigma),
        shows: reading_in_solution(plato, t, reference)?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::hydrometer::{Condition, Sample, correct_wort};

    const AT_20: Celsius = Celsius::literal(20.0);

    fn sg(value: f64) -> Gravity {
        Gravity::Specific(SpecificGravity::literal(value))
    }

    /// Twelve and twenty-two per cent by weight, as an instrument should and as this one does show it.
    fn checked(offset: f64, shown: f64) -> Hydrometer {
        let check = SugarCheck {
            sugar: Grams::literal(55.0),
            water: Grams::literal(195.0),
            shown: sg(shown),
            temperature: AT_20,
        };
        let offset = GravityChange::literal(offset);
        Hydrometer { offset, sugar: Some(check), ..Hydrometer::USUAL }
    }

    #[test]
    fn weighed_solutions_stand_where_the_tables_say() {
        for (share, known) in [(22.0, 1.092), (12.0, 1.048)] {
            let shown = reading_in_solution(Plato::literal(share), AT_20, AT_20).expect("in range");
            assert!((shown.value() - known).abs() < 0.0005, "{share} %: {shown:?}");
            let jar = Litres::literal(0.2);
            let found = solution(shown, jar, Grams::literal(1.0), AT_20, AT_20).expect("in range");
            assert!((100.0 * found.by_weight.value() - share).abs() < 1e-6);
            let back = by_weight(found.sugar, found.water).expect("both");
            assert!((back.value() - found.by_weight.value()).abs() < 1e-12);
        }
    }

    #[test]
    fn the_correction_is_straight_between_the_two_and_held_beyond() {
        let true_mark = checked(0.0, 1.0).sugar.expect("a check").should_show(AT_20);
        let true_mark = true_mark.expect("in range").value();
        // Two points low in water, six low in sugar.
        let by = checked(0.002, true_mark - 0.006);
        let at = |mark| correction(&by, sg(mark)).points();
        assert!((at(0.998) - 2.0).abs() < 1e-9 && (at(0.985) - 2.0).abs() < 1e-9);
        assert!((at(true_mark - 0.006) - 6.0).abs() < 1e-9 && (at(1.15) - 6.0).abs() < 1e-9);
        assert!((at(0.5 * (0.998 + true_mark - 0.006)) - 4.0).abs() < 1e-9);
    }

    #[test]
    fn a_check_that_means_nothing_is_passed_over() {
        assert!((correction(&checked(0.002, 1.003), sg(1.05)).points() - 2.0).abs() < 1e-9);
        let mut empty = checked(0.002, 1.09);
        empty.sugar = empty.sugar.map(|check| SugarCheck { sugar: Grams::literal(0.0), ..check });
        assert!((correction(&empty, sg(1.05)).points() - 2.0).abs() < 1e-9);
    }

    #[test]
    fn an_instrument_stored_before_is_read_and_one_without_sugar_is_written_as_before() {
        let stored = r#"{"reference":15.56,"division":0.001,"offset":0.003}"#;
        let read: Hydrometer = serde_json::from_str(stored).expect("reads");
        assert_eq!(read.sugar, None);
        assert_eq!(serde_json::to_string(&read).expect("writes"), stored);
        let two = checked(0.001, 1.088);
        let text = serde_json::to_string(&two).expect("writes");
        assert_eq!(serde_json::from_str::<Hydrometer>(&text).expect("reads"), two);
    }

    #[test]
    fn a_new_check_moves_an_older_reading_and_the_reading_stays() {
        let sample = Sample { reading: sg(1.088), temperature: AT_20, condition: Condition::Still };
        let before = correct_wort(sample, &Hydrometer::USUAL).expect("in range");
        let true_mark = checked(0.0, 1.0).sugar.expect("a check").should_show(AT_20);
        let true_mark = true_mark.expect("in range").value();
        let after = correct_wort(sample, &checked(0.0, 1.088)).expect("in range");
        assert!((before.gravity.value().value() - 1.088).abs() < 1e-9);
        assert!((after.gravity.value().value() - true_mark).abs() < 1e-9);
        assert_eq!(after.worked.inputs[0], before.worked.inputs[0]);
    }
}
