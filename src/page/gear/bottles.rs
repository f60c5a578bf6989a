//! Bottles on hand.

use super::things::{FormEnd, ThingList, Things};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::Bottles;
use crate::batch::{BottlesItem, Change, Entry, Id, Kind};
use crate::page::ask::{Ask, ask};
use crate::page::drafts::use_drafts;
use crate::page::parts::choice::Pick;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::priming::{bottle_choices, bottle_named, stored};
use crate::page::session::{Session, use_session};
use crate::page::{words, write};
use crate::quantity::{BottleUnit, Bounds, Count, CountUnit, Litres, Measured};
use leptos::prelude::*;

/// Sizes that are filled.
const SIZE: Bounds<Litres> = Bounds::new(Litres::literal(0.1), Litres::literal(5.0));

fn line(_: Session, entry: &Entry) -> Option<(String, String)> {
    let Entry::Bottles(item) = entry else { return None };
    let Bottles { size, class, count } = item.bottles;
    let what = format!("{count} × {} · {}", write::bottle_size(size), words::bottle(class));
    Some((item.name.clone(), what))
}

fn form(id: Id, known: Option<Entry>, on_done: Callback<()>) -> AnyView {
    let known = known.and_then(|entry| match entry {
        Entry::Bottles(item) => Some(item),
        _ => None,
    });
    view! { <BottlesForm id known on_done /> }.into_any()
}

/// The section.
#[component]
pub fn BottleStock() -> impl IntoView {
    let things = Things {
        kind: Kind::Bottles,
        heading: "Bottles on hand",
        add: "Add bottles",
        deleted: "Bottles deleted",
        line,
        form,
    };
    view! { <ThingList things /> }
}

#[component]
fn BottlesForm(id: Id, known: Option<BottlesItem>, on_done: Callback<()>) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("bottles/{}/", id.as_str());
    let first = known.as_ref().map(|item| item.bottles);
    let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
    let name = text("name", known.as_ref().map_or("", |item| &item.name));
    let class = text("class", &first.map(|own| stored(own.class)).unwrap_or_default());
    let size = ask(
        &scope,
        Ask {
            key: "size",
            label: "Size of one",
            hint: "",
            unit: BottleUnit::Millilitres,
            bounds: SIZE,
            step: |unit| if unit == BottleUnit::Millilitres { 10.0 } else { 1.0 },
            first: first.map(|own| own.size),
            start: Litres::literal(0.5),
        },
    );
    let count = ask(
        &scope,
        Ask {
            key: "count",
            label: "How many",
            hint: "",
            unit: CountUnit::Bottles,
            bounds: Bounds::new(Count::literal(0.0), Count::literal(5000.0)),
            step: |_| 1.0,
            first: first.map(|own| Count::nearest(f64::from(own.count))),
            start: Count::literal(24.0),
        },
    );
    let outcome = RwSignal::new(None::<String>);
    let (size_face, count_face) = (size.face.clone(), count.face.clone());
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let item = || -> Result<BottlesItem, String> {
            let (Some(size), Some(count)) = (size.demand(), count.demand()) else {
                return Err("Some fields need another look.".to_owned());
            };
            let class: Option<Bottle> = bottle_named(&class.get_untracked());
            let class = class.ok_or_else(|| "Choose what kind they are.".to_owned())?;
            let bottles = Bottles { size, class, count: count.whole() };
            Ok(BottlesItem { name: name.get_untracked().trim().to_owned(), bottles })
        };
        let done = item().and_then(|item| {
            session.change(Change::put(id.clone(), Entry::Bottles(item)), Some("Bottles saved"))
        });
        match done {
            Ok(()) => {
                drafts.forget(&scope);
                on_done.run(());
            }
            Err(why) => outcome.set(Some(why)),
        }
    };
    view! {
        <form on:submit=save novalidate>
            <TextField id="bottles-name" label="What you call them" text=name />
            <Pick
                id="bottles-class"
                label="What kind"
                options=move || bottle_choices("Choose; if in doubt, unknown glass")
                chosen=class
            />
            <NumberField face=size_face />
            <NumberField face=count_face />
            <p class="small">{words::GLASS_CAUTION}</p>
            <FormEnd outcome on_done />
        </form>
    }
}
