//! Pitch: the wort and the yeast.

mod day;
mod laws;
