//! Ways to a dose from a plan that gives none: each is tried by the plan itself before it is offered.
//!
//! What can be done today stands first, then what takes days, the soonest first. Beer that is not level
//! has no way but time and proof: it is never answered with less sugar, nor with other bottles.

pub use super::ahead::Trials;

use super::ahead::Passes;
use super::{Next, Record, Seen, Standing, State, SugarFrom};
use crate::advice::bottle::asked::{Ended, Ready};
use crate::advice::bottle::dosing::{Dosing, Weighing};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::bottle::{Bottling, Next as PlanNext, Over, plan};
use crate::order::in_order;
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Estimate, Grams, GravityChange, Hours, Measured, Moment,
    SpecificGravity,
};

/// Beer lets its gas go in two days in a warm room, and is as warm as that after one (common practice, no
/// source).
const LETS_GO: Hours = Hours::literal(48.0);
const WARM_AFTER: Hours = Hours::literal(24.0);
/// Two nights after that, and no sooner, it was level in the warm.
const TWO_NIGHTS: Hours = Hours::literal(42.0);
/// Most wort starts here (common practice, no source): to try whether a start would help at all.
const USUAL_START: (f64, f64) = (1.050, 0.011);

/// A way, with the sugar that it gives or the day from which it does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// Stir the sugar into the vessel instead.
    DoseVessel(Grams),
    /// Weigh to a tenth of a gram.
    FinerScale(Grams),
    /// Keep them where it never gets warmer.
    Cooler(Celsius, Grams),
    /// Go down to this target.
    LowerTarget(CarbonDioxideVolumes, Grams),
    /// Take bottles of this kind or stronger.
    Stronger(Bottle, Grams),
    /// Take bottles of this kind or stronger, and go down to this target.
    StrongerAndLower(Bottle, CarbonDioxideVolumes, Grams),
    /// Let it stand two days in a warm room under an airlock: then it holds what the rule says.
    LetGasGo(Moment, Grams),
    /// Begin a satellite now, and read it and the beer until then: if all read as the beer does now, there
    /// is a dose.
    Satellite(Moment),
    /// Wait, and read again then or later: if it reads the same, there is a dose.
    ReadAgain(Moment),
    /// Warm it to its yeast's range and read it a day later and again then: if both read the same, it was
    /// not the cold that stopped it, and there is a dose.
    WarmAndRead(Moment),
    /// Note the gravity it started at, for nothing else shows that it fermented; with the usual one a reading
    /// like the last would give a dose from then on, if any would.
    NoteStart(Option<Moment>),
    /// It is not level yet: go on reading, next then; as far as can be foretold, sugar may go in about
    /// the second. No promise.
    ReadOn(Option<Moment>, Option<Moment>),
}

impl Way {
    /// From when it gives a dose; `None` for what can be done today.
    ///
    /// ```
    /// use fermentside::advice::standing::ways_to_dose::Way;
    /// use fermentside::quantity::{Grams, Moment};
    ///
    /// assert_eq!(Way::ReadAgain(Moment::EPOCH).from(), Some(Moment::EPOCH));
    /// assert_eq!(Way::DoseVessel(Grams::literal(120.0)).from(), None);
    /// ```
    #[must_use]
    pub const fn from(self) -> Option<Moment> {
        match self {
            Self::LetGasGo(at, _)
            | Self::Satellite(at)
            | Self::ReadAgain(at)
            | Self::WarmAndRead(at) => Some(at),
            Self::NoteStart(at) => at,
            _ => None,
        }
    }
}

impl Standing {
    /// What a bottling is told of how far it has fermented: level and bounded by the log, else on the
    /// brewer's word; never for beer that is not known to ferment, nor while bottles of it are not safe.
    ///
    /// ```
    /// use fermentside::advice::bottle::Over;
    /// use fermentside::advice::family::Family;
    /// use fermentside::advice::standing::{Record, Standing};
    /// use fermentside::quantity::Moment;
    ///
    /// let record = Record::of(Family::CleanAle, Moment::EPOCH);
    /// let nothing_read = Standing::of(&record, Moment::EPOCH);
    /// // A word alone makes no beer of wort.
    /// assert_eq!(nothing_read.ended(&record, true).over, Over::No);
    /// ```
    #[must_use]
    pub fn ended(&self, record: &Record, because_stated: bool) -> Ended {
        let over = match self.state {
            _ if !self.hazards.is_empty() || !self.left.fermented => Over::No,
            State::Finished | State::Level if self.left.bounded => Over::Judged,
            _ if because_stated => Over::Stated,
            _ => Over::No,
        };
        Ended { over, points_left: self.left.upper, yeast_may_go_on: record.may_go_on() }
    }
}

