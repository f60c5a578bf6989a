//! Everything that is asked on pitching day.

use super::known::Known;
use crate::page::ask::{Ask, AskGravity, Asked, AskedGravity, ask, ask_gravity};
use crate::page::batch::Live;
use crate::page::bench::{SAMPLE, VOLUME, temperature, volume};
use crate::page::drafts::use_drafts;
use crate::page::session::use_session;
use crate::quantity::{
    Bounds, Celsius, Grams, Hours, Litres, MassUnit, Measured, MinuteUnit, Share, ShareUnit,
    SpecificGravity, VolumeUnit,
};
use leptos::prelude::*;

const ANY: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(100.0));
const ROOM: Bounds<Celsius> = Bounds::new(Celsius::literal(-10.0), Celsius::literal(50.0));
/// So many different things go into a kit at most.
pub const ROWS: usize = 5;

/// One row of the ingredients.
#[derive(Clone)]
pub struct Row {
    /// Its kind's stored name; empty when the row is not used.
    pub kind: RwSignal<String>,
    /// How much.
    pub mass: Asked<Grams>,
    /// Its share of extract, where the brewer knows better than the usual.
    pub share: Asked<Share>,
}

/// The fields of pitching day.
#[derive(Clone)]
pub struct Day {
    pub live: Live,
    pub wort: Asked<Celsius>,
    pub thermometer: RwSignal<String>,
    pub stirred: RwSignal<String>,
    pub volume: Asked<Litres>,
    pub vessel_holds: Asked<Litres>,
    pub water: Asked<Celsius>,
    pub ice: Asked<Grams>,
    pub bath: Asked<Celsius>,
    pub earlier: Asked<Celsius>,
    pub between: Asked<Hours>,
    pub added: Asked<Litres>,
    pub ice_added: Asked<Grams>,
    pub rows: Vec<Row>,
    pub sample: AskedGravity,
    pub sample_at: Asked<Celsius>,
    pub goes_by: RwSignal<String>,
    pub yeast: Asked<Grams>,
    pub sachets: RwSignal<String>,
    pub sachet: Asked<Grams>,
    pub product: RwSignal<String>,
    pub past: RwSignal<String>,
    pub kept_warm: RwSignal<String>,
    pub method: RwSignal<String>,
    pub satellite: RwSignal<String>,
    pub aerated: Asked<Hours>,
    pub room: Asked<Celsius>,
    pub vessel: RwSignal<String>,
    pub air: RwSignal<String>,
    pub vessels: RwSignal<String>,
    pub stands: RwSignal<String>,
    pub light: RwSignal<String>,
    pub tube: RwSignal<String>,
    pub at: RwSignal<String>,
    pub note: RwSignal<String>,
}

fn mass(
    scope: &str,
    key: &'static str,
    label: &'static str,
    hint: &'static str,
    start: f64,
) -> Asked<Grams> {
    let bounds = Bounds::new(Grams::literal(0.5), Grams::literal(100_000.0));
    let (unit, first, start) = (MassUnit::Grams, None, Grams::nearest(start));
    let step = |unit| match unit {
        MassUnit::Grams => 1.0,
        MassUnit::Ounces => 0.5,
        _ => 0.1,
    };
    ask(scope, Ask { key, label, hint, unit, bounds, step, first, start })
}

fn kilograms(
    scope: &str,
    key: &'static str,
    label: &'static str,
    hint: &'static str,
) -> Asked<Grams> {
    let bounds = Bounds::new(Grams::literal(1.0), Grams::literal(200_000.0));
    let (unit, first, start) = (MassUnit::Kilograms, None, Grams::literal(1500.0));
    let step = |unit| match unit {
        MassUnit::Grams => 50.0,
        MassUnit::Ounces => 1.0,
        _ => 0.1,
    };
    ask(scope, Ask { key, label, hint, unit, bounds, step, first, start })
}

fn minutes(scope: &str, key: &'static str, label: &'static str, start: f64) -> Asked<Hours> {
    let bounds = Bounds::new(Hours::literal(0.01), Hours::literal(72.0));
    let step = |unit| if unit == MinuteUnit::Minutes { 1.0 } else { 0.5 };
    let (unit, first, start) = (MinuteUnit::Minutes, None, Hours::nearest(start));
    ask(scope, Ask { key, label, hint: "", unit, bounds, step, first, start })
}

/// What the fields of one row are called; each has a name of its own for those who hear it.
struct RowNames {
    mass: (&'static str, &'static str),
    share: (&'static str, &'static str),
}

