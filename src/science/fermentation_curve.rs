//! How the apparent extract falls while beer ferments: the logistic family.
//!
//! P(t) = P_end + (P_start − P_end) / (1 + s e^(b(t − m)))^(1/s), in degrees Plato. With s = 1 it is the
//! symmetric curve of four parameters (Speers, Rogers and Smith, J. Inst. Brew. 109:229, 2003; ASBC
//! Yeast-14); with s it has five, as compared on seven industrial data sets in Fermentation 7(1):13
//! (2021). A part that finishes more slowly can be added; that is ours and has no source.

use super::ScienceError;
use super::root::rising_root;
use crate::quantity::{Hours, Measured, Plato, Share, Skew};

/// The course of the fall from 1 to 0, whatever its height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// b, an hour.
    rate: f64,
    /// m, hours.
    middle: f64,
    /// s.
    skew: f64,
    /// The part that goes more slowly, and how many times as fast as the rest it goes.
    slow: (f64, f64),
}

impl Shape {
    /// By the formula's own parameters: 1/b, m and s. Times count from any one moment.
    ///
    /// ```
    /// use fermentside::quantity::{Hours, Share, Skew};
    /// use fermentside::science::{ScienceError, fermentation_curve::Shape};
    ///
    /// let (middle, symmetric) = (Hours::literal(48.0), Skew::literal(1.0));
    /// let shape = Shape::new(Hours::literal(10.0), middle, symmetric)?;
    /// assert_eq!(shape.left(middle), Share::literal(0.5));
    /// assert_eq!(Shape::new(Hours::literal(0.0), middle, symmetric), Err(ScienceError::NothingThere));
    /// # Ok::<(), ScienceError>(())
    /// ```
    ///
    /// # Errors
    /// [`ScienceError::NothingThere`] when 1/b is not above zero.
    pub fn new(one_over_b: Hours, middle: Hours, skew: Skew) -> Result<Self, ScienceError> {
        if one_over_b.value() <= 0.0 {
            return Err(ScienceError::NothingThere);
        }
        let rate = 1.0 / one_over_b.value();
        Ok(Self { rate, middle: middle.value(), skew: skew.value(), slow: (0.0, 1.0) })
    }

    /// By what can be seen: `half` is when half has gone, `fall` the time that the whole fall would
    /// take at the pace of that moment.
    ///
    /// ```
    /// use fermentside::quantity::{Hours, Measured, Skew};
    /// use fermentside::science::fermentation_curve::Shape;
    ///
    /// let (half, fall) = (Hours::literal(48.0), Hours::literal(40.0));
    /// let shape = Shape::by_half(half, fall, Skew::literal(2.0))?;
    /// assert!((shape.left(half).value() - 0.5).abs() < 1e-12);
    /// assert!(Shape::by_half(half, Hours::literal(0.0), Skew::literal(2.0)).is_err());
    /// # Ok::<(), fermentside::science::ScienceError>(())
    /// ```
    ///
    /// # Errors
    /// [`ScienceError::NothingThere`] when `fall` is not above zero.
    pub fn by_half(half: Hours, fall: Hours, skew: Skew) -> Result<Self, ScienceError> {
        // At half way s e^x = 2^s − 1, and the pace is b (1 − 2^(−s)) / (2 s).
        let (s, grown) = (skew.value(), 2f64.powf(skew.value()) - 1.0);
        let one_over_b = fall.value() * grown / ((grown + 1.0) * 2.0 * s);
        let middle = half.value() - (grown / s).ln() * one_over_b;
        Self::new(Hours::new(one_over_b)?, Hours::new(middle)?, skew)
    }

    /// The same, but with a `part` of the fall that ends only `pace` times as fast as the rest.
    ///
    /// ```
    /// use fermentside::quantity::{Hours, Share, Skew};
    /// use fermentside::science::fermentation_curve::Shape;
    ///
    /// let quick = Shape::new(Hours::literal(10.0), Hours::literal(48.0), Skew::literal(1.0))?;
    /// let slow = quick.with_slow_part(Share::literal(0.1), Share::literal(0.2));
    /// let later = Hours::literal(120.0);
    /// assert!(slow.left(later) > quick.left(later));
    /// # Ok::<(), fermentside::science::ScienceError>(())
    /// ```
    #[must_use]
    pub fn with_slow_part(self, part: Share, pace: Share) -> Self {
        Self { slow: (part.value(), pace.value()), ..self }
    }

    /// The part of the fall that is still to come at `at`: near 1 long before, near 0 long after.
    #[must_use]
    pub fn left(&self, at: Hours) -> Share {
        let grown = self.skew * (self.rate * (at.value() - self.middle)).exp();
        let log = grown.ln_1p() / self.skew;
        let (part, pace) = self.slow;
        let main = (-log).exp();
        let left = if part > 0.0 { main + part * ((-pace * log).exp() - main) } else { main };
        Share::nearest(left)
    }

