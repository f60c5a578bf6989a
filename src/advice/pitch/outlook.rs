//! Pitch, with a clock: the judgement of the wort, where it is heading, and when it will be in range.

use super::wort_temperature::{Next, Reason, Wort, judge};
use crate::advice::thermometer::{Trend, for_the_clock, trend};
use crate::advice::{Advice, Verdict};
use crate::quantity::Celsius;
use crate::science::cooling::{Look, Window, window};

/// The judgement and the time.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlook {
    /// Whether to pitch now: [`judge`]'s word and no other.
    pub advice: Advice<Reason, Next>,
    /// Where the wort is heading; `None` with fewer than two looks.
    pub trend: Option<Trend>,
    /// It moves away from the range, or stands still outside it: waiting does not help.
    pub waiting_is_vain: bool,
    /// When it comes into the range, counted from the last look; only with a `Wait` or a `Stop` that
    /// time will mend.
    pub in_range: Option<Window>,
    /// When it will have gone through the range to the other side, which a bath colder than the range
    /// makes it do.
    pub out_again: Option<Window>,
}

/// Judges the wort as [`judge`] does, and says when it will be in range beside a bath or room of
/// temperature `bath`. The looks, the present one among them, are those of one thermometer.
#[must_use]
pub fn outlook(wort: Wort, looks: &[Look], bath: Option<Celsius>) -> Outlook {
    let advice = judge(wort);
    let trend = trend(looks);
    let range = wort.packet.unwrap_or(wort.family.pitch_at());
    let t = wort.temperature.value();
    let (warm, cold) = (t > range.to, t < range.from);
    let off = matches!(advice.verdict, Verdict::Wait | Verdict::Stop);
    let waiting_is_vain = off
        && match trend {
            Some(Trend::Steady) => true,
            Some(Trend::Rising(_)) => warm,
            Some(Trend::Falling(_)) => cold,
            None => false,
        };
    let (near, far) = if cold { (range.from, range.to) } else { (range.to, range.from) };
    let clock = |to: Celsius| {
        let bath = bath.filter(|_| off && (warm || cold) && !waiting_is_vain)?;
        window(&for_the_clock(looks), bath, to).ok()
    };
    Outlook { in_range: clock(near), out_again: clock(far), advice, trend, waiting_is_vain }
}
