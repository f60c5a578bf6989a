//! What must be said until it is settled, and the last thing done with its way back.

use super::drafts::use_drafts;
use super::session::use_session;
use super::shell::is_marked;
use super::words;
use crate::page::parts::live::{When, follow};
use leptos::leptos_dom::helpers::TimeoutHandle;
use leptos::prelude::*;
use std::time::Duration;

/// How long the last thing done can be taken back from the bar.
const UNDO_FOR: Duration = Duration::from_secs(30);

/// What must be said until it is settled.
#[component]
pub fn Notices() -> impl IntoView {
    let session = use_session();
    let keeping = session.keeping;
    let update = RwSignal::new(is_marked("update"));
    let seen = leptos::ev::Custom::<web_sys::Event>::new("fermentside:update-ready");
    let _ = window_event_listener(seen, move |_| update.set(true));
    let accept = move |_| {
        take_drafts_along();
        if let Ok(event) = web_sys::Event::new("fermentside:update-accept") {
            let _ = window().dispatch_event(&event);
        }
    };
    view! {
        <When is=move || keeping.with(|k| k.memory_only)>
            <div class="notice notice-grave" role="alert">
                "This browser lets the page keep nothing. What you note is gone when the page closes: allow site data, or write it down."
            </div>
        </When>
        <When is=move || keeping.with(|k| !k.set_aside.is_empty())>
            <div class="notice" role="status">
                {move || words::set_aside(keeping.with(|k| k.set_aside.len()))} " "
                <a href="#/gear">"See it in Gear"</a>
            </div>
        </When>
        <When is=move || keeping.with(|k| !k.conflicts.is_empty())>
            <div class="notice" role="status">
                "The same thing was changed in two places. Both are kept. "
                <a href="#/gear">"Choose in Gear"</a>
            </div>
        </When>
        <When is=move || keeping.with(|k| k.changed_elsewhere)>
            <div class="notice" role="status">
                "Something was saved in another tab. "
                <button
                    type="button"
                    class="quiet"
                    on:click=move |_| {
                        take_drafts_along();
                        let _ = window().location().reload();
                    }
                >
                    "Show it"
                </button>
            </div>
        </When>
        <When is=move || update.get()>
            <div class="notice" role="status">
                "A newer version of this page is ready. "
                <button type="button" class="quiet" on:click=accept>
                    "Take it now"
                </button>
            </div>
        </When>
    }
}

/// A reload takes what is half typed along.
fn take_drafts_along() {
    use_drafts().keep();
}

/// The last thing done, with the way back.
#[component]
pub fn UndoBar() -> impl IntoView {
    let session = use_session();
    let failed = RwSignal::new(None::<String>);
    // Long enough for a wet hand, and out of the way after that.
    let shown = StoredValue::new(None::<TimeoutHandle>);
    follow(move || {
        let there = session.undo.with(Option::is_some);
        if let Some(before) = shown.get_value() {
            before.clear();
        }
        failed.set(None);
        let hide = move || session.undo.set(None);
        shown.set_value(there.then(|| set_timeout_with_handle(hide, UNDO_FOR).ok()).flatten());
    });
    let take_back = move |_| match session.take_back() {
        Ok(()) => failed.set(None),
        Err(why) => failed.set(Some(why)),
    };
    view! {
        <When is=move || session.undo.with(Option::is_some)>
            <div class="undo" role="status">
                <span>
                    {move || {
                        failed
                            .get()
                            .or_else(|| session.undo.with(|u| u.as_ref().map(|u| u.done.clone())))
                            .unwrap_or_default()
                    }}
                </span>
                <button type="button" on:click=take_back>
                    "Undo"
                </button>
                <button
                    type="button"
                    class="quiet"
                    aria-label="Close"
                    on:click=move |_| session.undo.set(None)
                >
                    "×"
                </button>
            </div>
        </When>
    }
}
