//! A hydrometer: what its marks mean, and what its checks in water and in sugar add to them.
//!
//! One point gives one correction for the whole scale. With two, the correction is straight between
//! their marks and held beyond them: a slip of paper in the stem moves every mark alike, a wrong scale
//! does not, and nothing is known outside what was tried.

use super::{ScienceError, sucrose};
use crate::quantity::{
    Celsius, Grams, Gravity, GravityChange, Measured, Plato, Share, SpecificGravity,
};
use serde::{Deserialize, Serialize};

/// Cubic expansion of hydrometer glass, per °C (ISO 1768:1975).
pub(super) const GLASS: f64 = 25e-6;

/// Coldest and warmest sample that is corrected at all.
pub(super) const SAMPLE: (Celsius, Celsius) = (Celsius::literal(0.0), Celsius::literal(60.0));

/// The two marks must lie so far apart for a line between them to mean anything.
const APART: f64 = 0.010;

/// One instrument.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Hydrometer {
    /// The temperature it was made for, as printed on its paper.
    pub reference: Celsius,
    /// The step between two lines of its scale.
    pub division: GravityChange,
    /// What to add to its readings, from a check in water: 1.000 less what it showed.
    pub offset: GravityChange,
    /// A second check, in a weighed sugar solution.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sugar: Option<SugarCheck>,
}

impl Hydrometer {
    /// The usual one: made for 20 °C, lines every 0.002, not checked.
    pub const USUAL: Self = Self {
        reference: Celsius::literal(20.0),
        division: GravityChange::literal(0.002),
        offset: GravityChange::literal(0.0),
        sugar: None,
    };
}

/// A check in a weighed solution of table sugar, as it was done: nothing worked out is kept.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SugarCheck {
    /// Dry table sugar.
    pub sugar: Grams,
    /// Water it was dissolved in.
    pub water: Grams,
    /// What the instrument showed.
    pub shown: Gravity,
    /// Of the solution in the jar.
    pub temperature: Celsius,
}

impl SugarCheck {
    /// What a true instrument made for `reference` shows in it.
    ///
    /// # Errors
    /// As [`reading_in_solution`]; [`ScienceError::NothingThere`] without sugar or water.
    pub fn should_show(&self, reference: Celsius) -> Result<SpecificGravity, ScienceError> {
        let strength = by_weight(self.sugar, self.water)?;
        let plato = Plato::new(100.0 * strength.value())?;
        reading_in_solution(plato, self.temperature, reference)
    }
}

/// Share by weight of so much sugar in so much water.
///
/// ```
/// use fermentside::quantity::{Grams, Share};
/// use fermentside::science::hydrometer::by_weight;
///
/// let found = by_weight(Grams::literal(30.0), Grams::literal(220.0));
/// assert_eq!(found, Ok(Share::literal(0.12)));
/// assert!(by_weight(Grams::literal(30.0), Grams::literal(0.0)).is_err());
/// ```
///
/// # Errors
/// [`ScienceError::NothingThere`] without sugar or water.
pub fn by_weight(sugar: Grams, water: Grams) -> Result<Share, ScienceError> {
    if sugar.value() <= 0.0 || water.value() <= 0.0 {
        return Err(ScienceError::NothingThere);
    }
    Ok(Share::new(sugar.value() / (sugar.value() + water.value()))?)
}

/// The mark a true instrument made for `reference` stands at in a sugar solution of `t`; plain water
/// is a solution of 0 °P.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured, Plato};
/// use fermentside::science::hydrometer::reading_in_solution;
///
/// // ICUMSA SPS-4: 12 % by weight is 1.04839.
/// let at_20 = Celsius::literal(20.0);
/// let shown = reading_in_solution(Plato::literal(12.0), at_20, at_20)?;
/// assert_eq!(format!("{:.4}", shown.value()), "1.0484");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 60 °C, [`ScienceError::OutOfRange`] above 1.2.
pub fn reading_in_solution(
    extract: Plato,
    t: Celsius,
    reference: Celsius,
) -> Result<SpecificGravity, ScienceError> {
    let (min, max) = SAMPLE;
    for given in [t, reference] {
        if !(min..=max).contains(&given) {
            return Err(ScienceError::Temperature { given, min, max });
        }
    }
    let w = extract.value() / 100.0;
    let (t, t_ref) = (t.value(), reference.value());
    let rho = sucrose::rho(w, t) * (1.0 + GLASS * (t - t_ref));
    Ok(SpecificGravity::new(sucrose::sg_of_rho(rho, t_ref))?)
}

/// What an unchecked reading in pure water at `t` should be: the mark that the surface stands at when
/// the instrument is true.
///
/// ```
/// use fermentside::quantity::{Celsius, Measured};
/// use fermentside::science::hydrometer::reading_in_water;
///
/// let warm = reading_in_water(Celsius::literal(30.0), Celsius::literal(20.0))?;
/// assert_eq!(format!("{:.4}", warm.value()), "0.9977");
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// [`ScienceError::Temperature`] outside 0 to 60 °C.
pub fn reading_in_water(t: Celsius, reference: Celsius) -> Result<SpecificGravity, ScienceError> {
    reading_in_solution(Plato::literal(0.0), t, reference)
}

/// A gravity as a mark on a scale in specific gravity: a Plato stick is marked for that extract at its
/// own temperature.
pub(super) fn on_scale(gravity: Gravity, reference: Celsius) -> f64 {
    match gravity {
        Gravity::Specific(sg) => sg.value(),
        Gravity::Plato(plato) => sucrose::sg_at(plato.value() / 100.0, reference.value()),
    }
}

/// What is added to this mark of this instrument.
///
/// Through water alone: the offset. Through water and sugar: straight between the marks that were
/// shown, held beyond. A sugar check that means nothing (no sugar, too near to water, too hot) is
/// passed over.
///
/// ```
/// use fermentside::quantity::{Gravity, GravityChange, SpecificGravity};
/// use fermentside::science::hydrometer::{Hydrometer, correction};
///
/// let offset = GravityChange::literal(0.002);
/// let by = Hydrometer { offset, ..Hydrometer::USUAL };
/// assert_eq!(correction(&by, Gravity::Specific(SpecificGravity::literal(1.048))), offset);
/// ```
#[must_use]
pub fn correction(by: &Hydrometer, shown: Gravity) -> GravityChange {
    let mark = on_scale(shown, by.reference);
    let in_water = by.offset.value();
    let water_mark = 1.0 - in_water;
    let Some((sugar_mark, in_sugar)) = by.sugar.and_then(|check| {
        let sugar_mark = on_scale(check.shown, by.reference);
        let should = check.should_show(by.reference).ok()?.value();
        (sugar_mark - water_mark >= APART).then_some((sugar_mark, should - sugar_mark))
    }) else {
        return by.offset;
    };
    let along = ((mark - water_mark) / (sugar_mark - water_mark)).clamp(0.0, 1.0);
    GravityChange::nearest(in_water + along * (in_sugar - in_water))
}
