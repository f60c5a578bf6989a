//! Why a typed text is no quantity.

use std::fmt;

/// Why a text is no value of a field. Limits are already written in the unit the brewer used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ReadError {
    /// Nothing was typed.
    Empty,
    /// No number could be made of it.
    NotANumber {
        /// What was typed.
        typed: String,
    },
    /// A comma and a point together.
    TwoMarks {
        /// What was typed.
        typed: String,
    },
    /// Two readings of the comma, both possible here.
    Ambiguous {
        /// The smaller reading, written without doubt.
        small: String,
        /// The larger reading, written without doubt.
        large: String,
    },
    /// The text behind the number is no unit of this field.
    UnknownUnit {
        /// What stood behind the number.
        typed: String,
        /// Units that can be written.
        known: Vec<&'static str>,
    },
    /// A unit that is two units (a gallon).
    TwoUnits {
        /// What stood behind the number.
        typed: String,
        /// Units that can be written instead.
        known: Vec<&'static str>,
    },
    /// A number the field cannot take.
    OutOfRange {
        /// The lowest value, with its unit.
        min: String,
        /// The highest value, with its unit.
        max: String,
    },
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "nothing is written here yet"),
            Self::NotANumber { typed } => write!(f, "{} is not a number", quoted(typed)),
            Self::TwoMarks { typed } => {
                write!(f, "{} has a comma and a point; use one of them", quoted(typed))
            }
            Self::Ambiguous { small, large } => write!(f, "write {small} or {large}"),
            Self::UnknownUnit { typed, known } => {
                write!(f, "{} is no unit here; use {}", quoted(typed), known.join(", "))
            }
            Self::TwoUnits { typed, known } => {
                write!(f, "there is more than one {}; use {}", quoted(typed), known.join(" or "))
            }
            Self::OutOfRange { min, max } => write!(f, "it must be from {min} to {max}"),
        }
    }
}

/// What was typed, in quotation marks; of a long text only how it begins.
fn quoted(typed: &str) -> String {
    let mut rest = typed.chars();
    let begins: String = rest.by_ref().take(24).collect();
    let more = if rest.next().is_some() { "\u{2026}" } else { "" };
    format!("\u{201C}{begins}{more}\u{201D}")
}

impl std::error::Error for ReadError {}
