//! Laws: what must hold for any input, tried on many that no one chose.
//!
//! Each file holds the laws of one idea. A law that holds only in part of the range says where, and why.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod blend;
mod carbon_dioxide;
mod check;
mod cooling;
mod fermentation_curve;
mod gravity;
mod hydrometer;
mod kit;
mod moments;
mod numbers;
mod pressure;
mod priming;
mod strength;
mod support;
mod units;
mod warmth_and_air;
mod yeast;
mod zones;
