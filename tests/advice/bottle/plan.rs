//! The dose and the guard: what is printed, what is withheld, and the way down.

use fermentside::advice::Verdict;
use fermentside::advice::bottle::dosing::{Dosing, Weighing};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::{Bottling, Next, Over, Reason, plan};
use fermentside::advice::practice::by_mark;
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, GravityChange, Litres, Measured,
};
use fermentside::science::bottle_pressure::Closing;
use fermentside::science::priming::Sugar;
use fermentside::science::{Amount, Step};

fn usual() -> Bottling {
    Bottling {
        over: Over::Judged,
        points_left: Some(GravityChange::literal(0.001)),
        yeast_may_go_on: false,
        target: CarbonDioxideVolumes::literal(2.4),
        already_in: Estimate::new(CarbonDioxideVolumes::literal(0.82), 0.042),
        may_hold: None,
        beer: by_mark(Litres::literal(19.0)),
        sugar: Sugar::Sucrose,
        weighing: Weighing::USUAL,
        weakest: Bottle::ReusableGlass,
        hottest: Celsius::literal(30.0),
        closing: Closing::USUAL,
    }
}

#[test]
fn a_finished_beer_in_sound_glass_gets_its_dose() {
    let plan = plan(usual()).expect("in range");
    assert_eq!(plan.advice.verdict, Verdict::Go);
    assert!(plan.dose().is_some());
    assert!(plan.guard.at_hottest > plan.guard.at_20);
}

#[test]
fn above_the_ceiling_the_dose_is_withheld_and_a_way_down_shown() {
    let thin = plan(Bottling { weakest: Bottle::UnknownGlass, ..usual() }).expect("in range");
    assert_eq!(thin.advice.verdict, Verdict::Stop);
    assert!(thin.dose().is_none());
    let Next::LowerTarget(target) = thin.advice.next else { panic!("{:?}", thin.advice.next) };
    let lower = plan(Bottling { weakest: Bottle::UnknownGlass, target, ..usual() });
    assert!(lower.expect("in range").dose().is_some());
    let never = plan(Bottling { weakest: Bottle::NotForPressure, ..usual() }).expect("in range");
    assert!(never.dose().is_none());
}

/// No mass of sugar is in the working of a dose that is withheld.
#[test]
fn a_withheld_dose_is_not_in_the_working_either() {
    let given = plan(usual()).expect("in range").advice.worked;
    assert!(!given.doubts.is_empty());
    for bottling in [
        Bottling { weakest: Bottle::UnknownGlass, ..usual() },
        Bottling { weakest: Bottle::NotForPressure, ..usual() },
        Bottling { over: Over::No, ..usual() },
    ] {
        let worked = plan(bottling).expect("in range").advice.worked;
        let is_mass = |step: &Step| matches!(step.amount, Amount::Mass(_));
        assert!(!worked.inputs.iter().chain(&worked.steps).any(is_mass), "{worked:?}");
        assert!(worked.doubts.is_empty(), "{worked:?}");
    }
}

#[test]
fn unfinished_beer_is_never_answered_with_less_sugar() {
    let points_left = Some(GravityChange::literal(0.010));
    let open = plan(Bottling { over: Over::No, points_left, ..usual() }).expect("in range");
    assert_eq!(open.advice.verdict, Verdict::Stop);
    assert_eq!(open.advice.next, Next::ReadAgain);
    assert!(open.dose().is_none());
    let near = plan(Bottling { over: Over::No, ..usual() }).expect("in range");
    assert_eq!((near.advice.verdict, near.dose().is_none()), (Verdict::Wait, true));
}

#[test]
fn not_knowing_what_is_left_is_the_worst_case() {
    let blind = Bottling { over: Over::Stated, points_left: None, ..usual() };
    assert!(plan(blind).expect("in range").dose().is_none());
}

#[test]
fn a_place_hotter_than_the_ceiling_is_meant_for_stops_it_too() {
    let at = |t| plan(Bottling { hottest: Celsius::literal(t), ..usual() }).expect("in range");
    assert_eq!(at(30.0).advice.verdict, Verdict::Go);
    let loft = at(45.0);
    assert_eq!((loft.advice.verdict, loft.dose().is_none()), (Verdict::Stop, true));
    let Next::CoolerPlace(cooler) = loft.advice.next else { panic!("{:?}", loft.advice.next) };
    assert!(plan(Bottling { hottest: cooler, ..usual() }).expect("in range").dose().is_some());
}

#[test]
fn beer_that_only_a_word_says_is_finished_gets_no_lower_target() {
    let points_left = Some(GravityChange::literal(0.004));
    let said = plan(Bottling { over: Over::Stated, points_left, ..usual() }).expect("in range");
    assert_eq!((said.advice.verdict, said.advice.next), (Verdict::Stop, Next::ReadAgain));
}

/// The ordinary beers that the guard must not forbid, with the mark of a vessel good to 3 %, a kitchen
/// scale of 1 g and a syrup stirred in by hand.
#[test]
fn ordinary_beer_gets_its_dose() {
    let ordinary = |weakest, points: f64| {
        let beer = by_mark(Litres::literal(19.0));
        let points_left = Some(GravityChange::literal(points / 1000.0));
        plan(Bottling { beer, weakest, points_left, ..usual() }).expect("in range")
    };
    // Two equal readings four days apart on a stick with lines every 0.002 leave 0.7 points.
    let reusable = ordinary(Bottle::ReusableGlass, 0.7);
    assert!(reusable.dose().is_some(), "{:?}", reusable.advice);
    // Nine days apart they leave 0.1; then even unknown glass will do at 2.4.
    let unknown = ordinary(Bottle::UnknownGlass, 0.08);
    assert!(unknown.dose().is_some(), "{:?}", unknown.advice);
    // Three days apart they leave 1.2, which asks for a little less in the bottle.
    let soon = ordinary(Bottle::ReusableGlass, 1.2).advice.next;
    assert_eq!(soon, Next::LowerTarget(CarbonDioxideVolumes::literal(2.3)));
    // But unknown glass wants more than four days.
    assert!(ordinary(Bottle::UnknownGlass, 0.7).dose().is_none());
}

#[test]
fn bottle_by_bottle_wants_a_fine_scale() {
    let with = |scale: f64, size: f64| {
        let dosing = Dosing::Bottles { smallest: Litres::literal(size) };
        let weighing = Weighing { dosing, scale: Grams::literal(scale) };
        plan(Bottling { weighing, ..usual() }).expect("in range")
    };
    let rough = with(1.0, 0.33);
    assert_eq!((rough.advice.verdict, rough.dose().is_none()), (Verdict::Stop, true));
    assert!(rough.advice.reasons.contains(&Reason::ScaleTooRough(Litres::literal(0.33))));
    assert!(rough.per_bottle(Litres::literal(0.5)).is_none());
    let fine = with(0.1, 0.33);
    let small = fine.per_bottle(Litres::literal(0.33)).expect("a dose");
    assert!((small.weigh.value() - 2.1).abs() < 1e-9 && !small.too_rough, "{small:?}");
    // A bottle smaller than was told of was not judged.
    assert!(fine.per_bottle(Litres::literal(0.25)).is_none());
}
