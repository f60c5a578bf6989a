//! How much was brewed in each calendar year. A tally and no judgement: what is allowed is for the law
//! where the brewer lives.

use super::journal::Journal;
use crate::quantity::{Litres, Measured};

/// One calendar year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Year {
    /// The year, by the clock where each batch was begun.
    pub year: i32,
    /// Batches begun.
    pub batches: u32,
    /// Their volume in the fermenter: as noted at pitching, else as planned.
    pub volume: Litres,
}

/// Every year with a batch, the latest first.
#[must_use]
pub fn tally(journal: &Journal) -> Vec<Year> {
    let mut years: Vec<Year> = vec![];
    for (id, heading) in journal.batches() {
        let noted = journal.pitch(id).and_then(|(_, pitch)| pitch.volume);
        let litres = noted.unwrap_or(heading.volume).value();
        let year = heading.started.parts().0;
        let at = years.partition_point(|known| known.year > year);
        if years.get(at).is_none_or(|known| known.year != year) {
            years.insert(at, Year { year, batches: 0, volume: Litres::literal(0.0) });
        }
        if let Some(of_year) = years.get_mut(at) {
            of_year.batches += 1;
            of_year.volume = Litres::nearest(of_year.volume.value() + litres);
        }
    }
    years
}
