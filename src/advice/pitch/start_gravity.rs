//! Which starting gravity to believe when sample and ingredients are both known, and what to do first
//! when they differ.

use crate::advice::{Advice, Verdict};
use crate::quantity::{Estimate, Grams, GravityChange, Litres, Measured, SpecificGravity};
use crate::science::heat::melted;
use crate::science::kit_gravity::KitGravity;
use crate::science::mixing::{Cause, Comparison, SampleGravity, compare};

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// They agree; sample less ingredients.
    Agree(GravityChange),
    /// They differ by more than can be passed over; sample less ingredients.
    Differ(GravityChange),
    /// The two doubts together could make such a gap by chance.
    MayBeChance,
    /// This would explain it.
    Explains(Cause),
    /// Nothing here explains it: a mass, a share of extract, or the instrument.
    Unexplained,
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next {
    /// Go by the sample.
    GoBySample,
    /// Go by the ingredients.
    GoByIngredients,
    /// Stir hard for some minutes and read a sample from the middle. No malt and no water until then.
    StirAndReadAgain,
    /// Read the temperature of the sample, or cool it, and read again.
    ReadWithTemperature,
    /// Look at the volume again, and which gallon it is in.
    ReadVolumeAgain,
    /// Look at what was weighed again, and check the hydrometer in water.
    CheckWeightsAndInstrument,
}

/// The judgement, and the gravity to go by until something better is read.
#[derive(Clone, Debug, PartialEq)]
pub struct Start {
    /// `Go` when they agree, `Wait` when one more look will tell, `CantTell` when nothing explains it.
    pub advice: Advice<Reason, Next>,
    /// The two side by side.
    pub comparison: Comparison,
    /// The gravity to go by for now: the surer of two that agree, else the ingredients', for weights
    /// do not lie in layers.
    pub meanwhile: Estimate<SpecificGravity>,
}

/// One standard deviation of a start that kit or recipe states (common practice, no source).
pub const STATED: GravityChange = GravityChange::literal(0.003);

crate::choices! {
    /// Which gravity the batch goes by. The other is kept beside it.
    #[derive(Default)]
    pub enum GoesBy {
        /// The sample's reading, if there is one.
        #[default]
        Sample = "sample",
        /// What was weighed in, if that is noted.
        Ingredients = "ingredients",
    }
}

/// What a starting gravity goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OriginalFrom {
    /// The sample's reading.
    Sample,
    /// What was weighed in.
    Ingredients,
    /// What kit or recipe states.
    Stated,
}

/// All that tells of a start.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Known {
    /// By the sample, made true.
    pub sample: Option<Estimate<SpecificGravity>>,
    /// By what was weighed in.
    pub ingredients: Option<Estimate<SpecificGravity>>,
    /// What kit or recipe states.
    pub stated: Option<SpecificGravity>,
}

/// The starting gravity to go by, and what it comes from: the one that was chosen, else the other, else
/// what is stated, with [`STATED`] as its doubt; `None` when nothing is known.
///
/// ```
/// use fermentside::advice::pitch::start_gravity::{GoesBy, Known, OriginalFrom, start};
/// use fermentside::quantity::{Estimate, SpecificGravity};
///
/// let sg = |sg| Estimate::new(SpecificGravity::literal(sg), 0.001);
/// let known = Known { sample: Some(sg(1.048)), stated: Some(SpecificGravity::literal(1.050)), ..Known::default() };
/// // The ingredients were not noted.
/// assert_eq!(start(known, GoesBy::Ingredients), Some((sg(1.048), OriginalFrom::Sample)));
/// let both = Known { ingredients: Some(sg(1.051)), ..known };
/// assert_eq!(start(both, GoesBy::Ingredients), Some((sg(1.051), OriginalFrom::Ingredients)));
/// assert_eq!(start(Known::default(), GoesBy::Sample), None);
/// ```
#[must_use]
pub fn start(known: Known, goes_by: GoesBy) -> Option<(Estimate<SpecificGravity>, OriginalFrom)> {
    let sample = known.sample.map(|gravity| (gravity, OriginalFrom::Sample));
    let ingredients = known.ingredients.map(|gravity| (gravity, OriginalFrom::Ingredients));
    let chosen = match goes_by {
        GoesBy::Sample => sample.or(ingredients),
        GoesBy::Ingredients => ingredients.or(sample),
    };
    let stated = |sg| (Estimate::new(sg, STATED.value()), OriginalFrom::Stated);
    chosen.or_else(|| known.stated.map(stated))
}

