//! One beer told in two units is one beer: the same verdict, the same grams.

use crate::support::cases;
use fermentside::advice::bottle::dosing::Weighing;
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::{Bottling, Over, plan};
use fermentside::quantity::{
    Bounds, Estimate, GasUnit, GravityChange, Measured, Metres, TemperatureUnit, VolumeUnit, read,
};
use fermentside::science::bottle_pressure::Closing;
use fermentside::science::carbon_dioxide::already_in;
use fermentside::science::priming::Sugar;
use proptest::prelude::*;

/// As typed into a form: beer, wish, warmest since it went quiet, hottest place.
fn typed(beer: &str, wish: &str, warmest: &str, hottest: &str, weakest: Bottle) -> Bottling {
    let temperature =
        |text| read(text, TemperatureUnit::Celsius, Bounds::all()).expect("a temperature");
    let beer = read(beer, VolumeUnit::Litres, Bounds::all()).expect("a volume");
    let warmest = Estimate::new(temperature(warmest), 1.0);
    Bottling {
        over: Over::Judged,
        points_left: Some(GravityChange::literal(0.001)),
        yeast_may_go_on: false,
        target: read(wish, GasUnit::Volumes, Bounds::all()).expect("a wish"),
        already_in: already_in(warmest, Metres::literal(0.0)).expect("in range").volumes,
        may_hold: None,
        beer: Estimate::new(beer, 0.02 * beer.value()),
        sugar: Sugar::Sucrose,
        weighing: Weighing::USUAL,
        weakest,
        hottest: temperature(hottest),
        closing: Closing::USUAL,
    }
}

proptest! {
    #![proptest_config(cases(10_000))]

    #[test]
    fn two_units_give_one_plan(
        gallons in 100..10_000_i32, wish in 120..420_i32, warmest in 35..85_i32,
        hottest in 60..110_i32, weakest in prop::sample::select(Bottle::ALL.to_vec()),
        imperial: bool,
    ) {
        let gallons = f64::from(gallons) / 1000.0;
        let (name, litres) = if imperial { ("imp gal", 4.546_09) } else { ("US gal", 3.785_411_784) };
        let celsius = |f: i32| (f64::from(f) - 32.0) / 1.8;
        let wish = f64::from(wish) / 100.0;
        let one = typed(
            &format!("{gallons} {name}"), &format!("{wish} vol"), &format!("{warmest} °F"),
            &format!("{hottest} F"), weakest,
        );
        let other = typed(
            &format!("{} L", gallons * litres), &format!("{} g/L", wish * 1.977),
            &format!("{} °C", celsius(warmest)), &format!("{}", celsius(hottest)), weakest,
        );
        let (one, other) = (plan(one).expect("in range"), plan(other).expect("in range"));
        prop_assert!((one.guard.worst.value() - other.guard.worst.value()).abs() < 1e-9);
        prop_assert!((one.guard.at_hottest.value() - other.guard.at_hottest.value()).abs() < 1e-6);
        for plan in [&one, &other] {
            let within = plan.guard.ceiling.is_some_and(|ceiling| plan.guard.worst <= ceiling);
            prop_assert!(plan.dose().is_none() || within, "{:?}", plan.guard);
        }
        // On the very edge of a ceiling the last bit may decide.
        let edge = one.guard.ceiling.is_some_and(|c| {
            (c.value() - one.guard.worst.value()).abs() < 1e-9
        });
        if !edge {
            prop_assert_eq!(one.advice.verdict, other.advice.verdict);
            let grams = |plan: &fermentside::advice::bottle::Plan| {
                plan.dose().map(|dose| dose.sugar.value().value())
            };
            match (grams(&one), grams(&other)) {
                (Some(a), Some(b)) => prop_assert!((a - b).abs() < 1e-6),
                (a, b) => prop_assert_eq!(a, b),
            }
        }
    }
}
