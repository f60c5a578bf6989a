//! Sugars of one's own.

use super::things::{FormEnd, ThingList, Things};
use crate::batch::{Change, Entry, Id, Kind, SugarItem};
use crate::page::ask::{Ask, Asked, ask};
use crate::page::drafts::use_drafts;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::session::{Session, use_session};
use crate::quantity::{Bounds, Measured, Share, ShareUnit, Unit, write_number};
use crate::science::carbon_dioxide::GRAMS_PER_VOLUME;
use crate::science::priming::{OwnSugar, Sugar};
use leptos::prelude::*;

fn line(_: Session, entry: &Entry) -> Option<(String, String)> {
    let Entry::Sugar(item) = entry else { return None };
    let yields = Sugar::Own(item.sugar).full_yield().value().value();
    let dry = ShareUnit::Percent.express(1.0 - item.sugar.water.value());
    let ferments = ShareUnit::Percent.express(item.sugar.fermentable.value());
    let what = if yields > 0.0 {
        let each = write_number(GRAMS_PER_VOLUME / yields, 1);
        format!(
            "{}\u{A0}% dry, of which {}\u{A0}% ferments: at best {each}\u{A0}g/L a volume",
            write_number(dry, 0),
            write_number(ferments, 0)
        )
    } else {
        "Does not ferment".to_owned()
    };
    Some((item.name.clone(), what))
}

fn form(id: Id, known: Option<Entry>, on_done: Callback<()>) -> AnyView {
    let known = known.and_then(|entry| match entry {
        Entry::Sugar(item) => Some(item),
        _ => None,
    });
    view! { <SugarForm id known on_done /> }.into_any()
}

/// The section.
#[component]
pub fn OwnSugars() -> impl IntoView {
    let things = Things {
        kind: Kind::Sugar,
        heading: "Sugars of your own",
        add: "Add a sugar",
        deleted: "Sugar deleted",
        line,
        form,
    };
    view! { <ThingList things /> }
}

/// A part in per cent.
pub fn percent(
    scope: &str,
    (key, label, hint): (&'static str, &'static str, &'static str),
    first: Option<Share>,
) -> Asked<Share> {
    ask(
        scope,
        Ask {
            key,
            label,
            hint,
            unit: ShareUnit::Percent,
            bounds: Bounds::new(Share::literal(0.0), Share::literal(1.0)),
            step: |_| 1.0,
            first,
            start: first.unwrap_or(Share::literal(0.8)),
        },
    )
}

#[component]
fn SugarForm(id: Id, known: Option<SugarItem>, on_done: Callback<()>) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("own-sugar/{}/", id.as_str());
    let first = known.as_ref().map(|item| item.sugar);
    let name = drafts.text(&format!("{scope}name"), known.as_ref().map_or("", |item| &item.name));
    let ferments = (
        "fermentable",
        "Of its dry weight ferments",
        "Sugars 100, malt extract 55 to 75, lactose 0.",
    );
    let water = ("water", "Water in it", "Syrups about 20, dry sugars 0.");
    let fermentable =
        percent(&scope, ferments, Some(first.map_or(Share::literal(1.0), |own| own.fermentable)));
    let water = percent(&scope, water, Some(first.map_or(Share::literal(0.0), |own| own.water)));
    let outcome = RwSignal::new(None::<String>);
    let faces = (fermentable.face.clone(), water.face.clone());
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let item = || -> Result<SugarItem, String> {
            let (Some(fermentable), Some(water)) = (fermentable.demand(), water.demand()) else {
                return Err("Some fields need another look.".to_owned());
            };
            let sugar = OwnSugar { fermentable, water };
            Ok(SugarItem { name: name.get_untracked().trim().to_owned(), sugar })
        };
        let done = item().and_then(|item| {
            session.change(Change::put(id.clone(), Entry::Sugar(item)), Some("Sugar saved"))
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
            <TextField id="sugar-name" label="What you call it" text=name />
            <NumberField face=faces.0 />
            <NumberField face=faces.1 />
            <FormEnd outcome on_done />
        </form>
    }
}
