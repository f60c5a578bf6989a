//! Readings as a table, out and in, and a paper log that becomes a batch in one go.

use crate::paper::Paper;
use crate::shelf::{id, reading, with};
use fermentside::app::{HandOut, What};

const FILE: &str = "A table of readings";
const LOG: &str = "Date;Gravity (SG);Sample (°C);Smell;Note\r\n\
    2026-02-20 18:00;1,048;23;bread;\r\n\
    2026-02-24;1,014;20;;\"two\r\nlines\"\r\n\
    24.02.2026;1,012;20;;\r\n\
    2026-02-28;1,012;20;;=1+1\r\n";

fn files(phone: &Paper) -> Vec<HandOut> {
    let file = |part: fermentside::app::Part| match part.what {
        What::HandOut(file) if file.media == "text/csv" => Some(file),
        _ => None,
    };
    phone.parts().into_iter().filter_map(file).collect()
}

#[test]
fn a_paper_log_becomes_a_batch_in_one_go() {
    let mut phone = Paper::new();
    phone.go("#/batches/new");
    phone.type_into("Name", "From paper");
    phone.type_into("Volume", "20");
    phone.tap("Readings from a paper log");
    phone.choose_file(FILE, LOG);
    phone.sees("Would be added: 3 readings");
    phone.sees("Columns that mean nothing here: Smell");
    phone.sees("- Line 5 is left out: write its date as 2026-03-07 or 2026-03-07 18:30.");
    phone.tap("Start");
    let batches: Vec<_> =
        phone.model.journal.batches().map(|(id, heading)| (id.clone(), heading.clone())).collect();
    let [(batch, heading)] = batches.as_slice() else { panic!("{batches:?}") };
    assert_eq!(phone.place(), format!("#/batch/{}/watch", batch.as_str()));
    let readings = phone.model.journal.readings(batch).to_vec();
    assert_eq!(readings.len(), 3);
    assert!(readings.iter().all(|(_, one)| one.batch == *batch));
    // Begun with its first line, and not on the day it was typed in: else all of it were readings of the wort.
    assert_eq!(heading.started, readings[0].1.at);
    let found = phone.model.summary(batch).expect("the batch");
    assert!((found.original.expect("a start").value().points() - 48.0).abs() < 1.0);
    assert!(readings.iter().all(|(_, one)| one.hydrometer == heading.hydrometer));
    assert_eq!(readings[1].1.note, "two\r\nlines");
    phone.reload();
    assert_eq!(phone.model.journal.readings(batch), readings);
}

#[test]
fn a_table_is_added_to_a_batch_once_and_taken_back_as_one() {
    let mut phone = with(15.0, [reading(14.0, 1.048)], vec![]);
    phone.tap("To or from a spreadsheet");
    phone.choose_file(FILE, LOG);
    phone.sees("Would be added: 3 readings");
    phone.tap("Add 3 readings");
    phone.sees("Added: 3 readings");
    assert_eq!(phone.model.journal.readings(&id("b")).len(), 4);
    phone.choose_file(FILE, LOG);
    phone.sees("Are there already: 3");
    phone.sees("Nothing in it is new here.");
    phone.sees_no("[Add 3");
    phone.tap("Undo");
    assert_eq!(phone.model.journal.readings(&id("b")).len(), 1);
    phone.sees("Would be added: 3 readings");
    phone.tap("Leave the table out");
    phone.sees_no("Would be added");
}

#[test]
fn what_goes_out_comes_in_elsewhere_with_points_or_commas() {
    let mut note = reading(3.0, 1.012);
    note.note = "=cmd".to_owned();
    let phone = {
        let mut phone = with(15.0, [reading(14.0, 1.048), note], vec![]);
        phone.tap("To or from a spreadsheet");
        phone
    };
    let out = files(&phone);
    assert_eq!(out.len(), 2);
    assert_eq!(out[0].file, "readings-cellarbitter.csv");
    for file in out {
        assert!(file.text.contains("'=cmd"), "{}", file.text);
        let mut second = with(15.0, [], vec![]);
        second.tap("To or from a spreadsheet");
        second.choose_file(FILE, &file.text);
        second.sees_no("Would be left out");
        second.tap("Add 2 readings");
        let of = |phone: &Paper| -> Vec<_> {
            let all = phone.model.journal.readings(&id("b")).iter();
            all.map(|(_, one)| (one.at, one.as_read, one.sample, one.note.clone())).collect()
        };
        assert_eq!(of(&second), of(&phone));
    }
}

#[test]
fn what_is_no_table_says_why_and_changes_nothing() {
    let mut phone = with(15.0, [reading(14.0, 1.048)], vec![]);
    phone.tap("To or from a spreadsheet");
    for (text, said) in [
        ("", "there is no line in it below the heads"),
        ("a,b\n1,2", "none of its columns is headed Date"),
        ("Date,Beer\n2026-03-07,20", "write the unit behind Beer, as in Beer (°C)"),
        ("\u{0}\u{FFFD}PK", "none of its columns is headed Date"),
    ] {
        phone.choose_file(FILE, text);
        phone.sees(&format!("!! Nothing was changed: {said}"));
    }
    assert_eq!(phone.model.journal.readings(&id("b")).len(), 1);
}

#[test]
fn a_table_that_was_not_kept_can_be_tried_again() {
    let mut phone = with(15.0, [], vec![]);
    phone.tap("To or from a spreadsheet");
    phone.choose_file(FILE, LOG);
    *phone.shelf.writes_left.borrow_mut() = Some(2);
    phone.tap("Add 3 readings");
    phone.sees("!! Not saved: there is no room left");
    assert_eq!(phone.model.journal.readings(&id("b")).len(), 0);
    *phone.shelf.writes_left.borrow_mut() = None;
    phone.tap("Add 3 readings");
    phone.sees("Added: 3 readings");
    phone.reload();
    assert_eq!(
        phone.model.journal.readings(&id("b")).len(),
        3,
        "none stayed behind of the first try"
    );
}
