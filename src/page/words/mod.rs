//! All text for people: names of places and things, and what is said when something is wrong.

pub mod bottling;
pub mod forecast;
pub mod opening;
pub mod pitching;
pub mod place;
pub mod started;
mod verdicts;
mod watching;
mod working;

pub use bottling::{bottle_words, stopped};
pub use verdicts::{open_words, pitch_words, step_words};
pub use watching::watch_words;
pub use working::{source, term};

use super::route::Sum;
use crate::advice::Verdict;
use crate::advice::bottle::kinds::Bottle;
use crate::advice::family::Family;
use crate::batch::{Added, NextStep, Rejected, Stage, Summary, Theme, Today};
use crate::quantity::{Measured, MomentError, ReadError};
use crate::science::ScienceError;
use crate::science::hydrometer::Condition;
use crate::science::priming::Sugar;

/// What was made of a typed text.
pub fn understood(written: &str) -> String {
    format!("Read as {written}")
}

/// What is wrong with a field, as a sentence.
pub fn read_error(error: &ReadError) -> String {
    match error {
        ReadError::Empty => "Something is needed here.".to_owned(),
        other => sentence(&other.to_string()),
    }
}

fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", letters.as_str())
}

/// What is wrong with a date.
pub fn moment_error(error: MomentError) -> String {
    sentence(&error.to_string())
}

/// Why a change was not made.
pub fn rejected(why: Rejected) -> String {
    sentence(&why.to_string())
}

/// Why a sum has no answer.
pub fn science_error(error: ScienceError) -> String {
    match error {
        ScienceError::Temperature { given, min, max } => {
            let warm = given > max;
            let [min, max] = [min, max].map(|t| crate::quantity::write_number(t.value(), 0));
            let hint = if warm { " Let it cool first." } else { "" };
            format!("This sum holds from {min} to {max}\u{A0}°C.{hint}")
        }
        ScienceError::RisingGravity => {
            "The gravity now is above the start. Check both readings and their temperatures."
                .to_owned()
        }
        ScienceError::OutOfReach => "It can't be reached with what is at hand.".to_owned(),
        ScienceError::NothingThere => "One of the amounts is zero.".to_owned(),
        ScienceError::OutOfRange(_) => {
            "The answer would be beyond anything real. Check the numbers.".to_owned()
        }
    }
}

/// The four words of a judgement.
pub const fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Go",
        Verdict::Wait => "Wait",
        Verdict::Stop => "Stop",
        Verdict::CantTell => "Can't tell",
    }
}

/// Where a batch is: its stage, and while it is watched how it stands.
pub fn place(summary: &Summary, today: &Today) -> String {
    let fermenting = today.stage == Stage::Watch && !matches!(today.next, NextStep::FirstLook(_));
    let name = stage(today.stage);
    if fermenting {
        format!("{name}: {}", started::state(summary.finish.state))
    } else {
        name.to_owned()
    }
}

/// What was added later.
pub const fn added(added: Added) -> &'static str {
    match added {
        Added::Sugar => "sugar, honey or malt added",
        Added::Fruit => "fruit or juice added",
        Added::Other => "something that ferments added",
    }
}

/// A yeast family.
pub const fn family(family: Family) -> &'static str {
    match family {
        Family::CleanAle => "Ale, clean or American type",
        Family::EnglishAle => "Ale, English type",
        Family::BelgianAle => "Ale, Belgian type",
        Family::GermanWheat => "Wheat beer, German type",
        Family::Saison => "Saison, or unknown farmhouse",
        Family::Lager => "Lager",
        Family::Kveik => "Kveik",
        Family::Cider => "Cider",
        Family::Wine => "Wine",
        Family::Unknown => "Kit yeast, or not known",
    }
}

/// A kind of bottle.
pub const fn bottle(bottle: Bottle) -> &'static str {
    match bottle {
        Bottle::UnknownGlass => "Thin, one-way or unknown glass",
        Bottle::ReusableGlass => "Sound reusable beer glass",
        Bottle::HeavyGlass => "Heavy sparkling glass, rated swing-top",
        Bottle::Pet => "Plastic made for fizzy drinks",
        Bottle::NotForPressure => "Square, fancy or still-drink glass",
    }
}

