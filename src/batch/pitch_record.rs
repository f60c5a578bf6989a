//! The record of pitching day: what went in, how, and into what.

use super::id::Id;
use crate::advice::pitch::yeast::Method;
use crate::json::record_fields;
use crate::quantity::{Celsius, Grams, Hours, Litres, Moment};
use crate::science::kit_gravity::{Ingredient, KitGravity, by_mark, gravity};
use crate::science::self_heating;
use serde::{Deserialize, Serialize};

/// Which gravity the batch goes by. The other is kept beside it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GoesBy {
    /// The sample's reading, if there is one.
    #[default]
    Sample,
    /// What was weighed in, if that is noted.
    Ingredients,
}

impl GoesBy {
    /// As it was before there was a choice.
    // Serde hands a reference to what decides whether a field is written.
    #[allow(clippy::trivially_copy_pass_by_ref)]
    fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// Water that was added to the wort.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct AddedWater {
    /// How much.
    pub volume: Litres,
    /// How warm it was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature: Option<Celsius>,
}

/// The yeast went in. All but the batch and the time may be missing: older records have little more.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PitchRecord {
    /// The batch.
    pub batch: Id,
    /// When.
    pub at: Moment,
    /// Of the wort.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wort: Option<Celsius>,
    /// In the vessel when all is in, read off its mark.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub volume: Option<Litres>,
    /// Water added after the boil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water: Option<AddedWater>,
    /// Ice added.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ice: Option<Grams>,
    /// What was weighed in.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub ingredients: Vec<Ingredient>,
    /// Which gravity the batch goes by.
    #[serde(skip_serializing_if = "GoesBy::is_default")]
    pub goes_by: GoesBy,
    /// Dry yeast in all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub yeast: Option<Grams>,
    /// What the packet is called.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub product: String,
    /// How many sachets.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sachets: Option<u32>,
    /// Sprinkled, or woken in water first.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<Method>,
    /// Shaken or splashed for so long.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aerated: Option<Hours>,
    /// A satellite was set beside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub satellite: Option<bool>,
    /// What it stands in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vessel: Option<self_heating::Vessel>,
    /// Of the room.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room: Option<Celsius>,
    /// Where it stands, in the brewer's words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub place: String,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

record_fields! {
    PitchRecord { batch at }
    may have { wort volume water ice ingredients goes_by yeast product sachets method aerated satellite vessel room place note }
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
