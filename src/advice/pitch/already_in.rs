//! The yeast is in already, and the wort is too warm or too cold: what to do now.

use super::wort_temperature::A_LITTLE_COOL;
use crate::advice::family::{Family, Purpose, Span};
use crate::advice::practice::Lag;
use crate::advice::{Advice, Verdict};
use crate::quantity::{Celsius, Estimate, Hours, Measured, TemperatureChange};
use crate::science::{Term, Worked};

/// From here some ordinary yeast may be lost (95 to 105 °F; common practice, no source).
const MAY_BE_LOST: Celsius = Celsius::literal(35.0);
/// Here yeast dies (120 °F; common practice, no source).
const KILLS: Celsius = Celsius::literal(49.0);
/// The first two or three days make most of the flavour (common practice, no source).
const MATTERS_FOR: Hours = Hours::literal(72.0);

/// How the beer stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pitched {
    /// What the thermometer says, with its own uncertainty.
    pub beer: Estimate<Celsius>,
    /// The yeast.
    pub family: Family,
    /// The packet's own range, which wins.
    pub packet: Option<Span<Celsius>>,
    /// Since the yeast went in.
    pub since: Hours,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// In the range.
    Within(Span<Celsius>),
    /// Warmer than the range by so much.
    TooWarm(Span<Celsius>, TemperatureChange),
    /// Colder than the range by so much.
    TooCold(Span<Celsius>, TemperatureChange),
    /// Colder than the range by so much, as it was pitched: it begins slower, and warms itself as it does.
    BeginsCool(Span<Celsius>, TemperatureChange),
    /// About here yeast begins to be lost.
    YeastMayBeLost(Celsius),
    /// About here yeast dies.
    KillsYeast(Celsius),
    /// Fruity or solvent-like notes are to be expected, and no other harm.
    Fruity,
    /// The first days matter most, and they are not over.
    EarlyDays(Hours),
    /// What the warm days have done is done.
    LateDays(Hours),
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Leave it.
    Leave,
    /// Bring it down to this now: wet cloth, water tub, cooler room.
    CoolNow(Celsius),
    /// The same, and keep a spare sachet for the case that it never begins.
    CoolAndKeepSpare(Celsius),
    /// Bring it down to this and pitch fresh yeast there.
    CoolAndPitchAgain(Celsius),
    /// Keep it from warming further; a fast fall now stops the yeast before its end.
    HoldSteady,
    /// Warm it gently to this.
    WarmTo(Celsius),
}

/// Judges beer whose yeast is in. The high end of the thermometer counts where yeast can be lost.
///
/// ```
/// use fermentside::advice::{Verdict, family::Family, pitch::already_in::{Next, Pitched, judge}};
/// use fermentside::quantity::{Celsius, Estimate, Hours};
///
/// let at = |t| judge(Pitched {
///     beer: Estimate::new(Celsius::literal(t), 0.5),
///     family: Family::CleanAle,
///     packet: None,
///     since: Hours::literal(12.0),
/// });
/// assert_eq!(at(20.0).verdict, Verdict::Go);
/// assert_eq!(at(26.0).next, Next::CoolNow(Celsius::literal(22.0)));
/// assert_eq!(at(50.0).next, Next::CoolAndPitchAgain(Celsius::literal(22.0)));
/// ```
#[must_use]
pub fn judge(pitched: Pitched) -> Advice<Reason, Next> {
    let range = pitched.family.range_for(Purpose::Fermenting, pitched.packet);
    let (t, high) = (pitched.beer.value(), pitched.beer.upper(1.0));
    // Yeast whose own range reaches to the common mark is lost later.
    let lost = if range.to >= MAY_BE_LOST { pitched.family.harmed_above() } else { MAY_BE_LOST };
    let worked = Worked::default()
        .input(Term::WortTemperature, t)
        .input(Term::TargetTemperature, range.from)
        .input(Term::TargetTemperature, range.to)
        .input(Term::TimeBetween, pitched.since)
        .doubt(Term::WortTemperature, pitched.beer.sigma());
    let advice = |verdict, reasons, next| Advice { verdict, reasons, next, worked: worked.clone() };
    let early = pitched.since <= MATTERS_FOR;
    let when = if early { Reason::EarlyDays(MATTERS_FOR) } else { Reason::LateDays(MATTERS_FOR) };
    if t > range.to || high >= lost {
        let over = TemperatureChange::nearest(t.above(range.to).value().max(0.0));
        let mut reasons = vec![];
        if high >= KILLS {
            reasons.push(Reason::KillsYeast(KILLS));
        } else if high >= lost {
            reasons.push(Reason::YeastMayBeLost(lost));
        }
        reasons.push(Reason::TooWarm(range, over));
        reasons.extend((early && high < KILLS).then_some(Reason::Fruity));
        reasons.push(when);
        return if high >= KILLS {
            advice(Verdict::Stop, reasons, Next::CoolAndPitchAgain(range.to))
        } else if high >= lost {
            advice(Verdict::Stop, reasons, Next::CoolAndKeepSpare(range.to))
        } else if early {
            advice(Verdict::Wait, reasons, Next::CoolNow(range.to))
        } else {
            advice(Verdict::Wait, reasons, Next::HoldSteady)
        };
    }
    if t < range.from {
        // What was cool enough to pitch is not too cold the minute after.
        let pitch_at = pitched.family.range_for(Purpose::Pitching, pitched.packet);
        let cool = range.from.above(t);
        if pitched.since <= Lag::of(false).signs && pitch_at.from.above(t) <= A_LITTLE_COOL {
            return advice(Verdict::Go, vec![Reason::BeginsCool(range, cool)], Next::Leave);
        }
        let reasons = vec![Reason::TooCold(range, cool)];
        return advice(Verdict::Wait, reasons, Next::WarmTo(range.from));
    }
    advice(Verdict::Go, vec![Reason::Within(range)], Next::Leave)
}

