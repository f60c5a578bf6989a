//! One of a few: big buttons for a handful, a list for more.

use crate::page::parts::live::{Told, list};
use leptos::prelude::*;

/// One of a few, as buttons side by side. The chosen value is a text, so that it can be a draft.
#[component]
pub fn Choice(
    #[prop(into)] id: String,
    #[prop(into)] label: String,
    /// Value and words, in the order offered.
    options: Vec<(&'static str, &'static str)>,
    chosen: RwSignal<String>,
    #[prop(optional, into)] hint: String,
) -> impl IntoView {
    let name = id.clone();
    let buttons = list(options.into_iter().map(|(value, words)| {
        let input_id = format!("{name}-{value}");
        let for_input = input_id.clone();
        view! {
            <label class="choice-one" for=for_input>
                <input
                    type="radio"
                    id=input_id
                    name=name.clone()
                    value=value
                    prop:checked=move || chosen.get() == value
                    on:change=move |_| chosen.set(value.to_owned())
                />
                <span>{words}</span>
            </label>
        }
        .into_any()
    }));
    view! {
        <fieldset class="choice" id=id>
            <legend>{label}</legend>
            <p class="field-hint">{hint}</p>
            <div class="choice-row">{buttons}</div>
        </fieldset>
    }
}

/// One of many, as the phone's own list.
#[component]
pub fn Pick(
    #[prop(into)] id: String,
    #[prop(into)] label: String,
    /// Value and words, in the order offered.
    #[prop(into)]
    options: Told<Vec<(String, String)>>,
    chosen: RwSignal<String>,
    #[prop(optional, into)] hint: String,
) -> impl IntoView {
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <p class="field-hint">{hint}</p>
            <select id=id on:change=move |event| chosen.set(event_target_value(&event))>
                {move || {
                    list(options.get().into_iter().map(|(value, words)| {
                            let own = value.clone();
                            view! {
                                <option value=value selected=move || chosen.get() == own>
                                    {words}
                                </option>
                            }
                            .into_any()
                        }))
                }}
            </select>
        </div>
    }
}
