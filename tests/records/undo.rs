//! Every change that is made can be taken back to the same journal, and one that is refused changes
//! nothing.

use crate::any::{entry, identity_for};
use crate::support::{heading, id, key, pitching, put, reading};
use fermentside::batch::{Change, Entry, EntryKey, HydrometerItem, Journal, Kind, Rejected};
use proptest::prelude::*;

/// A put or a removal of any kind, about few enough things that they meet.
fn change() -> impl Strategy<Value = Change> {
    (entry(), 0..3_usize, 0..3_u8).prop_map(|(entry, which, wish)| {
        let id = identity_for(&entry, which);
        match wish {
            0 => Change::Remove(EntryKey { kind: entry.kind(), id }),
            _ => Change::Put(id, entry),
        }
    })
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 1000, failure_persistence: None, ..ProptestConfig::default()
    })]

    #[test]
    fn every_change_can_be_taken_back(
        stored in prop::collection::vec(change(), 0..6),
        changes in prop::collection::vec(change(), 0..40),
    ) {
        // What a store held may break rules that a form keeps: a log without its batch, say.
        let stored = stored.into_iter().filter_map(|change| match change {
            Change::Put(id, entry) => Some((id, entry)),
            Change::Remove(_) => None,
        });
        let start = Journal::of(stored);
        let mut journal = start.clone();
        let mut undos = Vec::new();
        for change in changes {
            let before = journal.clone();
            match journal.apply(change.clone()) {
                Ok(undo) => {
                    prop_assert_eq!(undo.key(), change.key());
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
    let change = Change::Put(HydrometerItem::usual_id(), Entry::Hydrometer(named));
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
    let undo = journal.apply(Change::Remove(key(Kind::Reading, "r"))).expect("taken");
    journal.take_as_it_is(undo);
    assert_eq!(journal, before);
}

#[test]
fn taking_out_what_is_not_there_as_it_is_does_nothing() {
    let mut journal = Journal::default();
    let gone = Change::Remove(key(Kind::Pitch, "p"));
    assert_eq!(journal.take_as_it_is(gone.clone()), gone);
    assert_eq!(journal, Journal::default());
    // And a pitching is taken whose batch comes later.
    journal.take_as_it_is(Change::Put(id("p"), Entry::Pitch(pitching(0.0))));
    put(&mut journal, "b", Entry::Batch(heading()));
    assert!(journal.pitch(&id("b")).is_some());
}
