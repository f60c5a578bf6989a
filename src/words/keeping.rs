//! The words of how records are kept: room, newer versions, what stands alone, what was noted twice.

use super::texts::texts;
use super::told::{NameOf, differences};
use super::write::{self, Writer};
use crate::quantity::Moment;

texts! {
    /// What stands where records need a word.
    KeepingWords, KEEPING {
        nearly_full: "There is hardly any room left: a save may be refused, and half-typed text lost with the page. Take a copy, then delete a batch that you no longer need.",
        differs_in: "What differs",
        hardly_differ: "They differ only in digits that are not shown.",
        make_room: "Make room in Gear",
        deleted_head: "Deleted batches",
        deleted_lead: "They can be had back for 30 days, while there is room.",
        have_back: "Have it back",
        oldest_head: "Batches done with, the oldest first",
        oldest_lead: "A batch that is in a copy can be deleted here, and brought back from the copy in Gear.",
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
        copy_out: fn(&str) -> String = copy_out,
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

fn copy_out(name: &str) -> String {
    format!("Copy {name} out, then delete it")
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
