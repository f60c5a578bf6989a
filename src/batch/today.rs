//! A batch as it stands at one moment: what is next, and when that is due.

use super::summary::Summary;
use crate::advice::open::SafeBy;
use crate::advice::standing::{self, Stage};
use crate::advice::{Advice, open};
use crate::order::in_order;
use crate::quantity::Moment;
use std::ops::Deref;

/// From when a step can be done, as one looks at it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Due {
    /// Not before then.
    Ahead(Moment),
    /// Now, and since then.
    Since(Moment),
}

impl Due {
    /// Seen at `now`.
    ///
    /// ```
    /// use fermentside::{batch::Due, quantity::{Hours, Moment}};
    ///
    /// let (now, later) = (Moment::EPOCH, Moment::EPOCH.after(Hours::literal(24.0)));
    /// assert_eq!(Due::seen(later, now), Due::Ahead(later));
    /// assert_eq!(Due::seen(now, later), Due::Since(now));
    /// ```
    #[must_use]
    pub fn seen(at: Moment, now: Moment) -> Self {
        if at > now { Self::Ahead(at) } else { Self::Since(at) }
    }

    /// Since when, or from when on.
    #[must_use]
    pub const fn moment(self) -> Moment {
        match self {
            Self::Ahead(at) | Self::Since(at) => at,
        }
    }
}

/// The next step of a batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NextStep {
    /// Note the starting gravity, or check the temperature, and pitch.
    Pitch,
    /// Take the first reading of the fermenting beer, about then.
    FirstLook(Due),
    /// Read again, not before then.
    ReadAgain(Due),
    /// It looks stuck: go through the steps, and read again then.
    Stuck(Due),
    /// Look for foam, a ring, drops under the lid, not before then.
    LookForSigns(Due),
    /// It never began: go through the steps.
    PitchAgain,
    /// It is finished: bottle it.
    Bottle,
    /// Wait for the bottles until then.
    WaitForBottles(Moment),
    /// Open the first one.
    TryOne,
    /// A bottle has been opened: note the next.
    Enjoy,
    /// Bottles are flat that should not be: warm them, turn them over, and try one then.
    WakeBottles(Moment),
    /// One was lively far too soon: chill them all now, and open one then.
    ChillBottles(Moment),
    /// One had gushed or burst, and the rest were made safe.
    AfterSafe(SafeBy),
    /// A bottle gushed or burst, and nothing was done about the rest.
    MakeSafe,
}

/// What of a batch depends on when one looks. Made anew at every tick of the clock, so it is cheap: all
/// that has to be worked out stands in the [`Summary`].
#[derive(Clone, Debug, PartialEq)]
pub struct Today {
    /// The stage it is in.
    pub stage: Stage,
    /// The next step.
    pub next: NextStep,
    /// When to open a bottle; `None` before it is bottled.
    pub opening: Option<Advice<open::Reason, open::Next>>,
    /// When its next step is due; `None` when nothing is asked of it any more. What can be done at once is
    /// due since what it follows from was noted.
    pub due: Option<Moment>,
}

impl Summary {
    /// How the batch stands at `now`, which moves dates and the opening of bottles, never a judgement of
    /// the fermentation.
    #[must_use]
    pub fn today(&self, now: Moment) -> Today {
        let opening = self.bottles(now).map(open::judge);
        let due = |at| Due::seen(at, now);
        let next = match (self.standing.next, &opening) {
            (_, Some(opening)) => next_bottle(opening.next),
            (standing::Next::MakeSafe, None) => NextStep::MakeSafe,
            (standing::Next::Pitch | standing::Next::Open, None) => NextStep::Pitch,
            (standing::Next::ReadFirst(at), None) => NextStep::FirstLook(due(at)),
            (standing::Next::ReadAgain(at), None) => NextStep::ReadAgain(due(at)),
            (standing::Next::Rouse(at), None) => NextStep::Stuck(due(at)),
            (standing::Next::LookForSigns(at), None) => NextStep::LookForSigns(due(at)),
            (standing::Next::PitchAgain, None) => NextStep::PitchAgain,
            (standing::Next::Bottle, None) => NextStep::Bottle,
        };
        Today { stage: self.standing.stage, next, due: self.due(next), opening }
    }

    fn due(&self, next: NextStep) -> Option<Moment> {
        let last = self.lines.last().map_or(self.heading.started, |line| line.reading.at);
        match next {
            NextStep::FirstLook(at) | NextStep::ReadAgain(at) | NextStep::LookForSigns(at) => {
                Some(at.moment())
            }
            NextStep::WaitForBottles(at) | NextStep::WakeBottles(at) => Some(at),
            NextStep::Pitch => Some(self.heading.started),
            NextStep::Stuck(_) | NextStep::PitchAgain | NextStep::Bottle => Some(last),
            NextStep::TryOne => self.bottling.as_ref().map(|(_, record)| record.at),
            NextStep::ChillBottles(_) => self.openings.first().map(|(_, opening)| opening.at),
            // Before everything else.
            NextStep::MakeSafe => Some(self.heading.started),
            NextStep::Enjoy | NextStep::AfterSafe(_) => None,
        }
    }
}

fn next_bottle(advised: open::Next) -> NextStep {
    match advised {
        open::Next::TryOne => NextStep::TryOne,
        open::Next::WaitUntil(then) | open::Next::Warm(then) => NextStep::WaitForBottles(then),
        open::Next::Wake(then) => NextStep::WakeBottles(then),
        open::Next::Chill(then) => NextStep::ChillBottles(then),
        open::Next::MakeSafe => NextStep::MakeSafe,
        open::Next::AfterSafe(by) => NextStep::AfterSafe(by),
        open::Next::Enjoy => NextStep::Enjoy,
    }
}

/// Batches as they stand at `now`: what is due first stands first, and what nothing is asked of stands
/// last. Of those due at one time, and of those never due, the latest begun stands first.
#[must_use]
pub fn by_due<S: Deref<Target = Summary>>(
    summaries: impl IntoIterator<Item = S>,
    now: Moment,
) -> Vec<(S, Today)> {
    let mut standing = vec![];
    for summary in summaries {
        let today = summary.today(now);
        standing.push((summary, today));
    }
    in_order(standing, |(a, today), (b, other)| {
        let due = match (today.due, other.due) {
            (Some(today), Some(other)) => today.cmp(&other),
            (today, other) => today.is_none().cmp(&other.is_none()),
        };
        due.then_with(|| b.heading.started.cmp(&a.heading.started))
    })
}
