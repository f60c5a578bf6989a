//! Simulated batches: courses whose end is known, read as a brewer reads them.
//!
//! The truths are laid out here in specific gravity, by formulas of their own, and spread a little wider
//! than the forecast takes for usual. All figures are invented.

use fermentside::advice::family::Family;
use fermentside::advice::watch::{Course, Look};
use fermentside::quantity::{Estimate, Hours, Measured, Moment, SpecificGravity};

/// A small generator of numbers that look drawn by lot (PCG: O'Neill, 2014): always the same ones.
pub struct Lot(u64);

impl Lot {
    pub fn new(seed: u64) -> Self {
        let mut lot = Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15).wrapping_add(1));
        lot.next();
        lot
    }

    fn next(&mut self) -> u32 {
        let old = self.0;
        self.0 =
            old.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let mixed = (((old >> 18) ^ old) >> 27) as u32;
        mixed.rotate_right((old >> 59) as u32)
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * f64::from(self.next()) / f64::from(u32::MAX)
    }

    pub fn normal(&mut self) -> f64 {
        let (a, b) = (self.between(1e-9, 1.0), self.between(0.0, std::f64::consts::TAU));
        (-2.0 * a.ln()).sqrt() * b.cos()
    }
}

/// How the truth goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    Own,
    Skewed,
    Gompertz,
    TwoStages,
    Resumed,
    Stuck,
}

/// One simulated batch and the truth about it.
pub struct Batch {
    pub course: Course,
    pub last: Moment,
    truth: Truth,
    pitched: Moment,
}

#[derive(Clone, Copy)]
struct Truth {
    kind: Kind,
    start: f64,
    end: f64,
    half: f64,
    fall: f64,
    skew: f64,
    /// Of the second stage: its part, and when it is half way.
    second: (f64, f64),
    /// Of a stall: its height over the end, how long it is steady, how fast it goes on.
    stall: (f64, f64, f64),
}

fn logistic(t: f64, half: f64, fall: f64, s: f64) -> f64 {
    let grown = 2f64.powf(s) - 1.0;
    let rate = 2.0 * s * (grown + 1.0) / (grown * fall);
    (1.0 + grown * (rate * (t - half)).exp()).powf(-1.0 / s)
}

/// 1 − exp(−e^(−x)), half way at `half` with the whole fall at that pace in `fall`.
fn gompertz(t: f64, half: f64, fall: f64) -> f64 {
    let ln2 = std::f64::consts::LN_2;
    let rate = 2.0 / (ln2 * fall);
    -(-ln2 * (-rate * (t - half)).exp()).exp_m1()
}

impl Truth {
    fn at(&self, t: f64) -> f64 {
        let plain = || logistic(t, self.half, self.fall, self.skew);
        let fall = self.start - self.end;
        let left = match self.kind {
            Kind::Own | Kind::Skewed | Kind::Stuck => plain(),
            Kind::Gompertz => gompertz(t, self.half, self.fall),
            Kind::TwoStages => {
                let (part, half) = self.second;
                (1.0 - part) * plain() + part * logistic(t, half, half, 1.0)
            }
            Kind::Resumed => {
                let (height, steady, fold) = self.stall;
                let part = height / fall;
                let from = self.half + 1.2 * self.fall + steady;
                (1.0 - part) * plain() + part * (-(t - from).max(0.0) / fold).exp()
            }
        };
        self.end + fall * left
    }
}

