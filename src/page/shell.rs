//! The frame round every screen: the four places, what must be said all the time, and the way about.

use super::drafts::Drafts;
use super::notices::{Notices, UndoBar};
use super::route::Route;
use super::session::{Session, is_ours};
use super::{batch, batches, bench, clock, gear, now, words};
use crate::batch::Theme;
use crate::page::parts::live::{follow, list};
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::JsCast;

/// Where the chosen theme is read from before the first paint (src/boot.js).
const THEME_KEY: &str = "fermentside.theme";

/// Puts the page into the document's body, in place of the static first paint.
pub fn mount() {
    mount_to_body(App);
    take_over();
}

/// Removes the static first paint of index.html and says that the page is ready (`data-ready`).
fn take_over() {
    let document = document();
    if let Some(opening) = document.get_element_by_id("opening") {
        opening.remove();
    }
    mark("ready", Some(""));
}

/// Sets or takes away `data-<name>` on the root. Only a malformed name could be refused; the page works
/// without the mark.
pub fn mark(name: &str, value: Option<&str>) {
    if let Some(root) = document().document_element() {
        let name = format!("data-{name}");
        let _ = match value {
            Some(value) => root.set_attribute(&name, value),
            None => root.remove_attribute(&name),
        };
    }
}

/// Whether `data-<name>` is on the root.
pub fn is_marked(name: &str) -> bool {
    document().document_element().is_some_and(|root| root.has_attribute(&format!("data-{name}")))
}

fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// The place one is in, followed.
pub fn use_route() -> RwSignal<Route> {
    use_context().unwrap_or_else(|| RwSignal::new(Route::Unknown))
}

/// Goes to another place.
pub fn go(route: &Route) {
    let _ = window().location().set_hash(&route.address());
}

#[component]
fn App() -> impl IntoView {
    let session = Session::open();
    let drafts = Drafts::restored();
    let route = RwSignal::new(Route::read(&hash()));
    provide_context(session);
    provide_context(drafts);
    provide_context(route);

    // The page lives as long as the document, so the listeners are never taken away.
    let _ = window_event_listener(leptos::ev::hashchange, move |_| {
        let place = Route::read(&hash());
        // The screen of the same place stays as it is.
        if route.with_untracked(|now| *now != place) {
            route.set(place);
        }
        attend_to_heading();
    });
    let _ = window_event_listener(leptos::ev::pagehide, move |_| drafts.keep());
    let _ = window_event_listener(leptos::ev::visibilitychange, move |_| {
        drafts.keep();
        session.now.set(clock::now());
    });
    let _ = window_event_listener(leptos::ev::storage, move |event| {
        if event.key().is_some_and(|key| is_ours(&key)) {
            session.keeping.update(|keeping| keeping.changed_elsewhere = true);
        }
    });
    let _ =
        set_interval_with_handle(move || session.now.set(clock::now()), Duration::from_secs(30));

    // Once there is something to lose, the browser is asked not to clear it; it may refuse in silence.
    let something = Memo::new(move |_| session.journal.with(|j| j.batches().next().is_some()));
    follow(move || {
        if something.get() {
            let _ = window().navigator().storage().persist();
        }
    });
    follow(move || apply_theme(session.settings().theme));
    follow(move || document().set_title(&title(&route.get(), session)));

    let screen = move || match route.get() {
        Route::Now => view! { <now::NowScreen /> }.into_any(),
        Route::Batches => view! { <batches::BatchesScreen /> }.into_any(),
        Route::NewBatch => view! { <batches::form::BatchForm id=None /> }.into_any(),
        Route::EditBatch(id) => view! { <batches::form::BatchForm id=Some(id) /> }.into_any(),
        Route::Batch(id, stage) => view! { <batch::BatchScreen id stage /> }.into_any(),
        Route::Bench => view! { <bench::BenchScreen /> }.into_any(),
        Route::Sum(sum) => view! { <bench::SumScreen sum /> }.into_any(),
        Route::Gear => view! { <gear::GearScreen /> }.into_any(),
        Route::Unknown => view! {
            <h1 tabindex="-1">"Nothing is kept here"</h1>
            <p class="back">
                <a href="#/now">"Go to Now"</a>
            </p>
        }
        .into_any(),
    };
    view! {
        <Notices />
        <main id="main">{move || screen()}</main>
        <UndoBar />
        <Places />
    }
}

/// After going somewhere, the heading is where reading goes on.
fn attend_to_heading() {
    request_animation_frame(|| {
        window().scroll_to_with_x_and_y(0.0, 0.0);
        let heading = document().query_selector("main h1").ok().flatten();
        if let Some(heading) = heading.and_then(|h| h.dyn_into::<web_sys::HtmlElement>().ok()) {
            let _ = heading.focus();
        }
    });
}

fn title(route: &Route, session: Session) -> String {
    let here = match route {
        Route::Now | Route::Unknown => "Now".to_owned(),
        Route::Batches => "Batches".to_owned(),
        Route::NewBatch => "Start a batch".to_owned(),
        Route::Batch(id, _) | Route::EditBatch(id) => session
            .journal
            .with(|j| j.batch(id).map(|heading| heading.name.clone()))
            .unwrap_or_default(),
        Route::Bench => "Bench".to_owned(),
        Route::Sum(sum) => words::sum(*sum).0.to_owned(),
        Route::Gear => "Gear".to_owned(),
    };
    format!("{here} · Fermentside")
}

fn apply_theme(theme: Theme) {
    let chosen = match theme {
        Theme::Follow => None,
        Theme::Day => Some("day"),
        Theme::Night => Some("night"),
    };
    mark("theme", chosen);
    // For the next first paint; where storage is refused the phone's own choice serves.
    if let Ok(Some(storage)) = window().local_storage() {
        let _ = match chosen {
            Some(chosen) => storage.set_item(THEME_KEY, chosen),
            None => storage.remove_item(THEME_KEY),
        };
    }
}

/// The four places, in the thumb's reach.
#[component]
fn Places() -> impl IntoView {
    let route = use_route();
    let places = [
        ("Now", Route::Now, "M12 3v9l6 3 M12 3a9 9 0 1 0 0.1 0"),
        (
            "Batches",
            Route::Batches,
            "M6 7h12v12a2 2 0 0 1-2 2H8a2 2 0 0 1-2-2z M5 4h14v3H5z M6 12h12",
        ),
        (
            "Bench",
            Route::Bench,
            "M10 3h4v5l5 11a1.5 1.5 0 0 1-1.4 2H6.4A1.5 1.5 0 0 1 5 19l5-11z M7.5 15h9",
        ),
        ("Gear", Route::Gear, "M12 3v13 M9 16a3 3 0 1 0 6 0V5a3 3 0 0 0-6 0z M15 8h3 M15 11h3"),
    ];
    let here = move |place: &Route| {
        let now = route.get();
        match place {
            Route::Batches => matches!(
                now,
                Route::Batches | Route::NewBatch | Route::Batch(..) | Route::EditBatch(_)
            ),
            Route::Bench => matches!(now, Route::Bench | Route::Sum(_)),
            other => now == *other,
        }
    };
    let links = list(places.into_iter().map(|(name, place, picture)| {
        let address = place.address();
        let current = move || if here(&place) { Some("page") } else { None };
        view! {
            <a href=address aria-current=current>
                <svg viewBox="0 0 24 24" aria-hidden="true">
                    <path d=picture />
                </svg>
                <span>{name}</span>
            </a>
        }
        .into_any()
    }));
    view! {
        <nav class="places" aria-label="Places">
            {links}
        </nav>
    }
}
