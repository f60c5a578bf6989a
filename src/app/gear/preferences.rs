//! Units, height above the sea, the kitchen scale, day or night: each saved when it is chosen or left, on
//! top of the settings that are there.

use crate::app::act::{Act, GearAct, UnitsOf};
use crate::app::ask::{Ask, Asked, Chosen, answer, ask, choice};
use crate::app::event::Effect;
use crate::app::fold::{fold_from, with_beside};
use crate::app::model::{Model, Then};
use crate::app::part::{Part, Tag, What, action, group, heading};
use crate::app::save::commit;
use crate::batch::{Change, Entry, Settings, Theme, Units};
use crate::quantity::{
    Bounds, Grams, GravityUnit, LengthUnit, Metres, TemperatureUnit, Unit, VolumeUnit,
};

const FORM: &str = "gear/preferences";
const GRAVITY: &str = "gear/gravity";
const TEMPERATURE: &str = "gear/temperature";
const VOLUME: &str = "gear/volume";
const SCALE: &str = "gear/scale";
const THEME: &str = "gear/theme";
/// The one number among them.
pub const HEIGHT: &str = "gear/height";

/// Where people brew: from the Dead Sea to the highest towns.
const HEIGHTS: Bounds<Metres> = Bounds::new(Metres::literal(-400.0), Metres::literal(5000.0));
/// Steps of scales in use, the first two for one bottle.
const SCALES: [(Grams, &str); 4] = [
    (Grams::literal(0.01), "0.01"),
    (Grams::literal(0.1), "0.1"),
    (Grams::literal(1.0), "1"),
    (Grams::literal(5.0), "5"),
];

/// A unit of each kind, by its symbol.
fn unit<U: Copy + PartialEq>(
    m: &Model,
    name: &str,
    said: (&str, &str),
    all: &[U],
    symbol: fn(U) -> &'static str,
    now: U,
) -> Chosen<U> {
    let options: Vec<_> = all.iter().map(|&one| (one, symbol(one), symbol(one))).collect();
    choice(m, name, said, &options, now)
}

fn gravity(m: &Model) -> Chosen<GravityUnit> {
    let said = (m.words.gear.gravity, "");
    unit(m, GRAVITY, said, &GravityUnit::ALL, GravityUnit::symbol, m.units().gravity)
}

fn temperature(m: &Model) -> Chosen<TemperatureUnit> {
    let said = (m.words.gear.temperature, "");
    let now = m.units().temperature;
    unit(m, TEMPERATURE, said, TemperatureUnit::ALL, TemperatureUnit::symbol, now)
}

fn volume(m: &Model) -> Chosen<VolumeUnit> {
    let said = (m.words.gear.volume, m.words.gear.volume_hint);
    unit(m, VOLUME, said, VolumeUnit::ALL, VolumeUnit::symbol, m.units().volume)
}

fn theme(m: &Model) -> Chosen<Theme> {
    let label = (m.words.gear.colours, "");
    answer(m, THEME, label, m.words.names.theme, m.settings().theme)
}

fn scale(m: &Model) -> Chosen<Grams> {
    let words = &m.words.gear;
    let said = SCALES.map(|(step, _)| (words.step_of_scale)(step));
    let options: Vec<_> = SCALES
        .iter()
        .zip(&said)
        .map(|(&(step, stored), said)| (step, stored, said.as_str()))
        .collect();
    choice(m, SCALE, (words.scale, words.scale_hint), &options, m.settings().scale())
}

fn height(m: &Model) -> Asked<Metres> {
    let Settings { height, units, .. } = m.settings();
    ask(
        m,
        Ask {
            name: HEIGHT.to_owned(),
            label: m.words.gear.height,
            hint: m.words.gear.height_hint,
            unit: units.height,
            bounds: HEIGHTS,
            step: |unit| if unit == LengthUnit::Metres { 100.0 } else { 500.0 },
            first: Some(height),
            start: height,
        },
    )
}

