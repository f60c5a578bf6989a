//! Plain entries for examples: one ale, its readings, its bottling.

use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::family::Family;
use fermentside::batch::{
    BatchHeading, BottlingRecord, Change, Entry, EntryKey, Fizz, HydrometerItem, Id, Journal, Kind,
    OpeningRecord, PitchRecord, Reading, Summary, Vessel,
};
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, Gravity, Hours, Litres, Measured, Moment,
    SpecificGravity,
};
use fermentside::science::hydrometer_sample::Condition;
use fermentside::science::priming::Sugar;

pub fn id(text: &str) -> Id {
    Id::new(text).expect("an identity")
}

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
    Reading {
        batch: id("b"),
        at: day(days),
        vessel: Vessel::Main,
        as_read: Some(Gravity::Specific(SpecificGravity::literal(sg))),
        typed: format!("{sg:.3}"),
        sample: Some(Celsius::literal(20.0)),
        condition: Condition::Still,
        hydrometer: HydrometerItem::usual_id(),
        refractometer: None,
        added: None,
        beer: None,
        room: None,
        note: String::new(),
        doubtful: false,
    }
}

pub fn pitching(days: f64) -> PitchRecord {
    PitchRecord::new(id("b"), day(days))
}

pub fn bottling(days: f64) -> BottlingRecord {
    BottlingRecord {
        batch: id("b"),
        at: day(days),
        beer: Estimate::new(Litres::literal(19.0), 0.3),
        sugar: Sugar::Sucrose,
        weighed: Grams::literal(114.0),
        target: CarbonDioxideVolumes::literal(2.4),
        warmest: Celsius::literal(20.0),
        weakest: Bottle::ReusableGlass,
        hottest: Celsius::literal(28.0),
        place: Some(Celsius::literal(20.0)),
        moved: None,
        worst: CarbonDioxideVolumes::literal(3.1),
        went_on_because: String::new(),
        note: String::new(),
        grounds: None,
        made_safe: None,
    }
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
