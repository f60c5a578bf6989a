//! Ways to a dose from a plan that gives none, each tried before it is offered.
//!
//! The first is time: where the worst case is mostly what two readings do not rule out, one more reading
//! that agrees bounds it, and its date is worked out. Beer that is not judged finished has no other way.

use super::bottling::{Bottling, Over};
use super::dose_plan::{Next, plan};
use super::dosing::{Dosing, Weighing};
use super::kinds::Bottle;
use super::under_ceiling::gives_dose;
use crate::advice::watch::{Course, Look, State, judge};
use crate::quantity::{CarbonDioxideVolumes, Celsius, Hours, Measured, Moment};

/// A later reading is looked for at these steps, so far ahead.
const STEP: Hours = Hours::literal(12.0);
const STEPS: u32 = 42;
/// And it must hold for so many steps, for nobody reads to the hour.
const HOLDS_FOR: u32 = 4;

/// A way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// Wait, and read again then or within the two days after: if it reads the same, there is a dose.
    ReadAgain(Moment),
    /// Go down to this target.
    LowerTarget(CarbonDioxideVolumes),
    /// Take bottles of this kind or stronger.
    Stronger(Bottle),
    /// Keep them where it never gets warmer.
    Cooler(Celsius),
    /// Let it stand two days in a warm room under an airlock: then it holds what the rule says.
    LetGasGo,
    /// Stir the sugar into the vessel instead.
    DoseVessel,
    /// Weigh to a tenth of a gram.
    FinerScale,
}

/// Ways from a plan without a dose, the most sensible first; none when there is a dose. Without a course
/// and the time now no date can be worked out.
///
/// ```
/// # use fermentside::advice::bottle::{Bottling, Over, dosing::Weighing};
/// # use fermentside::quantity::{CarbonDioxideVolumes, Celsius, Estimate, GravityChange, Litres};
/// # use fermentside::science::{bottle_pressure::Closing, priming::Sugar};
/// use fermentside::advice::bottle::{kinds::Bottle, ways_to_dose::{Way, ways}};
///
/// // The bottling is that of `plan`, but livelier.
/// # let bottling = Bottling {
/// #     over: Over::Judged,
/// #     points_left: Some(GravityChange::literal(0.0)),
/// #     yeast_may_go_on: false,
/// #     target: CarbonDioxideVolumes::literal(3.2),
/// #     already_in: Estimate::new(CarbonDioxideVolumes::literal(0.84), 0.04),
/// #     may_hold: None,
/// #     beer: Estimate::new(Litres::literal(19.0), 0.3),
/// #     sugar: Sugar::Sucrose,
/// #     weighing: Weighing::USUAL,
/// #     weakest: Bottle::ReusableGlass,
/// #     hottest: Celsius::literal(25.0),
/// #     closing: Closing::USUAL,
/// # };
/// let found = ways(&bottling, None);
/// assert!(found.contains(&Way::Stronger(Bottle::HeavyGlass)), "{found:?}");
/// assert_eq!(ways(&Bottling { weakest: Bottle::HeavyGlass, ..bottling }, None), []);
/// // Unfinished beer is answered with time alone.
/// assert_eq!(ways(&Bottling { over: Over::No, ..bottling }, None), []);
/// ```
#[must_use]
pub fn ways(bottling: &Bottling, course: Option<(&Course, Moment)>) -> Vec<Way> {
    let gives = |changed: Bottling| gives_dose(&changed);
    let Ok(now) = plan(*bottling) else { return vec![] };
    if now.dose().is_some() {
        return vec![];
    }
    let mut ways = vec![];
    if let Some(at) = course.and_then(|(course, now)| read_again(bottling, course, now)) {
        ways.push(Way::ReadAgain(at));
    }
    // Unfinished beer is never answered with less sugar, nor with other bottles.
    if bottling.over == Over::No {
        return ways;
    }
    if bottling.may_hold.is_some() && gives(Bottling { may_hold: None, ..*bottling }) {
        ways.push(Way::LetGasGo);
    }
    if let Dosing::Bottles { .. } = bottling.weighing.dosing {
        let vessel = Weighing { dosing: Dosing::Vessel, ..bottling.weighing };
        if gives(Bottling { weighing: vessel, ..*bottling }) {
            ways.push(Way::DoseVessel);
        }
        let fine = Weighing { scale: crate::quantity::Grams::literal(0.1), ..bottling.weighing };
        if fine.scale < bottling.weighing.scale && gives(Bottling { weighing: fine, ..*bottling }) {
            ways.push(Way::FinerScale);
        }
    }
    match now.advice.next {
        Next::LowerTarget(target) => ways.push(Way::LowerTarget(target)),
        Next::CoolerPlace(t) => ways.push(Way::Cooler(t)),
        _ => {}
    }
    let stronger = [Bottle::ReusableGlass, Bottle::HeavyGlass].into_iter().find(|&weakest| {
        let here = bottling.weakest.ceiling(false);
        weakest.ceiling(false) > here && gives(Bottling { weakest, ..*bottling })
    });
    ways.extend(stronger.map(Way::Stronger));
    ways
}

/// When one more reading, the same as the last, would bring the beer under the ceiling: as long as it is
/// taken then or within the next two days, and not before `now`. `None` when no reading within three
/// weeks would.
#[must_use]
pub fn read_again(bottling: &Bottling, course: &Course, now: Moment) -> Option<Moment> {
    let last = *course.main.iter().max_by_key(|look| look.at)?;
    let from = last.at.max(now);
    let after = |step: u32| from.after(Hours::nearest(STEP.value() * f64::from(step)));
    let holds = |step: u32| {
        let at = after(step);
        let mut later = course.clone();
        later.main.push(Look { at, ..last });
        let finish = judge(&later);
        let then = Bottling { over: Over::Judged, points_left: finish.points_left, ..*bottling };
        finish.state == State::Finished && gives_dose(&then)
    };
    // The first of a run that holds; a run ends where it does not.
    let (mut begun, mut run) = (0, 0);
    for step in 0..=STEPS + HOLDS_FOR {
        if !holds(step) {
            run = 0;
            continue;
        }
        if run == 0 {
            begun = step;
        }
        run += 1;
        if run > HOLDS_FOR {
            return Some(after(begun));
        }
    }
    None
}
