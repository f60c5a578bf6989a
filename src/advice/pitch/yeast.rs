//! Is there yeast enough, and how does it go in: sprinkled or woken in water first.

pub use super::sachets::{Dated, Kept, Months, USUAL_SACHET, in_sachets};

use crate::advice::family::{Family, Span};
use crate::advice::practice::STRONG;
use crate::advice::{Advice, Verdict};
use crate::quantity::{
    Celsius, Grams, HAIR, Hours, Litres, Measured, SpecificGravity, TemperatureChange,
};
use crate::science::yeast::{DryYeast, Pitching, Range, dry_yeast, sachets};
use crate::science::{ScienceError, sucrose};

/// With less than this share of what it is counted against, more is wanted; from there on it only begins
/// a little later (common practice, no source).
const WELL_UNDER: f64 = 2.0 / 3.0;
/// A sachet so long past its date counts as two cautions (common practice, no source).
const LONG_PAST: Months = Months(12);
/// Water for waking yeast: ten times its weight (yeast makers' sheets).
const WATER_TIMES: f64 = 10.0;
/// Temperatures of that water by makers' sheets, which differ among themselves: 25 to 29 and 30 to 35
/// for ale, 21 to 25 for lager.
const ALE_WATER: Span<Celsius> = Span { from: Celsius::literal(25.0), to: Celsius::literal(35.0) };
const LAGER_WATER: Span<Celsius> =
    Span { from: Celsius::literal(21.0), to: Celsius::literal(25.0) };
/// It stands so long, still, before it is stirred (yeast makers' sheets: 15 min).
const REST: Hours = Hours::literal(0.25);
/// Woken yeast goes into wort no further from it than this (yeast makers' sheets).
pub const WITHIN: TemperatureChange = TemperatureChange::literal(10.0);

crate::choices! {
    /// How dry yeast goes in. The stored names never change.
    pub enum Method {
        /// Sprinkled on the wort.
        Sprinkled = "sprinkled",
        /// Woken in water first.
        Rehydrated = "rehydrated",
    }
}

/// What there is, and for what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// How many sachets.
    pub count: u32,
    /// What one holds.
    pub size: Grams,
    /// Whole months since its best-before date; `None` when the date is not past, or not known.
    pub past: Option<Months>,
    /// It stood warm for weeks.
    pub kept_warm: bool,
    /// Wort.
    pub volume: Litres,
    /// Its gravity.
    pub gravity: SpecificGravity,
    /// The yeast.
    pub family: Family,
    /// Wort temperature at pitching, if known.
    pub wort: Option<Celsius>,
}

/// How the supply stands to the need.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Amount {
    /// Well under what the wort wants.
    Short,
    /// A little less than it wants: it will do.
    Nearly,
    /// Enough.
    Enough,
    /// More than the makers' upper dose; no harm.
    Plenty,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// What there is, and what the makers' dose asks.
    Has(Grams, Range),
    /// Counted against this and not the lower dose, for its age or its warmth.
    CountedAgainst(Grams),
    /// So much short: it only begins a little later.
    BeginsLater(Grams),
    /// Past its date by so much.
    PastDate(Months),
    /// It was kept warm.
    KeptWarm,
    /// The wort is strong.
    StrongWort(SpecificGravity),
    /// It goes in cold, where yeast starts slowly.
    ColdPitch(Celsius),
    /// More than the upper dose does no harm.
    NoHarm,
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next {
    /// Put all of it in.
    PutIn(Method),
    /// Get so many more sachets of the size in hand. With no more to be had it can still go in; it will
    /// start late and may taste of it.
    AddSachets(u32),
}

/// How to wake it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Waking {
    /// Boiled and cooled water, or bottled; never distilled, which bursts the cells. In litres, of
    /// which each is a kilogram.
    pub water: Litres,
    /// Of that water.
    pub at: Span<Celsius>,
    /// Still, then stirred.
    pub rest: Hours,
    /// How far it is from the wort at the coolest water, if the wort is known.
    pub from_wort: Option<TemperatureChange>,
    /// Spoonfuls of wort, some minutes apart, that bring it within [`WITHIN`]: steps of at most ten
    /// degrees each, none when it is near enough.
    pub steps: u32,
}

