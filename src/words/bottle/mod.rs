//! Bottling in words: ways to a dose, what the beer may hold, what the bottles get.

use crate::advice::Verdict;
use crate::advice::bottle::dosing::SYRUP_WATER;
use crate::advice::bottle::history::Doubt;
use crate::advice::bottle::ways_to_dose::Way;
use crate::advice::bottle::{Next as BottleNext, Plan, Reason as BottleReason};
use crate::quantity::{BottleUnit, write as written};
use crate::words::Judged;
use crate::words::judged;
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What stands at Bottle.
    BottleWords, BOTTLE {} says {}
}

/// A way to a dose.
fn way(w: Writer, way: Way) -> String {
    match way {
        Way::ReadAgain(at) => format!(
            "wait and read again on {} or in the two days after: if it reads the same, there is a dose",
            write::day(at)
        ),
        Way::LowerTarget(target) => {
            format!("a target of {} or less", write::volumes(target))
        }
        Way::Stronger(bottle) => {
            format!("bottles of this kind: {}", (crate::words::NAMES.bottle)(bottle))
        }
        Way::Cooler(t) => {
            format!("keep them where it never gets warmer than {}", w.temperature(t))
        }
        Way::LetGasGo => {
            "let it stand two days in a warm room under an airlock, so that its gas can go"
                .to_owned()
        }
        Way::DoseVessel => "stir the sugar into the vessel instead".to_owned(),
        Way::FinerScale => "a scale that shows 0.1\u{A0}g".to_owned(),
    }
}

/// Ways to a dose in one sentence; `None` when there are none.
pub fn ways(w: Writer, ways: &[Way]) -> Option<String> {
    let all: Vec<_> = ways.iter().map(|one| way(w, *one)).collect();
    (!all.is_empty()).then(|| format!("Ways to a dose: {}.", all.join("; or ")))
}

/// Why it may hold more.
pub fn doubt(doubt: Doubt) -> String {
    match doubt {
        Doubt::ColdSealed => "It was closed while it was cold.".to_owned(),
        Doubt::ColdWorking => "It still worked when it was chilled.".to_owned(),
        Doubt::ShortWarmth(_) => "It was warm for too short a time to let its gas go.".to_owned(),
        Doubt::NotKnown => {
            "How it was closed, or whether it still worked, is not known.".to_owned()
        }
    }
}

/// How the syrup is made and mixed in (common practice, no source).
pub fn mixing() -> String {
    let water = |litres| written(litres, BottleUnit::Millilitres);
    format!(
        "Boil it for five minutes in {} to {} of water and let it cool. Put it into the bottling vessel first, let the beer run in below the surface so that it swirls, and then still stir gently with a clean spoon: the swirl alone can leave layers, and bottles with too much. Boiling syrup scalds. Up to 5\u{A0}% more in one bottle than in another is counted.",
        written(SYRUP_WATER.from, BottleUnit::Millilitres).trim_end_matches("\u{A0}mL"),
        water(SYRUP_WATER.to)
    )
}

/// The bottling plan, with the ways that were found to a dose.
pub fn bottle_words(w: Writer, plan: &Plan, ways: &[Way]) -> Judged {
    let advice = &plan.advice;
    let sentence = match (advice.verdict, advice.next) {
        (Verdict::Go, _) => "Within the usual ceiling of the weakest bottle.",
        (Verdict::Wait, _) => "No dose yet: the beer is not known to be finished.",
        (_, BottleNext::CoolerPlace(_)) => "No dose: that place is too hot for these bottles.",
        (_, BottleNext::StrongerBottles) => "No dose: these bottles would not do.",
        _ => "No dose: too much for the weakest bottle.",
    };
    let reasons = advice.reasons.iter().map(|reason| bottle_reason(w, *reason)).collect();
    let found = self::ways(w, ways);
    let next = match advice.next {
        BottleNext::Bottle => "Weigh the sugar; how to mix it in stands below.".to_owned(),
        BottleNext::ReadAgain => {
            let wait = "Read the gravity again before bottling. Less sugar is no answer to beer that still ferments.";
            found.map_or_else(|| wait.to_owned(), |ways| format!("{wait} {ways}"))
        }
        _ => found.unwrap_or_else(|| {
            "The way to a dose: stronger bottles, or wait some days and read the gravity again."
                .to_owned()
        }),
    };
    judged(advice.verdict, sentence.to_owned(), reasons, next)
}

/// Why there is no dose, for those who hear the page; nothing when there is one.
pub fn stopped(judged: &Judged) -> String {
    match judged.verdict {
        Verdict::Stop => {
            format!("{}. {} {}", judged.word, judged.sentence, judged.reasons.join(" "))
        }
        _ => String::new(),
    }
}

fn bottle_reason(w: Writer, reason: BottleReason) -> String {
    match reason {
        BottleReason::NotFinished => "The log does not show a finished fermentation.".to_owned(),
        BottleReason::OnStatedReason => {
            "You go on for a reason of your own; it is kept with the batch.".to_owned()
        }
        BottleReason::LeftUnknown => {
            "Nothing bounds what may still ferment, so ten points are counted.".to_owned()
        }
        BottleReason::NotForPressure => "This glass is not made for pressure at all.".to_owned(),
        BottleReason::AboveCeiling { worst, ceiling } => format!(
            "At worst {}, above the ceiling of {} for the weakest bottle.",
            write::volumes(worst),
            write::volumes(ceiling)
        ),
        BottleReason::WithinCeiling { worst, ceiling } => format!(
            "At worst {}; the usual ceiling of the weakest bottle is {}.",
            write::volumes(worst),
            write::volumes(ceiling)
        ),
        BottleReason::CautionForGlass => {
            "For glass of unknown make this is already much: stand them cool, in a closed box."
                .to_owned()
        }
        BottleReason::YeastMayGoOn => {
            "This yeast may go on for weeks, so the ceiling is half a volume lower.".to_owned()
        }
        BottleReason::HoldsEnough => "The beer already holds as much as you wish.".to_owned(),
        BottleReason::TooHotAPlace { hottest, pressure, limit } => format!(
            "At {} up to {}; the ceiling of the weakest bottle is {} in a warm room.",
            w.temperature(hottest),
            write::pressure(pressure),
            write::pressure(limit)
        ),
        BottleReason::MostlyStillToCome(gas) => {
            format!("Most of it, up to {}, is what may still ferment.", write::volumes(gas))
        }
        BottleReason::MayHoldMore(gas) => format!(
            "Chilled beer may hold up to {} already; the bottles are judged by that.",
            write::volumes(gas)
        ),
        BottleReason::ScaleTooRough(size) => format!(
            "This scale is too rough for a bottle of {}. Dose the whole vessel, or weigh to 0.1\u{A0}g.",
            write::bottle_size(size)
        ),
    }
}
