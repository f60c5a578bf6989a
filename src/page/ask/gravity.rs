//! The field for a gravity, which keeps the scale it was typed on.

use super::{error_words, if_any, plain_id};
use crate::page::drafts::use_drafts;
use crate::page::parts::field::Face;
use crate::page::words;
use crate::quantity::{
    Gravity, GravityUnit, Measured, Plato, ReadError, SpecificGravity, read_gravity, write_gravity,
    write_number,
};
use leptos::prelude::*;

/// A gravity field and what it yields, on the scale it was typed on.
#[derive(Clone)]
pub struct AskedGravity {
    /// The gravity, or why there is none.
    pub value: Signal<Result<Gravity, ReadError>>,
    /// What the view needs.
    pub face: Face,
}

impl AskedGravity {
    /// The gravity, nothing when the field is empty, or `Err` when what is there cannot be read.
    pub fn optional(&self) -> Result<Option<Gravity>, ()> {
        if_any(self.value.get_untracked(), &self.face)
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

/// Makes a gravity field; the value keeps the scale it was typed on.
pub fn ask_gravity(scope: &str, ask: AskGravity) -> AskedGravity {
    let AskGravity { key, label, hint, unit, first, start } = ask;
    let drafts = use_drafts();
    let key = format!("{scope}{key}");
    let text = drafts.text(&key, &first.map(bare_gravity).unwrap_or_default());
    let unit_text = drafts.text(&format!("{key}/unit"), unit.symbol());
    let scale = move |symbol: &str| {
        GravityUnit::ALL.into_iter().find(|unit| unit.symbol() == symbol).unwrap_or(unit)
    };
    let value = Signal::derive(move || read_gravity(&text.get(), scale(&unit_text.get())));
    let understood = move || {
        let gravity = value.get().ok()?;
        (text.get().trim() != bare_gravity(gravity))
            .then(|| words::understood(&write_gravity(gravity)))
    };
    let on_unit = Callback::new(move |symbol: String| {
        let before = value.get_untracked();
        unit_text.set(symbol);
        if let Ok(gravity) = before {
            text.set(bare_gravity(on_scale(gravity, scale(&unit_text.get_untracked()))));
        }
    });
    let on_step = Callback::new(move |direction: i32| {
        let unit = scale(&unit_text.get_untracked());
        let by = f64::from(direction);
        let stepped = match value.get_untracked() {
            Ok(gravity) => stepped(on_scale(gravity, unit), by),
            Err(_) => on_scale(Gravity::Specific(start), unit),
        };
        text.set(bare_gravity(stepped));
    });
    let face = Face {
        id: plain_id(&key),
        label: label.to_owned(),
        hint: hint.to_owned(),
        text,
        left: RwSignal::new(false),
        demanded: RwSignal::new(false),
        error: Signal::derive(move || value.get().err().map(error_words)),
        understood: Signal::derive(understood),
        units: GravityUnit::ALL.iter().map(|unit| unit.symbol()).collect(),
        unit: Signal::derive(move || scale(&unit_text.get()).symbol()),
        on_unit,
        on_step,
    };
    AskedGravity { value, face }
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
