//! Advice: the judgements as tables worked on paper, and what no input may ever make them say.
//!
//! A folder for each stage of the job. What a law compares with is worked out again here, from the inputs
//! and on paper's terms, and not by the code it holds to account.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod bottle;
#[path = "../chance/mod.rs"]
mod chance;
mod open;
mod pitch;
mod reading;
mod standing;
mod support;
