//! Fields: a visible label, the control, its unit beside it, and the error in words below.

mod chosen;
mod slid;

pub use chosen::{choice, pick, tick};
pub use slid::{moment, slider};

use super::board::Node;
use super::element::{Element, Told, el, list};
use super::session::send;
use crate::app::{Event, Number, What, WordsField};
use leptos::prelude::*;

fn typed(name: &str, text: String, unit: &str) {
    send(Event::Typed { name: name.to_owned(), text, unit: unit.to_owned() });
}

/// What stands in the control that an event came from.
fn value_of(event: &Told) -> String {
    event_target_value(event)
}

fn of_number(what: &What, text: fn(&Number) -> &str) -> String {
    match what {
        What::Number(field) => text(field).to_owned(),
        _ => String::new(),
    }
}

/// What is wrong with a field of any kind.
fn error(what: &What) -> String {
    match what {
        What::Number(field) => field.error.clone(),
        What::Words(field) => field.error.clone(),
        What::Choice(field) | What::Pick(field) => field.error.clone(),
        _ => String::new(),
    }
}

fn invalid(what: &What) -> Option<String> {
    Some(if error(what).is_empty() { "false" } else { "true" }.to_owned())
}

/// The frame of a field, which shows when something is wrong.
fn frame(node: &Node) -> Element {
    el("DIV").follow(node, "class", |what| {
        Some(if error(what).is_empty() { "field" } else { "field field-wrong" }.to_owned())
    })
}

fn label(node: &Node, id: &str, of: fn(&What) -> String) -> AnyView {
    el("LABEL").with("for", id).says(node, of).view()
}

fn error_line(node: &Node, id: &str) -> AnyView {
    el("P").with("class", "field-error").with("id", &format!("{id}-error")).says(node, error).view()
}

/// One step down or up, beside a number. Its buttons belong to a field: a number that was stepped to is
/// left as one that was typed.
fn step(node: &Node, up: bool) -> AnyView {
    let (what, name) = (node.what.clone(), node.name.clone());
    let stepped = move |_| {
        if let What::Number(field) = what.get_untracked() {
            let text = if up { field.steps.1 } else { field.steps.0 };
            typed(&name, text, field.unit);
        }
    };
    let spoken: fn(&What) -> Option<String> = if up {
        |what| Some(of_number(what, |field| &field.spoken[1]))
    } else {
        |what| Some(of_number(what, |field| &field.spoken[0]))
    };
    step_button(node, up, spoken).on("click", stepped).on("blur", leaves(node)).view()
}

fn step_button(node: &Node, up: bool, spoken: fn(&What) -> Option<String>) -> Element {
    el("BUTTON")
        .with("type", "button")
        .with("class", "step")
        .follow(node, "aria-label", spoken)
        .text(if up { "+" } else { "−" })
}

fn leaves(node: &Node) -> impl FnMut(Told) + 'static {
    let name = node.name.to_string();
    move |_| send(Event::Left(name.clone()))
}

/// The units to choose from; one alone is only shown.
fn unit(node: &Node) -> AnyView {
    let units = node.what.with_untracked(|what| match what {
        What::Number(field) => field.units.clone(),
        _ => vec![],
    });
    if units.len() < 2 {
        return el("SPAN")
            .with("class", "field-unit field-unit-only")
            .says(node, |what| of_number(what, |field| field.unit))
            .view();
    }
    let name = node.name.to_string();
    let chosen = move |event: Told| {
        send(Event::Unit { name: name.clone(), symbol: value_of(&event) });
    };
    let options = units.into_iter().map(|symbol| {
        el("OPTION")
            .with("value", symbol)
            .is(
                node,
                "selected",
                move |what| matches!(what, What::Number(field) if field.unit == symbol),
            )
            .text(symbol)
            .view()
    });
    el("SELECT")
        .with("class", "field-unit")
        .follow(node, "aria-label", |what| Some(of_number(what, |field| &field.spoken[2])))
        .on("change", chosen)
        .put(list(options))
        .view()
}

/// A field for one number.
pub fn number(node: &Node) -> AnyView {
    let (id, name, what) = (node.id(), node.name.clone(), node.what.clone());
    let on_input = move |event: Told| {
        let unit = what.with_untracked(|what| of_number(what, |field| field.unit));
        typed(&name, value_of(&event), &unit);
    };
    let input = el("INPUT")
        .with("id", &id)
        .with("type", "text")
        .with("inputmode", "decimal")
        .with("autocomplete", "off")
        .with("enterkeyhint", "done")
        .with("aria-describedby", &format!("{id}-hint {id}-error"))
        .follow(node, "aria-invalid", invalid)
        .holds(node, "value", |what| of_number(what, |field| &field.text))
        .on("input", on_input)
        .on("blur", leaves(node));
    let row = el("DIV")
        .with("class", "field-row")
        .put(step(node, false))
        .put(input.view())
        .put(unit(node))
        .put(step(node, true));
    let hint = el("P")
        .with("class", "field-hint")
        .with("id", &format!("{id}-hint"))
        .says(node, |what| of_number(what, |field| &field.hint));
    let read = el("P")
        .with("class", "field-read")
        .says(node, |what| of_number(what, |field| &field.understood));
    frame(node)
        .put(label(node, &id, |what| of_number(what, |field| &field.label)))
        .put(hint.view())
        .put(row.view())
        .put(read.view())
        .put(error_line(node, &id))
        .view()
}

/// A field for words.
pub fn words(node: &Node, field: &WordsField) -> AnyView {
    let of = |what: &What| match what {
        What::Words(field) => field.text.clone(),
        _ => String::new(),
    };
    let label_of = |what: &What| match what {
        What::Words(field) => field.label.clone(),
        _ => String::new(),
    };
    let (id, name) = (node.id(), node.name.clone());
    let control = if field.long {
        let area = el("TEXTAREA").with("rows", if field.to_copy { "8" } else { "2" });
        if field.to_copy { area.with("readonly", "") } else { area }
    } else {
        el("INPUT").with("type", "text").with("autocomplete", "off")
    };
    let control = control
        .with("id", &id)
        .with("aria-describedby", &format!("{id}-error"))
        .follow(node, "aria-invalid", invalid)
        .holds(node, "value", of)
        .on("input", move |event| typed(&name, value_of(&event), ""));
    frame(node)
        .put(label(node, &id, label_of))
        .put(control.view())
        .put(error_line(node, &id))
        .view()
}
