//! What to do: judgements on the science, a folder for each stage of the job and one moment of it a file.
//!
//! Each folder hands out its own main question: may the yeast go in ([`pitch`]), is it finished
//! ([`watch`]), how much sugar ([`bottle`]), when to try it ([`open`]). What two stages share is here.
//!
//! Each returns [`Advice`]: a verdict, its reasons, the next step and the working. Verdicts and reasons
//! are values; the words for them live with the page. Nothing here reads a clock.

pub mod bottle;
pub mod family;
pub mod odd;
pub mod open;
pub mod own_ends;
pub mod pitch;
pub mod practice;
pub mod reading;
pub mod standing;
pub mod thermometer;
pub mod watch;

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
