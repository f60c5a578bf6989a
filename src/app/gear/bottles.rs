//! Bottles on hand.

use super::things::{Row, form_of, known, name_field, scope, section as list};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::Bottles;
use crate::app::act::Thing;
use crate::app::ask::{Ask, Asked, Chosen, Wrong, ask, pick};
use crate::app::model::Model;
use crate::app::part::{Part, What, text};
use crate::batch::{BottlesItem, Entry, Kind};
use crate::quantity::{BottleUnit, Bounds, Count, CountUnit, Litres, Measured};

/// Sizes that are filled.
const SIZE: Bounds<Litres> = Bounds::new(Litres::literal(0.1), Litres::literal(5.0));
/// How many may be on hand.
const COUNT: Bounds<Count> = Bounds::new(Count::literal(0.0), Count::literal(5000.0));

/// The section.
pub fn section(m: &Model) -> Part {
    let words = &m.words.gear;
    let rows = m.journal.gear(Kind::Bottles).filter_map(|(id, entry)| {
        let Entry::Bottles(item) = entry else { return None };
        let (id, line) = (id.clone(), (words.stock)(m.writer(), &item.bottles));
        Some(Row { id, name: item.name.clone(), line })
    });
    list(m, Kind::Bottles, (words.bottles, words.add_bottles), rows.collect(), form)
}

struct Fields {
    name: Chosen<String>,
    class: Chosen<Option<Bottle>>,
    size: Asked<Litres>,
    count: Asked<Count>,
    known: Option<BottlesItem>,
}

fn fields(m: &Model, thing: &Thing) -> Fields {
    let (words, scope) = (&m.words.gear, scope(thing));
    let known = match known(m, thing) {
        Some(Entry::Bottles(item)) => Some(item),
        _ => None,
    };
    let first = known.as_ref().map(|item| item.bottles);
    let of_name = known.as_ref().map_or("", |item| &item.name);
    let name = name_field(m, thing, words.name_of_bottles, of_name);
    let class = class_field(m, &format!("{scope}class"), first.map(|own| own.class));
    let size = ask(
        m,
        Ask {
            name: format!("{scope}size"),
            label: words.size_of_one,
            hint: "",
            unit: m.units().bottle(),
            bounds: SIZE,
            step: |unit| if unit == BottleUnit::Millilitres { 10.0 } else { 1.0 },
            first: first.map(|own| own.size),
            start: Litres::literal(0.5),
        },
    );
    let count = ask(
        m,
        Ask {
            name: format!("{scope}count"),
            label: words.how_many,
            hint: "",
            unit: CountUnit::Bottles,
            bounds: COUNT,
            step: |_| 1.0,
            first: first.map(|own| Count::nearest(f64::from(own.count))),
            start: Count::literal(24.0),
        },
    );
    Fields { name, class, size, count, known }
}

/// Their kind; nothing is chosen for the brewer.
fn class_field(m: &Model, name: &str, first: Option<Bottle>) -> Chosen<Option<Bottle>> {
    let words = &m.words.gear;
    let all =
        Bottle::ALL.map(|kind| (kind.name().to_owned(), (m.words.names.bottle)(kind).to_owned()));
    let none = (String::new(), words.choose_kind.to_owned());
    let options = std::iter::once(none).chain(all).collect();
    let first = first.map_or("", Bottle::name);
    let Chosen { value, mut part } = pick(m, name, (words.what_kind, ""), options, first);
    let value = Bottle::named(&value);
    if let What::Pick(shown) = &mut part.what
        && value.is_none()
        && m.drafts.was_demanded(name)
    {
        words.kind_needed.clone_into(&mut shown.error);
    }
    Chosen { value, part }
}

fn form(m: &Model, thing: &Thing) -> Part {
    let Fields { name, class, size, count, .. } = fields(m, thing);
    let caution = text(format!("{}caution", scope(thing)), "small", m.words.cautions.glass);
    form_of(m, thing, vec![name.part, class.part, size.part, count.part, caution])
}

/// What the form says, to be saved.
pub fn read(m: &Model, thing: &Thing, wrong: &mut Wrong) -> Option<Entry> {
    let Fields { name, class, size, count, known } = fields(m, thing);
    if name.value.is_empty() {
        wrong.mark(&name.part.name);
    }
    if class.value.is_none() {
        wrong.mark(&class.part.name);
    }
    let (size, count) = (wrong.demand(&size), wrong.demand(&count));
    let bottles = Bottles { size: size?, class: class.value?, count: count?.whole() };
    let name = name.value;
    Some(Entry::Bottles(match known {
        Some(mut item) => {
            (item.name, item.bottles) = (name, bottles);
            item
        }
        None => BottlesItem { name, bottles },
    }))
}
