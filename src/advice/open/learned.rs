//! What a batch has taught: predicted against actual, and what might be set differently next time.
//!
//! Offered and never applied. A dose is never said to be too small while the bottles may only be young,
//! and gushing is looked into before a target is touched.

use crate::advice::family::{Family, Span};
use crate::advice::practice::GREEN;
use crate::quantity::{
    Attenuation, CarbonDioxideVolumes, Estimate, GravityChange, Hours, Litres, Measured, Share,
    SpecificGravity,
};

/// So many bottles make a pattern.
const A_FEW: usize = 2;
/// A step of the target that is worth a change.
const STEP: f64 = 0.2;
/// A loss up to this is usual: sediment and the sample jar (common practice, no source).
const USUAL_LOSS: Share = Share::literal(0.08);

/// What was foreseen, and what came.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Wished carbon dioxide.
    pub target: CarbonDioxideVolumes,
    /// What should be in the bottles by what was weighed.
    pub expected: CarbonDioxideVolumes,
    /// Fizz of each opened bottle, one to five, with its age.
    pub fizz: Vec<(u8, Hours)>,
    /// In the fermenter.
    pub fermenter: Litres,
    /// In the bottling vessel.
    pub bottled: Litres,
    /// The yeast.
    pub family: Family,
    /// Apparent attenuation, with one standard deviation.
    pub attenuation: Option<Estimate<Attenuation>>,
    /// Gravity at bottling.
    pub end: Option<Estimate<SpecificGravity>>,
    /// The end that kit or recipe stated.
    pub stated_end: Option<SpecificGravity>,
}

/// What was learned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lesson {
    /// Too few ripe bottles to say anything of the fizz.
    TooFewBottles {
        /// Ripe ones.
        have: usize,
    },
    /// The fizz is right for what was expected.
    FizzRight(CarbonDioxideVolumes),
    /// A little too lively: this target next time.
    TooLively {
        /// What was expected.
        expected: CarbonDioxideVolumes,
        /// To try.
        next: CarbonDioxideVolumes,
    },
    /// A little too flat: this target next time.
    TooFlat {
        /// What was expected.
        expected: CarbonDioxideVolumes,
        /// To try.
        next: CarbonDioxideVolumes,
    },
    /// Some gush: find out why before a target is touched.
    Gushes,
    /// Some are flat: find out why before more sugar is thought of.
    Flat,
    /// Bottles of one batch that differ this much were not mixed evenly, or not sealed evenly.
    Uneven,
    /// More was lost on the way to the bottles than is usual.
    Lost {
        /// So much.
        lost: Litres,
        /// Of what was in the fermenter.
        share: Share,
    },
    /// Usual losses.
    LostUsual(Litres),
    /// It went further than this yeast is expected to.
    WentFurther(Attenuation, Span<Attenuation>),
    /// It stopped short of what this yeast is expected to reach.
    StoppedShort(Attenuation, Span<Attenuation>),
    /// Inside what this yeast is expected to reach.
    AttenuatedAsExpected(Attenuation),
    /// It ended this far from the stated end; state this one next time.
    StatedEnd {
        /// Above (or below) the stated one.
        off: GravityChange,
        /// Where it ended.
        next: SpecificGravity,
    },
}

/// What the batch has taught, the bottles first.
///
/// ```
/// use fermentside::advice::{family::Family, open::learned::{Lesson, Outcome, lessons}};
/// use fermentside::quantity::{CarbonDioxideVolumes, Hours, Litres};
///
/// let (expected, age) = (CarbonDioxideVolumes::literal(2.4), Hours::literal(21.0 * 24.0));
/// let first = |fizz: Vec<(u8, Hours)>| lessons(&Outcome {
///     target: expected,
///     expected,
///     fizz,
///     fermenter: Litres::literal(23.0),
///     bottled: Litres::literal(21.5),
///     family: Family::CleanAle,
///     attenuation: None,
///     end: None,
///     stated_end: None,
/// })[0];
/// assert_eq!(first(vec![(3, age), (3, age)]), Lesson::FizzRight(expected));
/// assert_eq!(first(vec![(1, age)]), Lesson::TooFewBottles { have: 1 });
/// assert_eq!(first(vec![(5, age)]), Lesson::Gushes);
/// ```
#[must_use]
pub fn lessons(outcome: &Outcome) -> Vec<Lesson> {
    let mut lessons = fizz(outcome);
    let (had, got) = (outcome.fermenter.value(), outcome.bottled.value());
    if had > 0.0 && got <= had {
        let lost = Litres::nearest(had - got);
        let share = Share::nearest((had - got) / had);
        let usual = share <= USUAL_LOSS;
        lessons.push(if usual { Lesson::LostUsual(lost) } else { Lesson::Lost { lost, share } });
    }
    if let Some(found) = outcome.attenuation {
        let expected = outcome.family.attenuates();
        lessons.push(if found.lower(2.0) > expected.to {
            Lesson::WentFurther(found.value(), expected)
        } else if found.upper(2.0) < expected.from {
            Lesson::StoppedShort(found.value(), expected)
        } else {
            Lesson::AttenuatedAsExpected(found.value())
        });
    }
    if let (Some(end), Some(stated)) = (outcome.end, outcome.stated_end) {
        let off = end.value().value() - stated.value();
        if off.abs() > 0.002 + 2.0 * end.sigma() {
            lessons.push(Lesson::StatedEnd { off: GravityChange::nearest(off), next: end.value() });
        }
    }
    lessons
}

