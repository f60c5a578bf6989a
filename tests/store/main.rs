//! Store: nothing once called saved is lost, and every form ever shipped loads.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod archive;
mod faults;
mod faulty;
mod forgetting;
mod released;
