//! Batches: the list, each with its stage and next step.

pub mod form;

use super::route::Route;
use super::session::use_session;
use super::{words, write};
use crate::batch::Summary;
use leptos::prelude::*;

/// The screen.
#[component]
pub fn BatchesScreen() -> impl IntoView {
    let session = use_session();
    let list = Memo::new(move |_| {
        let now = session.now.get();
        session.journal.with(|journal| {
            let batches = journal.batches_latest_first().into_iter();
            batches.filter_map(|(id, _)| Summary::of(journal, id, now)).collect::<Vec<Summary>>()
        })
    });
    view! {
        <h1 tabindex="-1">"Batches"</h1>
        <a class="main-action" href=Route::NewBatch.address()>
            "Start a batch"
        </a>
        <Show
            when=move || list.with(|list| !list.is_empty())
            fallback=|| view! { <p>"No batch yet."</p> }
        >
            <ul class="batch-list">
                <For
                    each=move || list.get()
                    key=|summary| summary.clone().id
                    children=move |summary| {
                        let id = summary.id.clone();
                        let live = Memo::new(move |_| {
                            list.with(|list| list.iter().find(|s| s.id == id).cloned())
                        });
                        view! { <li>{move || live.get().map(|summary| row(&summary))}</li> }
                    }
                />
            </ul>
        </Show>
    }
}

fn row(summary: &Summary) -> impl IntoView + use<> {
    let session = use_session();
    let address = Route::Batch(summary.id.clone(), summary.stage).address();
    let (next, _) = words::step_words(summary.next);
    let w = session.writer();
    let details = format!(
        "{} · {} · {}",
        write::full_day(summary.heading.started),
        w.volume(summary.heading.volume),
        words::stage(summary.stage)
    );
    view! {
        <a class="batch-row" href=address>
            <span class="batch-name">{summary.heading.name.clone()}</span>
            <span class="batch-details">{details}</span>
            <span class="batch-next">{next}</span>
        </a>
    }
}
