//! A short table of names and figures.

use leptos::prelude::*;

/// Names and figures, a row each.
#[component]
pub fn Figures(#[prop(into)] rows: Signal<Vec<(&'static str, String)>>) -> impl IntoView {
    let rows = move || {
        let row = |(name, figure)| {
            view! {
                <tr>
                    <th scope="row">{name}</th>
                    <td>{figure}</td>
                </tr>
            }
        };
        rows.get().into_iter().map(row).collect_view()
    };
    view! {
        <table class="figures">
            <tbody>{rows}</tbody>
        </table>
    }
}
