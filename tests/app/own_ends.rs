//! Own earlier batches are offered for the expected end, taken in one touch, said, and left out in one.

use crate::paper::Paper;
use crate::shelf::{ago, batch, bottling, id, reading, with};
use fermentside::batch::{BatchHeading, BottlingRecord, Entry, Id, PitchRecord, Reading};

/// An earlier batch with yeast of that packet and its log, bottled so many days ago.
fn earlier(packet: &str, name: &str, days_ago: f64, start: f64, end: f64) -> Vec<(Id, Entry)> {
    let named = |what: &str| id(&format!("{name}{what}"));
    let mut all = vec![];
    for (_, entry) in batch(days_ago + 13.0).into_iter().chain([bottling(days_ago)]) {
        all.push(match entry {
            Entry::Batch(heading) => {
                (id(name), Entry::Batch(BatchHeading { name: name.to_owned(), ..heading }))
            }
            Entry::Pitch(pitch) => {
                let product = packet.to_owned();
                (named("p"), Entry::Pitch(PitchRecord { batch: id(name), product, ..pitch }))
            }
            Entry::Bottling(one) => {
                (named("x"), Entry::Bottling(BottlingRecord { batch: id(name), ..one }))
            }
            other => (named("y"), other),
        });
    }
    let read = [(13.05, start), (10.0, end + 0.01), (4.0, end), (1.0, end)];
    for (at, (days, sg)) in read.into_iter().enumerate() {
        let one = Reading { batch: id(name), ..reading(days_ago + days, sg) };
        all.push((named(&format!("r{at}")), Entry::Reading(one)));
    }
    all
}

/// Three of them with yeast of that packet.
fn three(packet: &str) -> Vec<(Id, Entry)> {
    let each = [
        ("porter", 120.0, 1.048, 1.011),
        ("mild", 80.0, 1.050, 1.012),
        ("stout", 50.0, 1.055, 1.013),
    ];
    each.into_iter()
        .flat_map(|(name, days_ago, start, end)| earlier(packet, name, days_ago, start, end))
        .collect()
}

fn brewer() -> Paper {
    let read = [reading(8.05, 1.050), reading(5.0, 1.022), reading(1.0, 1.013)];
    with(8.0, read, three(""))
}

fn taken(phone: &Paper) -> usize {
    phone.model.journal.batch(&id("b")).expect("the batch").own_ends.len()
}

const OFFER: &str = "Your last 3 batches with this yeast ended at 1.013 from 1.055, 1.012 from 1.050 and \
    1.011 from 1.048. From this start that makes 1.012";
const REASON: &str = "The expected end is also by your last 3 batches with this yeast: about 1.012";

#[test]
fn they_are_offered_taken_said_and_undone() {
    let mut phone = brewer();
    assert_eq!(ago(0.0), phone.model.now);
    phone.go("#/batch/b/watch");
    phone.sees(OFFER);
    phone.sees("[Take that as the expected end]");
    phone.sees_no(REASON);
    // Asked once: the button is the question.
    assert_eq!(phone.text().matches("Take that as the expected end").count(), 1);
    assert_eq!(taken(&phone), 0, "never in silence");
    phone.tap("Take that as the expected end");
    phone.sees("Taken: the expected end is by your own batches as well");
    phone.sees(REASON);
    assert_eq!(taken(&phone), 3);
    phone.tap("Undo");
    phone.sees_no(REASON);
    assert_eq!(taken(&phone), 0);
    phone.tap("Take that as the expected end");
    phone.reload();
    phone.sees(REASON);
    phone.tap("Leave own batches out");
    phone.sees_no(REASON);
    phone.sees("[Take that as the expected end]");
    assert_eq!(taken(&phone), 0);
}

/// What was taken stays when the batch is changed, until it is of another yeast.
#[test]
fn what_was_taken_stays_in_the_heading_while_the_yeast_does() {
    let mut phone = brewer();
    phone.go("#/batch/b/watch");
    phone.tap("Take that as the expected end");
    phone.go("#/batch/b/edit");
    phone.type_into("Name", "Another name");
    phone.tap("Save");
    assert_eq!(taken(&phone), 3);
    phone.go("#/batch/b/edit");
    phone.choose("Yeast", "Lager");
    phone.tap("Save");
    assert_eq!(taken(&phone), 0);
}

/// A batch that is pitched today, after three with yeast of that packet.
fn on_pitching_day(packet: &str) -> Paper {
    let mut phone = with(0.0, [], three(packet));
    phone.go("#/batch/b/pitch");
    phone.tap("Delete the pitching");
    phone
}

/// They were offered once it fermented, when the yeast had long been chosen.
#[test]
fn on_pitching_day_they_are_offered_beside_the_yeast_taken_said_and_undone() {
    let mut phone = on_pitching_day("");
    phone.tap("Yeast");
    // Nothing to carry them over to yet.
    phone.sees_no("Your last 3 batches");
    phone.tap("Gravity");
    phone.type_into("Hydrometer reads", "1.050");
    phone.type_into("Sample temperature", "20");
    phone.sees_no("Your last 3 batches");
    phone.tap("Yeast");
    phone.sees(OFFER);
    phone.sees("[Take that as the expected end]");
    assert_eq!(taken(&phone), 0, "never in silence");
    phone.tap("Take that as the expected end");
    phone.sees("Taken: the expected end is by your own batches as well");
    phone.sees("the expected end is by them as well.");
    assert_eq!(taken(&phone), 3);
    phone.tap("Undo");
    phone.sees("[Take that as the expected end]");
    assert_eq!(taken(&phone), 0);
    phone.tap("Take that as the expected end");
    phone.tap("Leave own batches out");
    phone.sees("[Take that as the expected end]");
    assert_eq!(taken(&phone), 0);
    phone.tap("Take that as the expected end");
    // What was typed on the way is still there.
    phone.reload();
    phone.tap("Gravity");
    assert_eq!(phone.value_in("Hydrometer reads"), "1.050");
    phone.tap("The yeast goes in");
    phone.tap("The yeast is in");
    phone.sees("Pitching saved");
    assert_eq!(taken(&phone), 3);
    phone.go("#/batch/b/watch");
    phone.sees("the expected end is by them as well.");
}

/// A packet that is named tells by its own batches alone; named after they were taken, and otherwise, it takes
/// them out again, and says so.
#[test]
fn a_packet_of_another_name_takes_them_out_and_says_so() {
    let named = |name: &str, taken_first: bool| {
        let mut phone = on_pitching_day("House ale");
        phone.tap("Gravity");
        phone.type_into("Hydrometer reads", "1.050");
        phone.tap("Yeast");
        if taken_first {
            phone.tap("Take that as the expected end");
        }
        phone.tap("Age, name and weight of the yeast");
        phone.type_into("Name on the packet", name);
        phone
    };
    named("house  ALE", false).sees(OFFER);
    named("Other ale", false).sees_no("Your last 3 batches");
    for (name, kept) in [("House ale", 3), ("", 3), ("Other ale", 0)] {
        let mut phone = named(name, true);
        phone.tap("The yeast goes in");
        phone.tap("The yeast is in");
        assert_eq!(taken(&phone), kept, "{name:?}");
        if kept == 0 {
            phone.sees("Your own batches are left out: their yeast has another name");
            phone.tap("Undo");
            assert_eq!(taken(&phone), 3);
            assert!(phone.model.journal.pitch(&id("b")).is_none());
        } else {
            phone.sees_no("are left out");
        }
    }
}
