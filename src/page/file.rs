//! A field for a file of the phone: its text goes in, its name and all else of it stay outside.

use super::board::Node;
use super::element::{Told, el};
use super::session::send;
use crate::app::{Event, FileField, LONGEST_FILE, NoFile, What};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

fn of_field(what: &What, of: fn(&FileField) -> &str) -> String {
    match what {
        What::File(field) => of(field).to_owned(),
        _ => String::new(),
    }
}

/// The field.
pub fn file(node: &Node) -> AnyView {
    let (id, name) = (node.id(), node.name.to_string());
    let hint = format!("{id}-hint");
    let chosen = move |event: Told| {
        let input = event.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok());
        let Some(input) = input else { return };
        let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
        let name = name.clone();
        leptos::task::spawn_local(async move {
            let text = if file.size() > LONGEST_FILE as f64 {
                Err(NoFile::TooLarge)
            } else {
                let read = wasm_bindgen_futures::JsFuture::from(file.text()).await;
                read.ok().and_then(|text| text.as_string()).ok_or(NoFile::Unread)
            };
            // So that the same file can be chosen again.
            input.set_value("");
            send(Event::FileChosen { name, text });
        });
    };
    let label =
        el("LABEL").with("for", &id).says(node, |what| of_field(what, |field| &field.label));
    let below = el("P")
        .with("class", "field-hint")
        .with("id", &hint)
        .says(node, |what| of_field(what, |field| &field.hint));
    let input = el("INPUT")
        .with("id", &id)
        .with("type", "file")
        .with("aria-describedby", &hint)
        .follow(node, "accept", |what| Some(of_field(what, |field| field.accept)))
        .on("change", chosen);
    let parts = el("DIV").with("class", "field").put(label.view()).put(below.view());
    parts.put(input.view()).view()
}
