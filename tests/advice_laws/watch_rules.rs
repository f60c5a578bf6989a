//! The three rules of a finish, worked again from the readings as one would on paper, and the bound on
//! what is left.

use crate::support::{cases, course, hour, latest};
use fermentside::advice::family::Family;
use fermentside::advice::watch::{Course, Look, State, judge};
use fermentside::quantity::{Estimate, Measured, Plato, SpecificGravity};
use fermentside::science::sucrose;
use proptest::prelude::*;

fn points(look: &Look) -> f64 {
    (look.gravity.value().value() - 1.0) * 1000.0
}

fn hours_before(course: &Course, look: &Look) -> f64 {
    latest(course).expect("a reading").since(look.at).value()
}

/// The last reading; of two at one moment the higher one, for it is the careful one.
fn last(course: &Course) -> Look {
    let at_last = course.main.iter().filter(|look| hours_before(course, look) == 0.0);
    *at_last.max_by(|a, b| points(a).total_cmp(&points(b))).expect("a reading")
}

/// Rule (a): steady, over long enough, with little that is not ruled out.
fn steady(course: &Course) -> bool {
    let last = last(course);
    let strong = course.original.is_some_and(|og| og.value().value() > 1.060);
    let cold = course
        .main
        .iter()
        .any(|l| hours_before(course, l) == 0.0 && l.beer.is_some_and(|t| t.value() < 16.0));
    let needed = if strong || cold || course.family == Family::Lager { 72.0 } else { 48.0 };
    let far = course.main.iter().filter(|look| hours_before(course, look) >= needed - 0.5);
    let Some(apart) = far.map(|look| hours_before(course, look)).min_by(f64::total_cmp) else {
        return false;
    };
    let run = || course.main.iter().filter(|look| hours_before(course, look) <= apart);
    let highest = run().map(points).fold(f64::MIN, f64::max);
    let lowest = run().map(points).fold(f64::MAX, f64::min);
    // The least that either end of the run can hide.
    let least_sigma = |at: f64| {
        let at_once = run().filter(|look| hours_before(course, look) == at);
        at_once.map(|look| 1000.0 * look.gravity.sigma()).fold(f64::MAX, f64::min)
    };
    let hidden = 1.96 * least_sigma(apart).hypot(least_sigma(0.0)) / (apart / 24.0);
    highest - points(&last) <= 1.000_001
        && points(&last) - lowest <= 2.000_001
        && hidden <= 1.500_001
}

/// The lowest and the highest end that can be believed, in points.
fn end(course: &Course) -> Option<(f64, f64)> {
    let satellite = course.satellite.iter().map(points).min_by(f64::total_cmp);
    if let Some(end) = satellite.filter(|_| course.family != Family::Saison) {
        return Some((end - 1.0, end + 1.0));
    }
    if let Some(stated) = course.stated_end {
        return Some((stated.points() - 2.0, stated.points() + 2.0));
    }
    let oe = sucrose::plato(course.original?.value()).value();
    let left = |per_cent: f64| {
        let extract = Plato::nearest(oe * (1.0 - per_cent / 100.0));
        sucrose::specific_gravity(extract).points()
    };
    let usual = course.family.attenuates();
    Some((left(usual.to.value()), left(usual.from.value())))
}

/// Rule (c): days enough.
fn long_enough(course: &Course) -> bool {
    let days = match course.family {
        Family::Kveik => 3.0,
        Family::CleanAle | Family::EnglishAle | Family::BelgianAle | Family::GermanWheat => 6.0,
        Family::Lager => 12.0,
        Family::Cider | Family::Wine => 14.0,
        Family::Saison => 21.0,
        Family::Unknown => 8.0,
    };
    course.pitched.is_some_and(|pitched| last(course).at.since(pitched).value() >= days * 24.0)
}

proptest! {
    #![proptest_config(cases(8192))]

    #[test]
    fn finished_means_that_all_three_rules_hold(course in course()) {
        if judge(&course).state == State::Finished {
            prop_assert!(steady(&course), "not steady");
            let (_, highest) = end(&course).expect("an end to compare with");
            prop_assert!(points(&last(&course)) <= highest + 1e-5, "above its end");
            prop_assert!(long_enough(&course), "too early");
        }
    }

    #[test]
    fn what_is_left_is_never_below_nothing_nor_above_what_the_range_leaves(course in course()) {
        let finish = judge(&course);
        if let Some(left) = finish.points_left {
            prop_assert!(left.points() >= 0.0);
        }
        if finish.state == State::Finished {
            let left = finish.points_left.expect("a bound, once it is finished").points();
            let (lowest, _) = end(&course).expect("an end");
            let last = last(&course);
            if points(&last) >= lowest {
                let sigmas = course.main.iter().filter(|l| hours_before(&course, l) == 0.0);
                let sigma = sigmas.map(|l| 1000.0 * l.gravity.sigma()).fold(0.0, f64::max);
                prop_assert!(left <= points(&last) + 1.96 * sigma - lowest + 1e-6, "{left}");
            }
        }
    }

    #[test]
    fn an_end_that_was_passed_bounds_nothing(course in course()) {
        let Some((lowest, _)) = end(&course).filter(|_| !course.main.is_empty()) else {
            return Ok(());
        };
        let finish = judge(&course);
        if points(&last(&course)) < lowest - 1e-5 {
            match finish.state {
                State::Finished => prop_assert!(finish.points_left.expect("a bound").points() > 0.0),
                _ => prop_assert_eq!(finish.points_left, None),
            }
        }
    }
}

fn ale(main: &[(f64, f64)]) -> Course {
    let look = |&(day, sg): &(f64, f64)| Look {
        at: hour(day * 24.0),
        gravity: Estimate::new(SpecificGravity::literal(sg), 0.001),
        beer: None,
    };
    Course {
        main: main.iter().map(look).collect(),
        satellite: vec![],
        original: Some(Estimate::new(SpecificGravity::literal(1.048), 0.001)),
        pitched: Some(hour(0.0)),
        family: Family::CleanAle,
        stated_end: None,
    }
}

#[test]
fn beer_far_below_its_expected_end_may_go_on() {
    // Still falling, four points under where this yeast should have ended: nothing says where it stops.
    assert_eq!(judge(&ale(&[(6.0, 1.008), (9.0, 1.004)])).points_left, None);
    // Quiet for three days, but so far below: something else may be eating, and nothing bounds that.
    let quiet = judge(&ale(&[(9.0, 1.004), (12.0, 1.004)]));
    assert_eq!((quiet.state, quiet.points_left), (State::OneMore, None));
    // Two points below and quiet: what three days of quiet leave, 1.96 √2 / (e^1.2 − 1) points.
    let below = judge(&ale(&[(9.0, 1.008), (12.0, 1.008)]));
    let left = below.points_left.expect("a bound").points();
    assert!((left - 1.19).abs() < 0.03, "{left}");
}

#[test]
fn a_satellite_that_the_beer_has_passed_had_not_ended() {
    let course =
        Course { satellite: ale(&[(4.0, 1.014)]).main, ..ale(&[(9.0, 1.010), (12.0, 1.010)]) };
    let finish = judge(&course);
    assert!(finish.points_left.expect("a bound").points() > 1.0, "{finish:?}");
    let reasons = format!("{:?}", finish.advice.reasons);
    assert!(reasons.contains("BelowRange") && !reasons.contains("AtSatellite"), "{reasons}");
}
