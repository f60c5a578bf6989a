//! Heat, blending and yeast.

use super::table::{Found, Row};
use fermentside::quantity::{Celsius, Grams, Litres, Measured, Plato};
use fermentside::science::heat::{
    OF_FERMENTATION_KJ_PER_G, OF_MELTING_KJ_PER_KG, Part, blend, heat_capacity,
};
use fermentside::science::yeast::{DryYeast, Pitching, dry_yeast};
use fermentside::science::{Amount, Term, water};

/// Heats of fermentation, melting and warming.
pub fn heat(row: &Row) -> Vec<Found> {
    let capacity = |extract: f64, t: f64| {
        heat_capacity(Plato::literal(extract), Celsius::literal(t)).expect("in range").value()
    };
    let quantity = row.text("quantity");
    // A name such as cp_water_60C carries the temperature, cp_sucrose_solution_10pct_20C the strength.
    let number_before = |unit: &str| -> Option<f64> {
        quantity.split('_').find_map(|word| word.strip_suffix(unit)?.parse().ok())
    };
    let found = if quantity.starts_with("heat_of_fermentation_kJ_per_g") {
        OF_FERMENTATION_KJ_PER_G
    } else if quantity == "latent_heat_of_ice_kJ_per_kg" {
        OF_MELTING_KJ_PER_KG
    } else if quantity.starts_with("cp_water_") {
        capacity(0.0, number_before("C").expect("a temperature"))
    } else if quantity.starts_with("cp_sucrose_solution_") {
        capacity(
            number_before("pct").expect("a strength"),
            number_before("C").expect("a temperature"),
        )
    } else if quantity == "cp_beer_kJ_kgK" {
        // Beer keeps about 4.5 °P of real extract (common practice, no source).
        capacity(4.5, 20.0)
    } else {
        return vec![Found::nothing()];
    };
    vec![Found::within_own(row, found, row.number("value"))]
}

/// Water, hot and cold, and ice: by mass, so each volume is that mass at its own density.
pub fn mixing(row: &Row) -> Vec<Found> {
    let part = |mass: &str, t: &str| {
        let temperature = Celsius::literal(row.number(t));
        let rho = water::density(temperature).expect("in range").value();
        let volume = Litres::literal(1000.0 * row.number(mass) / rho);
        Part { volume, extract: Plato::literal(0.0), temperature }
    };
    let parts = [part("hot_kg", "hot_C"), part("cold_kg", "cold_C")];
    let ice = Grams::literal(1000.0 * row.number("ice_kg"));
    let found = blend(&parts, ice).expect("in range").temperature.value().value();
    vec![Found::within_own(row, found, row.number("final_C"))]
}

fn for_a_hectolitre(pitching: Pitching) -> DryYeast {
    dry_yeast(pitching, Litres::literal(100.0), Plato::literal(12.0)).expect("in range")
}

/// Cells that so much yeast is reckoned at.
fn cells(found: &DryYeast) -> f64 {
    let step = found.worked.steps.iter().find(|step| step.term == Term::YeastCells);
    match step.expect("the cells").amount {
        Amount::Number(thousand_million, _, _) => thousand_million * 1e9,
        other => panic!("cells are {other:?}"),
    }
}

/// Makers' doses and the customary cells.
pub fn yeast(row: &Row) -> Vec<Found> {
    let (warm, cold) = (for_a_hectolitre(Pitching::Warm), for_a_hectolitre(Pitching::Cold));
    let million_per_ml_and_plato = |found: &DryYeast| cells(found) / 1e6 / 100_000.0 / 12.0;
    let found = match row.text("quantity") {
        "pitch_rate_ale_million_per_mL_P" => million_per_ml_and_plato(&warm),
        "pitch_rate_lager_million_per_mL_P" => million_per_ml_and_plato(&cold),
        "maker_minimum_1e9_per_g" => cells(&warm) / 1e9 / warm.by_cells.to.value(),
        "maker_dose_ale_g_per_hL_low" => warm.by_maker.from.value(),
        "maker_dose_ale_g_per_hL_high" => warm.by_maker.to.value(),
        "maker_dose_lager_g_per_hL_low" => cold.by_maker.from.value(),
        "maker_dose_lager_g_per_hL_high" => cold.by_maker.to.value(),
        _ => return vec![Found::nothing()],
    };
    vec![Found::same(found, row.number("value"))]
}
