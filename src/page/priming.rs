//! What the two places that work out priming sugar share: choices, and the plan in words and figures.

use super::ask::{Ask, Asked, ask};
use super::bench::{temperature, volume};
use super::parts::answer::Said;
use super::parts::bottle_drawing::{BottleData, BottleDrawing, GlassState};
use super::parts::choice::Pick;
use super::parts::figures::Figures;
use super::parts::picture::Figure;
use super::parts::worked::HowWorked;
use super::session::{unit_named, use_session};
use super::words;
use super::write::{self as written, Writer};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::{Plan, Reason};
use crate::page::parts::live::live;
use crate::quantity::{
    Bounds, CarbonDioxideVolumes, Celsius, GasUnit, Grams, Litres, Measured, PressureUnit, Unit,
    write, write_bare, write_number,
};
use crate::science::priming::Sugar;
use leptos::prelude::*;

/// Why the chilled temperature is not the one that is asked for.
pub const NOT_CHILLED: &str = "Not a chilled temperature: gas that left does not come back.";
/// Targets that are asked for.
const TARGET: Bounds<CarbonDioxideVolumes> =
    Bounds::new(CarbonDioxideVolumes::literal(1.0), CarbonDioxideVolumes::literal(4.5));
/// A target for most beer.
const USUAL_TARGET: CarbonDioxideVolumes = CarbonDioxideVolumes::literal(2.4);
/// Temperatures beer has been at, or bottles may come to stand at.
pub const PLACE: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(45.0));

/// Asks for the beer that is to be primed.
pub fn ask_beer(scope: &str) -> Asked<Litres> {
    let words = ("beer", "Beer in the bottling vessel", "What is there now, not the batch size.");
    volume(scope, words, None)
}

/// Asks for the carbon dioxide that is wished for.
pub fn ask_target(scope: &str) -> Asked<CarbonDioxideVolumes> {
    ask(
        scope,
        Ask {
            key: "target",
            label: "Wished carbon dioxide",
            hint: "2.4 suits most beer; British types about 1.8.",
            unit: GasUnit::Volumes,
            bounds: TARGET,
            step: |unit| if unit == GasUnit::Volumes { 0.1 } else { 0.2 },
            first: Some(USUAL_TARGET),
            start: USUAL_TARGET,
        },
    )
}

/// Asks how warm the beer has been since it went quiet.
pub fn ask_warmest(scope: &str, hint: &'static str, first: Option<Celsius>) -> Asked<Celsius> {
    let words = ("warmest", "Warmest it has been since it went quiet", hint);
    temperature(scope, words, PLACE, first, 20.0)
}

/// Asks for the hottest place that bottles may come to.
pub fn ask_hottest(scope: &str) -> Asked<Celsius> {
    let words = ("hottest", "Hottest place the bottles may come to", "");
    temperature(scope, words, PLACE, Some(Celsius::literal(30.0)), 30.0)
}

/// The stored name of one of a few things.
pub fn stored<T: serde::Serialize>(thing: T) -> String {
    serde_json::to_string(&thing).unwrap_or_default().trim_matches('"').to_owned()
}

/// The bottle of a stored name; none chosen yet gives none.
pub fn bottle_named(name: &str) -> Option<Bottle> {
    Bottle::named(name)
}

/// Bottles to choose from; nothing is chosen for the brewer.
pub fn bottle_choices(none: &str) -> Vec<(String, String)> {
    let all = Bottle::ALL.map(|bottle| (stored(bottle), words::bottle(bottle).to_owned()));
    std::iter::once((String::new(), none.to_owned())).chain(all).collect()
}

/// No bottle chosen yet.
const WEAKEST_DECIDES: &str = "Choose: the weakest decides";

/// The weakest bottle to be filled.
pub fn pick_weakest(id: &str, chosen: RwSignal<String>) -> AnyView {
    view! {
        <Pick
            id=format!("{id}-weakest")
            label="Weakest bottle to be filled"
            options=move || bottle_choices(WEAKEST_DECIDES)
            chosen
        />
    }
    .into_any()
}

/// Puts a value into a field, in the unit that is chosen beside it.
pub fn put<U: Unit>(asked: &Asked<U::Quantity>, value: U::Quantity) {
    if let Some(unit) = unit_named::<U>(untrack(|| asked.face.unit.get())) {
        asked.face.text.set(write_bare(value, unit));
    }
}

