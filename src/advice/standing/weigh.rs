//! Weighing: every course with every level against every reading, and what that leaves of each kind of
//! beer. Nothing is drawn by lot.
//!
//! A reading's own error is taken from its scatter, whatever was stated of it: most are good to a point,
//! some to two, and one in fifty is a slip; where all scatter more than that, all count for less. So a
//! rougher reading never looks more finished; what was stated counts in [`proof`](super::proof).

use super::ends::{Ends, NODES, STALLS, normal};
use super::looks::Looks;
use super::shapes::{After, Shape, WOKEN, shapes};
use crate::advice::family::Family;

/// Errors of a reading, points, and how often (common practice, no source).
const ERRORS: [(f64, f64); 3] = [(0.8, 0.68), (1.9, 0.29), (9.0, 0.03)];
/// Steps of the table for each point, and how far it reaches.
const FINE: f32 = 24.0;
const REACH: usize = 1200;
/// No course is the beer's own: it strays from it by this part of the fall, most of it half way.
const STRAYS: f64 = 0.05;
/// A course so much less likely than the best is not followed further.
const HOPELESS: f32 = 18.0;
/// Nor one with a level at either end of those followed that is so much less likely.
const HOPELESS_LEVEL: f32 = 24.0;
/// And one with a level so much less likely has no weight.
const LITTLE: f32 = 11.0;
/// Nor one that is so unusual to begin with.
const UNUSUAL: f64 = 2e-5;
/// The scatter of good readings about their course, points; it is learned as if so many had been seen before,
/// and the course itself takes away so many.
const SCATTER: (f32, f32, f32) = (0.8, 4.0, 2.5);
/// A slip shows no scatter: no reading counts as further off than this, points.
const SLIP: f32 = 3.0;
/// Readings nearer in time than this count for less, hours, and never for less than a part.
const WHOLE_LOOK: (f64, f64) = (10.0, 0.15);

/// Every course against every reading.
#[derive(Clone)]
pub(super) struct Weighed {
    pub(super) shapes: Vec<Shape>,
    /// −ln of how likely the readings are, by shape and level.
    cost: Vec<f32>,
    /// The least of each shape's; [`f32::MAX`] for one that is not followed.
    least: Vec<f32>,
    /// From which level to before which each is followed.
    levels: Vec<(usize, usize)>,
    /// The least of all.
    best: f32,
    /// The part of the main fall still to come, by reading and shape.
    left: Vec<f32>,
    /// What has gone after it.
    gone: Vec<f32>,
    /// Each reading's points, by how much more than its own error it may stray from a course of the grid, and
    /// how much it counts.
    seen: Vec<(f32, f32, f32)>,
    read: usize,
}

/// The weight of one shape, and its sums with the fall to the level and the square of that.
#[derive(Clone, Copy, Default)]
pub(super) struct OfShape {
    pub(super) weight: f64,
    pub(super) fall: f64,
    pub(super) square: f64,
}

impl Weighed {
    /// The shapes for a yeast and a start, with nothing read.
    pub(super) fn new(family: Family, start: f64) -> Self {
        let mut shapes = shapes(family, start);
        let kind = |shape: &Shape| match shape.after {
            After::Nothing => 0,
            After::Eaten(..) => 1,
            After::Wakes(..) => 2,
        };
        let mut sums = [0.0; 3];
        shapes.iter().for_each(|shape| sums[kind(shape)] += shape.weight);
        for shape in &mut shapes {
            shape.weight /= sums[kind(shape)];
        }
        let count = shapes.len();
        Self {
            cost: vec![0.0; count * NODES],
            least: shapes
                .iter()
                .map(|shape| if shape.weight > UNUSUAL { 0.0 } else { f32::MAX })
                .collect(),
            levels: vec![(0, NODES); count],
            best: 0.0,
            shapes,
            left: Vec::new(),
            gone: Vec::new(),
            seen: Vec::new(),
            read: 0,
        }
    }

