//! The record of pitching day: what went in, how, and into what.

use super::id::Id;
use crate::advice::pitch::start_gravity::GoesBy;
use crate::advice::pitch::yeast::Method;
use crate::json_fields::record;
use crate::quantity::{Celsius, Grams, Hours, Litres, Moment};
use crate::science::kit_gravity::{Ingredient, KitGravity, by_mark, gravity};
use crate::science::self_heating;
use serde::{Deserialize, Serialize};

/// Water that was added to the wort.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct AddedWater {
    /// How much.
    pub volume: Litres,
    /// How warm it was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature: Option<Celsius>,
}

record! {
    /// The yeast went in. All but the batch and the time may be missing: older records have little more.
    pub struct PitchRecord {
        /// The batch.
        must batch: Id,
        /// When.
        must at: Moment,
        /// Of the wort.
        may wort: Option<Celsius>,
        /// In the vessel when all is in, read off its mark.
        may volume: Option<Litres>,
        /// Water added after the boil.
        may water: Option<AddedWater>,
        /// Ice added.
        may ice: Option<Grams>,
        /// What was weighed in.
        may ingredients: Vec<Ingredient>,
        /// Which gravity the batch goes by.
        may goes_by: GoesBy,
        /// Dry yeast in all.
        may yeast: Option<Grams>,
        /// What the packet is called.
        may product: String,
        /// How many sachets.
        may sachets: Option<u32>,
        /// Sprinkled, or woken in water first.
        may method: Option<Method>,
        /// Shaken or splashed for so long.
        may aerated: Option<Hours>,
        /// A satellite was set beside it.
        may satellite: Option<bool>,
        /// What it stands in.
        may vessel: Option<self_heating::Vessel>,
        /// Of the room.
        may room: Option<Celsius>,
        /// Where it stands, in the brewer's words.
        may place: String,
        /// Anything else.
        may note: String,
    }
}

impl PitchRecord {
    /// Only that it went in, and when.
    #[must_use]
    pub fn new(batch: Id, at: Moment) -> Self {
        Self {
            batch,
            at,
            wort: None,
            volume: None,
            water: None,
            ice: None,
            ingredients: vec![],
            goes_by: GoesBy::Sample,
            yeast: None,
            product: String::new(),
            sachets: None,
            method: None,
            aerated: None,
            satellite: None,
            vessel: None,
            room: None,
            place: String::new(),
            note: String::new(),
        }
    }

    /// The gravity that the ingredients make in the volume noted here, or else in `planned`. Worked out
    /// from what was weighed, each time; `None` without ingredients, or when they cannot be.
    #[must_use]
    pub fn by_ingredients(&self, planned: Litres) -> Option<KitGravity> {
        gravity(&self.ingredients, by_mark(self.volume.unwrap_or(planned))).ok()
    }
}
