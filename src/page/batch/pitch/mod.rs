//! Pitch: from the end of chilling to the sealed lid, in the order things happen, and one save for all.

mod air;
mod cool;
mod day;
mod known;
mod pitched;
mod place;
mod start;
mod yeast;

use super::Live;
use crate::advice::pitch::yeast::{Method, in_sachets};
use crate::batch::{AddedWater, Entry, Id, PitchRecord, Reading, Vessel};
use crate::page::batches::form::when;
use crate::page::drafts::use_drafts;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::{Outcome, live as redrawn};
use crate::page::parts::when::WhenField;
use crate::page::session::{Session, use_session};
use crate::page::words;
use crate::quantity::Moment;
use crate::science::hydrometer::Condition;
use day::Day;
use leptos::prelude::*;

/// The stage.
#[component]
pub fn PitchStage(id: Id, live: Live) -> impl IntoView {
    let pitched = Memo::new(move |_| live.with(|s| s.as_ref().is_some_and(|s| s.pitch.is_some())));
    redrawn(move || {
        Some(if pitched.get() {
            view! { <pitched::Pitched live /> }.into_any()
        } else {
            view! { <PitchForm id=id.clone() live /> }.into_any()
        })
    })
}

const AGAIN: &str = "Some fields need another look.";

/// The sample as a reading of its own, if one was taken.
fn sample(day: &Day, batch: &Id, at: Moment) -> Result<Option<Reading>, String> {
    let again = |()| AGAIN.to_owned();
    let (as_read, sample) = (day.sample.optional(), day.sample_at.optional());
    let (as_read, sample) = (as_read.map_err(again)?, sample.map_err(again)?);
    let Some(as_read) = as_read else {
        // A sample's temperature alone is half a reading: the field that lacks is marked.
        if sample.is_some() {
            let _ = day.sample.demand();
            return Err(
                "The sample's gravity is missing. Give it, or empty its temperature.".to_owned()
            );
        }
        return Ok(None);
    };
    let hydrometer = day
        .live
        .with_untracked(|s| s.as_ref().map(|s| s.heading.hydrometer.clone()))
        .ok_or_else(|| AGAIN.to_owned())?;
    Ok(Some(Reading {
        batch: batch.clone(),
        at,
        vessel: Vessel::Main,
        as_read: Some(as_read),
        typed: day.sample.face.text.get_untracked().trim().to_owned(),
        sample,
        condition: Condition::Still,
        hydrometer,
        refractometer: None,
        added: None,
        beer: None,
        room: None,
        note: String::new(),
    }))
}

/// All that was asked, as one record. Every field is looked at before anything is refused.
fn record(day: &Day, batch: &Id, at: Moment) -> Result<PitchRecord, String> {
    let (wort, volume, added) = (day.wort.optional(), day.volume.optional(), day.added.optional());
    let (water, ice, yeast) = (day.water.optional(), day.ice.optional(), day.yeast.optional());
    let (sachet, aerated, room) =
        (day.sachet.optional(), day.aerated.optional(), day.room.optional());
    let ice_added = day.ice_added.optional();
    let looked = (day.bath.optional(), day.earlier.optional(), day.between.optional());
    let used = |row: &&day::Row| !row.kind.get_untracked().is_empty();
    let row_is_whole = |row: &day::Row| {
        let own = row.kind.get_untracked() == "own";
        let share = if own { row.share.demand().is_some() } else { row.share.optional().is_ok() };
        row.mass.demand().is_some() && share
    };
    // All are looked at, so that each shows what is wrong with it.
    let weighed = day.rows.iter().filter(used).filter(|row| !row_is_whole(row)).count() == 0;
    let (Ok(wort), Ok(volume), Ok(added), Ok(water), Ok(_), Ok(yeast)) =
        (wort, volume, added, water, ice, yeast)
    else {
        return Err(AGAIN.to_owned());
    };
    let (Ok(sachet), Ok(aerated), Ok(room), Ok(ice), (Ok(_), Ok(_), Ok(_)), true) =
        (sachet, aerated, room, ice_added, looked, weighed)
    else {
        return Err(AGAIN.to_owned());
    };
    let known = day.known();
    let sachets: Option<u32> = day.sachets.get_untracked().parse().ok();
    let from_sachets = sachets.map(|count| in_sachets(count, sachet));
    let method = match day.method.get_untracked().as_str() {
        "sprinkled" => Some(Method::Sprinkled),
        "rehydrated" => Some(Method::Rehydrated),
        _ => None,
    };
    let satellite = match day.satellite.get_untracked().as_str() {
        "yes" => Some(true),
        "no" => Some(false),
        _ => None,
    };
    Ok(PitchRecord {
        wort,
        volume,
        water: added.map(|volume| AddedWater { volume, temperature: water }),
        ice,
        ingredients: untrack(|| known.ingredients()),
        goes_by: untrack(|| known.goes_by()),
        yeast: yeast.or(from_sachets),
        product: day.product.get_untracked().trim().to_owned(),
        sachets,
        method,
        aerated,
        satellite,
        vessel: room.map(|_| place::vessel_named(&day.vessel.get_untracked())),
        room,
        place: day.stands.get_untracked().trim().to_owned(),
        note: day.note.get_untracked().trim().to_owned(),
        ..PitchRecord::new(batch.clone(), at)
    })
}

fn save(session: Session, day: &Day, batch: &Id) -> Result<(), String> {
    let at = when(&day.at.get_untracked())?;
    let (reading, record) = (sample(day, batch, at), record(day, batch, at));
    let (reading, record) = (reading?, record?);
    let reading = reading.map(Entry::Reading);
    session.put_all_new(reading.into_iter().chain([Entry::Pitch(record)]), "Pitching saved")
}

#[component]
fn PitchForm(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("pitch/{}/", id.as_str());
    let day = Day::new(&scope, live);
    let started = drafts.text(&format!("{scope}timer"), "");
    let outcome = RwSignal::new(None::<String>);
    let now = move || session.now.get().local_text();
    let submit = {
        let (day, scope) = (day.clone(), scope.clone());
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            match save(session, &day, &id) {
                Ok(()) => drafts.forget(&scope),
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    let (yeast_face, at, note) = (day.yeast.face.clone(), day.at, day.note);
    view! {
        <form on:submit=submit novalidate>
            <cool::Cool day=day.clone() />
            <start::Start day=day.clone() />
            <yeast::Yeast day=day.clone() />
            <air::Air day=day.clone() started />
            <place::Place day=day.clone() scope />
            <details class="more">
                <summary>"Yeast, time and note"</summary>
                <NumberField face=yeast_face />
                <WhenField id="pitch-at" label="Pitched" text=at now />
                <TextField id="pitch-note" label="Note" text=note long=true />
            </details>
            <Outcome said=outcome />
            <button type="submit" class="main-action">
                "The yeast is in"
            </button>
        </form>
        <p class="small">{words::HOT_CAUTION} " " {words::CLEANER_CAUTION}</p>
    }
}
