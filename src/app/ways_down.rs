//! Cooling wort with water or ice, as Pitch and the Bench show it.

use super::ask::{Asked, Chosen, answer};
use super::drawing::{BlendData, Drawing, Figure, Sketch};
use super::fields::{temperature, volume};
use super::model::Model;
use super::part::{Part, What, text};
use super::worked::DoubtIn;
use crate::advice::pitch::clock::{self, Bath};
use crate::advice::pitch::ways_to_range::Takes;
use crate::chart::{Layer, Substance};
use crate::quantity::{Bounds, Celsius, Litres, Measured, SpecificGravity};
use crate::science::heat::{self, melted};

/// Doubts of a temperature.
pub const IN_DEGREES: DoubtIn = (1, 1.0, "°C");
/// Doubts of a time.
pub const IN_HOURS: DoubtIn = (1, 1.0, "h");

/// What stands round the wort, as it is asked.
#[derive(Clone, Debug)]
pub struct Round {
    /// Its temperature.
    pub at: Asked<Celsius>,
    /// What it is.
    pub is: Chosen<clock::Round>,
    /// How much water is in the tub.
    pub water: Asked<Litres>,
}

impl Round {
    /// The fields, under names that begin so.
    pub fn of(m: &Model, scope: &str) -> Self {
        let words = &m.words.pitch.ways;
        let any = Bounds::new(Celsius::literal(0.0), Celsius::literal(100.0));
        let name = |field: &str| format!("{scope}{field}");
        let label = (words.bath, words.bath_hint);
        Self {
            at: temperature(m, name("bath"), label, any, None, 12.0),
            is: answer(m, &name("round"), (words.round, ""), words.rounds, clock::Round::Steady),
            water: volume(m, name("tub"), (words.tub, words.tub_hint), None),
        }
    }

    /// The fields that are asked: the tub's water only of a tub.
    pub fn parts(&self) -> Vec<Part> {
        let tub = (self.is.value == clock::Round::Tub).then(|| self.water.part.clone());
        [self.at.part.clone(), self.is.part.clone()].into_iter().chain(tub).collect()
    }

    /// What the wort stands in, once its temperature is known; a tub whose water is not measured holds as
    /// much of it as there is wort.
    pub fn bath(&self, wort: Option<heat::Part>) -> Option<Bath> {
        let at = self.at.ok()?;
        match self.is.value {
            clock::Round::Steady => Some(Bath::steady(at)),
            clock::Round::Tub => {
                let wort = wort?;
                Bath::tub(wort, self.water.ok().unwrap_or(wort.volume), at).ok()
            }
        }
    }
}

/// What stands in the vessel once all is in.
#[derive(Clone, Copy, Debug)]
pub struct After {
    /// How warm.
    pub temperature: Celsius,
    /// How much.
    pub volume: Litres,
    /// Its gravity, where that of the wort is known.
    pub gravity: Option<SpecificGravity>,
}

/// The two cautions of adding water and of hot wort.
pub fn cautions(m: &Model, name: &str) -> Part {
    let words = &m.words.cautions;
    text(name, "small", format!("{} {}", words.water, words.hot))
}

/// What meets in the vessel, drawn; nothing where only time is taken.
pub fn blend(
    m: &Model,
    name: String,
    (title, description): (String, String),
    (wort, takes): (heat::Part, &Takes),
    after: After,
    vessel: Option<Litres>,
) -> Option<Part> {
    let (w, words) = (m.writer(), &m.words.pitch.ways);
    let layer = |substance, volume, t: Celsius, name: &str| Layer {
        substance,
        volume: Litres::value(volume),
        celsius: t.value(),
        figure: (words.layer)(w, volume, t),
        name: name.to_owned(),
    };
    let added = match takes {
        Takes::Water(litres, at) => layer(Substance::Water, *litres, *at, words.layer_water),
        Takes::Ice(mass) => {
            layer(Substance::Ice, melted(*mass), Celsius::literal(0.0), words.layer_ice)
        }
        Takes::Time(_) => return None,
    };
    let wort = layer(Substance::Wort, wort.volume, wort.temperature, words.layer_wort);
    let data = BlendData {
        layers: vec![wort, added],
        capacity: vessel.map(Litres::value),
        result: Figure {
            value: w.temperature(after.temperature),
            name: (words.comes_to)(w, after.volume, after.gravity),
        },
        brim: vessel.map(|holds| w.volume(holds)).unwrap_or_default(),
    };
    let drawing = Drawing { title, description, sketch: Sketch::Blend(data) };
    Some(Part::new(name, What::Drawing(drawing)))
}
