//! Fields: a visible label, the control, its unit beside it, and the error in words below.

use super::board::Node;
use super::draw::list;
use super::session::send;
use crate::app::{Choice, Event, MomentField, Number, Slider, What, WordsField};
use leptos::prelude::*;

/// A closure over one field's data, of one type for each kind of field.
macro_rules! follow {
    ($node:expr, $variant:ident) => {
        |text: fn(&$variant) -> String| {
            let what = $node.what.clone();
            move || {
                what.with(|what| match what {
                    What::$variant(field) => text(field),
                    _ => String::new(),
                })
            }
        }
    };
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

fn wrong(error: impl Fn() -> String) -> impl Fn() -> &'static str {
    move || if error().is_empty() { "false" } else { "true" }
}

fn typed(name: &str, text: String, unit: &str) {
    send(Event::Typed { name: name.to_owned(), text, unit: unit.to_owned() });
}

/// A field for one number.
pub fn number(node: &Node) -> AnyView {
    let of = follow!(node, Number);
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

/// One of a few, as buttons side by side.
pub fn choice(node: &Node) -> AnyView {
    let of = follow!(node, Choice);
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
    let of = follow!(node, Slider);
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
