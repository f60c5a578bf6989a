//! From a part to its element.

use super::board::{Node, Shown};
use super::element::{el, list};
use super::{card, field, file, link, sketch, stem};
use crate::app::{Tag, What};
use leptos::prelude::*;

/// Parts one after another; those that stay keep their elements.
pub fn parts(shown: &Shown) -> AnyView {
    let shown = shown.clone();
    view! { <For each=move || shown.get() key=Node::key children=draw /> }.into_any()
}

/// The element of a part.
fn draw(node: Node) -> AnyView {
    let inner = || parts(&node.inner);
    let text = |tag| el(tag).says(&node, words);
    let read = |view| el("DIV").with("class", "read").shows(&node, view).view();
    match node.what.get_untracked() {
        What::Heading(1, _) => text("H1").with("id", &node.id()).with("tabindex", "-1").view(),
        What::Heading(2, _) => text("H2").view(),
        What::Heading(..) => text("H3").view(),
        What::Text(..) => text("P").follow(&node, "class", dress).view(),
        What::Line(..) => el("P").follow(&node, "class", dress).shows(&node, runs_of).view(),
        What::Link(_) => link::link(&node),
        What::Action(_) => link::action(&node),
        What::HandOut(_) => link::hand_out(&node),
        What::File(_) => file::file(&node),
        What::Answer(_) | What::Verdict(_) | What::Timer(_) => card::plate(&node, inner()),
        What::Number(_) => field::number(&node),
        What::Words(field) => field::words(&node, &field),
        What::Choice(choice) => field::choice(&node, &choice),
        What::Pick(choice) => field::pick(&node, &choice),
        What::Tick(_) => field::tick(&node),
        What::Moment(field) => field::moment(&node, &field),
        What::Slider(slider) => field::slider(&node, &slider),
        What::Stem(_) => stem::stem(&node),
        What::Figures(_) => read(card::figures),
        What::Table(_) => read(card::table),
        What::Items(..) => read(card::items),
        What::Worked(_) => read(card::worked),
        What::Drawing(drawing) => sketch::sketch(&node, &drawing),
        What::Outcome(_) => text("P").with("class", "form-outcome").with("role", "alert").view(),
        What::Fold(_) => link::fold(&node, inner()),
        What::Group(group) => {
            let tag = match group.tag {
                Tag::Div if group.arrows.is_some() => return link::walk(&node, inner()),
                Tag::Fieldset => return link::fieldset(&node, inner()),
                Tag::Form => return link::form(&node, inner()),
                Tag::Div => "DIV",
                Tag::Section => "SECTION",
                Tag::Header => "HEADER",
                Tag::Nav => "NAV",
                Tag::Ul => "UL",
                Tag::Ol => "OL",
                Tag::Li => "LI",
            };
            link::grouped(&node, tag).put(inner()).view()
        }
    }
}

fn words(what: &What) -> String {
    match what {
        What::Heading(_, text) | What::Text(_, text) | What::Outcome(text) => text.clone(),
        _ => String::new(),
    }
}

fn dress(what: &What) -> Option<String> {
    match what {
        What::Text(kind, _) | What::Line(kind, _) if !kind.is_empty() => Some((*kind).to_owned()),
        _ => None,
    }
}

fn runs_of(what: &What) -> AnyView {
    match what {
        What::Line(_, line) => card::runs(line),
        _ => list(std::iter::empty()),
    }
}
