//! Carbon dioxide: in water, in beer and in a closed bottle.

use super::table::{Found, Row};
use fermentside::quantity::{CarbonDioxideVolumes, Celsius, Kilopascals, Measured, Share};
use fermentside::science::bottle_pressure::{self, Closing, End};
use fermentside::science::carbon_dioxide::{
    GRAMS_PER_VOLUME, dissolved_in_beer, dissolved_in_water,
};
use fermentside::science::{air, water};

/// g/mol (IUPAC).
const CARBON_DIOXIDE: f64 = 44.009;
const WATER: f64 = 18.015;

fn volumes(t: Celsius, partial: f64) -> f64 {
    dissolved_in_water(t, Kilopascals::literal(partial)).expect("in range").value()
}

/// Moles of gas for each mole of gas and water together.
fn mole_fraction(t: Celsius, partial: f64) -> f64 {
    let gas = volumes(t, partial) * GRAMS_PER_VOLUME / CARBON_DIOXIDE;
    let water = water::density(t).expect("in range").value() / WATER;
    gas / (gas + water)
}

/// Several observers, each in a unit of their own.
pub fn in_water(row: &Row) -> Vec<Found> {
    let t = Celsius::literal(row.number("t_C"));
    let found = match row.text("quantity") {
        "bunsen_vol_per_vol" => volumes(t, row.number("p_kPa")),
        "ostwald_vol_per_vol" => volumes(t, row.number("p_kPa")) * t.kelvin() / 273.15,
        "1000_x_mole_fraction" => 1000.0 * mole_fraction(t, row.number("p_kPa")),
        "mol_per_L" => volumes(t, row.number("p_kPa")) * GRAMS_PER_VOLUME / CARBON_DIOXIDE,
        "g_per_100g_water" => {
            // The total pressure is given; the vapour takes its part.
            let partial = row.number("p_kPa") - water::vapour_pressure(t).value();
            let grams_a_litre = volumes(t, partial) * GRAMS_PER_VOLUME;
            100.0 * grams_a_litre / water::density(t).expect("in range").value()
        }
        "henry_MPa_mole_fraction" => {
            // Henry's constant is the slope at no pressure: 1 kPa is near enough to none.
            0.001 / mole_fraction(t, 1.0)
        }
        other => panic!("no such quantity: {other}"),
    };
    vec![Found::within_own(row, found, row.number("value"))]
}

/// What stays at 1 atm of gas and vapour together. The home lists and Weiss's own formula are values
/// of pure water; the fit to the ASBC chart is beer.
pub fn left_in_beer(row: &Row) -> Vec<Found> {
    let t = Celsius::literal(row.number("t_C"));
    let partial = air::SEA_LEVEL.value() - water::vapour_pressure(t).value();
    let found = match row.text("source") {
        "ASBCFIT" => {
            dissolved_in_beer(t, Kilopascals::literal(partial)).expect("in range").value().value()
        }
        _ => volumes(t, partial),
    };
    vec![Found::within_own(row, found, row.number("volumes"))]
}

fn gauge_bar(volumes: f64, t: f64, headspace: f64) -> f64 {
    let closing = Closing { headspace: Share::literal(headspace), ..Closing::USUAL };
    let total = CarbonDioxideVolumes::literal(volumes);
    let found = bottle_pressure::in_bottle(total, Celsius::literal(t), closing, End::Best);
    found.expect("in range").gauge.value() / 100.0
}

/// A bottle full to the brim, with no air. The tolerance is of the absolute pressure, so that is what
/// is compared: over the outside, a small pressure is a small difference of two large ones.
pub fn in_bottle(row: &Row) -> Vec<Found> {
    let gauge = gauge_bar(row.number("volumes"), row.number("t_C"), 0.0);
    let outside = row.number("p_abs_bar") - row.number("p_gauge_bar");
    vec![Found::within_own(row, gauge + outside, row.number("p_abs_bar"))]
}

/// Figures for bottles against the ceilings in volumes that are in use here: 2.5 is where a bottle of
/// unknown make is warned of, 2.8, 3.3 and 4.0 are the ceilings of the kinds.
pub fn bottles(row: &Row) -> Vec<Found> {
    const CEILINGS: [f64; 4] = [2.5, 2.8, 3.3, 4.0];
    let known = row.number("value");
    // At most: how far the highest figure of ours reaches above the published one.
    let at_most = |highest: f64| {
        let over = (highest - known).max(0.0);
        vec![Found { found: Some(over), known: 0.0, within: 0.0 }]
    };
    let highest = |headspace| {
        let at_20 = CEILINGS.map(|volumes| gauge_bar(volumes, 20.0, headspace));
        at_most(at_20.into_iter().fold(0.0, f64::max))
    };
    match row.text("quantity") {
        // The pressure in the bottle: with the air that was shut in.
        "beer_bottle_internal_pressure_min_bar" => highest(0.04),
        // The pressure of the gas alone. With the air shut in, 4.0 volumes reach 4.76 bar.
        "soft_drink_bottle_carbonation_max_bar" => highest(0.0),
        "soft_drink_bottle_max_volumes" => at_most(4.0),
        "cautious_homebrew_volumes_one_way" => vec![Found::same(2.5, known)],
        _ => vec![Found::nothing()],
    }
}
