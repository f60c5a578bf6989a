//! Pitch: the wort and the yeast.

mod clock;
mod day;
mod laws;
