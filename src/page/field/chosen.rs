//! Choices, lists and marks. Their options are made once: others are another element (see `board`).

use super::{error_line, frame, label, typed, value_of};
use crate::app::{Choice, What};
use crate::page::board::Node;
use crate::page::element::{Told, el, list};
use leptos::prelude::*;

fn of_choice(what: &What, text: fn(&Choice) -> &String) -> String {
    match what {
        What::Choice(choice) | What::Pick(choice) => text(choice).clone(),
        _ => String::new(),
    }
}

fn hint(node: &Node) -> AnyView {
    el("P")
        .with("class", "field-hint")
        .says(node, |what| of_choice(what, |choice| &choice.hint))
        .view()
}

/// Whether the option of that stored name is the one that is chosen.
fn chosen(stored: &str) -> impl Fn(&What) -> bool + Send + 'static {
    let stored = stored.to_owned();
    move |what| match what {
        What::Choice(choice) | What::Pick(choice) => choice.chosen == stored,
        _ => false,
    }
}

/// One of a few, as buttons side by side.
pub fn choice(node: &Node, choice: &Choice) -> AnyView {
    let id = node.id();
    let buttons = choice.options.iter().map(|(stored, words)| {
        let input_id = format!("{id}-{stored}");
        let (name, value) = (node.name.clone(), stored.clone());
        let input = el("INPUT")
            .with("type", "radio")
            .with("id", &input_id)
            .with("name", &id)
            .with("value", stored)
            .is(node, "checked", chosen(stored))
            .on("change", move |_| typed(&name, value.clone(), ""));
        el("LABEL")
            .with("class", "choice-one")
            .with("for", &input_id)
            .put(input.view())
            .put(el("SPAN").text(words).view())
            .view()
    });
    let row = el("DIV").with("class", "choice-row").put(list(buttons));
    let legend = el("LEGEND").says(node, |what| of_choice(what, |choice| &choice.label));
    el("FIELDSET")
        .with("class", "choice")
        .with("id", &id)
        .put(legend.view())
        .put(hint(node))
        .put(row.view())
        .put(error_line(node, &id))
        .view()
}

/// One of many, as the phone's own list.
pub fn pick(node: &Node, choice: &Choice) -> AnyView {
    let (id, name) = (node.id(), node.name.clone());
    let options = choice.options.iter().map(|(stored, words)| {
        el("OPTION").with("value", stored).is(node, "selected", chosen(stored)).text(words).view()
    });
    let select = el("SELECT")
        .with("id", &id)
        .on("change", move |event: Told| typed(&name, value_of(&event), ""))
        .put(list(options));
    frame(node)
        .put(label(node, &id, |what| of_choice(what, |choice| &choice.label)))
        .put(hint(node))
        .put(select.view())
        .put(error_line(node, &id))
        .view()
}

/// A mark to be set or not.
pub fn tick(node: &Node) -> AnyView {
    let id = node.id();
    let input = el("INPUT")
        .with("type", "checkbox")
        .with("id", &id)
        .is(node, "checked", |what| matches!(what, What::Tick(tick) if tick.on))
        .does(node, "change", |what| match what {
            What::Tick(tick) => Some(tick.act.clone()),
            _ => None,
        });
    let words = el("SPAN").says(node, |what| match what {
        What::Tick(tick) => tick.label.clone(),
        _ => String::new(),
    });
    el("LABEL").with("class", "tick").with("for", &id).put(input.view()).put(words.view()).view()
}
