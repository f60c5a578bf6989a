//! Sugars of one's own.

use super::things::{Row, form_of, known, name_field, scope, section as list};
use crate::app::act::Thing;
use crate::app::ask::{Ask, Asked, Chosen, Wrong, ask};
use crate::app::model::Model;
use crate::app::part::Part;
use crate::batch::{Entry, Kind, SugarItem};
use crate::quantity::{Bounds, Share, ShareUnit};
use crate::science::priming::OwnSugar;

/// The section.
pub fn section(m: &Model) -> Part {
    let words = &m.words.gear;
    let rows = m.journal.gear(Kind::Sugar).filter_map(|(id, entry)| {
        let Entry::Sugar(item) = entry else { return None };
        let (id, line) = (id.clone(), (words.own_sugar)(m.writer(), &item.sugar));
        Some(Row { id, name: item.name.clone(), line })
    });
    list(m, Kind::Sugar, (words.sugars, words.add_sugar), rows.collect(), form)
}

struct Fields {
    name: Chosen<String>,
    fermentable: Asked<Share>,
    water: Asked<Share>,
    known: Option<SugarItem>,
}

fn fields(m: &Model, thing: &Thing) -> Fields {
    let (words, scope) = (&m.words.gear, scope(thing));
    let known = match known(m, thing) {
        Some(Entry::Sugar(item)) => Some(item),
        _ => None,
    };
    let first = known.as_ref().map(|item| item.sugar);
    let of_name = known.as_ref().map_or("", |item| &item.name);
    let name = name_field(m, thing, words.name_of_sugar, of_name);
    let part = |field: &str, (label, hint), first| {
        let (name, unit) = (format!("{scope}{field}"), ShareUnit::Percent);
        let bounds = Bounds::new(Share::literal(0.0), Share::literal(1.0));
        ask(
            m,
            Ask {
                name,
                label,
                hint,
                unit,
                bounds,
                step: |_| 1.0,
                first: Some(first),
                start: first,
            },
        )
    };
    let whole = first.map_or(Share::literal(1.0), |own| own.fermentable);
    let fermentable = part("fermentable", (words.ferments, words.ferments_hint), whole);
    let dry = first.map_or(Share::literal(0.0), |own| own.water);
    let water = part("water", (words.water, words.water_hint), dry);
    Fields { name, fermentable, water, known }
}

fn form(m: &Model, thing: &Thing) -> Part {
    let Fields { name, fermentable, water, .. } = fields(m, thing);
    form_of(m, thing, vec![name.part, fermentable.part, water.part])
}

/// What the form says, to be saved.
pub fn read(m: &Model, thing: &Thing, wrong: &mut Wrong) -> Option<Entry> {
    let Fields { name, fermentable, water, known } = fields(m, thing);
    if name.value.is_empty() {
        wrong.mark(&name.part.name);
    }
    let (fermentable, water) = (wrong.demand(&fermentable), wrong.demand(&water));
    let sugar = OwnSugar { fermentable: fermentable?, water: water? };
    let name = name.value;
    Some(Entry::Sugar(match known {
        Some(mut item) => {
            (item.name, item.sugar) = (name, sugar);
            item
        }
        None => SugarItem { name, sugar },
    }))
}
