//! Laws of a reading made true.

use crate::support::{cases, close};
use fermentside::quantity::{Celsius, Gravity, GravityChange, Measured, Plato, SpecificGravity};
use fermentside::science::hydrometer::{Hydrometer, reading_in_water};
use fermentside::science::hydrometer_sample::{
    Condition, Corrected, Sample, correct_beer, correct_wort,
};
use fermentside::science::{ScienceError, Term};
use proptest::prelude::*;

/// Warming water from 0 °C first shrinks it, and to 5.5 °C it grows less than the glass does, a little
/// further in what is thinner than water; so only from 7 °C does a fixed reading always mean a heavier
/// liquid when the sample is warmer.
const GROWS_FROM: f64 = 7.0;

fn sample(reading: f64, t: f64) -> Sample {
    Sample {
        reading: Gravity::Specific(SpecificGravity::literal(reading)),
        temperature: Celsius::literal(t),
        condition: Condition::Still,
    }
}

fn made_for(reference: f64) -> Hydrometer {
    Hydrometer { reference: Celsius::literal(reference), ..Hydrometer::USUAL }
}

/// As wort without an original extract, as beer with one.
fn corrected(reading: f64, t: f64, by: &Hydrometer, original: Option<f64>) -> Corrected {
    match original {
        None => correct_wort(sample(reading, t), by),
        Some(oe) => correct_beer(sample(reading, t), by, Plato::literal(oe)),
    }
    .expect("in range")
}

fn gravity(reading: f64, t: f64, by: &Hydrometer, original: Option<f64>) -> f64 {
    corrected(reading, t, by, original).gravity.value().value()
}

fn references() -> impl Strategy<Value = f64> {
    prop::sample::select(vec![15.0, 15.56, 17.5, 20.0])
}

fn originals() -> impl Strategy<Value = Option<f64>> {
    prop_oneof![Just(None), (2.0..35.0).prop_map(Some)]
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn a_warmer_sample_means_more(
        reading in 0.985..1.14, cool in GROWS_FROM..59.0, by in 0.01..30.0,
        reference in references(), original in originals(),
    ) {
        let by_reference = made_for(reference);
        let warm = f64::min(cool + by, 60.0);
        let at = |t| gravity(reading, t, &by_reference, original);
        prop_assert!(at(warm) > at(cool), "{cool}: {}, {warm}: {}", at(cool), at(warm));
    }

    #[test]
    fn a_higher_reading_means_more(
        reading in 0.985..1.13, by in 1e-5..0.01, t in 0.0..60.0,
        reference in references(), original in originals(),
    ) {
        let by_reference = made_for(reference);
        let at = |sg| gravity(sg, t, &by_reference, original);
        prop_assert!(at(reading + by) > at(reading));
    }

    #[test]
    fn at_20_degrees_nothing_changes_and_once_is_enough(
        reading in 0.985..1.14, t in 0.0..60.0, original in originals(),
    ) {
        let usual = Hydrometer::USUAL;
        prop_assert!(close(gravity(reading, 20.0, &usual, original), reading, 1e-9));
        let once = gravity(reading, t, &usual, original);
        prop_assert!(close(gravity(once, 20.0, &usual, original), once, 1e-9));
    }

    #[test]
    fn at_its_own_temperature_an_instrument_shows_what_it_shows(
        reading in 0.985..1.14, reference in references(), original in originals(),
    ) {
        let shown = corrected(reading, reference, &made_for(reference), original).at_reference;
        prop_assert!(close(shown.value(), reading, 1e-9), "{} {reading}", shown.value());
    }

    #[test]
    fn every_doubt_is_finite_and_grows_with_the_condition(
        reading in 0.985..1.14, t in 0.0..60.0, original in originals(),
    ) {
        let sigma = |condition| {
            let sample = Sample { condition, ..sample(reading, t) };
            match original {
                None => correct_wort(sample, &Hydrometer::USUAL),
                Some(oe) => correct_beer(sample, &Hydrometer::USUAL, Plato::literal(oe)),
            }
            .expect("in range")
            .gravity
            .sigma()
        };
        let [still, foam, gassy] = [Condition::Still, Condition::Foam, Condition::Gassy].map(sigma);
        prop_assert!(still > 0.0 && still < foam && foam < gassy && gassy < 0.01);
    }

    #[test]
    fn a_check_in_water_takes_the_fault_off(
        fault in -0.008..0.008, t in 0.0..60.0, reference in references(), reading in 1.0..1.1,
    ) {
        // A true instrument in water shows what it should, and that means 1.000.
        let (at, made) = (Celsius::literal(t), Celsius::literal(reference));
        let should = reading_in_water(at, made).expect("in range").value();
        prop_assert!(close(gravity(should, t, &made_for(reference), None), 1.0, 1e-9));
        // What a faulty one shows too much or too little is taken off every later reading.
        let showed: f64 = should + fault;
        let offset = GravityChange::literal(should - showed);
        let faulty = Hydrometer { offset, ..made_for(reference) };
        let (found, truth) = (
            gravity(reading + fault, 25.0, &faulty, None),
            gravity(reading, 25.0, &made_for(reference), None),
        );
        prop_assert!(close(found, truth, 1e-9));
    }
}

#[test]
fn no_degree_makes_the_gravity_of_beer_jump() {
    // The ethanol formula ends at 40 °C; the correction must not fall back there.
    for original in [8.0, 12.0, 18.0, 30.0] {
        let at = |t| gravity(1.010, t, &Hydrometer::USUAL, Some(original));
        assert!(at(40.001) > at(40.0), "{original}: {} {}", at(40.0), at(40.001));
    }
}

#[test]
fn the_very_strong_and_dry_still_follows_the_reading() {
    let at = |reading| gravity(reading, 25.0, &Hydrometer::USUAL, Some(40.0));
    assert!(at(0.990) > at(0.985) + 0.004, "{} {}", at(0.985), at(0.990));
}

#[test]
fn an_instrument_made_for_no_real_temperature_is_refused() {
    for wrong in [-5.0, 90.0] {
        let found = correct_wort(sample(1.050, 20.0), &made_for(wrong));
        assert!(matches!(found, Err(ScienceError::Temperature { .. })), "{wrong}");
        let check = reading_in_water(Celsius::literal(20.0), Celsius::literal(wrong));
        assert!(matches!(check, Err(ScienceError::Temperature { .. })), "{wrong}");
    }
}

#[test]
fn the_thermometer_counts_as_much_at_the_end_of_the_range() {
    let by_thermometer = |t| {
        let worked = corrected(1.050, t, &Hydrometer::USUAL, None).worked;
        let doubt = worked.doubts.iter().find(|doubt| doubt.term == Term::SampleTemperature);
        doubt.expect("a doubt of the thermometer").sigma
    };
    assert!(by_thermometer(60.0) > by_thermometer(59.0));
}
