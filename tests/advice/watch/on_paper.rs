//! Is it steady, and is it finished? Worked on paper beforehand.

use fermentside::advice::family::Family;
use fermentside::advice::watch::{Course, Look, Next, State, judge};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, SpecificGravity};

fn at(day: f64) -> Moment {
    let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    start.after(Hours::nearest(day * 24.0))
}

fn look(day: f64, sg: f64) -> Look {
    let gravity = Estimate::new(SpecificGravity::literal(sg), 0.001);
    Look { at: at(day), gravity, beer: Some(Celsius::literal(19.0)) }
}

fn ale(main: &[(f64, f64)]) -> Course {
    Course {
        main: main.iter().map(|&(day, sg)| look(day, sg)).collect(),
        original: Some(Estimate::new(SpecificGravity::literal(1.048), 0.001)),
        pitched: Some(at(0.0)),
        ..Course::of(Family::CleanAle)
    }
}

fn state(course: &Course) -> State {
    judge(course).state
}

#[test]
fn tells_falling_from_steady() {
    assert_eq!(state(&ale(&[(3.0, 1.024), (6.0, 1.014)])), State::NotYet);
    assert_eq!(state(&ale(&[(6.0, 1.015), (12.0, 1.0125)])), State::Slow);
    assert_eq!(state(&ale(&[(9.0, 1.010), (12.0, 1.010)])), State::Finished);
    assert_eq!(state(&ale(&[(9.0, 1.022), (12.0, 1.022)])), State::LooksStuck);
}

#[test]
fn one_reading_or_two_on_one_day_tell_nothing() {
    assert_eq!(state(&ale(&[])), State::CannotTell);
    assert_eq!(state(&ale(&[(9.0, 1.010)])), State::CannotTell);
    let two = judge(&ale(&[(9.0, 1.010), (9.5, 1.010)]));
    assert_eq!(two.state, State::CannotTell);
    assert_eq!(two.advice.next, Next::ReadAgain(at(11.0)));
}

#[test]
fn steadiness_alone_is_not_enough() {
    // Too early for the family.
    assert_eq!(state(&ale(&[(2.0, 1.010), (5.0, 1.010)])), State::OneMore);
    // Nothing to compare the end with.
    let blind = Course { original: None, ..ale(&[(9.0, 1.010), (12.0, 1.010)]) };
    assert_eq!(state(&blind), State::OneMore);
    // Foam on both readings leaves too much possible.
    let mut foamy = ale(&[(9.0, 1.010), (11.0, 1.010)]);
    for look in &mut foamy.main {
        look.gravity = Estimate::new(look.gravity.value(), 0.002);
    }
    assert_eq!(state(&foamy), State::OneMore);
}

#[test]
fn the_satellite_tells_a_high_end_from_a_stuck_one() {
    let kit = ale(&[(9.0, 1.019), (12.0, 1.019)]);
    assert_eq!(state(&kit), State::LooksStuck);
    let with = |sg| Course { satellite: vec![look(4.0, sg), look(5.0, sg)], ..kit.clone() };
    assert_eq!(state(&with(1.018)), State::Finished);
    assert_eq!(state(&with(1.010)), State::LooksStuck);
}

#[test]
fn strong_cold_and_lager_beer_wait_longer() {
    let two_days = [(10.0, 1.010), (12.0, 1.010)];
    assert_eq!(state(&ale(&two_days)), State::Finished);
    let lager = Course { family: Family::Lager, ..ale(&two_days) };
    assert_eq!(state(&lager), State::CannotTell);
}

#[test]
fn a_gravity_that_rose_is_not_believed() {
    assert_eq!(state(&ale(&[(9.0, 1.010), (12.0, 1.013)])), State::CannotTell);
}
