//! What a refractometer can say of fermenting beer: that it changed, or that it did not. Alcohol lifts
//! what it shows, so it tells no gravity; and it can only make a beer less finished.

use super::record::Record;
use crate::advice::practice::APART;
use crate::order::in_order;
use crate::quantity::{HAIR, Measured, Moment, Plato};

/// One mark of the usual scale, °Bx.
const MARK: f64 = 0.2;

/// What two readings show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Change {
    Steady,
    Falls(Plato),
}

/// Compares the last reading with the nearest one a day or more before it; `None` when there are not
/// two, or when the last was taken before `from` and says nothing of now. A rise says nothing either.
pub(super) fn change(record: &Record, from: Moment) -> Option<Change> {
    // Of two at one moment the later in order is the higher, and of two earlier ones as well.
    let looks = in_order(record.refracted.clone(), |a, b| {
        a.0.cmp(&b.0).then(a.1.value().total_cmp(&b.1.value()))
    });
    let (last, _) = *looks.last().filter(|(at, _)| *at >= from)?;
    let lowest_now = looks.iter().filter(|(at, _)| *at == last).map(|(_, shown)| shown.value());
    let now = lowest_now.fold(f64::MAX, f64::min);
    let far = |(at, _): &&(Moment, Plato)| last.since(*at).value() >= APART.value() - 0.5;
    let fall = looks.iter().rev().find(far)?.1.value() - now;
    if fall > MARK + HAIR {
        Some(Change::Falls(Plato::nearest(fall)))
    } else if fall >= -MARK - HAIR {
        Some(Change::Steady)
    } else {
        None
    }
}
