//! Exchange: text for other programs, read back by readers that are not ours.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

#[path = "../chance/mod.rs"]
mod chance;
mod copies;
mod fuzz;
mod reminders;
mod tables;
