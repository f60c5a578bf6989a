//! Weighing the curves: a grid over half way, pace, skew, slow part and end, laid three times, each time
//! closer about what the readings left of it.
//!
//! The last grid has 9 × 7 places for each of 3 skews with 3 slow parts, and 4 stalls for one skew: 819
//! shapes, each with 29 ends at most. With the two grids before it and 40 looks, the most there can be,
//! that is 1.3 million distances looked up in a table, and some 80 thousand exponentials.

use super::figures::Cost;
use super::looks::{Start, Usable};
use super::prior::{End, Ends, Pace};
use crate::quantity::{Hours, Measured, Share, Skew};
use crate::science::fermentation_curve::Shape;

/// Skews, each with its weight.
const SKEWS: [(Skew, f64); 3] =
    [(Skew::literal(0.6), 0.25), (Skew::literal(1.3), 0.45), (Skew::literal(3.0), 0.3)];
/// The part that ends more slowly, its pace, and their weight.
const SLOW: [(Share, Share, f64); 3] = [
    (Share::literal(0.0), Share::literal(1.0), 0.64),
    (Share::literal(0.1), Share::literal(0.15), 0.18),
    (Share::literal(0.2), Share::literal(0.3), 0.18),
];
/// A beer that stops for a while: the part that comes later, and how long it is steady before, in the
/// hours to half way. All of them together have this weight.
const LATER: [(f64, f64); 4] = [(0.14, 1.0), (0.26, 1.0), (0.14, 2.5), (0.26, 2.5)];
const STOPS: f64 = 0.01;
/// Going on, it falls by e in this part of the hours to half way.
const GOES_ON: f64 = 0.8;
/// Each time the grid is laid: places for half way, places for the pace, what the readings count, and
/// how many standard deviations of the time before it reaches.
const LAID: [(usize, usize, f64, f64); 3] = [(13, 7, 0.1, 2.5), (9, 7, 0.4, 2.2), (9, 7, 1.0, 2.0)];
/// More looks than this are weighed as this many: what is wrong with an instrument or with the curve is
/// wrong in all of them.
const AS_MANY: f64 = 12.0;
/// At pitching hardly anything has gone.
const GONE_AT_PITCHING: f64 = 0.04;

/// One course of the fall.
#[derive(Clone, Copy)]
pub(super) struct Fall {
    shape: Shape,
    /// The part that comes later, from when on, and in how long it falls by e.
    later: (f64, f64, f64),
}

impl Fall {
    /// The part still to come, so many hours after pitching.
    pub(super) fn left(&self, hours: f64) -> f64 {
        let left = self.shape.left(Hours::nearest(hours)).value();
        let (part, from, fold) = self.later;
        if part > 0.0 {
            left + part * ((-(hours - from).max(0.0) / fold).exp() - left)
        } else {
            left
        }
    }
}

/// A course that was weighed.
pub(super) struct Weighed {
    /// The course.
    pub(super) course: Fall,
    /// Its weight with each end; all weights add up to one.
    pub(super) by_end: Vec<f64>,
}

/// Where a grid is laid for one skew.
#[derive(Clone, Copy)]
struct Place {
    half: (f64, f64),
    fall: (f64, f64),
    /// How the middle of `fall` goes with half way.
    lean: f64,
}

/// One shape before the readings.
struct Tried {
    course: Fall,
    half: f64,
    fall: f64,
    log: f64,
}

/// Every shape with every end, weighed by the readings.
pub(super) fn weigh(looks: &[Usable], start: Start, ends: &Ends, pace: Pace) -> Vec<Weighed> {
    let cost = Cost::new();
    let many = (AS_MANY / looks.len() as f64).min(1.0);
    let mut places = [Place { half: pace.half, fall: pace.fall, lean: 0.0 }; SKEWS.len()];
    let mut weighed = Vec::new();
    for (time, laid) in LAID.into_iter().enumerate() {
        let last = time + 1 == LAID.len();
        // The first times are rough: one end of three, and no slow part.
        let some: Vec<End>;
        let nodes = if last {
            &ends.nodes
        } else {
            some = ends.nodes.iter().copied().step_by(3).collect();
            &some
        };
        let slow = if last { &SLOW[..] } else { &SLOW[..1] };
        for (index, place) in places.iter_mut().enumerate() {
            let later = if last && index == 1 { &LATER[..] } else { &[] };
            let tried = lay(laid, *place, SKEWS[index], slow, later, pace);
            let logs = tried.iter().map(|t| against(t, looks, start, nodes, &cost, many * laid.2));
            let logs: Vec<Vec<f64>> = logs.collect();
            if last {
                let both = tried.into_iter().zip(logs);
                weighed.extend(both.map(|(t, by_end)| Weighed { course: t.course, by_end }));
            } else {
                *place = about(&tried, &logs, *place, laid);
            }
        }
    }
    let highest = weighed.iter().flat_map(|w| &w.by_end).copied().fold(f64::MIN, f64::max);
    let all = weighed.iter_mut().flat_map(|w| &mut w.by_end);
    let sum: f64 = all
        .map(|log| {
            *log = (*log - highest).exp();
            *log
        })
        .sum();
    weighed.iter_mut().flat_map(|w| &mut w.by_end).for_each(|weight| *weight /= sum);
    weighed
}

