//! Carbon dioxide in the room: what one busy day's gas comes to, roughly, and what it forbids.
//!
//! c = c₀ + G ÷ (n V) × (1 − e^(−24 n)), with the busiest day's gas G spread over its hours, n changes of
//! air an hour, and V the room. Gas that lies in a corner or a box is not spread, so this is the least
//! of it; it takes no account of people, fires or drains.

use crate::advice::{Advice, Verdict};
use crate::quantity::{CubicMetres, Litres, Measured, PartsPerMillion};
use crate::science::{Amount, Source, Term, Worked};

/// Of the air outside.
const OUTSIDE: f64 = 420.0;
/// A box smaller than this can't be stood in: gas gathers in it whatever its lid does (common practice,
/// no source).
const A_BOX: CubicMetres = CubicMetres::literal(3.0);

/// Workplace marks (NIOSH): eight hours, fifteen minutes, at once dangerous.
pub const EIGHT_HOURS: PartsPerMillion = PartsPerMillion::literal(5_000.0);
/// Fifteen minutes at most.
pub const FIFTEEN_MINUTES: PartsPerMillion = PartsPerMillion::literal(30_000.0);
/// At once dangerous to life.
pub const DANGEROUS: PartsPerMillion = PartsPerMillion::literal(40_000.0);

crate::choices! {
    /// How the air changes (common practice, no source).
    pub enum AirChange {
        /// A lived-in room, door now and then open: half its air an hour.
        Room = "room",
        /// A cupboard or cellar, shut: a tenth of it.
        Shut = "shut",
        /// A chest freezer, a sealed box: none.
        Sealed = "sealed",
    }
}

impl AirChange {
    const fn an_hour(self) -> f64 {
        match self {
            Self::Room => 0.5,
            Self::Shut => 0.1,
            Self::Sealed => 0.0,
        }
    }
}

/// A room with beer in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Its size.
    pub size: CubicMetres,
    /// How its air changes.
    pub air: AirChange,
    /// Vessels fermenting in it at once.
    pub vessels: u32,
    /// Gas of the busiest day of one vessel.
    pub gas_in_busiest_day: Litres,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// About so much, when it is all mixed.
    About(PartsPerMillion),
    /// Below the mark for eight hours.
    BelowEightHours,
    /// Above the mark for eight hours.
    AboveEightHours,
    /// Above the mark for fifteen minutes.
    AboveFifteenMinutes,
    /// Above what is at once dangerous.
    Dangerous,
    /// A box or a sealed place: it may lie full of gas whatever this sum says.
    ClosedPlace,
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next {
    /// Nothing beyond not sleeping there.
    Nothing,
    /// Air it before staying, and do not sleep there.
    AirBeforeStaying,
    /// Open it, wait, never lean in; better, put the beer elsewhere.
    OpenAndWait,
}

/// The air and its judgement.
#[derive(Clone, Debug, PartialEq)]
pub struct Air {
    /// Carbon dioxide at the end of the busiest day, all mixed.
    pub carbon_dioxide: PartsPerMillion,
    /// The judgement: `Go` below the eight-hour mark, `Wait` above it, `Stop` above the fifteen-minute
    /// mark, for any closed place, and for a room of no size.
    pub advice: Advice<Reason, Next>,
}

