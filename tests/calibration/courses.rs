//! Courses for the proving ground: what the beer truly does, hour by hour, in points of gravity.
//!
//! None of them is laid out by the judgement's own formulas alone; two are published kinetic models.

use crate::lot::Lot;
use fermentside::advice::family::Family;

/// How the truth goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The logistic family.
    Logistic,
    /// Three sugars eaten one after another (Gee and Ramirez).
    ThreeSugars,
    /// Biomass that wakes, grows, dies (de Andrés-Toro and others).
    Biomass,
    /// A fall that stops sharply.
    Sharp,
    /// A slow second stage.
    TwoStages,
    /// Ends, and something else goes on eating.
    Eaten,
    /// Rests 2 to 8 points high; wakes in the bottle only.
    Rests,
    /// Rests for days, then goes on.
    Resumes,
    /// Stuck for good, far above its end.
    Stuck,
    /// Chilled 1 to 4 points early.
    Chilled,
}

/// One beer.
pub struct Truth {
    pub kind: Kind,
    pub start: f64,
    /// Where it would end in the bottle.
    pub end: f64,
    /// Points by the hour.
    hourly: Vec<f32>,
    /// The hour of the chill, if there is one.
    pub chilled: Option<f64>,
    /// Warmth while it ferments, °C.
    pub warmth: f64,
    /// From when it rests, for those that do.
    pub rests: Option<f64>,
}

const HOURS: usize = 24 * 120;

impl Truth {
    /// Points at an hour.
    pub fn at(&self, hours: f64) -> f64 {
        let last = self.hourly.len() - 1;
        let place = hours.clamp(0.0, last as f64);
        let at = place as usize;
        let (a, b) = (self.hourly[at], self.hourly[(at + 1).min(last)]);
        f64::from(a) + place.fract() * f64::from(b - a)
    }

    /// What is left at an hour.
    pub fn left(&self, hours: f64) -> f64 {
        self.at(hours) - self.end
    }

    /// When no more than a point is left; `None` when that is never while it ferments.
    pub fn one_point(&self) -> Option<f64> {
        self.hourly.iter().position(|p| f64::from(*p) <= self.end + 1.0).map(|h| h as f64)
    }

    pub fn draw(lot: &mut Lot, family: Family, kind: Kind, strong: bool) -> Self {
        let (days, low, high) = match family {
            Family::Kveik => (1.0, 73.0, 84.0),
            Family::Lager => (4.5, 70.0, 84.0),
            Family::EnglishAle => (2.0, 63.0, 78.0),
            Family::Cider => (6.0, 90.0, 112.0),
            Family::Unknown => (2.5, 63.0, 87.0),
            Family::Saison => (2.5, 78.0, 90.0),
            _ => (2.0, 71.0, 82.0),
        };
        let start = if strong { lot.between(75.0, 105.0) } else { lot.between(38.0, 62.0) };
        let less = if strong { 0.12 * (start - 60.0) } else { 0.0 };
        let attenuates = f64::midpoint(lot.between(low, high), lot.between(low, high)) - less;
        let end = start * (1.0 - attenuates / 100.0);
        let days = if strong { days * 1.6 } else { days };
        let warmth = match family {
            Family::Lager => lot.between(10.0, 14.0),
            Family::Kveik => lot.between(28.0, 36.0),
            _ => lot.between(18.0, 21.5),
        };
        let parts = match kind {
            Kind::ThreeSugars => three_sugars(start, warmth),
            Kind::Biomass => biomass(start, warmth, lot.between(1.5, 4.0)),
            Kind::Sharp => sharp(lot, days),
            _ => logistic(lot, days, kind == Kind::TwoStages || strong),
        };
        let mut truth = Self {
            kind,
            start,
            end,
            hourly: parts.iter().map(|part| (end + (start - end) * part) as f32).collect(),
            chilled: None,
            warmth,
            rests: None,
        };
        truth.disturb(lot, days);
        truth
    }

    /// The same beer with another end: what it attenuates, in percent.
    pub fn ending_at(mut self, attenuates: f64) -> Self {
        let end = self.start * (1.0 - attenuates / 100.0);
        let times = (self.start - end) / (self.start - self.end);
        for points in &mut self.hourly {
            *points = (self.start - times * (self.start - f64::from(*points))) as f32;
        }
        Self { end, ..self }
    }

