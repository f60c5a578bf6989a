//! The drawing of what [`crate::app`] says: one small component for each kind of part, and the browser's
//! own effects. It knows nothing of brewing.

mod board;
mod card;
mod clock;
mod draw;
mod effects;
mod element;
mod field;
mod file;
mod keep;
mod link;
mod second_shelf;
mod session;
mod shell;
mod sketch;
mod stem;
mod svg;

pub use shell::mount;
