//! Rule (a) of a finish: is the whole late run of readings level, and not its last two alone?
//!
//! On paper: write the readings in order of time. The *pair* is the last one and the nearest one that is
//! long enough before it. All between the two must lie within a point above and two below the last.
//! Then the *slow run* goes back from the pair's earlier reading as long as from one reading to the next
//! the gravity fell by no more than a point, or than half a point a day. Take in it the nearest reading a
//! week or more before the last (and once more: two weeks). If the last stands more than a point below
//! it, and not more than a point above where the pace until then would have brought it, it drifts.

use super::course::Look;
use crate::advice::practice::{POINT, SLOW_A_DAY};
use crate::quantity::{HAIR, Hours, Measured};

/// How far back a drift is looked for.
const BACK: [Hours; 2] = [Hours::literal(168.0), Hours::literal(336.0)];

/// A fall that no two neighbours show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Drift {
    /// The reading it is seen from.
    pub from: Look,
    /// To the last.
    pub apart: Hours,
}

pub(super) fn value(look: &Look) -> f64 {
    look.gravity.value().value()
}

/// The nearest reading at least so long before the last.
pub(super) fn before(main: &[Look], least: Hours) -> Option<usize> {
    let last = main.last()?;
    main.iter().rposition(|look| last.at.since(look.at).value() >= least.value() - 0.5)
}

/// Whether readings in order of time drift down; `earlier` is the place of the pair's earlier one.
/// Nothing here stretches with a reading's error: a rougher reading must not look more level.
pub(super) fn drift(main: &[Look], earlier: usize) -> Option<Drift> {
    let last = main.last()?;
    let mut first = earlier;
    while let Some(older) = first.checked_sub(1) {
        let (a, b) = (main.get(older)?, main.get(first)?);
        let may_fall = (SLOW_A_DAY.value() * b.at.since(a.at).days()).max(POINT.value());
        if value(a) - value(b) > may_fall + HAIR {
            break;
        }
        first = older;
    }
    let run = |least| before(main, least).filter(|at| *at >= first);
    let mut since = earlier;
    for back in BACK {
        let Some(at) = run(back) else { break };
        let (from, middle) = (main.get(at)?, main.get(since)?);
        let days = middle.at.since(from.at).days();
        let pace = if days > 0.0 { (value(from) - value(middle)).max(0.0) / days } else { 0.0 };
        let would_be = value(middle) - pace * last.at.since(middle.at).days();
        let falls = value(from) - value(last) > POINT.value() + HAIR;
        if falls && value(last) - would_be <= POINT.value() + HAIR {
            return Some(Drift { from: *from, apart: last.at.since(from.at) });
        }
        since = at;
    }
    None
}

/// From the pair's earlier reading back as long as all stay level with the last, the nearest first. Each is
/// worth its own bound on an unseen tail, and the farther ones the better.
pub(super) fn level_back(main: &[Look], earlier: usize) -> impl Iterator<Item = &Look> {
    let last = main.last().map_or(0.0, value);
    let run = main.get(..=earlier).unwrap_or_default().iter().rev();
    run.take_while(move |look| value(look) - last <= POINT.value() + HAIR)
}
