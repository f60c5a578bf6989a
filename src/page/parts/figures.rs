//! A short table of names and figures.

use crate::page::parts::live::{Told, list, live};
use leptos::prelude::*;

/// Names and figures, a row each, that follow what they are told from.
#[component]
pub fn Figures(#[prop(into)] rows: Told<Vec<(&'static str, String)>>) -> impl IntoView {
    live(move || {
        let own = |(name, figure): (&str, String)| (name.to_owned(), figure);
        Some(figures(rows.get().into_iter().map(own).collect()))
    })
}

/// Names and figures, a row each, as they are.
pub fn figures(rows: Vec<(String, String)>) -> AnyView {
    let row = |(name, figure)| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{figure}</td>
            </tr>
        }
        .into_any()
    };
    view! {
        <table class="figures">
            <tbody>{list(rows.into_iter().map(row))}</tbody>
        </table>
    }
    .into_any()
}

/// Sentences one below another, each with its mark.
pub fn items(sentences: Vec<String>) -> AnyView {
    list(sentences.into_iter().map(|sentence| view! { <li>{sentence}</li> }.into_any()))
}
