//! The screens.

mod shell;

pub use shell::mount;
