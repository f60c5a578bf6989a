//! One batch: its heading, its four stages, and what it has come to.

mod bottle;
mod bottled;
mod course;
mod log;
mod open;
mod pitch;
mod print;
mod quiet;
mod reading_fields;
mod reading_form;
mod remind;
mod watch;

use super::parts::figures::Figures;
use super::parts::worked::HowWorked;
use super::route::Route;
use super::session::{Session, use_session};
use super::write::{self, Writer};
use super::{bench, words};
use crate::batch::{Change, EntryKey, Id, Kind, Stage, Summary};
use crate::page::parts::live::{When, list, live as part};
use crate::quantity::{Estimate, write_number};
use leptos::prelude::*;

/// The batch as it stands, followed.
pub type Live = Memo<Option<Summary>>;

/// The screen.
#[component]
pub fn BatchScreen(id: Id, stage: Stage) -> impl IntoView {
    let session = use_session();
    let live: Live = {
        let id = id.clone();
        Memo::new(move |_| session.summary(&id))
    };
    let there = Memo::new(move |_| live.with(Option::is_some));
    part(move || {
        if !there.get() {
            let away = view! {
                <h1 tabindex="-1">"This batch is not here"</h1>
                <p class="back">
                    <a href=Route::Batches.address()>"See all batches"</a>
                </p>
            };
            return Some(away.into_any());
        }
        let id = id.clone();
        let body = match stage {
            Stage::Pitch => view! { <pitch::PitchStage id=id.clone() live /> }.into_any(),
            Stage::Watch => view! { <watch::WatchStage id=id.clone() live /> }.into_any(),
            Stage::Bottle => view! { <bottle::BottleStage id=id.clone() live /> }.into_any(),
            Stage::Open => view! { <open::OpenStage id=id.clone() live /> }.into_any(),
        };
        let here = view! {
            <Heading id=id live stage />
            {body}
        };
        Some(here.into_any())
    })
}

/// What a batch has come to, in one line.
fn facts(w: Writer, summary: &Summary) -> String {
    let start = summary.original.map(|og| {
        let stated = if summary.original_was_read { "" } else { " stated" };
        format!("Start {}{stated}", w.gravity(og.value()))
    });
    let now = summary.present.map(|now| format!("now {}", w.gravity(now.value())));
    let strength = summary.strength.as_ref().map(|strength| {
        let (abv, so_far) = match summary.strength_in_bottle() {
            Some(in_bottle) => (in_bottle, ""),
            None => (strength.alcohol, " so far"),
        };
        let sigma = write_number(abv.sigma(), 1);
        format!("{} ±\u{A0}{sigma} ABV{so_far}", write::strength(abv.value()))
    });
    let parts: Vec<_> = [start, now, strength].into_iter().flatten().collect();
    if parts.is_empty() { w.volume(summary.heading.volume) } else { parts.join(" · ") }
}

#[component]
fn Heading(id: Id, live: Live, stage: Stage) -> impl IntoView {
    let session = use_session();
    let name =
        move || live.with(|s| s.as_ref().map(|s| s.heading.name.clone()).unwrap_or_default());
    let line =
        move || live.with(|s| s.as_ref().map(|s| facts(session.writer(), s)).unwrap_or_default());
    let strength = move || live.with(|s| s.as_ref().and_then(|s| s.strength.clone()));
    let figures = move || strength().as_ref().map(bench::strength::rules).unwrap_or_default();
    let worked = move || strength().map(|found| found.worked);
    let edit = Route::EditBatch(id.clone()).address();
    let in_hand = {
        let id = id.clone();
        Memo::new(move |_| session.in_hand().as_ref() == Some(&id))
    };
    let take = {
        let id = id.clone();
        move |_| {
            // Kept or not, the batch itself is not touched.
            let _ = session.set(|settings| settings.in_hand = Some(id.clone()));
        }
    };
    let stages = list(Stage::ALL.into_iter().map(|one| {
        let address = Route::Batch(id.clone(), one).address();
        let current = (one == stage).then_some("page");
        view! {
            <a href=address aria-current=current>
                {words::stage(one)}
            </a>
        }
        .into_any()
    }));
    view! {
        <header class="batch-head">
            <h1 tabindex="-1">{move || name()}</h1>
            <p class="facts">{move || line()}</p>
            <p class="batch-links">
                <a href=edit>"Change"</a>
                <When is=move || !in_hand.get()>
                    <button type="button" class="quiet" on:click=take.clone()>
                        "Take in hand"
                    </button>
                </When>
            </p>
            <nav class="stages" aria-label="Stages">
                {stages}
            </nav>
        </header>
        <When is=move || strength().is_some()>
            <details class="more">
                <summary>"Strength and attenuation"</summary>
                <Figures rows=figures />
                <p class="small">{words::STRENGTH_CAUTION}</p>
                <HowWorked
                    worked
                    writer=move || session.writer()
                    doubt_in=(2, 1.0, "% ABV")
                />
            </details>
        </When>
    }
}

/// Deletes a thing at once; the undo bar takes it back.
pub fn remove(session: Session, kind: Kind, id: &Id, done: &str) -> Option<String> {
    let key = EntryKey { kind, id: id.clone() };
    session.change(Change::remove(key), Some(done)).err()
}

/// The best gravity at the start, for fields that begin there.
pub fn original(live: Live) -> Option<crate::quantity::SpecificGravity> {
    live.with(|summary| summary.as_ref().and_then(|s| s.original).map(Estimate::value))
}
