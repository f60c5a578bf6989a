//! What things are called.

use super::texts::texts;
use crate::advice::Verdict;
use crate::advice::bottle::kinds::Bottle;
use crate::advice::family::Family;
use crate::batch::{Added, Theme};
use crate::science::hydrometer_sample::Condition;
use crate::science::priming::Sugar;

texts! {
    /// Names of things.
    Names, NAMES {
        yeast: "Yeast",
    } says {
        verdict: fn(Verdict) -> &'static str = verdict,
        family: fn(Family) -> &'static str = family,
        bottle: fn(Bottle) -> &'static str = bottle,
        sugar: fn(Sugar) -> &'static str = sugar,
        condition: fn(Condition) -> &'static str = condition,
        theme: fn(Theme) -> &'static str = theme,
        added: fn(Added) -> &'static str = added,
    }
}

/// The four words of a judgement.
const fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "Go",
        Verdict::Wait => "Wait",
        Verdict::Stop => "Stop",
        Verdict::CantTell => "Can't tell",
    }
}

/// A yeast family.
const fn family(family: Family) -> &'static str {
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
const fn bottle(bottle: Bottle) -> &'static str {
    match bottle {
        Bottle::UnknownGlass => "Thin, one-way or unknown glass",
        Bottle::ReusableGlass => "Sound reusable beer glass",
        Bottle::HeavyGlass => "Heavy sparkling glass, rated swing-top",
        Bottle::Pet => "Plastic made for fizzy drinks",
        Bottle::NotForPressure => "Square, fancy or still-drink glass",
    }
}

/// A kind of sugar.
const fn sugar(sugar: Sugar) -> &'static str {
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
const fn condition(condition: Condition) -> &'static str {
    match condition {
        Condition::Still => "Gas knocked out",
        Condition::Foam => "Foam hid the line",
        Condition::Gassy => "Gas left in",
    }
}

/// Day or night.
const fn theme(theme: Theme) -> &'static str {
    match theme {
        Theme::Follow => "As the phone",
        Theme::Day => "Day",
        Theme::Night => "Night",
    }
}

/// What was added later.
const fn added(added: Added) -> &'static str {
    match added {
        Added::Sugar => "sugar, honey or malt added",
        Added::Fruit => "fruit or juice added",
        Added::Other => "something that ferments added",
    }
}
