//! What the weighed curves say: the band, the end, the time of the last point.

use super::HORIZON;
use super::figures::{Histogram, TENTH};
use super::looks::{Start, gravity, stray};
use super::prior::{Ends, POINT, Pace};
use super::weigh::Weighed;
use crate::quantity::Measured;

/// Points of the band up to the last reading, and after it.
const BEFORE: usize = 14;
const AFTER: usize = 22;
/// Beyond the band, only for the time of the last point.
const FURTHER: usize = 14;
/// The band goes on for this part of the time so far, days at least and at most.
const GOES_ON: (f64, f64, f64) = (0.6, 3.0, 10.0);
/// What lies outside the band and the end on each side: a little less than a tenth, because no beer is
/// quite like its model. With these, tests/calibration finds four of five inside or more.
const OUTER: f64 = 0.08;
const OUTER_END: f64 = 0.095;
/// What is left now lies below its bound in so many of the weighed curves, for 95 of 100 real beers.
const MOST_LEFT: f64 = 0.975;
/// A curve with less weight than this does not count.
const NOTHING: f64 = 1e-6;
/// A beer that stopped above what is expected goes on later as often as this (our choice),
const RESUMES: f64 = 0.4;
/// surely counted as stopped from so far above on, °P,
const ABOVE: f64 = 2.0 * POINT;
/// after so many days,
const AFTER_DAYS: [f64; 4] = [0.2, 1.5, 4.0, 9.0];
/// to an end so far into what is expected: 0 is its lower side, 1 its upper.
const TO: [f64; 3] = [-0.4, 0.3, 0.85];
/// What is wrong with an instrument is wrong in all of its readings: °P to both sides of an end,
const MORE: f64 = 0.3 * POINT;
/// and so much more above what is expected, where the readings are all there is.
const ALONE: f64 = 0.9 * POINT;

/// Times are hours since pitching, extracts degrees Plato.
pub(super) struct Outlook {
    pub(super) band: Vec<(f64, [f64; 3])>,
    pub(super) end: [f64; 3],
    /// Early, middle and late; `None` is beyond the horizon.
    pub(super) one_point: [Option<f64>; 3],
    /// Upper bound, specific gravity.
    pub(super) left_now: f64,
}

/// All curves of one end together.
#[derive(Clone)]
struct Stopped {
    /// The weight of those that stay there.
    stays: f64,
    /// The weight of all, and the sum of their extracts so weighed, where some go on.
    weight: f64,
    mean: Vec<f64>,
}

/// Reads the outlook at the `last` reading off the weighed curves.
pub(super) fn outlook(
    weighed: &[Weighed],
    last: f64,
    start: Start,
    ends: &Ends,
    pace: Pace,
) -> Outlook {
    let times = times(last);
    let shown = BEFORE + AFTER;
    let (lowest, highest) = (ends.nodes.first(), start.extract + 4.0 * start.sigma);
    let lowest = lowest.map_or(0.0, |end| end.extract);
    let histogram = || Histogram::new(lowest, highest, 600);
    let mut band: Vec<Histogram> = (0..shown).map(|_| histogram()).collect();
    let mut end_at = histogram();
    let mut one_point = Histogram::new(0.0, last + HORIZON.value(), 600);
    let mut left_now = Histogram::new(0.0, highest - lowest, 800);
    let nothing = Stopped { stays: 0.0, weight: 0.0, mean: vec![0.0; times.len()] };
    let mut stopped = vec![nothing; ends.nodes.len()];

    let core = (ends.core.from.value(), ends.core.to.value());
    let to = TO.map(|part| core.0 + part * (core.1 - core.0));
    // Within what is expected nothing is left to go on with.
    let goes_on = |extract: f64| RESUMES * ((extract - core.1) / ABOVE).clamp(0.0, 1.0);

    for w in weighed {
        if w.by_end.iter().sum::<f64>() < NOTHING {
            continue;
        }
        let left: Vec<f64> = times.iter().map(|t| w.course.left(*t)).collect();
        for ((end, weight), stopped) in ends.nodes.iter().zip(&w.by_end).zip(&mut stopped) {
            if *weight < NOTHING * 0.01 {
                continue;
            }
            let fall = start.extract - end.extract;
            let stays = weight * (1.0 - goes_on(end.extract));
            stopped.stays += stays;
            left_now.add(fall * left[BEFORE - 1], stays);
            one_point.add(when(&times, &left, POINT / fall), stays);
            for (bin, left) in band.iter_mut().zip(&left) {
                bin.add(end.extract + fall * left, stays);
            }
            if stays < *weight {
                stopped.weight += weight;
                for (mean, left) in stopped.mean.iter_mut().zip(&left) {
                    *mean += weight * (end.extract + fall * left);
                }
            }
        }
    }
    for (i, stopped) in stopped.iter().enumerate() {
        let (from, to) = ends.cell(i);
        let more = if from > core.1 { MORE + ALONE } else { MORE };
        end_at.spread(from - more, to + more, stopped.stays);
    }
    // Going on, it falls by e in the usual time to half way.
    let fold = pace.half.0.exp();
    for (end, stopped) in ends.nodes.iter().zip(&stopped).filter(|(_, s)| s.weight > 0.0) {
        let share = stopped.weight * goes_on(end.extract) / (TO.len() * AFTER_DAYS.len()) as f64;
        let now = stopped.mean[BEFORE - 1] / stopped.weight;
        for to in to {
            let more = end.extract - to;
            let part = (core.1 - core.0) / 6.0;
            end_at.spread(to - part, to + part, AFTER_DAYS.len() as f64 * share);
            left_now.add(now - to, AFTER_DAYS.len() as f64 * share);
            for days in AFTER_DAYS {
                let from = last + 24.0 * days;
                one_point.add(from + fold * (more / POINT).ln().max(0.0), share);
                for ((bin, mean), t) in band.iter_mut().zip(&stopped.mean).zip(&times) {
                    let gone = 1.0 - (-(t - from).max(0.0) / fold).exp();
                    bin.add(mean / stopped.weight - more * gone, share);
                }
            }
        }
    }

    let range = |of: &Histogram, outer: f64| [outer, 0.5, 1.0 - outer].map(|q| of.quantile(q));
    let within = |t: f64| Some(t).filter(|t| *t < last + HORIZON.value() - 1.0);
    let left = left_now.quantile(MOST_LEFT).max(0.0);
    let end = range(&end_at, OUTER_END);
    Outlook {
        band: falling(times.iter().zip(&band).map(|(t, of)| (*t, range(of, OUTER))), start, end[1]),
        end,
        one_point: window(&one_point, last).map(within),
        left_now: gravity(end[1] + left).value() - gravity(end[1]).value(),
    }
}

