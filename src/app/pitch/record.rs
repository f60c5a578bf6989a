//! All that was asked on pitching day, as one change: the sample's reading and the record.

use super::day::{Day, Row, scope};
use crate::advice::odd::{Odd, date};
use crate::advice::pitch::yeast::in_sachets;
use crate::app::act::{Act, PitchAct};
use crate::app::ask::Wrong;
use crate::app::ask_first::ask_first;
use crate::app::event::Effect;
use crate::app::model::{Model, Then};
use crate::app::save::{commit, identity};
use crate::batch::{AddedWater, Change, Edit, Entry, Id, PitchRecord, Reading, Summary, Vessel};
use crate::choices::YesNo;
use crate::quantity::{Moment, ReadError};
use crate::science::hydrometer_sample::Condition;
use crate::science::kit_gravity::{Fermentable, Ingredient};

/// The form's name.
pub const FORM: &str = "pitch/form";

/// What the form does when it is sent.
pub fn send(batch: &Id) -> Act {
    Act::Pitch(PitchAct::Save(batch.clone()))
}

/// What was weighed in so far.
fn ingredients(day: &Day) -> Vec<Ingredient> {
    let row = |row: &Row| {
        let usual = Ingredient::usual(row.kind.value?, row.mass.ok()?);
        Some(Ingredient { extract: row.share.ok(), ..usual })
    };
    day.rows.iter().filter_map(row).collect()
}

/// The record as far as it can be told from the fields.
pub fn drafted(day: &Day, batch: &Id, at: Moment) -> PitchRecord {
    let sachets = day.sachets.value.map(super::day::Sachets::count);
    let in_sachets = sachets.map(|count| in_sachets(count, day.sachet.ok()));
    let temperature = day.water.ok();
    PitchRecord {
        wort: day.wort.ok(),
        volume: day.volume.ok(),
        water: day.added.ok().map(|volume| AddedWater { volume, temperature }),
        ice: day.ice_added.ok(),
        ingredients: ingredients(day),
        goes_by: day.goes_by.value,
        yeast: day.yeast.ok().or(in_sachets),
        product: day.product.value.clone(),
        sachets,
        method: day.method.value,
        aerated: day.aerated.ok(),
        satellite: day.satellite.value.map(YesNo::is_yes),
        vessel: day.room.ok().map(|_| day.vessel.value),
        room: day.room.ok(),
        place: day.stands.value.clone(),
        note: day.note.value.clone(),
        ..PitchRecord::new(batch.clone(), at)
    }
}

/// A sample's temperature alone is half a reading.
fn is_half(day: &Day) -> bool {
    day.sample_at.value.is_ok() && day.sample.value == Err(ReadError::Empty)
}

/// Marks every field that cannot be read or is missing, from the top of the screen down.
fn look(day: &Day) -> Wrong {
    let mut wrong = Wrong::default();
    wrong.optional(&day.wort);
    wrong.optional(&day.volume);
    wrong.optional(&day.water);
    wrong.optional(&day.ice);
    wrong.optional(&day.vessel_holds);
    wrong.optional(&day.round.at);
    wrong.optional(&day.round.water);
    wrong.optional(&day.earlier);
    wrong.optional(&day.between);
    for row in day.rows.iter().filter(|row| row.kind.value.is_some()) {
        wrong.demand(&row.mass);
        if row.kind.value == Some(Fermentable::Own) {
            wrong.demand(&row.share);
        } else {
            wrong.optional(&row.share);
        }
    }
    wrong.optional(&day.added);
    wrong.optional(&day.ice_added);
    if is_half(day) {
        wrong.mark(&day.sample.part.name);
    } else {
        wrong.optional(&day.sample);
    }
    wrong.optional(&day.sample_at);
    wrong.optional(&day.sachet);
    wrong.optional(&day.aerated);
    wrong.optional(&day.room);
    wrong.optional(&day.room_size);
    wrong.optional(&day.yeast);
    wrong.demand(&day.at);
    wrong
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

/// Saves the form as one change.
pub fn save(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let Some(s) = m.summary(batch) else { return vec![] };
    let words = &m.words.pitch.day;
    let day = Day::of(m, &s);
    if let Some(first) = look(&day).shown(m) {
        let why = if is_half(&day) { words.half_a_sample } else { m.words.frame.look_again };
        m.here.outcomes.insert(FORM.to_owned(), why.to_owned());
        return vec![Effect::Attend(first)];
    }
    let at = day.at.ok().unwrap_or(m.now);
    let mut odd: Vec<_> = date(at, s.heading.started, m.now).into_iter().collect();
    let sample = reading(m, &s, &day, at);
    let of_sample = sample.iter().flat_map(|one| s.odd_reading(&m.journal, None, one, at));
    odd.extend(of_sample.filter(|odd| !matches!(odd, Odd::BeforeBegun(_))));
    let doubtful = match ask_first(m, FORM, odd, &day.at.part.name, send(batch)) {
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
    let change = Change::all(reading.into_iter().chain([record]));
    let mut effects = commit(m, FORM, change, words.saved, vec![Then::Forget(scope)]);
    effects.push(Effect::KeepDrafts);
    effects
}
