//! Shared controls and drawings. They know nothing of batches.

pub mod answer;
pub mod choice;
pub mod field;
pub mod figures;
pub mod when;
pub mod worked;
