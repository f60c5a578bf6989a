//! Laws of the forecast: what changes nothing, what it never says, and when it says nothing.

use crate::support::{cases, course, hour, latest};
use fermentside::advice::family::Family;
use fermentside::advice::watch::forecast::{Forecast, HORIZON, OnePointLeft, Refusal, forecast};
use fermentside::advice::watch::{Course, Look};
use fermentside::quantity::{Estimate, Hours, Measured, Moment, SpecificGravity};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// A falling course, read with some error and now and then off, of a yeast that ends.
fn falling() -> impl Strategy<Value = Course> {
    let sigma = prop::sample::select(vec![0.0003, 0.0005, 0.001, 0.002]);
    let read = (13.0..400.0, -2.0..2.0, sigma, prop::bool::weighted(0.1));
    let family = prop::sample::select(vec![Family::CleanAle, Family::Lager, Family::Unknown]);
    let shape = (24.0..120.0, 6.0..30.0, 0.006..0.022, 1.036..1.075);
    let satellite = prop::option::weighted(0.3, 0.0..0.002);
    (prop::collection::vec(read, 3..9), family, shape, satellite).prop_map(
        |(reads, family, (half, fold, end, start), satellite): (
            Vec<_>,
            _,
            (f64, f64, f64, f64),
            _,
        )| {
            let end = 1.0 + end;
            let gravity = move |t: f64| end + (start - end) / (1.0 + ((t - half) / fold).exp());
            let look = |t: f64, shown: f64, sigma: f64| Look {
                at: hour(t),
                gravity: Estimate::new(SpecificGravity::nearest(shown), sigma),
                beer: None,
            };
            let main = reads.into_iter().map(|(t, z, sigma, off)| {
                look(t, gravity(t) + z * sigma + if off { 0.004 } else { 0.0 }, sigma)
            });
            let twice = satellite.map(|below| [72.0, 100.0].map(|t| look(t, end - below, 0.0005)));
            Course {
                main: main.collect(),
                satellite: twice.into_iter().flatten().collect(),
                original: Some(Estimate::new(SpecificGravity::nearest(start), 0.001)),
                pitched: Some(hour(0.0)),
                family,
                stated_end: None,
                added: None,
                refracted: vec![],
            }
        },
    )
}

/// Any course at all, as often as a falling one.
fn any_course() -> impl Strategy<Value = Course> {
    prop_oneof![course(), falling()]
}

fn shuffled() -> impl Strategy<Value = (Course, Course)> {
    any_course().prop_flat_map(|course| {
        let main = Just(course.main.clone()).prop_shuffle();
        let satellite = Just(course.satellite.clone()).prop_shuffle();
        (main, satellite).prop_map(move |(main, satellite)| {
            (course.clone(), Course { main, satellite, ..course.clone() })
        })
    })
}

fn later(course: &Course, hours: Hours) -> Course {
    let moved = |looks: &[Look]| -> Vec<Look> {
        looks.iter().map(|look| Look { at: look.at.after(hours), ..*look }).collect()
    };
    Course {
        main: moved(&course.main),
        satellite: moved(&course.satellite),
        pitched: course.pitched.map(|at| at.after(hours)),
        ..course.clone()
    }
}

fn width(found: &Forecast) -> f64 {
    found.end.to.points() - found.end.from.points()
}

