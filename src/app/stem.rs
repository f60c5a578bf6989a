//! A gravity field's drawing: the stem as it stands in the jar, to be set by looking.

use super::ask::AskedGravity;
use super::model::Model;
use super::part::{Part, Stem, What};
use crate::quantity::{Gravity, GravityUnit, Measured, SpecificGravity, write_number};
use crate::science::hydrometer::Hydrometer;
use crate::science::sucrose;

/// Degrees Plato between two lines of the drawing.
const PLATO_DIVISION: f64 = 0.5;

/// Draws and sets the same text that the field beside it holds. `rest` is where it stands until it is
/// set: the last reading.
pub fn stem(
    m: &Model,
    reading: &AskedGravity,
    corrected: Option<SpecificGravity>,
    instrument: &Hydrometer,
    rest: Option<SpecificGravity>,
) -> Part {
    let (field, shown) = (&reading.part.name, &reading.part.what);
    let (text, unit) = match shown {
        What::Number(number) => (number.text.as_str(), number.unit),
        _ => ("", ""),
    };
    let plato = unit == GravityUnit::Plato.symbol();
    let on_scale =
        |sg: SpecificGravity| if plato { sucrose::plato(sg).value() } else { sg.value() };
    let value = reading.ok().map(|gravity| match gravity {
        Gravity::Plato(own) if plato => own.value(),
        other => on_scale(sucrose::as_specific(other)),
    });
    let corrected = corrected.map(on_scale);
    let places = if plato { 1 } else { 3 };
    let words = &m.words.fields;
    let flag = corrected.map(|sg| (words.corrected)(&write_number(sg, places)));
    let stem = Stem {
        label: words.in_the_jar,
        field: field.clone(),
        value,
        rest: rest.map(on_scale),
        corrected,
        corrected_text: flag.unwrap_or_default(),
        value_text: text.to_owned(),
        plato,
        unit,
        division: if plato { PLATO_DIVISION } else { instrument.division.value() },
    };
    Part::new(format!("{field}/stem"), What::Stem(stem))
}

/// The text of a number that a stem was moved to.
pub fn stem_text(number: f64, plato: bool) -> String {
    write_number(number, if plato { 2 } else { 4 })
}
