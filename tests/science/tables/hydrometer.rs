//! Corrections of a hydrometer for temperature.

use super::table::{Found, Row};
use fermentside::quantity::{Celsius, Gravity, Measured, Plato, SpecificGravity};
use fermentside::science::hydrometer::Hydrometer;
use fermentside::science::hydrometer_sample::{Condition, Corrected, Sample, correct_wort};
use fermentside::science::sucrose;

fn corrected(reading: Gravity, t: f64, reference: f64) -> Corrected {
    let temperature = Celsius::literal(t);
    let by = Hydrometer { reference: Celsius::literal(reference), ..Hydrometer::USUAL };
    correct_wort(Sample { reading, temperature, condition: Condition::Still }, &by)
        .expect("in range")
}

/// What to add to a reading in specific gravity, on the instrument's own scale. A row for a span of
/// readings must hold at both its ends and in its middle.
pub fn gravity(row: &Row) -> Vec<Found> {
    let readings: Vec<f64> = match row.text("reading_sg").split_once('-') {
        Some((from, to)) => {
            let (from, to): (f64, f64) = (from.parse().expect("SG"), to.parse().expect("SG"));
            vec![from, 0.5 * (from + to), to]
        }
        None => vec![row.number("reading_sg")],
    };
    let (t, reference) = (row.number("t_C"), row.number("ref_C"));
    let correction = |reading: f64| {
        let read = Gravity::Specific(SpecificGravity::literal(reading));
        corrected(read, t, reference).at_reference.value() - reading
    };
    let known = row.number("correction_sg");
    readings.into_iter().map(|r| Found::within_own(row, correction(r), known)).collect()
}

/// What to add to a reading in degrees, with the instrument made for `reference`.
fn in_degrees(reading: f64, t: f64, reference: f64) -> f64 {
    let found = corrected(Gravity::Plato(Plato::literal(reading)), t, reference);
    sucrose::plato(found.gravity.value()).value() - reading
}

/// NBS C440, instrument made for 20 °C (from memory).
pub fn brix(row: &Row) -> Vec<Found> {
    let found = in_degrees(row.number("reading_brix"), row.number("t_C"), 20.0);
    vec![Found::within_own(row, found, row.number("correction_brix"))]
}

/// An old brewing book, instrument made for 17.5 °C. It gives one correction for every strength; 12 %
/// is the wort of its day.
pub fn old_saccharometer(row: &Row) -> Vec<Found> {
    let found = in_degrees(12.0, row.number("t_C"), 17.5);
    vec![Found::within_own(row, found, row.number("correction_pct"))]
}
