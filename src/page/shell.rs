//! The frame: where the screen's parts are put, and what the browser tells the page.

use super::draw::parts;
use super::element::{el, list};
use super::session::{self, Drawn, keep_drafts, send};
use super::{clock, effects};
use crate::app::{Event, Place};
use crate::store::is_record;
use leptos::prelude::*;
use leptos::tachys::reactive_graph::SharedReactiveFunction;
use std::cell::Cell;
use std::sync::{Arc, Mutex};
use std::time::Duration;

/// How long after another tab's first text its next ones are waited for, so that all are read at once.
const TOGETHER: Duration = Duration::from_millis(200);

thread_local! {
    /// Another tab has saved something, and that is going to be told.
    static HEARD: Cell<bool> = const { Cell::new(false) };
}

/// Puts the page into the document's body, in place of the static first paint.
pub fn mount() {
    mount_to_body(App);
    // The page is there: the static first paint of index.html goes.
    if let Some(opening) = document().get_element_by_id("opening") {
        opening.remove();
    }
    effects::mark("ready", Some(""));
}

fn listen(name: &'static str, event: Event) {
    let custom = leptos::ev::Custom::<web_sys::Event>::new(name);
    let _ = window_event_listener(custom, move |_| send(event.clone()));
}

#[component]
fn App() -> impl IntoView {
    let Drawn { notices, main, undo, places, places_label } = session::open();
    // The page lives as long as the document, so the listeners are never taken away.
    let _ = window_event_listener(leptos::ev::hashchange, |_| {
        effects::print_no_more();
        send(Event::Went(effects::hash()));
    });
    let printed = leptos::ev::Custom::<web_sys::Event>::new("afterprint");
    let _ = window_event_listener(printed, |_| effects::print_no_more());
    let _ = window_event_listener(leptos::ev::pagehide, |_| keep_drafts());
    let _ = window_event_listener(leptos::ev::visibilitychange, |_| {
        keep_drafts();
        send(Event::Travelled(clock::zone()));
        send(Event::Clock(clock::now()));
        send(Event::Seen);
    });
    let _ = window_event_listener(leptos::ev::storage, |event| {
        let Some(key) = event.key().filter(|key| is_record(key)) else { return };
        let text = event.new_value();
        session::elsewhere(&key, text.as_deref());
        // A text that comes, not one that goes: each save takes older ones away after it.
        if text.is_some() && !HEARD.replace(true) {
            let tell = || {
                HEARD.set(false);
                send(Event::Elsewhere);
            };
            set_timeout(tell, TOGETHER);
        }
    });
    listen("fermentside:update-ready", Event::UpdateReady);
    listen("fermentside:offline-ready", Event::OfflineReady);
    let _ = set_interval_with_handle(|| send(Event::Clock(clock::now())), Duration::from_secs(30));
    let links = move || list(places.get().iter().map(place));
    let links: SharedReactiveFunction<AnyView> = Arc::new(Mutex::new(links));
    view! {
        {parts(&notices)}
        {parts(&undo)}
        <main id="main">{parts(&main)}</main>
        <nav class="places" aria-label=move || places_label.get()>
            {links}
        </nav>
    }
}

fn place(place: &Place) -> AnyView {
    let sign =
        format!(r#"<svg viewBox="0 0 24 24" aria-hidden="true"><path d="{}"/></svg>"#, place.sign);
    let link = el("A").with("href", &place.address);
    let link = if place.here { link.with("aria-current", "page") } else { link };
    link.put(el("SPAN").with("class", "place-sign").drawn(&sign).view())
        .put(el("SPAN").text(place.label).view())
        .view()
}