    /// Rests, chills and what else eats.
    fn disturb(&mut self, lot: &mut Lot, days: f64) {
        let height = match self.kind {
            Kind::Rests => lot.between(2.0, 8.0),
            Kind::Resumes => lot.between(4.0, 10.0),
            Kind::Stuck => lot.between(6.0, 12.0),
            _ => 0.0,
        };
        let fall = self.start - self.end;
        // It comes to rest as it would come to its end.
        let part = 1.0 - height / fall;
        match self.kind {
            Kind::Rests | Kind::Resumes | Kind::Stuck => {
                for points in &mut self.hourly {
                    *points = (self.start - part * (self.start - f64::from(*points))) as f32;
                }
                let level = self.end + height;
                let from = self.hourly.iter().position(|p| f64::from(*p) <= level + 0.7);
                let from = from.unwrap_or(HOURS - 1) as f64;
                self.rests = Some(from);
                if self.kind == Kind::Resumes {
                    let wakes = from + 24.0 * lot.between(2.0, 6.0);
                    let fold = 24.0 * days * lot.between(0.4, 1.2);
                    for (hour, points) in self.hourly.iter_mut().enumerate() {
                        let since = (hour as f64 - wakes).max(0.0);
                        *points -= (height * (1.0 - (-since / fold).exp())) as f32;
                    }
                }
                if self.kind == Kind::Stuck {
                    self.end = level;
                }
            }
            Kind::Chilled => {
                let early = self.end + lot.between(1.0, 4.0);
                let hour = self.hourly.iter().position(|p| f64::from(*p) <= early).unwrap_or(0);
                self.chilled = Some(hour as f64);
                let stays = self.hourly[hour] - 0.2;
                self.hourly.iter_mut().skip(hour).for_each(|p| *p = p.max(stays));
            }
            Kind::Eaten => {
                let (a_day, most) = (lot.between(0.1, 0.6), lot.between(3.0, 9.0));
                let from = self.hourly.iter().position(|p| f64::from(*p) <= self.end + 2.0);
                let from = from.unwrap_or(HOURS) as f64;
                for (hour, points) in self.hourly.iter_mut().enumerate() {
                    let gone = a_day / 24.0 * (hour as f64 - from).max(0.0);
                    *points -= gone.min(most) as f32;
                }
                self.end -= most;
            }
            _ => {}
        }
    }
}

fn logistic(lot: &mut Lot, days: f64, two: bool) -> Vec<f64> {
    let (half, fall, skew) = loop {
        let half = 24.0 * days * (0.4 * lot.normal()).exp();
        let fall = half * (0.4 * lot.normal()).exp();
        let skew = 3f64.powf(lot.between(-0.7, 1.0));
        if left(0.0, half, fall, skew) > 0.94 {
            break (half, fall, skew);
        }
    };
    let second = if two { lot.between(0.06, 0.2) } else { 0.0 };
    let later = half * lot.between(1.5, 2.6);
    let at =
        |t: f64| (1.0 - second) * left(t, half, fall, skew) + second * left(t, later, later, 1.0);
    let first = at(0.0);
    (0..HOURS).map(|t| at(t as f64) / first).collect()
}

fn left(t: f64, half: f64, fall: f64, s: f64) -> f64 {
    let grown = 2f64.powf(s) - 1.0;
    let rate = 2.0 * s * (grown + 1.0) / (grown * fall);
    (1.0 + grown * (rate * (t - half)).min(500.0).exp()).powf(-1.0 / s)
}

/// A lag, a fall that quickens and then goes straight, and stops within hours.
fn sharp(lot: &mut Lot, days: f64) -> Vec<f64> {
    let lag = lot.between(8.0, 24.0);
    let falls = 24.0 * days * lot.between(1.0, 2.2);
    let corner = lot.between(0.02, 0.06);
    (0..HOURS)
        .map(|t| {
            let x = ((t as f64 - lag) / falls).max(0.0);
            let straight = if x < 0.3 { x * x / 0.6 } else { x - 0.15 };
            let left = 1.0 - straight / 0.85;
            // The corner is rounded.
            0.5 * (left + left.hypot(corner))
        })
        .collect()
}

