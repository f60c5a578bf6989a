//! The words of how records are kept: room, newer versions, what stands alone, what was noted twice.

use super::texts::texts;
use super::write;
use crate::quantity::Moment;

texts! {
    /// What stands where records need a word.
    KeepingWords, KEEPING {
        nearly_full: "There is hardly any room left: a save may be refused, and half-typed text lost with the page. Take a copy, then delete a batch that you no longer need.",
        newer_head: "Of a newer version of this page",
        alone: "There are records of a batch that is not here.",
        alone_head: "Records whose batch is not here",
        alone_lead: "The batch was deleted, in another tab perhaps, while they were saved. They are in every copy; bring a copy back that has the batch, and they are in its log again.",
        delete_them: "Delete them",
        delete: "Delete this one",
    } says {
        newer: fn(usize) -> String = newer,
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
