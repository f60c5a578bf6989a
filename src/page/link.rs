//! What is touched to go somewhere or to do something: links, buttons, folds and forms.

use super::board::Node;
use super::card::runs;
use super::element::{Element, Told, el, list};
use super::session::send;
use crate::app::{Act, Action, Event, Fold, Group, HandOut, Link, What};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

fn filled(text: &str) -> Option<String> {
    (!text.is_empty()).then(|| text.to_owned())
}

fn of_link<T>(what: &What, of: fn(&Link) -> Option<T>) -> Option<T> {
    match what {
        What::Link(link) => of(link),
        _ => None,
    }
}

/// A link.
pub fn link(node: &Node) -> AnyView {
    el("A")
        .with("id", &node.id())
        .follow(node, "class", |what| of_link(what, |link| filled(link.kind)))
        .follow(node, "href", |what| of_link(what, |link| Some(link.address.clone())))
        .follow(node, "aria-current", |what| {
            of_link(what, |link| link.here.then(|| "page".to_owned()))
        })
        .shows(node, link_runs)
        .view()
}

fn link_runs(what: &What) -> AnyView {
    match what {
        // One thing alone needs no element of its own.
        What::Link(link) if link.runs.len() == 1 => {
            list(link.runs.iter().map(|run| run.text.clone().into_any()))
        }
        What::Link(link) => runs(&link.runs),
        _ => list(std::iter::empty()),
    }
}

fn of_action<T>(what: &What, of: fn(&Action) -> Option<T>) -> Option<T> {
    match what {
        What::Action(button) => of(button),
        _ => None,
    }
}

/// A button; one that does nothing of its own sends the form it stands in.
pub fn action(node: &Node) -> AnyView {
    let act = |what: &What| of_action(what, |button| button.act.clone());
    let sends = node.what.with_untracked(|what| act(what).is_none());
    el("BUTTON")
        .with("id", &node.id())
        .with("type", if sends { "submit" } else { "button" })
        .follow(node, "class", |what| of_action(what, |button| filled(button.kind)))
        .follow(node, "aria-label", |what| of_action(what, |button| filled(&button.spoken)))
        .says(node, |what| of_action(what, |button| Some(button.label.clone())).unwrap_or_default())
        .does(node, "click", act)
        .view()
}

fn of_file(what: &What, of: fn(&HandOut) -> String) -> Option<String> {
    match what {
        What::HandOut(file) => Some(of(file)),
        _ => None,
    }
}

/// A button that hands a file out; `boot.js` does it, at the touch itself, as phones ask for.
pub fn hand_out(node: &Node) -> AnyView {
    el("BUTTON")
        .with("id", &node.id())
        .with("type", "button")
        .follow(node, "data-hand-out", |what| of_file(what, |file| file.file.clone()))
        .follow(node, "data-type", |what| of_file(what, |file| file.media.to_owned()))
        .follow(node, "data-text", |what| of_file(what, |file| file.text.clone()))
        .says(node, |what| of_file(what, |file| file.label.clone()).unwrap_or_default())
        .does(node, "handed-out", |what| match what {
            What::HandOut(file) => file.act.clone(),
            _ => None,
        })
        .view()
}

fn of_fold<T>(what: &What, of: fn(&Fold) -> T) -> Option<T> {
    match what {
        What::Fold(fold) => Some(of(fold)),
        _ => None,
    }
}

/// What is folded away until it is wanted.
pub fn fold(node: &Node, inner: AnyView) -> AnyView {
    let is_open = |what: &What| of_fold(what, |fold| fold.open).unwrap_or(false);
    let (name, what) = (node.name.to_string(), node.what.clone());
    let turned = move |event: Told| {
        let Some(element) = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok())
        else {
            return;
        };
        let open = element.has_attribute("open");
        if open != what.with_untracked(is_open) {
            send(Event::Folded { name: name.clone(), open });
        }
    };
    let words = el("SPAN")
        .says(node, |what| of_fold(what, |fold| fold.summary.clone()).unwrap_or_default());
    let beside = |what: &What| match what {
        What::Fold(fold) => runs(&fold.beside),
        _ => list(std::iter::empty()),
    };
    let summary = el("SUMMARY").put(words.view()).text(" ").shows(node, beside);
    el("DETAILS")
        .with("id", &node.id())
        .follow(node, "class", |what| of_fold(what, |fold| fold.kind.to_owned()))
        .follow(node, "open", |what| {
            of_fold(what, |fold| fold.open).filter(|open| *open).map(|_| String::new())
        })
        .on("toggle", turned)
        .put(summary.view())
        .put(inner)
        .view()
}

fn of_group<T>(what: &What, of: fn(&Group) -> Option<T>) -> Option<T> {
    match what {
        What::Group(group) => of(group),
        _ => None,
    }
}

/// A group in its dress, with its name and role.
pub fn grouped(node: &Node, tag: &'static str) -> Element {
    el(tag)
        .follow(node, "class", |what| of_group(what, |group| filled(group.kind)))
        .follow(node, "role", |what| of_group(what, |group| filled(group.role)))
        .follow(node, "aria-label", |what| of_group(what, |group| filled(&group.label)))
}

/// Fields of one question.
pub fn fieldset(node: &Node, inner: AnyView) -> AnyView {
    let legend = el("LEGEND")
        .says(node, |what| of_group(what, |group| Some(group.label.clone())).unwrap_or_default());
    el("FIELDSET")
        .follow(node, "class", |what| of_group(what, |group| filled(group.kind)))
        .put(legend.view())
        .put(inner)
        .view()
}

/// A form.
pub fn form(node: &Node, inner: AnyView) -> AnyView {
    grouped(node, "FORM")
        .with("novalidate", "")
        .on("submit", |event| event.prevent_default())
        .does(node, "submit", |what| of_group(what, |group| group.send.clone()))
        .put(inner)
        .view()
}

/// Parts that the arrow keys walk through.
pub fn walk(node: &Node, inner: AnyView) -> AnyView {
    let what = node.what.clone();
    let on_key = move |event: Told| {
        let Some(key) = event.dyn_ref::<web_sys::KeyboardEvent>() else { return };
        let arrows = what.with_untracked(|what| of_group(what, |group| group.arrows.clone()));
        let act: Act = match (key.key().as_str(), arrows) {
            ("ArrowLeft", Some((left, _))) => left,
            ("ArrowRight", Some((_, right))) => right,
            _ => return,
        };
        event.prevent_default();
        send(Event::Did(act));
    };
    grouped(node, "DIV").with("role", "group").on("keydown", on_key).put(inner).view()
}
