//! Quantities: what must hold for any text and any number, tried on many that no one chose.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod moments;
mod numbers;
#[path = "../common/mod.rs"]
mod support;
mod units;
mod zones;
