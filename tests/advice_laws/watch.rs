//! Laws of watching: what changes no judgement, and what never makes a finish.

use crate::support::{cases, course, latest, with_last};
use fermentside::advice::Verdict;
use fermentside::advice::watch::{Course, State, expected_end, judge};
use fermentside::quantity::{Estimate, Measured};
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
    for state in ["NotYet", "Slow", "LooksStuck", "OneMore", "Finished", "CannotTell"] {
        assert!(seen.get(state).is_some_and(|&n| n >= 40), "{state}: {seen:?}");
    }
}
