//! The readings.
