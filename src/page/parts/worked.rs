//! "How this was worked out": inputs, steps, sources, and what the ± is made of.

use crate::page::words;
use crate::page::write::Writer;
use crate::science::{Step, Worked};
use leptos::prelude::*;

fn line(writer: Writer, step: &Step) -> impl IntoView + use<> {
    let from = step.source.map(words::source).unwrap_or_default();
    view! {
        <tr>
            <th scope="row">{words::term(step.term)}</th>
            <td class="worked-value">{writer.amount(step.amount)}</td>
            <td class="worked-how">
                <span class="worked-formula">{step.formula}</span>
                <span class="worked-source">{from}</span>
            </td>
        </tr>
    }
}

/// A working, folded away until it is wanted. `unit` names what the doubts are in.
#[component]
pub fn HowWorked(
    #[prop(into)] worked: Signal<Option<Worked>>,
    #[prop(into)] writer: Signal<Writer>,
    /// The doubts' number of decimals, factor and unit, to write them in.
    doubt_in: (usize, f64, &'static str),
) -> impl IntoView {
    let (places, factor, unit) = doubt_in;
    let steps = move || {
        let worked = worked.get()?;
        let w = writer.get();
        let inputs = worked.inputs.iter().map(|step| line(w, step)).collect_view();
        let steps = worked.steps.iter().map(|step| line(w, step)).collect_view();
        let doubts = worked
            .doubts
            .iter()
            .map(|doubt| {
                let size = crate::quantity::write_number(doubt.sigma * factor, places);
                view! {
                    <tr>
                        <th scope="row">{words::term(doubt.term)}</th>
                        <td class="worked-value">{format!("±\u{A0}{size}\u{A0}{unit}")}</td>
                        <td></td>
                    </tr>
                }
            })
            .collect_view();
        let any_doubt = !worked.doubts.is_empty();
        Some(view! {
            <table>
                <caption>"What went in"</caption>
                <tbody>{inputs}</tbody>
            </table>
            <table>
                <caption>"Step by step"</caption>
                <tbody>{steps}</tbody>
            </table>
            <Show when=move || any_doubt>
                <p>
                    "± is one standard deviation: the true value lies within it about two times in three."
                </p>
            </Show>
            <table>
                <caption>{if any_doubt { "What the ± is made of" } else { "" }}</caption>
                <tbody>{doubts}</tbody>
            </table>
        })
    };
    view! {
        <details class="worked">
            <summary>"How this was worked out"</summary>
            {steps}
        </details>
    }
}
