//! Oxygen from air, in water and in wort.

use super::table::{Found, Row};
use fermentside::quantity::{Celsius, Kilopascals, Measured, Metres, Plato};
use fermentside::science::oxygen::{in_water, in_wort};

/// kPa in a millimetre of mercury.
const MERCURY: f64 = 101.325 / 760.0;

/// Water at any pressure; wort, which the table has only at the sea, at the sea.
pub fn from_air(row: &Row) -> Vec<Found> {
    let (t, plato) = (Celsius::literal(row.number("t_C")), row.number("plato"));
    let found = if plato > 0.0 {
        assert_eq!(row.number("pressure_mmHg"), 760.0, "wort is asked for at the sea");
        in_wort(t, Plato::literal(plato), Metres::literal(0.0)).expect("in range").full.value()
    } else {
        in_water(t, Kilopascals::literal(MERCURY * row.number("pressure_mmHg"))).expect("in range")
    };
    vec![Found::within_own(row, found.value(), row.number("do_mg_L"))]
}
