//! The bound on what is left, by the posterior and by what sound readings prove: the larger of the two.
//!
//! An equal later reading never takes a dose away: of readings equal to the last, the bound without the
//! later ones holds as well. A rougher, colder or doubtful one never gives one: the posterior does not
//! look at that, and what readings prove only falls with it.

use super::ends::{Ends, ends};
use super::left::{Kinds, Shares, kinds, level_from, shares};
use super::looks::{Looks, Point, looks};
use super::proof::{Proof, Tail, proof};
use super::record::Record;
use super::weigh::{Table, Weighed};
use crate::advice::family::Family;
use crate::quantity::{Measured, Moment};

/// Of readings equal to the last, so many are tried without.
const EQUAL: usize = 4;
/// Two that differ by less than this are equal, points.
const HAIR: f64 = 1e-6;
/// Stronger wort than this goes slowly, points; so does beer colder than this, °C.
const STRONG: f64 = 60.0;
const COLD: f64 = 15.0;
/// Beer under so many points has fermented, and so has beer that lost this part of its start.
const FERMENTED: (f64, f64) = (22.0, 0.4);

/// What one look at the record gives.
pub(super) struct Judged {
    pub(super) shares: Shares,
    pub(super) proof: Proof,
    /// From which reading on it is level.
    pub(super) level_from: Option<usize>,
    /// The most that is left, points; `None` when sound readings prove nothing.
    pub(super) bound: Option<f64>,
    /// The same by the posterior alone.
    pub(super) upper: f64,
    /// Long enough since the yeast went in.
    pub(super) old_enough: bool,
    pub(super) kinds: Kinds,
}

/// A record, weighed.
pub(super) struct Case<'a> {
    pub(super) record: &'a Record,
    pub(super) looks: Looks,
    pub(super) ends: Ends,
    /// Without a satellite that is not sound.
    without: Option<Ends>,
    pub(super) weighed: Weighed,
    table: Table,
    pub(super) tail: Tail,
    quantile: f64,
}

impl<'a> Case<'a> {
    pub(super) fn new(record: &'a Record, now: Moment, quantile: f64) -> (Self, Judged) {
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
        let mut case = Self {
            record,
            looks,
            ends: found,
            without,
            weighed,
            table: Table::new(),
            tail,
            quantile,
        };
        let judged = case.follow();
        (case, judged)
    }

    /// Weighs the readings that were not weighed yet.
    fn follow(&mut self) -> Judged {
        let count = self.looks.main.len();
        let same = |p: &&Point| {
            self.looks.main.last().is_some_and(|last| (p.value - last.value).abs() < HAIR)
        };
        let equal = self.looks.main.iter().rev().take_while(same).count().min(EQUAL).max(1);
        let mut best: Option<f64> = None;
        // What readings that are not sound add at the end proves nothing.
        let last_sound = self.looks.main.iter().rposition(|p| p.sound > 0.5).unwrap_or(0);
        let mut at_last_sound = None;
        while self.weighed.read() < count {
            self.weighed.add(&self.looks, &self.ends, &self.table);
            let read = self.weighed.read();
            let equal_from_here = read < count && read + equal > count;
            if equal_from_here || (read == last_sound + 1 && read < count) {
                let judged = self.judged(read);
                if read == last_sound + 1 {
                    at_last_sound = Some(judged.upper);
                }
                if equal_from_here {
                    best = least(best, judged.bound);
                }
            }
        }
        let mut judged = self.judged(count);
        if let Some(upper) = at_last_sound {
            judged.upper = judged.upper.max(upper);
            judged.bound = judged.bound.map(|bound| bound.max(upper));
        }
        judged.bound = least(best, judged.bound);
        judged
    }

    /// As it stood with the first `count` readings, which are those weighed so far.
    fn judged(&self, count: usize) -> Judged {
        let mut judged = self.by(&self.ends, count);
        if let Some(ends) = &self.without {
            let other = self.by(ends, count);
            judged.bound = judged.bound.zip(other.bound).map(|(a, b)| a.max(b));
            judged.upper = judged.upper.max(other.upper);
        }
        judged
    }

    fn by(&self, ends: &Ends, count: usize) -> Judged {
        let kinds = kinds(&self.weighed, ends, self.record.family);
        let level_from = level_from(&kinds, &self.weighed, &self.looks);
        let main = self.looks.main.get(..count).unwrap_or_default();
        let run = level_from.and_then(|from| main.get(from..)).unwrap_or_default();
        let proof = proof(run, self.tail);
        let shares = shares(&kinds, proof.days);
        let upper = shares.left.quantile(self.quantile);
        let last_sound = run.iter().rev().find(|p| p.sound > 0.0);
        let least = self.record.family.least_time().value();
        let old_enough = last_sound.is_some_and(|p| p.hours >= least - 6.0);
        let fermented = main.last().is_some_and(|last| {
            let known = self.record.original.is_some();
            if known {
                last.value < (1.0 - FERMENTED.1) * ends.start
            } else {
                last.value < FERMENTED.0
                    || main.first().is_some_and(|p| last.value < (1.0 - FERMENTED.1) * p.value)
            }
        });
        let bound = proof.left.filter(|_| old_enough && fermented).map(|left| left.max(upper));
        Judged { shares, proof, level_from, bound, upper, old_enough, kinds }
    }
}

fn least(a: Option<f64>, b: Option<f64>) -> Option<f64> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    }
}
