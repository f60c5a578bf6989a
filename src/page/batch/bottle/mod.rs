//! Bottle: is it finished, how much sugar, will the glass hold.

use super::Live;
use super::bottled::Bottled;
use crate::advice::bottle::{Bottling, Over, Plan, guard, plan};
use crate::advice::dosing::Weighing;
use crate::advice::watch::State;
use crate::batch::{BottlingRecord, Entry, Id, Summary};
use crate::page::ask::{Ask, Asked, Read, ask};
use crate::page::batches::form::when;
use crate::page::bench::temperature;
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Said, card};
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::{Outcome, When, live as part};
use crate::page::parts::when::WhenField;
use crate::page::priming::{
    Choices, NOT_CHILLED, PLACE, PrimingFields, ask_beer, ask_hottest, ask_target, ask_warmest,
    bottle_named, dose_said, measured, remembered, stored, sugar_named,
};
use crate::page::session::{Session, use_session};
use crate::page::words;
use crate::quantity::{Bounds, CarbonDioxideVolumes, Celsius, Grams, Litres, MassUnit, Measured};
use crate::science::ScienceError;
use crate::science::bottle_pressure::Closing;
use crate::science::carbon_dioxide::already_in;
use crate::science::priming::Sugar;
use leptos::prelude::*;

/// The stage.
#[component]
pub fn BottleStage(id: Id, live: Live) -> impl IntoView {
    let bottled =
        Memo::new(move |_| live.with(|s| s.as_ref().is_some_and(|s| s.bottling.is_some())));
    part(move || {
        Some(if bottled.get() {
            view! { <Bottled live /> }.into_any()
        } else {
            view! { <BottlingForm id=id.clone() live /> }.into_any()
        })
    })
}

/// Warmest beer in the log since the fermentation all but ended: the last third of the readings, or
/// all where there are few.
fn warmest_in_log(summary: &Summary) -> Option<Celsius> {
    let temperatures: Vec<_> = summary.lines.iter().filter_map(|line| line.reading.beer).collect();
    let from = temperatures.len().saturating_sub(3);
    let late = temperatures.get(from..)?;
    late.iter().copied().max_by(|a, b| a.value().total_cmp(&b.value()))
}

#[derive(Clone)]
struct Fields {
    beer: Asked<Litres>,
    target: Asked<CarbonDioxideVolumes>,
    warmest: Asked<Celsius>,
    hottest: Asked<Celsius>,
    place: Asked<Celsius>,
    weighed: Asked<Grams>,
    sugar: RwSignal<String>,
    weakest: RwSignal<String>,
    because: RwSignal<String>,
    at: RwSignal<String>,
    note: RwSignal<String>,
}

impl Fields {
    fn new(scope: &str, live: Live) -> Self {
        let drafts = use_drafts();
        let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
        let warmest = live.with_untracked(|s| s.as_ref().and_then(warmest_in_log));
        let hint = if warmest.is_some() {
            "From your last readings. Not a chilled temperature: gas that left does not come back."
        } else {
            NOT_CHILLED
        };
        Self {
            beer: ask_beer(scope),
            target: ask_target(scope),
            warmest: ask_warmest(scope, hint, warmest),
            hottest: ask_hottest(scope),
            place: temperature(scope, ("place", "Where they will stand", ""), PLACE, None, 20.0),
            weighed: ask(
                scope,
                Ask {
                    key: "weighed",
                    label: "Sugar you weighed",
                    hint: "Leave empty if it is the dose above.",
                    unit: MassUnit::Grams,
                    bounds: Bounds::new(Grams::literal(0.0), Grams::literal(20_000.0)),
                    step: |_| 1.0,
                    first: None,
                    start: Grams::literal(100.0),
                },
            ),
            sugar: text("sugar", &stored(Sugar::Sucrose)),
            weakest: text("weakest", ""),
            because: text("because", ""),
            at: text("at", ""),
            note: text("note", ""),
        }
    }

    /// What the plan needs of them.
    fn input(&self, session: Session, live: Live) -> Input {
        let (beer, target) = (self.beer.value, self.target.value);
        let (warmest, hottest) = (self.warmest.value, self.hottest.value);
        let (sugar, weakest, because) = (self.sugar, self.weakest, self.because);
        Input { session, live, beer, target, warmest, hottest, sugar, weakest, because }
    }
}

/// What the plan needs of the fields; copied into closures.
#[derive(Clone, Copy)]
struct Input {
    session: Session,
    live: Live,
    beer: Read<Litres>,
    target: Read<CarbonDioxideVolumes>,
    warmest: Read<Celsius>,
    hottest: Read<Celsius>,
    sugar: RwSignal<String>,
    weakest: RwSignal<String>,
    because: RwSignal<String>,
}

