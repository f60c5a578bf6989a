//! How much was brewed in each calendar year. A tally and no judgement: what is allowed is for the law
//! where the brewer lives.

use super::journal::Journal;
use crate::quantity::{Litres, Measured};
use std::collections::BTreeMap;

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
    let mut years: BTreeMap<i32, (u32, f64)> = BTreeMap::new();
    for (id, heading) in journal.batches() {
        let noted = journal.pitch(id).and_then(|(_, pitch)| pitch.volume);
        let (batches, litres) = years.entry(heading.started.parts().0).or_default();
        *batches += 1;
        *litres += noted.unwrap_or(heading.volume).value();
    }
    let year = |(year, (batches, litres))| Year { year, batches, volume: Litres::nearest(litres) };
    years.into_iter().rev().map(year).collect()
}
