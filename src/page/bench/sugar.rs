//! Priming sugar for beer that is finished, with the guard beside it.

use crate::advice::bottle::{Bottling, Over, Plan, plan};
use crate::advice::dosing::Weighing;
use crate::page::ask::{Ask, ask};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Said, card};
use crate::page::parts::live::live;
use crate::page::priming::{
    Choices, NOT_CHILLED, PrimingFields, ask_beer, ask_hottest, ask_target, ask_warmest,
    bottle_named, dose_said, measured, remembered, stored, sugar_named,
};
use crate::page::session::use_session;
use crate::page::words;
use crate::quantity::{Bounds, GravityChange, LengthUnit, Metres};
use crate::science::ScienceError;
use crate::science::bottle_pressure::Closing;
use crate::science::carbon_dioxide::already_in;
use crate::science::priming::Sugar;
use leptos::prelude::*;

/// What even finished beer may have left, when no log says more: one point.
const ONE_POINT: GravityChange = GravityChange::literal(0.001);

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
    let sugar = drafts.text("bench/sugar/kind", &stored(Sugar::Sucrose));
    let weakest = drafts.text("bench/sugar/weakest", "");
    let (litres, wished, was, place, high) =
        (beer.value, target.value, warmest.value, hottest.value, height.value);
    let found = move || -> Option<Result<Plan, ScienceError>> {
        let height = high.get().ok()?;
        let (target, hottest) = (wished.get().ok()?, place.get().ok()?);
        let beer = measured(litres.get().ok()?);
        let weakest = bottle_named(&weakest.get())?;
        Some(already_in(remembered(was.get().ok()?), height).and_then(|held| {
            plan(Bottling {
                over: Over::Judged,
                points_left: Some(ONE_POINT),
                yeast_may_go_on: false,
                target,
                already_in: held.volumes,
                may_hold: None,
                beer,
                sugar: sugar_named(&sugar.get()),
                weighing: Weighing::USUAL,
                weakest,
                hottest,
                closing: Closing { height, ..Closing::USUAL },
            })
        }))
    };
    let writer = move || session.writer();
    let said = move || match (found(), litres.get()) {
        (Some(Ok(plan)), Ok(beer)) => dose_said(writer(), &plan, beer),
        (Some(Err(why)), _) => Said::only(words::science_error(why)),
        _ => Said::only("Give the volume, the weakest bottle and the warmest temperature."),
    };
    let ok = move || found().and_then(Result::ok);
    let judged = move || card(ok().map(|plan| words::bottle_words(writer(), &plan)));
    view! {
        <Answer label="Sugar to weigh" said />
        {live(judged)}
        <p class="small">
            "For beer that is finished: one point is still counted as left. A batch's own log says more. "
            {words::GLASS_CAUTION}
        </p>
        <PrimingFields
            id="bench-sugar"
            faces=vec![beer.face, warmest.face, target.face, hottest.face, height.face]
            choices=Choices { weakest, sugar }
            plan=ok
        />
    }
}
