//! The words of how records are kept: room, newer versions, what stands alone, what was noted twice.

use super::texts::texts;
use super::told::{NameOf, differences};
use super::write::{self, Writer};
use crate::quantity::Moment;

texts! {
    /// What stands where records need a word.
    KeepingWords, KEEPING {
        nearly_full: "There is hardly any room left: a save may be refused, and half-typed text lost with the page. Take a copy; in Gear old batches can go into a file and make room.",
        what: "What",
        differs_in: "What differs",
        hardly_differ: "They differ only in digits that are not shown.",
        make_room: "Make room in Gear",
        deleted_head: "Deleted batches",
        deleted_lead: "They can be had back for 30 days, while there is room.",
        have_back: "Have it back",
        old_head: "Old batches",
        old_lead: "Batches bottled long ago can go into a file, and make room here. Only once the file is handed over are they taken away. Bring a copy back, below, brings them back from it. What was begun each year is counted without them.",
        old_before: "Bottled",
        newer_head: "Of a newer version of this page",
        alone: "There are records of a batch that is not here.",
        alone_head: "Records whose batch is not here",
        alone_lead: "The batch was deleted, in another tab perhaps, while they were saved. They are in every copy; bring a copy back that has the batch, and they are in its log again.",
        delete_them: "Delete them",
        delete: "Delete this one",
    } says {
        newer: fn(usize) -> String = newer,
        differences: fn(Writer, NameOf<'_>, &[&str]) -> Vec<(String, Vec<String>)> = differences,
        version: fn(usize) -> &'static str = version,
        cleared: fn(usize) -> String = cleared,
        deleted: fn(&str, Moment) -> String = deleted,
        is_back: fn(&str) -> String = is_back,
        old_choice: fn((i32, u8), usize) -> String = old_choice,
        old_all: fn(usize) -> String = old_all,
        old_copy: fn(usize) -> String = old_copy,
        old_room: fn(usize, u64) -> String = old_room,
        old_take: fn(usize) -> String = old_take,
        old_taken: fn(usize, u64) -> String = old_taken,
        records: fn(usize) -> String = records,
        room: fn(Option<f64>, Option<f64>) -> String = room,
        yeast_twice: fn(Moment, bool) -> String = yeast_twice,
        bottled_twice: fn(Moment, bool) -> String = bottled_twice,
    }
}

fn newer(count: usize) -> String {
    let what = if count == 1 { "One saved thing is" } else { "Some saved things are" };
    format!("{what} of a newer version of this page. Kept as it was; update this page to see it.")
}

/// What a version is called beside the others, from 0.
fn version(at: usize) -> &'static str {
    ["First", "Second", "Third", "Fourth", "Fifth"].get(at).unwrap_or(&"Another")
}

fn cleared(count: usize) -> String {
    format!(
        "This browser's storage was cleared while the page was open. {} still here and {} written back.",
        if count == 1 { "1 record was".to_owned() } else { format!("{count} records were") },
        if count == 1 { "is" } else { "are" }
    )
}

fn deleted(name: &str, at: Moment) -> String {
    format!("Deleted: {name}, on {}.", write::full_day(at))
}

fn is_back(name: &str) -> String {
    format!("{name} is back")
}

fn batches(count: usize) -> String {
    format!("{count} {}", if count == 1 { "batch" } else { "batches" })
}

fn old_choice((year, month): (i32, u8), count: usize) -> String {
    format!("before {}\u{A0}{year}: {}", write::day_month(1, month), batches(count))
}

fn old_all(count: usize) -> String {
    format!("by now: {}", batches(count))
}

fn old_copy(count: usize) -> String {
    format!("Copy {} out", batches(count))
}

/// Thousands of bytes, and at least one.
fn kilobytes(bytes: u64) -> String {
    format!("{}\u{A0}kB", bytes.div_ceil(1000).max(1))
}

fn old_room(count: usize, bytes: u64) -> String {
    let takes = if count == 1 { "takes" } else { "take" };
    format!(
        "{} {takes} {} here. Look that the file lies where you keep such things, then take {} away.",
        batches(count),
        kilobytes(bytes),
        if count == 1 { "it" } else { "them" }
    )
}

fn old_take(count: usize) -> String {
    format!("Take {} away", batches(count))
}

fn old_taken(count: usize, bytes: u64) -> String {
    format!("{} taken away: {} freed", batches(count), kilobytes(bytes))
}

fn records(count: usize) -> String {
    format!("{count} {}", if count == 1 { "record" } else { "records" })
}

fn room(share: Option<f64>, years: Option<f64>) -> String {
    let Some(share) = share else { return String::new() };
    let percent = share * 100.0;
    let percent =
        if percent < 1.0 { "Less than 1".to_owned() } else { format!("{:.0}", percent.ceil()) };
    let used = format!("{percent}\u{A0}% of the room in this browser is used.");
    match years {
        Some(years) if years < 1.0 => {
            format!(
                "{used} At your pace the rest lasts less than a year: take a copy, then delete old batches."
            )
        }
        Some(years) if years < 3.0 => {
            format!(
                "{used} At your pace the rest lasts about {years:.0} years. Take a copy in good time."
            )
        }
        _ => used,
    }
}

fn counts(does: bool) -> &'static str {
    if does { "This one counts." } else { "It does not count." }
}

fn yeast_twice(at: Moment, does: bool) -> String {
    format!("The yeast is noted more than once: {}. {}", write::moment(at), counts(does))
}

fn bottled_twice(at: Moment, does: bool) -> String {
    format!("Bottling is noted more than once: {}. {}", write::moment(at), counts(does))
}
