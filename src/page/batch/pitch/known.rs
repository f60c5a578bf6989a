//! What follows from the fields of pitching day together.

use super::day::ROWS;
use crate::advice::family::Family;
use crate::advice::pitch::Wort;
use crate::advice::pitch::start_gravity;
use crate::advice::reading::{Taken, corrected};
use crate::advice::thermometer::{Thermometer, looks};
use crate::batch::{GoesBy, Summary};
use crate::page::ask::{Read, ReadGravity};
use crate::page::batch::Live;
use crate::page::session::use_session;
use crate::quantity::{Celsius, Estimate, Grams, Hours, Litres, Share, SpecificGravity};
use crate::science::cooling::Look;
use crate::science::hydrometer::{Condition, Corrected};
use crate::science::kit_gravity::{Fermentable, Ingredient, KitGravity, by_mark, gravity};
use leptos::prelude::*;

/// Kind, mass and share of one row.
pub type RowRead = (RwSignal<String>, Read<Grams>, Read<Share>);

/// The readings of the fields that more than one section needs; copied into closures.
#[derive(Clone, Copy)]
pub struct Known {
    pub live: Live,
    pub wort: Read<Celsius>,
    pub thermometer: RwSignal<String>,
    pub stirred: RwSignal<String>,
    pub volume: Read<Litres>,
    pub earlier: Read<Celsius>,
    pub between: Read<Hours>,
    pub sample: ReadGravity,
    pub sample_at: Read<Celsius>,
    pub rows: [Option<RowRead>; ROWS],
    pub goes_by: RwSignal<String>,
}

/// The ingredient of a stored name.
pub fn kind_named(name: &str) -> Option<Fermentable> {
    Fermentable::named(name)
}

impl Known {
    fn of_batch<T>(self, read: impl Fn(&Summary) -> T) -> Option<T> {
        self.live.with(|summary| summary.as_ref().map(read))
    }

    /// The yeast.
    pub fn family(self) -> Family {
        self.of_batch(|s| s.heading.family).unwrap_or(Family::Unknown)
    }

    fn thermometer(self) -> Thermometer {
        Thermometer::named(&self.thermometer.get()).unwrap_or(Thermometer::Probe)
    }

    /// The wort as its thermometer knows it.
    pub fn wort(self) -> Option<Wort> {
        let stirred = self.stirred.get() != "no";
        let temperature = self.thermometer().reads(self.wort.get().ok()?, stirred);
        let packet = self.of_batch(|s| s.heading.packet)?;
        Some(Wort { temperature, stirred, family: self.family(), packet })
    }

    /// The looks at the thermometer, the present one last.
    pub fn looks(self) -> Vec<Look> {
        let stirred = self.stirred.get() != "no";
        let reads = |t| self.thermometer().reads(t, stirred);
        let Ok(now) = self.wort.get() else { return vec![] };
        let earlier = self.earlier.get().ok().map(reads).zip(self.between.get().ok());
        looks(reads(now), earlier)
    }

    /// In the vessel now, or planned.
    pub fn volume(self) -> Option<Litres> {
        self.volume.get().ok().or_else(|| self.of_batch(|s| s.heading.volume))
    }

    /// What was weighed in so far.
    pub fn ingredients(self) -> Vec<Ingredient> {
        let row = |(kind, mass, share): RowRead| {
            let extract = share.get().ok();
            let usual = Ingredient::usual(kind_named(&kind.get())?, mass.get().ok()?);
            Some(Ingredient { extract, ..usual })
        };
        self.rows.into_iter().flatten().filter_map(row).collect()
    }

    /// The gravity that they make.
    pub fn by_weight(self) -> Option<KitGravity> {
        let ingredients = self.ingredients();
        if ingredients.is_empty() {
            None
        } else {
            gravity(&ingredients, by_mark(self.volume()?)).ok()
        }
    }

    /// The sample made true; at its instrument's temperature when its own is not noted.
    pub fn sample(self) -> Option<Corrected> {
        let session = use_session();
        let hydrometer = self.of_batch(|s| s.heading.hydrometer.clone())?;
        let instrument = session.journal.with(|journal| journal.hydrometer(&hydrometer));
        let taken = Taken {
            reading: self.sample.get().ok()?,
            sample: self.sample_at.get().ok(),
            condition: Condition::Still,
            original: None,
        };
        corrected(taken, &instrument).ok()
    }

    /// Whether the sample's own temperature is noted.
    pub fn sample_temperature_known(self) -> bool {
        self.sample_at.get().is_ok()
    }

    /// Which of the two the batch goes by.
    pub fn goes_by(self) -> GoesBy {
        GoesBy::named(&self.goes_by.get()).unwrap_or_default()
    }

    /// The start as it stands on this page, else as the batch knows it.
    pub fn start(self) -> Option<Estimate<SpecificGravity>> {
        let known = start_gravity::Known {
            sample: self.sample().map(|corrected| corrected.gravity),
            ingredients: self.by_weight().map(|kit| kit.gravity),
            stated: None,
        };
        let chosen = start_gravity::start(known, self.goes_by()).map(|(gravity, _)| gravity);
        chosen.or_else(|| self.of_batch(|s| s.original).flatten())
    }
}
