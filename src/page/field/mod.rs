//! Fields: a visible label, the control, its unit beside it, and the error in words below.

use crate::app::{Event, Number, What, WordsField};
use crate::page::board::Node;
use crate::page::follow::list;
use crate::page::session::send;
use leptos::prelude::*;

/// A closure over one field's data, of one type for each kind of field.
macro_rules! follow {
    ($node:expr, $kind:ident of $variant:ident) => {
        |text: fn(&$kind) -> String| {
            let what = $node.what.clone();
            move || {
                what.with(|what| match what {
                    What::$variant(field) => text(field),
                    _ => String::new(),
                })
            }
        }
    };
}

mod chosen;
mod slid;

pub use chosen::{choice, pick, tick};
pub use slid::{moment, slider};

fn wrong(error: impl Fn() -> String) -> impl Fn() -> &'static str {
    move || if error().is_empty() { "false" } else { "true" }
}

fn typed(name: &str, text: String, unit: &str) {
    send(Event::Typed { name: name.to_owned(), text, unit: unit.to_owned() });
}

/// A field for one number.
pub fn number(node: &Node) -> AnyView {
    let of = follow!(node, Number of Number);
    let (id, name) = (node.id(), node.name.clone());
    let (error_id, hint_id) = (format!("{id}-error"), format!("{id}-hint"));
    let described = format!("{hint_id} {error_id}");
    let error = of(|field| field.error.clone());
    let is_wrong = error.clone();
    let step = |up: bool| {
        let (what, name) = (node.what.clone(), name.clone());
        move |_| {
            if let What::Number(field) = what.get_untracked() {
                let text = if up { field.steps.1 } else { field.steps.0 };
                typed(&name, text, field.unit);
            }
        }
    };
    let on_input = {
        let (what, name) = (node.what.clone(), name.clone());
        move |event: leptos::ev::Event| {
            let unit = what.with_untracked(|what| match what {
                What::Number(field) => field.unit,
                _ => "",
            });
            typed(&name, event_target_value(&event), unit);
        }
    };
    // Its buttons belong to it: a number that was stepped to is left as one that was typed.
    let left = {
        let name = name.to_string();
        move |_| send(Event::Left(name.clone()))
    };
    let (left_less, left_more) = (left.clone(), left.clone());
    let units = node.what.with_untracked(|what| match what {
        What::Number(field) => field.units.clone(),
        _ => vec![],
    });
    let unit = of(|field| field.unit.to_owned());
    let unit_view = if units.len() > 1 {
        let name = name.to_string();
        let chosen = move |event: leptos::ev::Event| {
            send(Event::Unit { name: name.clone(), symbol: event_target_value(&event) });
        };
        let options = units.into_iter().map(|symbol| {
            let unit = unit.clone();
            view! { <option value=symbol selected=move || unit() == symbol>{symbol}</option> }
                .into_any()
        });
        view! {
            <select
                class="field-unit"
                aria-label=of(|field| field.spoken[2].clone())
                on:change=chosen
            >
                {list(options)}
            </select>
        }
        .into_any()
    } else {
        view! { <span class="field-unit field-unit-only">{unit}</span> }.into_any()
    };
    view! {
        <div class="field" class:field-wrong=move || !is_wrong().is_empty()>
            <label for=id.clone()>{of(|field| field.label.clone())}</label>
            <p class="field-hint" id=hint_id>{of(|field| field.hint.clone())}</p>
            <div class="field-row">
                <button
                    type="button"
                    class="step"
                    aria-label=of(|field| field.spoken[0].clone())
                    on:click=step(false)
                    on:blur=left_less
                >
                    "−"
                </button>
                <input
                    id=id
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    enterkeyhint="done"
                    aria-describedby=described
                    aria-invalid=wrong(error.clone())
                    prop:value=of(|field| field.text.clone())
                    on:input=on_input
                    on:blur=left
                />
                <button
                    type="button"
                    class="step"
                    aria-label=of(|field| field.spoken[1].clone())
                    on:click=step(true)
                    on:blur=left_more
                >
                    "+"
                </button>
                {unit_view}
            </div>
            <p class="field-read">{of(|field| field.understood.clone())}</p>
            <p class="field-error" id=error_id>{error}</p>
        </div>
    }
    .into_any()
}

/// A field for words.
pub fn words(node: &Node, long: bool) -> AnyView {
    let of = follow!(node, WordsField of Words);
    let id = node.id();
    let error_id = format!("{id}-error");
    let error = of(|field| field.error.clone());
    let is_wrong = error.clone();
    let name = node.name.clone();
    let on_input = move |event: leptos::ev::Event| typed(&name, event_target_value(&event), "");
    let to_copy = matches!(node.what.get_untracked(), What::Words(field) if field.to_copy);
    let control = if long {
        view! {
            <textarea
                id=id.clone()
                rows=if to_copy { "8" } else { "2" }
                readonly=to_copy
                prop:value=of(|field| field.text.clone())
                on:input=on_input
            ></textarea>
        }
        .into_any()
    } else {
        view! {
            <input
                id=id.clone()
                type="text"
                autocomplete="off"
                aria-describedby=error_id.clone()
                aria-invalid=wrong(error.clone())
                prop:value=of(|field| field.text.clone())
                on:input=on_input
            />
        }
        .into_any()
    };
    view! {
        <div class="field" class:field-wrong=move || !is_wrong().is_empty()>
            <label for=id>{of(|field| field.label.clone())}</label>
            {control}
            <p class="field-error" id=error_id>{error}</p>
        </div>
    }
    .into_any()
}
