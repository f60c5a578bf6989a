//! The house: the arrows between its floors, and what stands above them all.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod colours;
mod examples;
mod floors;
mod shape;
mod stored_json;