/// How long it has been quiet since the yeast went in, and so what to make of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Silence {
    /// Usual so soon.
    Usual,
    /// Time to look for foam under the lid.
    LookUnderLid,
    /// Time to take a gravity.
    TakeGravity,
    /// Pitch again, if the gravity has not moved.
    PitchAgain,
}

/// What to make of a vessel that is quiet so long after pitching, by the hours that hold for its yeast.
///
/// ```
/// use fermentside::advice::pitch::already_in::{Silence, silence};
/// use fermentside::{advice::practice::Lag, quantity::Hours};
///
/// let after = |hours, slow| silence(Hours::literal(hours), Lag::of(slow));
/// assert_eq!(after(23.9, false), Silence::Usual);
/// assert_eq!([after(72.0, false), after(72.0, true)], [Silence::PitchAgain, Silence::TakeGravity]);
/// ```
#[must_use]
pub fn silence(since: Hours, lag: Lag) -> Silence {
    if since < lag.signs {
        Silence::Usual
    } else if since < lag.gravity {
        Silence::LookUnderLid
    } else if since < lag.pitch_again {
        Silence::TakeGravity
    } else {
        Silence::PitchAgain
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ale(t: f64, hours: f64) -> Advice<Reason, Next> {
        judge(Pitched {
            beer: Estimate::new(Celsius::literal(t), 0.5),
            family: Family::CleanAle,
            packet: None,
            since: Hours::literal(hours),
        })
    }

    #[test]
    fn the_hotter_the_more_is_done() {
        let top = Family::CleanAle.ferments_at().to;
        assert_eq!(ale(20.0, 3.0).next, Next::Leave);
        assert_eq!(ale(29.0, 3.0).next, Next::CoolNow(top));
        assert_eq!(ale(37.0, 3.0).next, Next::CoolAndKeepSpare(top));
        assert_eq!(ale(50.0, 1.0).next, Next::CoolAndPitchAgain(top));
        assert_eq!(ale(12.0, 3.0).next, Next::WarmTo(Family::CleanAle.ferments_at().from));
    }

    #[test]
    fn a_packet_for_the_warm_is_believed() {
        let packet = Some(Span::new(Celsius::literal(25.0), Celsius::literal(36.0)));
        let beer = Estimate::new(Celsius::literal(35.0), 0.5);
        let since = Hours::literal(5.0);
        let found = judge(Pitched { beer, family: Family::Saison, packet, since });
        assert_eq!(found.verdict, Verdict::Go);
    }

    #[test]
    fn what_was_cool_enough_to_pitch_is_not_too_cold_the_minute_after() {
        for family in Family::ALL {
            let lowest = family.pitch_at().from.value() - A_LITTLE_COOL.value();
            let beer = Estimate::new(Celsius::literal(lowest + 0.01), 0.5);
            let at = |hours| {
                judge(Pitched { beer, family, packet: None, since: Hours::literal(hours) }).verdict
            };
            assert_eq!(at(0.0), Verdict::Go, "{family:?}");
            let cold = lowest + 0.01 < family.ferments_at().from.value();
            assert_eq!(at(25.0), if cold { Verdict::Wait } else { Verdict::Go }, "{family:?}");
        }
    }

    #[test]
    fn late_warmth_is_not_chased() {
        assert_eq!(ale(25.0, 100.0).next, Next::HoldSteady);
        assert!(ale(25.0, 10.0).reasons.contains(&Reason::Fruity));
    }
}
