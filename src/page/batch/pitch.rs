//! Pitch: is it cool enough, how much yeast, and the record that it went in.

use super::{Live, remove};
use crate::advice::Verdict;
use crate::advice::pitch::{Wort, judge};
use crate::batch::{Entry, Id, Kind, PitchRecord};
use crate::page::ask::{Ask, ask};
use crate::page::batches::form::when;
use crate::page::bench::yeast::range_words;
use crate::page::bench::{by_thermometer, temperature, thermometer_choices};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Judged, VerdictCard};
use crate::page::parts::choice::Choice;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::figures::Figures;
use crate::page::parts::live::Outcome;
use crate::page::parts::when::WhenField;
use crate::page::session::use_session;
use crate::page::{words, write};
use crate::quantity::{Bounds, Celsius, Estimate, Grams, MassUnit};
use crate::science::sucrose;
use crate::science::yeast::dry_yeast;
use leptos::prelude::*;

const ANY: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(100.0));

/// The stage.
#[component]
pub fn PitchStage(id: Id, live: Live) -> impl IntoView {
    let pitched = Memo::new(move |_| live.with(|s| s.as_ref().is_some_and(|s| s.pitch.is_some())));
    move || {
        if pitched.get() {
            view! { <Pitched live /> }.into_any()
        } else {
            view! { <PitchForm id=id.clone() live /> }.into_any()
        }
    }
}

#[component]
fn Pitched(live: Live) -> impl IntoView {
    let session = use_session();
    let record = move || live.with(|s| s.as_ref().and_then(|s| s.pitch.clone()));
    let rows = Signal::derive(move || {
        let Some((_, record)) = record() else { return vec![] };
        let w = session.writer();
        let mut rows = vec![("Pitched", write::moment(record.at))];
        rows.extend(record.wort.map(|t| ("Wort", w.temperature(t))));
        rows.extend(record.yeast.map(|grams| ("Dry yeast", w.mass(grams))));
        rows.extend((!record.note.is_empty()).then_some(("Note", record.note)));
        rows
    });
    let failed = RwSignal::new(None::<String>);
    let delete = move |_| {
        if let Some((id, _)) = record() {
            failed.set(remove(session, Kind::Pitch, &id, "Pitching deleted"));
        }
    };
    view! {
        <h2>"The yeast is in"</h2>
        <Figures rows />
        <p>
            "Bubbles or none mean little with a bucket lid. Up to a day of quiet is usual; a ring of dried foam shows that it works. Keep it closed, dark and at an even temperature."
        </p>
        <p class="small">{words::GAS_CAUTION}</p>
        <Outcome said=failed />
        <button type="button" class="danger" on:click=delete>
            "Delete the pitching"
        </button>
    }
}

#[component]
fn PitchForm(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("pitch/{}/", id.as_str());
    let wort = temperature(&scope, ("wort", "Wort now", "Stir it first."), ANY, None, 20.0);
    let thermometer = drafts.text(&format!("{scope}thermometer"), "probe");
    let yeast = ask(
        &scope,
        Ask {
            key: "yeast",
            label: "Dry yeast",
            hint: "Leave empty if it is not weighed.",
            unit: MassUnit::Grams,
            bounds: Bounds::new(Grams::literal(0.5), Grams::literal(1000.0)),
            step: |_| 0.5,
            first: None,
            start: Grams::literal(11.0),
        },
    );
    let at = drafts.text(&format!("{scope}at"), "");
    let note = drafts.text(&format!("{scope}note"), "");
    let outcome = RwSignal::new(None::<String>);
    let now = Signal::derive(move || session.now.get().local_text());

    let t = wort.value;
    let card = Signal::derive(move || {
        let heading = live.with(|s| s.as_ref().map(|s| s.heading.clone()));
        let judged = heading.zip(t.get().ok()).map(|(heading, t)| {
            let (temperature, stirred) = by_thermometer(&thermometer.get(), t);
            judge(Wort { temperature, stirred, family: heading.family, packet: heading.packet })
        });
        match judged {
            Some(advice) => words::pitch_words(session.writer(), &advice),
            None => Judged {
                verdict: Verdict::CantTell,
                word: words::verdict(Verdict::CantTell),
                sentence: "Give the wort's temperature.".to_owned(),
                reasons: vec![],
                next: String::new(),
            },
        }
    });
    let wants = move || {
        live.with(|summary| {
            let summary = summary.as_ref()?;
            let og = summary.original.map(Estimate::value)?;
            let heading = &summary.heading;
            let found =
                dry_yeast(heading.family.pitching(), heading.volume, sucrose::plato(og)).ok()?;
            Some(format!(
                "This wort wants about {} of dry yeast by the makers' dose.",
                range_words(found.by_maker)
            ))
        })
    };
    let save = {
        let (wort, yeast) = (wort.clone(), yeast.clone());
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            let done = (|| {
                let at = when(&at.get_untracked())?;
                let (Ok(wort), Ok(yeast)) = (wort.optional(), yeast.optional()) else {
                    return Err("Some fields need another look.".to_owned());
                };
                let note = note.get_untracked().trim().to_owned();
                let record = PitchRecord { batch: id.clone(), at, wort, yeast, note };
                session.put_new(Entry::Pitch(record), Some("Pitching saved"))
            })();
            match done {
                Ok(_) => drafts.forget(&scope),
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    view! {
        <VerdictCard judged=card />
        <form on:submit=save novalidate>
            <NumberField face=wort.face />
            <Choice
                id="pitch-thermometer"
                label="Read with"
                options=thermometer_choices()
                chosen=thermometer
            />
            <p class="plain-answer">{wants}</p>
            <details class="more">
                <summary>"Yeast, time and note"</summary>
                <NumberField face=yeast.face />
                <WhenField
                    id="pitch-at"
                    label="Pitched"
                    text=at
                    now
                />
                <TextField
                    id="pitch-note"
                    label="Note"
                    text=note
                    long=true
                />
            </details>
            <Outcome said=outcome />
            <button type="submit" class="main-action">
                "The yeast is in"
            </button>
        </form>
        <p class="small">{words::HOT_CAUTION}</p>
    }
}
