//! A gravity field's drawing: the stem as it stands in the jar, to be set by looking.

use super::ask::AskedGravity;
use super::parts::stem::Stem;
use crate::quantity::{Gravity, GravityUnit, Measured, SpecificGravity, write_number};
use crate::science::hydrometer::Hydrometer;
use crate::science::sucrose;
use leptos::prelude::*;

/// Degrees Plato between two lines of the drawing.
const PLATO_DIVISION: f64 = 0.5;

/// Draws and sets the same text that the field beside it holds.
#[component]
pub fn StemInput(
    reading: AskedGravity,
    #[prop(into)] corrected: Signal<Option<SpecificGravity>>,
    instrument: Memo<Hydrometer>,
) -> impl IntoView {
    let AskedGravity { value, face } = reading;
    let plato = Signal::derive(move || face.unit.get() == GravityUnit::Plato.symbol());
    let on_scale = move |sg: SpecificGravity| {
        if plato.get() { sucrose::plato(sg).value() } else { sg.value() }
    };
    let shown = Signal::derive(move || {
        value.get().ok().map(|gravity| match gravity {
            Gravity::Plato(own) if plato.get() => own.value(),
            other => on_scale(sucrose::as_specific(other)),
        })
    });
    let flag = Signal::derive(move || {
        corrected.get().map_or_else(String::new, |sg| {
            let places = if plato.get() { 1 } else { 3 };
            format!("{} corrected", write_number(on_scale(sg), places))
        })
    });
    let corrected = Signal::derive(move || corrected.get().map(on_scale));
    let text = face.text;
    let division = Signal::derive(move || {
        if plato.get() { PLATO_DIVISION } else { instrument.get().division.value() }
    });
    let on_set = Callback::new(move |number: f64| {
        text.set(write_number(number, if plato.get_untracked() { 2 } else { 4 }));
    });
    view! {
        <Stem
            label="Hydrometer in the jar"
            value=shown
            corrected
            corrected_text=flag
            plato
            division
            value_text=Signal::derive(move || text.get())
            on_set
        />
    }
}
