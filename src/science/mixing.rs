//! Why a sample and the ingredients tell two gravities, and how large each cause would have to be.

use super::hydrometer::Hydrometer;
use super::hydrometer_sample::{Condition, Sample, correct_wort};
use super::kit_gravity::KitGravity;
use super::root::rising_root;
use super::{Amount, Source, Term, Worked, sucrose};
use crate::quantity::{
    Celsius, Estimate, Gravity, GravityChange, HAIR, Litres, Measured, Share, SpecificGravity,
};

/// A gap larger than this wants a reason (common practice, no source).
pub const MATTERS: GravityChange = GravityChange::literal(0.004);
/// An imperial gallon in US gallons.
const GALLONS: f64 = 4.546_09 / 3.785_411_784;
/// A volume further out than this is no slip of the eye, unless it is the other gallon.
const SLIP: f64 = 0.3;

/// What the sample said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SampleGravity {
    /// Its gravity, corrected as far as was possible.
    pub gravity: Estimate<SpecificGravity>,
    /// Its temperature was read, so that the correction counts. If not, a warm sample is a cause.
    pub temperature_known: bool,
    /// Water that was added to the wort, if known; zero where none was.
    pub topped_up: Option<Litres>,
}

/// What would explain the gap by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cause {
    /// Top-up water lies unmixed on top and the sample came from below it.
    WaterOnTop {
        /// So much of it.
        layer: Litres,
        /// That part of the depth of an upright vessel.
        of_depth: Share,
    },
    /// Strong wort lies unmixed at the bottom and the sample came from above it.
    StrongBelow {
        /// So much of it, as strong as it was before the water; `None` when it is not known how much
        /// water was added.
        layer: Option<Litres>,
    },
    /// The sample was warm and its temperature was not counted.
    WarmSample {
        /// It would have been at this.
        would_be: Celsius,
    },
    /// The volume is another than the mark said.
    Volume {
        /// It would be this.
        would_be: Litres,
        /// That is what the other gallon gives: US for imperial, or imperial for US.
        other_gallon: bool,
    },
}

/// The two gravities side by side.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// Sample less ingredients.
    pub gap: Estimate<GravityChange>,
    /// They agree: the gap is no larger than [`MATTERS`].
    pub agrees: bool,
    /// The gap lies within two standard deviations, so that chance alone may be the cause.
    pub within_doubt: bool,
    /// What would explain a gap that matters, the likeliest first; empty when they agree, and when
    /// nothing here explains it (a share of extract or a mass that is wrong).
    pub causes: Vec<Cause>,
    /// How it was worked out.
    pub worked: Worked,
}

