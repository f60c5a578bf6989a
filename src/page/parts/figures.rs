//! A short table of names and figures.

use crate::page::parts::live::{Told, list};
use leptos::prelude::*;

/// Names and figures, a row each.
#[component]
pub fn Figures(#[prop(into)] rows: Told<Vec<(&'static str, String)>>) -> impl IntoView {
    let rows = move || {
        let row = |(name, figure)| {
            view! {
                <tr>
                    <th scope="row">{name}</th>
                    <td>{figure}</td>
                </tr>
            }
            .into_any()
        };
        list(rows.get().into_iter().map(row))
    };
    view! {
        <table class="figures">
            <tbody>{move || rows()}</tbody>
        </table>
    }
}
