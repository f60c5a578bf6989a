//! What is left: the kinds of beer that the readings leave possible, each with its share and its extract.

use super::ends::{Ends, NODES};
use super::histogram::Left;
use super::looks::Looks;
use super::shapes::After;
use super::weigh::{DEEPER, OfShape, Table, Weighed, woken};
use crate::advice::family::Family;

/// So many beers are counted as if they stalled, to go on later. Fewer do (common practice says one in
/// twenty or so, no source): it is weighted by what a burst costs beside a week of waiting, and chosen by
/// the curve that tests/calibration prints.
const STALL: f64 = 0.18;
/// With a kit's own yeast, which is little and old, and of which nobody can say where it ends.
const STALL_UNKNOWN: f64 = 0.3;
/// Beside a satellite that was read level, for that tells a stall from an end.
const STALL_BESIDE: f64 = 0.11;
/// Of so many one is eaten slowly by something else, told or not (common practice, no source).
const EATEN: f64 = 0.025;
const EATEN_TOLD: f64 = 0.6;
/// What something else eats in all, points, and how likely.
const EATS: [(f64, f64); 3] = [(3.0, 0.3), (6.0, 0.4), (11.0, 0.3)];
/// A stall that will wake has done so while it was level and warm, falling by e in so many days; one of
/// two kinds each.
const WAKES_WITHIN: [f64; 2] = [120.0, 600.0];
/// A beer with less than this left of its fall has ended, points.
const ENDED: f64 = 0.5;
/// Ends are counted from here, points, for beer may end below water.
pub(super) const ZERO: f64 = 20.0;
/// It is level from when its course stands no more than this above its level, points.
const LEVEL: f64 = 1.0;

/// The kinds, as far as the readings tell.
pub(super) struct Kinds {
    /// Courses that end by themselves: ended or in their tail.
    pub(super) healthy: Left,
    /// Stalled, by what they could still give, as if no time had passed at rest.
    pub(super) stalled: Left,
    /// Something else eats.
    pub(super) eaten: Left,
    /// A rest that was seen to end.
    pub(super) woken: Left,
    /// Weight by shape, and weighed fall.
    pub(super) shapes: Vec<OfShape>,
    /// Weights by the level, and by the end of those that stalled there.
    pub(super) levels: [f64; NODES],
    pub(super) stalls: [f64; NODES],
    /// Where it ends when something else eats, and when it woke, counted from [`ZERO`].
    pub(super) eaten_ends: Left,
    pub(super) woken_ends: Left,
}

/// How often something else eats.
pub(super) fn eaters(family: Family) -> f64 {
    if family.may_go_on() { EATEN_TOLD } else { EATEN }
}

/// How often a beer stalls.
fn stalls(family: Family, ends: &Ends) -> f64 {
    match family {
        _ if ends.satellite.is_some() => STALL_BESIDE,
        Family::Unknown => STALL_UNKNOWN,
        _ => STALL,
    }
}

