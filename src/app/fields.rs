//! Fields that more than one screen asks for.

use super::ask::{Ask, Asked, Chosen, answer, ask, pick};
use super::model::Model;
use crate::batch::{HydrometerItem, Id};
use crate::quantity::{Bounds, Celsius, Litres, Measured, VolumeUnit};
use crate::science::hydrometer::Hydrometer;
use crate::science::hydrometer_sample::Condition;

/// Volumes a kitchen can hold.
pub const VOLUME: Bounds<Litres> = Bounds::new(Litres::literal(0.5), Litres::literal(1000.0));
/// Temperatures a sample can be corrected at.
pub const SAMPLE: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(60.0));

/// How the names of the fields of a new batch begin.
pub const NEW_BATCH: &str = "start/";

/// A temperature field in the brewer's unit.
pub fn temperature(
    m: &Model,
    name: String,
    (label, hint): (&'static str, &'static str),
    bounds: Bounds<Celsius>,
    first: Option<Celsius>,
    start: f64,
) -> Asked<Celsius> {
    let unit = m.units().temperature;
    let (step, start) = (|_| 0.5, Celsius::nearest(start));
    ask(m, Ask { name, label, hint, unit, bounds, step, first, start })
}

/// A volume field in the brewer's unit.
pub fn volume(
    m: &Model,
    name: String,
    (label, hint): (&'static str, &'static str),
    first: Option<Litres>,
) -> Asked<Litres> {
    let unit = m.units().volume;
    let step = |unit| if unit == VolumeUnit::Litres { 0.5 } else { 0.1 };
    let (bounds, start) = (VOLUME, Litres::literal(20.0));
    ask(m, Ask { name, label, hint, unit, bounds, step, first, start })
}

/// How a sample stood: still, unless it was given otherwise.
pub fn condition(m: &Model, name: &str, first: Option<Condition>) -> Chosen<Condition> {
    let label = (m.words.fields.the_sample, "");
    answer(m, name, label, m.words.names.condition, first.unwrap_or(Condition::Still))
}

/// The hydrometer used, of those in Gear: the instrument, its identity's field. One that was given stays
/// what it is when it is gone from Gear.
pub fn hydrometer(m: &Model, name: &str, first: Option<&Id>) -> (Hydrometer, Chosen<String>) {
    let mut all = m.journal.hydrometers();
    if let Some(gone) = first.filter(|first| !all.iter().any(|(id, _)| id == *first)) {
        let name = m.words.fields.hydrometer_gone.to_owned();
        all.push((gone.clone(), HydrometerItem { name, instrument: Hydrometer::USUAL }));
    }
    let options = all.iter().map(|(id, item)| (id.as_str().to_owned(), item.name.clone()));
    let label = (m.words.fields.hydrometer_used, "");
    let chosen = pick(m, name, label, options.collect(), first.map_or("", Id::as_str));
    let found = all.iter().find(|(id, _)| id.as_str() == chosen.value);
    (found.map_or(Hydrometer::USUAL, |(_, item)| item.instrument), chosen)
}
