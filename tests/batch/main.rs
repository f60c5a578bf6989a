//! What is recorded: that it changes only as wished, is written and read back whole, and is summed up
//! as it was read.

// A test may stop.
#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

mod any;
mod bodies;
mod bottled;
mod journal;
mod life;
mod logs;
mod measured;
mod names;
mod own_ends;
mod pitch_record;
mod quiet;
#[path = "../records/mod.rs"]
mod records;
mod released;
mod standing;
mod stored_names;
mod summary;
mod support;
mod undo;
mod unknown_fields;
mod watching;
