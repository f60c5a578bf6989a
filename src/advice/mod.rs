//! What to do: judgements on the science, one moment of the job a file.
//!
//! Each returns [`Advice`]: a verdict, its reasons, the next step and the working. Verdicts and reasons
//! are values; the words for them live with the page. Nothing here reads a clock.

pub mod already_in;
mod believable;
pub mod bottle;
pub mod bottles;
pub mod bubbles;
mod course;
pub mod course_temperature;
pub mod dosing;
mod expected_end;
pub mod family;
mod finish;
pub mod forecast;
mod guard;
pub mod history;
pub mod ladder;
pub mod learned;
pub mod open;
pub mod pitch;
pub mod pitch_outlook;
pub mod place;
mod refracted;
pub mod room_air;
pub mod satellite;
pub mod satellite_end;
pub mod settle;
mod settles;
pub mod start_gravity;
pub mod started;
mod steady;
pub mod stock;
pub mod thermometer;
pub mod watch;
pub mod ways_down;
pub mod ways_to_bottle;
mod within;
pub mod worried;
pub mod yeast;

use crate::science::Worked;

/// The four words a judgement can be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Do it.
    Go,
    /// Not yet; a later look decides.
    Wait,
    /// Do not; something must change first.
    Stop,
    /// What is known does not decide it.
    CantTell,
}

/// A judgement with all that carries it.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice<Reason, Next> {
    /// The word.
    pub verdict: Verdict,
    /// Why, the weightiest first.
    pub reasons: Vec<Reason>,
    /// What to do now.
    pub next: Next,
    /// How it was worked out.
    pub worked: Worked,
}
