//! The words of readings as a table.

use super::texts::texts;
use crate::exchange::table::{BadLine, NoTable};
use crate::quantity::ReadError;

texts! {
    /// What stands at tables of readings.
    TableWords, TABLE {
        heading: "To or from a spreadsheet",
        from_paper: "Readings from a paper log or a spreadsheet",
        hand_out: "Hand the table out, with decimal points",
        hand_out_comma: "Hand the table out, with decimal commas",
        says_less: "A table is for a spreadsheet; a copy keeps more.",
        choose: "A table of readings (CSV)",
        choose_hint: "Its first line names the columns: Date, Gravity (SG) or Gravity (°P), Sample (°C), Beer (°C), Room (°C), Note. Dates as 2026-03-07 or 2026-03-07 18:30; °F serves as well.",
        would_add: "Would be added",
        there_already: "Are there already",
        left_out: "Would be left out",
        unknown: "Columns that mean nothing here",
        with_batch: "They are added with the batch once it is started.",
        nothing_new: "Nothing in it is new here.",
        leave: "Leave the table out",
    } says {
        readings: fn(usize) -> String = readings,
        add: fn(usize) -> String = add,
        add_sound: fn(usize) -> String = add_sound,
        odd: fn(usize, &str) -> String = odd,
        added: fn(usize) -> String = added,
        bad: fn(usize, &BadLine, fn(&ReadError) -> String) -> String = bad,
        no_table: fn(&NoTable) -> String = no_table,
    }
}

fn readings(count: usize) -> String {
    format!("{count} {}", if count == 1 { "reading" } else { "readings" })
}

fn add(count: usize) -> String {
    format!("Add {}", readings(count))
}

fn add_sound(count: usize) -> String {
    format!("Add only the other {}", readings(count))
}

fn odd(line: usize, said: &str) -> String {
    format!("Line {line}: {said}")
}

fn added(count: usize) -> String {
    format!("Added: {}", readings(count))
}

fn bad(line: usize, why: &BadLine, read: fn(&ReadError) -> String) -> String {
    let why = match why {
        BadLine::Date => "write its date as 2026-03-07 or 2026-03-07 18:30.".to_owned(),
        BadLine::Cell(head, why) => format!("{head}: {}", read(why)),
        BadLine::Word(head) => format!("{head}: this word means nothing here."),
        BadLine::Nothing => "there is nothing in it but its date.".to_owned(),
        BadLine::Note => "its note is too long.".to_owned(),
    };
    format!("Line {line} is left out: {why}")
}

fn no_table(why: &NoTable) -> String {
    format!("Nothing was changed: {why}.")
}
