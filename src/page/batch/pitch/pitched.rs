//! The pitching as it was recorded, what to expect now, and what to do when the beer is too warm already.

use crate::advice::pitch::already_in::{self, Pitched as Beer};
use crate::advice::thermometer::Thermometer;
use crate::batch::{Kind, Summary};
use crate::page::batch::{Live, remove};
use crate::page::parts::answer::card;
use crate::page::parts::figures::Figures;
use crate::page::parts::live::{Outcome, live as redrawn};
use crate::page::session::use_session;
use crate::page::words::{self, pitching, place};
use crate::page::write::{self, Writer};
use crate::quantity::{Celsius, Measured, Moment, write_number};
use leptos::prelude::*;

fn rows(w: Writer, summary: &Summary) -> Vec<(&'static str, String)> {
    let Some((_, record)) = &summary.pitch else { return vec![] };
    let mut rows = vec![("Pitched", write::moment(record.at))];
    rows.extend(record.wort.map(|t| ("Wort", w.temperature(t))));
    rows.extend(record.volume.map(|v| ("Volume", w.volume(v))));
    rows.extend(record.water.map(|water| ("Water added", w.volume(water.volume))));
    rows.extend(record.ice.map(|ice| ("Ice added", w.mass(ice))));
    rows.extend(summary.by_sample.map(|sg| ("Start by the sample", w.gravity(sg.value()))));
    let kit = summary.by_ingredients.as_ref();
    rows.extend(kit.map(|kit| ("Start by the ingredients", w.gravity(kit.gravity.value()))));
    rows.extend(record.yeast.map(|grams| ("Dry yeast", w.mass(grams))));
    rows.extend(record.sachets.map(|n| ("Sachets", n.to_string())));
    rows.extend((!record.product.is_empty()).then(|| ("Packet", record.product.clone())));
    rows.extend(record.aerated.map(|time| ("Splashed", write::duration(time))));
    rows.extend(
        record
            .satellite
            .map(|set| ("Satellite", if set { "set".to_owned() } else { "none".to_owned() })),
    );
    rows.extend(record.vessel.map(|v| ("It stands", place::vessel(v).to_owned())));
    rows.extend((!record.place.is_empty()).then(|| ("Place", record.place.clone())));
    rows.extend(record.room.map(|t| ("Room", w.temperature(t))));
    rows.extend((!record.note.is_empty()).then(|| ("Note", record.note.clone())));
    rows
}

/// The beer's last known temperature, judged now that the yeast is in.
fn beer(summary: &Summary, now: Moment) -> Option<Beer> {
    let (_, record) = summary.pitch.as_ref()?;
    let logged = summary.lines.iter().rev().find_map(|line| line.reading.beer);
    let t: Celsius = logged.or(record.wort)?;
    Some(Beer {
        // The log does not say what it was read with; a strip is taken, on moving beer.
        beer: Thermometer::Strip.reads(t, true),
        family: summary.heading.family,
        packet: summary.heading.packet,
        since: now.since(record.at),
    })
}

/// What to make of the quiet, by the hours since pitching (common practice, no source).
fn quiet(hours: f64) -> &'static str {
    match hours {
        h if h < 24.0 => {
            "Up to a day of quiet is usual. Keep it closed, dark and at an even temperature."
        }
        h if h < 48.0 => {
            "Quiet after a day? Press the lid and look for a ring of foam or drops under it: bubbles mean little with a bucket lid."
        }
        h if h < 72.0 => {
            "Quiet after two days? Take a gravity. A fall with no bubbles is a leaking lid and no harm."
        }
        _ => "Pitch again only if the gravity has not moved by now; else leave it alone.",
    }
}

/// The record.
#[component]
pub fn Pitched(live: Live) -> impl IntoView {
    let session = use_session();
    let figures =
        move || live.with(|s| s.as_ref().map(|s| rows(session.writer(), s))).unwrap_or_default();
    let card = redrawn(move || {
        let now = session.now.get();
        let beer = live.with(|s| s.as_ref().and_then(|s| beer(s, now)))?;
        let judged = pitching::already_in_words(session.writer(), &already_in::judge(beer));
        card(Some(judged))
    });
    let told = redrawn(move || {
        let now = session.now.get();
        let at = live.with(|s| s.as_ref().and_then(|s| s.pitch.as_ref().map(|(_, r)| r.at)))?;
        let hours = now.since(at).value();
        let age = write_number(hours.max(0.0), 0);
        Some(view! { <p>{format!("{age}\u{A0}h since pitching. ")} {quiet(hours)}</p> }.into_any())
    });
    let failed = RwSignal::new(None::<String>);
    let delete = move |_| {
        let id = live.with(|s| s.as_ref().and_then(|s| s.pitch.as_ref().map(|(id, _)| id.clone())));
        if let Some(id) = id {
            failed.set(remove(session, Kind::Pitch, &id, "Pitching deleted"));
        }
    };
    view! {
        <h2>"The yeast is in"</h2>
        {card}
        {told}
        <Figures rows=figures />
        <p class="small">{words::GAS_CAUTION}</p>
        <Outcome said=failed />
        <button type="button" class="danger" on:click=delete>
            "Delete the pitching"
        </button>
    }
}
