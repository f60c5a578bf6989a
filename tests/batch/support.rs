//! Plain entries for examples: one ale, its readings, its bottling.

pub use crate::records::id;

use crate::records;
use fermentside::advice::family::Family;
use fermentside::batch::{
    BatchHeading, BottlingRecord, Change, Entry, EntryKey, Fizz, HydrometerItem, Journal, Kind,
    OpeningRecord, PitchRecord, Reading, Summary,
};
use fermentside::quantity::{Hours, Litres, Measured, Moment};

/// So many days after the yeast went in.
pub fn day(days: f64) -> Moment {
    let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    start.after(Hours::nearest(days * 24.0))
}

pub fn key(kind: Kind, name: &str) -> EntryKey {
    EntryKey { kind, id: id(name) }
}

pub fn heading() -> BatchHeading {
    BatchHeading {
        name: "Brown ale".to_owned(),
        started: day(-0.1),
        volume: Litres::literal(20.0),
        family: Family::CleanAle,
        packet: None,
        expected_start: None,
        expected_end: None,
        hydrometer: HydrometerItem::usual_id(),
        target: None,
        own_ends: vec![],
    }
}

pub fn reading(days: f64, sg: f64) -> Reading {
    records::reading("b", day(days), sg)
}

pub fn pitching(days: f64) -> PitchRecord {
    PitchRecord::new(id("b"), day(days))
}

pub fn bottling(days: f64) -> BottlingRecord {
    records::bottling("b", day(days))
}

pub fn opening(days: f64) -> OpeningRecord {
    OpeningRecord {
        batch: id("b"),
        at: day(days),
        fizz: Fizz::new(3).expect("one to five"),
        clarity: None,
        taste: String::new(),
        note: String::new(),
        burst: false,
    }
}

pub fn put(journal: &mut Journal, name: &str, entry: Entry) {
    journal.apply(Change::put(id(name), entry)).expect("taken");
}

/// A journal with the one batch, pitched at day zero.
pub fn pitched() -> Journal {
    let mut journal = Journal::default();
    put(&mut journal, "b", Entry::Batch(heading()));
    put(&mut journal, "p", Entry::Pitch(pitching(0.0)));
    journal
}

/// The same with readings, named `r0`, `r1` and on.
pub fn with_readings(readings: impl IntoIterator<Item = Reading>) -> Journal {
    let mut journal = pitched();
    for (at, reading) in readings.into_iter().enumerate() {
        put(&mut journal, &format!("r{at}"), Entry::Reading(reading));
    }
    journal
}

pub fn summary(journal: &Journal) -> Summary {
    Summary::of(journal, &id("b"), day(900.0)).expect("the batch")
}
