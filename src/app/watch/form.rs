//! One reading: a gravity and its sample's temperature first, the rest when it matters.

use super::fields::Fields;
use super::noting::{Noted, PLATE, change_button, noted, row_name, scope_of};
use crate::advice::odd::Odd;
use crate::app::act::{Act, WatchAct};
use crate::app::ask_first;
use crate::app::event::Effect;
use crate::app::fold::fold;
use crate::app::model::{Model, Noting, Then};
use crate::app::part::{Answer, Part, Tag, What, action, columns, form, group, submit};
use crate::app::route::Route;
use crate::app::save::commit;
use crate::app::stem::stem;
use crate::batch::{Change, Entry, Id, Reading, ReadingLine, Summary};
use crate::quantity::{Celsius, ReadError};
use crate::science::hydrometer_sample::Condition;

/// The name that its outcome goes by: one form stands open at a time.
const FORM: &str = "watch/form";

/// The form.
pub fn parts(m: &Model, s: &Summary, noted: Noted) -> Part {
    let words = &m.words.watch.reading;
    let name = |key: &str| format!("{}{key}", noted.scope);
    let fields = Fields::of(m, s, &noted);
    // It is shown as it will be logged.
    let placeholder = Id::random([0; 8]);
    let reading = fields.reading(&s.id, m.now);
    let id = noted.id.as_ref().unwrap_or(&placeholder);
    let line = reading.map(|reading| s.line_of(&m.journal, id, &reading));
    let read = fields.gravity.ok();
    let known = read.is_some() && fields.sample.value.is_ok();
    let corrected = line.as_ref().and_then(ReadingLine::gravity).filter(|_| known);
    let asks_condition = noted.id.is_some()
        || fields.condition.value != Condition::Still
        || s.asks_condition(fields.vessel.value, read);
    let rest = Some(s.rest(fields.vessel.value));
    let drawn = stem(m, &fields.gravity, corrected.map(|g| g.value()), &fields.instrument, rest);
    let more = vec![
        fields.beer.part,
        fields.room.part,
        fields.vessel.part,
        fields.added.part,
        fields.at.part,
        fields.note.part,
        fields.hydrometer.part,
        fields.brix.part,
        fields.factor.part,
    ];
    let (save, leave) = match noted.id {
        None => (words.save, words.not_now),
        Some(_) => (words.save_change, words.leave),
    };
    let buttons = vec![
        submit(name("save"), save),
        action(name("leave"), "quiet", leave, Act::Watch(WatchAct::Leave)),
    ];
    let told = answer(m, line.as_ref(), &fields.sample.value);
    let mut first = vec![fields.gravity.part, fields.sample.part];
    first.extend(asks_condition.then_some(fields.condition.part));
    // Above the drawing: all that a reading takes stands in the first screen.
    first.push(Part::new(name("outcome"), What::Outcome(m.outcome(FORM))));
    first.extend(ask_first::question(m, FORM));
    first.push(group(name("buttons"), Tag::Div, "form-actions", buttons));
    let parts = vec![
        Part::new(name("answer"), What::Answer(told)),
        columns(&name("fields"), first, vec![drawn]),
        fold(m, &name("more"), words.more, more),
    ];
    form(name("form"), "reading-form", send(&s.id), parts)
}

