//! A gravity field's drawing: the stem as it stands in the jar, to be set by looking.

use super::ask::AskedGravity;
use super::parts::live::Told;
use super::parts::stem::{Seen, Stem};
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
    #[prop(into)] corrected: Told<Option<SpecificGravity>>,
    #[prop(into)] instrument: Told<Hydrometer>,
    /// Where it stands until it is set: the last reading.
    #[prop(optional)]
    rest: Option<SpecificGravity>,
) -> impl IntoView {
    let AskedGravity { value, face } = reading;
    let (text, unit) = (face.text, face.unit);
    let seen = Signal::derive(move || {
        let plato = unit.get() == GravityUnit::Plato.symbol();
        let on_scale =
            |sg: SpecificGravity| if plato { sucrose::plato(sg).value() } else { sg.value() };
        let value = value.get().ok().map(|gravity| match gravity {
            Gravity::Plato(own) if plato => own.value(),
            other => on_scale(sucrose::as_specific(other)),
        });
        let corrected = corrected.get().map(on_scale);
        let places = if plato { 1 } else { 3 };
        let flag =
            corrected.map(|true_one| format!("{} corrected", write_number(true_one, places)));
        Seen {
            value,
            rest: rest.map(on_scale),
            corrected,
            corrected_text: flag.unwrap_or_default(),
            plato,
            division: if plato { PLATO_DIVISION } else { instrument.get().division.value() },
        }
    });
    let on_set = Callback::new(move |number: f64| {
        let plato = seen.with_untracked(|seen| seen.plato);
        text.set(write_number(number, if plato { 2 } else { 4 }));
    });
    view! { <Stem label="Hydrometer in the jar" seen value_text=text on_set /> }
}
