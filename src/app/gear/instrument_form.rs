//! One hydrometer: what it was made for, how fine its scale is, and what it shows in water and in
//! sugar water.

use super::things::{form_of, known, name_field, scope};
use crate::app::act::Thing;
use crate::app::ask::{
    Ask, AskGravity, Asked, AskedGravity, Chosen, Wrong, ask, ask_gravity, choice,
};
use crate::app::fields::{SAMPLE, temperature};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Part, What, text};
use crate::batch::{Entry, HydrometerItem};
use crate::quantity::{
    Bounds, Celsius, Grams, Gravity, GravityChange, GravityUnit, Litres, Measured, SpecificGravity,
    VolumeUnit,
};
use crate::science::hydrometer::{Hydrometer, SugarCheck};
use crate::science::hydrometer_check::{Solution, offset_from_water, solution};
use crate::science::{ScienceError, sucrose};

/// Kitchen scales, from one mark to the next.
const SCALES: Grams = Grams::literal(1.0);
/// Temperatures printed on hydrometers, in °C, with their stored names.
const REFERENCES: [(f64, &str); 4] = [(20.0, "20"), (15.56, "15.56"), (15.0, "15"), (17.5, "17.5")];
/// Steps between two lines, with their stored names.
const DIVISIONS: [(f64, &str); 4] =
    [(0.002, "0.002"), (0.001, "0.001"), (0.0005, "0.0005"), (0.005, "0.005")];

/// The choice of one of these numbers: what was given, however near to it the nearest of them is, until
/// one is chosen.
fn one_of(
    m: &Model,
    name: &str,
    said: (&str, &str),
    table: [(f64, &str); 4],
    words: [&str; 4],
    given: f64,
) -> Chosen<f64> {
    let options: Vec<_> =
        table.iter().zip(words).map(|(&(value, stored), words)| (value, stored, words)).collect();
    let distance = |value: f64| (value - given).abs();
    let nearest =
        table.iter().fold(
            table[0].0,
            |best, &(value, _)| {
                if distance(value) < distance(best) { value } else { best }
            },
        );
    let mut chosen = choice(m, name, said, &options, nearest);
    if m.drafts.text(name).is_none() {
        chosen.value = given;
    }
    chosen
}

struct Fields {
    item: HydrometerItem,
    name: Chosen<String>,
    reference: Chosen<f64>,
    division: Chosen<f64>,
    water: AskedGravity,
    water_at: Asked<Celsius>,
    target: AskedGravity,
    jar: Asked<Litres>,
    sweet: AskedGravity,
    sweet_at: Asked<Celsius>,
}

fn fields(m: &Model, thing: &Thing) -> Fields {
    let (words, scope) = (&m.words.gear, scope(thing));
    let part = |field: &str| format!("{scope}{field}");
    let item = item(m, thing);
    let own = item.instrument;
    let gravity = |field: &str, label, hint, start, first: Option<f64>| {
        let unit = GravityUnit::SpecificGravity;
        let first = first.map(|sg| Gravity::Specific(SpecificGravity::nearest(sg)));
        let start = SpecificGravity::nearest(start);
        ask_gravity(m, AskGravity { name: part(field), label, hint, unit, first, start })
    };
    let warmth = |field: &str, label| {
        temperature(m, part(field), (label, ""), SAMPLE, Some(own.reference), 20.0)
    };
    let references = [words.at_20, words.at_60_f, words.at_15, words.at_17_5];
    let divisions = DIVISIONS.map(|(step, _)| (words.division)(GravityChange::nearest(step)));
    let [a, b, c, d] = &divisions;
    let made_for = (words.made_for, words.made_for_hint);
    let given = own.reference.value();
    Fields {
        name: name_field(m, thing, words.name, &item.name),
        reference: one_of(m, &part("reference"), made_for, REFERENCES, references, given),
        division: one_of(
            m,
            &part("division"),
            (words.line_to_line, ""),
            DIVISIONS,
            [a, b, c, d],
            own.division.value(),
        ),
        water: gravity("water", words.in_water, words.in_water_hint, 1.0, None),
        water_at: warmth("water-at", words.water_at),
        target: gravity("target", words.to_make, "", 1.048, Some(1.048)),
        jar: ask(
            m,
            Ask {
                name: part("jar"),
                label: words.jar,
                hint: "",
                unit: VolumeUnit::Litres,
                bounds: Bounds::new(Litres::literal(0.05), Litres::literal(2.0)),
                step: |_| 0.05,
                first: Some(Litres::literal(0.25)),
                start: Litres::literal(0.25),
            },
        ),
        sweet: gravity("sugar-shows", words.in_sugar, "", 1.048, None),
        sweet_at: warmth("sugar-at", words.sugar_at),
        item,
    }
}

