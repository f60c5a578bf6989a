//! The fields of a reading, and the reading that they make.

use super::noting::Noted;
use crate::app::ask::{
    Ask, AskGravity, Asked, AskedGravity, Chosen, Wrong, answer, answer_or_nothing, ask,
    ask_gravity, moment, words_field,
};
use crate::app::fields::{SAMPLE, condition, hydrometer, temperature};
use crate::app::model::Model;
use crate::batch::{Added, Id, Reading, Refractometer, Summary, Vessel};
use crate::quantity::{Bounds, BrixUnit, Celsius, FactorUnit, Hours, Moment, Plato, WortFactor};
use crate::science::hydrometer::Hydrometer;
use crate::science::hydrometer_sample::Condition;
use crate::science::refractometer::USUAL_FACTOR;

/// Beer and rooms.
const ROOM: Bounds<Celsius> = Bounds::new(Celsius::literal(-20.0), Celsius::literal(60.0));
/// Marks of a refractometer.
const BRIX: Bounds<Plato> = Bounds::new(Plato::literal(0.0), Plato::literal(40.0));
/// Factors of wort.
const FACTOR: Bounds<WortFactor> = Bounds::new(WortFactor::literal(0.9), WortFactor::literal(1.2));

/// A sample this warm is of wort that cools (common practice, no source).
const COOLING_WORT: Celsius = Celsius::literal(30.0);
/// A sample's temperature is taken for that of the next one for so long (common practice, no source).
const SAME_FOR: Hours = Hours::literal(24.0);

/// The last sample's temperature, where the next is likely to have it too.
fn carried_over(m: &Model, s: &Summary) -> Option<Celsius> {
    let last = &s.lines.last()?.reading;
    let of_beer = s.pitch.as_ref().is_none_or(|(_, pitch)| last.at > pitch.at);
    let likely = of_beer && m.now.since(last.at) <= SAME_FOR;
    last.sample.filter(|sample| likely && *sample < COOLING_WORT)
}

/// The fields of a reading.
pub struct Fields {
    pub gravity: AskedGravity,
    pub sample: Asked<Celsius>,
    pub beer: Asked<Celsius>,
    pub room: Asked<Celsius>,
    pub vessel: Chosen<Vessel>,
    pub condition: Chosen<Condition>,
    pub added: Chosen<Option<Added>>,
    pub at: Asked<Moment>,
    pub note: Chosen<String>,
    pub instrument: Hydrometer,
    pub hydrometer: Chosen<String>,
    pub brix: Asked<Plato>,
    pub factor: Asked<WortFactor>,
    /// The letters of the gravity.
    typed: String,
}

impl Fields {
    /// The fields of what is noted: of a new reading, or of one that is changed.
    pub fn of(m: &Model, s: &Summary, noted: &Noted) -> Self {
        let words = &m.words.watch.reading;
        let before = noted.before.as_ref();
        let name = |key: &str| format!("{}{key}", noted.scope);
        let vessel = {
            let first = before.map_or(noted.vessel, |before| before.vessel);
            answer(m, &name("vessel"), (words.from, ""), words.which_vessel, first)
        };
        let added = {
            let (label, first) = ((words.added, ""), before.and_then(|before| before.added));
            answer_or_nothing(m, &name("added"), label, words.may_be_added, words.nothing, first)
        };
        let gravity = {
            let (unit, start) = (m.units().gravity, s.rest(vessel.value));
            let first = before.and_then(|before| before.as_read);
            let (name, label, hint) = (name("gravity"), words.reads, "");
            ask_gravity(m, AskGravity { name, label, hint, unit, first, start })
        };
        // The letters are those of the record for as long as nothing else is typed.
        let typed = match (m.drafts.text(&gravity.part.name), before) {
            (Some(text), _) => text.trim().to_owned(),
            (None, before) => before.map(|before| before.typed.clone()).unwrap_or_default(),
        };
        let last = carried_over(m, s).filter(|_| before.is_none());
        let hint = if last.is_some() { words.as_last_time } else { words.of_the_liquid };
        let sample = before.map_or(last, |before| before.sample);
        let used = before.map_or(&s.heading.hydrometer, |before| &before.hydrometer);
        let (instrument, hydrometer) = hydrometer(m, &name("hydrometer"), Some(used));
        let shown = before.and_then(|before| before.refractometer);
        let warmth =
            |key, words, first, start| temperature(m, name(key), words, ROOM, first, start);
        let brix = Ask {
            name: name("brix"),
            label: words.refractometer,
            hint: words.refractometer_hint,
            unit: BrixUnit::Brix,
            bounds: BRIX,
            step: |_| 0.2,
            first: shown.map(|shown| shown.brix),
            start: Plato::literal(6.0),
        };
        let factor = Ask {
            name: name("factor"),
            label: words.factor,
            hint: words.factor_hint,
            unit: FactorUnit::Times,
            bounds: FACTOR,
            step: |_| 0.01,
            first: Some(shown.map_or(USUAL_FACTOR, |shown| shown.factor)),
            start: USUAL_FACTOR,
        };
        Self {
            sample: temperature(m, name("sample"), (words.sample, hint), SAMPLE, sample, 20.0),
            beer: warmth(
                "beer",
                (words.beer, words.beer_hint),
                before.and_then(|before| before.beer),
                20.0,
            ),
            room: warmth("room", (words.room, ""), before.and_then(|before| before.room), 19.0),
            condition: condition(m, &name("condition"), before.map(|before| before.condition)),
            at: moment(m, &name("at"), words.at, before.map(|before| before.at)),
            note: words_field(
                m,
                &name("note"),
                words.note,
                before.map_or("", |before| &before.note),
                true,
            ),
            brix: ask(m, brix),
            factor: ask(m, factor),
            gravity,
            vessel,
            added,
            instrument,
            hydrometer,
            typed,
        }
    }

    /// What is wrong with them.
    pub fn wrong(&self) -> Wrong {
        let mut wrong = Wrong::default();
        wrong.optional(&self.gravity);
        for temperature in [&self.sample, &self.beer, &self.room] {
            wrong.optional(temperature);
        }
        wrong.demand(&self.at);
        wrong.optional(&self.brix);
        wrong.optional(&self.factor);
        wrong
    }

    /// The reading, as far as the fields can be read; one without a time is of `now`.
    pub fn reading(&self, batch: &Id, now: Moment) -> Option<Reading> {
        let factor = self.factor.ok().unwrap_or(USUAL_FACTOR);
        Some(Reading {
            batch: batch.clone(),
            at: self.at.ok().unwrap_or(now),
            vessel: self.vessel.value,
            as_read: self.gravity.ok(),
            typed: self.typed.clone(),
            sample: self.sample.ok(),
            condition: self.condition.value,
            hydrometer: Id::new(&*self.hydrometer.value).ok()?,
            refractometer: self.brix.ok().map(|brix| Refractometer { brix, factor }),
            added: self.added.value,
            beer: self.beer.ok(),
            room: self.room.ok(),
            note: self.note.value.clone(),
            doubtful: false,
        })
    }
}
