//! What follows from what was measured: one physical idea a file, pure, each citing its source.
//!
//! Every answer is an [`Estimate`](crate::quantity::Estimate) with its [`Worked`] steps: what went in,
//! what was done with it, where the rule comes from and what the uncertainty is made of. Numbers inside
//! a file are SI (kg/m³, °C, L, g, mol, kPa); the functions offered take and give quantities.

pub mod air;
pub mod bottle_pressure;
pub mod carbon_dioxide;
pub mod cooling;
pub mod ethanol;
pub mod heat;
pub mod hydrometer;
pub mod hydrometer_check;
pub mod hydrometer_sample;
pub mod kit_gravity;
pub mod mixing;
pub mod oxygen;
pub mod practice;
pub mod priming;
pub mod refractometer;
mod root;
pub mod self_heating;
pub mod strength;
pub mod sucrose;
mod sugar;
pub mod water;
mod worked;
pub mod yeast;

pub use worked::{Amount, Doubt, Source, Step, Term, Worked};

use crate::quantity::{Celsius, OutOfRange};
use std::fmt;

/// Why nothing follows from the values given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ScienceError {
    /// A result cannot be a value of its quantity.
    OutOfRange(OutOfRange),
    /// The formula does not hold at this temperature.
    Temperature {
        /// What was given.
        given: Celsius,
        /// The lowest temperature the formula holds at.
        min: Celsius,
        /// The highest temperature the formula holds at.
        max: Celsius,
    },
    /// The final gravity lies above the original: nothing can have fermented.
    RisingGravity,
    /// The wish cannot be met with what is at hand (cooling with water that is not cold enough, say).
    OutOfReach,
    /// The amount of something that is needed is zero.
    NothingThere,
}

impl From<OutOfRange> for ScienceError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

impl fmt::Display for ScienceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange(error) => error.fmt(f),
            Self::Temperature { given, min, max } => {
                let [given, min, max] = [given, min, max].map(|t| f64::from(*t));
                write!(f, "the formula holds from {min} to {max} °C, not at {given}")
            }
            Self::RisingGravity => write!(f, "the gravity now is above the gravity at the start"),
            Self::OutOfReach => write!(f, "it cannot be reached with what is at hand"),
            Self::NothingThere => write!(f, "an amount that is needed is zero"),
        }
    }
}

impl std::error::Error for ScienceError {}