    /// Weighs the next reading, in order of time.
    pub(super) fn add(&mut self, looks: &Looks, ends: &Ends, table: &Table) {
        let Some(look) = looks.main.get(self.read) else { return };
        let before = self.read.checked_sub(1).and_then(|i| looks.main.get(i));
        let since = before.map_or(f64::MAX, |before| look.hours - before.hours);
        let counts = (since / WHOLE_LOOK.0).clamp(WHOLE_LOOK.1, 1.0) as f32;
        let fall = (ends.start - ends.usual.0).max(1.0);
        let height = ((look.value - ends.usual.0) / fall).clamp(0.0, 1.0);
        let stray = (STRAYS * fall * 4.0 * height * (1.0 - height))
            .hypot(height * ends.start_sigma)
            .hypot(look.other);
        let fine = FINE / (1.0f64.hypot(stray)) as f32;
        let start = ends.start as f32;
        let value = look.value as f32;
        self.seen.push((value, 1.0f64.hypot(stray) as f32, counts));
        let nodes = ends.nodes.map(|node| node as f32);
        let hopeless = self.best + HOPELESS_LEVEL;
        let mut best = f32::MAX;
        // Several in a row have one main fall.
        let mut main: Option<(&Shape, (f64, f64))> = None;
        let before = self.left.len();
        self.left.resize(before + self.shapes.len(), 0.0);
        self.gone.resize(before + self.shapes.len(), 0.0);
        let seen = self.left[before..].iter_mut().zip(&mut self.gone[before..]);
        let rows = self.cost.chunks_exact_mut(NODES).zip(&mut self.levels);
        let all = self.shapes.iter().zip(&mut self.least).zip(seen.zip(rows));
        for ((shape, least), ((left, gone), (row, levels))) in all {
            if *least == f32::MAX {
                continue;
            }
            let fallen = match main {
                Some((before, fallen)) if shape.falls_like(before) => fallen,
                _ => shape.main(look.hours),
            };
            main = Some((shape, fallen));
            *left = shape.left_of(fallen) as f32;
            *gone = shape.gone(look.hours) as f32;
            let line = ((value + *gone - start * *left) * fine, (1.0 - *left) * fine);
            let (from, to) = followed(row, *levels, hopeless);
            *levels = (from, to);
            *least = add_costs(&mut row[from..to], &nodes[from..to], line, (counts, table));
            if *least < best {
                best = *least;
            }
        }
        for least in self.least.iter_mut().filter(|least| **least > best + HOPELESS) {
            *least = f32::MAX;
        }
        self.best = best;
        self.read += 1;
    }

    /// How many readings were weighed.
    pub(super) fn read(&self) -> usize {
        self.read
    }

    /// The part of the main fall still to come at a reading, and what has gone after it.
    pub(super) fn at(&self, reading: usize, shape: usize) -> (f64, f64) {
        let at = reading * self.shapes.len() + shape;
        let of = |list: &[f32]| f64::from(list.get(at).copied().unwrap_or(0.0));
        (of(&self.left), of(&self.gone))
    }

    /// How much the readings count for: less where they scatter about the likeliest course by more than most
    /// do. So a tired eye is known by what it reads, and never by what is stated.
    fn temper(&self, ends: &Ends) -> f32 {
        let (shape, _) = lowest(&self.least);
        let (from, to) = self.levels[shape];
        let row = &self.cost[shape * NODES..(shape + 1) * NODES];
        let level = from + lowest(&row[from..to]).0;
        let fall = (ends.start - ends.nodes[level.min(NODES - 1)]) as f32;
        let (mut squares, mut count) = (0.0, 0.0);
        for (reading, (value, wide, counts)) in self.seen.iter().enumerate() {
            let (left, gone) = self.at(reading, shape);
            let course = ends.start as f32 - fall * (1.0 - left as f32) - gone as f32;
            let off = ((value - course) / wide).abs().min(SLIP);
            squares += counts * off * off;
            count += counts;
        }
        let (good, before, fitted) = SCATTER;
        let scatter = (before * good * good + squares) / (before + (count - fitted).max(0.0));
        (good * good / scatter).min(1.0).sqrt()
    }

