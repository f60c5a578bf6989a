//! How much dry yeast.

use super::volume;
use crate::page::ask::{Ask, AskGravity, ask, ask_gravity};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Said};
use crate::page::parts::choice::Choice;
use crate::page::parts::field::NumberField;
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::words;
use crate::quantity::{Bounds, Grams, MassUnit, Measured, SpecificGravity, write_number};
use crate::science::yeast::{DryYeast, Pitching, Range, dry_yeast, sachets};
use crate::science::{ScienceError, sucrose};
use leptos::prelude::*;

/// A range of grams, as short as it can be said.
pub fn range_words(range: Range) -> String {
    let write =
        |grams: Grams| write_number(grams.value(), if grams.value() < 9.95 { 1 } else { 0 });
    format!("{} to {}\u{A0}g", write(range.from), write(range.to))
}

fn sachet_words(found: &DryYeast, size: Grams) -> String {
    match (sachets(found.by_maker.from, size), sachets(found.by_maker.to, size)) {
        (Ok(1), Ok(1)) => "One sachet.".to_owned(),
        (Ok(from), Ok(to)) if from == to => format!("{from} sachets."),
        (Ok(from), Ok(to)) => {
            format!(
                "{from} to {to} sachets; the larger number if they are old or were stored warm."
            )
        }
        _ => String::new(),
    }
}

/// The sum.
#[component]
pub fn YeastSum() -> impl IntoView {
    let session = use_session();
    let scope = "bench/yeast/";
    let wort = volume(scope, ("volume", "Wort", ""), None);
    let gravity = ask_gravity(
        scope,
        AskGravity {
            key: "gravity",
            label: "Gravity",
            hint: "",
            unit: session.units_now().gravity,
            first: None,
            start: SpecificGravity::literal(1.045),
        },
    );
    let sachet = ask(
        scope,
        Ask {
            key: "sachet",
            label: "One sachet holds",
            hint: "",
            unit: MassUnit::Grams,
            bounds: Bounds::new(Grams::literal(1.0), Grams::literal(1000.0)),
            step: |_| 0.5,
            first: Some(Grams::literal(11.0)),
            start: Grams::literal(11.0),
        },
    );
    let kind = use_drafts().text("bench/yeast/kind", "warm");
    let (volume, og, size) = (wort.value, gravity.value, sachet.value);
    let found = move || -> Option<Result<DryYeast, ScienceError>> {
        let pitching = if kind.get() == "cold" { Pitching::Cold } else { Pitching::Warm };
        Some(dry_yeast(pitching, volume.get().ok()?, sucrose::as_plato(og.get().ok()?)))
    };
    let said = move || match found() {
        None => Said::only("Give the volume and the gravity."),
        Some(Err(why)) => Said::only(words::science_error(why)),
        Some(Ok(found)) => {
            let how_many = size.get().map(|size| sachet_words(&found, size)).unwrap_or_default();
            Said {
                main: range_words(found.by_maker),
                beside: "by the makers' dose".to_owned(),
                below: format!("{how_many} By cell count: {}.", range_words(found.by_cells)),
            }
        }
    };
    let worked = move || found().and_then(Result::ok).map(|found| found.worked);
    let writer = move || session.writer();
    view! {
        <Answer label="Dry yeast" said />
        <Choice
            id="bench-yeast-kind"
            label="Fermented"
            options=vec![("warm", "Warm: ale"), ("cold", "Cold: lager")]
            chosen=kind
        />
        <NumberField face=wort.face />
        <NumberField face=gravity.face />
        <NumberField face=sachet.face />
        <p class="small">
            "The packet's own dose wins. The two ranges differ because nobody knows how many cells in a gram are alive: five thousand million are guaranteed, three times that have been counted."
        </p>
        <HowWorked worked writer doubt_in=(1, 1.0, "g") />
    }
}
