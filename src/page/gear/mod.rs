//! Gear: instruments, units, height, day or night, and how the records are kept.

mod instrument_form;
mod instruments;
mod keeping;
mod preferences;

use leptos::prelude::*;

/// The screen.
#[component]
pub fn GearScreen() -> impl IntoView {
    view! {
        <h1 tabindex="-1">"Gear"</h1>
        <keeping::Trouble />
        <instruments::Instruments />
        <preferences::Preferences />
        <keeping::Keeping />
    }
}
