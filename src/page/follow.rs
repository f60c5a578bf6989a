//! A part's data, followed: what a closure reads of it, each of one type, so that the machinery behind
//! is compiled once and not for every place it is used in.

use super::board::Node;
use crate::app::{Run, What};
use leptos::prelude::*;
use leptos::tachys::reactive_graph::SharedReactiveFunction;
use std::sync::{Arc, Mutex};

/// A text of a part that follows it.
pub fn say(node: &Node, text: fn(&What) -> String) -> impl Fn() -> String + Clone + Send + 'static {
    let what = node.what.clone();
    move || what.with(text)
}

/// A view made of the whole of a part, made again when the part has changed.
pub fn whole(node: &Node, view: fn(&What) -> AnyView) -> SharedReactiveFunction<AnyView> {
    let what = node.what.clone();
    Arc::new(Mutex::new(move || what.with(view)))
}

/// Views one after another.
pub fn list(views: impl Iterator<Item = AnyView>) -> AnyView {
    views.collect::<Vec<_>>().into_any()
}

/// The view, or none.
pub fn or_nothing(view: Option<AnyView>) -> AnyView {
    view.unwrap_or_else(|| ().into_any())
}

pub fn dress(what: &What) -> String {
    match what {
        What::Text(kind, _) | What::Line(kind, _) => (*kind).to_owned(),
        What::Group(group) => group.kind.to_owned(),
        _ => String::new(),
    }
}

/// The runs of a line, with a space between.
pub fn runs(line: &[Run]) -> AnyView {
    list(line.iter().map(|run| {
        let text = format!("{} ", run.text);
        match run.kind {
            "strong" => view! { <strong>{text}</strong> }.into_any(),
            "" => view! { <span>{text}</span> }.into_any(),
            kind => view! { <span class=kind>{text}</span> }.into_any(),
        }
    }))
}

pub fn label(what: &What) -> String {
    match what {
        What::Group(group) => group.label.clone(),
        _ => String::new(),
    }
}
