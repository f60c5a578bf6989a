//! What a batch should be remembered of, and when. The words are the page's.

use crate::advice::practice::waking;
use crate::advice::standing::{Reason, SugarFrom};
use crate::batch::{NextStep, Summary};
use crate::quantity::{Hours, Moment};

/// Bottling wants some notice: bottles to be cleaned.
const NOTICE: Hours = Hours::literal(24.0);

/// What is to be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Read the beer.
    Read,
    /// Read the satellite.
    ReadSatellite,
    /// Look for foam or drops under the lid.
    LookForSigns,
    /// By the forecast it may be ready to bottle; only readings tell.
    Ready,
    /// Bottle.
    Bottle,
    /// Chill a bottle and try it.
    TryBottle,
}

impl What {
    /// The part of an identity that says what it is; it never changes. All looks at the beer are one, so
    /// that the next takes the place of the last.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::ReadSatellite => "satellite",
            Self::LookForSigns => "signs",
            Self::Ready => "ready",
            Self::Bottle => "bottle",
            Self::TryBottle => "try",
        }
    }
}

/// One thing to be remembered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reminder {
    /// What.
    pub what: What,
    /// When.
    pub at: Moment,
}

/// An identity that is the same for the same thing of the same batch on every device.
#[must_use]
pub fn uid(batch: &str, what: What) -> String {
    format!("{batch}-{}@fermentside", what.name())
}

/// What lies ahead of a batch at `now`; what is due already needs no reminder but to be done.
#[must_use]
pub fn reminders(summary: &Summary, now: Moment) -> Vec<Reminder> {
    let next = match summary.today(now).next {
        // Once the steps were gone through, stuck beer is read again.
        NextStep::FirstLook(at) | NextStep::ReadAgain(at) | NextStep::Stuck(at) => {
            Some((What::Read, at.moment()))
        }
        NextStep::LookForSigns(at) => Some((What::LookForSigns, at.moment())),
        NextStep::Bottle => Some((What::Bottle, waking(now.after(NOTICE)))),
        NextStep::WaitForBottles(at) | NextStep::WakeBottles(at) | NextStep::ChillBottles(at) => {
            Some((What::TryBottle, at))
        }
        NextStep::Pitch
        | NextStep::PitchAgain
        | NextStep::TryOne
        | NextStep::Enjoy
        | NextStep::AfterSafe(_)
        | NextStep::MakeSafe => None,
    };
    let satellite = summary.standing.reasons.iter().find_map(|reason| match reason {
        Reason::SatelliteUnproven(_, _, again) => Some((What::ReadSatellite, *again)),
        _ => None,
    });
    // While it falls, what is foretold: nothing better is known.
    let ready = match summary.standing.sugar.from {
        SugarFrom::Foretold(at) => Some((What::Ready, at)),
        _ => None,
    };
    let all = next.into_iter().chain(satellite).chain(ready);
    all.map(|(what, at)| Reminder { what, at }).filter(|reminder| reminder.at > now).collect()
}
