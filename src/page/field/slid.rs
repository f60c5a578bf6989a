//! Times and sliders.

use super::typed;
use crate::app::{Event, MomentField, Slider, What};
use crate::page::board::Node;
use crate::page::session::send;
use leptos::prelude::*;

/// A date and time: now, unless another is chosen.
pub fn moment(node: &Node) -> AnyView {
    let of = follow!(node, MomentField of Moment);
    let (id, name) = (node.id(), node.name.clone());
    let what = node.what.clone();
    let label_id = id.clone();
    let (text, label) = (of(|field| field.text.clone()), of(|field| field.label.clone()));
    let shown = text.clone();
    let open = Memo::new(move |_| !shown().is_empty());
    let body = move || {
        let What::Moment(field) = what.get_untracked() else { return ().into_any() };
        let set = name.clone();
        if open.get() {
            let name = name.clone();
            view! {
                <div class="when-row">
                    <label for=label_id.clone()>{label.clone()}</label>
                    <button
                        type="button"
                        class="quiet"
                        on:click=move |_| typed(&set, String::new(), "")
                    >
                        {field.now_words}
                    </button>
                </div>
                <input
                    id=label_id.clone()
                    type="datetime-local"
                    prop:value=text.clone()
                    on:change=move |event| {
                        let text = event_target_value(&event);
                        if !text.is_empty() {
                            typed(&name, text, "");
                        }
                    }
                />
            }
            .into_any()
        } else {
            view! {
                <div class="when-row">
                    <label for=label_id.clone()>{label.clone()}</label>
                    <span class="when-now">{field.now_words}</span>
                    <button
                        type="button"
                        class="quiet"
                        on:click=move |_| typed(&set, field.now.clone(), "")
                    >
                        {field.other_words}
                    </button>
                </div>
            }
            .into_any()
        }
    };
    view! { <div class="field when">{body}</div> }.into_any()
}

/// A value to be slid along its range, with a stepper at each end.
pub fn slider(node: &Node) -> AnyView {
    let of = follow!(node, Slider of Slider);
    let id = node.id();
    let (min, max, step) = node.what.with_untracked(|what| match what {
        What::Slider(slider) => slider.range,
        _ => (0.0, 1.0, 1.0),
    });
    let slid = {
        let name = node.name.to_string();
        move |value: f64| send(Event::Slid { name: name.clone(), value })
    };
    let by = |steps: f64| {
        let (what, slid) = (node.what.clone(), slid.clone());
        move |_| {
            if let What::Slider(slider) = what.get_untracked() {
                slid((slider.value + steps * step).clamp(min, max));
            }
        }
    };
    view! {
        <div class="field slider">
            <label for=id.clone()>{of(|slider| slider.label.clone())}</label>
            <output for=id.clone()>{of(|slider| slider.text.clone())}</output>
            <div class="field-row">
                <button
                    type="button"
                    class="step"
                    aria-label=of(|slider| slider.spoken[0].clone())
                    on:click=by(-1.0)
                >
                    "−"
                </button>
                <input
                    id=id
                    type="range"
                    min=min
                    max=max
                    step=step
                    aria-valuetext=of(|slider| slider.text.clone())
                    prop:value=of(|slider| crate::quantity::write_number(slider.value, 3))
                    on:input={
                        let slid = slid.clone();
                        move |event| {
                        // The browser reads it: to parse a number here would bring 12 kB.
                        let number = event_target::<web_sys::HtmlInputElement>(&event);
                        slid(number.value_as_number());
                    }}
                />
                <button
                    type="button"
                    class="step"
                    aria-label=of(|slider| slider.spoken[1].clone())
                    on:click=by(1.0)
                >
                    "+"
                </button>
            </div>
        </div>
    }
    .into_any()
}
