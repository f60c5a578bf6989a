//! What is odd is asked about before it is saved, kept as given when it is confirmed, and then doubted.

use crate::paper::Paper;
use crate::shelf::{ago, id, reading, with};
use fermentside::app::Effect;
use fermentside::batch::Reading;
use fermentside::quantity::Moment;

/// A bitter that has stood level for days.
fn level() -> Paper {
    let falling = [reading(12.05, 1.048), reading(9.0, 1.022)];
    let level = [5.0, 3.0, 1.0].map(|days| reading(days, 1.011));
    let mut phone = with(12.0, falling.into_iter().chain(level), vec![]);
    phone.tap("Add a reading");
    phone
}

fn saved(phone: &Paper) -> Vec<Reading> {
    phone.model.journal.readings(&id("b")).iter().map(|(_, reading)| reading.clone()).collect()
}

fn last(phone: &Paper) -> Reading {
    saved(phone).last().expect("a reading").clone()
}

#[test]
fn an_ordinary_reading_is_asked_nothing() {
    for read in ["1.011", "1.012", "1.010", "1.008"] {
        let mut phone = level();
        phone.type_into("Hydrometer reads", read);
        phone.tap("Save the reading");
        phone.sees_no("Is that right?");
        assert_eq!((saved(&phone).len(), last(&phone).doubtful), (6, false), "{read}");
    }
}

#[test]
fn a_slip_is_asked_about_both_ways_and_counts_for_less_once_it_is_kept() {
    for (read, sg) in [("1.001", 1.001), ("1.021", 1.021)] {
        let mut phone = level();
        phone.type_into("Hydrometer reads", read);
        phone.tap("Save the reading");
        phone.sees("Is that right?");
        phone.sees("By the other readings it should lie between 1.0");
        assert_eq!(saved(&phone).len(), 5, "nothing is saved yet");
        // Saved again without an answer it is asked again.
        phone.tap("Save the reading");
        phone.sees("Is that right?");
        phone.tap("No, change it");
        phone.sees_no("Is that right?");
        let gravity = phone.field("Hydrometer reads").name;
        assert_eq!(phone.asked.last(), Some(&Effect::Attend(gravity)));
        phone.tap("Save the reading");
        phone.tap("Yes, keep it as it is");
        phone.sees("Reading saved");
        phone.sees_no("Is that right?");
        let kept = last(&phone);
        assert!(kept.doubtful && saved(&phone).len() == 6);
        let read = kept.as_read.expect("a gravity");
        assert_eq!(
            read,
            fermentside::quantity::Gravity::Specific(
                fermentside::quantity::SpecificGravity::literal(sg)
            )
        );
    }
}

#[test]
fn what_was_asked_about_is_another_thing_once_something_else_is_typed() {
    let mut phone = level();
    phone.type_into("Hydrometer reads", "1.021");
    phone.tap("Save the reading");
    phone.type_into("Hydrometer reads", "1.011");
    phone.sees_no("Is that right?");
    phone.tap("Save the reading");
    assert!(!last(&phone).doubtful);
}

#[test]
fn a_changed_reading_does_not_bear_itself_out_and_loses_its_doubt_when_it_is_mended() {
    let mut phone = level();
    phone.type_into("Hydrometer reads", "1.021");
    phone.tap("Save the reading");
    phone.tap("Yes, keep it as it is");
    phone.tap("Sat 7 Mar");
    phone.tap("Change the reading");
    phone.tap("Save the change");
    phone.sees("Is that right?");
    phone.type_into("Hydrometer reads", "1.011");
    phone.tap("Save the change");
    phone.sees("Reading changed");
    assert!(saved(&phone).iter().all(|reading| !reading.doubtful));
}

#[test]
fn a_point_in_the_wrong_place_is_asked_about() {
    let mut phone = with(1.0, [], vec![]);
    phone.type_into("Hydrometer reads", "10.42");
    phone.tap("Save the reading");
    phone.sees("It is taken as 1.010. Did you mean 1.042?");
    assert!(saved(&phone).is_empty());
}

#[test]
fn no_beer_has_every_gravity() {
    let mut phone = with(1.0, [], vec![]);
    phone.type_into("Hydrometer reads", "1.170");
    phone.tap("Save the reading");
    phone.sees("Hardly any wort or beer has 1.170.");
}

#[test]
fn dates_ahead_and_before_the_brewing_day_are_asked_about() {
    let dated = |at: Moment| {
        let mut phone = level();
        phone.type_into("Hydrometer reads", "1.011");
        phone.tap("Temperatures, time and note");
        phone.dated("Read", at);
        phone.tap("Save the reading");
        phone
    };
    let mut ahead = dated(ago(-3.0));
    ahead.sees("is still to come.");
    ahead.tap("Yes, keep it as it is");
    assert!(last(&ahead).doubtful);
    dated(ago(40.0)).sees("before the batch was begun.");
    dated(ago(-0.03)).sees("Reading saved");
}

#[test]
fn a_pitching_long_before_the_batch_or_ahead_of_now_is_asked_about() {
    for (days, says) in [(30.0, "before the batch was begun."), (-2.0, "is still to come.")] {
        let mut phone = with(5.0, [], vec![]);
        phone.go("#/batch/b/pitch");
        phone.tap("Delete the pitching");
        phone.tap("The yeast goes in");
        phone.dated("Pitched", ago(days));
        phone.tap("The yeast is in");
        // No gravity was taken either.
        phone.tap("Pitch without it");
        phone.sees(says);
        assert!(phone.model.journal.log(&id("b")).expect("a log").pitch().is_none());
        phone.tap("Yes, keep it as it is");
        assert!(phone.model.journal.log(&id("b")).expect("a log").pitch().is_some(), "{days}");
    }
}

