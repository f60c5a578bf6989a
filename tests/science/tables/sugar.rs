//! Sugar: what it weighs, and the gas and alcohol it gives.

use super::table::{Found, Row};
use fermentside::quantity::{
    AlcoholByMass, CarbonDioxideVolumes, Estimate, Extract, Litres, Measured, Plato,
};
use fermentside::science::carbon_dioxide::GRAMS_PER_VOLUME;
use fermentside::science::priming::{
    self, GLUCOSE_YIELD, MONOHYDRATE_WATER, Priming, SUCROSE_YIELD, Sugar,
};
use fermentside::science::strength;

/// g/mol (IUPAC): the known gas by which the science's yields give back the mass of the sugar.
const CARBON_DIOXIDE: f64 = 44.009;
const WATER: f64 = 18.015;

/// IUPAC masses and Balling's balance.
pub fn stoichiometry(row: &Row) -> Vec<Found> {
    let full = |sugar: Sugar| sugar.full_yield().value().value();
    let found = match row.text("quantity") {
        "molar_mass_glucose_g_mol" => 2.0 * CARBON_DIOXIDE / GLUCOSE_YIELD.value(),
        "molar_mass_sucrose_g_mol" => 4.0 * CARBON_DIOXIDE / SUCROSE_YIELD.value(),
        "molar_mass_dextrose_monohydrate_g_mol" => WATER / MONOHYDRATE_WATER.value(),
        "water_fraction_dextrose_monohydrate" => MONOHYDRATE_WATER.value(),
        "glucose_to_co2_g_per_g" => full(Sugar::GlucoseAnhydrous),
        "dextrose_monohydrate_to_co2_g_per_g" => full(Sugar::DextroseMonohydrate),
        "sucrose_to_co2_g_per_g" => full(Sugar::Sucrose),
        "co2_density_stp_g_L_real" => GRAMS_PER_VOLUME,
        "glucose_g_L_per_volume_stp" => GRAMS_PER_VOLUME / full(Sugar::GlucoseAnhydrous),
        "sucrose_g_L_per_volume_stp" => GRAMS_PER_VOLUME / full(Sugar::Sucrose),
        "balling_alcohol_per_g_extract" => {
            // So little alcohol that the balance is a straight line.
            let alcohol = AlcoholByMass::literal(1e-6);
            let extract = strength::original_extract(alcohol, Plato::literal(0.0));
            1e-6 / extract.expect("in range").value()
        }
        "balling_extract_g_L_per_volume_stp" => {
            10.0 / priming::from_extract(Extract::literal(10.0)).value()
        }
        _ => return vec![Found::nothing()],
    };
    vec![Found::within_own(row, found, row.number("value"))]
}

/// Doses that others print, for gas to be added to beer that holds none.
pub fn priming(row: &Row) -> Vec<Found> {
    let sugar = match row.text("sugar") {
        "sucrose" => Sugar::Sucrose,
        "glucose_anhydrous" => Sugar::GlucoseAnhydrous,
        "dextrose_monohydrate" => Sugar::DextroseMonohydrate,
        other => panic!("no such sugar: {other}"),
    };
    // Draper's volume is a litre of gas near 25 °C, which is less gas than one at 0 °C.
    let definition = if row.text("source") == "DRAPER" { 273.15 / 298.15 } else { 1.0 };
    let priming = Priming {
        target: CarbonDioxideVolumes::literal(row.number("added_volumes") * definition),
        already_in: Estimate::exact(CarbonDioxideVolumes::literal(0.0)),
        beer: Estimate::exact(Litres::literal(row.number("beer_L"))),
        sugar,
    };
    let dose = priming::dose(priming).expect("in range").sugar.value().value();
    vec![Found::within_own(row, dose, row.number("sugar_g"))]
}
