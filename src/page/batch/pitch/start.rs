//! The true starting gravity: what was weighed in, the sample, and which of the two the batch goes by.

use super::day::{Day, ROWS};
use crate::advice::pitch::start_gravity::{judge, topped_up};
use crate::page::parts::answer::card;
use crate::page::parts::choice::{Choice, Pick};
use crate::page::parts::field::NumberField;
use crate::page::parts::figures::Figures;
use crate::page::parts::live::{When, list, live, say};
use crate::page::priming::stored;
use crate::page::session::use_session;
use crate::page::words::pitching;
use crate::page::write;
use crate::science::kit_gravity::Fermentable;
use crate::science::mixing::SampleGravity;
use crate::science::sucrose;
use leptos::prelude::*;

const GOES_BY: [(&str, &str); 2] = [("sample", "The sample"), ("ingredients", "The ingredients")];

fn kinds() -> Vec<(String, String)> {
    let named = Fermentable::ALL
        .into_iter()
        .map(|kind| (stored(kind), pitching::ingredient(kind).to_owned()));
    std::iter::once((String::new(), "Choose".to_owned())).chain(named).collect()
}

/// The section.
#[component]
pub fn Start(day: Day) -> impl IntoView {
    let session = use_session();
    let known = day.known();
    let (added, ice) = (day.added.value, day.ice_added.value);
    let topped_up = move || topped_up(added.get().ok(), ice.get().ok());
    let judged = move || {
        let kit = known.by_weight()?;
        let sample = known.sample()?;
        let seen = SampleGravity {
            gravity: sample.gravity,
            temperature_known: known.sample_temperature_known(),
            topped_up: topped_up(),
        };
        Some(judge(&kit, seen))
    };
    let figures = move || {
        let w = session.writer();
        let gravity = |e: crate::quantity::Estimate<crate::quantity::SpecificGravity>| {
            let plato = write::extract(sucrose::plato(e.value()));
            format!("{} {} ({plato})", w.gravity(e.value()), w.gravity_doubt(e.sigma()))
        };
        let mut rows = vec![];
        rows.extend(known.sample().map(|found| ("By the sample", gravity(found.gravity))));
        if let Some(kit) = known.by_weight() {
            rows.push(("By the ingredients", gravity(kit.gravity)));
            rows.push(("Extract in all", w.mass(kit.extract)));
            rows.push(("Other water", w.mass(kit.water_added)));
        }
        if let Some(start) = known.start() {
            let end = known.family().ends_at(start.value());
            rows.push((
                "Expected end",
                format!("{} to {}", w.gravity(end.from), w.gravity(end.to)),
            ));
        }
        rows
    };
    let both = move || judged().is_some();
    let card = live(move || {
        let judged = pitching::start_words(session.writer(), &judged()?);
        card(Some(judged))
    });
    let rows = list(day.rows.iter().enumerate().map(|(index, row)| {
        let (kind, face, share) = (row.kind, row.mass.face.clone(), row.share.face.clone());
        // The next row comes when the one before it is in use.
        let before = index.checked_sub(1).and_then(|i| day.rows.get(i)).map(|row| row.kind);
        let shown = move || before.is_none_or(|before| !before.get().is_empty());
        let id = format!("pitch-kind-{}", index + 1);
        let label = format!("Ingredient {} of up to {ROWS}", index + 1);
        view! {
            <When is=shown>
                <Pick
                    id=id.clone()
                    label=label.clone()
                    options=kinds
                    chosen=kind
                />
                {
                    let (face, share) = (face.clone(), share.clone());
                    let used = move || !kind.get().is_empty();
                    view! {
                        <When is=used>
                            <NumberField face=face.clone() />
                            <NumberField face=share.clone() />
                        </When>
                    }
                }
            </When>
        }
        .into_any()
    }));
    let summary = say(move || match known.start() {
        Some(start) => format!("Starting gravity: {}", session.writer().gravity(start.value())),
        None => "Starting gravity".to_owned(),
    });
    view! {
        <details class="more">
            <summary>{summary}</summary>
            <h3>"What went in"</h3>
            {rows}
            <NumberField face=day.added.face.clone() />
            <NumberField face=day.ice_added.face.clone() />
            <h3>"The sample"</h3>
            <NumberField face=day.sample.face.clone() />
            <NumberField face=day.sample_at.face.clone() />
            {card}
            <When is=both>
                <Choice
                    id="pitch-goes-by"
                    label="The batch goes by"
                    options=GOES_BY.to_vec()
                    chosen=day.goes_by
                />
            </When>
            <Figures rows=figures />
        </details>
    }
}
