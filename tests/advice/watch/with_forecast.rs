//! Laws of the rule and the forecast together.

use crate::support::{cases, course, latest, with_last};
use fermentside::advice::watch::with_forecast::judge_with_forecast;
use fermentside::advice::watch::{Reason, State, expected_end, judge};
use fermentside::quantity::{Estimate, Measured};
use proptest::prelude::*;

proptest! {
    #![proptest_config(cases(60))]

    #[test]
    fn together_they_are_never_more_finished_than_the_rule(course in course()) {
        let (rule, both) = (judge(&course), judge_with_forecast(&course).finish);
        if both.state == State::Finished {
            prop_assert_eq!(rule.state, State::Finished);
        } else if rule.state != State::Finished {
            prop_assert_eq!(rule.state, both.state);
        }
        prop_assert_eq!(rule.points_left.is_some(), both.points_left.is_some());
        prop_assert!(both.points_left >= rule.points_left);
    }

    #[test]
    fn the_order_and_a_repetition_of_readings_do_not_matter(course in course()) {
        let mut other = course.clone();
        other.main.reverse();
        other.satellite.reverse();
        let (one, two) = (judge_with_forecast(&course), judge_with_forecast(&other));
        prop_assert_eq!(&one, &two);
        other.main.extend(course.main.clone());
        let twice = judge_with_forecast(&other).finish;
        prop_assert_eq!((one.finish.state, one.finish.points_left), (twice.state, twice.points_left));
    }

    #[test]
    fn a_wider_error_never_makes_a_finish(
        course in course(), which: prop::sample::Index, times in 1.0..20.0,
    ) {
        let mut rougher = course.clone();
        let mut looks: Vec<_> = rougher.main.iter_mut().chain(&mut rougher.satellite).collect();
        if looks.is_empty() {
            return Ok(());
        }
        let look = which.get_mut(&mut looks);
        look.gravity = Estimate::new(look.gravity.value(), look.gravity.sigma() * times);
        let (fine, rough) = (judge_with_forecast(&course).finish, judge_with_forecast(&rougher).finish);
        if fine.state != State::Finished {
            prop_assert_ne!(rough.state, State::Finished);
        } else if rough.state == State::Finished {
            let (rougher, finer) = (rough.points_left, fine.points_left);
            prop_assert!(rougher >= finer, "{rougher:?} {finer:?}");
        }
    }

    #[test]
    fn of_two_believable_ends_the_lower_is_never_the_more_finished(
        course in course(), lower in 0.0001..0.004,
    ) {
        let Some(end) = expected_end(&course) else { return Ok(()) };
        let high = judge_with_forecast(&course).finish;
        let last = course.main.iter().filter(|look| Some(look.at) == latest(&course));
        let now = last.map(|look| look.gravity.value().value()).fold(f64::MIN, f64::max);
        let rose = high.advice.reasons.iter().any(|reason| matches!(reason, Reason::Rose(_)));
        if now > end.to.value() || rose || high.state == State::NotStarted {
            return Ok(());
        }
        let low = judge_with_forecast(&with_last(&course, now - lower)).finish;
        if high.state != State::Finished {
            prop_assert_ne!(low.state, State::Finished, "{:?}\n{:?}", high, low);
        }
    }
}
