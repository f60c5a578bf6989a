//! Gear: instruments, bottles, sugars, units, height, day or night, and how the records are kept.

mod bottles;
mod instrument_form;
mod instruments;
mod keeping;
mod preferences;
mod sugars;
mod things;

use leptos::prelude::*;

/// The screen.
#[component]
pub fn GearScreen() -> impl IntoView {
    view! {
        <h1 tabindex="-1">"Gear"</h1>
        <keeping::Trouble />
        <instruments::Instruments />
        <bottles::BottleStock />
        <sugars::OwnSugars />
        <preferences::Preferences />
        <keeping::Keeping />
    }
}
