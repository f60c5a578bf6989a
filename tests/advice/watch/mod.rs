//! Watch: is it finished, and where is it going?

mod forecast;
mod laws;
mod on_paper;
mod rules;
mod verdicts;
mod with_forecast;
