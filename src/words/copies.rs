//! The words of copies: made, handed out and brought back.

use super::texts::texts;
use super::write;
use crate::batch::{Kind, Rejected};
use crate::exchange::bring::LeftOut;
use crate::exchange::copy::{LONGEST, MOST, Refused};
use crate::quantity::Moment;

texts! {
    /// What stands at copies.
    CopyWords, COPIES {
        make: "Make a copy of everything",
        make_of_batch: "Make a copy of this batch",
        what_it_is: "A copy is one file that a person can read. Share it to another phone, and bring it back there in Gear: it passes through nobody's server.",
        hand_out: "Hand the copy over or save it",
        by_hand: "Or copy this text and keep it elsewhere",
        take_one: "Take a copy in Gear",
        batches_file: "old batches",
        bring_back: "Bring a copy back",
        choose: "The file of a copy",
        choose_hint: "What would come of it is shown first. Nothing that is here is taken out.",
        unread: "Nothing was changed: the phone did not give the file out. Try it again.",
        would_add: "Would be added",
        would_change: "Would be changed",
        would_stay: "Stay as they are",
        left_out: "Would be left out",
        nothing_new: "Nothing in it is new here.",
        bring_it: "Bring it in",
        leave_it: "Leave it",
    } says {
        due: fn(u32, u32) -> String = due,
        since: fn(Option<Moment>, u32, u32) -> String = since,
        counted: fn(&[Kind]) -> String = counted,
        stay: fn(usize, usize, usize) -> String = stay,
        changes: fn(&str) -> String = changes,
        differs: fn(&str) -> String = differs,
        and_more: fn(usize) -> String = and_more,
        why_left_out: fn(usize, LeftOut) -> String = why_left_out,
        brought: fn(&[Kind]) -> String = brought,
        refused: fn(&Refused) -> String = refused,
    }
}

fn number(count: u32, one: &str, more: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { more })
}

fn new_things(readings: u32, bottled: u32) -> String {
    let readings = (readings > 0).then(|| number(readings, "reading", "readings"));
    let bottled = (bottled > 0).then(|| number(bottled, "bottled batch", "bottled batches"));
    [readings, bottled].into_iter().flatten().collect::<Vec<_>>().join(" and ")
}

fn due(readings: u32, bottled: u32) -> String {
    let is = if readings + bottled == 1 { "is" } else { "are" };
    format!("{} {is} in no copy yet.", new_things(readings, bottled))
}

fn since(at: Option<Moment>, readings: u32, bottled: u32) -> String {
    let new = new_things(readings, bottled);
    match (at, new.is_empty()) {
        (None, true) => "No copy was taken yet.".to_owned(),
        (None, false) => format!("No copy was taken yet of {new}."),
        (Some(at), true) => {
            format!("The last copy, of {}, has every reading.", write::full_day(at))
        }
        (Some(at), false) => format!("Since the last copy, of {}: {new}.", write::full_day(at)),
    }
}

const fn kind(kind: Kind) -> (&'static str, &'static str) {
    match kind {
        Kind::Batch => ("batch", "batches"),
        Kind::Pitch => ("pitching", "pitchings"),
        Kind::Reading => ("reading", "readings"),
        Kind::Bottling => ("bottling day", "bottling days"),
        Kind::Opening => ("opened bottle", "opened bottles"),
        Kind::Hydrometer => ("hydrometer", "hydrometers"),
        Kind::Settings => ("set of preferences", "sets of preferences"),
        Kind::Bottles => ("entry of bottles", "entries of bottles"),
        Kind::Sugar => ("sugar", "sugars"),
    }
}

/// How many of each kind; those of one kind stand together.
fn counted(kinds: &[Kind]) -> String {
    let of_one = kinds.chunk_by(|a, b| a == b).filter_map(|some| {
        let (one, more) = kind(*some.first()?);
        Some(number(some.len() as u32, one, more))
    });
    let all: Vec<_> = of_one.collect();
    if all.is_empty() { "nothing".to_owned() } else { all.join(", ") }
}

fn stay(same: usize, older: usize, differ: usize) -> String {
    let mut all = vec![];
    all.extend((same > 0).then(|| format!("{same} that say the same")));
    all.extend((older > 0).then(|| format!("{older} saved later here")));
    all.extend((differ > 0).then(|| format!("{differ} that say something else")));
    if all.is_empty() { "nothing".to_owned() } else { all.join(", ") }
}

fn changes(thing: &str) -> String {
    format!("{thing}: saved later in the copy, and would be as it is there.")
}

fn differs(thing: &str) -> String {
    format!("{thing}: says something else in the copy. It stays as it is here.")
}

fn and_more(count: usize) -> String {
    format!("And {count} more.")
}

fn why_left_out(at: usize, why: LeftOut) -> String {
    let why = match why {
        LeftOut::Unreadable => "this version can't read it".to_owned(),
        LeftOut::Rejected(Rejected::NothingThere) => "there is nothing in it".to_owned(),
        LeftOut::Rejected(why) => why.to_string(),
    };
    format!("Record {at} of the file is left out: {why}.")
}

fn brought(kinds: &[Kind]) -> String {
    format!("Brought in: {}", counted(kinds))
}

fn refused(why: &Refused) -> String {
    let why = match why {
        Refused::Empty => "the file is empty".to_owned(),
        Refused::TooLong => {
            format!("the file is larger than {} million letters", LONGEST / 1_000_000)
        }
        Refused::TooDeep | Refused::NotACopy => "this file is no copy of these records".to_owned(),
        Refused::NoJson => "this file is no copy, or its end is missing".to_owned(),
        Refused::Newer(_) => {
            "a newer version of this page made this copy; update this page first".to_owned()
        }
        Refused::TooMany => format!("it holds more than {MOST} records"),
        Refused::BadRecord(at) => format!("record {at} in it is not as a copy has them"),
        Refused::Twice(at) => format!("record {at} in it is there twice"),
    };
    format!("Nothing was changed: {why}.")
}
