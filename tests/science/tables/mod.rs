//! Published values against the science, every row within its own tolerance.
//!
//! The rows and their sources stand in `tests/reference`. Run with `--nocapture` to see, for each
//! table, how many rows were checked and the row that came nearest its tolerance.

mod density;
mod formulas;
mod gas;
mod heat;
mod hydrometer;
mod oxygen;
mod strength;
mod sugar;
mod table;
mod unmet;

use std::collections::BTreeSet;

/// One test a table, and the list that a forgotten table is missed by.
macro_rules! tables {
    ($($name:ident => $check:path),+ $(,)?) => {
        const CHECKED: &[&str] = &[$(stringify!($name)),+];
        $(#[test]
        #[allow(non_snake_case)]
        fn $name() {
            table::check(stringify!($name), $check);
        })+
    };
}

tables! {
    water_density => density::water,
    sucrose_density => density::sucrose,
    sg_brix_20C => density::gravity_of_brix,
    brix_lb_per_us_gal => density::pounds_a_gallon,
    sg15_extract_g_per_100mL => density::extract_of_gravity_15,
    ethanol_water_density => density::ethanol_in_water,
    abw_abv_ethanol_water => density::alcohol_by_volume,
    hydrometer_sg_correction => hydrometer::gravity,
    hydrometer_brix_correction_20C => hydrometer::brix,
    balling_saccharometer_correction_history => hydrometer::old_saccharometer,
    abv_examples => strength::duty_examples,
    abv_hmrc_factor => strength::duty_factors,
    balling_alcohol_factor => strength::alcohol_factors,
    balling_original_extract => strength::original_extract,
    co2_solubility_water => gas::in_water,
    co2_residual_beer_1atm => gas::left_in_beer,
    bottle_pressure => gas::in_bottle,
    bottles => gas::bottles,
    stoichiometry => sugar::stoichiometry,
    priming_examples => sugar::priming,
    heat => heat::heat,
    mixing_temperature => heat::mixing,
    yeast => heat::yeast,
    dissolved_oxygen => oxygen::from_air,
}

#[test]
fn every_table_in_the_folder_is_checked() {
    let found: BTreeSet<String> = std::fs::read_dir(table::folder())
        .expect("the folder of reference values")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "csv"))
        .map(|path| path.file_stem().expect("a name").to_string_lossy().into_owned())
        .collect();
    let checked: BTreeSet<String> = CHECKED.iter().map(|&name| name.to_owned()).collect();
    assert_eq!(found, checked);
}

#[test]
fn every_row_said_to_be_unmet_belongs_to_a_table() {
    for (id, reason) in unmet::UNMET {
        let table = id.rsplit_once('-').expect("a row's id").0;
        assert!(CHECKED.contains(&table), "{id}");
        assert!(reason.len() > 20, "{id} has no reason");
    }
}
