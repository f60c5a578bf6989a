//! What the weighed courses foretell: the band, the end, the day of the last point.

use super::histogram::Left;
use super::judge::{Case, Judged};
use super::left::{ZERO, asleep};
use super::said::{BandPoint, Hump, Outlook};
use super::shapes::After;
use super::weigh::DEEPER;
use crate::advice::family::{Family, Span};
use crate::advice::practice::STRONG;
use crate::order::in_order;
use crate::quantity::{Measured, Share, SpecificGravity};

/// Points of the band.
const POINTS: usize = 34;
/// It goes on for this part of the time so far, hours at least and at most.
const GOES_ON: (f64, f64, f64) = (0.6, 72.0, 240.0);
/// Standard deviations to the outer tenth of a normal distribution.
const TENTH: f64 = 1.2816;
/// No course of the grid is the beer's own, points: half way by this part of the fall, and at least.
const STRAYS: (f64, f64) = (0.03, 0.6);
/// From such a share of waking beers on there are two outcomes: one that rests may never wake.
const TWO: f64 = 0.12;
/// Nearer than this the two are one, points.
const APART: f64 = 2.0;
/// What one instrument is off in its readings, points to each side of an end.
const SHARED: f64 = 0.4;
/// No shape with a smaller part of the weight counts.
const LITTLE: f64 = 3e-4;
/// The day is said to lie between these parts of the courses; where the end drags on, as of lager and of strong beer,
/// between the latter. It is said in whole days, which are wider: so many hours of the last are left off. All were
/// chosen by what `tests/calibration` prints, for the day to lie there in four of five looks.
const DAY: (f64, f64, f64) = (0.18, 0.82, 8.0);
const DRAGS_ON: (f64, f64, f64) = (0.14, 0.94, 12.0);
/// Further ahead nothing is said, hours.
const HORIZON: f64 = 24.0 * 60.0;

fn gravity(points: f64) -> SpecificGravity {
    SpecificGravity::nearest(1.0 + points / 1000.0)
}

fn hump(ends: &Left, share: f64) -> Hump {
    let at = |share: f64| ends.quantile(share) - ZERO;
    let (low, middle, high) = (at(0.1), at(0.5), at(0.9));
    let below = (middle - low).hypot(TENTH * SHARED);
    let above = (high - middle).hypot(TENTH * SHARED);
    let end = Span::new(gravity(middle - below), gravity(middle + above));
    Hump { share: Share::nearest(share), end, middle: gravity(middle) }
}

/// Reads the outlook off a judged case.
pub(super) fn outlook(case: &Case, judged: &Judged) -> Outlook {
    let kinds = &judged.kinds;
    let awake = asleep(judged.proof.days);
    let (mut stays, mut wakes) = (Left::new(), Left::new());
    for (j, node) in case.ends.nodes.iter().enumerate() {
        // A node stands for what is half way to its neighbours.
        let beside = |i: Option<usize>| i.and_then(|i| case.ends.nodes.get(i)).unwrap_or(node);
        let half = 0.25 * (beside(Some(j + 1)) - beside(j.checked_sub(1)));
        for part in [-half, half] {
            stays.add(node + part + ZERO, 0.5 * kinds.levels[j]);
            let of: f64 = case.ends.stalled[j].iter().sum::<f64>().max(f64::MIN_POSITIVE);
            for (deeper, share) in DEEPER.iter().zip(case.ends.stalled[j]) {
                let weight = 0.5 * awake * kinds.stalls[j] * share / of;
                wakes.add(node + part - deeper + ZERO, weight);
            }
        }
    }
    stays.join(&kinds.eaten_ends, 1.0);
    wakes.join(&kinds.woken_ends, 1.0);
    let all = stays.weight() + wakes.weight();
    let share = wakes.weight() / all.max(f64::MIN_POSITIVE);
    let apart = (stays.quantile(0.5) - wakes.quantile(0.5)).abs();
    let (end, second) = if share > TWO && apart > APART {
        (hump(&stays, 1.0 - share), Some(hump(&wakes, share)))
    } else {
        stays.join(&wakes, 1.0);
        (hump(&stays, 1.0), None)
    };
    let days = one_point(case, judged);
    Outlook {
        end,
        wakes: second,
        one_point: Span { from: case.looks.moment(days[0]), to: case.looks.moment(days[2]) },
        one_point_middle: case.looks.moment(days[1]),
        band: band(case, judged),
    }
}

