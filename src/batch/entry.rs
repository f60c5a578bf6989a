//! The things that are saved, each with an identity and each by itself.

use super::gear::{BottlesItem, HydrometerItem, Settings, SugarItem};
use super::id::Id;
use super::pitch_record::PitchRecord;
use super::record::{BatchHeading, BottlingRecord, OpeningRecord, Reading};
use crate::json_fields::read_record;
use crate::json_unknown::Unknown;

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
    /// Bottles on hand.
    Bottles,
    /// A sugar of the brewer's own.
    Sugar,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 9] = [
        Self::Batch,
        Self::Pitch,
        Self::Reading,
        Self::Bottling,
        Self::Opening,
        Self::Hydrometer,
        Self::Settings,
        Self::Bottles,
        Self::Sugar,
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
            Self::Bottles => "bottles",
            Self::Sugar => "sugar",
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
    Bottles(BottlesItem),
    Sugar(SugarItem),
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
            Self::Bottles(_) => Kind::Bottles,
            Self::Sugar(_) => Kind::Sugar,
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
            Self::Batch(_)
            | Self::Hydrometer(_)
            | Self::Settings(_)
            | Self::Bottles(_)
            | Self::Sugar(_) => None,
        }
    }

    /// What the brewer calls it; `None` for what has no name.
    #[must_use]
    pub fn name(&self) -> Option<&str> {
        match self {
            Self::Batch(heading) => Some(&heading.name),
            Self::Hydrometer(item) => Some(&item.name),
            Self::Bottles(item) => Some(&item.name),
            Self::Sugar(item) => Some(&item.name),
            Self::Pitch(_)
            | Self::Reading(_)
            | Self::Bottling(_)
            | Self::Opening(_)
            | Self::Settings(_) => None,
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
            Self::Bottles(entry) => serde_json::to_string(entry),
            Self::Sugar(entry) => serde_json::to_string(entry),
        }
    }

    /// The text that is stored, with what a later version noted there and this one cannot read.
    ///
    /// # Errors
    /// As [`Entry::to_text`].
    pub fn to_text_with(&self, unknown: &Unknown) -> Result<String, serde_json::Error> {
        unknown.put_back(self.to_text()?)
    }

    /// Reads a stored text back; every quantity in it passes its own check.
    ///
    /// # Errors
    /// When the text is no entry of this kind.
    pub fn from_text(kind: Kind, text: &str) -> Result<Self, serde_json::Error> {
        Self::read(kind, text).map(|(entry, _)| entry)
    }

    /// The same, with what the text holds that this version has no name for. Who writes the entry again
    /// writes it [with that](Entry::to_text_with).
    ///
    /// # Errors
    /// As [`Entry::from_text`].
    pub fn read(kind: Kind, text: &str) -> Result<(Self, Unknown), serde_json::Error> {
        Ok(match kind {
            Kind::Batch => {
                let (record, unknown) = read_record(text)?;
                (Self::Batch(record), unknown)
            }
            Kind::Pitch => {
                let (record, unknown) = read_record(text)?;
                (Self::Pitch(record), unknown)
            }
            Kind::Reading => {
                let (record, unknown) = read_record(text)?;
                (Self::Reading(record), unknown)
            }
            Kind::Bottling => {
                let (record, unknown) = read_record(text)?;
                (Self::Bottling(record), unknown)
            }
            Kind::Opening => {
                let (record, unknown) = read_record(text)?;
                (Self::Opening(record), unknown)
            }
            Kind::Hydrometer => {
                let (record, unknown) = read_record(text)?;
                (Self::Hydrometer(record), unknown)
            }
            Kind::Settings => {
                let (record, unknown) = read_record(text)?;
                (Self::Settings(record), unknown)
            }
            Kind::Bottles => {
                let (record, unknown) = read_record(text)?;
                (Self::Bottles(record), unknown)
            }
            Kind::Sugar => {
                let (record, unknown) = read_record(text)?;
                (Self::Sugar(record), unknown)
            }
        })
    }
}
