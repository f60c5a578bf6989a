//! Every change that is made can be taken back to the same journal, and one that is refused changes
//! nothing.

use crate::any::{entry, identity_for};
use crate::support::{bottling, heading, id, key, opening, pitching, put, reading, with_readings};
use fermentside::batch::{
    Change, Edit, Entry, EntryKey, HydrometerItem, Journal, Kind, PitchRecord, Rejected,
};
use proptest::prelude::*;

/// A put or a removal of any kind, about few enough things that they meet.
fn edit() -> impl Strategy<Value = Edit> {
    (entry(), 0..3_usize, 0..3_u8).prop_map(|(entry, which, wish)| {
        let id = identity_for(&entry, which);
        match wish {
            0 => Edit::Remove(EntryKey { kind: entry.kind(), id }),
            _ => Edit::Put(id, entry),
        }
    })
}

/// A few of them together, as a rule one.
fn change() -> impl Strategy<Value = Change> {
    prop_oneof![
        3 => edit().prop_map(|edit| Change::all([edit])),
        1 => prop::collection::vec(edit(), 0..5).prop_map(Change::all),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 1000, failure_persistence: None, ..ProptestConfig::default()
    })]

    #[test]
    fn every_change_can_be_taken_back(
        stored in prop::collection::vec(edit(), 0..6),
        changes in prop::collection::vec(change(), 0..40),
    ) {
        // What a store held may break rules that a form keeps: a log without its batch, say.
        let stored = stored.into_iter().filter_map(|edit| match edit {
            Edit::Put(id, entry) => Some((id, entry)),
            Edit::Remove(_) => None,
        });
        let start = Journal::of(stored);
        let mut journal = start.clone();
        let mut undos = Vec::new();
        for change in changes {
            let before = journal.clone();
            match journal.apply(change.clone()) {
                Ok(undo) => {
                    let keys = |change: &Change| change.edits().iter().map(Edit::key).collect::<Vec<_>>();
                    let undone: Vec<_> = keys(&undo).into_iter().rev().collect();
                    prop_assert_eq!(undone, keys(&change));
                    let after = journal.clone();
                    let mut back = journal.clone();
                    let redo = back.take_as_it_is(undo.clone());
                    prop_assert_eq!(&back, &before);
                    back.take_as_it_is(redo);
                    prop_assert_eq!(&back, &after);
                    undos.push(undo);
                }
                Err(_) => prop_assert_eq!(&journal, &before),
            }
        }
        for undo in undos.into_iter().rev() {
            journal.take_as_it_is(undo);
        }
        prop_assert_eq!(journal, start);
    }
}

#[test]
fn the_first_change_of_the_usual_instrument_can_be_taken_back() {
    let mut journal = Journal::default();
    put(&mut journal, "b", Entry::Batch(heading()));
    let before = journal.clone();
    let named = HydrometerItem { name: "The long one".to_owned(), ..HydrometerItem::usual() };
    let change = Change::put(HydrometerItem::usual_id(), Entry::Hydrometer(named));
    let undo = journal.apply(change).expect("taken");
    // As a wish of its own it would be refused: the batch uses the instrument.
    assert_eq!(journal.clone().apply(undo.clone()), Err(Rejected::InUse));
    journal.take_as_it_is(undo);
    assert_eq!(journal, before);
}

#[test]
fn a_log_without_its_batch_can_be_taken_out_and_put_back() {
    let lone = [(id("r"), Entry::Reading(reading(3.0, 1.020)))];
    let mut journal = Journal::of(lone);
    let before = journal.clone();
    let undo = journal.apply(Change::remove(key(Kind::Reading, "r"))).expect("taken");
    journal.take_as_it_is(undo);
    assert_eq!(journal, before);
}

