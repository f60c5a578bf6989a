//! One reading made true, in one place: as wort or as beer, and with the doubt of what was not noted.

use crate::quantity::{Celsius, Gravity, GravityChange, Measured, SpecificGravity};
use crate::science::hydrometer::Hydrometer;
use crate::science::hydrometer_sample::{Condition, Corrected, Sample, correct_beer, correct_wort};
use crate::science::{ScienceError, Term, sucrose};

/// What is not known of a sample whose temperature was not noted, as one standard deviation: it may have
/// been 5 °C to either side of the instrument's own (common practice, no source).
pub const NO_TEMPERATURE: GravityChange = GravityChange::literal(0.001);

/// A reading as it was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taken {
    /// As the eye read it.
    pub reading: Gravity,
    /// Of the sample; `None` when it was not noted, which is taken as the instrument's own.
    pub sample: Option<Celsius>,
    /// How the sample stood.
    pub condition: Condition,
    /// Gravity before it fermented; `None` for wort, and for beer whose start is not known.
    pub original: Option<SpecificGravity>,
}

/// The reading made true. Where the sample's temperature was not noted, [`NO_TEMPERATURE`] is added to
/// its doubt.
///
/// ```
/// use fermentside::advice::reading::{Taken, corrected};
/// use fermentside::quantity::{Celsius, Gravity, SpecificGravity};
/// use fermentside::science::hydrometer::Hydrometer;
/// use fermentside::science::hydrometer_sample::Condition;
///
/// let taken = Taken {
///     reading: Gravity::Specific(SpecificGravity::literal(1.010)),
///     sample: Some(Celsius::literal(20.0)),
///     condition: Condition::Still,
///     original: Some(SpecificGravity::literal(1.048)),
/// };
/// let doubt = |taken| corrected(taken, &Hydrometer::USUAL).map(|found| found.gravity.sigma());
/// assert!(doubt(Taken { sample: None, ..taken })? > doubt(taken)?);
/// assert!(doubt(Taken { sample: Some(Celsius::literal(70.0)), ..taken }).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] for a sample or an instrument outside 0 to 60 °C;
/// [`ScienceError::OutOfRange`] for a result no hydrometer can mean.
pub fn corrected(taken: Taken, by: &Hydrometer) -> Result<Corrected, ScienceError> {
    let sample = Sample {
        reading: taken.reading,
        temperature: taken.sample.unwrap_or(by.reference),
        condition: taken.condition,
    };
    let mut found = match taken.original {
        Some(original) => correct_beer(sample, by, sucrose::plato(original))?,
        None => correct_wort(sample, by)?,
    };
    if taken.sample.is_none() {
        found.worked = found.worked.doubt(Term::SampleTemperature, NO_TEMPERATURE.value());
        found.gravity = found.gravity.widened(NO_TEMPERATURE.value());
    }
    Ok(found)
}
