//! What is touched to go somewhere or to do something: links, buttons, folds, forms, and what the arrow keys
//! walk through.

use super::board::Node;
use super::follow::{dress, label, list, runs, say, whole};
use super::session::send;
use crate::app::{Event, What};
use leptos::prelude::*;

/// A link.
pub fn link(node: &Node) -> AnyView {
    let current = say(node, |what| match what {
        What::Link(link) if link.here => "page".to_owned(),
        _ => String::new(),
    });
    let current = move || Some(current()).filter(|here| !here.is_empty());
    view! {
        <a class=say(node, link_kind) href=say(node, address) aria-current=current>
            {whole(node, link_runs)}
        </a>
    }
    .into_any()
}

fn link_kind(what: &What) -> String {
    match what {
        What::Link(link) => link.kind.to_owned(),
        _ => String::new(),
    }
}

fn address(what: &What) -> String {
    match what {
        What::Link(link) => link.address.clone(),
        _ => String::new(),
    }
}

fn link_runs(what: &What) -> AnyView {
    match what {
        // One thing alone needs no element of its own.
        What::Link(link) if link.runs.len() == 1 => {
            list(link.runs.iter().map(|run| run.text.clone().into_any()))
        }
        What::Link(link) => runs(&link.runs),
        _ => ().into_any(),
    }
}

/// A button.
pub fn action(node: &Node) -> AnyView {
    let (label, kind) = (say(node, button_label), say(node, button_kind));
    let spoken = say(node, |what| match what {
        What::Action(button) => button.spoken.clone(),
        _ => String::new(),
    });
    let spoken = move || Some(spoken()).filter(|spoken| !spoken.is_empty());
    let sends = matches!(node.what.get_untracked(), What::Action(button) if button.act.is_none());
    let what = node.what.clone();
    let press = move |_| {
        if let What::Action(button) = what.get_untracked()
            && let Some(act) = button.act
        {
            send(Event::Did(act));
        }
    };
    let kind_of_button = if sends { "submit" } else { "button" };
    view! {
        <button id=node.id() type=kind_of_button class=kind aria-label=spoken on:click=press>
            {label}
        </button>
    }
    .into_any()
}

fn button_label(what: &What) -> String {
    match what {
        What::Action(button) => button.label.clone(),
        What::HandOut(file) => file.label.clone(),
        _ => String::new(),
    }
}

fn button_kind(what: &What) -> String {
    match what {
        What::Action(button) => button.kind.to_owned(),
        _ => String::new(),
    }
}

/// A button that hands a file out; `boot.js` does it, at the touch itself, as phones ask for.
pub fn hand_out(node: &Node) -> AnyView {
    let of = |text: fn(&crate::app::HandOut) -> String| {
        let what = node.what.clone();
        move || match what.get() {
            What::HandOut(file) => text(&file),
            _ => String::new(),
        }
    };
    view! {
        <button
            type="button"
            data-hand-out=of(|file| file.file.clone())
            data-type=of(|file| file.media.to_owned())
            data-text=of(|file| file.text.clone())
        >
            {say(node, button_label)}
        </button>
    }
    .into_any()
}

/// What is folded away until it is wanted.
pub fn fold(node: &Node, inner: AnyView) -> AnyView {
    let of = |text: fn(&crate::app::Fold) -> String| {
        let what = node.what.clone();
        move || match what.get() {
            What::Fold(fold) => text(&fold),
            _ => String::new(),
        }
    };
    let what = node.what.clone();
    let open = move || what.with(|what| matches!(what, What::Fold(fold) if fold.open));
    let (name, was) = (node.name.to_string(), open.clone());
    let turned = move |event: leptos::ev::Event| {
        use wasm_bindgen::JsCast;
        let Some(element) = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok())
        else {
            return;
        };
        let open = element.has_attribute("open");
        if open != untrack(&was) {
            send(Event::Folded { name: name.clone(), open });
        }
    };
    view! {
        <details id=node.id() class=of(|fold| fold.kind.to_owned()) open=open on:toggle=turned>
            <summary>{of(|fold| fold.summary.clone())}</summary>
            {inner}
        </details>
    }
    .into_any()
}

/// A form.
pub fn form(node: &Node, inner: AnyView) -> AnyView {
    let what = node.what.clone();
    let sent = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        if let What::Group(group) = what.get_untracked()
            && let Some(act) = group.send
        {
            send(Event::Did(act));
        }
    };
    view! {
        <form class=say(node, dress) on:submit=sent novalidate>
            {inner}
        </form>
    }
    .into_any()
}

/// Parts that the arrow keys walk through.
pub fn walk(node: &Node, inner: AnyView) -> AnyView {
    let what = node.what.clone();
    let on_key = move |event: leptos::ev::KeyboardEvent| {
        let What::Group(group) = what.get_untracked() else { return };
        let act = match (event.key().as_str(), group.arrows) {
            ("ArrowLeft", Some((left, _))) => left,
            ("ArrowRight", Some((_, right))) => right,
            _ => return,
        };
        event.prevent_default();
        send(Event::Did(act));
    };
    view! {
        <div class=say(node, dress) role="group" aria-label=say(node, label) on:keydown=on_key>
            {inner}
        </div>
    }
    .into_any()
}
