//! Pitching day.
