//! Laws of gravity: the two scales, and densities.

use crate::support::{cases, close, near_numbers};
use fermentside::quantity::{
    AlcoholByMass, Celsius, Gravity, GravityUnit, Measured, Plato, SpecificGravity, read_gravity,
    write_gravity,
};
use fermentside::science::{ethanol, sucrose, water};
use proptest::prelude::*;

fn gravities() -> impl Strategy<Value = Gravity> {
    prop_oneof![
        (0.98..=1.18).prop_map(|sg| Gravity::Specific(SpecificGravity::literal(sg))),
        // Marks of a scale and the halves between them.
        (9_800_u32..=11_800)
            .prop_map(|n| { Gravity::Specific(SpecificGravity::literal(f64::from(n) / 10_000.0)) }),
        (98_000_u32..=118_000).prop_map(|n| {
            Gravity::Specific(SpecificGravity::literal(f64::from(n) / 100_000.0))
        }),
        (-5.0..=40.0).prop_map(|plato| Gravity::Plato(Plato::literal(plato))),
    ]
}

fn number(gravity: Gravity) -> f64 {
    match gravity {
        Gravity::Specific(sg) => sg.value(),
        Gravity::Plato(plato) => plato.value(),
    }
}

fn density(plato: f64, t: f64) -> f64 {
    sucrose::density(Plato::literal(plato), Celsius::literal(t)).expect("in range").value()
}

#[test]
fn every_hundred_thousandth_is_written_in_one_way() {
    for n in 98_000..=118_000 {
        let gravity = Gravity::Specific(SpecificGravity::literal(f64::from(n) / 100_000.0));
        let written = write_gravity(gravity);
        let back = read_gravity(&written, GravityUnit::SpecificGravity).map(write_gravity);
        assert_eq!(back, Ok(written));
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn a_written_gravity_reads_back(gravity in gravities()) {
        let written = write_gravity(gravity);
        // A specific gravity shows its scale by its form, degrees by their sign.
        let chosen: &[GravityUnit] = match gravity.unit() {
            GravityUnit::SpecificGravity => &[GravityUnit::SpecificGravity],
            GravityUnit::Plato => &GravityUnit::ALL,
        };
        for &unit in chosen {
            let back = read_gravity(&written, unit);
            let Ok(back) = back else {
                return Err(TestCaseError::fail(format!("{written:?}: {back:?}")));
            };
            prop_assert_eq!(back.unit(), gravity.unit());
            let places = written.trim_end_matches("\u{A0}°P").split('.').nth(1).map_or(0, str::len);
            let half = 0.5 * 0.1_f64.powi(i32::try_from(places).expect("few"));
            let off = (number(back) - number(gravity)).abs();
            prop_assert!(off <= half + 1e-9, "{written:?} is off by {off}");
            prop_assert_eq!(write_gravity(back), written.clone());
        }
    }

    #[test]
    fn no_text_stops_the_reading(text in prop_oneof![any::<String>(), near_numbers()]) {
        for unit in GravityUnit::ALL {
            let _ = read_gravity(&text, unit);
        }
    }

    #[test]
    fn one_scale_and_back_is_where_it_was(
        plato in -5.0..40.0, reference in prop::sample::select(vec![15.0, 15.56, 17.5, 20.0]),
    ) {
        let extract = Plato::literal(plato);
        let back = sucrose::plato(sucrose::specific_gravity(extract));
        prop_assert!(close(back.value(), plato, 1e-9), "{} {plato}", back.value());
        prop_assert!(close(sucrose::as_plato(Gravity::Specific(sucrose::specific_gravity(extract))).value(), plato, 1e-9));
        // The gravity at another reference, worked out here from the densities as weights in air.
        let sg = (density(plato, reference) - 1.2) / (density(0.0, reference) - 1.2);
        let found = sucrose::plato_at(SpecificGravity::literal(sg), Celsius::literal(reference));
        prop_assert!(close(found.expect("in range").value(), plato, 1e-9));
    }

    #[test]
    fn more_sugar_is_heavier_and_more_alcohol_lighter(
        plato in -5.0..39.0, more in 1e-4..1.0, t in 0.0..80.0,
    ) {
        prop_assert!(density(plato + more, t) > density(plato, t));
        let t = Celsius::literal(t / 2.0);
        let alcohol = |p| ethanol::density(AlcoholByMass::literal(p), t).expect("in range").value();
        let (less, more) = ((plato + 5.0) * 2.0, (plato + 5.0) * 2.0 + more);
        prop_assert!(alcohol(more) < alcohol(less), "{less} {more}");
    }

    #[test]
    fn water_is_the_thin_end_of_both(t in 0.0..40.0) {
        let at = Celsius::literal(t);
        let water = water::density(at).expect("in range").value();
        prop_assert!(close(density(0.0, t), water, 1e-9));
        let ethanol = ethanol::density(AlcoholByMass::literal(0.0), at).expect("in range").value();
        prop_assert!(close(ethanol, water, 0.02));
    }
}
