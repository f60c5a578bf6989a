//! "No bubbles?": what was seen, a few touches, and the answer.

use super::Live;
use crate::advice::watch::bubbles::{Signs, judge};
use crate::page::parts::answer::card;
use crate::page::parts::live::{list, live as part};
use crate::page::session::use_session;
use crate::page::words::started::bubbles_words;
use leptos::prelude::*;

/// What can be seen or known from outside.
const SIGNS: [&str; 5] = [
    "Foam, or a dried ring above the beer",
    "Drops under the lid",
    "The lid bulges, or foam fills the airlock",
    "The lid gives when pressed",
    "The yeast was old or kept warm",
];

/// The fold.
#[component]
pub fn QuietAirlock(live: Live) -> impl IntoView {
    let session = use_session();
    let marks = RwSignal::new([false; SIGNS.len()]);
    let boxes = list(SIGNS.into_iter().enumerate().map(move |(at, words)| {
        let id = format!("quiet-{at}");
        let for_box = id.clone();
        let marked = move || marks.get().get(at).copied().unwrap_or(false);
        let mark = move |event: leptos::ev::Event| {
            let on = event_target_checked(&event);
            marks.update(|marks| {
                if let Some(mark) = marks.get_mut(at) {
                    *mark = on;
                }
            });
        };
        view! {
            <label class="tick" for=for_box>
                <input type="checkbox" id=id prop:checked=marked on:change=mark />
                <span>{words}</span>
            </label>
        }
        .into_any()
    }));
    let answer = move || {
        let [foam, drops, bulging, leaks, old] = marks.get();
        let now = session.now.get();
        let seen = Signs { foam, drops, bulging, leaks };
        let quiet = live.with(|s| s.as_ref().and_then(|s| s.quiet(now, seen, old)))?;
        card(Some(bubbles_words(&judge(&quiet))))
    };
    view! {
        <details class="more" id="quiet">
            <summary>"No bubbles?"</summary>
            <fieldset class="choice">
                <legend>"What do you see?"</legend>
                <div class="ticks">{boxes}</div>
            </fieldset>
            {part(answer)}
        </details>
    }
}
