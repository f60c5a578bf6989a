//! The bound on what is left, by the posterior and by what sound readings prove: the larger of the two.
//!
//! What was found once stands until later readings speak against it: by more than chance, for a tired eye
//! strays from look to look. So an equal later reading never takes a dose away. A rougher, colder or doubtful
//! one never gives one: the posterior does not look at that, and what readings prove only falls with it.

use super::ends::{Ends, ends};
use super::left::{Kinds, Shares, kinds, level_from, shares};
use super::looks::{Looks, Point, ROUGHEST, looks};
use super::proof::{Drift, Proof, Tail, drift, proof};
use super::record::Record;
use super::refracted::{Change, change};
use super::weigh::{Table, Weighed};
use crate::advice::family::Family;
use crate::quantity::{Celsius, Measured, Moment};
use std::rc::Rc;

/// Two that differ by less than this are equal, points.
const HAIR: f64 = 1e-6;
/// A promise keeps so much back of the posterior: nobody reads to the minute.
const KEPT_BACK: f64 = 0.012;
/// The part of it that must lie under a bound that was found for that to stand.
const KEPT: f64 = 0.8;
/// Where something else eats that often no end stands.
const EATS_ON: f64 = 0.1;
/// The part of the posterior under the bound while sound readings prove nothing.
const UNBOUNDED: f64 = 0.97;
/// Readings nearer than this to the one before are not all looked at on the way to the last, hours.
const HALF_A_DAY: f64 = 12.0;
/// By so much earlier in the day a reading is as good, hours.
const HALF_NIGHT: f64 = 6.0;
/// Stronger wort than this goes slowly, points; so does beer colder than this, °C.
const STRONG: f64 = 60.0;
const COLD: f64 = 15.0;
/// Beer under so many points has fermented, and so has beer that lost this part of its start.
pub(super) const FERMENTED: (f64, f64) = (22.0, 0.4);

/// After something that ferments was added, an end is believed no sooner, hours (common practice, no
/// source).
const AFTER_ADDING: f64 = 14.0 * 24.0;

/// What one look at the record gives.
pub(super) struct Judged {
    pub(super) shares: Shares,
    pub(super) proof: Proof,
    /// It drifts down, though from one reading to the next it passes for level.
    pub(super) drift: Option<Drift>,
    /// From which reading on it is level.
    pub(super) level_from: Option<usize>,
    /// The most that is left, points; `None` when sound readings prove nothing.
    pub(super) bound: Option<f64>,
    /// The same by the posterior alone.
    pub(super) upper: f64,
    /// The same by a smaller part of it: an end that was found is held against this.
    relaxed: f64,
    /// Hours from the yeast, or what was added, to the last sound reading while level, and the least for
    /// an end to be believed.
    pub(super) age: (f64, f64),
    /// It is known to have fermented.
    pub(super) fermented: bool,
    pub(super) kinds: Kinds,
}

/// A record, weighed.
#[derive(Clone)]
pub(super) struct Case {
    pub(super) record: Rc<Record>,
    pub(super) looks: Looks,
    pub(super) ends: Ends,
    /// Without a satellite that is not sound.
    without: Option<Ends>,
    pub(super) weighed: Weighed,
    table: Rc<Table>,
    pub(super) tail: Tail,
    quantile: f64,
    /// The upper end of what is left, at the last sound reading.
    at_sound: f64,
    /// The bound that was found, as far as no later reading speaks against it.
    kept: Option<f64>,
    /// When that was last looked at, hours.
    counted: f64,
    /// What a refractometer showed since the last reading.
    pub(super) refracted: Option<Change>,
}

