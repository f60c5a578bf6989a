//! The brewer's own earlier batches with the same yeast: offered for the expected end, never taken by themselves.

use crate::support::{bottling, day, heading, id, opening, pitching, put, reading, summary};
use fermentside::advice::family::Family;
use fermentside::advice::own_ends::Ended;
use fermentside::advice::standing::{Reason, State};
use fermentside::batch::{
    Added, BatchHeading, BottlingRecord, Entry, Journal, OpeningRecord, PitchRecord, Reading,
    Summary,
};
use fermentside::quantity::{Measured, SpecificGravity};
use std::rc::Rc;

const OURS: &str = "House dry ale";

/// An earlier batch, pitched so many days before the one in hand.
struct Earlier {
    name: &'static str,
    before: f64,
    packet: &'static str,
    heading: BatchHeading,
    start: f64,
    end: f64,
}

impl Earlier {
    fn new(name: &'static str, before: f64, start: f64, end: f64) -> Self {
        Self { name, before, packet: OURS, heading: heading(), start, end }
    }

    /// Its readings, on days of its own.
    fn readings(&self) -> Vec<Reading> {
        let falling = self.end + 0.012;
        let own = [(-0.1, self.start), (3.0, falling), (9.0, self.end), (12.0, self.end)];
        own.map(|(days, sg)| Reading { batch: id(self.name), ..reading(days - self.before, sg) })
            .to_vec()
    }

    fn put(&self, journal: &mut Journal) {
        let started = day(-self.before - 0.1);
        let named = |what: &str| format!("{}{what}", self.name);
        let heading = BatchHeading { started, ..self.heading.clone() };
        put(journal, self.name, Entry::Batch(heading));
        let product = self.packet.to_owned();
        let pitch = PitchRecord { batch: id(self.name), product, ..pitching(-self.before) };
        put(journal, &named("p"), Entry::Pitch(pitch));
        for (at, reading) in self.readings().into_iter().enumerate() {
            put(journal, &named(&format!("r{at}")), Entry::Reading(reading));
        }
        let bottled = BottlingRecord { batch: id(self.name), ..bottling(13.0 - self.before) };
        put(journal, &named("x"), Entry::Bottling(bottled));
    }
}

/// The batch in hand, of 1.050, read level at that gravity.
fn in_hand(level: f64) -> Journal {
    let mut journal = Journal::default();
    put(&mut journal, "b", Entry::Batch(heading()));
    put(&mut journal, "p", Entry::Pitch(PitchRecord { product: OURS.to_owned(), ..pitching(0.0) }));
    for (at, (days, sg)) in
        [(-0.1, 1.050), (3.0, level + 0.012), (8.0, level), (11.0, level)].into_iter().enumerate()
    {
        put(&mut journal, &format!("r{at}"), Entry::Reading(reading(days, sg)));
    }
    journal
}

/// The same after three batches with its yeast.
fn after_three() -> Journal {
    let mut journal = in_hand(1.012);
    Earlier::new("old", 200.0, 1.048, 1.011).put(&mut journal);
    Earlier::new("second", 120.0, 1.050, 1.012).put(&mut journal);
    Earlier::new("new", 60.0, 1.055, 1.013).put(&mut journal);
    journal
}

fn offered(journal: &Journal) -> Vec<Ended> {
    let now = day(100.0);
    let of = |id| Summary::of(journal, &id, now).map(Rc::new);
    let others: Vec<_> =
        journal.bottled_with(Family::CleanAle).into_iter().filter_map(of).collect();
    let of = summary(journal);
    of.own_ends(of.packet(), &others)
}

fn ends(journal: &Journal) -> Vec<f64> {
    offered(journal).iter().map(|one| (one.end.points() * 10.0).round() / 10.0).collect()
}

fn taken(mut journal: Journal, own_ends: Vec<Ended>) -> Summary {
    put(&mut journal, "b", Entry::Batch(BatchHeading { own_ends, ..heading() }));
    summary(&journal)
}

#[test]
fn the_latest_finished_ones_with_the_same_yeast_are_offered() {
    let mut journal = in_hand(1.012);
    Earlier::new("old", 200.0, 1.048, 1.011).put(&mut journal);
    Earlier::new("second", 120.0, 1.050, 1.012).put(&mut journal);
    assert!(ends(&journal).is_empty(), "one of two may have stalled");
    Earlier::new("new", 60.0, 1.055, 1.013).put(&mut journal);
    assert_eq!(ends(&journal), [13.0, 12.0, 11.0], "the latest first");
    let other = Earlier { packet: "Another", ..Earlier::new("other", 90.0, 1.050, 1.010) };
    other.put(&mut journal);
    let lager = BatchHeading { family: Family::Lager, ..heading() };
    Earlier { heading: lager, ..Earlier::new("lager", 80.0, 1.050, 1.010) }.put(&mut journal);
    assert_eq!(ends(&journal), [13.0, 12.0, 11.0], "another yeast says nothing of this one");
}