/// The section.
pub fn section(m: &Model) -> Part {
    let words = &m.words.gear;
    let usual = |name, label, units| action(name, "quiet", label, Act::Gear(GearAct::Usual(units)));
    let both = vec![
        usual("gear/metric", words.metric, UnitsOf::Metric),
        usual("gear/us", words.us, UnitsOf::UnitedStates),
    ];
    let (units, w) = (m.units(), m.writer());
    let now = [
        units.gravity.symbol(),
        units.temperature.symbol(),
        units.volume.symbol(),
        &w.height(m.settings().height),
        &(words.step_of_scale)(m.settings().scale()),
    ];
    let each =
        [gravity(m).part, temperature(m).part, volume(m).part, height(m).part, scale(m).part];
    let is_wrong =
        |part: &Part| matches!(&part.what, What::Number(field) if !field.error.is_empty());
    let wrong = each.iter().any(is_wrong);
    // What was typed wrong is not left folded away.
    let each = fold_from(m, "gear/each", words.each, wrong, each.into());
    let each = with_beside(each, "small", now.join(" · "));
    let parts = vec![
        heading("gear/units", 2, words.units),
        group("gear/usual", Tag::Div, "log-actions", both),
        each,
        heading("gear/day-and-night", 2, words.day_and_night),
        theme(m).part,
        Part::new("gear/preferences/outcome", What::Outcome(m.outcome(FORM))),
    ];
    group(FORM, Tag::Section, "", parts)
}

fn save(m: &mut Model, settings: Settings, then: Vec<Then>) -> Vec<Effect> {
    if settings == m.settings() {
        return vec![];
    }
    commit(m, FORM, Change::put(Settings::id(), Entry::Settings(settings)), "", then)
}

/// What is chosen is saved at once. It is no draft: what is not kept is not in force, and shows so.
pub fn typed(m: &mut Model, name: &str) -> Vec<Effect> {
    let mut settings = m.settings();
    match name {
        GRAVITY => settings.units.gravity = gravity(m).value,
        TEMPERATURE => settings.units.temperature = temperature(m).value,
        VOLUME => settings.units.volume = volume(m).value,
        THEME => settings.theme = theme(m).value,
        SCALE => settings.scale = Some(scale(m).value),
        _ => return vec![],
    }
    m.drafts.forget(name);
    save(m, settings, vec![])
}

/// The unit beside the height is the brewer's choice too.
pub fn unit_chosen(m: &mut Model, name: &str) -> Vec<Effect> {
    if name != HEIGHT {
        return vec![];
    }
    let chosen = m.drafts.get(HEIGHT).and_then(|draft| draft.unit.clone());
    m.drafts.usual_unit(HEIGHT);
    let found = LengthUnit::ALL.iter().find(|unit| Some(unit.symbol()) == chosen.as_deref());
    let mut settings = m.settings();
    settings.units.height = found.copied().unwrap_or(settings.units.height);
    save(m, settings, vec![])
}

/// A height that was typed or stepped to is saved once its field is left.
pub fn left(m: &mut Model, name: &str) -> Vec<Effect> {
    if name != HEIGHT || m.drafts.text(HEIGHT).is_none() {
        return vec![];
    }
    let Ok(height) = height(m).value else { return vec![] };
    let mut settings = m.settings();
    if settings.height == height {
        m.drafts.forget(HEIGHT);
        return vec![Effect::KeepDrafts];
    }
    settings.height = height;
    save(m, settings, vec![Then::Forget(HEIGHT.to_owned())])
}

/// All units that are usual together.
pub fn take_usual(m: &mut Model, of: UnitsOf) -> Vec<Effect> {
    let usual = match of {
        UnitsOf::Metric => Units::METRIC,
        UnitsOf::UnitedStates => Units::US,
    };
    let mut settings = m.settings();
    let units = &mut settings.units;
    units.gravity = usual.gravity;
    units.temperature = usual.temperature;
    units.volume = usual.volume;
    units.mass = usual.mass;
    units.height = usual.height;
    save(m, settings, vec![])
}
