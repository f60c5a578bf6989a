//! Watch: how it stands, what to do about it, its course, and its log.

use super::Live;
use super::course::CourseView;
use super::log::Log;
use super::quiet::QuietAirlock;
use super::reading_form::ReadingForm;
use super::remind::Reminders;
use crate::advice::watch::State;
use crate::batch::{Id, Summary, Vessel};
use crate::page::parts::answer::card;
use crate::page::parts::live::{When, list, live as part};
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::words;
use crate::page::words::started::{step, warmth_words};
use crate::page::write::Writer;
use crate::quantity::Hours;
use leptos::prelude::*;

/// After so long nobody asks whether it has begun.
const ASKED_FOR: Hours = Hours::literal(7.0 * 24.0);

/// What is being noted.
#[derive(Clone, PartialEq)]
enum Noting {
    Nothing,
    New(Vessel),
    Changed(Id),
}

/// The steps to go through, with what was done marked.
fn ladder(w: Writer, summary: &Summary) -> Option<AnyView> {
    if summary.ladder.is_empty() {
        return None;
    }
    let steps = summary.ladder.iter().map(|rung| {
        let text = step(w, rung.step);
        let done = rung.done.then(|| view! { <strong class="ladder-done">"Done. "</strong> });
        let class = if rung.done { "ladder-step ladder-was" } else { "ladder-step" };
        view! { <li class=class>{done}{text}</li> }.into_any()
    });
    let view = view! {
        <section class="ladder">
            <h2>"Step by step"</h2>
            <ol>{list(steps)}</ol>
        </section>
    };
    Some(view.into_any())
}

/// A satellite was set or read.
fn has_satellite(summary: &Summary) -> bool {
    let set = summary.pitch.as_ref().is_some_and(|(_, pitch)| pitch.satellite == Some(true));
    set || summary.lines.iter().any(|line| line.reading.vessel == Vessel::Satellite)
}

/// The stage.
#[component]
pub fn WatchStage(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let writer = move || session.writer();
    let none_yet = live.with_untracked(|s| s.as_ref().is_none_or(|s| s.lines.is_empty()));
    let noting = RwSignal::new(if none_yet { Noting::New(Vessel::Main) } else { Noting::Nothing });
    let judged =
        move || card(live.with(|s| s.as_ref().map(|s| words::watch_words(writer(), &s.finish))));
    let warmth =
        move || card(live.with(|s| Some(warmth_words(writer(), s.as_ref()?.warmth.as_ref()?))));
    let worked = move || {
        let worked = live.with(|s| s.as_ref().map(|s| s.finish.advice.worked.clone()))?;
        (!worked.steps.is_empty()).then_some(worked)
    };
    let asked = move || {
        let now = session.now.get();
        live.with(|s| {
            s.as_ref().is_some_and(|s| {
                let since = s.pitch.as_ref().map(|(_, pitch)| now.since(pitch.at));
                let early = since.is_some_and(|since| since < ASKED_FOR);
                s.finish.state != State::Finished
                    && since.is_some()
                    && (early || s.finish.state == State::NotStarted)
            })
        })
    };
    let asked = Memo::new(move |_| asked());
    let beside = Memo::new(move |_| live.with(|s| s.as_ref().is_some_and(has_satellite)));
    let done = Callback::new(move |()| noting.set(Noting::Nothing));
    let edit = Callback::new(move |reading: Id| noting.set(Noting::Changed(reading)));
    let form = move || {
        let id = id.clone();
        let editing = match noting.get() {
            Noting::Nothing => {
                let add = move |vessel| move |_| noting.set(Noting::New(vessel));
                return view! {
                    <button type="button" class="main-action" on:click=add(Vessel::Main)>
                        "Add a reading"
                    </button>
                    <When is=move || beside.get()>
                        <button type="button" class="quiet" on:click=add(Vessel::Satellite)>
                            "Read the satellite"
                        </button>
                    </When>
                }
                .into_any();
            }
            Noting::New(vessel) => {
                let editing = None;
                return view! { <ReadingForm batch=id live vessel editing on_done=done /> }
                    .into_any();
            }
            Noting::Changed(reading) => live.with_untracked(|s| {
                let line = s.as_ref()?.lines.iter().find(|line| line.id == reading)?;
                Some((reading, line.reading.clone()))
            }),
        };
        let vessel = Vessel::Main;
        view! { <ReadingForm batch=id live vessel editing on_done=done /> }.into_any()
    };
    view! {
        {move || form()}
        <div class="two-columns">
            <div>
                {part(warmth)}
                {part(judged)}
                {part(move || live.with(|s| ladder(writer(), s.as_ref()?)))}
                <When is=move || worked().is_some()>
                    <HowWorked worked writer doubt_in=(4, 1.0, "SG") />
                </When>
                <When is=move || asked.get()>
                    <QuietAirlock live />
                </When>
                <Reminders live />
                <CourseView live />
            </div>
            <div>
                <h2>"Log"</h2>
                <Log live on_edit=edit />
            </div>
        </div>
    }
}
