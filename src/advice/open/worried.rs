//! Something is wrong with the bottles: the hazard first, the diagnosis after it.
//!
//! The steps are for glass that may be over-pressured, in the order in which they are safe; the causes
//! are in the order of how likely they are, given what the record says (all common practice, no source).

use crate::advice::practice::{COOL_PLACE, GREEN};
use crate::quantity::{CarbonDioxideVolumes, Celsius, Hours, Measured};
use crate::science::bottle_pressure::Closing;

/// Yeast that has sat cold and strong beer grow tired after this (common practice, no source).
const OLD: Hours = Hours::literal(90.0 * 24.0);

crate::choices! {
    /// What is seen.
    pub enum Symptom {
        /// One has burst.
        OneBurst = "one_burst",
        /// All of them gush.
        GushingAll = "gushing_all",
        /// Some gush.
        GushingSome = "gushing_some",
        /// All are flat.
        FlatAll = "flat_all",
        /// Some are flat.
        FlatSome = "flat_some",
    }
}

impl Symptom {
    /// Whether the glass may hurt somebody.
    #[must_use]
    pub const fn is_hazard(self) -> bool {
        matches!(self, Self::OneBurst | Self::GushingAll | Self::GushingSome)
    }
}

/// One thing to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Action {
    /// Go away from them, and keep others, children and pets away.
    KeepAway,
    /// If one burst, the rest may.
    AssumeTheRest,
    /// Eyes, face and hands covered, long sleeves, before going near.
    Cover,
    /// Keep the case closed or under a lid; carry nothing loose; do not shake.
    KeepClosed,
    /// Chill them all, as cold as can be had without freezing, for two days.
    ChillAll,
    /// Cold, one at a time, under a cloth, let each cap go slowly, twice if needed.
    Vent,
    /// If it cannot be made safe, leave it cold and covered.
    LeaveCold,
    /// Stand them in a warm room.
    Warm,
    /// Turn each over once.
    TurnOver,
    /// Chill one for two days and try it a week later.
    TestOne,
    /// No sugar into every bottle until one that was kept warm has failed.
    NoMoreSugar,
}

/// What to do with glass that may hold too much, in this order.
pub const MAKE_SAFE: [Action; 6] = [
    Action::KeepAway,
    Action::Cover,
    Action::KeepClosed,
    Action::ChillAll,
    Action::Vent,
    Action::LeaveCold,
];
/// The same after one has burst.
const AFTER_A_BURST: [Action; 7] = [
    Action::KeepAway,
    Action::AssumeTheRest,
    Action::Cover,
    Action::KeepClosed,
    Action::ChillAll,
    Action::Vent,
    Action::LeaveCold,
];
/// What to do with flat bottles.
const WAKE: [Action; 4] = [Action::Warm, Action::TurnOver, Action::TestOne, Action::NoMoreSugar];

/// What may be behind it. What would tell stands with its words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// It had not finished: the gravity in a bottle is lower than at bottling.
    Unfinished,
    /// Too much sugar for the volume.
    OverDosed,
    /// Wild yeast, bacteria or a yeast that goes on: worse by the week, thinner and often sour.
    GoesOn,
    /// The glass itself: chipped, scratched, thin.
    WeakGlass,
    /// The sugar was not mixed evenly.
    UnevenMixing,
    /// Those bottles were dirty.
    DirtyBottles,
    /// Warm or young: the gas is not in the beer yet.
    WarmOrYoung,
    /// Too young.
    TooYoung,
    /// They stand too cold.
    TooCold,
    /// Not chilled long enough before it was opened.
    NotChilled,
    /// Caps or seals leak.
    Caps,
    /// Too little sugar, or counted on gas that was not there.
    UnderDosed,
    /// The yeast is tired after a long, cold or strong time.
    TiredYeast,
}

/// What the record says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Facts {
    /// Since they were filled.
    pub age: Hours,
    /// Where they stand; `None` when nobody noted it.
    pub place: Option<Celsius>,
    /// At worst, as judged on the day.
    pub worst: CarbonDioxideVolumes,
    /// As it should be, by what was weighed.
    pub expected: CarbonDioxideVolumes,
    /// What was wished for.
    pub target: CarbonDioxideVolumes,
    /// The ceiling of the weakest bottle; `None` for one that must not be filled.
    pub ceiling: Option<CarbonDioxideVolumes>,
    /// The log showed that it was finished.
    pub was_finished: bool,
    /// The yeast may go on for weeks.
    pub yeast_may_go_on: bool,
    /// How they are closed.
    pub closing: Closing,
}

/// What to do and what to look for.
#[derive(Clone, Debug, PartialEq)]
pub struct Help {
    /// In order.
    pub steps: Vec<Action>,
    /// The likeliest first.
    pub causes: Vec<Cause>,
}

/// Steps and causes for what is seen.
///
/// ```
/// use fermentside::advice::open::worried::{Cause, Facts, MAKE_SAFE, Symptom, help};
/// use fermentside::quantity::{CarbonDioxideVolumes, Hours};
/// use fermentside::science::bottle_pressure::Closing;
///
/// let gas = CarbonDioxideVolumes::literal;
/// let facts = Facts {
///     age: Hours::literal(30.0 * 24.0),
///     place: None,
///     worst: gas(3.1),
///     expected: gas(2.4),
///     target: gas(2.4),
///     ceiling: Some(gas(3.3)),
///     was_finished: false,
///     yeast_may_go_on: false,
///     closing: Closing::USUAL,
/// };
/// let found = help(Symptom::GushingAll, &facts);
/// assert_eq!((found.steps, found.causes[0]), (MAKE_SAFE.to_vec(), Cause::Unfinished));
/// ```
#[must_use]
pub fn help(symptom: Symptom, facts: &Facts) -> Help {
    let steps = match symptom {
        Symptom::OneBurst => AFTER_A_BURST.to_vec(),
        Symptom::GushingAll | Symptom::GushingSome => MAKE_SAFE.to_vec(),
        Symptom::FlatAll | Symptom::FlatSome => WAKE.to_vec(),
    };
    Help { steps, causes: causes(symptom, facts) }
}

