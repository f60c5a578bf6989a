//! Laws of the gravity that follows from what was weighed in.

use crate::support::{cases, close};
use fermentside::quantity::{
    Celsius, Estimate, Grams, Litres, Measured, Plato, Share, SpecificGravity,
};
use fermentside::science::kit_gravity::{Fermentable, Ingredient, KitGravity, by_mark, gravity};
use fermentside::science::mixing::{Cause, SampleGravity, compare};
use fermentside::science::sucrose;
use proptest::prelude::*;

fn ingredient() -> impl Strategy<Value = Ingredient> {
    let kind = prop::sample::select(Fermentable::ALL.to_vec());
    (kind, 10.0..2000.0, prop::option::of(0.3..1.0), prop::option::of(0.0..1.0)).prop_map(
        |(kind, grams, extract, water)| Ingredient {
            kind,
            mass: Grams::literal(grams),
            extract: extract.or((kind == Fermentable::Own).then_some(0.6)).map(Share::literal),
            water: water.map(Share::literal),
        },
    )
}

fn ingredients() -> impl Strategy<Value = Vec<Ingredient>> {
    prop::collection::vec(ingredient(), 1..6)
}

fn made(ingredients: &[Ingredient], litres: f64) -> KitGravity {
    gravity(ingredients, by_mark(Litres::literal(litres))).expect("in range")
}

fn at_20(plato: Plato) -> f64 {
    sucrose::density(plato, Celsius::literal(20.0)).expect("in range").value()
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn grams_in_are_grams_out(ingredients in ingredients(), litres in 15.0..60.0) {
        let found = made(&ingredients, litres);
        // What stays behind is neither extract nor water.
        let dissolved: f64 = ingredients
            .iter()
            .map(|i| i.mass.value() * (i.extract_share().expect("given").value() + i.water_share().value()))
            .sum();
        let mass_in = dissolved + found.water_added.value();
        let mass_out = at_20(found.plato) * litres;
        prop_assert!(close(mass_in, mass_out, 0.001 * mass_out), "{mass_in} {mass_out}");
        let extract_out = found.plato.value() / 100.0 * mass_out;
        prop_assert!(close(found.extract.value(), extract_out, 0.001 * extract_out));
        // And by the printed gravity, with air's lift put back.
        let water = at_20(Plato::literal(0.0)) - 1.2;
        let weighed = (found.gravity.value().value() * water + 1.2) * litres;
        prop_assert!(close(weighed, mass_out, 0.001 * mass_out));
    }

    #[test]
    fn more_makes_it_stronger_and_more_water_weaker(
        ingredients in ingredients(), litres in 15.0..60.0, times in 1.05..2.0,
    ) {
        let usual = made(&ingredients, litres).gravity.value();
        prop_assert!(made(&ingredients, litres * times).gravity.value() < usual);
        let mut more = ingredients.clone();
        more.push(Ingredient::usual(Fermentable::Sucrose, Grams::literal(200.0)));
        prop_assert!(made(&more, litres).gravity.value() > usual);
    }

    #[test]
    fn a_cause_explains_the_whole_gap(
        grams in 1500.0..4000.0, litres in 15.0..25.0, off in -0.02..0.02,
        water in prop::option::of(0.0..12.0), known: bool,
    ) {
        let malt = [Ingredient::usual(Fermentable::DryMalt, Grams::literal(grams))];
        let kit = made(&malt, litres);
        let sample = SpecificGravity::literal(f64::max(kit.gravity.value().value() + off, 1.005));
        let gap = sample.value() - kit.gravity.value().value();
        let seen = SampleGravity {
            gravity: Estimate::new(sample, 0.001),
            temperature_known: known,
            topped_up: water.map(Litres::literal),
        };
        let found = compare(&kit, seen);
        prop_assert_eq!(found.agrees, gap.abs() <= 0.004 + 1e-9);
        prop_assert!(!found.agrees || found.causes.is_empty());
        for cause in found.causes {
            match cause {
                Cause::WaterOnTop { layer, of_depth } => {
                    prop_assert!(gap > 0.0);
                    // The same extract in what is left below.
                    let below = made(&malt, litres - layer.value()).gravity.value().value();
                    prop_assert!(close(below, sample.value(), 1e-6), "{below} {sample:?}");
                    prop_assert!(close(of_depth.value(), layer.value() / litres, 1e-9));
                }
                Cause::Volume { would_be, .. } => {
                    let other = made(&malt, would_be.value()).gravity.value().value();
                    prop_assert!(close(other, sample.value(), 1e-6));
                }
                Cause::StrongBelow { layer } => {
                    prop_assert!(gap < 0.0);
                    prop_assert!(layer.is_none_or(|l| l.value() > 0.0 && l.value() < litres));
                }
                Cause::WarmSample { would_be } => {
                    prop_assert!(gap < 0.0 && !known && would_be.value() > 20.0);
                }
            }
        }
    }
}
