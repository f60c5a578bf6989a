//! What level readings prove by themselves, by a sum that can be followed on paper.
//!
//! Take two sound readings since the beer is level, at least two nights apart. Had its tail been falling
//! like e^(−kt) unseen within their error, no more than 1.17 √(σ₁² + σ₂²) ÷ (e^(kt) − 1) is left of it.
//! A rougher, colder or doubtful reading can only make this more.

use super::looks::Point;
use crate::order::in_order;

/// Two nights, hours; three; and a week for what may go on.
pub(super) const NIGHTS: [f64; 3] = [42.0, 66.0, 160.0];
/// The part of a tail that goes in a day: the slow end of each (common practice, no source).
const RATES: [f64; 3] = [0.4, 0.25, 0.12];
/// One-sided 88 %: the posterior beside it is the stricter one.
const P88: f64 = 1.17;
/// Of two readings one of which stands so many points above the earlier one is wrong, and they prove nothing.
const ROSE: f64 = 2.5;
/// Nor do two of which the later stands so much lower: that is a fall.
const FELL: f64 = 4.0;
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
            let rose = sound[to].value - sound[from].value;
            if hours < needed || !(-FELL..=ROSE).contains(&rose) {
                continue;
            }
            let error = sound[from].sigma.max(FINEST).hypot(sound[to].sigma.max(FINEST));
            let left = P88 * error / (rate * hours / 24.0).exp_m1();
            found.left = Some(found.left.map_or(left, |least| least.min(left)));
        }
    }
    found
}

/// A drift is looked for over this long at least, hours, and in the last of them at most, ...
const DRIFT_OVER: f64 = 156.0;
const DRIFT_WITHIN: f64 = 252.0;
/// among readings of which each stands no more below the one before, points, or points a day; ...
const NEIGHBOURS: (f64, f64) = (1.0, 0.5);
/// it is one from so many points a week on, ...
const DRIFT_A_WEEK: f64 = 0.7;
/// when it is so many times its own standard error, which is the scatter's and that of three readings good
/// to so many points; and so many times to take back an end that was found, where it is looked for at each
/// of many readings: one of them strays by chance.
const DRIFT_SURE: (f64, f64) = (2.3, 3.5);
const MANY: usize = 4;
const SCATTER: (f64, f64) = (3.0, 0.7);
/// A line that leans is no drift where the end of it has been level over so many hours and readings.
const FLAT: (f64, usize) = (72.0, 5);
/// So far from the middle of level readings one is a slip, points.
const SLIP: f64 = 5.0;
/// The square of what rounding and the eye leave of one reading, points.
const ROUNDED: f64 = 0.1;

/// A fall that no two neighbours show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Drift {
    /// The reading it is seen from.
    pub(super) from: Point,
    /// Points a week.
    pub(super) a_week: f64,
    /// Whether it takes back an end that was found.
    pub(super) sure: bool,
}

/// A drift through a run that is level by its course, or through what it did of late. It goes by what the
/// readings show and by nothing that is stated of them.
pub(super) fn drift(main: &[Point], level: &[Point]) -> Option<Drift> {
    let last = main.last()?;
    let mut from = main.len() - 1;
    while let Some(before) = from.checked_sub(1) {
        let hours = main[from].hours - main[before].hours;
        let may_fall = NEIGHBOURS.0.max(NEIGHBOURS.1 * hours / 24.0);
        let falls = main[before].value - main[from].value > may_fall + 1e-6;
        if falls || last.hours - main[before].hours > DRIFT_WITHIN {
            break;
        }
        from = before;
    }
    let (level, late) = (by_line(&without_slips(level)), by_line(&main[from..]));
    let sure = [level, late].into_iter().flatten().any(|drift| drift.sure);
    level.or(late).map(|drift| Drift { sure, ..drift })
}

/// Level readings without those that lie far from most of them: the course took such a one for a slip, and
/// no line is to be drawn through it.
fn without_slips(level: &[Point]) -> Vec<Point> {
    let values = in_order(level.iter().map(|p| p.value).collect(), f64::total_cmp);
    let middle = values.get(values.len() / 2).copied().unwrap_or(0.0);
    level.iter().filter(|p| (p.value - middle).abs() <= SLIP).copied().collect()
}

/// By a straight line through all of them.
fn by_line(run: &[Point]) -> Option<Drift> {
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
    let off = |p: &Point| p.value - value - slope * (p.hours - hours);
    let scatter =
        run.iter().map(|p| off(p).powi(2)).sum::<f64>() + SCATTER.0 * SCATTER.1 * SCATTER.1;
    let error = (scatter / (count - 2.0 + SCATTER.0) / spread).sqrt();
    let a_week = -168.0 * slope;
    let times = -slope / error;
    let drifts = a_week >= DRIFT_A_WEEK && times > DRIFT_SURE.0 && !went_flat(run, off);
    let sure = times > if run.len() < MANY { DRIFT_SURE.0 } else { DRIFT_SURE.1 };
    drifts.then_some(Drift { from: *first, a_week, sure })
}

/// A tail that has come to rest: its last days lie on one level far better than on the line through all,
/// from which they stand `off`. A true drift fits its line to the end.
fn went_flat(run: &[Point], off: impl Fn(&Point) -> f64) -> bool {
    let Some(last) = run.last() else { return false };
    (0..run.len().saturating_sub(FLAT.1 - 1)).any(|from| {
        let flat = &run[from..];
        let count = flat.len() as f64;
        let level = flat.iter().map(|p| p.value).sum::<f64>() / count;
        let by_level: f64 = flat.iter().map(|p| (p.value - level).powi(2) + ROUNDED).sum();
        let by_line: f64 = flat.iter().map(|p| off(p).powi(2)).sum();
        last.hours - flat[0].hours >= FLAT.0 && by_level < 0.5 * by_line
    })
}
