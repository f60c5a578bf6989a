//! Pitch, with a clock: the judgement of the wort, where it is heading, and when it will be in range.

use super::clock::{Bath, into_range, reaches};
use super::wort_temperature::{Next, Reason, Wort, judge};
use crate::advice::family::Purpose;
use crate::advice::thermometer::{Trend, trend};
use crate::advice::{Advice, Verdict};
use crate::quantity::Celsius;
use crate::science::cooling::{Look, Window};

/// The judgement and the time.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlook {
    /// Whether to pitch now: [`judge`]'s word and no other.
    pub advice: Advice<Reason, Next>,
    /// Where the wort is heading; `None` with fewer than two looks.
    pub trend: Option<Trend>,
    /// It moves away from the range, or stands still outside it: waiting does not help.
    pub waiting_is_vain: bool,
    /// What it stands in brings it no nearer than this, which is not in the range.
    pub settles_short: Option<Celsius>,
    /// When it comes into the range, counted from the last look; only with a `Wait` or a `Stop` that
    /// time will mend.
    pub in_range: Option<Window>,
    /// When it will have gone through the range to the other side, which a bath colder than the range
    /// makes it do.
    pub out_again: Option<Window>,
}

/// Judges the wort as [`judge`] does, and says when it will be in range in what it stands in. The looks,
/// the present one among them, are those of one thermometer.
///
/// ```
/// use fermentside::advice::{Verdict, family::Family};
/// use fermentside::advice::pitch::{Wort, clock::Bath, outlook::outlook};
/// use fermentside::quantity::{Celsius, Estimate, Hours, Measured};
/// use fermentside::science::cooling::Look;
///
/// let read = |t| Estimate::new(Celsius::literal(t), 0.5);
/// let looks = [(0.0, 40.0), (1.0, 25.0)]
///     .map(|(at, t)| Look { at: Hours::literal(at), temperature: read(t) });
/// let wort = Wort { temperature: read(25.0), stirred: true, family: Family::CleanAle, packet: None };
/// let beside = |t| outlook(wort, &looks, Some(&Bath::steady(Celsius::literal(t))));
/// let found = beside(10.0);
/// assert_eq!((found.advice.verdict, found.waiting_is_vain), (Verdict::Wait, false));
/// // From 15 to 10 degrees above the bath, where 30 became 15 in an hour: ln 1.5 ÷ ln 2.
/// assert_eq!(format!("{:.2}", found.in_range.unwrap().likely.value()), "0.58");
/// // A bath as warm as the wort helps nobody.
/// assert_eq!((beside(25.0).in_range, beside(25.0).settles_short), (None, Some(Celsius::literal(25.0))));
/// ```
#[must_use]
pub fn outlook(wort: Wort, looks: &[Look], bath: Option<&Bath>) -> Outlook {
    let advice = judge(wort);
    let trend = trend(looks);
    let range = wort.family.range_for(Purpose::Pitching, wort.packet);
    let t = wort.temperature.value();
    let (warm, cold) = (t > range.to, t < range.from);
    let off = matches!(advice.verdict, Verdict::Wait | Verdict::Stop);
    let away = match trend {
        Some(Trend::Steady) => true,
        Some(Trend::Rising(_)) => warm,
        Some(Trend::Falling(_)) => cold,
        None => false,
    };
    let bath = bath.filter(|_| off && (warm || cold));
    let near = if warm { range.to } else { range.from };
    let settles_short =
        bath.filter(|bath| bath.stops_short(near, warm)).map(|bath| bath.settles().value());
    let waiting_is_vain = off && (away || settles_short.is_some());
    let bath = bath.filter(|_| !waiting_is_vain);
    let in_range = bath.and_then(|bath| into_range(looks, bath, range, t).ok());
    let far = if cold { range.to } else { range.from };
    let out_again = bath.and_then(|bath| reaches(looks, bath, far).ok());
    Outlook { advice, trend, waiting_is_vain, settles_short, in_range, out_again }
}
