//! What is recorded: batches, readings, bottlings and gear, and the one pure way to change them.
//!
//! Every saved thing is an [`Entry`] with an identity of its own. A [`Journal`] holds them all; it
//! changes only by [`Journal::apply`], which gives back the [`Change`] that undoes it.

mod asking;
mod bottled;
mod change;
mod entry;
mod fermenting;
mod gear;
mod id;
mod journal;
mod line;
mod log;
mod odd;
mod own_ends;
mod pitch_record;
mod quiet;
mod record;
mod rules;
mod standing;
mod start;
mod summary;
mod tally;
mod today;
mod watching;

pub use crate::advice::open::SafeBy;
pub use crate::advice::pitch::start_gravity::{GoesBy, OriginalFrom};
pub use crate::advice::standing::Stage;
pub use change::{Change, Edit, LONGEST_NAME, Rejected};
pub use entry::{Entry, EntryKey, Kind};
pub use gear::{BottlesItem, Copied, HydrometerItem, Settings, SugarItem, Theme, Units};
pub use id::{Id, IdError};
pub use journal::Journal;
pub use line::ReadingLine;
pub use log::Log;
pub use pitch_record::{AddedWater, PitchRecord};
pub use quiet::{Quiet, quiet};
pub use record::{
    Added, BatchHeading, BottlingRecord, Clarity, Fizz, Grounds, MadeSafe, OpeningRecord, Reading,
    Refractometer, Vessel,
};
pub use summary::Summary;
pub use tally::{Year, tally};
pub use today::{Due, NextStep, Today, by_due};
