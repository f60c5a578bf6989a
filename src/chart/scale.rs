//! From data to picture and back along one axis.

/// Numbers beyond this are drawn as if they stood at it: no picture has room to tell them apart.
const FAR: f64 = 1e15;
/// A range narrower than this, relative to its size, is treated as a single value.
const NARROW: f64 = 1e-9;

/// A straight map between a range of values and a range of picture units. Either may run backwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    data: (f64, f64),
    picture: (f64, f64),
}

impl Scale {
    /// Maps `data.0` to `picture.0` and `data.1` to `picture.1`. A single value is given room on both
    /// sides and so lands in the middle.
    #[must_use]
    pub fn new(data: (f64, f64), picture: (f64, f64)) -> Self {
        let (low, high) = widened(data.0, data.1);
        let data = if data.0 <= data.1 { (low, high) } else { (high, low) };
        Self { data, picture: (near(picture.0), near(picture.1)) }
    }

    /// Where a value stands in the picture.
    #[must_use]
    pub fn place(&self, value: f64) -> f64 {
        let share = (near(value) - self.data.0) / (self.data.1 - self.data.0);
        self.picture.0 + share * (self.picture.1 - self.picture.0)
    }

    /// The value at a place in the picture; the first value of a picture with no extent.
    #[must_use]
    pub fn value(&self, place: f64) -> f64 {
        let extent = self.picture.1 - self.picture.0;
        if extent.abs() < NARROW {
            return self.data.0;
        }
        self.data.0 + (near(place) - self.picture.0) / extent * (self.data.1 - self.data.0)
    }
}

fn near(value: f64) -> f64 {
    if value.is_nan() { 0.0 } else { value.clamp(-FAR, FAR) }
}

/// The two in order and clearly apart: a single value is given room on both sides.
pub(super) fn widened(a: f64, b: f64) -> (f64, f64) {
    let (low, high) = (near(a).min(near(b)), near(a).max(near(b)));
    let size = low.abs().max(high.abs()).max(1.0);
    if high - low >= size * NARROW {
        return (low, high);
    }
    let room = (size * NARROW).max(0.5);
    ((low - room).max(-FAR - room), high + room)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn runs_both_ways_and_upside_down() {
        let gravity = Scale::new((1.0, 1.06), (200.0, 20.0));
        assert!((gravity.place(1.03) - 110.0).abs() < 1e-9);
        assert!((gravity.value(200.0) - 1.0).abs() < 1e-12);
        let falling = Scale::new((10.0, 0.0), (0.0, 100.0));
        assert!((falling.place(2.5) - 75.0).abs() < 1e-9);
    }

    #[test]
    fn a_single_value_lands_in_the_middle() {
        let scale = Scale::new((7.0, 7.0), (0.0, 100.0));
        assert!((scale.place(7.0) - 50.0).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn is_finite_for_any_finite_numbers(
            a in proptest::num::f64::NORMAL | proptest::num::f64::ZERO,
            b in proptest::num::f64::NORMAL | proptest::num::f64::ZERO,
            v in proptest::num::f64::NORMAL | proptest::num::f64::ZERO,
            p in -1e4..1e4, q in -1e4..1e4,
        ) {
            for scale in [Scale::new((a, b), (p, q)), Scale::new((a, a), (p, p))] {
                prop_assert!(scale.place(v).is_finite());
                prop_assert!(scale.value(v).is_finite());
            }
        }

        #[test]
        fn comes_back(a in -1e3..1e3, span in 1e-3..1e3, share in 0.0..1.0, p in 0.0..500.0) {
            let scale = Scale::new((a, a + span), (p, p + 300.0));
            let value = a + share * span;
            prop_assert!((scale.value(scale.place(value)) - value).abs() < 1e-6);
        }
    }
}
