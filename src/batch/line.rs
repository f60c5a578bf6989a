//! One reading beside what was made of it, and the readings as the judgement wants them.

use super::id::Id;
use super::journal::Journal;
use super::record::{Reading, Vessel};
use crate::advice::reading;
use crate::quantity::{Estimate, Moment, Plato, SpecificGravity};
use crate::science::hydrometer_sample::Corrected;
use crate::science::{ScienceError, refractometer};

/// One reading, as read and as corrected.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadingLine {
    /// Its identity.
    pub id: Id,
    /// As entered.
    pub reading: Reading,
    /// Corrected, when there is a gravity and a temperature that allows it. A refractometer gives one
    /// only before the yeast.
    pub corrected: Option<Result<Corrected, ScienceError>>,
    /// The hydrometer it was read with is no longer there: it is corrected as by the usual one.
    pub instrument_gone: bool,
}

impl ReadingLine {
    /// The corrected gravity, if there is one.
    #[must_use]
    pub fn gravity(&self) -> Option<Estimate<SpecificGravity>> {
        self.corrected.as_ref().and_then(|c| c.as_ref().ok()).map(|c| c.gravity)
    }

    /// A reading made true: as wort when `original` is none, for nothing has fermented yet or the start
    /// is not known, else as beer. `yeast_in` says until when a refractometer tells a gravity.
    pub(super) fn of(
        journal: &Journal,
        (id, reading): (&Id, &Reading),
        original: Option<SpecificGravity>,
        yeast_in: Moment,
    ) -> Self {
        Self {
            id: id.clone(),
            reading: reading.clone(),
            corrected: corrected(journal, reading, original, yeast_in),
            instrument_gone: reading.as_read.is_some() && journal.is_gone(&reading.hydrometer),
        }
    }
}

pub(super) fn corrected(
    journal: &Journal,
    reading: &Reading,
    original: Option<SpecificGravity>,
    yeast_in: Moment,
) -> Option<Result<Corrected, ScienceError>> {
    let Some(as_read) = reading.as_read else { return by_refractometer(reading, yeast_in) };
    let instrument = journal.hydrometer(&reading.hydrometer);
    let taken = reading::Taken {
        reading: as_read,
        sample: reading.sample,
        condition: reading.condition,
        original,
    };
    Some(reading::corrected(taken, &instrument))
}

/// Wort before the yeast; afterwards alcohol lifts what it shows, and there is no gravity to tell.
fn by_refractometer(
    reading: &Reading,
    yeast_in: Moment,
) -> Option<Result<Corrected, ScienceError>> {
    let shown = reading.refractometer.as_ref()?;
    let unfermented = reading.vessel == Vessel::Main && reading.at <= yeast_in;
    unfermented.then(|| {
        refractometer::wort(shown.brix, shown.factor).map(|(gravity, worked)| Corrected {
            gravity,
            at_reference: gravity.value(),
            cool_first: false,
            worked,
        })
    })
}

/// What the refractometer showed of the fermenting beer, and when.
pub(super) fn refracted(lines: &[ReadingLine], yeast_in: Moment) -> Vec<(Moment, Plato)> {
    let late = lines
        .iter()
        .filter(|line| line.reading.vessel == Vessel::Main && line.reading.at > yeast_in);
    let one =
        |line: &ReadingLine| Some((line.reading.at, line.reading.refractometer.as_ref()?.brix));
    late.filter_map(one).collect()
}

/// When something that ferments was last added after the yeast.
pub(super) fn added(lines: &[ReadingLine], yeast_in: Moment) -> Option<Moment> {
    let fed = lines.iter().filter(|line| line.reading.added.is_some());
    fed.map(|line| line.reading.at).filter(|at| *at > yeast_in).max()
}
