//! Densities: water, sugar in water, ethanol in water.

use super::table::{Found, Row};
use fermentside::quantity::{AlcoholByMass, Celsius, Measured, Plato, SpecificGravity};
use fermentside::science::{ethanol, sucrose, water};

/// IAPWS-95 and the CIPM formula (Tanaka 2001).
pub fn water(row: &Row) -> Vec<Found> {
    let found = water::density(Celsius::literal(row.number("t_C"))).expect("in range");
    vec![Found::within_own(row, found.value(), row.number("rho_kg_m3"))]
}

/// ICUMSA SPS-4.
pub fn sucrose(row: &Row) -> Vec<Found> {
    let (extract, t) = (row.number("mass_pct"), row.number("t_C"));
    let found = sucrose::density(Plato::literal(extract), Celsius::literal(t)).expect("in range");
    vec![Found::within_own(row, found.value(), row.number("rho_kg_m3"))]
}

/// NBS C440 and ICUMSA, weights in air.
pub fn gravity_of_brix(row: &Row) -> Vec<Found> {
    let found = sucrose::specific_gravity(Plato::literal(row.number("brix_pct")));
    vec![Found::within_own(row, found.value(), row.number("sg_20_20_apparent"))]
}

/// Chen, from NBS C440: pounds by weight in air, with the usual brass weights of 8000 kg/m³.
pub fn pounds_a_gallon(row: &Row) -> Vec<Found> {
    let extract = Plato::literal(row.number("brix_pct"));
    let rho = sucrose::density(extract, Celsius::literal(20.0)).expect("in range").value();
    let in_air = (rho - 1.2) / (1.0 - 1.2 / 8000.0);
    let pounds = in_air * 0.003_785_411_784 / 0.453_592_37;
    vec![Found::within_own(row, pounds, row.number("lb_per_us_gal_in_air_20C"))]
}

/// The old German table, 15/15 °C. Its gravities are taken as true densities and not as weights in air
/// like the others. This is our inference: so read it misses by at most 0.017, else by 0.022.
pub fn extract_of_gravity_15(row: &Row) -> Vec<Found> {
    let at = Celsius::literal(15.0);
    let water = water::density(at).expect("in range").value();
    let in_air = (row.number("sg_15_15") * water - 1.2) / (water - 1.2);
    let gravity = SpecificGravity::literal(in_air);
    let plato = sucrose::plato_at(gravity, at).expect("in range");
    let grams_a_litre = sucrose::extract_per_litre(plato, at).expect("in range").value();
    vec![Found::within_own(row, grams_a_litre / 10.0, row.number("extract_g_per_100mL_15C"))]
}

/// OIML R 22, and pure ethanol by a general library.
pub fn ethanol_in_water(row: &Row) -> Vec<Found> {
    let alcohol = by_mass(row.number("abv_20C_pct"));
    let found = ethanol::density(alcohol, Celsius::literal(row.number("t_C"))).expect("in range");
    vec![Found::within_own(row, found.value(), row.number("rho_kg_m3"))]
}

/// The mass share that comes to a given share by volume; pure is pure.
fn by_mass(by_volume: f64) -> AlcoholByMass {
    if by_volume >= 100.0 {
        return AlcoholByMass::literal(100.0);
    }
    let (mut low, mut high) = (0.0, 20.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        let found = ethanol::by_volume_in_water(AlcoholByMass::literal(middle)).expect("in range");
        if found.value() < by_volume { low = middle } else { high = middle }
    }
    AlcoholByMass::literal(low)
}

/// OIML R 22 at 20 °C.
pub fn alcohol_by_volume(row: &Row) -> Vec<Found> {
    let alcohol = AlcoholByMass::literal(row.number("abw_pct"));
    let found = ethanol::by_volume_in_water(alcohol).expect("in range");
    vec![Found::within_own(row, found.value(), row.number("abv_20C_pct"))]
}