#[test]
fn what_was_not_judged_finished_tells_nothing() {
    type Spoils = fn(&mut Journal);
    let spoils: [(&str, Spoils); 6] = [
        ("bottled on the brewer's word", |journal| {
            let because = "it tastes done".to_owned();
            let bottled = BottlingRecord { batch: id("new"), ..bottling(13.0 - 60.0) };
            let bottled = BottlingRecord { went_on_because: because, ..bottled };
            put(journal, "newx", Entry::Bottling(bottled));
        }),
        ("a bottle burst", |journal| {
            let burst = OpeningRecord { batch: id("new"), burst: true, ..opening(30.0 - 60.0) };
            put(journal, "newo", Entry::Opening(burst));
        }),
        ("fed later", |journal| {
            let fed =
                Reading { batch: id("new"), added: Some(Added::Sugar), ..reading(-55.0, 1.020) };
            put(journal, "newf", Entry::Reading(fed));
        }),
        ("its start was not read", |journal| {
            put(
                journal,
                "newr0",
                Entry::Reading(Reading {
                    as_read: None,
                    beer: Some(fermentside::quantity::Celsius::literal(20.0)),
                    batch: id("new"),
                    ..reading(-60.1, 1.055)
                }),
            );
            let expected_start = Some(SpecificGravity::literal(1.055));
            let stated = BatchHeading { started: day(-60.1), expected_start, ..heading() };
            put(journal, "new", Entry::Batch(stated));
        }),
        ("not level", |journal| {
            let early = Reading { batch: id("new"), ..reading(11.5 - 60.0, 1.016) };
            put(journal, "newr2", Entry::Reading(early));
        }),
        ("doubtful", |journal| {
            let doubtful =
                Reading { batch: id("new"), doubtful: true, ..reading(12.0 - 60.0, 1.013) };
            put(journal, "newr3", Entry::Reading(doubtful));
        }),
    ];
    for (why, spoil) in spoils {
        let mut journal = after_three();
        assert_eq!(offered(&journal).len(), 3);
        spoil(&mut journal);
        assert_eq!(offered(&journal), [], "{why}");
    }
}

#[test]
fn nothing_is_taken_in_silence_and_what_is_taken_is_said() {
    let alone = summary(&in_hand(1.012)).standing;
    let journal = after_three();
    assert_eq!(summary(&journal).standing, alone);
    let ends = offered(&journal);
    let said =
        |why: &Reason| matches!(why, Reason::OwnEnds(3, end) if (end.points() - 11.8).abs() < 0.2);
    // Of two, as some records hold them, nothing is believed, and nothing said.
    let two = taken(journal.clone(), ends[..2].to_vec()).standing;
    assert_eq!(two, alone);
    let found = taken(journal, ends).standing;
    assert!(found.reasons.iter().any(said), "{:?}", found.reasons);
}

/// The attenuation is carried over and not the gravity: two strong ones that ended at 1.016 say nothing for
/// 1.016 from 1.050.
#[test]
fn own_ends_narrow_what_is_expected_both_ways() {
    let own = |start: f64, end: f64| {
        let sg = SpecificGravity::nearest;
        vec![Ended { start: sg(start), end: sg(end) }; 3]
    };
    let left = |level: f64, ends| taken(in_hand(level), ends).standing;
    // Of a yeast that leaves a third it is no stall.
    let (alone, high) = (left(1.016, vec![]), left(1.016, own(1.050, 1.016)));
    assert!(high.left.upper.points() < alone.left.upper.points() - 0.5, "{high:?} {alone:?}");
    assert!(high.left.stalled.share < alone.left.stalled.share);
    // Of one that always went on to 1.010 it is.
    let low = left(1.016, own(1.050, 1.010));
    assert!(low.left.stalled.share > alone.left.stalled.share, "{low:?}");
    assert_eq!(low.state, State::LooksStuck);
    let strong = left(1.016, own(1.064, 1.016));
    assert!(strong.left.upper.points() > high.left.upper.points() + 0.5);
}

/// Weighed against what that yeast and start allow, as a stated end is.
#[test]
fn absurd_own_ends_unlock_nothing() {
    let sg = SpecificGravity::literal;
    let absurd = vec![Ended { start: sg(1.050), end: sg(1.029) }; 5];
    let found = taken(in_hand(1.029), absurd).standing;
    assert_ne!(found.state, State::Finished, "{found:?}");
}