/// Nobody noted when the yeast went in, and yet a reading far from the course is asked about.
#[test]
fn beer_that_was_never_noted_as_pitched_is_asked_about_as_well() {
    let mut phone = level();
    phone.go("#/batch/b/pitch");
    phone.tap("Delete the pitching");
    phone.go("#/batch/b/watch");
    phone.tap("Add a reading");
    phone.type_into("Hydrometer reads", "1.021");
    phone.tap("Save the reading");
    phone.sees("By the other readings it should lie between 1.0");
}

const FILE: &str = "A table of readings";

/// A paper log with a slip in its sixth line.
fn log(slip: &str) -> String {
    let rows = ["2026-02-20;1.048", "2026-02-22;1.027", "2026-02-25;1.014", "2026-02-27;1.012"];
    let last = ["2026-03-02;1.011", "2026-03-04;1.011"];
    let rows = rows.into_iter().map(str::to_owned).chain([slip.to_owned()]);
    let rows: Vec<String> = rows.chain(last.map(str::to_owned)).collect();
    format!("Date;Gravity (SG)\n{}", rows.join("\n"))
}

/// Readings brought in as a table were asked nothing.
#[test]
fn odd_lines_of_a_table_are_asked_about_and_counted_for_less() {
    let begun = || {
        let mut phone = with(16.5, [reading(16.55, 1.048)], vec![]);
        phone.tap("To or from a spreadsheet");
        phone
    };
    for (slip, says) in [
        ("2026-02-28;1.031", "- Line 6: By the other readings it should lie between 1.0"),
        ("2026-02-28;1.002", "- Line 6: By the other readings it should lie between 1.0"),
        ("2026-02-28;1.170", "- Line 6: Hardly any wort or beer has 1.170."),
        ("2026-02-28;10.42", "- Line 6: It is taken as 1.010. Did you mean 1.042?"),
        ("2027-02-28;1.011", "- Line 6: Sun 28 Feb"),
        ("2025-02-28;1.011", "- Line 6: That is"),
    ] {
        let mut phone = begun();
        phone.choose_file(FILE, &log(slip));
        phone.sees("Is that right?");
        phone.sees(says);
        phone.sees("What is kept so counts for less.");
        phone.sees_no("- Line 5:");
        phone.sees_no("- Line 7:");
        phone.tap("Add 7 readings");
        let doubtful = saved(&phone).iter().filter(|one| one.doubtful).count();
        assert_eq!((saved(&phone).len(), doubtful), (8, 1), "{slip}");
        phone.tap("Undo");
        phone.tap("Add only the other 6 readings");
        assert_eq!(saved(&phone).iter().filter(|one| one.doubtful).count(), 0, "{slip}");
        assert_eq!(saved(&phone).len(), 7, "{slip}");
    }
    let mut phone = begun();
    phone.choose_file(FILE, &log("2026-02-28;1.012"));
    phone.sees_no("Is that right?");
    phone.tap("Add 7 readings");
    assert!(saved(&phone).iter().all(|one| !one.doubtful));
}

/// Nor in the form of a new batch.
#[test]
fn odd_lines_of_a_paper_log_are_asked_about_before_its_batch_is_started() {
    let mut phone = Paper::new();
    phone.go("#/batches/new");
    phone.type_into("Name", "From paper");
    phone.type_into("Volume", "20");
    phone.tap("Readings from a paper log");
    phone.choose_file(FILE, &log("2026-02-28;1.031"));
    phone.sees("- Line 6: By the other readings it should lie between 1.0");
    phone.tap("Start");
    let (batch, _) = phone.model.journal.batches().next().expect("the batch");
    let readings = phone.model.journal.readings(batch);
    assert_eq!(readings.iter().filter(|(_, one)| one.doubtful).count(), 1);
    assert_eq!(readings.len(), 7);
}

/// Nor was the form of a batch asked about anything.
#[test]
fn a_batch_dated_ahead_and_a_stated_gravity_that_no_beer_has_are_asked_about_once() {
    let begun = || {
        let mut phone = Paper::new();
        phone.go("#/batches/new");
        phone.type_into("Name", "Kit");
        phone.type_into("Volume", "20");
        phone
    };
    let batches = |phone: &Paper| phone.model.journal.batches().count();
    let (start, end) =
        ("Starting gravity (OG) by kit or recipe", "Final gravity (FG) by kit or recipe");
    for (field, typed, says) in [
        (start, "10.42", "It is taken as 1.010. Did you mean 1.042?"),
        (start, "1.180", "Hardly any wort or beer has 1.180."),
        (end, "10.12", "It is taken as 1.010. Did you mean 1.012?"),
    ] {
        let mut phone = begun();
        phone.type_into(field, typed);
        phone.tap("Start");
        phone.sees(says);
        assert_eq!(batches(&phone), 0);
        phone.tap("Yes, keep it as it is");
        assert_eq!(batches(&phone), 1, "{typed}");
    }
    let mut phone = begun();
    phone.dated("Brewing day", ago(-3.0));
    phone.tap("Start");
    phone.sees("is still to come.");
    phone.tap("Yes, keep it as it is");
    // What was confirmed is not asked about again.
    let place = phone.place().replace("pitch", "edit");
    phone.go(&place);
    phone.type_into("Name", "Kit of ours");
    phone.tap("Save");
    phone.sees_no("Is that right?");
    let mut names = phone.model.journal.batches().map(|(_, heading)| heading.name.clone());
    assert_eq!(names.next().as_deref(), Some("Kit of ours"));
}
