//! Open: from closed bottles to the first glass, what it teaches, and what to do when bottles are not
//! safe. Its main question is when to try the first one.

mod first_bottle;
mod found;
pub mod learned;
pub mod pressures;
pub mod remark;
pub mod worried;

pub use first_bottle::{Dates, Next, Reason, WaitingBottles, dates, judge};
pub use found::{Found, SafeBy};
