//! Where such beer ends before it is read: by the yeast and its start, by what kit or recipe states, by a
//! satellite. Everything in points of gravity.
//!
//! All weights here are common practice or our choice, no source.

use super::looks::{Looks, Point};
use super::record::Record;
use crate::advice::own_ends::{carried, less_when_strong};
use crate::quantity::{Measured, SpecificGravity};

/// Ends that are tried, near where one is expected and up to the start.
const NEAR: usize = 32;
pub(super) const NODES: usize = 42;
/// The span of a family's attenuation holds this many standard deviations to each side: seven of eight such
/// beers.
const SPAN: f64 = 1.5;
/// And no family is wider than this.
const WIDEST: f64 = 0.05;
/// What one instrument is off in all its readings, points.
const SHARED: f64 = 0.7;
/// Of so many worts one is unlike what is usual, and its end is so many times as uncertain.
const UNLIKE: (f64, f64) = (0.1, 3.0);
/// A start that nobody knows, points.
const UNKNOWN_START: (f64, f64) = (50.0, 11.0);
/// A stated end is right as often as this, to so many points.
const STATED: (f64, f64) = (0.85, 1.8);
/// The brewer's own earlier batches tell as often as this of the next one; else it ends anywhere within so many
/// points.
const OWN: (f64, f64) = (0.85, 15.0);
/// Main beer ends over its satellite by so many points, and how likely.
const OVER_SATELLITE: [(f64, f64); 4] = [(-0.5, 0.2), (0.2, 0.42), (0.9, 0.3), (1.7, 0.08)];
/// A satellite is half way after so many hours.
const SATELLITE_HALF: [(f64, f64); 3] = [(14.0, 0.4), (26.0, 0.4), (50.0, 0.2)];
/// A satellite has stopped early or was never right this often: once it was read level, and before.
const SATELLITE_WRONG: (f64, f64) = (0.03, 0.4);
/// Two readings of it so many hours apart show that it is level, within so many points.
const SATELLITE_LEVEL: (f64, f64) = (20.0, 1.2);
/// However far off, a reading of it is no less likely than this a point.
const UNLIKE_READ: f64 = 1e-3;
/// A reading of a satellite, points.
const SATELLITE_READ: f64 = 0.8;
/// A stall stands over its end by so many points, and how likely.
pub(super) const STALLS: [(f64, f64); 6] =
    [(2.0, 0.2), (3.0, 0.2), (4.5, 0.2), (6.5, 0.18), (9.0, 0.13), (13.0, 0.09)];

/// Where it may end.
#[derive(Clone)]
pub(super) struct Ends {
    /// Rising.
    pub(super) nodes: [f64; NODES],
    /// The weight of each with nothing read of the beer; their sum is one.
    pub(super) healthy: [f64; NODES],
    /// The same for a beer that stalls there and ends lower, by how much lower.
    pub(super) stalled: [[f64; STALLS.len()]; NODES],
    /// The start, points, and how sure.
    pub(super) start: f64,
    pub(super) start_sigma: f64,
    /// Middle and one standard deviation of the usual end.
    pub(super) usual: (f64, f64),
    /// What a satellite, read level, was read at.
    pub(super) satellite: Option<f64>,
    /// Where it ends by the brewer's own earlier batches, where these count.
    pub(super) own: Option<f64>,
}

pub(super) fn normal(off: f64, sigma: f64) -> f64 {
    (-0.5 * (off / sigma).powi(2)).exp() / (2.5066 * sigma)
}

/// The lowest of a satellite's readings that are level, once they show that it is.
pub(super) fn level_satellite(satellite: &[Point]) -> Option<f64> {
    let last = satellite.last()?;
    let far = |p: &&Point| last.hours - p.hours >= SATELLITE_LEVEL.0;
    let earlier = satellite.iter().rev().find(far)?;
    let run = || satellite.iter().filter(|p| p.hours >= earlier.hours).map(|p| p.value);
    let (low, high) = (run().fold(f64::MAX, f64::min), run().fold(f64::MIN, f64::max));
    (high - low <= SATELLITE_LEVEL.1 && earlier.value - last.value <= 1.0 + 1e-6).then_some(low)
}

impl Ends {
    /// Middle and one standard deviation of where it may end.
    pub(super) fn expected(&self) -> (f64, f64) {
        let over = |of: &dyn Fn(f64) -> f64| -> f64 {
            self.nodes.iter().zip(&self.healthy).map(|(node, weight)| weight * of(*node)).sum()
        };
        let middle = over(&|node| node);
        (middle, over(&|node| (node - middle) * (node - middle)).sqrt())
    }
}

struct Expected<'a> {
    usual: (f64, f64),
    stated: Option<f64>,
    /// By the brewer's own earlier batches: middle and one standard deviation.
    own: Option<(f64, f64)>,
    start: f64,
    satellite: &'a [Point],
    proven: bool,
}

