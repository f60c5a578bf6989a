//! The things that are saved, each with an identity and each by itself.

use super::gear::{HydrometerItem, Settings};
use crate::advice::bottles::Bottle;
use crate::advice::family::{Family, Span};
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, Gravity, Litres, Moment, SpecificGravity,
};
use crate::science::hydrometer::Condition;
use crate::science::priming::Sugar;
use serde::{Deserialize, Serialize};
use std::fmt;

/// An identity: letters, digits and hyphens, made once and never reused.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Id(String);

/// A text that can be no identity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IdError;

impl fmt::Display for IdError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "an identity is 1 to 64 letters, digits or hyphens")
    }
}

impl std::error::Error for IdError {}

impl Id {
    /// From a text of 1 to 64 letters, digits or hyphens.
    ///
    /// # Errors
    /// [`IdError`] for anything else.
    pub fn new(text: impl Into<String>) -> Result<Self, IdError> {
        let text = text.into();
        let fits = (1..=64).contains(&text.len())
            && text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-');
        if fits { Ok(Self(text)) } else { Err(IdError) }
    }

    /// From eight random bytes.
    #[must_use]
    pub fn random(bytes: [u8; 8]) -> Self {
        Self(bytes.iter().map(|b| format!("{b:02x}")).collect())
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for Id {
    type Error = IdError;
    fn try_from(text: String) -> Result<Self, IdError> {
        Self::new(text)
    }
}

impl From<Id> for String {
    fn from(id: Id) -> String {
        id.0
    }
}

/// What is known of a batch as a whole.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
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
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub packet: Option<Span<Celsius>>,
    /// Starting gravity that kit or recipe states.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub expected_start: Option<SpecificGravity>,
    /// Final gravity that kit or recipe states.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub expected_end: Option<SpecificGravity>,
    /// The instrument in use.
    pub hydrometer: Id,
}

/// The yeast went in.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PitchRecord {
    /// The batch.
    pub batch: Id,
    /// When.
    pub at: Moment,
    /// Of the wort.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wort: Option<Celsius>,
    /// Dry yeast.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub yeast: Option<Grams>,
    /// Anything else.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
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

/// One look at the beer, exactly as it was read. Corrections are worked out from it and never over it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// The batch.
    pub batch: Id,
    /// When.
    pub at: Moment,
    /// From where.
    pub vessel: Vessel,
    /// Gravity as read, on the scale it was read on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub as_read: Option<Gravity>,
    /// What was typed for it, letter by letter.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub typed: String,
    /// Of the liquid in the jar.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sample: Option<Celsius>,
    /// How the sample stood.
    pub condition: Condition,
    /// Read with this instrument.
    pub hydrometer: Id,
    /// Of the beer in the fermenter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub beer: Option<Celsius>,
    /// Of the room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub room: Option<Celsius>,
    /// Anything else.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// It was bottled, with what and on what grounds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
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
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Celsius>,
    /// Worst-case carbon dioxide as judged on the day.
    pub worst: CarbonDioxideVolumes,
    /// The brewer's reason, when the log did not say finished.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub went_on_because: String,
    /// Anything else.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
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

/// A bottle was opened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OpeningRecord {
    /// The batch.
    pub batch: Id,
    /// When.
    pub at: Moment,
    /// How much fizz.
    pub fizz: Fizz,
    /// Taste, clarity, anything.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// What kind of thing an entry is. The names are stored; they never change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// A batch's heading.
    Batch,
    /// A pitching.
    Pitch,
    /// A reading.
    Reading,
    /// A bottling.
    Bottling,
    /// An opened bottle.
    Opening,
    /// An instrument.
    Hydrometer,
    /// The settings.
    Settings,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 7] = [
        Self::Batch,
        Self::Pitch,
        Self::Reading,
        Self::Bottling,
        Self::Opening,
        Self::Hydrometer,
        Self::Settings,
    ];

    /// The stored name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Batch => "batch",
            Self::Pitch => "pitch",
            Self::Reading => "reading",
            Self::Bottling => "bottling",
            Self::Opening => "opening",
            Self::Hydrometer => "hydrometer",
            Self::Settings => "settings",
        }
    }

    /// The kind with a stored name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }
}

/// Which thing: its kind and identity.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryKey {
    /// The kind.
    pub kind: Kind,
    /// The identity.
    pub id: Id,
}

/// One saved thing.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)] // each variant is named for what it holds
pub enum Entry {
    Batch(BatchHeading),
    Pitch(PitchRecord),
    Reading(Reading),
    Bottling(BottlingRecord),
    Opening(OpeningRecord),
    Hydrometer(HydrometerItem),
    Settings(Settings),
}

impl Entry {
    /// What kind it is.
    #[must_use]
    pub const fn kind(&self) -> Kind {
        match self {
            Self::Batch(_) => Kind::Batch,
            Self::Pitch(_) => Kind::Pitch,
            Self::Reading(_) => Kind::Reading,
            Self::Bottling(_) => Kind::Bottling,
            Self::Opening(_) => Kind::Opening,
            Self::Hydrometer(_) => Kind::Hydrometer,
            Self::Settings(_) => Kind::Settings,
        }
    }

    /// The batch it belongs to.
    #[must_use]
    pub const fn batch(&self) -> Option<&Id> {
        match self {
            Self::Pitch(record) => Some(&record.batch),
            Self::Reading(record) => Some(&record.batch),
            Self::Bottling(record) => Some(&record.batch),
            Self::Opening(record) => Some(&record.batch),
            Self::Batch(_) | Self::Hydrometer(_) | Self::Settings(_) => None,
        }
    }

    /// The text that is stored.
    ///
    /// # Errors
    /// When the entry cannot be written as JSON.
    pub fn to_text(&self) -> Result<String, serde_json::Error> {
        match self {
            Self::Batch(entry) => serde_json::to_string(entry),
            Self::Pitch(entry) => serde_json::to_string(entry),
            Self::Reading(entry) => serde_json::to_string(entry),
            Self::Bottling(entry) => serde_json::to_string(entry),
            Self::Opening(entry) => serde_json::to_string(entry),
            Self::Hydrometer(entry) => serde_json::to_string(entry),
            Self::Settings(entry) => serde_json::to_string(entry),
        }
    }

    /// Reads a stored text back; every quantity in it passes its own check.
    ///
    /// # Errors
    /// When the text is no entry of this kind.
    pub fn from_text(kind: Kind, text: &str) -> Result<Self, serde_json::Error> {
        Ok(match kind {
            Kind::Batch => Self::Batch(serde_json::from_str(text)?),
            Kind::Pitch => Self::Pitch(serde_json::from_str(text)?),
            Kind::Reading => Self::Reading(serde_json::from_str(text)?),
            Kind::Bottling => Self::Bottling(serde_json::from_str(text)?),
            Kind::Opening => Self::Opening(serde_json::from_str(text)?),
            Kind::Hydrometer => Self::Hydrometer(serde_json::from_str(text)?),
            Kind::Settings => Self::Settings(serde_json::from_str(text)?),
        })
    }
}
