//! What each saved thing holds.

use super::id::Id;
use crate::advice::bottle::history::Past;
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::stock::Bottles;
use crate::advice::family::{Family, Span};
use crate::json::record_fields;
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, Gravity, GravityChange, Litres, Moment, Plato,
    SpecificGravity, WortFactor,
};
use crate::science::hydrometer::Condition;
use crate::science::priming::Sugar;
use crate::science::refractometer::USUAL_FACTOR;
use serde::{Deserialize, Serialize};

/// What is known of a batch as a whole.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BatchHeading {
    /// Its name, as the brewer wrote it.
    pub name: String,
    /// Brewing day.
    pub started: Moment,
    /// In the fermenter.
    pub volume: Litres,
    /// The yeast.
    pub family: Family,
    /// The packet's own range for pitching, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub packet: Option<Span<Celsius>>,
    /// Starting gravity that kit or recipe states.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expected_start: Option<SpecificGravity>,
    /// Final gravity that kit or recipe states.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expected_end: Option<SpecificGravity>,
    /// The instrument in use.
    pub hydrometer: Id,
}

record_fields! {
    BatchHeading { name started volume family hydrometer }
    may have { packet expected_start expected_end }
}

/// Which vessel a reading is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Vessel {
    /// The batch itself.
    Main,
    /// The fast-ferment sample beside it.
    Satellite,
}

/// What a refractometer showed, and what its mark is divided by in unfermented wort.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Refractometer {
    /// Degrees Brix, which are degrees Plato of plain sugar.
    pub brix: Plato,
    /// The wort factor.
    #[serde(default = "usual_factor")]
    pub factor: WortFactor,
}

const fn usual_factor() -> WortFactor {
    USUAL_FACTOR
}

/// What was added to beer that already ferments. Any of it makes the expected end uncertain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Added {
    /// Sugar, honey, syrup, more malt.
    Sugar,
    /// Fruit or juice.
    Fruit,
    /// Something else that ferments.
    Other,
}

/// One look at the beer, exactly as it was read. Corrections are worked out from it and never over it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Reading {
    /// The batch.
    pub batch: Id,
    /// When.
    pub at: Moment,
    /// From where.
    pub vessel: Vessel,
    /// Gravity as read, on the scale it was read on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_read: Option<Gravity>,
    /// What was typed for it, letter by letter.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub typed: String,
    /// Of the liquid in the jar.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sample: Option<Celsius>,
    /// How the sample stood.
    pub condition: Condition,
    /// Read with this instrument.
    pub hydrometer: Id,
    /// What a refractometer showed, with or without a hydrometer beside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refractometer: Option<Refractometer>,
    /// Something that ferments was added then, after the reading.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub added: Option<Added>,
    /// Of the beer in the fermenter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beer: Option<Celsius>,
    /// Of the room.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room: Option<Celsius>,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

record_fields! {
    Reading { batch at vessel condition hydrometer }
    may have { as_read typed sample refractometer added beer room note }
}

/// It was bottled, with what and on what grounds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BottlingRecord {
    /// The batch.
    pub batch: Id,
    /// When.
    pub at: Moment,
    /// Beer in the bottling vessel.
    pub beer: Estimate<Litres>,
    /// The sugar.
    pub sugar: Sugar,
    /// How much was weighed.
    pub weighed: Grams,
    /// What it was for.
    pub target: CarbonDioxideVolumes,
    /// Warmest since the fermentation all but ended.
    pub warmest: Celsius,
    /// The weakest bottle.
    pub weakest: Bottle,
    /// The hottest place they may stand.
    pub hottest: Celsius,
    /// Where they stand.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<Celsius>,
    /// When they came to where they stand, if that was later.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moved: Option<Moment>,
    /// Worst-case carbon dioxide as judged on the day.
    pub worst: CarbonDioxideVolumes,
    /// The brewer's reason, when the log did not say finished.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub went_on_because: String,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// What it was judged on; older records have none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grounds: Option<Grounds>,
}

record_fields! {
    BottlingRecord { batch at beer sugar weighed target warmest weakest hottest worst }
    may have { place moved went_on_because note grounds }
}

/// What a bottling was judged on.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Grounds {
    /// What happened to the beer after it went quiet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub past: Option<Past>,
    /// Carbon dioxide already in, as the dose counted it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub already_in: Option<Estimate<CarbonDioxideVolumes>>,
    /// The most that could be left to ferment.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub points_left: Option<GravityChange>,
    /// The bottles that were filled.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub filled: Vec<Bottles>,
    /// The sugar was weighed into each bottle.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub by_bottle: bool,
    /// What the scale showed at the finest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scale: Option<Grams>,
    /// What the brewer calls the sugar, if it was an own one.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub sugar_name: String,
}

record_fields! {
    Grounds {  }
    may have { past already_in points_left filled by_bottle scale sugar_name }
}

/// How much fizz, one to five.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct Fizz(u8);

impl Fizz {
    /// One (flat) to five (gushing).
    #[must_use]
    pub fn new(value: u8) -> Option<Self> {
        (1..=5).contains(&value).then_some(Self(value))
    }

    /// The number.
    #[must_use]
    pub fn value(self) -> u8 {
        self.0
    }
}

impl TryFrom<u8> for Fizz {
    type Error = &'static str;
    fn try_from(value: u8) -> Result<Self, &'static str> {
        Self::new(value).ok_or("fizz is 1 to 5")
    }
}

impl From<Fizz> for u8 {
    fn from(fizz: Fizz) -> u8 {
        fizz.0
    }
}

/// How clear it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Clarity {
    /// Bright.
    Bright,
    /// Hazy.
    Hazy,
    /// Cloudy.
    Cloudy,
}

/// A bottle was opened.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpeningRecord {
    /// The batch.
    pub batch: Id,
    /// When.
    pub at: Moment,
    /// How much fizz.
    pub fizz: Fizz,
    /// How clear.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clarity: Option<Clarity>,
    /// How it tasted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub taste: String,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

record_fields! {
    OpeningRecord { batch at fizz }
    may have { clarity taste note }
}
