//! The form of a new batch, or of the one that is changed.

use crate::advice::family::{Family, Span};
use crate::advice::odd::{self, Odd};
use crate::app::act::{Act, BatchAct, GearAct};
use crate::app::ask::{
    Ask, AskGravity, Asked, AskedGravity, Chosen, Wrong, ask, ask_gravity, listed, moment,
    words_field,
};
use crate::app::ask_first::{ask_first, question};
use crate::app::copies::hand_out;
use crate::app::event::Effect;
use crate::app::fields::{NEW_BATCH, VOLUME, hydrometer};
use crate::app::fold::fold;
use crate::app::model::{Model, Then};
use crate::app::part::{Part, What, action, form, heading, link, submit};
use crate::app::route::Route;
use crate::app::save::{commit, refuse};
use crate::app::table;
use crate::batch::{BatchHeading, Change, Edit, Entry, Id, Settings, Stage, Summary};
use crate::quantity::{Bounds, Celsius, Gravity, Litres, Moment, SpecificGravity};
use crate::science::sucrose;

/// What yeast packets print.
const PACKET: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(45.0));

/// Where what is typed of it is kept.
fn scope(id: Option<&Id>) -> String {
    id.map_or(NEW_BATCH.to_owned(), |id| format!("heading/{}/", id.as_str()))
}

/// The name that its outcome goes by.
const FORM: &str = "batch";

struct Fields {
    name: Chosen<String>,
    started: Asked<Moment>,
    volume: Asked<Litres>,
    family: Chosen<Family>,
    start: AskedGravity,
    end: AskedGravity,
    from: Asked<Celsius>,
    to: Asked<Celsius>,
    hydrometer: Chosen<String>,
}

impl Fields {
    fn new(m: &Model, id: Option<&Id>) -> Self {
        let (words, units, scope) = (&m.words.batches, m.units(), scope(id));
        let before = id.and_then(|id| m.journal.batch(id));
        let name = |field: &str| format!("{scope}{field}");
        let gravity = |field, (label, hint), start, first: Option<SpecificGravity>| {
            let unit = units.gravity;
            let first = first.map(Gravity::Specific);
            let start = SpecificGravity::literal(start);
            ask_gravity(m, AskGravity { name: name(field), label, hint, unit, first, start })
        };
        let packet = |field, label, start, first| {
            let (hint, unit, bounds) = ("", units.temperature, PACKET);
            let (step, start) = (|_| 1.0, Celsius::literal(start));
            ask(m, Ask { name: name(field), label, hint, unit, bounds, step, first, start })
        };
        let packed = before.and_then(|b| b.packet);
        Self {
            name: words_field(
                m,
                &name("name"),
                words.name,
                before.map_or("", |b| b.name.as_str()),
                false,
            ),
            started: moment(m, &name("started"), words.brewing_day, before.map(|b| b.started)),
            volume: ask(
                m,
                Ask {
                    name: name("volume"),
                    label: words.volume,
                    hint: "",
                    unit: units.volume,
                    bounds: VOLUME,
                    step: |_| 0.5,
                    first: before.map(|b| b.volume),
                    start: Litres::literal(20.0),
                },
            ),
            family: listed(
                m,
                &name("family"),
                (m.words.names.yeast, ""),
                m.words.names.family,
                before.map_or(Family::Unknown, |b| b.family),
            ),
            start: gravity(
                "start",
                (words.start, words.leave_empty),
                1.045,
                before.and_then(|b| b.expected_start),
            ),
            end: gravity("end", (words.end, ""), 1.010, before.and_then(|b| b.expected_end)),
            from: packet("from", words.packet_from, 18.0, packed.map(|p| p.from)),
            to: packet("to", words.packet_to, 22.0, packed.map(|p| p.to)),
            hydrometer: hydrometer(m, &name("hydrometer"), before.map(|b| &b.hydrometer)).1,
        }
    }
}

/// The screen.
pub fn parts(m: &Model, id: Option<&Id>) -> Vec<Part> {
    let words = &m.words.batches;
    if id.is_some_and(|id| m.journal.batch(id).is_none()) {
        let frame = &m.words.frame;
        return vec![
            heading("title", 1, frame.no_such_batch),
            link("back", "back", Route::Batches.address(), frame.see_all_batches),
        ];
    }
    let f = Fields::new(m, id);
    let mut name = f.name.part;
    let outcome = m.outcome("batch");
    if let What::Words(field) = &mut name.what
        && m.drafts.was_demanded(&name.name)
        && f.name.value.is_empty()
    {
        words.give_name.clone_into(&mut field.error);
    }
    let inner = vec![f.from.part, f.to.part, f.hydrometer.part];
    let mut fields = vec![
        name,
        f.volume.part,
        f.family.part,
        f.started.part,
        f.start.part,
        f.end.part,
        fold(m, "batch/more", words.packet_and_instrument, inner),
    ];
    fields.extend(id.is_none().then(|| table::of_new_batch(m)));
    fields.extend([Part::new("batch/outcome", What::Outcome(outcome))]);
    fields.extend(question(m, FORM));
    fields.extend([submit("batch/save", if id.is_some() { words.save } else { words.start_it })]);
    let save = Act::Batch(BatchAct::Save(id.cloned()));
    let title = if id.is_some() { words.change_the_batch } else { m.words.frame.start_a_batch };
    let mut parts = vec![heading("title", 1, title), form("batch", "", save, fields)];
    if let Some(id) = id {
        let delete = Act::Batch(BatchAct::Delete(id.clone()));
        parts.push(action("batch/delete", "danger", words.delete_batch, delete));
        let copy = Act::Gear(GearAct::Copy(vec![id.clone()]));
        parts.push(action("batch/copy", "", m.words.copies.make_of_batch, copy));
        parts.extend(hand_out(m, std::slice::from_ref(id)));
    }
    parts
}

