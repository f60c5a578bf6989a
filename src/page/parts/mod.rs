//! Shared controls and drawings. They know nothing of batches.

pub mod answer;
pub mod blend_drawing;
pub mod bottle_drawing;
pub mod choice;
pub mod course_drawing;
pub mod field;
pub mod figures;
pub mod live;
pub mod picture;
pub mod slider;
pub mod stem;
pub mod warmth_drawing;
pub mod when;
pub mod worked;
