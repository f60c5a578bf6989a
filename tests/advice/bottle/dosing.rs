//! Laws of dosing: into the vessel and into the bottles is one dose, and what is filled was there.

use super::laws::{bottling, ceiling};
use crate::support::cases;
use fermentside::advice::bottle::dosing::{Dosing, Weighing};
use fermentside::advice::bottle::history::{Past, Seal, Working, both_ends, held};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::{Bottles, fill, how_many, smallest, weakest};
use fermentside::advice::bottle::{Bottling, plan};
use fermentside::quantity::{Celsius, Estimate, Grams, Hours, Litres, Measured, Metres};
use proptest::prelude::*;

fn stock() -> impl Strategy<Value = Vec<Bottles>> {
    let sizes = prop::sample::select(vec![0.25, 0.33, 0.341, 0.355, 0.5, 0.568, 0.65, 0.75, 1.0]);
    let classes = prop::sample::select(Bottle::ALL.to_vec());
    let one = (sizes, classes, 0..80_u32).prop_map(|(size, class, count)| Bottles {
        size: Litres::nearest(size),
        class,
        count,
    });
    prop::collection::vec(one, 0..5)
}

proptest! {
    #![proptest_config(cases(10_000))]

    #[test]
    fn by_bottle_and_by_vessel_agree_to_the_gram(b in bottling(), chosen in stock()) {
        let filling = fill(b.beer.value(), &chosen);
        let Some(least) = smallest(&filling.filled) else { return Ok(()) };
        let fine = Grams::literal(0.01);
        let with = |dosing| plan(Bottling { weighing: Weighing { dosing, scale: fine }, ..b });
        let vessel = with(Dosing::Vessel).expect("in range");
        let bottles = with(Dosing::Bottles { smallest: least }).expect("in range");
        let (Some(whole), Some(dose)) = (vessel.dose(), bottles.dose()) else { return Ok(()) };
        prop_assert_eq!(whole.sugar.value(), dose.sugar.value());
        let (mut exact, mut weighed) = (0.0, 0.0);
        for own in &filling.filled {
            let each = bottles.per_bottle(own.size).expect("a dose");
            exact += each.exact.value() * f64::from(own.count);
            weighed += each.weigh.value() * f64::from(own.count);
        }
        // Wort that is put in fills bottles as well.
        let wort = b.sugar.volume(whole.sugar.value()).map_or(0.0, Measured::value);
        let a_litre = whole.sugar.value().value() / (b.beer.value().value() + wort);
        let left = a_litre * (filling.left.value() + wort);
        prop_assert!((exact + left - whole.sugar.value().value()).abs() < 1e-6);
        // Weighed to a hundredth, hundreds of bottles still agree to the gram and a half.
        let rough = 0.005 * f64::from(how_many(&filling.filled));
        prop_assert!((weighed - exact).abs() <= rough + 1e-6);
        prop_assert!(vessel.per_bottle(least).is_none(), "not judged for bottles");
    }

    #[test]
    fn a_bottle_weighed_on_this_scale_stays_under_its_ceiling(b in bottling(), size in 0.0..1.0) {
        let Dosing::Bottles { smallest } = b.weighing.dosing else { return Ok(()) };
        let size = Litres::nearest(smallest.value() + size);
        let plan = plan(b).expect("in range");
        let Some(each) = plan.per_bottle(size) else { return Ok(()) };
        // Nothing is weighed for a beer that holds enough.
        prop_assume!(each.exact.value() > 0.0);
        // What is read off, and half a step more that the scale does not show.
        let grams = each.weigh.value() + 0.5 * b.weighing.scale.value();
        let most = b.sugar.full_yield().upper(2.0).value();
        let primed = grams * most / 1.977 / size.value();
        let upper = |held: Estimate<_>| -> f64 { Measured::value(held.upper(2.0)) };
        let points = b.points_left.map_or(10.0, |left| 1000.0 * left.value()).max(0.0);
        let worst = upper(b.already_in) + primed + 0.5 * points;
        // Wort makes the beer more by itself, which is counted there and not here.
        let more = b.sugar.volume(each.weigh).map_or(0.0, Measured::value);
        let swollen = 1.0 + more / size.value();
        let ceiling = ceiling(&b).expect("a bottle made for pressure");
        prop_assert!(worst <= ceiling * swollen + 1e-9, "{worst} above {ceiling}");
    }

    #[test]
    fn only_what_is_there_is_filled(litres in 0.0..60.0, chosen in stock()) {
        let beer = Litres::nearest(litres);
        let filling = fill(beer, &chosen);
        let into: f64 = filling.filled.iter().map(|own| own.volume().value()).sum();
        prop_assert!((into + filling.left.value() - litres).abs() < 1e-6);
        for own in &filling.filled {
            let there: u32 = chosen.iter().filter(|c| c.size == own.size).map(|c| c.count).sum();
            prop_assert!(own.count <= there);
            prop_assert_ne!(own.class, Bottle::NotForPressure);
        }
        // What is left would fill no bottle that is still empty.
        let usable = |c: &&Bottles| c.class.ceiling(false).is_some();
        for own in chosen.iter().filter(usable) {
            let of_size = |all: &[Bottles]| -> u32 {
                all.iter().filter(usable).filter(|c| c.size == own.size).map(|c| c.count).sum()
            };
            let empty = of_size(&chosen) - of_size(&filling.filled);
            prop_assert!(empty == 0 || filling.left.value() < own.size.value() + 1e-6);
        }
        // The weakest kind has the lowest ceiling of those filled.
        if let Some(weak) = weakest(&filling.filled) {
            let lowest = weak.ceiling(false);
            prop_assert!(filling.filled.iter().all(|own| own.class.ceiling(false) >= lowest));
        }
    }

    #[test]
    fn a_history_that_is_open_never_lets_a_bottle_through_that_the_worse_end_would_stop(
        b in bottling(), warmest in 8.0..30.0_f64, colder in 0.0..20.0_f64,
        seal in prop::sample::select(vec![Seal::Airlock, Seal::Sealed, Seal::Unsure]),
        working in prop::sample::select(vec![Working::Quiet, Working::Still, Working::Unsure]),
        warm_for in prop::option::of(0.0..200.0), height in 0.0..3000.0,
    ) {
        let past = Past {
            warm_for: warm_for.map(Hours::nearest),
            coldest: Some(Celsius::nearest((warmest - colder).max(0.0))),
            seal,
            when_chilled: working,
        };
        let warmest = Estimate::new(Celsius::nearest(warmest), 1.0);
        let found = held(warmest, past, Metres::nearest(height)).expect("in range");
        let plain = held(warmest, Past::PLAIN, Metres::nearest(height)).expect("in range");
        prop_assert_eq!(found.by_rule, plain.by_rule);
        let b = Bottling { already_in: found.by_rule, may_hold: None, ..b };
        match both_ends(b, &found).expect("in range") {
            None => prop_assert!(found.may_hold.is_none()),
            Some(ends) => {
                let usual = plan(b).expect("in range");
                // The guard is never lower for the doubt, and the dose never higher.
                prop_assert!(ends.by_rule.guard.worst >= usual.guard.worst);
                prop_assert!(ends.holds_more.guard.worst <= ends.by_rule.guard.worst);
                prop_assert!(usual.dose().is_some() || ends.by_rule.dose().is_none());
                prop_assert!(ends.apart().is_none_or(|grams| grams.value() >= 0.0));
                prop_assert!(ends.off_by.value() > 0.1);
            }
        }
    }
}
