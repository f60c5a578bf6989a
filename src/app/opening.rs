//! The plate of bottles that stand and wait: what is next of them, and what the last one said.

use super::model::Model;
use super::part::{Judged, Part, What};
use crate::advice::open::Next;
use crate::batch::Summary;

/// Its name.
pub const PLATE: &str = "open/first";

/// The plate; nothing before it is bottled.
pub fn plate(m: &Model, s: &Summary) -> Option<Part> {
    Some(Part::new(PLATE, What::Verdict(judged(m, s)?)))
}

/// What it says.
pub fn judged(m: &Model, s: &Summary) -> Option<Judged> {
    let advice = s.today(m.now).opening?;
    let mut judged = (m.words.open.first)(m.writer(), &advice);
    // Once the next is to be tried its answer has been followed.
    if advice.next != Next::TryOne {
        judged.reasons.splice(0..0, last_answered(m, s));
    }
    Some(judged)
}

/// What the bottle opened last says of the others.
fn last_answered(m: &Model, s: &Summary) -> Option<String> {
    let waiting = s.bottles(m.now).filter(|_| !s.is_hazard())?;
    let (_, opening) = s.openings.first()?;
    (m.words.open.answered)(opening.at.since(waiting.bottled), opening)
}