/// Water that was added to the wort, ice counted as what it melts to; `None` where neither is known.
///
/// ```
/// use fermentside::advice::pitch::start_gravity::topped_up;
/// use fermentside::quantity::{Grams, Litres};
///
/// let (water, ice) = (Some(Litres::literal(10.0)), Some(Grams::literal(2000.0)));
/// assert_eq!(topped_up(water, ice), Some(Litres::literal(12.0)));
/// assert_eq!(topped_up(None, ice), Some(Litres::literal(2.0)));
/// assert_eq!(topped_up(None, None), None);
/// ```
#[must_use]
pub fn topped_up(water: Option<Litres>, ice: Option<Grams>) -> Option<Litres> {
    let Some(ice) = ice else { return water };
    Some(Litres::nearest(water.map_or(0.0, Measured::value) + melted(ice).value()))
}

/// Judges the start.
///
/// ```
/// use fermentside::advice::pitch::start_gravity::{Next, judge};
/// use fermentside::quantity::{Estimate, Grams, Litres, SpecificGravity};
/// use fermentside::science::kit_gravity::{Fermentable, Ingredient, by_mark, gravity};
/// use fermentside::science::mixing::SampleGravity;
///
/// let sugar = [Ingredient::usual(Fermentable::Sucrose, Grams::literal(2500.0))];
/// let told = gravity(&sugar, by_mark(Litres::literal(20.0)))?;
/// let next = |sg| judge(&told, SampleGravity {
///     gravity: Estimate::new(SpecificGravity::literal(sg), 0.001),
///     temperature_known: true,
///     topped_up: Some(Litres::literal(10.0)),
/// }).advice.next;
/// assert_eq!(next(1.048), Next::GoBySample);
/// assert_eq!(next(1.060), Next::StirAndReadAgain);
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
#[must_use]
pub fn judge(by_weight: &KitGravity, seen: SampleGravity) -> Start {
    let comparison = compare(by_weight, seen);
    let gap = comparison.gap.value();
    let sample_is_surer = seen.gravity.sigma() <= by_weight.gravity.sigma();
    let (verdict, reasons, next) = if comparison.agrees {
        let next = if sample_is_surer { Next::GoBySample } else { Next::GoByIngredients };
        (Verdict::Go, vec![Reason::Agree(gap)], next)
    } else {
        let mut reasons = vec![Reason::Differ(gap)];
        reasons.extend(comparison.within_doubt.then_some(Reason::MayBeChance));
        reasons.extend(comparison.causes.iter().copied().map(Reason::Explains));
        match comparison.causes.first() {
            Some(Cause::WaterOnTop { .. } | Cause::StrongBelow { .. }) => {
                (Verdict::Wait, reasons, Next::StirAndReadAgain)
            }
            Some(Cause::WarmSample { .. }) => (Verdict::Wait, reasons, Next::ReadWithTemperature),
            Some(Cause::Volume { .. }) => (Verdict::Wait, reasons, Next::ReadVolumeAgain),
            None => {
                reasons.push(Reason::Unexplained);
                (Verdict::CantTell, reasons, Next::CheckWeightsAndInstrument)
            }
        }
    };
    let meanwhile =
        if comparison.agrees && sample_is_surer { seen.gravity } else { by_weight.gravity };
    let worked = comparison.worked.clone();
    Start { advice: Advice { verdict, reasons, next, worked }, comparison, meanwhile }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Grams, Litres, Measured};
    use crate::science::kit_gravity::{Fermentable, Ingredient, by_mark, gravity};

    fn start(sample: f64, topped_up: f64) -> Start {
        let syrup = [Ingredient::usual(Fermentable::MaltSyrup, Grams::literal(3000.0))];
        let kit = gravity(&syrup, by_mark(Litres::literal(19.0))).expect("in range");
        judge(
            &kit,
            SampleGravity {
                gravity: Estimate::new(SpecificGravity::literal(sample), 0.001),
                temperature_known: true,
                topped_up: Some(Litres::literal(topped_up)),
            },
        )
    }

    #[test]
    fn the_surer_of_two_that_agree_is_believed() {
        // 3 kg of syrup in 19 L is 1.048.
        let found = start(1.049, 9.0);
        assert_eq!((found.advice.verdict, found.advice.next), (Verdict::Go, Next::GoBySample));
        assert_eq!(found.meanwhile.value().value(), 1.049);
    }

    #[test]
    fn layers_are_stirred_before_anything_is_believed() {
        for sample in [1.070, 1.036] {
            let found = start(sample, 9.0);
            assert_eq!(found.advice.verdict, Verdict::Wait, "{sample}");
            assert_eq!(found.advice.next, Next::StirAndReadAgain, "{sample}");
            assert!((found.meanwhile.value().value() - 1.048).abs() < 0.001);
        }
    }

    #[test]
    fn what_nothing_explains_is_said_to_be_so() {
        // No water was added, and no slip of the eye makes half of it.
        let found = start(1.022, 0.0);
        assert_eq!(found.advice.verdict, Verdict::CantTell);
        assert!(found.advice.reasons.contains(&Reason::Unexplained));
    }
}