proptest! {
    #![proptest_config(cases(32))]

    #[test]
    fn the_order_in_which_readings_are_given_does_not_matter((course, other) in shuffled()) {
        prop_assert_eq!(forecast(&course), forecast(&other));
    }

    #[test]
    fn the_same_readings_twice_are_the_same_readings(
        course in any_course(), which: prop::sample::Index,
    ) {
        let mut twice = course.clone();
        twice.main.extend(course.main.clone());
        twice.satellite.extend(course.satellite.clone());
        prop_assert_eq!(forecast(&course), forecast(&twice));
        if !course.main.is_empty() {
            let mut once = course.clone();
            once.main.push(*which.get(&course.main));
            prop_assert_eq!(forecast(&course), forecast(&once));
        }
    }

    #[test]
    fn all_of_it_later_is_the_same_forecast_later(course in any_course(), hours in 1..20_000_i32) {
        let by = Hours::nearest(f64::from(hours));
        match (forecast(&course), forecast(&later(&course, by))) {
            (Ok(here), Ok(there)) => {
                prop_assert_eq!(
                    (here.end, here.end_middle, here.left_now, here.readings, here.worked),
                    (there.end, there.end_middle, there.left_now, there.readings, there.worked)
                );
                let moved = |at: Moment| at.after(by);
                prop_assert_eq!(here.one_point_middle.map(moved), there.one_point_middle);
                for (here, there) in here.band.iter().zip(&there.band) {
                    prop_assert_eq!(moved(here.at), there.at);
                    prop_assert_eq!(
                        (here.low, here.middle, here.high), (there.low, there.middle, there.high)
                    );
                }
            }
            (here, there) => prop_assert_eq!(here.err(), there.err()),
        }
    }

    #[test]
    fn the_band_falls_and_its_edges_never_cross(course in any_course()) {
        let Ok(found) = forecast(&course) else { return Ok(()) };
        let band = &found.band;
        prop_assert!(band.len() <= 40 && band.first().is_some_and(|p| Some(p.at) == course.pitched));
        prop_assert!(band.last().is_some_and(|p| p.at.since(found.last).days() >= 3.0));
        for pair in band.windows(2) {
            prop_assert!(pair[0].at < pair[1].at);
            prop_assert!(pair[0].low >= pair[1].low);
            prop_assert!(pair[0].middle >= pair[1].middle);
            prop_assert!(pair[0].high >= pair[1].high);
        }
        prop_assert!(band.iter().all(|p| p.low <= p.middle && p.middle <= p.high));
        prop_assert!((found.end.from..=found.end.to).contains(&found.end_middle));
        prop_assert!(found.left_now.value() >= 0.0);
        prop_assert_eq!(Some(found.last), latest(&course));
        // Above its start no beer ends.
        let start = course.original.expect("a forecast has one").value();
        prop_assert!(found.end_middle < start, "{:?}", found.end);
    }

    /// Gravities, errors and times that no beer has.
    #[test]
    fn nothing_that_can_be_noted_breaks_it(
        reads in prop::collection::vec(
            (0.0..90_000.0, 0.95..1.2, prop_oneof![Just(0.0), 0.0..0.02, Just(f64::INFINITY)]),
            3..70,
        ),
        start in 0.95..1.2, rough in prop_oneof![Just(0.0), 0.0..0.02],
        stated in prop::option::of(0.95..1.2), family in prop::sample::select(Family::ALL.to_vec()),
        beside in prop::option::of(0.95..1.2), near in any::<bool>(),
    ) {
        let look = |(hours, gravity, sigma): (f64, f64, f64)| {
            let gravity = Estimate::new(SpecificGravity::nearest(gravity), sigma);
            let at = hour(if near { hours / 400.0 } else { hours });
            Look { at, gravity, beer: None }
        };
        let satellite = beside.map(|end| [(40.0, end, 0.0005), (70.0, end, 0.0005)].map(look));
        let course = Course {
            main: reads.into_iter().map(look).collect(),
            satellite: satellite.into_iter().flatten().collect(),
            original: Some(Estimate::new(SpecificGravity::nearest(start), rough)),
            pitched: Some(hour(0.0)),
            family,
            stated_end: stated.map(SpecificGravity::nearest),
            added: None,
            refracted: vec![],
        };
        if let Ok(found) = forecast(&course) {
            prop_assert!(found.end.contains(found.end_middle) && found.left_now.value() >= 0.0);
            for pair in found.band.windows(2) {
                prop_assert!(pair[0].at < pair[1].at);
                prop_assert!(pair[0].low >= pair[1].low && pair[0].high >= pair[1].high);
            }
            prop_assert!(found.band.iter().all(|p| p.low <= p.middle && p.middle <= p.high));
            if let OnePointLeft::Between(from, to) = found.one_point_left {
                prop_assert!(found.last <= from && from <= to && to <= found.last.after(HORIZON));
            }
        }
    }

    #[test]
    fn the_date_lies_from_the_last_reading_to_the_horizon(course in any_course()) {
        let Ok(found) = forecast(&course) else { return Ok(()) };
        let within = |at: Moment| at >= found.last && at <= found.last.after(HORIZON);
        match found.one_point_left {
            OnePointLeft::Already => {
                prop_assert!(found.one_point_middle.is_some_and(|middle| middle <= found.last));
            }
            OnePointLeft::Between(from, to) => {
                prop_assert!(within(from) && within(to) && from <= to);
                prop_assert!(found.one_point_middle.is_some_and(|middle| middle <= to));
            }
            OnePointLeft::From(from) => prop_assert!(within(from)),
            OnePointLeft::NotWithin(hours) => {
                prop_assert_eq!((hours, found.one_point_middle), (HORIZON, None));
            }
        }
    }

    #[test]
    fn without_what_it_needs_it_says_nothing(course in any_course()) {
        let usable = |look: &&Look| {
            course.pitched.is_some_and(|at| look.at.since(at).value() > 12.0)
        };
        match forecast(&course) {
            Ok(found) => {
                prop_assert!(course.pitched.is_some() && course.original.is_some());
                prop_assert!(course.family != Family::Saison);
                prop_assert!(course.main.iter().filter(usable).count() >= 3);
                prop_assert!(found.readings >= 3);
            }
            Err(Refusal::MayGoOn) => prop_assert!(course.may_go_on()),
            Err(Refusal::PitchNotNoted) => prop_assert_eq!(course.pitched, None),
            Err(Refusal::StartUnknown) => prop_assert_eq!(course.original, None),
            Err(Refusal::TooFew { have }) => prop_assert!(have < 3),
        }
    }
}

