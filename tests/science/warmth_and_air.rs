//! Laws of the beer's own warmth and gas, and of the air it takes up.

use crate::support::{cases, close};
use fermentside::quantity::{Celsius, Litres, Measured, Metres, Plato, SpecificGravity};
use fermentside::science::oxygen::in_wort;
use fermentside::science::self_heating::{FermentingBeer, SelfHeating, Vessel, self_heating};
use fermentside::science::yeast::Pitching;
use proptest::prelude::*;

fn pitching() -> impl Strategy<Value = Pitching> {
    prop::sample::select(vec![Pitching::Warm, Pitching::Cold])
}

fn vessel() -> impl Strategy<Value = Vessel> {
    prop::sample::select(Vessel::ALL.to_vec())
}

fn found(
    litres: f64,
    og: f64,
    end: f64,
    pitching: Pitching,
    vessel: Vessel,
    room: f64,
) -> SelfHeating {
    self_heating(FermentingBeer {
        volume: Litres::literal(litres),
        original: SpecificGravity::literal(og),
        end: SpecificGravity::literal(end),
        pitching,
        vessel,
        room: Celsius::literal(room),
    })
    .expect("in range")
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn beer_is_never_colder_than_its_room_and_stronger_is_warmer(
        litres in 1.0..60.0, end in 1.0..1.02, fall in 0.005..0.08, more in 0.001..0.02,
        pitching in pitching(), vessel in vessel(), room in 0.0..35.0,
    ) {
        let usual = found(litres, end + fall, end, pitching, vessel, room);
        let stronger = found(litres, end + fall + more, end, pitching, vessel, room);
        prop_assert!(stronger.rise.value() > usual.rise.value());
        prop_assert!(stronger.gas > usual.gas && usual.gas_in_busiest_day < usual.gas);
        prop_assert!(usual.rise.value() <= usual.rise_at_most);
        for day in &usual.days {
            prop_assert!(day.from.value() >= room);
            prop_assert!(day.from <= day.likely && day.likely <= day.to);
            let most = room + usual.rise_at_most.value();
            prop_assert!(day.to.value() <= most + 1e-9);
        }
        // Gas goes with the volume, warmth by less.
        let twice = found(2.0 * litres, end + fall, end, pitching, vessel, room);
        prop_assert!(close(twice.gas.value(), 2.0 * usual.gas.value(), 1e-6 * twice.gas.value()));
        let times = twice.rise.value().value() / usual.rise.value().value();
        prop_assert!((1.0 - 1e-9..=2f64.powf(1.0 / 3.0) + 1e-9).contains(&times));
        // Never more than all the heat at once: 0.65 kJ/g in at least 3.4 kJ/(kg K).
        let at_once = usual.extract.value() * 0.65 / (litres * 3.4);
        prop_assert!(usual.rise_at_most.value() < at_once);
    }

    #[test]
    fn warm_strong_and_high_wort_takes_less_air(
        t in 0.0..39.0, warmer in 0.1..1.0, plato in 0.0..30.0, more in 0.1..10.0,
        height in 0.0..4000.0, higher in 1.0..1000.0,
    ) {
        let at = |t, plato, height| {
            let found =
                in_wort(Celsius::literal(t), Plato::literal(plato), Metres::literal(height));
            found.expect("in range")
        };
        let full = |t, plato, height| at(t, plato, height).full.value();
        let usual = full(t, plato, height);
        prop_assert!(full(t + warmer, plato, height) < usual);
        prop_assert!(full(t, plato + more, height) < usual);
        prop_assert!(full(t, plato, height + higher) < usual);
        let air = at(t, plato, height);
        prop_assert!(close(air.shaken_from.value(), 0.5 * air.shaken_to.value(), 1e-12));
        prop_assert_eq!(air.shaken_to, air.full.value());
    }
}
