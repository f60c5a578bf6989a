//! Text in and out: what leaves the page for other programs, in their own open forms.

pub mod bring;
pub mod calendar;
mod column;
pub mod copy;
pub mod csv;
pub mod reminders;
pub mod table;
