//! Laws of opening.

use crate::support::{cases, hour};
use fermentside::advice::Verdict;
use fermentside::advice::open::{Found, Next, WaitingBottles, judge};
use fermentside::advice::practice::waking;
use fermentside::quantity::{Celsius, Hours, Measured, SpecificGravity};
use proptest::prelude::*;

proptest! {
    #![proptest_config(cases(10_000))]

    #[test]
    fn never_go_before_its_date(
        bottled in 0.0..5000.0, age in -100.0..2000.0,
        place in prop::option::of(0.0..35.0), original in prop::option::of(1.030..1.110),
    ) {
        let waiting = WaitingBottles {
            bottled: hour(bottled),
            place: place.map(Celsius::nearest),
            original: original.map(SpecificGravity::nearest),
            found: Found::Nothing,
            now: hour(bottled).after(Hours::nearest(age)),
        };
        let strong = original.is_some_and(|og| og > 1.060);
        let cold = place.is_some_and(|t| t < 13.0);
        let cool = !cold && place.is_some_and(|t| t < 18.0);
        let days = if strong { 28.0 } else { 14.0 } * if cool { 2.0 } else { 1.0 };
        let advice = judge(waiting);
        // In the cold the days have not begun.
        let from = if cold { waiting.now } else { waiting.bottled };
        // Nobody gets up at night to open one.
        let date = waking(from.after(Hours::nearest(days * 24.0)));
        prop_assert_eq!(advice.verdict == Verdict::Go, waiting.now >= date);
        prop_assert!(!cold || matches!(advice.next, Next::Warm(_)));
        match advice.next {
            Next::TryOne => prop_assert!(waiting.now >= date),
            Next::WaitUntil(then) | Next::Warm(then) => {
                prop_assert_eq!(then, date);
                prop_assert!(waiting.now < then);
            }
            other => prop_assert!(false, "{other:?} though none was opened"),
        }
    }
}