    /// Follows only the shapes that are wanted.
    pub(super) fn keep(&mut self, wanted: impl Fn(usize) -> bool) {
        for (k, least) in self.least.iter_mut().enumerate() {
            if !wanted(k) {
                *least = f32::MAX;
            }
        }
    }

    /// Calls `take` for every course that is still likely: the shape's place, the first level that is,
    /// and how likely the readings are with each from there on.
    pub(super) fn each(
        &self,
        ends: &Ends,
        table: &Table,
        mut take: impl FnMut(usize, usize, &[f64]),
    ) {
        let temper = self.temper(ends);
        let (_, best) = lowest(&self.least);
        for (k, row) in self.cost.chunks(NODES).enumerate() {
            if temper * (self.least[k] - best) < LITTLE {
                let weight = self.shapes[k].weight;
                let (from, to) = self.levels[k];
                let mut likely = [0.0; NODES];
                for (likely, cost) in likely[from..to].iter_mut().zip(&row[from..to]) {
                    let off = temper * (*cost - best);
                    if off < LITTLE {
                        *likely = weight * f64::from(table.fades(off));
                    }
                }
                take(k, from, &likely[from..to]);
            }
        }
    }
}

/// The place of the least cost, and it.
fn lowest(costs: &[f32]) -> (usize, f32) {
    let mut lowest = (0, f32::MAX);
    for (at, cost) in costs.iter().enumerate() {
        if *cost < lowest.1 {
            lowest = (at, *cost);
        }
    }
    lowest
}

/// Of the levels that were followed those that are not hopeless at either end.
fn followed(costs: &[f32], (from, to): (usize, usize), hopeless: f32) -> (usize, usize) {
    let likely = |cost: &f32| *cost < hopeless;
    let followed = &costs[from..to];
    let first = followed.iter().position(likely);
    let last = followed.iter().rposition(likely);
    first.zip(last).map_or((from, from), |(first, last)| (from + first, from + last + 1))
}

/// Adds the cost of a reading to each level, and gives the least. The reading lies `over` − level × `part`
/// steps of the table from the course.
fn add_costs(
    costs: &mut [f32],
    levels: &[f32],
    (over, part): (f32, f32),
    (counts, table): (f32, &Table),
) -> f32 {
    let mut least = f32::MAX;
    for (cost, level) in costs.iter_mut().zip(levels) {
        let step = (over - level * part).abs() as usize;
        *cost += counts * table.0[if step < REACH { step } else { REACH - 1 }];
        if *cost < least {
            least = *cost;
        }
    }
    least
}

/// −ln of how likely an error is, by its size; and e^(−x), in steps of x, which is wanted so often.
pub(super) struct Table([f32; REACH], [f32; FADED]);

/// Steps for each unit of x, and how many.
const FADES: f32 = 32.0;
const FADED: usize = (LITTLE * FADES) as usize + 2;

impl Table {
    pub(super) fn new() -> Self {
        let cost = |step: usize| {
            let off = step as f64 / f64::from(FINE);
            let all: f64 = ERRORS.iter().map(|(sigma, share)| share * normal(off, *sigma)).sum();
            -(all.max(1e-30).ln()) as f32
        };
        Self(std::array::from_fn(cost), std::array::from_fn(|step| (-(step as f32) / FADES).exp()))
    }

    /// e^(−x) from nothing to [`LITTLE`], to a part in eight thousand.
    fn fades(&self, x: f32) -> f32 {
        let step = x * FADES;
        let at = step as usize;
        let [here, next] = [at, at + 1].map(|at| self.1[at.min(FADED - 1)]);
        here + (next - here) * (step - at as f32)
    }
}

/// How many ways a stall can end lower, and a rest that was seen to end.
pub(super) const DEEPER: [f64; STALLS.len()] = {
    let mut deeper = [0.0; STALLS.len()];
    let mut i = 0;
    while i < STALLS.len() {
        deeper[i] = STALLS[i].0;
        i += 1;
    }
    deeper
};

/// How deep a rest that was seen to end goes on.
pub(super) fn woken(which: usize) -> f64 {
    WOKEN.get(which).copied().unwrap_or(0.0)
}
