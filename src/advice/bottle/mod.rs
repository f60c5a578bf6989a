//! Bottle: from finished beer to closed bottles. Its main question is how much sugar, and whether the
//! glass holds; both are answered together by [`plan`] or not at all.
//!
//! So nobody takes a dose past the guard: the field is private, and [`Plan::dose`] withholds it.
//!
//! ```compile_fail,E0616
//! fn past_the_guard(plan: fermentside::advice::bottle::Plan) {
//!     let dose = plan.dose;
//! }
//! ```

pub mod asked;
mod bottling;
mod dose_plan;
pub mod dosing;
mod guard;
pub mod history;
pub mod kinds;
pub mod stock;
mod under_ceiling;

pub use bottling::{Bottling, Over};
pub use dose_plan::{Next, Plan, Reason, plan, worst_once_weighed};
pub use guard::{Guard, guard};
