//! Air before the yeast: splashing and resting in turns, by the seconds since it began.

use crate::quantity::{Hours, Measured};

/// One turn of splashing, seconds; five of them are about five minutes in all (common practice, no
/// source).
const SPLASH: u32 = 60;
/// The rest between two turns, seconds (common practice, no source).
const REST: u32 = 30;
/// Turns in all (common practice, no source).
pub const TURNS: u32 = 5;

/// Where it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// Splash: so many seconds are left of this turn, counted from one.
    Splash {
        /// Seconds left, 1 to 60.
        left: u32,
        /// Which turn, 1 to 5.
        turn: u32,
    },
    /// Rest: so many seconds are left.
    Rest {
        /// Seconds left, 1 to 30.
        left: u32,
    },
    /// All turns are done.
    Done,
}

/// Where it stands so many whole seconds after it began. There is no rest after the last turn.
///
/// ```
/// use fermentside::advice::pitch::splashing::{Turn, turn};
///
/// assert_eq!(turn(0), Turn::Splash { left: 60, turn: 1 });
/// assert_eq!(turn(75), Turn::Rest { left: 15 });
/// assert_eq!([turn(419), turn(420)], [Turn::Splash { left: 1, turn: 5 }, Turn::Done]);
/// ```
#[must_use]
pub const fn turn(seconds: u32) -> Turn {
    let (whole, within) = (seconds / (SPLASH + REST), seconds % (SPLASH + REST));
    if whole >= TURNS || (whole == TURNS - 1 && within >= SPLASH) {
        Turn::Done
    } else if within < SPLASH {
        Turn::Splash { left: SPLASH - within, turn: whole + 1 }
    } else {
        Turn::Rest { left: SPLASH + REST - within }
    }
}

/// Time splashed so many whole seconds after it began, rests left out: at most five minutes. Exact.
///
/// ```
/// use fermentside::advice::pitch::splashing::splashed;
/// use fermentside::quantity::Measured;
///
/// // One turn and half of the second; two turns, and resting; long after the end.
/// let seconds = |after| (splashed(after).value() * 3600.0).round();
/// assert_eq!([120, 175, 9_999].map(seconds), [90.0, 120.0, 300.0]);
/// ```
#[must_use]
pub fn splashed(seconds: u32) -> Hours {
    let (whole, within) = (seconds / (SPLASH + REST), seconds % (SPLASH + REST));
    let splashed = (whole.min(TURNS) * SPLASH + within.min(SPLASH)).min(TURNS * SPLASH);
    Hours::nearest(f64::from(splashed) / 3600.0)
}
