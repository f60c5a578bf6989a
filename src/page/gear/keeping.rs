//! How the records are kept: what could not be read, what was saved twice, and a copy to take away.

use crate::page::parts::live::{Outcome, When, list};
use crate::page::session::use_session;
use crate::page::words;
use crate::store::{Conflict, Record};
use leptos::prelude::*;

/// What has to be settled, if anything.
#[component]
pub fn Trouble() -> impl IntoView {
    let session = use_session();
    let keeping = session.keeping;
    let failed = RwSignal::new(None::<String>);
    let version = move |conflict: Conflict, record: Record, shown: bool| {
        let said = if record.deleted { "deleted".to_owned() } else { record.body.clone() };
        let when = crate::page::write::moment(record.at);
        let button = if shown { "Keep this one" } else { "Use this one instead" };
        view! {
            <li>
                <p>{format!("Saved {when}")}</p>
                <pre class="raw">{said}</pre>
                <button
                    type="button"
                    on:click=move |_| failed.set(session.settle(&conflict, &record).err())
                >
                    {button}
                </button>
            </li>
        }
        .into_any()
    };
    view! {
        <When is=move || keeping.with(|k| !k.conflicts.is_empty())>
            <section class="trouble">
                <h2>"Changed in two places"</h2>
                {move || {
                    let conflicts = keeping.with(|k| k.conflicts.clone()).into_iter();
                    list(conflicts.map(|conflict| {
                            let shown = version(conflict.clone(), conflict.shown.clone(), true);
                            let others: Vec<_> = conflict
                                .others
                                .iter()
                                .map(|other| version(conflict.clone(), other.clone(), false))
                                .collect();
                            view! { <ul class="log">{shown} {others}</ul> }.into_any()
                        }))
                }}
                <Outcome said=failed />
            </section>
        </When>
        <When is=move || keeping.with(|k| !k.set_aside.is_empty())>
            <section class="trouble">
                <h2>"Could not be read"</h2>
                <p>{move || words::set_aside(keeping.with(|k| k.set_aside.len()))}</p>
                {move || {
                    let set_aside = keeping.with(|k| k.set_aside.clone()).into_iter();
                    list(set_aside.map(|(key, text)| {
                            view! {
                                <details class="more">
                                    <summary>{key}</summary>
                                    <pre class="raw">{text}</pre>
                                </details>
                            }
                            .into_any()
                        }))
                }}
            </section>
        </When>
    }
}

/// Where the records are, and all of them as one text.
#[component]
pub fn Keeping() -> impl IntoView {
    let session = use_session();
    let everything = RwSignal::new(String::new());
    let ready = RwSignal::new(
        document().document_element().is_some_and(|root| root.has_attribute("data-offline")),
    );
    let seen = leptos::ev::Custom::<web_sys::Event>::new("fermentside:offline-ready");
    let listening = window_event_listener(seen, move |_| ready.set(true));
    on_cleanup(move || listening.remove());
    view! {
        <section>
            <h2>"Your records"</h2>
            <p>
                "They are kept in this browser on this phone and sent nowhere. Some browsers clear pages that are not used for a week: put this page on the home screen before the first batch, and take a copy now and then."
            </p>
            <p role="status">
                {move || {
                    let told = if ready.get() {
                        "This page is kept whole on this phone: it works with no network."
                    } else {
                        "Not yet kept for use without a network."
                    };
                    told.to_owned()
                }}
            </p>
            <button type="button" on:click=move |_| everything.set(session.everything())>
                "Show everything as text"
            </button>
            <When is=move || everything.with(|text| !text.is_empty())>
                <label for="everything">"Copy this and keep it elsewhere"</label>
                <textarea
                    id="everything"
                    rows="8"
                    readonly
                    prop:value=move || everything.get()
                ></textarea>
            </When>
        </section>
        <section>
            <h2>"Cautions"</h2>
            <ul>
                <li>{words::GLASS_CAUTION}</li>
                <li>{words::HOT_CAUTION}</li>
                <li>{words::GAS_CAUTION}</li>
                <li>{words::CLEANER_CAUTION}</li>
                <li>{words::STRENGTH_CAUTION}</li>
            </ul>
        </section>
    }
}
