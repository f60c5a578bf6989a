//! The proving ground: how batches whose end is known are judged, on courses that the model knows and on
//! courses that it does not, by careful and by tired readers; and how often and how nearly what is foretold
//! is right, beside a plain line through the last two readings.
//!
//! `cargo test --test calibration -- --nocapture` prints every figure for a few batches. They look drawn by
//! lot and are always the same ones; `SEED=1000` tries others. Built to be fast it tries as many as wanted:
//!
//!     COUNT=300 cargo test --profile long --no-default-features --test calibration -- --nocapture

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod courses;
mod dosing;
mod foretold;
mod lot;
mod own_ends;
mod proving;
mod reader;
