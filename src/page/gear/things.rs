//! A list of gear with a form for one: bottles on hand, sugars of one's own.

use crate::batch::{Change, Entry, EntryKey, Id, Kind};
use crate::page::parts::live::{Outcome, list};
use crate::page::session::{Session, use_session};
use leptos::prelude::*;

/// What sets one list apart from another. Functions and no closures: the list is compiled once.
#[derive(Clone, Copy)]
pub struct Things {
    /// Their kind.
    pub kind: Kind,
    /// Over the list.
    pub heading: &'static str,
    /// On the button that adds one.
    pub add: &'static str,
    /// What is said when one has been deleted.
    pub deleted: &'static str,
    /// Name and details of one; `None` for an entry of another kind.
    pub line: fn(Session, &Entry) -> Option<(String, String)>,
    /// The form for one, new when there is none.
    pub form: fn(Id, Option<Entry>, Callback<()>) -> AnyView,
}

/// The list.
#[component]
pub fn ThingList(things: Things) -> impl IntoView {
    let session = use_session();
    let editing = RwSignal::new(None::<Id>);
    let failed = RwSignal::new(None::<String>);
    let items = move || -> Vec<(Id, Entry)> {
        session.journal.with(|journal| {
            journal.gear(things.kind).map(|(id, entry)| (id.clone(), entry.clone())).collect()
        })
    };
    let done = Callback::new(move |()| editing.set(None));
    let add = move |_| editing.set(Some(Id::random(crate::page::clock::random())));
    let row = move |(id, entry): (Id, Entry)| {
        let (name, line) = (things.line)(session, &entry)?;
        let (edit, delete) = (format!("Change {name}"), format!("Delete {name}"));
        let to_edit = id.clone();
        let row = view! {
            <li>
                <p>
                    <strong>{name}</strong>
                </p>
                <p class="small">{line}</p>
                <p class="log-actions">
                    <button
                        type="button"
                        class="quiet"
                        aria-label=edit
                        on:click=move |_| editing.set(Some(to_edit.clone()))
                    >
                        "Change"
                    </button>
                    <button
                        type="button"
                        class="quiet"
                        aria-label=delete
                        on:click=move |_| {
                            let key = EntryKey { kind: things.kind, id: id.clone() };
                            let change = Change::remove(key);
                            failed.set(session.change(change, Some(things.deleted)).err());
                        }
                    >
                        "Delete"
                    </button>
                </p>
            </li>
        };
        Some(row.into_any())
    };
    let form = move || match editing.get() {
        Some(id) => {
            let known = untrack(items).into_iter().find(|(known, _)| *known == id);
            (things.form)(id, known.map(|(_, entry)| entry), done)
        }
        None => view! {
            <button type="button" on:click=add>
                {things.add}
            </button>
        }
        .into_any(),
    };
    view! {
        <section>
            <h2>{things.heading}</h2>
            <ul class="log">{move || list(items().into_iter().filter_map(row))}</ul>
            <Outcome said=failed />
            {move || form()}
        </section>
    }
}

/// The end of a form: what went wrong, and its two buttons.
#[component]
pub fn FormEnd(outcome: RwSignal<Option<String>>, on_done: Callback<()>) -> impl IntoView {
    view! {
        <Outcome said=outcome />
        <div class="form-actions">
            <button type="submit" class="main-action">
                "Save"
            </button>
            <button type="button" class="quiet" on:click=move |_| on_done.run(())>
                "Leave it as it was"
            </button>
        </div>
    }
}