/// Early, middle and late. What may be past needs no lower bound, so the upper may come nearer; but what
/// is called past is so in nine of ten.
fn window(one_point: &Histogram, last: f64) -> [f64; 3] {
    let past = one_point.below(last);
    let spare = (past - 0.1).min(0.85 - past).clamp(0.0, 0.05);
    [0.1, 0.5, 0.9 - spare].map(|share| one_point.quantile(share))
}

/// From pitching to the last reading, through the band, to the horizon.
fn times(last: f64) -> Vec<f64> {
    let (part, least, most) = GOES_ON;
    let on = (part * last).clamp(24.0 * least, 24.0 * most);
    let evenly = |from: f64, to: f64, count: usize| {
        (1..=count).map(move |i| from + (to - from) * i as f64 / count as f64)
    };
    let mut times = vec![0.0];
    times.extend(evenly(0.0, last, BEFORE - 1));
    times.extend(evenly(last, last + on, AFTER));
    times.extend(evenly(last + on, last + HORIZON.value(), FURTHER));
    times
}

/// When a curve is down to `part`, between the times it is known at; the last of them when later.
fn when(times: &[f64], left: &[f64], part: f64) -> f64 {
    let at = left.partition_point(|left| *left > part);
    let last = times.last().copied().unwrap_or(0.0);
    let (Some(after), Some(before)) = (left.get(at), at.checked_sub(1).and_then(|i| left.get(i)))
    else {
        return if at == 0 { 0.0 } else { last };
    };
    // Tails are straight in the logarithm.
    let ln = |left: f64| left.max(1e-12).ln();
    let share = (ln(*before) - ln(part)) / (ln(*before) - ln(*after)).max(1e-12);
    times[at - 1] + share.clamp(0.0, 1.0) * (times[at] - times[at - 1])
}

/// The band, widened by what no curve of the family knows, and falling throughout.
fn falling(
    points: impl Iterator<Item = (f64, [f64; 3])>,
    start: Start,
    end: f64,
) -> Vec<(f64, [f64; 3])> {
    let fall = (start.extract - end).max(0.1);
    let mut before = [f64::INFINITY; 3];
    points
        .map(|(t, [low, middle, high])| {
            let left = ((middle - end) / fall).clamp(0.0, 1.0);
            let more = TENTH * (left * start.sigma).hypot(stray(fall, left));
            let wider =
                [middle - (middle - low).hypot(more), middle, middle + (high - middle).hypot(more)];
            for (before, now) in before.iter_mut().zip(wider) {
                *before = before.min(now);
            }
            (t, before)
        })
        .collect()
}