fn causes(symptom: Symptom, facts: &Facts) -> Vec<Cause> {
    let cold = facts.place.is_some_and(|t| t < COOL_PLACE);
    let young = facts.age < GREEN;
    // More than two tenths beside the wish is the dose's doing.
    let over = facts.expected.value() > facts.target.value() + 0.2;
    let under = facts.expected.value() < facts.target.value() - 0.2;
    let usual: &[Cause] = match symptom {
        Symptom::OneBurst => &[
            Cause::Unfinished,
            Cause::OverDosed,
            Cause::WeakGlass,
            Cause::UnevenMixing,
            Cause::GoesOn,
        ],
        Symptom::GushingAll => {
            &[Cause::Unfinished, Cause::OverDosed, Cause::GoesOn, Cause::WarmOrYoung]
        }
        Symptom::GushingSome => &[
            Cause::UnevenMixing,
            Cause::DirtyBottles,
            Cause::GoesOn,
            Cause::Unfinished,
            Cause::WarmOrYoung,
        ],
        Symptom::FlatAll => &[
            Cause::TooYoung,
            Cause::TooCold,
            Cause::NotChilled,
            Cause::Caps,
            Cause::UnderDosed,
            Cause::TiredYeast,
        ],
        Symptom::FlatSome => {
            &[Cause::Caps, Cause::UnevenMixing, Cause::TooYoung, Cause::TooCold, Cause::NotChilled]
        }
    };
    // What the record points to comes first; what it rules out goes last and is not dropped.
    let weight = |cause: Cause| match cause {
        Cause::GoesOn if facts.yeast_may_go_on => 0,
        Cause::Unfinished if !facts.was_finished => 0,
        Cause::OverDosed if over => 0,
        Cause::UnderDosed if under => 0,
        Cause::TooCold if cold => 0,
        Cause::TiredYeast if facts.age > OLD => 0,
        Cause::TooYoung | Cause::WarmOrYoung if !young => 2,
        Cause::TooCold if facts.place.is_some() => 2,
        _ => 1,
    };
    crate::order::in_order(usual.to_vec(), |a, b| weight(*a).cmp(&weight(*b)))
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// Sound bottles of a month in a room.
    pub const FACTS: Facts = Facts {
        age: Hours::literal(30.0 * 24.0),
        place: Some(Celsius::literal(21.0)),
        worst: CarbonDioxideVolumes::literal(3.1),
        expected: CarbonDioxideVolumes::literal(2.4),
        target: CarbonDioxideVolumes::literal(2.4),
        ceiling: Some(CarbonDioxideVolumes::literal(3.3)),
        was_finished: true,
        yeast_may_go_on: false,
        closing: Closing::USUAL,
    };

    #[test]
    fn the_hazard_comes_first_and_nothing_is_vented_warm() {
        for symptom in Symptom::ALL.into_iter().filter(|s| s.is_hazard()) {
            let steps = help(symptom, &FACTS).steps;
            let place = |step| steps.iter().position(|other| *other == step).expect("a step");
            assert_eq!(place(Action::KeepAway), 0, "{symptom:?}");
            assert!(place(Action::Cover) < place(Action::KeepClosed));
            assert!(place(Action::KeepClosed) < place(Action::ChillAll));
            assert!(place(Action::ChillAll) < place(Action::Vent));
            assert_eq!(steps.last(), Some(&Action::LeaveCold));
        }
        assert!(help(Symptom::OneBurst, &FACTS).steps.contains(&Action::AssumeTheRest));
    }

    #[test]
    fn flat_bottles_get_no_sugar_before_a_warm_one_has_failed() {
        for symptom in [Symptom::FlatAll, Symptom::FlatSome] {
            let steps = help(symptom, &FACTS).steps;
            assert_eq!(steps.last(), Some(&Action::NoMoreSugar));
            assert!(!steps.contains(&Action::Vent));
        }
    }

    #[test]
    fn the_record_points_to_a_cause() {
        let first = |symptom, facts| help(symptom, &facts).causes.first().copied();
        let young = Facts { age: Hours::literal(120.0), ..FACTS };
        assert_eq!(first(Symptom::FlatAll, young), Some(Cause::TooYoung));
        let cellar = Facts { place: Some(Celsius::literal(10.0)), ..FACTS };
        assert_eq!(first(Symptom::FlatAll, cellar), Some(Cause::TooCold));
        let dosed = Facts { expected: CarbonDioxideVolumes::literal(3.0), ..FACTS };
        assert_eq!(first(Symptom::GushingAll, dosed), Some(Cause::OverDosed));
        let said = Facts { was_finished: false, ..FACTS };
        assert_eq!(first(Symptom::GushingAll, said), Some(Cause::Unfinished));
        let saison = Facts { yeast_may_go_on: true, ..FACTS };
        assert_eq!(first(Symptom::GushingAll, saison), Some(Cause::GoesOn));
        assert_eq!(first(Symptom::GushingSome, FACTS), Some(Cause::UnevenMixing));
    }
}
