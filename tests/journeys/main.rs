//! Journeys: what a brewer does with the built page, in a real browser.
//!
//! `make journeys`, or after `make build`: `cargo test --features journeys --test journeys`.
//! Each journey has its own phone and its own server, so any number may run at once.

// Where a journey cannot go on, it stops there and says why.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod brewing;
mod build;
mod cellar;
mod finding;
mod noticing;
mod phone;
#[path = "../records/mod.rs"]
mod records;
mod script;
mod server;

mod barriers;
mod batch;
mod bench;
mod bottling;
mod copies;
mod eyes;
mod first_screen;
mod full;
mod guard;
mod hands;
mod keeping;
mod losing;
mod many;
mod offline;
mod opening;
mod pictures;
mod pitching;
mod practice;
mod quick;
mod session;
mod start_up;
mod states;
mod update;
mod watching;
mod wrong_input;
