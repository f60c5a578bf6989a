//! What a copy would bring to the records that are here, found out before anything changes.
//!
//! Nothing is ever taken out, and no older saving of a thing replaces a newer one. Where both were saved
//! without knowing of each other, what is here stays, and the difference is told.

use super::copy::Thing;
use crate::batch::{
    Change, Edit, Entry, EntryKey, HydrometerItem, Id, Journal, Kind, Rejected, Settings,
};
use crate::json_unknown::Unknown;
use crate::order::ByKey;
use std::cmp::Ordering;

/// The most letters of a name that is taken as it is, though longer than one that is typed may be.
pub const LONGEST_NAME: usize = 200;

/// A thing of the copy that can be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitting {
    /// As it stands in the copy.
    pub thing: Thing,
    /// Its identity.
    pub id: Id,
    /// What it says.
    pub entry: Entry,
}

/// Why one record is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeftOut {
    /// This version cannot read it, or a value in it cannot be.
    Unreadable,
    /// The journal would not take it.
    Rejected(Rejected),
}

/// What would come of bringing a copy back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Brought {
    /// Things that are not here.
    pub added: Vec<Fitting>,
    /// Things that were saved later in the copy.
    pub changed: Vec<Fitting>,
    /// How many are here and say the same.
    pub same: usize,
    /// How many were saved later here.
    pub older: usize,
    /// Things that say something else, of which neither is known to be the later: they stay as they are.
    pub differ: Vec<(EntryKey, Entry)>,
    /// Records that are left out, by their number in the copy.
    pub left_out: Vec<(usize, LeftOut)>,
}

impl Brought {
    /// Nothing would change.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        self.added.is_empty() && self.changed.is_empty()
    }

    /// All that would come, in the order in which it can be made: a record after its batch.
    #[must_use]
    pub fn coming(&self) -> Vec<&Fitting> {
        let all: Vec<_> = self.changed.iter().chain(&self.added).collect();
        crate::order::in_order(all, |a, b| rank(a.entry.kind()).cmp(&rank(b.entry.kind())))
    }

    /// The change that brings it.
    #[must_use]
    pub fn change(&self) -> Change {
        let put = |fitting: &Fitting| Edit::Put(fitting.id.clone(), fitting.entry.clone());
        Change::all(self.coming().into_iter().map(put))
    }
}

const fn rank(kind: Kind) -> u8 {
    match kind {
        Kind::Hydrometer | Kind::Bottles | Kind::Sugar => 0,
        Kind::Batch => 1,
        Kind::Pitch | Kind::Reading | Kind::Bottling | Kind::Opening => 2,
        // It names the batch in hand.
        Kind::Settings => 3,
    }
}

/// Looks what the things of a copy would bring to what stands `here`, by its records and as things.
#[must_use]
pub fn compare(copy: &[Thing], here: &[Thing], journal: &Journal) -> Brought {
    let here: ByKey<(&str, &str), &Thing> =
        here.iter().map(|thing| ((thing.kind.as_str(), thing.id.as_str()), thing)).collect();
    let mut found = Brought::default();
    let mut coming = vec![];
    for (at, thing) in copy.iter().enumerate() {
        let read = Kind::named(&thing.kind).zip(Id::new(thing.id.as_str()).ok());
        let read = read.and_then(|(kind, id)| Some((id, Entry::read(kind, &thing.body).ok()?)));
        let Some((id, said)) = read else {
            found.left_out.push((at + 1, LeftOut::Unreadable));
            continue;
        };
        let standing = here.get(&(thing.kind.as_str(), thing.id.as_str()));
        let verdict = standing.map(|standing| weigh(thing, &said, standing));
        let key = EntryKey { kind: said.0.kind(), id: id.clone() };
        match verdict {
            Some(Verdict::Same) => found.same += 1,
            Some(Verdict::Older) => found.older += 1,
            Some(Verdict::Differs) => found.differ.push((key, said.0)),
            Some(Verdict::Newer) | None => {
                let fitting = Fitting { thing: thing.clone(), id, entry: said.0 };
                coming.push((at + 1, standing.is_some(), fitting));
            }
        }
    }
    checked(coming, journal, &mut found);
    found
}

/// Each thing in a journal as those before it have left it: a record comes after its batch.
fn checked(coming: Vec<(usize, bool, Fitting)>, journal: &Journal, found: &mut Brought) {
    let mut trial = journal.clone();
    let order = |one: &(usize, bool, Fitting)| rank(one.2.entry.kind());
    for (number, there, fitting) in crate::order::in_order(coming, |a, b| order(a).cmp(&order(b))) {
        let change = Change::put(fitting.id.clone(), fitting.entry.clone());
        match trial.apply(change.clone()) {
            Ok(_) => {}
            // As they may stand in the store: a record whose batch comes later, a name of an earlier version.
            Err(Rejected::NoSuchBatch) => {
                trial.take_as_it_is(change);
            }
            Err(Rejected::NameTooLong)
                if fitting.entry.name().is_some_and(|n| n.chars().count() <= LONGEST_NAME) =>
            {
                trial.take_as_it_is(change);
            }
            Err(why) => {
                found.left_out.push((number, LeftOut::Rejected(why)));
                continue;
            }
        }
        let list = if there { &mut found.changed } else { &mut found.added };
        list.push(fitting);
    }
}

enum Verdict {
    Same,
    Older,
    Newer,
    Differs,
}

fn weigh(copy: &Thing, said: &(Entry, Unknown), here: &Thing) -> Verdict {
    let kind = said.0.kind();
    let stands = Entry::read(kind, &here.body).ok();
    if copy.body == here.body || stands.as_ref().is_some_and(|stands| says_the_same(stands, said)) {
        return Verdict::Same;
    }
    // What this version cannot read is not written over.
    if stands.is_none() || here.replaces.contains(&copy.token) {
        return Verdict::Older;
    }
    if copy.token == here.token {
        return Verdict::Differs;
    }
    if copy.replaces.contains(&here.token) {
        return Verdict::Newer;
    }
    // Every phone has these from its first day: neither comes from the other.
    let everywhere =
        here.id == Settings::id().as_str() || here.id == HydrometerItem::usual_id().as_str();
    let (time, number) = (copy.saved.cmp(&here.saved), copy.revision.cmp(&here.revision));
    match (time, number) {
        _ if everywhere => Verdict::Differs,
        (Ordering::Greater, Ordering::Greater) if !parted(copy, here) => Verdict::Newer,
        (Ordering::Less, Ordering::Less) if !parted(here, copy) => Verdict::Older,
        _ => Verdict::Differs,
    }
}

/// Whether as many savings are known before the later one as lie between the two, and the earlier is none
/// of them: then both went on by themselves.
fn parted(later: &Thing, earlier: &Thing) -> bool {
    let between = later.revision.saturating_sub(earlier.revision);
    later.replaces.len() >= between as usize && !later.replaces.contains(&earlier.token)
}

/// What is of this phone alone, the batch in hand and the last copy, makes no difference.
fn says_the_same(one: &(Entry, Unknown), other: &(Entry, Unknown)) -> bool {
    match (&one.0, &other.0) {
        (Entry::Settings(a), Entry::Settings(b)) => a.same_wishes(b) && one.1 == other.1,
        _ => one == other,
    }
}
