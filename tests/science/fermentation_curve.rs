//! Laws of the falling curve.

use crate::support::{cases, close};
use fermentside::quantity::{Hours, Measured, Plato, Share, Skew};
use fermentside::science::fermentation_curve::{FermentationCurve, Shape};
use proptest::prelude::*;

/// Any shape a beer could have, some with a slow part: half way, whole fall, skew.
fn shape() -> impl Strategy<Value = (Shape, f64)> {
    let slow = prop::option::of((0.01..0.4, 0.1..1.0));
    (6.0..400.0, 4.0..600.0, 0.1..10.0, slow).prop_map(|(half, fall, skew, slow)| {
        let [hours, whole] = [half, fall].map(Hours::nearest);
        let plain = Shape::by_half(hours, whole, Skew::nearest(skew)).expect("a shape");
        let shape = slow.map_or(plain, |(part, pace)| {
            plain.with_slow_part(Share::nearest(part), Share::nearest(pace))
        });
        (shape, fall)
    })
}

fn curve() -> impl Strategy<Value = (FermentationCurve, f64, f64, f64)> {
    (shape(), 4.0..25.0, 0.0..1.15).prop_map(|((shape, fall), start, gone)| {
        let end = start * (1.0 - gone);
        let curve = FermentationCurve::new(Plato::nearest(start), Plato::nearest(end), shape);
        (curve.expect("falls"), start, end, fall)
    })
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn it_falls_from_start_to_end(
        (curve, start, end, fall) in curve(), at in -400.0..2000.0, later in 0.0..500.0,
    ) {
        let extract = |t: f64| curve.extract_at(Hours::nearest(t)).value();
        prop_assert!(extract(at + later) <= extract(at) + 1e-12);
        prop_assert!(extract(at) <= start + 1e-12 && extract(at) >= end - 1e-12);
        prop_assert!(close(extract(-1e6), start, 1e-9));
        // The slowest skew and slow part together end a thousand times later than the bulk.
        prop_assert!(close(extract(400.0 + 2000.0 * fall), end, 1e-6), "{}", extract(1e6) - end);
    }

    #[test]
    fn the_time_of_a_part_is_when_that_part_is_left((shape, _) in shape(), part in 0.0001..0.9999) {
        // A very slow part takes longer than any time that can be told.
        if let Some(at) = shape.when_left(Share::nearest(part)) {
            prop_assert!(close(shape.left(at).value(), part, 1e-6), "{}", shape.left(at).value());
        }
    }

    #[test]
    fn by_half_is_half_way_then_and_as_steep_as_told(
        half in 6.0..400.0, fall in 4.0..600.0, skew in 0.1..10.0,
    ) {
        let shape = Shape::by_half(Hours::nearest(half), Hours::nearest(fall), Skew::nearest(skew));
        let shape = shape.expect("a shape");
        prop_assert!(close(shape.left(Hours::nearest(half)).value(), 0.5, 1e-9));
        let (step, left) = (fall * 1e-4, |t: f64| shape.left(Hours::nearest(t)).value());
        let slope = (left(half - step) - left(half + step)) / (2.0 * step);
        prop_assert!(close(slope * fall, 1.0, 1e-4), "{}", slope * fall);
    }

    #[test]
    fn a_skew_of_one_is_the_curve_of_four_parameters(
        fold in 2.0..200.0, middle in 0.0..400.0, at in -100.0..1500.0,
    ) {
        let shape = Shape::new(Hours::nearest(fold), Hours::nearest(middle), Skew::literal(1.0));
        let left = shape.expect("a shape").left(Hours::nearest(at)).value();
        prop_assert!(close(left, 1.0 / (1.0 + ((at - middle) / fold).exp()), 1e-12));
    }

    #[test]
    fn a_slow_part_only_ever_makes_it_later((shape, _) in shape(), at in 0.0..1000.0) {
        let slow = shape.with_slow_part(Share::literal(0.2), Share::literal(0.3));
        let slower = shape.with_slow_part(Share::literal(0.2), Share::literal(0.2));
        let at = Hours::nearest(at);
        prop_assert!(slower.left(at).value() >= slow.left(at).value() - 1e-12);
    }

    #[test]
    fn when_at_and_extract_at_undo_each_other(
        (curve, start, end, _) in curve(), part in 0.01..0.99,
    ) {
        let wanted = end + part * (start - end);
        if let Some(at) = curve.when_at(Plato::nearest(wanted)) {
            prop_assert!(close(curve.extract_at(at).value(), wanted, 1e-5));
        }
        prop_assert_eq!(curve.when_at(Plato::nearest(start + 1.0)), None);
    }
}
