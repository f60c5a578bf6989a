//! Whether a field keeps its place in the document while it is typed in: one that is taken out and put
//! back loses the keyboard, and the next key goes nowhere.

use fermentside::app::{Part, Screen};
use std::mem::discriminant;

/// The name of what stands around the field called `name`, or of itself, that the page would take out of
/// the document on its way from one screen to the next.
pub fn torn(from: &Screen, to: &Screen, name: &str) -> Option<String> {
    torn_in(&from.main, &to.main, name)
}

fn torn_in(from: &[Part], to: &[Part], name: &str) -> Option<String> {
    let at = from.iter().position(|part| holds(part, name))?;
    // A screen without the field needs no keyboard.
    let then = to.iter().find(|part| holds(part, name))?;
    let stays = to.iter().position(|part| same(part, &from[at]));
    match stays {
        Some(to_at) if !is_moved(from, to, at, to_at) => {
            torn_in(&from[at].parts, &then.parts, name)
        }
        _ => Some(from[at].name.clone()),
    }
}

fn holds(part: &Part, name: &str) -> bool {
    part.name == name || part.parts.iter().any(|inner| holds(inner, name))
}

fn same(a: &Part, b: &Part) -> bool {
    a.name == b.name && discriminant(&a.what) == discriminant(&b.what)
}

/// As the keyed lists of tachys 0.2 have it: what comes and goes is counted up to the old place alone, so
/// that two parts put in before one that stays take it out as well.
fn is_moved(from: &[Part], to: &[Part], at: usize, to_at: usize) -> bool {
    let within = |list: &[Part], part: &Part| list.iter().any(|other| same(other, part));
    let (mut added, mut removed) = (0, 0);
    for index in 0..=at {
        let (old, new) = (from.get(index), to.get(index));
        if let (Some(old), Some(new)) = (old, new)
            && same(old, new)
        {
            continue;
        }
        removed += i64::from(old.is_some_and(|old| !within(to, old)));
        added += i64::from(new.is_some_and(|new| !within(from, new)));
    }
    to_at != at && to_at as i64 - at as i64 != added - removed
}
