//! One log for each batch: what was worked out holds until its own number changes, and many batches are
//! put together in little more than the time it takes to read them.

use crate::support::{bottling, day, heading, id, key, opening, pitched, pitching, put, reading};
use fermentside::batch::{
    BatchHeading, Change, Edit, Entry, HydrometerItem, Id, Journal, Kind, Reading, Rejected,
    Settings,
};
use std::time::{Duration, Instant};

fn revisions(journal: &Journal) -> [Option<u64>; 3] {
    let of = |name| journal.log(&id(name)).map(|log| log.revision());
    [of("b"), of("c"), Some(journal.gear_revision())]
}

/// Which of the two logs and the gear have another number afterwards.
fn changed(journal: &mut Journal, change: Change) -> [bool; 3] {
    let before = revisions(journal);
    journal.apply(change).expect("taken");
    let after = revisions(journal);
    [0, 1, 2].map(|at| before[at] != after[at])
}

#[test]
fn a_log_has_another_number_when_it_or_its_instrument_has_changed_and_then_only() {
    let mut journal = pitched();
    let by_other = BatchHeading { hydrometer: id("h"), ..heading() };
    put(&mut journal, "c", Entry::Batch(by_other));
    let sugar = fermentside::science::priming::OwnSugar {
        fermentable: fermentside::quantity::Share::literal(1.0),
        water: fermentside::quantity::Share::literal(0.0),
    };
    let sugar = fermentside::batch::SugarItem { name: "Honey".to_owned(), sugar };
    let of_c = Reading { batch: id("c"), hydrometer: id("h"), ..reading(3.0, 1.020) };
    let usual = HydrometerItem::usual_id();
    for (change, wanted) in [
        (Change::put(id("r"), Entry::Reading(reading(3.0, 1.020))), [true, false, false]),
        (Change::put(id("x"), Entry::Reading(of_c.clone())), [false, true, false]),
        // A reading moved from one batch to the other.
        (Change::put(id("r"), Entry::Reading(of_c)), [true, true, false]),
        (Change::remove(key(Kind::Reading, "r")), [false, true, false]),
        (Change::put(id("s"), Entry::Sugar(sugar)), [false, false, true]),
        (Change::put(Settings::id(), Entry::Settings(Settings::default())), [false, false, true]),
        (Change::put(usual, Entry::Hydrometer(HydrometerItem::usual())), [true, false, true]),
        (Change::put(id("h"), Entry::Hydrometer(HydrometerItem::usual())), [false, true, true]),
        (Change::put(id("b"), Entry::Batch(heading())), [true, false, false]),
    ] {
        assert_eq!(changed(&mut journal, change.clone()), wanted, "{change:?}");
    }
}

#[test]
fn a_log_that_is_taken_out_and_brought_back_has_another_number() {
    let mut journal = pitched();
    let before = revisions(&journal)[0];
    let change = journal.removal(&id("b"));
    let undo = journal.apply(change).expect("taken");
    assert!(journal.log(&id("b")).is_none());
    journal.apply(undo).expect("taken back");
    assert!(before < revisions(&journal)[0]);
    // A refusal half-way is undone, whatever the numbers are then.
    let whole = journal.clone();
    let astray =
        Edit::Put(id("r"), Entry::Reading(Reading { batch: id("z"), ..reading(1.0, 1.0) }));
    let half = Change::all([Edit::Remove(key(Kind::Pitch, "p")), astray]);
    assert_eq!(journal.apply(half), Err(Rejected::NoSuchBatch));
    assert_eq!(journal, whole);
}

#[test]
fn records_whose_batch_is_not_there_are_kept_as_a_log_without_a_heading() {
    let mut journal = Journal::of([
        (id("r2"), Entry::Reading(reading(5.0, 1.012))),
        (id("r1"), Entry::Reading(reading(3.0, 1.020))),
        (id("p"), Entry::Pitch(pitching(0.0))),
        (id("o"), Entry::Bottling(bottling(14.0))),
        (id("t"), Entry::Opening(opening(30.0))),
    ]);
    let log = journal.log(&id("b")).expect("kept");
    assert_eq!((log.heading(), log.readings().len(), log.openings().len()), (None, 2, 1));
    assert!(log.pitch().is_some() && log.bottling().is_some());
    assert_eq!((journal.batches().count(), journal.in_hand()), (0, None));
    put(&mut journal, "b", Entry::Batch(heading()));
    let taken: Vec<_> = journal.readings(&id("b")).iter().map(|(_, r)| r.at).collect();
    assert_eq!(taken, [day(3.0), day(5.0)]);
}

#[test]
fn of_two_entries_of_one_identity_the_last_holds() {
    let named = |name: &str| Entry::Batch(BatchHeading { name: name.to_owned(), ..heading() });
    let elsewhere = Reading { batch: id("c"), ..reading(3.0, 1.020) };
    let journal = Journal::of([
        (id("b"), named("first")),
        (id("r"), Entry::Reading(reading(2.0, 1.030))),
        (id("b"), named("last")),
        (id("r"), Entry::Reading(elsewhere.clone())),
    ]);
    assert_eq!(journal.batch(&id("b")).map(|heading| heading.name.as_str()), Some("last"));
    assert!(journal.readings(&id("b")).is_empty());
    assert_eq!(journal.entry(&key(Kind::Reading, "r")), Some(Entry::Reading(elsewhere)));
}

/// As many batches of twenty readings, with identities in no order, as they come from a store.
fn entries(batches: u64) -> Vec<(Id, Entry)> {
    let named = |n: u64| Id::random(n.wrapping_mul(0x9E37_79B9_7F4A_7C15).to_be_bytes());
    let mut all = vec![];
    for batch in 0..batches {
        let of = named(batch);
        all.push((of.clone(), Entry::Batch(heading())));
        for n in 0..20 {
            let record = Reading { batch: of.clone(), ..reading(n as f64, 1.020) };
            all.push((named(1_000_000 + batch * 20 + n), Entry::Reading(record)));
        }
    }
    all
}

#[test]
fn a_thousand_batches_are_put_together_in_a_few_times_the_time_of_one_sort() {
    let all = entries(1000);
    let (mut built, mut sorted) = (Duration::MAX, Duration::MAX);
    for _ in 0..3 {
        let (given, mut ordered) = (all.clone(), all.clone());
        let start = Instant::now();
        let journal = Journal::of(given);
        built = built.min(start.elapsed());
        assert_eq!(journal.batches().count(), 1000);
        assert!(journal.batches().all(|(id, _)| journal.readings(id).len() == 20));
        let start = Instant::now();
        ordered.sort_by(|a, b| a.0.cmp(&b.0));
        sorted = sorted.min(start.elapsed());
    }
    println!("built in {built:?}, sorted in {sorted:?}, not optimised");
    assert!(built < 20 * sorted, "built in {built:?}, sorted in {sorted:?}");
}