/// Three sugars (W. F. Gee and W. F. Ramirez, 1988 and 1994): glucose, maltose and maltotriose are taken
/// up with Monod rates, each held back by those before it; rates by Arrhenius. Parameters from memory:
/// a and b of exp(a + b/T) in mol/m³, hours and kelvin, with R = 1.987 cal/(mol K).
fn three_sugars(start: f64, celsius: f64) -> Vec<f64> {
    let rt = 1.987 * (celsius + 273.15);
    let of = |a: f64, cal: f64| (a + cal / rt).exp();
    let rates = [of(35.77, -22_600.0), of(16.40, -11_300.0), of(10.59, -7_160.0)];
    let halves = [of(-121.3, 68_600.0), of(-19.5, 14_400.0), of(-26.78, 19_900.0)];
    let holds = [of(23.33, -10_200.0), of(55.61, -26_300.0)];
    let strength = start / 50.0;
    let first = [70.0 * strength, 220.0 * strength, 40.0 * strength];
    let weights = [180.0, 342.0, 504.0];
    let grows = [0.134, 0.268, 0.402];
    let mut sugar = first;
    let all: f64 = first.iter().zip(weights).map(|(s, w)| s * w).sum();
    let step = 0.25;
    let mut parts = Vec::with_capacity(HOURS);
    for _ in 0..HOURS {
        parts.push(sugar.iter().zip(weights).map(|(s, w)| s * w).sum::<f64>() / all);
        for _ in 0..4 {
            let [g, m, n] = sugar;
            let grown: f64 = (0..3).map(|i| grows[i] * (first[i] - sugar[i])).sum();
            let yeast = 125.0 * strength + grown;
            let by_glucose = holds[0] / (holds[0] + g);
            let by_maltose = holds[1] / (holds[1] + m);
            let take = [
                rates[0] * g / (halves[0] + g),
                rates[1] * m / (halves[1] + m) * by_glucose,
                rates[2] * n / (halves[2] + n) * by_glucose * by_maltose,
            ];
            for (s, take) in sugar.iter_mut().zip(take) {
                *s = (*s - step * take * yeast).max(0.0);
            }
        }
    }
    parts
}

/// Biomass (B. de Andrés-Toro, J. M. Girón-Sierra and others, 1998): suspended yeast wakes from its lag,
/// grows, dies and settles while it eats; parameters exp(a + b/T) with T in kelvin, g/L and hours, from
/// memory. Ethanol only holds growth back here.
fn biomass(start: f64, celsius: f64, pitched: f64) -> Vec<f64> {
    let t = celsius.min(14.0) + 273.15;
    let of = |a: f64, b: f64| (a + b / t).exp();
    // Fitted between 8 and 14 °C or so; warmer beer would outrun any yeast, so it is held there.
    let growth = (108.31 - 31_934.09 / t).exp();
    let eats = (-41.92 + 11_654.64 / t).exp();
    let half = (-119.63 + 34_203.95 / t).exp();
    let wakes = of(30.72, -9_501.54);
    let dies = (130.16 - 38_313.0 / t).exp();
    let ethanol_rate = of(3.27, -1_267.24);
    let first = 130.0 * start / 50.0;
    let (mut sugar, mut ethanol) = (first, 0.0);
    let (mut asleep, mut active) = (0.5 * pitched, 0.02 * pitched);
    let step = 0.25;
    let mut parts = Vec::with_capacity(HOURS);
    for _ in 0..HOURS {
        parts.push(sugar / first);
        for _ in 0..4 {
            let grows = growth * sugar / (0.5 * first + ethanol);
            let slows = (1.0 - ethanol / (0.5 * first)).max(0.0);
            let of_half = sugar / (half + sugar).max(1e-9);
            let woken = wakes * asleep;
            let more = grows * active - dies * active + woken;
            let eaten = eats * of_half * active;
            ethanol += step * slows * ethanol_rate * of_half * active;
            asleep -= step * woken;
            active = (active + step * more).max(0.02);
            sugar = (sugar - step * eaten).max(0.0);
        }
    }
    // What died early is no end: all that can be eaten is the fall.
    let last = parts.last().copied().unwrap_or(0.0);
    parts.iter().map(|part| (part - last) / (1.0 - last)).collect()
}
