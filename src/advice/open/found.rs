//! What opened bottles have shown so far, the gravest first.

use crate::quantity::Moment;

crate::choices! {
    /// What was done with the bottles after one gushed or burst.
    pub enum SafeBy {
        /// All are cold, and each was vented.
        Vented = "vented",
        /// All stand cold and covered, and stay there.
        KeptCold = "kept_cold",
        /// All were emptied, or taken away.
        Emptied = "emptied",
    }
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// None was opened.
    Nothing,
    /// One gushed or burst then, and nothing was done about the rest.
    Gushed(Moment),
    /// One had, and this was done.
    MadeSafe(SafeBy),
    /// One had its fizz.
    Fizz,
    /// The last one had only a little, then.
    Little(Moment),
    /// The last one was lively, then.
    Lively(Moment),
    /// Those that were opened were flat, the last of them then.
    Flat(Moment),
}
