//! Cooling wort with water or ice, as Pitch and the Bench show it.

use super::ask::Asked;
use super::drawing::{BlendData, Drawing, Figure, Sketch};
use super::fields::{temperature, volume};
use super::model::Model;
use super::part::{Part, What, text};
use super::worked::DoubtIn;
use crate::advice::pitch::clock::Bath;
use crate::advice::pitch::ways_to_range::Takes;
use crate::chart::{Layer, Substance};
use crate::quantity::{Bounds, Celsius, Litres, Measured, SpecificGravity};
use crate::science::heat::{self, melted};

/// Doubts of a temperature.
pub const IN_DEGREES: DoubtIn = DoubtIn::Degrees;
/// Doubts of a time.
pub const IN_HOURS: DoubtIn = DoubtIn::Hours;

/// What stands round the wort, as it is asked.
#[derive(Clone, Debug)]
pub struct Round {
    /// Its temperature.
    pub at: Asked<Celsius>,
    /// How much water it is, of a tub that the wort warms.
    pub tub: Asked<Litres>,
}

impl Round {
    /// The fields, under names that begin so.
    pub fn of(m: &Model, scope: &str) -> Self {
        let words = &m.words.pitch.ways;
        let any = Bounds::new(Celsius::literal(0.0), Celsius::literal(100.0));
        let at = (words.bath, words.bath_hint);
        Self {
            at: temperature(m, format!("{scope}bath"), at, any, None, 12.0),
            tub: volume(m, format!("{scope}tub"), (words.tub, words.tub_hint), None),
        }
    }

    /// The fields.
    pub fn parts(&self) -> [Part; 2] {
        [self.at.part.clone(), self.tub.part.clone()]
    }

    /// What the wort stands in, once its temperature is known.
    pub fn bath(&self, wort: Option<heat::Part>) -> Option<Bath> {
        let at = self.at.ok()?;
        match self.tub.ok() {
            None => Some(Bath::steady(at)),
            Some(water) => Bath::tub(wort?, water, at).ok(),
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
