//! What a thermometer is worth, and where the wort is heading by two looks at it.

use crate::quantity::{Celsius, Estimate, Hours, Measured, TemperatureChange};
use crate::science::cooling::Look;

/// One standard deviation in moving and in still wort: ±1.5 °F and ±3 °F (common practice, no source).
const STRIP_MOVING: f64 = 1.5 * 5.0 / 9.0;
const STILL: f64 = 3.0 * 5.0 / 9.0;
/// A clean probe in stirred wort (common practice, no source).
const PROBE: f64 = 0.5;
/// Two looks with one thermometer share most of its fault; this part of it is left between them.
const BETWEEN: f64 = 0.5;

crate::choices! {
    /// What it was read with.
    pub enum Thermometer {
        /// A probe in the wort.
        Probe = "probe",
        /// A strip on the wall of the vessel.
        Strip = "strip",
    }

    /// Whether the wort was stirred before it was read.
    pub enum Stirred {
        /// It was.
        Yes = "yes",
        /// It was not.
        No = "no",
    }

    /// Thermometer and stirring in one answer.
    pub enum ReadWith {
        /// A probe in stirred wort.
        Probe = "probe",
        /// A strip on the wall, the wort stirred.
        Strip = "strip",
        /// Anything, in wort that stood still.
        Still = "still",
    }
}

impl Stirred {
    /// As a plain truth.
    #[must_use]
    pub fn is_yes(self) -> bool {
        self == Self::Yes
    }
}

impl ReadWith {
    /// The thermometer, and whether the wort was stirred.
    #[must_use]
    pub const fn parts(self) -> (Thermometer, bool) {
        match self {
            Self::Probe => (Thermometer::Probe, true),
            Self::Strip => (Thermometer::Strip, true),
            Self::Still => (Thermometer::Probe, false),
        }
    }

    /// A temperature as it is known when it was read so.
    ///
    /// ```
    /// use fermentside::{advice::thermometer::ReadWith, quantity::Celsius};
    ///
    /// let sigma = |with: ReadWith| with.reads(Celsius::literal(20.0)).sigma();
    /// assert!(sigma(ReadWith::Probe) < sigma(ReadWith::Strip));
    /// assert!(sigma(ReadWith::Strip) < sigma(ReadWith::Still));
    /// ```
    #[must_use]
    pub fn reads(self, t: Celsius) -> Estimate<Celsius> {
        let (thermometer, stirred) = self.parts();
        thermometer.reads(t, stirred)
    }
}

impl Thermometer {
    /// What it says with its own uncertainty. In wort that was not stirred any thermometer knows one
    /// layer only.
    ///
    /// ```
    /// use fermentside::{advice::thermometer::Thermometer, quantity::Celsius};
    ///
    /// let sigma = |stirred| Thermometer::Probe.reads(Celsius::literal(20.0), stirred).sigma();
    /// assert_eq!(format!("{:.1} stirred, {:.1} not", sigma(true), sigma(false)), "0.5 stirred, 1.7 not");
    /// ```
    #[must_use]
    pub fn reads(self, t: Celsius, stirred: bool) -> Estimate<Celsius> {
        let sigma = match (self, stirred) {
            (Self::Probe, true) => PROBE,
            (Self::Strip, true) => STRIP_MOVING,
            (_, false) => STILL,
        };
        Estimate::new(t, sigma)
    }
}

/// The looks at a thermometer as the clock and the trend want them: an earlier one, if there was one, and
/// how long after it the present one.
///
/// ```
/// use fermentside::advice::thermometer::{ReadWith, looks};
/// use fermentside::quantity::{Celsius, Hours};
///
/// let reads = |t| ReadWith::Probe.reads(Celsius::literal(t));
/// let both = looks(reads(25.0), Some((reads(40.0), Hours::literal(1.0))));
/// assert_eq!((both.len(), both[1].at, both[1].temperature), (2, Hours::literal(1.0), reads(25.0)));
/// assert_eq!(looks(reads(25.0), None).len(), 1);
/// ```
#[must_use]
pub fn looks(now: Estimate<Celsius>, earlier: Option<(Estimate<Celsius>, Hours)>) -> Vec<Look> {
    let first = Hours::literal(0.0);
    match earlier {
        None => vec![Look { at: first, temperature: now }],
        Some((temperature, apart)) => {
            vec![Look { at: first, temperature }, Look { at: apart, temperature: now }]
        }
    }
}