impl Case {
    pub(super) fn new(record: &Record, now: Moment, quantile: f64) -> (Self, Judged) {
        let looks = looks(record, now);
        let found = ends(record, &looks, true);
        let unsound = looks.satellite.iter().any(|p| p.sound < 1.0);
        let without = unsound.then(|| ends(record, &looks, false));
        let cold = looks.main.last().is_some_and(|last| {
            record.main.iter().any(|s| s.at == last.at && s.beer.is_some_and(|t| t.value() < COLD))
        });
        let tail = if record.may_go_on() {
            Tail::GoesOn
        } else if cold || record.family == Family::Lager || found.start > STRONG {
            Tail::Slow
        } else {
            Tail::Usual
        };
        let weighed = Weighed::new(record.family, found.start);
        let refracted = looks.main.last().and_then(|last| change(record, last.at));
        let mut case = Self {
            record: Rc::new(record.clone()),
            looks,
            ends: found,
            without,
            weighed,
            table: Rc::new(Table::new()),
            tail,
            quantile,
            at_sound: 0.0,
            kept: None,
            counted: f64::MIN,
            refracted,
        };
        let judged = case.follow();
        (case, judged)
    }

    /// Weighs the readings that were not weighed yet.
    fn follow(&mut self) -> Judged {
        let count = self.looks.main.len();
        if count == 0 {
            return self.judged(0);
        }
        loop {
            self.weighed.add(&self.looks, &self.ends, &self.table);
            let read = self.weighed.read();
            let (main, reading) = (&self.looks.main, self.looks.main[read - 1]);
            let next = main.get(read);
            // Of looks that follow each other closely some are looked at, by their times alone.
            let counts = reading.hours - self.counted >= HALF_A_DAY
                || next.is_none_or(|next| equal(&reading, next));
            if counts {
                self.counted = reading.hours;
            }
            let bounds = || self.kept.is_some() || proof(&main[..read], self.tail).left.is_some();
            if next.is_some_and(|next| next.sound > 0.5) && !(counts && bounds()) {
                continue;
            }
            let mut judged = self.judged(read);
            // What readings that are not sound add at the end proves nothing.
            if reading.sound > 0.5 {
                self.at_sound = judged.upper;
            } else {
                judged.upper = judged.upper.max(self.at_sound);
                judged.bound = judged.bound.map(|bound| bound.max(self.at_sound));
            }
            if counts {
                self.kept = least(self.still(read, &judged), judged.bound);
            }
            if read == count {
                let falls = matches!(self.refracted, Some(Change::Falls(_)));
                judged.bound = self.kept.filter(|_| !falls);
                return judged;
            }
        }
    }

    /// The bound that was found before a reading, as far as that lets it stand.
    fn still(&self, read: usize, judged: &Judged) -> Option<f64> {
        let kept = self.kept?;
        let [before, last] = self.looks.main.get(read.checked_sub(2)?..read)? else { return None };
        if equal(before, last) {
            return Some(kept);
        }
        let falls = judged.level_from.is_none()
            || judged.shares.eaten > EATS_ON
            || judged.drift.is_some_and(|drift| drift.sure);
        (!falls).then(|| kept.max(judged.relaxed))
    }

    /// As it stood with the first `count` readings, which are those weighed so far.
    fn judged(&self, count: usize) -> Judged {
        let mut judged = self.by(&self.ends, count);
        if let Some(ends) = &self.without {
            let other = self.by(ends, count);
            judged.bound = judged.bound.zip(other.bound).map(|(a, b)| a.max(b));
            judged.upper = judged.upper.max(other.upper);
            judged.relaxed = judged.relaxed.max(other.relaxed);
            judged.shares.eaten = judged.shares.eaten.max(other.shares.eaten);
        }
        judged
    }

    fn by(&self, ends: &Ends, count: usize) -> Judged {
        let kinds = kinds(&self.weighed, ends, self.record.family, &self.table);
        let level_from = level_from(&kinds, &self.weighed, &self.looks);
        let main = self.looks.main.get(..count).unwrap_or_default();
        let run = level_from.and_then(|from| main.get(from..)).unwrap_or_default();
        let proof = proof(run, self.tail);
        let shares = shares(&kinds, proof.days);
        let last_sound = run.iter().rev().find(|p| p.sound > 0.0);
        let age = last_sound.map_or(0.0, |last| last.hours);
        let age =
            self.record.added.map_or((age, self.record.family.least_time().value()), |added| {
                (last_sound.map_or(0.0, |last| last.at.since(added).value()), AFTER_ADDING)
            });
        let old_enough = age.0 >= age.1 - HALF_NIGHT;
        let fermented = main.last().is_some_and(|last| {
            let known = self.record.original.is_some();
            if known {
                last.value < (1.0 - FERMENTED.1) * ends.start
            } else {
                last.value < FERMENTED.0
                    || main.first().is_some_and(|p| last.value < (1.0 - FERMENTED.1) * p.value)
            }
        });
        // Where sound readings bound nothing no dose hangs on it, and more is left open.
        let drift = drift(main, run);
        let proven = proof.left.is_some() && drift.is_none();
        let part = if proven { self.quantile } else { self.quantile.max(UNBOUNDED) };
        let upper = shares.left.quantile(part);
        let bound =
            proof.left.filter(|_| proven && old_enough && fermented).map(|left| left.max(upper));
        let relaxed = shares.left.quantile(KEPT);
        Judged { shares, proof, drift, level_from, bound, upper, relaxed, age, fermented, kinds }
    }
}