impl Input {
    /// The plan's input, as far as the fields go; followed.
    fn bottling(self) -> Option<Result<Bottling, ScienceError>> {
        let ended = |s: &Summary| (s.finish.state, s.finish.points_left, s.may_go_on());
        let (state, points_left, yeast_may_go_on) = self.live.with(|s| s.as_ref().map(ended))?;
        let beer = measured(self.beer.get().ok()?);
        let (target, warmest, hottest) =
            (self.target.get().ok()?, self.warmest.get().ok()?, self.hottest.get().ok()?);
        let weakest = bottle_named(&self.weakest.get())?;
        let because = !self.because.get().trim().is_empty();
        let over = match state {
            State::Finished => Over::Judged,
            _ if because => Over::Stated,
            _ => Over::No,
        };
        let height = self.session.settings().height;
        Some(already_in(remembered(warmest), height).map(|held| Bottling {
            over,
            points_left,
            yeast_may_go_on,
            target,
            already_in: held.volumes,
            may_hold: None,
            beer,
            sugar: sugar_named(&self.sugar.get()),
            weighing: Weighing::USUAL,
            weakest,
            hottest,
            closing: Closing { height, ..Closing::USUAL },
        }))
    }
}

#[component]
fn BottlingForm(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("bottling/{}/", id.as_str());
    let fields = Fields::new(&scope, live);
    let outcome = RwSignal::new(None::<String>);
    let now = move || session.now.get().local_text();
    let writer = move || session.writer();
    let input = fields.input(session, live);
    let found =
        move || -> Option<Result<Plan, ScienceError>> { Some(input.bottling()?.and_then(plan)) };
    let ok = move || found().and_then(Result::ok);
    let litres = fields.beer.value;
    let said = move || match (found(), litres.get()) {
        (Some(Ok(plan)), Ok(beer)) => dose_said(writer(), &plan, beer),
        (Some(Err(why)), _) => Said::only(words::science_error(why)),
        _ => Said::only("Give the volume, the weakest bottle and the warmest temperature."),
    };
    let finish =
        move || card(live.with(|s| s.as_ref().map(|s| words::watch_words(writer(), &s.finish))));
    let finished = Memo::new(move |_| {
        live.with(|s| s.as_ref().is_some_and(|s| s.finish.state == State::Finished))
    });
    let judged = move || card(ok().map(|plan| words::bottle_words(writer(), &plan)));

    let save = {
        let fields = fields.clone();
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            let record = || -> Result<BottlingRecord, String> {
                let again = || "Some fields need another look.".to_owned();
                let asked = (
                    fields.beer.demand(),
                    fields.target.demand(),
                    fields.warmest.demand(),
                    fields.hottest.demand(),
                );
                let wished = (fields.place.optional(), fields.weighed.optional());
                let (Some(beer), Some(target), Some(warmest), Some(hottest)) = asked else {
                    return Err(again());
                };
                let (Ok(place), Ok(weighed)) = wished else { return Err(again()) };
                let weakest = bottle_named(&fields.weakest.get_untracked())
                    .ok_or_else(|| "Choose the weakest bottle.".to_owned())?;
                let input = untrack(|| input.bottling()).and_then(Result::ok).ok_or_else(again)?;
                let dose = untrack(ok).and_then(|plan| plan.dose().map(|dose| dose.sugar.value()));
                let weighed = weighed.or(dose).ok_or_else(|| {
                    "There is no dose for this. If it is bottled already, say how much sugar you weighed."
                        .to_owned()
                })?;
                let worst = guard(&input, weighed).map_err(words::science_error)?.worst;
                Ok(BottlingRecord {
                    batch: id.clone(),
                    at: when(&fields.at.get_untracked())?,
                    beer: measured(beer),
                    sugar: sugar_named(&fields.sugar.get_untracked()),
                    weighed,
                    target,
                    warmest,
                    weakest,
                    hottest,
                    place,
                    moved: None,
                    worst,
                    went_on_because: fields.because.get_untracked().trim().to_owned(),
                    note: fields.note.get_untracked().trim().to_owned(),
                    grounds: None,
                })
            };
            let done = record().and_then(|record| {
                session.put_new(Entry::Bottling(record), Some("Bottling saved"))
            });
            match done {
                Ok(_) => drafts.forget(&scope),
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    let Fields {
        beer,
        target,
        warmest,
        hottest,
        place,
        weighed,
        sugar,
        weakest,
        because,
        at,
        note,
    } = fields;
    view! {
        <h2>"Is it finished?"</h2>
        {part(finish)}
        <form on:submit=save novalidate>
            <When is=move || !finished.get()>
                <TextField
                    id="bottling-because"
                    label="If you know better: why is it finished?"
                    text=because
                    long=true
                />
            </When>
            <h2>"How much sugar?"</h2>
            <Answer label="Sugar to weigh" said />
            {part(judged)}
            <p class="small">{words::GLASS_CAUTION}</p>
            <PrimingFields
                id="bottling"
                faces=vec![beer.face, warmest.face, target.face, hottest.face]
                choices=Choices { weakest, sugar }
                plan=ok
            />
            <details class="more">
                <summary>"Weighed, place, time and note"</summary>
                <NumberField face=weighed.face />
                <NumberField face=place.face />
                <WhenField
                    id="bottling-at"
                    label="Bottled"
                    text=at
                    now
                />
                <TextField
                    id="bottling-note"
                    label="Note"
                    text=note
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
