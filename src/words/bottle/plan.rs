//! The plan of a bottling in words: what is judged and why, and the ways to a dose.

use crate::advice::Verdict;
use crate::advice::bottle::{Next as BottleNext, Plan, Reason as BottleReason};
use crate::advice::standing::ways_to_dose::Way;
use crate::quantity::{
    Grams, Kilopascals, Measured, Moment, PressureUnit, write as written, write_number,
};
use crate::science::priming::Dose;
use crate::words::texts::texts;
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged};

texts! {
    /// What a plan comes to.
    PlanWords, PLAN {
        sugar_to_weigh: "Sugar to weigh",
        no_dose: "No dose: see why below.",
        stir_it_in: "Boil it, let it cool, and stir it in like a syrup.",
        weakest: "The weakest bottle",
        at_worst: "at worst",
        ceiling: "it bears",
        in_it: "in it",
        of_sugar: "sugar",
        may_come: "may come",
        volumes_of: "volumes of CO₂: litres of gas in a litre of beer",
        at_20: "at 20 °C",
        at_hottest: "in the hottest place",
    } says {
        judged: fn(Writer, &Plan, &[Way]) -> Judged = plan_words,
        stopped: fn(&Judged) -> String = stopped,
        doubt: fn(Writer, &Dose) -> String = doubt,
        a_litre: fn(Grams) -> String = a_litre,
        or_by_weight: fn(&str, &str) -> String = or_by_weight,
        guard: fn(&Plan) -> Vec<(String, String)> = guard_rows,
        described: fn(&Plan) -> String = described,
        pressure: fn(Kilopascals) -> String = pressure,
    }
}

/// The ± of a dose.
fn doubt(w: Writer, dose: &Dose) -> String {
    format!("±\u{A0}{}", w.mass(Grams::nearest(dose.sugar.sigma())))
}

/// What one litre gets.
fn a_litre(sugar: Grams) -> String {
    let sugar = write_number(sugar.value(), 1);
    format!("{sugar}\u{A0}g a litre. Weigh it; no spoon or cup is good enough.")
}

/// A volume's weight beside it.
fn or_by_weight(weight: &str, doubt: &str) -> String {
    format!("or {weight} {doubt}")
}

/// The guard in figures.
fn guard_rows(plan: &Plan) -> Vec<(String, String)> {
    let guard = plan.guard;
    let ceiling = guard.ceiling.map_or_else(|| "never to be filled".to_owned(), write::volumes);
    let row = |name: &str, figure| (name.to_owned(), figure);
    vec![
        row("Already in, upper end", write::volumes(guard.already_in)),
        row("From the sugar, in full", write::volumes(guard.from_sugar)),
        row("May still come", write::volumes(guard.still_to_come)),
        row("At worst", write::volumes(guard.worst)),
        row("Ceiling of the weakest bottle", ceiling),
        row("Pressure at 20\u{A0}°C, at worst", write::pressure(guard.at_20)),
        row("At the hottest place, at worst", write::pressure(guard.at_hottest)),
    ]
}

/// The same in sentences, for those who cannot see the drawing.
fn described(plan: &Plan) -> String {
    guard_rows(plan).into_iter().map(|(name, figure)| format!("{name}: {figure}. ")).collect()
}

/// A pressure where a drawing has little room.
fn pressure(p: Kilopascals) -> String {
    written(p, PressureUnit::Bar)
}

/// A way to a dose.
fn way(w: Writer, way: Way) -> String {
    match way {
        Way::DoseVessel(sugar) => format!("stir {} into the vessel instead", w.mass(sugar)),
        Way::FinerScale(sugar) => {
            format!("a scale that shows 0.1\u{A0}g: {} in all", w.mass(sugar))
        }
        Way::Cooler(t, sugar) => format!(
            "keep them where it never gets warmer than {}: {}",
            w.temperature(t),
            w.mass(sugar)
        ),
        Way::LowerTarget(target, sugar) => {
            format!("a target of {} or less: {}", write::volumes(target), w.mass(sugar))
        }
        Way::Stronger(bottle, sugar) => {
            format!("bottles of this kind: {}: {}", (w.words.names.bottle)(bottle), w.mass(sugar))
        }
        Way::StrongerAndLower(bottle, target, sugar) => format!(
            "bottles of this kind: {}, with a target of {} or less: {}",
            (w.words.names.bottle)(bottle),
            write::volumes(target),
            w.mass(sugar)
        ),
        Way::LetGasGo(at, sugar) => format!(
            "let it stand in a warm room under an airlock until {}, so that its gas can go: {}",
            w.day_ahead(at),
            w.mass(sugar)
        ),
        Way::Satellite(at) => format!(
            "begin a satellite today, read it twice, a day apart, and the beer with it, by {}: if all read as the beer does now, there is a dose",
            w.day_ahead(at)
        ),
        Way::ReadAgain(at) => format!(
            "read again on {} or later: if it reads the same, there is a dose",
            w.day_ahead(at)
        ),
        Way::WarmAndRead(at) => format!(
            "warm it to its yeast\u{2019}s range, read it tomorrow and again on {} or later, and note the beer\u{2019}s temperature: if both read as it does now, answer for the time since it was warm, and there is a dose",
            w.day_ahead(at)
        ),
        Way::NoteStart(at) => {
            let note = "note the gravity it started at, by the recipe or the kit, for nothing else shows that it fermented";
            at.map_or_else(
                || note.to_owned(),
                |at| {
                    let day = w.day_ahead(at);
                    format!(
                        "{note}: then a reading like the last on {day} or later does for most beer"
                    )
                },
            )
        }
        Way::ReadOn(next, foretold) => read_on(w, next, foretold),
    }
}

fn read_on(w: Writer, next: Option<Moment>, foretold: Option<Moment>) -> String {
    let next = next.map_or_else(
        || "read its gravity, and again after two nights".to_owned(),
        |at| format!("go on reading, next on {}", w.day_ahead(at)),
    );
    let foretold = foretold.map(|at| {
        format!(", and sugar may go in about {}; that is foretold, and no promise", w.day_ahead(at))
    });
    next + &foretold.unwrap_or_default()
}

/// Ways to a dose in one sentence; `None` when there are none.
fn ways(w: Writer, ways: &[Way]) -> Option<String> {
    let all: Vec<_> = ways.iter().map(|one| way(w, *one)).collect();
    (!all.is_empty()).then(|| format!("Ways to a dose: {}.", all.join("; or ")))
}

/// The bottling plan, with the ways that were found to a dose.
fn plan_words(w: Writer, plan: &Plan, ways: &[Way]) -> Judged {
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
            let wait = "Less sugar is no answer to beer that may still ferment.";
            found.map_or_else(|| wait.to_owned(), |ways| format!("{ways} {wait}"))
        }
        _ => found.unwrap_or_else(|| {
            "The way to a dose: stronger bottles, or wait some days and read the gravity again."
                .to_owned()
        }),
    };
    judged(advice.verdict, sentence.to_owned(), reasons, next)
}

/// Why there is no dose, for those who hear the page; nothing when there is one.
fn stopped(judged: &Judged) -> String {
    match judged.verdict {
        Verdict::Stop => {
            format!("{}. {} {}", judged.word, judged.sentence, judged.reasons.join(" "))
        }
        _ => String::new(),
    }
}

fn bottle_reason(w: Writer, reason: BottleReason) -> String {
    match reason {
        BottleReason::NotFinished => "The readings do not show a finished fermentation.".to_owned(),
        BottleReason::ColdStopped => {
            "It still worked when it was chilled: the cold stopped it, and it goes on in warm bottles."
                .to_owned()
        }
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
