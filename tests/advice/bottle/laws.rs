//! Laws of the dose and its guard: the worst case worked again from the raw inputs.

use crate::support::cases;
use fermentside::advice::Verdict;
use fermentside::advice::bottle::dosing::{Dosing, Weighing};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::{Bottling, Next, Over, guard, plan};
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, GravityChange, Litres, Measured, Metres, Share,
    SpecificGravity,
};
use fermentside::science::bottle_pressure::Closing;
use fermentside::science::priming::{KeptWort, OwnSugar, Priming, Sugar, dose};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// Every known kind, own ones of any make, and wort of any strength.
fn sugars() -> impl Strategy<Value = Sugar> {
    let share = |from, to| (from..to).prop_map(Share::nearest);
    let own = (share(0.3, 1.0), share(0.0, 0.5))
        .prop_map(|(fermentable, water)| Sugar::Own(OwnSugar { fermentable, water }));
    let wort = (1.030..1.090, 0.4..0.95).prop_map(|(gravity, gone): (f64, f64)| {
        let end = gravity - gone * (gravity - 1.0);
        let [gravity, end] = [gravity, end].map(SpecificGravity::nearest);
        Sugar::Wort(KeptWort { gravity, end })
    });
    prop_oneof![5 => prop::sample::select(Sugar::ALL.to_vec()), 1 => own, 1 => wort]
}

prop_compose! {
    pub fn bottling()(
        over in prop::sample::select(vec![
            Over::Judged,
            Over::Judged,
            Over::Judged,
            Over::Stated,
            Over::ColdStopped,
            Over::No,
        ]),
        points_left in prop::option::weighted(0.9, -0.002..0.008),
        yeast_may_go_on: bool,
        (target, held, doubt) in (1.0..4.5, 0.2..1.8, 0.0..0.3),
        (litres, rough) in (0.3..100.0, 0.0..0.7),
        sugar in sugars(),
        (into_bottles, smallest, scale) in (prop::bool::weighted(0.3), 0.25..1.0, 0.01..5.0),
        may_hold in prop::option::weighted(0.3, (0.2..2.0, 0.0..0.2)),
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
            may_hold: may_hold.map(|(held, doubt)| {
                Estimate::new(CarbonDioxideVolumes::nearest(held), doubt)
            }),
            beer: Estimate::new(Litres::nearest(litres), litres * rough * rough),
            sugar,
            weighing: Weighing {
                dosing: if into_bottles {
                    Dosing::Bottles { smallest: Litres::nearest(smallest) }
                } else {
                    Dosing::Vessel
                },
                // Mostly a fine scale, so that small bottles are dosed too.
                scale: Grams::nearest(0.1 * scale * scale),
            },
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
        Sugar::Own(own) => {
            let part = (1.05 * own.fermentable.value()).min(1.0);
            (1.0 - own.water.value()) * part * sucrose
        }
        Sugar::Wort(wort) => {
            // The short formula for degrees Plato, and two deviations of 0.30 °P and 2 %.
            let plato = |sg: f64| -616.868 + sg * (1111.14 + sg * (-630.272 + sg * 135.997));
            let (start, end) = (plato(wort.gravity.value()), plato(wort.end.value()));
            let ferments = (0.814 + 0.000_86 * start) * (start - end);
            0.01 * sucrose * (ferments + 2.0 * 0.2957_f64.hypot(0.02 * ferments))
        }
    }
}

/// Litres that a gram of it adds.
fn swells(sugar: Sugar) -> f64 {
    match sugar {
        Sugar::Wort(wort) => 1.0 / (998.2 * wort.gravity.value()),
        _ => 0.0,
    }
}

fn worst(b: &Bottling, sugar: f64) -> f64 {
    let upper = |held: Estimate<CarbonDioxideVolumes>| held.value().value() + 2.0 * held.sigma();
    let already_in = b.may_hold.map_or(0.0, upper).max(upper(b.already_in));
    let (volume, least) = (b.beer.value().value(), b.beer.value().value() - 2.0 * b.beer.sigma());
    let points = b.points_left.map_or(10.0, |left| 1000.0 * left.value()).max(0.0);
    let scale = b.weighing.scale.value();
    let wort = swells(b.sugar);
    // Grams of the bottle that gets the most, and its litres, wort and all.
    let (grams, litres) = match b.weighing.dosing {
        // A twentieth more of the syrup, and less beer than thought: independent of each other.
        Dosing::Vessel if least > 0.0 => {
            let grams = sugar + scale;
            (grams, (volume + grams * wort) / (1.0 + (volume / least - 1.0).hypot(0.05)))
        }
        Dosing::Vessel => (sugar, 0.0),
        Dosing::Bottles { smallest } => {
            (sugar / (volume + sugar * wort) + scale / smallest.value(), 1.0 / 1.02)
        }
    };
    let primed = match sugar {
        0.0 => 0.0,
        // Wort alone fills no bottle.
        _ if litres > grams * wort => grams * most_of(b.sugar) / 1.977 / litres,
        _ => f64::INFINITY,
    };
    already_in + primed + 0.5 * points
}

