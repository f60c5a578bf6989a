//! Laws of pitching.

use crate::support::{cases, family};
use fermentside::advice::Verdict;
use fermentside::advice::family::{Family, Span};
use fermentside::advice::pitch::{A_LITTLE_COOL, Wort, judge};
use fermentside::quantity::{Celsius, Estimate, Measured};
use proptest::prelude::*;

fn packet() -> impl Strategy<Value = Option<Span<Celsius>>> {
    let span = (0.0..45.0, 0.0..12.0).prop_map(|(a, b)| Span::new(celsius(a), celsius(a + b)));
    prop::option::of(span)
}

fn celsius(t: f64) -> Celsius {
    Celsius::nearest(t)
}

fn verdict(
    t: f64,
    sigma: f64,
    stirred: bool,
    family: Family,
    packet: Option<Span<Celsius>>,
) -> Verdict {
    judge(Wort { temperature: Estimate::new(celsius(t), sigma), stirred, family, packet }).verdict
}

proptest! {
    #![proptest_config(cases(4096))]

    #[test]
    fn never_go_above_the_range_nor_far_under_it_nor_unstirred(
        t in 0.0..50.0, sigma in 0.0..5.0, stirred: bool, family in family(), packet in packet(),
    ) {
        let range = packet.unwrap_or(family.pitch_at());
        if verdict(t, sigma, stirred, family, packet) == Verdict::Go {
            let lowest = range.from.value() - A_LITTLE_COOL.value();
            prop_assert!(lowest <= t && t <= range.to.value(), "{t} in {range:?}");
            prop_assert!(stirred);
            prop_assert!(t + sigma < family.harmed_above().value());
        }
    }

    #[test]
    fn more_doubt_never_makes_a_go(
        t in 0.0..50.0, sigma in 0.0..5.0, more in 0.0..10.0, stirred: bool, family in family(),
        packet in packet(),
    ) {
        if verdict(t, sigma, stirred, family, packet) != Verdict::Go {
            prop_assert_ne!(verdict(t, sigma + more, stirred, family, packet), Verdict::Go);
            prop_assert_ne!(verdict(t, f64::INFINITY, stirred, family, packet), Verdict::Go);
        }
    }

    #[test]
    fn the_middle_well_read_and_stirred_is_a_go(family in family()) {
        let middle = family.pitch_at().middle().value();
        prop_assert_eq!(verdict(middle, 0.3, true, family, None), Verdict::Go);
    }

    #[test]
    fn an_endless_doubt_is_never_a_go(
        t in 0.0..50.0, stirred: bool, family in family(), packet in packet(),
    ) {
        prop_assert_ne!(verdict(t, f64::INFINITY, stirred, family, packet), Verdict::Go);
    }
}
