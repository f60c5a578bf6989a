//! Own earlier batches are offered for the expected end, taken in one touch, said, and left out in one.

use crate::paper::Paper;
use crate::shelf::{ago, batch, bottling, id, reading, with};
use fermentside::batch::{BatchHeading, BottlingRecord, Entry, Id, PitchRecord, Reading};

/// An earlier batch with its log, bottled so many days ago.
fn earlier(name: &str, days_ago: f64, start: f64, end: f64) -> Vec<(Id, Entry)> {
    let named = |what: &str| id(&format!("{name}{what}"));
    let mut all = vec![];
    for (_, entry) in batch(days_ago + 13.0).into_iter().chain([bottling(days_ago)]) {
        all.push(match entry {
            Entry::Batch(heading) => {
                (id(name), Entry::Batch(BatchHeading { name: name.to_owned(), ..heading }))
            }
            Entry::Pitch(pitch) => {
                (named("p"), Entry::Pitch(PitchRecord { batch: id(name), ..pitch }))
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

fn brewer() -> Paper {
    let read = [reading(8.05, 1.050), reading(5.0, 1.022), reading(1.0, 1.013)];
    let more = earlier("porter", 120.0, 1.048, 1.011).into_iter();
    with(8.0, read, more.chain(earlier("stout", 50.0, 1.055, 1.013)).collect())
}

fn taken(phone: &Paper) -> usize {
    phone.model.journal.batch(&id("b")).expect("the batch").own_ends.len()
}

const OFFER: &str = "Your last 2 batches with this yeast ended at 1.013 from 1.055 and 1.011 from 1.048. \
    From this start that makes 1.012";
const REASON: &str = "The expected end is also by your last 2 batches with this yeast: about 1.012";

#[test]
fn they_are_offered_taken_said_and_undone() {
    let mut phone = brewer();
    assert_eq!(ago(0.0), phone.model.now);
    phone.go("#/batch/b/watch");
    phone.sees(OFFER);
    phone.sees("Take that as the expected end?");
    phone.sees_no(REASON);
    assert_eq!(taken(&phone), 0, "never in silence");
    phone.tap("Take that as the expected end");
    phone.sees("Taken: the expected end is by your own batches as well");
    phone.sees(REASON);
    assert_eq!(taken(&phone), 2);
    phone.tap("Undo");
    phone.sees_no(REASON);
    assert_eq!(taken(&phone), 0);
    phone.tap("Take that as the expected end");
    phone.reload();
    phone.sees(REASON);
    phone.tap("Leave own batches out");
    phone.sees_no(REASON);
    phone.sees("Take that as the expected end?");
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
    assert_eq!(taken(&phone), 2);
    phone.go("#/batch/b/edit");
    phone.choose("Yeast", "Lager");
    phone.tap("Save");
    assert_eq!(taken(&phone), 0);
}
