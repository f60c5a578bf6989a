//! The frame: where the screen's parts are put, and what the browser tells the page.

use super::draw::parts;
use super::element::{el, list};
use super::session::{self, Drawn, keep_drafts, send};
use super::{clock, effects};
use crate::app::{Event, Part, Place};
use crate::store::is_record;
use leptos::prelude::*;
use leptos::tachys::reactive_graph::SharedReactiveFunction;
use std::cell::Cell;
use std::sync::{Arc, Mutex};
use std::time::Duration;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// How long after another tab's first text its next ones are waited for, so that all are read at once.
const TOGETHER: Duration = Duration::from_millis(200);

/// Parts that are drawn within so many milliseconds leave room for more of them.
const QUICK: f64 = 6.0;

thread_local! {
    /// Another tab has saved something, and that is going to be told.
    static HEARD: Cell<bool> = const { Cell::new(false) };
}

/// The start, each step in a task of its own, so that a slow phone answers a finger between two of them. The
/// static first paint of index.html stays in sight until the whole is drawn (style/main.css).
pub fn mount() {
    spawn_local(async {
        pause().await;
        listen();
        pause().await;
        let drawn = Drawn::default();
        let frame = drawn.clone();
        mount_to_body(move || app(frame));
        pause().await;
        let zone = clock::zone();
        pause().await;
        session::open(drawn, zone);
        pause().await;
        session::load();
        pause().await;
        let Some(mut screen) = session::arrive() else { return };
        let parts = std::mem::take(&mut screen.main);
        pause().await;
        session::show_places(&screen);
        pause().await;
        session::surround(screen);
        draw(parts).await;
        pause().await;
        if let Some(opening) = document().get_element_by_id("opening") {
            opening.remove();
        }
        effects::mark("ready", Some(""));
        session::begin();
    });
}

/// Lets the browser do what waits for it: a touch, a frame.
async fn pause() {
    let mut later = |go: js_sys::Function, _| {
        let _ = window().set_timeout_with_callback(&go);
    };
    let _ = JsFuture::from(js_sys::Promise::new(&mut later)).await;
}

/// Draws the parts of the screen; the quicker some are drawn, the more of them before the next pause.
async fn draw(mut parts: Vec<Part>) {
    let (mut drawn, mut more) = (0, 1);
    while !parts.is_empty() {
        pause().await;
        let begun = clock::milliseconds();
        let rest = parts.split_off(more.min(parts.len()));
        session::add(drawn, std::mem::replace(&mut parts, rest));
        drawn += more;
        if clock::milliseconds() - begun < QUICK {
            more *= 2;
        }
    }
}

/// Hears what the browser tells. The page lives as long as the document, so that it listens as long.
fn listen() {
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
    hear("fermentside:update-ready", Event::UpdateReady);
    hear("fermentside:offline-ready", Event::OfflineReady);
    let _ = set_interval_with_handle(|| send(Event::Clock(clock::now())), Duration::from_secs(30));
}

fn hear(name: &'static str, event: Event) {
    let custom = leptos::ev::Custom::<web_sys::Event>::new(name);
    let _ = window_event_listener(custom, move |_| send(event.clone()));
}

fn app(drawn: Drawn) -> impl IntoView {
    let Drawn { notices, main, undo, places, places_label } = drawn;
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
