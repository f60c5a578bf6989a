//! What is about to be bottled: all that a dose and its guard are worked out from.

use super::dosing::Weighing;
use super::kinds::Bottle;
use crate::quantity::{CarbonDioxideVolumes, Celsius, Estimate, GravityChange, Litres};
use crate::science::bottle_pressure::Closing;
use crate::science::priming::{Priming, Sugar};

/// Whether the fermentation is over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// By the log: it is level, and what may be left is bounded.
    Judged,
    /// The log does not say so; the brewer goes on for a stated reason.
    Stated,
    /// It still worked when it was chilled: the cold stopped it, and what is left is not known.
    ColdStopped,
    /// Not finished, and nothing stated.
    No,
}

impl Over {
    /// No amount of sugar is right for it yet, whatever the bottles.
    ///
    /// ```
    /// use fermentside::advice::bottle::Over;
    ///
    /// assert!(Over::ColdStopped.waits() && !Over::Stated.waits());
    /// ```
    #[must_use]
    pub const fn waits(self) -> bool {
        matches!(self, Self::ColdStopped | Self::No)
    }
}

/// What is about to be bottled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottling {
    /// Is it over?
    pub over: Over,
    /// The most that can be left to ferment; `None` when nothing bounds it.
    pub points_left: Option<GravityChange>,
    /// The yeast may go on for weeks, which lowers every ceiling.
    pub yeast_may_go_on: bool,
    /// Wished carbon dioxide.
    pub target: CarbonDioxideVolumes,
    /// Carbon dioxide already in, as the dose counts it.
    pub already_in: Estimate<CarbonDioxideVolumes>,
    /// What it may hold instead, where its history leaves that open; only the guard counts it.
    pub may_hold: Option<Estimate<CarbonDioxideVolumes>>,
    /// Beer in the bottling vessel.
    pub beer: Estimate<Litres>,
    /// The sugar.
    pub sugar: Sugar,
    /// How it is dosed and weighed.
    pub weighing: Weighing,
    /// The weakest bottle to be filled.
    pub weakest: Bottle,
    /// The hottest place the bottles may stand.
    pub hottest: Celsius,
    /// How they are closed.
    pub closing: Closing,
}

impl Bottling {
    /// What its sugar is worked out from.
    pub(super) fn priming(&self) -> Priming {
        Priming {
            target: self.target,
            already_in: self.already_in,
            beer: self.beer,
            sugar: self.sugar,
        }
    }
}
