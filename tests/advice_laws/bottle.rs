//! Laws of the dose and its guard: the worst case worked again from the raw inputs.

use crate::support::cases;
use fermentside::advice::Verdict;
use fermentside::advice::bottle::{Bottling, Next, Over, guard, plan};
use fermentside::advice::bottles::Bottle;
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, GravityChange, Litres, Measured, Metres, Share,
};
use fermentside::science::bottle_pressure::Closing;
use fermentside::science::priming::{Priming, Sugar, dose};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

prop_compose! {
    fn bottling()(
        over in prop::sample::select(vec![Over::Judged, Over::Judged, Over::Stated, Over::No]),
        points_left in prop::option::weighted(0.9, -0.002..0.008),
        yeast_may_go_on: bool,
        (target, held, doubt) in (1.0..4.5, 0.2..1.8, 0.0..0.3),
        (litres, rough) in (0.3..100.0, 0.0..0.7),
        sugar in prop::sample::select(Sugar::ALL.to_vec()),
        weakest in prop::sample::select(Bottle::ALL.to_vec()),
        hottest in 0.0..45.0,
        (headspace, filled_at, height) in (0.0..0.1, 0.0..35.0, 0.0..3000.0),
    ) -> Bottling {
        Bottling {
            over,
            points_left: points_left.map(GravityChange::nearest),
            yeast_may_go_on,
            target: CarbonDioxideVolumes::nearest(target),
            already_in: Estimate::new(CarbonDioxideVolumes::nearest(held), doubt * doubt),
            beer: Estimate::new(Litres::nearest(litres), litres * rough * rough),
            sugar,
            weakest,
            hottest: Celsius::nearest(hottest),
            closing: Closing {
                headspace: Share::nearest(headspace),
                filled_at: Celsius::nearest(filled_at),
                height: Metres::nearest(height),
            },
        }
    }
}

/// Grams of carbon dioxide from a gram: the most that the kind can give, by molar masses and by the
/// upper end of its solids and of what of them ferments.
fn most_of(sugar: Sugar) -> f64 {
    let glucose = 2.0 * 44.009 / 180.156;
    let sucrose = 4.0 * 44.009 / 342.297;
    match sugar {
        Sugar::Sucrose => sucrose,
        Sugar::GlucoseAnhydrous => glucose,
        Sugar::DextroseMonohydrate => glucose * (180.156 / 198.171),
        Sugar::DryMaltExtract => 0.97 * 0.75 * sucrose,
        Sugar::Honey => 0.85 * glucose,
        Sugar::Own(_) | Sugar::Wort(_) => sugar.full_yield().upper(2.0).value(),
    }
}

fn worst(b: &Bottling, sugar: f64) -> f64 {
    let already_in = b.already_in.value().value() + 2.0 * b.already_in.sigma();
    let least_beer = b.beer.value().value() - 2.0 * b.beer.sigma();
    let points = b.points_left.map_or(10.0, |left| 1000.0 * left.value()).max(0.0);
    let primed = match sugar {
        0.0 => 0.0,
        _ if least_beer > 0.0 => sugar * most_of(b.sugar) / 1.977 / least_beer,
        _ => f64::INFINITY,
    };
    already_in + primed + 0.5 * points
}

fn ceiling(b: &Bottling) -> Option<f64> {
    let usual = match b.weakest {
        Bottle::UnknownGlass => 2.8,
        Bottle::ReusableGlass => 3.3,
        Bottle::HeavyGlass | Bottle::Pet => 4.0,
        Bottle::NotForPressure => return None,
    };
    Some(if b.yeast_may_go_on { usual - 0.5 } else { usual })
}

fn sugar_for(b: &Bottling) -> Grams {
    let to_add = (b.target.value() - b.already_in.value().value()).max(0.0);
    Grams::nearest(10.0 * to_add * b.beer.value().value())
}

proptest! {
    #![proptest_config(cases(20_000))]

    #[test]
    fn a_dose_is_within_the_ceiling_in_the_worst_case(b in bottling()) {
        let plan = plan(b).expect("in range");
        prop_assert_eq!(plan.dose().is_some(), plan.advice.verdict == Verdict::Go);
        if let Some(dose) = plan.dose() {
            let ceiling = ceiling(&b).expect("a bottle made for pressure");
            let worst = worst(&b, dose.sugar.value().value());
            prop_assert!(worst <= ceiling + 1e-9, "{worst} above {ceiling}");
            prop_assert_ne!(b.over, Over::No);
            prop_assert_ne!(b.weakest, Bottle::NotForPressure);
            // What is in the beer and may come counts in full; it never takes sugar off.
            let to_add = (b.target.value() - b.already_in.value().value()).max(0.0);
            let least = to_add * 1.977 * b.beer.value().value() / most_of(b.sugar);
            prop_assert!(dose.sugar.value().value() >= least - 1e-9);
        }
    }

    #[test]
    fn a_finished_beer_gets_its_dose_whenever_the_glass_holds_it(b in bottling()) {
        // In a room as warm as the ceilings are meant for.
        let hottest = Celsius::nearest(b.hottest.value().min(30.0));
        let b = Bottling { over: Over::Judged, hottest, ..b };
        let plan = plan(b).expect("in range");
        // The most that any practice would weigh, a tenth over what full yield needs.
        let to_add = (b.target.value() - b.already_in.value().value()).max(0.0);
        let low = most_of(b.sugar) * if b.sugar == Sugar::DryMaltExtract { 0.86 } else { 0.94 };
        let weighed = to_add * 1.977 * b.beer.value().value() / (0.95 * low);
        if ceiling(&b).is_some_and(|ceiling| worst(&b, weighed) < ceiling) {
            prop_assert!(plan.dose().is_some(), "{:?}", plan.advice);
        }
    }
}

