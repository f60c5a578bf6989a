//! How much is kept, of how much there is room for.

use super::model::Model;
use crate::quantity::Measured;

/// What browsers give a page at the least, bytes, at two for a letter (common practice, no source).
const LEAST: u64 = 5 * 1024 * 1024;
/// What those give that took more than that: they count letters, or bytes of another coding.
const MOST: u64 = 2 * LEAST;
/// Shorter than this no pace can be told, days.
const SHORTEST: f64 = 60.0;

/// How much room there is at the least where so much is used, bytes.
#[must_use]
pub const fn whole(used: u64) -> u64 {
    if used > LEAST { MOST } else { LEAST }
}

/// Room is scarce: what was deleted is given up at once and not after a month, and old batches are offered
/// to be taken away.
#[must_use]
pub const fn is_tight(used: u64) -> bool {
    used > whole(used) / 10 * 8
}

/// The next save may be refused.
#[must_use]
pub const fn is_nearly_full(used: u64) -> bool {
    used > whole(used) / 100 * 95
}

/// The share that is used, 0 to 1 and more, once it is known.
#[must_use]
pub fn share(m: &Model) -> Option<f64> {
    m.phone.used.map(|used| used as f64 / whole(used) as f64)
}

/// For how many years there is room at the pace since the first batch; none when that is too short.
#[must_use]
pub fn years_left(m: &Model) -> Option<f64> {
    let used = m.phone.used.filter(|used| *used > 0)?;
    let first = m.journal.batches().map(|(_, heading)| heading.started).min()?;
    let days = m.now.since(first).value() / 24.0;
    let left = whole(used).saturating_sub(used) as f64;
    (days >= SHORTEST).then(|| left / (used as f64 / days) / 365.25)
}
