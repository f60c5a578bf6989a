//! Priming sugar for beer that is finished, with the guard beside it.

use crate::advice::bottle::asked::{Asked, DoseFor, Ended, Glass, SugarGoes};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::Size;
use crate::advice::bottle::ways_to_dose::ways;
use crate::advice::bottle::{Bottling, Plan, plan};
use crate::page::ask::{Ask, ask};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Said, card};
use crate::page::parts::field::NumberField;
use crate::page::parts::live::live;
use crate::page::priming::{
    NOT_CHILLED, PlanFigures, ask_beer, ask_hottest, ask_target, ask_warmest, dose_said,
    pick_weakest,
};
use crate::page::session::use_session;
use crate::page::sugar_ask::{SugarAsk, SugarFields};
use crate::page::words;
use crate::quantity::{Bounds, LengthUnit, Metres};
use crate::science::ScienceError;
use leptos::prelude::*;

/// The sum.
#[component]
pub fn SugarSum() -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = "bench/sugar/";
    let beer = ask_beer(scope);
    let target = ask_target(scope);
    let warmest = ask_warmest(scope, NOT_CHILLED, None);
    let hottest = ask_hottest(scope);
    let settings = session.settings_now();
    let height = ask(
        scope,
        Ask {
            key: "height",
            label: "Height above the sea",
            hint: "",
            unit: settings.units.height,
            bounds: Bounds::new(Metres::literal(-400.0), Metres::literal(5000.0)),
            step: |unit| if unit == LengthUnit::Metres { 100.0 } else { 500.0 },
            first: Some(settings.height),
            start: settings.height,
        },
    );
    let sugar_ask = SugarAsk::new(scope, None, None);
    let sugar = sugar_ask.chosen();
    let weakest = drafts.text("bench/sugar/weakest", "");
    let (litres, wished, was, place, high) =
        (beer.value, target.value, warmest.value, hottest.value, height.value);
    let asked = move || -> Option<Result<Bottling, ScienceError>> {
        let settings = session.settings();
        let weakest = Bottle::named(&weakest.get())?;
        let asked = Asked {
            ended: Ended::WITHOUT_LOG,
            beer: litres.get().ok()?,
            target: wished.get().ok()?,
            warmest: was.get().ok()?,
            cold: None,
            dose_for: DoseFor::Rule,
            sugar: sugar.get()?,
            sugar_goes: SugarGoes::Vessel,
            scale: settings.scale(),
            unit: settings.units.mass,
            glass: Glass { weakest, smallest: Size::Ml500.litres() },
            hottest: place.get().ok()?,
            height: high.get().ok()?,
        };
        Some(asked.ready().map(|ready| ready.bottling))
    };
    let found = move || -> Option<Result<Plan, ScienceError>> { Some(asked()?.and_then(plan)) };
    let writer = move || session.writer();
    let said = move || match (asked(), found()) {
        (Some(Ok(asked)), Some(Ok(plan))) => {
            dose_said(writer(), &plan, asked.sugar, asked.beer.value())
        }
        (_, Some(Err(why))) => Said::only(words::science_error(why)),
        _ => Said::only("Give the volume, the weakest bottle and the warmest temperature."),
    };
    let ok = move || found().and_then(Result::ok);
    let judged = move || {
        let asked = asked()?.ok()?;
        let words = words::bottle_words(writer(), &plan(asked).ok()?, &ways(&asked, None));
        card(Some(words))
    };
    view! {
        <Answer label="Sugar to weigh" said />
        {live(judged)}
        <p class="small">
            "For beer that is finished: one point is still counted as left. A batch's own log says more. "
            {words::GLASS_CAUTION}
        </p>
        <div class="two-columns">
            <div>
                <NumberField face=beer.face />
                {pick_weakest("bench-sugar", weakest)}
                <NumberField face=warmest.face />
                <SugarFields id="bench-sugar" ask=sugar_ask />
                <NumberField face=target.face />
                <NumberField face=hottest.face />
                <NumberField face=height.face />
            </div>
            <div>
                <PlanFigures plan=ok />
            </div>
        </div>
    }
}
