//! The courses that are tried: a fixed grid, the same for the same yeast and start. Times in hours since
//! pitching, heights as a part of the fall from start to level.
//!
//! The main fall is the logistic family 1 / (1 + s e^(b(t − m)))^(1/s): with s = 1 the symmetric curve of
//! four parameters (Speers, Rogers and Smith, J. Inst. Brew. 109:229, 2003; ASBC Yeast-14), else lopsided or
//! sharp-ended, as compared on seven industrial data sets in Fermentation 7(1):13 (2021); with or without a
//! part that ends more slowly, which is ours and has no source. Beside it stand beers that something else
//! goes on eating, and beers that rested and have woken. Weights are our choice.

use crate::advice::family::Family;

/// Places for half way, in steps of its logarithm either way of what is usual.
const HALVES: i32 = 8;
const STEP: f64 = 0.155;
/// The spread of its logarithm.
const SPREAD: f64 = 0.55;
/// ln of the time of the whole fall, at the pace of half way, over the time to half way.
const PACES: [(f64, f64); 4] = [(-0.75, 0.2), (-0.25, 0.3), (0.2, 0.3), (0.65, 0.2)];
/// Lopsided: below 1 the end is sharper than the beginning.
const SKEWS: [(f64, f64); 3] = [(0.35, 0.25), (1.0, 0.4), (2.6, 0.35)];
/// The part that ends more slowly, its pace, its weight.
const SLOW: [(f64, f64, f64); 3] = [(0.0, 1.0, 0.6), (0.09, 0.2, 0.22), (0.22, 0.32, 0.18)];
/// It falls ever faster and stops within hours: the same curve with an exponent below nought, at each of the paces;
/// that and its weight, beside those above.
const STOPS: (f64, f64) = (-0.5, 0.5);
/// From the first hours on it falls and dies away, as where much yeast eats at one rate (first order): the
/// pace and its weight, beside those above; and how lopsided that is.
const DIES: [(f64, f64); 2] = [(0.7, 0.03), (0.95, 0.06)];
const DIES_SKEW: f64 = 10.0;
/// Points a day that something else eats.
const EATERS: [f64; 3] = [0.12, 0.3, 0.7];
/// It begins after so many times to half way.
const EATS_FROM: f64 = 1.8;
/// A rest ends after so many days,
const WAKES: [f64; 8] = [4.0, 5.5, 7.5, 10.0, 13.5, 18.0, 24.0, 32.0];
/// and then so many points go,
pub(super) const WOKEN: [f64; 2] = [3.0, 7.5];
/// falling by e in so many hours.
const WAKES_IN: f64 = 60.0;
/// At pitching hardly anything has gone.
const GONE: f64 = 0.04;

/// What happens after the main fall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum After {
    /// Nothing: it ends there, or rests.
    Nothing,
    /// Something else eats so many points an hour, from so many hours on.
    Eaten(f64, f64),
    /// It wakes after so many hours and goes down by so many points: which of [`WOKEN`].
    Wakes(f64, usize),
}

/// One course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Shape {
    rate: f64,
    middle: f64,
    skew: f64,
    slow: (f64, f64),
    pub(super) after: After,
    /// Its weight with nothing read.
    pub(super) weight: f64,
}

impl Shape {
    fn new(half: f64, pace: f64, skew: f64, slow: (f64, f64), after: After, weight: f64) -> Self {
        let grown = skew.exp2() - 1.0;
        let e_fold = half * pace.exp() * grown / ((grown + 1.0) * 2.0 * skew);
        let middle = half - (grown / skew).ln() * e_fold;
        Self { rate: 1.0 / e_fold, middle, skew, slow, after, weight }
    }

    /// The part of the main fall still to come.
    pub(super) fn left(&self, hours: f64) -> f64 {
        self.left_of(self.main(hours))
    }

    /// Whether the main fall is the other's, but for a part that ends more slowly.
    pub(super) fn falls_like(&self, other: &Self) -> bool {
        self.rate == other.rate && self.middle == other.middle && self.skew == other.skew
    }

