//! What if: the plan for other values, which change nothing in the form until they are taken over.

use super::fields::{Changed, Fields, Input};
use crate::advice::bottle::plan;
use crate::page::parts::live::{Told, say};
use crate::page::parts::slider::Slider;
use crate::page::priming::put;
use crate::page::{words, write};
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, GasUnit, Grams, Litres, Measured, TemperatureUnit, VolumeUnit,
};
use leptos::prelude::*;

/// The sliders and what comes of them.
#[component]
pub fn WhatIf(input: Input, fields: Fields) -> impl IntoView {
    let session = input.session;
    let changed = RwSignal::new(Changed::default());
    let fahrenheit = session.units_now().temperature == TemperatureUnit::Fahrenheit;
    let degree = if fahrenheit { 5.0 / 9.0 } else { 0.5 };
    let litres = if session.units_now().volume == VolumeUnit::Litres { 0.5 } else { 0.378_5 };
    let target = move || changed.get().target.or_else(|| input.target.get().ok());
    let warmest = move || changed.get().warmest.or_else(|| input.warmest.get().ok());
    let beer = move || changed.get().beer.or_else(|| input.beer.get().ok());
    let hottest = move || changed.get().hottest.or_else(|| input.hottest.get().ok());
    // The range goes by the field alone, or it would slide away under the thumb.
    let most = untrack(|| input.beer.get()).map_or(40.0, |beer| (2.0 * beer.value()).ceil());
    let result = say(move || {
        let Some(Ok(ready)) = input.ready(changed.get()) else {
            return "Give the volume, the weakest bottle and the warmest temperature first."
                .to_owned();
        };
        let Ok(plan) = plan(ready.bottling) else { return String::new() };
        let w = session.writer();
        let judged = words::bottle_words(w, &plan, &[]);
        let at_worst = format!("at worst {}", write::volumes(plan.guard.worst));
        match (plan.dose(), plan.weigh()) {
            (Some(dose), Some(weigh)) => {
                let doubt = w.mass(Grams::nearest(dose.sugar.sigma()));
                format!(
                    "{}: {} ±\u{A0}{doubt}, {at_worst}.",
                    judged.word,
                    w.weighed(weigh, plan.scale())
                )
            }
            _ => format!("{}. {} ({at_worst})", judged.word, judged.sentence),
        }
    });
    let set = move |change: fn(&mut Changed, f64)| {
        Callback::new(move |value: f64| changed.update(|all| change(all, value)))
    };
    let text = |text: Box<dyn Fn() -> Option<String> + Send + Sync>| {
        Told::from(move || text().unwrap_or_default())
    };
    let w = move || session.writer();
    let take = move |_| {
        let all = changed.get_untracked();
        if let Some(value) = all.target {
            put::<GasUnit>(&fields.target, value);
        }
        if let Some(value) = all.warmest {
            put::<TemperatureUnit>(&fields.warmest, value);
        }
        if let Some(value) = all.beer {
            put::<VolumeUnit>(&fields.beer, value);
        }
        if let Some(value) = all.hottest {
            put::<TemperatureUnit>(&fields.hottest, value);
        }
        changed.set(Changed::default());
    };
    view! {
        <details class="more what-if">
            <summary>"What if"</summary>
            <p class="plain-answer" role="status">{result}</p>
            <Slider
                id="what-if-target"
                label="Carbon dioxide"
                value=(move || target().map(Measured::value)).into()
                text=text(Box::new(move || target().map(write::volumes)))
                range=(1.0, 4.5, 0.1)
                on_set=set(|all, value| all.target = Some(CarbonDioxideVolumes::nearest(value)))
            />
            <Slider
                id="what-if-warmest"
                label="Warmest since it went quiet"
                value=(move || warmest().map(Measured::value)).into()
                text=text(Box::new(move || warmest().map(|t| w().temperature(t))))
                range=(0.0, 35.0, degree)
                on_set=set(|all, value| all.warmest = Some(Celsius::nearest(value)))
            />
            <Slider
                id="what-if-beer"
                label="Beer"
                value=(move || beer().map(Measured::value)).into()
                text=text(Box::new(move || beer().map(|volume| w().volume(volume))))
                range=(0.5, most, litres)
                on_set=set(|all, value| all.beer = Some(Litres::nearest(value)))
            />
            <Slider
                id="what-if-hottest"
                label="Hottest place"
                value=(move || hottest().map(Measured::value)).into()
                text=text(Box::new(move || hottest().map(|t| w().temperature(t))))
                range=(15.0, 45.0, degree)
                on_set=set(|all, value| all.hottest = Some(Celsius::nearest(value)))
            />
            <div class="form-actions">
                <button type="button" on:click=take>
                    "Use these"
                </button>
                <button
                    type="button"
                    class="quiet"
                    on:click=move |_| changed.set(Changed::default())
                >
                    "Back to what the form says"
                </button>
            </div>
        </details>
    }
}
