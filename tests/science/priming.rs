//! Laws of the dose.

use crate::support::{cases, close};
use fermentside::quantity::{CarbonDioxideVolumes, Estimate, Extract, Grams, Litres, Measured};
use fermentside::science::bottle_pressure::VOLUMES_PER_POINT;
use fermentside::science::carbon_dioxide::GRAMS_PER_VOLUME;
use fermentside::science::priming::{Priming, Sugar, dose, from_extract, most_from};
use proptest::prelude::*;

/// What a dose counts on of the full yield.
const COUNTED_ON: f64 = 0.95;

fn grams(target: f64, held: f64, litres: f64, sugar: Sugar) -> f64 {
    let priming = Priming {
        target: CarbonDioxideVolumes::literal(target),
        already_in: Estimate::new(CarbonDioxideVolumes::literal(held), 0.04),
        beer: Estimate::new(Litres::literal(litres), 0.02 * litres),
        sugar,
    };
    let dose = dose(priming).expect("in range").sugar;
    assert!(dose.sigma().is_finite());
    dose.value().value()
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn more_gas_in_more_beer_that_holds_less_takes_more(
        target in 1.5..4.5, held in 0.3..1.4, litres in 0.3..100.0, more in 1e-3..0.5,
        sugar in prop::sample::select(Sugar::ALL.to_vec()),
    ) {
        let usual = grams(target, held, litres, sugar);
        prop_assert!(usual > 0.0);
        prop_assert!(grams(target + more, held, litres, sugar) > usual);
        prop_assert!(grams(target, held, litres + more, sugar) > usual);
        prop_assert!(grams(target, held - f64::min(more, 0.2), litres, sugar) > usual);
    }

    #[test]
    fn a_dose_is_never_less_than_none(
        target in 0.0..5.0, held in 0.0..5.0, litres in 0.01..1000.0,
        sugar in prop::sample::select(Sugar::ALL.to_vec()),
    ) {
        let dose = grams(target, held, litres, sugar);
        prop_assert!(dose >= 0.0);
        prop_assert_eq!(dose == 0.0, target <= held);
    }

    #[test]
    fn what_goes_in_comes_out(
        target in 1.5..4.5, held in 0.3..1.4, litres in 0.3..100.0,
        sugar in prop::sample::select(Sugar::ALL.to_vec()),
    ) {
        let dose = grams(target, held, litres, sugar);
        let full = sugar.full_yield().value().value();
        let comes = COUNTED_ON * full * dose / litres / GRAMS_PER_VOLUME;
        prop_assert!(close(comes, target - held, 1e-9));
        // A guard never counts on less than the dose was for.
        let most = most_from(Grams::literal(dose), sugar, Litres::literal(litres));
        prop_assert!(most.expect("in range").value() >= target - held);
    }

    #[test]
    fn extract_gives_gas_in_proportion(extract in 0.01..100.0) {
        let from = |grams| from_extract(Extract::literal(grams)).value();
        prop_assert!(close(from(extract), extract * from(1.0), 1e-9));
    }
}

#[test]
fn a_point_of_gravity_is_about_half_a_volume() {
    // One apparent point is about 0.256 °P; real extract falls by about 0.82 of that; 2.1 g/L.
    for plato_a_point in [0.24, 0.26] {
        let grams_a_litre = plato_a_point * 0.82 * 10.1;
        let found = from_extract(Extract::literal(grams_a_litre)).value();
        assert!(close(found, VOLUMES_PER_POINT.value(), 0.04), "{found}");
    }
}
