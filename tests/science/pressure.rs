//! Laws of the closed bottle.

use crate::support::cases;
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, GravityChange, Kilopascals, Measured, Metres, Share,
};
use fermentside::science::bottle_pressure::{Closing, End, from_points, in_bottle};
use fermentside::science::carbon_dioxide::dissolved_in_beer;
use fermentside::science::water;
use proptest::prelude::*;

const ENDS: [End; 2] = [End::Best, End::High];

fn closing(headspace: f64, filled_at: f64, height: f64) -> Closing {
    Closing {
        headspace: Share::literal(headspace),
        filled_at: Celsius::literal(filled_at),
        height: Metres::literal(height),
    }
}

fn gauge(volumes: f64, t: f64, closing: Closing, end: End) -> f64 {
    let total = CarbonDioxideVolumes::literal(volumes);
    in_bottle(total, Celsius::literal(t), closing, end).expect("in range").gauge.value()
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn more_gas_and_more_warmth_press_harder(
        volumes in 2.0..7.0, t in 0.0..44.0, more in 1e-3..1.0,
        headspace in 0.0..0.3, filled_at in 0.0..30.0, height in 0.0..3000.0,
    ) {
        let closing = closing(headspace, filled_at, height);
        for end in ENDS {
            let usual = gauge(volumes, t, closing, end);
            prop_assert!(usual > 0.0);
            prop_assert!(gauge(volumes + more, t, closing, end) > usual);
            prop_assert!(gauge(volumes, t + more, closing, end) > usual);
        }
        prop_assert!(gauge(volumes, t, closing, End::High) > gauge(volumes, t, closing, End::Best));
    }

    #[test]
    fn the_air_shut_in_is_less_when_filled_warm(
        volumes in 2.0..7.0, t in 0.0..45.0, headspace in 0.01..0.3,
        filled_at in 0.0..44.0, warmer in 1e-3..1.0,
    ) {
        let usual = gauge(volumes, t, closing(headspace, filled_at, 0.0), End::Best);
        let warm = gauge(volumes, t, closing(headspace, filled_at + warmer, 0.0), End::Best);
        prop_assert!(warm < usual);
    }

    #[test]
    fn a_full_bottle_agrees_with_what_beer_dissolves(volumes in 2.0..7.0, t in 0.0..45.0) {
        let full = closing(0.0, 20.0, 0.0);
        let vapour = water::vapour_pressure(Celsius::literal(t)).value();
        let partial = gauge(volumes, t, full, End::Best) + 101.325 - vapour;
        let held = dissolved_in_beer(Celsius::literal(t), Kilopascals::literal(partial));
        prop_assert!((held.expect("in range").value().value() - volumes).abs() < 1e-6);
    }

    #[test]
    fn nothing_stops_it(volumes in 0.0..60.0, t in -40.0..130.0, filled_at in -40.0..130.0,
        headspace in 0.0..1.0, height in -450.0..6000.0) {
        let total = CarbonDioxideVolumes::literal(volumes);
        let closing = closing(headspace, filled_at, height);
        for end in ENDS {
            if let Ok(found) = in_bottle(total, Celsius::literal(t), closing, end) {
                prop_assert!(found.gauge.value().is_finite());
            }
        }
    }

    #[test]
    fn points_that_have_gone_give_nothing(points in -50.0..50.0) {
        let found = from_points(GravityChange::literal(points / 1000.0)).value();
        prop_assert_eq!(found > 0.0, points > 0.0);
    }
}