impl Case {
    /// The temperature of the last reading, where it is too cold to prove much.
    pub(super) fn cold_at_last(&self) -> Option<Celsius> {
        let last = self.looks.main.last()?;
        let at_last = self.record.main.iter().filter(|seen| seen.at == last.at);
        // Of several at that moment the coldest, whichever was written down first.
        let coldest = at_last.filter_map(|seen| seen.beer).reduce(|a, b| if b < a { b } else { a });
        coldest.filter(|beer| last.sound < 0.9 && *beer < self.record.range().from)
    }

    /// The mean of the courses at a reading, points.
    pub(super) fn course_at(&self, judged: &Judged, reading: usize) -> f64 {
        let of = &judged.kinds.shapes;
        let (mut sum, mut all) = (0.0, f64::MIN_POSITIVE);
        for (k, of) in of.iter().enumerate().filter(|(_, of)| of.weight > 0.0) {
            let (left, gone) = self.weighed.at(reading, k);
            sum += of.weight * (self.ends.start - gone) - of.fall * (1.0 - left);
            all += of.weight;
        }
        sum / all
    }

    /// The same, a little stricter: for what is promised.
    pub(super) fn stricter(&self) -> Self {
        let mut case = self.clone();
        case.quantile = (case.quantile + KEPT_BACK).min(0.999);
        case
    }

    /// The same with only the courses that have weight, to look for a day; rests that have yet to wake are
    /// left out.
    pub(super) fn likely(&self, judged: &Judged) -> Self {
        let of = &judged.kinds.shapes;
        let all: f64 = of.iter().map(|of| of.weight).sum();
        let mut case = self.clone();
        case.weighed.keep(|k| of.get(k).is_some_and(|of| of.weight > 1e-7 * all));
        case
    }

    /// The bound, if one more sound reading, the same as the last, is taken so many hours after the yeast
    /// went in.
    pub(super) fn with_reading(&self, hours: f64) -> Option<f64> {
        self.after_reading(hours)?.1.bound
    }

    /// The same, with all that is then known.
    pub(super) fn after_reading(&self, hours: f64) -> Option<(Self, Judged)> {
        let last = *self.looks.main.last()?;
        let mut later = self.clone();
        later.refracted = None;
        let sound = if last.sigma < ROUGHEST { 1.0 } else { 0.0 };
        let point = Point { hours, at: self.looks.moment(hours), sound, ..last };
        later.looks.main.push(point);
        let judged = later.follow();
        Some((later, judged))
    }

    /// What is known once a satellite was read twice, a day apart, to the same gravity as the beer, and the
    /// beer once more with it.
    pub(super) fn after_satellite(&self, hours: f64) -> Option<(Self, Judged)> {
        let last = *self.looks.main.last()?;
        if matches!(self.refracted, Some(Change::Falls(_))) {
            return None;
        }
        let mut later = self.clone();
        later.refracted = None;
        for hours in [hours - 24.0, hours] {
            let at = later.looks.moment(hours);
            later.looks.satellite.push(Point { hours, at, sound: 1.0, other: 0.0, ..last });
        }
        later.ends = ends(&later.record, &later.looks, true);
        later.kept = None;
        later.after_reading(hours)
    }
}

fn equal(a: &Point, b: &Point) -> bool {
    (a.value - b.value).abs() < HAIR
}

fn least(a: Option<f64>, b: Option<f64>) -> Option<f64> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    }
}