#[test]
fn taking_out_what_is_not_there_as_it_is_does_nothing() {
    let mut journal = Journal::default();
    let gone = Change::remove(key(Kind::Pitch, "p"));
    assert_eq!(journal.take_as_it_is(gone.clone()), gone);
    assert_eq!(journal, Journal::default());
    // And a pitching is taken whose batch comes later.
    journal.take_as_it_is(Change::put(id("p"), Entry::Pitch(pitching(0.0))));
    put(&mut journal, "b", Entry::Batch(heading()));
    assert!(journal.pitch(&id("b")).is_some());
}

#[test]
fn a_reading_and_its_pitching_are_noted_and_taken_back_as_one() {
    let mut journal = Journal::default();
    put(&mut journal, "b", Entry::Batch(heading()));
    let before = journal.clone();
    let start = Edit::Put(id("r"), Entry::Reading(reading(0.0, 1.048)));
    let pitch = Edit::Put(id("p"), Entry::Pitch(pitching(0.0)));
    let undo = journal.apply(Change::all([start.clone(), pitch.clone()])).expect("taken");
    assert_eq!((journal.readings(&id("b")).len(), journal.pitch(&id("b")).is_some()), (1, true));
    journal.take_as_it_is(undo);
    assert_eq!(journal, before);
    // Where the last of them is refused, the first is not there either.
    let astray = PitchRecord::new(id("other"), crate::support::day(0.0));
    let astray = Edit::Put(id("p"), Entry::Pitch(astray));
    let refused = journal.apply(Change::all([start, pitch, astray]));
    assert_eq!(refused, Err(Rejected::NoSuchBatch));
    assert_eq!(journal, before);
}

#[test]
fn a_batch_and_its_first_reading_may_come_together() {
    let mut journal = Journal::default();
    let batch = Edit::Put(id("b"), Entry::Batch(heading()));
    let first = Edit::Put(id("r"), Entry::Reading(reading(0.0, 1.048)));
    let backwards = Change::all([first.clone(), batch.clone()]);
    assert_eq!(journal.apply(backwards), Err(Rejected::NoSuchBatch));
    let undo = journal.apply(Change::all([batch, first])).expect("taken");
    // Taking it back needs no leave: the reading goes before its batch.
    journal.apply(undo).expect("taken back");
    assert_eq!(journal, Journal::default());
}

#[test]
fn a_deleted_batch_takes_its_records_with_it_and_brings_all_back() {
    let mut journal = with_readings([reading(-0.1, 1.048), reading(3.0, 1.020)]);
    put(&mut journal, "o", Entry::Bottling(bottling(14.0)));
    put(&mut journal, "t", Entry::Opening(opening(30.0)));
    let other = PitchRecord::new(id("other"), crate::support::day(0.0));
    put(&mut journal, "other", Entry::Batch(heading()));
    put(&mut journal, "other-p", Entry::Pitch(other));
    let whole = journal.clone();
    let change = journal.removal(&id("b"));
    assert_eq!(change.edits().len(), 6);
    let undo = journal.apply(change).expect("taken");
    for (kind, name) in [(Kind::Batch, "b"), (Kind::Pitch, "p"), (Kind::Reading, "r1")] {
        assert_eq!(journal.entry(&key(kind, name)), None, "{name}");
    }
    assert!(journal.readings(&id("b")).is_empty() && journal.openings(&id("b")).is_empty());
    assert!(journal.pitch(&id("other")).is_some() && journal.batch(&id("other")).is_some());
    assert_eq!(journal.apply(undo).map(|redo| redo.edits().len()), Ok(6));
    assert_eq!(journal, whole);

    let none = journal.removal(&id("never"));
    assert_eq!(journal.apply(none), Err(Rejected::NothingThere));
    // Records whose batch is gone can be taken out as well.
    journal.apply(Change::remove(key(Kind::Batch, "b"))).expect("taken");
    let rest = journal.removal(&id("b"));
    journal.apply(rest).expect("taken");
    assert_eq!(journal.entry(&key(Kind::Reading, "r0")), None);
}
