//! Laws of strength and attenuation.

use crate::support::cases;
use fermentside::quantity::{Estimate, Measured, SpecificGravity};
use fermentside::science::strength::{Strength, strength};
use proptest::prelude::*;

fn found(og: f64, fg: f64, sigma: f64) -> Strength {
    let read = |v| Estimate::new(SpecificGravity::literal(v), sigma);
    strength(read(og), read(fg)).expect("in range")
}

fn alcohol(og: f64, fg: f64) -> f64 {
    found(og, fg, 0.001).alcohol.value().value()
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn it_rises_with_the_original_and_falls_with_the_final(
        og in 1.02..1.14, fall in 0.002..1.0, more in 1e-4..0.01,
    ) {
        let fg = og - fall * (og - 0.99);
        prop_assert!(alcohol(og + more, fg) > alcohol(og, fg));
        prop_assert!(alcohol(og, fg - more) > alcohol(og, fg));
    }

    #[test]
    fn the_doubt_is_finite_and_covers_half_the_spread(
        og in 1.02..1.15, fall in 0.0..1.0, sigma in 0.0..0.006,
    ) {
        let found = found(og, og - fall * (og - 0.985), sigma);
        prop_assert!(found.alcohol.sigma().is_finite());
        prop_assert!(found.apparent.sigma().is_finite());
        let main = found.alcohol.value().value();
        for other in [found.by_duty_table.value(), found.by_common_rule.value()] {
            prop_assert!((main - other).abs() <= 2.0 * found.alcohol.sigma() + 1e-9);
        }
    }

    #[test]
    fn attenuation_lies_between_nothing_and_what_it_seems(og in 1.02..1.15, fall in 0.0..1.0) {
        let found = found(og, og - fall * (og - 0.985), 0.001);
        let (real, apparent) = (found.real.value(), found.apparent.value().value());
        prop_assert!(real >= -1e-9 && real <= apparent + 1e-9, "{real} {apparent}");
        prop_assert!(real <= 100.0 + 1e-9, "{real}");
    }

    #[test]
    fn nothing_is_ever_not_a_number(
        og in 0.95..1.2, fg in 0.95..1.2,
        one in prop_oneof![any::<f64>(), 0.0..0.01], other in prop_oneof![any::<f64>(), 0.0..0.01],
    ) {
        let read = |v, sigma| Estimate::new(SpecificGravity::literal(v), sigma);
        if let Ok(found) = strength(read(og, one), read(fg, other)) {
            prop_assert!(!found.alcohol.sigma().is_nan());
            prop_assert!(!found.apparent.sigma().is_nan());
            prop_assert!(!found.worked.sigma().is_nan());
            prop_assert!(found.worked.doubts.iter().all(|doubt| !doubt.sigma.is_nan()), "{found:?}");
        }
    }
}
