//! The yeast is in already, and the wort is too warm or too cold: what to do now.

use crate::advice::family::{Family, Span};
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
    /// The same, and keep a spare sachet: pitch it there if nothing shows after a day or two.
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
    let range = pitched.packet.unwrap_or(pitched.family.ferments_at());
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
        let reasons = vec![Reason::TooCold(range, range.from.above(t))];
        return advice(Verdict::Wait, reasons, Next::WarmTo(range.from));
    }
    advice(Verdict::Go, vec![Reason::Within(range)], Next::Leave)
}

/// How long it has been quiet since the yeast went in, and so what to make of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Silence {
    /// Up to a day: usual.
    Usual,
    /// After a day: look for foam under the lid.
    LookUnderLid,
    /// After two days: take a gravity.
    TakeGravity,
    /// After three: pitch again, if the gravity has not moved.
    PitchAgain,
}

/// What to make of a quiet vessel so long after pitching (common practice, no source).
///
/// ```
/// use fermentside::advice::pitch::already_in::{Silence, silence};
/// use fermentside::quantity::Hours;
///
/// assert_eq!(silence(Hours::literal(23.9)), Silence::Usual);
/// assert_eq!(silence(Hours::literal(72.0)), Silence::PitchAgain);
/// ```
#[must_use]
pub fn silence(since: Hours) -> Silence {
    match since.days() {
        days if days < 1.0 => Silence::Usual,
        days if days < 2.0 => Silence::LookUnderLid,
        days if days < 3.0 => Silence::TakeGravity,
        _ => Silence::PitchAgain,
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
    fn late_warmth_is_not_chased() {
        assert_eq!(ale(25.0, 100.0).next, Next::HoldSteady);
        assert!(ale(25.0, 10.0).reasons.contains(&Reason::Fruity));
    }
}
