//! What the laws share: courses of readings as they come, good and bad.

use fermentside::advice::family::Family;
use fermentside::advice::watch::{Course, Look};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, SpecificGravity};
use proptest::prelude::*;

/// So many cases of each law.
pub fn cases(cases: u32) -> ProptestConfig {
    ProptestConfig { cases, failure_persistence: None, ..ProptestConfig::default() }
}

/// Any family.
pub fn family() -> impl Strategy<Value = Family> {
    prop::sample::select(Family::ALL.to_vec())
}

/// A moment so many hours after one fixed evening.
pub fn hour(hours: f64) -> Moment {
    let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
    start.after(Hours::nearest(hours))
}

/// Gravities in half points and times in half days, so that equal ones are common.
fn look(end: i32, spread: i32) -> impl Strategy<Value = Look> {
    let sigma = prop::sample::select(vec![0.0003, 0.0005, 0.001, 0.0015, 0.002]);
    let beer = prop::option::of(prop::sample::select(vec![12.0, 19.0, 24.0]));
    (0..60_i32, end - 1..=end + spread, sigma, beer).prop_map(|(half_days, half, sigma, beer)| {
        let gravity = SpecificGravity::nearest(1.0 + f64::from(half) * 0.0005);
        Look {
            at: hour(f64::from(half_days) * 12.0),
            gravity: Estimate::new(gravity, sigma),
            beer: beer.map(Celsius::nearest),
        }
    })
}

fn sg(from: f64, to: f64) -> impl Strategy<Value = SpecificGravity> {
    (from..to).prop_map(SpecificGravity::nearest)
}

/// Courses that are quiet near an end as often as they fall, with all that may be missing.
pub fn course() -> impl Strategy<Value = Course> {
    let ends = (-4..36_i32, prop::sample::select(vec![1, 2, 3, 60]));
    let readings = ends.prop_flat_map(|(end, spread)| {
        let main = prop::collection::vec(look(end, spread), 0..7);
        (main, prop::collection::vec(look(end - 2, 6), 0..3))
    });
    let original = prop::option::weighted(0.9, sg(1.036, 1.075));
    let pitched = prop::option::weighted(0.9, (-48..300_i32).prop_map(|h| hour(f64::from(h))));
    let stated = prop::option::weighted(0.3, sg(0.998, 1.018));
    (readings, original, pitched, family(), stated).prop_map(
        |((main, satellite), original, pitched, family, stated_end)| Course {
            main,
            satellite,
            original: original.map(|og| Estimate::new(og, 0.001)),
            pitched,
            family,
            stated_end,
        },
    )
}

/// The time of the last reading of the main beer.
pub fn latest(course: &Course) -> Option<Moment> {
    course.main.iter().map(|look| look.at).max()
}

/// The same course with every reading at its latest moment read as `gravity`.
pub fn with_last(course: &Course, gravity: f64) -> Course {
    let mut changed = course.clone();
    for look in &mut changed.main {
        if Some(look.at) == latest(course) {
            look.gravity = Estimate::new(SpecificGravity::nearest(gravity), look.gravity.sigma());
        }
    }
    changed
}
