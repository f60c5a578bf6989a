//! Bottles really filled: as many as the volume fills until another number is given, then or later.

use super::fields::{FORM, Fields, scope};
use crate::advice::bottle::stock::Bottles;
use crate::app::act::{Act, BottleAct};
use crate::app::ask::{Ask, Asked, Wrong, ask};
use crate::app::event::Effect;
use crate::app::fold::fold;
use crate::app::model::{Model, Then};
use crate::app::part::{Action, Part, What, form};
use crate::app::save;
use crate::batch::{BottlingRecord, Change, Entry, Id};
use crate::quantity::{Bounds, Count, CountUnit, Measured};

/// So many of one kind nobody fills in a day.
const COUNT: Bounds<Count> = Bounds::new(Count::literal(0.0), Count::literal(5000.0));

/// The question for bottles of one size and kind.
fn ask_count(m: &Model, scope: &str, own: Bottles) -> Asked<Count> {
    let millilitres = 1000.0 * own.size.value();
    let words = &m.words.bottle;
    let first = Count::nearest(f64::from(own.count));
    let mut asked = ask(
        m,
        Ask {
            name: format!("{scope}filled-{}-{millilitres:.0}", own.class.name()),
            label: "",
            hint: "",
            unit: CountUnit::Bottles,
            bounds: COUNT,
            step: |_| 1.0,
            first: Some(first),
            start: first,
        },
    );
    if let What::Number(number) = &mut asked.part.what {
        let label = (words.really_filled)(m.writer(), own);
        let spoken = &m.words.fields;
        number.spoken = [(spoken.less)(&label), (spoken.more)(&label), (spoken.unit)(&label)];
        number.label = label;
    }
    asked
}

/// The questions of the form.
pub fn asked(m: &Model, fields: &Fields) -> Vec<(Bottles, Asked<Count>)> {
    let Some(beer) = fields.beer.ok() else { return vec![] };
    let filling = fields.filling(beer);
    let one = |own: Bottles| (own, ask_count(m, &fields.scope, own));
    filling.filled.into_iter().map(one).collect()
}

/// What was filled; what cannot be read is marked.
pub fn counted(asked: Vec<(Bottles, Asked<Count>)>, wrong: &mut Wrong) -> Vec<Bottles> {
    let count = |(own, asked): (Bottles, Asked<Count>)| {
        let count = wrong.demand(&asked)?.value().round() as u32;
        Some(Bottles { count, ..own }).filter(|own| own.count > 0)
    };
    asked.into_iter().filter_map(count).collect()
}

/// The questions beside a bottling that is recorded.
fn recorded(m: &Model, batch: &Id, record: &BottlingRecord) -> Vec<(Bottles, Asked<Count>)> {
    let filled = record.grounds.iter().flat_map(|grounds| grounds.filled.iter());
    filled.map(|own| (*own, ask_count(m, &scope(batch), *own))).collect()
}

/// The same, folded away, with a save of their own; nothing where no bottle was noted.
pub fn parts(m: &Model, batch: &Id, record: &BottlingRecord) -> Option<Part> {
    let words = &m.words.bottle;
    let mut parts: Vec<_> =
        recorded(m, batch, record).into_iter().map(|(_, asked)| asked.part).collect();
    if parts.is_empty() {
        return None;
    }
    let (label, spoken) = (words.save_count.to_owned(), String::new());
    let save = What::Action(Action { kind: "", label, spoken, act: None });
    parts.push(Part::new("bottled/recount/save", save));
    let send = Act::Bottle(BottleAct::Recount(batch.clone()));
    let form = form("bottled/recount/form", "", send, parts);
    Some(fold(m, "bottled/recount", words.recount, vec![form]))
}

/// Saves another number.
pub fn recount(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let Some((id, mut record)) = m.journal.bottling(batch).cloned() else { return vec![] };
    let mut wrong = Wrong::default();
    let filled = counted(recorded(m, batch, &record), &mut wrong);
    if let Some(first) = wrong.shown(m) {
        return vec![Effect::Attend(first)];
    }
    // At least one was filled, or nothing was bottled.
    if let Some(grounds) = record.grounds.as_mut().filter(|_| !filled.is_empty()) {
        grounds.filled = filled;
    }
    let (done, then) = (m.words.bottle.recounted, vec![Then::Forget(scope(batch))]);
    save::commit(m, FORM, Change::put(id, Entry::Bottling(record)), done, then)
}
