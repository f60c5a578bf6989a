//! Figures that more than one judgement goes by, each named once. All are common practice without a
//! source but the first, which is a table's.

use super::family::Family;
use crate::quantity::{Celsius, GravityChange, Hours, Measured, Moment, SpecificGravity};

pub use crate::science::practice::{REMEMBERED, VOLUME_MARK, by_mark, remembered};

/// Standard deviations to either side that hold 95 % of a normal distribution (any table of it).
pub(crate) const P95: f64 = 1.96;
/// Wort stronger than this is hard on dry yeast, ferments slowly and ripens slowly.
pub const STRONG: SpecificGravity = SpecificGravity::literal(1.060);
/// In beer colder than this even ale yeast begins slowly and finishes slowly.
pub const COOL_BEER: Celsius = Celsius::literal(16.0);
/// In a place cooler than this bottles take double the time, and their days are none to judge by.
pub const COOL_PLACE: Celsius = Celsius::literal(18.0);
/// Bottles younger than this are green: they say nothing of the dose, nor of what is wrong.
pub const GREEN: Hours = Hours::literal(14.0 * 24.0);
/// Two readings of which one is to bear out the other lie at least so far apart.
pub const APART: Hours = Hours::literal(24.0);
/// A reading so soon after pitching still shows the starting gravity.
pub const STILL_START: Hours = Hours::literal(12.0);
/// Beer that was roused or warmed because it looked stuck is read again after so long.
pub const AFTER_ROUSING: Hours = Hours::literal(72.0);
/// A point: gravities no further apart are within what an eye can do.
pub const POINT: GravityChange = GravityChange::literal(0.001);
/// One standard deviation of a gravity that was typed with no word of its instrument: half a division of
/// the usual one.
pub const HALF_DIVISION: GravityChange = GravityChange::literal(0.001);

/// When each thing is worth doing while nothing shows, from pitching. Nowhere else do these hours stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lag {
    /// Look for foam, a ring, drops under the lid.
    pub signs: Hours,
    /// Take a gravity.
    pub gravity: Hours,
    /// Fresh yeast, if the gravity has not moved.
    pub pitch_again: Hours,
}

impl Lag {
    /// For a usual or a slow start.
    ///
    /// ```
    /// use fermentside::{advice::practice::Lag, quantity::Hours};
    ///
    /// assert_eq!(Lag::of(false).pitch_again, Hours::literal(72.0));
    /// assert_eq!(Lag::of(true).pitch_again, Hours::literal(96.0));
    /// ```
    #[must_use]
    pub const fn of(slow: bool) -> Self {
        let (signs, gravity, pitch_again) =
            if slow { (48.0, 72.0, 96.0) } else { (24.0, 48.0, 72.0) };
        Self {
            signs: Hours::literal(signs),
            gravity: Hours::literal(gravity),
            pitch_again: Hours::literal(pitch_again),
        }
    }

    /// Whether this yeast, or beer this cold, begins slowly.
    ///
    /// ```
    /// use fermentside::advice::{family::Family, practice::Lag};
    /// use fermentside::quantity::Celsius;
    ///
    /// assert!(Lag::is_slow(Family::Lager, None));
    /// assert!(!Lag::is_slow(Family::CleanAle, Some(Celsius::literal(18.0))));
    /// assert!(Lag::is_slow(Family::CleanAle, Some(Celsius::literal(14.0))));
    /// ```
    #[must_use]
    pub fn is_slow(family: Family, beer: Option<Celsius>) -> bool {
        beer.is_some_and(|beer| beer < COOL_BEER) || family.starts_slowly()
    }
}

/// Beer is read and bottled from this hour of the day until that.
const AWAKE: (u8, u8) = (8, 21);

/// The next moment by day: the same one, or eight in the morning after it, by the clock of that moment.
///
/// ```
/// use fermentside::{advice::practice::waking, quantity::{Moment, MomentError}};
///
/// let at = |text: &str| text.parse::<Moment>();
/// assert_eq!(waking(at("2026-08-18T03:55+02:00")?), at("2026-08-18T08:00+02:00")?);
/// assert_eq!(waking(at("2026-08-18T22:10+02:00")?), at("2026-08-19T08:00+02:00")?);
/// assert_eq!(waking(at("2026-08-18T12:30+02:00")?), at("2026-08-18T12:30+02:00")?);
/// # Ok::<(), MomentError>(())
/// ```
#[must_use]
pub fn waking(at: Moment) -> Moment {
    let (_, _, _, hour, minute, _) = at.parts();
    let until = |morning: u8| {
        let minutes = 60.0 * f64::from(morning - hour) - f64::from(minute);
        at.after(Hours::nearest(minutes / 60.0))
    };
    match hour {
        _ if hour < AWAKE.0 => until(AWAKE.0),
        _ if hour >= AWAKE.1 => until(24 + AWAKE.0),
        _ => at,
    }
}
