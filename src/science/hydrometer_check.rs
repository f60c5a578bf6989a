//! Checking a hydrometer: what a check in water says, and what to weigh for one in sugar.

use super::hydrometer::{on_scale, reading_in_solution, reading_in_water};
use super::{ScienceError, sucrose};
use crate::quantity::{
    Celsius, Estimate, Grams, Gravity, GravityChange, HAIR, Litres, Measured, Share,
    SpecificGravity,
};

/// What a check in water says to add: what it should have shown less what it showed.
///
/// ```
/// use fermentside::quantity::{Celsius, Gravity, SpecificGravity};
/// use fermentside::science::hydrometer_check::offset_from_water;
///
/// let (shown, at_20) = (Gravity::Specific(SpecificGravity::literal(0.998)), Celsius::literal(20.0));
/// assert_eq!(format!("{:.0}", offset_from_water(shown, at_20, at_20)?.points()), "2");
/// assert!(offset_from_water(shown, Celsius::literal(61.0), at_20).is_err());
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
    if w <= HAIR || mass <= 0.0 {
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
    use crate::quantity::Plato;
    use crate::science::hydrometer::{Hydrometer, SugarCheck, by_weight, correction};
    use crate::science::hydrometer_sample::{Condition, Sample, correct_wort};

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