/// Compares the sample with the ingredients.
///
/// ```
/// use fermentside::quantity::{Estimate, Grams, Litres, SpecificGravity};
/// use fermentside::science::kit_gravity::{Fermentable, Ingredient, by_mark, gravity};
/// use fermentside::science::mixing::{Cause, SampleGravity, compare};
///
/// let sugar = [Ingredient::usual(Fermentable::Sucrose, Grams::literal(2500.0))];
/// let told = gravity(&sugar, by_mark(Litres::literal(20.0)))?;
/// let seen = |sg| SampleGravity {
///     gravity: Estimate::new(SpecificGravity::literal(sg), 0.001),
///     temperature_known: true,
///     topped_up: Some(Litres::literal(10.0)),
/// };
/// assert!(compare(&told, seen(1.048)).agrees);
/// let gap = compare(&told, seen(1.060));
/// assert!(matches!(gap.causes[0], Cause::WaterOnTop { .. }));
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
#[must_use]
pub fn compare(by_weight: &KitGravity, seen: SampleGravity) -> Comparison {
    let expected = by_weight.gravity;
    let (sample, told) = (seen.gravity.value().value(), expected.value().value());
    let gap = sample - told;
    let worked = Worked::default()
        .input(Term::CorrectedGravity, seen.gravity.value())
        .input(Term::OriginalGravity, expected.value())
        .step(Term::GravityGap, Amount::Points(1000.0 * gap), "sample − ingredients", None)
        .doubt(Term::ReadingError, seen.gravity.sigma())
        .doubt(Term::OriginalGravity, expected.sigma());
    let sigma = worked.sigma();
    // The last bits of a difference of two thousandths are not a gap.
    let agrees = gap.abs() <= MATTERS.value() + HAIR;
    let mut found = Comparison {
        gap: Estimate::new(GravityChange::nearest(gap), sigma),
        agrees,
        within_doubt: gap.abs() <= 2.0 * sigma,
        causes: vec![],
        worked,
    };
    if agrees {
        return found;
    }
    let mixing =
        if gap > 0.0 { water_on_top(by_weight, seen) } else { strong_below(by_weight, seen) };
    let warm = if seen.temperature_known || gap > 0.0 {
        None
    } else {
        warm_sample(seen.gravity.value(), expected.value())
    };
    found.causes = [mixing, warm, other_volume(by_weight, seen)].into_iter().flatten().collect();
    for cause in &found.causes {
        let (term, amount, formula) = match *cause {
            Cause::WaterOnTop { layer, .. } => {
                (Term::WaterToAdd, layer.into(), "V − extract ÷ extract by volume of the sample")
            }
            Cause::StrongBelow { layer: Some(layer) } => {
                (Term::BeerVolume, layer.into(), "(extract − V c) ÷ (c₀ − c)")
            }
            Cause::StrongBelow { layer: None } => continue,
            Cause::WarmSample { would_be } => {
                (Term::SampleTemperature, Amount::Temperature(would_be), "ρ(w, t) = ρ(t)")
            }
            Cause::Volume { would_be, .. } => {
                (Term::BeerVolume, would_be.into(), "extract ÷ extract by volume of the sample")
            }
        };
        found.worked = found.worked.step(term, amount, formula, Source::IcumsaSps4);
    }
    found
}

/// Grams of extract in a litre at 20 °C.
fn grams_a_litre(gravity: SpecificGravity) -> f64 {
    let w = sucrose::plato(gravity).value() / 100.0;
    w * sucrose::rho(w, 20.0)
}

fn water_on_top(by_weight: &KitGravity, seen: SampleGravity) -> Option<Cause> {
    let volume = by_weight.volume.value();
    let layer = volume - by_weight.extract.value() / grams_a_litre(seen.gravity.value());
    // There can't be more water on top than was put there; a mark is not that sure.
    let most = seen.topped_up.map_or(volume, |water| 1.1 * water.value());
    (layer <= most).then(|| Cause::WaterOnTop {
        layer: Litres::nearest(layer),
        of_depth: Share::nearest(layer / volume),
    })
}

fn strong_below(by_weight: &KitGravity, seen: SampleGravity) -> Option<Cause> {
    let Some(water) = seen.topped_up else {
        return Some(Cause::StrongBelow { layer: None });
    };
    let volume = by_weight.volume.value();
    let before = volume - water.value();
    if water.value() <= 0.0 || before <= 0.0 {
        return None;
    }
    let (extract, above) = (by_weight.extract.value(), grams_a_litre(seen.gravity.value()));
    let strong = extract / before;
    let layer = (extract - volume * above) / (strong - above);
    Some(Cause::StrongBelow { layer: Some(Litres::nearest(layer)) })
}

fn warm_sample(seen: SpecificGravity, expected: SpecificGravity) -> Option<Cause> {
    let corrected = |t: f64| -> f64 {
        let sample = Sample {
            reading: Gravity::Specific(seen),
            temperature: Celsius::nearest(t),
            condition: Condition::Still,
        };
        correct_wort(sample, &Hydrometer::USUAL)
            .map_or(f64::NAN, |found| found.gravity.value().value())
    };
    let hottest = 60.0;
    let reached = corrected(hottest) >= expected.value();
    let t = rising_root(20.0, hottest, |t| corrected(t) - expected.value());
    reached.then(|| Cause::WarmSample { would_be: Celsius::nearest(t) })
}

