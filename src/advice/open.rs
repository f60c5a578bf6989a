//! Open: when to try the first bottle.
//!
//! Two to three weeks at 20 to 24 °C for ordinary beer, four for strong, double near 15 °C; colder than
//! 13 °C ale yeast hardly works (common practice, no source).

use super::{Advice, Verdict};
use crate::quantity::{Celsius, Hours, Measured, Moment, SpecificGravity};
use crate::science::{Term, Worked};

/// What is known of bottles that stand and wait.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// When they were filled.
    pub bottled: Moment,
    /// Where they stand.
    pub place: Option<Celsius>,
    /// How strong the wort was.
    pub original: Option<SpecificGravity>,
    /// Now.
    pub now: Moment,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// In bottle so long.
    InBottle(Hours),
    /// Strong beer takes longer.
    Strong,
    /// A cool place takes longer.
    Cool(Celsius),
    /// Too cold for the yeast to work.
    TooCold(Celsius),
    /// Where they stand is not known; a room is taken.
    PlaceUnknown,
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Chill one for two days and open it.
    TryOne,
    /// Wait until then.
    WaitUntil(Moment),
    /// Move them to a warmer place, and wait.
    Warm(Moment),
}

/// Judges whether to try one. The date is a plan and no promise; only the bottle tells.
#[must_use]
pub fn judge(standing: Standing) -> Advice<Reason, Next> {
    let age = standing.now.since(standing.bottled);
    let mut reasons = vec![Reason::InBottle(age)];
    let strong = standing.original.is_some_and(|og| og > SpecificGravity::literal(1.060));
    let mut days = if strong { 28.0 } else { 14.0 };
    if strong {
        reasons.push(Reason::Strong);
    }
    let mut too_cold = false;
    match standing.place {
        None => reasons.push(Reason::PlaceUnknown),
        Some(place) if place < Celsius::literal(13.0) => {
            too_cold = true;
            days *= 2.0;
            reasons.push(Reason::TooCold(place));
        }
        Some(place) if place < Celsius::literal(18.0) => {
            days *= 2.0;
            reasons.push(Reason::Cool(place));
        }
        Some(_) => {}
    }
    let ready = standing.bottled.after(Hours::nearest(days * 24.0));
    let (verdict, next) = if standing.now >= ready {
        (Verdict::Go, Next::TryOne)
    } else if too_cold {
        (Verdict::Wait, Next::Warm(ready))
    } else {
        (Verdict::Wait, Next::WaitUntil(ready))
    };
    let mut worked = Worked::default().input(Term::HistoryOfTheBeer, age);
    if let Some(place) = standing.place {
        worked = worked.input(Term::WarmestTemperature, place);
    }
    Advice { verdict, reasons, next, worked }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after(days: f64, place: f64, og: f64) -> Advice<Reason, Next> {
        let bottled: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        judge(Standing {
            bottled,
            place: Some(Celsius::literal(place)),
            original: Some(SpecificGravity::literal(og)),
            now: bottled.after(Hours::nearest(days * 24.0)),
        })
    }

    #[test]
    fn cool_and_strong_take_longer() {
        assert_eq!(after(14.0, 21.0, 1.045).verdict, Verdict::Go);
        assert_eq!(after(13.0, 21.0, 1.045).verdict, Verdict::Wait);
        assert_eq!(after(20.0, 16.0, 1.045).verdict, Verdict::Wait);
        assert_eq!(after(20.0, 21.0, 1.075).verdict, Verdict::Wait);
        assert!(matches!(after(3.0, 10.0, 1.045).next, Next::Warm(_)));
    }
}
