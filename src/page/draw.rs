//! From a part to its element.

use super::board::{Node, Shown};
use super::follow::{dress, label, runs, say, whole};
use super::{card, field, link, sketch, stem};
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
    match node.what.get_untracked() {
        What::Heading(1, _) => {
            view! { <h1 id=node.id() tabindex="-1">{say(&node, words)}</h1> }.into_any()
        }
        What::Heading(2, _) => view! { <h2>{say(&node, words)}</h2> }.into_any(),
        What::Heading(..) => view! { <h3>{say(&node, words)}</h3> }.into_any(),
        What::Text(..) => view! { <p class=say(&node, dress)>{say(&node, words)}</p> }.into_any(),
        What::Line(..) => {
            view! { <p class=say(&node, dress)>{whole(&node, runs_of)}</p> }.into_any()
        }
        What::Link(_) => link::link(&node),
        What::Action(_) => link::action(&node),
        What::HandOut(_) => link::hand_out(&node),
        What::Answer(_) => card::answer(&node),
        What::Verdict(_) => whole(&node, card::verdict).into_any(),
        What::Timer(_) => whole(&node, card::timer).into_any(),
        What::Number(_) => field::number(&node),
        What::Words(field) => field::words(&node, field.long),
        What::Choice(_) => field::choice(&node),
        What::Pick(_) => field::pick(&node),
        What::Tick(_) => field::tick(&node),
        What::Moment(_) => field::moment(&node),
        What::Slider(_) => field::slider(&node),
        What::Stem(_) => stem::stem(&node),
        What::Figures(_) => whole(&node, card::figures).into_any(),
        What::Table(_) => whole(&node, card::table).into_any(),
        What::Items(..) => whole(&node, card::items).into_any(),
        What::Worked(_) => whole(&node, card::worked).into_any(),
        What::Drawing(drawing) => sketch::sketch(&node, &drawing),
        What::Outcome(_) => {
            view! { <p class="form-outcome" role="alert">{say(&node, words)}</p> }.into_any()
        }
        What::Heard(_) => {
            view! { <p class="heard" role="alert">{say(&node, words)}</p> }.into_any()
        }
        What::Fold(_) => link::fold(&node, inner()),
        What::Group(group) => {
            let (class, label) = (say(&node, dress), say(&node, label));
            let role = (!group.role.is_empty()).then_some(group.role);
            let label = move || Some(label()).filter(|label| !label.is_empty());
            match group.tag {
                Tag::Div if group.arrows.is_some() => link::walk(&node, inner()),
                Tag::Div => {
                    view! { <div class=class role=role aria-label=label>{inner()}</div> }.into_any()
                }
                Tag::Section => {
                    view! { <section class=class role=role aria-label=label>{inner()}</section> }
                        .into_any()
                }
                Tag::Header => view! { <header class=class>{inner()}</header> }.into_any(),
                Tag::Nav => view! { <nav class=class aria-label=label>{inner()}</nav> }.into_any(),
                Tag::Fieldset => view! {
                    <fieldset class=class>
                        <legend>{say(&node, self::label)}</legend>
                        {inner()}
                    </fieldset>
                }
                .into_any(),
                Tag::Ul => view! { <ul class=class>{inner()}</ul> }.into_any(),
                Tag::Ol => view! { <ol class=class>{inner()}</ol> }.into_any(),
                Tag::Li => view! { <li class=class>{inner()}</li> }.into_any(),
                Tag::Form => link::form(&node, inner()),
            }
        }
    }
}

fn words(what: &What) -> String {
    match what {
        What::Heading(_, text) | What::Text(_, text) | What::Outcome(text) | What::Heard(text) => {
            text.clone()
        }
        _ => String::new(),
    }
}

fn runs_of(what: &What) -> AnyView {
    match what {
        What::Line(_, line) => runs(line),
        _ => ().into_any(),
    }
}