    /// When `part` of the fall is still to come; `None` for all or nothing, which no time is far enough
    /// for, and for a slow part that never ends.
    ///
    /// ```
    /// use fermentside::quantity::{Hours, Share, Skew};
    /// use fermentside::science::fermentation_curve::Shape;
    ///
    /// let shape = Shape::new(Hours::literal(10.0), Hours::literal(48.0), Skew::literal(1.0))?;
    /// assert_eq!(shape.when_left(Share::literal(0.5)), Some(Hours::literal(48.0)));
    /// assert_eq!(shape.when_left(Share::literal(0.0)), None);
    /// # Ok::<(), fermentside::science::ScienceError>(())
    /// ```
    #[must_use]
    pub fn when_left(&self, part: Share) -> Option<Hours> {
        let part = part.value();
        if part <= 0.0 || part >= 1.0 {
            return None;
        }
        // x = b (t − m) from the formula solved for the time.
        let solved = |part: f64| {
            let log = -part.ln() * self.skew;
            // For large exponents e^y − 1 is e^y to the last bit.
            if log > 600.0 { log - self.skew.ln() } else { (log.exp_m1() / self.skew).ln() }
        };
        let (slow, pace) = self.slow;
        let at = |x: f64| Hours::new(self.middle + x / self.rate).ok();
        if slow <= 0.0 {
            return at(solved(part));
        }
        // The slow part alone is above the sum, the main part alone below it.
        let slowest = part.powf(1.0 / pace.max(1e-6));
        if pace <= 0.0 || slowest <= f64::MIN_POSITIVE {
            return None;
        }
        let left = |x: f64| at(x).map_or(0.0, |at| self.left(at).value());
        at(rising_root(solved(part), solved(slowest), |x| part - left(x)))
    }
}

/// The course of one beer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FermentationCurve {
    start: Plato,
    end: Plato,
    shape: Shape,
}

impl FermentationCurve {
    /// From `start` to `end`, both apparent extract, along `shape`.
    ///
    /// ```
    /// use fermentside::quantity::{Hours, Plato, Skew};
    /// use fermentside::science::fermentation_curve::{FermentationCurve, Shape};
    ///
    /// let shape = Shape::new(Hours::literal(10.0), Hours::literal(48.0), Skew::literal(1.0))?;
    /// let (start, end) = (Plato::literal(12.5), Plato::literal(2.5));
    /// let curve = FermentationCurve::new(start, end, shape)?;
    /// assert_eq!(curve.extract_at(Hours::literal(48.0)), Plato::literal(7.5));
    /// assert_eq!(curve.when_at(Plato::literal(7.5)), Some(Hours::literal(48.0)));
    /// assert_eq!(curve.when_at(Plato::literal(2.0)), None);
    /// assert!(FermentationCurve::new(end, start, shape).is_err());
    /// # Ok::<(), fermentside::science::ScienceError>(())
    /// ```
    ///
    /// # Errors
    /// [`ScienceError::RisingGravity`] when the end lies above the start.
    pub fn new(start: Plato, end: Plato, shape: Shape) -> Result<Self, ScienceError> {
        if end > start {
            return Err(ScienceError::RisingGravity);
        }
        Ok(Self { start, end, shape })
    }

    /// Apparent extract at `at`: never above the start, never below the end, never rising.
    #[must_use]
    pub fn extract_at(&self, at: Hours) -> Plato {
        let (start, end) = (self.start.value(), self.end.value());
        Plato::nearest(end + (start - end) * self.shape.left(at).value())
    }

    /// When it is half way down.
    #[must_use]
    pub fn half_way(&self) -> Option<Hours> {
        self.shape.when_left(Share::literal(0.5))
    }

    /// When it is down to `extract`; `None` for what it never reaches or was never above.
    #[must_use]
    pub fn when_at(&self, extract: Plato) -> Option<Hours> {
        let (start, end) = (self.start.value(), self.end.value());
        let part = (extract.value() - end) / (start - end);
        Share::new(part).ok().and_then(|part| self.shape.when_left(part))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_symmetric_curve_is_half_way_at_its_middle() {
        let shape = Shape::new(Hours::literal(12.0), Hours::literal(48.0), Skew::literal(1.0));
        let curve = FermentationCurve::new(
            Plato::literal(12.0),
            Plato::literal(3.0),
            shape.expect("a shape"),
        )
        .expect("falls");
        assert!((curve.extract_at(Hours::literal(48.0)).value() - 7.5).abs() < 1e-12);
        assert!(curve.half_way().is_some_and(|half| (half.value() - 48.0).abs() < 1e-9));
        // One e-fold later: 3 + 9 / (1 + e).
        let later = curve.extract_at(Hours::literal(60.0)).value();
        assert!((later - 5.420_473).abs() < 1e-6, "{later}");
    }

    #[test]
    fn a_part_that_never_ends_has_no_time() {
        let shape = Shape::new(Hours::literal(12.0), Hours::literal(48.0), Skew::literal(1.0));
        let held = shape.expect("a shape").with_slow_part(Share::literal(0.1), Share::literal(0.0));
        assert_eq!(held.when_left(Share::literal(0.05)), None);
        assert!((held.left(Hours::literal(5000.0)).value() - 0.1).abs() < 1e-9);
    }

    #[test]
    fn nothing_rises() {
        let shape = Shape::new(Hours::literal(12.0), Hours::literal(48.0), Skew::literal(1.0));
        let shape = shape.expect("a shape");
        let wrong = FermentationCurve::new(Plato::literal(3.0), Plato::literal(12.0), shape);
        assert_eq!(wrong, Err(ScienceError::RisingGravity));
        let still = Shape::new(Hours::literal(0.0), Hours::literal(48.0), Skew::literal(1.0));
        assert_eq!(still, Err(ScienceError::NothingThere));
    }
}
