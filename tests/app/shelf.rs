//! A browser's storage that holds a batch already, noted on a phone of an hour ahead of UTC.

pub use crate::records::id;

use crate::paper::{Paper, Shelf, brewing_day};
use crate::records;
use fermentside::advice::family::Family;
use fermentside::app::{Event, Keeper};
use fermentside::batch::{
    BatchHeading, BottlingRecord, Change, Entry, HydrometerItem, Id, PitchRecord, Reading,
};
use fermentside::quantity::{Celsius, Hours, Litres, Measured, Moment, Zone};
use fermentside::store::Token;

/// So many days before brewing day on paper.
pub fn ago(days: f64) -> Moment {
    brewing_day().after(Hours::nearest(-24.0 * days))
}

/// A bitter in 20 litres, pitched so many days ago.
pub fn batch(days: f64) -> Vec<(Id, Entry)> {
    let heading = BatchHeading {
        name: "Cellar bitter".to_owned(),
        started: ago(days + 0.1),
        volume: Litres::literal(20.0),
        family: Family::CleanAle,
        packet: None,
        expected_start: None,
        expected_end: None,
        hydrometer: HydrometerItem::usual_id(),
        target: None,
        own_ends: vec![],
    };
    let pitch = PitchRecord::new(id("b"), ago(days));
    vec![(id("b"), Entry::Batch(heading)), (id("p"), Entry::Pitch(pitch))]
}

/// A still sample of the batch at 20 °C.
pub fn reading(days_ago: f64, sg: f64) -> Reading {
    records::reading("b", ago(days_ago), sg)
}

/// It was bottled so many days ago.
pub fn bottling(days_ago: f64) -> (Id, Entry) {
    let cool = Some(Celsius::literal(12.0));
    let record = BottlingRecord { place: cool, ..records::bottling("b", ago(days_ago)) };
    (id("o"), Entry::Bottling(record))
}

/// The batch, its readings named `r0`, `r1` and on, and what else there is.
pub fn with(
    pitched: f64,
    readings: impl IntoIterator<Item = Reading>,
    more: Vec<(Id, Entry)>,
) -> Paper {
    in_zone(pitched, readings, more, Zone::fixed(60))
}

/// The same on a phone in that zone.
pub fn in_zone(
    pitched: f64,
    readings: impl IntoIterator<Item = Reading>,
    more: Vec<(Id, Entry)>,
    zone: Zone,
) -> Paper {
    let shelf = Shelf::default();
    let mut keeper = Keeper::new(shelf.clone());
    keeper.load().expect("an empty shelf is read");
    let readings = readings.into_iter().enumerate();
    let readings = readings.map(|(at, one)| (id(&format!("r{at}")), Entry::Reading(one)));
    for (at, (id, entry)) in batch(pitched).into_iter().chain(readings).chain(more).enumerate() {
        let change = Change::put(id, entry);
        let mut token = || Token::from_random((at as u64).to_be_bytes());
        let kept = keeper.save(1, (&change, &change), brewing_day(), &mut token);
        assert_eq!(kept, Event::Saved(1));
    }
    let mut phone = Paper::with(shelf, brewing_day(), zone, 1);
    phone.go("#/batch/b/watch");
    phone
}
