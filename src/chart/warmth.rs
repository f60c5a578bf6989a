//! How warm the beer makes itself over the days, against its yeast's range, as coordinates.

use super::curve::{Point, band, straight};
use super::scale::Scale;
use super::ticks::within;

/// One day's temperatures: lowest, likely and highest, at so many days.
pub type Day = (f64, f64, f64, f64);

/// The picture, ready to draw (320 wide, 180 high).
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Warmth {
    /// From the lowest to the highest.
    pub band: String,
    /// The likely line.
    pub likely: String,
    /// Top and bottom of the yeast's range.
    pub range: (f64, f64),
    /// Numbers beside the axis of temperatures.
    pub degrees: Vec<(f64, f64)>,
    /// Days along the foot.
    pub days: Vec<(f64, f64)>,
}

impl Warmth {
    /// Its size.
    pub const SIZE: (f64, f64) = (320.0, 180.0);
    /// Left and right end of what is drawn.
    pub const SIDES: (f64, f64) = (44.0, 312.0);
    /// Top and bottom of it.
    pub const ENDS: (f64, f64) = (10.0, 150.0);
}

/// Places the days and the range `(from, to)`.
#[must_use]
pub fn warmth(days: &[Day], range: (f64, f64)) -> Warmth {
    let temperatures = days.iter().flat_map(|&(_, low, _, high)| [low, high]);
    let all = temperatures.chain([range.0, range.1]).filter(|t| t.is_finite());
    let (low, high) = all.fold((f64::MAX, f64::MIN), |(l, h), t| (l.min(t), h.max(t)));
    let last = days.iter().map(|day| day.0).fold(1.0, f64::max);
    let across = Scale::new((0.0, last), Warmth::SIDES);
    let down = Scale::new((high + 0.5, low - 0.5), Warmth::ENDS);
    let line = |pick: fn(&Day) -> f64| -> Vec<Point> {
        days.iter().map(|day| (across.place(day.0), down.place(pick(day)))).collect()
    };
    let marks =
        |ticks: Vec<f64>, scale: &Scale| ticks.into_iter().map(|v| (scale.place(v), v)).collect();
    Warmth {
        band: band(&line(|day| day.3), &line(|day| day.1)),
        likely: straight(&line(|day| day.2)),
        range: (down.place(range.1), down.place(range.0)),
        degrees: marks(within(low, high, 5).values, &down),
        days: marks(
            within(0.0, last, 6).values.into_iter().filter(|d| d.fract() == 0.0).collect(),
            &across,
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn warmer_is_higher_and_later_is_further_right() {
        let drawn = warmth(&[(0.0, 18.0, 18.5, 19.0), (2.0, 20.0, 21.0, 22.5)], (17.0, 22.0));
        assert!(drawn.range.0 < drawn.range.1);
        assert!(drawn.degrees.windows(2).all(|two| two[1].0 < two[0].0));
        assert!(drawn.days.windows(2).all(|two| two[1].0 > two[0].0));
        assert!(!drawn.band.contains("NaN") && !warmth(&[], (17.0, 22.0)).likely.contains("NaN"));
    }
}
