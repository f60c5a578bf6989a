//! Pitching day in words.

mod air;
mod cool;
mod day;
mod pitched;
mod place;
mod start;
mod steps;
mod ways;
mod yeast;

pub use air::AirWords;
pub use cool::CoolWords;
pub use day::DayWords;
pub use pitched::{PitchedWords, already_in_words};
pub use place::PlaceWords;
pub use start::StartWords;
pub use steps::StepWords;
pub use ways::WaysWords;
pub use yeast::YeastWords;

/// What stands at Pitch.
#[derive(Debug)]
pub struct PitchWords {
    /// The form as a whole.
    pub day: DayWords,
    /// The walk through the day.
    pub steps: StepWords,
    /// Whether it is cool enough.
    pub cool: CoolWords,
    /// The ways there.
    pub ways: WaysWords,
    /// The starting gravity.
    pub start: StartWords,
    /// Yeast and satellite.
    pub yeast: YeastWords,
    /// Air.
    pub air: AirWords,
    /// Where it stands.
    pub place: PlaceWords,
    /// Once the yeast is in.
    pub pitched: PitchedWords,
}

pub(super) const PITCH: PitchWords = PitchWords {
    day: day::DAY,
    steps: steps::STEPS,
    cool: cool::COOL,
    ways: ways::WAYS,
    start: start::START,
    yeast: yeast::YEAST,
    air: air::AIR,
    place: place::PLACE,
    pitched: pitched::PITCHED,
};
