//! How much is kept, of how much there is room for.

use super::model::Model;
use crate::quantity::Measured;

/// What browsers give a page, bytes, at two for a letter: 5 MiB in those in use (common practice, no source).
pub const ROOM: u64 = 5 * 1024 * 1024;
/// From here on room is scarce, bytes: what was deleted is given up at once, and not after a month.
pub const TIGHT: u64 = ROOM / 10 * 8;
/// Shorter than this no pace can be told, days.
const SHORTEST: f64 = 60.0;

/// The share that is used, 0 to 1 and more, once it is known.
#[must_use]
pub fn share(m: &Model) -> Option<f64> {
    m.phone.used.map(|used| used as f64 / ROOM as f64)
}

/// For how many years there is room at the pace since the first batch; none when that is too short.
#[must_use]
pub fn years_left(m: &Model) -> Option<f64> {
    let used = m.phone.used.filter(|used| *used > 0)? as f64;
    let first = m.journal.batches().map(|(_, heading)| heading.started).min()?;
    let days = m.now.since(first).value() / 24.0;
    (days >= SHORTEST).then(|| (ROOM as f64 - used).max(0.0) / (used / days) / 365.25)
}
