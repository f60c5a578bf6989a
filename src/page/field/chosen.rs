//! Choices, lists and marks.

use super::typed;
use crate::app::{Choice, Event, What};
use crate::page::board::Node;
use crate::page::follow::list;
use crate::page::session::send;
use leptos::prelude::*;

/// One of a few, as buttons side by side.
pub fn choice(node: &Node) -> AnyView {
    let of = follow!(node, Choice of Choice);
    let id = node.id();
    let (what, name) = (node.what.clone(), node.name.clone());
    let group = id.clone();
    let buttons = move || {
        let What::Choice(choice) = what.get() else { return ().into_any() };
        list(choice.options.into_iter().map(|(stored, words)| {
            let input_id = format!("{group}-{stored}");
            let for_input = input_id.clone();
            let checked = stored == choice.chosen;
            let (name, value) = (name.clone(), stored.clone());
            view! {
                <label class="choice-one" for=for_input>
                    <input
                        type="radio"
                        id=input_id
                        name=group.clone()
                        value=stored
                        prop:checked=checked
                        on:change=move |_| typed(&name, value.clone(), "")
                    />
                    <span>{words}</span>
                </label>
            }
            .into_any()
        }))
    };
    view! {
        <fieldset class="choice" id=id>
            <legend>{of(|choice| choice.label.clone())}</legend>
            <p class="field-hint">{of(|choice| choice.hint.clone())}</p>
            <div class="choice-row">{move || buttons()}</div>
            <p class="field-error">{of(|choice| choice.error.clone())}</p>
        </fieldset>
    }
    .into_any()
}

/// One of many, as the phone's own list.
pub fn pick(node: &Node) -> AnyView {
    let of = follow!(node, Choice of Pick);
    let id = node.id();
    let name = node.name.clone();
    let what = node.what.clone();
    let options = move || {
        let What::Pick(choice) = what.get() else { return ().into_any() };
        list(choice.options.into_iter().map(|(stored, words)| {
            let selected = stored == choice.chosen;
            view! {
                <option value=stored selected=selected>
                    {words}
                </option>
            }
            .into_any()
        }))
    };
    view! {
        <div class="field">
            <label for=id.clone()>{of(|choice| choice.label.clone())}</label>
            <p class="field-hint">{of(|choice| choice.hint.clone())}</p>
            <select id=id on:change=move |event| typed(&name, event_target_value(&event), "")>
                {move || options()}
            </select>
            <p class="field-error">{of(|choice| choice.error.clone())}</p>
        </div>
    }
    .into_any()
}

/// A mark to be set or not.
pub fn tick(node: &Node) -> AnyView {
    let id = node.id();
    let for_box = id.clone();
    let label = {
        let what = node.what.clone();
        move || match what.get() {
            What::Tick(tick) => tick.label,
            _ => String::new(),
        }
    };
    let on = {
        let what = node.what.clone();
        move || what.with(|what| matches!(what, What::Tick(tick) if tick.on))
    };
    let what = node.what.clone();
    let turned = move |_| {
        if let What::Tick(tick) = what.get_untracked() {
            send(Event::Did(tick.act));
        }
    };
    view! {
        <label class="tick" for=for_box>
            <input type="checkbox" id=id prop:checked=on on:change=turned />
            <span>{label}</span>
        </label>
    }
    .into_any()
}
