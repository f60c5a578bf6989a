//! The course with no, one, some and very many readings.

use super::*;
use proptest::prelude::*;

const DAY: i64 = 24 * 60;

fn point(day: f64, gravity: f64, satellite: bool) -> CoursePoint {
    let minutes = 29_500_000 + (day * DAY as f64) as i64;
    CoursePoint { minutes, gravity, sigma: 0.001, satellite, label: "here".to_owned() }
}

fn data(points: Vec<CoursePoint>) -> CourseData {
    CourseData { points, celsius: true, ..CourseData::default() }
}

fn end(low: f64, high: f64) -> EndZone {
    EndZone { low, high, less: false }
}

#[test]
fn an_empty_log_still_has_an_axis() {
    let empty = course(&data(Vec::new()));
    assert_eq!((empty.marks.len(), empty.days.len(), empty.main_line.as_str()), (0, 0, ""));
    assert!(empty.gravity.iter().any(|m| m.text == "1.050"));
    assert_eq!(empty.floor, Course::FLOOR);
}

#[test]
fn one_reading_is_day_zero() {
    let one = course(&data(vec![point(0.0, 1.05, false)]));
    assert_eq!((one.marks.len(), one.days[0].1.day, one.days.len()), (1, 0, 3));
}

#[test]
fn lower_gravity_stands_lower_and_later_stands_to_the_right() {
    let points = vec![point(3.0, 1.02, false), point(0.0, 1.05, false), point(2.0, 1.012, true)];
    let drawn = course(&CourseData { ends: vec![end(1.008, 1.014)], ..data(points) });
    assert!(drawn.marks[0].at.1 < drawn.marks[2].at.1 && drawn.marks[0].at.0 < drawn.marks[2].at.0);
    let (top, bottom) = drawn.zones[0].edges;
    assert!(top < bottom && bottom < drawn.floor);
    assert_eq!(
        (drawn.last(false), drawn.last(true)),
        (Some(drawn.marks[2].at), Some(drawn.marks[1].at))
    );
}

#[test]
fn only_gravities_that_can_happen_are_on_the_axis() {
    let points = vec![point(0.0, 1.047, false), point(4.0, 1.019, false)];
    let drawn = course(&CourseData { ends: vec![end(1.009, 1.013)], ..data(points) });
    let numbers: Vec<&str> = drawn.gravity.iter().map(|mark| mark.text.as_str()).collect();
    assert_eq!(numbers, ["1.010", "1.020", "1.030", "1.040"]);
    // From the lowest end to the highest reading with its bar, and a little more.
    let (_, foot) = drawn.zones[0].edges;
    assert!(drawn.floor - foot < 0.08 * drawn.floor, "{foot}");
    assert!(drawn.marks[0].bar.expect("a bar").0 - Course::TOP < 0.08 * drawn.floor);
    assert!(drawn.short.len() > 15, "{}", drawn.short.len());
}

/// Of beer that rests both ends are drawn, the second at full height as well.
#[test]
fn two_ends_have_a_zone_each() {
    let points = vec![point(0.0, 1.05, false), point(9.0, 1.02, false)];
    let ends = vec![end(1.018, 1.022), EndZone { less: true, ..end(1.008, 1.014) }];
    let drawn = course(&CourseData { ends, ..data(points) });
    let [rests, wakes] = drawn.zones.as_slice() else { panic!("{:?}", drawn.zones) };
    assert!(rests.edges.1 < wakes.edges.0, "the higher stands higher: {:?}", drawn.zones);
    assert!(wakes.edges.1 < drawn.floor && rests.edges.0 > Course::TOP);
    assert!(wakes.less && !rests.less);
    assert!(!wakes.area.is_empty() && rests.area != wakes.area);
}

#[test]
fn every_reading_has_its_bar_and_now_and_the_next_are_marked() {
    let points: Vec<_> =
        (0..60).map(|i| point(f64::from(i), 1.05 - f64::from(i) * 5e-4, false)).collect();
    let last = points[59].minutes;
    let (now, next) = (Some(last + DAY), Some(last + 2 * DAY));
    let drawn = course(&CourseData { now, next, ..data(points.clone()) });
    assert!(drawn.marks.iter().all(|mark| mark.bar.is_some_and(|(top, bottom)| top < bottom)));
    let (now, next) = (drawn.now.expect("now"), drawn.next.expect("the next"));
    assert!(drawn.marks[59].at.0 < now && now < next && next <= Course::SIDES.1);
    // A beer that was read last a year ago does not shrink to a stroke.
    let later = course(&CourseData { now: Some(last + 365 * DAY), ..data(points) });
    assert_eq!(later.now, None);
}

