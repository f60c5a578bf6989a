//! Laws of the gas that beer holds.

use crate::support::cases;
use fermentside::quantity::{Celsius, Estimate, Kilopascals, Measured, Metres};
use fermentside::science::air;
use fermentside::science::carbon_dioxide::{already_in, dissolved_in_beer, dissolved_in_water};
use proptest::prelude::*;

fn left(t: f64, height: f64) -> f64 {
    let warmest = Estimate::new(Celsius::literal(t), 1.0);
    already_in(warmest, Metres::literal(height)).expect("in range").volumes.value().value()
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn less_is_left_in_the_warm_and_on_high_ground(
        t in -2.0..44.0, warmer in 0.01..1.0, height in -400.0..5000.0, higher in 1.0..1000.0,
    ) {
        prop_assert!(left(t + warmer, height) < left(t, height));
        prop_assert!(left(t, height + higher) < left(t, height));
        let at = |h| air::pressure(Metres::literal(h)).value();
        prop_assert!(at(height + higher) < at(height));
    }

    #[test]
    fn more_pressure_holds_more_and_beer_less_than_water(
        t in -2.0..45.0, kpa in 1.0..1000.0, more in 1.0..100.0,
    ) {
        let t = Celsius::literal(t);
        let water = |p| dissolved_in_water(t, Kilopascals::literal(p)).expect("in range");
        prop_assert!(water(kpa + more) > water(kpa));
        let beer = dissolved_in_beer(t, Kilopascals::literal(kpa)).expect("in range");
        prop_assert!(beer.value() < water(kpa));
        prop_assert!(beer.upper(2.0) > water(kpa), "5 % doubt reaches past the 4 % it holds less");
    }

    #[test]
    fn a_doubtful_history_is_a_doubtful_answer(t in -2.0..45.0, sigma in 0.0..10.0) {
        let at = |sigma| {
            let warmest = Estimate::new(Celsius::literal(t), sigma);
            already_in(warmest, Metres::literal(0.0)).expect("in range").volumes.sigma()
        };
        prop_assert!(at(sigma) >= at(0.0) && at(sigma + 1.0) > at(sigma));
        prop_assert_eq!(at(f64::INFINITY), f64::INFINITY);
    }
}
