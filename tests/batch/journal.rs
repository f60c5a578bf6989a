//! What the journal takes and what it refuses.

use crate::support::{
    bottling, day, heading, id, key, opening, pitched, pitching, put, reading, with_readings,
};
use fermentside::batch::{
    BatchHeading, Change, Entry, HydrometerItem, Journal, Kind, Reading, Rejected, Summary,
};
use fermentside::quantity::{Celsius, GravityChange, Measured};
use fermentside::science::hydrometer::Hydrometer;

/// Applies to a copy; a refusal leaves it as it was.
fn refusal(journal: &Journal, change: Change) -> Option<Rejected> {
    let mut changed = journal.clone();
    let refused = changed.apply(change).err();
    assert!(refused.is_none() || changed == *journal, "a refusal changes nothing");
    refused
}

fn putting(name: &str, entry: Entry) -> Change {
    Change::put(id(name), entry)
}

#[test]
fn refuses_what_belongs_to_no_batch() {
    let empty = Journal::default();
    for entry in [
        Entry::Pitch(pitching(0.0)),
        Entry::Reading(reading(3.0, 1.020)),
        Entry::Bottling(bottling(14.0)),
        Entry::Opening(opening(30.0)),
    ] {
        assert_eq!(refusal(&empty, putting("x", entry)), Some(Rejected::NoSuchBatch));
    }
}

#[test]
fn refuses_what_says_nothing_or_cannot_be() {
    let journal = pitched();
    let nameless = BatchHeading { name: " \t".to_owned(), ..heading() };
    assert_eq!(refusal(&journal, putting("b", Entry::Batch(nameless))), Some(Rejected::NoName));
    let nameless = HydrometerItem { name: String::new(), ..HydrometerItem::usual() };
    let nameless = putting("h", Entry::Hydrometer(nameless));
    assert_eq!(refusal(&journal, nameless), Some(Rejected::NoName));

    let empty = Reading { as_read: None, ..reading(3.0, 1.020) };
    let put_reading = |reading: Reading| refusal(&journal, putting("r", Entry::Reading(reading)));
    assert_eq!(put_reading(empty.clone()), Some(Rejected::EmptyReading));
    let warm = Some(Celsius::literal(19.0));
    assert_eq!(put_reading(Reading { beer: warm, ..empty.clone() }), None);
    assert_eq!(put_reading(Reading { room: warm, ..empty.clone() }), None);
    assert_eq!(put_reading(Reading { note: "foam".to_owned(), ..empty }), None);

    let early = putting("o", Entry::Bottling(bottling(-3.0)));
    assert_eq!(refusal(&journal, early), Some(Rejected::BeforeStart));
    let gone = Change::remove(key(Kind::Reading, "r"));
    assert_eq!(refusal(&journal, gone), Some(Rejected::NothingThere));
}

#[test]
fn a_batch_taken_out_hides_its_log_and_brings_it_back() {
    let mut journal = with_readings([reading(-0.1, 1.048), reading(3.0, 1.020)]);
    put(&mut journal, "o", Entry::Bottling(bottling(14.0)));
    put(&mut journal, "t", Entry::Opening(opening(30.0)));
    let before = Summary::of(&journal, &id("b"), day(900.0));
    let whole = journal.clone();
    let undo = journal.apply(Change::remove(key(Kind::Batch, "b"))).expect("taken");
    assert_eq!(Summary::of(&journal, &id("b"), day(900.0)), None);
    assert_eq!(journal.batches().count(), 0);
    journal.apply(undo).expect("taken back");
    assert_eq!(journal, whole);
    assert_eq!(Summary::of(&journal, &id("b"), day(900.0)), before);
    assert_eq!(before.map(|s| (s.lines.len(), s.openings.len())), Some((2, 1)));
}

#[test]
fn an_instrument_in_use_stays() {
    let mut journal = pitched();
    let other = Hydrometer { offset: GravityChange::literal(0.004), ..Hydrometer::USUAL };
    let other = HydrometerItem { name: "Other".to_owned(), instrument: other };
    put(&mut journal, "h", Entry::Hydrometer(other));
    let remove = || Change::remove(key(Kind::Hydrometer, "h"));
    assert_eq!(refusal(&journal, remove()), None);
    // By a batch.
    put(&mut journal, "b", Entry::Batch(BatchHeading { hydrometer: id("h"), ..heading() }));
    assert_eq!(refusal(&journal, remove()), Some(Rejected::InUse));
    // By a reading alone, after the batch went on with another: its correction stands on it.
    let by_other = Reading { hydrometer: id("h"), ..reading(3.0, 1.020) };
    put(&mut journal, "r", Entry::Reading(by_other));
    put(&mut journal, "b", Entry::Batch(heading()));
    assert_eq!(refusal(&journal, remove()), Some(Rejected::InUse));
    // Even while that batch is hidden, for it may come back.
    let mut hidden = journal.clone();
    hidden.apply(Change::remove(key(Kind::Batch, "b"))).expect("taken");
    assert_eq!(refusal(&hidden, remove()), Some(Rejected::InUse));
    journal.apply(Change::remove(key(Kind::Reading, "r"))).expect("taken");
    assert_eq!(refusal(&journal, remove()), None);
}

#[test]
fn readings_come_in_the_order_they_were_taken_and_openings_the_latest_first() {
    let days = [5.0, -0.1, 9.0, 3.0];
    let mut journal = with_readings(days.map(|days| reading(days, 1.010)));
    let taken: Vec<_> = journal.readings(&id("b")).iter().map(|(_, r)| r.at).collect();
    assert!(taken.is_sorted(), "{taken:?}");
    put(&mut journal, "t1", Entry::Opening(opening(30.0)));
    put(&mut journal, "t2", Entry::Opening(opening(37.0)));
    let opened: Vec<_> = journal.openings(&id("b")).iter().map(|(_, r)| r.at).collect();
    assert!(opened.is_sorted_by(|a, b| a >= b), "{opened:?}");
}

#[test]
fn of_several_the_first_pitching_and_the_latest_bottling_hold() {
    // Whatever their identities, which are drawn by chance.
    for names in [["1", "2"], ["2", "1"]] {
        let mut journal = Journal::default();
        put(&mut journal, "b", Entry::Batch(heading()));
        put(&mut journal, names[0], Entry::Pitch(pitching(0.0)));
        put(&mut journal, names[1], Entry::Pitch(pitching(4.0)));
        put(&mut journal, names[0], Entry::Bottling(bottling(14.0)));
        put(&mut journal, names[1], Entry::Bottling(bottling(15.0)));
        let pitch = journal.pitch(&id("b")).map(|(_, record)| record.at);
        assert_eq!(pitch, Some(crate::support::day(0.0)));
        let bottled = journal.bottling(&id("b")).map(|(_, record)| record.at);
        assert_eq!(bottled, Some(crate::support::day(15.0)));
    }
}

#[test]
fn the_usual_instrument_is_always_there() {
    let mut journal = Journal::default();
    assert_eq!(journal.hydrometers(), [(HydrometerItem::usual_id(), HydrometerItem::usual())]);
    let item = HydrometerItem { name: "Other".to_owned(), ..HydrometerItem::usual() };
    put(&mut journal, "h", Entry::Hydrometer(item));
    assert_eq!(journal.hydrometers().len(), 2);
    assert_eq!(journal.hydrometer(&id("never-seen")), Hydrometer::USUAL);
    assert_eq!(journal.settings().height.value(), 0.0);
}
