//! What to do when something is wrong with the bottles.

use crate::advice::open::remark::Remark;
use crate::advice::open::worried::{Action, Cause, Symptom};
use crate::quantity::{Celsius, Kilopascals};
use crate::words::texts::texts;
use crate::words::write::Writer;

texts! {
    /// What is said to someone who worries.
    WorriedWords, WORRIED {
        heading: "Something is wrong",
        what_is_seen: "What do you see?",
        first_safe: "First make them safe",
        what_to_do: "What to do",
        pressures: "Pressure once the sugar is eaten",
        knows_nothing: "The record knows nothing of wild yeast: gushing bottles may hold more than this.",
        causes: "What may be behind it, the likeliest first",
        stand_at: "They stand at",
        pressure_there: "Pressure there",
    } says {
        symptom: fn(Symptom) -> &'static str = symptom,
        remark: fn(Remark) -> &'static str = remark,
        step: fn(Action) -> &'static str = step,
        cause: fn(Cause) -> &'static str = cause,
        a_guess: fn(Writer, Celsius) -> String = a_guess,
        chilled_to: fn(Writer, Celsius) -> String = chilled_to,
        at_worst: fn(Writer, Kilopascals, Kilopascals) -> String = at_worst,
    }
}

fn a_guess(w: Writer, place: Celsius) -> String {
    format!("{}, a guess", w.temperature(place))
}

fn chilled_to(w: Writer, cold: Celsius) -> String {
    format!("Chilled to {}", w.degrees(cold))
}

fn at_worst(w: Writer, best: Kilopascals, worst: Kilopascals) -> String {
    format!("{}, at worst {}", w.pressure(best), w.pressure(worst))
}

/// What comes before the steps.
const fn remark(remark: Remark) -> &'static str {
    match remark {
        Remark::AboveCeiling => "At worst they hold more than their usual ceiling.",
        Remark::Green => "They are less than two weeks old: most often that is all.",
    }
}

/// What is seen.
const fn symptom(symptom: Symptom) -> &'static str {
    match symptom {
        Symptom::OneBurst => "One has burst",
        Symptom::GushingAll => "All of them gush",
        Symptom::GushingSome => "Some gush",
        Symptom::FlatAll => "All are flat",
        Symptom::FlatSome => "Some are flat",
    }
}

/// One thing to do.
const fn step(step: Action) -> &'static str {
    match step {
        Action::KeepAway => {
            "Go away from them first, and keep the household, children and pets away."
        }
        Action::AssumeTheRest => "One has burst: take it that the rest may.",
        Action::Cover => "Before you go near: eyes and face covered, thick gloves, long sleeves.",
        Action::KeepClosed => {
            "Leave them in their closed case, or put a lidded tub or a heavy blanket over them. Do not shake them, and carry none loose."
        }
        Action::ChillAll => {
            "Chill them all for two days, as cold as you can without freezing: cold lowers the pressure."
        }
        Action::Vent => {
            "Still covered, cold and one at a time: a cloth over the cap, let the gas out slowly, and once more after an hour. Close them again."
        }
        Action::LeaveCold => {
            "If you cannot make them safe, leave them cold and covered, and tell everyone in the house."
        }
        Action::Warm => "Stand them in a warm room, 20 to 24\u{A0}°C, out of the light.",
        Action::TurnOver => "Turn each bottle over once, so that the yeast is in the beer.",
        Action::TestOne => "A week later chill one for two or three days and try it.",
        Action::NoMoreSugar => {
            "No sugar into every bottle, unless one that was kept warm has failed: flat bottles often only need time, and then they would hold too much."
        }
    }
}

/// What may be behind it, and what would tell.
const fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::Unfinished => {
            "It had not finished. To tell: let a cold, opened one go flat and read its gravity; lower than at bottling means that it went on."
        }
        Cause::OverDosed => {
            "Too much sugar for the volume. To tell: compare what was weighed, and the volume in the bottling vessel, with the record."
        }
        Cause::GoesOn => {
            "Wild yeast, bacteria, or a yeast that goes on. To tell: it grows worse by the week, thinner, often sour, and the gravity falls below where it ended."
        }
        Cause::WeakGlass => {
            "The glass: chipped, scratched, thin or one-way. To tell: look at the others, cold and covered, for chips and for the maker's mark."
        }
        Cause::UnevenMixing => {
            "The sugar was not mixed evenly. To tell: bottles filled first and last differ."
        }
        Cause::DirtyBottles => {
            "Those bottles were not clean. To tell: a ring in the neck, an off smell, and only some of them."
        }
        Cause::WarmOrYoung => {
            "Opened warm or young, with the gas not yet in the beer. To tell: chill one for two or three days and open it cold."
        }
        Cause::TooYoung => "Too young. To tell: two or three weeks warm, strong beer four to six.",
        Cause::TooCold => "They stand too cold. To tell: put one in a warm room for two weeks.",
        Cause::NotChilled => {
            "Not chilled long enough before it was opened. To tell: chill one for two or three days."
        }
        Cause::Caps => {
            "Caps or seals leak. To tell: turn one over in water, or squeeze a plastic one."
        }
        Cause::UnderDosed => {
            "Too little sugar, or gas was counted that had left the beer. To tell: compare with the record, and with the warmest it had been."
        }
        Cause::TiredYeast => {
            "The yeast is tired after a long, cold or strong time. To tell: one bottle warm for three weeks, turned over now and then."
        }
    }
}
