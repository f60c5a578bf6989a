//! From points to the path of a drawing (the `d` of an SVG path).

use std::fmt::Write;

/// A point of the picture, across and down.
pub type Point = (f64, f64);

/// Straight lines from point to point.
#[must_use]
pub fn straight(points: &[Point]) -> String {
    let mut path = String::new();
    for (x, y) in finite(points) {
        line_to(&mut path, x, y);
    }
    path
}

/// A smooth line through every point that never swings beyond two neighbours: a monotone cubic
/// (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980). Points must not run backwards; where two stand
/// one above the other the line is straight.
#[must_use]
pub fn smooth(points: &[Point]) -> String {
    let points: Vec<Point> = finite(points).collect();
    let slopes = slopes(&points);
    let mut path = straight(points.get(..1).unwrap_or_default());
    for (pair, slope) in points.windows(2).zip(slopes.windows(2)) {
        let (&[(x0, y0), (x1, y1)], &[m0, m1]) = (pair, slope) else { continue };
        let third = (x1 - x0) / 3.0;
        if third <= 0.0 {
            line_to(&mut path, x1, y1);
            continue;
        }
        let (cx0, cy0, cx1, cy1) = (x0 + third, y0 + m0 * third, x1 - third, y1 - m1 * third);
        // Writing to a string does not fail.
        let _ = write!(path, "C{cx0:.1} {cy0:.1} {cx1:.1} {cy1:.1} {x1:.1} {y1:.1}");
    }
    path
}

/// The closed area between an upper and a lower line, both from left to right; nothing when either
/// is empty.
#[must_use]
pub fn band(upper: &[Point], lower: &[Point]) -> String {
    if upper.is_empty() || lower.is_empty() {
        return String::new();
    }
    let round: Vec<Point> = upper.iter().chain(lower.iter().rev()).copied().collect();
    format!("{}Z", straight(&round))
}

fn finite(points: &[Point]) -> impl Iterator<Item = Point> {
    points.iter().copied().filter(|(x, y)| x.is_finite() && y.is_finite())
}

fn line_to(path: &mut String, x: f64, y: f64) {
    let letter = if path.is_empty() { 'M' } else { 'L' };
    let _ = write!(path, "{letter}{x:.1} {y:.1}");
}

/// The slope at each point, small enough that no stretch overshoots.
fn slopes(points: &[Point]) -> Vec<f64> {
    let steps: Vec<(f64, f64)> = points
        .windows(2)
        .map(|w| match w {
            [(x0, y0), (x1, y1)] if x1 > x0 => (x1 - x0, (y1 - y0) / (x1 - x0)),
            _ => (0.0, 0.0),
        })
        .collect();
    (0..points.len())
        .map(|i| {
            let before = i.checked_sub(1).and_then(|i| steps.get(i)).copied();
            match (before, steps.get(i).copied()) {
                (Some((w0, s0)), Some((w1, s1))) if s0 * s1 > 0.0 => {
                    // The weighted harmonic mean keeps each stretch between its two ends.
                    let (a, b) = (2.0 * w1 + w0, w1 + 2.0 * w0);
                    (a + b) / (a / s0 + b / s1)
                }
                (Some(_), Some(_)) | (None, None) => 0.0,
                (Some((_, s)), None) | (None, Some((_, s))) => s,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn joins_points_in_order() {
        assert_eq!(straight(&[]), "");
        assert_eq!(straight(&[(0.0, 1.0), (2.0, 3.5)]), "M0.0 1.0L2.0 3.5");
        assert_eq!(smooth(&[(1.0, 1.0)]), "M1.0 1.0");
        assert_eq!(
            band(&[(0.0, 0.0), (9.0, 0.0)], &[(0.0, 5.0), (9.0, 5.0)]).matches('L').count(),
            3
        );
        assert_eq!(band(&[], &[(0.0, 0.0)]), "");
        assert_eq!(straight(&[(0.0, f64::NAN), (1.0, 1.0)]), "M1.0 1.0");
    }

    fn numbers(path: &str) -> Vec<f64> {
        let apart = path.replace(['M', 'L', 'C', 'Z'], " ");
        apart.split_whitespace().map(|n| n.parse().expect("a number")).collect()
    }

    proptest! {
        #[test]
        fn a_smooth_line_stays_between_its_neighbours(
            steps in proptest::collection::vec((0.0..40.0, -80.0..80.0), 2..40),
        ) {
            let mut at = 0.0;
            let points: Vec<Point> = steps.iter().map(|&(dx, y)| { at += dx; (at, y) }).collect();
            let path = smooth(&points);
            prop_assert!(!path.contains("NaN") && !path.contains("inf"));
            // The handles of each stretch lie between its ends, so the curve does too.
            let segments = path.split_inclusive(char::is_numeric).collect::<String>();
            let mut from = points[0];
            for (piece, &to) in segments.split(['C', 'L']).skip(1).zip(&points[1..]) {
                let n = numbers(piece);
                for y in n.iter().skip(1).step_by(2) {
                    prop_assert!(*y >= from.1.min(to.1) - 0.06 && *y <= from.1.max(to.1) + 0.06);
                }
                from = to;
            }
        }
    }
}
