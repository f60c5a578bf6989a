//! A moment: the wall clock where the brewer stood, and how far that clock was from UTC.
//!
//! Both are kept, so that "64 hours apart" is true across a clock change or a journey.

use super::measured::{Hours, Measured};
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use time::{Date, Month, OffsetDateTime, PrimitiveDateTime, Time, UtcOffset};

/// A date and time to the minute with its offset from UTC. Written `2026-03-01T09:30+01:00`
/// (ISO 8601).
#[derive(Clone, Copy, Debug, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Moment(OffsetDateTime);

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
    pub const EPOCH: Self = Self(OffsetDateTime::UNIX_EPOCH);

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
    /// [`MomentError`] when the text has another form or names no day or time.
    pub fn from_local(text: &str, ahead_of_utc_minutes: i32) -> Result<Self, MomentError> {
        let local = local(text)?;
        let offset = UtcOffset::from_whole_seconds(ahead_of_utc_minutes.saturating_mul(60))
            .map_err(|_| MomentError::NoSuchTime)?;
        Ok(Self(local.assume_offset(offset)))
    }

    /// The local part, as a date field takes it: `2026-03-01T09:30`.
    #[must_use]
    pub fn local_text(self) -> String {
        let Self(t) = self;
        let (y, m, d) = t.date().to_calendar_date();
        format!("{y:04}-{:02}-{d:02}T{:02}:{:02}", u8::from(m), t.hour(), t.minute())
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
        Hours::nearest((self.0 - earlier.0).whole_minutes() as f64 / 60.0)
    }

    /// The moment `hours` later, on the same clock.
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
        Self(self.0.checked_add(time::Duration::minutes(minutes)).unwrap_or(self.0))
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
        self.0.unix_timestamp().div_euclid(60)
    }

    /// The same instant in UTC, as calendars write it: `20260301T083000Z` (RFC 5545).
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
        let t = self.0.to_offset(UtcOffset::UTC);
        let (y, m, d) = t.date().to_calendar_date();
        let (hour, minute) = (t.hour(), t.minute());
        format!("{y:04}{:02}{d:02}T{hour:02}{minute:02}00Z", u8::from(m))
    }

    /// Minutes that the clock was ahead of UTC.
    #[must_use]
    pub fn offset_minutes(self) -> i32 {
        i32::from(self.0.offset().whole_minutes())
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
        let Self(t) = self;
        let (y, m, d) = t.date().to_calendar_date();
        (y, u8::from(m), d, t.hour(), t.minute(), t.weekday().number_days_from_monday())
    }
}

/// Two moments are one when clock and offset agree: the same instant on two clocks is ordered, not equal.
impl PartialEq for Moment {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl PartialOrd for Moment {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Moment {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.0.cmp(&other.0).then_with(|| self.0.offset().cmp(&other.0.offset()))
    }
}

fn number<T: FromStr>(text: Option<&str>) -> Result<T, MomentError> {
    let digits = text.filter(|t| !t.is_empty() && t.bytes().all(|b| b.is_ascii_digit()));
    digits.and_then(|t| t.parse().ok()).ok_or(MomentError::Form)
}

fn local(text: &str) -> Result<PrimitiveDateTime, MomentError> {
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
    let time = Time::from_hms(number(text.get(11..13))?, number(text.get(14..16))?, 0);
    match (date, time) {
        (Ok(date), Ok(time)) => Ok(PrimitiveDateTime::new(date, time)),
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
        let minutes = self.0.offset().whole_minutes();
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

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Moment {
        text.parse().expect("a moment")
    }

    #[test]
    fn reads_back_what_it_writes() {
        for text in ["2026-03-01T09:30+01:00", "2024-02-29T23:59-03:30", "1999-12-31T00:00+00:00"] {
            assert_eq!(at(text).to_string(), text);
        }
    }

    #[test]
    fn hours_are_true_across_a_clock_change() {
        // The European spring change of 2026 is on 29 March.
        let before = at("2026-03-28T12:00+01:00");
        let after = at("2026-03-29T12:00+02:00");
        assert_eq!(after.since(before).value(), 23.0);
        assert!(before < after);
    }

    #[test]
    fn refuses_what_is_no_time() {
        for text in [
            "",
            "2026-03-01",
            "2026-13-01T00:00+00:00",
            "2026-02-30T00:00+00:00",
            "2026-02-01T24:00+00:00",
            "2026-02-01 10:00+00:00",
            "2026-02-01T10:00Z",
            "२०२६-02-01T10:00+00:00",
        ] {
            assert!(text.parse::<Moment>().is_err(), "{text}");
        }
        assert!(Moment::from_local("2026-03-01T09:30:00", 60).is_ok());
    }

    #[test]
    fn later_and_earlier_undo_each_other() {
        let start = at("2026-03-01T09:30+01:00");
        assert_eq!(start.after(Hours::literal(49.5)).since(start).value(), 49.5);
    }
}
