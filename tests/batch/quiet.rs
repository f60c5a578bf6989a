//! What the log says of the beer since it went quiet.

use crate::support::{day, reading, summary, with_readings};
use fermentside::batch::{Quiet, Reading, Vessel, quiet};
use fermentside::quantity::{Celsius, Measured};

/// Day, gravity and temperature of the beer.
fn at((days, sg, beer): (f64, f64, f64)) -> Reading {
    Reading { beer: Some(Celsius::literal(beer)), ..reading(days, sg) }
}

fn of(readings: &[(f64, f64, f64)], more: Vec<Reading>) -> Option<Quiet> {
    let journal = with_readings(readings.iter().copied().map(at).chain(more));
    quiet(&summary(&journal).lines)
}

#[test]
fn the_hot_first_days_do_not_count() {
    let found = of(
        &[(0.0, 1.050, 24.0), (3.0, 1.020, 23.0), (8.0, 1.0105, 20.0), (11.0, 1.010, 19.0)],
        vec![],
    );
    let found = found.expect("a gravity");
    assert_eq!(found.since, day(8.0));
    assert_eq!(found.warmest.map(Measured::value), Some(20.0));
    assert_eq!(found.warm_for.map(Measured::value), Some(72.0));
}

/// The trap: three late readings, the last two in the cold.
#[test]
fn a_chilled_beer_keeps_the_warmth_it_had_when_it_went_quiet() {
    let readings =
        [(9.0, 1.010, 20.5), (10.0, 1.010, 20.0), (12.0, 1.010, 8.0), (13.0, 1.010, 2.0)];
    let found = of(&readings, vec![]).expect("a gravity");
    assert_eq!(found.warmest.map(Measured::value), Some(20.5));
    assert_eq!(found.coldest.map(Measured::value), Some(2.0));
    assert_eq!(found.warm_for.map(Measured::value), Some(24.0));
}

/// A beer that still fell before its last, cold reading is not known to have been cold all along.
#[test]
fn one_cold_reading_is_no_history() {
    let found = of(&[(9.0, 1.014, 20.0), (13.0, 1.010, 2.0)], vec![]).expect("a gravity");
    assert_eq!((found.warmest, found.coldest, found.warm_for), (None, None, None));
}

#[test]
fn a_temperature_without_a_gravity_counts_and_the_satellite_does_not() {
    let only_warm = Reading { as_read: None, ..at((11.5, 1.010, 22.0)) };
    let satellite = Reading { vessel: Vessel::Satellite, ..at((12.0, 1.010, 28.0)) };
    let found = of(&[(9.0, 1.010, 19.0), (12.0, 1.010, 19.0)], vec![only_warm, satellite]);
    let found = found.expect("a gravity");
    assert_eq!(found.warmest.map(Measured::value), Some(22.0));
    assert_eq!(found.warm_for, None);
    assert_eq!(of(&[], vec![]), None);
}