/// What the reading comes to. A hydrometer's has no figure while its sample's temperature is not known.
fn answer(m: &Model, line: Option<&ReadingLine>, sample: &Result<Celsius, ReadError>) -> Answer {
    let (w, words) = (m.writer(), &m.words.watch.reading);
    let read = line.is_some_and(|line| line.reading.as_read.is_some());
    match sample {
        Err(ReadError::Empty) if read => return Answer::only(words.gravity, words.how_warm),
        Err(why) if read => return Answer::only(words.gravity, (m.words.fields.read_error)(why)),
        _ => {}
    }
    let glass = line.is_some_and(|line| line.reading.refractometer.is_some());
    match line.map(|line| (line, &line.corrected)) {
        Some((_, Some(Err(why)))) => {
            Answer::only(words.gravity, (m.words.fields.science_error)(*why))
        }
        Some((line, Some(Ok(corrected)))) => {
            let gravity = corrected.gravity.value();
            let below = if corrected.cool_first {
                format!("{} {}", words.too_hot, m.words.cautions.hot)
            } else if line.reading.as_read.is_none() {
                words.by_refractometer.to_owned()
            } else {
                (words.extract)(gravity)
            };
            Answer {
                label: words.gravity.to_owned(),
                main: w.gravity(gravity),
                beside: w.gravity_doubt(corrected.gravity.sigma()),
                below,
            }
        }
        _ if glass => Answer::only(words.gravity, words.only_change),
        _ => Answer::only(words.gravity, words.set_or_type),
    }
}

/// Opens a form.
pub fn open(m: &mut Model, noting: Noting) -> Vec<Effect> {
    m.here.outcomes.remove(&FORM.to_owned());
    // It opens as it was at first, whatever was unfolded in the one before.
    m.here.folds.retain(|fold| !fold.starts_with("reading/"));
    // A reading is changed in its own row, which stays open when its form is left.
    if let Noting::Changed(id) = &noting {
        m.here.folds.insert(row_name(id), true);
    }
    m.here.noting = noting;
    // The attention goes to its first field.
    let batch = match &m.route {
        Route::Batch(id, _) => m.summary(id),
        _ => None,
    };
    let noted = batch.and_then(|batch| noted(m, &batch));
    noted.map(|noted| Effect::Attend(format!("{}gravity", noted.scope))).into_iter().collect()
}

/// Leaves it: what was typed for a new reading is kept, a change is forgotten.
pub fn leave(m: &mut Model) -> Vec<Effect> {
    m.here.outcomes.remove(&FORM.to_owned());
    let left = std::mem::replace(&mut m.here.noting, Noting::Nothing);
    let Noting::Changed(id) = left else { return vec![] };
    m.drafts.forget(&scope_of(&id));
    vec![Effect::KeepDrafts, Effect::Attend(change_button(&id))]
}

/// Saves it.
pub fn save(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let Some(s) = m.summary(batch) else { return vec![] };
    let Some(noted) = noted(m, &s) else { return vec![] };
    let fields = Fields::of(m, &s, &noted);
    if let Some(first) = fields.wrong().shown(m) {
        m.here.outcomes.insert(FORM.to_owned(), m.words.frame.look_again.to_owned());
        return vec![Effect::Attend(first)];
    }
    let Some(mut reading) = fields.reading(batch, m.now) else { return vec![] };
    let odd = s.odd_reading(&m.journal, noted.id.as_ref(), &reading, m.now);
    let field = if odd.iter().any(|odd| matches!(odd, Odd::Ahead(_) | Odd::BeforeBegun(_))) {
        fields.at.part.name
    } else {
        fields.gravity.part.name
    };
    match ask_first::ask_first(m, FORM, odd, &field, send(batch)) {
        Ok(doubtful) => {
            reading.doubtful = doubtful;
            keep(m, noted, reading)
        }
        Err(asked) => asked,
    }
}

fn send(batch: &Id) -> Act {
    Act::Watch(WatchAct::Save(batch.clone()))
}

fn keep(m: &mut Model, noted: Noted, reading: Reading) -> Vec<Effect> {
    let words = &m.words.watch.reading;
    let (id, done) = match noted.id {
        Some(id) => (id, words.changed),
        None => (m.new_id(), words.saved),
    };
    let change = Change::put(id, Entry::Reading(reading));
    let then = vec![Then::Forget(noted.scope), Then::CloseForm, Then::Attend(PLATE.to_owned())];
    commit(m, FORM, change, done, then)
}
