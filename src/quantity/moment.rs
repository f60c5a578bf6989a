//! A moment: the wall clock where the brewer stood, and how far that clock was from UTC.
//!
//! Both are kept, so that "64 hours apart" is true across a clock change or a journey.

use super::measured::{Hours, Measured};
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use time::{Date, Month, Weekday};

/// The minutes of a day.
const DAY: i64 = 24 * 60;
/// The Julian day of 1970-01-01.
const EPOCH_DAY: i64 = 2_440_588;
/// The first minute of the calendar, 0000-01-01T00:00, counted from 1970-01-01T00:00.
const FIRST: i64 = -1_036_120_320;
/// Its last, 9999-12-31T23:59.
const LAST: i64 = 4_223_371_679;
/// The most that a clock may be ahead of UTC or behind it, minutes.
pub(super) const FURTHEST: i32 = 25 * 60 + 59;

/// A date and time to the minute with its offset from UTC. Written `2026-03-01T09:30+01:00`
/// (ISO 8601). The clock shows a time of the years 0000 to 9999, whatever the time is in UTC.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Moment {
    /// Minutes from 1970-01-01T00:00 to what the clock shows, [`FIRST`] to [`LAST`].
    clock: i64,
    /// Minutes that the clock is ahead of UTC, at most [`FURTHEST`] either way.
    ahead: i32,
}

/// A text that is no moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MomentError {
    /// Not written as `2026-03-01T09:30+01:00`.
    Form,
    /// No such day, hour or offset.
    NoSuchTime,
}

impl fmt::Display for MomentError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Form => write!(f, "a date and time is written 2026-03-01T09:30+01:00"),
            Self::NoSuchTime => write!(f, "there is no such date or time"),
        }
    }
}

impl std::error::Error for MomentError {}

impl Moment {
    /// 1970-01-01T00:00Z.
    pub const EPOCH: Self = Self { clock: 0, ahead: 0 };

    /// From a local date and time as a date field gives it (`2026-03-01T09:30`) and the minutes that
    /// this clock is ahead of UTC then.
    ///
    /// ```
    /// use fermentside::quantity::{Moment, MomentError};
    ///
    /// let moment = Moment::from_local("2026-03-01T09:30", 60)?;
    /// assert_eq!(moment.to_string(), "2026-03-01T09:30+01:00");
    /// assert_eq!(Moment::from_local("2026-02-30T09:30", 60), Err(MomentError::NoSuchTime));
    /// assert_eq!(Moment::from_local("1 March", 60), Err(MomentError::Form));
    /// # Ok::<(), MomentError>(())
    /// ```
    ///
    /// # Errors
    /// [`MomentError`] when the text has another form or names no day or time, and when the clock is more
    /// than 25 h 59 min from UTC.
    pub fn from_local(text: &str, ahead_of_utc_minutes: i32) -> Result<Self, MomentError> {
        let clock = clock_minutes(text)?;
        if ahead_of_utc_minutes.unsigned_abs() > FURTHEST.unsigned_abs() {
            return Err(MomentError::NoSuchTime);
        }
        Ok(Self { clock, ahead: ahead_of_utc_minutes })
    }

    /// The moment of so many minutes since 1970-01-01T00:00Z on a clock that is so many minutes ahead of
    /// UTC; `None` when that clock then shows no time of the years 0000 to 9999, or is more than
    /// 25 h 59 min from UTC.
    ///
    /// ```
    /// use fermentside::quantity::Moment;
    ///
    /// let moment = Moment::from_utc(24 * 60 + 30, 60).map(|moment| moment.to_string());
    /// assert_eq!(moment.as_deref(), Some("1970-01-02T01:30+01:00"));
    /// assert_eq!(Moment::from_utc(i64::MAX, 0), None);
    /// ```
    #[must_use]
    pub fn from_utc(minutes_since_epoch: i64, ahead_of_utc_minutes: i32) -> Option<Self> {
        let clock = minutes_since_epoch.checked_add(i64::from(ahead_of_utc_minutes))?;
        let fits = (FIRST..=LAST).contains(&clock)
            && ahead_of_utc_minutes.unsigned_abs() <= FURTHEST.unsigned_abs();
        fits.then_some(Self { clock, ahead: ahead_of_utc_minutes })
    }

    /// The local part, as a date field takes it: `2026-03-01T09:30`.
    #[must_use]
    pub fn local_text(self) -> String {
        let (y, m, d, hour, minute, _) = self.parts();
        format!("{y:04}-{m:02}-{d:02}T{hour:02}:{minute:02}")
    }

    /// Hours from `earlier` to this moment; negative when it lies before.
    ///
    /// ```
    /// use fermentside::quantity::{Hours, Moment};
    ///
    /// // In the night between, the clocks are set forward by an hour.
    /// let evening: Moment = "2026-03-28T20:00+01:00".parse()?;
    /// let morning: Moment = "2026-03-29T08:00+02:00".parse()?;
    /// assert_eq!(morning.since(evening), Hours::literal(11.0));
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn since(self, earlier: Self) -> Hours {
        let minutes = self.minutes_since_epoch() - earlier.minutes_since_epoch();
        Hours::nearest(minutes as f64 / 60.0)
    }

    /// The moment `hours` later, on the same clock; the calendar's first or last where it would lie
    /// beyond.
    ///
    /// ```
    /// use fermentside::quantity::{Hours, Moment};
    ///
    /// let pitched: Moment = "2026-03-01T09:30+01:00".parse()?;
    /// let later = pitched.after(Hours::literal(14.0 * 24.0));
    /// assert_eq!(later.local_text(), "2026-03-15T09:30");
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn after(self, hours: Hours) -> Self {
        let minutes = (hours.value() * 60.0).round() as i64;
        Self { clock: self.clock.saturating_add(minutes).clamp(FIRST, LAST), ..self }
    }