/// A kind of sugar.
pub const fn sugar(sugar: Sugar) -> &'static str {
    match sugar {
        Sugar::Sucrose => "Table sugar (sucrose)",
        Sugar::DextroseMonohydrate => "Corn sugar (dextrose monohydrate)",
        Sugar::GlucoseAnhydrous => "Glucose without water",
        Sugar::DryMaltExtract => "Dry malt extract",
        Sugar::Honey => "Honey",
        Sugar::Own(_) => "Own sugar or syrup",
        Sugar::Wort(_) => "Wort kept back",
    }
}

/// How a sample stood.
pub const fn condition(condition: Condition) -> &'static str {
    match condition {
        Condition::Still => "Still, gas knocked out",
        Condition::Foam => "Foam hid the line",
        Condition::Gassy => "Gas left in",
    }
}

/// A step of a scale.
pub fn scale(name: &'static str) -> &'static str {
    match name {
        "0.01" => "0.01\u{A0}g",
        "0.1" => "0.1\u{A0}g",
        "5" => "5\u{A0}g",
        _ => "1\u{A0}g",
    }
}

/// A stage.
pub const fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Pitch => "Pitch",
        Stage::Watch => "Watch",
        Stage::Bottle => "Bottle",
        Stage::Open => "Open",
    }
}

/// Day or night.
pub const fn theme(theme: Theme) -> &'static str {
    match theme {
        Theme::Follow => "As the phone",
        Theme::Day => "Day",
        Theme::Night => "Night",
    }
}

/// A sum on the Bench: its heading and the question it answers.
pub const fn sum(sum: Sum) -> (&'static str, &'static str) {
    match sum {
        Sum::Gravity => ("True gravity", "The sample was warm. What is the real gravity?"),
        Sum::Strength => ("Strength", "How strong is it, and how far has it gone?"),
        Sum::Scales => ("Gravity scales", "Specific gravity, points, °Plato and sugar per litre"),
        Sum::Sugar => ("Priming sugar", "How much sugar for these bottles?"),
        Sum::Cooling => ("Pitching temperature", "Is it cool enough? How do I get there?"),
        Sum::Yeast => ("Yeast", "How much dry yeast does this wort want?"),
    }
}

/// The caution that belongs to glass under pressure.
pub const GLASS_CAUTION: &str = "Over-pressured glass bursts without warning. Use sound bottles made for pressure, \
keep them cool, and follow the bottle maker's sheet where there is one.";
/// The caution that belongs to hot liquid.
pub const HOT_CAUTION: &str =
    "Hot wort scalds within seconds and cracks glass. Never pour it into a glass vessel.";
/// The caution that belongs to added water and ice.
pub const WATER_CAUTION: &str =
    "Use boiled and cooled or sealed bottled water. Shop ice goes round the pot, not in it.";
/// The caution that belongs to strength.
pub const STRENGTH_CAUTION: &str = "For your own use: not for a label in trade, duty, driving or health. Check your local law; for adults of legal age.";
/// The caution that belongs to a year's tally.
pub const TALLY_CAUTION: &str = "Some places limit what a household may brew in a year, or want to be told. Check your local law; home-made beer is not for sale.";
/// The caution that belongs to closed rooms.
pub const GAS_CAUTION: &str = "Carbon dioxide gathers in chest freezers, cupboards and small cellars: open, wait, and never lean in.";
/// The caution that belongs to cleaning.
pub const CLEANER_CAUTION: &str =
    "Never mix bleach with acid, vinegar or ammonia. Follow the label of every cleaner.";

/// That something was not saved, and why.
pub fn not_saved(why: &str) -> String {
    format!("Not saved: {why}. What you typed stays here.")
}

/// That stored texts could not be read.
pub fn set_aside(count: usize) -> String {
    let what = if count == 1 { "One saved thing" } else { "Some saved things" };
    format!("{what} could not be read. Kept as it was, and not written over.")
}

/// The caution that belongs to glass instruments.
pub const GLASS_TOOL_CAUTION: &str =
    "Hydrometers and glass vessels break when wet or shocked; a hot sample can crack them.";
