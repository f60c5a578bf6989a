//! How much may be left for the usual dose to pass: the guard's own sum, turned round.

use super::record::Record;
use crate::advice::bottle::dosing::Weighing;
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::{Bottling, Over, guard};
use crate::advice::practice::by_mark;
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, GravityChange, Litres, Measured, Metres,
};
use crate::science::bottle_pressure::{Closing, VOLUMES_PER_POINT};
use crate::science::carbon_dioxide::already_in;
use crate::science::priming::{Priming, Sugar, dose};

/// What most beer is primed to, when the brewer names nothing (common practice, no source).
pub const USUAL_TARGET: CarbonDioxideVolumes = CarbonDioxideVolumes::literal(2.4);
/// The usual bottling: 20 L unless the batch has another volume, by a mark as the form takes it, beer of
/// 20 °C, table sugar in the vessel.
const BEER: Litres = Litres::literal(20.0);
const WARMEST: (f64, f64) = (20.0, 1.0);

/// The usual bottling of such beer, with nothing left to ferment; `None` never happens within the formulas'
/// own range.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::standing::{Record, USUAL_TARGET, usual_bottling};
/// use fermentside::quantity::Moment;
///
/// let usual = usual_bottling(&Record::of(Family::CleanAle, Moment::EPOCH));
/// assert!(usual.is_some_and(|bottling| bottling.target == USUAL_TARGET));
/// ```
#[must_use]
pub fn usual_bottling(record: &Record) -> Option<Bottling> {
    let warmest = Estimate::new(Celsius::nearest(WARMEST.0), WARMEST.1);
    Some(Bottling {
        over: Over::Judged,
        points_left: Some(GravityChange::literal(0.0)),
        yeast_may_go_on: record.may_go_on(),
        target: record.target.unwrap_or(USUAL_TARGET),
        already_in: already_in(warmest, Metres::literal(0.0)).ok()?.volumes,
        may_hold: None,
        beer: by_mark(record.volume.unwrap_or(BEER)),
        sugar: Sugar::Sucrose,
        weighing: Weighing::USUAL,
        weakest: record.weakest.unwrap_or(Bottle::ReusableGlass),
        hottest: Celsius::literal(30.0),
        closing: Closing::USUAL,
    })
}

/// The most that may be left for that bottling to stay within its ceiling; `None` when even nothing
/// would be too much.
///
/// ```
/// use fermentside::advice::bottle::kinds::Bottle;
/// use fermentside::advice::family::Family;
/// use fermentside::advice::standing::{Record, allowed};
/// use fermentside::quantity::Moment;
///
/// let mut record = Record::of(Family::CleanAle, Moment::EPOCH);
/// // Sound reusable glass at 2.4 volumes leaves room for about a point.
/// assert!(allowed(&record).is_some_and(|left| (1.0..1.5).contains(&left.points())));
/// record.weakest = Some(Bottle::NotForPressure);
/// assert_eq!(allowed(&record), None);
/// ```
#[must_use]
pub fn allowed(record: &Record) -> Option<GravityChange> {
    let bottling = usual_bottling(record)?;
    let wanted = dose(Priming {
        target: bottling.target,
        already_in: bottling.already_in,
        beer: bottling.beer,
        sugar: bottling.sugar,
    });
    let found = guard(&bottling, wanted.ok()?.sugar.value()).ok()?;
    let room = found.ceiling?.value() - found.worst.value();
    (room >= 0.0).then(|| GravityChange::nearest(room / VOLUMES_PER_POINT.value() / 1000.0))
}
