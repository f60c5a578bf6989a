//! Readers of the proving ground: careful and tired, by the clock and by the page's dates.

use crate::courses::{Kind, Truth};
use crate::lot::Lot;
use fermentside::advice::family::Family;
use fermentside::advice::standing::{Record, Seen};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, SpecificGravity};

/// How someone reads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reader {
    /// One standard deviation of a reading, points: from, to.
    pub sigma: (f64, f64),
    /// What is stated of it.
    pub stated: f64,
    /// The share of slips, of ten points.
    pub slips: f64,
    /// Degrees by which the temperature is misread, from one to so many.
    pub degrees: f64,
}

pub const CAREFUL: Reader = Reader { sigma: (0.5, 0.5), stated: 0.7, slips: 0.0, degrees: 0.5 };
pub const TIRED: Reader = Reader { sigma: (1.0, 2.0), stated: 1.0, slips: 0.02, degrees: 3.0 };

/// One batch being read.
pub struct Log<'a> {
    pub truth: &'a Truth,
    pub reader: Reader,
    pub record: Record,
    /// Of a jar that stands: it is noted once its time has come.
    jar: Vec<Seen>,
    sigma: f64,
    off: f64,
    pub lot: Lot,
}

pub fn pitched() -> Moment {
    "2026-04-01T18:00+01:00".parse().expect("a moment")
}

pub fn at(hours: f64) -> Moment {
    pitched().after(Hours::nearest(hours))
}

fn gravity(points: f64) -> SpecificGravity {
    SpecificGravity::nearest(1.0 + points / 1000.0)
}

impl<'a> Log<'a> {
    pub fn new(truth: &'a Truth, family: Family, reader: Reader, seed: u64) -> Self {
        let mut lot = Lot::new(seed);
        let sigma = lot.between(reader.sigma.0, reader.sigma.1);
        // What is wrong with the instrument is wrong in all of its readings.
        let off = 0.5 * lot.normal();
        let start = truth.start + off + sigma.min(1.0) * lot.normal();
        let mut record = Record::of(family, pitched());
        record.pitched = Some(pitched());
        record.original = Some(Estimate::new(gravity(start), 0.001));
        Self { truth, reader, record, jar: vec![], sigma, off, lot }
    }

    fn shown(&mut self, points: f64) -> f64 {
        let slip = if self.lot.between(0.0, 1.0) < self.reader.slips {
            if self.lot.between(0.0, 1.0) < 0.5 { 10.0 } else { -10.0 }
        } else {
            0.0
        };
        let shown = points + self.off + self.sigma * self.lot.normal() + slip;
        // Off a scale in half points, or whole ones by tired eyes.
        let scale = if self.reader == CAREFUL { 2.0 } else { 1.0 };
        (shown * scale).round() / scale
    }

    fn seen(&mut self, hours: f64, points: f64) -> Seen {
        let shown = self.shown(points);
        let cold = self.truth.chilled.is_some_and(|from| hours > from + 6.0);
        let beer = if cold { 4.0 } else { self.truth.warmth };
        let wrong = self.lot.between(-1.0, 1.0).signum() * self.lot.between(0.3, 1.0);
        Seen {
            at: at(hours),
            gravity: Estimate::new(gravity(shown), self.reader.stated / 1000.0),
            beer: Some(Celsius::nearest(beer + wrong * self.reader.degrees)),
            instrument: 0,
            doubtful: false,
        }
    }

    /// Reads the beer.
    pub fn read(&mut self, hours: f64) {
        let seen = self.seen(hours, self.truth.at(hours));
        self.record.main.push(seen);
        let due: Vec<Seen> = self.jar.iter().copied().filter(|jar| jar.at <= at(hours)).collect();
        self.jar.retain(|jar| jar.at > at(hours));
        self.record.satellite.extend(due);
    }

    /// A satellite that is set at pitching, and read twice.
    pub fn set_satellite(&mut self) {
        let first = 24.0 * self.lot.between(3.0, 5.0);
        let again = 24.0 * self.lot.between(1.0, 2.0);
        self.satellite(first, first + again);
    }

    /// A late one, read two and three days later.
    pub fn set_late_satellite(&mut self, hours: f64) {
        self.satellite(hours + 48.0, hours + 72.0);
    }

    /// Whether a jar was set.
    pub fn has_satellite(&self) -> bool {
        !self.jar.is_empty() || !self.record.satellite.is_empty()
    }

    fn satellite(&mut self, first: f64, again: f64) {
        let end = match self.truth.kind {
            // A jar with much yeast shows neither the rest nor what eats slowly.
            Kind::Stuck => self.truth.end - 6.0,
            Kind::Eaten => self.truth.end + 4.0,
            _ => self.truth.end - self.lot.between(-0.3, 1.5),
        };
        for hours in [first, again] {
            let seen = self.seen(hours, end);
            let beer = Some(Celsius::literal(22.0));
            self.jar.push(Seen { beer, ..seen });
        }
    }
}
