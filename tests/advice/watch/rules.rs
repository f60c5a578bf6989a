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
    let needed = if course.family == Family::Saison || course.added.is_some() {
        168.0
    } else if strong || cold || course.family == Family::Lager {
        72.0
    } else {
        48.0
    };
    let far = course.main.iter().filter(|look| hours_before(course, look) >= needed - 0.5);
    let Some(apart) = far.map(|look| hours_before(course, look)).min_by(f64::total_cmp) else {
        return false;
    };
    let run = || course.main.iter().filter(|look| hours_before(course, look) <= apart);
    let highest = run().map(points).fold(f64::MIN, f64::max);
    let lowest = run().map(points).fold(f64::MAX, f64::min);
    // The least that either end of a stretch can hide.
    let least_sigma = |at: f64| {
        let at_once = course.main.iter().filter(|look| hours_before(course, look) == at);
        at_once.map(|look| 1000.0 * look.gravity.sigma()).fold(f64::MAX, f64::min)
    };
    // The slowest fall that any level stretch up to the last reading leaves open.
    let level = |hours: f64| {
        let late = course.main.iter().filter(|look| hours_before(course, look) <= hours);
        late.map(points).all(|above| above - points(&last) <= 1.000_001)
    };
    let stretches = course.main.iter().map(|look| hours_before(course, look));
    let hidden = stretches
        .filter(|hours| *hours >= apart && level(*hours))
        .map(|hours| 1.96 * least_sigma(hours).hypot(least_sigma(0.0)) / (hours / 24.0))
        .fold(f64::MAX, f64::min);
    !drifts(course, apart)
        && highest - points(&last) <= 1.000_001
        && points(&last) - lowest <= 2.000_001
        && hidden <= 1.500_001
}

/// Whether it drifts: in the slow run, a reading a week or two before stands more than a point above the
/// last, and the pace from it to the reading `apart` hours before the last (or to that of a week before)
/// brought it down here within a point.
fn drifts(course: &Course, apart: f64) -> bool {
    let mut all: Vec<(f64, f64)> =
        course.main.iter().map(|look| (-hours_before(course, look), points(look))).collect();
    all.sort_by(|a, b| a.partial_cmp(b).expect("numbers"));
    let now = all.last().expect("a reading").1;
    let pair = all.iter().rposition(|(at, _)| *at <= -apart).expect("a pair");
    let slow = |&at: &usize| {
        let ((t, g), (u, h)) = (all[at], all[at + 1]);
        g - h > ((u - t) / 48.0).max(1.0) + 1e-6
    };
    let from = (0..pair).rev().find(slow).map_or(0, |at| at + 1);
    let near =
        |hours: f64| all.iter().rposition(|(at, _)| *at <= 0.5 - hours).filter(|at| *at >= from);
    let Some(week) = near(168.0) else { return false };
    let falls_to = |back: usize, middle: usize| {
        let ((t, g), (u, h)) = (all[back], all[middle]);
        let pace = if u > t { ((g - h) / (u - t)).max(0.0) } else { 0.0 };
        g - now > 1.000_001 && now - (h + pace * u) <= 1.000_001
    };
    falls_to(week, pair) || near(336.0).is_some_and(|fortnight| falls_to(fortnight, week))
}

/// The satellite's lowest reading, how far it may be out, and whether two readings a day or more apart
/// show that it had ended there.
fn satellite(course: &Course) -> Option<(f64, f64, bool)> {
    let looks = || course.satellite.iter().filter(|_| course.family != Family::Saison);
    let lowest = looks().map(points).min_by(f64::total_cmp)?;
    let last = looks().map(|look| look.at).max()?;
    let apart = |look: &Look| last.since(look.at).value();
    let near = looks().map(apart).filter(|hours| *hours >= 23.5).min_by(f64::total_cmp);
    let late = || looks().filter(|look| near.is_some_and(|near| apart(look) <= near));
    let at =
        |hours: Option<f64>| looks().filter(move |look| Some(apart(look)) == hours).map(points);
    let spread =
        late().map(points).fold(f64::MIN, f64::max) - late().map(points).fold(f64::MAX, f64::min);
    let fall = at(near).fold(f64::MIN, f64::max) - at(Some(0.0)).fold(f64::MAX, f64::min);
    let allowed = near.map_or(0.0, |near| (near / 48.0).max(0.5));
    let fermented = course.original.is_none_or(|og| lowest <= og.value().points() * 2.0 / 3.0);
    let rough = |looks: &mut dyn Iterator<Item = &Look>| {
        looks.map(|look| 1960.0 * look.gravity.sigma()).fold(0.0, f64::max)
    };
    let of_lowest = rough(&mut looks().filter(|look| points(look) <= lowest));
    let agree = near.is_some() && spread <= 1.000_001 && fall <= allowed + 1e-6;
    let error = if agree { rough(&mut late()).max(of_lowest) } else { of_lowest };
    Some((lowest, error, agree && fermented))
}

