//! The fields of a reading, and the reading that they make.

use super::Live;
use crate::advice::family::Family;
use crate::batch::{Added, Id, Reading, Refractometer, Summary, Vessel};
use crate::page::ask::{Ask, AskGravity, Asked, AskedGravity, ask, ask_gravity};
use crate::page::batches::form::when;
use crate::page::bench::gravity::{condition_name, condition_named};
use crate::page::bench::{SAMPLE, temperature};
use crate::page::drafts::use_drafts;
use crate::page::session::use_session;
use crate::quantity::{
    Bounds, BrixUnit, Celsius, Estimate, FactorUnit, Gravity, Hours, Measured, Plato,
    SpecificGravity, WortFactor,
};
use crate::science::refractometer::USUAL_FACTOR;
use crate::science::sucrose;
use leptos::prelude::*;

/// Beer and rooms.
const ROOM: Bounds<Celsius> = Bounds::new(Celsius::literal(-20.0), Celsius::literal(60.0));

/// The fields of a reading.
#[derive(Clone)]
pub struct Fields {
    pub gravity: AskedGravity,
    pub sample: Asked<Celsius>,
    pub beer: Asked<Celsius>,
    pub room: Asked<Celsius>,
    pub vessel: RwSignal<String>,
    pub condition: RwSignal<String>,
    pub hydrometer: RwSignal<String>,
    pub at: RwSignal<String>,
    pub note: RwSignal<String>,
    pub brix: Asked<Plato>,
    pub factor: Asked<WortFactor>,
    pub added: RwSignal<String>,
    /// Where the stem stands until it is set: the last reading of that vessel.
    pub rest: SpecificGravity,
    /// The sample's condition is asked: unless a quiet beer reads as it did before.
    young: bool,
    last_read: Option<f64>,
}

impl Fields {
    /// The fields for a new reading of a vessel, or those of one that is changed.
    pub fn new(scope: &str, live: Live, vessel: Vessel, before: Option<&Reading>) -> Self {
        let session = use_session();
        let drafts = use_drafts();
        let (last, heading_hydrometer) = live.with_untracked(|summary| {
            let summary = summary.as_ref();
            let last = summary.and_then(|s| s.lines.last()).map(|line| line.reading.clone());
            (last, summary.map(|s| s.heading.hydrometer.clone()))
        });
        let (start, young, last_read) = live.with_untracked(|s| seen_before(s.as_ref(), vessel));
        let vessel = before.map_or(vessel, |b| b.vessel);
        let hint = if before.is_none() && last.as_ref().is_some_and(|l| l.sample.is_some()) {
            "As last time; change it if this sample is another."
        } else {
            "Of the liquid in the jar."
        };
        let sample = before.map_or_else(|| last.as_ref().and_then(|l| l.sample), |b| b.sample);
        let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
        let hydrometer = before.map(|b| b.hydrometer.clone()).or(heading_hydrometer);
        let shown = before.and_then(|b| b.refractometer);
        let condition = before.map_or("still", |b| condition_name(b.condition));
        Self {
            gravity: ask_gravity(
                scope,
                AskGravity {
                    key: "gravity",
                    label: "Hydrometer reads",
                    hint: "",
                    unit: session.units_now().gravity,
                    first: before.and_then(|b| b.as_read),
                    start,
                },
            ),
            sample: temperature(
                scope,
                ("sample", "Sample temperature", hint),
                SAMPLE,
                sample,
                20.0,
            ),
            beer: temperature(
                scope,
                ("beer", "Beer in the fermenter", "By strip or probe."),
                ROOM,
                before.and_then(|b| b.beer),
                20.0,
            ),
            room: temperature(scope, ("room", "Room", ""), ROOM, before.and_then(|b| b.room), 19.0),
            vessel: text("vessel", if vessel == Vessel::Satellite { "satellite" } else { "main" }),
            condition: text("condition", condition),
            hydrometer: text("hydrometer", hydrometer.as_ref().map_or("", Id::as_str)),
            at: text("at", &before.map(|b| b.at.local_text()).unwrap_or_default()),
            note: text("note", before.map_or("", |b| b.note.as_str())),
            brix: ask(
                scope,
                Ask {
                    key: "brix",
                    label: "Refractometer shows",
                    hint: "Once the yeast is in it shows only whether there was a change.",
                    unit: BrixUnit::Brix,
                    bounds: Bounds::new(Plato::literal(0.0), Plato::literal(40.0)),
                    step: |_| 0.2,
                    first: shown.map(|shown| shown.brix),
                    start: Plato::literal(6.0),
                },
            ),
            factor: ask(
                scope,
                Ask {
                    key: "factor",
                    label: "Wort factor",
                    hint: "Its mark is divided by this in wort; 1.04 is usual.",
                    unit: FactorUnit::Times,
                    bounds: Bounds::new(WortFactor::literal(0.9), WortFactor::literal(1.2)),
                    step: |_| 0.01,
                    first: Some(shown.map_or(USUAL_FACTOR, |shown| shown.factor)),
                    start: USUAL_FACTOR,
                },
            ),
            added: text("added", added_name(before.and_then(|b| b.added))),
            rest: start,
            young: young || before.is_some(),
            last_read,
        }
    }

