//! Fewer points that look the same: in each narrow strip of the picture the first, the last, the highest
//! and the lowest, so that no end and no outlier is lost.

use super::CoursePoint;
use crate::chart::Point;
use crate::order::in_order;

/// No more points than this are drawn of the readings, and as many of the temperatures.
pub(super) const MOST: usize = 400;

/// The points to draw of many, in their order. `part` is the share of `MOST` that they may take.
pub(super) fn thinned<T>(points: Vec<T>, part: f64, place: impl Fn(&T) -> (f64, f64)) -> Vec<T> {
    let most = (MOST as f64 * part) as usize;
    let strips = (most / 4).max(1);
    let ends = (points.first().map(&place), points.last().map(&place));
    let (Some((from, _)), Some((to, _))) = ends else { return points };
    if points.len() <= most {
        return points;
    }
    let strip = |x: f64| {
        let share = (x - from) / (to - from);
        if share > 0.0 { ((share * strips as f64) as usize).min(strips - 1) } else { 0 }
    };
    // First, last, highest and lowest of each strip, by index.
    let mut kept: Vec<Option<[usize; 4]>> = vec![None; strips];
    let down = |i: usize| points.get(i).map_or(0.0, |p| place(p).1);
    for (i, point) in points.iter().enumerate() {
        let (x, y) = place(point);
        let Some(kept) = kept.get_mut(strip(x)) else { continue };
        let [first, _, top, bottom] = kept.unwrap_or([i; 4]);
        let top = if y < down(top) { i } else { top };
        let bottom = if y > down(bottom) { i } else { bottom };
        *kept = Some([first, i, top, bottom]);
    }
    let mut wanted = vec![false; points.len()];
    for i in kept.into_iter().flatten().flatten() {
        if let Some(wanted) = wanted.get_mut(i) {
            *wanted = true;
        }
    }
    points.into_iter().zip(wanted).filter_map(|(point, wanted)| wanted.then_some(point)).collect()
}

/// The readings to draw, main beer and satellite each by its share.
pub(super) fn fewer(
    points: Vec<&CoursePoint>,
    place: impl Fn(&CoursePoint) -> Point,
) -> Vec<&CoursePoint> {
    if points.len() <= MOST {
        return points;
    }
    let all = points.len() as f64;
    let (satellite, main): (Vec<_>, Vec<_>) = points.into_iter().partition(|p| p.satellite);
    let share = |of: &[&CoursePoint]| of.len() as f64 / all;
    let (of_main, of_satellite) = (share(&main), share(&satellite));
    let mut fewer = thinned(main, of_main, |p| place(p));
    fewer.extend(thinned(satellite, of_satellite, |p| place(p)));
    in_order(fewer, |a, b| a.minutes.cmp(&b.minutes))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ends_and_outliers_stay() {
        let mut points: Vec<(f64, f64)> =
            (0..1000).map(|i| (f64::from(i), 100.0 - f64::from(i) / 20.0)).collect();
        points[333].1 = 5.0;
        points[777].1 = 190.0;
        let few = thinned(points.clone(), 1.0, |p| *p);
        assert!(few.len() <= MOST && few.len() > 150, "{}", few.len());
        assert!(few.windows(2).all(|w| w[0].0 < w[1].0));
        for i in [0, 333, 777, 999] {
            assert!(few.contains(&points[i]), "{i}");
        }
    }

    #[test]
    fn few_points_and_points_of_one_moment_are_taken() {
        let few = vec![(1.0, 2.0), (1.0, 3.0)];
        assert_eq!(thinned(few.clone(), 0.5, |p| *p), few);
        let many = vec![(1.0, 2.0); 900];
        assert_eq!(thinned(many, 1.0, |p| *p).len(), 2);
        assert!(thinned(Vec::<(f64, f64)>::new(), 1.0, |p| *p).is_empty());
    }
}
