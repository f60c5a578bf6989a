//! batch