/// The lowest and the highest end that can be believed, in points; the lowest less the satellite's error.
fn end(course: &Course) -> Option<(f64, f64)> {
    match satellite(course) {
        Some((end, error, true)) => Some((end - error - 1.0, end + 1.0)),
        Some((hint, error, false)) => {
            by_range(course).map(|(low, high)| (low.min(hint - error - 1.0), high.min(hint + 1.0)))
        }
        None => by_range(course),
    }
}

/// The lowest and the highest end by what was told, or by the family, in points.
fn by_range(course: &Course) -> Option<(f64, f64)> {
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

/// A beer below this has passed its end: a point below the satellite itself, whatever its error.
fn passed(course: &Course) -> Option<f64> {
    match satellite(course) {
        Some((end, _, true)) => Some(end - 1.0),
        _ => end(course).map(|(lowest, _)| lowest),
    }
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
    let since = |moment| last(course).at.since(moment).value();
    course.pitched.is_some_and(|pitched| since(pitched) >= days * 24.0)
        && course.added.is_none_or(|added| since(added) >= 336.0)
}

/// What counts: after an addition only what was read since.
fn since_fed(course: &Course) -> Course {
    let mut counts = course.clone();
    counts.main.retain(|look| course.added.is_none_or(|added| look.at > added));
    counts
}

proptest! {
    #![proptest_config(cases(8192))]

    #[test]
    fn finished_means_that_all_three_rules_hold(course in course()) {
        if judge(&course).state == State::Finished {
            let course = since_fed(&course);
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
        if finish.state == State::Finished && course.added.is_some() {
            prop_assert!(finish.points_left.is_some(), "no bound");
        } else if finish.state == State::Finished {
            let left = finish.points_left.expect("a bound, once it is finished").points();
            let (lowest, _) = end(&course).expect("an end");
            let last = last(&course);
            if points(&last) >= passed(&course).expect("an end") {
                let sigmas = course.main.iter().filter(|l| hours_before(&course, l) == 0.0);
                let sigma = sigmas.map(|l| 1000.0 * l.gravity.sigma()).fold(0.0, f64::max);
                prop_assert!(left <= points(&last) + 1.96 * sigma - lowest + 1e-6, "{left}");
            }
        }
    }

    #[test]
    fn an_end_that_was_passed_bounds_nothing(course in course()) {
        let known = !course.main.is_empty() && course.added.is_none();
        let Some(passed) = passed(&course).filter(|_| known) else {
            return Ok(());
        };
        let finish = judge(&course);
        if points(&last(&course)) < passed - 1e-5 {
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
        original: Some(Estimate::new(SpecificGravity::literal(1.048), 0.001)),
        pitched: Some(hour(0.0)),
        ..Course::of(Family::CleanAle)
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
    let course = Course {
        satellite: ale(&[(4.0, 1.014), (5.0, 1.014)]).main,
        ..ale(&[(9.0, 1.010), (12.0, 1.010)])
    };
    let finish = judge(&course);
    assert!(finish.points_left.expect("a bound").points() > 1.0, "{finish:?}");
    let reasons = format!("{:?}", finish.advice.reasons);
    assert!(reasons.contains("BelowRange") && !reasons.contains("AtSatellite"), "{reasons}");
}
