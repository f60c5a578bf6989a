//! Hydrometers: the list.

use super::instrument_form::InstrumentForm;
use crate::batch::{Change, EntryKey, HydrometerItem, Id, Kind};
use crate::page::parts::live::{Outcome, list};
use crate::page::session::use_session;
use crate::page::write::Writer;
use crate::quantity::{Measured, write_number};
use crate::science::hydrometer::Hydrometer;
use leptos::prelude::*;

fn details(w: Writer, instrument: &Hydrometer) -> String {
    let offset = instrument.offset.points();
    let offset = if instrument.sugar.is_some() {
        "corrected by two checks".to_owned()
    } else if offset.abs() < 0.05 {
        "not corrected".to_owned()
    } else {
        format!("{} points added", write_number(offset, 1))
    };
    format!(
        "Made for {}, lines every {}, {offset}",
        w.temperature(instrument.reference),
        write_number(instrument.division.value(), 4)
    )
}

/// The list, and the form for one.
#[component]
pub fn Instruments() -> impl IntoView {
    let session = use_session();
    let editing = RwSignal::new(None::<Id>);
    let failed = RwSignal::new(None::<String>);
    let items = move || session.journal.with(|journal| journal.hydrometers());
    let done = Callback::new(move |()| editing.set(None));
    let add = move |_| editing.set(Some(Id::random(crate::page::clock::random())));
    let form = move |id: Id| {
        let known = untrack(items).into_iter().find(|(known, _)| *known == id);
        let new = || HydrometerItem { name: String::new(), ..HydrometerItem::usual() };
        let item = known.map_or_else(new, |(_, item)| item);
        view! { <InstrumentForm id item on_done=done /> }.into_any()
    };
    let row = move |(id, item): (Id, HydrometerItem)| {
        let name = item.name.clone();
        let (edit, delete) = (format!("Change {name}"), format!("Delete {name}"));
        let line = details(session.writer(), &item.instrument);
        let to_edit = id.clone();
        view! {
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
                            let key = EntryKey { kind: Kind::Hydrometer, id: id.clone() };
                            let change = Change::remove(key);
                            failed.set(session.change(change, Some("Hydrometer deleted")).err());
                        }
                    >
                        "Delete"
                    </button>
                </p>
            </li>
        }
        .into_any()
    };
    view! {
        <section>
            <h2>"Hydrometers"</h2>
            <ul class="log">{move || list(items().into_iter().map(row))}</ul>
            <Outcome said=failed />
            {move || match editing.get() {
                Some(id) => form(id),
                None => view! {
                    <button type="button" on:click=add>
                        "Add a hydrometer"
                    </button>
                }
                .into_any(),
            }}
        </section>
    }
}
