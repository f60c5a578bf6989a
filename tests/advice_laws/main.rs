//! Laws of the advice: what no input may ever make it say.
//!
//! Each file holds the laws of one moment of the job. What a law compares with is worked out again here,
//! from the inputs and on paper's terms, and not by the code it holds to account.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod bottle;
mod dosing;
mod forecast;
mod open;
mod pitch;
mod support;
mod units;
mod watch;
mod watch_rules;
mod with_forecast;
