//! One gravity on every scale.

use crate::page::ask::{AskGravity, ask_gravity};
use crate::page::parts::answer::{Answer, Said};
use crate::page::parts::field::NumberField;
use crate::page::parts::figures::Figures;
use crate::page::session::use_session;
use crate::page::write;
use crate::quantity::{Celsius, Gravity, GravityUnit, Measured, SpecificGravity, write_number};
use crate::science::sucrose;
use leptos::prelude::*;

fn figures(gravity: Gravity) -> Vec<(&'static str, String)> {
    let (sg, plato) = (sucrose::as_specific(gravity), sucrose::as_plato(gravity));
    let room = Celsius::literal(20.0);
    let mut rows = vec![
        ("Specific gravity 20/20", write_number(sg.value(), 4)),
        ("Points", write_number(sg.points(), 1)),
        ("Degrees Plato (or Brix)", write_number(plato.value(), 2)),
    ];
    // Apparent extract below zero is no amount of anything.
    if let Ok(extract) = sucrose::extract_per_litre(plato, room) {
        rows.push(("Extract in a litre", format!("{}\u{A0}g", write_number(extract.value(), 0))));
    }
    if let Ok(density) = sucrose::density(plato, room) {
        rows.push((
            "Density at 20\u{A0}°C",
            format!("{}\u{A0}kg/m³", write_number(density.value(), 1)),
        ));
    }
    rows
}

/// The sum.
#[component]
pub fn ScalesSum() -> impl IntoView {
    let session = use_session();
    let gravity = ask_gravity(
        "bench/scales/",
        AskGravity {
            key: "gravity",
            label: "Gravity",
            hint: "1.050, 1050, 50, or 12.4 P.",
            unit: session.units_now().gravity,
            first: None,
            start: SpecificGravity::literal(1.050),
        },
    );
    let value = gravity.value;
    let said = move || match value.get() {
        Err(_) => Said::only("Give a gravity on either scale."),
        Ok(gravity) => {
            let points = write_number(sucrose::as_specific(gravity).points(), 1);
            let (main, beside) = match gravity.unit() {
                GravityUnit::Plato => {
                    (write_number(sucrose::as_specific(gravity).value(), 4), "SG 20/20".to_owned())
                }
                GravityUnit::SpecificGravity => {
                    (write::extract(sucrose::as_plato(gravity)), String::new())
                }
            };
            Said { main, beside, below: format!("{points} points") }
        }
    };
    let rows = move || value.get().map(figures).unwrap_or_default();
    view! {
        <Answer label="On the other scale" said />
        <NumberField face=gravity.face />
        <Figures rows />
        <details class="worked">
            <summary>"How this was worked out"</summary>
            <p>
                "Density of sugar in water by ICUMSA SPS-4 (Bubník and others, Sugar Technologists Manual, 1995); specific gravity as the ratio of weights in air at 20 °C, as printed tables have it. Agrees with NBS Circular C440 to 0.00003."
            </p>
        </details>
    }
}
