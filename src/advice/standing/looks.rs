//! The readings in order, in points and hours, each with what it is worth.

use super::record::{Record, Seen};
use crate::order::in_order;
use crate::quantity::{Hours, Measured, Moment};

/// So far ahead of now a date is a slip, hours.
const AHEAD: f64 = 1.0;
/// A pitching so long before the batch was begun is a slip, hours.
const LONG_BEFORE: f64 = 72.0;
/// So soon after pitching a reading still shows the start.
pub(super) const STILL_START: f64 = 6.0;
/// A reading rougher than this proves nothing by itself, points.
pub(super) const ROUGHEST: f64 = 2.5;
/// Beer so much under its yeast's range proves less, and so much nothing, °C.
const COOL: (f64, f64) = (2.5, 7.0);
/// Two instruments differ by this, points (common practice, no source).
pub(super) const BETWEEN: f64 = 1.5;
/// More readings than this are put together by time.
const MANY: usize = 60;
/// Readings so near in time are one look, hours.
const ONE_LOOK: f64 = 2.0;

/// A reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub(super) at: Moment,
    /// Since pitching.
    pub(super) hours: f64,
    /// Points of gravity.
    pub(super) value: f64,
    /// One standard deviation as it was stated, points.
    pub(super) sigma: f64,
    /// By what another instrument may differ, points.
    pub(super) other: f64,
    /// How much a level reading proves here: 1 in its yeast's range, 0 for a doubtful, rough or cold one.
    pub(super) sound: f64,
}

/// The readings of one record, ready to be weighed.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Looks {
    /// Hours count from here.
    pub(super) from: Moment,
    /// Of the fermenting beer, the earliest first.
    pub(super) main: Vec<Point>,
    /// Of the satellite.
    pub(super) satellite: Vec<Point>,
    /// When the beer was last read, dates ahead of now left out.
    pub(super) read_until: Option<Moment>,
    /// The pitching lies long before the batch.
    pub(super) pitching_doubtful: bool,
}

/// Whether a reading of that moment lies ahead of now, by more than clocks differ: then it proves nothing.
///
/// ```
/// use fermentside::advice::standing::dated_ahead;
/// use fermentside::quantity::{Hours, Moment};
///
/// let now = Moment::EPOCH;
/// assert!(!dated_ahead(now.after(Hours::literal(0.5)), now));
/// assert!(dated_ahead(now.after(Hours::literal(24.0)), now));
/// ```
#[must_use]
pub fn dated_ahead(at: Moment, now: Moment) -> bool {
    at.since(now).value() > AHEAD
}

pub(super) fn points(seen: &Seen) -> f64 {
    (seen.gravity.value().value() - 1.0) * 1000.0
}

/// When the yeast went in, as far as that is believed; the first reading when nobody noted it.
fn from(record: &Record) -> (Moment, bool) {
    let first = record.main.iter().map(|seen| seen.at).min();
    match record.pitched {
        None => (first.unwrap_or(record.begun), false),
        Some(at) if record.begun.since(at).value() > LONG_BEFORE => (record.begun, true),
        Some(at) => (at, false),
    }
}

/// In order of time; of two at one moment the higher first, and of two alike in that by all that is known
/// of them, so that it never matters in which order they were written down.
pub(super) fn sorted<'a>(seen: impl Iterator<Item = &'a Seen>) -> Vec<&'a Seen> {
    let beer = |seen: &Seen| seen.beer.map_or(f64::INFINITY, |beer| beer.value());
    in_order(seen.collect(), |a, b| {
        let by_value = points(b).total_cmp(&points(a)).then(beer(a).total_cmp(&beer(b)));
        let by_doubt =
            a.gravity.sigma().total_cmp(&b.gravity.sigma()).then(a.doubtful.cmp(&b.doubtful));
        a.at.cmp(&b.at).then(by_value).then(by_doubt).then(a.instrument.cmp(&b.instrument))
    })
}

/// Puts the readings in order and weighs what each is worth.
pub(super) fn looks(record: &Record, now: Moment) -> Looks {
    let (from, pitching_doubtful) = from(record);
    let range = record.range();
    let doubt = |seen: &Seen| seen.doubtful || dated_ahead(seen.at, now);
    let sound = |seen: &Seen| {
        let sigma = seen.gravity.sigma() * 1000.0;
        if doubt(seen) || sigma.is_nan() || sigma >= ROUGHEST {
            return 0.0;
        }
        let under = seen.beer.map_or(0.0, |beer| range.from.value() - beer.value());
        ((COOL.1 - under) / (COOL.1 - COOL.0)).clamp(0.0, 1.0)
    };
    let point = |seen: &Seen, usual: u32, others: usize| Point {
        at: seen.at,
        hours: seen.at.since(from).value(),
        value: points(seen),
        sigma: (seen.gravity.sigma() * 1000.0).min(100.0),
        other: if seen.instrument == usual { 0.0 } else { BETWEEN * (others.max(1) as f64).sqrt() },
        sound: sound(seen),
    };
    let since = |seen: &&Seen| {
        let hours = seen.at.since(from).value();
        (record.pitched.is_none() || hours > STILL_START)
            && record.added.is_none_or(|added| seen.at > added)
    };
    let main = sorted(record.main.iter().filter(since));
    let usual = main.last().map_or(0, |seen| seen.instrument);
    let others = main.iter().filter(|seen| seen.instrument != usual).count();
    let main: Vec<_> = main.into_iter().map(|seen| point(seen, usual, others)).collect();
    let satellite = sorted(record.satellite.iter());
    let satellite = satellite.into_iter().map(|seen| point(seen, usual, 1)).collect();
    let past = main.iter().map(|p| p.at).filter(|at| !dated_ahead(*at, now));
    let read_until = past.max();
    Looks { from, main: fewer(main), satellite, read_until, pitching_doubtful }
}

/// Many readings by time become one in their midst for each stretch, no finer and no sounder than one of
/// them.
fn fewer(main: Vec<Point>) -> Vec<Point> {
    if main.len() <= MANY {
        return main;
    }
    let span = main.last().map_or(0.0, |last| last.hours) - main.first().map_or(0.0, |p| p.hours);
    let stretch = (span / MANY as f64).max(ONE_LOOK);
    let mut few: Vec<Point> = Vec::new();
    let mut rest = main.as_slice();
    while let Some(first) = rest.first() {
        let end = rest.partition_point(|p| p.hours - first.hours < stretch);
        let (run, after) = rest.split_at(end.max(1));
        let values = in_order(run.iter().map(|p| p.value).collect(), f64::total_cmp);
        let least = |of: fn(&Point) -> f64| run.iter().map(of).fold(f64::MAX, f64::min);
        few.push(Point {
            value: values.get(values.len() / 2).copied().unwrap_or(first.value),
            sigma: run.iter().map(|p| p.sigma).fold(0.0, f64::max),
            sound: least(|p| p.sound),
            ..*run.last().unwrap_or(first)
        });
        rest = after;
    }
    few
}

impl Looks {
    /// A moment so many hours after the yeast went in.
    pub(super) fn moment(&self, hours: f64) -> Moment {
        self.from.after(Hours::nearest(hours))
    }
}