/// The instrument as it is recorded; a new one is as the usual, without a name.
fn item(m: &Model, thing: &Thing) -> HydrometerItem {
    let usual = || match &thing.id {
        // The usual one is there before it is recorded.
        Some(_) => HydrometerItem::usual(),
        None => {
            let mut new = HydrometerItem::usual();
            new.name.clear();
            new
        }
    };
    match known(m, thing) {
        Some(Entry::Hydrometer(item)) => item,
        _ => usual(),
    }
}

impl Fields {
    fn reference(&self) -> Celsius {
        Celsius::nearest(self.reference.value)
    }

    /// What the check in water says to add, once there is one.
    fn offset(&self) -> Option<Result<GravityChange, ScienceError>> {
        Some(offset_from_water(self.water.ok()?, self.water_at.ok()?, self.reference()))
    }

    /// What to weigh for the second check.
    fn mixture(&self) -> Option<Solution> {
        let target = sucrose::as_specific(self.target.ok()?);
        let (jar, at) = (self.jar.ok()?, self.sweet_at.ok()?);
        solution(target, jar, SCALES, at, self.reference()).ok()
    }

    /// The second check, once there is one.
    fn sugar(&self) -> Option<SugarCheck> {
        let (shown, temperature) = (self.sweet.ok()?, self.sweet_at.ok()?);
        let Solution { sugar, water, .. } = self.mixture()?;
        let whole = |grams: Grams| Grams::nearest(grams.value().round());
        Some(SugarCheck { sugar: whole(sugar), water: whole(water), shown, temperature })
    }

    /// The instrument with both checks. A new check replaces the old; without one the old stays.
    fn instrument(&self) -> Hydrometer {
        let own = self.item.instrument;
        Hydrometer {
            reference: self.reference(),
            division: GravityChange::nearest(self.division.value),
            offset: self.offset().and_then(Result::ok).unwrap_or(own.offset),
            sugar: self.sugar().or(own.sugar),
        }
    }
}

/// The form.
pub fn form(m: &Model, thing: &Thing) -> Part {
    let (words, scope) = (&m.words.gear, scope(thing));
    let part = |field: &str| format!("{scope}{field}");
    let fields = fields(m, thing);
    let told = match fields.offset() {
        Some(Err(why)) => (m.words.fields.science_error)(why),
        _ => (words.added_to_readings)(m.writer(), fields.instrument().offset),
    };
    let mixture = fields.mixture();
    let recipe = mixture.as_ref().map_or_else(|| words.give_target.to_owned(), words.recipe);
    let mut target = fields.target.part;
    // A save that was refused for want of a mixture says so where it can be mended.
    if let What::Number(shown) = &mut target.what
        && shown.error.is_empty()
        && mixture.is_none()
        && m.drafts.was_demanded(&target.name)
    {
        words.give_target.clone_into(&mut shown.error);
    }
    let second = vec![
        text(part("second/why"), "", words.second_check_why),
        target,
        fields.jar.part,
        text(part("second/recipe"), "plain-answer", recipe),
        fields.sweet.part,
        fields.sweet_at.part,
    ];
    let parts = vec![
        fields.name.part,
        fields.reference.part,
        fields.division.part,
        fields.water.part,
        fields.water_at.part,
        text(part("told"), "plain-answer", told),
        fold(m, &part("second"), words.second_check, second),
        text(part("caution"), "small", m.words.cautions.glass_tool),
    ];
    form_of(m, thing, parts)
}

/// What the form says, to be saved.
pub fn read(m: &Model, thing: &Thing, wrong: &mut Wrong) -> Option<Entry> {
    let fields = fields(m, thing);
    if fields.name.value.is_empty() {
        wrong.mark(&fields.name.part.name);
    }
    // A check that was made is not dropped in silence because something about it is missing.
    match wrong.optional(&fields.water) {
        Some(_) => wrong.demand(&fields.water_at),
        None => wrong.optional(&fields.water_at),
    };
    if matches!(fields.offset(), Some(Err(_))) {
        wrong.mark(&fields.water.part.name);
    }
    let checked = wrong.optional(&fields.sweet).is_some();
    let target = wrong.optional(&fields.target);
    let (jar, sweet_at) = (wrong.optional(&fields.jar), wrong.optional(&fields.sweet_at));
    if checked && fields.mixture().is_none() {
        let missing = [
            (target.is_none(), &fields.target.part.name),
            (jar.is_none(), &fields.jar.part.name),
            (sweet_at.is_none(), &fields.sweet_at.part.name),
        ];
        let missing = missing.into_iter().find(|(missing, _)| *missing);
        wrong.mark(missing.map_or(&fields.target.part.name, |(_, name)| name));
    }
    let instrument = fields.instrument();
    let Fields { mut item, name, .. } = fields;
    (item.name, item.instrument) = (name.value, instrument);
    Some(Entry::Hydrometer(item))
}
