//! How a batch stands: judged once, from what is recorded.

mod ends;
mod judge;
mod left;
mod looks;
mod proof;
mod record;
mod shapes;
mod sugar;
mod weigh;

pub use record::{Opened, Record, Seen};
pub use sugar::{USUAL_TARGET, allowed, usual_bottling};

use crate::quantity::Moment;

/// Rough.
#[derive(Clone, Debug)]
pub struct Rough {
    /// a
    pub ended: f64,
    /// a
    pub tail: f64,
    /// a
    pub stalled: f64,
    /// a
    pub eaten: f64,
    /// a
    pub bound: Option<f64>,
    /// a
    pub upper: f64,
    /// a
    pub mean: f64,
    /// a
    pub level: bool,
    /// a
    pub proof: Option<f64>,
}

/// Rough.
#[must_use]
pub fn rough(record: &Record, now: Moment, q: f64) -> Rough {
    let (_, j) = judge::Case::new(record, now, q);
    let s = &j.shares;
    Rough {
        ended: s.ended,
        tail: s.tail,
        stalled: s.stalled,
        eaten: s.eaten,
        bound: j.bound,
        upper: j.upper,
        mean: s.left.mean(),
        level: j.level_from.is_some(),
        proof: j.proof.left,
    }
}