/// Saves the form.
pub fn save(m: &mut Model, id: Option<Id>) -> Vec<Effect> {
    let f = Fields::new(m, id.as_ref());
    let words = &m.words.batches;
    let mut wrong = Wrong::default();
    if f.name.value.is_empty() {
        wrong.mark(&f.name.part.name);
    }
    let volume = wrong.demand(&f.volume);
    let (start, end) = (wrong.optional(&f.start), wrong.optional(&f.end));
    let (from, to) = (wrong.optional(&f.from), wrong.optional(&f.to));
    let started = wrong.demand(&f.started);
    let hydrometer = Id::new(f.hydrometer.value.clone()).ok();
    if let Some(first) = wrong.shown(m) {
        return refuse(m, "batch", m.words.frame.look_again, Some(first));
    }
    let (Some(volume), Some(started), Some(hydrometer)) = (volume, started, hydrometer) else {
        return refuse(m, "batch", m.words.frame.look_again, None);
    };
    if from.is_some() != to.is_some() {
        let lacks = if from.is_none() { &f.from } else { &f.to };
        return refuse(m, "batch", words.both_or_neither, Some(lacks.part.name.clone()));
    }
    let (expected_start, expected_end) =
        (start.map(sucrose::as_specific), end.map(sucrose::as_specific));
    if expected_start.zip(expected_end).is_some_and(|(start, end)| end >= start) {
        return refuse(m, "batch", words.end_below_start, Some(f.end.part.name.clone()));
    }
    // Said at Bottle and at Watch, and not in this form.
    let before = id.as_ref().and_then(|id| m.journal.batch(id));
    let odd = odd(m, &f, before);
    let (target, own_ends) = before
        .map(|before| (before.target, before.own_ends_with(f.family.value)))
        .unwrap_or_default();
    let heading = BatchHeading {
        name: f.name.value,
        started,
        volume,
        family: f.family.value,
        packet: from.zip(to).map(|(from, to)| Span::new(from, to)),
        expected_start,
        expected_end,
        hydrometer,
        target,
        own_ends,
    };
    let field = odd.first().map_or_else(String::new, |(_, field)| field.clone());
    let odd = odd.into_iter().map(|(odd, _)| odd).collect();
    match ask_first(m, FORM, odd, &field, Act::Batch(BatchAct::Save(id.clone()))) {
        Ok(_) => keep(m, id, heading),
        Err(asked) => asked,
    }
}

/// What is odd and was not there before, each with its field.
fn odd(m: &Model, f: &Fields, before: Option<&BatchHeading>) -> Vec<(Odd, String)> {
    let stated = |asked: &AskedGravity, before: Option<SpecificGravity>| {
        let (read, name) = (asked.ok()?, &asked.part.name);
        let sg = sucrose::as_specific(read);
        let typed = m.drafts.text(name).unwrap_or_default();
        let odd = odd::stated(typed, read, sg).filter(|_| before != Some(sg))?;
        Some((odd, name.clone()))
    };
    let started = f.started.ok().filter(|at| before.is_none_or(|b| b.started != *at));
    let ahead = started.and_then(|at| odd::date(at, at, m.now));
    let ahead = ahead.map(|odd| (odd, f.started.part.name.clone()));
    let start = stated(&f.start, before.and_then(|b| b.expected_start));
    let end = stated(&f.end, before.and_then(|b| b.expected_end));
    ahead.into_iter().chain(start).chain(end).collect()
}

fn keep(m: &mut Model, id: Option<Id>, heading: BatchHeading) -> Vec<Effect> {
    let forget = Then::Forget(scope(id.as_ref()));
    match id {
        Some(id) => {
            let change = Change::put(id.clone(), Entry::Batch(heading));
            let stage =
                m.summary(&id).map_or(Stage::Pitch, |s: std::rc::Rc<Summary>| s.today(m.now).stage);
            let then = vec![forget, Then::Go(Route::Batch(id, stage))];
            commit(m, "batch", change, m.words.batches.changed, then)
        }
        None => {
            let id = m.new_id();
            // What was just begun is what is in hand.
            let settings = Settings { in_hand: Some(id.clone()), ..m.settings() };
            let readings = table::along(m, &id, &heading.hydrometer);
            let stage = if readings.is_empty() { Stage::Pitch } else { Stage::Watch };
            let mut edits = vec![
                Edit::Put(id.clone(), Entry::Batch(heading)),
                Edit::Put(Settings::id(), Entry::Settings(settings)),
            ];
            edits.extend(readings);
            let then = vec![forget, Then::Go(Route::Batch(id, stage))];
            commit(m, "batch", Change::all(edits), "", then)
        }
    }
}