/// Judges the air of a room in the busiest day.
///
/// ```
/// use fermentside::advice::{Verdict, pitch::room_air::{AirChange, Room, judge}};
/// use fermentside::quantity::{CubicMetres, Litres, Measured};
///
/// let size = CubicMetres::literal(30.0);
/// let gas_in_busiest_day = Litres::literal(200.0);
/// let air = |vessels, air| judge(Room { size, air, vessels, gas_in_busiest_day });
/// // 420 + 1000 × 200 ÷ 24 ÷ (0.5 × 30).
/// let one = air(1, AirChange::Room);
/// assert_eq!(format!("{:.0}", one.carbon_dioxide.value()), "976");
/// assert_eq!(one.advice.verdict, Verdict::Go);
/// assert_eq!(air(1, AirChange::Sealed).advice.verdict, Verdict::Stop);
/// ```
#[must_use]
pub fn judge(room: Room) -> Air {
    let (size, changes) = (room.size.value(), room.air.an_hour());
    let litres_an_hour = f64::from(room.vessels) * room.gas_in_busiest_day.value() / 24.0;
    // Hours of gas that are in the room at the end: all of a day's when no air changes.
    let hours = if changes > 0.0 { (1.0 - (-24.0 * changes).exp()) / changes } else { 24.0 };
    // A litre in a cubic metre is a thousand parts in a million. Not-a-number (no gas in no room) is
    // taken for the highest by `nearest`.
    let about = PartsPerMillion::nearest(OUTSIDE + 1000.0 * litres_an_hour * hours / size);
    let worked = Worked::default()
        .input(Term::RoomSize, Amount::Number(size, 1, "m³"))
        .input(Term::AirExchange, Amount::Number(changes, 1, "an hour"))
        .input(Term::GasBusiestDay, room.gas_in_busiest_day)
        .step(
            Term::GasInRoom,
            Amount::Number(about.value(), 0, "ppm"),
            "420 + vessels × G ÷ 24 h ÷ (n V) × (1 − e^(−24 n))",
            Source::CommonPractice,
        )
        .step(Term::GasInRoom, Amount::Number(EIGHT_HOURS.value(), 0, "ppm"), "8 h", Source::Niosh)
        .step(
            Term::GasInRoom,
            Amount::Number(FIFTEEN_MINUTES.value(), 0, "ppm"),
            "15 min",
            Source::Niosh,
        )
        .step(
            Term::GasInRoom,
            Amount::Number(DANGEROUS.value(), 0, "ppm"),
            "at once dangerous",
            Source::Niosh,
        );
    let closed = room.vessels > 0 && (room.size < A_BOX || room.air == AirChange::Sealed);
    let mut reasons = vec![Reason::About(about)];
    let by_marks = if about >= DANGEROUS {
        reasons.push(Reason::Dangerous);
        Verdict::Stop
    } else if about >= FIFTEEN_MINUTES {
        reasons.push(Reason::AboveFifteenMinutes);
        Verdict::Stop
    } else if about >= EIGHT_HOURS {
        reasons.push(Reason::AboveEightHours);
        Verdict::Wait
    } else {
        reasons.push(Reason::BelowEightHours);
        Verdict::Go
    };
    let verdict = if closed { Verdict::Stop } else { by_marks };
    if closed {
        reasons.insert(0, Reason::ClosedPlace);
    }
    let next = match verdict {
        Verdict::Go => Next::Nothing,
        Verdict::Wait => Next::AirBeforeStaying,
        _ => Next::OpenAndWait,
    };
    Air { carbon_dioxide: about, advice: Advice { verdict, reasons, next, worked } }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn air(size: f64, air: AirChange, vessels: u32) -> Air {
        let size = CubicMetres::literal(size);
        judge(Room { size, air, vessels, gas_in_busiest_day: Litres::literal(200.0) })
    }

    #[test]
    fn a_bucket_in_a_room_adds_some_hundreds() {
        let found = air(30.0, AirChange::Room, 1);
        let added = found.carbon_dioxide.value() - OUTSIDE;
        assert!((200.0..1000.0).contains(&added), "{added}");
        assert_eq!(found.advice.verdict, Verdict::Go);
    }

    #[test]
    fn a_small_cellar_and_a_freezer_are_another_thing() {
        let cellar = air(6.0, AirChange::Shut, 3);
        assert_eq!(cellar.advice.verdict, Verdict::Stop, "{cellar:?}");
        assert_eq!(air(12.0, AirChange::Shut, 1).advice.verdict, Verdict::Wait);
        let freezer = air(0.3, AirChange::Sealed, 1);
        assert!(freezer.advice.reasons.contains(&Reason::Dangerous));
        // Even where little is made.
        let little = Litres::literal(1.0);
        let size = CubicMetres::literal(0.3);
        let found =
            judge(Room { size, air: AirChange::Sealed, vessels: 1, gas_in_busiest_day: little });
        assert_eq!(found.advice.verdict, Verdict::Stop);
    }

    #[test]
    fn no_room_is_no_assurance() {
        assert_eq!(air(0.0, AirChange::Room, 0).advice.verdict, Verdict::Stop);
    }
}
