//! What follows from the fields of pitching day together: what more than one section needs.

use super::day::Day;
use super::drafted::drafted;
use crate::advice::family::{Family, Span};
use crate::advice::pitch::clock::Bath;
use crate::advice::pitch::start_gravity::OriginalFrom;
use crate::advice::pitch::{Wort, start_gravity};
use crate::advice::reading::{Taken, corrected};
use crate::advice::thermometer::looks;
use crate::app::model::Model;
use crate::batch::Summary;
use crate::quantity::{Celsius, Estimate, Litres, Plato, SpecificGravity};
use crate::science::cooling::Look;
use crate::science::hydrometer_sample::{Condition, Corrected};
use crate::science::kit_gravity::KitGravity;
use crate::science::{heat, sucrose};

/// What is known by now.
#[derive(Clone, Debug)]
pub struct Known {
    /// The yeast.
    pub family: Family,
    /// Its packet's own range.
    pub packet: Option<Span<Celsius>>,
    /// The wort as its thermometer knows it.
    pub wort: Option<Wort>,
    /// The looks at the thermometer, the present one last.
    pub looks: Vec<Look>,
    /// In the vessel now, or planned.
    pub volume: Litres,
    /// The wort as it stands: how much, how strong, how warm.
    pub whole: Option<heat::Part>,
    /// What it stands in.
    pub bath: Option<Bath>,
    /// The gravity that what was weighed in makes.
    pub by_weight: Option<KitGravity>,
    /// The sample made true; at its instrument's temperature when its own is not noted.
    pub sample: Option<Corrected>,
    /// The start as it stands on this page, else as the batch knows it.
    pub start: Option<Estimate<SpecificGravity>>,
    /// What that goes by.
    pub from: Option<OriginalFrom>,
}

impl Known {
    /// Of the fields of one batch.
    pub fn of(m: &Model, s: &Summary, day: &Day) -> Self {
        let (_, stirred) = day.read_with.value.parts();
        let reads = |t: Celsius| day.read_with.value.reads(t);
        let now = day.wort.ok().map(reads);
        let earlier = day.earlier.ok().map(reads).zip(day.between.ok());
        let (family, packet) = (s.heading.family, s.heading.packet);
        let wort = now.map(|temperature| Wort { temperature, stirred, family, packet });
        let record = drafted(day, &s.id, m.now);
        let by_weight = record.by_ingredients(s.heading.volume);
        let sample = sample(m, s, day);
        let told = start_gravity::Known {
            sample: sample.as_ref().map(|corrected| corrected.gravity),
            ingredients: by_weight.as_ref().map(|kit| kit.gravity),
            stated: None,
        };
        let found = start_gravity::start(told, day.goes_by.value);
        let (start, from) = match found {
            Some((gravity, from)) => (Some(gravity), Some(from)),
            None => (s.original, s.original_from),
        };
        let volume = day.volume.ok().unwrap_or(s.heading.volume);
        let extract = start.map_or(Plato::literal(0.0), |sg| sucrose::plato(sg.value()));
        let whole = day.wort.ok().map(|temperature| heat::Part { volume, extract, temperature });
        Self {
            family,
            packet,
            wort,
            looks: now.map(|now| looks(now, earlier)).unwrap_or_default(),
            volume,
            whole,
            bath: day.round.bath(whole),
            start,
            from,
            by_weight,
            sample,
        }
    }
}

fn sample(m: &Model, s: &Summary, day: &Day) -> Option<Corrected> {
    let instrument = m.journal.hydrometer(&s.heading.hydrometer);
    let taken = Taken {
        reading: day.sample.ok()?,
        sample: day.sample_at.ok(),
        condition: Condition::Still,
        original: None,
    };
    corrected(taken, &instrument).ok()
}