impl Batch {
    pub fn draw(lot: &mut Lot, family: Family, kind: Kind, satellite: bool) -> Self {
        let pitched: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        // Median days to half way and spread of its logarithm; attenuation, lowest and highest.
        let (days, spread, low, high) = match family {
            Family::Kveik => (1.0, 0.55, 73.0, 84.0),
            Family::Lager => (4.5, 0.5, 70.0, 85.0),
            Family::EnglishAle => (2.0, 0.5, 61.0, 80.0),
            Family::Cider => (6.0, 0.6, 89.0, 113.0),
            Family::Unknown => (2.5, 0.65, 60.0, 88.0),
            _ => (2.0, 0.5, 70.0, 83.0),
        };
        let start = 1.0 + lot.between(0.036, 0.070);
        let mut end = 1.0 + (start - 1.0) * (1.0 - lot.between(low, high) / 100.0);
        let stall = (
            lot.between(0.005, 0.012),
            24.0 * lot.between(2.0, 6.0),
            24.0 * days * lot.between(0.4, 1.2),
        );
        if kind == Kind::Stuck {
            end += stall.0;
        }
        let (half, fall, skew) = loop {
            let half = 24.0 * days * (spread * lot.normal()).exp();
            let fall = half * (0.45 * lot.normal()).exp();
            let skew = match kind {
                Kind::Skewed if lot.between(0.0, 1.0) < 0.5 => lot.between(0.2, 0.4),
                Kind::Skewed => lot.between(5.0, 9.0),
                _ => 3f64.powf(lot.between(-0.6, 1.1)),
            };
            let gone = match kind {
                Kind::Gompertz => 1.0 - gompertz(0.0, half, fall),
                _ => 1.0 - logistic(0.0, half, fall, skew),
            };
            if gone < 0.08 {
                break (half, fall, skew);
            }
        };
        let second = (lot.between(0.08, 0.25), half * lot.between(1.5, 3.0));
        let truth = Truth { kind, start, end, half, fall, skew, second, stall };
        // A brewer's readings: the first after some days, then every few, in the morning or at night.
        let sigma = [0.0005, 0.001, 0.0015, 0.002][lot.between(0.0, 3.999) as usize];
        let mut hours = 24.0 * days.max(1.2) * lot.between(0.6, 1.5);
        let mut main = Vec::new();
        let often = lot.between(0.12, 0.8);
        for _ in 0..lot.between(3.0, 8.999) as usize {
            main.push(truth.read(lot, pitched, hours, sigma));
            hours += 24.0 * days.clamp(1.0, 3.0) * often * lot.between(0.3, 1.6);
        }
        let last = main.last().map_or(pitched, |look: &Look| look.at);
        let mut beside = Vec::new();
        if satellite {
            let its_end = end - lot.between(0.0, 0.002);
            let first = 24.0 * lot.between(2.0, 4.0);
            for at in [first, first + 24.0 * lot.between(1.0, 2.0)] {
                let shown = its_end + sigma * lot.normal();
                beside.push(look(pitched.after(Hours::nearest(at)), shown, sigma));
            }
        }
        let original = SpecificGravity::nearest(start + 0.001 * lot.normal());
        let course = Course {
            main,
            satellite: beside,
            original: Some(Estimate::new(original, 0.001)),
            pitched: Some(pitched),
            family,
            stated_end: None,
            added: None,
            refracted: vec![],
        };
        Self { course, last, truth, pitched }
    }

    /// Where it ends.
    pub fn end(&self) -> f64 {
        self.truth.end
    }

    /// The true gravity at a moment.
    pub fn at(&self, at: Moment) -> f64 {
        self.truth.at(at.since(self.pitched).value())
    }

    /// Whether a stall has lasted a day by the last reading; before, no one can know of it.
    pub fn stall_is_seen(&self) -> bool {
        let truth = &self.truth;
        self.last.since(self.pitched).value() > truth.half + 1.2 * truth.fall + 24.0
    }

    /// When it first is a point over its end.
    pub fn one_point(&self) -> Moment {
        let (mut low, mut high) = (0.0, 24.0 * 400.0);
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            if self.truth.at(middle) > self.truth.end + 0.001 {
                low = middle
            } else {
                high = middle
            }
        }
        self.pitched.after(Hours::nearest(high))
    }
}

impl Truth {
    fn read(&self, lot: &mut Lot, pitched: Moment, hours: f64, sigma: f64) -> Look {
        let at = pitched.after(Hours::nearest(hours));
        let gas = if lot.between(0.0, 1.0) < 0.07 { lot.between(0.002, 0.006) } else { 0.0 };
        look(at, self.at(hours) + gas + sigma * lot.normal(), sigma)
    }
}

/// Read off a scale in half points.
fn look(at: Moment, shown: f64, sigma: f64) -> Look {
    let shown = (shown * 2000.0).round() / 2000.0;
    Look { at, gravity: Estimate::new(SpecificGravity::nearest(shown), sigma), beer: None }
}