    /// How far the main fall has come, as a logarithm, and the part of it still to come.
    pub(super) fn main(&self, hours: f64) -> (f64, f64) {
        let grown = self.skew * (self.rate * (hours - self.middle)).min(300.0).exp();
        // One that stops is through with it by now.
        if grown <= -1.0 {
            return (f64::INFINITY, 0.0);
        }
        let log = grown.ln_1p() / self.skew;
        (log, (-log).exp())
    }

    /// The part still to come, with the part that ends more slowly.
    pub(super) fn left_of(&self, (log, main): (f64, f64)) -> f64 {
        let (part, pace) = self.slow;
        if part > 0.0 { main + part * ((-pace * log).exp() - main) } else { main }
    }

    /// Points that have gone after the main fall.
    pub(super) fn gone(&self, hours: f64) -> f64 {
        match self.after {
            After::Nothing => 0.0,
            After::Eaten(_, from) | After::Wakes(from, _) if hours <= from => 0.0,
            After::Eaten(rate, from) => rate * (hours - from).max(0.0),
            After::Wakes(from, which) => {
                WOKEN[which] * (1.0 - (-(hours - from).max(0.0) / WAKES_IN).exp())
            }
        }
    }
}

impl Shape {
    /// Points that go after the main fall in all, where that is known.
    pub(super) fn goes_down_by(&self) -> f64 {
        match self.after {
            After::Wakes(_, which) => WOKEN[which],
            After::Nothing | After::Eaten(..) => 0.0,
        }
    }
}

/// Usual days to half way (common practice, no source).
pub(super) fn half_way(family: Family, start: f64) -> f64 {
    let days = match family {
        Family::Kveik => 1.1,
        Family::Lager => 4.5,
        Family::Cider => 6.0,
        Family::Wine => 7.0,
        Family::Unknown | Family::Saison => 2.5,
        Family::CleanAle | Family::EnglishAle | Family::BelgianAle | Family::GermanWheat => 2.1,
    };
    // Strong wort goes more slowly.
    days * 24.0 * (start / 55.0).max(1.0).powf(0.8)
}

/// All courses.
pub(super) fn shapes(family: Family, start: f64) -> Vec<Shape> {
    let usual = half_way(family, start);
    let mut all = Vec::with_capacity(1040);
    for i in -HALVES..=HALVES {
        let off = f64::from(i) * STEP;
        let half = usual * off.exp();
        let of_half = (-0.5 * (off / SPREAD).powi(2)).exp();
        let mut add = |pace, skew, slow, after, weight: f64| {
            let shape = Shape::new(half, pace, skew, slow, after, 1.0);
            let early = (-0.5 * ((1.0 - shape.left(0.0)) / GONE).powi(2)).exp();
            all.push(Shape { weight: of_half * weight * early, ..shape });
        };
        for (pace, of_pace) in PACES {
            add(pace, STOPS.0, (0.0, 1.0), After::Nothing, STOPS.1 * of_pace);
            for (skew, of_skew) in SKEWS {
                for (part, slower, of_slow) in SLOW {
                    let weight = of_pace * of_skew * of_slow;
                    add(pace, skew, (part, slower), After::Nothing, weight);
                }
            }
        }
        for (pace, of_pace) in DIES {
            add(pace, DIES_SKEW, (0.0, 1.0), After::Nothing, of_pace);
        }
        for rate in EATERS {
            let after = After::Eaten(rate / 24.0, EATS_FROM * half);
            add(-0.1, 1.0, (0.0, 1.0), after, 1.0 / EATERS.len() as f64);
        }
        for day in WAKES {
            for which in 0..WOKEN.len() {
                let share = 1.0 / (WAKES.len() * WOKEN.len()) as f64;
                add(-0.1, 1.0, (0.0, 1.0), After::Wakes(24.0 * day, which), share);
            }
        }
    }
    all
}