#[test]
fn temperatures_get_a_strip_of_their_own() {
    let points = vec![point(0.0, 1.05, false)];
    let temperatures = vec![(29_500_000, 19.0), (29_500_000 + DAY, 20.8)];
    let drawn = course(&CourseData { temperatures, ..data(points) });
    assert!(drawn.floor < STRIP.0);
    let marks = &drawn.temperature;
    assert_eq!((marks.len(), marks[0].text.as_str()), (1, "19–21\u{A0}°C"));
    assert_eq!((drawn.warmth.len(), drawn.yeast), (2, None));
    // What suits the yeast has its numbers instead.
    let suited = CourseData {
        temperatures: vec![(29_500_000, 19.0)],
        yeast: Some((17.0, 22.0)),
        ..data(vec![])
    };
    let drawn = course(&suited);
    let (top, bottom) = drawn.yeast.expect("a range");
    assert!(
        STRIP.0 <= top
            && top < drawn.warmth[0].1
            && drawn.warmth[0].1 < bottom
            && bottom <= STRIP.1
    );
    let [suits] = drawn.temperature.as_slice() else { panic!("{:?}", drawn.temperature) };
    assert_eq!(suits.text, "17–22\u{A0}°C");
}

#[test]
fn many_readings_have_small_marks() {
    let many = (0..200).map(|i| point(f64::from(i) / 10.0, 1.05 - f64::from(i) * 1e-4, false));
    let drawn = course(&data(many.collect()));
    assert_eq!(drawn.marks.len(), 200);
    assert!(drawn.mark_size < 3.0 && drawn.days.len() <= 5);
}

fn outlook(from: f64, to: f64) -> Vec<OutlookPoint> {
    let at = |i: u32| {
        let day = from + (to - from) * f64::from(i) / 20.0;
        let middle = 1.011 + 0.039 * (-day / 2.0).exp();
        let minutes = 29_500_000 + (day * DAY as f64) as i64;
        OutlookPoint { minutes, low: middle - 0.002, middle, high: middle + 0.002 }
    };
    (0..=20).map(at).collect()
}

/// The places across of a path, first and last.
fn across(path: &str) -> (f64, f64) {
    let parts = path.replace(['L', 'C', 'M', 'Z'], " ");
    let numbers: Vec<f64> =
        parts.split_whitespace().map(|n| n.parse().expect("a number")).collect();
    let x: Vec<f64> = numbers.iter().step_by(2).copied().collect();
    (x.iter().copied().fold(f64::MAX, f64::min), x.iter().copied().fold(f64::MIN, f64::max))
}

#[test]
fn the_axis_reaches_to_the_end_of_the_forecast() {
    let points =
        || vec![point(0.0, 1.05, false), point(4.0, 1.02, false), point(6.0, 1.014, false)];
    let plain = course(&data(points()));
    assert_eq!((plain.outlook_band.as_str(), plain.outlook_line.as_str()), ("", ""));
    let drawn = course(&CourseData { outlook: outlook(0.0, 9.0), ..data(points()) });
    assert!(drawn.marks[2].at.0 < plain.marks[2].at.0);
    let right = Course::SIDES.1 - MARGIN;
    assert!(
        (across(&drawn.outlook_band).1 - right).abs() < 0.1,
        "{:?}",
        across(&drawn.outlook_band)
    );
    // Both begin at the last reading.
    for path in [&drawn.outlook_line, &drawn.outlook_band] {
        assert!((across(path).0 - drawn.marks[2].at.0).abs() < 0.1);
    }
    assert!(drawn.outlook_band.ends_with('Z'));
}

#[test]
fn a_far_forecast_leaves_the_readings_half_of_the_picture() {
    let points = vec![point(5.0, 1.02, false), point(10.0, 1.012, false)];
    let drawn = course(&CourseData { outlook: outlook(0.0, 60.0), ..data(points) });
    let (left, right) = (Course::SIDES.0 + MARGIN, Course::SIDES.1 - MARGIN);
    assert!((drawn.marks[1].at.0 - f64::midpoint(left, right)).abs() < 0.1);
    // Cut at the end of the axis.
    let to = across(&drawn.outlook_band).1;
    assert!((to - right).abs() < 0.1, "{to}");
}