/// Not in every single course: two readings that quarrel when fine may agree when rough, and one of two
/// ends that were both possible goes. So it is held over many, the same ones each time.
#[test]
fn twice_the_error_in_all_readings_widens_the_end() {
    let mut runner = TestRunner::deterministic();
    let (mut fine_sum, mut rough_sum, mut narrower, mut all) = (0.0, 0.0, 0, 0);
    for _ in 0..100 {
        let course = falling().new_tree(&mut runner).expect("a course").current();
        let rougher = course.main.iter().map(|look| {
            let gravity = Estimate::new(look.gravity.value(), look.gravity.sigma() * 2.0);
            Look { gravity, ..*look }
        });
        let rougher = Course { main: rougher.collect(), ..course.clone() };
        if let (Ok(fine), Ok(rough)) = (forecast(&course), forecast(&rougher)) {
            let (fine, rough) = (width(&fine), width(&rough));
            fine_sum += fine;
            rough_sum += rough;
            narrower += usize::from(rough < fine - 0.3);
            all += 1;
            assert!(rough > 0.5 * fine, "{fine} {rough} {course:?}");
        }
    }
    assert!(all > 60 && rough_sum > 1.05 * fine_sum, "{all} {fine_sum} {rough_sum}");
    assert!(narrower * 8 < all, "{narrower} of {all}");
}

/// An ale from 1.050, read at these days and gravities.
fn ale(reads: &[(f64, f64)]) -> Course {
    let main = reads.iter().map(|&(days, gravity)| Look {
        at: hour(days * 24.0),
        gravity: Estimate::new(SpecificGravity::literal(gravity), 0.0007),
        beer: None,
    });
    Course {
        main: main.collect(),
        satellite: Vec::new(),
        original: Some(Estimate::new(SpecificGravity::literal(1.050), 0.001)),
        pitched: Some(hour(0.0)),
        family: Family::CleanAle,
        stated_end: None,
        added: None,
        refracted: vec![],
    }
}

