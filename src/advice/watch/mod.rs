//! Watch: from the yeast in the wort to beer that has finished. Its main question is just that, by the
//! rules at the head of `finished.rs`, and with the forecast beside them in [`with_forecast`].

pub mod beer_temperature;
mod believable_end;
pub mod bubbles;
mod course;
mod expected_end;
mod finished;
pub mod forecast;
pub mod ladder;
mod left_to_ferment;
mod next_measurement;
mod refracted;
pub mod satellite_end;
pub mod started;
mod steady;
pub mod with_forecast;

pub use course::{Course, Finish, Look, Measure, Next, NextMeasurement, Reason, Refracted, State};
pub use expected_end::expected_end;
pub use finished::judge;
