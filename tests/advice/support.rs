//! What the laws share: records as they come, good and bad.

use fermentside::advice::family::Family;
use fermentside::advice::own_ends::Ended;
use fermentside::advice::standing::{Record, Seen};
use fermentside::quantity::{Celsius, Estimate, Hours, Measured, Moment, Plato, SpecificGravity};
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
fn seen(end: i32, spread: i32) -> impl Strategy<Value = Seen> {
    let sigma = prop::sample::select(vec![0.0003, 0.0005, 0.001, 0.0015, 0.002]);
    let beer = prop::option::of(prop::sample::select(vec![12.0, 19.0, 24.0]));
    (0..60_i32, end - 1..=end + spread, sigma, beer).prop_map(|(half_days, half, sigma, beer)| {
        let gravity = SpecificGravity::nearest(1.0 + f64::from(half) * 0.0005);
        Seen {
            at: hour(f64::from(half_days) * 12.0),
            gravity: Estimate::new(gravity, sigma),
            beer: beer.map(Celsius::nearest),
            instrument: 0,
            doubtful: false,
        }
    })
}

fn sg(from: f64, to: f64) -> impl Strategy<Value = SpecificGravity> {
    (from..to).prop_map(SpecificGravity::nearest)
}

/// Records that are quiet near an end as often as they fall, some that never began or that drift, with
/// all that may be missing and what may be added.
pub fn record() -> impl Strategy<Value = Record> {
    let ends = prop_oneof![7 => -4..36_i32, 1 => 93..95_i32];
    let ends = (ends, prop::sample::select(vec![1, 2, 3, 6, 60]));
    let readings = ends.prop_flat_map(|(end, spread)| {
        let spread = if end > 36 { 1 } else { spread };
        let main = prop::collection::vec(seen(end, spread), 0..9);
        let satellite = (0..8_i32).prop_flat_map(move |narrow| {
            prop::collection::vec(seen(end - 2, if narrow < 5 { 0 } else { 6 }), 0..4)
        });
        (main, satellite)
    });
    let original = prop_oneof![3 => sg(1.036, 1.075), 1 => sg(1.046, 1.048)];
    let original = prop::option::weighted(0.9, original);
    let pitched = prop::option::weighted(0.9, (-48..300_i32).prop_map(|h| hour(f64::from(h))));
    let stated = prop::option::weighted(0.3, sg(0.998, 1.018));
    let added = prop::option::weighted(0.1, (0..400_i32).prop_map(|h| hour(f64::from(h))));
    let refracted = prop::collection::vec(
        (0..60_i32, 20..40_i32).prop_map(|(half_days, fifth)| {
            (hour(f64::from(half_days) * 12.0), Plato::nearest(f64::from(fifth) * 0.2))
        }),
        0..3,
    );
    let ended = (sg(1.036, 1.075), sg(1.004, 1.018)).prop_map(|(start, end)| Ended { start, end });
    let own = prop_oneof![3 => Just(vec![]), 1 => prop::collection::vec(ended, 2..5)];
    (readings, original, pitched, family(), (stated, own), added, refracted).prop_map(
        |(
            (main, satellite),
            original,
            pitched,
            family,
            (stated_end, own_ends),
            added,
            refracted,
        )| Record {
            main,
            satellite,
            original: original.map(|og| Estimate::new(og, 0.001)),
            pitched,
            family,
            stated_end,
            own_ends,
            added,
            refracted,
            ..Record::of(family, hour(0.0))
        },
    )
}