#[test]
fn a_thousand_readings_are_drawn_by_four_hundred_marks() {
    let many = |i: i32| point(f64::from(i) / 50.0, 1.05 - f64::from(i) * 4e-5, i % 10 == 3);
    let mut points: Vec<CoursePoint> = (0..1000).map(many).collect();
    points[500].gravity = 1.2;
    let temperatures = points.iter().map(|p| (p.minutes, 20.0)).collect();
    let drawn = course(&CourseData { temperatures, ..data(points) });
    assert!(drawn.marks.len() <= 400 && drawn.marks.len() > 150, "{}", drawn.marks.len());
    assert!(drawn.marks.windows(2).all(|w| w[0].at.0 <= w[1].at.0));
    assert_eq!(drawn.stops.len(), 1000);
    // The highest is among them, and the last of both kinds.
    let highest = drawn.marks.iter().map(|m| m.at.1).fold(f64::MAX, f64::min);
    assert_eq!(highest, drawn.stops[500].at.1);
    assert_eq!(drawn.marks.last().map(|m| m.at), drawn.stops.last().map(|s| s.at));
    for line in [&drawn.main_line, &drawn.satellite_line, &drawn.temperature_line] {
        assert!(line.matches(['L', 'C']).count() < 400);
    }
}

#[test]
fn the_walk_goes_from_reading_to_reading_and_stays_at_the_ends() {
    let points = vec![point(3.0, 1.02, false), point(0.0, 1.05, false), point(2.0, 1.012, true)];
    let temperatures = vec![(29_500_000, 19.0), (29_500_000 + 2 * DAY, 24.0)];
    let drawn = course(&CourseData { temperatures, ..data(points) });
    let stops = &drawn.stops;
    let gravities: Vec<f64> = stops.iter().map(|s| s.gravity).collect();
    assert_eq!(gravities, [1.05, 1.012, 1.02]);
    // What was warm at that moment was the beer, not the satellite.
    let temperatures: Vec<_> = stops.iter().map(|s| s.temperature).collect();
    assert_eq!(temperatures, [Some(19.0), None, None]);
    assert!(stops.iter().zip(&drawn.marks).all(|(stop, mark)| stop.at == mark.at));
    assert_eq!((drawn.step(None, true), drawn.step(None, false)), (Some(0), Some(2)));
    assert_eq!((drawn.step(Some(0), true), drawn.step(Some(2), true)), (Some(1), Some(2)));
    assert_eq!((drawn.step(Some(0), false), drawn.step(Some(9), true)), (Some(0), Some(2)));
    assert_eq!(drawn.nearest(stops[1].at.0 + 3.0), Some(1));
    assert_eq!((drawn.nearest(-1e9), drawn.nearest(1e9)), (Some(0), Some(2)));
    let empty = course(&CourseData::default());
    assert_eq!((empty.nearest(1.0), empty.step(None, true)), (None, None));
    assert_eq!(drawn.nearest(f64::NAN), None);
}

proptest! {
    #[test]
    fn every_coordinate_is_finite(
        parts in proptest::collection::vec((any::<i64>(), any::<f64>(), any::<f64>()), 0..20),
        warmth in proptest::collection::vec((any::<i64>(), any::<f64>()), 0..5),
        zones in proptest::collection::vec((any::<f64>(), any::<f64>()), 0..3), offset in any::<i32>(),
        ahead in proptest::collection::vec(
            (any::<i64>(), any::<f64>(), any::<f64>(), any::<f64>()), 0..5,
        ),
        x in any::<f64>(),
    ) {
        let outlook = ahead.into_iter().map(|(minutes, low, middle, high)| {
            OutlookPoint { minutes, low, middle, high }
        });
        let points = parts.into_iter().map(|(minutes, gravity, sigma)| {
            CoursePoint { minutes, gravity, sigma, satellite: minutes % 2 == 0, label: String::new() }
        });
        let drawn = course(&CourseData {
            temperatures: warmth, ends: zones.into_iter().map(|(low, high)| end(low, high)).collect(), offset_minutes: offset, outlook: outlook.collect(),
            ..data(points.collect())
        });
        for mark in &drawn.marks {
            prop_assert!(mark.at.0.is_finite() && mark.at.1.is_finite());
            prop_assert!(mark.bar.is_none_or(|(a, b)| a.is_finite() && b.is_finite()));
        }
        let nearest = drawn.nearest(x);
        prop_assert_eq!(nearest.is_some(), !drawn.stops.is_empty() && !x.is_nan());
        prop_assert!(drawn.step(nearest, true) >= nearest || nearest.is_none());
        let paths = [
            &drawn.main_line, &drawn.satellite_line, &drawn.temperature_line,
            &drawn.outlook_band, &drawn.outlook_line,
        ];
        prop_assert!(drawn.zones.iter().all(|zone| !zone.area.contains("NaN")));
        prop_assert!(paths.iter().all(|p| !p.contains("NaN") && !p.contains("inf")));
        prop_assert!(drawn.days.iter().all(|(x, _)| x.is_finite()));
    }
}