impl Expected<'_> {
    /// The density of an end.
    fn density(&self, end: f64) -> f64 {
        let (middle, sigma) = self.usual;
        let by_family = (1.0 - UNLIKE.0) * normal(end - middle, sigma)
            + UNLIKE.0 * normal(end - middle, UNLIKE.1 * sigma);
        let by_stated = self.stated.map_or(1.0, |stated| {
            STATED.0 * normal(end - stated, STATED.1) + (1.0 - STATED.0) / 15.0
        });
        let by_own = self
            .own
            .map_or(1.0, |(own, sigma)| OWN.0 * normal(end - own, sigma) + (1.0 - OWN.0) / OWN.1);
        by_family * by_stated * by_own * self.by_satellite(end)
    }

    /// How likely the satellite's readings are, if the main beer ends there.
    fn by_satellite(&self, end: f64) -> f64 {
        if self.satellite.is_empty() {
            return 1.0;
        }
        let wrong = if self.proven { SATELLITE_WRONG.0 } else { SATELLITE_WRONG.1 };
        let mut works = 0.0;
        for (over, share) in OVER_SATELLITE {
            for (half, of) in SATELLITE_HALF {
                let likely = self.satellite.iter().map(|p| {
                    let left =
                        (-std::f64::consts::LN_2 * (p.hours.max(0.0) / half).powf(1.3)).exp();
                    let shown = end - over + (self.start - end + over) * left;
                    let sigma = SATELLITE_READ.hypot(p.other).hypot(0.1 * left * self.start);
                    normal(p.value - shown, sigma) + UNLIKE_READ
                });
                works += share * of * likely.product::<f64>();
            }
        }
        // One that stopped stands anywhere over its end.
        let stopped: f64 = self.satellite.iter().map(|_| 1.0 / 12.0).product();
        (1.0 - wrong) * works + wrong * stopped
    }
}

/// Where it ends by the brewer's own earlier batches: only where the start is known to carry them over to.
fn own(record: &Record, (start, start_sigma): (f64, f64)) -> Option<(f64, f64)> {
    record.original.filter(|_| !record.may_go_on())?;
    let end = carried(&record.own_ends, SpecificGravity::nearest(1.0 + start / 1000.0))?;
    let middle = end.value().points();
    let by_start = start_sigma * middle.max(0.0) / start;
    Some((middle, (end.sigma() * 1000.0).hypot(SHARED).hypot(by_start)))
}

/// The ends of a record. `with` says whether the satellite counts.
pub(super) fn ends(record: &Record, looks: &Looks, with: bool) -> Ends {
    let known = record.original.filter(|og| og.sigma() < 0.02);
    let (start, start_sigma) = known.map_or_else(
        || {
            let highest = looks.main.iter().map(|p| p.value).fold(0.0, f64::max);
            (f64::max(UNKNOWN_START.0, highest + 3.0), UNKNOWN_START.1)
        },
        |og| (og.value().points().max(5.0), (og.sigma() * 1000.0).clamp(0.5, 5.0)),
    );
    let span = record.family.attenuates();
    let (low, high) = (span.from.value() / 100.0, span.to.value() / 100.0);
    let attenuated = f64::midpoint(low, high) - less_when_strong(start);
    let middle = start * (1.0 - attenuated);
    let sigma = (start * ((high - low) / 2.0 / SPAN).min(WIDEST))
        .hypot(SHARED)
        .hypot(start_sigma * (1.0 - attenuated));
    // Bread yeast says nothing of a yeast that eats dextrins, nor wort of what was added later.
    let counts = with && !record.may_go_on();
    let satellite = if counts { looks.satellite.as_slice() } else { &[] };
    let proven = level_satellite(satellite);
    let expected = Expected {
        usual: (middle, sigma),
        stated: record.stated_end.map(|sg| sg.points()),
        own: own(record, (start, start_sigma)),
        start,
        satellite,
        proven: proven.is_some(),
    };
    let lowest_read = looks.main.iter().map(|p| p.value).fold(f64::MAX, f64::min);
    let lowest = (middle - 3.5 * sigma).min(lowest_read - 3.0).max(-15.0);
    let step = ((7.0 * sigma) / (NEAR - 1) as f64).clamp(0.55, 0.9);
    let near_top = lowest + step * (NEAR - 1) as f64;
    let coarse = ((start - near_top) / (NODES - NEAR) as f64).max(step);
    let nodes = std::array::from_fn(|i| {
        if i < NEAR { lowest + step * i as f64 } else { near_top + coarse * (i + 1 - NEAR) as f64 }
    });
    let cell = |i: usize| if i < NEAR { step } else { coarse };
    let mut healthy: [f64; NODES] = std::array::from_fn(|i| expected.density(nodes[i]) * cell(i));
    let sum: f64 = healthy.iter().sum::<f64>().max(f64::MIN_POSITIVE);
    healthy.iter_mut().for_each(|weight| *weight /= sum);
    let stalled = std::array::from_fn(|i| {
        std::array::from_fn(|k| {
            let (over, share) = STALLS[k];
            share * expected.density(nodes[i] - over) * cell(i) / sum
        })
    });
    Ends {
        nodes,
        healthy,
        stalled,
        start,
        start_sigma,
        usual: expected.usual,
        satellite: proven,
        own: expected.own.map(|(end, _)| end),
    }
}