/// The judgement and the way.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// How the supply stands.
    pub amount: Amount,
    /// The judgement.
    pub advice: Advice<Reason, Next>,
    /// What the wort wants.
    pub wants: DryYeast,
    /// The better way for this wort and this yeast; the other is no fault.
    pub better: Method,
    /// How to wake it, for those who do.
    pub waking: Waking,
}

/// Judges the yeast in hand against the makers' dose.
///
/// Sound yeast is counted against the lower dose; one caution (past its date, kept warm) moves the
/// mark to the middle, two to the upper dose. That is our rule and no maker's: how many cells a
/// sachet has lost, nobody can see. From two thirds of the mark on it will do, with a note.
///
/// ```
/// use fermentside::advice::{family::Family, pitch::yeast::{Amount, Months, Next, Supply, plan}};
/// use fermentside::quantity::{Grams, Litres, SpecificGravity};
///
/// let (count, size, volume) = (1, Grams::literal(11.0), Litres::literal(19.0));
/// let (gravity, family) = (SpecificGravity::literal(1.048), Family::CleanAle);
/// let (past, kept_warm, wort) = (None, false, None);
/// let supply = Supply { count, size, past, kept_warm, volume, gravity, family, wort };
/// assert_eq!(plan(supply)?.amount, Amount::Enough);
/// let old = Supply { past: Some(Months(12)), ..supply };
/// assert_eq!(plan(old)?.amount, Amount::Nearly);
/// let half = Supply { size: Grams::literal(5.0), ..supply };
/// assert_eq!(plan(half)?.advice.next, Next::AddSachets(1));
/// assert!(plan(Supply { size: Grams::literal(0.0), ..supply }).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] for no wort or an empty sachet; [`ScienceError::OutOfRange`] for more
/// than can be.
pub fn plan(supply: Supply) -> Result<Plan, ScienceError> {
    if supply.size.value() <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    let pitching = supply.family.pitching();
    let wants = dry_yeast(pitching, supply.volume, sucrose::plato(supply.gravity))?;
    let has = Grams::new(f64::from(supply.count) * supply.size.value())?;
    let age = match supply.past {
        None | Some(Months(0)) => 0,
        Some(past) if past < LONG_PAST => 1,
        Some(_) => 2,
    };
    let Range { from, to } = wants.by_maker;
    let mark = match age + u8::from(supply.kept_warm) {
        0 => from,
        1 => Grams::new(0.5 * (from.value() + to.value()))?,
        _ => to,
    };
    // A hair under the mark is the mark.
    let under = |share: f64| has.value() < share * mark.value() - 1e-6;
    let amount = if under(WELL_UNDER) {
        Amount::Short
    } else if under(1.0) {
        Amount::Nearly
    } else if has > to {
        Amount::Plenty
    } else {
        Amount::Enough
    };
    let doubtful = age > 0 || supply.kept_warm;
    let mut reasons = vec![Reason::Has(has, wants.by_maker)];
    reasons.extend(doubtful.then_some(Reason::CountedAgainst(mark)));
    let missing = Grams::nearest((mark.value() - has.value()).max(0.0));
    reasons.extend((amount == Amount::Nearly).then_some(Reason::BeginsLater(missing)));
    reasons.extend(supply.past.filter(|_| age > 0).map(Reason::PastDate));
    reasons.extend(supply.kept_warm.then_some(Reason::KeptWarm));
    let strong = supply.gravity > STRONG;
    reasons.extend(strong.then_some(Reason::StrongWort(supply.gravity)));
    let cold = match pitching {
        Pitching::Cold => Some(supply.wort.unwrap_or(supply.family.pitch_at().middle())),
        Pitching::Warm => supply.wort.filter(|t| *t < supply.family.pitch_at().from),
    };
    reasons.extend(cold.map(Reason::ColdPitch));
    reasons.extend((amount == Amount::Plenty).then_some(Reason::NoHarm));
    let better =
        if strong || cold.is_some() || doubtful { Method::Rehydrated } else { Method::Sprinkled };
    let (verdict, next) = if amount == Amount::Short {
        (Verdict::Wait, Next::AddSachets(sachets(missing, supply.size)?.max(1)))
    } else {
        (Verdict::Go, Next::PutIn(better))
    };
    let waking = waking(pitching, has, supply.wort)?;
    let worked = wants.worked.clone();
    let advice = Advice { verdict, reasons, next, worked };
    Ok(Plan { amount, advice, wants, better, waking })
}