/// Early, middle and late hours after pitching when a point is left.
fn one_point(case: &Case, judged: &Judged) -> [f64; 3] {
    let shapes = &judged.kinds.shapes;
    let all: f64 = shapes.iter().map(|of| of.weight).sum();
    let mut times: Vec<(f64, f64)> = Vec::new();
    for (shape, of) in case.weighed.shapes.iter().zip(shapes) {
        if of.weight <= LITTLE * all || matches!(shape.after, After::Eaten(..)) {
            continue;
        }
        let fall = of.fall / of.weight;
        let more = shape.goes_down_by();
        let left = |hours: f64| fall * shape.left(hours) + more - shape.gone(hours);
        let (mut early, mut late) = (0.0, HORIZON);
        for _ in 0..12 {
            let middle = f64::midpoint(early, late);
            if left(middle) > 1.0 { early = middle } else { late = middle }
        }
        times.push((late, of.weight));
    }
    let times = in_order(times, |a, b| a.0.total_cmp(&b.0));
    let sum: f64 = times.iter().map(|(_, weight)| weight).sum();
    let drags_on = case.record.family == Family::Lager || case.ends.start > STRONG.points();
    let (early, late, left_off) = if drags_on { DRAGS_ON } else { DAY };
    let [early, middle, late] = [early, 0.5, late].map(|share| {
        let mut below = 0.0;
        let reaches = |(_, weight): &&(f64, f64)| {
            below += weight;
            below >= share * sum
        };
        times.iter().find(reaches).map_or(HORIZON, |(time, _)| *time)
    });
    [early, middle, (late - left_off).max(middle)]
}

/// The band: mean and spread of the courses, widened by what no course knows, and falling throughout.
fn band(case: &Case, judged: &Judged) -> Vec<BandPoint> {
    let last = case.looks.main.last().map_or(0.0, |p| p.hours);
    let until = last + (GOES_ON.0 * last).clamp(GOES_ON.1, GOES_ON.2);
    let shapes = &judged.kinds.shapes;
    let all: f64 = shapes.iter().map(|of| of.weight).sum::<f64>().max(f64::MIN_POSITIVE);
    let start = case.ends.start;
    let mut before = [f64::INFINITY; 3];
    let point = |i: usize| {
        let hours = until * i as f64 / (POINTS - 1) as f64;
        let (mut mean, mut square, mut part) = (0.0, 0.0, 0.0);
        for (shape, of) in case.weighed.shapes.iter().zip(shapes) {
            if of.weight <= LITTLE * all {
                continue;
            }
            let gone = 1.0 - shape.left(hours);
            let fall = of.fall / of.weight;
            let value = start - fall * gone - shape.gone(hours);
            let within = (of.square / of.weight - fall * fall).max(0.0) * gone * gone;
            mean += of.weight / all * value;
            square += of.weight / all * (value * value + within);
            part += of.weight / all * (1.0 - gone);
        }
        let strays = STRAYS.1.hypot(STRAYS.0 * start * 4.0 * part * (1.0 - part));
        let spread = TENTH * (square - mean * mean).max(0.0).sqrt().hypot(strays);
        for (least, now) in before.iter_mut().zip([mean - spread, mean, mean + spread]) {
            *least = least.min(now);
        }
        let [low, middle, high] = before.map(gravity);
        BandPoint { at: case.looks.moment(hours), low, middle, high }
    };
    (0..POINTS).map(point).collect()
}
