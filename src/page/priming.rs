//! What the two places that work out priming sugar share: choices, and the plan in words and figures.

use super::parts::answer::Said;
use super::words;
use super::write::{self, Writer};
use crate::advice::bottle::Plan;
use crate::advice::bottles::Bottle;
use crate::quantity::{
    Bounds, CarbonDioxideVolumes, Celsius, Estimate, Grams, Litres, Measured, write_number,
};
use crate::science::priming::Sugar;

/// Targets that are asked for.
pub const TARGET: Bounds<CarbonDioxideVolumes> =
    Bounds::new(CarbonDioxideVolumes::literal(1.0), CarbonDioxideVolumes::literal(4.5));
/// A target for most beer.
pub const USUAL_TARGET: CarbonDioxideVolumes = CarbonDioxideVolumes::literal(2.4);
/// Temperatures beer has been at, or bottles may come to stand at.
pub const PLACE: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(45.0));
/// One standard deviation of a volume mark, relative, and of a remembered temperature, °C (common
/// practice, no source).
const MARK: f64 = 0.02;
const REMEMBERED: f64 = 1.0;

/// The stored name of one of a few things.
pub fn stored<T: serde::Serialize>(thing: T) -> String {
    serde_json::to_string(&thing).unwrap_or_default().trim_matches('"').to_owned()
}

/// The bottle of a stored name; none chosen yet gives none.
pub fn bottle_named(name: &str) -> Option<Bottle> {
    Bottle::ALL.into_iter().find(|bottle| stored(*bottle) == name)
}

/// The sugar of a stored name.
pub fn sugar_named(name: &str) -> Sugar {
    Sugar::ALL.into_iter().find(|sugar| stored(*sugar) == name).unwrap_or(Sugar::Sucrose)
}

/// Bottles to choose from; nothing is chosen for the brewer.
pub fn bottle_choices() -> Vec<(String, String)> {
    let all = Bottle::ALL.map(|bottle| (stored(bottle), words::bottle(bottle).to_owned()));
    std::iter::once((String::new(), "Choose: the weakest decides".to_owned())).chain(all).collect()
}

/// Sugars to choose from.
pub fn sugar_choices() -> Vec<(String, String)> {
    Sugar::ALL.map(|sugar| (stored(sugar), words::sugar(sugar).to_owned())).to_vec()
}

/// The beer in the bottling vessel, as well as its mark can be read.
pub fn measured(beer: Litres) -> Estimate<Litres> {
    Estimate::new(beer, MARK * beer.value())
}

/// A temperature as it is remembered.
pub fn remembered(t: Celsius) -> Estimate<Celsius> {
    Estimate::new(t, REMEMBERED)
}

/// The answer of a plan: the dose, or that there is none.
pub fn dose_said(w: Writer, plan: &Plan, beer: Litres) -> Said {
    let Some(dose) = plan.dose() else { return Said::only("No dose: see why below.") };
    let a_litre = write_number(dose.sugar.value().value() / beer.value(), 1);
    Said {
        main: w.mass(dose.sugar.value()),
        beside: format!("±\u{A0}{}", w.mass(Grams::nearest(dose.sugar.sigma()))),
        below: format!("{a_litre}\u{A0}g a litre. Weigh it; no spoon or cup is good enough."),
    }
}

/// The guard in figures.
pub fn guard_rows(plan: &Plan) -> Vec<(&'static str, String)> {
    let guard = plan.guard;
    let ceiling = guard.ceiling.map_or_else(|| "never to be filled".to_owned(), write::volumes);
    vec![
        ("Already in, upper end", write::volumes(guard.already_in)),
        ("From the sugar, in full", write::volumes(guard.from_sugar)),
        ("May still come", write::volumes(guard.still_to_come)),
        ("At worst", write::volumes(guard.worst)),
        ("Ceiling of the weakest bottle", ceiling),
        ("Pressure at 20\u{A0}°C, at worst", write::pressure(guard.at_20)),
        ("At the hottest place, at worst", write::pressure(guard.at_hottest)),
    ]
}
