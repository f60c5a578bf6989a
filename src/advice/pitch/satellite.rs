//! The satellite: a jar of the same wort with far too much yeast, kept warm, that shows in days where
//! the batch will end.

use crate::advice::family::{Family, Span};
use crate::advice::practice::APART;
use crate::quantity::{Celsius, Grams, Hours, Litres, Measured, Moment, SpecificGravity};
use crate::science::yeast::dry_yeast;
use crate::science::{ScienceError, sucrose};

/// What a hydrometer's jar takes (common practice, no source).
pub const JAR: Litres = Litres::literal(0.2);
/// Least and most wort that is worth setting aside (common practice, no source).
const WORT: (f64, f64) = (0.120, 0.250);
/// Times the usual dose, so that it ends before the batch (common practice, no source).
const TIMES: (f64, f64) = (5.0, 10.0);
/// Half a teaspoon of dry bread yeast to 240 mL, as it is told, at 3 g a teaspoon (from memory): 6 to
/// 6.5 g a litre.
const BREAD_YEAST: f64 = 6.25;
/// Warm: 70 to 80 °F (common practice, no source).
const PLACE: Span<Celsius> = Span { from: Celsius::literal(21.0), to: Celsius::literal(27.0) };
/// It ends in one to four days (common practice, no source).
const ENDS: (Hours, Hours) = (Hours::literal(24.0), Hours::literal(96.0));
/// Gas for each point that ferments, litres a litre of beer.
const GAS_A_POINT: f64 = 0.5;

/// What makes a satellite lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trap {
    /// Wort from a batch that was not mixed.
    Unmixed,
    /// Too little yeast: it ends too high, which is the dangerous way.
    TooLittleYeast,
    /// A cool place: it ends too high, or late.
    CoolPlace,
    /// Read once, too early: it ends too high.
    ReadEarly,
    /// Something else grows in it: it ends too low.
    WildGrowth,
    /// Sugar or fruit added to the batch later moves its end.
    LaterAdditions,
    /// Bread yeast says nothing of a yeast that eats dextrins: use the batch's own.
    NeedsSameYeast,
}

/// The card for one satellite.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// Wort to set aside, from the mixed batch.
    pub wort: Litres,
    /// It fills the hydrometer's jar.
    pub fills_jar: bool,
    /// The batch's own dry yeast: five to ten times the makers' dose.
    pub yeast: Span<Grams>,
    /// Dry bread yeast in its place; `None` where it would say nothing.
    pub bread_yeast: Option<Grams>,
    /// Where it stands.
    pub place: Span<Celsius>,
    /// Gas it may give. The cover lies loose, for shut in so little room that bursts a jar.
    pub gas: Litres,
    /// Read it from then.
    pub read_from: Moment,
    /// By then it has ended.
    pub ended_by: Moment,
    /// Read it a second time after so long; it has ended when the two agree.
    pub again_after: Hours,
    /// What to beware of, the dangerous first.
    pub traps: Vec<Trap>,
}

/// The card for a satellite set at `set`, to be read in a jar that takes `jar`.
///
/// ```
/// use fermentside::advice::{family::Family, pitch::satellite::{Trap, card}};
/// use fermentside::quantity::{Litres, Moment, SpecificGravity};
///
/// let set: Moment = "2026-03-01T12:00+00:00".parse().unwrap();
/// let of = |family| card(Litres::literal(0.2), family, SpecificGravity::literal(1.050), set);
/// let ale = of(Family::CleanAle)?;
/// assert_eq!(ale.wort, Litres::literal(0.2));
/// assert_eq!(ale.ended_by.local_text(), "2026-03-05T12:00");
/// // Bread yeast would say nothing of a yeast that eats dextrins.
/// let saison = of(Family::Saison)?;
/// assert_eq!((saison.bread_yeast, saison.traps[0]), (None, Trap::NeedsSameYeast));
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::OutOfRange`] for a wort that cannot be.
pub fn card(
    jar: Litres,
    family: Family,
    original: SpecificGravity,
    set: Moment,
) -> Result<Card, ScienceError> {
    let wort = Litres::new(jar.value().clamp(WORT.0, WORT.1))?;
    let dose = dry_yeast(family.pitching(), wort, sucrose::plato(original))?.by_maker;
    let yeast =
        Span::new(Grams::new(TIMES.0 * dose.from.value())?, Grams::new(TIMES.1 * dose.to.value())?);
    let same = family.may_go_on();
    let bread = Grams::new(BREAD_YEAST * wort.value())?;
    let mut traps = vec![
        Trap::Unmixed,
        Trap::TooLittleYeast,
        Trap::CoolPlace,
        Trap::ReadEarly,
        Trap::WildGrowth,
        Trap::LaterAdditions,
    ];
    if same {
        traps.insert(0, Trap::NeedsSameYeast);
    }
    let fall = original.points() - family.ends_at(original).from.points();
    Ok(Card {
        wort,
        fills_jar: wort >= jar,
        yeast,
        bread_yeast: (!same).then_some(bread),
        place: PLACE,
        gas: Litres::new((GAS_A_POINT * fall).max(0.0) * wort.value())?,
        read_from: set.after(ENDS.0),
        ended_by: set.after(ENDS.1),
        again_after: APART,
        traps,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(jar: f64, family: Family) -> Card {
        let set = "2026-04-01T18:00+01:00".parse().expect("a moment");
        card(Litres::literal(jar), family, SpecificGravity::literal(1.048), set).expect("in range")
    }

    #[test]
    fn a_small_jar_of_ale() {
        let found = of(0.24, Family::CleanAle);
        // 50 to 80 g/hL is 0.12 to 0.19 g in 240 mL; half a teaspoon is 1.5 g.
        assert!((found.yeast.from.value() - 0.6).abs() < 0.01);
        assert!((found.yeast.to.value() - 1.92).abs() < 0.01);
        assert_eq!(found.bread_yeast, Some(Grams::literal(1.5)));
        assert!((3.0..6.0).contains(&found.gas.value()), "{:?}", found.gas);
        assert!(found.read_from < found.ended_by && found.fills_jar);
    }

    #[test]
    fn the_wort_stays_between_what_is_enough_and_what_is_a_pity() {
        assert_eq!(of(0.05, Family::CleanAle).wort, Litres::literal(0.12));
        let large = of(0.4, Family::CleanAle);
        assert_eq!((large.wort, large.fills_jar), (Litres::literal(0.25), false));
    }

    #[test]
    fn a_yeast_that_goes_on_wants_its_own() {
        let found = of(0.2, Family::Saison);
        assert_eq!((found.bread_yeast, found.traps[0]), (None, Trap::NeedsSameYeast));
    }
}
