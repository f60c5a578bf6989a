//! What the two places that work out priming sugar share: fields, and a plan as answer and figures.

use super::ask::{Ask, Asked, Chosen, ask, listed_or_none};
use super::drawing::{BottleData, Drawing, Figure, GlassState, Sketch};
use super::fields::{temperature, volume};
use super::model::Model;
use super::part::{Judged, Part, What};
use super::worked::{DoubtIn, how_worked};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::{Plan, Reason};
use crate::advice::standing::USUAL_TARGET;
use crate::quantity::{
    Bounds, CarbonDioxideVolumes, Celsius, GasUnit, Kilopascals, Litres, Measured, write_number,
};
use crate::science::ScienceError;
use crate::words::Weighs;

/// Targets that are asked for.
pub const TARGET: Bounds<CarbonDioxideVolumes> =
    Bounds::new(CarbonDioxideVolumes::literal(1.0), CarbonDioxideVolumes::literal(4.5));
/// Temperatures beer has been at, or bottles may come to stand at.
pub const PLACE: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(45.0));

/// Asks for the beer that is to be primed.
pub fn ask_beer(m: &Model, scope: &str) -> Asked<Litres> {
    let words = &m.words.bottle.priming;
    volume(m, format!("{scope}beer"), (words.beer, words.beer_hint), None)
}

/// Asks for the carbon dioxide that is wished for.
pub fn ask_target(
    m: &Model,
    scope: &str,
    kept: Option<CarbonDioxideVolumes>,
) -> Asked<CarbonDioxideVolumes> {
    let words = &m.words.bottle.priming;
    let usual = kept.unwrap_or(USUAL_TARGET);
    ask(
        m,
        Ask {
            name: format!("{scope}target"),
            label: words.target,
            hint: words.target_hint,
            unit: GasUnit::Volumes,
            bounds: TARGET,
            step: |unit| if unit == GasUnit::Volumes { 0.1 } else { 0.2 },
            first: Some(usual),
            start: usual,
        },
    )
}

/// Asks how warm the beer has been since it went quiet.
pub fn ask_warmest(
    m: &Model,
    scope: &str,
    hint: &'static str,
    first: Option<Celsius>,
) -> Asked<Celsius> {
    let label = m.words.bottle.priming.warmest;
    temperature(m, format!("{scope}warmest"), (label, hint), PLACE, first, 20.0)
}

/// Asks for the hottest place that bottles may come to.
pub fn ask_hottest(m: &Model, scope: &str) -> Asked<Celsius> {
    let (label, usual) = (m.words.bottle.priming.hottest, Some(Celsius::literal(30.0)));
    temperature(m, format!("{scope}hottest"), (label, ""), PLACE, usual, 30.0)
}

/// Asks for the weakest bottle to be filled; nothing is chosen for the brewer.
pub fn ask_weakest(m: &Model, scope: &str) -> Chosen<Option<Bottle>> {
    let words = &m.words.bottle.priming;
    let (name, label) = (format!("{scope}weakest"), (words.weakest, ""));
    listed_or_none(m, &name, label, m.words.names.bottle, words.weakest_decides)
}

/// The one answer: the dose, or that there is none, with how the beer stands.
pub fn judged(
    m: &Model,
    found: Result<&Plan, ScienceError>,
    weighs: Weighs,
    stands: Judged,
) -> Judged {
    let words = &m.words.bottle.plan;
    match found {
        Ok(plan) => (words.judged)(m.writer(), plan, weighs, stands),
        Err(why) => (words.no_sum)((m.words.fields.science_error)(why)),
    }
}

/// What is still to be given for a dose: of each thing whether it is missing, and its name.
pub fn lacking(m: &Model, things: &[(bool, &'static str)]) -> String {
    let missing = things.iter().filter(|(lacks, _)| *lacks).map(|(_, name)| *name);
    (m.words.bottle.plan.give)(&missing.collect::<Vec<_>>())
}

/// A plan as a drawing, in figures, and how it was worked out.
pub fn plan_parts(m: &Model, plan: &Plan) -> Vec<Part> {
    let words = &m.words.bottle.plan;
    let drawing = Drawing {
        title: words.weakest.to_owned(),
        description: (words.described)(m.writer(), plan),
        sketch: Sketch::Bottle(Box::new(bottle_data(m, plan))),
    };
    vec![Part::new("plan/bottle", What::Drawing(drawing)), plan_worked(m, plan)]
}

/// The figures of the drawing, and how they were worked out.
fn plan_worked(m: &Model, plan: &Plan) -> Part {
    let mut fold = how_worked(m, "plan/worked", &plan.advice.worked, DoubtIn::Grams);
    if !fold.parts.is_empty() {
        let figures = What::Figures((m.words.bottle.plan.guard)(m.writer(), plan));
        fold.parts.insert(0, Part::new("plan/figures", figures));
    }
    fold
}

/// The guard as the drawing of a bottle shows it.
fn bottle_data(m: &Model, plan: &Plan) -> BottleData {
    let (guard, words) = (plan.guard, &m.words.bottle.plan);
    let cautioned = plan.advice.reasons.contains(&Reason::CautionForGlass);
    let state = match guard.ceiling {
        None => GlassState::Never,
        Some(ceiling) if guard.worst > ceiling => GlassState::Above,
        Some(_) if cautioned => GlassState::Caution,
        Some(_) => GlassState::Within,
    };
    let figure = |value: String, name: &str| Figure { value, name: name.to_owned() };
    let pressure = |p: Kilopascals, name| match state {
        GlassState::Never => Figure::default(),
        _ => figure((words.pressure)(m.writer(), p), name),
    };
    let gas = crate::words::write::volumes;
    let parts = [guard.already_in, guard.from_sugar, guard.still_to_come];
    let keys = [words.in_it, words.of_sugar, words.may_come];
    let key = |(gas, name): (CarbonDioxideVolumes, &str)| {
        format!("{} {name}", write_number(gas.value(), 2))
    };
    let [in_it, sugar, may_come] = parts;
    BottleData {
        parts: parts.map(Measured::value),
        bears: guard.ceiling.map(Measured::value),
        state,
        keys: [key((in_it, keys[0])), key((sugar, keys[1])), key((may_come, keys[2]))],
        volumes: words.volumes_of,
        worst: figure(gas(guard.worst), words.at_worst),
        ceiling: guard.ceiling.map(|c| figure(gas(c), words.ceiling)).unwrap_or_default(),
        usual: pressure(guard.at_20, words.at_20),
        hottest: pressure(guard.at_hottest, words.at_hottest),
    }
}
