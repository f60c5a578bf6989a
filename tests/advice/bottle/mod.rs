//! Bottle: the dose and the guard.

mod asked;
mod dosing;
mod laws;
mod plan;
mod units;
mod ways_to_dose;