/// The shapes of one grid.
fn lay(
    (halves, falls, _, reach): (usize, usize, f64, f64),
    place: Place,
    (skew, share): (Skew, f64),
    slow: &[(Share, Share, f64)],
    later: &[(f64, f64)],
    pace: Pace,
) -> Vec<Tried> {
    let step = |i: usize, count: usize| reach * (2.0 * i as f64 / (count - 1) as f64 - 1.0);
    let usual =
        |value: f64, (middle, spread): (f64, f64)| -0.5 * ((value - middle) / spread).powi(2);
    let mut tried = Vec::with_capacity(halves * falls * (slow.len() + later.len()));
    for i in 0..halves {
        let half = place.half.0 + step(i, halves) * place.half.1;
        for j in 0..falls {
            let middle = place.fall.0 + place.lean * (half - place.half.0);
            let fall = middle + step(j, falls) * place.fall.1;
            let hours = half.exp();
            let whole = Hours::nearest(hours * fall.exp());
            let Ok(shape) = Shape::by_half(Hours::nearest(hours), whole, skew) else { continue };
            let gone = 1.0 - shape.left(Hours::literal(0.0)).value();
            // Grids differ in how wide their cells are.
            let cell = (place.half.1 * place.fall.1).ln();
            let log = usual(half, pace.half) + usual(fall, pace.fall) + share.ln() + cell
                - 0.5 * (gone / GONE_AT_PITCHING).powi(2);
            let mut add = |shape, later, weight: f64| {
                let course = Fall { shape, later };
                tried.push(Tried { course, half, fall, log: log + weight.ln() });
            };
            for &(part, pace, weight) in slow {
                add(shape.with_slow_part(part, pace), (0.0, 0.0, 1.0), (1.0 - STOPS) * weight);
            }
            for &(part, steady) in later {
                let from = hours + 1.2 * whole.value() + steady * hours;
                add(shape, (part, from, GOES_ON * hours), STOPS / share / LATER.len() as f64);
            }
        }
    }
    tried
}

/// ln of the weight of one shape with each end.
fn against(
    tried: &Tried,
    looks: &[Usable],
    start: Start,
    ends: &[End],
    cost: &Cost,
    power: f64,
) -> Vec<f64> {
    let left: Vec<(f64, f64, f64)> = looks
        .iter()
        .map(|look| (tried.course.left(look.hours), look.extract, 1.0 / look.sigma))
        .collect();
    let of = |end: &End| {
        let fall = start.extract - end.extract;
        let costs = left
            .iter()
            .map(|(left, extract, fine)| cost.of((end.extract + fall * left - extract) * fine));
        tried.log + end.log - power * costs.sum::<f64>()
    };
    ends.iter().map(of).collect()
}

/// Where most of the weight lies: middle, spread and lean of half way and pace.
fn about(
    tried: &[Tried],
    logs: &[Vec<f64>],
    place: Place,
    laid: (usize, usize, f64, f64),
) -> Place {
    let highest = logs.iter().flatten().copied().fold(f64::MIN, f64::max);
    let weights = logs.iter().map(|of| of.iter().map(|log| (log - highest).exp()).sum::<f64>());
    let weights: Vec<f64> = weights.collect();
    let sum: f64 = weights.iter().sum();
    let mean = |of: &dyn Fn(&Tried) -> f64| {
        tried.iter().zip(&weights).map(|(t, w)| of(t) * w).sum::<f64>() / sum
    };
    let (half, fall) = (mean(&|t| t.half), mean(&|t| t.fall));
    let var = mean(&|t| (t.half - half).powi(2));
    let both = mean(&|t| (t.half - half) * (t.fall - fall));
    // Never closer than the grid could see.
    let (halves, falls, _, reach) = laid;
    let cell = |count: usize, spread: f64| 2.0 * reach / (count - 1) as f64 * spread;
    let least = 0.5 * cell(halves, place.half.1);
    let lean = if var > 0.0 { (both / var.max(least * least)).clamp(-3.0, 3.0) } else { 0.0 };
    let rest = (mean(&|t| (t.fall - fall - lean * (t.half - half)).powi(2))).sqrt();
    Place {
        half: (half, var.sqrt().max(least)),
        fall: (fall, rest.max(0.5 * cell(falls, place.fall.1))),
        lean,
    }
}
