//! Ways to a dose: what is offered to a beer that gets none, and that it helps.

use fermentside::advice::bottle::dosing::{Dosing, Weighing};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::ways_to_dose::{Way, read_again, ways};
use fermentside::advice::bottle::{Bottling, Over, plan};
use fermentside::advice::family::Family;
use fermentside::advice::practice::by_mark;
use fermentside::advice::watch::{Course, Look, State, judge};
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, GravityChange, Hours, Litres, Measured, Moment,
    SpecificGravity,
};
use fermentside::science::bottle_pressure::Closing;
use fermentside::science::priming::Sugar;

fn day(days: f64) -> Moment {
    let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    start.after(Hours::literal(24.0 * days))
}

fn look(days: f64, sg: f64) -> Look {
    // A stick with lines every 0.002.
    let gravity = Estimate::new(SpecificGravity::literal(sg), 0.001);
    Look { at: day(days), gravity, beer: Some(Celsius::literal(20.0)) }
}

fn course(main: Vec<Look>) -> Course {
    Course {
        main,
        satellite: vec![look(4.0, 1.010)],
        original: Some(Estimate::new(SpecificGravity::literal(1.048), 0.001)),
        pitched: Some(day(0.0)),
        family: Family::CleanAle,
        stated_end: None,
        added: None,
        refracted: vec![],
    }
}

fn bottling(course: &Course) -> Bottling {
    let finish = judge(course);
    Bottling {
        over: if finish.state == State::Finished { Over::Judged } else { Over::No },
        points_left: finish.points_left,
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
fn two_days_apart_are_answered_with_a_date_first() {
    let two_days = course(vec![look(10.0, 1.010), look(12.0, 1.010)]);
    let asked = bottling(&two_days);
    assert_eq!(asked.over, Over::Judged);
    assert!(plan(asked).expect("in range").dose().is_none());
    let ways = ways(&asked, Some((&two_days, day(12.1))));
    let Some(&Way::ReadAgain(then)) = ways.first() else { panic!("{ways:?}") };
    assert!(then > day(12.0) && then < day(22.0), "{then}");
    assert!(ways.contains(&Way::Stronger(Bottle::HeavyGlass)), "{ways:?}");
    assert!(ways.iter().any(|way| matches!(way, Way::LowerTarget(_))), "{ways:?}");
    // Asked for late, it is never a day that is over.
    let late = read_again(&asked, &two_days, day(30.0)).expect("a date");
    assert!(late >= day(30.0) && late < day(32.0), "{late}");
    // Read the same on that day, or a day later, there is a dose.
    for late in [0.0, 12.0, 24.0, 48.0] {
        let mut later = two_days.clone();
        later.main.push(Look { at: then.after(Hours::literal(late)), ..look(0.0, 1.010) });
        assert!(plan(bottling(&later)).expect("in range").dose().is_some(), "{late} h later");
    }
}

#[test]
fn falling_beer_has_no_way_but_time() {
    let falling = course(vec![look(5.0, 1.020), look(8.0, 1.016)]);
    let asked = bottling(&falling);
    assert_eq!(asked.over, Over::No);
    let offered = ways(&asked, Some((&falling, day(8.0))));
    assert!(offered.iter().all(|way| matches!(way, Way::ReadAgain(_))), "{offered:?}");
    assert_eq!(ways(&asked, None), vec![]);
    // Far above its satellite it will not do by waiting alone.
    assert_eq!(read_again(&asked, &falling, day(8.0)), None);
}

#[test]
fn every_way_is_tried_before_it_is_offered() {
    let quiet = course(vec![look(10.0, 1.010), look(17.0, 1.010)]);
    let asked = bottling(&quiet);
    assert!(plan(asked).expect("in range").dose().is_some());
    assert_eq!(ways(&asked, Some((&quiet, day(17.0)))), vec![]);

    let cold = Some(Estimate::new(CarbonDioxideVolumes::literal(1.54), 0.08));
    let closed = ways(&Bottling { may_hold: cold, ..asked }, None);
    assert_eq!(closed.first(), Some(&Way::LetGasGo));

    let dosing = Dosing::Bottles { smallest: Litres::literal(0.33) };
    let rough = Weighing { dosing, scale: Grams::literal(1.0) };
    let small = ways(&Bottling { weighing: rough, ..asked }, None);
    assert_eq!(small.get(..2), Some(&[Way::DoseVessel, Way::FinerScale][..]));

    let loft = ways(&Bottling { hottest: Celsius::literal(44.0), ..asked }, None);
    let Some(Way::Cooler(t)) = loft.first() else { panic!("{loft:?}") };
    assert!(t.value() < 44.0 && t.value() >= 30.0, "{t:?}");

    let said =
        Bottling { over: Over::Stated, points_left: Some(GravityChange::literal(0.006)), ..asked };
    let lower = |way: &Way| matches!(way, Way::LowerTarget(_));
    assert!(
        !ways(&said, Some((&quiet, day(17.0)))).iter().any(lower),
        "never less sugar on a word alone"
    );
}

/// What is offered is tried by a shorter way than the plan: the two must agree.
#[test]
fn a_way_that_is_offered_leads_to_a_dose() {
    let quiet = course(vec![look(10.0, 1.010), look(12.0, 1.010)]);
    let mut offered = 0;
    for target in [1.6, 2.0, 2.4, 2.8, 3.4] {
        for weakest in Bottle::ALL {
            for hottest in [20.0, 30.0, 38.0, 45.0] {
                for points in [0.0, 0.4, 1.2, 2.4] {
                    let asked = Bottling {
                        target: CarbonDioxideVolumes::literal(target),
                        weakest,
                        hottest: Celsius::literal(hottest),
                        points_left: Some(GravityChange::literal(points / 1000.0)),
                        ..bottling(&quiet)
                    };
                    for way in ways(&asked, None) {
                        offered += 1;
                        let changed = match way {
                            Way::LowerTarget(target) => Bottling { target, ..asked },
                            Way::Stronger(weakest) => Bottling { weakest, ..asked },
                            Way::Cooler(hottest) => Bottling { hottest, ..asked },
                            other => panic!("{other:?}"),
                        };
                        let plan = plan(changed).expect("in range");
                        assert!(plan.dose().is_some(), "{way:?} of {asked:?}");
                    }
                }
            }
        }
    }
    assert!(offered > 100, "{offered}");
}
