//! Fermentside: answers for a home brewer beside the fermenter, with no network.
//!
//! The floors, from the ground up; a floor may use those above it in this list, never one below:
//!
//! - [`quantity`]: what is measured. Checked types, read and written as people do.
//! - [`science`]: what follows. One physical idea a file, each with its source.
//! - [`advice`]: what to do. Judgements on the science, one moment of the job a file.
//! - [`batch`]: what is recorded, and the one pure way to change it.
//! - [`chart`]: pictures without a screen.
//! - [`store`]: where it is kept, so that nothing is lost.
//! - [`exchange`]: text in and out, in open forms.
//! - [`words`]: what is said. Every text for people, one table a language.
//! - [`app`]: what is shown and done, as plain data.
//! - `page`: the drawing of it (feature `web`).
//!
//! Beside them stand [`choices`], [`order`], [`json`] and [`json_texts`], which are of no floor.
//!
//! The one rule: time, storage and the screen enter as arguments, so that every answer below `page`
//! is the same for the same inputs on every device. `tests/house` holds the arrows.

pub mod advice;
pub mod app;
pub mod batch;
pub mod chart;
pub mod choices;
pub mod exchange;
pub mod json;
mod json_asked;
mod json_fields;
pub mod json_texts;
pub mod json_unknown;
pub mod order;
#[cfg(feature = "web")]
pub mod page;
pub mod quantity;
pub mod science;
pub mod store;
pub mod words;
