//! Whole brewing days on paper: the page without a browser.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod agree;
mod batches;
mod bench;
mod bottle;
#[path = "../chance/mod.rs"]
mod chance;
mod cleared;
mod copies;
mod day;
mod every_write;
mod fields;
mod frame;
mod gear;
mod held;
mod hostile;
mod keeping;
mod odd;
mod open;
mod own_ends;
mod paper;
mod pitch;
mod preferences;
#[path = "../records/mod.rs"]
mod records;
mod room;
mod second_shelf;
mod shelf;
mod tables;
mod tabs;
mod told;
mod units;
mod walk;
mod watch;
