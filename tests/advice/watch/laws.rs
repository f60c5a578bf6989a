//! Laws of watching: what changes no judgement, and what never makes a finish.

use crate::support::{cases, course, hour, latest, with_last};
use fermentside::advice::Verdict;
use fermentside::advice::watch::{Course, Reason, Refracted, State, expected_end, judge};
use fermentside::quantity::{Estimate, Hours, Measured, Plato};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

fn shuffled() -> impl Strategy<Value = (Course, Course)> {
    course().prop_flat_map(|course| {
        let main = Just(course.main.clone()).prop_shuffle();
        let satellite = Just(course.satellite.clone()).prop_shuffle();
        (main, satellite).prop_map(move |(main, satellite)| {
            (course.clone(), Course { main, satellite, ..course.clone() })
        })
    })
}

proptest! {
    #![proptest_config(cases(4096))]

    #[test]
    fn the_order_in_which_readings_are_given_does_not_matter((course, other) in shuffled()) {
        prop_assert_eq!(judge(&course), judge(&other));
    }

    #[test]
    fn the_same_readings_twice_are_the_same_readings(course in course()) {
        let mut twice = course.clone();
        twice.main.extend(course.main.clone());
        twice.satellite.extend(course.satellite.clone());
        let (one, two) = (judge(&course), judge(&twice));
        prop_assert_eq!(one.state, two.state);
        prop_assert_eq!(one.advice.verdict, two.advice.verdict);
        prop_assert_eq!(one.advice.next, two.advice.next);
        prop_assert_eq!((one.end, one.points_left), (two.end, two.points_left));
    }

    #[test]
    fn a_wider_error_never_makes_a_finish(
        course in course(), which: prop::sample::Index, times in 1.0..20.0,
    ) {
        let mut rougher = course.clone();
        let mut looks: Vec<_> = rougher.main.iter_mut().chain(&mut rougher.satellite).collect();
        if !looks.is_empty() {
            let look = which.get_mut(&mut looks);
            look.gravity = Estimate::new(look.gravity.value(), look.gravity.sigma() * times);
            if judge(&course).state != State::Finished {
                prop_assert_ne!(judge(&rougher).state, State::Finished);
            } else if judge(&rougher).state == State::Finished {
                prop_assert!(judge(&rougher).points_left >= judge(&course).points_left);
            }
        }
    }

    #[test]
    fn of_two_believable_ends_the_lower_is_never_the_more_finished(
        course in course(), lower in 0.0001..0.004,
    ) {
        let Some(end) = expected_end(&course) else { return Ok(()) };
        let high = judge(&course);
        let last = course.main.iter().filter(|look| Some(look.at) == latest(&course));
        let now = last.map(|look| look.gravity.value().value()).fold(f64::MIN, f64::max);
        // Above its end a lower reading is nearer to it, and a rise is a fault: those are other cases.
        let rose = high.advice.reasons.iter().any(|reason| matches!(reason, Reason::Rose(_)));
        if now > end.to.value() || rose || high.state == State::NotStarted {
            return Ok(());
        }
        let low = judge(&with_last(&course, now - lower));
        if high.state != State::Finished {
            prop_assert_ne!(low.state, State::Finished, "{:?}\n{:?}", high, low);
        }
    }

    #[test]
    fn what_a_refractometer_shows_never_makes_a_finish(
        course in course(), shown in prop::collection::vec((0..30_i32, 2.0..8.0), 0..4),
    ) {
        let refracted = shown.into_iter().map(|(day, shown)| Refracted {
            at: hour(24.0 * f64::from(day)),
            shown: Plato::nearest(shown),
        });
        let with = Course { refracted: refracted.collect(), ..course.clone() };
        if judge(&Course { refracted: vec![], ..course }).state != State::Finished {
            prop_assert_ne!(judge(&with).state, State::Finished);
        }
    }

    #[test]
    fn what_was_added_before_the_first_reading_never_makes_a_finish(
        course in course(), days in 0..20_i32,
    ) {
        let first = course.main.iter().map(|look| look.at).min();
        let at = first.map(|first| first.after(Hours::nearest(-1.0 - 24.0 * f64::from(days))));
        let fed = Course { added: at, ..course.clone() };
        if judge(&Course { added: None, ..course }).state != State::Finished {
            let found = judge(&fed);
            prop_assert_ne!(found.state, State::Finished, "{:?}", found);
        }
    }

    #[test]
    fn above_its_end_it_is_never_finished(course in course(), above in 0.0001..0.03) {
        if let Some(end) = expected_end(&course) {
            let raised = with_last(&course, end.to.value() + above);
            prop_assert_ne!(judge(&raised).state, State::Finished);
        }
    }

    #[test]
    fn after_a_fall_of_more_than_a_point_it_is_never_finished(
        course in course(), fall in 0.0011..0.02,
    ) {
        let last = latest(&course);
        let before = course.main.iter().filter(|look| Some(look.at) != last);
        let lowest = before.map(|look| look.gravity.value().value()).min_by(f64::total_cmp);
        if let Some(lowest) = lowest {
            prop_assert_ne!(judge(&with_last(&course, lowest - fall)).state, State::Finished);
        }
    }

    #[test]
    fn go_and_finished_are_one(course in course()) {
        let finish = judge(&course);
        prop_assert_eq!(finish.state == State::Finished, finish.advice.verdict == Verdict::Go);
    }
}

#[test]
fn the_courses_tried_are_of_every_state() {
    let mut runner = TestRunner::deterministic();
    let mut seen = std::collections::HashMap::new();
    for _ in 0..4000 {
        let tree = course().new_tree(&mut runner).expect("a course");
        *seen.entry(format!("{:?}", judge(&tree.current()).state)).or_insert(0) += 1;
    }
    for state in ["NotStarted", "NotYet", "Slow", "LooksStuck", "OneMore", "Finished", "CannotTell"]
    {
        assert!(seen.get(state).is_some_and(|&n| n >= 40), "{state}: {seen:?}");
    }
}
