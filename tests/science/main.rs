//! Science: laws that hold for any input, tried on many that no one chose, and published tables.
//!
//! Each file holds the laws of one idea. A law that holds only in part of the range says where, and why.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod blend;
mod carbon_dioxide;
mod check;
mod cooling;
mod gravity;
mod hydrometer;
mod kit;
mod pressure;
mod priming;
mod strength;
#[path = "../common/mod.rs"]
mod support;
mod tables;
mod warmth_and_air;
mod yeast;
