//! What level readings prove by themselves, by a sum that can be followed on paper.
//!
//! Take two sound readings since the beer is level, at least two nights apart. Had its tail been falling
//! like e^(−kt) unseen within their error, no more than 1.18 √(σ₁² + σ₂²) ÷ (e^(kt) − 1) is left of it.
//! A rougher, colder or doubtful reading can only make this more.

use super::looks::Point;

/// Two nights, hours; three; and a week for what may go on.
pub(super) const NIGHTS: [f64; 3] = [42.0, 66.0, 160.0];
/// The part of a tail that goes in a day: the slow end of each (common practice, no source).
const RATES: [f64; 3] = [0.4, 0.25, 0.12];
/// One-sided 88 %: the posterior beside it is the stricter one.
const P88: f64 = 1.18;
/// No reading counts as finer than this, points.
const FINEST: f64 = 0.4;

/// How fast the last points of a fermentation go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tail {
    Usual = 0,
    Slow = 1,
    GoesOn = 2,
}

/// What sound readings prove.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Proof {
    /// The most of an unseen tail that is left, points; `None` with no two sound readings far enough
    /// apart.
    pub(super) left: Option<f64>,
    /// Days from the first to the last sound reading, each as far as it counts.
    pub(super) days: f64,
}

/// Between two readings the time counts as far as both are sound.
fn counted(run: &[Point], from: usize, to: usize) -> f64 {
    let part = run[from].sound.min(run[to].sound);
    part * (run[to].hours - run[from].hours)
}

/// What the readings of a level run prove.
pub(super) fn proof(run: &[Point], tail: Tail) -> Proof {
    let (needed, rate) = (NIGHTS[tail as usize], RATES[tail as usize]);
    let sound: Vec<Point> = run.iter().filter(|p| p.sound > 0.0).copied().collect();
    let mut found = Proof { left: None, days: 0.0 };
    for to in 0..sound.len() {
        for from in 0..to {
            let hours = counted(&sound, from, to);
            found.days = found.days.max(hours / 24.0);
            if hours < needed {
                continue;
            }
            let error = sound[from].sigma.max(FINEST).hypot(sound[to].sigma.max(FINEST));
            let left = P88 * error / (rate * hours / 24.0).exp_m1();
            found.left = Some(found.left.map_or(left, |least| least.min(left)));
        }
    }
    found
}

/// A drift is looked for over this long at least, hours, ...
const DRIFT_OVER: f64 = 156.0;
/// and is one from so many points a week on, ...
const DRIFT_A_WEEK: f64 = 0.5;
/// when it is so many times its own standard error, which is the scatter's and that of three readings good
/// to so many points.
const DRIFT_SURE: f64 = 2.3;
const SCATTER: (f64, f64) = (3.0, 0.7);

/// A fall that no two neighbours show: points a week by a straight line through a level run. It goes by
/// what the readings show and by nothing that is stated of them.
pub(super) fn drift(run: &[Point]) -> Option<f64> {
    let (first, last) = (run.first()?, run.last()?);
    if run.len() < 3 || last.hours - first.hours < DRIFT_OVER {
        return None;
    }
    let count = run.len() as f64;
    let mean = |of: fn(&Point) -> f64| run.iter().map(of).sum::<f64>() / count;
    let (hours, value) = (mean(|p| p.hours), mean(|p| p.value));
    let spread: f64 = run.iter().map(|p| (p.hours - hours).powi(2)).sum();
    let with: f64 = run.iter().map(|p| (p.hours - hours) * (p.value - value)).sum();
    let slope = with / spread;
    let off = |p: &Point| (p.value - value - slope * (p.hours - hours)).powi(2);
    let scatter = run.iter().map(off).sum::<f64>() + SCATTER.0 * SCATTER.1 * SCATTER.1;
    let error = (scatter / (count - 2.0 + SCATTER.0) / spread).sqrt();
    let a_week = -168.0 * slope;
    (a_week >= DRIFT_A_WEEK && -slope > DRIFT_SURE * error).then_some(a_week)
}
