//! Batches: the list, what is due first, each with how it stands and its next step.

pub mod form;

use super::route::Route;
use super::session::use_session;
use super::{words, write};
use crate::batch::{Journal, Summary, Today, by_due, tally};
use crate::page::parts::figures::figures;
use crate::page::parts::live::live;
use leptos::prelude::*;

/// The screen.
#[component]
pub fn BatchesScreen() -> impl IntoView {
    let session = use_session();
    let rows = move || -> Vec<AnyView> {
        let now = session.now.get();
        let all = session.journal.with(Journal::summaries);
        by_due(&all, now).iter().map(|(summary, today)| row(summary, today)).collect()
    };
    view! {
        <h1 tabindex="-1">"Batches"</h1>
        <a class="main-action" href=Route::NewBatch.address()>
            "Start a batch"
        </a>
        {move || {
            let rows = rows();
            if rows.is_empty() {
                view! { <p>"No batch yet."</p> }.into_any()
            } else {
                view! { <ul class="batch-list">{rows}</ul> }.into_any()
            }
        }}
        {live(tally_of)}
    }
}

/// Volume begun in each calendar year; nothing before there is a batch.
fn tally_of() -> Option<AnyView> {
    let session = use_session();
    let years = session.journal.with(tally);
    let w = session.writer();
    let rows = figures(
        years
            .iter()
            .map(|year| {
                let batches = if year.batches == 1 { "batch" } else { "batches" };
                let figure = format!("{} in {} {batches}", w.volume(year.volume), year.batches);
                (year.year.to_string(), figure)
            })
            .collect(),
    );
    let table = view! {
        <h2>"Begun in each year"</h2>
        {rows}
        <p class="small">{words::TALLY_CAUTION}</p>
    };
    (!years.is_empty()).then(|| table.into_any())
}

fn row(summary: &Summary, today: &Today) -> AnyView {
    let session = use_session();
    let address = Route::Batch(summary.id.clone(), today.stage).address();
    let (next, _) = words::step_words(today.next);
    let w = session.writer();
    let details = format!(
        "{} · {} · {}",
        write::full_day(summary.heading.started),
        w.volume(summary.heading.volume),
        words::place(summary, today)
    );
    view! {
        <li>
            <a class="batch-row" href=address>
                <span class="batch-name">{summary.heading.name.clone()}</span>
                <span class="batch-details">{details}</span>
                <span class="batch-next">{next}</span>
            </a>
        </li>
    }
    .into_any()
}