fn other_volume(by_weight: &KitGravity, seen: SampleGravity) -> Option<Cause> {
    let a_litre = grams_a_litre(seen.gravity.value());
    let would_be = Litres::new(by_weight.extract.value() / a_litre).ok()?;
    let times = would_be.value() / by_weight.volume.value();
    let other_gallon = [GALLONS, 1.0 / GALLONS].iter().any(|g| (times / g - 1.0).abs() < 0.04);
    // The last bits of a root are no slip.
    ((times - 1.0).abs() <= SLIP + HAIR).then_some(Cause::Volume { would_be, other_gallon })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Grams;
    use crate::science::kit_gravity::{Fermentable, Ingredient, by_mark, gravity};

    fn kit(litres: f64) -> KitGravity {
        let malt = [Ingredient::usual(Fermentable::DryMalt, Grams::literal(2700.0))];
        gravity(&malt, by_mark(Litres::literal(litres))).expect("in range")
    }

    fn seen(sg: f64, temperature_known: bool, water: Option<f64>) -> SampleGravity {
        SampleGravity {
            gravity: Estimate::new(SpecificGravity::literal(sg), 0.001),
            temperature_known,
            topped_up: water.map(Litres::literal),
        }
    }

    #[test]
    fn what_agrees_wants_no_cause() {
        let kit = kit(20.0);
        let found = compare(&kit, seen(kit.gravity.value().value() + 0.0039, true, None));
        assert!(found.agrees && found.causes.is_empty());
    }

    #[test]
    fn a_strong_sample_tells_how_much_water_lies_on_top() {
        // 10 L of strong wort with 4 L mixed in, 6 L still on top: the sample is that of 14 L.
        let strong = kit(14.0).gravity.value().value();
        let found = compare(&kit(20.0), seen(strong, true, Some(10.0)));
        let Some(Cause::WaterOnTop { layer, of_depth }) = found.causes.first() else {
            panic!("{found:?}")
        };
        assert!((layer.value() - 6.0).abs() < 0.01 && (of_depth.value() - 0.3).abs() < 0.001);
        // Only 2 L of water were added: 6 L of it can't lie on top.
        let little = compare(&kit(20.0), seen(strong, true, Some(2.0)));
        assert!(matches!(little.causes[..], [Cause::Volume { .. }]), "{little:?}");
    }

    #[test]
    fn a_weak_sample_tells_how_much_strong_wort_lies_below() {
        // 2 L of the strong wort (half the volume before the water) unmixed at the bottom.
        let strong = 2700.0 * 0.97 / 10.0;
        let above = (2700.0 * 0.97 - 2.0 * strong) / 18.0;
        let sg = gravity(
            &[Ingredient::usual(Fermentable::Sucrose, Grams::literal(above))],
            by_mark(Litres::literal(1.0)),
        )
        .expect("in range");
        let sg = sg.gravity.value().value();
        let found = compare(&kit(20.0), seen(sg, true, Some(10.0)));
        let Some(Cause::StrongBelow { layer: Some(layer) }) = found.causes.first() else {
            panic!("{found:?}")
        };
        assert!((layer.value() - 2.0).abs() < 0.01, "{layer:?}");
    }

    #[test]
    fn a_warm_sample_is_a_cause_only_when_its_temperature_was_not_counted() {
        let kit = kit(20.0);
        let hot = Sample {
            reading: Gravity::Specific(SpecificGravity::literal(1.043)),
            temperature: Celsius::literal(38.0),
            condition: Condition::Still,
        };
        let gap = correct_wort(hot, &Hydrometer::USUAL).expect("in range").gravity.value().value()
            - 1.043;
        let read = kit.gravity.value().value() - gap;
        let found = compare(&kit, seen(read, false, Some(0.0)));
        let Some(Cause::WarmSample { would_be }) = found.causes.first() else {
            panic!("{found:?}")
        };
        assert!((would_be.value() - 38.0).abs() < 0.5, "{would_be:?}");
        let counted = compare(&kit, seen(read, true, Some(0.0)));
        assert!(matches!(counted.causes[..], [Cause::Volume { .. }]));
    }

    #[test]
    fn the_other_gallon_is_named() {
        let by_us = kit(5.0 * 3.785_411_784);
        let imperial = kit(5.0 * 4.546_09).gravity.value().value();
        let found = compare(&by_us, seen(imperial, true, Some(0.0)));
        assert!(
            matches!(found.causes[..], [Cause::Volume { other_gallon: true, .. }]),
            "{found:?}"
        );
    }
}