const ROW_NAMES: [RowNames; ROWS] = [
    RowNames {
        mass: ("mass-1", "Mass of ingredient 1"),
        share: ("share-1", "Extract in ingredient 1"),
    },
    RowNames {
        mass: ("mass-2", "Mass of ingredient 2"),
        share: ("share-2", "Extract in ingredient 2"),
    },
    RowNames {
        mass: ("mass-3", "Mass of ingredient 3"),
        share: ("share-3", "Extract in ingredient 3"),
    },
    RowNames {
        mass: ("mass-4", "Mass of ingredient 4"),
        share: ("share-4", "Extract in ingredient 4"),
    },
    RowNames {
        mass: ("mass-5", "Mass of ingredient 5"),
        share: ("share-5", "Extract in ingredient 5"),
    },
];

impl Day {
    /// The fields of one batch's pitching day.
    pub fn new(scope: &str, live: Live) -> Self {
        let drafts = use_drafts();
        let units = use_session().units_now();
        let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
        let planned = live.with_untracked(|s| s.as_ref().map(|s| s.heading.volume));
        let degrees = |words, bounds, start| temperature(scope, words, bounds, None, start);
        let row = |(index, names): (usize, RowNames)| Row {
            kind: text(&format!("kind-{}", index + 1), ""),
            mass: kilograms(scope, names.mass.0, names.mass.1, ""),
            share: ask(
                scope,
                Ask {
                    key: names.share.0,
                    label: names.share.1,
                    hint: "Empty is the usual share; a label may say another.",
                    unit: ShareUnit::Percent,
                    bounds: Bounds::new(Share::literal(0.01), Share::literal(1.0)),
                    step: |_| 1.0,
                    first: None,
                    start: Share::literal(0.8),
                },
            ),
        };
        Self {
            live,
            wort: degrees(("wort", "Wort now", "Stir it first."), ANY, 20.0),
            thermometer: text("thermometer", "probe"),
            stirred: text("stirred", "yes"),
            volume: volume(scope, ("volume", "In the vessel now", ""), planned),
            vessel_holds: volume(scope, ("holds", "The vessel holds to the brim", ""), None),
            water: degrees(("water", "Water at hand", "Boiled and cooled, or sealed."), ANY, 8.0),
            ice: kilograms(scope, "ice", "Clean ice at hand", "Leave empty for none."),
            bath: degrees(("bath", "Water bath or room round it", ""), ANY, 12.0),
            earlier: degrees(("earlier", "Wort at an earlier look", ""), ANY, 40.0),
            between: minutes(scope, "between", "Time between the two looks", 0.5),
            added: ask(
                scope,
                Ask {
                    key: "added",
                    label: "Water added after the boil",
                    hint: "Leave empty for none.",
                    unit: units.volume,
                    bounds: VOLUME,
                    step: |unit| if unit == VolumeUnit::Litres { 0.5 } else { 0.1 },
                    first: None,
                    start: Litres::literal(5.0),
                },
            ),
            ice_added: kilograms(scope, "ice-added", "Ice added", "Leave empty for none."),
            rows: ROW_NAMES.into_iter().enumerate().map(row).collect(),
            sample: ask_gravity(
                scope,
                AskGravity {
                    key: "sample",
                    label: "Hydrometer reads",
                    hint: "A mixed sample, from the middle.",
                    unit: units.gravity,
                    first: None,
                    start: SpecificGravity::literal(1.045),
                },
            ),
            sample_at: temperature(
                scope,
                ("sample-at", "Sample temperature", "Of the liquid in the jar."),
                SAMPLE,
                None,
                20.0,
            ),
            goes_by: text("goes-by", "sample"),
            yeast: mass(scope, "yeast", "Dry yeast", "Leave empty if it is not weighed.", 11.0),
            sachets: text("sachets", ""),
            sachet: mass(scope, "sachet", "One sachet holds", "Empty is 11\u{A0}g.", 11.0),
            product: text("product", ""),
            past: text("past", "no"),
            kept_warm: text("kept-warm", "no"),
            method: text("method", ""),
            satellite: text("satellite", ""),
            aerated: minutes(scope, "aerated", "Splashed or shaken for", 1.0 / 12.0),
            room: degrees(("room", "Room where it will stand", ""), ROOM, 19.0),
            vessel: text("vessel", "bucket"),
            air: text("air", "room"),
            vessels: text("vessels", "1"),
            stands: text("stands", ""),
            light: text("light", "no"),
            tube: text("tube", "no"),
            at: text("at", ""),
            note: text("note", ""),
        }
    }

    /// What closures need.
    pub fn known(&self) -> Known {
        let row = |index: usize| {
            let row = self.rows.get(index);
            row.map(|row| (row.kind, row.mass.value, row.share.value))
        };
        Known {
            live: self.live,
            wort: self.wort.value,
            thermometer: self.thermometer,
            stirred: self.stirred,
            volume: self.volume.value,
            earlier: self.earlier.value,
            between: self.between.value,
            sample: self.sample.value,
            sample_at: self.sample_at.value,
            rows: std::array::from_fn(row),
            goes_by: self.goes_by,
        }
    }
}
