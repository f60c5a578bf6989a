//! Laws of blending: heat, mass and extract are kept.

use crate::support::{cases, close};
use fermentside::quantity::{Celsius, Grams, Litres, Measured, Plato};
use fermentside::science::heat::{Part, blend, heat_capacity, ice_to_reach, water_to_reach};
use fermentside::science::sucrose;
use proptest::prelude::*;

fn part(litres: f64, plato: f64, t: f64) -> Part {
    Part {
        volume: Litres::literal(litres),
        extract: Plato::literal(plato),
        temperature: Celsius::literal(t),
    }
}

/// Up to 80 °C, where the density of wort can be asked for.
fn parts() -> impl Strategy<Value = Vec<Part>> {
    let one = (0.1..40.0, 0.0..25.0, 0.0..80.0).prop_map(|(v, plato, t)| part(v, plato, t));
    prop::collection::vec(one, 1..5)
}

fn kilograms(volume: Litres, extract: Plato, t: Celsius) -> f64 {
    volume.value() * sucrose::density(extract, t).expect("in range").value() / 1000.0
}

fn sums(parts: &[Part]) -> (f64, f64) {
    parts.iter().fold((0.0, 0.0), |(mass, extract), p| {
        let kg = kilograms(p.volume, p.extract, p.temperature);
        (mass + kg, extract + kg * p.extract.value() / 100.0)
    })
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn it_lies_between_the_coldest_and_the_warmest(parts in parts()) {
        let found = blend(&parts, Grams::literal(0.0)).expect("in range").temperature;
        let t = found.value().value();
        let all = || parts.iter().map(|p| p.temperature.value());
        let (cold, warm) = (all().fold(f64::MAX, f64::min), all().fold(f64::MIN, f64::max));
        prop_assert!(t >= cold - 1e-9 && t <= warm + 1e-9, "{cold} {t} {warm}");
        prop_assert!(found.sigma().is_finite());
    }

    #[test]
    fn the_order_does_not_matter(parts in parts()) {
        let mut turned = parts.clone();
        turned.reverse();
        let one = blend(&parts, Grams::literal(0.0)).expect("in range");
        let other = blend(&turned, Grams::literal(0.0)).expect("in range");
        let same = |a: f64, b: f64| close(a, b, 1e-9 * (1.0 + a.abs()));
        prop_assert!(same(one.temperature.value().value(), other.temperature.value().value()));
        prop_assert!(same(one.volume.value(), other.volume.value()));
        prop_assert!(same(one.gravity.value(), other.gravity.value()));
    }

    #[test]
    fn mass_and_extract_are_kept(parts in parts(), grams in 0.0..500.0) {
        // With so much ice that it cannot all melt, there is no answer to check.
        if let Ok(found) = blend(&parts, Grams::literal(grams)) {
            let (mass, extract) = sums(&parts);
            let plato = sucrose::plato(found.gravity);
            let after = kilograms(found.volume, plato, found.temperature.value());
            prop_assert!(close(after, mass + grams / 1000.0, 1e-6 * mass));
            prop_assert!(close(after * plato.value() / 100.0, extract, 1e-3 * extract + 1e-9));
        }
    }

    #[test]
    fn the_water_said_to_be_needed_gets_there(
        litres in 0.5..40.0, plato in 0.0..25.0, hot in 30.0..80.0, cold in 0.0..15.0,
        share in 0.1..1.0,
    ) {
        // Nearer the water than a tenth of the way it takes more than any vessel holds.
        let target = Celsius::literal(cold + share * (hot - cold));
        let found = water_to_reach(part(litres, plato, hot), Celsius::literal(cold), target);
        let (added, result) = found.expect("reachable");
        prop_assert!(close(result.temperature.value().value(), target.value(), 1e-9));
        prop_assert!(added.value() >= 0.0);
        // A nearer target takes less.
        let nearer = Celsius::literal(target.value() + 0.5 * (hot - target.value()));
        let less = water_to_reach(part(litres, plato, hot), Celsius::literal(cold), nearer);
        prop_assert!(less.expect("reachable").0 <= added);
    }

    #[test]
    fn the_ice_said_to_be_needed_gets_there(
        litres in 0.5..40.0, plato in 0.0..25.0, hot in 10.0..80.0, share in 0.0..1.0,
    ) {
        let target = Celsius::literal(share * hot);
        let (ice, result) = ice_to_reach(part(litres, plato, hot), target).expect("reachable");
        prop_assert!(close(result.temperature.value().value(), target.value(), 1e-9));
        // Ice takes more heat than as much water of 0 °C.
        if share > 0.1 && share < 0.99 {
            let water = water_to_reach(part(litres, plato, hot), Celsius::literal(0.0), target);
            prop_assert!(ice.value() / 1000.0 < water.expect("reachable").0.value());
        }
    }

    #[test]
    fn sugar_takes_less_heat_than_water(plato in 0.0..30.0, more in 0.01..1.0, t in 0.0..100.0) {
        let at = |p| heat_capacity(Plato::literal(p), Celsius::literal(t)).expect("in range");
        prop_assert!(at(plato + more) < at(plato));
    }
}