/// Reads the kinds off the weighed courses, as they stood at the last reading.
pub(super) fn kinds(weighed: &Weighed, ends: &Ends, family: Family, table: &Table) -> Kinds {
    let last = weighed.read().saturating_sub(1);
    let mut found = Kinds {
        healthy: Left::new(),
        stalled: Left::new(),
        eaten: Left::new(),
        woken: Left::new(),
        shapes: vec![OfShape::default(); weighed.shapes.len()],
        levels: [0.0; NODES],
        stalls: [0.0; NODES],
        eaten_ends: Left::new(),
        woken_ends: Left::new(),
    };
    // By level: the weight of stalls, and what is left of their main fall.
    let mut rests = [(0.0, 0.0); NODES];
    let (eats, stall) = (eaters(family), stalls(family, ends));
    let stalls_at = ends.stalled.map(|by| stall * by.iter().sum::<f64>());
    weighed.each(ends, table, |k, from, likely| {
        let (left, gone) = if weighed.read() == 0 { (1.0, 0.0) } else { weighed.at(last, k) };
        let shape = &weighed.shapes[k];
        for (j, likely) in (from..).zip(likely) {
            if *likely <= 1e-12 {
                continue;
            }
            let fall = (ends.start - ends.nodes[j]).max(0.0);
            let mut add = |weight: f64| {
                found.shapes[k].weight += weight;
                found.shapes[k].fall += weight * fall;
                found.shapes[k].square += weight * fall * fall;
            };
            match shape.after {
                After::Nothing => {
                    let well = likely * ends.healthy[j];
                    let stalled = likely * stalls_at[j];
                    found.healthy.add(left * fall, well);
                    found.levels[j] += well;
                    rests[j].0 += stalled;
                    rests[j].1 += stalled * left * fall;
                    add(well + stalled);
                }
                After::Eaten(..) => {
                    let weight = likely * eats * ends.healthy[j];
                    for (most, share) in EATS {
                        let rest = if most > gone { most - gone } else { 0.3 * most };
                        found.eaten.add(left * fall + rest, weight * share);
                        found.eaten_ends.add(ends.nodes[j] - gone - rest + ZERO, weight * share);
                    }
                    add(weight);
                }
                After::Wakes(_, which) => {
                    // What has not woken by the last reading is a stall, and counted there.
                    if gone > 0.0 {
                        let depth = woken(which);
                        let weight = likely * stall * stall_of(ends, j, depth);
                        found.woken.add(left * fall + depth - gone, weight);
                        found.woken_ends.add(ends.nodes[j] - depth + ZERO, weight);
                        add(weight);
                    }
                }
            }
        }
    });
    for (j, (weight, more)) in rests.into_iter().enumerate() {
        if weight <= 0.0 {
            continue;
        }
        found.stalls[j] = weight;
        let of: f64 = ends.stalled[j].iter().sum();
        for (deeper, share) in DEEPER.iter().zip(ends.stalled[j]) {
            found.stalled.add(more / weight + deeper, weight * share / of);
        }
    }
    found
}

/// How likely a stall at a level goes down by about `depth`.
fn stall_of(ends: &Ends, level: usize, depth: f64) -> f64 {
    let near = DEEPER.iter().zip(ends.stalled[level]);
    let split = 5.5;
    near.filter(|(deeper, _)| (**deeper < split) == (depth < split)).map(|(_, share)| share).sum()
}

/// From which reading on the course is level.
pub(super) fn level_from(kinds: &Kinds, weighed: &Weighed, looks: &Looks) -> Option<usize> {
    let last = looks.main.len().min(weighed.read()).checked_sub(1)?;
    let sum: f64 = kinds.shapes.iter().map(|of| of.weight).sum();
    let shapes = kinds.shapes.iter().enumerate().filter(|(_, of)| of.weight > 1e-9 * sum);
    let likely: Vec<_> = shapes.map(|(k, of)| (k, of, weighed.at(last, k).1)).collect();
    let over = |reading: usize| {
        let all = likely.iter().map(|(k, of, by_now)| {
            let (left, gone) = weighed.at(reading, *k);
            of.fall * left + of.weight * (by_now - gone)
        });
        all.sum::<f64>() / sum.max(f64::MIN_POSITIVE)
    };
    if over(last) > LEVEL {
        return None;
    }
    // No course rises.
    let (mut least, mut level) = (0, last);
    while least < level {
        let middle = usize::midpoint(least, level);
        if over(middle) <= LEVEL { level = middle } else { least = middle + 1 }
    }
    Some(level)
}

/// The part of stalls able to wake that have not, so many days level and warm.
pub(super) fn asleep(days: f64) -> f64 {
    WAKES_WITHIN.iter().map(|fold| 0.5 * (-days / fold).exp()).sum()
}

/// Shares of the kinds, and all that may be left together.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Shares {
    pub(super) ended: f64,
    pub(super) tail: f64,
    pub(super) stalled: f64,
    pub(super) eaten: f64,
    pub(super) left: Left,
}

/// The shares, with so many days level and warm.
pub(super) fn shares(kinds: &Kinds, days: f64) -> Shares {
    let asleep = asleep(days);
    let mut left = Left::new();
    left.join(&kinds.healthy, 1.0);
    left.join(&kinds.eaten, 1.0);
    left.join(&kinds.woken, 1.0);
    left.join(&kinds.stalled, asleep);
    let all = left.weight().max(f64::MIN_POSITIVE);
    let tail = kinds.healthy.above(ENDED);
    // One that woke and went down has ended.
    let wakes = kinds.woken.above(ENDED);
    Shares {
        ended: (kinds.healthy.weight() - tail + kinds.woken.weight() - wakes) / all,
        tail: tail / all,
        stalled: (asleep * kinds.stalled.weight() + wakes) / all,
        eaten: kinds.eaten.weight() / all,
        left,
    }
}
