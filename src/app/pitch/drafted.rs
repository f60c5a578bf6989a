//! The record of pitching day as far as it can be told from the fields.

use super::day::{Day, Row, Sachets};
use crate::advice::pitch::yeast::in_sachets;
use crate::batch::{AddedWater, Id, PitchRecord};
use crate::choices::YesNo;
use crate::quantity::Moment;
use crate::science::kit_gravity::Ingredient;

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
    let sachets = day.sachets.value.map(Sachets::count);
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
