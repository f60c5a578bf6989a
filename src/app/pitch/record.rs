//! All that was asked on pitching day, as one change: the sample's reading and the record.

use super::day::{Day, scope};
use super::drafted::drafted;
use super::known::Known;
use super::last;
use super::look::{is_half, look_at};
use super::pitched;
use super::walk::look_again;
use super::work::{self, FORM, Work};
use crate::advice::odd::{Odd, date};
use crate::advice::pitch::steps::Step;
use crate::app::act::{Act, PitchAct};
use crate::app::ask::Wrong;
use crate::app::ask_first::ask_first;
use crate::app::event::Effect;
use crate::app::model::{Model, Then};
use crate::app::own_ends;
use crate::app::save::{commit, identity};
use crate::batch::{BatchHeading, Change, Edit, Entry, Id, Reading, Summary, Vessel};
use crate::quantity::Moment;
use crate::science::hydrometer_sample::Condition;

/// Shows what is wrong at every step; the first step with something wrong, and its field.
fn looked_at(m: &mut Model, day: &Day) -> Option<(Step, String)> {
    let mut first = None;
    for step in Step::ALL {
        let mut wrong = Wrong::default();
        look_at(step, day, &mut wrong);
        let found = wrong.shown(m).map(|field| (step, field));
        first = first.or(found);
    }
    first
}

/// The sample as a reading of its own, if one was taken.
fn reading(m: &Model, s: &Summary, day: &Day, at: Moment) -> Option<Reading> {
    let as_read = day.sample.ok()?;
    Some(Reading {
        batch: s.id.clone(),
        at,
        vessel: Vessel::Main,
        as_read: Some(as_read),
        typed: m.drafts.text(&day.sample.part.name).unwrap_or_default().trim().to_owned(),
        sample: day.sample_at.ok(),
        condition: Condition::Still,
        hydrometer: s.heading.hydrometer.clone(),
        refractometer: None,
        added: None,
        beer: None,
        room: None,
        note: String::new(),
        doubtful: false,
    })
}

/// Saves it all as one change. Without any gravity it is asked about first, unless that is `confirmed`.
pub fn save(m: &mut Model, batch: &Id, confirmed: bool) -> Vec<Effect> {
    let Some(s) = m.summary(batch) else { return vec![] };
    let words = &m.words.pitch.day;
    let day = Day::of(m, &s);
    if let Some((step, field)) = looked_at(m, &day) {
        let why = if step == Step::Gravity && is_half(&day) {
            words.half_a_sample.to_owned()
        } else {
            look_again(m, &Work::of(m, &s), step, &field)
        };
        work::open(m, batch, step);
        m.here.outcomes.insert(FORM.to_owned(), why);
        return vec![Effect::KeepDrafts, Effect::Attend(field)];
    }
    if !confirmed && last::has_no_gravity(&s, &Known::of(m, &s, &day)) {
        last::ask(m, batch);
        return vec![Effect::KeepDrafts, Effect::Attend(last::READ_IT.to_owned())];
    }
    let at = day.at.ok().unwrap_or(m.now);
    let mut odd: Vec<_> = date(at, s.heading.started, m.now).into_iter().collect();
    let sample = reading(m, &s, &day, at);
    let of_sample = sample.iter().flat_map(|one| s.odd_reading(&m.journal, None, one, at));
    odd.extend(of_sample.filter(|odd| !matches!(odd, Odd::BeforeBegun(_))));
    let id = batch.clone();
    let then = if confirmed { PitchAct::SaveWithoutStart(id) } else { PitchAct::Save(id) };
    let doubtful = match ask_first(m, FORM, odd, &day.at.part.name, Act::Pitch(then)) {
        Ok(doubtful) => doubtful,
        Err(asked) => return asked,
    };
    let scope = scope(batch);
    let reading = sample.map(|sample| {
        let reading = Reading { doubtful, ..sample };
        Edit::Put(identity(m, &format!("{scope}reading-id")), Entry::Reading(reading))
    });
    let record = Entry::Pitch(drafted(&day, batch, at));
    let record = Edit::Put(identity(m, &format!("{scope}record-id")), record);
    // What was taken of own batches is of another yeast after all.
    let other = own_ends::of_another_packet(m, &s, &day.product.value);
    let heading = other.then(|| BatchHeading { own_ends: vec![], ..s.heading.clone() });
    let heading = heading.map(|heading| Edit::Put(batch.clone(), Entry::Batch(heading)));
    let change = Change::all(reading.into_iter().chain([record]).chain(heading));
    // The plate of what was pitched, where there is one.
    let plate = if day.wort.ok().is_some() { pitched::PLATE } else { "title" };
    let then = vec![Then::Forget(scope), Then::Attend(plate.to_owned())];
    let saved = if other { words.saved_without_own } else { words.saved };
    let mut effects = commit(m, FORM, change, saved, then);
    effects.push(Effect::KeepDrafts);
    effects
}