    /// Minutes since 1970-01-01T00:00Z, for axes and order.
    ///
    /// ```
    /// use fermentside::quantity::Moment;
    ///
    /// let moment: Moment = "1970-01-02T01:30+01:00".parse()?;
    /// assert_eq!(moment.minutes_since_epoch(), 24 * 60 + 30);
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn minutes_since_epoch(self) -> i64 {
        self.clock - i64::from(self.ahead)
    }

    /// The same instant in UTC, as calendars write it: `20260301T083000Z` (RFC 5545); the calendar's
    /// first or last where it would lie beyond.
    ///
    /// ```
    /// use fermentside::quantity::Moment;
    ///
    /// let moment: Moment = "2026-03-01T00:30+01:00".parse()?;
    /// assert_eq!(moment.utc_text(), "20260228T233000Z");
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn utc_text(self) -> String {
        let clock = self.minutes_since_epoch().clamp(FIRST, LAST);
        let (y, m, d, hour, minute, _) = Self { clock, ahead: 0 }.parts();
        format!("{y:04}{m:02}{d:02}T{hour:02}{minute:02}00Z")
    }

    /// Minutes that the clock was ahead of UTC.
    #[must_use]
    pub fn offset_minutes(self) -> i32 {
        self.ahead
    }

    /// Year, month (1 to 12), day, hour and minute on the local clock, and the weekday (0 is Monday).
    ///
    /// ```
    /// use fermentside::quantity::Moment;
    ///
    /// // A Sunday.
    /// let moment: Moment = "2026-03-01T09:30+01:00".parse()?;
    /// assert_eq!(moment.parts(), (2026, 3, 1, 9, 30, 6));
    /// # Ok::<(), fermentside::quantity::MomentError>(())
    /// ```
    #[must_use]
    pub fn parts(self) -> (i32, u8, u8, u8, u8, u8) {
        let (day, of_day) = (self.clock.div_euclid(DAY), self.clock.rem_euclid(DAY));
        let date =
            i32::try_from(day + EPOCH_DAY).ok().and_then(|day| Date::from_julian_day(day).ok());
        // The clock is within the calendar, so there is always a date.
        let (y, m, d) = date.map_or((1970, Month::January, 1), Date::to_calendar_date);
        let weekday = date.map_or(Weekday::Thursday, Date::weekday);
        let (hour, minute) = (of_day / 60, of_day % 60);
        (y, u8::from(m), d, hour as u8, minute as u8, weekday.number_days_from_monday())
    }
}

impl PartialOrd for Moment {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

/// By time. The same instant on two clocks is ordered, not equal.
impl Ord for Moment {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        let key = |moment: &Self| (moment.minutes_since_epoch(), moment.ahead);
        key(self).cmp(&key(other))
    }
}

fn number<T: FromStr>(text: Option<&str>) -> Result<T, MomentError> {
    let digits = text.filter(|t| !t.is_empty() && t.bytes().all(|b| b.is_ascii_digit()));
    digits.and_then(|t| t.parse().ok()).ok_or(MomentError::Form)
}

/// Minutes from 1970-01-01T00:00 to what a clock shows.
pub(super) fn clock_minutes(text: &str) -> Result<i64, MomentError> {
    let bytes = text.as_bytes();
    // Some browsers add seconds to a date field's text.
    let with_seconds = text.len() == 19 && bytes.get(16) == Some(&b':');
    let marks = [(4, b'-'), (7, b'-'), (10, b'T'), (13, b':')];
    let formed = (text.len() == 16 || with_seconds)
        && text.is_ascii()
        && marks.iter().all(|&(at, mark)| bytes.get(at) == Some(&mark));
    if !formed {
        return Err(MomentError::Form);
    }
    let month: u8 = number(text.get(5..7))?;
    let month = Month::try_from(month).map_err(|_| MomentError::NoSuchTime)?;
    let date = Date::from_calendar_date(number(text.get(0..4))?, month, number(text.get(8..10))?);
    let (hour, minute): (i64, i64) = (number(text.get(11..13))?, number(text.get(14..16))?);
    match date {
        Ok(date) if hour < 24 && minute < 60 => {
            let day = i64::from(date.to_julian_day()) - EPOCH_DAY;
            Ok(day * DAY + hour * 60 + minute)
        }
        _ => Err(MomentError::NoSuchTime),
    }
}

impl FromStr for Moment {
    type Err = MomentError;
    fn from_str(text: &str) -> Result<Self, MomentError> {
        let (clock, offset) = (text.get(..16), text.get(16..));
        let (Some(clock), Some(offset)) = (clock, offset) else { return Err(MomentError::Form) };
        let sign = match offset.get(0..1) {
            Some("+") => 1,
            Some("-") => -1,
            _ => return Err(MomentError::Form),
        };
        if offset.len() != 6 || offset.get(3..4) != Some(":") {
            return Err(MomentError::Form);
        }
        let (h, m): (i32, i32) = (number(offset.get(1..3))?, number(offset.get(4..6))?);
        if m > 59 {
            return Err(MomentError::NoSuchTime);
        }
        Self::from_local(clock, sign * (h * 60 + m))
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let minutes = self.ahead;
        let sign = if minutes < 0 { '-' } else { '+' };
        let size = minutes.abs();
        write!(f, "{}{sign}{:02}:{:02}", self.local_text(), size / 60, size % 60)
    }
}

impl TryFrom<String> for Moment {
    type Error = MomentError;
    fn try_from(text: String) -> Result<Self, MomentError> {
        text.parse()
    }
}

impl From<Moment> for String {
    fn from(moment: Moment) -> String {
        moment.to_string()
    }
}
