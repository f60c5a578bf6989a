//! Bottle: is it finished, how much sugar, will the glass hold.

mod bottles;
mod fields;
mod history;
mod what_if;

use super::Live;
use super::bottled::Bottled;
use crate::advice::bottle::dosing::Dosing;
use crate::advice::bottle::ways_to_dose::ways;
use crate::advice::bottle::{Plan, guard, plan};
use crate::advice::watch::State;
use crate::batch::{BottlingRecord, Entry, Grounds, Id};
use crate::page::batches::form::when;
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Judged, Said, card};
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::{Outcome, When, live as part, say};
use crate::page::parts::when::WhenField;
use crate::page::priming::{PlanFigures, bottle_named, dose_said};
use crate::page::session::use_session;
use crate::page::sugar_ask::SugarFields;
use crate::page::words;
use crate::science::ScienceError;
use bottles::{BottleFields, ToFill, filling};
use fields::{Changed, Fields, Input};
use history::{BothEnds, HistoryFields};
use leptos::prelude::*;
use what_if::WhatIf;

/// The stage.
#[component]
pub fn BottleStage(id: Id, live: Live) -> impl IntoView {
    let bottled =
        Memo::new(move |_| live.with(|s| s.as_ref().is_some_and(|s| s.bottling.is_some())));
    move || {
        if bottled.get() {
            view! { <Bottled live /> }.into_any()
        } else {
            view! { <BottlingForm id=id.clone() live /> }.into_any()
        }
    }
}

#[component]
fn BottlingForm(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let scope = format!("bottling/{}/", id.as_str());
    let fields = Fields::new(&scope, live);
    let outcome = RwSignal::new(None::<String>);
    let now = move || session.now.get().local_text();
    let writer = move || session.writer();
    let input = fields.input(live);
    let ready = move || input.ready(Changed::default());
    let found = move || -> Option<Result<Plan, ScienceError>> {
        Some(ready()?.and_then(|r| plan(r.bottling)))
    };
    let ok = move || found().and_then(Result::ok);
    let said = move || match (ready(), found()) {
        (Some(Ok(ready)), Some(Ok(plan))) => {
            dose_said(writer(), &plan, ready.bottling.sugar, ready.bottling.beer.value())
        }
        (_, Some(Err(why))) => Said::only(words::science_error(why)),
        _ => Said::only("Give the volume, the bottles and the warmest temperature."),
    };
    let finish =
        move || card(live.with(|s| s.as_ref().map(|s| words::watch_words(writer(), &s.finish))));
    let finished = Memo::new(move |_| {
        live.with(|s| s.as_ref().is_some_and(|s| s.finish.state == State::Finished))
    });
    let words_of_it = move || -> Option<Judged> {
        let bottling = ready()?.ok()?.bottling;
        let course = live.with(|s| s.as_ref().map(|s| s.course.clone()));
        let now = session.now.get();
        let ways = ways(&bottling, course.as_ref().map(|course| (course, now)));
        Some(words::bottle_words(writer(), &plan(bottling).ok()?, &ways))
    };
    // Said aloud where it was not there before; the card itself is drawn anew and may go unheard.
    let heard = Memo::new(move |_| {
        let judged = ok().map(|plan| words::bottle_words(writer(), &plan, &[]));
        judged.as_ref().map(words::stopped).unwrap_or_default()
    });
    let texts = fields.texts;
    let save = {
        let fields = fields.clone();
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            let done = record(&id, &fields, input).and_then(|record| {
                session.put_new(Entry::Bottling(record), Some("Bottling saved"))
            });
            match done {
                Ok(_) => use_drafts().forget(&scope),
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    view! {
        <h2>"Is it finished?"</h2>
        {part(finish)}
        <form on:submit=save novalidate>
            <When is=move || !finished.get()>
                <TextField
                    id="bottling-because"
                    label="If you know better: why is it finished?"
                    text=texts.because
                    long=true
                />
            </When>
            <h2>"How much sugar?"</h2>
            <Answer label="Sugar to weigh" said />
            <p class="heard" role="alert">
                {say(move || heard.get())}
            </p>
            {part(move || card(words_of_it()))}
            <p class="small">{words::GLASS_CAUTION}</p>
            <div class="two-columns">
                <div>
                    <NumberField face=fields.beer.face.clone() />
                    <BottleFields input />
                    <NumberField face=fields.hottest.face.clone() />
                    <HistoryFields fields=fields.clone() />
                    <SugarFields id="bottling" ask=fields.sugar.clone() />
                    <NumberField face=fields.target.face.clone() />
                </div>
                <div>
                    <BothEnds input />
                    <ToFill input />
                    <PlanFigures plan=Signal::derive(ok) />
                    <WhatIf input fields=fields.clone() />
                </div>
            </div>
            <details class="more">
                <summary>"Weighed, place, time and note"</summary>
                <NumberField face=fields.weighed.face.clone() />
                <NumberField face=fields.place.face.clone() />
                <WhenField
                    id="bottling-at"
                    label="Bottled"
                    text=texts.at
                    now
                />
                <TextField
                    id="bottling-note"
                    label="Note"
                    text=texts.note
                    long=true
                />
            </details>
            <Outcome said=outcome />
            <button type="submit" class="main-action">
                "It is bottled"
            </button>
        </form>
    }
}

/// The record of what the fields say, or what is still wrong.
fn record(id: &Id, fields: &Fields, input: Input) -> Result<BottlingRecord, String> {
    let again = || "Some fields need another look.".to_owned();
    let asked = (
        fields.beer.demand(),
        fields.target.demand(),
        fields.warmest.demand(),
        fields.hottest.demand(),
    );
    fields.sugar.demand();
    if fields.texts.chilled.get_untracked() == "yes" && fields.coldest.demand().is_none() {
        return Err(again());
    }
    let wished = (fields.place.optional(), fields.weighed.optional());
    let (Some(_), Some(_), Some(warmest), Some(hottest)) = asked else {
        return Err(again());
    };
    let (Ok(place), Ok(weighed)) = wished else { return Err(again()) };
    let chosen = untrack(|| input.chosen());
    if chosen.is_empty() && bottle_named(&fields.texts.weakest.get_untracked()).is_none() {
        return Err("Choose the weakest bottle.".to_owned());
    }
    let ready =
        untrack(|| input.ready(Changed::default())).and_then(Result::ok).ok_or_else(again)?;
    let asked = ready.bottling;
    let dose = plan(asked).ok().and_then(|plan| plan.weigh());
    let weighed = weighed.or(dose).ok_or_else(|| {
        "There is no dose for this. If it is bottled already, say how much sugar you weighed."
            .to_owned()
    })?;
    let worst = guard(&asked, weighed).map_err(words::science_error)?.worst;
    let (filled, ..) = untrack(|| filling(&ready.chosen, input, asked.beer.value()));
    Ok(BottlingRecord {
        batch: id.clone(),
        at: when(&fields.texts.at.get_untracked())?,
        beer: asked.beer,
        sugar: asked.sugar,
        weighed,
        target: asked.target,
        warmest,
        weakest: asked.weakest,
        hottest,
        place,
        moved: None,
        worst,
        went_on_because: fields.texts.because.get_untracked().trim().to_owned(),
        note: fields.texts.note.get_untracked().trim().to_owned(),
        grounds: Some(Grounds {
            past: Some(ready.past),
            already_in: Some(asked.already_in),
            points_left: asked.points_left,
            filled,
            by_bottle: matches!(asked.weighing.dosing, Dosing::Bottles { .. }),
            scale: Some(asked.weighing.scale),
            sugar_name: input.sugar.name(),
        }),
    })
}
