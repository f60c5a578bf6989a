//! The field for a gravity, which keeps the scale it was typed on.

use super::{Asked, Field, Own, Stepping, Table, Typed, field};
use crate::app::model::Model;
use crate::quantity::{
    Gravity, GravityUnit, Measured, Plato, SpecificGravity, read_gravity, write_gravity,
    write_number,
};
use crate::science::sucrose;

/// A gravity field and what it yields, on the scale it was typed on.
pub type AskedGravity = Asked<Gravity>;

/// A gravity to be asked.
pub struct AskGravity {
    /// Draft and document name.
    pub name: String,
    /// What is asked.
    pub label: &'static str,
    /// Help; may be empty.
    pub hint: &'static str,
    /// The brewer's usual scale.
    pub unit: GravityUnit,
    /// What it was given.
    pub first: Option<Gravity>,
    /// Where the buttons start when nothing is written.
    pub start: SpecificGravity,
}

/// The scales in the order offered.
const SCALES: [GravityUnit; 2] = GravityUnit::ALL;

fn own_of(gravity: Gravity) -> Own {
    let number = match gravity {
        Gravity::Specific(sg) => sg.value(),
        Gravity::Plato(plato) => plato.value(),
    };
    Own { number, scale: usize::from(gravity.unit() != SCALES[0]) }
}

fn gravity_of(own: Own) -> Gravity {
    match scale(own.scale) {
        GravityUnit::SpecificGravity => Gravity::Specific(SpecificGravity::nearest(own.number)),
        GravityUnit::Plato => Gravity::Plato(Plato::nearest(own.number)),
    }
}

fn scale(index: usize) -> GravityUnit {
    SCALES.get(index).copied().unwrap_or(SCALES[0])
}

pub(super) fn symbols() -> Vec<&'static str> {
    SCALES.iter().map(|unit| unit.symbol()).collect()
}

pub(super) fn read(text: &str, unit: usize) -> Typed {
    read_gravity(text, scale(unit)).map(own_of)
}

pub(super) fn write(own: Own) -> String {
    bare_gravity(gravity_of(own))
}

pub(super) fn explain(own: Own, typed: &str) -> Option<String> {
    let gravity = gravity_of(own);
    (typed.trim() != write(own)).then(|| write_gravity(gravity))
}

pub(super) fn turn(own: Own, unit: usize) -> Own {
    own_of(on_scale(gravity_of(own), scale(unit)))
}

pub(super) fn step(own: Option<Own>, direction: f64, unit: usize, start: f64) -> Own {
    let start = Gravity::Specific(SpecificGravity::nearest(start));
    own_of(match own {
        Some(own) => stepped(on_scale(gravity_of(own), scale(unit)), direction),
        None => on_scale(start, scale(unit)),
    })
}

/// Makes a gravity field; the value keeps the scale it was typed on.
pub fn ask_gravity(m: &Model, ask: AskGravity) -> AskedGravity {
    let AskGravity { name, label, hint, unit, first, start } = ask;
    // What was given stays on its own scale, whatever scale is usual.
    let usual = first.map_or(unit, Gravity::unit);
    let (value, part) = field(
        m,
        Field {
            name,
            label,
            hint,
            usual: usize::from(usual != SCALES[0]),
            table: Table::Gravity,
            first: first.map(own_of),
            stepping: Stepping { limits: (0.0, 0.0), steps: vec![], start: start.value() },
        },
    );
    Asked { value: value.map(gravity_of), part }
}

/// A gravity on the other scale, when the brewer chooses it.
fn on_scale(gravity: Gravity, unit: GravityUnit) -> Gravity {
    match (unit, gravity) {
        (GravityUnit::SpecificGravity, Gravity::Plato(plato)) => {
            Gravity::Specific(sucrose::specific_gravity(plato))
        }
        (GravityUnit::Plato, Gravity::Specific(sg)) => Gravity::Plato(sucrose::plato(sg)),
        _ => gravity,
    }
}

fn stepped(gravity: Gravity, by: f64) -> Gravity {
    match gravity {
        Gravity::Specific(sg) => {
            let thousandths = ((sg.value() * 1000.0 + by).clamp(980.0, 1180.0) * 10.0).round();
            Gravity::Specific(SpecificGravity::nearest(thousandths / 10_000.0))
        }
        Gravity::Plato(plato) => {
            let tenths = ((plato.value() + 0.1 * by).clamp(-5.0, 40.0) * 10.0).round();
            Gravity::Plato(Plato::nearest(tenths / 10.0))
        }
    }
}

/// A gravity as its field shows it: without the scale's symbol.
fn bare_gravity(gravity: Gravity) -> String {
    match gravity {
        Gravity::Specific(_) => write_gravity(gravity),
        Gravity::Plato(plato) => write_number(plato.value(), 1),
    }
}
