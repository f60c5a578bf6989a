//! Now: the next step of the batch in hand, or the sums most used.

use super::bench::SumLinks;
use super::parts::live::{list, live};
use super::route::{Route, Sum};
use super::session::{Session, use_session};
use super::write::Writer;
use super::{words, write};
use crate::batch::{Id, Journal, NextStep, Stage, Summary, Today, by_due};
use crate::quantity::Estimate;
use leptos::prelude::*;

/// The screen.
#[component]
pub fn NowScreen() -> impl IntoView {
    let session = use_session();
    let in_hand = Memo::new(move |_| session.in_hand().and_then(|id| session.summary(&id)));
    let summary = Memo::new(move |_| {
        let now = session.now.get();
        in_hand.with(|summary| summary.as_ref().map(|s| (s.clone(), s.today(now))))
    });
    live(move || {
        Some(match summary.get() {
            Some((summary, today)) => view! { <InHand summary today /> }.into_any(),
            None => view! { <Empty /> }.into_any(),
        })
    })
}

#[component]
fn Empty() -> impl IntoView {
    view! {
        <h1 tabindex="-1">"Fermentside"</h1>
        <p class="lead">
            "Beside your fermenter: what to do next, why, and how sure. It works with no network and keeps the record on this phone only."
        </p>
        <a class="main-action" href=Route::NewBatch.address()>
            "Start a batch"
        </a>
        <h2>"Or one sum"</h2>
        <SumLinks sums=vec![Sum::Gravity, Sum::Sugar, Sum::Strength, Sum::Cooling] />
        <p class="small">{words::STRENGTH_CAUTION}</p>
    }
}

/// Where the large button leads.
fn step_route(summary: &Summary, next: NextStep) -> Route {
    let stage = match next {
        NextStep::Pitch => Stage::Pitch,
        NextStep::FirstLook(_)
        | NextStep::ReadAgain(_)
        | NextStep::LookForSigns(_)
        | NextStep::PitchAgain
        | NextStep::Stuck => Stage::Watch,
        NextStep::Bottle => Stage::Bottle,
        NextStep::WaitForBottles(_) | NextStep::TryOne | NextStep::Enjoy => Stage::Open,
    };
    Route::Batch(summary.id.clone(), stage)
}

/// Other batches that are due, what is due first standing first.
fn also_due(session: Session, in_hand: &Id) -> Option<AnyView> {
    let now = session.now.get();
    let all = session.journal.with(Journal::summaries);
    let due = |(summary, today): &(&Summary, Today)| {
        summary.id != *in_hand && today.due.is_some_and(|due| due <= now)
    };
    let rows: Vec<_> = by_due(&all, now)
        .into_iter()
        .filter(due)
        .map(|(summary, today)| {
            let address = step_route(summary, today.next).address();
            let (sentence, _) = words::step_words(today.next);
            let name = summary.heading.name.clone();
            view! {
                <li>
                    <a class="batch-row" href=address>
                        <span class="batch-name">{name}</span>
                        <span class="batch-next">{sentence}</span>
                    </a>
                </li>
            }
            .into_any()
        })
        .collect();
    (!rows.is_empty()).then(|| {
        view! {
            <h2>"Due too"</h2>
            <ul class="batch-list">{list(rows.into_iter())}</ul>
        }
        .into_any()
    })
}

#[component]
fn InHand(summary: Summary, today: Today) -> impl IntoView {
    let session = use_session();
    let w = Writer { units: session.units_now() };
    let (sentence, button) = words::step_words(today.next);
    let address = step_route(&summary, today.next).address();
    let since = summary.pitch.as_ref().map(|(_, pitch)| {
        let age = session.now.get_untracked().since(pitch.at);
        format!("{} since pitching", write::duration(age))
    });
    let gravity = summary.present.or(summary.original).map(Estimate::value).map(|sg| w.gravity(sg));
    let strength = summary
        .strength
        .as_ref()
        .map(|s| format!("{} ABV so far", write::strength(s.alcohol.value())));
    let this = summary.id.clone();
    let also = move || also_due(session, &this);
    let facts: Vec<String> = [gravity, strength, since].into_iter().flatten().collect();
    view! {
        <h1 tabindex="-1">{summary.heading.name.clone()}</h1>
        <p class="facts">{facts.join(" · ")}</p>
        <section class="next-step">
            <p class="next-sentence">{sentence}</p>
            <a class="main-action" href=address>
                {button}
            </a>
        </section>
        {live(also)}
        <h2>"Other things"</h2>
        <ul class="links">
            <li>
                <a href=Route::Batches.address()>"Another batch"</a>
            </li>
            <li>
                <a href=Route::Bench.address()>"A one-off sum"</a>
            </li>
        </ul>
    }
}
