//! Bench: one-off sums that need no batch.

mod cooling;
pub mod gravity;
mod scales;
pub mod strength;
pub mod sugar;
pub mod yeast;

use super::ask::{Ask, Asked, ask};
use super::route::{Route, Sum};
use super::session::use_session;
use super::words;
use crate::page::parts::live::list;
use crate::quantity::{Bounds, Celsius, Litres, Measured, VolumeUnit};
use leptos::prelude::*;

/// The list of sums.
#[component]
pub fn BenchScreen() -> impl IntoView {
    view! {
        <h1 tabindex="-1">"Bench"</h1>
        <p class="lead">"One sum at a time. Nothing here is kept with a batch."</p>
        <SumLinks sums=Sum::ALL.to_vec() />
    }
}

/// Links to sums, each with the question it answers.
#[component]
pub fn SumLinks(sums: Vec<Sum>) -> impl IntoView {
    let links = list(sums.into_iter().map(|sum| {
        let (name, question) = words::sum(sum);
        view! {
            <li>
                <a class="sum-link" href=Route::Sum(sum).address()>
                    <strong>{name}</strong>
                    <span>{question}</span>
                </a>
            </li>
        }
        .into_any()
    }));
    view! { <ul class="sum-links">{links}</ul> }
}

/// One sum.
#[component]
pub fn SumScreen(sum: Sum) -> impl IntoView {
    let (name, _) = words::sum(sum);
    let body = match sum {
        Sum::Gravity => view! { <gravity::GravitySum /> }.into_any(),
        Sum::Strength => view! { <strength::StrengthSum /> }.into_any(),
        Sum::Scales => view! { <scales::ScalesSum /> }.into_any(),
        Sum::Sugar => view! { <sugar::SugarSum /> }.into_any(),
        Sum::Cooling => view! { <cooling::CoolingSum /> }.into_any(),
        Sum::Yeast => view! { <yeast::YeastSum /> }.into_any(),
    };
    view! {
        <p class="back">
            <a href=Route::Bench.address()>"Bench"</a>
        </p>
        <h1 tabindex="-1">{name}</h1>
        {body}
    }
}

/// Volumes a kitchen can hold.
pub const VOLUME: Bounds<Litres> = Bounds::new(Litres::literal(0.5), Litres::literal(1000.0));
/// Temperatures a sample can be corrected at.
pub const SAMPLE: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(60.0));

/// A temperature field in the brewer's unit.
pub fn temperature(
    scope: &str,
    (key, label, hint): (&'static str, &'static str, &'static str),
    bounds: Bounds<Celsius>,
    first: Option<Celsius>,
    start: f64,
) -> Asked<Celsius> {
    let unit = use_session().units_now().temperature;
    let step = |_| 0.5;
    ask(scope, Ask { key, label, hint, unit, bounds, step, first, start: Celsius::nearest(start) })
}

/// A volume field in the brewer's unit.
pub fn volume(
    scope: &str,
    (key, label, hint): (&'static str, &'static str, &'static str),
    first: Option<Litres>,
) -> Asked<Litres> {
    let unit = use_session().units_now().volume;
    let step = |unit| if unit == VolumeUnit::Litres { 0.5 } else { 0.1 };
    let start = Litres::literal(20.0);
    ask(scope, Ask { key, label, hint, unit, bounds: VOLUME, step, first, start })
}
