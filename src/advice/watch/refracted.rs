//! What a refractometer can say of fermenting beer: that it changed, or that it did not.

use super::course::{Course, Reason, Refracted};
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

impl Change {
    pub(super) fn reason(self) -> Reason {
        match self {
            Self::Steady => Reason::RefractometerSteady,
            Self::Falls(by) => Reason::RefractometerFalls(by),
        }
    }
}

/// Compares the last reading with the nearest one a day or more before it; `None` when there are not
/// two, or when the last was taken before `from` and says nothing of now. A rise says nothing either.
pub(super) fn change(course: &Course, from: Moment) -> Option<Change> {
    let shown = |look: &Refracted| look.shown.value();
    // Of two at one moment the later in order is the higher, and of two earlier ones as well.
    let looks = in_order(course.refracted.clone(), |a, b| {
        a.at.cmp(&b.at).then(shown(a).total_cmp(&shown(b)))
    });
    let last = looks.last().filter(|last| last.at > from)?;
    let lowest_now = looks.iter().filter(|look| look.at == last.at).map(shown);
    let now = lowest_now.fold(f64::MAX, f64::min);
    let far = |look: &&Refracted| last.at.since(look.at).value() >= APART.value() - 0.5;
    let fall = shown(looks.iter().rev().find(far)?) - now;
    if fall > MARK + HAIR {
        Some(Change::Falls(Plato::nearest(fall)))
    } else if fall >= -MARK - HAIR {
        Some(Change::Steady)
    } else {
        None
    }
}
