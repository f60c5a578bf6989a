//! What if: the plan for other values, which change nothing in the form until they are taken over.

use super::fields::{Fields, Tried};
use crate::advice::bottle::plan;
use crate::app::act::{Act, BottleAct};
use crate::app::model::Model;
use crate::app::part::{Fold, Part, Slider, Tag, What, action, group, status, text};
use crate::batch::Summary;
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, GasUnit, Litres, Measured, TemperatureUnit, Unit, UnitRow,
    VolumeUnit, write_bare_own,
};
use crate::words::write::volumes;

/// The name of the fold, and what the names of its sliders begin with.
const WHAT_IF: &str = "what-if";
/// Where it stands while its field says nothing: the range goes by this.
const USUAL_BEER: f64 = 20.0;

/// What is slid, by the name of the field that it stands for.
const SLID: [&str; 4] = ["target", "warmest", "beer", "hottest"];

fn slid_name(field: &str) -> String {
    format!("{WHAT_IF}/{field}")
}

/// Lowest, highest and one step of a slider.
fn range(m: &Model, field: &str, beer: Option<Litres>) -> (f64, f64, f64) {
    let units = m.units();
    let degree = if units.temperature == TemperatureUnit::Fahrenheit { 5.0 / 9.0 } else { 0.5 };
    match field {
        "target" => (1.0, 4.5, 0.1),
        "warmest" => (0.0, 35.0, degree),
        "hottest" => (15.0, 45.0, degree),
        _ => {
            // By the field alone, or it would slide away under the thumb.
            let most = (2.0 * beer.map_or(USUAL_BEER, Measured::value)).ceil();
            let litres = if units.volume == VolumeUnit::Litres { 0.5 } else { 0.378_5 };
            (0.5, most, litres)
        }
    }
}

/// What is tried there.
fn slid(m: &Model, field: &str, fields: &Fields) -> Option<f64> {
    let (min, max, _) = range(m, field, fields.beer.ok());
    let value = m.here.slid.get(&slid_name(field)).copied().filter(|value| value.is_finite())?;
    Some(value.clamp(min, max))
}

/// All that is tried.
pub fn tried(m: &Model, fields: &Fields) -> Tried {
    let slid = |field| slid(m, field, fields);
    Tried {
        target: slid("target").map(CarbonDioxideVolumes::nearest),
        warmest: slid("warmest").map(Celsius::nearest),
        beer: slid("beer").map(Litres::nearest),
        hottest: slid("hottest").map(Celsius::nearest),
    }
}

/// The sliders and what comes of them; made only while they are looked at.
pub fn what_if(m: &Model, s: &Summary, fields: &Fields) -> Part {
    let (open, words) = (m.is_open(WHAT_IF, false), &m.words.bottle);
    let fold =
        Fold { kind: "more what-if", summary: words.what_if.to_owned(), beside: vec![], open };
    let parts = if open { opened(m, s, fields) } else { vec![] };
    Part::of(WHAT_IF, What::Fold(fold), parts)
}

fn opened(m: &Model, s: &Summary, fields: &Fields) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.bottle);
    let tried = tried(m, fields);
    let target = tried.target.or(fields.target.ok());
    let warmest = tried.warmest.or(fields.warmest.ok());
    let beer = tried.beer.or(fields.beer.ok());
    let hottest = tried.hottest.or(fields.hottest.ok());
    let slider = |field: &str, label: &'static str, at: Option<(f64, String)>| {
        let range = range(m, field, fields.beer.ok());
        let (value, text) = at.unwrap_or((range.0, String::new()));
        let spoken = [(m.words.fields.less)(label), (m.words.fields.more)(label)];
        let slider = Slider { label: label.to_owned(), value, text, spoken, range };
        Part::new(slid_name(field), What::Slider(slider))
    };
    let degrees = |t: Option<Celsius>| t.map(|t| (t.value(), w.temperature(t)));
    let result = text("what-if/result", "plain-answer", result(m, s, fields, tried));
    let result = status("what-if/said", "", vec![result]);
    let act = |name, kind, label, act| action(name, kind, label, Act::Bottle(act));
    let actions = vec![
        act("what-if/take", "", words.use_these, BottleAct::Take(s.id.clone())),
        act("what-if/back", "quiet", words.put_back, BottleAct::PutBack),
    ];
    vec![
        result,
        slider("target", words.slide_target, target.map(|gas| (gas.value(), volumes(gas)))),
        slider("warmest", words.slide_warmest, degrees(warmest)),
        slider("beer", words.slide_beer, beer.map(|beer| (beer.value(), w.volume(beer)))),
        slider("hottest", words.slide_hottest, degrees(hottest)),
        group("what-if/actions", Tag::Div, "form-actions", actions),
    ]
}

fn result(m: &Model, s: &Summary, fields: &Fields, tried: Tried) -> String {
    if let Some(odd) = fields.too_much(tried.beer) {
        return (m.words.odd.odd)(m.writer(), odd);
    }
    let Some(Ok(ready)) = fields.ready(m, s, tried) else {
        return m.words.bottle.priming.give_first.to_owned();
    };
    let plan = plan(ready.bottling);
    plan.map(|plan| (m.words.bottle.tried)(m.writer(), &plan)).unwrap_or_default()
}

/// Puts what was tried into the fields, each in the unit that is chosen beside it.
pub fn take(m: &mut Model, fields: &Fields) {
    let tried = tried(m, fields);
    let mut put = |shown: &Part, tried: Option<f64>, units: &'static [UnitRow]| {
        let What::Number(number) = &shown.what else { return };
        let unit = units.iter().find(|unit| unit.symbol == number.unit);
        if let (Some(tried), Some(unit)) = (tried, unit) {
            m.drafts.put(&shown.name, write_bare_own(tried, unit), unit.symbol);
        }
    };
    put(&fields.target.part, tried.target.map(Measured::value), GasUnit::ROWS);
    put(&fields.warmest.part, tried.warmest.map(Measured::value), TemperatureUnit::ROWS);
    put(&fields.beer.part, tried.beer.map(Measured::value), VolumeUnit::ROWS);
    put(&fields.hottest.part, tried.hottest.map(Measured::value), TemperatureUnit::ROWS);
    put_back(m);
}

/// Puts the sliders back to what the form says.
pub fn put_back(m: &mut Model) {
    for field in SLID {
        m.here.slid.remove(&slid_name(field));
    }
}