proptest! {
    #![proptest_config(cases(4096))]

    #[test]
    fn the_guard_rises_with_all_that_is_dangerous(b in bottling(), more in 0.0..1.0) {
        let whole = |b: Bottling| plan(b).expect("in range");
        let usual = whole(b);
        let not_less = |changed: Bottling| {
            let other = whole(changed);
            other.guard.worst >= usual.guard.worst
                && other.guard.at_20 >= usual.guard.at_20
                && other.guard.at_hottest >= usual.guard.at_hottest
                && (usual.dose().is_some() || other.dose().is_none())
        };
        let hottest = Celsius::nearest(f64::min(b.hottest.value() + 20.0 * more, 45.0));
        prop_assert!(not_less(Bottling { hottest, ..b }), "the hottest place");
        let target = CarbonDioxideVolumes::nearest(b.target.value() + more);
        prop_assert!(not_less(Bottling { target, ..b }), "the target");
        let left = |left: GravityChange| GravityChange::nearest(left.value() + 0.004 * more);
        prop_assert!(not_less(Bottling { points_left: b.points_left.map(left), ..b }), "points");
        prop_assert!(not_less(Bottling { points_left: None, ..b }), "points not known");
        let beer = b.beer.widened(b.beer.value().value() * more);
        prop_assert!(not_less(Bottling { beer, ..b }), "the beer's doubt");
        let already_in = b.already_in.widened(more);
        prop_assert!(not_less(Bottling { already_in, ..b }), "the doubt of what is in");
        for endless in [f64::INFINITY, f64::NAN] {
            let beer = Estimate::new(b.beer.value(), endless);
            prop_assert!(not_less(Bottling { beer, ..b }), "endless doubt of the beer");
        }
    }

    #[test]
    fn more_sugar_than_the_dose_is_judged_too(b in bottling(), more in 0.0..200.0) {
        let sugar = sugar_for(&b);
        let fuller = Grams::nearest(sugar.value() + more);
        let of = |sugar| guard(&b, sugar).expect("in range").worst;
        prop_assert!(of(fuller) >= of(sugar));
        prop_assert!((of(sugar).value() - worst(&b, sugar.value()).min(60.0)).abs() < 1e-9);
    }

    #[test]
    fn nothing_known_of_what_is_left_counts_as_ten_points(b in bottling()) {
        let plan = plan(Bottling { points_left: None, ..b }).expect("in range");
        let ten = Bottling { points_left: Some(GravityChange::literal(0.010)), ..b };
        prop_assert!(plan.dose().is_none() || ceiling(&b).is_some_and(|c| c >= 5.0));
        prop_assert!((plan.guard.worst.value() - worst(&ten, dose_for(&b)).min(60.0)).abs() < 1e-6);
    }

    #[test]
    fn the_way_down_leads_to_a_dose(b in bottling()) {
        if let Next::LowerTarget(target) = plan(b).expect("in range").advice.next {
            prop_assert!(target < b.target);
            let lower = plan(Bottling { target, ..b }).expect("in range");
            prop_assert!(lower.dose().is_some(), "{:?}", lower.advice);
            // It is the highest: a tenth more would be no way down.
            let tenth = CarbonDioxideVolumes::nearest(target.value() + 0.1);
            if tenth < b.target {
                let higher = plan(Bottling { target: tenth, ..b }).expect("in range");
                prop_assert!(higher.dose().is_none());
            }
        }
    }

    #[test]
    fn unfinished_beer_is_told_to_wait_and_never_to_take_less(b in bottling()) {
        let plan = plan(Bottling { over: Over::No, ..b }).expect("in range");
        prop_assert!(plan.dose().is_none());
        let waits = matches!(plan.advice.next, Next::ReadAgain);
        prop_assert!(waits || b.weakest == Bottle::NotForPressure, "{:?}", plan.advice);
    }
}

/// The sugar that would have been the dose, withheld or not.
fn dose_for(b: &Bottling) -> f64 {
    let Bottling { target, already_in, beer, sugar, .. } = *b;
    let priming = Priming { target, already_in, beer, sugar };
    dose(priming).expect("in range").sugar.value().value()
}

#[test]
fn the_beers_tried_meet_every_answer() {
    let mut runner = TestRunner::deterministic();
    let (mut doses, mut ways_down, mut stops) = (0, 0, 0);
    for _ in 0..4000 {
        let tree = bottling().new_tree(&mut runner).expect("a beer");
        let plan = plan(tree.current()).expect("in range");
        doses += u32::from(plan.dose().is_some_and(|dose| dose.sugar.value().value() > 0.0));
        ways_down += u32::from(matches!(plan.advice.next, Next::LowerTarget(_)));
        stops += u32::from(plan.advice.verdict == Verdict::Stop);
    }
    assert!(doses > 200 && ways_down > 200 && stops > 200, "{doses} {ways_down} {stops}");
}
