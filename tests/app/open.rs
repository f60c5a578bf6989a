//! Opened bottles.