/// Water, temperature and steps for waking so much yeast.
fn waking(pitching: Pitching, yeast: Grams, wort: Option<Celsius>) -> Result<Waking, ScienceError> {
    let at = match pitching {
        Pitching::Warm => ALE_WATER,
        Pitching::Cold => LAGER_WATER,
    };
    let from_wort = wort.map(|wort| at.from.above(wort));
    let gap = from_wort.map_or(0.0, |gap| gap.value().abs());
    let steps = (gap / WITHIN.value() - HAIR).ceil().max(1.0) as u32 - 1;
    let water = Litres::new(WATER_TIMES * yeast.value() / 1000.0)?;
    Ok(Waking { water, at, rest: REST, from_wort, steps })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ale() -> Supply {
        Supply {
            count: 1,
            size: Grams::literal(11.0),
            past: None,
            kept_warm: false,
            volume: Litres::literal(19.0),
            gravity: SpecificGravity::literal(1.048),
            family: Family::CleanAle,
            wort: Some(Celsius::literal(19.0)),
        }
    }

    fn planned(supply: Supply) -> Plan {
        plan(supply).expect("in range")
    }

    #[test]
    fn one_sachet_of_eleven_does_for_a_common_batch_and_a_kit_sachet_does_not() {
        let usual = planned(ale());
        assert_eq!((usual.amount, usual.better), (Amount::Enough, Method::Sprinkled));
        assert_eq!(usual.advice.verdict, Verdict::Go);
        let kit =
            planned(Supply { size: Grams::literal(6.0), volume: Litres::literal(23.0), ..ale() });
        assert_eq!((kit.amount, kit.advice.next), (Amount::Short, Next::AddSachets(1)));
        // A little under the dose is no reason to wait.
        let nearly = planned(Supply { volume: Litres::literal(23.0), ..ale() });
        assert_eq!((nearly.amount, nearly.advice.verdict), (Amount::Nearly, Verdict::Go));
        assert!(matches!(nearly.advice.reasons[1], Reason::BeginsLater(g) if g.value() < 1.0));
        let two = planned(Supply { count: 2, ..ale() });
        assert_eq!((two.amount, two.advice.verdict), (Amount::Plenty, Verdict::Go));
    }

    #[test]
    fn old_or_warm_yeast_is_counted_for_less() {
        let old = planned(Supply { past: Some(Months(4)), ..ale() });
        assert_eq!((old.amount, old.better), (Amount::Nearly, Method::Rehydrated));
        let kept = Supply { size: Grams::literal(8.0), past: Some(Months(4)), ..ale() };
        assert_eq!(planned(kept).amount, Amount::Short);
        let worse = planned(Supply { past: Some(Months(14)), count: 2, kept_warm: true, ..ale() });
        assert_eq!(worse.amount, Amount::Plenty);
        assert!(worse.advice.reasons.contains(&Reason::KeptWarm));
        assert_eq!(planned(Supply { past: Some(Months(0)), ..ale() }).amount, Amount::Enough);
    }

    #[test]
    fn lager_is_woken_cooler_and_brought_down_in_steps() {
        let lager = planned(Supply {
            family: Family::Lager,
            count: 2,
            wort: Some(Celsius::literal(10.0)),
            ..ale()
        });
        assert_eq!(lager.better, Method::Rehydrated);
        assert_eq!(lager.waking.at, LAGER_WATER);
        assert!((lager.waking.water.value() - 0.22).abs() < 1e-12);
        // 21 °C over wort of 10 °C: one step brings it within ten degrees.
        assert_eq!(lager.waking.steps, 1);
        assert_eq!(planned(ale()).waking.steps, 0);
    }

    #[test]
    fn strong_wort_is_better_with_woken_yeast() {
        let strong =
            planned(Supply { gravity: SpecificGravity::literal(1.080), count: 2, ..ale() });
        assert_eq!(strong.better, Method::Rehydrated);
        assert!(plan(Supply { size: Grams::literal(0.0), ..ale() }).is_err());
    }
}
