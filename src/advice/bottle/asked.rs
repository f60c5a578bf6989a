//! What a brewer is asked on bottling day, and the bottling it comes to.

use super::bottling::{Bottling, Over};
use super::dosing::{Dosing, Weighing, finest_step};
use super::history::{Held, Past, Seal, Working, held};
use super::kinds::Bottle;
use super::stock::{Bottles, smallest, weakest};
use crate::advice::practice::{by_mark, remembered};
use crate::quantity::{
    CarbonDioxideVolumes, Celsius, Grams, GravityChange, Hours, Litres, MassUnit, Metres,
};
use crate::science::ScienceError;
use crate::science::bottle_pressure::Closing;
use crate::science::priming::Sugar;

crate::choices! {
    /// Whether the beer was chilled since it went quiet.
    pub enum Chilled {
        /// It was not.
        No = "no",
        /// It was: then how cold, how closed and how quiet it was is asked too.
        Yes = "yes",
    }

    /// How long it was as warm as it has been at most.
    pub enum WarmFor {
        /// Two days or more, in which still beer lets its gas go.
        Long = "long",
        /// Less.
        Short = "short",
    }

    /// Which of two ends the dose is for, where it may hold more than the rule says.
    pub enum DoseFor {
        /// What its warmest temperature allows.
        Rule = "rule",
        /// What the cold allows.
        More = "more",
    }

    /// Where the sugar goes.
    pub enum SugarGoes {
        /// Stirred into the whole vessel.
        Vessel = "vessel",
        /// Weighed into each bottle.
        Bottles = "bottles",
    }
}

impl WarmFor {
    /// As hours, the fewest of what was answered.
    #[must_use]
    pub const fn at_least(self) -> Hours {
        match self {
            Self::Long => Hours::literal(48.0),
            Self::Short => Hours::literal(24.0),
        }
    }
}

/// How far it has fermented, as the batch's standing tells it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ended {
    /// Whether it is over.
    pub over: Over,
    /// The most that can be left to ferment.
    pub points_left: GravityChange,
    /// A yeast that may go on for weeks.
    pub yeast_may_go_on: bool,
}

/// How the beer was while it was cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cold {
    /// The coldest it has been.
    pub coldest: Celsius,
    /// How it was closed.
    pub seal: Seal,
    /// Whether it still worked.
    pub working: Working,
    /// How long it was warm.
    pub warm_for: WarmFor,
}

/// The bottles that are to be filled, as far as the plan asks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glass {
    /// The weakest kind among them.
    pub weakest: Bottle,
    /// The smallest of them, which too much sugar would press the hardest.
    pub smallest: Litres,
}

impl Glass {
    /// Of some bottles on hand; `None` of no bottles.
    #[must_use]
    pub fn of(bottles: &[Bottles]) -> Option<Self> {
        Some(Self { weakest: weakest(bottles)?, smallest: smallest(bottles)? })
    }
}

/// All that is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// How far it has fermented.
    pub ended: Ended,
    /// Beer in the bottling vessel, by its mark.
    pub beer: Litres,
    /// Wished carbon dioxide.
    pub target: CarbonDioxideVolumes,
    /// Warmest it has been since it went quiet, as remembered.
    pub warmest: Celsius,
    /// When it was chilled since, how; `None` when it was not.
    pub cold: Option<Cold>,
    /// Which end the dose is for, where there are two.
    pub dose_for: DoseFor,
    /// The sugar.
    pub sugar: Sugar,
    /// Where it goes.
    pub sugar_goes: SugarGoes,
    /// The step the brewer's scale shows.
    pub scale: Grams,
    /// The unit that masses are written in.
    pub unit: MassUnit,
    /// The bottles.
    pub glass: Glass,
    /// Hottest place the bottles may come to.
    pub hottest: Celsius,
    /// Height above the sea.
    pub height: Metres,
}

/// What the answers come to.
#[derive(Clone, Debug, PartialEq)]
pub struct Ready {
    /// What [`plan`](super::plan) is asked.
    pub bottling: Bottling,
    /// What the beer holds already, by one end or two.
    pub held: Held,
}

impl Asked {
    /// What happened to the beer since it went quiet.
    ///
    /// Beer that was not chilled has had its gas go at its warmest, however short that was.
    #[must_use]
    pub fn past(&self) -> Past {
        self.cold.map_or(Past::PLAIN, |cold| Past {
            warm_for: Some(cold.warm_for.at_least()),
            coldest: Some(cold.coldest),
            seal: cold.seal,
            when_chilled: cold.working,
        })
    }

    /// Where the sugar goes, and to what step it is weighed: grams a bottle as the scale shows them, the
    /// whole dose also no finer than the brewer's unit is written.
    fn weighing(&self) -> Weighing {
        match self.sugar_goes {
            SugarGoes::Vessel => {
                Weighing { dosing: Dosing::Vessel, scale: finest_step(self.scale, self.unit) }
            }
            SugarGoes::Bottles => {
                let smallest = self.glass.smallest;
                Weighing { dosing: Dosing::Bottles { smallest }, scale: self.scale }
            }
        }
    }

    /// The bottling these answers describe: the volume as a mark tells it, the temperatures as they are
    /// remembered, the gas already in by what happened.
    ///
    /// ```
    /// use fermentside::advice::bottle::asked::{Asked, DoseFor, Ended, Glass, SugarGoes};
    /// use fermentside::advice::bottle::{Over, kinds::Bottle, plan};
    /// use fermentside::quantity::{
    ///     CarbonDioxideVolumes, Celsius, Grams, GravityChange, Litres, MassUnit, Metres,
    /// };
    /// use fermentside::science::priming::Sugar;
    ///
    /// let asked = Asked {
    ///     ended: Ended {
    ///         over: Over::Judged,
    ///         points_left: GravityChange::literal(0.0005),
    ///         yeast_may_go_on: false,
    ///     },
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
    /// let plan = plan(asked.ready()?.bottling)?;
    /// assert_eq!(plan.weigh(), Some(Grams::literal(122.0)));
    /// // At 60 °C nothing is known of the gas.
    /// assert!(Asked { warmest: Celsius::literal(60.0), ..asked }.ready().is_err());
    /// # Ok::<(), fermentside::science::ScienceError>(())
    /// ```
    ///
    /// # Errors
    /// [`ScienceError::Temperature`] for beer outside −2 to 45 °C.
    pub fn ready(&self) -> Result<Ready, ScienceError> {
        let held = held(remembered(self.warmest), self.past(), self.height)?;
        let may_hold = held.may_hold.map(|(other, _)| other);
        let dosed_for = may_hold.filter(|_| self.dose_for == DoseFor::More);
        let over = match self.cold {
            Some(cold) if cold.working == Working::Still => Over::ColdStopped,
            _ => self.ended.over,
        };
        let bottling = Bottling {
            over,
            points_left: Some(self.ended.points_left),
            yeast_may_go_on: self.ended.yeast_may_go_on,
            target: self.target,
            already_in: dosed_for.unwrap_or(held.by_rule),
            may_hold,
            beer: by_mark(self.beer),
            sugar: self.sugar,
            weighing: self.weighing(),
            weakest: self.glass.weakest,
            hottest: self.hottest,
            closing: Closing { height: self.height, ..Closing::USUAL },
        };
        Ok(Ready { bottling, held })
    }
}