#[test]
fn a_usual_ale_narrows_down() {
    let reads =
        [(1.5, 1.036), (3.0, 1.020), (5.0, 1.013), (8.0, 1.0115), (10.0, 1.011), (12.0, 1.011)];
    let after = |count: usize| forecast(&ale(&reads[..count])).expect("a forecast");
    let (three, four, six) = (after(3), after(4), after(6));
    assert!(three.end.contains(SpecificGravity::literal(1.011)), "{:?}", three.end);
    assert!(width(&three) > width(&four) && width(&four) > width(&six));
    assert!(three.left_now > four.left_now && four.left_now > six.left_now);
    assert!((three.readings, six.readings) == (3, 6) && six.left_now.points() < 2.0);
    // On the fifth day it may be there, and is by the tenth.
    let OnePointLeft::Between(from, to) = three.one_point_left else { panic!("{three:?}") };
    assert!(from == hour(120.0) && to < hour(240.0), "{from} {to}");
    assert_eq!(six.one_point_left, OnePointLeft::Already);
}

#[test]
fn a_beer_that_stopped_high_may_go_on() {
    let reads = [(1.5, 1.036), (3.0, 1.024), (5.0, 1.020), (8.0, 1.020), (10.0, 1.020)];
    let found = forecast(&ale(&reads)).expect("a forecast");
    // What is steady may be the end, and may not: nine points could still come.
    assert!(found.end.contains(SpecificGravity::literal(1.020)), "{:?}", found.end);
    assert!(found.end.contains(SpecificGravity::literal(1.011)), "{:?}", found.end);
    assert!(found.left_now.points() > 9.0, "{:?}", found.left_now);
    assert_ne!(found.one_point_left, OnePointLeft::Already);
}

#[test]
fn one_gassy_reading_does_not_rule() {
    let reads = [(1.5, 1.036), (3.0, 1.020), (5.0, 1.013), (8.0, 1.0115), (10.0, 1.011)];
    let mut gassy = reads;
    gassy[3].1 += 0.005;
    let [still, gassy] = [reads, gassy].map(|reads| forecast(&ale(&reads)).expect("a forecast"));
    let moved = gassy.end_middle.points() - still.end_middle.points();
    assert!(moved.abs() < 0.5, "{moved}");
}

#[test]
fn a_satellite_counts_only_when_read_twice_a_day_apart_and_agreed() {
    let reads = [(1.5, 1.038), (2.0, 1.033), (2.5, 1.027)];
    let with = |satellite: &[(f64, f64)]| {
        let course = Course { satellite: ale(satellite).main, ..ale(&reads) };
        forecast(&course).expect("a forecast")
    };
    let (none, agreed) = (with(&[]), with(&[(2.0, 1.014), (3.1, 1.014)]));
    assert!(agreed.by_satellite && width(&agreed) < 0.8 * width(&none), "{:?}", agreed.end);
    assert!(agreed.end_middle > none.end_middle);
    let (once, near) = (with(&[(3.1, 1.014)]), with(&[(2.6, 1.014), (3.1, 1.014)]));
    let falling = with(&[(2.0, 1.017), (3.1, 1.014)]);
    for weak in [once, near, falling] {
        assert!(!weak.by_satellite);
        // It never draws the end up to a jar that may still fall.
        assert!(weak.end.from.points() - none.end.from.points() < 0.3, "{:?}", weak.end);
    }
}

#[test]
fn many_readings_say_what_fewer_do() {
    let course = |step: usize| {
        let reads: Vec<(f64, f64)> = (0..240)
            .step_by(step)
            .map(|i| {
                let days = 0.6 + f64::from(i as u32) / 20.0;
                (days, 1.011 + 0.039 / (1.0 + ((days - 2.2) / 0.5).exp()))
            })
            .collect();
        forecast(&ale(&reads)).expect("a forecast")
    };
    let (many, few) = (course(1), course(8));
    assert_eq!((many.readings, few.readings), (240, 30));
    assert!((many.end_middle.points() - few.end_middle.points()).abs() < 0.3);
    assert!((width(&many) - width(&few)).abs() < 0.5, "{} {}", width(&many), width(&few));
}