/// The answer of a plan: the dose, or that there is none.
pub fn dose_said(w: Writer, plan: &Plan, sugar: Sugar, beer: Litres) -> Said {
    let (Some(dose), Some(weigh)) = (plan.dose(), plan.weigh()) else {
        return Said::only("No dose: see why below.");
    };
    let a_litre = write_number(dose.sugar.value().value() / beer.value(), 1);
    let main = w.weighed(weigh, plan.scale());
    let doubt = format!("±\u{A0}{}", w.mass(Grams::nearest(dose.sugar.sigma())));
    let below = format!("{a_litre}\u{A0}g a litre. Weigh it; no spoon or cup is good enough.");
    match sugar.volume(weigh) {
        None => Said { main, beside: doubt, below },
        Some(volume) => Said {
            main: w.wort(volume),
            beside: format!("or {main} {doubt}"),
            below: "Boil it, let it cool, and stir it in like a syrup.".to_owned(),
        },
    }
}

/// The guard in figures.
fn guard_rows(plan: &Plan) -> Vec<(&'static str, String)> {
    let guard = plan.guard;
    let ceiling = guard.ceiling.map_or_else(|| "never to be filled".to_owned(), written::volumes);
    vec![
        ("Already in, upper end", written::volumes(guard.already_in)),
        ("From the sugar, in full", written::volumes(guard.from_sugar)),
        ("May still come", written::volumes(guard.still_to_come)),
        ("At worst", written::volumes(guard.worst)),
        ("Ceiling of the weakest bottle", ceiling),
        ("Pressure at 20\u{A0}°C, at worst", written::pressure(guard.at_20)),
        ("At the hottest place, at worst", written::pressure(guard.at_hottest)),
    ]
}

/// The guard as the drawing of a bottle shows it.
fn bottle_data(plan: &Plan) -> BottleData {
    let guard = plan.guard;
    let cautioned = plan.advice.reasons.contains(&Reason::CautionForGlass);
    let (fraction, state) = match guard.ceiling {
        None => (1.0, GlassState::Never),
        Some(ceiling) => {
            let fraction = guard.worst.value() / ceiling.value();
            let state = match (guard.worst > ceiling, cautioned) {
                (true, _) => GlassState::Above,
                (false, true) => GlassState::Caution,
                (false, false) => GlassState::Within,
            };
            (fraction, state)
        }
    };
    let figure = |value: String, name: &str| Figure { value, name: name.to_owned() };
    let pressure = |p, name| match state {
        GlassState::Never => Figure::default(),
        _ => figure(write(p, PressureUnit::Bar), name),
    };
    BottleData {
        fraction,
        state,
        worst: figure(written::volumes(guard.worst), "at worst"),
        ceiling: guard
            .ceiling
            .map(|ceiling| figure(written::volumes(ceiling), "ceiling"))
            .unwrap_or_default(),
        usual: pressure(guard.at_20, "at 20 °C"),
        hottest: pressure(guard.at_hottest, "in the hottest place"),
    }
}

/// The same for those who cannot see it.
fn bottle_description(plan: &Plan) -> String {
    guard_rows(plan).into_iter().map(|(name, figure)| format!("{name}: {figure}. ")).collect()
}

/// The drawing of a plan, once there is one.
#[component]
fn PlanDrawing(#[prop(into)] plan: Signal<Option<Plan>>) -> impl IntoView {
    live(move || {
        let plan = plan.get()?;
        let (data, description) = (bottle_data(&plan), bottle_description(&plan));
        Some(view! { <BottleDrawing data title="The weakest bottle" description /> }.into_any())
    })
}

/// A plan as a drawing, in figures, and how it was worked out.
#[component]
pub fn PlanFigures(#[prop(into)] plan: Signal<Option<Plan>>) -> impl IntoView {
    let session = use_session();
    let rows = move || plan.with(|p| p.as_ref().map(guard_rows)).unwrap_or_default();
    let worked = move || plan.get().map(|plan| plan.advice.worked);
    view! {
        <PlanDrawing plan />
        <Figures rows />
        <HowWorked
            worked
            writer=move || session.writer()
            doubt_in=(1, 1.0, "g")
        />
    }
}
