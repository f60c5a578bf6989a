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

#[test]
fn what_is_touched_is_the_reading_nearest_across() {
    let point = |minutes, gravity| CoursePoint { minutes, gravity, ..CoursePoint::default() };
    let points = vec![point(0, 1.05), point(5760, 1.02), point(11_520, 1.01)];
    let found = course(&CourseData { points, ..CourseData::default() });
    let at = |mark: usize| found.marks[mark].at.0;
    assert_eq!(found.nearest(at(1) + 3.0), Some(1));
    assert_eq!(found.nearest(at(0) - 100.0), Some(0));
    assert_eq!(found.nearest(1e9), Some(2));
    assert_eq!(course(&CourseData::default()).nearest(0.0), None);
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
    assert_eq!(one.named.len(), 1);
}

#[test]
fn lower_gravity_stands_lower_and_later_stands_to_the_right() {
    let points = vec![point(3.0, 1.02, false), point(0.0, 1.05, false), point(2.0, 1.012, true)];
    let drawn = course(&CourseData { end_zone: Some((1.008, 1.014)), ..data(points) });
    assert!(drawn.marks[0].at.1 < drawn.marks[2].at.1 && drawn.marks[0].at.0 < drawn.marks[2].at.0);
    let (_, top, bottom) = drawn.zone.expect("a zone");
    assert!(top < bottom && bottom < drawn.floor);
    assert_eq!(drawn.named.len(), 2);
}

#[test]
fn temperatures_get_a_strip_of_their_own() {
    let points = vec![point(0.0, 1.05, false)];
    let temperatures = vec![(29_500_000, 19.0), (29_500_000 + DAY, 20.5)];
    let drawn = course(&CourseData { temperatures, ..data(points) });
    assert!(drawn.floor < STRIP.0);
    let marks = &drawn.temperature;
    assert_eq!((marks.len(), marks[0].text.as_str()), (2, "18\u{A0}°C"));
}

#[test]
fn many_readings_have_small_marks() {
    let many = (0..200).map(|i| point(f64::from(i) / 10.0, 1.05 - f64::from(i) * 1e-4, false));
    let drawn = course(&data(many.collect()));
    assert_eq!(drawn.marks.len(), 200);
    assert!(drawn.mark_size < 3.0 && drawn.days.len() <= 5);
}

proptest! {
    #[test]
    fn every_coordinate_is_finite(
        parts in proptest::collection::vec((any::<i64>(), any::<f64>(), any::<f64>()), 0..20),
        warmth in proptest::collection::vec((any::<i64>(), any::<f64>()), 0..5),
        zone in proptest::option::of((any::<f64>(), any::<f64>())), offset in any::<i32>(),
    ) {
        let points = parts.into_iter().map(|(minutes, gravity, sigma)| {
            CoursePoint { minutes, gravity, sigma, satellite: minutes % 2 == 0, label: String::new() }
        });
        let drawn = course(&CourseData {
            temperatures: warmth, end_zone: zone, offset_minutes: offset, ..data(points.collect())
        });
        for mark in &drawn.marks {
            prop_assert!(mark.at.0.is_finite() && mark.at.1.is_finite());
            prop_assert!(mark.bar.is_none_or(|(a, b)| a.is_finite() && b.is_finite()));
        }
        let paths = [&drawn.main_line, &drawn.satellite_line, &drawn.temperature_line];
        prop_assert!(paths.iter().all(|p| !p.contains("NaN") && !p.contains("inf")));
        prop_assert!(drawn.days.iter().all(|(x, _)| x.is_finite()));
    }
}
