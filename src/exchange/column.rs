//! The columns of a table of readings: what each is for, by its head.

use crate::quantity::{GravityUnit, TemperatureUnit};
use std::fmt;

/// The longest text that is read, bytes.
pub const LONGEST: usize = 2_000_000;
/// The most readings in one.
pub const MOST: usize = 2_000;

/// Why a text is no table of readings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoTable {
    /// There is no line below the heads.
    Empty,
    /// It is longer than [`LONGEST`], or holds more than [`MOST`] lines.
    TooLong,
    /// No column of this table is a date.
    NoDate,
    /// No column is a gravity or a temperature.
    NothingRead,
    /// The head of a temperature says no unit.
    NoUnit(String),
    /// Two columns are for the same.
    Twice(String),
}

impl fmt::Display for NoTable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "there is no line in it below the heads of its columns"),
            Self::TooLong => write!(f, "it has more than {MOST} lines"),
            Self::NoDate => write!(f, "none of its columns is headed Date"),
            Self::NothingRead => write!(f, "none of its columns is a gravity or a temperature"),
            Self::NoUnit(head) => write!(f, "write the unit behind {head}, as in Beer (°C)"),
            Self::Twice(head) => write!(f, "the column {head} is there twice"),
        }
    }
}

impl std::error::Error for NoTable {}

/// A column by what stands in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// When.
    Date,
    /// From which vessel.
    Vessel,
    /// Gravity as read, on this scale.
    Gravity(GravityUnit),
    /// Of the liquid in the jar.
    Sample(TemperatureUnit),
    /// How the sample stood.
    State,
    /// Of the beer.
    Beer(TemperatureUnit),
    /// Of the room.
    Room(TemperatureUnit),
    /// What a refractometer showed.
    Brix,
    /// What was added.
    Added,
    /// A note.
    Note,
}

/// The columns that are written, with their heads.
pub(super) const WRITTEN: [(&str, Column); 11] = [
    ("Date and time", Column::Date),
    ("Vessel", Column::Vessel),
    ("Gravity as read (SG)", Column::Gravity(GravityUnit::SpecificGravity)),
    ("Gravity as read (°P)", Column::Gravity(GravityUnit::Plato)),
    ("Sample (°C)", Column::Sample(TemperatureUnit::Celsius)),
    ("State of the sample", Column::State),
    ("Beer (°C)", Column::Beer(TemperatureUnit::Celsius)),
    ("Room (°C)", Column::Room(TemperatureUnit::Celsius)),
    ("Refractometer (°Bx)", Column::Brix),
    ("Added", Column::Added),
    ("Note", Column::Note),
];

/// What a column is for, by its head; none when it means nothing here.
pub(super) fn column(head: &str) -> Result<Option<Column>, NoTable> {
    let (name, unit) = head.split_once(['(', '[']).unwrap_or((head, ""));
    let name = name.trim().to_ascii_lowercase();
    let unit: String =
        unit.to_ascii_lowercase().chars().filter(char::is_ascii_alphanumeric).collect();
    let first = name.split([' ', '_', '-']).next().unwrap_or_default();
    let temperature = |column: fn(TemperatureUnit) -> Column| match &*unit {
        "c" => Ok(Some(column(TemperatureUnit::Celsius))),
        "f" => Ok(Some(column(TemperatureUnit::Fahrenheit))),
        _ => Err(NoTable::NoUnit(told(head))),
    };
    match first {
        "date" | "when" | "time" => Ok(Some(Column::Date)),
        "vessel" => Ok(Some(Column::Vessel)),
        "gravity" | "sg" if unit == "p" || unit == "plato" => {
            Ok(Some(Column::Gravity(GravityUnit::Plato)))
        }
        "gravity" | "sg" => Ok(Some(Column::Gravity(GravityUnit::SpecificGravity))),
        "plato" => Ok(Some(Column::Gravity(GravityUnit::Plato))),
        "sample" => temperature(Column::Sample),
        "state" => Ok(Some(Column::State)),
        "beer" => temperature(Column::Beer),
        "room" => temperature(Column::Room),
        "refractometer" | "brix" => Ok(Some(Column::Brix)),
        "added" => Ok(Some(Column::Added)),
        "note" | "notes" => Ok(Some(Column::Note)),
        _ => Ok(None),
    }
}

/// Whether two columns are for the same thing of a reading; the two scales of gravity are not.
pub(super) fn same(one: Column, other: Column) -> bool {
    match (one, other) {
        (Column::Gravity(a), Column::Gravity(b)) => a == b,
        _ => std::mem::discriminant(&one) == std::mem::discriminant(&other),
    }
}

/// A head as it is told: short.
pub(super) fn told(head: &str) -> String {
    head.trim().chars().take(40).collect()
}
