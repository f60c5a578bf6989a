//! A value to be slid along its range, with a stepper at each end.

use crate::page::parts::live::{Told, say};
use crate::quantity::write_number;
use leptos::prelude::*;

/// The slider. Its value is any number; what it means is the caller's.
#[component]
pub fn Slider(
    id: &'static str,
    label: &'static str,
    /// Where it stands; `None` while there is nothing to slide.
    value: Told<Option<f64>>,
    /// The same in words.
    text: Told<String>,
    /// Lowest, highest and one step.
    range: (f64, f64, f64),
    on_set: Callback<f64>,
) -> impl IntoView {
    let (min, max, step) = range;
    let by = {
        let value = value.clone();
        Callback::new(move |steps: f64| {
            if let Some(now) = untrack(|| value.get()) {
                on_set.run((now + steps * step).clamp(min, max));
            }
        })
    };
    let spoken = text.clone();
    view! {
        <div class="field slider">
            <label for=id>{label}</label>
            <output for=id>{say(move || text.get())}</output>
            <div class="field-row">
                <button
                    type="button"
                    class="step"
                    aria-label=format!("{label}: less")
                    on:click=move |_| by.run(-1.0)
                >
                    "−"
                </button>
                <input
                    id=id
                    type="range"
                    min=min
                    max=max
                    step=step
                    aria-valuetext=say(move || spoken.get())
                    prop:value=move || write_number(value.get().unwrap_or(min), 3)
                    on:input=move |event| {
                        // The browser reads it: to parse a number here would bring 12 kB.
                        let number = event_target::<web_sys::HtmlInputElement>(&event);
                        on_set.run(number.value_as_number());
                    }
                />
                <button
                    type="button"
                    class="step"
                    aria-label=format!("{label}: more")
                    on:click=move |_| by.run(1.0)
                >
                    "+"
                </button>
            </div>
        </div>
    }
}
