//! Laws of how much yeast.

use crate::support::{cases, close};
use fermentside::quantity::{Grams, Litres, Measured, Plato};
use fermentside::science::yeast::{DryYeast, Pitching, dry_yeast, sachets};
use proptest::prelude::*;

fn grams(found: &DryYeast) -> [f64; 4] {
    [found.by_maker.from, found.by_maker.to, found.by_cells.from, found.by_cells.to]
        .map(Measured::value)
}

fn for_wort(pitching: Pitching, litres: f64, plato: f64) -> [f64; 4] {
    grams(&dry_yeast(pitching, Litres::literal(litres), Plato::literal(plato)).expect("in range"))
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn it_goes_with_the_volume_and_rises_with_the_gravity(
        litres in 0.5..200.0, times in 1.1..5.0, plato in 1.0..30.0, more in 0.1..10.0,
        pitching in prop::sample::select(vec![Pitching::Warm, Pitching::Cold]),
    ) {
        let usual = for_wort(pitching, litres, plato);
        let larger = for_wort(pitching, litres * times, plato);
        for (usual, larger) in usual.into_iter().zip(larger) {
            prop_assert!(close(larger, usual * times, 1e-9 * larger));
        }
        let stronger = for_wort(pitching, litres, plato + more);
        // Makers give one dose up to 15 °P; cells rise from the start.
        prop_assert!(stronger[0] >= usual[0] && stronger[1] >= usual[1]);
        prop_assert!(stronger[2] > usual[2] && stronger[3] > usual[3]);
        prop_assert!(plato + more <= 15.0 || stronger[0] > usual[0]);
        prop_assert!(usual[0] <= usual[1] && usual[2] <= usual[3]);
        let cold = for_wort(Pitching::Cold, litres, plato);
        let warm = for_wort(Pitching::Warm, litres, plato);
        prop_assert!(cold.into_iter().zip(warm).all(|(cold, warm)| cold > warm));
    }

    #[test]
    fn the_sachets_are_enough_and_not_one_too_many(wanted in 0.0..10_000.0, size in 0.5..500.0) {
        let count = f64::from(sachets(Grams::literal(wanted), Grams::literal(size)).expect("a size"));
        // A hair more than whole sachets is whole sachets.
        let hair = 1e-5 * size;
        prop_assert!(count * size >= wanted - hair);
        prop_assert!(count == 0.0 || (count - 1.0) * size < wanted);
    }
}
