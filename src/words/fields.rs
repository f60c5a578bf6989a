//! The words of fields, whatever they measure.

use super::{sentence, texts::texts};
use crate::quantity::{MomentError, ReadError};
use crate::science::ScienceError;

texts! {
    /// What fields say.
    FieldWords, FIELDS {
        now: "Now",
        another_time: "Another time",
        the_sample: "The sample",
        hydrometer_used: "Hydrometer used",
        hydrometer_gone: "One that is gone from Gear",
        in_the_jar: "Hydrometer in the jar",
    } says {
        read_error: fn(&ReadError) -> String = read_error,
        understood: fn(&str) -> String = understood,
        corrected: fn(&str) -> String = corrected,
        less: fn(&str) -> String = less,
        more: fn(&str) -> String = more,
        unit: fn(&str) -> String = unit,
        moment_error: fn(MomentError) -> String = moment_error,
        science_error: fn(ScienceError) -> String = science_error,
    }
}

/// What is wrong with a field, as a sentence.
fn read_error(error: &ReadError) -> String {
    match error {
        ReadError::Empty => "Something is needed here.".to_owned(),
        other => sentence(&other.to_string()),
    }
}

/// What was made of a typed text.
fn understood(written: &str) -> String {
    format!("Read as {written}")
}

fn corrected(gravity: &str) -> String {
    format!("{gravity} corrected")
}

fn less(label: &str) -> String {
    format!("{label}: less")
}

fn more(label: &str) -> String {
    format!("{label}: more")
}

fn unit(label: &str) -> String {
    format!("{label}: unit")
}

/// What is wrong with a date.
fn moment_error(error: MomentError) -> String {
    sentence(&error.to_string())
}

/// Why a sum has no answer.
fn science_error(error: ScienceError) -> String {
    match error {
        ScienceError::Temperature { given, min, max } => {
            let warm = given > max;
            let [min, max] = [min, max]
                .map(|t| crate::quantity::write_number(crate::quantity::Measured::value(t), 0));
            let hint = if warm { " Let it cool first." } else { "" };
            format!("This sum holds from {min} to {max}\u{A0}°C.{hint}")
        }
        ScienceError::RisingGravity => {
            "The gravity now is above the start. Check both readings and their temperatures."
                .to_owned()
        }
        ScienceError::OutOfReach => "It can't be reached with what is at hand.".to_owned(),
        ScienceError::NothingThere => "One of the amounts is zero.".to_owned(),
        ScienceError::OutOfRange(_) => {
            "The answer would be beyond anything real. Check the numbers.".to_owned()
        }
    }
}