/// Where the wort is heading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Trend {
    /// It cools by so much an hour.
    Falling(TemperatureChange),
    /// No more than the thermometer can tell apart.
    Steady,
    /// It warms by so much an hour.
    Rising(TemperatureChange),
}

/// The trend of the first and the last of some looks; `None` with fewer than two at different times.
/// A change that two looks with one thermometer could show by chance (two standard deviations) is
/// called steady.
///
/// ```
/// use fermentside::advice::thermometer::{Trend, trend};
/// use fermentside::quantity::{Celsius, Estimate, Hours, TemperatureChange};
/// use fermentside::science::cooling::Look;
///
/// let look = |at, t| {
///     Look { at: Hours::literal(at), temperature: Estimate::new(Celsius::literal(t), 0.5) }
/// };
/// let falls = Some(Trend::Falling(TemperatureChange::literal(2.5)));
/// assert_eq!(trend(&[look(0.0, 30.0), look(2.0, 25.0)]), falls);
/// assert_eq!(trend(&[look(0.0, 30.0), look(2.0, 29.5)]), Some(Trend::Steady));
/// assert_eq!(trend(&[look(0.0, 30.0)]), None);
/// ```
#[must_use]
pub fn trend(looks: &[Look]) -> Option<Trend> {
    let by_time = |a: &&Look, b: &&Look| a.at.value().total_cmp(&b.at.value());
    let (first, last) = (looks.iter().min_by(by_time)?, looks.iter().max_by(by_time)?);
    let hours = last.at.value() - first.at.value();
    if hours <= 0.0 {
        return None;
    }
    let change = last.temperature.value().above(first.temperature.value()).value();
    let sigma = BETWEEN * first.temperature.sigma().hypot(last.temperature.sigma());
    let an_hour = TemperatureChange::nearest((change / hours).abs());
    // An endless doubt makes the right side endless, and nothing is larger.
    Some(if change.abs() <= 2.0 * sigma {
        Trend::Steady
    } else if change < 0.0 {
        Trend::Falling(an_hour)
    } else {
        Trend::Rising(an_hour)
    })
}

/// The looks as the cooling clock wants them: with the doubt that is left between them.
///
/// ```
/// use fermentside::advice::thermometer::for_the_clock;
/// use fermentside::quantity::{Celsius, Estimate, Hours};
/// use fermentside::science::cooling::Look;
///
/// let temperature = Estimate::new(Celsius::literal(30.0), 0.5);
/// let looks = for_the_clock(&[Look { at: Hours::literal(0.0), temperature }]);
/// assert_eq!(looks[0].temperature.sigma(), 0.25);
/// ```
#[must_use]
pub fn for_the_clock(looks: &[Look]) -> Vec<Look> {
    let shared = |look: &Look| Look {
        temperature: Estimate::new(look.temperature.value(), BETWEEN * look.temperature.sigma()),
        ..*look
    };
    looks.iter().map(shared).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Hours;

    fn looks(first: f64, last: f64) -> [Look; 2] {
        [(0.0, first), (0.5, last)].map(|(at, t)| Look {
            at: Hours::literal(at),
            temperature: Thermometer::Probe.reads(Celsius::literal(t), true),
        })
    }

    #[test]
    fn tells_falling_from_steady() {
        let falling = trend(&looks(30.0, 26.0));
        assert_eq!(falling, Some(Trend::Falling(TemperatureChange::literal(8.0))));
        assert_eq!(trend(&looks(26.0, 25.6)), Some(Trend::Steady));
        assert!(matches!(trend(&looks(16.0, 18.0)), Some(Trend::Rising(_))));
        assert_eq!(trend(&looks(30.0, 26.0)[..1]), None);
    }

    #[test]
    fn a_strip_knows_less_and_less_still() {
        let of = |kind: Thermometer, stirred| kind.reads(Celsius::literal(20.0), stirred).sigma();
        assert!(of(Thermometer::Probe, true) < of(Thermometer::Strip, true));
        assert!(of(Thermometer::Strip, true) < of(Thermometer::Strip, false));
        assert_eq!(of(Thermometer::Probe, false), of(Thermometer::Strip, false));
    }
}