/// How near two ways of working it out must come, relative: the short formula for wort is that rough.
fn hair(b: &Bottling) -> f64 {
    if matches!(b.sugar, Sugar::Wort(_)) { 0.005 } else { 1e-9 }
}

pub fn ceiling(b: &Bottling) -> Option<f64> {
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
            prop_assert!(worst <= ceiling * (1.0 + hair(&b)), "{worst} above {ceiling}");
            prop_assert!(!b.over.waits());
            prop_assert_ne!(b.weakest, Bottle::NotForPressure);
            // What is in the beer and may come counts in full; it never takes sugar off.
            let to_add = (b.target.value() - b.already_in.value().value()).max(0.0);
            let least = to_add * 1.977 * b.beer.value().value() / most_of(b.sugar);
            prop_assert!(dose.sugar.value().value() >= least - 1e-9);
            // And so with what is read off the scale, in the vessel or in any bottle.
            let weighed = plan.weigh().expect("a dose").value();
            let off = (weighed - dose.sugar.value().value()).abs();
            prop_assert!(off <= 0.5 * b.weighing.scale.value() + 1e-9, "{off}");
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
        let weighed = match b.sugar {
            Sugar::Own(_) | Sugar::Wort(_) => dose_for(&b) * (1.0 + hair(&b)),
            _ => to_add * 1.977 * b.beer.value().value() / (0.95 * low),
        };
        if ceiling(&b).is_some_and(|ceiling| worst(&b, weighed) < ceiling) {
            prop_assert!(plan.dose().is_some(), "{:?}", plan.advice);
        }
    }
}

proptest! {
    #![proptest_config(cases(12_000))]

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
        let may_hold = Some(b.may_hold.unwrap_or(b.already_in).widened(more));
        prop_assert!(not_less(Bottling { may_hold, ..b }), "what it may hold");
        let scale = Grams::nearest(b.weighing.scale.value() * (1.0 + 10.0 * more));
        let weighing = Weighing { scale, ..b.weighing };
        prop_assert!(not_less(Bottling { weighing, ..b }), "the scale");
        if let Dosing::Bottles { smallest } = b.weighing.dosing {
            let smallest = Litres::nearest(smallest.value() * (1.0 - 0.9 * more));
            let weighing = Weighing { dosing: Dosing::Bottles { smallest }, ..b.weighing };
            prop_assert!(not_less(Bottling { weighing, ..b }), "the smallest bottle");
        }
        // A fuller bottle leaves the gas less room; to the brim there is no air, which is another case.
        let fuller = Share::nearest((b.closing.headspace.value() - 0.05 * more).max(0.001));
        if fuller < b.closing.headspace {
            let closing = Closing { headspace: fuller, ..b.closing };
            prop_assert!(not_less(Bottling { closing, ..b }), "the fill");
        }
        for endless in [f64::INFINITY, f64::NAN] {
            let beer = Estimate::new(b.beer.value(), endless);
            prop_assert!(not_less(Bottling { beer, ..b }), "endless doubt of the beer");
        }
    }

}

proptest! {
    #![proptest_config(cases(4096))]

    #[test]
    fn more_sugar_than_the_dose_is_judged_too(b in bottling(), more in 0.0..200.0) {
        let sugar = sugar_for(&b);
        let fuller = Grams::nearest(sugar.value() + more);
        let of = |sugar| guard(&b, sugar).expect("in range").worst;
        prop_assert!(of(fuller) >= of(sugar));
        let ours = worst(&b, sugar.value()).min(60.0);
        prop_assert!((of(sugar).value() - ours).abs() <= hair(&b) * ours, "{ours}");
    }

    #[test]
    fn nothing_known_of_what_is_left_counts_as_ten_points(b in bottling()) {
        let plan = plan(Bottling { points_left: None, ..b }).expect("in range");
        let ten = Bottling { points_left: Some(GravityChange::literal(0.010)), ..b };
        prop_assert!(plan.dose().is_none() || ceiling(&b).is_some_and(|c| c >= 5.0));
        let ours = worst(&ten, dose_for(&b)).min(60.0);
        prop_assert!((plan.guard.worst.value() - ours).abs() <= hair(&b) * ours, "{ours}");
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