/// What is known of the beer beside the bottling.
#[derive(Clone, Copy)]
pub struct Known<'a> {
    /// What is recorded.
    pub record: &'a Record,
    /// How it stands by that.
    pub standing: &'a Standing,
    /// Now.
    pub now: Moment,
    /// What was tried of it before.
    pub trials: &'a Trials,
}

/// Ways from a plan without a dose, the quickest first; none when there is a dose, and else one at least,
/// but for an input outside what the formulas hold for.
///
/// ```
/// use fermentside::advice::bottle::asked::{Asked, DoseFor, Glass, SugarGoes};
/// use fermentside::advice::bottle::kinds::Bottle;
/// use fermentside::advice::family::Family;
/// use fermentside::advice::standing::ways_to_dose::{Known, Trials, Way, ways};
/// use fermentside::advice::standing::{Record, Standing};
/// use fermentside::quantity::{
///     CarbonDioxideVolumes, Celsius, Grams, Litres, MassUnit, Metres, Moment,
/// };
/// use fermentside::science::priming::Sugar;
///
/// // Nothing was read: the one way is to read.
/// let (record, now) = (Record::of(Family::CleanAle, Moment::EPOCH), Moment::EPOCH);
/// let standing = Standing::of(&record, now);
/// let asked = Asked {
///     ended: standing.ended(&record, false),
///     beer: Litres::literal(19.0),
///     target: CarbonDioxideVolumes::literal(2.4),
///     warmest: Celsius::literal(20.0),
///     cold: None,
///     dose_for: DoseFor::Rule,
///     sugar: Sugar::Sucrose,
///     sugar_goes: SugarGoes::Vessel,
///     scale: Grams::literal(1.0),
///     unit: MassUnit::Grams,
///     glass: Glass { weakest: Bottle::ReusableGlass, smallest: Litres::literal(0.5) },
///     hottest: Celsius::literal(30.0),
///     height: Metres::literal(0.0),
/// };
/// let known = Known { record: &record, standing: &standing, now, trials: &Trials::default() };
/// let found = ways(&asked.ready()?, known);
/// assert!(matches!(found[..], [Way::ReadOn(..)]));
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
#[must_use]
pub fn ways(ready: &Ready, known: Known) -> Vec<Way> {
    let bottling = &ready.bottling;
    let Ok(found) = plan(*bottling) else { return vec![] };
    if found.dose().is_some() {
        return vec![];
    }
    let mut ways = vec![];
    if !bottling.over.waits() {
        today(bottling, found.advice.next, &mut ways);
    }
    let mut later = in_days(ready, known);
    later = in_order(later, |a, b| a.from().cmp(&b.from()));
    ways.extend(later);
    if ways.is_empty() {
        ways.push(read_on(known));
    }
    ways
}

/// The dose of a changed bottling.
fn gives(changed: Bottling) -> Option<Grams> {
    plan(changed).ok().and_then(|plan| plan.weigh())
}

/// What can be done at once.
fn today(bottling: &Bottling, next: PlanNext, ways: &mut Vec<Way>) {
    if let Dosing::Bottles { .. } = bottling.weighing.dosing {
        let vessel = Weighing { dosing: Dosing::Vessel, ..bottling.weighing };
        ways.extend(gives(Bottling { weighing: vessel, ..*bottling }).map(Way::DoseVessel));
        let fine = Weighing { scale: Grams::literal(0.1), ..bottling.weighing };
        if fine.scale < bottling.weighing.scale {
            ways.extend(gives(Bottling { weighing: fine, ..*bottling }).map(Way::FinerScale));
        }
    }
    match next {
        PlanNext::LowerTarget(target) => {
            let lower = gives(Bottling { target, ..*bottling });
            ways.extend(lower.map(|sugar| Way::LowerTarget(target, sugar)));
        }
        PlanNext::CoolerPlace(hottest) => {
            let cooler = gives(Bottling { hottest, ..*bottling });
            ways.extend(cooler.map(|sugar| Way::Cooler(hottest, sugar)));
        }
        _ => {}
    }
    let here = bottling.weakest.ceiling(false);
    let stronger = || {
        let all = [Bottle::ReusableGlass, Bottle::HeavyGlass].into_iter();
        all.filter(|bottle| bottle.ceiling(false) > here)
    };
    let filled = |weakest| Bottling { weakest, ..*bottling };
    let found = stronger().find_map(|bottle| Some((bottle, gives(filled(bottle))?)));
    ways.extend(found.map(|(bottle, sugar)| Way::Stronger(bottle, sugar)));
    if ways.is_empty() && bottling.over == Over::Judged {
        let both = stronger().find_map(|weakest| {
            let PlanNext::LowerTarget(target) = plan(filled(weakest)).ok()?.advice.next else {
                return None;
            };
            let sugar = gives(Bottling { target, ..filled(weakest) })?;
            Some(Way::StrongerAndLower(weakest, target, sugar))
        });
        ways.extend(both);
    }
}

