//! Laws of an instrument checked at two points.

use crate::support::{cases, close};
use fermentside::quantity::{
    Celsius, Grams, Gravity, GravityChange, Litres, Measured, SpecificGravity,
};
use fermentside::science::hydrometer::{Hydrometer, SugarCheck, correction, reading_in_water};
use fermentside::science::hydrometer_check::{offset_from_water, solution};
use fermentside::science::hydrometer_sample::{Condition, Sample, correct_wort};
use proptest::prelude::*;

fn sg(value: f64) -> Gravity {
    Gravity::Specific(SpecificGravity::literal(value))
}

/// An instrument that is out by some points in water and by others in sugar.
fn checked(water: f64, sugar: f64, t: f64, reference: f64) -> Hydrometer {
    let (t, reference) = (Celsius::literal(t), Celsius::literal(reference));
    let check = SugarCheck {
        sugar: Grams::literal(55.0),
        water: Grams::literal(195.0),
        shown: sg(1.09),
        temperature: t,
    };
    let should = check.should_show(reference).expect("in range").value();
    let shown_in_water = reading_in_water(t, reference).expect("in range").value() - water;
    Hydrometer {
        reference,
        offset: offset_from_water(sg(shown_in_water), t, reference).expect("in range"),
        sugar: Some(SugarCheck { shown: sg(should - sugar), ..check }),
        ..Hydrometer::USUAL
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn the_correction_lies_between_the_two_and_keeps_readings_in_order(
        water in -0.01..0.01, sugar in -0.01..0.01, t in 10.0..35.0,
        reference in prop::sample::select(vec![15.0, 15.56, 20.0]),
        low in 0.98..1.15, more in 0.0001..0.02,
    ) {
        let by = checked(water, sugar, t, reference);
        let at = |mark| correction(&by, sg(mark)).value();
        let (least, most) = (f64::min(water, sugar), f64::max(water, sugar));
        prop_assert!(at(low) >= least - 1e-9 && at(low) <= most + 1e-9);
        prop_assert!(low + more + at(low + more) > low + at(low));
    }

    #[test]
    fn what_was_checked_reads_true(
        water in -0.01..0.01, sugar in -0.01..0.01, t in 10.0..35.0,
    ) {
        let by = checked(water, sugar, t, 20.0);
        let check = by.sugar.expect("a check");
        let found = |reading| {
            let temperature = Celsius::literal(t);
            let sample = Sample { reading, temperature, condition: Condition::Still };
            correct_wort(sample, &by).expect("in range").gravity.value().value()
        };
        // 22 % by weight is 1.092.
        prop_assert!(close(found(check.shown), 1.0920, 0.0003), "{}", found(check.shown));
        let shown = reading_in_water(Celsius::literal(t), by.reference).expect("in range").value();
        // The mark in water is taken as that at the instrument's own temperature.
        prop_assert!(close(found(sg(shown - water)), 1.0, 0.0006));
    }

    #[test]
    fn two_equal_faults_are_one(offset in -0.01..0.01, mark in 0.98..1.15) {
        let two = checked(offset, offset, 20.0, 20.0);
        let one = Hydrometer { sugar: None, offset: GravityChange::literal(offset), ..two };
        prop_assert!(close(
            correction(&two, sg(mark)).value(), correction(&one, sg(mark)).value(), 1e-9,
        ));
    }

    #[test]
    fn the_solution_fills_the_jar(target in 1.005..1.15, jar in 0.05..1.0, step in 0.1..5.0) {
        let at_20 = Celsius::literal(20.0);
        let (target, jar) = (SpecificGravity::literal(target), Litres::literal(jar));
        let found = solution(target, jar, Grams::literal(step), at_20, at_20).expect("in range");
        prop_assert!(close(found.shows.value(), target.value(), 1e-6));
        // Weight in air over volume is gravity times water, near enough.
        let mass = found.sugar.value() + found.water.value();
        prop_assert!(close(mass, 998.2 * target.value() * jar.value(), 0.001 * mass));
        prop_assert!(found.gravity.sigma() > 0.0);
    }
}
