//! Hydrometers: what each was made for, how fine its scale is, and what it shows in water.

use crate::batch::{Change, Entry, EntryKey, HydrometerItem, Id, Kind};
use crate::page::ask::{AskGravity, ask_gravity};
use crate::page::bench::{SAMPLE, temperature};
use crate::page::drafts::use_drafts;
use crate::page::parts::choice::Choice;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::Outcome;
use crate::page::session::use_session;
use crate::page::words;
use crate::page::write::Writer;
use crate::quantity::{
    Celsius, Gravity, GravityChange, GravityUnit, Measured, SpecificGravity, write_number,
};
use crate::science::hydrometer::{Hydrometer, reading_in_water};
use crate::science::sucrose;
use leptos::prelude::*;

/// Temperatures printed on hydrometers.
const REFERENCES: [(&str, &str, f64); 4] = [
    ("20", "20 °C / 68 °F", 20.0),
    ("15.56", "60 °F / 15.6 °C", 15.56),
    ("15", "15 °C", 15.0),
    ("17.5", "17.5 °C", 17.5),
];
/// Steps between two lines.
const DIVISIONS: [(&str, &str, f64); 4] = [
    ("0.002", "0.002", 0.002),
    ("0.001", "0.001", 0.001),
    ("0.0005", "0.0005", 0.0005),
    ("0.005", "0.005", 0.005),
];

fn nearest(table: &[(&'static str, &'static str, f64)], value: f64) -> &'static str {
    let distance = |entry: &(&str, &str, f64)| (entry.2 - value).abs();
    let found = table.iter().min_by(|a, b| distance(a).total_cmp(&distance(b)));
    found.map_or("", |(name, ..)| name)
}

fn value(table: &[(&str, &str, f64)], name: &str) -> Option<f64> {
    table.iter().find(|(known, ..)| *known == name).map(|(.., value)| *value)
}

fn choices(table: &[(&'static str, &'static str, f64)]) -> Vec<(&'static str, &'static str)> {
    table.iter().map(|&(name, words, _)| (name, words)).collect()
}

fn details(w: Writer, instrument: &Hydrometer) -> String {
    let offset = instrument.offset.points();
    let offset = if offset.abs() < 0.05 {
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
    let editing = RwSignal::new(None::<(Id, HydrometerItem)>);
    let failed = RwSignal::new(None::<String>);
    let list = Memo::new(move |_| session.journal.with(|journal| journal.hydrometers()));
    let done = Callback::new(move |()| editing.set(None));
    let add = move |_| {
        let id = Id::random(crate::page::clock::random());
        let item = HydrometerItem { name: String::new(), ..HydrometerItem::usual() };
        editing.set(Some((id, item)));
    };
    let row = move |(id, item): (Id, HydrometerItem)| {
        let name = item.name.clone();
        let (edit, delete) = (format!("Change {name}"), format!("Delete {name}"));
        let line = details(session.writer(), &item.instrument);
        let to_edit = (id.clone(), item);
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
                            let change = Change::Remove(key);
                            failed.set(session.change(change, Some("Hydrometer deleted")).err());
                        }
                    >
                        "Delete"
                    </button>
                </p>
            </li>
        }
    };
    view! {
        <section>
            <h2>"Hydrometers"</h2>
            <ul class="log">{move || list.get().into_iter().map(row).collect_view()}</ul>
            <Outcome said=failed />
            {move || match editing.get() {
                Some((id, item)) => view! { <InstrumentForm id item on_done=done /> }.into_any(),
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

#[component]
fn InstrumentForm(id: Id, item: HydrometerItem, on_done: Callback<()>) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("gear/{}/", id.as_str());
    let instrument = item.instrument;
    let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
    let name = text("name", &item.name);
    let reference = text("reference", nearest(&REFERENCES, instrument.reference.value()));
    let division = text("division", nearest(&DIVISIONS, instrument.division.value()));
    let shown = ask_gravity(
        &scope,
        AskGravity {
            key: "water",
            label: "In plain water it shows",
            hint: "Boiled and cooled, or distilled. Leave empty if you have not checked it.",
            unit: GravityUnit::SpecificGravity,
            first: None,
            start: SpecificGravity::literal(1.0),
        },
    );
    let at = temperature(
        &scope,
        ("water-at", "Temperature of that water", ""),
        SAMPLE,
        Some(instrument.reference),
        20.0,
    );
    let name_error = RwSignal::new(None::<String>);
    let outcome = RwSignal::new(None::<String>);
    let read = move || {
        let reference =
            value(&REFERENCES, &reference.get()).unwrap_or(instrument.reference.value());
        let division = value(&DIVISIONS, &division.get()).unwrap_or(instrument.division.value());
        Hydrometer {
            reference: Celsius::nearest(reference),
            division: GravityChange::nearest(division),
            offset: instrument.offset,
            sugar: instrument.sugar,
        }
    };
    let (water, water_at) = (shown.value, at.value);
    // A new check replaces the old; without one the old stays.
    let offset = move || -> Option<GravityChange> {
        let shown: Gravity = water.get().ok()?;
        let should = reading_in_water(water_at.get().ok()?, read().reference).ok()?;
        Some(GravityChange::nearest(should.value() - sucrose::as_specific(shown).value()))
    };
    let told = move || {
        let points = offset().unwrap_or(instrument.offset).points();
        if points.abs() < 0.05 {
            "Nothing is added to its readings.".to_owned()
        } else {
            format!("{} points will be added to its readings.", write_number(points, 1))
        }
    };
    let save = {
        let (shown, at) = (shown.clone(), at.clone());
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            if shown.optional().is_err() || at.optional().is_err() {
                outcome.set(Some("Some fields need another look.".to_owned()));
                return;
            }
            let named = name.get_untracked().trim().to_owned();
            name_error.set(named.is_empty().then(|| "Give it a name.".to_owned()));
            let instrument = Hydrometer {
                offset: untrack(offset).unwrap_or(instrument.offset),
                ..untrack(read)
            };
            let entry = Entry::Hydrometer(HydrometerItem { name: named, instrument });
            match session.change(Change::Put(id.clone(), entry), Some("Hydrometer saved")) {
                Ok(()) => {
                    drafts.forget(&scope);
                    on_done.run(());
                }
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    view! {
        <form on:submit=save novalidate>
            <TextField id="gear-name" label="Name" text=name error=name_error />
            <Choice
                id="gear-reference"
                label="Made for"
                hint="It is printed on its paper."
                options=choices(&REFERENCES)
                chosen=reference
            />
            <Choice
                id="gear-division"
                label="From line to line"
                options=choices(&DIVISIONS)
                chosen=division
            />
            <NumberField face=shown.face />
            <NumberField face=at.face />
            <p class="plain-answer">{told}</p>
            <p class="small">{words::GLASS_TOOL_CAUTION}</p>
            <Outcome said=outcome />
            <div class="form-actions">
                <button type="submit" class="main-action">
                    "Save"
                </button>
                <button type="button" class="quiet" on:click=move |_| on_done.run(())>
                    "Leave it as it was"
                </button>
            </div>
        </form>
    }
}