/// What takes days.
fn in_days(ready: &Ready, known: Known) -> Vec<Way> {
    let Known { record, standing, now, trials } = known;
    let mut ways = vec![];
    // Once it was warm and still for two days it holds what the rule says.
    let still = Bottling { may_hold: None, already_in: ready.held.by_rule, ..ready.bottling };
    if ready.bottling.may_hold.is_some() && !ready.bottling.over.waits() {
        let sugar = gives(still);
        ways.extend(sugar.map(|sugar| Way::LetGasGo(now.after(LETS_GO), sugar)));
    }
    let judged = |left, of: Bottling| {
        gives(Bottling { over: Over::Judged, points_left: Some(left), ..of }).is_some()
    };
    if !standing.hazards.is_empty() {
        return ways;
    }
    if ready.bottling.over == Over::ColdStopped {
        ways.extend(warm_and_read(known, &Passes::new(record, &|left| judged(left, still))));
        return ways;
    }
    let bottled = |left: GravityChange| judged(left, ready.bottling);
    let passes = Passes::new(record, &bottled);
    if !standing.left.fermented && record.original.is_none() && !record.main.is_empty() {
        let mut record = record.clone();
        let (start, sigma) = USUAL_START;
        record.original = Some(Estimate::new(SpecificGravity::nearest(start), sigma));
        let ahead = trials.of(&record, now);
        let from = ahead.and_then(|ahead| ahead.reading(&passes));
        ways.push(Way::NoteStart(from.map(|at| at.max(now))));
        return ways;
    }
    let Some(ahead) = trials.of(record, now) else { return ways };
    let read = ahead.reading(&passes).map(|at| at.max(now));
    let satellite = ahead.satellite(&passes).map(|hours| now.after(hours));
    // A satellite is work: only where it is sooner.
    let sooner = satellite.filter(|at| read.is_none_or(|read| *at < read));
    ways.extend(sooner.map(Way::Satellite));
    ways.extend(read.map(Way::ReadAgain));
    ways
}

/// Warmed today, read a day later and again: what the log says then.
fn warm_and_read(known: Known, passes: &Passes) -> Option<Way> {
    let Known { record, now, trials, .. } = known;
    let last = *record.main.iter().max_by_key(|seen| seen.at)?;
    let warm = record.range();
    let beer = Celsius::nearest(f64::midpoint(warm.from.value(), warm.to.value()));
    let at = last.at.max(now).after(WARM_AFTER);
    let mut record = record.clone();
    record.main.push(Seen { at, beer: Some(beer), doubtful: false, ..last });
    let found = trials.of(&record, at)?.reading(passes)?;
    Some(Way::WarmAndRead(found.max(at.after(TWO_NIGHTS))))
}

/// By how it stands: when to read next, and when sugar may go in as far as can be foretold.
fn read_on(known: Known) -> Way {
    let Known { standing, now, .. } = known;
    let next = match standing.next {
        Next::ReadFirst(at) | Next::ReadAgain(at) | Next::LookForSigns(at) | Next::Rouse(at) => {
            Some(at.max(now))
        }
        _ => None,
    };
    let foretold = match standing.sugar.from {
        SugarFrom::Foretold(at) | SugarFrom::About(at) => Some(at).filter(|at| *at > now),
        _ => None,
    };
    Way::ReadOn(next, foretold)
}
