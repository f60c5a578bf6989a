//! Pitch: from the wort in its vessel to the yeast in the wort. Its main question is whether the wort is
//! at a temperature that this yeast can be put into.

pub mod already_in;
pub mod clock;
pub mod outlook;
pub mod place;
pub mod room_air;
pub mod sachets;
pub mod satellite;
pub mod splashing;
pub mod start_gravity;
pub mod steps;
pub mod ways_to_range;
mod wort_temperature;
pub mod yeast;

pub use wort_temperature::{A_LITTLE_COOL, Next, Reason, SCALDS, Wort, judge};
