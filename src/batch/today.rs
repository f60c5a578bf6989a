//! A batch as it stands at one moment: what is next, and when that is due.

use super::Vessel;
use super::summary::Summary;
use crate::advice::practice::STILL_START;
use crate::advice::standing::Stage;
use crate::advice::watch;
use crate::advice::{Advice, Verdict, open};
use crate::order::in_order;
use crate::quantity::{Estimate, Hours, Measured, Moment};

/// The next step of a batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NextStep {
    /// Note the starting gravity, or check the temperature, and pitch.
    Pitch,
    /// Take the first reading of the fermenting beer, about then.
    FirstLook(Moment),
    /// Read again, not before then.
    ReadAgain(Moment),
    /// It looks stuck: go through the steps.
    Stuck,
    /// Look for foam, a ring, drops under the lid, not before then.
    LookForSigns(Moment),
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
        let opening = self.bottling.as_ref().map(|(_, record)| {
            open::judge(record.waiting(self.original.map(Estimate::value), now))
        });
        let (stage, next) = match &opening {
            Some(opening) => (Stage::Open, self.next_bottle(opening.next)),
            None => self.next_look(),
        };
        Today { stage, next, due: self.due(next), opening }
    }

    fn next_bottle(&self, advised: open::Next) -> NextStep {
        match advised {
            _ if !self.openings.is_empty() => NextStep::Enjoy,
            open::Next::TryOne => NextStep::TryOne,
            open::Next::WaitUntil(then) | open::Next::Warm(then) => NextStep::WaitForBottles(then),
        }
    }

    /// Before it is bottled.
    fn next_look(&self) -> (Stage, NextStep) {
        let Some(pitched) = self.pitch.as_ref().map(|(_, record)| record.at) else {
            return (Stage::Pitch, NextStep::Pitch);
        };
        let fermenting = self.lines.iter().any(|line| {
            line.reading.vessel == Vessel::Main
                && line.gravity().is_some()
                && line.reading.at > pitched.after(STILL_START)
        });
        if !fermenting {
            // The first useful look is about halfway to the family's least time.
            let least = self.heading.family.least_time().value();
            return (Stage::Watch, NextStep::FirstLook(pitched.after(Hours::nearest(least / 2.0))));
        }
        match (self.finish.advice.verdict, self.finish.advice.next) {
            (Verdict::Go, _) => (Stage::Bottle, NextStep::Bottle),
            (_, watch::Next::Rouse(_)) => (Stage::Watch, NextStep::Stuck),
            (_, watch::Next::LookForSigns(at)) => (Stage::Watch, NextStep::LookForSigns(at)),
            (_, watch::Next::PitchAgain) => (Stage::Watch, NextStep::PitchAgain),
            (_, watch::Next::ReadAgain(at)) => (Stage::Watch, NextStep::ReadAgain(at)),
            _ => (Stage::Watch, NextStep::FirstLook(pitched)),
        }
    }

    fn due(&self, next: NextStep) -> Option<Moment> {
        let last = self.lines.last().map_or(self.heading.started, |line| line.reading.at);
        match next {
            NextStep::FirstLook(at)
            | NextStep::ReadAgain(at)
            | NextStep::LookForSigns(at)
            | NextStep::WaitForBottles(at) => Some(at),
            NextStep::Pitch => Some(self.heading.started),
            NextStep::Stuck | NextStep::PitchAgain | NextStep::Bottle => Some(last),
            NextStep::TryOne => self.bottling.as_ref().map(|(_, record)| record.at),
            NextStep::Enjoy => None,
        }
    }
}

/// Batches as they stand at `now`: what is due first stands first, and what nothing is asked of stands
/// last. Of those due at one time, and of those never due, the latest begun stands first.
#[must_use]
pub fn by_due<'a>(
    summaries: impl IntoIterator<Item = &'a Summary>,
    now: Moment,
) -> Vec<(&'a Summary, Today)> {
    let standing = summaries.into_iter().map(|summary| (summary, summary.today(now))).collect();
    in_order(standing, |(a, today): &(&Summary, Today), (b, other)| {
        let due = match (today.due, other.due) {
            (Some(today), Some(other)) => today.cmp(&other),
            (today, other) => today.is_none().cmp(&other.is_none()),
        };
        due.then_with(|| b.heading.started.cmp(&a.heading.started))
    })
}
