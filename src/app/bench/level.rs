//! How level the beer is, for the sum of the sugar: two readings alike, and what is known of the beer.

use crate::advice::family::Family;
use crate::advice::practice::HALF_DIVISION;
use crate::advice::standing::{Record, Seen};
use crate::app::ask::{Ask, AskGravity, Asked, AskedGravity, Chosen, ask, ask_gravity, listed};
use crate::app::model::Model;
use crate::app::part::Part;
use crate::quantity::{
    Bounds, DayUnit, Estimate, Gravity, Hours, Measured, Moment, SpecificGravity,
};
use crate::science::sucrose;

/// What is asked.
pub struct Level {
    family: Chosen<Family>,
    reads: AskedGravity,
    apart: Asked<Hours>,
    age: Asked<Hours>,
    start: AskedGravity,
}

/// Asks in the form `scope`.
pub fn ask_level(m: &Model, scope: &str) -> Level {
    let words = &m.words.bench.level;
    let name = |field: &str| format!("{scope}{field}");
    let days = |field: &str, label, most| {
        let ask_days = Ask {
            name: name(field),
            label,
            hint: "",
            unit: DayUnit::Days,
            bounds: Bounds::new(Hours::literal(0.0), Hours::nearest(24.0 * most)),
            step: |_| 1.0,
            first: None,
            start: Hours::literal(72.0),
        };
        ask(m, ask_days)
    };
    let gravity = |field: &str, label, hint, start| {
        let unit = m.units().gravity;
        let start = SpecificGravity::literal(start);
        ask_gravity(m, AskGravity { name: name(field), label, hint, unit, first: None, start })
    };
    let yeast = (words.yeast, "");
    Level {
        family: listed(m, &name("family"), yeast, m.words.names.family, Family::Unknown),
        reads: gravity("reads", words.reads, words.reads_hint, 1.010),
        apart: days("apart", words.apart, 90.0),
        age: days("age", words.age, 365.0),
        start: gravity("start", words.start, words.start_hint, 1.048),
    }
}

impl Level {
    /// The record these answers make, as of `now`; `None` while one is missing.
    pub fn record(&self, now: Moment) -> Option<Record> {
        let sure = |read: Gravity| Estimate::new(sucrose::as_specific(read), HALF_DIVISION.value());
        let before = |hours: Hours| now.after(Hours::nearest(-hours.value()));
        let (reads, apart, age) = (sure(self.reads.ok()?), self.apart.ok()?, self.age.ok()?);
        let seen = |at| Seen { at, gravity: reads, beer: None, instrument: 0, doubtful: false };
        let pitched = before(if age > apart { age } else { apart });
        let mut record = Record::of(self.family.value, pitched);
        record.pitched = Some(pitched);
        record.original = self.start.ok().map(sure);
        record.main = vec![seen(before(apart)), seen(now)];
        Some(record)
    }

    /// The fields.
    pub fn parts(self) -> Vec<Part> {
        vec![self.reads.part, self.apart.part, self.age.part, self.family.part, self.start.part]
    }
}
