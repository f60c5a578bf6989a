//! "How this was worked out": inputs, steps, sources, and what the ± is made of.

use crate::page::parts::live::{Told, list, live, or_nothing};
use crate::page::words;
use crate::page::write::Writer;
use crate::science::{Step, Worked};
use leptos::prelude::*;

fn line(writer: Writer, step: &Step) -> AnyView {
    let from = step.source.map(words::source).unwrap_or_default();
    entry(words::term(step.term), writer.amount(step.amount), step.formula, from)
}

fn entry(
    name: &'static str,
    value: String,
    formula: &'static str,
    source: &'static str,
) -> AnyView {
    view! {
        <div class="worked-line">
            <dt>{name}</dt>
            <dd class="worked-value">{value}</dd>
            <dd class="worked-formula">{formula}</dd>
            <dd class="worked-source">{source}</dd>
        </div>
    }
    .into_any()
}

/// A working, folded away until it is wanted. `unit` names what the doubts are in.
#[component]
pub fn HowWorked(
    #[prop(into)] worked: Told<Option<Worked>>,
    #[prop(into)] writer: Told<Writer>,
    /// The doubts' number of decimals, factor and unit, to write them in.
    doubt_in: (usize, f64, &'static str),
) -> impl IntoView {
    let (places, factor, unit) = doubt_in;
    let steps = move || {
        let worked = worked.get()?;
        let w = writer.get();
        let inputs = list(worked.inputs.iter().map(|step| line(w, step)));
        let steps = list(worked.steps.iter().map(|step| line(w, step)));
        let doubts = list(worked.doubts.iter().map(|doubt| {
            let size = crate::quantity::write_number(doubt.sigma * factor, places);
            entry(words::term(doubt.term), format!("±\u{A0}{size}\u{A0}{unit}"), "", "")
        }));
        let told = !worked.doubts.is_empty();
        let doubted =
            told.then(|| view! { <p class="worked-part">"What the ± is made of"</p> }.into_any());
        let explained = told.then(|| {
            view! {
                <p class="small">
                    "± is one standard deviation: the true value lies within it about two times in three."
                </p>
            }
            .into_any()
        });
        let (doubted, explained) = (or_nothing(doubted), or_nothing(explained));
        let body = view! {
            <p class="worked-part">"What went in"</p>
            <dl>{inputs}</dl>
            <p class="worked-part">"Step by step"</p>
            <dl>{steps}</dl>
            {doubted}
            <dl>{doubts}</dl>
            {explained}
        };
        Some(body.into_any())
    };
    view! {
        <details class="worked">
            <summary>"How this was worked out"</summary>
            {live(steps)}
        </details>
    }
}
