//! The field for a gravity, which keeps the scale it was typed on.

use super::{Field, Own, Stepping, Table, Typed, demanded, field, if_any};
use crate::page::parts::field::Face;
use crate::page::words;
use crate::quantity::{
    Gravity, GravityUnit, Measured, Plato, ReadError, SpecificGravity, read_gravity, write_gravity,
    write_number,
};
use leptos::prelude::*;

/// What a gravity field yields, on the scale it was typed on. Followed where it is read.
#[derive(Clone, Copy)]
pub struct ReadGravity(Signal<Typed>);

impl ReadGravity {
    /// The gravity now, or why there is none.
    pub fn get(self) -> Result<Gravity, ReadError> {
        self.0.get().map(gravity_of)
    }
}

/// A gravity field and what it yields, on the scale it was typed on.
#[derive(Clone)]
pub struct AskedGravity {
    /// The gravity, or why there is none.
    pub value: ReadGravity,
    /// What the view needs.
    pub face: Face,
}

impl AskedGravity {
    /// The gravity; otherwise the field shows its error, emptiness included.
    pub fn demand(&self) -> Option<Gravity> {
        demanded(untrack(|| self.value.get()), &self.face)
    }

    /// The gravity, nothing when the field is empty, or `Err` when what is there cannot be read.
    pub fn optional(&self) -> Result<Option<Gravity>, ()> {
        if_any(untrack(|| self.value.get()), &self.face)
    }
}

/// A gravity to be asked.
pub struct AskGravity {
    /// Draft and document name.
    pub key: &'static str,
    /// What is asked.
    pub label: &'static str,
    /// Help; may be empty.
    pub hint: &'static str,
    /// The brewer's usual scale.
    pub unit: GravityUnit,
    /// What is written there at first.
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
    (typed.trim() != write(own)).then(|| words::understood(&write_gravity(gravity)))
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
pub fn ask_gravity(scope: &str, ask: AskGravity) -> AskedGravity {
    let AskGravity { key, label, hint, unit, first, start } = ask;
    let (value, face) = field(Field {
        key: format!("{scope}{key}"),
        label,
        hint,
        usual: usize::from(unit != SCALES[0]),
        table: Table::Gravity,
        first: first.map(own_of),
        stepping: Stepping { limits: (0.0, 0.0), steps: vec![], start: start.value() },
    });
    AskedGravity { value: ReadGravity(value), face }
}

/// A gravity on the other scale, when the brewer chooses it.
fn on_scale(gravity: Gravity, unit: GravityUnit) -> Gravity {
    match (unit, gravity) {
        (GravityUnit::SpecificGravity, Gravity::Plato(plato)) => {
            Gravity::Specific(crate::science::sucrose::specific_gravity(plato))
        }
        (GravityUnit::Plato, Gravity::Specific(sg)) => {
            Gravity::Plato(crate::science::sucrose::plato(sg))
        }
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
pub fn bare_gravity(gravity: Gravity) -> String {
    match gravity {
        Gravity::Specific(_) => write_gravity(gravity),
        Gravity::Plato(plato) => write_number(plato.value(), 1),
    }
}
