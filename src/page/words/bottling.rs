//! Bottling in words: ways to a dose, what the beer may hold, what the bottles get.

use crate::advice::dosing::SYRUP_WATER;
use crate::advice::history::Doubt;
use crate::advice::ways_to_bottle::Way;
use crate::page::write::{self, Writer};
use crate::quantity::{BottleUnit, write as written};

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
        Way::Stronger(bottle) => format!("bottles of this kind: {}", super::bottle(bottle)),
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