fn fizz(outcome: &Outcome) -> Vec<Lesson> {
    let ripe = || outcome.fizz.iter().filter(|(_, age)| *age >= GREEN).map(|(fizz, _)| *fizz);
    let have = ripe().count();
    // A gusher is believed at any age.
    if outcome.fizz.iter().any(|(fizz, _)| *fizz >= 5) {
        return vec![Lesson::Gushes];
    }
    if have < A_FEW {
        return vec![Lesson::TooFewBottles { have }];
    }
    let (least, most) = (ripe().min().unwrap_or(0), ripe().max().unwrap_or(0));
    if most - least >= 2 {
        return vec![Lesson::Uneven];
    }
    let mean = ripe().map(f64::from).sum::<f64>() / have as f64;
    let expected = outcome.expected;
    let target = |change: f64| CarbonDioxideVolumes::nearest(outcome.target.value() + change);
    vec![if mean < 1.5 {
        Lesson::Flat
    } else if mean < 2.5 {
        Lesson::TooFlat { expected, next: target(STEP) }
    } else if mean <= 3.5 {
        Lesson::FizzRight(expected)
    } else {
        Lesson::TooLively { expected, next: target(-STEP) }
    }]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outcome(fizz: &[u8], days: f64) -> Outcome {
        Outcome {
            target: CarbonDioxideVolumes::literal(2.4),
            expected: CarbonDioxideVolumes::literal(2.4),
            fizz: fizz.iter().map(|fizz| (*fizz, Hours::literal(days * 24.0))).collect(),
            fermenter: Litres::literal(20.0),
            bottled: Litres::literal(19.0),
            family: Family::CleanAle,
            attenuation: Some(Estimate::new(Attenuation::literal(76.0), 1.0)),
            end: Some(Estimate::new(SpecificGravity::literal(1.011), 0.001)),
            stated_end: Some(SpecificGravity::literal(1.012)),
        }
    }

    fn first(fizz: &[u8], days: f64) -> Option<Lesson> {
        lessons(&outcome(fizz, days)).first().copied()
    }

    #[test]
    fn a_dose_is_judged_by_a_few_ripe_bottles() {
        assert_eq!(first(&[3], 20.0), Some(Lesson::TooFewBottles { have: 1 }));
        assert_eq!(first(&[1, 1], 5.0), Some(Lesson::TooFewBottles { have: 0 }));
        let expected = CarbonDioxideVolumes::literal(2.4);
        assert_eq!(first(&[3, 3], 20.0), Some(Lesson::FizzRight(expected)));
        let next = |volumes| CarbonDioxideVolumes::nearest(volumes);
        assert_eq!(
            first(&[2, 2, 2], 20.0),
            Some(Lesson::TooFlat { expected, next: next(2.4 + STEP) })
        );
        assert_eq!(
            first(&[4, 4], 20.0),
            Some(Lesson::TooLively { expected, next: next(2.4 - STEP) })
        );
        assert_eq!(first(&[2, 4], 20.0), Some(Lesson::Uneven));
        assert_eq!(first(&[1, 1], 20.0), Some(Lesson::Flat));
    }

    #[test]
    fn gushing_is_never_answered_with_a_target() {
        assert_eq!(first(&[3, 3, 5], 20.0), Some(Lesson::Gushes));
        assert_eq!(first(&[5], 5.0), Some(Lesson::Gushes));
    }

    #[test]
    fn losses_and_the_end_are_told() {
        let told = lessons(&Outcome {
            bottled: Litres::literal(17.0),
            attenuation: Some(Estimate::new(Attenuation::literal(62.0), 1.0)),
            end: Some(Estimate::new(SpecificGravity::literal(1.018), 0.0005)),
            ..outcome(&[3, 3], 20.0)
        });
        let lost = Lesson::Lost { lost: Litres::literal(3.0), share: Share::literal(0.15) };
        assert_eq!(told.get(1), Some(&lost));
        assert!(matches!(told.get(2), Some(Lesson::StoppedShort(..))), "{told:?}");
        assert!(matches!(told.get(3), Some(Lesson::StatedEnd { .. })), "{told:?}");
        let usual = lessons(&outcome(&[3, 3], 20.0));
        assert!(matches!(usual.get(2), Some(Lesson::AttenuatedAsExpected(_))), "{usual:?}");
        assert_eq!(usual.len(), 3);
    }
}