    /// Whether the sample's condition is asked now, followed.
    pub fn asks_condition(&self) -> bool {
        let read = self.gravity.value.get().ok().map(points);
        let differs = read.zip(self.last_read).is_none_or(|(now, last)| (now - last).abs() > 1.05);
        // Nothing read yet is no difference.
        self.young || self.last_read.is_none() || (read.is_some() && differs)
    }

    /// The reading, or what stands in its way.
    ///
    /// # Errors
    /// A sentence to show beside the button.
    pub fn reading(&self, batch: &Id) -> Result<Reading, String> {
        let read = (
            self.gravity.optional(),
            self.sample.optional(),
            self.beer.optional(),
            self.room.optional(),
        );
        let glass = (self.brix.optional(), self.factor.optional());
        let ((Ok(as_read), Ok(sample), Ok(beer), Ok(room)), (Ok(brix), Ok(factor))) = (read, glass)
        else {
            return Err("Some fields need another look.".to_owned());
        };
        let factor = factor.unwrap_or(USUAL_FACTOR);
        Ok(Reading {
            batch: batch.clone(),
            at: when(&self.at.get_untracked())?,
            vessel: if self.vessel.get_untracked() == "satellite" {
                Vessel::Satellite
            } else {
                Vessel::Main
            },
            as_read,
            typed: self.gravity.face.text.get_untracked().trim().to_owned(),
            sample,
            condition: condition_named(&self.condition.get_untracked()),
            hydrometer: Id::new(self.hydrometer.get_untracked())
                .map_err(|_| "Choose a hydrometer.".to_owned())?,
            refractometer: brix.map(|brix| Refractometer { brix, factor }),
            added: added_named(&self.added.get_untracked()),
            beer,
            room,
            note: self.note.get_untracked().trim().to_owned(),
        })
    }
}

fn points(gravity: Gravity) -> f64 {
    sucrose::as_specific(gravity).points()
}

/// Where the stem rests, whether the beer is young, and what the last reading of that vessel showed.
fn seen_before(summary: Option<&Summary>, vessel: Vessel) -> (SpecificGravity, bool, Option<f64>) {
    let lines = summary.map(|s| s.lines.as_slice()).unwrap_or_default();
    let mut of_vessel = lines.iter().rev().filter(|line| line.reading.vessel == vessel);
    let last = of_vessel.find_map(|line| Some((line.reading.at, line.reading.as_read?)));
    let original = summary.and_then(|s| s.present.or(s.original)).map(Estimate::value);
    let rest = last.map(|(_, read)| sucrose::as_specific(read)).or(original);
    let pitched = summary.and_then(|s| s.pitch.as_ref()).map(|(_, pitch)| pitch.at);
    let least = summary.map_or(Family::Unknown, |s| s.heading.family).least_time();
    let young = match (last, pitched) {
        (Some((at, _)), Some(pitched)) => at.since(pitched) < Hours::nearest(least.value()),
        _ => true,
    };
    (
        rest.unwrap_or(SpecificGravity::literal(1.050)),
        young || vessel == Vessel::Satellite,
        last.map(|(_, read)| points(read)),
    )
}

/// What may be added, as it is held in a draft.
const ADDED: [(&str, &str, Option<Added>); 4] = [
    ("", "Nothing", None),
    ("sugar", "Sugar, honey or malt", Some(Added::Sugar)),
    ("fruit", "Fruit or juice", Some(Added::Fruit)),
    ("other", "Other", Some(Added::Other)),
];

/// The choices, in words.
pub fn added_choices() -> Vec<(&'static str, &'static str)> {
    ADDED.map(|(name, words, _)| (name, words)).to_vec()
}

fn added_name(added: Option<Added>) -> &'static str {
    ADDED.into_iter().find(|(.., one)| *one == added).map_or("", |(name, ..)| name)
}

fn added_named(name: &str) -> Option<Added> {
    ADDED.into_iter().find(|(known, ..)| *known == name).and_then(|(.., added)| added)
}
